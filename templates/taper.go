package templates

import (
	"math"
	"slices"

	"rodsheet/geometry"
	"rodsheet/geometry/joint"
	"rodsheet/geometry/measure"
)

// Taper returns the templates of a tapered leg. One face, and two adjacent
// ones, have a right and a left hand; opposite tapers are their own mirror
// image and have one drawing. The error is a *measure.BoundError.
//
// Right hand: with the straight edge towards the reader the foot lies to the
// right.
func Taper(t joint.Taper, s Setting) (Job, error) {
	if err := t.Check(); err != nil {
		return Job{}, err
	}
	leg := taperTemplate{t, s.Unit}
	return Job{
		Name:  "taper-" + t.Faces.String(),
		Title: "Taper, " + leg.faces() + ": " + leg.length(t.Top) + " to " + leg.length(t.Foot) + " over " + leg.length(t.Run()),
		Sections: []Section{{
			Drawings: leg.drawings(),
			Panels: []Panel{
				{Heading: "taper", Table: leg.table()},
				leg.offsets(),
				{Heading: "order of cuts", Text: leg.cuts()},
				{Heading: "bevels", Text: leg.bevels()},
				{Heading: "caution", Text: taperCaution()},
			},
		}},
		Figures: leg.figures(),
	}, nil
}

// A taperTemplate is a taper about to be drawn.
type taperTemplate struct {
	joint.Taper
	unit measure.Unit
}

func (t taperTemplate) length(mm float64) string { return measure.Length(mm).Text(t.unit) }

// faces names the tapered faces.
func (t taperTemplate) faces() string {
	switch t.Faces {
	case joint.AdjacentFaces:
		return "two adjacent faces"
	case joint.OppositeFaces:
		return "two opposite faces"
	case joint.FourFaces:
		return "four faces"
	}
	return "one face"
}

func (t taperTemplate) drawings() []Drawing {
	if t.Faces.Symmetric() {
		return []Drawing{t.drawing("taper, either hand, face")}
	}
	right := t.drawing("taper, right hand, face")
	return []Drawing{right, right.Mirrored("taper, left hand, face")}
}

func (t taperTemplate) drawing(name string) Drawing {
	d := Drawing{Name: name}
	d.Polygon(Outline, t.Blank()...)
	for _, c := range t.Cuts() {
		d.Line(Cut, c.A, c.B)
		d.LabelLine(c.A, c.B, "cut line, "+angleText(t.ToEdge())+" to the "+t.reference())
	}
	for _, w := range t.Waste() {
		d.Hatch(w...)
		d.LabelPoint(w[0].Add(w[1]).Add(w[2]).Mul(1.0/3), "waste")
	}
	t.ends(&d)
	t.start(&d)
	t.grain(&d)
	if mid := t.Top / 2; t.Faces.Symmetric() {
		a, b := geometry.Pt(-offset, mid), geometry.Pt(t.Length+offset, mid)
		d.Line(Centre, a, b)
		d.LabelLine(a, b, "centre line")
	}
	d.LabelLine(geometry.Pt(0, 0), geometry.Pt(t.Length, 0), t.referenceEdge())
	return d
}

// reference names what the taper is counted from.
func (t taperTemplate) reference() string {
	if t.Faces.Symmetric() {
		return "centre line"
	}
	return "straight face"
}

// referenceEdge names the edge y = 0 of the blank.
func (t taperTemplate) referenceEdge() string {
	if t.Faces == joint.AdjacentFaces {
		return "reference edge: on the outside arris"
	}
	return "reference edge"
}

// ends names the widths at top and foot.
func (t taperTemplate) ends(d *Drawing) {
	d.LabelLine(geometry.Pt(0, 0), geometry.Pt(0, t.Top), "top "+t.length(t.Top))
	lo, hi := t.Edges(t.Length)
	d.LabelLine(geometry.Pt(t.Length, lo), geometry.Pt(t.Length, hi), "foot "+t.length(t.Foot))
}

// start marks where the taper begins, square across the blank.
func (t taperTemplate) start(d *Drawing) {
	text := "start, at the top end"
	if t.Start > 0 {
		text = "start, " + t.length(t.Start) + " from the top end"
	}
	a, b := geometry.Pt(t.Start, -tick), geometry.Pt(t.Start, t.Top+tick)
	d.Line(Construction, a, b)
	d.LabelLine(a, b, text)
}

// grain draws an arrow along the grain, in the wood that stays and clear of
// the centre line: a quarter of the foot above its lower edge.
func (t taperTemplate) grain(d *Drawing) {
	lo, hi := t.Edges(t.Length)
	y := lo + (hi-lo)/4
	long := math.Min(60, t.Length/3)
	tail := geometry.Pt((t.Length-long)/2, y)
	head := tail.Add(geometry.Pt(long, 0))
	barb := math.Min(4, (hi-lo)/5)
	d.Line(Construction, tail, head)
	d.Line(Construction, head.Add(geometry.Pt(-2*barb, barb/2)), head, head.Add(geometry.Pt(-2*barb, -barb/2)))
	d.LabelLine(tail, head, "grain")
}

// figures returns what the taper comes to. Where both edges are cut, "taper
// angle" and "loss at the foot" are those of one edge, and the tapers per
// length those of both together.
func (t taperTemplate) figures() []Figure {
	out := []Figure{
		{"length", measure.Length(t.Length)},
		{"top", measure.Length(t.Top)},
		{"foot", measure.Length(t.Foot)},
		{"start", measure.Length(t.Start)},
		{"length of taper", measure.Length(t.Run())},
		{"loss at the foot", measure.Length(t.Loss())},
		{"taper angle", measure.Angle(t.ToEdge())},
	}
	if t.Faces.Symmetric() {
		out = append(out, Figure{"included angle", measure.Angle(t.Included())})
	}
	return append(out,
		Figure{"taper per 100 mm", measure.Length(t.NarrowingOver(100))},
		Figure{"taper per foot", measure.Length(t.NarrowingOver(12 * measure.MillimetresPerInch))},
		Figure{"length of cut", measure.Length(t.Cuts()[0].Length())},
	)
}

// table is the figures without the taper per length of the other unit.
func (t taperTemplate) table() [][]string {
	foreign := "taper per foot"
	if t.unit == measure.Inch {
		foreign = "taper per 100 mm"
	}
	return slices.DeleteFunc(figureTable(t.figures(), t.unit), func(row []string) bool { return row[0] == foreign })
}

// offsets is the table to set the cut out by rule. A symmetric leg is
// measured from its centre line as well as from the edges of the blank.
func (t taperTemplate) offsets() Panel {
	step := 50.0
	if t.unit == measure.Inch {
		step = 2 * measure.MillimetresPerInch
	}
	bare := func(mm float64) string { return measure.Length(mm).Bare(t.unit) }
	head := []string{"from the top end", "from the reference edge", "to cut away"}
	if t.Faces.Symmetric() {
		head = []string{"from the top end", "width", "each side of the centre line", "from each edge"}
	}
	table := [][]string{head}
	for _, x := range t.Stations(step) {
		row := []string{bare(x), bare(t.Width(x))}
		if t.Faces.Symmetric() {
			row = append(row, bare(t.Width(x)/2))
		}
		table = append(table, append(row, bare(t.Lost(x))))
	}
	return Panel{Heading: "offsets, " + t.unit.String(), Table: table}
}

// cuts is the order of work, and what becomes of the offcut.
func (t taperTemplate) cuts() []string {
	const (
		flat = "Tape the offcut back, with a shim as thick as the kerf, so that the work lies flat and bears on its whole length."
		keep = "Saw beside the line, in the waste, and plane to it."
	)
	switch t.Faces {
	case joint.AdjacentFaces:
		return []string{
			"1. Mark the arris between the two faces that stay straight: the outside arris. The two tapers are cut from the faces opposite.",
			"2. Trace the right-hand template on one straight face and the left-hand template on its neighbour, both with the reference edge on that arris and the foot at the foot.",
			"3. First cut: to the line on one of them. " + keep,
			"4. " + flat,
			"5. Second cut: roll the leg a quarter turn, and cut to the line on the other.",
			"In a tapering jig one setting serves both, foot the same way and a straight face against the jig: the traced face down for the first cut, up for the second.",
			"All four legs of a set are cut alike; which way each is turned makes left and right.",
		}
	case joint.OppositeFaces:
		return []string{
			"1. Trace the template on the two faces that stay parallel, and mark the centre line on both ends. The drawing is its own mirror image and serves either hand.",
			"2. First cut: " + angleText(t.ToEdge()) + " to the reference edge. " + keep,
			"3. " + flat,
			"4. Second cut: roll the leg half a turn about its length, foot the same way, the taped edge where the reference edge was, and cut at the same setting.",
			"Without the offcut the leg would bear on its taper, and the second cut would need the included angle, " + angleText(t.Included()) + ".",
		}
	case joint.FourFaces:
		return []string{
			"1. Trace the template on all four faces before any cut, and mark the centre lines on both ends. The drawing is its own mirror image and serves either hand.",
			"2. First pair: cut one side, " + angleText(t.ToEdge()) + " to the reference edge. " + keep,
			"3. " + flat,
			"4. Roll the leg half a turn, foot the same way, and cut the other side at the same setting. Tape this offcut back too.",
			"5. Second pair: roll the leg a quarter turn and cut both sides as before. Take the tape off last.",
		}
	}
	return []string{
		"1. Trace the template on the face, its reference edge on the edge that stays straight. Use the hand that lays the foot at the foot.",
		"2. Cut to the line. " + keep,
		"3. Keep the offcut: taped back, it holds the leg parallel for joints cut later.",
	}
}

// bevels says which face a bevel on the leg is counted from.
func (t taperTemplate) bevels() []string {
	by := angleText(t.ToEdge())
	return []string{
		"A bevel taken off the tapered face differs by " + by + " from one taken off the " + t.reference() + ". Write the face beside every angle.",
		"Cut joints while the blank is square. A shoulder square to the " + t.reference() + " stands " + by + " from square on the tapered face.",
	}
}

func taperCaution() []string {
	return []string{
		"Isolate power before setting. At a saw use a tapering jig with hold-downs, the guard and a push block, and follow the machine's manual.",
		"Never trap the offcut between fence and blade. Short or thin legs are safer by hand saw and plane.",
	}
}
