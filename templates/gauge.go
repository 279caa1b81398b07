package templates

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"rodsheet/geometry"
	"rodsheet/geometry/joint"
	"rodsheet/geometry/measure"
)

// A gauge is one angle about to be drawn.
type gauge struct {
	joint.Triangle
	outline joint.AngleGauge
	wanted
	stock float64 // depth of the strip for the gauge's stock, mm
	Setting
	// pointed is set where two points on a board are truer than a triangle on paper.
	pointed bool
	// tipped is set where the triangle is as long as it is with its slope level only.
	tipped bool
}

// gaugeFor chooses the size. A base that is asked for stands, even if it takes
// several sheets.
//
// Where the triangle is low the strip is deeper: the upright side, which runs
// down through it, is then long enough to set a gauge in the upper corner too. If
// room is short it is so only for a bevel that stands there.
func gaugeFor(angle wanted, base float64, s Setting) gauge {
	z := sizesOfGauge(s)
	pointed := base == 0 && !s.Full && TooShallow(angle.drawn)
	if pointed {
		base = s.Unit.Round(500, 20)
	}
	outline := joint.AngleGauge{Angle: angle.drawn, Length: base, Height: base}
	tipped := false
	switch {
	case base == 0 && s.Full:
		z.fill(&outline)
	case base == 0:
		z.beside(&outline, angle.along)
		tipped = z.tip(&outline)
	}
	triangle, stock := outline.Triangle(), z.stock
	deep := s.Full || base > 0 || triangle.Angle != angle.drawn
	if room := math.Min(z.narrow, z.free) - triangle.Rise(); deep && triangle.Base == outline.Length && !angle.along {
		stock = math.Max(stock, math.Min(z.shortest-triangle.Rise(), room))
	}
	return gauge{triangle, outline, angle, stock, s, pointed, tipped}
}

// gaugeSizes are what the size of a triangle is chosen from, in mm.
type gaugeSizes struct {
	stock             float64 // depth of the strip for the gauge's stock
	step              float64 // of the gauge edge
	shortest, longest float64 // that edge
	least             float64 // height of the triangle
	narrow, long      float64 // what a sheet offers
	proof             float64 // what the calibration square takes of it, where it has room
	free              float64 // what it leaves, all of it where it stands on another sheet
}

func sizesOfGauge(s Setting) gaugeSizes {
	narrow, long := math.Min(s.Clear.X, s.Clear.Y), math.Max(s.Clear.X, s.Clear.Y)
	proof := CalibrationSide(s.Unit) + 30 // with the words round it
	if s.Full {
		proof = 0
	}
	round := s.Unit.Round
	z := gaugeSizes{round(25, 1), round(10, 1.0/2), round(100, 4), round(250, 10), 0, narrow, long, proof, long - proof}
	z.least = z.shortest / 2
	if s.Proved {
		z.least, z.free = math.Min(z.shortest, long-z.stock), long
	}
	return z
}

// edge is the longest gauge edge of whole steps that a room offers.
func (z gaugeSizes) edge(room float64) float64 {
	return math.Max(z.step*math.Floor(math.Min(room, z.longest)/z.step+1e-9), z.shortest)
}

// fill lays the gauge edge along the longer side of the sheet; the
// triangle, with the strip below it, takes no more than the shorter one.
func (z gaugeSizes) fill(g *joint.AngleGauge) {
	g.Length = z.edge(z.long)
	g.Height = math.Max(math.Min(z.narrow-z.stock, g.Length), z.least)
}

// beside lays the gauge edge across the sheet and leaves room above the
// triangle for the calibration square. A bevel over 45° is the upper corner, so
// that the slope stays long; the edge is no longer than the triangle needs.
func (z gaugeSizes) beside(g *joint.AngleGauge, along bool) {
	asked := g.Angle
	if !along {
		g.Angle = math.Min(g.Angle, math.Pi/2-g.Angle)
	}
	g.Length = z.edge(z.narrow)
	g.Height = math.Max(math.Min(z.long-z.proof-z.stock, g.Length), z.least)
	g.Length = g.Triangle().Base
	if g.Angle == asked { // else the gauge's stock lies on the upright side
		g.Length = math.Max(g.Length, z.shortest)
	}
}

// tip makes a triangle that came out too short longer, and reports it, where there is
// room for that with the slope level: from there it then reaches down by
// base·sin + stock·cos of the angle, and along it by base/cos + stock·sin.
func (z gaugeSizes) tip(g *joint.AngleGauge) bool {
	sin, cos := math.Sincos(g.Angle)
	base := math.Min(z.shortest, math.Min((z.long-z.proof-z.stock*cos)/sin, (z.narrow-z.stock*sin)*cos))
	if base <= g.Triangle().Base {
		return false
	}
	g.Length, g.Height = base, math.Inf(1) // the base alone bounds it
	return true
}

// name is what the triangle is called: "angle 14.5°", or what it is the bevel of.
func (g gauge) name() string {
	if g.of != "" {
		return say(bevelHeading, g.of, angleText(g.drawn))
	}
	return say(angleHeading, angleText(g.drawn))
}

// AngleView returns what the view of a triangle calls its part.
func AngleView(rad float64) measure.ID {
	return measure.ID("angle-" + strings.TrimSuffix(angleText(rad), "°"))
}

// views returns the triangle for both hands or, where each is to be drawn, the
// right hand and then the left one.
func (g gauge) views(each bool) []Drawing {
	name := g.name()
	part := AngleView(g.drawn)
	d := g.drawing()
	if !each {
		return []Drawing{d.Of(View{Part: part}, name)}
	}
	v := View{Part: part, Hand: RightHand}
	w := View{Part: part, Hand: LeftHand}
	return []Drawing{d.Of(v, say(inHand, name, handName(RightHand))),
		d.Moved(geometry.MirrorX()).Of(w, say(inHand, name, handName(LeftHand)))}
}

// line is the slope by two points on a board: counted from its working edge or, where
// little is left to a right angle, from a line square to that.
func (g gauge) line() PointedLine {
	l := PointedLine{AtEnd: g.Rise(), Run: g.Base, Edge: tag("edge"), End: tag("on-a-board")}
	if l.AtEnd > l.Run {
		l.AtEnd, l.Run, l.Edge, l.Line = l.Run, l.AtEnd, tag("square-line"), true
	}
	l.Across = 2 * l.AtEnd
	return l
}

// drawing is the right hand: the triangle with the strip for the gauge's stock.
func (g gauge) drawing() Drawing {
	d := g.triangle()
	g.stockStrip(&d)
	d.Free = g.tipped
	return d
}

// triangle is the right hand: the gauge edge below, the angle at its left end,
// the slope rising to the right, and the upright side down through the strip.
func (g gauge) triangle() Drawing {
	var d Drawing
	d.Polygon(Cut, g.outline.Outline()...)
	corner, far := geometry.Point{}, geometry.Pt(g.outline.Length, 0)
	plumb, top := geometry.Pt(g.Base, 0), geometry.Pt(g.Base, g.Rise())
	if g.Base < g.outline.Length {
		d.Line(Construction, plumb, top)
	} else if !g.along {
		d.Line(Cut, far, geometry.Pt(g.Base, -g.stock))
	}
	sets := tag("corner-sets", angleText(g.Angle), angleText(g.OffSquare()))
	if g.along {
		sets = tag("corner-to-edge", angleText(g.Angle))
	}
	g.angleMark(&d, corner, 30, 0, g.Angle, sets)
	named := len(d.Labels) - 1
	if !g.along {
		g.angleMark(&d, top, 20, math.Pi+g.Angle, g.OffSquare(), tag("corner-sets", angleText(g.OffSquare()), angleText(g.Angle)))
	}
	if g.steep() {
		named++
	}
	d.Labels[named].Big = g.large()
	if g.asked != g.drawn {
		d.LabelPoint(corner, tag("beyond-slope", angleText(g.asked)))
	}
	d.LabelLine(corner, top, tag("cut-or-strike"))
	d.LabelLine(corner, far, tag("registration-edge"))
	// As its table has it: of a steep bevel that tells the rise off square.
	d.LabelLine(plumb, top, tag("rise", g.length(g.Rise())))
	// A shorter base is left to the table: its name would not stand beside it.
	if g.Base >= g.stock {
		d.LabelLine(corner, plumb, tag("base", g.length(g.Base)))
	}
	return d
}

// angleMark draws the arc of an angle at a corner of the triangle, from
// direction from on, and labels it. The arc is left out where the triangle is
// too thin to show it.
func (g gauge) angleMark(d *Drawing, corner geometry.Point, radius, from, angle float64, t Tag) {
	radius = math.Min(radius, 0.6*math.Min(g.Base, g.Rise()))
	at := corner
	if radius > 3 {
		d.Line(Construction, geometry.Arc(corner, radius, from, from+angle)...)
		at = corner.Add(geometry.Polar(g.wordsAt(radius, angle), from+angle/2))
	}
	d.LabelPoint(at, t)
}

// wordsAt is how far out of a corner its words stand: at the arc or, where that is too short
// for them, so far that they lie between both edges. Where these end before, or the words of
// the upper corner, the one asked for, need that room, at the arc.
func (g gauge) wordsAt(radius, angle float64) float64 {
	const high, half = 6.5, 32.0 // what large letters take, with the air round them
	shared := g.steep() && g.Rise() < 4*high
	if open := high / math.Tan(angle); !shared && open > radius && open+2*half < 0.8*g.Base {
		return open + half
	}
	return radius
}

// large reports whether the words of the angle asked for stand in large letters: from an
// upper corner they need room level or on end, by tries in print.
func (g gauge) large() bool {
	const level, onEnd, turned = 116.0, 86.0, 73.5
	return g.Full || !g.steep() || g.Base >= level || g.Rise() >= onEnd || g.tipped && g.Rise() >= turned
}

// stockStrip keeps the paper below the gauge edge free.
func (g gauge) stockStrip(d *Drawing) {
	d.Line(Construction, geometry.Pt(0, 0), geometry.Pt(0, -g.stock), geometry.Pt(g.outline.Length, -g.stock), geometry.Pt(g.outline.Length, 0))
	d.LabelPoint(geometry.Pt(g.outline.Length/2, -g.stock/2), tag("room-for-stock"))
}

// steep reports whether the angle stands in the upper corner.
func (g gauge) steep() bool { return g.Angle != g.drawn }

// figures are the same for every angle and unit, in this order. A careful setting
// may be off by 0.25 mm or 1/64 in at the far end.
func (g gauge) figures() []Figure {
	const mm, in = measure.Millimetre, measure.Inch
	run, up := g.Base, g.Rise()
	if g.steep() {
		run, up = up, run
	}
	rise := func(of measure.Unit, id measure.ID, run float64) Figure {
		run = of.Round(run, run)
		return figureIn(of, g.Unit, id, measure.Length(joint.RiseOver(run, g.drawn)))
	}
	chord := func(of measure.Unit, id measure.ID) Figure {
		return figureIn(of, g.Unit, id, measure.Length(joint.Chord(of.Round(250, 10), g.drawn)))
	}
	slip := func(of measure.Unit, id measure.ID) Figure {
		return figureIn(of, g.Unit, id, measure.Angle(g.SlipError(gaugeSlip(of))))
	}
	return []Figure{
		figure("angle.bevel", measure.Angle(g.drawn)),
		figure("angle.off-square", measure.Angle(math.Pi/2-g.drawn)),
		rise(mm, "angle.rise-over-100-mm", 100),
		rise(mm, "angle.rise-over-250-mm", 250),
		rise(mm, "angle.rise-over-500-mm", 500),
		rise(in, "angle.rise-over-4-in", 4),
		rise(in, "angle.rise-over-10-in", 10),
		rise(in, "angle.rise-over-20-in", 20),
		aside(rise(in, "angle.rise-over-12-in", 12)),
		aside(rise(in, "angle.rise-over-24-in", 24)),
		figure("angle.slope", measure.Number(1/math.Tan(g.drawn))),
		chord(mm, "angle.chord"),
		chord(in, "angle.chord-10-in"),
		figure("angle.base", measure.Length(run)),
		figure("angle.rise", measure.Length(up)),
		slip(mm, "angle.reading-error"),
		slip(in, "angle.reading-error-64th"),
	}
}

// gaugeSlip is how far off a careful setting may be at the far end, mm.
func gaugeSlip(u measure.Unit) float64 { return u.Round(0.25, 1.0/64) }

// unlisted are the figures that stand in the drawing, lie between two that are
// listed, or say less than what stands under the drawing: they would not go beside
// the calibration square.
var unlisted = []measure.ID{
	"angle.base", "angle.rise", "angle.rise-over-250-mm", "angle.rise-over-10-in",
	"angle.reading-error", "angle.reading-error-64th",
}

// setOut are the figures by which an angle is set out from an edge. Of a bevel that is
// nearer to square than to the edge a table gives those of the figure above them, off square, from a
// line square to the edge: the bevel's own rise is longer than any bench.
var setOut = []measure.ID{
	"angle.rise-over-100-mm", "angle.rise-over-250-mm", "angle.rise-over-500-mm",
	"angle.rise-over-4-in", "angle.rise-over-10-in", "angle.rise-over-20-in",
	"angle.slope", "angle.chord", "angle.chord-10-in", "angle.base", "angle.rise",
}

// panel is the table of one angle.
func (g gauge) panel() Panel {
	p := Panel{Heading: g.name()}
	nearSquare := g.steep() || g.pointed && g.drawn > math.Pi/4
	other := g
	other.drawn = math.Pi/2 - g.drawn
	others := other.figures()
	for i, f := range g.figures() {
		if nearSquare && slices.Contains(setOut, f.ID) {
			f = others[i]
			f.Name = say(byOffSquare, f.Name)
		}
		if f.Aside || !g.Full && slices.Contains(unlisted, f.ID) {
			continue
		}
		text := f.Value.Text(g.Unit)
		switch f.ID {
		case "angle.bevel", "angle.off-square":
			if g.along && f.ID == "angle.off-square" {
				continue
			}
			if g.along {
				f.Name = say(toTheEdge)
			}
			text = say(degreesAndMinutes, text, minutesText(f.Value.Value))
		case "angle.slope":
			f.Name, text = say(slopeName), say(oneIn, text)
			if nearSquare {
				f.Name = say(byOffSquare, f.Name)
			}
		case "angle.reading-error", "angle.reading-error-64th":
			f.Name = say(slipCosts, g.length(gaugeSlip(g.Unit)))
		}
		p.Table = append(p.Table, []string{f.Name, text})
	}
	return p
}

// minutesText is an angle to the nearest minute: "14° 30′".
func minutesText(rad float64) string {
	minutes := int(math.Round(measure.Degrees(rad) * 60))
	return fmt.Sprintf("%d° %02d′", minutes/60, minutes%60)
}
