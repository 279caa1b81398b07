package checks

import (
	"fmt"
	"math"
	"slices"

	"rodsheet/geometry"
	"rodsheet/geometry/measure"
	"rodsheet/geometry/solid"
	"rodsheet/templates/piece"
	"rodsheet/templates/piece/design"
)

// Groups returns all figures of the piece by heading, in the order of the
// bench. Distances along a stretcher are from its mid-length.
func Groups(p piece.Piece) []Group {
	m := withSolids(p)
	groups := []Group{
		ringGroup(p), stretcherGroup(p), lapGroup(p), legGroup(p), jointGroup(p), m.feetGroup(),
	}
	if p.Design.Top.Kind != design.NoTop {
		groups = append(groups, topGroup(p))
	}
	return append(groups, m.standingGroup(), m.weightGroup(), movementGroup(p))
}

func ringGroup(p piece.Piece) Group {
	r := p.Frame.Ring
	g := Group{Heading: "Ring"}
	g.add("stretchers", measure.Number(float64(r.Sides)))
	g.add("inside, between two corners", measure.Length(r.Inside))
	g.add("centre to inside edge", measure.Length(r.Polygon().Apothem))
	g.add("centre to centre line of the stretcher", measure.Length(r.Axis()))
	g.add("centre to outside edge", measure.Length(r.Polygon().Offset(r.Width).Apothem))
	g.add("crossing angle", measure.Angle(r.Angle()))
	if p.Design.Ring.Plain == design.ClosedEnd {
		return g
	}
	open := r.Opening(p.Apart())
	g.add("each slides along itself to open the ring", measure.Length(open.X))
	g.add("and outward at the same time", measure.Length(open.Y))
	g.Text = []string{"The ring opens when every stretcher slides at once towards its own leg end and outward, level all the while; it closes the same way back."}
	return g
}

func stretcherGroup(p piece.Piece) Group {
	r := p.Frame.Ring
	g := Group{Heading: "Stretcher"}
	g.add("width, in plan", measure.Length(r.Width))
	g.add("depth", measure.Length(r.Depth))
	g.add("finished length, tip to tip", measure.Length(p.FinishedStretcher()))
	g.add("mid-length to the tip of the leg end", measure.Length(p.LegReach))
	g.add("mid-length to the tip of the plain end", measure.Length(p.PlainReach))
	g.add("least finished length, plain end flush", measure.Length(p.LegReach+r.Reach(0)))
	g.add("length at the saw, square ends", measure.Length(p.RoughStretcher()))
	g.add("rough length", measure.Length(p.Roughed(p.SawnStretcher()).Length))
	inner, outer := r.Shoulders(0)
	g.add("inside edge, inner shoulder", measure.Length(inner))
	g.add("inside edge, outer shoulder", measure.Length(outer))
	inner, outer = r.Shoulders(r.Width)
	g.add("outside edge, inner shoulder", measure.Length(inner))
	g.add("outside edge, outer shoulder", measure.Length(outer))
	g.Text = []string{plainWords(p)}
	return g
}

// plainWords says how the plain end differs from the leg end.
func plainWords(p piece.Piece) string {
	const same = "Both ends have the same shoulders, on opposite faces; "
	switch p.Design.Ring.Plain {
	case design.FlushEnd:
		return same + "at the plain end the outer one is left open and the end is cut in line with it."
	case design.ClosedEnd:
		return fmt.Sprintf(same+"at the plain end the outer one stands %s further out, square to the lap, for slack.", p.MM(p.Design.Ring.Slack))
	}
	return same + "at the plain end the outer one is left open: the lap runs out to the end."
}

func lapGroup(p piece.Piece) Group {
	l := p.EndLap()
	g := Group{Heading: "Laps"}
	fromEdge, fromSquare := l.Bevel(), l.OffSquare()
	square, along := l.UsualRuleExcess()
	g.add("gauge from square", measure.Angle(fromSquare))
	g.add("gauge from the edge", measure.Angle(fromEdge))
	g.add("blade height", measure.Length(l.BladeHeight()))
	g.add("kerf", measure.Length(p.Kerf))
	g.add("length along either edge", measure.Length(l.EdgeLength()))
	g.add("spacer", measure.Length(l.Spacer()))
	g.add("stop, from the blade to the square end", measure.Length(l.Stop()))
	g.add("too wide by the usual rule, square to the lap", measure.Length(square))
	g.add("too wide by the usual rule, along the edge", measure.Length(along))
	return g
}

func legGroup(p piece.Piece) Group {
	l := p.Frame.Leg
	g := Group{Heading: "Leg"}
	g.add("breadth, along the stretcher", measure.Length(l.Breadth))
	g.add("thickness", measure.Length(l.Thickness))
	g.add("height to the top of the stretcher", measure.Length(l.Height))
	g.add("splay from plumb", measure.Angle(l.Splay))
	g.add("splay over a base of "+p.MM(gaugeBase(p)), measure.Length(gaugeBase(p)*math.Tan(l.Splay)))
	g.add("true length between the level cuts", measure.Length(p.LegEdge()))
	g.add("finished length, tip to tip", measure.Length(p.FinishedLeg()))
	g.add("length at the saw, square ends", measure.Length(p.SawnLeg().Length))
	g.add("rough length", measure.Length(p.Roughed(p.SawnLeg()).Length))
	g.add("bevel of head and foot from square", measure.Angle(l.Splay))
	g.add("bevel of head and foot from the edge", measure.Angle(math.Pi/2-l.Splay))
	g.add("true section on the level, along the stretcher", measure.Length(l.Section()))
	g.add("true section on the level, across it", measure.Length(l.Thickness))
	g.add("outer face at the stretcher's top", measure.Length(l.Back(0)))
	g.add("inner face at the stretcher's top", measure.Length(l.StretcherSide(0)))
	addTaper(p, &g)
	g.Text = []string{"Head and foot are parallel: both lean the same way along the leg."}
	return g
}

// gaugeBase is the base over which a bevel gauge is set: 200 mm or 8 in.
func gaugeBase(p piece.Piece) float64 {
	if p.Design.Unit == measure.Inch {
		return 8 * measure.MillimetresPerInch
	}
	return 200
}

func addTaper(p piece.Piece, g *Group) {
	t := p.Taper
	if t == nil {
		return
	}
	g.add("taper starts, down the outer edge from the frame's top", measure.Length(t.Start))
	g.add("joint ends there at", measure.Length(leastTaperStart(p)))
	g.add("foot, square to the leg", measure.Length(t.Foot))
	g.add("taper of one face", measure.Angle(t.ToEdge()))
	g.add("one face loses at the foot", measure.Length(t.Loss()))
	if t.Faces.Symmetric() {
		g.add("included angle of the two faces", measure.Angle(t.Included()))
	}
}

func jointGroup(p piece.Piece) Group {
	stretcher, leg := p.Bridle.Stretcher(), p.Bridle.Head()
	upper, lower := stretcher.Cheeks()
	g := Group{Heading: "Bridle, mortise in the " + p.Bridle.Mortise.String()}
	g.add("tenon and slot", measure.Length(p.Bridle.Third()))
	g.add("cheek, each side", measure.Length(upper))
	g.add("far cheek from the face", measure.Length(lower))
	g.add("shoulders from square", measure.Angle(stretcher.OffSquare))
	g.add("stretcher shoulder, underside, from the trimmed tip", measure.Length(stretcher.Shoulder(0)))
	g.add("stretcher shoulder, top", measure.Length(stretcher.Shoulder(stretcher.Width)))
	g.add("leg shoulder, inner edge, from the trimmed tip", measure.Length(leg.Shoulder(leg.Width)-leg.End(leg.Width)+p.HeadProud()))
	g.add("leg shoulder, outer edge", measure.Length(leg.Shoulder(0)-leg.End(leg.Width)+p.HeadProud()))
	onEnd, onHead := p.CutHeights()
	g.add("cut height, stretcher on its rough end", measure.Length(onEnd))
	g.add("cut height, leg on its rough head", measure.Length(onHead))
	g.add("clearance of leg and neighbour", measure.Length(p.Frame.Clearance()))
	g.add("filler strip to hold a part upright", measure.Angle(stretcher.OffSquare))
	return g
}

// topGroup is the figures of the top.
func topGroup(p piece.Piece) Group {
	g := Group{Heading: "Top"}
	if p.Design.Top.Kind == design.NoTop {
		return g
	}
	g.add("thickness", measure.Length(p.Design.Top.Thickness))
	addOutline(p, &g)
	g.add("area", measure.Area(p.TopArea()))
	sides, corners := p.Overhangs()
	g.add("past the outside edge of the ring, mid-length", measure.Length(slices.Min(sides)))
	g.add("past the outside corner of the ring", measure.Length(slices.Min(corners)))
	if p.Design.Top.PadHeight() > 0 {
		centre := padPoint(p, 0)
		g.add("pad, mid-length to centre", measure.Length(p.PadAt()))
		g.add("pad, from the inside edge", measure.Length(p.Frame.Ring.Width/2))
		g.add("pads' centres, on a circle of", measure.Length(2*centre.Norm()))
		g.add("pads' centres, one to the next", measure.Length(centre.Distance(padPoint(p, 1))))
		g.add("pad centre to the edge of the top", measure.Length(padToRim(p)))
	}
	return g
}

// addOutline adds the sizes of the outline.
func addOutline(p piece.Piece, g *Group) {
	switch p.Design.Top.Outline {
	case design.RoundTop:
		g.add("diameter", measure.Length(2*p.TopRadius()))
	case design.RingTop:
		r := p.RegularTop()
		g.add("side between sharp corners", measure.Length(r.Side()))
		g.add("centre to side", measure.Length(r.Apothem))
		if p.Design.Top.Corner == design.ClippedCorner && p.Design.Top.CornerSize > 0 {
			g.add("flat at a clipped corner", measure.Length(r.ClipFlat(p.Design.Top.CornerSize)))
		}
		fallthrough
	default:
		box := geometry.Bounds(p.TopCorners()...)
		size := box.Max.Sub(box.Min)
		g.add("over all, along a stretcher", measure.Length(size.X))
		g.add("over all, square to it", measure.Length(size.Y))
	}
}

func (m model) feetGroup() Group {
	p := m.Piece
	g := Group{Heading: "Feet"}
	g.add("mid-length to the outer edge of the foot", measure.Length(p.Foot()))
	g.add("circle through the outer edges, radius", measure.Length(p.FootRadius()))
	g.add("circle through the outer edges, diameter", measure.Length(2*p.FootRadius()))
	g.add("outer edges, one to the next", measure.Length(p.FootSpread()))
	size := m.footprint().Size()
	g.add("foot on the floor, along the stretcher", measure.Length(size.X))
	g.add("foot on the floor, across it", measure.Length(size.Y))
	g.add("height of the whole", measure.Length(p.Overall()))
	return g
}

// footprint returns where the first foot, finished, touches the floor: the
// lowest corners of its solids.
func (m model) footprint() solid.Extent {
	leg := m.parts[1]
	floor := leg.Bounds().Min.Z
	var e solid.Extent
	found := false
	for _, s := range leg.Pieces {
		for _, f := range s.Faces() {
			for _, c := range f.Corners {
				if c.Z > floor+piece.Slip {
					continue
				}
				if !found {
					e, found = solid.Extent{Min: c, Max: c}, true
				}
				e = e.Union(solid.Extent{Min: c, Max: c})
			}
		}
	}
	return e
}

func (m model) weightGroup() Group {
	p, frame := m.Piece, m.FrameMass(m.parts[0], m.parts[1])
	g := Group{Heading: "Weight"}
	g.add("frame", measure.Mass(frame))
	if p.Design.Top.Kind != design.NoTop {
		g.add("top", measure.Mass(p.TopMass()))
	}
	g.add("whole", measure.Mass(frame+p.TopMass()))
	g.Text = []string{fmt.Sprintf("Wood of %s kg/m³.", p.Say(measure.Number(p.Density())))}
	return g
}
