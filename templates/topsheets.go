package templates

import (
	"math"
	"slices"
	"strconv"

	"rodsheet/geometry"
	"rodsheet/geometry/joint"
	"rodsheet/geometry/lists"
	"rodsheet/geometry/measure"
)

// A top as makers set it out: a plan with figures, and a sheet of each corner that
// differs. The whole outline is printed in a full setting only.

// TopPlan shows a top with the numbers of its corners and its centre lines, to scale.
func TopPlan(t joint.Top) Picture {
	outline := t.Outline()
	box := geometry.Bounds(outline...)
	p := Picture{Heading: say(topPlanHeading), Strokes: []Stroke{
		{Cut, geometry.Closed(outline)},
		{Centre, []geometry.Point{geometry.Pt(box.Min.X, 0), geometry.Pt(box.Max.X, 0)}},
		{Centre, []geometry.Point{geometry.Pt(0, box.Min.Y), geometry.Pt(0, box.Max.Y)}},
	}}
	for i, c := range t.Corners {
		p.LabelLine(c, c, tag("corner-n", strconv.Itoa(i+1)))
	}
	return p
}

// TopCornerTable gives what sets out a top with straight edges by rule: where every
// corner is from the centre lines and, as proof, how far it is to the next and to the
// first. Corners are those before they are clipped or rounded.
func TopCornerTable(t joint.Top, u measure.Unit) Panel {
	length := func(mm float64) string { return measure.Length(mm).Text(u) }
	p := Panel{Heading: say(topCornersHeading), Table: [][]string{topCornersHead()}, Text: topCornersWords()}
	for i, c := range t.Corners {
		next := t.Corners[(i+1)%len(t.Corners)]
		p.Table = append(p.Table, []string{
			strconv.Itoa(i + 1), length(c.X), length(c.Y), length(c.Distance(next)), length(c.Distance(t.Corners[0])),
		})
	}
	return p
}

// TopCorners returns one drawing of each corner that differs from those before it. A
// corner is its own mirror image, so it serves all that have its angle. A sharp one of
// 90° is left to the square. grain is the direction of the grain in plan, the zero
// Point for none; it is shown as it runs at the corner that is named first.
func TopCorners(top joint.Top, grain geometry.Point, s Setting) []Drawing {
	t := topTemplate{top, s}
	sharp := t.Clip == 0 && t.Round == 0
	var out []Drawing
	for _, same := range t.alike() {
		if sharp && math.Abs(t.Turn(same[0])-math.Pi/2) < 1e-6 {
			continue
		}
		out = append(out, t.corner(same, grain))
	}
	return out
}

// TopCornerViews returns the views of the corners that differ, whether they have a
// drawing or not.
func TopCornerViews(top joint.Top) []View {
	return lists.Map((topTemplate{Top: top}).alike(), func(same []int) View { return cornerView(same[0]) })
}

// cornerView is that of corner i, from 0.
func cornerView(i int) View {
	return View{Part: "top", Face: measure.ID("corner-" + strconv.Itoa(i+1))}
}

// alike returns the numbers of the corners, from 0, those of one angle together.
func (t topTemplate) alike() [][]int {
	var out [][]int
	for i := range t.Corners {
		k := slices.IndexFunc(out, func(same []int) bool { return math.Abs(t.Turn(same[0])-t.Turn(i)) < 1e-6 })
		if k < 0 {
			k, out = len(out), append(out, nil)
		}
		out[k] = append(out[k], i)
	}
	return out
}

// corner draws the first of some corners that are alike, as it lies in plan, the sharp
// corner in the origin.
func (t topTemplate) corner(same []int, grain geometry.Point) Drawing {
	i, n := same[0], len(t.Corners)
	at := t.Corners[i]
	ways := [2]geometry.Point{t.Corners[(i+n-1)%n].Sub(at), t.Corners[(i+1)%n].Sub(at)}
	worked := t.worksBack(i)
	shown := t.shown(worked, ways)
	ends := [2]geometry.Point{ways[0].Unit().Mul(shown[0]), ways[1].Unit().Mul(shown[1])}

	line := []geometry.Point{ends[0]}
	for _, p := range t.Worked(i) {
		line = append(line, p.Sub(at))
	}
	line = append(line, ends[1])
	d := Drawing{Free: true}
	d.Line(Cut, line...)
	for k, to := range [2]int{(i + n - 1) % n, (i + 1) % n} {
		from := ways[k].Unit().Mul(worked)
		if worked > 0 {
			d.Line(Construction, geometry.Point{}, from)
		}
		d.LabelLine(from, ends[k], tag("edge-to-corner", strconv.Itoa(to+1)))
	}
	angle := angleText(math.Pi - t.Turn(i))
	d.LabelPoint(geometry.Point{}, tag("sharp-corner", strconv.Itoa(i+1), angle, t.worked(cornerClipped, cornerRounded)))
	if grain != (geometry.Point{}) {
		t.grainAt(&d, ends, grain.Unit(), i)
	}
	numbers := lists.Map(same, func(c int) string { return strconv.Itoa(c + 1) })
	return d.Of(cornerView(i), topCornerName(numbers, angle))
}

// worksBack returns how far from corner i its clip or its arc begins on both edges.
func (t topTemplate) worksBack(i int) float64 { return t.Worked(i)[0].Distance(t.Corners[i]) }

// shown returns how much of the two edges is drawn, from the sharp corner: half as much
// again as sets a rule or, where the sheet or the work on the next corners does not
// allow it, what they do, if the sheet offers half a rule.
func (t topTemplate) shown(worked float64, ways [2]geometry.Point) (out [2]float64) {
	step, rule := t.Unit.Round(10, 1.0/2), t.Unit.Round(100, 4)
	fits := func(shown float64) bool {
		return t.holds(geometry.Bounds(geometry.Point{}, ways[0].Unit().Mul(shown), ways[1].Unit().Mul(shown)))
	}
	wanted := worked + rule/2
	for wanted < worked+1.5*rule && fits(wanted+step) {
		wanted += step
	}
	for k, way := range ways {
		out[k] = math.Min(wanted, way.Norm()-worked)
	}
	return out
}

// grainAt draws the arrow along the grain beside the corner, in the wood.
func (t topTemplate) grainAt(d *Drawing, ends [2]geometry.Point, grain geometry.Point, corner int) {
	long := math.Min(ends[0].Norm(), ends[1].Norm()) / 3
	middle := ends[0].Add(ends[1]).Mul(0.4)
	tail, head := middle.Sub(grain.Mul(long/2)), middle.Add(grain.Mul(long/2))
	back := grain.Mul(-4)
	d.Line(Construction, tail, head)
	d.Line(Construction, head.Add(back).Add(back.Perp().Mul(0.25)), head, head.Add(back).Sub(back.Perp().Mul(0.25)))
	d.LabelLine(tail, head, tag("grain-at-corner", strconv.Itoa(corner+1)))
}
