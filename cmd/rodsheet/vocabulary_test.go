package main

import (
	"os"
	"path/filepath"
	"regexp"
	"strings"
	"testing"

	"rodsheet/render/readback"
)

// replaced are words that have been read in two ways, or that name two faces at
// right angles to each other: nothing that a maker reads holds them.
var replaced = regexp.MustCompile(`(?i)from square|registration edge|from\s+the\s+edge\b|complement|inner\s+(face|edge)|inside\s+(face|edge)|` +
	`(outside|outer)\s+(face|edge|arris)|face side|back face|face\s+into\s+the\s+ring|upright jig|same wood|\bsaw, \d`)

// TestReplacedWords reads the help, what check and new print, and every sheet of
// every kind of job, and wants none of the words.
func TestReplacedWords(t *testing.T) {
	if testing.Short() {
		t.Skip("prints everything, one command after another")
	}
	told := pages(t)
	dir := must(filepath.Abs("../../examples"))(t)
	designs, _ := filepath.Glob(filepath.Join(dir, "*.toml"))
	t.Chdir(t.TempDir())
	say := func(name string, args ...string) {
		status, out, errs := start(t.Context(), args...)
		if status != 0 {
			t.Errorf("%q: status %d, %s", args, status, errs)
		}
		told[name] = out + errs
	}
	for _, sides := range []string{"3", "6"} {
		say("new "+sides, "new", sides+".toml", "--sides", sides)
		told["design "+sides] = read(t, sides+".toml")
		designs = append(designs, sides+".toml")
	}
	jobs := [][]string{
		{"angle", "16", "120", "1:6"},
		{"lap", "--width", "28mm", "--other", "28mm", "--depth", "36mm", "--angle", "120", "--kerf", "3.2mm", "--at", "155mm"},
		{"bridle", "--width", "28mm", "--depth", "36mm", "--angle", "12", "--leg", "38mm"},
		{"mortise", "--width", "22mm", "--depth", "70mm", "--leg", "40mm", "--length", "28mm", "--splay", "8", "--rake", "5", "--haunch", "sloping"},
		{"dovetail", "--width", "120mm", "--tail-board", "14mm", "--tails", "3", "--lap", "3mm", "--slope", "75", "--sides", "1:4.5"},
		{"taper", "--length", "640mm", "--top", "45mm", "--foot", "28mm", "--start", "110mm", "--faces", "opposite"},
		{"top", "--diameter", "600mm"},
		{"sightline", "--rake", "12", "--splay", "8", "--height", "430mm"},
		{"arc", "--chord", "900mm", "--rise", "400mm"},
		{"hopper", "--sides", "5", "--slope", "75"},
		{"oval", "--length", "900mm", "--width", "600mm", "--inset", "12mm"},
		{"segments", "--pieces", "12", "--outer", "300mm", "--inner", "240mm"},
		{"segments", "--pieces", "12", "--top", "320mm", "--bottom", "260mm", "--height", "400mm", "--thickness", "18mm"},
		{"scale"},
	}
	for _, name := range designs {
		say("check "+name, "check", name)
		jobs = append(jobs, []string{"piece", name})
	}
	for _, args := range jobs {
		for _, units := range []string{"mm", "in"} {
			if args[0] == "piece" && units == "in" {
				continue // a design has its own
			}
			line := append(append([]string{}, args...), "-o", "job.pdf", "--json")
			if args[0] != "piece" {
				line = append(line, "--units", units)
			}
			name := strings.Join(args[:1], " ") + " " + units
			say(name, line...)
			told[name+", sheets"] = textOf(t, "job.pdf")
			os.Remove("job.pdf")
		}
	}
	for name, text := range told {
		for _, found := range replaced.FindAllStringIndex(text, -1) {
			t.Errorf("%s: …%s…", name, strings.Join(strings.Fields(text[max(0, found[0]-40):min(len(text), found[1]+30)]), " "))
		}
	}
}

func read(t *testing.T, name string) string {
	t.Helper()
	data := must(os.ReadFile(name))(t)
	return string(data)
}

// textOf returns all that stands on the sheets of a PDF, a line a string.
func textOf(t *testing.T, name string) string {
	t.Helper()
	file := must(readback.PDF([]byte(read(t, name))))(t)
	var b strings.Builder
	for _, p := range file.Pages {
		for _, s := range p.Texts {
			b.WriteString(s.String + "\n")
		}
	}
	return b.String()
}
