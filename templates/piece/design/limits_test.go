package design

import (
	"fmt"
	"strings"
	"testing"

	"rodsheet/geometry/measure"
)

// setKey returns sound with a key in its table set to a value, in the place of
// the one that stands there.
func setKey(key Key, value string) string { return setIn(sound, key, value) }

// setIn does so in another text.
func setIn(text string, key Key, value string) string {
	table, word := string(key.table()), key.word()
	var out []string
	here, done := "", false
	for _, line := range strings.Split(text, "\n") {
		if strings.HasPrefix(line, "[") {
			here = strings.Trim(line, "[]")
		}
		if here == table && strings.HasPrefix(line, word+" =") {
			continue
		}
		out = append(out, line)
		if line == "["+table+"]" {
			out, done = append(out, word+" = "+value), true
		}
	}
	if !done {
		out = append(out, "["+table+"]", word+" = "+value)
	}
	return strings.Join(out, "\n")
}

// A limited is what keys take at least and at most, and what lies beyond.
type limited struct{ least, under, most, over, keys string }

// tryLimits tries every figure of a kind at its limits, and beyond, in a sound text.
func tryLimits(t *testing.T, kind Kind, cases []limited, base func(Key) string) {
	t.Helper()
	tried := map[Key]bool{}
	for _, tt := range cases {
		for _, word := range strings.Fields(tt.keys) {
			key := Key(word)
			tried[key] = true
			for _, value := range []string{tt.least, tt.most} {
				if _, err := Read([]byte(setIn(base(key), key, value)), nil); err != nil {
					t.Errorf("%s = %s: %s", key, value, complaints(err))
				}
			}
			for value, limit := range map[string]string{tt.under: tt.least, tt.over: tt.most} {
				_, err := Read([]byte(setIn(base(key), key, value)), nil)
				got := complaints(err)
				if limit == "0.001" {
					limit = "0"
				}
				if !strings.Contains(got, " "+word+": "+value) || !strings.Contains(got, " "+limit) || strings.Contains(got, "\n") {
					t.Errorf("%s = %s: got %q", key, value, got)
				}
			}
		}
	}
	allTried(t, kind, tried)
}

// A complaint is what is said of a text, and all that is.
type complaint struct{ name, text, want string }

func complainsOf(t *testing.T, all []complaint) {
	t.Helper()
	for _, tt := range all {
		_, err := Read([]byte(tt.text), nil)
		if got := complaints(err); tt.want == "" && err != nil || !strings.Contains(got, tt.want) || strings.Contains(got, "\n") {
			t.Errorf("%s: got %q, want %q", tt.name, got, tt.want)
		}
	}
}

// everyStart reads the starting texts of a kind, and fails where one is not what was asked.
func everyStart(t *testing.T, kind Kind, asAsked func(n int, d Design) bool) {
	t.Helper()
	fewest, most, _ := kind.Sides()
	for n := fewest; n <= most; n++ {
		for _, unit := range []measure.Unit{measure.Millimetre, measure.Inch} {
			text := must(Start(kind, n, unit))(t)
			file, err := Read(text, nil)
			if err != nil {
				t.Fatalf("%d: %s\n%s", n, complaints(err), text)
			}
			if !asAsked(n, file.Sizes[0]) {
				t.Errorf("%d: %+v", n, file.Sizes[0])
			}
		}
	}
}

// Every figure at its limits, which are read, and beyond them.
func TestLimits(t *testing.T) {
	tests := []struct {
		key               Key
		least, under      string
		most, over        string
		below, above      string // what is said of under and over
		replaces, besides string // a line to take out, a line to put into the table
		wooden            bool   // with a top of wood
	}{
		{key: "ring.sides", least: "3", under: "2", most: "8", over: "9", below: "2 must be at least 3", above: "9 must be at most 8"},
		{key: "ring.inside", least: "0.001", under: "0", most: "10000", over: "10000.01"},
		{key: "ring.width", least: "1", under: "0.999", most: "1000", over: "1000.01"},
		{key: "ring.depth", least: "1", under: "0.999", most: "1000", over: "1000.01"},
		{key: "ring.horn", least: "0", under: "-0.001", most: "1000", over: "1000.01"},
		{key: "ring.slack", least: "0", under: "-0.001", most: "10", over: "10.01", besides: `plain-end = "closed"`},
		{key: "legs.breadth", least: "26.001", under: "0.999", most: "1000", over: "1000.01", below: "0.999 mm must be at least 1 mm"},
		{key: "legs.splay", least: "0", under: "-0.01", most: "60", over: "60.01", below: "-0.01° must be at least 0°", above: "60.01° must be at most 60°"},
		{key: "legs.foot-circle", least: "0.001", under: "0", most: "20000", over: "20000.01", replaces: "splay = 14"},
		{key: "legs.foot-spread", least: "0.001", under: "0", most: "20000", over: "20000.01", replaces: "splay = 14"},
		{key: "legs.height", least: "0.001", under: "0", most: "10000", over: "10000.01"},
		{key: "legs.frame-height", least: "0.001", under: "0", most: "10000", over: "10000.01", replaces: "height = 450"},
		{key: "legs.mid-to-leg", least: "0.001", under: "0", most: "10000", over: "10000.01"},
		{key: "legs.clear", least: "0", under: "-0.001", most: "1000", over: "1000.01"},
		{key: "legs.tenon", least: "1", under: "0.999", most: "27.99", over: "1000.01"},
		{key: "legs.proud", least: "0", under: "-0.001", most: "1000", over: "1000.01"},
		{key: "legs.taper.start", least: "0", under: "-0.001", most: "3000", over: "3000.01"},
		{key: "legs.taper.foot", least: "1", under: "0.999", most: "39.99", over: "600.01"},
		{key: "top.thickness", least: "2", under: "0.999", most: "25", over: "200.01", below: "0.999 mm must be at least 1 mm"},
		{key: "top.diameter", least: "0.001", under: "0", most: "10000", over: "10000.01"},
		{key: "top.overhang", least: "-27.99", under: "-1000.01", most: "10000", over: "10000.01", replaces: "diameter = 560",
			below: "-1000.01 mm must be at least -1000 mm"},
		{key: "top.corner-size", least: "0.001", under: "0", most: "10000", over: "10000.01", replaces: "diameter = 560", besides: "outline = \"ring\"\ncorner = \"rounded\""},
		{key: "top.pads.diameter", least: "1", under: "0.999", most: "1000", over: "1000.01"},
		{key: "top.pads.height", least: "1", under: "0.999", most: "1000", over: "1000.01"},
		{key: "top.pads.mid-to-pad", least: "-10000", under: "-10000.01", most: "10000", over: "10000.01",
			below: "-10000.01 mm must be at least -10000 mm"},
		{key: "top.fixing.screw", least: "0", under: "-0.001", most: "300", over: "300.01", besides: "kind = \"buttons\"", wooden: true},
		{key: "prices.wood-per-m3", least: "0", under: "-1", most: "1000000", over: "1000001", below: "-1 must be at least 0", above: "1000001 must be at most 1000000"},
		{key: "prices.wood-per-board-foot", least: "0", under: "-1", most: "1000000", over: "1000001", below: "-1 must be at least 0", above: "1000001 must be at most 1000000"},
		{key: "prices.glass-per-m2", least: "0", under: "-1", most: "1000000", over: "1000001", below: "-1 must be at least 0", above: "1000001 must be at most 1000000"},
		{key: "prices.glass-per-square-foot", least: "0", under: "-1", most: "1000000", over: "1000001", below: "-1 must be at least 0", above: "1000001 must be at most 1000000"},
		{key: "wood.density", least: "50", under: "49.9", most: "1500", over: "1500.1", below: "49.9 must be at least 50", above: "1500.1 must be at most 1500"},
		{key: "wood.rough-length", least: "0", under: "-0.001", most: "1000", over: "1000.01"},
		{key: "wood.rough-width", least: "0", under: "-0.001", most: "100", over: "100.01"},
		{key: "wood.rough-thickness", least: "0", under: "-0.001", most: "100", over: "100.01"},
		{key: "wood.spares", least: "0", under: "-1", most: "100", over: "101", below: "-1 must be at least 0", above: "101 must be at most 100"},
		{key: "wood.tests", least: "0", under: "-1", most: "100", over: "101", below: "-1 must be at least 0", above: "101 must be at most 100"},
		{key: "wood.waste", least: "0", under: "-0.1", most: "300", over: "300.1", below: "-0.1 must be at least 0", above: "300.1 must be at most 300"},
		{key: "saw.kerf", least: "0.001", under: "0", most: "12", over: "12.01"},
		{key: "saw.blade-height", least: "0.001", under: "0", most: "1000", over: "1000.01"},
		{key: "saw.dado", least: "0.001", under: "0", most: "100", over: "100.01"},
		{key: "saw.stop-reach", least: "0.001", under: "0", most: "10000", over: "10000.01"},
		{key: "milled.width", least: "0.001", under: "0", most: "1000", over: "1000.01"},
		{key: "milled.depth", least: "0.001", under: "0", most: "1000", over: "1000.01"},
		{key: "milled.breadth", least: "26.001", under: "0", most: "1000", over: "1000.01"},
		{key: "milled.kerf", least: "0.001", under: "0", most: "12", over: "12.01"},
	}
	tried := map[Key]bool{}
	for _, tt := range tests {
		tried[tt.key] = true
		text := func(value string) []byte {
			s := strings.Replace(setKey(tt.key, value), tt.replaces+"\n", "", min(1, len(tt.replaces)))
			if tt.wooden {
				s = strings.Replace(s, `"glass"`, `"wood"`, 1)
			}
			head := "[" + string(tt.key.table()) + "]\n"
			return []byte(strings.Replace(s, head, head+tt.besides+"\n", 1))
		}
		for _, value := range []string{tt.least, tt.most} {
			if _, err := Read(text(value), nil); err != nil {
				t.Errorf("%s = %s: %s", tt.key, value, complaints(err))
			}
		}
		below, above := tt.below, tt.above
		if below == "" {
			relation := "more than"
			limit := "0"
			if tt.least == "0" || tt.least == "1" {
				relation, limit = "at least", tt.least
			}
			below = fmt.Sprintf("%s mm must be %s %s mm", tt.under, relation, limit)
		}
		if above == "" {
			above = tt.over + " mm must be at most "
		}
		for value, want := range map[string]string{tt.under: below, tt.over: above} {
			_, err := Read(text(value), nil)
			if got := complaints(err); !strings.Contains(got, " "+string(tt.key)+": "+want) || strings.Contains(got, "\n") {
				t.Errorf("%s = %s: got %q, want %q", tt.key, value, got, want)
			}
		}
	}
	allTried(t, RingKind, tried)
}

// allTried asks that the limits of every figure of a kind, and of those of all kinds,
// were tried.
func allTried(t *testing.T, kind Kind, tried map[Key]bool) {
	t.Helper()
	for _, f := range fields() {
		k, _, own := schemaOf(f.key)
		if own && k != kind || !own && kind != RingKind {
			continue
		}
		probe := &node{kind: isWhole, text: "1"}
		if _, bad := f.read(probe, 0); bad == nil && !tried[f.key] {
			t.Errorf("the limits of %s are not tried", f.key)
		}
	}
}
