package templates

import (
	"math"
	"slices"
	"strconv"

	"rodsheet/geometry"
	"rodsheet/geometry/joint"
	"rodsheet/geometry/measure"
	"rodsheet/geometry/solid"
)

// Dovetail returns the strips that go over the ends of the tail board and of the pin
// board of a dovetailed corner. Upright boards are alike from both edges, so that one drawing
// serves both hands; sloping boards have both. The error is a
// *measure.BoundError.
//
// The right hand of the tail board is its right end as one looks at the outer
// side, the lower edge down; its pin board is then the left end of the next one.
func Dovetail(d joint.Dovetail, s Setting) (Job, error) {
	if err := d.Check(); err != nil {
		return Job{}, err
	}
	t := dovetailTemplate{d, s}
	figures := t.figures()
	return Job{
		Name:     "dovetail-" + strconv.Itoa(d.Tails),
		Title:    t.title(),
		Figures:  figures,
		Warnings: t.warnings(),
		Sections: []Section{{
			Drawings: t.drawings(),
			Panels: []Panel{
				{Heading: say(figuresHeading), Table: figureTable(append(t.given(), figures...), s.Unit)},
				t.setOut(),
				{Heading: say(workHeading), Text: t.steps()},
			},
		}},
	}, nil
}

// A dovetailTemplate is a dovetail about to be drawn.
type dovetailTemplate struct {
	joint.Dovetail
	Setting
}

// upright reports whether the joint is its own mirror image from edge to edge.
func (t dovetailTemplate) upright() bool { return t.BoardSlope == math.Pi/2 }

// drawings returns both strips. In the room of joint.Dovetail the tail board runs to
// the right, the corner being its left end, and the pin board to the left.
func (t dovetailTemplate) drawings() []Drawing {
	tails, pins := View{Part: "tail-board", Face: "end-strip"}, View{Part: "pin-board", Face: "end-strip"}
	if t.upright() {
		return []Drawing{t.tailStrip().of(tails), t.pinStrip().of(pins)}
	}
	return slices.Concat(t.tailStrip().hands(tails, LeftHand), t.pinStrip().hands(pins, RightHand))
}

func (t dovetailTemplate) given() []Figure {
	out := []Figure{
		figure("dovetail.width", measure.Length(t.Width)),
		figure("dovetail.tail-board", measure.Length(t.TailBoard)),
		figure("dovetail.pin-board", measure.Length(t.PinBoard)),
		figure("dovetail.corner", measure.Angle(t.Angle)),
	}
	if !t.upright() {
		out = append(out, figure("dovetail.board-slope", measure.Angle(t.BoardSlope)))
	}
	return out
}

// figures returns the sizes of tails and pins. What is 0 on square boards is for
// programs only there.
func (t dovetailTemplate) figures() []Figure {
	face, thick := t.TailEnd().OffSquare()
	square := func(f Figure) Figure { return unless(math.Abs(f.Value.Value) < 1e-9, f) }
	return []Figure{
		figure("dovetail.tails", measure.Number(float64(t.Tails))),
		figure("dovetail.slope", measure.Angle(t.Slope)),
		figure("dovetail.slope-one-in", measure.Number(1/math.Tan(t.Slope))),
		figure("dovetail.bevel", measure.Angle(math.Pi/2-t.Slope)),
		figure("dovetail.tail", measure.Length(t.Tail())),
		figure("dovetail.root", measure.Length(t.Root())),
		figure("dovetail.pin", measure.Length(t.Pin)),
		figure("dovetail.pin-root", measure.Length(t.Pin+t.Tail()-t.Root())),
		figure("dovetail.half-pin", measure.Length(t.HalfPin)),
		figure("dovetail.tail-length", measure.Length(t.TailLength())),
		figure("dovetail.pin-length", measure.Length(t.PinLength())),
		square(figure("dovetail.lap", measure.Length(t.Lap))),
		square(figure("dovetail.end-off-square", measure.Angle(math.Abs(thick)))),
		square(figure("dovetail.face-off-square", measure.Angle(math.Abs(face)))),
	}
}

// setOut is where dividers stand: the cheeks of every tail, counted across the
// tail board.
func (t dovetailTemplate) setOut() Panel {
	up := t.TailEnd().Up()
	at := func(p solid.Vec) string { return measure.Length(p.Dot(up)).Bare(t.Unit) }
	rows := [][]string{setOutHead()}
	for i, c := range t.Cheeks() {
		rows = append(rows, []string{strconv.Itoa(i + 1), at(c[0].TipOuter), at(c[1].TipOuter), at(c[0].RootOuter), at(c[1].RootOuter)})
	}
	return Panel{Heading: say(setOutHeading, t.Unit.String()), Table: rows}
}

// blank draws the end of a board on its strip, its two faces as far as they are cut
// and a little farther, and the gauge lines so far from the end.
func (t dovetailTemplate) blank(d *Drawing, e joint.BoardEnd, outer, inner float64) {
	const more = reach / 2
	far := math.Max(outer, inner) + more
	var edges [2][]geometry.Point
	for i := range edges {
		pick := func(a, b solid.Vec) solid.Vec { return [2]solid.Vec{a, b}[i] }
		edges[i] = []geometry.Point{
			e.OnOuter(pick(e.Edges(false, far))), e.OnOuter(pick(e.Edges(false, 0))),
			e.OnInner(pick(e.Edges(true, 0))), e.OnInner(pick(e.Edges(true, far))),
		}
		d.Line(Outline, edges[i]...)
	}
	for i, line := range []struct {
		name Tag
		role Role
	}{{tag("outer-side"), Outline}, {tag("fold"), Fold}, {tag("fold"), Fold}, {tag("hollow-side"), Outline}} {
		d.Named(line.role, edges[0][i], edges[1][i], line.name)
	}
	for i, name := range []Tag{tag("lower-edge"), tag("upper-edge")} {
		d.LabelLine(edges[i][0], edges[i][1], name)
	}
	for _, gauge := range []struct {
		inner bool
		deep  float64
		on    func(solid.Vec) geometry.Point
	}{{false, outer, e.OnOuter}, {true, inner, e.OnInner}} {
		if gauge.deep == 0 {
			continue
		}
		a, b := e.Edges(gauge.inner, gauge.deep)
		d.Named(Construction, gauge.on(a), gauge.on(b), tag("gauge-line", t.length(gauge.deep)))
	}
}

// a socket is waste between two cheeks on one panel: it is hatched, and cut along
// its bottom, from b to c.
func socket(d *Drawing, a, b, c, e geometry.Point) {
	d.Hatch(a, b, c, e)
	d.Line(Cut, b, c)
}

// tailStrip shows the tail board: between the tails, and outside the first and the
// last, the sockets of the pins go right through.
func (t dovetailTemplate) tailStrip() Drawing {
	var d Drawing
	e, deep := t.TailEnd(), t.TailLength()
	cheeks := t.Cheeks()
	lowTip, highTip := e.Edges(false, 0)
	lowRoot, highRoot := e.Edges(false, deep)
	lowTipIn, highTipIn := e.Edges(true, 0)
	lowRootIn, highRootIn := e.Edges(true, deep)
	below := joint.Cheek{TipOuter: lowTip, RootOuter: lowRoot, TipInner: lowTipIn, RootInner: lowRootIn}
	above := joint.Cheek{TipOuter: highTip, RootOuter: highRoot, TipInner: highTipIn, RootInner: highRootIn}
	for i := range len(cheeks) + 1 {
		from, to := below, above
		if i > 0 {
			from = cheeks[i-1][1]
		}
		if i < len(cheeks) {
			to = cheeks[i][0]
		}
		socket(&d, e.OnOuter(from.TipOuter), e.OnOuter(from.RootOuter), e.OnOuter(to.RootOuter), e.OnOuter(to.TipOuter))
		socket(&d, e.OnInner(from.TipInner), e.OnInner(from.RootInner), e.OnInner(to.RootInner), e.OnInner(to.TipInner))
		d.Hatch(e.OnEnd(from.TipOuter), e.OnEnd(from.TipInner), e.OnEnd(to.TipInner), e.OnEnd(to.TipOuter))
	}
	for i, pair := range cheeks {
		for _, c := range pair {
			d.Line(Cut, e.OnOuter(c.RootOuter), e.OnOuter(c.TipOuter), e.OnEnd(c.TipInner), e.OnInner(c.RootInner))
		}
		d.LabelPoint(e.OnOuter(pair[0].RootOuter.Lerp(pair[1].TipOuter, 0.5)), tag("tail-n", strconv.Itoa(i+1)))
	}
	t.blank(&d, e, deep, deep)
	return d
}

// pinStrip shows the pin board: the sockets of the tails open on its end and its
// inner side, and on the outer side of a joint that goes through.
func (t dovetailTemplate) pinStrip() Drawing {
	var d Drawing
	e, deep := t.PinEnd(), t.PinLength()
	for i, pair := range t.Cheeks() {
		a, b := pair[0], pair[1]
		socket(&d, e.OnInner(a.RootOuter), e.OnInner(a.RootInner), e.OnInner(b.RootInner), e.OnInner(b.RootOuter))
		socket(&d, e.OnEnd(a.RootOuter), e.OnEnd(a.TipOuter), e.OnEnd(b.TipOuter), e.OnEnd(b.RootOuter))
		for _, c := range pair {
			d.Line(Cut, e.OnEnd(c.TipOuter), e.OnEnd(c.RootOuter), e.OnInner(c.RootInner))
		}
		if t.Lap == 0 {
			socket(&d, e.OnOuter(a.TipOuter), e.OnOuter(a.TipInner), e.OnOuter(b.TipInner), e.OnOuter(b.TipOuter))
			for _, c := range pair {
				d.Line(Cut, e.OnOuter(c.TipOuter), e.OnOuter(c.TipInner))
			}
		}
		d.LabelPoint(e.OnEnd(a.RootOuter.Lerp(b.TipOuter, 0.5)), tag("socket-n", strconv.Itoa(i+1)))
	}
	outer := deep
	if t.Lap > 0 {
		outer = 0
	}
	t.blank(&d, e, outer, deep)
	return d
}
