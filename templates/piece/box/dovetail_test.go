package box

import (
	"cmp"
	"math"
	"slices"
	"testing"

	"pgregory.net/rapid"

	"rodsheet/geometry"
	"rodsheet/geometry/lists"
	"rodsheet/geometry/measure"
	"rodsheet/geometry/solid"
	"rodsheet/templates"
	"rodsheet/templates/piece/design"
	"rodsheet/templates/piece/internal/piecetest"
)

// A wrap is a strip laid over an end of a side that lies on the table: the outer fold on the
// outer arris, the print outward, the lower corner on the lower edge.
type wrap struct {
	templates.Drawing
	low               geometry.Point // that corner on the strip
	thick             float64        // from fold to fold
	at                solid.Vec      // that corner on the wood
	right, away, over solid.Vec      // for one who looks at the outer side, the end up; over is through the thickness
}

func wrapped(t rapid.TB, d templates.Drawing, side solid.Part, outside, way solid.Vec) wrap {
	w := wrap{Drawing: d}
	// The lower edge lies at the least y.
	edge := solid.Plane{N: solid.V(0, -1, 0), D: -side.Bounds().Min.Y}
	e := endOf(side.Pieces[0], outside, way, edge)
	arris := e.end.N.Cross(outside).Unit()
	w.away = arris.Cross(outside) // in the outer face
	if w.away.Dot(way) > 0 {
		w.away = w.away.Mul(-1)
	}
	w.right = outside.Mul(-1).Cross(w.away.Mul(-1))
	w.over = e.out.Mul(-1)
	// From the hollow arris across the end and back along the lower edge.
	outer := solid.Through(e.inner.Add(outside.Mul(side.Bounds().Size().Z)), outside)
	w.at = solid.Meet(e.end, outer, edge)
	for _, s := range d.Strokes {
		switch {
		case s.Role != templates.Fold:
		case math.Abs(s.Points[0].Y) > 1e-6:
			w.thick = s.Points[0].Y
		case d.View.Hand == templates.EitherHand && (s.Points[1].X > s.Points[0].X) != (w.right.Y > 0):
			w.low = s.Points[1] // its edges are alike
		default:
			w.low = s.Points[0]
		}
	}
	return w
}

// on folds a point of the strip on to the wood.
func (w wrap) on(p geometry.Point) solid.Vec {
	at := w.at.Add(w.right.Mul(p.X - w.low.X))
	at = at.Add(w.over.Mul(math.Max(0, math.Min(p.Y, w.thick))))
	return at.Add(w.away.Mul(math.Max(0, -p.Y) + math.Max(0, p.Y-w.thick)))
}

// cheeks returns the planes between tails and pins from the lower edge up, the upper side of
// each outside, and how far up the side they cross the outer arris of its end.
func (w wrap) cheeks() (out []solid.Plane, rises []float64) {
	for _, s := range w.Strokes {
		if s.Role != templates.Cut || len(s.Points) < 3 {
			continue
		}
		a, b, c := w.on(s.Points[0]), w.on(s.Points[1]), w.on(s.Points[2])
		n := b.Sub(a).Cross(c.Sub(a))
		if n.Y < 0 {
			n = n.Mul(-1)
		}
		out = append(out, solid.Through(a, n))
	}
	rise := func(p solid.Plane) float64 { return -p.Height(w.at) / p.N.Dot(w.right) * w.right.Y }
	slices.SortFunc(out, func(a, b solid.Plane) int { return cmp.Compare(rise(a), rise(b)) })
	return out, lists.Map(out, rise)
}

// roots is the plane of the gauge lines on both faces; what lies beyond it is no waste.
func (w wrap) roots(t rapid.TB) solid.Plane {
	var lines [][2]solid.Vec
	for _, l := range w.Labels {
		if l.ID != "gauge-line" {
			continue
		}
		a, b := w.on(l.On.A), w.on(l.On.B)
		lines = append(lines, [2]solid.Vec{a, b})
	}
	if len(lines) != 2 {
		t.Fatalf("%d gauge lines", len(lines))
	}
	n := lines[0][1].Sub(lines[0][0]).Cross(lines[1][0].Sub(lines[0][0]))
	if n.Dot(w.away) < 0 {
		n = n.Mul(-1)
	}
	return solid.Through(lines[0][0], n)
}

// wastes are what is sawn and chopped out by a strip: pins' sockets of a side with tails,
// right out to its edges, or those of tails. The card's figures are those of the strip.
func (w wrap) wastes(t rapid.TB, side solid.Part, tails bool, c templates.Card) []solid.Solid {
	cheeks, rises := w.cheeks()
	roots := w.roots(t)
	if n := figure(t, c, tailsReading); float64(len(cheeks)) != 2*n {
		t.Errorf("%g tails, %d lines", n, len(cheeks))
	}
	for k, from := range rises[:len(rises)-1] {
		want := figure(t, c, [...]text{tailReading, pinReading}[k%2])
		if got := rises[k+1] - from; math.Abs(got-want) > slip {
			t.Errorf("a strip has %g mm between its lines, the card %g", got, want)
		}
	}
	room := side.Bounds()
	all := piecetest.Grown(solid.Box(room.Min, room.Max), 1).Cut(roots)
	var out []solid.Solid
	first := 0
	if tails {
		first = -1
	}
	for k := first; k < len(cheeks); k += 2 {
		waste := all
		if k >= 0 {
			waste = waste.Cut(cheeks[k].Flip())
		}
		if k+1 < len(cheeks) {
			waste = waste.Cut(cheeks[k+1])
		}
		out = append(out, waste)
	}
	return out
}

// planed takes the edges of a side level, each just to its lower arris there.
func (b Box) planed(side, whole solid.Part, outside solid.Vec, slope float64) solid.Part {
	sin, cos := math.Sincos(slope)
	up := solid.V(0, cos, 0).Sub(outside.Mul(sin)) // plumb, of a side that leans outward
	for _, way := range []solid.Vec{up, up.Mul(-1)} {
		edge := solid.Plane{N: way, D: math.Inf(1)}
		for _, e := range whole.Edges() {
			if math.Abs(e.A.Y-e.B.Y) < 1e-6 && (e.A.Y > whole.Centroid().Y) == (way.Y > 0) {
				edge.D = min(edge.D, way.Dot(e.A))
			}
		}
		side = side.Cut(edge)
	}
	return side
}

// strip finds that for an end of a board.
func strip(t rapid.TB, s templates.Section, tails bool, hand templates.Hand) templates.Drawing {
	part := measure.ID("pin-board")
	if tails {
		part = "tail-board"
	}
	for _, d := range s.Drawings {
		if d.View.Part == part && (d.View.Hand == hand || d.View.Hand == templates.EitherHand) {
			return d
		}
	}
	t.Fatalf("no strip of %s", part)
	return templates.Drawing{}
}

// Tails and pins are cut by the strips laid over the ends of the sides as the saw leaves them,
// and their edges are planed level. That gives the sides; joined they touch and share nothing.
func TestTheStripsMakeTheDovetails(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		d := anyBox(t)
		if d.Box.Outline == design.RectangleBox {
			d = rectangle(measure.Degrees(d.Box.Slope), measure.Degrees(d.Box.Slope))
		}
		d.Box.Corner = design.DovetailedCorner
		b := worked(t, d)
		job, err := b.glueUp(setting)
		if err != nil {
			t.Fatal(err)
		}
		c := job.Cards[0]
		var made []solid.Part
		for i := range b.faces {
			s := b.sortOf(i)
			s.first = i
			cuts := b.endCuts(s)
			side := sawn(t, b, s, cuts)
			m := b.table(i, cuts[0].outerDown)
			outside, along := solid.V(0, 0, 1), solid.V(1, 0, 0)
			if cuts[0].outerDown {
				outside, along = outside.Mul(-1), along.Mul(-1)
			}
			whole := side
			for hand, way := range map[templates.Hand]solid.Vec{templates.RightHand: along, templates.LeftHand: along.Mul(-1)} {
				w := wrapped(t, strip(t, job, runsPast(i), hand), whole, outside, way)
				for _, waste := range w.wastes(t, whole, runsPast(i), c) {
					side = side.Subtract(waste)
				}
			}
			side = b.planed(side, whole, outside, piecetest.Said(t, job.Cards[1].Test, edgesTest))
			room := side.Transform(solid.Into(m.X, m.Y, m.Z, m.O))
			piecetest.Same(t, sideNames[s.id].With(i+1), room, b.side(i), slip)
			made = append(made, room)
		}
		for i, p := range made {
			for _, shared := range solid.Clash(p, made[b.next(i)]) {
				if v := shared.Volume(); v > slip {
					t.Errorf("sides %d and %d share %g mm³", i+1, b.next(i)+1, v)
				}
			}
		}
	})
}
