package drawings

import (
	"math"

	"rodsheet/geometry"
	"rodsheet/geometry/joint"
	"rodsheet/geometry/measure"
	"rodsheet/geometry/solid"
	"rodsheet/templates"
	"rodsheet/templates/piece"
	"rodsheet/templates/piece/design"
	"rodsheet/templates/piece/shop"
)

// namesJob shows what every face, end and edge is called, what is pencilled on the
// parts, each joint apart, and how the ring goes together. Its words are those of
// all sizes, so it shows the first.
func namesJob(p piece.Piece) templates.Section {
	out := templates.Section{Panels: marksPanel()}
	stretcher, behindStretcher := stretcherSides(p)
	leg, behindLeg := legSides(p)
	out.Pictures = append(out.Pictures,
		bothSides(say(stretcherNamesHeading), stretcher, behindStretcher),
		bothSides(say(legNamesHeading), leg, behindLeg), lapApart(p), bridleApart(p))
	if p.Design.Ring.Plain != design.ClosedEnd {
		out.Pictures = append(out.Pictures, ringShut(p))
	}
	return out
}

// A namedPart is a part in a corner view, the middle of a long one left out, x along
// it, with names on it.
type namedPart struct {
	Sketch
	view solid.View
	seen []solid.Patch
	gap  breakOut
	room solid.Extent
}

// The two views in which a part is named: ring side and above, and all that this one
// does not show.
func nameViews() [2]solid.View {
	up := solid.V(0, 0, 1)
	return [2]solid.View{solid.Look(solid.V(0.35, -1, 0.45), up), solid.Look(solid.V(-0.35, 1, -0.45), up)}
}

func newNamedPart(p solid.Part, v solid.View) *namedPart {
	n := &namedPart{view: v, room: p.Bounds()}
	n.To = geometry.Identity()
	shown := 4.5 * math.Max(n.room.Size().Y, n.room.Size().Z)
	if g := (breakOut{n.room.Min.X + shown, n.room.Max.X - shown, shown / 9}); g.To-g.From > shown/3 {
		n.gap = g
	}
	n.seen = Toned(&n.Picture, n.gap.close(p), v)
	for _, across := range n.gap.lines(p) {
		n.Line(templates.Centre, v.Point(across[0]), v.Point(across[1]))
	}
	return n
}

// at returns where a place of the part stands on the picture.
func (n *namedPart) at(q solid.Vec) geometry.Point {
	if n.gap.From < n.gap.To && q.X > n.gap.To-1e-9 {
		q.X += n.gap.From + n.gap.Gap - n.gap.To
	}
	return n.view.Point(q)
}

func (n *namedPart) name(id measure.ID, q solid.Vec) { n.Label(n.at(q), n.at(q), tag(id)) }

// nameEnd names the outermost of the faces seen that look one way.
func (n *namedPart) nameEnd(id measure.ID, way solid.Vec) {
	along, far := n.view.Point(way), math.Inf(-1)
	var at geometry.Point
	for _, q := range n.seen {
		var mid geometry.Point
		for _, c := range q.Corners {
			mid = mid.Add(c.Mul(1 / float64(len(q.Corners))))
		}
		if out := mid.Dot(along); q.N.Dot(way) > 0.5 && out > far {
			far, at = out, mid
		}
	}
	n.Label(at, at, tag(id))
}

func (n *namedPart) nameLine(id measure.ID, a, b solid.Vec) { n.Label(n.at(a), n.at(b), tag(id)) }

// marks draws what is pencilled on a part: the loop on the ring side about x, its tail
// on the arris, the tick across that, the number about another place.
// The ring side is y = 0; dz is up the ring side from the arris of the tick.
// It comes before the names: its lettering stands on the part or right beside it.
func (n *namedPart) marks(number solid.Vec, x, high, arris, dz float64) {
	n.name("number", number)
	var loop []geometry.Point
	for i := range 25 {
		s := float64(i)/12 - 1
		loop = append(loop, n.at(solid.V(x+high*(s*s*s-s/2), 0, arris+dz*high*(1-s*s))))
	}
	n.Line(templates.Cut, loop...)
	n.Label(loop[12], loop[12], tag("loop"))
	tick := x + 1.3*high
	low, top := solid.V(tick, 0, arris), solid.V(tick, 0, arris+dz*high/3)
	over := solid.V(tick, high/3, arris)
	n.Line(templates.Cut, n.at(top), n.at(low), n.at(over))
	n.Label(n.at(low), n.at(low), tag("tick"))
}

// bothSides hangs two views of a part side by side.
func bothSides(heading string, front, behind *namedPart) templates.Picture {
	out := templates.Picture{Heading: heading, NoScale: true, Wide: true}
	right := 0.0
	for _, n := range []*namedPart{front, behind} {
		box := n.Bounds()
		move := geometry.Translate(geometry.Pt(right-box.Min.X, -box.Centre().Y))
		right += 1.15 * box.Width()
		for _, a := range n.Areas {
			out.Areas = append(out.Areas, templates.Area{Tone: a.Tone, Points: move.ApplyAll(a.Points)})
		}
		for _, s := range n.Strokes {
			out.Strokes = append(out.Strokes, templates.Stroke{Role: s.Role, Points: move.ApplyAll(s.Points)})
		}
		for _, l := range n.Labels {
			l.On = geometry.Segment{A: move.Apply(l.On.A), B: move.Apply(l.On.B)}
			out.Labels = append(out.Labels, l)
		}
	}
	return out
}

// stretcherSides shows the stretcher from its ring side and from the other.
func stretcherSides(p piece.Piece) (front, behind *namedPart) {
	w, d := p.Frame.Ring.Width, p.Frame.Ring.Depth
	part := p.Stretcher()
	front, behind = newNamedPart(part, nameViews()[0]), newNamedPart(part, nameViews()[1])
	left, right := front.gap.From, front.gap.To
	if left >= right {
		left, right = -d, d
	}
	front.marks(solid.V(left-0.35*d, 0, 0.62*d), right+0.7*d, 0.7*d, d, -1)
	front.name("ring-side-reference", solid.V(left-d, 0, d/3))
	front.nameLine("face-top", solid.V(left-2*d, w, d), solid.V(left-0.3*d, w, d))
	inner, outer := p.Frame.Ring.Shoulders(0)
	low, high := 0.0, d/2
	if p.Frame.Over {
		low, high = d/2, d
	}
	front.nameLine("inner-shoulder", solid.V(inner, 0, low), solid.V(inner, 0, high))
	front.nameLine("outer-shoulder", solid.V(outer, 0, low), solid.V(outer, 0, high))
	front.nameEnd("leg-end", solid.V(1, 0, 0))
	behind.name("outer-side", solid.V(left-d, w, d/2))
	behind.name("face-underside", solid.V(right+d, w/2, 0))
	behind.nameEnd("plain-end", solid.V(-1, 0, 0))
	return front, behind
}

// legSides shows the leg so, lying, head to the right on its ring side.
func legSides(p piece.Piece) (front, behind *namedPart) {
	b, t := p.Frame.Leg.Breadth, p.Frame.Leg.Thickness
	part := p.Leg().Transform(rigidInverse(shop.LegPlace(p)))
	front, behind = newNamedPart(part, nameViews()[0]), newNamedPart(part, nameViews()[1])
	left, right := front.gap.From, front.gap.To
	if left >= right {
		left = (front.room.Min.X + front.room.Max.X) / 2
		right = left
	}
	front.marks(solid.V(left-2.2*b, 0, 0.55*b), right+b, 0.6*b, 0, 1)
	front.name("ring-side", solid.V(left-0.7*b, 0, b/2))
	front.name("stretcher-side", solid.V(right+b, t/2, b))
	front.nameEnd("head", solid.V(1, 0, 0))
	behind.name("outer-side", solid.V(left-b, t, b/2))
	behind.name("back-reference", solid.V(right+b, t/2, 0))
	behind.nameEnd("foot-end", solid.V(-1, 0, 0))
	return front, behind
}

// rigidInverse returns the way back of a placing that neither stretches nor mirrors.
func rigidInverse(m solid.Affine3) solid.Affine3 {
	return solid.Affine3{
		X: solid.V(m.X.X, m.Y.X, m.Z.X), Y: solid.V(m.X.Y, m.Y.Y, m.Z.Y), Z: solid.V(m.X.Z, m.Y.Z, m.Z.Z),
		O: solid.V(-m.O.Dot(m.X), -m.O.Dot(m.Y), -m.O.Dot(m.Z)),
	}
}

// openLap returns the leg end of a stretcher in its own frame, and the plain end that
// crosses it lifted off by up, or drawn down. at takes the frame of that one there.
func openLap(p piece.Piece) (crossed, crossing solid.Part, at solid.Affine3, up float64) {
	r := p.Frame.Ring
	up = 1.6 * r.Depth
	if !p.Frame.Over {
		up = -up
	}
	at = p.Place(0).Then(rigidInverse(p.Place(1))).Then(solid.Translate(solid.V(0, 0, up)))
	inner, outer := r.Shoulders(r.Width / 2)
	near := func(q solid.Part, away solid.Vec) solid.Part {
		return q.Cut(solid.Through(solid.V((inner+outer)/2, r.Width/2, 0).Add(away.Mul(3.2*r.Width)), away))
	}
	return near(p.Stretcher(), solid.V(-1, 0, 0)), near(p.Stretcher().Transform(at), at.X), at, up
}

// lapApart shows the lap before it goes together.
func lapApart(p piece.Piece) templates.Picture {
	r := p.Frame.Ring
	crossed, crossing, place, up := openLap(p)
	inner, _ := r.Shoulders(0)
	k := Sketch{Picture: templates.Picture{Heading: say(lapApartHeading), NoScale: true}, To: geometry.Identity()}
	v := fromRingSide()
	Toned(&k.Picture, []solid.Part{crossed, crossing}, v)
	at := func(q solid.Vec) geometry.Point { return v.Point(q) }
	left := inner - r.Width/2
	k.Arrow(at(solid.V(left, 0, r.Depth/2+up*0.95)), at(solid.V(left, 0, r.Depth/2+up*0.4)))
	for _, l := range []struct {
		id measure.ID
		at solid.Vec
	}{
		{"leg-end", solid.V(p.LegReach, 0, r.Depth/2)},
		{"plain-end", place.Apply(solid.V(-p.PlainReach, 0, r.Depth/2))},
	} {
		k.Label(at(l.at), at(l.at), tag(l.id))
	}
	return k.Picture
}

// bridleApart shows the leg drawn down from its stretcher, with the names of the joint.
func bridleApart(p piece.Piece) templates.Picture {
	k := Sketch{Picture: jointView(p, p.Stretcher(), p.Leg()), To: geometry.Identity()}
	k.Heading = say(bridleApartHeading)
	v := fromRingSide()
	w, d := p.Frame.Ring.Width, p.Frame.Ring.Depth
	down := shop.LegPlace(p).X.Mul(-jointApart * d)
	side, mid := p.Frame.Leg.StretcherSide(d), (p.Frame.Leg.StretcherSide(d/2)+p.Frame.Leg.Back(d/2))/2
	cheek := (w - p.Bridle.Tenon) / 2
	places := []struct {
		id measure.ID
		at solid.Vec
	}{
		{"slot-bottom", solid.V(p.Frame.Leg.StretcherSide(0), w/2, d)},
		{"cheek", solid.V(mid, cheek, d/2).Add(down)},
		{"shoulder-face", solid.V(mid, cheek/2, 0).Add(down)},
	}
	if p.Design.Legs.Mortise == joint.MortiseInLeg {
		places[0].at = solid.V(p.Frame.Leg.Back(d), w/2, 0).Add(down) // its middle is hidden by a cheek
		places[1].at = solid.V(mid, cheek, d/2)
		places[2].at = solid.V(p.Frame.Leg.StretcherSide(d/2), cheek/2, d/2)
	}
	for _, l := range places {
		k.Label(v.Point(l.at), v.Point(l.at), tag(l.id))
	}
	at := solid.V(side-0.4*p.Frame.Leg.Breadth, 0, 0)
	k.Arrow(v.Point(at.Add(down)), v.Point(at.Add(down.Mul(0.3))))
	return k.Picture
}

// ringSteps name the three states of the ring.
var ringSteps = [...]measure.ID{"ring-apart", "ring-sliding", "ring-shut"}

// stand draws parts where the Sketch stands.
func (k *Sketch) stand(parts []solid.Part, v solid.View) {
	s := solid.NewScene(parts)
	for _, a := range tones(s.Patches(v), v) {
		k.Area(a.Tone, a.Points...)
	}
	visible, _ := s.Project(v)
	k.Lines(templates.Outline, visible)
}

// ringShut shows the ring from above, apart, on its way and closed. All stretchers
// move at once, each along its arrow.
func ringShut(p piece.Piece) templates.Picture {
	k := Sketch{Picture: templates.Picture{Heading: say(ringShutHeading), NoScale: true, Wide: true}, To: geometry.Identity()}
	stretcher, v := p.Stretcher(), solid.Plan()
	out := stretcher.Bounds().Max.Y + p.Frame.Ring.Width/2 // where an arrow stands clear of its stretcher
	right := 0.0
	for step, share := range [...]float64{1.8, 0.8, 0} {
		slide := share * p.Apart()
		parts := p.Around(func(i int) solid.Affine3 { return p.PlaceOpen(i, slide) }, stretcher)
		room := parts[0].Bounds()
		for _, q := range parts {
			room = room.Union(q.Bounds())
		}
		k.To = geometry.Translate(geometry.Pt(right-room.Min.X, 0))
		right += 1.4 * room.Size().X
		k.stand(parts, v)
		for i := range parts {
			tail := p.PlaceOpen(i, slide).Apply(solid.V(0, out, 0))
			if move := p.Place(i).O.Sub(p.PlaceOpen(i, slide).O); slide > 0 {
				k.Arrow(v.Point(tail), v.Point(tail.Add(move)))
			}
		}
		below := geometry.Pt((room.Min.X+room.Max.X)/2, room.Min.Y-p.Frame.Ring.Width)
		k.Label(below, below, tag(ringSteps[step]))
	}
	return k.Picture
}
