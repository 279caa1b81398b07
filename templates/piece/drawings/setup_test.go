package drawings

import (
	"math"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"rodsheet/geometry"
	"rodsheet/geometry/measure"
	"rodsheet/geometry/solid"
	"rodsheet/templates"
	"rodsheet/templates/piece"
	"rodsheet/templates/piece/internal/piecetest"
	"rodsheet/templates/piece/shop"
)

// areasOf returns the areas of one tone.
func areasOf(p templates.Picture, t templates.Tone) [][]geometry.Point {
	var out [][]geometry.Point
	for _, a := range p.Areas {
		if a.Tone == t {
			out = append(out, a.Points)
		}
	}
	return out
}

// side returns the line of a side of a polygon.
func side(polygon []geometry.Point, i int) geometry.Segment {
	return geometry.Segment{A: polygon[i], B: polygon[(i+1)%len(polygon)]}
}

// farther returns how far a point lies to the left of a line.
func farther(line geometry.Segment, p geometry.Point) float64 {
	return line.B.Sub(line.A).Unit().Cross(p.Sub(line.A))
}

// corners returns the corners of a part as a view shows them.
func corners(p solid.Part, v solid.View) []geometry.Point {
	var out []geometry.Point
	for _, s := range p.Pieces {
		out = append(out, v.Silhouette(s)...)
	}
	return out
}

// What a picture shows of the saw is measured on the picture and compared with the
// figures of the step, and with the wood that is gone after it.
func TestSetUpsStandAsTheirFiguresSay(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		p := piecetest.Worked(t, piecetest.Sound(t))
		plan := shop.NewPlan([]piece.Piece{p})
		for _, part := range []shop.Part{shop.Stretcher, shop.Leg} {
			for w := range shop.Works(p, plan.Cards, part) {
				s := newSetUp(p, plan.Cards[w.Card].Steps[w.Step], w)
				switch s.cut().How {
				case shop.OnGauge:
					checkGauge(t, s, s.onGauge())
				case shop.OnEnd:
					checkJig(t, s, s.onEnd()[0])
					checkStrip(t, s, s.onEnd()[1])
				}
			}
		}
	})
}

func checkGauge(t *rapid.T, s setUp, pic templates.Picture) {
	const (
		hair    = 1e-6
		oneStop = 0.15 // set-ups that differ by less are one
	)
	c := s.cut()
	fence := side(areasOf(pic, templates.Middle)[0], 2) // that against the part
	if off := math.Abs(math.Remainder(fence.Angle(), math.Pi)); math.Abs(off-c.OffSquare) > hair {
		t.Errorf("%v: the fence stands at %v, want %v off square", s.What, off, c.OffSquare)
	}
	dark := areasOf(pic, templates.Dark)
	blade := dark[0]
	near := side(blade, 3)
	if math.Abs(near.A.X-near.B.X) > hair || math.Abs(math.Abs(blade[1].X-blade[0].X)-s.Piece.Kerf) > hair {
		t.Errorf("%v: the blade %v does not run up the paper, a kerf wide", s.What, blade)
	}
	if c.Stop > 0 {
		block := dark[1]
		face := side(block, 1) // that against the end of the part
		meets := fence.A.Lerp(fence.B, (near.A.X-fence.A.X)/(fence.B.X-fence.A.X))
		if got := math.Abs(farther(face, meets)); math.Abs(got-c.Stop) > hair {
			t.Errorf("%v: the stop stands %v from the blade, want %v", s.What, got, c.Stop)
		}
		inwards := farther(face, block[0]) * farther(face, meets)
		if inwards > 0 {
			t.Errorf("%v: the stop stands on the wrong side of its face", s.What)
		}
	}
	if !c.Through || c.Line > 0 {
		return
	}
	// On the stop's side wood remains up to the blade and none beyond.
	least, to := math.Inf(1), s.table()
	stopSide := to.Apply(geometry.Point{}).X
	for _, q := range corners(s.after, solid.Plan()) {
		q = to.Apply(q)
		if (q.X-near.A.X)*(stopSide-near.A.X) < 0 && math.Abs(q.X-near.A.X) > hair {
			t.Errorf("%v: wood remains %v beyond the blade", s.What, math.Abs(q.X-near.A.X))
		}
		least = math.Min(least, math.Abs(q.X-near.A.X))
	}
	if least > oneStop+hair {
		t.Errorf("%v: the wood ends %v from the blade", s.What, least)
	}
}

func checkJig(t *rapid.T, s setUp, pic templates.Picture) {
	const hair = 1e-6
	c := s.cut()
	jig, blade := geometry.Bounds(areasOf(pic, templates.Middle)[0]...), geometry.Bounds(areasOf(pic, templates.Dark)[0]...)
	if got := jig.Min.X - blade.Max.X; math.Abs(got-c.Stop) > hair {
		t.Errorf("%v: the blade stands %v from the jig, want %v", s.What, got, c.Stop)
	}
	if math.Abs(blade.Max.Y-c.Height) > hair || math.Abs(blade.Width()-s.Piece.Kerf) > hair {
		t.Errorf("%v: the blade is %v wide and %v high, want %v and %v", s.What, blade.Width(), blade.Max.Y, s.Piece.Kerf, c.Height)
	}
	waste := geometry.Bounds(corners(without(s.before, s.after), solid.Look(solid.V(-1, 0, 0), solid.V(0, 0, 1)))...)
	if math.Abs(waste.Max.X-blade.Max.X) > hair {
		t.Errorf("%v: wood goes up to %v, the blade to %v", s.What, waste.Max.X, blade.Max.X)
	}
}

// checkStrip wants the strip to lean as the part does, between it and a cleat on the
// maker's side, the right of the picture: the teeth at the front of a blade push what
// they saw down and towards the maker (from memory). For the first face that end of the
// strip is down which the card says.
func checkStrip(t interface{ Errorf(string, ...any) }, s setUp, pic templates.Picture) {
	cleat := geometry.Bounds(areasOf(pic, templates.Middle)[0]...)
	for _, strip := range areasOf(pic, templates.White) {
		thin := math.Abs(strip[0].X-strip[1].X) < math.Abs(strip[3].X-strip[2].X)
		if first := s.Work.Lie == 0; s.swing > 1e-9 && thin != (s.ThinEndDown() == first) {
			t.Errorf("%v, lie %d: thin end down is %v", s.What, s.Work.Lie, thin)
		}
		if strip[0].X != cleat.Min.X || strip[1].X > strip[0].X || strip[2].X > strip[3].X {
			t.Errorf("%v: the strip %v does not stand on the left of the cleat %v", s.What, strip, cleat)
		}
		for _, q := range corners(s.before, solid.Look(solid.V(0, 1, 0), solid.V(0, 0, 1))) {
			if q.Y < cleat.Max.Y && q.X > cleat.Min.X+1e-6 {
				t.Errorf("%v: the part reaches %v, into the cleat at %v", s.What, q, cleat)
			}
		}
		leans := math.Abs(math.Remainder(side(strip, 1).Angle()-math.Pi/2, math.Pi))
		if !(math.Abs(leans-math.Abs(s.swing)) <= 1e-6) { // nor is it NaN
			t.Errorf("%v: the filler strip leans by %v, want %v", s.What, leans, s.swing)
		}
		for _, l := range pic.Labels { // where nothing but the strip can be meant
			if at := l.On.A; l.ID == "strip-beside" && (at.Y != cleat.Max.Y || at.X > cleat.Min.X || at.X < strip[2].X) || l.ID == "cleat" && !cleat.Contains(at) {
				t.Errorf("%v: %q is said of %v", s.What, l.Text, at)
			}
		}
	}
}

// A stretcher deeper than is shown of its length has edges across that are the longer.
func TestDeepStretcherLeansByItsLength(t *testing.T) {
	n := 0
	for _, splay := range []float64{16, 55} {
		n += stripsStand(t, splay)
	}
	if n == 0 {
		t.Error("nothing leans")
	}
}

func stripsStand(t *testing.T, splay float64) (n int) {
	d := piecetest.Low()
	d.Ring.Depth, d.Legs.Height, d.Legs.Given = 304.8, 700, measure.Radians(splay)
	p := piecetest.Worked(t, d)
	plan := shop.NewPlan([]piece.Piece{p})
	for w := range shop.Works(p, plan.Cards, shop.Stretcher) {
		s := newSetUp(p, plan.Cards[w.Card].Steps[w.Step], w)
		if s.cut().How == shop.OnEnd && s.swing != 0 {
			checkStrip(t, s, s.onEnd()[1])
			n++
		}
	}
	return n
}

// A card that is done by hand shows no saw.
func TestCardsByHandShowNoSaw(t *testing.T) {
	d := piecetest.Low()
	d.Saw.Highest = 10
	plan := shop.NewPlan([]piece.Piece{piecetest.Worked(t, d)})
	byHand := 0
	for i, g := range galleries(plan, templates.Picture{}) {
		if !plan.Cards[i].Hand {
			continue
		}
		byHand++
		for _, p := range g.setup {
			if len(areasOf(p, templates.Dark)) > 0 {
				t.Errorf("card %d is done by hand and shows a blade", i+1)
			}
		}
	}
	if byHand == 0 {
		t.Error("no card is done by hand")
	}
}

// Every picture of the saw says from where it is seen, but the first of work on end, in
// which the jig shows it.
func TestSetUpsSayFromWhereTheyAreSeen(t *testing.T) {
	p := piecetest.Worked(t, piecetest.Low())
	plan := shop.NewPlan([]piece.Piece{p})
	seen := 0
	for _, part := range []shop.Part{shop.Stretcher, shop.Leg} {
		for w := range shop.Works(p, plan.Cards, part) {
			step := plan.Cards[w.Card].Steps[w.Step]
			all := newSetUp(p, step, w).pictures()
			if len(all) == 0 {
				continue
			}
			seen++
			if got := all[len(all)-1].Heading; !strings.HasPrefix(got, "from ") {
				t.Errorf("%s: %q", step.What.ID, got)
			}
		}
	}
	if seen < 8 {
		t.Errorf("%d set-ups seen", seen)
	}
}
