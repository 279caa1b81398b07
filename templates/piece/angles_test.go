package piece_test

import (
	"math"
	"testing"

	"gonum.org/v1/gonum/spatial/r3"
	"pgregory.net/rapid"

	"rodsheet/geometry"
	"rodsheet/geometry/joint"
	"rodsheet/geometry/solid"
	"rodsheet/templates/piece"
	"rodsheet/templates/piece/design"
	"rodsheet/templates/piece/internal/piecetest"
)

// Angles are measured here on edges and faces of the finished solids in the
// room, with the vectors of gonum.

// sharpest returns the least angle between lines: at most a right angle.
func sharpest(a, b r3.Vec) float64 {
	at := piecetest.Between(a, b)
	return math.Min(at, math.Pi-at)
}

func TestLeanOfTheLegs(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		d := piecetest.Sound(t)
		p := piecetest.Worked(t, d)
		down := r3.Vec{Z: -1}
		parts := p.Parts()
		for i := range d.Ring.Sides {
			_, long := piecetest.LongestEdge(parts[2*i+1], piecetest.AnyEdge)
			piecetest.Nearly(t, "lean from plumb", piecetest.Between(long, down), d.Legs.Given)

			// In the plane of its stretcher, foot away from mid-length.
			along := r3.Vec{X: p.Place(i).X.X, Y: p.Place(i).X.Y}
			if d.Legs.Given > 1e-3 {
				piecetest.Nearly(t, "out of the plane", r3.Dot(long, r3.Cross(along, down)), 0)
				if r3.Dot(long, along) <= 0 {
					t.Errorf("leg %d leans towards the middle of its stretcher", i+1)
				}
			}
		}
	})
}

// Neighbours cross at the angle of the polygon, and all stretchers lie level.
func TestCrossingOfNeighbours(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		d := piecetest.Sound(t)
		parts := piecetest.Worked(t, d).Parts()
		onTop := func(e solid.Edge) bool { return math.Abs(e.A.Z-e.B.Z) < 1e-9 }
		for i := range d.Ring.Sides {
			_, a := piecetest.LongestEdge(parts[2*i], onTop)
			_, b := piecetest.LongestEdge(parts[2*((i+1)%d.Ring.Sides)], onTop)
			piecetest.Nearly(t, "crossing", sharpest(a, b), math.Min(piecetest.Phi(d.Ring.Sides), math.Pi-piecetest.Phi(d.Ring.Sides)))
		}
	})
}

// Foot and head are cut level, on the floor and at the height of the frame
// with what the head is proud; between them the leg is its true length, and
// its section on the level is b/cos α by w, less the bridle at the head.
func TestLevelCuts(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		d := piecetest.Sound(t)
		p := piecetest.Worked(t, d)
		leg := p.Parts()[1]
		head := d.Legs.Height + d.Legs.Proud
		piecetest.Nearly(t, "lowest", leg.Bounds().Min.Z, 0)
		piecetest.Nearly(t, "highest", leg.Bounds().Max.Z, head)
		feet, heads := piecetest.Levels(leg, 0), piecetest.Levels(leg, head)
		if len(feet) == 0 || len(heads) == 0 {
			t.Fatalf("%d level faces at the foot and %d at the head", len(feet), len(heads))
		}
		cos := math.Cos(d.Legs.Given)
		kept := p.Bridle.Tenon
		if d.Legs.Mortise == joint.MortiseInLeg {
			kept = d.Ring.Width - kept
		}
		piecetest.Nearly(t, "section on the floor", piecetest.Area(feet), d.Legs.Breadth/cos*d.Ring.Width)
		piecetest.Nearly(t, "section of the head", piecetest.Area(heads), d.Legs.Breadth/cos*kept)

		// The bevel, from square: the cuts lean from the leg by 90° less it.
		_, long := piecetest.LongestEdge(leg, piecetest.AnyEdge)
		piecetest.Nearly(t, "bevel at the foot", sharpest(long, piecetest.Vec(feet[0].Plane.N)), d.Legs.Given)
		piecetest.Nearly(t, "bevel at the head", sharpest(long, piecetest.Vec(heads[0].Plane.N)), d.Legs.Given)
		piecetest.Nearly(t, "true length", p.Frame.Leg.Length(), d.Legs.Height/cos)
	})
}

// The four long faces of the leg in its stretcher's frame, as TaperFaces picks
// them: which way each looks, before any taper.
func longFaces(splay float64) (inner, outer, ringward, away r3.Vec) {
	s, c := math.Sincos(splay)
	return r3.Vec{X: -c, Z: -s}, r3.Vec{X: c, Z: s}, r3.Vec{Y: -1}, r3.Vec{Y: 1}
}

// Every tapered face turns from the straight one by the angle of the taper, by
// the breadth it takes over its run; the other faces stay straight.
func TestTapersOnTheSolid(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		d := piecetest.Sound(t)
		d.Legs.Taper = piecetest.Taper(t, d)
		p := piecetest.Worked(t, d)
		inner, outer, ringward, away := longFaces(d.Legs.Given)
		cut := map[r3.Vec]bool{inner: true}
		takes := d.Legs.Breadth - d.Legs.Taper.Foot
		switch d.Legs.Taper.Faces {
		case joint.AdjacentFaces: // both look into the ring
			cut[ringward] = true
		case joint.OppositeFaces:
			cut[outer] = true
			takes /= 2
		case joint.FourFaces:
			cut[outer], cut[ringward], cut[away] = true, true, true
			takes /= 2
		}
		run := d.Legs.Height/math.Cos(d.Legs.Given) - d.Legs.Taper.Start
		angle := math.Atan(takes / run)
		// The solid below the start: the piece that stands on the floor.
		low := p.Leg().Cut(solid.Through(solid.V(0, 0, d.Ring.Depth-d.Legs.Height+20), solid.V(0, 0, 1)))
		for _, straight := range []r3.Vec{inner, outer, ringward, away} {
			want := 0.0
			if cut[straight] {
				want = angle
			}
			piecetest.Nearly(t, "angle of a face", faceNear(low, straight), want)
		}
		piecetest.Nearly(t, "angle of the taper", p.Taper.ToEdge(), angle)
	})
}

// surfaces returns the planes that have the whole part on one side: the
// surface of what is convex, without the joints between its pieces.
func surfaces(p solid.Part) []solid.Plane {
	var out []solid.Plane
	for _, s := range p.Pieces {
		for _, f := range s.Faces() {
			outmost := true
			for _, o := range p.Pieces {
				for _, e := range o.Edges() {
					outmost = outmost && f.Plane.Height(e.A) < 1e-7 && f.Plane.Height(e.B) < 1e-7
				}
			}
			if outmost {
				out = append(out, f.Plane)
			}
		}
	}
	return out
}

// faceNear returns the angle to a direction of the face that looks most nearly
// that way.
func faceNear(p solid.Part, way r3.Vec) float64 {
	least := math.Inf(1)
	for _, q := range surfaces(p) {
		least = math.Min(least, piecetest.Between(piecetest.Vec(q.N), way))
	}
	return least
}

// Square across the leg at its outer toe, where the blank's outer edge meets
// the floor, the tapered faces leave just the foot that was asked for; the
// start is square across too, from the outer edge of the head.
func TestFootSizeOfATaper(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		d := piecetest.Sound(t)
		d.Legs.Proud = 0
		d.Legs.Taper = piecetest.Taper(t, d)
		p := piecetest.Worked(t, d)
		inner, outer, ringward, away := longFaces(d.Legs.Given)
		at := p.Frame.Leg.At
		head := r3.Vec{X: at, Z: d.Ring.Depth}
		toe := r3.Vec{X: at + d.Legs.Height*math.Tan(d.Legs.Given), Z: d.Ring.Depth - d.Legs.Height}
		low := p.Leg().Cut(solid.Through(solid.V(0, 0, d.Ring.Depth-d.Legs.Height+20), solid.V(0, 0, 1)))
		start := r3.Add(head, r3.Scale(d.Legs.Taper.Start/r3.Norm(r3.Sub(toe, head)), r3.Sub(toe, head)))
		middle := r3.Vec{Y: d.Ring.Width / 2}
		breadth, thickness := d.Legs.Breadth, d.Ring.Width
		piecetest.Nearly(t, "breadth at the start", reach(low, start, outer)+reach(low, start, inner), breadth)
		piecetest.Nearly(t, "breadth of the foot", reach(low, toe, outer)+reach(low, toe, inner), d.Legs.Taper.Foot)
		loss := breadth - d.Legs.Taper.Foot
		if d.Legs.Taper.Faces == joint.OneFace || d.Legs.Taper.Faces == joint.OppositeFaces {
			loss = 0
		}
		at3 := r3.Add(toe, middle)
		piecetest.Nearly(t, "thickness of the foot", reach(low, at3, ringward)+reach(low, at3, away), thickness-loss)
	})
}

// reach returns how far from a point in one direction the face lies that looks
// most nearly that way, its plane extended.
func reach(p solid.Part, at, way r3.Vec) float64 {
	least, far := math.Inf(1), 0.0
	for _, q := range surfaces(p) {
		n := piecetest.Vec(q.N)
		if a := piecetest.Between(n, way); a < least {
			least, far = a, (q.D-r3.Dot(n, at))/r3.Dot(n, way)
		}
	}
	return far
}

// The overall height is that of the highest point of the solids, whatever
// stands on top; the frame takes what is left.
func TestOverallHeight(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		d := piecetest.Sound(t)
		d.Top = design.Top{
			Kind: design.TopKind(rapid.IntRange(0, 2).Draw(t, "top")), Outline: design.RingTop,
			Thickness: rapid.Float64Range(4, 20).Draw(t, "thickness"), Overhang: -10,
		}
		if rapid.Bool().Draw(t, "pads") {
			d.Top.Pads = design.Pads{Diameter: 20, Height: rapid.Float64Range(1, 20).Draw(t, "pad")}
		}
		highest := func(p piece.Piece) float64 {
			z := 0.0
			for _, part := range p.Parts() {
				z = math.Max(z, part.Bounds().Max.Z)
			}
			return z
		}
		p := piecetest.Worked(t, d)
		piecetest.Nearly(t, "overall, from the frame", p.Overall(), highest(p))
		d.Legs.To = design.Overall
		q := piecetest.Worked(t, d)
		piecetest.Nearly(t, "overall, given", q.Overall(), d.Legs.Height)
		piecetest.Nearly(t, "highest point", highest(q), d.Legs.Height)
		piecetest.Nearly(t, "top of the frame", q.Parts()[0].Bounds().Max.Z, q.Frame.Leg.Height)
	})
}

// A pad set outermost touches the shoulder of its lap: no point of it lies
// beyond, and one comes to it.
func TestOutermostPad(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		d := piecetest.Sound(t)
		d.Top = design.Top{
			Kind: design.WoodTop, Thickness: 20, Diameter: 500,
			Pads: design.Pads{Diameter: rapid.Float64Range(5, 18).Draw(t, "pad"), Height: 8, Outermost: true},
		}
		p := piecetest.Worked(t, d)
		a := piecetest.Phi(d.Ring.Sides)
		corner := geometry.Pt(d.Ring.Inside/2, 0) // the inner shoulder leaves it by φ
		beyond := math.Inf(-1)
		c := geometry.Pt(p.PadAt(), d.Ring.Width/2)
		const steps = 3600
		for i := range steps {
			q := c.Add(geometry.Polar(d.Top.Pads.Diameter/2, float64(i)*2*math.Pi/steps)).Sub(corner)
			beyond = math.Max(beyond, q.X*math.Sin(a)-q.Y*math.Cos(a))
		}
		if math.Abs(beyond) > 1e-4 {
			t.Errorf("the pad ends %.5f mm beyond the shoulder, want 0", beyond)
		}
	})
}
