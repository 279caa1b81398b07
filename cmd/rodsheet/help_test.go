package main

import (
	"context"
	"os"
	"slices"
	"strings"
	"testing"
	"time"

	"rodsheet/templates/piece/design"
)

// pages returns every page of help under the words that show it.
func pages(t *testing.T) map[string]string {
	t.Helper()
	all := map[string]string{"": overviewText()}
	for _, c := range commands() {
		all[c.name] = c.help()
	}
	for _, p := range topics() {
		all[p.name] = p.text
	}
	for words, want := range all {
		status, got, stderr := start(t.Context(), strings.Fields("help "+words)...)
		if status != 0 || got != want || stderr != "" {
			t.Errorf("help %s: status %d, %q", words, status, stderr)
		}
	}
	return all
}

func TestHelpFitsTheScreen(t *testing.T) {
	for name, page := range pages(t) {
		for _, line := range strings.Split(page, "\n") {
			if n := len([]rune(line)); n > 80 {
				t.Errorf("help %s: %d columns: %s", name, n, line)
			}
			if strings.TrimRight(line, " \t") != line || strings.Contains(line, "\t") {
				t.Errorf("help %s: stray blanks: %q", name, line)
			}
		}
	}
}

// TestExamplesWork runs every command line that the help shows, beside a design
// file that bears the name they use.
func TestExamplesWork(t *testing.T) {
	designed := must(os.ReadFile("../../examples/window-seat.toml"))(t)
	for name, page := range pages(t) {
		_, shown, _ := strings.Cut(page, "\nExamples:\n")
		n := 0
		for _, line := range strings.Split(shown, "\n") {
			args, ok := strings.CutPrefix(line, "  rodsheet ")
			if !ok {
				continue
			}
			n++
			t.Run(args, func(t *testing.T) {
				t.Chdir(t.TempDir())
				before := 0
				if strings.Contains(args, "table.toml") && !strings.HasPrefix(args, "new") {
					done(t, os.WriteFile("table.toml", designed, 0o600))
					before = 1
				}
				ctx, words := t.Context(), strings.Fields(args)
				if words[0] == "open" { // it serves until it is stopped
					var stop context.CancelFunc
					ctx, stop = context.WithTimeout(ctx, 100*time.Millisecond)
					defer stop()
					words = append(words, "--no-browser")
				}
				if status, _, stderr := start(ctx, words...); status != 0 {
					t.Errorf("status %d: %s", status, stderr)
				}
				silent := words[0] == "open" || strings.HasPrefix(args, "completion") || strings.HasPrefix(args, "printer") || strings.HasPrefix(args, "check") || strings.HasSuffix(args, "-o -")
				if entries, err := os.ReadDir("."); err != nil || len(entries) == before && !silent {
					t.Errorf("no file written: %v", err)
				}
			})
		}
		if n < 3 {
			t.Errorf("help %s: %d examples, want 3 at least", name, n)
		}
	}
}

// TestHelpWinsOverMistakes wants --help to help where flags are missing, and
// -h to be the same.
func TestHelpWinsOverMistakes(t *testing.T) {
	for _, c := range commands() {
		mistake := ""
		if slices.ContainsFunc(c.all(), func(f flag) bool { return f.name == "units" }) {
			mistake = "--units ell"
		}
		for _, help := range []string{"--help", "-h"} {
			line := c.name + " " + mistake + " " + help
			if status, got, _ := start(t.Context(), strings.Fields(line)...); status != 0 || got != c.help() {
				t.Errorf("%s: status %d, %q", line, status, got)
			}
		}
	}
}

// TestFlagsAreSound wants no flag twice in a command, a usage for each, and
// nothing required that has a default.
func TestFlagsAreSound(t *testing.T) {
	for _, c := range commands() {
		seen := map[string]bool{}
		for _, f := range c.all() {
			if seen[f.name] || f.short != "" && seen[f.short] {
				t.Errorf("%s: --%s is there twice", c.name, f.name)
			}
			seen[f.name], seen[f.short] = true, true
			if f.usage == "" {
				t.Errorf("%s: --%s has no usage", c.name, f.name)
			}
			if f.required && strings.Contains(f.usage, "if not given") {
				t.Errorf("%s: --%s is required and has a default", c.name, f.name)
			}
		}
	}
}

// The table of woods is told whole, each with its density.
func TestHelpListsTheWoods(t *testing.T) {
	_, got, _ := start(t.Context(), "help", "woods")
	for _, line := range []string{"Ash, white 672 0.17 0.27 American ash", "Oak, red* 706 0.14 0.30 northern red oak", "Walnut 616 0.19 0.27 black walnut"} {
		if !strings.Contains(strings.Join(strings.Fields(got), " "), line) {
			t.Errorf("no line %q in\n%s", line, got)
		}
	}
	if rows := strings.Count(got, "\n  "); rows < len(design.Species()) {
		t.Errorf("%d rows", rows)
	}
}
