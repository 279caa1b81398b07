package drawings

import (
	"fmt"
	"math"
	"slices"
	"strings"
	"testing"

	"gonum.org/v1/gonum/spatial/r3"
	"pgregory.net/rapid"

	"rodsheet/geometry"
	"rodsheet/geometry/joint"
	"rodsheet/geometry/solid"
	"rodsheet/templates"
	"rodsheet/templates/piece"
	"rodsheet/templates/piece/design"
	"rodsheet/templates/piece/internal/piecetest"
	"rodsheet/templates/piece/shop"
)

// aSheet is what an A4 sheet offers a drawing, everything drawn at full size.
var aSheet = templates.Setting{Clear: geometry.Pt(171, 227), Full: true}

// drawnBy returns the drawing of a kind with the given name.
func drawnBy(t *rapid.T, k drawer, p piece.Piece, name string) templates.Drawing {
	t.Helper()
	job, err := k(p, aSheet)
	if err != nil {
		t.Fatalf("%v", err)
	}
	for _, d := range job.Drawings {
		if d.Name == name {
			return d
		}
	}
	t.Fatalf("no drawing %q", name)
	return templates.Drawing{}
}

// lineOf returns the line that a label beginning with text speaks of.
func lineOf(t *rapid.T, d templates.Drawing, text string) geometry.Segment {
	t.Helper()
	for _, l := range d.Labels {
		if strings.HasPrefix(l.Text, text) {
			return l.On
		}
	}
	t.Fatalf("%s: no label %q", d.Name, text)
	return geometry.Segment{}
}

// woodAt reports whether a point lies inside a part.
func woodAt(p solid.Part, at solid.Vec) bool {
	for _, s := range p.Pieces {
		in := true
		for _, f := range s.Faces() {
			plane := f.Plane
			in = in && plane.Height(at) < 0
		}
		if in {
			return true
		}
	}
	return false
}

// isCorner asks for a corner of the part where match says.
func isCorner(t *rapid.T, what string, p solid.Part, match func(solid.Vec) float64) {
	t.Helper()
	best := math.Inf(1)
	for _, s := range p.Pieces {
		for _, f := range s.Faces() {
			for _, c := range f.Corners {
				best = math.Min(best, match(c))
			}
		}
	}
	if best > 1e-6 {
		t.Errorf("%s: the nearest corner of the %s is %.6f mm away", what, p.Name, best)
	}
}

// The template, printed side up on the face that is cut, ring side towards
// the maker and its corner at the mark, parts wood from waste at both ends of a
// stretcher.
func TestLapTemplateLiesOnBothLaps(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		d := piecetest.Sound(t)
		d.Legs.Clear++ // so that there is wood beyond the outer shoulder
		p := piecetest.Worked(t, d)
		face := drawnBy(t, lapJob, p, "lap, cut face")
		if mark := lineOf(t, face, p.MM(d.Ring.Inside/2)+" to mid-length"); mark.A.X != 0 || mark.B.X != 0 {
			t.Errorf("the distance to mid-length is at %v, want the mark", mark)
		}
		lineOf(t, face, "reference edge")
		inner, outer := lineOf(t, face, "inner shoulder"), lineOf(t, face, "outer shoulder")
		if inner.A != (geometry.Point{}) {
			t.Fatalf("the inner shoulder begins at %v, want the mark", inner.A)
		}
		half := d.Ring.Inside / 2
		checkLap(t, p, half, p.Frame.Over, inner, outer, true)
		checkLap(t, p, -half, !p.Frame.Over, inner, outer, d.Ring.Plain == design.ClosedEnd && d.Ring.Slack == 0)
	})
}

// checkLap lays the lines of the template to the mark at x on the upper face
// or the underside and looks for wood a hair to both sides of them.
func checkLap(t *rapid.T, p piece.Piece, x float64, upper bool, inner, outer geometry.Segment, closed bool) {
	t.Helper()
	part := p.Stretcher()
	place, z := geometry.Identity(), 0.75*p.Frame.Ring.Depth
	if !upper { // what lies face down is seen from below
		place, z = geometry.MirrorX(), 0.25*p.Frame.Ring.Depth
	}
	place = place.Then(geometry.Translate(geometry.Pt(x, 0)))
	probe := func(q geometry.Point) bool {
		q = place.Apply(q)
		return woodAt(part, solid.V(q.X, q.Y, z))
	}
	into := outer.Mid().Sub(inner.Mid()).Unit().Mul(1e-4)
	for _, share := range []float64{0.02, 0.5, 0.98} {
		at := inner.A.Lerp(inner.B, share)
		if !probe(at.Sub(into)) || probe(at.Add(into)) {
			t.Errorf("inner shoulder at x = %.1f, upper %v: wood %v before it and %v in the lap", x, upper, probe(at.Sub(into)), probe(at.Add(into)))
		}
		at = outer.A.Lerp(outer.B, share)
		if probe(at.Sub(into)) || closed && !probe(at.Add(into)) {
			t.Errorf("outer shoulder at x = %.1f, upper %v: wood %v in the lap and %v behind it", x, upper, probe(at.Sub(into)), probe(at.Add(into)))
		}
	}
}

// The drawings of the bridle lie on the ring sides of the parts.
func TestBridleTemplatesLieOnTheParts(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		d := piecetest.Sound(t)
		d.Legs.Proud = 0
		p := piecetest.Worked(t, d)
		stretcher := drawnBy(t, bridleJob, p, "bridle, stretcher, ring side")
		name := map[bool]string{true: "slot bottom", false: "shoulder"}
		for _, text := range []string{"trim line", name[p.Bridle.Stretcher().Slot]} {
			on := lineOf(t, stretcher, text)
			for _, q := range []geometry.Point{on.A, on.B} {
				isCorner(t, text, p.Stretcher(), func(c solid.Vec) float64 {
					return math.Hypot(c.X-p.LegReach-q.X, c.Z-q.Y)
				})
			}
		}
		leg := drawnBy(t, bridleJob, p, "bridle, leg, ring side")
		for _, text := range []string{"trim line", name[p.Bridle.Head().Slot]} {
			on := lineOf(t, leg, text)
			for _, q := range []geometry.Point{on.A, on.B} {
				isCorner(t, text, p.Leg(), func(c solid.Vec) float64 { return onBack(p, c).Distance(q) })
			}
		}
	})
}

// Where the head stands proud the bridle's template of the leg breaks off short
// of the end: nothing is cut there, and it says how the head goes on.
func TestBridleTemplateOfAProudHead(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		d := piecetest.Sound(t)
		d.Legs.Proud = rapid.Float64Range(1, 12).Draw(t, "proud")
		p := piecetest.Worked(t, d)
		head := drawnBy(t, bridleJob, p, "bridle, leg, wrap-round")
		end := p.Bridle.Head() // drawn with its head to the right
		for _, s := range head.Strokes {
			at := s.Points[0].X
			if s.Role == templates.Cut && len(s.Points) == 2 && s.Points[0].Y != s.Points[1].Y && at > -end.RoughEnd(0)-1e-6 {
				t.Errorf("a cut at %v", s.Points)
			}
		}
		if on := lineOf(t, head, "runs on: "+p.MM(d.Legs.Proud)); math.Abs(on.A.X+end.RoughEnd(0)) > 1e-9 {
			t.Errorf("it runs on from %v", on)
		}
	})
}

// onLeg returns where a point of the leg falls on its template: along the leg
// from the stretcher side's corner at the level of the stretcher's top, and outward.
func onLeg(p piece.Piece, c solid.Vec) geometry.Point {
	s, cos := math.Sincos(p.Design.Legs.Given)
	from := r3.Sub(piecetest.Vec(c), r3.Vec{X: p.Frame.Leg.StretcherSide(0), Z: p.Design.Ring.Depth})
	return geometry.Pt(r3.Dot(from, r3.Vec{X: s, Z: -cos}), r3.Dot(from, r3.Vec{X: cos, Z: s}))
}

// onBack returns where a point of the leg falls on its bridle's template, which
// has the head to the right: from the back's corner at the level of the
// stretcher's top, and inward from the back.
func onBack(p piece.Piece, c solid.Vec) geometry.Point {
	l := p.Frame.Leg
	corner := solid.V(l.Back(0), 0, p.Design.Ring.Depth)
	from := onLeg(p, c).Sub(onLeg(p, corner))
	return geometry.Pt(-from.X, -from.Y)
}

// Every corner of the leg's outline stands on its template.
func TestLegTemplateIsTheLeg(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		d := piecetest.Sound(t)
		if rapid.Bool().Draw(t, "tapered") {
			d.Legs.Taper = piecetest.Taper(t, d)
		}
		p := piecetest.Worked(t, d)
		face := drawnBy(t, legJob, p, "leg, ring side")
		var all []geometry.Point
		for _, s := range p.Leg().Pieces {
			for _, f := range s.Faces() {
				for _, c := range f.Corners {
					all = append(all, onLeg(p, c))
				}
			}
		}
		for _, c := range geometry.Hull(all) {
			onDrawing(t, face, c)
		}
	})
}

// onDrawing asks for a stroke that begins or ends at q.
func onDrawing(t *rapid.T, d templates.Drawing, q geometry.Point) {
	t.Helper()
	best := math.Inf(1)
	for _, s := range d.Strokes {
		if s.Role != templates.Waste {
			best = math.Min(best, math.Min(s.Points[0].Distance(q), s.Points[len(s.Points)-1].Distance(q)))
		}
	}
	if best > 1e-6 {
		t.Errorf("%s: no stroke ends at %v, the nearest %.6f mm from it", d.Name, q, best)
	}
}

// With a tapered ring side the back of the leg has a drawing
// of its own, which holds the corners of that edge.
func TestLegTemplateOnItsBack(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		d := piecetest.Sound(t)
		d.Legs.Taper = piecetest.Taper(t, d)
		p := piecetest.Worked(t, d)
		switch d.Legs.Taper.Faces {
		case joint.OneFace, joint.OppositeFaces:
			if job, _ := legJob(p, aSheet); len(job.Drawings) != 2 {
				t.Errorf("%d drawings of a leg that keeps its thickness, want the leg and its foot", len(job.Drawings))
			}
			return
		case joint.FourFaces: // the back itself tapers
			return
		}
		edge := drawnBy(t, legJob, p, "leg, back")
		joint := p.Design.Ring.Depth/math.Cos(p.Design.Legs.Given) + p.Frame.Leg.Breadth*math.Tan(p.Design.Legs.Given) + 1e-6
		var all []geometry.Point
		for _, s := range p.Leg().Pieces {
			for _, f := range s.Faces() {
				for _, c := range f.Corners {
					q, arris := onLeg(p, c), math.Abs(c.Y-p.Frame.Leg.Thickness/2) > p.Frame.Leg.Thickness/2-1e-6
					if q.Y > p.Frame.Leg.Breadth-1e-6 && (q.X > joint || arris) {
						all = append(all, geometry.Pt(q.X, c.Y))
					}
				}
			}
		}
		for _, c := range geometry.Hull(all) {
			onDrawing(t, edge, c)
		}
	})
}

// The foot is the face on which the solid stands.
func TestFootTemplateIsTheFaceOnTheFloor(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		d := piecetest.Sound(t)
		if rapid.Bool().Draw(t, "tapered") {
			d.Legs.Taper = piecetest.Taper(t, d)
		}
		p := piecetest.Worked(t, d)
		foot := drawnBy(t, legJob, p, "foot on the floor, from above")
		corners := foot.Strokes[0].Points
		for _, q := range corners {
			isCorner(t, "foot", p.Leg(), func(c solid.Vec) float64 {
				at := solid.V(p.Frame.Leg.Foot()+q.X, q.Y, d.Ring.Depth-d.Legs.Height)
				return c.Distance(at)
			})
		}
		piecetest.Nearly(t, "area of the foot", geometry.Area(corners[:len(corners)-1]), piecetest.Area(piecetest.Levels(p.Leg(), d.Ring.Depth-d.Legs.Height)))
		outer := geometry.Bounds(corners...).Max.X
		piecetest.Nearly(t, "back of the foot", p.Frame.Leg.Foot()+outer, p.Foot())
	})
}

// Caul and filler strip lean as the leg's outer face leans in the solids.
func TestBlocksLeanAsTheLegs(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		d := piecetest.Sound(t)
		d.Legs.Given = math.Max(d.Legs.Given, 0.01)
		p := piecetest.Worked(t, d)
		_, long := piecetest.LongestEdge(p.Leg(), piecetest.AnyEdge)
		want := piecetest.Between(long, r3.Vec{Z: -1})
		for _, name := range []string{"leg caul", "filler strip"} {
			outline := drawnBy(t, blocksJob(shop.FillerStrip, shop.LegCaul), p, name).Strokes[0].Points
			straight, leaning := outline[1].Sub(outline[0]), outline[2].Sub(outline[3])
			piecetest.Nearly(t, name, math.Atan2(straight.Cross(leaning), straight.Dot(leaning)), want)
		}
	})
}

// The place of the pad is that of the solid, and an outermost pad touches the
// shoulder drawn beside it.
func TestPadTemplate(t *testing.T) {
	const hair = 0.01 // mm: the solid has few corners, not quite evenly set
	rapid.Check(t, func(t *rapid.T) {
		d := piecetest.Sound(t)
		d.Top = piecetest.Low().Top
		d.Top.Pads.Diameter = rapid.Float64Range(5, 18).Draw(t, "diameter")
		p := piecetest.Worked(t, d)
		pad := drawnBy(t, padJob, p, "pad, top of the stretcher")
		centre := partNamed(p.Parts(), "pad 1").Centroid().Sub(p.Place(0).O) // the first side is not turned
		at := geometry.Pt(centre.X, centre.Y)
		shoulder := lineOf(t, pad, "inner shoulder")
		away := shoulder.B.Sub(shoulder.A).Unit().Cross(at.Sub(shoulder.A))
		if math.Abs(away-d.Top.Pads.Diameter/2) > hair {
			t.Errorf("the shoulder is %.6f mm from the centre, want half of %.6f", away, d.Top.Pads.Diameter)
		}
		for _, s := range pad.Strokes {
			for _, q := range s.Points {
				if s.Role == templates.Cut && math.Abs(q.Distance(at)-d.Top.Pads.Diameter/2) > hair {
					t.Fatalf("a point of the circle is %.6f mm from the centre of the solid", q.Distance(at))
				}
			}
		}
	})
}

// The outline of the top has the area that is ordered, and its pads are those
// of the solids.
func TestTopTemplate(t *testing.T) {
	for k, d := range piecetest.Bases() {
		p := piecetest.Worked(t, d)
		job, err := topJob(p, aSheet)
		if err != nil {
			t.Fatal(err)
		}
		if d.Top.Kind == design.NoTop {
			if len(job.Drawings) != 0 {
				t.Errorf("base %d: a template of a top that is not there", k)
			}
			continue
		}
		top := job.Drawings[0]
		outline := top.Strokes[0].Points
		if d.Top.Outline == design.RoundTop {
			isQuarter(t, p, top)
			continue
		}
		if got, want := geometry.Area(outline[:len(outline)-1]), p.TopArea(); math.Abs(got-want) > 1e-4*want {
			t.Errorf("base %d: the outline holds %.1f mm², want %.1f", k, got, want)
		}
		if !top.Free || top.Strokes[0].Role != templates.Cut {
			t.Errorf("base %d: the outline is to be cut, turned as it fits", k)
		}
		for _, part := range p.Parts() {
			if number, ok := strings.CutPrefix(part.Name, "pad "); ok {
				c, words := part.Centroid(), "pad, below"
				if d.Top.Outline == design.FreeOutline {
					words = "pad on stretcher " + number + ", below"
				}
				if !hasLabelAt(top, words, geometry.Pt(c.X, c.Y)) {
					t.Errorf("base %d: %s is not drawn where it is", k, part.Name)
				}
			}
		}
	}
}

// isQuarter checks that a drawing of a round top is a quarter of it, and that
// its pad stands as far from the centre as those of the solids.
func isQuarter(t *testing.T, p piece.Piece, top templates.Drawing) {
	t.Helper()
	arc := top.Strokes[0].Points
	if got := 4 * geometry.Area(append(slices.Clone(arc), geometry.Point{})); math.Abs(got-p.TopArea()) > 1e-4*got {
		t.Errorf("four quarters hold %.1f mm², want %.1f", got, p.TopArea())
	}
	for _, part := range p.Parts() {
		if !strings.HasPrefix(part.Name, "pad") {
			continue
		}
		c := part.Centroid()
		out := geometry.Pt(c.X, c.Y).Norm()
		words := fmt.Sprintf("pad, below: %s from the centre, %d of them evenly round", p.MM(out), p.Frame.Ring.Sides)
		if !hasLabelAt(top, words, geometry.Polar(out, math.Pi/4)) {
			t.Errorf("no pad with %q", words)
		}
	}
}

func hasLabelAt(d templates.Drawing, text string, at geometry.Point) bool {
	for _, l := range d.Labels {
		if l.Text == text && l.On.A.Distance(at) < 1e-3 {
			return true
		}
	}
	return false
}

// The plan says over and under as the solids have it: halfway up the upper half
// of a crossing there is wood of the one that passes over, and none of the other.
func TestPlanSaysWhatPassesOver(t *testing.T) {
	for n := joint.RingFewest; n <= joint.RingMost; n++ {
		for _, over := range []bool{false, true} {
			d := piecetest.Low()
			d.Ring.Sides, d.Ring.LegEndOver, d.Ring.Inside = n, over, 400
			p := piecetest.Worked(t, d)
			job, err := planJob(p, aSheet)
			if err != nil {
				t.Fatal(err)
			}
			parts := p.Parts()
			found := 0
			for _, l := range job.Drawings[0].Labels {
				above, below, ok := strings.Cut(l.Text, " passes over ")
				if !ok {
					continue
				}
				found++
				z := d.Legs.Height - d.Ring.Depth/4
				at := solid.V(l.On.A.X, l.On.A.Y, z)
				if !woodAt(partNamed(parts, "stretcher "+above), at) || woodAt(partNamed(parts, "stretcher "+below), at) {
					t.Errorf("%d sides, leg end over %v: %q is wrong", n, over, l.Text)
				}
			}
			if found != n {
				t.Errorf("%d sides: %d crossings named", n, found)
			}
		}
	}
}

func partNamed(parts []solid.Part, name string) solid.Part {
	for _, p := range parts {
		if p.Name == name {
			return p
		}
	}
	return solid.Part{}
}
