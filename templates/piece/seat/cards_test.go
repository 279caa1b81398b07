package seat

import (
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
)

// slip is how far a face may stand from where it is reckoned, mm: cards say lengths to a
// hundredth. The solid of the slab has fewer chords than its outline.
const slip = 0.1

var setting = templates.Setting{Clear: geometry.Pt(190, 260)}

func figure(t rapid.TB, c templates.Card, names ...text) float64 {
	t.Helper()
	v, ok := piecetest.Figure(t, c, names...)
	if !ok {
		t.Fatalf("%s: no %q", c.Heading, names)
	}
	return v
}

// The outline is that of the sheet, or set out by the figures of the card: either makes the
// slab.
func TestTheCardsMakeTheOutline(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		d := anySeat(t)
		k := &d.Seat
		k.Stretchers = design.SeatStretchers{}
		k.Shape = rapid.SampledFrom([]design.SeatShape{design.RoundSeat, design.OvalSeat, design.RectangleSeat, design.ShieldSeat, design.FreeSeat}).Draw(t, "any shape")
		k.Corner = rapid.SampledFrom([]float64{0, 25, 60}).Draw(t, "corner")
		if rapid.Bool().Draw(t, "small") {
			k.Width = 520
		}
		if k.Shape == design.RoundSeat {
			k.Diameter = rapid.Float64Range(450, 700).Draw(t, "diameter")
		}
		if k.Shape == design.FreeSeat {
			half := k.Width / 2
			k.Points = []geometry.Point{{X: -half, Y: -190}, {X: half, Y: -170}, {X: half - 30, Y: 190}, {X: 0, Y: 215}, {X: 40 - half, Y: 180}}
		}
		s := worked(t, d)
		work, err := s.slabWork(setting)
		if err != nil {
			t.Fatal(err)
		}
		c := work.Cards[0]
		figures := slabCard.Card(d.Unit, nil)
		s.setOut(&figures)
		_, said := piecetest.Figure(t, c, acrossReading)
		if said == s.whole() {
			t.Errorf("a seat drawn whole has its figures too, or another lacks them")
		}
		drawn := s.setOutBy(t, figures.Card)
		onRim(t, s, drawn)
		if s.whole() {
			drawn = geometry.Hull(s.looking().ApplyAll(work.Drawings[0].Strokes[0].Points))
			onRim(t, s, drawn)
		}
		made := solid.Prism(solid.Lift(coarse(drawn, slip), 0), solid.V(0, 0, figure(t, c, thicknessReading)))
		saw := work.Cards[slices.IndexFunc(work.Cards, func(c templates.Card) bool { return c.Heading == sawCard.Heading.With() })]
		size := made.Bounds().Size()
		nearly(t, "across", size.X, figure(t, saw, acrossReading), 2*slip+0.01) // said to a hundredth
		nearly(t, "deep", size.Y, figure(t, saw, depthReading), 2*slip+0.01)
		piecetest.Same(t, "slab", solid.Stock("", made), solid.Stock("", s.board()), rimSlip+slip)
	})
}

// onRim asks an outline to be the rim of the seat, both ways.
func onRim(t rapid.TB, s Seat, outline []geometry.Point) {
	some := func(all []geometry.Point) (out []geometry.Point) {
		for i := 0; i < len(all); i += 1 + len(all)/100 {
			out = append(out, all[i])
		}
		return out
	}
	for _, p := range some(outline) {
		if in := s.rim.Inside(p); math.Abs(in) > slip {
			t.Fatalf("%v is %g mm inside the rim", p, in)
		}
	}
	for _, p := range some(s.rim.Outline()) {
		least := math.Inf(1)
		for i, a := range outline {
			least = min(least, geometry.Segment{A: a, B: outline[(i+1)%len(outline)]}.Distance(p))
		}
		if least > slip {
			t.Fatalf("%v of the rim is %g mm off the outline", p, least)
		}
	}
}

// setOutBy follows the figures of the card with compass, straightedge and string.
func (s Seat) setOutBy(t rapid.TB, c templates.Card) []geometry.Point {
	// Who looks at the underside has the left on the right.
	return geometry.Hull(s.looking().ApplyAll(s.drawnBy(t, c)))
}

func (s Seat) drawnBy(t rapid.TB, c templates.Card) []geometry.Point {
	w, d := figure(t, c, acrossReading)/2, figure(t, c, depthReading)/2
	disc := func(x, y, r float64) []geometry.Point { return geometry.Arc(geometry.Pt(x, y), r, 0, 2*math.Pi) }
	corner, _ := piecetest.Figure(t, c, frontCorners, roundCornersReading)
	switch s.design.Seat.Shape {
	case design.RoundSeat:
		return disc(0, 0, w)
	case design.OvalSeat:
		return stringOval(figure(t, c, pinsReading), figure(t, c, stringReading), w >= d)
	case design.ShieldSeat:
		b := figure(t, c, backCurve) / 2
		return slices.Concat(disc(corner-w, corner-d, corner), disc(w-corner, corner-d, corner), disc(0, d-b, b))
	case design.FreeSeat:
		return freeOutline(t, c, corner)
	}
	return slices.Concat(disc(corner-w, corner-d, corner), disc(w-corner, corner-d, corner), disc(corner-w, d-corner, corner), disc(w-corner, d-corner, corner))
}

// stringOval is where a pencil goes in the bight of a string between two pins: seen from one
// pin at the angle a to the axis it is so far off that both ways make up the string,
// r + √(r² − 4·r·p·cos a + 4·p²) = l.
func stringOval(pins, long float64, acrossTheSeat bool) []geometry.Point {
	var out []geometry.Point
	for i := range 720 {
		a := float64(i) * math.Pi / 360
		p := geometry.Polar((long*long-4*pins*pins)/(2*long-4*pins*math.Cos(a)), a).Add(geometry.Pt(-pins, 0))
		if !acrossTheSeat {
			p = p.Perp()
		}
		out = append(out, p)
	}
	return out
}

// freeOutline sets out the corners and rounds them by a disc that touches both sides.
func freeOutline(t rapid.TB, c templates.Card, radius float64) []geometry.Point {
	var corners, out []geometry.Point
	for _, r := range c.Figures {
		if name, _, _ := strings.Cut(string(cornerAt), "%d"); strings.HasPrefix(r.Name, name) && strings.HasSuffix(r.Name, "middle") {
			x, y, _ := strings.Cut(r.Value, ", ")
			corners = append(corners, geometry.Pt(signed(t, x, toTheLeft, toTheRight), signed(t, y, toTheFront, toTheBack)))
		}
	}
	n := len(corners)
	for i, p := range corners {
		on, back := corners[(i+1)%n].Sub(p).Unit(), corners[(i+n-1)%n].Sub(p).Unit()
		half := math.Acos(on.Dot(back)) / 2
		out = append(out, geometry.Arc(p.Add(on.Add(back).Unit().Mul(radius/math.Sin(half))), radius, 0, 2*math.Pi)...)
	}
	return out
}

// signed reads how far something lies the one way or the other.
func signed(t rapid.TB, printed string, minus, plus text) float64 {
	if before, ok := strings.CutSuffix(printed, strings.TrimPrefix(string(minus), "%s")); ok {
		return -piecetest.Value(t, before)
	}
	return piecetest.Said(t, printed, plus)
}

// The slots are sawn by their card into legs made by theirs and driven home: square to the
// grain of the seat as its picture has them, two thirds of the seat deep, inside the tenon;
// the wedge is shorter and no wider than the hole that it is driven into.
func TestTheCardsMakeTheSlots(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		d := anySeat(t)
		d.Seat.Stretchers, d.Seat.Mortise.Depth = design.SeatStretchers{}, 0
		d.Seat.FrontToBack = rapid.Bool().Draw(t, "front to back")
		s := worked(t, d)
		if len(s.clashes()) > 0 {
			t.Skip("a check tells of it")
		}
		work, err := s.together(setting)
		if err != nil {
			t.Fatal(err)
		}
		heading := func(h string) templates.Card {
			return work.Cards[slices.IndexFunc(work.Cards, func(c templates.Card) bool { return c.Heading == h })]
		}
		slotting, wedges := heading(slotHeading.With()), heading(wedgeCard.Heading.With())
		size := wedgeSize(t, wedges)
		slots := slices.DeleteFunc(slices.Clone(slotting.Setup[0].Strokes), func(k templates.Stroke) bool { return k.Role != templates.Cut })
		grain := geometry.Pt(1, 0)
		if d.Seat.FrontToBack {
			grain = grain.Perp()
		}
		for i, l := range s.legs {
			leg := homed(s, l, s.turning(l))
			deep := figure(t, slotting, slotReading, text(both.With(slotReading.With(), legsCalled(l.sort, s.count(l.sort)).With())))
			tip := math.Inf(1)
			for _, e := range leg.Pieces[0].Edges() {
				tip = min(tip, e.A.Sub(l.at).Dot(l.axis))
			}
			bottom := l.point(tip + deep)
			nearly(t, "bottom of the slot", bottom.Z, s.thickness()/3, alikeWithin+0.01) // one figure for what is as good as alike, to a hundredth
			a, b := slots[i].Points[0], slots[i].Points[1]
			nearly(t, "way of the slot", b.Sub(a).Unit().Dot(grain), 0, 1e-9)
			// The saw goes down along the leg, its cut in the line that is marked.
			along := solid.V(b.Sub(a).X, b.Sub(a).Y, 0).Unit()
			square := along.Cross(l.axis).Unit()
			slab := func(s solid.Solid, half float64) solid.Solid {
				return s.Cut(solid.Through(bottom.Add(square.Mul(half)), square)).Cut(solid.Through(bottom.Sub(square.Mul(half)), square.Mul(-1)))
			}
			slot := slab(leg.Pieces[0], 0.5).Cut(solid.Through(bottom, l.axis))
			if v := slot.Cut(solid.Plane{N: solid.V(0, 0, 1)}).Volume(); v > 1e-3 {
				t.Errorf("leg %d: the slot comes out below the seat", i+1)
			}
			mouth := slot.Cut(solid.Plane{N: solid.V(0, 0, 1), D: s.thickness()}).Bounds()
			for _, p := range []geometry.Point{a, b} { // twelve flats stand for the tenon
				if p.X < mouth.Min.X-1 || p.X > mouth.Max.X+1 || p.Y < mouth.Min.Y-1 || p.Y > mouth.Max.Y+1 {
					t.Errorf("leg %d: the slot is drawn to %v, sawn between %v", i+1, p, mouth)
				}
			}
			// Driven until its head is down to the tip.
			if size[0] > deep-5 || size[1] > s.turning(l).tip+0.01 {
				t.Errorf("leg %d: a wedge of %v for a slot %g deep in a tip of %g", i+1, size, deep, s.turning(l).tip)
			}
			across := square.Cross(l.axis).Unit()
			wedge := solid.Prism([]solid.Vec{l.point(tip).Sub(across.Mul(size[1] / 2)), l.point(tip).Add(across.Mul(size[1] / 2)),
				l.point(tip + size[0]).Add(across.Mul(size[1] / 2)), l.point(tip + size[0]).Sub(across.Mul(size[1] / 2))}, square.Mul(0.01))
			left := solid.Stock("", wedge).Subtract(piecetest.Grown(leg.Pieces[0], 0.04*size[1]))
			if v := left.Volume(); v > 1e-3 {
				t.Errorf("leg %d: %g mm³ of the wedge are outside the tenon", i+1, v)
			}
		}
	})
}

// wedgeSize reads length, width and thickness of the wedges for the tenons.
func wedgeSize(t rapid.TB, c templates.Card) (out [3]float64) {
	for _, r := range c.Figures {
		if r.Name == tenonWedges.With() {
			for i, v := range strings.Split(r.Value, " × ") {
				out[i], _ = measure.ParseLength(v, measure.Millimetre)
			}
		}
	}
	return out
}

// Of legs that are alike but for a hundredth, card and picture tell one figure.
func TestCardAndPictureTellOneEnd(t *testing.T) {
	differ := 0
	for less := -0.06; less <= 0.06; less += 0.005 {
		d := bench()
		k := &d.Seat
		k.BackHeight, k.Stretchers, k.Back = 0, design.SeatStretchers{}, k.Front
		k.Back.FrontBack += less
		s := worked(t, d)
		r := s.bySort(endReading, func(t turning) float64 { return t.end })
		if len(r) != 1 {
			continue
		}
		if s.mm(s.turning(s.sorts()[0]).end) != s.mm(s.turning(s.sorts()[len(s.sorts())-1]).end) {
			differ++
		}
		if footEnd.With(r[0].Value) != s.endShown() {
			t.Errorf("%v, the picture says %q", r, s.endShown())
		}
	}
	if differ == 0 {
		t.Error("all ends are printed alike")
	}
}

// endShown is what the picture of a leg says of its end.
func (s Seat) endShown() string {
	for _, l := range s.legView(s.turning(s.sorts()[0])).Labels {
		if l.ID == "foot-end" {
			return l.Text
		}
	}
	return ""
}
