package seat

import (
	"math"
	"slices"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"rodsheet/geometry"
	"rodsheet/geometry/lists"
	"rodsheet/geometry/measure"
	"rodsheet/geometry/solid"
	"rodsheet/templates"
	"rodsheet/templates/piece/design"
	"rodsheet/templates/piece/internal/piecetest"
	"rodsheet/templates/piece/kind"
	"rodsheet/templates/piece/shop"
)

// missing returns the volume of what one part has and the other has not.
func missing(a, b solid.Part) float64 {
	left := a
	for _, s := range b.Pieces {
		left = left.Subtract(s)
	}
	return left.Volume()
}

// same asks that two parts fill the same space, to a ten thousandth of a cubic cm.
func same(t rapid.TB, what string, got, want solid.Part) {
	t.Helper()
	if more, less := missing(got, want), missing(want, got); more > 0.1 || less > 0.1 {
		t.Errorf("%s: %.3f mm³ too much, %.3f mm³ too little", what, more, less)
	}
}

// bored follows a boring card on the slab: the bit on the sightline at the bevel, the reamer
// behind it. The frame is that of the slab; mirrored on the left.
// Those of the circle are turned to their places.
func bored(slab solid.Part, b boring, side, thick, turn float64) solid.Part {
	z := 0.0
	if b.upper {
		z = thick
	}
	out := 1.0
	if b.row == design.FrontRow {
		out = -1
	}
	mirror := side
	if side == 0 {
		mirror = 1
	}
	sin, cos := math.Sincos(b.sightline)
	lean := solid.V(mirror*sin, out*cos, 0) // along the sightline, where the foot leans
	place := geometry.Pt(mirror*b.aside, out*b.forward)
	if b.sort.round() { // straight out from the middle, as far as the card says
		sin, cos = math.Sincos(turn)
		lean, place = solid.V(sin, -cos, 0), geometry.Pt(b.forward*sin, -b.forward*cos)
	}
	// The bevel stands between the face and the bit: down the leg that is lean·sin R − z·cos R.
	axis := lean.Mul(math.Sin(b.resultant)).Add(solid.V(0, 0, -math.Cos(b.resultant)))
	at := solid.V(place.X, place.Y, z)
	x := lean.Mul(math.Cos(b.resultant)).Add(solid.V(0, 0, math.Sin(b.resultant)))
	frame := solid.Affine3{X: x, Y: axis.Cross(x), Z: axis, O: at}
	// Lengths run down along the axis from the face that is bored.
	from, to := -2*thick/math.Cos(b.resultant), 2*thick/math.Cos(b.resultant)
	if b.depth > 0 {
		from = -b.depth // from the underside
	}
	flat := func(diameter float64) float64 { return across(tenonCorners, diameter, true) }
	if b.large == 0 {
		return slab.Subtract(taperedPrism(frame, tenonCorners, from, flat(b.bit), to, flat(b.bit)))
	}
	under := 0.0 // where the axis meets the underside
	if b.upper {
		under = thick / math.Cos(b.resultant)
	}
	wide := func(along float64) float64 { return b.large + 2*(along-under)*math.Tan(b.reamer/2) }
	top := math.Max(from, under-2*thick)
	return slab.Subtract(taperedPrism(frame, tenonCorners, top, flat(wide(top)), to, flat(wide(to))))
}

// made follows the cards of a leg: from a square blank along z, its tip at 0, the outer
// side looking along x.
func made(w turning) solid.Part {
	n, round := flats(w.section), w.section == design.RoundLeg
	half := w.blank.Width / 2
	blank := solid.Box(solid.V(-half, -half, 0), solid.V(half, half, w.blank.Length))
	tenon := blank.Intersect(taperedPrism(solid.Identity(), tenonCorners, 0, across(tenonCorners, w.tip, true), w.shoulder, across(tenonCorners, w.root, true)))
	shaft := taperedPrism(solid.Identity(), n, w.shoulder, across(n, w.size, round), w.blank.Length, across(n, w.end, round))
	if !round { // a polygon of a circle's area stands out of the square a little
		shaft = blank.Intersect(shaft)
	}
	return solid.Part{Pieces: []solid.Solid{tenon, shaft}}
}

// homed is a leg made by its card and driven home in its hole: its shoulder touches the
// underside with its outer edge, size/2 from the axis, which the card has turned to the
// sightline.
func homed(s Seat, l leg, w turning) solid.Part {
	leg := made(w).Transform(solid.Translate(solid.V(0, 0, -w.shoulder))).Transform(l.frame())
	if w.section == design.RoundLeg { // of a polygon the flat, not the circle, is lower
		return leg.Transform(solid.Translate(l.axis.Mul(s.shoulder(l))))
	}
	low := math.Inf(-1)
	for _, f := range leg.Pieces[1].Faces() {
		for _, c := range f.Corners {
			low = max(low, c.Z)
		}
	}
	return leg.Transform(solid.Translate(l.axis.Mul(low / -l.axis.Z)))
}

// drilled bores a part in a direction to a depth below the surface of its body that the
// axis of the bit leaves; what stands for the bit is turned about its axis as the tenon is.
func drilled(p solid.Part, body solid.Solid, at, u solid.Vec, depth, diameter float64) solid.Part {
	out, _ := leaves(body, at, u)
	x := solid.V(0, 0, 1).Sub(u.Mul(u.Z)).Unit()
	a := across(tenonCorners, diameter, true)
	bit := taperedPrism(solid.Affine3{X: x, Y: u.Cross(x), Z: u, O: at}, tenonCorners, out-depth, a, out+3*diameter, a)
	return p.Subtract(bit)
}

// The cards of the seat, the legs and the feet, carried out on blanks, give the solids.
func TestTheCardsMakeTheSeat(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		d := anySeat(t)
		d.Seat.Stretchers = design.SeatStretchers{}
		s := worked(t, d)
		if len(s.clashes()) > 0 {
			t.Skip("a check tells of it")
		}
		slab := solid.Stock("", s.board())
		byCard := map[sort]leg{}
		for _, l := range s.sorts() {
			byCard[l.sort] = l
		}
		v := s.levelling()
		for i, l := range s.legs {
			card := byCard[l.sort]
			b, w := s.boring(card), s.turning(card)
			turn := 2 * math.Pi * float64(i) / float64(b.count)
			if !d.Seat.LegAhead {
				turn += math.Pi / float64(b.count)
			}
			slab = bored(slab, b, l.side, s.thickness(), turn)
			leg := homed(s, l, w)
			if d.Seat.Mortise.Depth == 0 { // sawn flush
				leg = leg.Cut(solid.Plane{N: solid.V(0, 0, 1), D: s.thickness()})
			}
			// Blocked up, the bench lies front below the front edge and back below the back
			// edge, the pencil so high over it.
			front := solid.V(0, s.frontEdge(), s.thickness())
			back := solid.V(0, s.backEdge(), s.thickness())
			run := back.Y - front.Y
			sin := (v.front - v.back) / run
			up := solid.V(0, -sin, math.Sqrt(1-sin*sin))
			leg = leg.Cut(solid.Plane{N: up.Mul(-1), D: v.front - v.pencil - up.Dot(front)})
			same(t, "leg", leg, s.legPart(i))
		}
		same(t, "seat", slab, s.slab())
	})
}

// Stretchers are turned by their card, and the holes for them bored by theirs into legs
// made by theirs, mirrored for the other hand: that gives the solids.
func TestTheCardsMakeTheStretchers(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		d := anySeat(t)
		s := worked(t, d)
		if len(s.clashes()) > 0 || len(s.rods) == 0 {
			t.Skip("a check tells of it, or there are none")
		}
		k := d.Seat.Stretchers
		legs, bodies := make([]solid.Part, len(s.legs)), make([]solid.Solid, len(s.legs))
		for i, l := range s.legs {
			// Not yet cut flush or level: no stretcher reaches there.
			legs[i] = homed(s, l, s.turning(l)).Cut(solid.Plane{N: solid.V(0, 0, 1), D: s.thickness()}).Cut(s.floor())
			bodies[i] = legs[i].Pieces[1]
		}
		rods := make([]solid.Part, len(s.rods))
		prism := func(r rod, diameter, from, to float64) solid.Solid {
			a := across(tenonCorners, diameter, true)
			return taperedPrism(r.frame(), tenonCorners, from, a, to, a)
		}
		// A tenon goes home to the bottom of its hole.
		for i, r := range s.rods {
			w := r.turning()
			from := r.ends[0].surface - s.rodBoring(i, 0).depth
			tip := from + w.whole
			rods[i] = solid.Part{Pieces: []solid.Solid{
				prism(r, s.tenon(), from, from+w.tenons[0]), prism(r, s.tenon(), tip-w.tenons[1], tip),
				prism(r, k.Diameter, from+w.tenons[0], from+w.tenons[0]+w.between),
			}}
		}
		for i, r := range s.rods {
			for end, e := range r.ends {
				b := s.rodBoring(i, end)
				if r.kind != crossRod {
					l := s.legs[e.into]
					sinT, cosT := math.Sincos(b.turn)
					sinL, cosL := math.Sincos(b.lean)
					m := l.frame()
					u := m.X.Mul(sinL * cosT).Add(m.Y.Mul(sinL * sinT)).Add(m.Z.Mul(cosL))
					legs[e.into] = drilled(legs[e.into], bodies[e.into], l.point(s.shoulder(l)+b.along), u, b.depth, s.tenon())
					continue
				}
				// Level, so far off the axis of the stretcher, at its mid-length, inward.
				side := s.rods[e.into]
				v := side.along(0)
				mid := side.ends[0].at.Add(v.Mul(side.ends[0].surface - s.rodBoring(e.into, 0).depth + side.turning().tenons[0] + side.turning().between/2))
				off := math.Acos(math.Max(-1, math.Min(1, math.Cos(b.lean)/flat(v).Norm())))
				sin, cos := math.Sincos(math.Copysign(off, mid.X))
				ahead := flat(v).Unit()
				u := ahead.Mul(cos).Add(ahead.Perp().Mul(sin))
				rods[e.into] = drilled(rods[e.into], s.rodShaft(side), mid, solid.V(u.X, u.Y, 0), b.depth, s.tenon())
			}
		}
		for i := range legs {
			same(t, "leg", legs[i], s.legPart(i))
		}
		for i := range rods {
			same(t, "stretcher", rods[i], s.rodPart(i))
		}
	})
}

// By hand: leg 1 stands at the front on the left, its outer side looks to the left and to
// the front. From above that is counter-clockwise to the stretcher that runs to the right,
// so from below, where the foot is, clockwise; leg 2 is its mirror image.
func TestWayRoundALeg(t *testing.T) {
	d := bench()
	d.Seat.Stretchers.Shape, d.Seat.Stretchers.SideHeight = design.BoxStretchers, 200
	s := worked(t, d)
	if first, second := s.rodBoring(0, 0), s.rodBoring(0, 1); s.rods[0].kind != frontRod || first.turn >= 0 || second.turn <= 0 {
		t.Errorf("leg 1 %g, leg 2 %g", first.turn, second.turn)
	}
}

// Each check fails where it should, and what mends it is told.
func TestChecks(t *testing.T) {
	for _, tt := range []struct {
		id     string
		grade  kind.Grade
		mended bool
		change func(*design.Seat)
	}{
		{"seat.front.inside", kind.Fail, true, func(s *design.Seat) { s.Front.From = 155 }},
		{"seat.front.edge", kind.Warn, true, func(s *design.Seat) { s.Front.From = 140 }},
		{"seat.back.short-grain", kind.Warn, true, func(s *design.Seat) { s.Back.Apart = 640 }},
		{"seat.front.steep", kind.Warn, true, func(s *design.Seat) { s.Front.Aside = measure.Radians(28) }},
		{"seat.holes", kind.Warn, false, func(s *design.Seat) { s.Stretchers.Shape = 0; s.Front.Apart = 38; s.Front.Aside = measure.Radians(16) }},
		{"seat.under-hole", kind.Warn, true, func(s *design.Seat) { s.Mortise.Depth = 40 }},
		{"seat.stretcher-depth", kind.Warn, true, func(s *design.Seat) { s.Stretchers.Hole = 6 }},
		{"seat.clash", kind.Fail, true, func(s *design.Seat) { // only a shallower hole mends it
			*s = onCircle(*s)
			s.Stretchers = design.SeatStretchers{Shape: design.BoxStretchers, Height: 150, Diameter: 20, Tenon: 12}
		}},
		{"seat.circle.edge", kind.Warn, true, func(s *design.Seat) { *s = onCircle(*s); s.Circle.From = 140 }},
		{"seat.circle.steep", kind.Warn, true, func(s *design.Seat) { *s = onCircle(*s); s.Circle.FrontBack = measure.Radians(28) }},
		{"seat.middle.edge", kind.Warn, true, func(s *design.Seat) { s.Middle = design.LegRow{Legs: 2, Apart: 660} }},
		{"seat.stretcher-hole", kind.Warn, true, func(s *design.Seat) { s.Stretchers.Tenon = 18 }},
		{"seat.stands", kind.Fail, false, func(s *design.Seat) {
			s.Stretchers.Shape = 0
			s.Front.FrontBack, s.Front.From = measure.Radians(-20), 20
		}},
		{"seat.feet-front", kind.Warn, true, func(s *design.Seat) { s.Stretchers.Shape = 0; s.Front.FrontBack = measure.Radians(-2) }},
		{"seat.clash", kind.Fail, true, func(s *design.Seat) { s.Stretchers.Shape, s.Stretchers.Hole = design.BoxStretchers, 20 }},
	} {
		d := bench()
		tt.change(&d.Seat)
		work, err := Kind().Solve([]design.Design{d})
		if err != nil {
			t.Errorf("%s: %v", tt.id, err)
			continue
		}
		all := work.Report().Sizes[0].Checks
		i := slices.IndexFunc(all, func(c kind.Check) bool { return string(c.ID) == tt.id })
		if i < 0 || all[i].Grade != tt.grade || len(all[i].Fixes) > 0 != tt.mended || all[i].Words == "" {
			t.Errorf("%s: %+v", tt.id, all[max(i, 0)])
		}
		piecetest.Written(t, d, all[max(i, 0)])
	}
}

// What tips it, by hand: a seat on four feet, level, its mass m, a load outside of the feet.
func TestStandingByHand(t *testing.T) {
	d := bench()
	s := &d.Seat
	s.BackHeight, s.Stretchers = 0, design.SeatStretchers{}
	s.Legs.Section, s.Legs.Foot = design.SquareLeg, 0
	s.Front = design.LegRow{Legs: 2, Apart: 400, From: 60}
	s.Back = s.Front
	w := worked(t, d)
	f, _ := w.footing()
	// Plumb square legs, 38 wide, their outer sides to front and back: feet reach to
	// 60 + 19; the edge is at 160, the load 50 in from it.
	const line, load = 79.0, 110.0
	want := w.mass() * 9.80665 * line / (load - line)
	nearly(t, "force", f.TippingForce(w.sides()[0].inset(50)), want, 1e-6*want)
	volume := w.rim.Area()*44 + 4*38*38*(450-44) // and what the tenons fill, counted once
	nearly(t, "mass", w.mass(), volume*670/1e9, 1e-9)
}

// The drawing of the face that is bored shows it as one looks at it: from below the leg on
// the left stands on the right, its sightline mirrored with it, the front at the bottom.
func TestTheSlabIsDrawnAsItIsSeen(t *testing.T) {
	for _, upper := range []bool{false, true} {
		d := stool()
		d.Seat.Mortise.Upper = upper
		s := worked(t, d)
		side := -1.0
		if upper {
			side = 1
		}
		for _, l := range s.slabDrawing().Labels {
			i := slices.IndexFunc([]string{holeLabel.With(1, s.mm(28)), holeLabel.With(2, s.mm(28)), holeLabel.With(3, s.mm(28))}, func(text string) bool { return text == l.Text })
			if l.ID != "hole" {
				continue
			}
			want := s.legs[i].at
			nearly(t, l.Text, l.On.A.X, side*want.X, 1e-9)
			nearly(t, l.Text, l.On.A.Y, want.Y, 1e-9)
		}
	}
}

// Whatever the figures, a seat is refused or has finite figures and envelopes.
func TestAnyFigures(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		d := anySeat(t)
		s := &d.Seat
		s.Shape = rapid.SampledFrom([]design.SeatShape{design.RoundSeat, design.OvalSeat, design.RectangleSeat, design.ShieldSeat}).Draw(t, "any shape")
		wide := func(name string, f *float64, low, high float64) {
			if rapid.IntRange(0, 4).Draw(t, "change "+name) == 0 {
				*f = rapid.Float64Range(low, high).Draw(t, name)
			}
		}
		wide("diameter", &s.Diameter, 1, 1000)
		wide("width", &s.Width, 1, 1500)
		wide("depth", &s.Depth, 1, 1000)
		wide("back width", &s.BackWidth, 1, 600)
		wide("corner", &s.Corner, 0, 300)
		wide("thickness", &s.Thickness, 1, 200)
		wide("height", &s.Height, 1, 1500)
		wide("back height", &s.BackHeight, 1, 1500)
		wide("size", &s.Legs.Size, 1, 200)
		wide("foot", &s.Legs.Foot, 1, 200)
		wide("bore", &s.Mortise.Diameter, 1, 200)
		wide("blind", &s.Mortise.Depth, 0, 200)
		wide("rod", &s.Stretchers.Diameter, 1, 100)
		wide("rod height", &s.Stretchers.Height, 1, 1000)
		wide("hole", &s.Stretchers.Hole, 0, 300)
		for _, row := range []*design.LegRow{&s.Front, &s.Back} {
			wide("apart", &row.Apart, 0, 1500)
			wide("from", &row.From, -500, 500)
			wide("rake", &row.FrontBack, -0.52, 0.78)
			wide("splay", &row.Aside, -0.52, 0.78)
		}
		if piecetest.Faults(judge)(d, nil) != nil {
			return
		}
		w := worked(t, d)
		w.Checks()
		for _, g := range w.Groups() {
			for _, f := range g.Figures {
				if !f.Value.Finite() {
					t.Errorf("%s is not finite", f.ID)
				}
			}
		}
		for _, e := range envelopes() {
			if _, err := e.Fill(w, templates.Setting{Clear: geometry.Pt(190, 260)}); err != nil {
				t.Error(err)
			}
		}
	})
}

// A leg made by its cards and driven home reaches below the floor with the end of its blank;
// blocked up as the card says, every foot clears the bench and the pencil marks all its sole.
func TestTheSeatIsBlockedUpHigherThanItStands(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		d := anySeat(t)
		d.Seat.Stretchers = design.SeatStretchers{}
		s := worked(t, d)
		v, lowest, highest := s.levelling(), math.Inf(1), math.Inf(-1)
		for _, l := range s.legs {
			w := s.turning(l)
			leg := made(w).Transform(solid.Translate(solid.V(0, 0, s.shoulder(l)-w.shoulder))).Transform(l.frame())
			sole, low := math.Inf(-1), math.Inf(1)
			for _, f := range leg.Pieces[1].Faces() {
				for _, c := range f.Corners {
					h := s.height(c)
					low = math.Min(low, h)
					if end := l.frame().Z.Dot(c.Sub(l.at)); end > l.foot { // of the end of the blank
						sole = math.Max(sole, h)
					}
				}
			}
			if sole >= 0 {
				t.Errorf("a foot ends %.3f over the floor", sole)
			}
			lowest, highest = math.Min(lowest, low), math.Max(highest, low)
		}
		if _, wedge := s.levelWedges(); wedge.Thickness <= highest+v.pencil {
			t.Errorf("a wedge %.3f thick under a foot %.3f over the bench", wedge.Thickness, highest+v.pencil)
		}
		if lift := lowest + v.pencil; lift < 3 || lift > 8+1e-9 {
			t.Errorf("lowest foot %.3f over the bench, want room for a wedge and little more", lift)
		}
		nearly(t, "front", v.front, d.Seat.Height+v.pencil, 1e-9)
	})
}

// Reckoned by hand for an upright square leg: its end is as far below the floor as it was
// left long, 20, and 3 more make room for wedges, in steps of 5.
func TestLevellingByHand(t *testing.T) {
	d := stool()
	s := &d.Seat
	s.Legs.Section, s.Legs.Foot = design.SquareLeg, 0
	s.Front = design.LegRow{Legs: 2, Apart: 200, From: 60}
	s.Back = s.Front
	nearly(t, "pencil", worked(t, d).levelling().pencil, 25, 1e-9)
}

// Slot, wedge and tip agree: the slot ends inside the mortise, above the shoulder; the wedge
// fits the tip and does not reach the bottom of any slot.
func TestWedgesFitTheirSlots(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		d := anySeat(t)
		d.Seat.Mortise.Depth, d.Seat.Stretchers = 0, design.SeatStretchers{}
		s := worked(t, d)
		w := s.wedging()
		for i, l := range s.sorts() {
			turned := s.turning(l)
			// The bottom of the slot on the axis, from where the tip is when driven home.
			bottom := l.point(s.shoulder(l) - turned.shoulder + w.slots[i])
			nearly(t, "bottom of the slot under the upper face", s.thickness()-bottom.Z, s.thickness()*2/3, 1e-9)
			if w.wide > turned.tip+1e-9 {
				t.Errorf("wedge %.3f wide, tip %.3f", w.wide, turned.tip)
			}
			if w.long >= w.slots[i] || w.long <= turned.over {
				t.Errorf("wedge %.3f long, slot %.3f, of which %.3f stand out", w.long, w.slots[i], turned.over)
			}
		}
	})
}

// Every handle that is shown has its figure, whose change moves it along its axis alone:
// feet of all rows but those by resultant, forward and aside; of a circle outward.
func TestHandles(t *testing.T) {
	round := stool()
	round.Seat = onCircle(round.Seat)
	byFeet := bench()
	byFeet.Seat.Front.By, byFeet.Seat.Front.FrontBack, byFeet.Seat.Front.Aside = design.ByFeet, 150, 600
	for _, tt := range []struct {
		d    design.Design
		want int
	}{{stool(), 4}, {bench(), 5}, {byFeet, 5}, {round, 2}} {
		s := worked(t, tt.d)
		grips := s.grips()
		var shown []kind.Handle
		for _, l := range []kind.Look{kind.FromAbove, kind.FromFront} {
			_, some := s.Dimensions(l)
			shown = append(shown, some...)
		}
		if len(shown) != tt.want || len(grips) != tt.want {
			t.Errorf("%d handles, %d figures, want %d", len(shown), len(grips), tt.want)
		}
		for _, h := range shown {
			g, at := grips[h.ID], h.At.X
			if h.Up {
				at = h.At.Y
			}
			nearly(t, string(h.ID), g.At(s), at, 1e-9)
			moved := tt.d
			figure, angle := g.Key.Figure()
			if *figure(&moved) += 0.05; !angle {
				*figure(&moved) += 10
			}
			if math.Abs(g.At(worked(t, moved))-at) < 3 {
				t.Errorf("%s stays where it was", h.ID)
			}
		}
	}
}

// The strip is one row of the cut list and yields all wedges, a kerf for each.
func TestWedgesComeOffTheirStrip(t *testing.T) {
	d := stool()
	d.Wood.Spares = 1
	s := worked(t, d)
	rows := s.Cuts()
	strip := rows[len(rows)-1]
	tenons, a := s.tenonWedges()
	feet, b := s.levelWedges()
	if strip.Part != shop.SeatWedge || strip.Sizes[0].Count != 1 || strip.Spares != 0 || tenons != 4 || feet != 3 {
		t.Errorf("%+v, %d and %d wedges", strip, tenons, feet)
	}
	nearly(t, "strip", strip.Finished.Length, 4*(a.Length+3.2)+3*(b.Length+3.2)+150, 1e-9)
	if strip.Finished.Width < max(a.Width, b.Width) || strip.Finished.Thickness < max(a.Thickness, b.Thickness) {
		t.Errorf("strip %v for %v and %v", strip.Finished, a, b)
	}
	d.Seat.Mortise.NoWedge = true
	if n, _ := worked(t, d).tenonWedges(); n != 0 {
		t.Errorf("%d wedges for tenons that have none", n)
	}
}

// The work comes in an order in which it can be done: the slab is bored before its outline
// is sawn, legs are fitted and slotted before they are glued.
func TestOrderOfTheCards(t *testing.T) {
	s := worked(t, stool())
	seat, _ := s.slabWork(templates.Setting{})
	last, _ := s.together(templates.Setting{})
	for _, tt := range []struct {
		cards []templates.Card
		want  []text
	}{
		{seat.Cards, []text{slabCard.Heading, boreCard.Heading, boreCard.Heading, sawCard.Heading}},
		{last.Cards, []text{wedgeCard.Heading, slotHeading, glueCard.Heading, levelCard.Heading}},
	} {
		if len(tt.cards) != len(tt.want) {
			t.Fatalf("%d cards", len(tt.cards))
		}
		for i, c := range tt.cards {
			if want := tt.want[i]; want != boreCard.Heading && c.Heading != want.With() {
				t.Errorf("card %d: %s", i, c.Heading)
			}
		}
	}
	d := stool()
	d.Seat.Mortise.Depth = 32
	blind, _ := worked(t, d).together(templates.Setting{})
	if blind.Cards[1].Heading != fitCard.Heading.With() || len(blind.Cards[1].Figures) > 0 {
		t.Errorf("a blind mortise is slotted: %+v", blind.Cards[1])
	}
}

// The bit for a hole that is reamed is one that is sold, no larger than its narrow end.
func TestPilotBit(t *testing.T) {
	d := stool()
	d.Seat.Mortise.Taper = measure.Radians(6)
	for _, u := range []struct {
		unit measure.Unit
		step float64
	}{{measure.Millimetre, 1}, {measure.Inch, 25.4 / 16}} {
		d.Unit = u.unit
		s := worked(t, d)
		for _, l := range s.sorts() {
			b := s.boring(l)
			if steps := b.pilot / u.step; b.pilot > b.bit || b.bit-b.pilot >= u.step || math.Abs(steps-math.Round(steps)) > 1e-9 {
				t.Errorf("bit %.4f for %.4f", b.pilot, b.bit)
			}
		}
	}
}

// On the cut list and on the boards legs of different lengths are told apart.
func TestLegsOfTheCutList(t *testing.T) {
	d := bench()
	d.Seat.Stretchers = design.SeatStretchers{}
	d.Seat.Front.Legs, d.Seat.Back.Legs = 3, 4
	count := map[shop.Part]int{}
	for _, row := range worked(t, d).Cuts() {
		count[row.Part] += row.Sizes[0].Count
	}
	for part, want := range map[shop.Part]int{shop.FrontLeg: 2, shop.InnerFrontLeg: 1, shop.BackLeg: 2, shop.InnerBackLeg: 2} {
		if count[part] != want {
			t.Errorf("%d of part %d, want %d", count[part], part, want)
		}
	}
}

// The octagon of a leg is drawn whether its foot is thinner, as thick by its own figure, or
// follows; that of a thinner foot stands within it.
func TestOctagonIsDrawnForEveryFoot(t *testing.T) {
	for foot, want := range map[float64]int{0: 2, 25: 3, 38: 2} {
		d := stool()
		d.Seat.Legs.Section, d.Seat.Legs.Size, d.Seat.Legs.Foot = design.OctagonLeg, 38, foot
		strokes := worked(t, d).octagon().Strokes // the blank first
		if len(strokes) != want {
			t.Errorf("%d outlines of a foot of %g mm", len(strokes), foot)
			continue
		}
		for i, size := range []float64{38, 25}[:want-1] {
			if got := geometry.Bounds(strokes[i+1].Points...).Size(); got.Distance(geometry.Pt(size, size)) > 1e-9 || len(strokes[i+1].Points) != 9 {
				t.Errorf("foot %g mm: outline %d is %v over its flats", foot, i, got)
			}
		}
	}
}

// What is gauged from a corner of the octagon, and how high the pencil is, have arrows
// where they are measured.
func TestCardFiguresHaveArrows(t *testing.T) {
	s := worked(t, stool())
	k := s.design.Seat.Legs
	spans := s.octagonShown(s.octagon()).Spans
	if want := k.Size * (1 - math.Tan(math.Pi/8)) / 2; len(spans) != 1 || math.Abs(spans[0].Length()-want) > 1e-9 || spans[0].Text != s.mm(want) {
		t.Errorf("the corner is %v, want one span of %.3f", spans, want)
	}
	if v := s.levelView(); len(v.Spans) != 3 || v.Spans[0].Text != s.mm(s.levelling().pencil) {
		t.Errorf("the pencil is at %v", v.Spans)
	}
	for _, l := range s.levelView().Labels { // the bench in itself, so that no leader crosses the pencil's line
		if l.ID == "bench" && l.On.Mid().Y > -s.levelling().pencil-10 {
			t.Errorf("the bench is named at %v", l.On.Mid())
		}
		if l.ID == "scribe" && (l.On.A == l.On.B || l.On.B.X > s.levelView().Bounds().Min.X+0.3*s.levelView().Bounds().Width()) {
			t.Errorf("the pencil's line is named on %v, among the legs or at a point", l.On)
		}
	}
}

func TestWhatMendsHasItsWords(t *testing.T) { piecetest.Mends(t, mends(), mending) }

// The card of the dry fit says how far the ends of the blanks stand apart, as they do in the
// room: of the nearest legs of a sort.
func TestEndsStandApart(t *testing.T) {
	round := stool()
	round.Seat = onCircle(round.Seat)
	for _, d := range []design.Design{stool(), bench(), round} {
		s := worked(t, d)
		job, err := s.together(templates.Setting{})
		if err != nil {
			t.Fatal(err)
		}
		for _, of := range s.sorts() {
			nearest := math.Inf(1)
			ends := lists.Map(s.legs, func(l leg) solid.Vec {
				return l.frame().Apply(solid.V(0, 0, s.tip(l)-s.turning(l).over+s.turning(l).blank.Length))
			})
			for i, p := range ends {
				for j, q := range ends[:i] {
					if s.legs[i].sort == of.sort && s.legs[j].sort == of.sort {
						nearest = math.Min(nearest, p.Distance(q))
					}
				}
			}
			if s.count(of.sort) > 1 && !strings.Contains(job.Cards[1].Test, s.mm(nearest)) {
				t.Errorf("%s stand %s apart: %s", of.sort.id(), s.mm(nearest), job.Cards[1].Test)
			}
		}
	}
}

// What a card calls for stands on it or on one before: the shoulder from which legs are
// tapered is set out on the blanks, and where the bit comes out is measured from lines that
// were carried over, if it does.
func TestWhatIsCalledForIsSetOut(t *testing.T) {
	for depth, want := range map[float64]bool{0: true, 32: false} {
		d := stool()
		d.Seat.Mortise.Depth = depth
		s := worked(t, d)
		seat, _ := s.slabWork(templates.Setting{})
		if got := slices.Contains(seat.Cards[0].Text, carryText.With()); got != want {
			t.Errorf("bored %v deep, lines are carried over: %v", depth, got)
		}
		legs, err := s.legWork(templates.Setting{})
		if err != nil || !slices.ContainsFunc(legs.Cards[0].Figures, func(r templates.Reading) bool {
			return strings.HasPrefix(r.Name, shoulderReading.With())
		}) {
			t.Errorf("no shoulder on the blanks: %+v, %v", legs.Cards[0].Figures, err)
		}
	}
}

// A leg that stands alone in its row is named as one, with its spare as several.
func TestOneLegIsNamedSo(t *testing.T) {
	d := stool()
	d.Wood.Spares = 1
	s := worked(t, d)
	seat, _ := s.slabWork(templates.Setting{})
	if got, want := seat.Cards[2].Heading, boreCard.Heading.With("back leg"); got != want {
		t.Errorf("%q, want %q", got, want)
	}
	legs, _ := s.legWork(templates.Setting{})
	if got := legs.Cards[0].Ticks[1]; got.Text != "back legs" || got.Boxes != 2 {
		t.Errorf("%+v", got)
	}
	for id := range sortNames {
		if id != "seat.circle" && oneName[id] == "" {
			t.Errorf("one of %s has no name", id)
		}
	}
}
