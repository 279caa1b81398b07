package box

import (
	"errors"
	"math"
	"slices"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"rodsheet/geometry"
	"rodsheet/geometry/measure"
	"rodsheet/geometry/solid"
	"rodsheet/templates"
	"rodsheet/templates/piece/design"
	"rodsheet/templates/piece/internal/piecetest"
	"rodsheet/templates/piece/kind"
	"rodsheet/templates/piece/shop"
	"rodsheet/templates/wording"
)

func regular(n int, slope float64) design.Design {
	return design.Design{
		Title: "planter", Kind: design.BoxKind, Saw: design.Saw{Kerf: 3.2}, Wood: design.Wood{Species: "Ash, white", MoistureFrom: 8, MoistureTo: 12},
		Box: design.Box{Sides: n, Side: 200, Height: 100, Thickness: 10, Slope: measure.Radians(slope)},
	}
}

func rectangle(slope, ends float64) design.Design {
	d := regular(4, slope)
	d.Box.Outline, d.Box.Length, d.Box.Width = design.RectangleBox, 360, 240
	d.Box.EndSlope, d.Box.OwnEnds = measure.Radians(ends), true
	return d
}

// anyBox is one that a maker may draw.
func anyBox(t *rapid.T) design.Design {
	d := regular(rapid.IntRange(3, 12).Draw(t, "sides"), rapid.Float64Range(-25, 44).Draw(t, "slope"))
	d.Box.Corner = rapid.SampledFrom([]design.BoxCorner{design.MitredCorner, design.SplinedCorner}).Draw(t, "corner")
	if rapid.Bool().Draw(t, "rectangle") {
		corner := rapid.SampledFrom([]design.BoxCorner{design.MitredCorner, design.SplinedCorner, design.ButtCorner, design.DovetailedCorner}).Draw(t, "corner of four")
		ends := rapid.Float64Range(-25, 44).Draw(t, "ends")
		if corner == design.DovetailedCorner {
			ends = measure.Degrees(d.Box.Slope)
		}
		d = rectangle(measure.Degrees(d.Box.Slope), ends)
		d.Box.Corner = corner
	}
	d.Box.Height = rapid.Float64Range(40, 150).Draw(t, "height")
	d.Box.Thickness = rapid.Float64Range(6, 20).Draw(t, "thickness")
	if rapid.Bool().Draw(t, "bottom") {
		d.Box.Bottom = design.BoxBottom{Thickness: 8, Up: 5, Gap: 1}
	}
	return d
}

func worked(t rapid.TB, d design.Design) Box {
	t.Helper()
	b, err := piecetest.Solved(judge(d, nil))
	var bound *measure.BoundError
	if errors.As(err, &bound) {
		if r, ok := t.(*rapid.T); ok {
			r.Skip("no such box")
		}
	}
	if err != nil {
		t.Fatal(err)
	}
	return b
}

// The sides meet all along their mitres and share no wood: together with what is inside
// they fill the outside.
func TestSidesMeet(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		b := worked(t, anyBox(t))
		sum := b.hollow(0, b.design.Box.Height, 0).Volume()
		parts := b.Parts()
		for i, p := range parts {
			if p.Kind != "bottom" {
				sum += p.Volume()
			}
			for _, q := range parts[:i] {
				for _, c := range solid.Clash(p.Part, q.Part) {
					t.Errorf("%s and %s share %.3f mm³", p.Name, q.Name, c.Volume())
				}
			}
		}
		if b.design.Box.Corner == design.SplinedCorner { // the slots are deeper than the splines
			for i := range b.faces {
				sum += b.tongue(i, b.slotDeep()).Volume() - b.spline(i).Volume()
			}
		}
		outside := b.between(0, b.design.Box.Height)
		for _, f := range b.faces {
			outside = outside.Cut(f.inside(0))
		}
		if want := outside.Volume(); math.Abs(sum-want) > 1e-6*want {
			t.Errorf("sides and room hold %.6f of %.6f mm³", sum, want)
		}
	})
}

// Every angle of the closed forms stands on the solids: between the planes of the faces
// and of the ends.
func TestAnglesStandOnTheSolids(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		b := worked(t, anyBox(t))
		for _, s := range b.sorts() {
			i := s.first
			f, g, end := b.faces[i], b.faces[b.next(i)], b.end(i, b.next(i))
			n, m := f.normal(), end.N.Unit()
			near := func(what string, got, want float64) {
				if math.Abs(got-want) > 1e-9 {
					t.Errorf("%s of %s: %.12f, want %.12f", what, s.id, got, want)
				}
			}
			c := b.corner(i)
			near("dihedral", c.Dihedral(), math.Pi-math.Acos(n.Dot(g.normal())))
			near("tilt", b.tilt(i), -math.Asin(m.Dot(n)))
			trace := n.Cross(m).Unit()
			if trace.Dot(f.up()) < 0 {
				trace = trace.Mul(-1)
			}
			near("off square", c.OffSquare(), math.Atan2(trace.Dot(f.along()), trace.Dot(f.up())))
			near("slope", f.slope, math.Asin(-n.Z))
		}
	})
}

// Dihedral angles of the Platonic solids, degrees (standard solid geometry: Coxeter,
// Regular Polytopes, Table I, from memory): a side leans out from plumb by what its slope
// from level leaves of 90.
func TestPlatonicSolids(t *testing.T) {
	for _, tt := range []struct {
		name                  string
		sides                 int
		fromLevel, wantBeside float64
	}{
		{"tetrahedron", 3, 70.528779, 70.528779},
		{"cube on its corner", 3, 54.735610, 90},
		{"octahedron", 4, 54.735610, 109.471221},
		{"dodecahedron", 5, 63.434949, 116.565051},
		{"icosahedron", 5, 37.377368, 138.189685},
	} {
		d := regular(tt.sides, 90-tt.fromLevel)
		d.Box.Height = 20
		b := worked(t, d)
		n, m := b.faces[0].normal(), b.faces[1].normal()
		got := measure.Degrees(math.Pi - math.Acos(n.Dot(m)))
		if math.Abs(got-tt.wantBeside) > 1e-5 || math.Abs(measure.Degrees(b.corner(0).Dihedral())-tt.wantBeside) > 1e-5 {
			t.Errorf("%s: %.6f°, want %.6f°", tt.name, got, tt.wantBeside)
		}
	}
}

// The settings of every card, carried out on the blank, give the side.
func TestTheSettingsMakeTheSides(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		d := anyBox(t)
		if d.Box.Corner == design.SplinedCorner || d.Box.Corner == design.DovetailedCorner {
			d.Box.Corner = design.MitredCorner // slots and dovetails are cut apart
		}
		b := worked(t, d)
		for _, s := range b.sorts() {
			i, cuts := s.first, b.endCuts(s)
			outer := cuts[0].outerDown
			m := b.table(i, outer)
			if math.Abs(m.Det()-1) > 1e-9 {
				t.Fatalf("the side is mirrored on its way to the table: %v", m.Det())
			}
			want := b.side(i).Transform(m)
			// A saw that leans to the other side makes the mirror image of this: that is the side too.
			mirror := solid.Affine3{X: solid.V(-1, 0, 0), Y: solid.V(0, 1, 0), Z: solid.V(0, 0, 1)}
			if differ(want.Transform(mirror), want) > 1e-6*want.Volume() {
				t.Errorf("%s is not its own mirror image", s.id)
			}
			if got := sawn(t, b, s, cuts); differ(got, want) > 1e-6*want.Volume() {
				t.Errorf("%s: %.6f mm³ differ of %.3f", s.id, differ(got, want), want.Volume())
			}
		}
	})
}

// sawn rips the edges and saws both ends, each in the frame of its set-up, of the figures
// alone.
func sawn(t *rapid.T, b Box, s sort, cuts [2]endCut) solid.Part {
	thick, r := b.thickness(), b.ripCut(s)
	face := b.down(s.first, cuts[0].outerDown)
	half := b.longest(s.first)/2 + b.trim()
	// Ripped, the board is a parallelogram in section; which way its edges lean through the
	// thickness follows from the face that is down and the way of the slope.
	lean := math.Tan(r.tilt)
	if (b.faces[s.first].slope > 0) == cuts[0].outerDown {
		lean = -lean
	}
	low, high := face[0].Y, face[2].Y
	if wide := high - low; math.Abs(r.width-wide) > 1e-9 {
		t.Errorf("%s: the fence stands at %g for a face %g wide", s.id, r.width, wide)
	}
	// With the side down that the words say, the upper face of the ripped board stands
	// towards the blade: up the slope for the upper edge, which is sawn last.
	if up := (lean > 0) == (cuts[0].outerDown == r.outerFirst); r.tilt > 1e-9 && up {
		t.Errorf("%s: the board lies the wrong way round to be ripped", s.id)
	}
	// The fence stays for both edges: the first cut is within the blank, its other edge on the fence.
	if tip := r.width + thick*math.Tan(r.tilt); tip > b.blank(s.first)+1e-9 {
		t.Errorf("%s: the first edge comes out at %g of a blank %g wide", s.id, tip, b.blank(s.first))
	}
	board := solid.Stock("", solid.Box(solid.V(-half, low-2*thick-99, 0), solid.V(half, high+2*thick+99, thick)))
	board = board.Cut(solid.Through(solid.V(0, low, 0), solid.V(0, -1, lean))).Cut(solid.Through(solid.V(0, high, 0), solid.V(0, 1, -lean)))
	right := 0.0 // where the first end stands along the edge that was against the gauge
	for _, c := range cuts {
		turned := solid.Identity()
		edge := low
		if c.upper {
			turned, edge = solid.RotateZ(math.Pi), -high
		}
		part := board.Transform(turned)
		at := right
		if c.stop > 0 {
			at = tip(part, edge) + c.stop
		} else {
			at = face[1].X
			if c.upper {
				at = -face[3].X
			}
		}
		ss, cc := math.Sincos(c.swing)
		st, ct := math.Sincos(c.tilt)
		n := solid.V(cc*ct, -ss*ct, st)
		board = part.Cut(solid.Through(solid.V(at, edge, 0), n)).Transform(turned)
	}
	return board
}

// tip returns where a part begins along the gauge's fence, at the table.
func tip(p solid.Part, edge float64) float64 {
	least := math.Inf(1)
	for _, s := range p.Pieces {
		for _, f := range s.Faces() {
			for _, c := range f.Corners {
				if math.Abs(c.Z) < 1e-6 && math.Abs(c.Y-edge) < 1e-6 {
					least = math.Min(least, c.X)
				}
			}
		}
	}
	return least
}

// differ returns the volume that one part has and the other has not.
func differ(p, q solid.Part) float64 {
	out := 0.0
	for _, pair := range [][2]solid.Part{{p, q}, {q, p}} {
		left := pair[0]
		for _, s := range pair[1].Pieces {
			left = left.Subtract(s)
		}
		out += left.Volume()
	}
	return out
}

// What is drawn on a card is what is sawn: the blade passes where the figures say, and the
// part that stays is the face that lies down.
func TestPicturesShowTheSettings(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		b := worked(t, anyBox(t))
		for _, s := range b.sorts() {
			c := b.endCuts(s)[1]
			sin, cos := math.Sincos(c.swing)
			stays := geometry.LeftOf(b.board(c), geometry.Segment{B: geometry.Pt(sin, cos)})
			face := b.down(s.first, c.outerDown)
			if got, want := geometry.Area(stays), geometry.Area(face); math.Abs(got-want) > 1e-6*want {
				t.Errorf("%s: %.6f mm² stay of %.6f", s.id, got, want)
			}
			// North on the paper is away from the maker: the words turn the gauge as it is drawn.
			fence, said := geometry.Rotate(c.swing).Apply(geometry.Pt(1, 0)), turned(c.swing)
			if away := said == turnedAway.With(); away != (fence.Y > 1e-9) || !away && said == squareGauge.With() != (fence.Y > -1e-9) {
				t.Errorf("%s: %q for a gauge that runs %v", s.id, said, fence)
			}
			low := geometry.Bounds(stays...).Min
			if at := low.X; math.Abs(at+c.stop) > 1e-6 || math.Abs(low.Y) > 1e-6 {
				t.Errorf("%s: the tip stands at %.6f, the stop at %.6f", s.id, at, -c.stop)
			}
		}
	})
}

// A size at the rim and the slope that follows from it give the same box.
func TestRimOrSlope(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		b := worked(t, anyBox(t))
		d := b.design
		rim := func(i int) float64 {
			high := b.outline(d.Box.Height, 0)
			return high[i].Distance(high[(i+1)%len(high)])
		}
		if d.Box.Outline == design.RegularBox {
			d.Box.Slope, d.Box.RimSide = 0, rim(0)
		} else {
			d.Box.Slope, d.Box.EndSlope, d.Box.RimLength, d.Box.RimWidth = 0, 0, rim(0), rim(1)
		}
		again := worked(t, d)
		for i, f := range again.faces {
			if math.Abs(f.slope-b.faces[i].slope) > 1e-9 {
				t.Errorf("side %d leans %.9f, want %.9f", i, f.slope, b.faces[i].slope)
			}
		}
	})
}

// The room inside is that of a frustum of a pyramid: h/3·(A + B + √(A·B)).
func TestCapacity(t *testing.T) {
	b := worked(t, regular(6, 20))
	h := b.design.Box.Height
	low, high := geometry.Area(b.outline(0, b.thickness())), geometry.Area(b.outline(h, b.thickness()))
	if got, want := b.capacity(), h/3*(low+high+math.Sqrt(low*high)); math.Abs(got-want) > 1e-9*want {
		t.Errorf("%.6f mm³, want %.6f", got, want)
	}
}

func TestRefusals(t *testing.T) {
	for _, tt := range []struct {
		name   string
		figure measure.ID
		change func(*design.Box)
	}{
		{"sides of nothing", "box.sides", func(b *design.Box) { b.Sides = 2 }},
		{"too many", "box.sides", func(b *design.Box) { b.Sides = 13 }},
		{"twelve butted corners", "box.butt-sides", func(b *design.Box) { b.Sides, b.Corner = 12, design.ButtCorner }},
		{"dovetails left over", "box.dovetail-odd", func(b *design.Box) { b.Corner = design.DovetailedCorner }},
		{"dovetails of two slopes", "box.dovetail-slopes", func(b *design.Box) {
			*b = rectangle(10, 12).Box
			b.Corner = design.DovetailedCorner
		}},
		{"dovetails that lean in", "dovetail.board-slope", func(b *design.Box) { b.Sides, b.Slope, b.Corner = 4, -0.1, design.DovetailedCorner }},
		{"a comb", "dovetail.root", func(b *design.Box) { b.Sides, b.Tails, b.Corner = 4, 20, design.DovetailedCorner }},
		{"three butted corners", "box.butt-sides", func(b *design.Box) { b.Sides, b.Corner = 3, design.ButtCorner }},
		{"turned inside out at the rim", "box.room-above", func(b *design.Box) { b.Slope = measure.Radians(-70) }},
		{"a bottom that is all gap", "box.room-bottom", func(b *design.Box) { b.Side, b.Bottom = 60, design.BoxBottom{Thickness: 10, Gap: 45} }},
		{"all wood", "box.room-below", func(b *design.Box) { b.Thickness = 190 }},
		{"flatter than a frame", "box.slope", func(b *design.Box) { b.Slope = measure.Radians(76) }},
		{"no height", "box.height", func(b *design.Box) { b.Height = 0 }},
		{"not a number", "box.height", func(b *design.Box) { b.Height = math.NaN() }},
	} {
		d := regular(5, 15)
		tt.change(&d.Box)
		_, err := piecetest.Solved(judge(d, nil))
		var bound *measure.BoundError
		if !errors.As(err, &bound) || bound.Figure != tt.figure {
			t.Errorf("%s: %v, want one about %s", tt.name, err, tt.figure)
			continue
		}
		line, hint := wording.Fault(err, measure.Millimetre)
		if strings.Contains(line+hint, "box.") {
			t.Errorf("%s has no words: %q, %q", tt.name, line, hint)
		}
		if len(design.SetBy(err)) == 0 {
			t.Errorf("%s: no key sets it", tt.name)
		}
	}
}

// The boxes to tick off are those of the cut list: every side and its two ends, spares too.
func TestTicksAreThoseOfTheList(t *testing.T) {
	d := regular(5, 15)
	d.Box.Corner, d.Wood.Spares = design.SplinedCorner, 2
	b := worked(t, d)
	parts := 0
	for _, r := range b.Cuts() {
		if r.Part == shop.BoxSide {
			parts = r.Parts() + r.Spares
		}
	}
	job, err := b.glueUp(templates.Setting{Clear: geometry.Pt(190, 260)})
	if err != nil {
		t.Fatal(err)
	}
	if got := job.Cards[0].Ticks[0].Boxes; got != 2*parts || b.ticks(b.sorts()[0])[0].Boxes != parts {
		t.Errorf("%d ends of %d sides", got, parts)
	}
}

// The card of planing says how long sides are that have square ends, as the cut list does, and
// the board for wedge blocks is longer than these by what the last of them is held by.
func TestBoardsAreAsTheList(t *testing.T) {
	for _, d := range []design.Design{regular(5, 15), rectangle(10, 12)} {
		b := worked(t, d)
		plane := b.stock()[0]
		for _, row := range b.Cuts() {
			switch row.Part {
			case shop.BoxWedge:
				pairs, each := float64(b.wedges()/2), b.wedgeCorners()[1].X+2*d.Saw.Kerf
				if left := row.Sawn.Length - pairs*each; left < 90 { // about a hand wide
					t.Errorf("%g mm are left to hold by", left)
				}
			case shop.BoxSide, shop.BoxLongSide, shop.BoxEnd:
				if !slices.ContainsFunc(plane.Figures, func(r templates.Reading) bool { return r.Value == b.mm(row.Sawn.Length) && r.Write }) {
					t.Errorf("%s is nowhere on %+v", b.mm(row.Sawn.Length), plane.Figures)
				}
			}
		}
	}
}

// A rip that is square speaks of no tilt, one that is tilted says where the fence stands.
func TestCautionOfTheRip(t *testing.T) {
	for slope, want := range map[float64]text{0: squareCaution, 5: ripCard.Caution} {
		if got := worked(t, regular(5, slope)).stock()[1].Caution; got != want.With() {
			t.Errorf("at %v° the rip is cautioned by %q", slope, got)
		}
	}
}

// Each check fails where it should, and its fixes mend it.
func TestChecks(t *testing.T) {
	for _, tt := range []struct {
		id     measure.ID
		grade  kind.Grade
		change func(*design.Design)
	}{
		{"box.tilt", kind.Fail, func(d *design.Design) { *d = regular(3, 2) }},
		{"box.edge-tilt", kind.Warn, func(d *design.Design) { d.Box.Slope = measure.Radians(50) }},
		{"box.edge-tilt", kind.Warn, func(d *design.Design) { *d = rectangle(10, 50) }},
		{"box.blade", kind.Warn, func(d *design.Design) { d.Saw.Highest = 9 }},
		{"box.board", kind.Warn, func(d *design.Design) {
			d.Wood.Boards = []design.Board{{Length: 2000, Width: 90, Thickness: 30, Count: 5}}
		}},
		{"box.spline-wood", kind.Warn, func(d *design.Design) { d.Box.Corner, d.Box.Spline = design.SplinedCorner, 9 }},
		{"box.spline-wood", kind.Warn, func(d *design.Design) { // it breaks out on the hollow side
			*d = regular(12, 0)
			d.Box.Corner, d.Box.Thickness, d.Box.Spline = design.SplinedCorner, 40, 32
		}},
		{"box.bottom-inside", kind.Fail, func(d *design.Design) { d.Box.Bottom = design.BoxBottom{Thickness: 10, Up: 95} }},
		{"box.bottom-gap", kind.Warn, func(d *design.Design) { d.Box.Bottom = design.BoxBottom{Thickness: 10} }},
	} {
		d := regular(5, 15)
		tt.change(&d)
		w, err := Kind().Solve([]design.Design{d})
		if err != nil {
			t.Fatal(err)
		}
		found := false
		for _, c := range w.Report().Sizes[0].Checks {
			if c.ID == tt.id {
				found = true
				piecetest.Written(t, d, c)
				if c.Grade != tt.grade {
					t.Errorf("%s: %v, want %v: %s", tt.id, c.Grade, tt.grade, c.Measured(d.Unit))
				}
				if len(c.Fixes) == 0 && tt.id != "box.tilt" {
					t.Errorf("%s: nothing mends it", tt.id)
				}
				for _, f := range c.Fixes {
					checkFix(t, d, c, f)
				}
			}
		}
		if !found {
			t.Errorf("%s is not asked", tt.id)
		}
	}
}

// checkFix wants a fix to mend its check, and no figure nearer to the one decided to do so.
func checkFix(t *testing.T, d design.Design, c kind.Check, f kind.Fix) {
	t.Helper()
	holds := func(v float64) bool {
		try := d
		at, _ := f.Key.Figure()
		*at(&try) = v
		b, err := piecetest.Solved(judge(try, nil))
		if err != nil {
			return false
		}
		for _, now := range b.Checks() {
			if now.ID == c.ID {
				return now.Grade == kind.Pass
			}
		}
		return true
	}
	if !holds(f.To.Value) {
		t.Errorf("%s: %s does not mend it", c.ID, f.Words)
	}
	step := 1.0
	if f.To.Kind == measure.KindAngle {
		step = measure.Radians(0.5)
	}
	if nearer := f.To.Value - math.Copysign(step, f.To.Value-f.From.Value); math.Abs(nearer-f.From.Value) > step && holds(nearer) {
		t.Errorf("%s: %s would do as well with %v", c.ID, f.Words, nearer)
	}
}

// Sizes of one file may differ in outline and in how they meet: each has its figures on the
// cover, and the pack holds the cards of both.
func TestSizesOfOtherOutlines(t *testing.T) {
	low, long := regular(5, 15), rectangle(10, 12)
	low.Size, long.Size = "low", "long"
	w, err := Kind().Solve([]design.Design{low, long})
	if err != nil {
		t.Fatal(err)
	}
	job, err := w.Pack(kind.Options{For: kind.Bench}, templates.Setting{Clear: geometry.Pt(170, 230)})
	if err != nil {
		t.Fatal(err)
	}
	angle := func(rad float64) string { return measure.Angle(rad).Text(measure.Millimetre) }
	for id, want := range map[measure.ID][]string{
		"side": {angle(low.Box.Slope), ""}, "long": {"", angle(long.Box.Slope)}, "end": {"", angle(long.Box.EndSlope)},
	} {
		var row []string
		for _, p := range job.Sections[0].Panels {
			for _, r := range p.Table {
				if r[0] == mainSlope.With(sortNames[id].With()) {
					row = r[1:]
				}
			}
		}
		if !slices.Equal(row, want) {
			t.Errorf("slope of %s: %q, want %q", id, row, want)
		}
	}
}

// A slope for which no triangle is drawn, since a square serves, has a pack all the same.
func TestHardlySloping(t *testing.T) {
	for _, slope := range []float64{0, 0.2, 0.49, 0.51} {
		b := worked(t, regular(5, slope))
		for _, e := range envelopes() {
			if _, err := e.Fill(b, templates.Setting{Clear: geometry.Pt(190, 260)}); err != nil {
				t.Errorf("%g°: %v", slope, err)
			}
		}
	}
}

// The wood beside the slot of a spline, measured on the solids: from the corners of what the
// slot takes of one side to the two faces of that side.
func TestWoodBesideTheSpline(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		d := anyBox(t)
		d.Box.Corner = design.SplinedCorner
		d.Box.Spline = rapid.Float64Range(0.05, 0.6).Draw(t, "spline") * d.Box.Thickness
		b := worked(t, d)
		least := math.Inf(1)
		for _, f := range b.tongue(0, b.slotDeep()).Cut(b.end(0, 1)).Faces() {
			for _, c := range f.Corners {
				outer, hollow := b.faces[0].inside(0), b.faces[0].inside(b.thickness())
				least = min(least, outer.D-outer.N.Dot(c), hollow.N.Dot(c)-hollow.D)
			}
		}
		if got := b.behindSpline(); math.Abs(got-least) > 1e-6 {
			t.Errorf("%.6f mm, on the solids %.6f", got, least)
		}
	})
}

// What is not given is said in the form, whatever the outline.
func TestFollows(t *testing.T) {
	d := regular(5, 15)
	d.Box.Corner = design.SplinedCorner
	if got := worked(t, d).Follows()["box.spline"].Value; got != d.Box.Thickness/4 {
		t.Errorf("spline %v", got)
	}
	d.Box.Sides, d.Box.Corner, d.Box.Tails = 4, design.DovetailedCorner, 2
	if got := worked(t, d).Follows()["box.tails"].Value; got != 2 {
		t.Errorf("tails %v", got)
	}
}

// A square box has no angle to set a gauge by, yet its sides at full size.
func TestSquareAtFullSize(t *testing.T) {
	d := rectangle(0, 0)
	d.Box.Corner = design.ButtCorner
	job, err := worked(t, d).ends(templates.Setting{Clear: geometry.Pt(170, 230), Full: true})
	if err != nil || len(job.Drawings) != 2 {
		t.Errorf("%d drawings, %v", len(job.Drawings), err)
	}
}

// The level edges of dovetailed sides are planed: no saw has to tilt so far, but for a bottom.
func TestDovetailedEdgesArePlaned(t *testing.T) {
	d := rectangle(50, 50)
	d.Box.Corner = design.DovetailedCorner
	asked := func() bool {
		return slices.ContainsFunc(worked(t, d).Checks(), func(c kind.Check) bool { return c.ID == "box.edge-tilt" })
	}
	if asked() {
		t.Error("the tilt for edges is asked that are planed")
	}
	d.Box.Bottom = design.BoxBottom{Thickness: 10}
	if !asked() {
		t.Error("the tilt for the edges of the bottom is not asked")
	}
}

// A figure of the views is that of its key: with the key set to another, it shows that one.
func TestDimensionsAreOfTheirKeys(t *testing.T) {
	for _, d := range []design.Design{regular(5, 15), rectangle(10, 25)} {
		set := map[design.Key]*float64{
			"box.side": &d.Box.Side, "box.length": &d.Box.Length, "box.height": &d.Box.Height,
			"box.rim-side": &d.Box.RimSide, "box.rim-length": &d.Box.RimLength,
		}
		for _, l := range []kind.Look{kind.FromAbove, kind.FromFront} {
			shown, _ := worked(t, d).Dimensions(l)
			for i, f := range shown {
				figure, ok := set[f.Key]
				if !ok {
					t.Errorf("%s is no length", f.Key)
					continue
				}
				was := *figure
				*figure = 345
				again, _ := worked(t, d).Dimensions(l)
				if *figure = was; again[i].Text != "345 mm" {
					t.Errorf("%s of 345 mm shows %s", f.Key, again[i].Text)
				}
			}
		}
	}
}

func TestWhatMendsHasItsWords(t *testing.T) { piecetest.Mends(t, mends(), mending) }

// An end that is sawn square speaks of no triangle, no lean and no turn of the gauge.
func TestSquareEndsAreSaidSo(t *testing.T) {
	d := rectangle(0, 0)
	d.Box.Corner = design.ButtCorner
	b := worked(t, d)
	for k, c := range b.endCuts(b.sorts()[0]) {
		card := b.endCard(c, k)
		want := [...]string{firstEndText.With(squareGauge.With()), secondSquare.With()}[k]
		if len(card.Text) != 1 || card.Text[0] != want || k == 0 && card.Test != squareTest.With() || len(card.Setup[0].Arrows) != 1 {
			t.Errorf("%q; %s; %v", card.Text, card.Test, card.Setup[0].Arrows)
		}
	}
}

// Seen along a corner, the mitre running down from its outer arris at the origin, both jaws
// press level: through the line on the blocks they press through the middle of the mitre.
func TestClampsPressThroughTheMitre(t *testing.T) {
	marked := 0
	rapid.Check(t, func(t *rapid.T) {
		b := worked(t, anyBox(t))
		at, ok := b.clampAt()
		if b.wedges() == 0 || !ok {
			t.Skip("no block, or none that a clamp holds on")
		}
		marked++
		half := b.corner(0).Dihedral() / 2
		sin, cos := math.Sincos(half)
		block := b.wedgeCorners()
		face, off := geometry.Pt(sin, -cos), geometry.Pt(cos, sin) // down a side, and square off it
		tip := face.Mul(block[1].X)
		apex := off.Mul(block[2].Y)
		mark := tip.Add(apex.Sub(tip).Unit().Mul(at))
		// Inner faces lie a thickness below the outer ones: they meet where the mitre ends.
		inner := face.Mul(1000).Sub(off.Mul(b.design.Box.Thickness))
		inward := geometry.Segment{A: off.Mul(-b.design.Box.Thickness), B: inner}
		share := -inward.A.X / (inward.B.X - inward.A.X)
		end := inward.A.Lerp(inward.B, share)
		if math.Abs(mark.Y-end.Y/2) > 1e-9 {
			t.Errorf("a clamp at %g presses at %g, the middle of the mitre is at %g", at, mark.Y, end.Y/2)
		}
	})
	if marked == 0 {
		t.Error("no block is marked")
	}
}

// A blade is tilted for the bottom only where a side leans.
func TestPlumbBoxTiltsNoBlade(t *testing.T) {
	for _, c := range []struct {
		d      design.Design
		tilted bool
	}{
		{regular(4, 0), false}, {rectangle(0, 0), false}, {regular(5, 10), true}, {regular(5, -10), true},
		{rectangle(0, 10), true}, {rectangle(-10, 0), true}, {rectangle(10, -10), true},
	} {
		if said := strings.Contains(worked(t, c.d).bottomLies("")[0], "tilted"); said != c.tilted {
			t.Errorf("slopes of %g° and %g°: tilted %v", measure.Degrees(c.d.Box.Slope), measure.Degrees(c.d.Box.EndSlope), said)
		}
	}
}
