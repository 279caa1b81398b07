package aprons

import (
	"math"
	"slices"

	"rodsheet/geometry"
	"rodsheet/geometry/joint"
	"rodsheet/geometry/lists"
	"rodsheet/geometry/measure"
	"rodsheet/geometry/solid"
	"rodsheet/templates/piece"
	"rodsheet/templates/piece/design"
	"rodsheet/templates/piece/kind"
)

// steepestBlade is what the blade of a table saw tilts at most, rad.
var steepestBlade = measure.Radians(45)

// Checks returns what is asked of a table that can be worked out.
func (m Model) Checks() []kind.Check {
	u, f := m.Design.Unit, m.Design.Frame
	out := []kind.Check{texts.Found("aprons.clash", m.clash())}
	for _, row := range m.Rows {
		ids := rowChecks[row.Kind]
		end := m.endOnLeg(row)
		onLeg := end > -piece.Slip // beside it a shoulder has no tenon and no mortise to speak of
		out = append(out, texts.AtLeast(u, ids.end, end, 0, kind.Fail))
		if onLeg {
			out = append(out, texts.AtLeast(u, ids.mitre, m.endBeyond(row), 0, kind.Fail))
		}
		out = append(out, texts.AtLeast(u, ids.meet, m.tenonsApart(row), 0, kind.Fail))
		if onLeg {
			wood := m.outside(row)
			out = append(out, texts.AtLeast(u, ids.outside, wood, joint.ThinWood, m.thin(wood)), texts.AtLeast(u, ids.hold, m.tenonShort(row), leastTenon(m.Design.Written), kind.Warn))
		}
	}
	if m.Rows[0].Joint != design.Bridled {
		out = append(out, texts.AtLeast(u, "aprons.above-tenon", m.Rows[0].Upper, joint.ThinWood, kind.Warn))
	}
	if l := m.legs[0]; l.taper.Top > 0 {
		out = append(out, texts.AtLeast(u, "aprons.taper-below", l.taper.Start-m.below(m.Rows[0], 0), 0, kind.Fail))
		if len(m.Rows) > 1 {
			out = append(out, texts.AtLeast(u, "aprons.taper-at-stretcher", m.clearOfStart(m.Rows[1]), 0, kind.Fail))
		}
	}
	if bow, ok := m.Rows[0].Rails[0].Arc(); ok {
		deep := m.deep(m.Rows[0], 0)
		out = append(out, texts.AtLeast(u, "aprons.over-arch", deep-bow.Rise, deep/2, kind.Warn))
	}
	out = append(out, texts.Limited(u, "aprons.tilt", measure.Angle(m.steepest()), measure.IsAtMost, measure.Angle(steepestBlade), kind.Warn))
	if high := m.Design.Saw.Highest; high > 0 {
		out = append(out, texts.AtMost(u, "aprons.blade", m.highest(), high, kind.Warn))
	}
	if f.Top.None {
		return out
	}
	bare := kind.Warn
	if m.overLegs() < -math.Sqrt2*m.legs[0].size { // a head wholly outside
		bare = kind.Fail
	}
	out = append(out, texts.AtLeast(u, "aprons.overhang", m.overLegs(), 0, bare))
	if s := m.Weakest(); s.NeverTips() {
		out = append(out, texts.Found("aprons.never-tips", kind.Pass))
	} else {
		out = append(out, texts.Limited(u, "aprons.tipping-load", measure.Mass(s.TippingLoad(0)), measure.IsAtLeast, measure.Mass(design.HandLoad), kind.Warn))
	}
	if moves, ok := m.TopMoves(); ok && f.Top.Fixing == design.NoFixing {
		out = append(out, texts.AtMost(u, "aprons.top-held", moves, felt, kind.Warn))
	}
	return append(append(out, m.screwChecks()...), m.buttonChecks()...)
}

// overLegs returns how far the top reaches over the heads of the legs. They come nearest
// to its edge at their corner arrises, which stand in its corners.
func (m Model) overLegs() float64 { return slices.Min(m.overCorners()) }

// overCorners returns the same of each leg.
func (m Model) overCorners() []float64 {
	return lists.Map(planCorners(m.Design.Frame), func(p geometry.Point) float64 { return m.TopShape().Inside(p) })
}

// felt is the change in mm from which a top that is held fast splits or warps its frame
// (common practice, no source).
const felt = 0.5

// rowChecks are the checks that aprons and stretchers have alike.
var rowChecks = [...]struct{ end, mitre, meet, outside, hold measure.ID }{
	Aprons:     {"aprons.end-on-leg", "aprons.mitre", "aprons.tenons-meet", "aprons.outside-mortise", "aprons.tenon-hold"},
	Stretchers: {"aprons.stretcher-end", "aprons.stretcher-mitre", "aprons.stretcher-tenons", "aprons.stretcher-mortise", "aprons.stretcher-hold"},
}

// leastTenon in mm is how long a tenon is at least, to hold by glue (common practice, no
// source).
func leastTenon(u measure.Unit) float64 { return u.Round(8, 5.0/16) }

// tenonShort is the shortest of all tenons of a row.
func (m Model) tenonShort(row *Row) float64 { return lists.Least(m.sorts(row), Rail.mean) }

// thin grades wood that is left beside a cut: what is hardly there breaks out.
func (m Model) thin(mm float64) kind.Grade {
	if mm < 1 {
		return kind.Fail
	}
	return kind.Warn
}

// clash grades whether a rail shares wood with the next one beside their leg, or in it;
// two tenons are asked by themselves. All corners are alike, or mirror images.
func (m Model) clash() kind.Grade {
	for _, row := range m.Rows {
		r, other := row.Rails[1], row.Rails[0]
		a, b := solid.Stock("", r.whole()[0]), solid.Stock("", other.whole()[0])
		if len(solid.Clash(a, other.uncut("")))+len(solid.Clash(r.uncut(""), b)) > 0 {
			return kind.Fail
		}
	}
	return kind.Pass
}

// inside returns how deep a point lies below those sides of a leg that do not take the
// rails of an end: the least of them.
func (m Model) inside(e End, p solid.Vec) float64 {
	l, least := m.legs[e.corner], math.Inf(1)
	for k := range l.outer {
		least = math.Min(least, -solid.Through(l.at, l.outer[k]).Height(p))
	}
	return math.Min(least, -l.sideAt(1-e.takes, p).Height(p))
}

// sideAt returns a side that takes rails as it is at the height of a point.
func (l leg) sideAt(k int, p solid.Vec) solid.Plane {
	if l.taper.Top > 0 && l.down(p) > l.taper.Start {
		return l.tapered(k)
	}
	return l.straight(k)
}

// least returns the least of a figure of the ends of a row. The right end of a rail is the
// mirror image of its left end, so that of each sort is asked.
func (m Model) least(row *Row, of func(Rail, End) float64) float64 {
	return lists.Least(m.sorts(row), func(r Rail) float64 { return of(r, r.Ends[left]) })
}

// endOnLeg returns how far within its side of the leg the shoulder of a rail lies.
func (m Model) endOnLeg(row *Row) float64 {
	return m.least(row, func(_ Rail, e End) float64 {
		return lists.Least(e.Mouth[:], func(p solid.Vec) float64 { return m.inside(e, p) })
	})
}

// endBeyond returns how far the ends of rails lie beyond their shoulders, at the arris where
// they come nearest: an end is sawn through the whole rail, not through its tenon only.
func (m Model) endBeyond(row *Row) float64 {
	return m.least(row, func(r Rail, e End) float64 {
		end := r.end(left)
		return lists.Least(e.Mouth[:], func(p solid.Vec) float64 { return -end.Height(p) })
	})
}

// outside returns the least wood between a mortise and a side of its leg that is none
// it opens to.
func (m Model) outside(row *Row) float64 {
	return m.least(row, func(_ Rail, e End) float64 {
		return lists.Least(corners(e.mortise()[0]), func(p solid.Vec) float64 { return m.inside(e, p) })
	})
}

// tenonsApart returns how far the tenons of two rails stay from each other.
func (m Model) tenonsApart(row *Row) float64 {
	short := func(e End) float64 {
		return lists.Least(corners(e.tenon()[0]), func(p solid.Vec) float64 { return -e.meets.Height(p) })
	}
	return short(row.Rails[1].Ends[left]) + short(row.Rails[0].Ends[right])
}

// corners returns the corners of a solid, each several times.
func corners(s solid.Solid) []solid.Vec {
	return lists.Flat(s.Faces(), func(f solid.Face) []solid.Vec { return f.Corners })
}

// clearOfStart returns how far the ends of a row stay clear of where the taper of their
// legs starts; negative where they lie across it.
func (m Model) clearOfStart(row *Row) float64 {
	return m.least(row, func(_ Rail, e End) float64 {
		l := m.legs[e.corner]
		first, last := l.span(e.Mouth[:])
		return math.Max(first-l.taper.Start, l.taper.Start-last)
	})
}

// deep returns how deep a rail is, measured on its outer side.
func (m Model) deep(row *Row, side int) float64 {
	if row.Of.Plumb {
		return row.Of.Depth
	}
	return row.Of.Depth / math.Cos(m.sides[side].lean)
}

// highest returns how high the blade stands above the table to cut through the thickest
// part: its height is measured square to the table, however it is tilted.
func (m Model) highest() float64 {
	most := m.legs[0].Blank().Thickness
	for _, row := range m.Rows {
		most = math.Max(most, row.Of.Thickness)
	}
	return most
}
