package piece_test

import (
	"math"
	"testing"

	"pgregory.net/rapid"

	"rodsheet/geometry"
	"rodsheet/geometry/measure"
	"rodsheet/geometry/solid"
	"rodsheet/templates/piece"
	"rodsheet/templates/piece/design"
	"rodsheet/templates/piece/internal/piecetest"
)

// Machinery's Handbook, 31st ed., p. 82: circumradius, inradius and area of
// polygons with a side of 1.
var handbookPolygons = []struct {
	sides                        int
	circumradius, inradius, area float64
}{
	{3, 0.5774, 0.2887, 0.4330}, {4, 0.7071, 0.5000, 1.0000}, {5, 0.8507, 0.6882, 1.7205},
	{6, 1.0000, 0.8660, 2.5981}, {8, 1.3066, 1.2071, 4.8284},
}

// The inside of the ring is the polygon of the table: its corners where a lap's
// inner shoulder meets the inside edge, its sides the inside edges.
func TestInsideOfTheRingIsThePublishedPolygon(t *testing.T) {
	const side, digits = 300.0, 0.00005001
	for _, tt := range handbookPolygons {
		d := piecetest.Low()
		d.Ring.Sides, d.Ring.Inside = tt.sides, side
		d.Top = design.Top{Kind: design.WoodTop, Outline: design.RingTop, Thickness: 20, Overhang: -d.Ring.Width}
		p := piecetest.Worked(t, d)
		edge := piecetest.Along(p.Stretcher(), solid.V(0, 0, 0.75*d.Ring.Depth))[0]
		corner := p.Place(0).Apply(solid.V(edge.Hi, 0, 0))
		middle := p.Place(0).Apply(solid.V(0, 0, 0))
		for _, c := range []struct {
			name      string
			got, want float64
		}{
			{"circumradius", math.Hypot(corner.X, corner.Y) / side, tt.circumradius},
			{"inradius", math.Hypot(middle.X, middle.Y) / side, tt.inradius},
			{"area of a top as large as the inside", p.TopArea() / side / side, tt.area},
		} {
			if math.Abs(c.got-c.want) > digits {
				t.Errorf("%d sides, %s: got %.5f, want %.4f", tt.sides, c.name, c.got, c.want)
			}
		}
	}
}

// Machinery's Handbook, 31st ed., p. 77: a hexagon with a side of 40 has an
// area of 4156.8 and an inradius of 34.64.
func TestPublishedHexagonAsTop(t *testing.T) {
	d := piecetest.Low()
	d.Ring.Sides, d.Ring.Inside = 6, 400
	// Sides of a hexagon lie in proportion to its inradius.
	overhang := 346.4 - (200*math.Sqrt(3) + d.Ring.Width)
	d.Top = design.Top{Kind: design.WoodTop, Outline: design.RingTop, Thickness: 20, Overhang: overhang}
	p := piecetest.Worked(t, d)
	if got := p.TopArea() / 100; math.Abs(got-4156.8) > 0.5 {
		t.Errorf("area %.2f, want 4156.8", got)
	}
	if got := p.TopCorners()[0].Distance(p.TopCorners()[1]); math.Abs(got-400) > 0.05 {
		t.Errorf("side %.3f, want 400", got)
	}
}

// A leg that leans 4 in 12 stands at 18°25′ (The Building Trades Pocketbook,
// International Correspondence Schools, "Laying-Out Angles", within 2′), and is
// as long as a rafter of 12 in run and 4 in rise, 12.65 in (NAVEDTRA 14044).
func TestPublishedLean(t *testing.T) {
	const in = measure.MillimetresPerInch
	d := piecetest.Low()
	d.Legs.Height, d.Legs.Taper, d.Top.Kind = 12*in, nil, design.NoTop
	d.Legs.Given = measure.Radians(18 + 25./60)
	p := piecetest.Worked(t, d)
	leg := p.Leg()
	foot, head := footRun(leg, d.Ring.Depth-12*in), footRun(leg, d.Ring.Depth)
	minutes := measure.Radians(2. / 60)
	if got := (foot.Hi - head.Hi) / in; math.Abs(got-4) > 12*minutes*1.2 {
		t.Errorf("the foot stands %.4f in outside the head, want 4", got)
	}
	if got := math.Hypot(foot.Hi-head.Hi, 12*in) / in; math.Abs(got-12.65) > 0.006 {
		t.Errorf("the outer edge is %.4f in long, want 12.65", got)
	}
	if got := p.Frame.Leg.Length() / in; math.Abs(got-12.65) > 0.006 {
		t.Errorf("the leg is %.4f in long, want 12.65", got)
	}
}

// footRun returns from where to where a part lies at a height.
func footRun(p solid.Part, z float64) piecetest.Run {
	out := piecetest.Run{Lo: math.Inf(1), Hi: math.Inf(-1)}
	for _, f := range piecetest.Levels(p, z) {
		for _, c := range f.Corners {
			out = piecetest.Run{Lo: math.Min(out.Lo, c.X), Hi: math.Max(out.Hi, c.X)}
		}
	}
	return out
}

// "Half the thickness of each member is notched out"; a tenon is "ordinarily
// one-third" of the thickness (Noyes, Handwork in Wood, 1910).
func TestPublishedShares(t *testing.T) {
	d := piecetest.Low()
	p := piecetest.Worked(t, d)
	stretcher := p.Stretcher()
	x := d.Ring.Inside/2 + 5 // over the lap, on the inside edge
	var wood float64
	for z := 0.5; z < d.Ring.Depth; z++ {
		for _, r := range piecetest.Along(stretcher, solid.V(0, 0, z)) {
			if r.Lo < x && x < r.Hi {
				wood++
			}
		}
	}
	if got := wood / d.Ring.Depth; got != 0.5 {
		t.Errorf("%.3f of the depth is left at the lap, want half", got)
	}
	head := piecetest.Levels(p.Leg(), d.Ring.Depth)
	if got := piecetest.Area(head) / (d.Legs.Breadth / math.Cos(d.Legs.Given)) / d.Ring.Width; math.Abs(got-1./3) > 1e-9 {
		t.Errorf("the tenon is %.4f of the width, want a third", got)
	}
}

// Tops by Steiner's formula: what is rounded by r is a smaller outline, a strip
// r wide round it and a circle, area + r·perimeter + π·r².
func TestAreaOfRingTops(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		d := piecetest.Sound(t)
		d.Top = design.Top{
			Kind: design.WoodTop, Outline: design.RingTop, Thickness: 20,
			Overhang: rapid.Float64Range(-10, 100).Draw(t, "overhang"),
			Corner:   design.Corner(rapid.IntRange(0, 2).Draw(t, "corner")),
		}
		n := float64(d.Ring.Sides)
		tan := math.Tan(math.Pi / n)
		mid := d.Ring.Inside/2/tan + d.Ring.Width + d.Top.Overhang // centre to mid-side
		size := rapid.Float64Range(0, 1).Draw(t, "corner size")
		want := n * mid * mid * tan
		switch d.Top.Corner {
		case design.ClippedCorner:
			d.Top.CornerSize = size * mid * tan
			want -= n * d.Top.CornerSize * d.Top.CornerSize * math.Sin(piecetest.Phi(d.Ring.Sides)) / 2
		case design.RoundedCorner:
			r := size * mid
			d.Top.CornerSize = r
			want = n*(mid-r)*(mid-r)*tan + 2*n*(mid-r)*tan*r + math.Pi*r*r
		}
		checkArea(t, piecetest.Worked(t, d), want)
	})
}

// checkArea compares the area stated and that of the outline drawn, whose
// chords leave an arc by a hair.
func checkArea(t *rapid.T, p piece.Piece, want float64) {
	t.Helper()
	piecetest.Nearly(t, "area stated", p.TopArea(), want)
	corners, around := p.TopCorners(), 0.0
	drawn := 0.0 // Green's theorem, ∮ x dy
	for i, a := range corners {
		b := corners[(i+1)%len(corners)]
		drawn += (a.X + b.X) / 2 * (b.Y - a.Y)
		around += a.Distance(b)
	}
	if less := want - drawn; less < -1e-6*want || less > geometry.Sagitta*around+1e-6*want {
		t.Errorf("area drawn is %.4f mm² less than %.4f", less, want)
	}
	parts := p.Parts()
	if part := parts[len(parts)-1]; part.Volume() > want*p.Design.Top.Thickness*1.000001 || part.Volume() < 0.95*want*p.Design.Top.Thickness {
		t.Errorf("the top as a solid is %.1f mm³, want near %.1f", part.Volume(), want*p.Design.Top.Thickness)
	}
}

func TestAreaOfRoundTops(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		d := piecetest.Sound(t)
		d.Top = design.Top{Kind: design.WoodTop, Thickness: 20, Overhang: rapid.Float64Range(-10, 100).Draw(t, "overhang")}
		n := math.Pi / float64(d.Ring.Sides)
		radius := (d.Ring.Inside/2/math.Tan(n)+d.Ring.Width)/math.Cos(n) + d.Top.Overhang
		if rapid.Bool().Draw(t, "diameter given") {
			radius = 321
			d.Top.Diameter = 642
		}
		p := piecetest.Worked(t, d)
		checkArea(t, p, math.Pi*radius*radius)
		piecetest.Nearly(t, "radius", p.TopRadius(), radius)
	})
}

// Free outlines, convex: corners on an ellipse in rising order.
func TestAreaOfFreeTops(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		d := piecetest.Sound(t)
		d.Top = design.Top{Kind: design.WoodTop, Outline: design.FreeOutline, Thickness: 20}
		n := rapid.IntRange(3, 9).Draw(t, "corners")
		for i := range n {
			a := (float64(i) + rapid.Float64Range(-0.3, 0.3).Draw(t, "corner")) * 2 * math.Pi / float64(n)
			d.Top.Points = append(d.Top.Points, geometry.Pt(400*math.Cos(a), 250*math.Sin(a)))
		}
		whole, clipped, least := 0.0, 0.0, math.Inf(1)
		for i, c := range d.Top.Points {
			before, after := d.Top.Points[(i+n-1)%n], d.Top.Points[(i+1)%n]
			whole += (c.X + after.X) / 2 * (after.Y - c.Y)
			least = math.Min(least, c.Distance(after))
			u, v := before.Sub(c), after.Sub(c)
			clipped += math.Abs(u.X*v.Y-u.Y*v.X) / math.Hypot(u.X, u.Y) / math.Hypot(v.X, v.Y) / 2
		}
		checkArea(t, piecetest.Worked(t, d), whole)
		d.Top.Corner = design.ClippedCorner
		d.Top.CornerSize = least / 2 * rapid.Float64Range(0.01, 1).Draw(t, "clip")
		checkArea(t, piecetest.Worked(t, d), whole-clipped*d.Top.CornerSize*d.Top.CornerSize)
	})
}
