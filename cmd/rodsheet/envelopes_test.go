package main

import (
	"os"
	"path/filepath"
	"regexp"
	"slices"
	"strings"
	"testing"

	"rodsheet/geometry/measure"
	"rodsheet/render/readback"
	"rodsheet/templates/piece/design"
)

// The envelopes of a written pack stand in working order under bookmarks of their own,
// each on sheets that follow one another and name it at their foot.
func TestEnvelopesOfAWrittenPack(t *testing.T) {
	t.Parallel()
	file := filepath.Join(t.TempDir(), "table.toml")
	done(t, os.WriteFile(file, []byte(startingText(t, design.RingKind)), 0o600))
	bench := []string{"Cover", "Names", "Stock", "Laps", "Bridles", "Tapers and plain ends", "Top", "Ring and glue-up", "Finish"}
	for _, tt := range []struct {
		args []string
		want []string
	}{
		{nil, slices.Insert(slices.Clone(bench), 2, "Wood and buying")},
		{[]string{"--for", "buying"}, []string{"Cover", "Wood and buying"}},
		{[]string{"--for", "bench"}, bench},
		{[]string{"--for", "record"}, []string{"Figures and checks"}},
		{[]string{"--only", "milled"}, bench[2:8]},
	} {
		envelopes, pages := printedFor(t, file, tt.args...)
		var got []string
		for _, e := range envelopes {
			got = append(got, e.Title)
		}
		if len(tt.want) == 1 {
			tt.want = nil // an only envelope is the whole of it
		}
		if !slices.Equal(got, tt.want) {
			t.Errorf("%v: got %q, want %q", tt.args, got, tt.want)
		}
		for i, e := range envelopes {
			to := len(pages)
			if i+1 < len(envelopes) {
				to = envelopes[i+1].Page
			}
			for n := e.Page; n < to; n++ {
				if !slices.ContainsFunc(pages[n].Texts, func(x readback.Text) bool { return strings.HasSuffix(x.String, ": "+e.Title) }) {
					t.Errorf("%v: page %d does not say %q at its foot", tt.args, n+1, e.Title)
				}
			}
		}
	}
}

// startingText is the usual design of a kind to begin with.
func startingText(t testing.TB, kind design.Kind) string {
	_, _, usual := kind.Sides()
	return string(must(design.Start(kind, usual, measure.Millimetre))(t))
}

// printedFor writes a pack and returns the bookmarks of its envelopes and its pages.
func printedFor(t *testing.T, file string, args ...string) ([]readback.Bookmark, []readback.Page) {
	t.Helper()
	out := filepath.Join(t.TempDir(), "out.pdf")
	if status, _, errs := start(t.Context(), append([]string{"piece", file, "-o", out}, args...)...); status != 0 {
		t.Fatal(errs)
	}
	read := must(readback.PDF(must(os.ReadFile(out))(t)))(t)
	sheets := func(b readback.Bookmark) bool { return b.Level > 0 || strings.Contains(b.Title, ":") }
	return slices.DeleteFunc(read.Bookmarks, sheets), read.Pages
}

// A pack without sizes as milled says so, in place of a file without pages.
func TestOnlyMilledOfWhatHasNone(t *testing.T) {
	t.Parallel()
	dir := t.TempDir()
	file, out := filepath.Join(dir, "tray.toml"), filepath.Join(dir, "tray.pdf")
	done(t, os.WriteFile(file, []byte(startingText(t, design.BoxKind)), 0o600))
	status, _, errs := start(t.Context(), "piece", file, "--only", "milled", "-o", out)
	if _, err := os.Stat(out); status != 2 || err == nil || !strings.Contains(errs, "--only milled") || !strings.Contains(errs, "hint: leave out --only") {
		t.Errorf("status %d, %v: %s", status, err, errs)
	}
}

// A piece that cannot be built is printed on demand, and every sheet says so: one
// of them may go to the bench without the others.
func TestEverySheetSaysThatItCannotBeBuilt(t *testing.T) {
	t.Parallel()
	text := regexp.MustCompile(`(?m)^clear = .*`).ReplaceAllString(startingText(t, design.RingKind), "mid-to-leg = 205") // too near to the laps
	file := filepath.Join(t.TempDir(), "near.toml")
	done(t, os.WriteFile(file, []byte(text), 0o600))
	_, pages := printedFor(t, file, "--anyway", "--plan")
	for i, p := range pages {
		if !slices.ContainsFunc(p.Texts, func(x readback.Text) bool { return strings.HasPrefix(x.String, "cannot be built: ") }) {
			t.Errorf("sheet %d does not say that the piece cannot be built", i+1)
		}
	}
	if len(pages) < 10 {
		t.Errorf("%d sheets", len(pages))
	}
}
