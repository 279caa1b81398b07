package joint

import (
	"cmp"
	"math"

	"rodsheet/geometry"
	"rodsheet/geometry/lists"
	"rodsheet/geometry/measure"
)

// A Haunch is what is left of a tenon above it, so that the top of the rail cannot
// twist: a stub as thick as the tenon.
type Haunch uint8

const (
	NoHaunch Haunch = iota
	SquareHaunch
	SlopingHaunch // runs out to nothing at the top, and is not seen from above
)

func (h Haunch) String() string { return lists.At([]string{"none", "square", "sloping"}, h, "unknown") }

// A Mortise is a mortise and tenon: a level rail in a leg that may lean along the
// rail, across it, or both, as LeaningShoulder has it. The tenon follows the grain
// of the rail, in the middle of its width, so the mortise leans.
type Mortise struct {
	Width, Depth       float64 // of the rail: seen in plan, and up its outer side, mm
	Leg, LegWidth      float64 // of the leg: square to the side that is mortised, and across it, mm
	Splay, Rake, Turn  float64 // see LeaningShoulder, rad
	Tenon              float64 // thickness of the tenon, mm; 0 for a third of Width
	Long               float64 // of the tenon along the rail, mm; 0 for one that goes through the leg
	Over               float64 // what a tenon that goes through is left over length, mm
	Clear              float64 // between the end of a blind tenon and the bottom, square to the leg, mm
	LowerCut, UpperCut float64 // what is cut off the tenon at underside and top, mm
	Haunch             Haunch  // what is left of UpperCut, which is a third of Depth where it is 0
	HaunchLong         float64 // of the haunch along the rail, mm; 0: as long as the tenon is thick
	Inset              float64 // from the outer side of the leg to that of the rail, across the leg, mm
	FromHead           float64 // from the head of the leg to the top of the rail, along the outer side, mm
}

// ThinWood is what is left beside, above or behind a mortise where it begins to be
// little (common practice, no source).
const ThinWood = 6

// Check returns a *measure.BoundError for the first figure that no mortise can
// have. The other methods take a Mortise that has passed.
func (m Mortise) Check() error {
	return cmp.Or(
		within("mortise.width", m.Width), within("mortise.depth", m.Depth),
		within("mortise.leg", m.Leg), within("mortise.leg-width", m.LegWidth),
		within("mortise.splay", m.Splay), within("mortise.rake", m.Rake), within("mortise.turn", m.Turn),
		m.checkTenon(),
		within("mortise.inset", m.Inset), within("mortise.from-head", m.FromHead),
		m.checkLeg(),
	)
}

func (m Mortise) checkTenon() error {
	lower, upper := m.Edges()
	return cmp.Or(
		within("mortise.edge", math.Abs(m.Shoulder().Edge)),
		within("mortise.tenon", m.Tenon),
		measure.Below("mortise.tenon", measure.Length(m.Tenon), "mortise.width", measure.Length(m.Width), "tenon.third"),
		within("mortise.length", m.Long),
		within("mortise.lower", m.LowerCut), within("mortise.upper", m.UpperCut),
		measure.Above("mortise.tenon-width", measure.Length(upper-lower), "", measure.Length(0), "mortise.less-off"),
		within("mortise.haunch", float64(m.Haunch)), within("mortise.haunch-length", m.HaunchLong),
		measure.Below("mortise.haunch-length", measure.Length(m.Stub()), "mortise.length", measure.Length(m.Length()), ""),
	)
}

// checkLeg asks what is left of the leg.
func (m Mortise) checkLeg() error {
	outer, frame := m.Beside()
	wood := func(figure measure.ID, mm float64, hint measure.ID) error {
		return measure.Above(figure, measure.Length(mm), "", measure.Length(0), hint)
	}
	return cmp.Or(
		wood("mortise.outer-wood", outer, "mortise.thinner-tenon"),
		wood("mortise.frame-wood", frame, "mortise.thinner-tenon"),
		wood("mortise.above", m.Above(), "mortise.haunch-or-lower"),
		measure.AtMost("mortise.into-leg", measure.Length(m.IntoLeg()), "mortise.leg", measure.Length(m.Leg), "mortise.through"),
	)
}

// Shoulder returns the shoulder of the rail.
func (m Mortise) Shoulder() Shoulder { return LeaningShoulder(m.Splay, m.Rake, m.Turn) }

// Third returns the thickness of the tenon: Tenon, or a third of Width, the
// ordinary share (Noyes, Handwork in Wood, 1910).
func (m Mortise) Third() float64 { return cmp.Or(m.Tenon, m.Width/3) }

// Through reports whether the tenon goes through the leg.
func (m Mortise) Through() bool { return m.IntoLeg() >= m.Leg }

// Length returns how far the trimmed tenon runs along the rail.
func (m Mortise) Length() float64 { return cmp.Or(m.Long, m.Leg/m.Shoulder().Square()) }

// RoughLength returns how far the tenon is sawn: over length where it is trimmed
// flush with the back of the leg.
func (m Mortise) RoughLength() float64 {
	if m.Through() {
		return m.Length() + m.Over
	}
	return m.Length()
}

// IntoLeg returns how deep the tenon goes, square to the side that is mortised.
func (m Mortise) IntoLeg() float64 {
	if m.Long == 0 {
		return m.Leg
	}
	return m.Long * m.Shoulder().Square()
}

// Clearance returns what is left between a blind tenon and the bottom of its mortise:
// Clear, or half of the wood behind where that is less.
func (m Mortise) Clearance() float64 { return math.Min(m.Clear, (m.Leg-m.IntoLeg())/2) }

// Bored returns the depth of the mortise, square to the side that is mortised: as deep
// as the tenon goes, and its clearance.
func (m Mortise) Bored() float64 { return m.IntoLeg() + m.Clearance() }

// Slant returns the depth of the mortise as a bit measures it, along its walls.
func (m Mortise) Slant() float64 { return m.Bored() / m.Shoulder().Square() }

// Groove returns the depth of the groove of the haunch where it meets the mortise, square
// to the side that is mortised, with the same clearance.
func (m Mortise) Groove() float64 { return m.Stub()*m.Shoulder().Square() + m.Clearance() }

// Cheeks returns how deep below the outer side of the rail the two cheeks lie.
func (m Mortise) Cheeks() (outer, frame float64) {
	outer = (m.Width - m.Third()) / 2
	return outer, outer + m.Third()
}

// Edges returns how far above the underside of the rail the edges of the tenon
// lie. Under a haunch a third of the depth is cut off (common practice, no source).
func (m Mortise) Edges() (lower, upper float64) {
	off := m.UpperCut
	if m.Haunch != NoHaunch {
		off = cmp.Or(off, m.Depth/3)
	}
	return m.LowerCut, m.Depth - off
}

// Stub returns the length of the haunch where it meets the tenon, along the rail:
// it is square in section unless it was given (common practice, no source).
func (m Mortise) Stub() float64 {
	if m.Haunch == NoHaunch {
		return 0
	}
	return cmp.Or(m.HaunchLong, m.Third())
}

// Profile returns the tenon and its haunch beside the shoulder, from the
// underside up: how far each corner stands out along the rail, and its height. All
// ends run parallel to the shoulder.
func (m Mortise) Profile(length float64) []geometry.Point {
	lower, upper := m.Edges()
	p := []geometry.Point{geometry.Pt(0, lower), geometry.Pt(length, lower), geometry.Pt(length, upper), geometry.Pt(m.Stub(), upper)}
	switch m.Haunch {
	case SquareHaunch:
		p = append(p, geometry.Pt(m.Stub(), m.Depth), geometry.Pt(0, m.Depth))
	case SlopingHaunch:
		p = append(p, geometry.Pt(0, m.Depth))
	}
	return p
}

// OnLeg returns the place of a point of the shoulder on the rail side of the leg,
// which lies with its head to the left: x along it from the head, at its corner with
// the outer side, y from that corner towards the frame side. The rail comes
// from the reader.
func (m Mortise) OnLeg(y, depth float64) geometry.Point {
	up, across := m.Shoulder().OnLeg(y, depth)
	top, _ := m.Shoulder().OnLeg(m.Depth, 0)
	return geometry.Pt(m.FromHead+top-up, m.Inset+across)
}

// Mouth returns the corners of the mortise on the rail side of the leg, the lower
// ones first, between two heights on the rail.
func (m Mortise) Mouth(lower, upper float64) []geometry.Point {
	outer, frame := m.Cheeks()
	return []geometry.Point{m.OnLeg(lower, outer), m.OnLeg(lower, frame), m.OnLeg(upper, frame), m.OnLeg(upper, outer)}
}

// Floor returns where a corner of the mouth stands at the bottom of the mortise.
func (m Mortise) Floor(mouth geometry.Point) geometry.Point {
	down, out := m.Shoulder().Drift()
	return mouth.Add(geometry.Pt(down, -out).Mul(m.Bored()))
}

// box is the bounds of the mortise from its mouth to its floor.
func (m Mortise) box() geometry.Rect {
	mouth := m.Mouth(m.Edges())
	return geometry.Bounds(append(mouth, m.Floor(mouth[0]), m.Floor(mouth[1]), m.Floor(mouth[2]), m.Floor(mouth[3]))...)
}

// Beside returns the least wood on the two sides of the mortise.
func (m Mortise) Beside() (outer, frame float64) {
	box := m.box()
	return box.Min.Y, m.LegWidth - box.Max.Y
}

// Above returns the least wood between the mortise and the head of the leg, which
// is square or trimmed to the top of the rail: a haunch lies in it.
func (m Mortise) Above() float64 { return m.box().Min.X }

// Behind returns the wood that is left behind the mortise, none where it goes through.
func (m Mortise) Behind() float64 { return math.Max(0, m.Leg-m.Bored()) }

// LongSide and Across return the size of the mortise along the leg and across it.
func (m Mortise) LongSide() float64 {
	mouth := m.Mouth(m.Edges())
	return mouth[0].Distance(mouth[3])
}
func (m Mortise) Across() float64 {
	mouth := m.Mouth(m.Edges())
	return mouth[1].Y - mouth[0].Y
}

// EndOffSquare returns how far the ends of the mortise run off square on the leg,
// positive where they lie nearer the head at the frame side.
func (m Mortise) EndOffSquare() float64 {
	mouth := m.Mouth(m.Edges())
	d := mouth[1].Sub(mouth[0])
	return math.Atan(-d.X / d.Y)
}

// Lean returns how far the walls of the mortise lean off square to the leg:
// towards the foot, and towards the outer side.
func (m Mortise) Lean() (foot, outer float64) {
	down, out := m.Shoulder().Drift()
	return math.Atan(down), math.Atan(out)
}

// GlueArea returns the area of both cheeks of the tenon in mm², without haunch.
// A cheek is a parallelogram as long as the tenon.
func (m Mortise) GlueArea() float64 {
	lower, upper := m.Edges()
	return 2 * m.Length() * (upper - lower)
}

// Symmetric reports whether the joint is alike from outer side and frame side: one
// drawing of the rail then serves both hands.
func (m Mortise) Symmetric() bool { return m.Shoulder().Edge == 0 }
