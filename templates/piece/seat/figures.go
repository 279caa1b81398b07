package seat

import (
	"cmp"
	"math"
	"slices"

	"rodsheet/geometry"
	"rodsheet/geometry/joint"
	"rodsheet/geometry/lists"
	"rodsheet/geometry/measure"
	"rodsheet/templates/piece"
	"rodsheet/templates/piece/assembly"
	"rodsheet/templates/piece/design"
	"rodsheet/templates/piece/kind"
	"rodsheet/templates/piece/shop"
)

// Somebody who sits down near an edge, as a test of stability has it: a force straight
// down, so far in from the edge, and a level pull (EN 1022, from memory).
const (
	sitting      = 600.0 // N
	sittingInset = 60.0  // mm
)

// id is that of a sort of legs, with what is said of it.
func (s sort) id() measure.ID {
	out := rowOf(s)
	if s.inner {
		out += "-inner"
	}
	return out
}

// Groups are all figures.
func (s Seat) Groups() []kind.Group {
	out := []kind.Group{s.slabGroup()}
	for _, l := range s.sorts() {
		out = append(out, s.legGroup(l))
	}
	if len(s.rods) > 0 {
		out = append(out, s.rodGroup())
	}
	return append(out, s.standingGroup())
}

func (s Seat) slabGroup() kind.Group {
	k := s.design.Seat
	g := names().Group("seat.slab")
	box := s.box.Size()
	g.Add("seat.side-to-side", measure.Length(box.X))
	g.Add("seat.front-to-back", measure.Length(box.Y))
	g.Add("seat.thick", measure.Length(k.Thickness))
	g.Add("seat.height-front", measure.Length(k.Height))
	g.Add("seat.height-back", measure.Length(cmp.Or(k.BackHeight, k.Height)))
	g.Add("seat.fall", measure.Angle(s.tilt))
	g.Add("seat.area", measure.Area(s.rim.Area()))
	g.Add("seat.mass", measure.Mass(s.mass()))
	return g.Group
}

func (s Seat) legGroup(l leg) kind.Group {
	id := l.sort.id()
	g := names().Group(id)
	add := func(what measure.ID, q measure.Quantity) { g.Add(id+"."+what, q) }
	b, t := s.boring(l), s.turning(l)
	exit := l.point(l.to(s.thickness() - s.bored())).Sub(l.at)
	off, along, across := s.bore(l, s.bored()).Mouth()
	foot := s.room.Apply(l.point(l.foot))
	level, other := l.stake.FootCut()
	add("count", measure.Number(float64(s.count(l.sort))))
	if !l.sort.round() {
		add("rake-of", measure.Angle(l.lean.Rake))
		add("splay-of", measure.Angle(l.lean.Splay))
		add("sightline-of", measure.Angle(b.sightline))
		add("hole-aside", measure.Length(b.aside))
	} else {
		add("holes-apart", measure.Length(chord(b.forward, b.count)))
	}
	add("resultant-of", measure.Angle(b.resultant))
	add("bevel", measure.Angle(math.Pi/2-b.resultant))
	add("hole-from-middle", measure.Length(b.forward))
	add("mouth-along", measure.Length(2*along))
	add("mouth-across", measure.Length(2*across))
	if off > 0 {
		add("mouth-off", measure.Length(off))
	}
	if b.depth == 0 {
		s.place(add, "exit", l, flat(l.at.Add(exit)))
		add("bored", measure.Length(s.thickness()/math.Cos(b.resultant)))
	} else {
		add("bored", measure.Length(b.depth))
	}
	add("blank", measure.Length(t.blank.Length))
	add("tenon", measure.Length(t.shoulder-t.over))
	add("below-shoulder", measure.Length(l.foot-s.shoulder(l)))
	add("from-plumb", measure.Angle(l.stake.FromPlumb()))
	add("foot-across", measure.Angle(math.Abs(level)))
	add("foot-along", measure.Angle(math.Abs(other)))
	s.place(add, "foot", l, flat(foot))
	return g.Group
}

// place adds how far a point of a leg is from the centre line and from the middle, or of
// one of a circle from the middle.
func (s Seat) place(add func(measure.ID, measure.Quantity), what measure.ID, l leg, p geometry.Point) {
	if l.sort.round() {
		add(what+"-from-middle", measure.Length(p.Norm()))
		return
	}
	add(what+"-aside", measure.Length(math.Abs(p.X)))
	add(what+"-from-middle", measure.Length(math.Abs(p.Y)))
}

// rodIDs are those of the kinds of stretchers.
var rodIDs = [...]measure.ID{frontRod: "front", backRod: "back", sideRod: "side", crossRod: "across", roundRod: "circle"}

// kinds returns one stretcher of every kind that differs by its length, and how many
// there are of it.
func (s Seat) kinds() (first, count []int) {
	for i, r := range s.rods {
		long, _ := r.length()
		k := slices.IndexFunc(first, func(j int) bool {
			other, _ := s.rods[j].length()
			return s.rods[j].kind == r.kind && math.Abs(other-long) < piece.Slip
		})
		if k < 0 {
			k, first, count = len(first), append(first, i), append(count, 0)
		}
		count[k]++
	}
	return first, count
}

func (s Seat) rodGroup() kind.Group {
	g := names().Group("seat.rods")
	numbers := map[rodKind]int{}
	first, _ := s.kinds()
	for _, i := range first {
		r := s.rods[i]
		numbers[r.kind]++
		id := "seat.rod-" + rodIDs[r.kind]
		if n := numbers[r.kind]; n > 1 {
			id += "-2"
		}
		whole, between := r.length()
		g.Add(id+".whole", measure.Length(whole))
		g.Add(id+".between", measure.Length(between))
		for end, word := range []measure.ID{".first", ".second"} {
			b := s.rodBoring(i, end)
			g.Add(id+word+".lean", measure.Angle(b.lean))
			g.Add(id+word+".depth", measure.Length(b.depth))
			if r.kind != crossRod {
				g.Add(id+word+".along", measure.Length(b.along))
				g.Add(id+word+".turn", measure.Angle(math.Abs(b.turn)))
			}
		}
	}
	return g.Group
}

func (s Seat) standingGroup() kind.Group {
	g := names().Group("seat.standing")
	f, high := s.footing()
	g.Add("seat.centre-high", measure.Length(high))
	g.Add("seat.centre-inside", measure.Length(f.Inside(f.Centre)))
	for _, side := range s.sides() {
		g.Add("seat.tips."+side.id, measure.Force(f.TippingForce(side.inset(joint.EdgeInset))))
		g.Add("seat.pull."+side.id, measure.Force(f.Pull(sitting, side.inset(sittingInset), side.out, side.high)))
	}
	return finite(g.Group)
}

// finite leaves out forces that tip nothing, and those that are not wanted for it: one that
// is nowhere enough is no figure, nor is one less than nothing.
func finite(g kind.Group) kind.Group {
	kept := g.Figures[:0]
	for _, f := range g.Figures {
		switch {
		case !f.Value.Finite():
			g.Text = append(g.Text, neverTips.With(f.Name))
		case f.Value.Kind == measure.KindForce && f.Value.Value < 0:
			g.Text = append(g.Text, tipsAlone.With(f.Name))
		default:
			kept = append(kept, f)
		}
	}
	g.Figures = kept
	return g
}

// legParts are the legs of every sort on the cut list.
var legParts = map[sort]shop.Part{
	{}: shop.FrontLeg, {inner: true}: shop.InnerFrontLeg, {row: design.MiddleRow}: shop.MiddleLeg, {design.MiddleRow, true}: shop.InnerMiddleLeg,
	{row: design.BackRow}: shop.BackLeg, {design.BackRow, true}: shop.InnerBackLeg, {row: design.CircleRow}: shop.Leg,
}

// Cuts are the parts as they are sawn from boards.
func (s Seat) Cuts() []shop.CutRow {
	board, count := s.boards()
	out := []shop.CutRow{shop.Row(*s.design, shop.SeatBoard, count, board, board, s.rim.Area()*s.thickness()/float64(count))}
	for _, l := range s.sorts() {
		t := s.turning(l)
		finished := t.blank
		finished.Length = s.blankLength(l)
		volume := s.built().legs[slices.Index(s.legs, l)].Volume()
		out = append(out, shop.Row(*s.design, legParts[l.sort], s.count(l.sort), finished, t.blank, volume, t.shoulder))
	}
	first, many := s.kinds()
	for k, i := range first {
		whole, _ := s.rods[i].length()
		size := piece.StockSize{Length: whole, Width: s.design.Seat.Stretchers.Diameter, Thickness: s.design.Seat.Stretchers.Diameter}
		out = append(out, shop.Row(*s.design, shop.Stretcher, many[k], size, size, s.built().rods[i].Volume()))
	}
	return append(out, s.wedgeCut())
}

// Wares is nothing: the legs are held by glue and wedges.
func (s Seat) Wares() []shop.Ware { return nil }

// MainSizes are those of the cover.
func (s Seat) MainSizes() [][2]string {
	k, box := s.design.Seat, s.box.Size()
	f, _ := s.footing()
	feet := geometry.Bounds(f.Feet...)
	out := [][2]string{
		{mainHeight.With(), both.With(s.mm(k.Height), s.mm(cmp.Or(k.BackHeight, k.Height)))},
		{mainSeat.With(), sizes.With(s.mm(box.X), s.mm(box.Y), s.mm(k.Thickness))},
		{mainFeet.With(), times.With(s.mm(feet.Width()), s.mm(feet.Height()))},
		{mainMortise.With(), s.mm(k.Mortise.Diameter)},
	}
	for _, l := range s.sorts() {
		name, said := mainLean, both.With(s.deg(l.lean.Resultant()), s.deg(l.lean.Sightline()))
		if l.sort.round() {
			name, said = mainOutward, s.deg(l.lean.Resultant())
		}
		if !l.sort.inner {
			out = append(out, [2]string{name.With(legsCalled(l.sort, s.count(l.sort)).With()), said})
		}
	}
	return out
}

// Dimensions are those of the plan and of the elevation.
func (s Seat) Dimensions(l kind.Look) (out []kind.Dimension, hold []kind.Handle) {
	add := func(key design.Key, text string, a, b geometry.Point) {
		out = append(out, kind.Dimension{Key: key, Text: text, Segment: geometry.Segment{A: a, B: b}})
	}
	k, box := s.design.Seat, s.box.Size()
	f, _ := s.footing()
	wide := geometry.Bounds(append(f.Feet, geometry.Pt(-box.X/2, s.frontEdge()), geometry.Pt(box.X/2, s.backEdge()))...)
	off := 0.1 * wide.Width()
	if l.View == kind.FromAbove.View {
		key := design.Key("seat.width")
		switch k.Shape {
		case design.RoundSeat:
			key = "seat.diameter"
		case design.FreeSeat:
			key = "seat.points"
		}
		y := wide.Min.Y - off
		add(key, s.mm(box.X), geometry.Pt(s.box.Min.X, y), geometry.Pt(s.box.Max.X, y))
		y, behind := y-off, wide.Max.Y
		for _, r := range k.Rows() {
			row, at := s.row(r), y
			switch {
			case row.Legs == 1:
				continue
			case r == design.CircleRow:
				add("seat.circle.from-middle", s.mm(row.From), geometry.Point{}, geometry.Pt(row.From, 0))
				continue
			case r != design.FrontRow:
				behind += off
				at = behind
			}
			add(r.Table()+".apart", s.mm(row.Apart), geometry.Pt(-row.Apart/2, at), geometry.Pt(row.Apart/2, at))
		}
		return out, s.handles()[1:]
	}
	x := wide.Min.X - off
	add("seat.height", s.mm(k.Height), geometry.Pt(x, 0), geometry.Pt(x, k.Height))
	return out, s.handles()[:1]
}

// A hold is a handle: which figure it moves, and where it stands.
type hold struct {
	id  measure.ID // of the feet that of the figure
	key design.Key
	up  bool
	at  func(Seat) geometry.Point
}

// holds are the height, in the elevation, and in the plan the feet of every row: forward and
// aside by what fixes their lean, those of a circle outward.
func (s Seat) holds() []hold {
	out := []hold{{id: "height", key: "seat.height", up: true, at: func(s Seat) geometry.Point { return geometry.Pt(0, s.design.Seat.Height) }}}
	for _, r := range s.design.Seat.Rows() {
		row := s.row(r)
		keys := r.Ways()[row.By]
		ahead := hold{id: measure.ID(keys[0]), key: keys[0], up: true, at: func(s Seat) geometry.Point { return geometry.Pt(0, s.outermost(r).Y) }}
		aside := hold{id: measure.ID(keys[1]), key: keys[1], at: func(s Seat) geometry.Point { return s.outermost(r) }}
		switch {
		case r == design.CircleRow:
			ahead.up, ahead.at = false, func(s Seat) geometry.Point { return geometry.Pt(s.outermost(r).Norm(), 0) }
			out = append(out, ahead)
		case row.By == design.ByResultant: // one figure moves the foot both ways
		case row.Legs == 1:
			out = append(out, ahead)
		default:
			out = append(out, ahead, aside)
		}
	}
	return out
}

// outermost returns where the rightmost foot of a row stands.
func (s Seat) outermost(r design.SeatRow) geometry.Point {
	for _, l := range s.sorts() {
		if l.sort.row == r && !l.sort.inner {
			return flat(s.room.Apply(l.point(l.foot)))
		}
	}
	return geometry.Point{}
}

func (s Seat) handles() []kind.Handle {
	return lists.Map(s.holds(), func(h hold) kind.Handle { return kind.Handle{ID: h.id, At: h.at(s), Up: h.up} })
}

// grips are what the handles move.
func (s Seat) grips() map[measure.ID]assembly.Grip[Seat] {
	out := map[measure.ID]assembly.Grip[Seat]{}
	for _, h := range s.holds() {
		out[h.id] = assembly.Grip[Seat]{Key: h.key, Up: h.up, At: func(s Seat) float64 {
			if h.up {
				return h.at(s).Y
			}
			return h.at(s).X
		}}
	}
	return out
}

// Follows are the figures that follow where they are not given.
func (s Seat) Follows() map[design.Key]measure.Quantity {
	out := map[design.Key]measure.Quantity{"seat.back-height": measure.Length(cmp.Or(s.design.Seat.BackHeight, s.design.Seat.Height))}
	for _, l := range s.sorts() {
		if l.sort.inner {
			continue
		}
		foot := s.room.Apply(l.point(l.foot))
		all := []measure.Quantity{
			measure.Angle(l.lean.Rake), measure.Angle(l.lean.Splay), measure.Angle(l.lean.Resultant()), measure.Angle(l.lean.Sightline()),
			measure.Length(l.out * foot.Y), measure.Length(2 * math.Abs(foot.X)),
		}
		if l.sort.round() {
			all = []measure.Quantity{all[2], measure.Length(flat(foot).Norm())}
		}
		for i, key := range l.sort.row.Leans() {
			out[key] = all[i]
		}
	}
	if len(s.rods) > 0 {
		out["seat.stretchers.tenon"] = measure.Length(s.tenon())
		out["seat.stretchers.hole"] = measure.Length(s.rods[0].ends[0].hole)
		out["seat.stretchers.side-height"] = measure.Length(cmp.Or(s.design.Seat.Stretchers.SideHeight, s.design.Seat.Stretchers.Height))
	}
	return out
}
