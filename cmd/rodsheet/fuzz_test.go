package main

import (
	"context"
	"fmt"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"pgregory.net/rapid"
)

// FuzzCommandLine runs any command line with its output kept in an empty
// directory and wants an honest exit status: no panic, a message for every
// failure, and no file after a refusal.
func FuzzCommandLine(f *testing.F) {
	for _, seed := range []string{
		"angle 14.5 60 1:6",
		"taper --length 640 --top 45 --foot 28 --start 110 --faces four",
		"lap --width 28 --other 28 --depth 36 --angle 60 --kerf 3.2 --at 155 --json",
		"bridle --width 28 --depth 36 --angle 12 --leg 38 --tenon 9.3 --mortise leg",
		"mortise --width 22 --depth 70 --leg 40 --length 28 --upper 10 --splay 8 --rake 5 --haunch square",
		"arc --from 0,0 --through 300,45 --to 700,20", "arc --radius 1000 --rise 12 --units in",
		"oval --length 900 --width 600 --end-radius 150 --inset 12 --full",
		"dovetail --width 120 --tail-board 14 --tail 24 --lap 3 --sides 1:6 --angle 100 --slope 80",
		"scale --paper 300x400 --margin 0 --overlap 20 --units in --title x",
		"sightline --rake 12 --splay 8 --height 430 --in 40",
		"hopper --sides 5 --slope 75 --from plumb", "hopper --off-square 20 --tilt 30 --json",
		"segments --pieces 12 --outer 300 --inner 240 --shape flats", "segments --pieces 12 --top 320 --height 400 --thickness 18",
		"angle 30 --paper whole --max-sheets 1",
		"printer bench --across 149.2 --along 200.9 --diagonals 250.4,250.0",
		"help lengths", "--version", "lap --help", "angle -- -5", "angle -5 --base=3",
		"lap --width NaN --other Inf --depth 1e300 --angle -0",
		"taper --length 99m --top 1/64in --foot 0.001 --start 0 --paper letter",
	} {
		f.Add(seed)
	}
	f.Fuzz(func(t *testing.T, line string) {
		t.Chdir(t.TempDir())
		if fault := dishonest(t.Context(), ".", contained(strings.Fields(line))); fault != "" {
			t.Error(fault)
		}
	})
}

// TestAnyFigures does the same with command lines that have every flag and
// figures from the edge of what is possible, which random text seldom hits.
func TestAnyFigures(t *testing.T) {
	t.Parallel()
	ctx, dir := t.Context(), t.TempDir()
	usual := rapid.SampledFrom([]string{"12", "15", "28", "30", "36", "45", "60", "1in", "1:6"})
	edge := rapid.SampledFrom([]string{
		"0", "-0", "-1", "0.001", "0.01", "1/64in", "1", "8", "89.5", "90", "110", "179.5", "300", "640", "999", "1000",
		"3000", "5000", "99999", "1000:1", "NaN", "1e300", "", "x",
	})
	figure := rapid.OneOf(usual, usual, usual, edge)
	wordFlags := map[string][]string{
		"faces": {"one", "adjacent", "opposite", "four"}, "mortise": {"stretcher", "leg"}, "units": {"mm", "in"},
		"paper":   {"a4", "letter", "a3", "whole", "200x200", "180x3000", "1x1", "0x0", "-5x5", "4999x4999"},
		"printer": {"none", "none", "none", "bench"},
		"title":   {"", "Tripod table", strings.Repeat("W", 120), strings.Repeat("wide words ", 10)},
	}
	rapid.Check(t, func(t *rapid.T) {
		c := rapid.SampledFrom(commands()).Draw(t, "command")
		args := []string{c.name, "--max-sheets", "30"}
		if c.words != "" {
			args = append(args, rapid.SliceOfN(figure, 1, 3).Draw(t, "words")...)
		}
		for _, f := range c.all() {
			if f.value == "" || f.name == "out" || f.name == "max-sheets" || !f.required && rapid.Bool().Draw(t, "without "+f.name) {
				continue
			}
			value := figure
			if words, ok := wordFlags[f.name]; ok {
				value = rapid.SampledFrom(words)
			}
			args = append(args, "--"+f.name+"="+value.Draw(t, f.name))
		}
		args = append(args, "-o", filepath.Join(dir, rapid.SampledFrom([]string{"a.pdf", "a.svg"}).Draw(t, "out")))
		if fault := dishonest(ctx, dir, args); fault != "" {
			t.Errorf("%q: %s", args, fault)
		}
	})
}

// dishonest runs a command line in a directory that is empty and is emptied
// again, and returns what is wrong with the way it ended.
func dishonest(ctx context.Context, dir string, args []string) string {
	status, _, message := start(ctx, args...)
	entries, err := os.ReadDir(dir)
	if err != nil {
		return err.Error()
	}
	for _, e := range entries {
		os.Remove(filepath.Join(dir, e.Name()))
	}
	switch {
	case status < 0 || status > 2:
		return fmt.Sprintf("status %d", status)
	case strings.Contains(message, "internal error"):
		return message
	case status != 0 && !strings.HasPrefix(message, "rodsheet: "):
		return fmt.Sprintf("status %d with the message %q", status, message)
	case status != 0 && len(entries) > 0:
		return fmt.Sprintf("status %d, yet %s is there", status, entries[0].Name())
	case status == 1:
		return "the system failed: " + message
	}
	return ""
}

// contained takes every flag that names a file out of args, so that nothing
// is written elsewhere, and keeps the job small.
func contained(args []string) []string {
	args = slices.DeleteFunc(args, func(a string) bool {
		return strings.HasPrefix(a, "-o") || strings.HasPrefix(a, "--o") && !strings.HasPrefix(a, "--ot") && !strings.HasPrefix(a, "--ov")
	})
	if len(args) == 0 || strings.HasPrefix(args[0], "-") || args[0] == "help" || args[0] == "printer" {
		return args
	}
	return slices.Insert(args, 1, "--max-sheets", "20")
}
