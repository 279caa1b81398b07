package aprons

import (
	"math"
	"reflect"
	"testing"

	"rodsheet/geometry"
	"rodsheet/templates"
	"rodsheet/templates/piece/assembly"
	"rodsheet/templates/piece/design"
	"rodsheet/templates/piece/internal/piecetest"
)

// cornered is the table, 580 × 460 mm over its top, with its corners worked.
func cornered(c design.Corner, mm float64) Model {
	d := table()
	d.Frame.Top.Corner, d.Frame.Top.CornerSize = c, mm
	return newModel(d)
}

// What worked corners take off the top: c² each two that are clipped, (4 − π)·r² all four
// that are rounded (the square round a circle less the circle). The top stays as wide,
// tips at the same rim, and is sawn from the same boards.
func TestCornersTakeOff(t *testing.T) {
	sharp := cornered(design.SharpCorner, 0)
	for _, tt := range []struct {
		corner  design.Corner
		mm, off float64
		slack   float64 // of the chords of the solid, in the area
	}{
		{design.ClippedCorner, 50, 2 * 50 * 50, 1e-6},
		{design.RoundedCorner, 100, (4 - math.Pi) * 100 * 100, 250},
		{design.RoundedCorner, 230, (4 - math.Pi) * 230 * 230, 1300},
	} {
		m := cornered(tt.corner, tt.mm)
		want := 580*460 - tt.off
		if got := m.TopShape().Area(); math.Abs(got-want) > 1e-6 {
			t.Errorf("corner %d: %g mm², want %g", tt.corner, got, want)
		}
		if got := m.Top().Volume() / 20; got > want+1e-6 || got < want-tt.slack {
			t.Errorf("corner %d: a solid of %g mm², want %g", tt.corner, got, want)
		}
		if got := m.Top().Bounds().Size(); !near(got.X, 580) || !near(got.Y, 460) {
			t.Errorf("corner %d: a solid of %v", tt.corner, got)
		}
		for i := range m.sides {
			if got, want := m.Standing(i).Rim, sharp.Standing(i).Rim; !near(got, want) {
				t.Errorf("corner %d, side %d: rim at %g, want %g", tt.corner, i, got, want)
			}
		}
		if rows, was := m.Cuts(), sharp.Cuts(); !reflect.DeepEqual(rows[len(rows)-1].Finished, was[len(was)-1].Finished) {
			t.Errorf("corner %d: boards %v, want %v", tt.corner, rows[len(rows)-1].Finished, was[len(was)-1].Finished)
		}
	}
}

// A hexagon is sawn from the rectangle round its sharp corners, which clips take off its
// length.
func TestSizeGoesBySharpCorners(t *testing.T) {
	d := table()
	d.Frame.Shape, d.Frame.Sides, d.Frame.Legs.Splay, d.Frame.Length = design.RegularFrame, 6, 0, 300
	d.Frame.Top.Corner, d.Frame.Top.CornerSize = design.ClippedCorner, 50
	m := newModel(d)
	side := 300 + 2*30/math.Sqrt(3)
	if size, _ := m.TopSize(); !near(size.Length, 2*side) || !near(size.Width, math.Sqrt(3)*side) {
		t.Errorf("%v, want %g × %g", size, 2*side, math.Sqrt(3)*side)
	}
	if got, want := geometry.Bounds(m.TopOutline()...).Width(), 2*side-50; !near(got, want) {
		t.Errorf("the clipped outline is %g long, want %g", got, want)
	}
}

// On the diagonal a square corner loses r·(√2 − 1) to an arc, c/√2 to a clip; the corner
// arris of a leg stands √2 times the overhang within it.
func TestOverhangAtWorkedCorners(t *testing.T) {
	for _, tt := range []struct {
		corner   design.Corner
		mm, want float64
	}{
		{design.SharpCorner, 0, 30},
		{design.RoundedCorner, 20, 30}, // the arc ends before the leg
		{design.RoundedCorner, 90, 30*math.Sqrt2 - 90*(math.Sqrt2-1)},
		{design.RoundedCorner, 110, 30*math.Sqrt2 - 110*(math.Sqrt2-1)},
		{design.ClippedCorner, 10, 30},
		{design.ClippedCorner, 70, 30*math.Sqrt2 - 70/math.Sqrt2},
	} {
		if got := cornered(tt.corner, tt.mm).overLegs(); !near(got, tt.want) {
			t.Errorf("corner %d of %g mm: %g over the legs, want %g", tt.corner, tt.mm, got, tt.want)
		}
	}
}

// Worked corners have a sheet, which the card of the top calls for; sharp ones have none.
func TestSheetOfCorners(t *testing.T) {
	for _, tt := range []struct {
		m    Model
		want []templates.View
	}{
		{cornered(design.SharpCorner, 0), nil},
		{cornered(design.ClippedCorner, 40), []templates.View{{Part: "top", Face: "corner-1"}}},
		{cornered(design.RoundedCorner, 40), []templates.View{{Part: "top", Face: "corner-1"}}},
	} {
		s, err := tt.m.together(templates.Setting{Clear: geometry.Pt(180, 250)})
		if err != nil {
			t.Fatal(err)
		}
		if got := assembly.Views(s.Drawings); !reflect.DeepEqual(got, tt.want) {
			t.Errorf("drawings %v, want %v", got, tt.want)
		}
		if got := s.Cards[0].Templates; !reflect.DeepEqual(got, tt.want) {
			t.Errorf("the card calls for %v, want %v", got, tt.want)
		}
	}
}

// A round top reaches over the corner arrises by the overhang, or is as wide as given; an
// oval stands over them by what x²/a² + y²/b² leaves. Area, boards and rim are those of the
// curve, the solid lies within its chords of it.
func TestRoundAndOvalTops(t *testing.T) {
	arris := math.Hypot(520, 400) / 2
	for _, tt := range []struct {
		name           string
		top            design.FrameTop
		long, wide     float64
		area, over, up float64 // up: the rim beyond the front
	}{
		{"by overhang", design.FrameTop{Outline: design.RoundOnFrame, Overhang: 30}, 2*arris + 60, 2*arris + 60, math.Pi * (arris + 30) * (arris + 30), 30, arris + 30},
		{"by diameter", design.FrameTop{Outline: design.RoundOnFrame, Diameter: 700, Overhang: 5}, 700, 700, math.Pi * 350 * 350, 350 - arris, 350},
		{"oval", design.FrameTop{Outline: design.OvalOnFrame, Length: 800, Width: 640}, 800, 640, math.Pi * 400 * 320, -1, 320},
		{"oval, across", design.FrameTop{Outline: design.OvalOnFrame, Length: 640, Width: 800}, 800, 640, math.Pi * 400 * 320, -1, 400},
	} {
		d := table()
		tt.top.Thickness = 20
		d.Frame.Top = tt.top
		m, err := piecetest.Solved(judge(d, nil))
		if err != nil {
			t.Errorf("%s: %v", tt.name, err)
			continue
		}
		within := func(what string, got, want, slack float64) {
			if math.Abs(got-want) > slack {
				t.Errorf("%s: %s %g, want %g", tt.name, what, got, want)
			}
		}
		size, _ := m.TopSize()
		within("length", size.Length, tt.long, 0.01)
		within("width", size.Width, tt.wide, 0.01)
		within("area", m.TopShape().Area(), tt.area, 1e-5*tt.area)
		within("solid", m.Top().Volume()/20, tt.area, 0.002*tt.area)
		within("rim", m.Standing(0).Rim, tt.up, 0.01)
		if tt.over >= 0 {
			within("over the legs", m.overLegs(), tt.over, 1e-9)
		} else if over := m.overLegs(); over <= 0 || math.Hypot(260/tt.top.Length*2, 200/tt.top.Width*2) >= 1 {
			t.Errorf("%s: %g over the legs", tt.name, over)
		}
		s, err := m.together(setting)
		if err != nil {
			t.Fatal(err)
		}
		if drawn := len(s.Drawings); (drawn > 0) != (tt.top.Outline == design.OvalOnFrame) || !reflect.DeepEqual(assembly.Views(s.Drawings), s.Cards[0].Templates) {
			t.Errorf("%s: %d drawings; the card calls for %v", tt.name, drawn, s.Cards[0].Templates)
		}
	}
}
