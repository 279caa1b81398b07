package design_test

import (
	"errors"
	"fmt"
	"regexp"
	"slices"
	"strings"
	"testing"

	"rodsheet/geometry/measure"
	"rodsheet/geometry/solid"
	"rodsheet/templates/piece"
	"rodsheet/templates/piece/design"
	"rodsheet/templates/piece/internal/piecetest"
)

// starts calls f with every starting design.
func starts(t *testing.T, f func(t *testing.T, text string, file design.File)) {
	t.Helper()
	for sides := 3; sides <= 8; sides++ {
		for _, unit := range []measure.Unit{measure.Millimetre, measure.Inch} {
			t.Run(fmt.Sprintf("%d sides, %s", sides, unit), func(t *testing.T) {
				text, err := design.Start(design.RingKind, sides, unit)
				if err != nil {
					t.Fatal(err)
				}
				file, err := design.Read(text, nil)
				if err != nil {
					t.Fatalf("%v\n%s", err, text)
				}
				f(t, string(text), file)
			})
		}
	}
}

func TestStartIsSound(t *testing.T) {
	starts(t, func(t *testing.T, _ string, file design.File) {
		p, err := piece.Solve(file.Sizes[0])
		if err != nil {
			t.Fatal(err)
		}
		parts := p.Parts()
		for i, a := range parts {
			for _, b := range parts[:i] {
				for _, c := range solid.Clash(a, b) {
					t.Errorf("%s and %s clash: %.3f mm³", a.Name, b.Name, c.Volume())
				}
			}
		}
		if got := p.Overall(); got < 440 || got > 460 {
			t.Errorf("the table is %.0f mm high", got)
		}
		// A splay of 11 to 16 degrees, feet not within the rim: common practice,
		// no source.
		if splay := measure.Degrees(p.Frame.Leg.Splay); splay < 11 || splay > 16 {
			t.Errorf("the legs lean %.1f°", splay)
		}
		if p.FootRadius() < p.TopRadius() {
			t.Errorf("the feet stand %.0f mm from the centre, the rim %.0f", p.FootRadius(), p.TopRadius())
		}
	})
}

// A key that is commented out can be used as it is written there: alone, in the
// place of another of its group.
func TestStartExplainsEveryKey(t *testing.T) {
	instead := map[string][]string{
		"foot-circle": {"splay"}, "foot-spread": {"splay"}, "frame-height": {"height"}, "mid-to-leg": {"clear"},
		"slack": {"plain-end closed"}, "points": {"diameter", "overhang", "corner", "corner-size", "outline free"},
		"corner": {"diameter", "outline ring", "corner-size 20"}, "corner-size": {"diameter", "outline ring", "corner rounded"},
		"diameter": {"overhang", "corner", "corner-size", "outline round"}, "overhang": {"diameter"},
	}
	starts(t, func(t *testing.T, text string, _ design.File) {
		before, pads, _ := strings.Cut(text, "# [top.pads]")
		lines := strings.Split(before, "\n")
		if pads != "" {
			checkPads(t, text)
			lines = append(lines, strings.Split(pads[strings.Index(pads, "[wood]"):], "\n")...)
		}
		body := strings.Join(lines, "\n")
		body, _, _ = strings.Cut(body, "# [[size]]")
		for i, line := range strings.Split(body, "\n") {
			m := commented.FindStringSubmatch(line)
			if m == nil {
				continue
			}
			changed := strings.Split(body, "\n")
			changed[i] = line[2:]
			out := replaced(changed, i, instead[m[1]])
			if _, err := design.Read([]byte(out), nil); err != nil {
				t.Errorf("%s: %v", line, err)
			}
		}
	})
}

var commented = regexp.MustCompile(`^# ([a-z-]+) = `)

// replaced takes out lines of the same table that set one of the keys, or sets
// them where a word stands behind.
func replaced(lines []string, at int, keys []string) string {
	from := at
	for from > 0 && !strings.HasPrefix(lines[from], "[") {
		from--
	}
	for _, key := range keys {
		key, word, set := strings.Cut(key, " ")
		if set && word != "20" {
			word = `"` + word + `"`
		}
		found := false
		for i := from + 1; i < len(lines) && !strings.HasPrefix(lines[i], "["); i++ {
			if strings.HasPrefix(lines[i], key+" =") && i != at {
				lines[i], found = "", true
				if set {
					lines[i] = key + " = " + word
				}
			}
		}
		if set && !found {
			lines[at] += "\n" + key + " = " + word
		}
	}
	return strings.Join(lines, "\n")
}

// checkPads takes the marks off the whole table of the pads.
func checkPads(t *testing.T, text string) {
	t.Helper()
	lines := strings.Split(text, "\n")
	for i := slices.IndexFunc(lines, func(l string) bool { return strings.HasPrefix(l, "# [top.pads]") }); lines[i] != ""; i++ {
		lines[i] = strings.TrimPrefix(lines[i], "# ")
	}
	file, err := design.Read([]byte(strings.Join(lines, "\n")), nil)
	if err != nil {
		t.Fatal(err)
	}
	if file.Sizes[0].Top.Pads.Diameter == 0 {
		t.Error("no pads")
	}
}

// The sizes at the end, taken from behind their marks, are two.
func TestStartSizes(t *testing.T) {
	starts(t, func(t *testing.T, text string, _ design.File) {
		at := strings.Index(text, "\n# [[size]]")
		text = text[:at] + strings.ReplaceAll(text[at:], "\n# ", "\n")
		file, err := design.Read([]byte(text), nil)
		if err != nil {
			t.Fatal(err)
		}
		if len(file.Sizes) != 2 || file.Sizes[1].Size != "tall" {
			t.Fatalf("%d sizes", len(file.Sizes))
		}
		if items := file.Sizes[1].Items; len(items) != 1 || items[0].Count != 3 || !items[0].Price.Given {
			t.Errorf("items: %v", items)
		}
		if p, err := piece.Solve(file.Sizes[1]); err != nil || p.Overall() < 540 {
			t.Errorf("%v; %.0f mm high", err, p.Overall())
		}
	})
}

func TestStartRefuses(t *testing.T) {
	for _, sides := range []int{-1, 0, 2, 9, 1 << 40} {
		if text, err := design.Start(design.RingKind, sides, measure.Millimetre); err == nil {
			t.Errorf("%d sides: %s", sides, text)
		}
	}
}

// Whatever cannot be worked out is blamed on a key of the file.
func TestWorkIsLocated(t *testing.T) {
	figure := regexp.MustCompile(`(?m)^([a-z-]+ = )[^\[\n]*?(?: +#.*)?$`)
	tried, failed := 0, 0
	starts(t, func(t *testing.T, text string, _ design.File) {
		for _, at := range figure.FindAllStringSubmatchIndex(text, -1) {
			for _, value := range []string{"0.001", "0.5", "2", "30", "59", "800", "9999"} {
				changed := text[:at[3]] + value + text[at[1]:]
				if _, err := design.Read([]byte(changed), nil); err != nil {
					continue
				}
				tried++
				_, err := design.Read([]byte(changed), piecetest.Faults(piece.Judge))
				if err == nil {
					continue
				}
				failed++
				for _, got := range err.(design.Mistakes) {
					if got.Line == 1 || strings.HasPrefix(got.Text, "design:") {
						t.Errorf("%s%s: %v", text[at[2]:at[3]], value, got)
					}
				}
			}
		}
	})
	if tried < 500 || failed < 100 {
		t.Errorf("only %d designs tried, %d of them failed", tried, failed)
	}
}

// subjects returns the keys that mistakes are about, each behind its line.
func subjects(err error) []string {
	var all design.Mistakes
	errors.As(err, &all)
	var out []string
	for _, m := range all {
		key, _, _ := strings.Cut(m.Text, ": ")
		out = append(out, fmt.Sprintf("%d %s", m.Line, key))
	}
	return out
}

// All mistakes at once: what cannot be read, and what cannot be made. Of a size
// with a mistake whatever does not hang on it is judged all the same.
func TestAllMistakesAtOnce(t *testing.T) {
	const frame = "[ring]\nsides = 3\ninside = 260\nwidth = 28\ndepth = 36\n[legs]\nbreadth = 36\nfoot-circle = 300\nheight = 450\nclear = 3\n" +
		"[legs.taper]\nstart = 90\nfoot = 24\n[wood]\nspecies = \"white ash\"\n[saw]\nkerf = 3\n"
	const low, tall = "[[size]]\nname = \"low\"\n", "[[size]]\nname = \"tall\"\n"
	pane := "[top]\nkind = \"glass\"\nthickness = 8\noutline = \"free\"\npoints = [[-300, 300], [300, 300], [300, -300], [-300, -300]]\n"
	instead := func(pairs ...string) string { return strings.NewReplacer(pairs...).Replace(frame) }
	for _, tt := range []struct{ name, text, want string }{
		{"impossible", frame, "8 legs.foot-circle"},
		{"impossible and misspelt", instead("species", "speces"), "8 legs.foot-circle, 14 wood, 15 wood.speces"},
		{"too low as well", instead("450", "20"), "8 legs.foot-circle, 9 legs.height"},
		{"start below the foot as well", instead("90", "600"), "8 legs.foot-circle, 12 legs.taper.start"},
		{"in both sizes", frame + low + tall, "8 legs.foot-circle"},
		{"in the base, with a mistake in each size", frame + low + "[size.legs]\nheigth = 500\n" + tall + "[size.wood]\nspares = 1000\n",
			"8 legs.foot-circle, 21 legs.heigth of size low, 25 wood.spares of size tall"},
		{"put right by a size", frame + low + tall + "[size.legs]\nsplay = 12\n", "8 legs.foot-circle of size low"},
		{"clockwise, beside a misspelt key", instead("300", "700") + pane + "[top.pads]\ndiamter = 12\nheight = 3\n",
			"22 top.points, 23 top.pads.diameter, 24 top.pads.diamter"},

		{"what hangs on a misspelt key", instead("inside", "insde"), "1 ring.inside, 3 ring.insde"},
		{"what hangs on one that is like none", instead("clear", "gap"), "10 legs.gap"},
		{"unless it stands in another table", frame + "colour = 3\n", "8 legs.foot-circle, 18 saw.colour"},
		{"what hangs on a key in the wrong table", instead("clear = 3\n", "") + "clear = 3\n", "17 saw.clear"},
		{"what hangs on a key misspelt for a size", frame + low + tall + "[size.ring]\ninsid = 100\n", "8 legs.foot-circle of size low, 23 ring.insid of size tall"},
		{"even where only two figures meet", frame + low + "[size.legs]\nsplay = 9\n" + tall + "[size.ring]\nwidht = 8\nsides = 8\ninside = 40\n[size.legs]\nsplay = 9\n", "25 ring.widht of size tall"},
		{"misspelt for all, given by a size", instead("inside", "insde") + low + tall + "[size.ring]\ninside = 260\n",
			"1 ring.inside of size low, 3 ring.insde, 8 legs.foot-circle of size tall"},
		{"what hangs on an unknown unit", "units = \"inch\"\n" + frame, "1 units"},
		{"what hangs on a key that stands twice", instead("breadth = 36", "breadth = 36\nbreadth = 40"), "8 "},
		{"what hangs on two that contradict", instead("clear = 3", "clear = 3\nmid-to-leg = 190"), "11 legs.mid-to-leg"},
		{"what a misspelt word would have gone with", instead("[legs]", "plain-ent = \"closed\"\nslack = 0.3\n[legs]", "300", "700"), "6 ring.plain-ent"},
		{"what hangs on a table that is no table", instead("[ring]", "[[ring]]"), "1 ring"},
	} {
		_, err := design.Read([]byte(tt.text), piecetest.Faults(piece.Judge))
		got := strings.Join(subjects(err), ", ")
		if tt.name == "what hangs on a table that is no table" || strings.HasSuffix(tt.want, " ") {
			if !strings.HasPrefix(got, tt.want) || strings.Contains(got, "foot-circle") {
				t.Errorf("%s: got %s", tt.name, err)
			}
			continue
		}
		if got != tt.want {
			t.Errorf("%s: got %s, want %s\n%v", tt.name, got, tt.want, err)
		}
	}
}

// A misspelt key, or table, is one mistake, and no figure beside it is blamed for
// what it would have said: two where it must be given.
func TestMisspeltKeysMakeNoNoise(t *testing.T) {
	name := regexp.MustCompile(`(?m)^(?:\[[a-z.]*?)?([a-z-]+)(?: = |\])`)
	starts(t, func(t *testing.T, text string, _ design.File) {
		for _, at := range name.FindAllStringSubmatchIndex(text, -1) {
			key := text[at[2]:at[3]]
			if key == "units" {
				continue // without them a fraction can be read in two ways
			}
			for _, other := range []string{key + "x", "zzzzzzzzzzzz"} {
				_, err := design.Read([]byte(text[:at[2]]+other+text[at[3]:]), piecetest.Faults(piece.Judge))
				var all design.Mistakes
				errors.As(err, &all)
				for _, m := range all {
					if !strings.Contains(m.Text, other) && !(strings.Contains(m.Text, key) && strings.HasSuffix(m.Text, "missing")) {
						t.Errorf("%s for %s: %v", other, key, err)
					}
				}
			}
		}
	})
}
