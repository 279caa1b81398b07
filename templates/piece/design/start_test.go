package design_test

import (
	"fmt"
	"regexp"
	"slices"
	"strings"
	"testing"

	"rodsheet/geometry/measure"
	"rodsheet/geometry/solid"
	"rodsheet/templates/piece"
	"rodsheet/templates/piece/design"
)

// starts calls f with every starting design.
func starts(t *testing.T, f func(t *testing.T, text string, file design.File)) {
	t.Helper()
	for sides := 3; sides <= 8; sides++ {
		for _, unit := range []measure.Unit{measure.Millimetre, measure.Inch} {
			t.Run(fmt.Sprintf("%d sides, %s", sides, unit), func(t *testing.T) {
				text, err := design.Start(sides, unit)
				if err != nil {
					t.Fatal(err)
				}
				file, err := design.Read(text)
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
		p, err := piece.Work(file.Sizes[0])
		if err != nil {
			t.Fatal(file.Locate(0, err))
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
			if _, err := design.Read([]byte(out)); err != nil {
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
	for !strings.HasPrefix(lines[from], "[") {
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
	file, err := design.Read([]byte(strings.Join(lines, "\n")))
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
		at := strings.Index(text, "# [[size]]")
		text = text[:at] + strings.ReplaceAll(text[at:], "# ", "")
		file, err := design.Read([]byte(text))
		if err != nil {
			t.Fatal(err)
		}
		if len(file.Sizes) != 2 || file.Sizes[1].Size != "tall" {
			t.Fatalf("%d sizes", len(file.Sizes))
		}
		if p, err := piece.Work(file.Sizes[1]); err != nil || p.Overall() < 540 {
			t.Errorf("%v; %.0f mm high", err, p.Overall())
		}
	})
}

func TestStartRefuses(t *testing.T) {
	for _, sides := range []int{-1, 0, 2, 9, 1 << 40} {
		if text, err := design.Start(sides, measure.Millimetre); err == nil {
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
				file, err := design.Read([]byte(changed))
				if err != nil {
					continue
				}
				tried++
				if _, err = piece.Work(file.Sizes[0]); err == nil {
					continue
				}
				failed++
				if got := file.Locate(0, err); got.Line == 1 || strings.HasPrefix(got.Text, "design:") {
					t.Errorf("%s%s: %v", text[at[2]:at[3]], value, got)
				}
			}
		}
	})
	if tried < 500 || failed < 100 {
		t.Errorf("only %d designs tried, %d of them failed", tried, failed)
	}
}
