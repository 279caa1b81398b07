package design

import (
	"errors"
	"reflect"
	"strings"
	"testing"

	"rodsheet/geometry/joint"
	"rodsheet/geometry/measure"
)

const low = "[[size]]\nname = \"low\"\n"

// sized returns sound, lines changed as by with, and behind it two sizes: one
// with nothing of its own and one with these lines, the first of them line 31.
func sized(own string, changes ...any) string {
	return with(append(changes, 27, low+"[[size]]\nname = \"tall\"\n"+own)...)
}

func TestSizesInherit(t *testing.T) {
	f := must(Read([]byte(sized("[size.legs]\nheight = 600\n[size.legs.taper]\nfoot = 28\n[size.top.pads]\nheight = 9\n[size.milled]\nwidth = 27.5\n[size.saw]\nkerf = 3\n[size.wood]\nspecies = \"beech\"\n[size.ring]\ninside = 240\n")), nil))(t)
	one := must(Read([]byte(sound), nil))(t)
	wantLow := one.Sizes[0]
	wantLow.Size = "low"
	wantTall := one.Sizes[0]
	wantTall.Size = "tall"
	wantTall.Legs.Height = 600
	wantTall.Legs.Taper = &Taper{Start: 90, Foot: 28}
	wantTall.Top.Pads.Height = 9
	wantTall.Milled.Width = 27.5
	wantTall.Saw.Kerf = 3
	wantTall.Wood.Species, wantTall.Wood.Density = "Beech", 717
	wantTall.Ring.Inside = 240
	if want := []Design{wantLow, wantTall}; !reflect.DeepEqual(f.Sizes, want) {
		t.Errorf("got  %+v\nwant %+v", f.Sizes, want)
	}
}

// A key of a group takes the place of the others; a word takes with it what no
// longer has a meaning.
func TestSizesReplace(t *testing.T) {
	tests := []struct {
		name, text string
		got        func(Design) any
		want       any
	}{
		{"foot circle for splay", sized("[size.legs]\nfoot-circle = 640"),
			func(d Design) any { return []any{d.Legs.Lean, d.Legs.Given} }, []any{ByFootCircle, 640.0}},
		{"splay for foot spread", sized("[size.legs]\nsplay = 90e0", 11, "foot-spread = 500"), nil, "32:9 legs.splay of size tall: \"90e0\" has a power of ten | write the figure out"},
		{"frame height for height", sized("[size.legs]\nframe-height = 500"),
			func(d Design) any { return []any{d.Legs.To, d.Legs.Height} }, []any{ToFrame, 500.0}},
		{"place for gap", sized("[size.legs]\nmid-to-leg = 240", 8, "[legs]\nclear = 3", 9, ""),
			func(d Design) any { return []any{d.Legs.At, d.Legs.Clear} }, []any{240.0, 0.0}},
		{"overhang for diameter", sized("[size.top]\noverhang = 70"),
			func(d Design) any { return []any{d.Top.Diameter, d.Top.Overhang} }, []any{0.0, 70.0}},
		{"flush drops the horn", sized("[size.ring]\nplain-end = \"flush\""),
			func(d Design) any { return []any{d.Ring.Plain, d.Ring.Horn} }, []any{FlushEnd, 0.0}},
		{"ring outline drops the diameter", sized("[size.top]\noutline = \"ring\""),
			func(d Design) any { return []any{d.Top.Outline, d.Top.Diameter} }, []any{RingTop, 0.0}},
		{"no top", sized("[size.top]\nkind = \"none\""), func(d Design) any { return d.Top }, Top{}},
		{"no taper", sized("[size.legs.taper]\nfaces = \"none\""), func(d Design) any { return d.Legs.Taper == nil }, true},
		{"no pads", sized("[size.top.pads]\nkind = \"none\""), func(d Design) any { return d.Top.Pads }, Pads{}},
		{"own density", sized("[size.wood]\ndensity = 700"), func(d Design) any { return d.Wood.Density }, 700.0},
	}
	for _, tt := range tests {
		f, err := Read([]byte(tt.text), nil)
		if err != nil {
			if got := complaints(err); got != tt.want {
				t.Errorf("%s: %s", tt.name, got)
			}
			continue
		}
		if got := tt.got(f.Sizes[1]); !reflect.DeepEqual(got, tt.want) {
			t.Errorf("%s: got %v, want %v", tt.name, got, tt.want)
		}
	}
}

// What the stock of all sizes measures says nothing of a size that has its own:
// it goes by the figures it names, and by what its own stock measures.
func TestSizesWithStockOfTheirOwn(t *testing.T) {
	all := Milled{Width: 27.6, Depth: 35.7, Breadth: 39.6, Kerf: 3.1}
	tests := []struct {
		own  string
		want Milled
	}{
		{"[size.ring]\ninside = 240", all},
		{"[size.ring]\nwidth = 32", Milled{Depth: 35.7, Breadth: 39.6, Kerf: 3.1}},
		{"[size.ring]\nwidth = 32\n[size.milled]\nwidth = 31.5", Milled{Width: 31.5, Depth: 35.7, Breadth: 39.6, Kerf: 3.1}},
		{"[size.ring]\ndepth = 44\n[size.legs]\nbreadth = 44\n[size.saw]\nkerf = 2", Milled{Width: 27.6}},
	}
	for _, tt := range tests {
		f := must(Read([]byte(sized(tt.own, 26, "kerf = 3.2\n[milled]\nwidth = 27.6\ndepth = 35.7\nbreadth = 39.6\nkerf = 3.1")), nil))(t)
		if got := f.Sizes[1].Milled; got != tt.want {
			t.Errorf("%s: got %+v, want %+v", tt.own, got, tt.want)
		}
		if got := f.Sizes[0].Milled; got != all {
			t.Errorf("%s: the other size has %+v", tt.own, got)
		}
	}
}

// Sizes do not share what they are made of.
func TestSizesStandAlone(t *testing.T) {
	f := must(Read([]byte(sized("")), nil))(t)
	f.Sizes[0].Legs.Taper.Foot = 1
	if got := f.Sizes[1].Legs.Taper.Foot; got != 26 {
		t.Errorf("the taper of one size changed that of the other to %v", got)
	}
}

func TestSizeMistakes(t *testing.T) {
	tests := []struct{ name, text, want string }{
		{"one name", sized("[[size]]\nname = \"Low\""), "32:8 size.name: a size above has this name | give each size its own"},
		{"no name", sized("[[size]]\n[size.ring]\ninside = 0"), "" +
			"31:3 size: this size has no name | write name = \"low\" below [[size]]\n33:10 ring.inside of size 3: 0 mm must be more than 0 mm"},
		{"name of figures", sized("[[size]]\nname = 4"), "32:8 size.name: a text is wanted, not 4 | a text stands in quotes"},
		{"name of many letters", sized("[[size]]\nname = \"" + strings.Repeat("n", 41) + "\""), "32:8 size.name: the text has 41 characters, the most is 40"},
		{"name that cannot be printed", sized("[[size]]\nname = \"a\\tb\""), "32:8 size.name: the text holds a character that cannot be printed | one line of plain text is wanted"},
		{"one size in single brackets", with(27, "[size]\nname = \"low\""), "27:2 size: a list of sizes is wanted, not a table | write [[size]], below it name = \"low\", and what differs in [size.ring] and so on"},
		{"sizes without brackets", with(2, "size = [\"low\"]"), "2:9 size: a size is wanted, not \"low\" | write [[size]], below it name = \"low\", and what differs in [size.ring] and so on"},
		{"no sizes", with(2, "size = []"), "2:1 size: a list of sizes is wanted, not a list | write [[size]], below it name = \"low\", and what differs in [size.ring] and so on"},
		{"many sizes", with(27, strings.Repeat(low, 13)), ""},
		{"units of a size", sized("units = \"in\""), "31:1 units of size tall: this holds for all sizes | write it at the head of the file"},
		{"misspelt key", sized("[size.ring]\nwidht = 3"), "32:1 ring.widht of size tall: this key is not known | did you mean width?"},
		{"unknown table", sized("[size.rings]"), "31:7 rings of size tall: this key is not known | did you mean ring?"},
		{"figure for a table", sized("ring = 3"), "31:8 ring of size tall: one table is wanted, not 3 | write [size.ring] on a line of its own"},
		{"contradiction within a size", sized("[size.legs]\nsplay = 3\nfoot-circle = 600"),
			"33:1 legs.foot-circle of size tall: splay in line 32 says the same in another way | keep one of splay, foot-circle or foot-spread"},
		{"key that has no meaning with the word of all", sized("[size.ring]\nslack = 0.3"),
			"32:1 ring.slack of size tall: goes with plain-end closed, not with open | without plain-end it is open"},
		{"missing in one size only", sized("[size.legs]\nheight = 500", 12, ""), "9:2 legs of size low: one of height or frame-height is missing"},
		{"missing in all", sized("", 12, ""), "9:2 legs: one of height or frame-height is missing"},
		{"missing with a table of the size", sized("[size.top]\ncorner = \"rounded\"", 19, "outline = \"ring\""), "16:2 top.corner-size of size tall: is missing"},
		{"not read although replaced", sized("[size.ring]\nwidth = 20", 6, "width = true"),
			"6:9 ring.width: a length is wanted, not true | write 28, or with a unit and in quotes \"1 1/8in\""},
		{"impossible in one size", sized("[size.legs]\nbreadth = 20"), "15:1 legs.taper.foot of size tall: foot 26 mm must be less than the breadth of the leg, 20 mm | a taper narrows towards the foot"},
		{"unknown wood", sized("[size.wood]\nspecies = \"plum\""), "32:1 wood.species of size tall: plum is not in the table of woods | give its density in kg/m³: density = 700"},
	}
	for _, tt := range tests {
		_, err := Read([]byte(tt.text), nil)
		got := complaints(err)
		if tt.name == "many sizes" {
			if !strings.Contains(got, "size: there are 13 sizes, the most is 12") {
				t.Errorf("%s: got %s", tt.name, got)
			}
			continue
		}
		if got != tt.want {
			t.Errorf("%s: got\n%s\nwant\n%s", tt.name, got, tt.want)
		}
	}
}

// judged reads a file of which working out one size, by its number, comes to an
// error.
func judged(text string, size int, err error) error {
	n := 0
	_, got := Read([]byte(text), func(Design, Doubts) []error {
		n++
		if n-1 == size {
			return []error{err}
		}
		return nil
	})
	return got
}

func TestJudgedFiguresArePlaced(t *testing.T) {
	two := sized("[size.legs]\nfoot-circle = 640\nbreadth = 36\n[size.milled]\nwidth = 27.5")
	inches := `units = "in"` + "\nring = {sides = 3, inside = 10, width = 1, depth = 1.5}\nlegs = {breadth = 1.5, splay = 10, height = 18}\nwood.density = 600\nsaw.kerf = 0.125\n"
	below := func(figure measure.ID, v float64) error {
		return measure.Below(figure, measure.Length(v), "", measure.Length(0), "tenon.third")
	}
	tests := []struct {
		name string
		file string
		size int
		err  error
		want string
	}{
		{"splay", sound, 0, below("leg.splay", 1), "line 11, column 1: legs.splay: splay 1 mm must be less than 0 mm"},
		{"height", sound, 0, below("leg.height", 1), "line 12, column 1: legs.height: height 1 mm must be less than 0 mm"},
		{"of the base", two, 0, below("leg.splay", 1), "line 11, column 1: legs.splay of size low: splay 1 mm must be less than 0 mm"},
		{"of the size", two, 1, below("legs.foot-circle", 640), "line 32, column 1: legs.foot-circle of size tall: foot circle 640 mm must be less than 0 mm"},
		{"splay that the foot circle sets", two, 1, below("leg.splay", 1), "line 32, column 1: legs.foot-circle of size tall: splay 1 mm must be less than 0 mm"},
		{"own breadth", two, 1, below("bridle.leg", 36), "line 33, column 1: legs.breadth of size tall: leg 36 mm must be less than 0 mm"},
		{"milled width", two, 1, below("ring.width", 27.5), "line 35, column 1: milled.width of size tall: width 27.5 mm must be less than 0 mm"},
		{"designed width", two, 1, below("ring.width", 28), "line 6, column 1: ring.width of size tall: width 28 mm must be less than 0 mm"},
		{"a third of the width", sound, 0, below("legs.tenon", 9), "line 6, column 1: ring.width: tenon 9 mm must be less than 0 mm"},
		{"taper", sound, 0, below("taper.start", 90), "line 14, column 1: legs.taper.start: start 90 mm must be less than 0 mm"},
		{"left out", sound, 0, below("leg.at", 3), "line 9, column 2: legs: mid-length to leg 3 mm must be less than 0 mm"},
		{"table left out", inches, 0, below("taper.start", 25.4), "line 1, column 1: legs.taper: start 1 in must be less than 0 in"},
		{"inches", inches, 0, below("saw.kerf", 25.4), "line 5, column 5: saw.kerf: kerf 1 in must be less than 0 in"},
		{"no such figure", sound, 0, below("moon", 1), "line 1, column 1: design: moon 1 mm must be less than 0 mm"},
		{"no figure", sound, 0, errors.New("too late"), "line 1, column 1: too late"},
		{"no error", sound, 0, nil, ""},
	}
	for _, tt := range tests {
		got := ""
		if err := judged(tt.file, tt.size, tt.err); err != nil {
			got = err.Error()
		}
		if got != tt.want {
			t.Errorf("%s: got %q, want %q", tt.name, got, tt.want)
		}
	}
	if got := complaints(judged(sound, 0, below("leg.splay", 1))); !strings.HasSuffix(got, " | a third of the width is usual") {
		t.Errorf("hint in %q", got)
	}
}

// Every error of the geometry that a design can meet has a key of its own.
func TestEveryFigureHasAKey(t *testing.T) {
	f := must(Read([]byte(sound), nil))(t)
	d := f.Sizes[0]
	frame := joint.Frame{Ring: d.Ring.Ring, Leg: joint.Leg{Breadth: 40, Thickness: 28, Height: 450, Splay: 0.2, At: 200}, Head: 9}
	var errs []error
	try := func(change func(*joint.Frame)) {
		broken := frame
		change(&broken)
		errs = append(errs, broken.Check())
	}
	for _, bad := range []float64{-1, 1e6} {
		try(func(f *joint.Frame) { f.Ring.Sides = int(bad) })
		try(func(f *joint.Frame) { f.Ring.Inside = bad })
		try(func(f *joint.Frame) { f.Ring.Width = bad })
		try(func(f *joint.Frame) { f.Ring.Depth = bad })
		try(func(f *joint.Frame) { f.Leg.Breadth = bad })
		try(func(f *joint.Frame) { f.Leg.Thickness = bad })
		try(func(f *joint.Frame) { f.Leg.Height = bad })
		try(func(f *joint.Frame) { f.Leg.Splay = bad })
		try(func(f *joint.Frame) { f.Leg.At = bad })
		try(func(f *joint.Frame) { f.Head = bad })
		lap := frame.Ring.EndLap(300, bad)
		errs = append(errs, lap.Check())
		lap.Kerf, lap.At = 3, bad
		errs = append(errs, lap.Check())
		taper := joint.Taper{Length: 450, Top: 40, Foot: 26, Start: bad}
		errs = append(errs, taper.Check())
		taper.Start, taper.Foot = 90, bad
		errs = append(errs, taper.Check())
		taper.Foot, taper.Length = 26, bad
		errs = append(errs, taper.Check())
		errs = append(errs, joint.Glass{Area: bad, Thickness: 5}.Check(), joint.Glass{Area: 1, Thickness: bad}.Check(),
			joint.Movement{Width: 1, Coefficient: 0.002, From: bad, To: 8}.Check())
	}
	for _, err := range errs {
		if got := judged(sound, 0, err); err != nil && (got == nil || strings.Contains(got.Error(), "design:")) {
			t.Errorf("no key for %v", err)
		}
	}
}
