package drawings

import (
	"math"
	"strings"

	"rodsheet/geometry"
	"rodsheet/geometry/lists"
	"rodsheet/geometry/measure"
	"rodsheet/geometry/solid"
	"rodsheet/templates"
	"rodsheet/templates/piece"
	"rodsheet/templates/piece/checks"
	"rodsheet/templates/piece/design"
	"rodsheet/templates/piece/kind"
	"rodsheet/templates/piece/shop"
	"rodsheet/templates/piece/wording"
)

// A Stand is a piece put together, to be looked at from more than one side.
type Stand struct {
	piece piece.Piece
	found []checks.Check // of its size
	scene scene
}

// NewStand puts a piece together, of which some checks found what clashes.
func NewStand(p piece.Piece, found []checks.Check) Stand { return Stand{p, found, sceneOf(p)} }

// Show returns what a look shows of a piece.
func (t Stand) Show(l kind.Look) kind.Shown {
	p := t.piece
	parts, s := t.apart(l)
	var out kind.Shown
	place := map[checks.Part]int{}
	for i, part := range parts {
		place[part] = i
		out.Parts = append(out.Parts, kind.Seen{Kind: part.Kind, Name: nameOf(p, part)})
	}
	for _, patch := range s.frame.Patches(l.View) {
		seen := &out.Parts[patch.Part]
		seen.Areas = append(seen.Areas, templates.Area{Tone: kind.ToneOf(patch.N, l.View), Points: patch.Corners})
	}
	for i, pad := range s.pads {
		part := checks.Part{Kind: checks.Pad, Number: i + 1}
		out.Parts = append(out.Parts, kind.Seen{Kind: part.Kind, Name: nameOf(p, part), Areas: pad.faces(l.View)})
	}
	for _, top := range s.top {
		part := checks.Part{Kind: checks.Top}
		seen := kind.Seen{Kind: part.Kind, Name: nameOf(p, part), Glass: p.Design.Top.Kind == design.GlassTop, Areas: top.faces(l.View)}
		if seen.Glass {
			seen.Areas = []templates.Area{{Points: top.silhouette(l.View)}}
		}
		out.Parts = append(out.Parts, seen)
	}
	out.Strokes = drawn(p, s, l.View, false).Strokes
	if l.Apart == 0 && !l.Close {
		out.Clashes = clashes(p, t.found, l.View)
	}
	switch {
	case l.Apart > 0 || l.Close:
	case l.View == kind.FromAbove.View:
		out.Figures, out.Handles = planFigures(p)
	case l.View == kind.FromFront.View:
		out.Figures, out.Handles = frontFigures(p)
	}
	return out
}

// apart returns the parts of the frame as they stand, in their order, and what is
// looked at. The piece is turned half round, which brings stretcher 1 to the front.
// Apart, the ring is open, the legs hang below and the top above; of a close look all
// but a neighbourhood of the joints is cut away.
func (t Stand) apart(l kind.Look) (parts []checks.Part, s scene) {
	p := t.piece
	if l.Apart == 0 && !l.Close {
		for i := range p.Frame.Ring.Sides {
			parts = append(parts, checks.Part{Kind: checks.Stretcher, Number: i + 1}, checks.Part{Kind: checks.Leg, Number: i + 1})
		}
		return parts, t.scene
	}
	half := solid.RotateZ(math.Pi)
	down := solid.Translate(shop.LegPlace(p).X.Mul(-l.Apart * jointApart * p.Frame.Ring.Depth))
	var bodies []solid.Part
	add := func(of measure.ID, i int, b solid.Part) {
		parts, bodies = append(parts, checks.Part{Kind: of, Number: i + 1}), append(bodies, b)
	}
	if l.Close {
		own, last := p.Place(0), p.Frame.Ring.Sides-1
		out := own.Then(half)
		up := 1.6 * p.Frame.Ring.Depth * l.Apart
		if !p.Frame.Over {
			up = -up
		}
		cut := nearJoints(p)
		neighbour := p.Stretcher().Transform(p.Place(last).Then(rigidInverse(own)))
		add(checks.Stretcher, 0, cut(p.Stretcher()).Transform(out))
		add(checks.Stretcher, last, cut(neighbour).Transform(solid.Translate(solid.V(0, 0, up)).Then(out)))
		add(checks.Leg, 0, cut(p.Leg()).Transform(down.Then(out)))
		return parts, scene{frame: solid.NewScene(bodies)}
	}
	slide := 1.8 * l.Apart * p.Apart()
	for i := range p.Frame.Ring.Sides {
		at := p.PlaceOpen(i, slide).Then(half)
		add(checks.Stretcher, i, p.Stretcher().Transform(at))
		add(checks.Leg, i, p.Leg().Transform(down.Then(at)))
	}
	s.frame = solid.NewScene(bodies)
	rise := l.Apart * 0.3 * p.Overall()
	s.pads, s.top = raised(t.scene.pads, rise/2), raised(t.scene.top, rise)
	return parts, s
}

// nearJoints returns what cuts away all of a part, in the frame of stretcher 1, but a
// cube about the middle between its lap and its leg.
func nearJoints(p piece.Piece) func(solid.Part) solid.Part {
	r, leg := p.Frame.Ring, p.Frame.Leg
	inner, _ := r.Shoulders(r.Width / 2)
	mid := solid.V((inner+leg.Back(0))/2, r.Width/2, r.Depth/2)
	reach := (leg.Back(0)-inner)/2 + 2.2*math.Max(r.Width, r.Depth)
	return func(b solid.Part) solid.Part { return kind.Near(b, mid, reach) }
}

func raised(lids []lid, by float64) []lid {
	return lists.Map(lids, func(l lid) lid { return lid{l.outline, l.low + by, l.high + by} })
}

// clashes returns the outlines of what the parts share that a check found to clash.
func clashes(p piece.Piece, found []checks.Check, v solid.View) [][]geometry.Point {
	var out [][]geometry.Point
	half := solid.RotateZ(math.Pi)
	byID := map[measure.ID]solid.Part{}
	for _, c := range found {
		if c.Question != "clash" || c.Grade != kind.Fail {
			continue
		}
		if len(byID) == 0 {
			for _, b := range p.Parts() {
				byID[measure.ID(strings.ReplaceAll(b.Name, " ", "-"))] = b
			}
		}
		for _, s := range solid.Clash(byID[c.Of.A.ID()], byID[c.Of.B.ID()]) {
			out = append(out, v.Silhouette(s.Transform(half)))
		}
	}
	return out
}

// nameOf names a part with its finished size.
func nameOf(p piece.Piece, of checks.Part) string {
	name, top := wording.PartName(of), p.Design.Top
	switch of.Kind {
	case checks.Stretcher:
		return say(partOfSize, name, p.Bare(p.FinishedStretcher()), p.Bare(p.Frame.Ring.Width), p.MM(p.Frame.Ring.Depth))
	case checks.Leg:
		return say(partOfSize, name, p.Bare(p.FinishedLeg()), p.Bare(p.Frame.Leg.Breadth), p.MM(p.Frame.Leg.Thickness))
	case checks.Pad:
		return say(roundOfSize, name, p.Bare(top.Pads.Diameter), p.MM(top.Pads.Height))
	}
	if top.Outline == design.RoundTop {
		return say(roundOfSize, name, p.Bare(2*p.TopRadius()), p.MM(top.Thickness))
	}
	room := topBounds(p)
	return say(partOfSize, name, p.Bare(room.Width()), p.Bare(room.Height()), p.MM(top.Thickness))
}

// leanKeys are what fixes the lean of the legs.
var leanKeys = [...]design.Key{design.BySplay: "legs.splay", design.ByFootCircle: "legs.foot-circle", design.ByFootSpread: "legs.foot-spread"}

// RimKey returns what fixes the size of a top.
func RimKey(p piece.Piece) design.Key {
	if p.Design.Top.Outline == design.RoundTop && p.Design.Top.Diameter > 0 {
		return "top.diameter"
	}
	return "top.overhang"
}

// HeightKey and LeanKey return what fixes the height of the piece and the lean of
// its legs.
func HeightKey(p piece.Piece) design.Key {
	if p.Design.Legs.To == design.ToFrame {
		return "legs.frame-height"
	}
	return "legs.height"
}

func LeanKey(p piece.Piece) design.Key { return leanKeys[p.Design.Legs.Lean] }

// planFigures are those of the plan: inside of the ring, circle of the feet, top.
func planFigures(p piece.Piece) (out []kind.Dimension, hold []kind.Handle) {
	half := geometry.Rotate(math.Pi)
	inside := p.Frame.Ring.Place(0, 0).Then(half)
	r, side := p.FootRadius(), p.Frame.Ring.Inside
	out = append(out, kind.Dimension{Key: "ring.inside", Text: p.MM(side), Segment: geometry.Segment{A: inside.Apply(geometry.Pt(side/2, 0)), B: inside.Apply(geometry.Pt(-side/2, 0))}})
	low, high := -r, r
	if p.Design.Top.Kind != design.NoTop {
		top := topBounds(p)
		low, high = min(low, -top.Max.Y), max(high, -top.Min.Y)
		if p.Design.Top.Outline != design.FreeOutline {
			at := high + 0.1*r
			out = append(out, kind.Dimension{Key: RimKey(p), Text: say(labels["top"], p.MM(top.Width())), Segment: geometry.Segment{A: geometry.Pt(-top.Max.X, at), B: geometry.Pt(-top.Min.X, at)}})
			hold = append(hold, kind.Handle{ID: "rim", At: geometry.Pt(-top.Min.X, 0)})
		}
	}
	at := low - 0.1*r
	feet := kind.Dimension{Key: "legs.foot-circle", Text: say(labels["feet"], p.MM(2*r)), Segment: geometry.Segment{A: geometry.Pt(-r, at), B: geometry.Pt(r, at)}}
	return append(out, feet), hold
}

// frontFigures are those of the elevation: heights, splay.
func frontFigures(p piece.Piece) (out []kind.Dimension, hold []kind.Handle) {
	foot, head := -p.FootPoint(0).X, -p.Frame.Ring.Place(0, 0).Apply(geometry.Pt(p.Frame.Leg.Back(0), 0)).X
	reach := p.FootRadius()
	if p.Design.Top.Kind != design.NoTop {
		reach = max(reach, -topBounds(p).Min.X, topBounds(p).Max.X)
	}
	frame, all := p.Frame.Leg.Height, p.Overall()
	off := 0.12 * all
	out = []kind.Dimension{
		{Key: "legs.height", Text: say(labels["overall"], p.MM(all)), Segment: upright(-reach-off, 0, all)},
		{Key: LeanKey(p), Text: p.Say(measure.Angle(p.Frame.Leg.Splay)), Segment: geometry.Segment{A: geometry.Pt(foot, 0), B: geometry.Pt(head, frame)}},
	}
	if frame < all {
		out = append(out, kind.Dimension{Key: "legs.frame-height", Text: say(labels["frame"], p.MM(frame)), Segment: upright(reach+off, 0, frame)})
	}
	return out, []kind.Handle{
		{ID: "foot", At: geometry.Pt(foot, 0)},
		{ID: "height", At: geometry.Pt(0, all), Up: true},
	}
}

func upright(x, low, high float64) geometry.Segment {
	return geometry.Segment{A: geometry.Pt(x, low), B: geometry.Pt(x, high)}
}
