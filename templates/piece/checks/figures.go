package checks

import (
	"math"
	"slices"

	"rodsheet/geometry/joint"
	"rodsheet/geometry/lists"
	"rodsheet/geometry/measure"
	"rodsheet/geometry/solid"
	"rodsheet/templates/piece"
	"rodsheet/templates/piece/design"
)

// A Group is the figures of one thing.
type Group struct {
	ID      measure.ID
	Heading Remark // where the group's own name does not do
	Figures []Figure
	Notes   []Remark // what no figure says
}

// A Figure is one worked-out size. Its ID is unique among those of a piece.
type Figure struct {
	ID    measure.ID
	Value measure.Quantity
	Of    []measure.Quantity // figures in its name
}

// add appends a figure, with those that its name holds.
func (g *Group) add(id measure.ID, value measure.Quantity, of ...measure.Quantity) {
	g.Figures = append(g.Figures, Figure{id, value, of})
}

// note appends what no figure says.
func (g *Group) note(id measure.ID, figures ...measure.Quantity) {
	g.Notes = append(g.Notes, remark(g.ID+"."+id, figures...))
}

// groups returns all figures of the piece by heading, in the order of the
// bench. Distances along a stretcher are from its mid-length.
func (m model) groups() []Group {
	p := m.Piece
	groups := []Group{ringGroup(p), stretcherGroup(p), lapGroup(p), legGroup(p), bridleGroup(p), m.feetGroup()}
	if p.Design.Top.Kind != design.NoTop {
		groups = append(groups, topGroup(p))
	}
	return append(groups, m.standingGroup(), m.weightGroup(), movementGroup(p))
}

func ringGroup(p piece.Piece) Group {
	r := p.Frame.Ring
	g := Group{ID: "ring"}
	g.add("ring.stretchers", measure.Number(float64(r.Sides)))
	g.add("ring.inside", measure.Length(r.Inside))
	g.add("ring.to-ring-side", measure.Length(r.Polygon().Apothem))
	g.add("ring.to-axis", measure.Length(r.Axis()))
	g.add("ring.to-outer-side", measure.Length(r.Polygon().Offset(r.Width).Apothem))
	g.add("ring.crossing", measure.Angle(r.Angle()))
	if !open(p) {
		return g
	}
	slide := r.Opening(p.Apart())
	g.add("ring.opens-along", measure.Length(slide.X))
	g.add("ring.opens-outward", measure.Length(slide.Y))
	g.note("opens")
	return g
}

func stretcherGroup(p piece.Piece) Group {
	r := p.Frame.Ring
	g := Group{ID: "stretcher"}
	g.add("stretcher.width", measure.Length(r.Width))
	g.add("stretcher.depth", measure.Length(r.Depth))
	g.add("stretcher.finished", measure.Length(p.FinishedStretcher()))
	g.add("stretcher.mid-to-leg-end", measure.Length(p.LegReach))
	g.add("stretcher.mid-to-plain-end", measure.Length(p.PlainReach))
	g.add("stretcher.least-finished", measure.Length(p.LegReach+r.Reach(0)))
	g.add("stretcher.sawn", measure.Length(p.RoughStretcher()))
	g.add("stretcher.rough", measure.Length(p.Roughed(p.SawnStretcher()).Length))
	inner, outer := r.Shoulders(0)
	g.add("stretcher.ring-side.inner-shoulder", measure.Length(inner))
	g.add("stretcher.ring-side.outer-shoulder", measure.Length(outer))
	inner, outer = r.Shoulders(r.Width)
	g.add("stretcher.outer-side.inner-shoulder", measure.Length(inner))
	g.add("stretcher.outer-side.outer-shoulder", measure.Length(outer))
	ends := [...]measure.ID{design.FlushEnd: "flush", design.OpenEnd: "open", design.ClosedEnd: "closed"}
	g.note(ends[p.Design.Ring.Plain], measure.Length(p.Design.Ring.Slack))
	return g
}

func lapGroup(p piece.Piece) Group {
	l := p.EndLap()
	g := Group{ID: "lap"}
	square, along := l.UsualRuleExcess()
	g.add("lap.off-square", measure.Angle(l.OffSquare()))
	g.add("lap.bevel", measure.Angle(l.Bevel()))
	g.add("lap.blade-height", measure.Length(l.BladeHeight()))
	g.add("lap.kerf", measure.Length(p.Kerf))
	g.add("lap.edge-length", measure.Length(l.EdgeLength()))
	g.add("lap.spacer", measure.Length(l.Spacer()))
	g.add("lap.stop", measure.Length(l.Stop()))
	g.add("lap.usual-rule.square", measure.Length(square))
	g.add("lap.usual-rule.along", measure.Length(along))
	return g
}

func legGroup(p piece.Piece) Group {
	l := p.Frame.Leg
	base := gaugeBase(p.Design.Unit)
	g := Group{ID: "leg"}
	g.add("leg.breadth", measure.Length(l.Breadth))
	g.add("leg.thickness", measure.Length(l.Thickness))
	g.add("leg.height", measure.Length(l.Height))
	g.add("leg.splay", measure.Angle(l.Splay))
	g.add("leg.splay-rise", measure.Length(base*math.Tan(l.Splay)), measure.Length(base))
	g.add("leg.between-level-cuts", measure.Length(p.LegEdge()))
	g.add("leg.finished", measure.Length(p.FinishedLeg()))
	g.add("leg.sawn", measure.Length(p.SawnLeg().Length))
	g.add("leg.rough", measure.Length(p.Roughed(p.SawnLeg()).Length))
	g.add("leg.ends.off-square", measure.Angle(l.Splay))
	g.add("leg.ends.bevel", measure.Angle(math.Pi/2-l.Splay))
	g.add("leg.section.along", measure.Length(l.Section()))
	g.add("leg.section.across", measure.Length(l.Thickness))
	g.add("leg.back-at-top", measure.Length(l.Back(0)))
	g.add("leg.stretcher-side-at-top", measure.Length(l.StretcherSide(0)))
	addTaper(p, &g)
	g.note("parallel")
	return g
}

// gaugeBase is the base over which a bevel gauge is set: 200 mm or 8 in.
func gaugeBase(u measure.Unit) float64 { return u.Round(200, 8) }

func addTaper(p piece.Piece, g *Group) {
	t := p.Taper
	if t == nil {
		return
	}
	g.add("leg.taper.start", measure.Length(t.Start))
	g.add("leg.taper.joint-ends", measure.Length(leastTaperStart(p)))
	g.add("leg.taper.foot", measure.Length(t.Foot))
	g.add("leg.taper.to-edge", measure.Angle(t.ToEdge()))
	g.add("leg.taper.loss", measure.Length(t.Loss()))
	if t.Faces.Symmetric() {
		g.add("leg.taper.included", measure.Angle(t.Included()))
	}
}

func bridleGroup(p piece.Piece) Group {
	stretcher, leg := p.Bridle.Stretcher(), p.Bridle.Head()
	upper, lower := stretcher.Cheeks()
	onEnd, onHead := p.CutHeights()
	long := p.HeadProud() - leg.End(leg.Width) // of the trimmed tip, on the stretcher side, past the end on the back
	g := Group{ID: "bridle", Heading: remark("bridle.in-stretcher")}
	if p.Bridle.Mortise == joint.MortiseInLeg {
		g.Heading = remark("bridle.in-leg")
	}
	g.add("bridle.tenon", measure.Length(p.Bridle.Third()))
	g.add("bridle.cheek", measure.Length(upper))
	g.add("bridle.far-cheek", measure.Length(lower))
	g.add("bridle.off-square", measure.Angle(stretcher.OffSquare))
	g.add("bridle.stretcher-shoulder.underside", measure.Length(stretcher.Shoulder(0)))
	g.add("bridle.stretcher-shoulder.top", measure.Length(stretcher.Shoulder(stretcher.Width)))
	g.add("bridle.leg-shoulder.stretcher-side", measure.Length(leg.Shoulder(leg.Width)+long))
	g.add("bridle.leg-shoulder.back", measure.Length(leg.Shoulder(0)+long))
	g.add("bridle.cut-height.stretcher", measure.Length(onEnd))
	g.add("bridle.cut-height.leg", measure.Length(onHead))
	g.add("bridle.clearance", measure.Length(p.Frame.Clearance()))
	g.add("bridle.filler-strip", measure.Angle(stretcher.OffSquare))
	return g
}

// topGroup is the figures of the top.
func topGroup(p piece.Piece) Group {
	g := Group{ID: "top"}
	g.add("top.thickness", measure.Length(p.Design.Top.Thickness))
	addOutline(p, &g)
	g.add("top.area", measure.Area(p.TopArea()))
	sides, corners := p.Overhangs()
	g.add("top.past-sides", measure.Length(slices.Min(sides)))
	g.add("top.past-corners", measure.Length(slices.Min(corners)))
	if p.Design.Top.PadHeight() > 0 {
		centre := p.PadPoint(0)
		g.add("top.pad.mid-to-centre", measure.Length(p.PadAt()))
		g.add("top.pad.from-ring-side", measure.Length(p.Frame.Ring.Width/2))
		g.add("top.pad.circle", measure.Length(2*centre.Norm()))
		g.add("top.pad.spread", measure.Length(centre.Distance(p.PadPoint(1))))
		g.add("top.pad.to-rim", measure.Length(padToRim(p)))
	}
	return g
}

// addOutline adds the sizes of the outline.
func addOutline(p piece.Piece, g *Group) {
	if p.Design.Top.Outline == design.RoundTop {
		g.add("top.diameter", measure.Length(2*p.TopRadius()))
		return
	}
	if p.Design.Top.Outline == design.RingTop {
		r := p.RegularTop()
		g.add("top.side", measure.Length(r.Side()))
		g.add("top.apothem", measure.Length(r.Apothem))
		if p.Design.Top.Corner == design.ClippedCorner && p.Design.Top.CornerSize > 0 {
			g.add("top.flat", measure.Length(r.ClipFlat(p.Design.Top.CornerSize)))
		}
	}
	size := p.TopShape().Size()
	g.add("top.along", measure.Length(size.X))
	g.add("top.across", measure.Length(size.Y))
}

func (m model) feetGroup() Group {
	p := m.Piece
	g := Group{ID: "feet"}
	g.add("feet.mid-to-back", measure.Length(p.Foot()))
	g.add("feet.circle.radius", measure.Length(p.FootRadius()))
	g.add("feet.circle", measure.Length(2*p.FootRadius()))
	g.add("feet.spread", measure.Length(p.FootSpread()))
	foot := m.footprint()
	outermost := lists.Most(foot, func(c solid.Vec) float64 { return math.Hypot(c.X, c.Y) })
	g.add("feet.outermost-circle", measure.Length(2*outermost))
	size := extentOf(foot).Size()
	g.add("feet.along", measure.Length(size.X))
	g.add("feet.across", measure.Length(size.Y))
	g.add("feet.overall", measure.Length(p.Overall()))
	return g
}

// footprint returns the corners by which the first foot, finished, touches the
// floor: the lowest of its solids.
func (m model) footprint() []solid.Vec {
	leg := m.parts()[1]
	floor := leg.Bounds().Min.Z
	var out []solid.Vec
	for _, s := range leg.Pieces {
		for _, f := range s.Faces() {
			for _, c := range f.Corners {
				if c.Z <= floor+piece.Slip {
					out = append(out, c)
				}
			}
		}
	}
	return out
}

// extentOf returns the box round points, of which there must be one.
func extentOf(points []solid.Vec) solid.Extent {
	e := solid.Extent{Min: points[0], Max: points[0]}
	for _, c := range points[1:] {
		e = e.Union(solid.Extent{Min: c, Max: c})
	}
	return e
}

func (m model) weightGroup() Group {
	frame, top := m.frameMass(), m.TopMass()
	g := Group{ID: "weight"}
	g.add("weight.frame", measure.Mass(frame))
	if m.Design.Top.Kind != design.NoTop {
		g.add("weight.top", measure.Mass(top))
	}
	g.add("weight.whole", measure.Mass(frame+top))
	g.note("of-wood", measure.Number(m.Density()))
	return g
}
