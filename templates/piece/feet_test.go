package piece_test

import (
	"math"
	"testing"

	"pgregory.net/rapid"

	"rodsheet/geometry/joint"
	"rodsheet/geometry/measure"
	"rodsheet/geometry/solid"
	"rodsheet/templates/piece"
	"rodsheet/templates/piece/design"
	"rodsheet/templates/piece/internal/piecetest"
)

// The middle of the outer edge of each foot, measured on the floor. Straight
// legs stand on the circle √((r + w/2)² + (E + H·tan α)²), and tapers of the
// outer and the ringward face move it.
func TestFeetOnTheFloor(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		d := piecetest.Sound(t)
		n := d.Ring.Sides
		if rapid.Bool().Draw(t, "tapered") {
			d.Legs.Taper = piecetest.Taper(t, d)
		}
		p := piecetest.Worked(t, d)
		if d.Legs.Taper == nil || d.Legs.Taper.Faces == joint.OneFace {
			axis := d.Ring.Inside/2/math.Tan(math.Pi/float64(n)) + d.Ring.Width/2
			piecetest.Nearly(t, "foot circle", p.FootRadius(), math.Hypot(axis, p.Frame.Leg.At+d.Legs.Height*math.Tan(d.Legs.Given)))
		}
		var feet []solid.Vec
		for i := range n {
			foot := footOf(t, p, i)
			feet = append(feet, foot)
			piecetest.Nearly(t, "foot from the centre", math.Hypot(foot.X, foot.Y), p.FootRadius())
			plan := p.FootPoint(i)
			piecetest.Nearly(t, "foot in plan", math.Hypot(plan.X-foot.X, plan.Y-foot.Y), 0)
		}
		piecetest.Nearly(t, "foot spread", feet[0].Distance(feet[1]), p.FootSpread())
	})
}

// footOf measures foot i in the room: the middle of the edge where its level
// cut goes farthest out along the stretcher.
func footOf(t *rapid.T, p piece.Piece, i int) solid.Vec {
	t.Helper()
	floor := p.Frame.Ring.Depth - p.Frame.Leg.Height
	var corners []solid.Vec
	far := math.Inf(-1)
	for _, f := range piecetest.Levels(p.Leg(), floor) {
		for _, c := range f.Corners {
			corners = append(corners, c)
			far = math.Max(far, c.X)
		}
	}
	lo, hi := math.Inf(1), math.Inf(-1)
	for _, c := range corners {
		if c.X > far-1e-6 {
			lo, hi = math.Min(lo, c.Y), math.Max(hi, c.Y)
		}
	}
	return p.Place(i).Apply(solid.V(far, (lo+hi)/2, floor))
}

// The three ways to say how legs lean give the same piece, the legs placed by
// hand or by what they clear, with any taper.
func TestSplayCircleAndSpreadAgree(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		d := piecetest.Sound(t)
		if rapid.Bool().Draw(t, "tapered") {
			d.Legs.Taper = piecetest.Taper(t, d)
		}
		if rapid.Bool().Draw(t, "placed by hand") {
			d.Legs.At = piecetest.Worked(t, d).Frame.Leg.At + rapid.Float64Range(0, 50).Draw(t, "further out")
		}
		d.Legs.Given = math.Max(d.Legs.Given, 1e-6) // rounding may put plumb legs below plumb
		p := piecetest.Worked(t, d)
		for lean, given := range map[design.Lean]float64{
			design.ByFootCircle: 2 * p.FootRadius(), design.ByFootSpread: p.FootSpread(),
		} {
			e := d
			e.Legs.Lean, e.Legs.Given = lean, given
			q := piecetest.Worked(t, e)
			if math.Abs(q.Frame.Leg.Splay-d.Legs.Given) > 1e-9 {
				t.Errorf("lean %d: splay %.12f, want %.12f", lean, q.Frame.Leg.Splay, d.Legs.Given)
			}
			piecetest.Nearly(t, "leg from mid-length", q.Frame.Leg.At, p.Frame.Leg.At)
			piecetest.Nearly(t, "foot circle", q.FootRadius(), p.FootRadius())
			piecetest.Nearly(t, "foot spread", q.FootSpread(), p.FootSpread())
		}
	})
}

// Broad legs under a low frame, where place and splay hang on each other so
// strongly that going from one to the other and back does not settle.
func TestFootCircleOfALowFrame(t *testing.T) {
	d := piecetest.Low()
	d.Legs.Breadth, d.Legs.Height, d.Legs.Taper, d.Top.Kind = 150, 60, nil, design.NoTop
	d.Legs.Given = measure.Radians(35)
	want := piecetest.Worked(t, d)
	d.Legs.Lean, d.Legs.Given = design.ByFootCircle, 2*want.FootRadius()
	got := piecetest.Worked(t, d)
	piecetest.Nearly(t, "splay", measure.Degrees(got.Frame.Leg.Splay), 35)
	piecetest.Nearly(t, "foot circle", got.FootRadius(), want.FootRadius())
}

// Feet that no splay gives are refused with the figure that plumb or the
// steepest legs have.
func TestFeetOutOfReach(t *testing.T) {
	d := piecetest.Low()
	plumb, steep := d, d
	plumb.Legs.Given, steep.Legs.Given = 0, joint.LeanSteepest
	for _, tt := range []struct {
		lean  design.Lean
		given float64
		want  string
	}{
		{design.ByFootCircle, 2*piecetest.Worked(t, plumb).FootRadius() - 1, "that of plumb legs"},
		{design.ByFootCircle, 2*piecetest.Worked(t, steep).FootRadius() + 1, "that of the steepest legs"},
		{design.ByFootSpread, piecetest.Worked(t, plumb).FootSpread() - 1, "that of plumb legs"},
		{design.ByFootSpread, piecetest.Worked(t, steep).FootSpread() + 1, "that of the steepest legs"},
		{design.ByFootSpread, math.NaN(), "finite"},
	} {
		d.Legs.Lean, d.Legs.Given = tt.lean, tt.given
		figure := "foot circle"
		if tt.lean == design.ByFootSpread {
			figure = "foot spread"
		}
		refused(t, d, figure, tt.want)
	}
}
