package aprons

import (
	"math"

	"rodsheet/geometry/joint"
	"rodsheet/geometry/measure"
	"rodsheet/templates/piece"
	"rodsheet/templates/piece/assembly"
	"rodsheet/templates/piece/design"
)

// judge works out one size, as assembly.Spec wants it.
func judge(d design.Design, doubts design.Doubts) (m Model, errs []error) {
	whole := question{Keys: everything, Ask: func() error {
		m = newModel(d)
		return room(m)
	}}
	errs = assembly.Faults(d, doubts, append(questions(d.Frame), assembly.Moisture(d.Wood), whole)...)
	return m, errs // m is set by then
}

type question = assembly.Question

// everything are the keys that fix where a frame stands.
var everything = []design.Key{
	"frame.shape", "frame.sides", "frame.length", "frame.width", "frame.height",
	"frame.legs.size", "frame.legs.rake", "frame.legs.splay", "frame.legs.faces", "frame.legs.taper-start", "frame.legs.foot",
	"frame.aprons.depth", "frame.aprons.thickness", "frame.aprons.faces", "frame.aprons.inset", "frame.aprons.arch",
	"frame.stretchers.depth", "frame.stretchers.thickness", "frame.stretchers.height", "frame.stretchers.faces", "frame.stretchers.inset",
	"frame.top.kind", "frame.top.thickness",
	"frame.milled.legs", "frame.milled.aprons", "frame.milled.stretchers",
}

// questions are asked of two figures of a design at a time or three, before it is
// worked out.
func questions(decided design.Frame) []question {
	length, f := measure.Length, decided.Planed()
	out := []question{
		milled("frame.milled.legs", decided.Milled.Legs, "frame.legs.size", decided.Legs.Size),
		milled("frame.milled.aprons", decided.Milled.Aprons, "frame.aprons.thickness", decided.Aprons.Thickness),
		{Keys: []design.Key{"frame.height", "frame.aprons.depth", "frame.top.kind", "frame.top.thickness"}, Ask: func() error {
			above := f.Height - headHeight(f) + f.Aprons.Depth
			return measure.Above("frame.height", length(f.Height), "aprons.top-and-apron", length(above), "")
		}},
		assembly.Within(measure.Below, "frame.legs.foot", f.Legs.Foot, "frame.legs.size", f.Legs.Size, "taper.narrows", "frame.milled.legs"),
		{Keys: []design.Key{"frame.top.kind", "frame.top.outline", "frame.top.overhang", "frame.length", "frame.width", "frame.shape", "frame.sides"}, Ask: func() error {
			least, than := f.Length/grow(f)/2, measure.ID("aprons.half-side")
			switch {
			case f.Top.None || f.Top.Outline == design.OvalOnFrame:
				return nil
			case f.Top.Outline == design.RoundOnFrame:
				least, than = planCorners(f)[0].Norm(), "aprons.to-middle"
			case f.Shape == design.Rectangle:
				least = math.Min(f.Length, f.Width) / 2
			}
			return measure.Above("frame.top.overhang", length(f.Top.Overhang), than, length(-least), "aprons.more-overhang")
		}},
	}
	out = append(out, question{Keys: []design.Key{"frame.top.kind", "frame.top.overhang", "frame.top.corner", "frame.top.corner-size", "frame.top.outline", "frame.top.diameter", "frame.top.length", "frame.top.width", "frame.length", "frame.width", "frame.shape", "frame.sides"}, Ask: func() error {
		if f.Top.None {
			return nil
		}
		if f.Top.Outline == design.OvalOnFrame {
			return ovalFault(f.Top)
		}
		return ofFrame(topShape(f).Check())
	}})
	out = append(out, railQuestions("frame.aprons", "frame.milled.aprons", f.Aprons)...)
	out = append(out, assembly.Within(measure.Below, "frame.aprons.arch", f.Aprons.Arch, "frame.aprons.depth", f.Aprons.Depth, ""))
	if f.Stretchers.Depth == 0 {
		return append(out, question{Keys: []design.Key{"frame.milled.stretchers", "frame.stretchers.depth"}, Ask: func() error {
			return measure.AtMost("frame.milled.stretchers", length(decided.Milled.Stretchers), "aprons.no-stretchers", length(0), "aprons.add-stretchers")
		}})
	}
	out = append(out, milled("frame.milled.stretchers", decided.Milled.Stretchers, "frame.stretchers.thickness", decided.Stretchers.Thickness))
	out = append(out, railQuestions("frame.stretchers", "frame.milled.stretchers", f.Stretchers)...)
	out = append(out, question{Keys: []design.Key{"frame.stretchers.height", "frame.stretchers.depth", "frame.height", "frame.top.kind", "frame.top.thickness", "frame.aprons.depth"},
		Ask: func() error {
			under := headHeight(f) - f.Aprons.Depth - f.Stretchers.Depth
			return measure.Below("frame.stretchers.height", length(f.Stretchers.Height), "aprons.under-aprons", length(under), "")
		}})
	return out
}

// ovalFault refuses an oval that is none, either axis being the longer.
func ovalFault(t design.FrameTop) error {
	long, wide := measure.ID("frame.top.length"), measure.ID("frame.top.width")
	if t.Width > t.Length {
		long, wide = wide, long
	}
	err := joint.Oval{Length: math.Max(t.Length, t.Width), Width: math.Min(t.Length, t.Width)}.Check()
	bound, ok := err.(*measure.BoundError)
	if !ok {
		return err
	}
	own := *bound
	own.Hint = "aprons.round-or-wider"
	if own.Figure = wide; bound.Figure == "oval.length" {
		own.Figure = long
	}
	if own.Than == "oval.tenth" {
		own.Than = "aprons.tenth"
	}
	return &own
}

// ofFrame gives an error about an outline the keys of a frame, which names no corners.
func ofFrame(err error) error {
	err = assembly.Under("frame", err)
	if own, ok := err.(*measure.BoundError); ok && own.Figure == "frame.outline.side" {
		own.Hint = "aprons.more-overhang"
	}
	return err
}

// milled asks whether a size as planed is near the designed one.
func milled(key design.Key, mm float64, of design.Key, designed float64) question {
	return question{Keys: []design.Key{key, of}, Ask: func() error { return piece.CheckAsMilled(measure.ID(key), mm, designed) }}
}

// railQuestions are those of a tenon in its rail, which measures as milled says.
func railQuestions(table, milled design.Key, r design.Rail) []question {
	key := func(word string) design.Key { return table + "." + design.Key(word) }
	length := measure.Length
	return []question{
		assembly.Within(measure.Below, key("tenon"), third(r), key("thickness"), r.Thickness, "tenon.third", milled),
		{Keys: []design.Key{key("upper-cut"), key("lower-cut"), key("depth")}, Ask: func() error {
			figure, value, rest := "upper-cut", r.UpperCut, r.Depth-r.LowerCut
			if r.UpperCut == 0 || r.Joint == design.Bridled {
				figure, value, rest = "lower-cut", r.LowerCut, r.Depth-upperCut(r)
			}
			return measure.Below(measure.ID(key(figure)), length(value), "aprons.leaves-tenon", length(rest), "mortise.less-off")
		}},
	}
}

// mostTurn is how far the side of a leg may be turned off square to the rail that it takes:
// beyond it the tenon has little of the leg (common practice, no source).
var mostTurn = measure.Radians(30)

// room refuses a frame whose legs leave no room for rails between them, or whose feet
// come together.
func room(m Model) error {
	f := m.Design.Frame
	for i, s := range m.sides[:m.RailSorts()] {
		a, b := m.legs[i], m.legs[i+1]
		apart := func(down float64) float64 {
			at := func(l leg) float64 { return l.at.Add(l.along.Mul(l.length() * down)).Dot(flat(s.along)) }
			return at(b) - at(a)
		}
		if err := measure.Above("aprons.foot-side", measure.Length(apart(1)), "aprons.two-feet", measure.Length(2*f.Legs.Size), "aprons.less-inward"); err != nil {
			return err
		}
	}
	for _, row := range m.Rows {
		for _, r := range m.sorts(row) {
			if f.Legs.Faces == design.ToSightline {
				turn := measure.Angle(math.Abs(r.Ends[left].Joint.Edge))
				if err := measure.AtMost("aprons.turn", turn, "", measure.Angle(mostTurn), "aprons.faces-to-room"); err != nil {
					return err
				}
			}
			if err := measure.Above("aprons.between", measure.Length(r.shortest()), "", measure.Length(0), "aprons.longer-side"); err != nil {
				return err
			}
			if err := measure.AtLeast("aprons.tenon-long", measure.Length(r.longest()), "", measure.Length(design.Thinnest), "aprons.thicker-legs"); err != nil {
				return err
			}
			if bow, ok := r.Arc(); ok {
				if err := measure.AtMost("frame.aprons.arch", measure.Length(bow.Rise), "aprons.half-chord", measure.Length(math.Max(0, bow.Chord/2)), ""); err != nil {
					return err
				}
			}
		}
	}
	if l := m.legs[0]; l.taper.Top > 0 {
		return measure.Below("frame.legs.taper-start", measure.Length(l.taper.Start), "aprons.leg-length", measure.Length(l.length()), "taper.start-from-top")
	}
	return nil
}

// shortest returns the shortest of the four arrises of a rail between its shoulders.
func (r Rail) shortest() float64 {
	least := math.Inf(1)
	for k := range r.Ends[left].Mouth {
		least = math.Min(least, r.Ends[right].Mouth[k].Sub(r.Ends[left].Mouth[k]).Dot(r.Along))
	}
	return least
}
