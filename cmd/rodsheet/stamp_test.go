package main

import (
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"rodsheet/geometry/measure"
	"rodsheet/render/readback"
	"rodsheet/templates/piece/design"
)

// A piece that cannot be built is printed on demand, and every sheet says so: one
// of them may go to the bench without the others.
func TestEverySheetSaysThatItCannotBeBuilt(t *testing.T) {
	t.Parallel()
	dir := t.TempDir()
	text := must(design.Start(design.RingKind, 3, measure.Millimetre))(t)
	var lines []string
	for _, line := range strings.Split(string(text), "\n") {
		if strings.HasPrefix(line, "clear = ") { // too near to the laps
			line = "mid-to-leg = 205"
		}
		lines = append(lines, line)
	}
	file, out := filepath.Join(dir, "near.toml"), filepath.Join(dir, "near.pdf")
	if err := os.WriteFile(file, []byte(strings.Join(lines, "\n")), 0o600); err != nil {
		t.Fatal(err)
	}
	if status, _, errs := start(t.Context(), "piece", file, "--anyway", "--plan", "-o", out); status != 0 {
		t.Fatal(errs)
	}
	data := must(os.ReadFile(out))(t)
	read := must(readback.PDF(data))(t)
	for i, p := range read.Pages {
		if !slices.ContainsFunc(p.Texts, func(x readback.Text) bool { return strings.HasPrefix(x.String, "cannot be built: ") }) {
			t.Errorf("sheet %d does not say that the piece cannot be built", i+1)
		}
	}
	if len(read.Pages) < 10 {
		t.Errorf("%d sheets", len(read.Pages))
	}
}
