package piece_test

import (
	"errors"
	"fmt"
	"math"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"rodsheet/geometry"
	"rodsheet/geometry/joint"
	"rodsheet/geometry/measure"
	"rodsheet/templates/piece"
	"rodsheet/templates/piece/design"
	"rodsheet/templates/piece/internal/piecetest"
	"rodsheet/templates/wording"
)

// refused asks for a design to be refused for one figure, in given words.
func refused(t *testing.T, d design.Design, figure, words string) {
	t.Helper()
	_, err := piece.Solve(d)
	var bound *measure.BoundError
	if !errors.As(err, &bound) {
		t.Errorf("%s: got error %v, want a bound", figure, err)
		return
	}
	if line, _ := wording.Fault(bound, d.Unit); wording.Name(bound.Figure) != figure || !strings.Contains(line, words) {
		t.Errorf("got %q, want figure %q and words %q", line, figure, words)
	}
}

func TestRefusals(t *testing.T) {
	square := []geometry.Point{{X: -200, Y: -200}, {X: 200, Y: -200}, {X: 200, Y: 200}, {X: -200, Y: 200}}
	free := func(points ...geometry.Point) func(*design.Design) {
		return func(d *design.Design) { d.Top.Outline, d.Top.Points = design.FreeOutline, points }
	}
	star := func(d *design.Design) {
		d.Top.Outline, d.Top.Points = design.FreeOutline, nil
		for i := range 5 {
			d.Top.Points = append(d.Top.Points, geometry.Polar(300, float64(2*i)*2*math.Pi/5))
		}
	}
	corner := func(c design.Corner, size float64) func(*design.Design) {
		return func(d *design.Design) {
			free(square...)(d)
			d.Top.Corner, d.Top.CornerSize = c, size
		}
	}
	for _, tt := range []struct {
		figure, words string
		change        func(*design.Design)
	}{
		{"inside", "more than 0 mm", func(d *design.Design) { d.Ring.Inside = 0 }},
		{"inside", "where the laps meet", func(d *design.Design) { d.Ring.Sides, d.Ring.Inside = 8, 50 }},
		{"number of the plain end", "at most 2", func(d *design.Design) { d.Ring.Plain = 3 }},
		{"horn", "at least 0 mm", func(d *design.Design) { d.Ring.Horn = -1 }},
		{"slack", "at most 10 mm", func(d *design.Design) { d.Ring.Slack = 10.1 }},
		{"slack", "the width of the stretcher", func(d *design.Design) { d.Ring.Slack, d.Ring.Width = 9, 8.9 }},
		{"number of the lean", "at most 2", func(d *design.Design) { d.Legs.Lean = 3 }},
		{"clearance of leg and neighbour", "at least 0 mm", func(d *design.Design) { d.Legs.Clear = -1 }},
		{"proud head", "at least 0 mm", func(d *design.Design) { d.Legs.Proud = -1 }},
		{"mid-length to leg", "more than 0 mm", func(d *design.Design) { d.Legs.At = -1 }},
		{"head of leg", "the width of the stretcher", func(d *design.Design) { d.Legs.Tenon = 29 }},
		{"tenon", "the width of the stretcher", func(d *design.Design) { d.Legs.Tenon = 28 }},
		{"tenon", "at least 1 mm", func(d *design.Design) { d.Legs.Tenon, d.Legs.Mortise = -1, joint.MortiseInLeg }},
		{"height", "the depth of the stretcher", func(d *design.Design) { d.Legs.Height = 36 }},
		{"overall height", "stretcher, pads and top, 52 mm", func(d *design.Design) { d.Legs.Height, d.Legs.To = 52, design.Overall }},
		{"foot", "the top", func(d *design.Design) { d.Legs.Taper.Foot = 40 }},
		{"taper across the stretcher", "what leaves 1 mm of the leg, 27 mm", func(d *design.Design) {
			d.Legs.Taper.Foot, d.Legs.Taper.Faces = 12, joint.FourFaces
		}},
		{"thickness of the top", "at least 1 mm", func(d *design.Design) { d.Top.Thickness = 0 }},
		{"thickness of the top", "at most 200 mm", func(d *design.Design) { d.Top.Thickness = 201 }},
		{"glass thickness", "at most 25 mm", func(d *design.Design) { d.Top.Thickness = 26 }},
		{"diameter of the top", "more than 0 mm", func(d *design.Design) { d.Top.Diameter = -1 }},
		{"radius of the top", "more than 0 mm", func(d *design.Design) { d.Top.Diameter, d.Top.Overhang = 0, -300 }},
		{"centre to side of the top", "more than 0 mm", func(d *design.Design) { d.Top.Outline, d.Top.Overhang = design.RingTop, -104 }},
		{"corners of the top", "at least 3", free()},
		{"corners of the top", "at least 3", free(square[:2]...)},
		{"corners of the top", "at most 100", free(make([]geometry.Point, 101)...)},
		{"side of the top", "at least 1 mm", free(append(square[:3:3], square[2:]...)...)},
		{"corner of the top", "corner 1", free(square[0], geometry.Pt(0, -200), square[1], square[2])},
		{"corner of the top", "corner 4", free(square[3], square[2], square[1], square[0])},
		{"centre to corner of the top", "finite", free(square[0], geometry.Pt(math.NaN(), 0), square[2])},
		{"turns of the outline of the top", "at most 1", star},
		{"clip", "half a side, 200 mm", corner(design.ClippedCorner, 200.01)},
		{"corner radius", "what half a side holds, 200 mm", corner(design.RoundedCorner, 200.01)},
		{"corner size of the top", "more than 0 mm", corner(design.RoundedCorner, -1)},
		{"diameter of the pads", "at least 1 mm", func(d *design.Design) { d.Top.Pads.Diameter = -1 }},
		{"height of the pads", "at least 1 mm", func(d *design.Design) { d.Top.Pads.Height = 0 }},
		{"density", "at most 1500", func(d *design.Design) { d.Wood.Density = 70000 }},
		{"spare parts", "at least 0", func(d *design.Design) { d.Wood.Spares = -1 }},
		{"spare parts", "at most 100", func(d *design.Design) { d.Wood.Spares = 101 }},
		{"test pieces", "at most 100", func(d *design.Design) { d.Wood.Tests = 101 }},
		{"waste", "at most 3", func(d *design.Design) { d.Wood.Waste = 25 }},
		{"moisture after", "at most 14", func(d *design.Design) { d.Wood.MoistureTo = 60 }},
		{"boards", "at least 1", func(d *design.Design) { d.Wood.Boards = []design.Board{{Length: 1, Width: 1, Thickness: 1, Count: -1}} }},
		{"width of a board", "more than 0 mm", func(d *design.Design) { d.Wood.Boards = []design.Board{{Length: 1, Count: 1}} }},
		{"kerf", "more than 0 mm", func(d *design.Design) { d.Saw.Kerf = 0 }},
		{"kerf", "at most 12 mm", func(d *design.Design) { d.Saw.Kerf = 12.1 }},
		{"highest blade", "more than 0 mm", func(d *design.Design) { d.Saw.Highest = -1 }},
		{"width as milled", "three quarters of the designed size, 21 mm", func(d *design.Design) { d.Milled.Width = 20.9 }},
		{"depth as milled", "five quarters of the designed size, 45 mm", func(d *design.Design) { d.Milled.Depth = 45.1 }},
		{"breadth as milled", "more than 0 mm", func(d *design.Design) { d.Milled.Breadth = -40 }},
		{"breadth as milled", "three quarters", func(d *design.Design) { d.Milled.Breadth = 5 }},
		{"kerf as measured", "more than 0 mm", func(d *design.Design) { d.Milled.Kerf = -3 }},
	} {
		d := piecetest.Low()
		taper := *d.Legs.Taper
		d.Legs.Taper = &taper
		tt.change(&d)
		refused(t, d, tt.figure, tt.words)
	}
}

// At the limits themselves a piece is accepted.
func TestLimitsThemselves(t *testing.T) {
	for name, change := range map[string]func(*design.Design){
		"flush ends know no horn":  func(d *design.Design) { d.Ring.Plain, d.Ring.Horn = design.FlushEnd, 50 },
		"slack of open ends":       func(d *design.Design) { d.Ring.Slack = 10 },
		"overall":                  func(d *design.Design) { d.Legs.Height, d.Legs.To, d.Legs.Taper = 52.01, design.Overall, nil },
		"glass of 25 mm":           func(d *design.Design) { d.Top.Thickness = 25 },
		"a third and nothing":      func(d *design.Design) { d.Legs.Tenon = 27.99 },
		"a hundred spares":         func(d *design.Design) { d.Wood.Spares = 100 },
		"no moisture":              func(d *design.Design) { d.Wood.MoistureFrom, d.Wood.MoistureTo = 0, 0 },
		"milled three quarters":    func(d *design.Design) { d.Milled.Width = 21 },
		"bare feet of a plumb leg": func(d *design.Design) { d.Legs.Given = 0 },
		"clip that takes whole side": func(d *design.Design) {
			d.Top.Outline, d.Top.Corner = design.RingTop, design.ClippedCorner
			d.Top.CornerSize = (260 + 2*28*math.Sqrt(3)) / 2 * (1 - 1e-12)
		},
	} {
		d := piecetest.Low()
		change(&d)
		p, err := piece.Solve(d)
		if err != nil {
			t.Errorf("%s: %v", name, err)
			continue
		}
		if err := sound(p); err != nil {
			t.Errorf("%s: %v", name, err)
		}
	}
	d := piecetest.Low()
	d.Ring.Plain, d.Ring.Horn = design.FlushEnd, 50
	e := d
	e.Ring.Horn = 0
	piecetest.Nearly(t, "rough stretcher with flush ends", piecetest.Worked(t, d).PlainReach, piecetest.Worked(t, e).PlainReach)
}

// sound reports an accepted piece of which a figure is not finite or a part is
// nothing.
func sound(p piece.Piece) error {
	stop := p.EndLap().Stop()
	for i, x := range []float64{
		p.Overall(), p.Foot(), p.FootRadius(), p.FootSpread(), p.TopArea(), p.RoughStretcher(),
		p.FinishedStretcher(), p.Frame.Clearance(), p.Frame.Leg.Blank(), stop, p.Kerf, p.Bridle.Third(),
	} {
		if math.IsNaN(x) || math.IsInf(x, 0) {
			return fmt.Errorf("figure %d is %v", i, x)
		}
	}
	for _, part := range p.Parts() {
		if v := part.Volume(); !(v > 0) || math.IsInf(v, 0) {
			return fmt.Errorf("%s has a volume of %v", part.Name, v)
		}
		b := part.Bounds()
		if !(b.Size().Norm() < 1e5) {
			return fmt.Errorf("%s is %v large", part.Name, b)
		}
	}
	return nil
}

// try works a design out and reports what should not be: a panic, an error
// that is no bound, or a piece that is not sound.
func try(d design.Design) (accepted bool, err error) {
	defer func() {
		if r := recover(); r != nil {
			err = fmt.Errorf("panic: %v", r)
		}
	}()
	p, err := piece.Solve(d)
	if err == nil {
		return true, sound(p)
	}
	var bound *measure.BoundError
	if !errors.As(err, &bound) {
		return false, fmt.Errorf("no bound: %w", err)
	}
	if !bound.Limit.Finite() {
		return false, fmt.Errorf("limit of %q", bound.Error())
	}
	return false, nil
}

// Every figure by itself at nothing, below, beyond and far beyond: refused, or
// a sound piece. What is not finite is always refused.
func TestEveryFigureAtItsLimits(t *testing.T) {
	values := []float64{
		0, -1, 1, 2, 3, 7, 1e-300, 1e-9, 0.5, 200, 1000, 9999, 10000, 10001, 1e7, 1e300, -1e300, -10000,
		math.NaN(), math.Inf(1), math.Inf(-1),
	}
	for b := range piecetest.Bases() {
		base := piecetest.Bases()[b]
		if ok, err := try(base); !ok || err != nil {
			t.Fatalf("base %d: accepted %v, %v", b, ok, err)
		}
		for k := range piecetest.Knobs(&base) {
			for _, v := range values {
				d := piecetest.Bases()[b]
				knob := piecetest.Knobs(&d)[k]
				knob.Set(v)
				ok, err := try(d)
				if err != nil {
					t.Errorf("base %d, %s = %v: %v", b, knob.Name, v, err)
				}
				if ok && (math.IsNaN(v) || math.Abs(v) > 1e200) && !unread(d, knob.Name) {
					t.Errorf("base %d, %s = %v: accepted", b, knob.Name, v)
				}
			}
		}
	}
}

// unread reports figures that stand for nothing in the design: the choices and
// counts, which cannot hold what is not finite, and a top that is not there.
func unread(d design.Design, name string) bool {
	top := strings.HasPrefix(name, ".Top.") && d.Top.Kind == design.NoTop
	for _, other := range []string{".Frame.", ".Seat.", ".Box."} { // of other kinds of piece
		top = top || strings.HasPrefix(name, other)
	}
	for _, whole := range []string{"Unit", "Written", "Plain", "Mortise", "Lean", "To", "Faces", "Kind", "Outline", "Corner", "Bond"} {
		top = top || strings.HasSuffix(name, "."+whole)
	}
	return top
}

// Several figures wild at once, on any base.
func TestWildDesigns(t *testing.T) {
	wild := rapid.OneOf(
		rapid.Float64Range(0, 1), rapid.Float64Range(0, 60), rapid.Float64Range(-100, 1000), rapid.Float64(),
		rapid.SampledFrom([]float64{0, 1, 2, 3, 4, 5, 6, 7, 8, math.NaN(), math.Inf(1), math.Inf(-1), 10000, 1e-12}),
	)
	rapid.Check(t, func(t *rapid.T) {
		d := piecetest.Bases()[rapid.IntRange(0, 3).Draw(t, "base")]
		if rapid.Bool().Draw(t, "free outline") {
			d.Top.Outline = design.FreeOutline
			d.Top.Points = make([]geometry.Point, rapid.IntRange(0, 7).Draw(t, "corners"))
			for i := range d.Top.Points {
				d.Top.Points[i] = geometry.Pt(float64(rapid.IntRange(-3, 3).Draw(t, "x"))*100, float64(rapid.IntRange(-3, 3).Draw(t, "y"))*100)
			}
		}
		all := piecetest.Knobs(&d)
		for range rapid.IntRange(0, 4).Draw(t, "changes") {
			knob := all[rapid.IntRange(0, len(all)-1).Draw(t, "figure")]
			knob.Set(wild.Draw(t, knob.Name))
		}
		if _, err := try(d); err != nil {
			t.Fatalf("%+v: %v", d, err)
		}
	})
}
