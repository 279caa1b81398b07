package drawings

import (
	"math"
	"slices"

	"rodsheet/geometry"
	"rodsheet/geometry/measure"
	"rodsheet/templates"
	"rodsheet/templates/piece"
	"rodsheet/templates/piece/shop"
	"rodsheet/templates/piece/wording"
)

// jigStages are the parts of the work that a jig serves.
var jigStages = map[shop.Part]shop.Stage{shop.LapSled: shop.LapStage, shop.TenoningJig: shop.BridleStage, shop.TaperSled: shop.TaperStage}

// jigs shows the jigs of a part of the work with the sizes that they are made by, and
// says how they are made and used.
func jigs(pieces []piece.Piece, at shop.Stage) (out templates.Section) {
	for _, l := range shop.Jigs(pieces) {
		if jigStages[l.What.Kind] != at {
			continue
		}
		own := slices.IndexFunc(pieces, func(p piece.Piece) bool { return p.Design.Size == l.Sizes[0] })
		k := jigSketch{NewSketch(), pieces[own], l.What, shop.JigSizesIn(pieces[0].Design.Unit)}
		k.Heading = piece.WithSizes(wording.JigName(l.What.Kind), l.Sizes, len(pieces))
		k.View = wording.JigView(l.What.Kind)
		switch l.What.Kind {
		case shop.TenoningJig:
			k.tenoningJig()
		case shop.LapSled:
			k.lapSled()
		case shop.TaperSled:
			k.taperSled()
		}
		out.Pictures = append(out.Pictures, k.Picture)
		if panel := wording.Jig(l.What.Kind); len(out.Panels) == 0 {
			panel.Near = k.View
			out.Panels = append(out.Panels, panel)
		}
	}
	return out
}

// A jigSketch draws one jig in the frame of its figures.
type jigSketch struct {
	Sketch
	p piece.Piece
	shop.Jig
	shop.JigSizes
}

// mm puts a length on a span.
func (k *jigSketch) mm(a, b, off geometry.Point) {
	if long := b.Sub(a).Norm(); long > 0 {
		k.Span(a, b, off, tag("plain-figure", k.p.MM(long)))
	}
}

func (k *jigSketch) box(t templates.Tone, x0, y0, x1, y1 float64) {
	k.Block(t, geometry.Box(x0, y0, x1, y1).Corners()...)
}

// tenoningJig shows the face, a part leaning on the filler strip at the cleat, and beside
// it the jig from its end.
func (k *jigSketch) tenoningJig() {
	k.To = geometry.MirrorX() // seen from the left of the saw, the maker on the right
	cleat, sheet := k.Cleat, k.Sheet
	k.box(templates.Light, 0, 0, k.Wide, k.Tall)
	k.box(templates.Middle, 0, 0, cleat, k.High)
	k.mm(geometry.Pt(0, 0), geometry.Pt(k.Wide, 0), geometry.Pt(0, -40))
	k.mm(geometry.Pt(k.Wide, 0), geometry.Pt(k.Wide, k.Tall), geometry.Pt(40, 0))
	k.mm(geometry.Pt(0, 0), geometry.Pt(0, k.High), geometry.Pt(-40, 0))
	k.mm(geometry.Pt(0, k.High), geometry.Pt(cleat, k.High), geometry.Pt(0, 30))
	for _, b := range shop.Blocks(k.p) {
		if b.Part == shop.FillerStrip {
			k.leaningPart(b)
		}
	}
	k.named(geometry.Pt(cleat/2, k.High/2), tag("cleat"))
	k.To = geometry.Identity() // from the maker's place
	const from = 140
	to := from + k.Base
	k.box(templates.Light, from, 0, from+sheet, k.Tall)
	k.box(templates.Light, from+sheet, 0, to, sheet)
	k.Block(templates.Middle, geometry.Pt(from+sheet, sheet), geometry.Pt(to, sheet), geometry.Pt(from+sheet, k.Base+sheet))
	k.named(geometry.Pt(from+sheet+k.Base/4, sheet+k.Base/4), tag("bracket"))
	k.mm(geometry.Pt(from, 0), geometry.Pt(to, 0), geometry.Pt(0, -40))
	k.Label(geometry.Pt(from, k.Tall/3), geometry.Pt(from, k.Tall), tag("jig-face"))
	k.Line(templates.Centre, geometry.Pt(to, 0), geometry.Pt(to, k.Tall*0.8))
	k.Label(geometry.Pt(to, k.Tall*0.2), geometry.Pt(to, k.Tall*0.8), tag("rip-fence"))
}

// leaningPart shows a part that stands on the whole of its sawn end, its edge along the
// filler strip of its splay.
func (k *jigSketch) leaningPart(strip shop.Block) {
	cleat, tan := k.Cleat, math.Tan(strip.Angle)
	low := math.Min(12, strip.Thin/tan)
	high := math.Min(low+strip.Across, k.Tall)
	edge := func(y float64) geometry.Point { return geometry.Pt(cleat+strip.Thin+(y-low)*tan, y) }
	k.Block(templates.White, geometry.Pt(cleat, low), edge(low), edge(high), geometry.Pt(cleat, high))
	for _, share := range [2]float64{0.4, 0.8} {
		y := low + (high-low)*share
		k.Line(templates.Outline, geometry.Arc(geometry.Pt((cleat+edge(y).X)/2, y), 3, 0, 2*math.Pi)...)
	}
	k.named(geometry.Pt(cleat, high).Lerp(edge(high), 0.5).Sub(geometry.Pt(0, 12)), tag("strip", k.p.Say(measure.Angle(strip.Angle))))
	across := geometry.Pt(k.p.Frame.Leg.Breadth/math.Cos(strip.Angle), 0)
	top := edge(k.Tall * 0.95)
	k.Line(templates.Hidden, edge(0), top, top.Add(across), edge(0).Add(across), edge(0))
	k.named(edge(k.Tall/2).Add(across.Mul(0.5)), tag("part-dashed"))
}

// lapSled shows the sled from above, the maker below, with a stretcher on it, and what
// fence and blade are set by; the sizes of its parts stand in the cut list.
func (k *jigSketch) lapSled() {
	if !k.Right {
		k.To = geometry.MirrorX()
	}
	k.Heading += say(fenceAt, k.p.Say(measure.Angle(k.Angle)))
	sheet := k.Sheet
	slope := (k.Far - k.Near) / k.Wide
	at := func(x, off float64) geometry.Point { return geometry.Pt(x, k.Near+slope*x+off/math.Cos(k.Angle)) }
	k.box(templates.Light, -k.Beyond, 0, k.Wide, k.Tall)
	k.Block(templates.Middle, at(-k.Beyond, -sheet), at(k.Wide, -sheet), at(k.Wide, 0), at(-k.Beyond, 0))
	k.box(templates.Middle, -k.Beyond, k.Tall-sheet, k.Wide, k.Tall)
	near, half := k.Near-sheet/math.Cos(k.Angle)-k.Cover, k.Covered/2
	k.box(templates.Dark, -k.p.Kerf, near+sheet, 0, k.Tall-sheet)
	k.Block(templates.Middle, geometry.Pt(-half, near), geometry.Pt(half, near), at(half, -sheet), at(-half, -sheet))
	k.named(geometry.Pt(half/2, near+k.Cover/2), tag("blade-cover"))
	along := geometry.Pt(k.Wide, k.Far-k.Near).Unit()
	from := geometry.Pt(0, k.Near)
	stop := from.Add(along.Mul(k.Stop))
	away := along.Perp()
	if away.Y < 0 {
		away = away.Mul(-1)
	}
	k.Line(templates.Hidden, from.Sub(along.Mul(100)).Add(away.Mul(k.Room)), stop.Add(away.Mul(k.Room)), stop)
	block := along.Mul(math.Min(60, k.Wide/math.Cos(k.Angle)-k.Stop))
	k.Block(templates.Dark, stop, stop.Add(block), stop.Add(block).Add(away.Mul(k.Cleat)), stop.Add(away.Mul(k.Cleat)))
	k.named(stop.Add(block.Mul(0.5)).Add(away.Mul(k.Cleat/2)), tag("stop-block"))
	k.named(from.Add(along.Mul(k.Stop/2)).Add(away.Mul(k.Room/2)), tag("part-dashed"))
	k.mm(geometry.Pt(0, 0), geometry.Pt(k.Wide, 0), geometry.Pt(0, -30))
	k.mm(geometry.Pt(-k.Beyond, 0), geometry.Pt(0, 0), geometry.Pt(0, -30))
	k.mm(geometry.Pt(k.Wide, 0), geometry.Pt(k.Wide, k.Far), geometry.Pt(30, 0))
	k.mm(geometry.Pt(-k.Beyond, 0), at(-k.Beyond, 0), geometry.Pt(-30, 0))
	k.Label(geometry.Pt(-k.Beyond, k.Tall), geometry.Pt(k.Wide, k.Tall), tag("bridge"))
	k.Label(at(-k.Beyond, -sheet), at(k.Wide, -sheet), tag("sled-fence"))
	k.Label(geometry.Pt(0, k.Tall*0.6), geometry.Pt(0, k.Tall), tag("blade"))
}

// taperSled shows the sled from above, the foot going first, its widths larger so that
// the taper is seen. How large its board is stands in the cut list: here only what the
// fence is set by, which other figures would crowd.
func (k *jigSketch) taperSled() {
	const wider = 3
	k.To = geometry.Scale(wider, 1)
	k.Heading += say(drawnWider, wider)
	const head = 40
	foot := head + k.p.SawnLeg().Length*math.Cos(k.Angle)
	start := foot - k.Apart
	at := func(y, off float64) geometry.Point {
		return geometry.Pt(k.Near+(k.Far-k.Near)/k.Apart*(y-start)+off/math.Cos(k.Angle), y)
	}
	k.box(templates.Light, 0, 0, k.Wide, k.Tall)
	k.Block(templates.Middle, at(head, 0), at(head, k.Cleat), at(foot, k.Cleat), at(foot, 0))
	k.Label(at(head, k.Cleat/2), at(foot, k.Cleat/2), tag("taper-fence"))
	k.Line(templates.Hidden, at(head, 0), at(head, -k.Room), geometry.Pt(0, start), geometry.Pt(0, foot), at(foot, 0))
	k.named(at((head+start)/2, -k.Room/2), tag("part-dashed"))
	k.Block(templates.Dark, at(head, 0), at(head, -k.Room), at(head-18, -k.Room), at(head-18, 0))
	k.Label(at(head-18, -k.Room), at(head-18, 0), tag("stop-block"))
	k.Line(templates.Cut, geometry.Pt(0, 0), geometry.Pt(0, k.Tall))
	k.mm(geometry.Pt(0, k.Tall), geometry.Pt(k.Far, k.Tall), geometry.Pt(0, 1))
	k.Line(templates.Construction, at(foot, 0), geometry.Pt(k.Far, k.Tall))
	k.mm(geometry.Pt(0, 0), geometry.Pt(k.Near, 0), geometry.Pt(0, -1))
	k.Line(templates.Construction, at(start, 0), geometry.Pt(k.Near, 0))
	k.mm(geometry.Pt(0, start), geometry.Pt(0, foot), geometry.Pt(-15, 0))
	k.Label(geometry.Pt(k.Wide, start), geometry.Pt(k.Wide, k.Tall), tag("rip-fence"))
}
