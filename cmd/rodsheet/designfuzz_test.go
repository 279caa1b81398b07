package main

import (
	"bytes"
	"context"
	"fmt"
	"os"
	"path/filepath"
	"regexp"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"rodsheet/geometry/measure"
	"rodsheet/templates/piece/design"
)

// FuzzDesign reads any file as a design and wants it printed, or failing a
// check, or refused: never a panic, never a file after a refusal, never the
// design changed.
func FuzzDesign(f *testing.F) {
	for _, text := range startingDesigns(f) {
		f.Add(text)
	}
	for _, text := range exampleDesigns(f) {
		f.Add([]byte(text))
	}
	f.Fuzz(func(t *testing.T, text []byte) {
		t.Parallel()
		if fault := badlyTreated(t.Context(), t.TempDir(), text); fault != "" {
			t.Error(fault)
		}
	})
}

// startingDesigns returns those of all kinds, sides and units.
func startingDesigns(tb testing.TB) [][]byte {
	tb.Helper()
	var out [][]byte
	for i := range design.Kinds() {
		fewest, most, _ := design.Kind(i).Sides()
		for sides := fewest; sides <= most; sides++ {
			for _, u := range []measure.Unit{measure.Millimetre, measure.Inch} {
				text := must(design.Start(design.Kind(i), sides, u))(tb)
				out = append(out, text)
			}
		}
	}
	return out
}

// exampleDesigns returns the designs among the examples.
func exampleDesigns(tb testing.TB) []string {
	tb.Helper()
	names, err := filepath.Glob("../../examples/*.toml")
	if err != nil || len(names) == 0 {
		tb.Fatal("no examples", err)
	}
	var out []string
	for _, name := range names {
		text := must(os.ReadFile(name))(tb)
		out = append(out, string(text))
	}
	return out
}

// badlyTreated puts a design into the directory, which is empty, runs every command
// on it, and returns what is wrong with the way one of them ended.
func badlyTreated(ctx context.Context, dir string, text []byte) string {
	name := filepath.Join(dir, "d.toml")
	if err := os.WriteFile(name, text, 0o600); err != nil {
		return err.Error()
	}
	verdict, _, said := start(ctx, "check", name)
	if verdict < 0 || verdict > 2 {
		return fmt.Sprintf("check ends with %d: %s", verdict, said)
	}
	if verdict == 1 && !strings.HasPrefix(said, "rodsheet: cannot be built: ") {
		return "the system failed: " + said
	}
	plan := ""
	if file, err := design.Read(text, nil); err == nil && file.Sizes[0].Kind == design.RingKind {
		plan = " --plan" // no other kind has one
	}
	runs := []struct {
		line string
		want [3]int // the status to end with, by that of check
	}{
		{"check --json", [3]int{0, 1, 2}},
		{"picture -o d.svg", [3]int{0, 0, 2}},
		{"picture -o d.pdf", [3]int{0, 0, 2}},
		{"piece -o p.pdf --max-sheets 30", [3]int{orTooMany, 1, 2}},
		{"piece -o p.pdf --max-sheets 30 --anyway --paper letter" + plan, [3]int{orTooMany, orTooMany, 2}},
	}
	for _, r := range runs {
		args := strings.Fields(r.line)
		for i := 1; i < len(args); i++ {
			if args[i-1] == "-o" {
				args[i] = filepath.Join(dir, args[i])
			}
		}
		status, _, message := start(ctx, append(args, name)...)
		if fault := ended(r.want[verdict], status, message); fault != "" {
			return fmt.Sprintf("%q, checked with %d: %s", r.line, verdict, fault)
		}
		now, err := os.ReadFile(name)
		if err != nil || !bytes.Equal(now, text) {
			return fmt.Sprintf("%q: the design is changed: %v", r.line, err)
		}
		if fault := left(status, dir); fault != "" {
			return fmt.Sprintf("%q: %s", r.line, fault)
		}
	}
	return ""
}

// orTooMany stands for 0, or 2 where the job takes more sheets than allowed.
const orTooMany = -1

// ended returns what is wrong with the end of a command.
func ended(want, status int, message string) string {
	switch {
	case strings.Contains(message, "internal error"):
		return message
	case want == orTooMany && status == 2 && strings.Contains(message, "sheets"):
		return ""
	case want == orTooMany:
		want = 0
	}
	if status != want {
		return fmt.Sprintf("status %d, want %d: %s", status, want, message)
	}
	for _, bad := range []string{"NaN", "Inf", "%!", "measure.", "design."} {
		if strings.Contains(message, bad) && status != 2 {
			return "the message holds " + bad + ": " + message
		}
	}
	return ""
}

// left empties the directory but for the design, and returns what is wrong
// with what was there: something after a failure, or nothing otherwise.
func left(status int, dir string) string {
	entries, err := os.ReadDir(dir)
	if err != nil {
		return err.Error()
	}
	for _, e := range entries {
		if e.Name() == "d.toml" {
			continue
		}
		os.Remove(filepath.Join(dir, e.Name()))
		if status != 0 {
			return fmt.Sprintf("status %d, yet %s is there", status, e.Name())
		}
	}
	return ""
}

// A drawnTable is a table of a design. The first choices of its keys are always
// made where it is there.
type drawnTable struct {
	name     string
	optional bool
	least    int
	keys     []drawnKeys
}

// drawnKeys are lines of which one is chosen, those of several keys where they
// belong together: usual ones nearly always, and now and then one from the edge
// of what is possible.
type drawnKeys struct{ usual, edge []string }

// of puts a key before each of some values.
func of(key, usual, edge string) drawnKeys {
	lines := func(values string) []string {
		var out []string
		for _, v := range strings.Fields(values) {
			out = append(out, key+" = "+v)
		}
		return out
	}
	return drawnKeys{lines(usual), lines(edge)}
}

// either offers the lines of all.
func either(all ...drawnKeys) drawnKeys {
	var out drawnKeys
	for _, k := range all {
		out.usual, out.edge = append(out.usual, k.usual...), append(out.edge, k.edge...)
	}
	return out
}

func drawnTables() []drawnTable {
	return []drawnTable{
		{"ring", false, 4, []drawnKeys{
			of("sides", "3 4 5 6 7 8", ""), of("inside", "120 200 260 300 420 700", "1 30 57 10000"),
			of("width", "20 22 28 34", "0.001 1 6 60 200 1000"), of("depth", "24 36 50 70", "0.001 1 8 200 1000"),
			of("leg-end", `"under" "over"`, ""),
			{[]string{`plain-end = "flush"`, `plain-end = "open"`, "horn = 14", "plain-end = \"closed\"\nhorn = 6\nslack = 0.2"},
				[]string{"horn = 0.001", "horn = 1000", "plain-end = \"closed\"\nslack = 10", `plain-end = "closed"`}},
		}},
		{"legs", false, 3, []drawnKeys{
			of("breadth", "28 40 45 60", "0.001 1 12 200 1000"),
			either(of("splay", "5 11 16 0.5", "0 45 60"), of("foot-circle", "700 900 1200", "1 5000 20000"), of("foot-spread", "500 620 800", "1 5000 20000")),
			either(of("height", "300 400 610 900", "40 1500 10000"), of("frame-height", "250 380 700", "1 3000 10000")),
			either(of("clear", "0 3 10", "0.001 500 1000"), of("mid-to-leg", "260 400", "1 150 3000 10000")),
			of("mortise", `"stretcher" "leg"`, ""), of("tenon", "8 9.3 12", "0.001 1 20 200"), of("proud", "0 2 10", "0.001 300 1000"),
		}},
		{"legs.taper", true, 2, []drawnKeys{
			of("start", "90 110 150", "0 20 300 3000"), of("foot", "20 26 30", "0.5 8 200 600"),
			of("faces", `"one" "adjacent" "opposite" "four" "none"`, ""),
		}},
		{"top", true, 2, []drawnKeys{
			{[]string{"kind = \"glass\"\nthickness = 8", "kind = \"wood\"\nthickness = 20", `kind = "none"`},
				[]string{"kind = \"glass\"\nthickness = 0.001", "kind = \"glass\"\nthickness = 25", "kind = \"wood\"\nthickness = 200", "kind = \"wood\"\nthickness = 0.001"}},
			either(of("diameter", "500 640 800", "0.001 1 200 2000 10000"), of("overhang", "0 20 60 110", "-1000 -40 1500 10000"),
				of("outline = \"ring\"\noverhang", "0 40 110", "-1000 -40 1500 10000"),
				of("outline = \"ring\"\noverhang = 60\ncorner = \"clipped\"\ncorner-size", "5 20 60", "0.001 300 10000"),
				of("outline = \"ring\"\noverhang = 60\ncorner = \"rounded\"\ncorner-size", "5 20 60", "0.001 300 10000"),
				of("outline = \"free\"\npoints", "[[300,-260],[300,260],[-300,260],[-300,-260]] [[350,0],[-200,300],[-200,-300]]",
					"[[0,0],[0,0],[0,0]] [[1,0],[0,1],[-1,0]] [[300,300],[-300,-300],[300,-300],[-300,300]] "+
						"[[300,-260],[300,260],[0,0],[-300,260],[-300,-260]] [[9000,-9000],[9000,9000],[-9000,0]] [[5,5],[9,5],[9,9]]"),
				of("outline = \"free\"\ncorner = \"rounded\"\npoints = [[350,0],[-200,300],[-200,-300]]\ncorner-size", "20", "400")),
		}},
		{"top.pads", true, 2, []drawnKeys{
			of("diameter", "12 22 28", "0.001 0.5 60 1000"), of("height", "3 6", "0.001 100 1000"),
			of("kind", `"pad" "bumper" "none"`, ""), of("mid-to-pad", "60 100 -50", "0 -10000 10000"),
		}},
		{"top.fixing", true, 0, []drawnKeys{
			of("kind", `"screws" "buttons" "none"`, ""), of("screw", "0 25 40", "0.001 300"), of("bond", `"silicone" "none"`, ""),
		}},
		{"plan", true, 0, []drawnKeys{
			of("maker", `"us"`, `"木"`), of("date", `2031-05-04 "May"`, ""), of("revision", `"B"`, ""), of("note", `"one"`, `""`),
		}},
		{"prices", true, 0, []drawnKeys{
			of("currency", `"€"`, ""), either(of("wood-per-m3", "1800", "0 1000000"), of("wood-per-board-foot", "12", "0 1000000")),
			either(of("glass-per-m2", "150", "0 1000000"), of("glass-per-square-foot", "14", "0 1000000")),
		}},
		{"wood", false, 1, []drawnKeys{
			either(of("density", "450 650 740", "50 1500"), drawnKeys{usual: []string{`species = "ash, white"`, `species = "oak, white"`}}),
			{[]string{"moisture = [8, 12]"}, []string{"moisture = [6, 14]", "moisture = [12, 8]", "moisture = [10, 10]"}},
			of("rough-length", "0 15 25", "1000"), of("rough-width", "0 3", "100"), of("rough-thickness", "0 3", "100"),
			of("spares", "0 1 2", "100"), of("tests", "0 1 2", "100"), of("waste", "0 25", "300"),
			of("board", "[{length=2400,width=160,thickness=46}] [{length=1200,width=200,thickness=40,count=3},{length=900,width=80,thickness=60}]",
				"[{length=1,width=1,thickness=1}] [{length=10000,width=2000,thickness=1000,count=1000}]"),
		}},
		{"saw", false, 1, []drawnKeys{
			of("kerf", "1.8 2.6 3.2", "0.001 12"), of("flat-tooth", "true false", ""), of("blade-height", "60 85", "0.001 1000"),
			of("dado", "12 20", "0.001 100"), of("stop-reach", "400 900", "0.001 10000"), of("gauge", `"square" "fence"`, ""),
		}},
		{"milled", true, 0, []drawnKeys{
			of("width", "27.6 21.7", "0.5 1 1000"), of("depth", "35.5 23.8", "0.5 1 1000"), of("breadth", "39.5", "0.5 1 1000"), of("kerf", "3.1 2.55", "0.001 12"),
		}},
	}
}

// draw returns the lines of the table, the first least choices always made.
func (d drawnTable) draw(t *rapid.T, header string, least, odd int) string {
	var b strings.Builder
	fmt.Fprintf(&b, header+"\n", d.name)
	for i, k := range d.keys {
		if i >= least && rapid.IntRange(0, 2).Draw(t, "without") > 0 {
			continue
		}
		lines := k.usual
		if k.edge != nil && rapid.IntRange(1, odd).Draw(t, "odd") == 1 {
			lines = k.edge
		}
		b.WriteString(rapid.SampledFrom(lines).Draw(t, d.name) + "\n")
	}
	return b.String()
}

// drawDesign returns a file with all the keys that a design may have, and in
// most of which every value is sound by itself.
func drawDesign(t *rapid.T) string {
	odd := rapid.SampledFrom([]int{5, 30, 200}).Draw(t, "one odd value in")
	var b strings.Builder
	b.WriteString(rapid.SampledFrom([]string{"", "units = \"mm\"\n", "title = \"drawn\"\n"}).Draw(t, "head"))
	for _, table := range drawnTables() {
		whole, _, part := strings.Cut(table.name, ".")
		if table.optional && rapid.IntRange(0, 2).Draw(t, "without "+table.name) == 0 || part && !strings.Contains(b.String(), "["+whole+"]") {
			continue
		}
		b.WriteString(table.draw(t, "[%s]", table.least, odd))
	}
	shared := b.String()
	for i := range rapid.SampledFrom([]int{0, 0, 1, 2, 4}).Draw(t, "sizes") {
		fmt.Fprintf(&b, "[[size]]\nname = \"size %d\"\n", i)
		for _, table := range drawnTables()[:5] {
			if strings.Contains(shared, "["+table.name+"]") && rapid.IntRange(0, 3).Draw(t, "size has "+table.name) == 0 {
				b.WriteString(table.draw(t, "[size.%s]", 0, odd))
			}
		}
	}
	return b.String()
}

// TestAnyDesign does what FuzzDesign does with files that look like designs,
// which random text seldom does.
func TestAnyDesign(t *testing.T) {
	t.Parallel()
	ctx, dir := t.Context(), t.TempDir()
	var read, built, all int
	ask := func(t *rapid.T) {
		text := drawDesign(t)
		if fault := badlyTreated(ctx, dir, []byte(text)); fault != "" {
			t.Fatalf("%s\n%s", fault, text)
		}
		switch status, _, _ := start(ctx, "check", filepath.Join(dir, "d.toml")); status {
		case 0:
			read, built = read+1, built+1
		case 1:
			read++
		}
		all++
	}
	// One design in seven can be read and one in nine be built: of the few of a
	// short run perhaps none, so it goes on until there are as many as in a long one.
	for all < 100 {
		rapid.Check(t, ask)
		if t.Failed() {
			return
		}
	}
	if read < all/20 || built == 0 {
		t.Errorf("of %d designs only %d could be read and %d be built", all, read, built)
	}
}

// TestChangedDesigns does the same with the examples, up to three of their
// figures changed.
func TestChangedDesigns(t *testing.T) {
	t.Parallel()
	texts := exampleDesigns(t)
	ctx, dir := t.Context(), t.TempDir()
	figure := regexp.MustCompile(`= "?[0-9][0-9. /]*"?`)
	values := strings.Fields("-40 -1 0 0.001 0.02 0.5 1 2 5 12 29 40 59 100 300 1000 3000 9999")
	rapid.Check(t, func(t *rapid.T) {
		text := rapid.SampledFrom(texts).Draw(t, "example")
		for range rapid.IntRange(1, 3).Draw(t, "changes") {
			at := rapid.SampledFrom(figure.FindAllStringIndex(text, -1)).Draw(t, "figure")
			text = text[:at[0]] + "= " + rapid.SampledFrom(values).Draw(t, "value") + text[at[1]:]
		}
		if fault := badlyTreated(ctx, dir, []byte(text)); fault != "" {
			t.Fatalf("%s\n%s", fault, text)
		}
	})
}
