package seat

import (
	"cmp"
	"math"
	"sync"

	"rodsheet/geometry/lists"
	"rodsheet/geometry/measure"
	"rodsheet/templates/piece/assembly"
	"rodsheet/templates/piece/design"
)

// steepestFall is the most by which a seat falls from front to back, rad: beyond it one
// slides off (common practice, no source).
const steepestFall = 15 * math.Pi / 180

type question = assembly.Question

// judge works one size out, as assembly.Spec wants it.
func judge(d design.Design, doubts design.Doubts) (whole Seat, errs []error) {
	all := everything()
	asked := append(questions(d.Seat), assembly.Moisture(d.Wood), question{Keys: all, Ask: func() error {
		whole = newSeat(d)
		return nil
	}})
	for _, ask := range []func(Seat) error{placed, standing, rodded} {
		asked = append(asked, question{Keys: all, Ask: func() error { return ask(whole) }})
	}
	errs = assembly.Faults(d, doubts, asked...)
	return whole, errs
}

// everything are the keys that fix where a seat stands.
var everything = sync.OnceValue(func() []design.Key {
	out := []design.Key{
		"seat.shape", "seat.diameter", "seat.width", "seat.depth", "seat.back-width", "seat.corner", "seat.points",
		"seat.thickness", "seat.height", "seat.back-height", "seat.legs.section", "seat.legs.size", "seat.legs.foot",
		"seat.mortise.diameter", "seat.mortise.reamer", "seat.mortise.depth", "seat.mortise.bored-from",
		"seat.stretchers.shape", "seat.stretchers.height", "seat.stretchers.side-height", "seat.stretchers.diameter",
		"seat.stretchers.tenon", "seat.stretchers.hole", "seat.circle.at-front",
	}
	for row := range design.CircleRow + 1 {
		out = append(append(append(out, row.Table()+".legs"), row.Places()...), row.Leans()...)
	}
	return out
})

// questions are asked of a few figures of a design at a time, before it is worked out.
func questions(s design.Seat) []question {
	length, within := measure.Length, assembly.Within
	out := []question{
		{Keys: []design.Key{"seat.front.legs", "seat.middle.legs", "seat.back.legs", "seat.circle.legs"}, Ask: func() error {
			n := measure.Number(float64(s.Front.Legs + s.Middle.Legs + s.Back.Legs + s.Circle.Legs))
			return cmp.Or(measure.AtLeast("seat.legs-together", n, "", measure.Number(design.SeatFewest), "standing.fewer"),
				measure.AtMost("seat.legs-together", n, "", measure.Number(design.SeatMost), ""))
		}},
		within(measure.AtMost, "seat.legs.foot", s.Legs.Foot, "seat.legs.size", s.Legs.Size, "taper.narrows"),
		within(measure.AtMost, "seat.mortise.diameter", s.Mortise.Diameter, "seat.legs.size", s.Legs.Size, ""),
		within(measure.Below, "seat.mortise.depth", s.Mortise.Depth, "seat.thickness", s.Thickness, "seat.leave-through"),
	}
	if s.Mortise.Upper {
		out = append(out, question{Keys: []design.Key{"seat.mortise.depth", "seat.mortise.bored-from"}, Ask: func() error {
			return measure.AtMost("seat.mortise.depth", length(s.Mortise.Depth), "", length(0), "seat.blind-from-below")
		}})
	}
	if rods := s.Stretchers; rods.Shape != design.NoStretchers {
		out = append(out,
			within(measure.AtMost, "seat.stretchers.tenon", rods.Tenon, "seat.stretchers.diameter", rods.Diameter, ""),
			within(measure.AtMost, "seat.stretchers.diameter", rods.Diameter, "seat.legs.foot", cmp.Or(s.Legs.Foot, s.Legs.Size), "", "seat.legs.size"))
	}
	if s.Stretchers.Shape == design.HStretchers {
		for _, row := range []design.SeatRow{design.FrontRow, design.BackRow} {
			key := row.Table() + ".legs"
			out = append(out, question{Keys: []design.Key{key, "seat.stretchers.shape"}, Ask: func() error {
				return measure.AtLeast(measure.ID(key), measure.Number(float64(s.Row(row).Legs)), "", measure.Number(2), "seat.h-of-pairs")
			}})
		}
	}
	out = append(out, outlineQuestions(s)...)
	for _, row := range s.Rows() {
		out = append(out, rowQuestions(s, row)...)
	}
	return out
}

// outlineQuestions are those of the outline.
func outlineQuestions(s design.Seat) []question {
	length, within := measure.Length, assembly.Within
	switch s.Shape {
	case design.ShieldSeat:
		return []question{
			within(measure.AtMost, "seat.back-width", s.BackWidth, "seat.width", s.Width, "seat.shield-narrows"),
			within(measure.AtMost, "seat.back-width", s.BackWidth, "seat.depth", s.Depth, ""),
			{Keys: []design.Key{"seat.corner", "seat.width", "seat.depth"}, Ask: func() error {
				return measure.AtMost("seat.corner", length(s.Corner), "outline.half-side-holds", length(math.Min(s.Width, s.Depth)/2), "outline.take-less")
			}},
		}
	case design.OvalSeat:
		return []question{{Keys: []design.Key{"seat.width", "seat.depth"}, Ask: func() error {
			long, short := math.Max(s.Width, s.Depth), math.Min(s.Width, s.Depth)
			id := measure.ID("seat.depth")
			if s.Width < s.Depth {
				id = "seat.width"
			}
			return measure.AtLeast(id, length(short), "seat.tenth", length(long/10), "oval.flat-arcs")
		}}}
	case design.RoundSeat:
		return nil
	}
	return []question{{Keys: []design.Key{"seat.width", "seat.depth", "seat.corner", "seat.points"}, Ask: func() error {
		return assembly.Under("seat", rim(s).Check())
	}}}
}

// chord returns how far neighbours stand apart of so many on a circle.
func chord(radius float64, n int) float64 { return 2 * radius * math.Sin(math.Pi/float64(n)) }

// rowQuestions are those of the places of a row.
func rowQuestions(s design.Seat, of design.SeatRow) []question {
	row := s.Row(of)
	table := of.Table()
	if of == design.CircleRow {
		return []question{{Keys: []design.Key{table + ".legs", table + ".from-middle", "seat.mortise.diameter"}, Ask: func() error {
			return measure.Above("seat.circle.apart", measure.Length(chord(row.From, row.Legs)), "seat.mortise.diameter", measure.Length(s.Mortise.Diameter), "seat.holes-meet")
		}}, {Keys: []design.Key{table + ".legs", "seat.back-height", "seat.height"}, Ask: func() error {
			back, front := measure.Length(cmp.Or(s.BackHeight, s.Height)), measure.Length(s.Height)
			return cmp.Or(measure.AtLeast("seat.back-height", back, "seat.height", front, "seat.circle-level"),
				measure.AtMost("seat.back-height", back, "seat.height", front, "seat.circle-level"))
		}}}
	}
	id := func(word string) measure.ID { return measure.ID(table) + measure.ID(word) }
	if row.Legs > 1 {
		return []question{{Keys: []design.Key{table + ".apart", table + ".legs", "seat.mortise.diameter"}, Ask: func() error {
			apart := row.Apart / float64(row.Legs-1)
			return measure.Above(id(".apart"), measure.Length(apart), "seat.mortise.diameter", measure.Length(s.Mortise.Diameter), "seat.holes-meet")
		}}}
	}
	nothing := func(figure measure.ID, q measure.Quantity) error {
		return measure.AtMost(figure, q, "", measure.Quantity{Kind: q.Kind}, "seat.on-centre-line")
	}
	aside := [...]struct {
		word string
		of   func(float64) measure.Quantity
	}{design.ByRake: {".splay", measure.Angle}, design.ByResultant: {".sightline", measure.Angle}, design.ByFeet: {".feet-apart", measure.Length}}[row.By]
	return []question{
		{Keys: []design.Key{table + ".apart", table + ".legs"}, Ask: func() error { return nothing(id(".apart"), measure.Length(row.Apart)) }},
		{Keys: append(of.Leans(), table+".legs"), Ask: func() error {
			return nothing(id(aside.word), aside.of(math.Abs(row.Aside)))
		}},
	}
}

// placed refuses a seat that falls too far, and holes and leans that no slab has.
func placed(s Seat) error {
	k := s.design.Seat
	most := (s.backEdge() - s.frontEdge()) * math.Sin(steepestFall)
	if back := measure.Length(k.BackHeight); k.BackHeight > 0 {
		if err := cmp.Or(
			measure.AtLeast("seat.back-height", back, "seat.steepest-fall", measure.Length(k.Height-most), "seat.back-from-floor"),
			measure.AtMost("seat.back-height", back, "seat.steepest-fall", measure.Length(k.Height+most), "seat.back-from-floor"),
		); err != nil {
			return err
		}
	}
	for _, l := range s.sorts() {
		row := rowOf(l.sort)
		steepest := measure.Angle(measure.Radians(design.SteepestStake))
		if err := cmp.Or(
			measure.Above(row+".hole", measure.Length(s.rim.Inside(flat(l.at))), "", measure.Length(0), "seat.hole-off"),
			measure.AtMost(row+".lean", measure.Angle(l.lean.Resultant()), "", steepest, "lean.from-plumb"),
			measure.Above("seat.mortise.narrow", measure.Length(2*s.radius(l, s.tip(l))), "", measure.Length(design.Thinnest), "seat.less-reamer"),
			measure.Above("seat.mortise.reach", measure.Length(l.to(0)-s.tip(l)), "", measure.Length(design.Thinnest), "seat.deeper"),
		); err != nil {
			return err
		}
	}
	return nil
}

// rowOf is the table of the row of a sort.
func rowOf(s sort) measure.ID { return measure.ID(s.row.Table()) }

// standing refuses legs that end above their shoulders, and feet that cross the centre line.
func standing(s Seat) error {
	d := s.design
	for _, l := range s.sorts() {
		// Below the shoulder there is to be as much as the foot is thick.
		below := s.height(l.point(s.shoulder(l)))
		if err := measure.Above("seat.leg-height", measure.Length(below), "seat.legs.size", measure.Length(d.Seat.Legs.Size), "seat.higher"); err != nil {
			return err
		}
		if l.side != 0 || l.sort.round() {
			foot, n := flat(l.point(l.foot)), s.row(l.sort.row).Legs
			between := 2 * l.side * foot.X
			switch {
			case l.sort.round():
				between = chord(foot.Dot(flat(l.at).Unit()), n)
			case !l.sort.inner:
				between /= float64(n - 1)
			}
			if err := measure.Above(rowOf(l.sort)+".feet", measure.Length(between), "", measure.Length(0), "seat.feet-cross"); err != nil {
				return err
			}
		}
	}
	return nil
}

// rodded refuses stretchers above the shoulders of the legs, or without room between them.
func rodded(s Seat) error {
	k := s.design.Seat.Stretchers
	if k.Shape == design.NoStretchers {
		return nil
	}
	room := lists.Least(s.legs, func(l leg) float64 { return s.height(l.point(s.shoulder(l))) })
	for _, h := range []struct {
		id    measure.ID
		value float64
	}{{"seat.stretchers.height", k.Height}, {"seat.stretchers.side-height", cmp.Or(k.SideHeight, k.Height)}} {
		if err := measure.Below(h.id, measure.Length(h.value), "seat.shoulders", measure.Length(room-k.Diameter), "seat.stretchers-lower"); err != nil {
			return err
		}
	}
	for _, r := range s.rods {
		_, between := r.length()
		if err := measure.Above("seat.stretchers.length", measure.Length(between), "", measure.Length(design.Thinnest), "seat.stretchers-no-room"); err != nil {
			return err
		}
	}
	return nil
}
