package piece_test

import (
	"fmt"
	"math"
	"slices"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"rodsheet/geometry/measure"
	"rodsheet/templates/piece"
	"rodsheet/templates/piece/design"
	"rodsheet/templates/piece/internal/piecetest"
	"rodsheet/templates/wording"
)

// figures returns the figures of errors.
func figures(t *testing.T, errs []error) []string {
	t.Helper()
	var out []string
	for _, err := range errs {
		bound, ok := err.(*measure.BoundError)
		if !ok {
			t.Fatalf("no bound: %v", err)
		}
		out = append(out, wording.Name(bound.Figure))
	}
	return out
}

// Every figure that is wrong by itself is found at once; what hangs on a wrong
// one is not judged.
func TestFaultsAreAllOfThem(t *testing.T) {
	for _, tt := range []struct {
		want   string
		change func(*design.Design)
	}{
		{"", func(*design.Design) {}},
		{"foot circle", func(d *design.Design) { d.Legs.Lean, d.Legs.Given = design.ByFootCircle, 300 }},
		{"overall height, foot circle", func(d *design.Design) {
			// How long the leg is that the taper starts on is not known.
			d.Legs.To, d.Legs.Height, d.Legs.Lean, d.Legs.Given, d.Legs.Taper.Start = design.Overall, 30, design.ByFootCircle, 300, 600
		}},
		{"start, foot circle", func(d *design.Design) {
			d.Legs.Lean, d.Legs.Given, d.Legs.Taper.Start = design.ByFootCircle, 300, 600
		}},
		{"foot, start", func(d *design.Design) { d.Legs.Taper.Foot, d.Legs.Taper.Start = 41, 600 }},
		{"width as milled, depth as milled, breadth as milled", func(d *design.Design) { d.Milled = design.Milled{Width: 50, Depth: 60, Breadth: 70} }},
		{"height, tenon", func(d *design.Design) { d.Legs.Tenon, d.Legs.Height, d.Legs.Taper.Start = 28, 30, 600 }},
		{"inside, depth, thickness of the top", func(d *design.Design) { d.Ring.Inside, d.Ring.Depth, d.Top.Thickness = 0, 0.5, 0 }},
		{"kerf, radius of the top", func(d *design.Design) {
			d.Ring.Width, d.Saw.Kerf, d.Legs.Tenon, d.Top.Diameter, d.Top.Overhang = 10, 11, 5, 0, -300
			d.Legs.Taper = nil
		}},
	} {
		d := piecetest.Low()
		tt.change(&d)
		if got := strings.Join(figures(t, piecetest.Faults(piece.Judge)(d, nil)), ", "); got != tt.want {
			t.Errorf("got %q, want %q", got, tt.want)
		}
	}
}

// keysOf returns the keys that set a figure of a design, by the name of its knob.
func keysOf(knob string) []design.Key {
	table := map[string][]design.Key{
		".Ring.Ring.Sides": {"ring.sides"}, ".Ring.Ring.Inside": {"ring.inside"}, ".Ring.Ring.Width": {"ring.width"}, ".Ring.Ring.Depth": {"ring.depth"},
		".Ring.Plain": {"ring.plain-end"}, ".Ring.Horn": {"ring.horn"}, ".Ring.Slack": {"ring.slack"},
		".Legs.Breadth": {"legs.breadth"}, ".Legs.Tenon": {"legs.tenon"}, ".Legs.Mortise": {"legs.mortise"},
		".Legs.Lean": {"legs.splay", "legs.foot-circle", "legs.foot-spread"}, ".Legs.Given": {"legs.splay", "legs.foot-circle", "legs.foot-spread"},
		".Legs.Height": {"legs.height", "legs.frame-height"}, ".Legs.At": {"legs.mid-to-leg", "legs.clear"}, ".Legs.Clear": {"legs.clear", "legs.mid-to-leg"},
		".Legs.Proud": {"legs.proud"}, ".Legs.Taper.Start": {"legs.taper.start"}, ".Legs.Taper.Foot": {"legs.taper.foot"}, ".Legs.Taper.Faces": {"legs.taper.faces"},
		".Top.Kind": {"top.kind"}, ".Top.Outline": {"top.outline"}, ".Top.Thickness": {"top.thickness"}, ".Top.Diameter": {"top.diameter"},
		".Top.Overhang": {"top.overhang"}, ".Top.Corner": {"top.corner"}, ".Top.CornerSize": {"top.corner-size"},
		".Top.Pads.Diameter": {"top.pads.diameter"}, ".Top.Pads.Height": {"top.pads.height"}, ".Top.Pads.At": {"top.pads.mid-to-pad"},
		".Wood.Density": {"wood.density", "wood.species"}, ".Wood.ExtraLength": {"wood.rough-length"}, ".Wood.Spares": {"wood.spares"},
		".Saw.Kerf": {"saw.kerf"}, ".Saw.Dado": {"saw.dado"},
		".Milled.Width": {"milled.width"}, ".Milled.Depth": {"milled.depth"}, ".Milled.Breadth": {"milled.breadth"}, ".Milled.Kerf": {"milled.kerf"},
	}
	return table[knob]
}

// What is said hangs on no figure in doubt: whatever that is, the same is said.
func TestFaultsHangOnNothingInDoubt(t *testing.T) {
	wild := rapid.OneOf(rapid.Float64Range(0, 1), rapid.Float64Range(0, 60), rapid.Float64Range(-100, 1000),
		rapid.SampledFrom([]float64{0, 1, 2, 3, 4, 5, 8, math.NaN(), math.Inf(1), 10000, 1e-12}))
	rapid.Check(t, func(t *rapid.T) {
		d := piecetest.Bases()[rapid.IntRange(0, 3).Draw(t, "base")]
		all := slices.DeleteFunc(piecetest.Knobs(&d), func(k piecetest.Knob) bool { return keysOf(k.Name) == nil })
		draw := func(what string) piecetest.Knob { return all[rapid.IntRange(0, len(all)-1).Draw(t, what)] }
		for range rapid.IntRange(0, 3).Draw(t, "changes") {
			k := draw("figure")
			k.Set(wild.Draw(t, k.Name))
		}
		var doubts design.Doubts
		var doubtful []piecetest.Knob
		for range rapid.IntRange(1, 2).Draw(t, "doubts") {
			k := draw("in doubt")
			doubts, doubtful = doubts.With(keysOf(k.Name)...), append(doubtful, k)
		}
		said := fmt.Sprint(piecetest.Faults(piece.Judge)(d, doubts))
		for _, k := range doubtful {
			k.Set(wild.Draw(t, k.Name+" instead"))
			if again := fmt.Sprint(piecetest.Faults(piece.Judge)(d, doubts)); again != said {
				t.Fatalf("%s in doubt changes what is said:\n%s\n%s", k.Name, said, again)
			}
		}
	})
}

// Work refuses what has a fault, by the first, and nothing else.
func TestFaultsAreThoseOfWork(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		d := piecetest.Bases()[rapid.IntRange(0, 3).Draw(t, "base")]
		all := piecetest.Knobs(&d)
		for range rapid.IntRange(0, 3).Draw(t, "changes") {
			k := all[rapid.IntRange(0, len(all)-1).Draw(t, "figure")]
			k.Set(rapid.Float64Range(-10, 1000).Draw(t, k.Name))
		}
		faults := piecetest.Faults(piece.Judge)(d, nil)
		_, err := piece.Solve(d)
		if (err == nil) != (len(faults) == 0) || err != nil && err.Error() != faults[0].Error() {
			t.Errorf("%v, but the faults are %v", err, faults)
		}
		seen := map[design.Key]bool{}
		for _, f := range faults {
			for _, key := range design.SetBy(f) {
				if seen[key] {
					t.Errorf("%s twice: %v", key, faults)
				}
				seen[key] = true
			}
		}
	})
}

// Every key on which a figure hangs keeps it from being judged where that key is in
// doubt. An overall height is one with all that stands above the frame: none of it
// unknown, 30 mm are too low.
func TestHeightHangsOnWhatStandsAbove(t *testing.T) {
	d := piecetest.Low()
	d.Legs.To, d.Legs.Height, d.Legs.Taper = design.Overall, 30, nil
	if got := figures(t, piecetest.Faults(piece.Judge)(d, nil)); len(got) == 0 {
		t.Fatal("an overall height of 30 mm is sound")
	}
	for _, key := range []design.Key{"legs.height", "legs.proud", "top.kind", "top.thickness", "top.pads.kind", "top.pads.diameter", "top.pads.height"} {
		if got := figures(t, piecetest.Faults(piece.Judge)(d, design.Doubts{key: true})); len(got) > 0 {
			t.Errorf("%s in doubt: %q", key, got)
		}
	}
}
