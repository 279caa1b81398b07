package shop

import (
	"math"
	"slices"
	"testing"

	"rodsheet/templates/piece"
	"rodsheet/templates/piece/design"
	"rodsheet/templates/piece/internal/piecetest"
)

// done returns the kinds of step in working order, each named once in a row.
func done(t *testing.T, d design.Design) []Do {
	t.Helper()
	var out []Do
	for _, s := range stepsOf([]piece.Piece{piecetest.Worked(t, d)}) {
		if len(out) == 0 || out[len(out)-1] != s.Do {
			out = append(out, s.Do)
		}
	}
	return out
}

// What the order of work hangs on (common practice, no source): what cannot be reached
// later is sanded before the glue, a blade is changed back, and glass comes last.
func TestFinishAndBladesInTheirPlaces(t *testing.T) {
	wood := func(d *design.Design) {
		d.Top = design.Top{Kind: design.WoodTop, Outline: design.RingTop, Overhang: 40, Thickness: 20, Fixing: design.Fixing{Kind: design.Screws}}
	}
	for name, tt := range map[string]struct {
		change func(*design.Design)
		order  []Do // as they follow each other, others between
		never  []Do
	}{
		"glass":      {func(*design.Design) {}, []Do{Sand, GlueLegs, FitPads, Sand, Finish, FitTop}, []Do{ChangeBlade, SawTop, DrillFixings}},
		"bumpers":    {func(d *design.Design) { d.Top.Pads.Bumpers = true }, []Do{GlueRing, Finish, FitPads, FitTop}, nil},
		"wood":       {wood, []Do{TrimPlainEnd, DrillFixings, SawTop, Sand, GlueLegs, GlueRing, Sand, Finish, FitTop}, []Do{FitPads}},
		"flat tooth": {func(d *design.Design) { d.Saw.FlatTooth = true }, []Do{Crosscut, ChangeBlade, TestLap, CutLap, CutCheeks, ChangeBlade, CutTaper}, nil},
		"dado":       {func(d *design.Design) { d.Saw.Dado = 20 }, []Do{CutLap, ChangeBlade, OpenEnd, ChangeBlade, DryRing}, nil},
		"too low":    {func(d *design.Design) { d.Saw.Dado, d.Saw.FlatTooth, d.Saw.Highest = 20, true, 10 }, nil, []Do{ChangeBlade}},
		"too wide":   {func(d *design.Design) { d.Saw.Dado = 30 }, nil, []Do{ChangeBlade}},
	} {
		d := piecetest.Low()
		tt.change(&d)
		got, at := done(t, d), 0
		for _, want := range tt.order {
			i := slices.Index(got[at:], want)
			if i < 0 {
				t.Errorf("%s: no step %d behind those before it: %v", name, want, got)
				break
			}
			at += i + 1
		}
		for _, never := range tt.never {
			if slices.Contains(got, never) {
				t.Errorf("%s: step %d is none of its: %v", name, never, got)
			}
		}
		if last := got[len(got)-1]; last != FitTop {
			t.Errorf("%s: step %d comes last", name, last)
		}
	}
}

// A guard can stay only where the blade comes through a part that lies flat.
func TestGuards(t *testing.T) {
	d := piecetest.Low()
	for _, c := range NewPlan([]piece.Piece{piecetest.Worked(t, d)}).Cards {
		guard := c.Guard()
		switch {
		case (c.How == AwayFromSaw || c.Hand) != (guard == ""):
			t.Errorf("card %d: %q", c.Number, guard)
		case guard == "guard-stays" && (!c.Through || c.How != OnGauge):
			t.Errorf("card %d keeps its guard", c.Number)
		}
	}
}

// Three feet never rock: more are levelled. Corners of a top are worked by their size, and
// a round top stands past the middle of each side by its radius less that of the circle
// within the ring's outer sides, 260/(2·tan 60°) + 28 mm.
func TestWhatTheTopAndTheFeetTake(t *testing.T) {
	said := func(d design.Design, do Do, id NoteID) (out []Note) {
		for _, s := range only(stepsOf(piecetest.WorkedAll(t, d)), do) {
			for _, n := range s.Then.All() {
				if n.ID == id {
					out = append(out, n)
				}
			}
		}
		return out
	}
	d := piecetest.Low()
	d.Ring.Inside, d.Ring.Width, d.Top.Outline, d.Top.Diameter = 260, 28, design.RoundTop, 530
	got := said(d, FitTop, "same-overhang")
	if len(got) != 1 || math.Abs(got[0].Args[0].Figure.Value-(265-260/(2*math.Tan(math.Pi/3))-28)) > 1e-6 {
		t.Errorf("overhang %v", got)
	}
	for sides, want := range map[int]int{3: 0, 4: 1, 6: 1} {
		d.Ring.Sides = sides
		if got := said(d, Sand, "level-soles"); len(got) != want {
			t.Errorf("%d feet: %v", sides, got)
		}
	}
	d.Top = design.Top{Kind: design.WoodTop, Outline: design.RingTop, Overhang: 40, Thickness: 20, CornerSize: 15}
	for corner, want := range map[design.Corner][2]int{design.SharpCorner: {}, design.ClippedCorner: {1, 0}, design.RoundedCorner: {0, 1}} {
		d.Top.Corner = corner
		if clip, round := said(d, SawTop, "clip-corners"), said(d, SawTop, "round-corners"); len(clip) != want[0] || len(round) != want[1] {
			t.Errorf("corner %v: %v %v", corner, clip, round)
		}
	}
}
