package main

import (
	"bytes"
	"io"
	"os"
	"slices"
	"strings"
	"testing"
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
		"scale --paper 300x400 --margin 0 --overlap 20 --units in --title x",
		"angle 30 --paper whole --max-sheets 1",
		"help lengths", "--version", "lap --help", "angle -- -5", "angle -5 --base=3",
		"lap --width NaN --other Inf --depth 1e300 --angle -0",
		"taper --length 99m --top 1/64in --foot 0.001 --start 0 --paper letter",
	} {
		f.Add(seed)
	}
	f.Fuzz(func(t *testing.T, line string) {
		args := contained(strings.Fields(line))
		t.Chdir(t.TempDir())
		var stderr bytes.Buffer
		status := run(t.Context(), args, func(string) string { return "" }, io.Discard, &stderr)
		message := stderr.String()
		switch {
		case status < 0 || status > 2:
			t.Errorf("status %d", status)
		case strings.Contains(message, "internal error"):
			t.Error(message)
		case status != 0 && !strings.HasPrefix(message, "rodsheet: "):
			t.Errorf("status %d with the message %q", status, message)
		}
		entries, err := os.ReadDir(".")
		if err != nil {
			t.Fatal(err)
		}
		if status != 0 && len(entries) > 0 {
			t.Errorf("status %d, yet %s is there", status, entries[0].Name())
		}
	})
}

// contained takes every flag that names a file out of args, so that nothing
// is written elsewhere, and keeps the job small.
func contained(args []string) []string {
	args = slices.DeleteFunc(args, func(a string) bool {
		return strings.HasPrefix(a, "-o") || strings.HasPrefix(a, "--o") && !strings.HasPrefix(a, "--ot") && !strings.HasPrefix(a, "--ov")
	})
	if len(args) == 0 || strings.HasPrefix(args[0], "-") || args[0] == "help" {
		return args
	}
	return slices.Insert(args, 1, "--max-sheets", "20")
}
