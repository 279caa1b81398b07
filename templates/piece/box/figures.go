package box

import (
	"math"

	"rodsheet/geometry"
	"rodsheet/geometry/lists"
	"rodsheet/geometry/measure"
	"rodsheet/geometry/solid"
	"rodsheet/templates/piece"
	"rodsheet/templates/piece/assembly"
	"rodsheet/templates/piece/design"
	"rodsheet/templates/piece/kind"
	"rodsheet/templates/piece/shop"
)

// A sort is sides that are alike.
type sort struct {
	id    measure.ID
	first int // one of them
	count int
	part  shop.Part
}

// sorts are those of the box: of a rectangle front and back, and the ends.
func (b Box) sorts() []sort {
	if b.design.Box.Outline == design.RegularBox && b.mitred() {
		return []sort{{"side", 0, len(b.faces), shop.BoxSide}}
	}
	half := len(b.faces) / 2
	return []sort{{"long", 0, half, shop.BoxLongSide}, {"end", 1, half, shop.BoxEnd}}
}

func (b Box) sortOf(i int) sort {
	all := b.sorts()
	return all[i%len(all)]
}

// longest returns how long side i is from tip to tip, over both faces, its edges still
// square where it is dovetailed.
func (b Box) longest(i int) float64 {
	most := 0.0
	for _, outer := range []bool{true, false} {
		low, high := b.downEdges(i, outer)
		most = math.Max(most, math.Max(low, high))
	}
	return most
}

// table takes side i to a saw table, the outer face down or else the inner one: y up the
// face from the lower edge of the outer face, x along it from the middle, the third axis up.
func (b Box) table(i int, outerDown bool) solid.Affine3 {
	f := b.faces[i]
	x, y, up, at := f.along().Mul(-1), f.up(), f.normal().Mul(-1), f.out.Mul(f.apothem)
	if !outerDown {
		x, up, at = f.along(), f.normal(), at.Sub(f.normal().Mul(b.thickness()))
	}
	return solid.Into(x, y, up, at)
}

// Groups are all figures.
func (b Box) Groups() []kind.Group {
	d := b.design.Box
	g := names().Group("box")
	g.Add("box.sides", measure.Number(float64(len(b.faces))))
	g.Add("box.height", measure.Length(d.Height))
	g.Add("box.thickness", measure.Length(d.Thickness))
	low, high := b.extent(0), b.extent(d.Height)
	g.Add("box.across-below", measure.Length(low.X))
	g.Add("box.across-rim", measure.Length(high.X))
	g.Add("box.deep-below", measure.Length(low.Y))
	g.Add("box.deep-rim", measure.Length(high.Y))
	g.Add("box.capacity", measure.Volume(b.capacity()))
	g.Add("box.weight", measure.Mass(b.mass()))
	out := []kind.Group{g.Group}
	for _, s := range b.sorts() {
		out = append(out, b.sideGroup(s))
	}
	out = append(out, b.cornerGroup())
	if bottom, ok := b.bottom(); ok {
		g := names().Group("bottom")
		size := bottom.Bounds().Size()
		g.Add("bottom.length", measure.Length(size.X))
		g.Add("bottom.width", measure.Length(size.Y))
		g.Add("bottom.thickness", measure.Length(d.Bottom.Thickness))
		for _, s := range b.sorts() {
			g.Add("bottom.edge-tilt."+s.id, measure.Angle(math.Abs(b.faces[s.first].slope)))
		}
		out = append(out, g.Group)
	}
	return out
}

func (b Box) sideGroup(s sort) kind.Group {
	i, id := s.first, func(what measure.ID) measure.ID { return s.id + "." + what }
	c := b.corner(i)
	g := names().Group(s.id)
	g.Add(id("count"), measure.Number(float64(s.count)))
	g.Add(id("slope"), measure.Angle(b.faces[i].slope))
	g.Add(id("from-level"), measure.Angle(math.Pi/2-b.faces[i].slope))
	g.Add(id("lower-edge"), measure.Length(b.edge(i, 0)))
	g.Add(id("upper-edge"), measure.Length(b.edge(i, b.design.Box.Height)))
	g.Add(id("longest"), measure.Length(b.longest(i)))
	g.Add(id("wide"), measure.Length(b.wide(i)))
	g.Add(id("blank"), measure.Length(b.blank(i)))
	g.Add(id("off-square"), measure.Angle(math.Abs(c.OffSquare())))
	g.Add(id("bevel"), measure.Angle(math.Pi/2-math.Abs(c.OffSquare())))
	g.Add(id("tilt"), measure.Angle(math.Abs(b.tilt(i))))
	g.Add(id("edge-tilt"), measure.Angle(math.Abs(b.faces[i].slope)))
	return g.Group
}

func (b Box) cornerGroup() kind.Group {
	g := names().Group("corner")
	c := b.corner(0)
	g.Add("corner.plan", measure.Angle(c.Angle))
	g.Add("corner.dihedral", measure.Angle(c.Dihedral()))
	if b.mitred() {
		g.Add("corner.mitre-wide", measure.Length(b.mitre()))
	}
	if b.dovetailed() {
		d := b.dovetail()
		g.Add("corner.tails", measure.Number(float64(d.Tails)))
		g.Add("corner.tail", measure.Length(d.Tail()))
		g.Add("corner.pin", measure.Length(d.Pin))
		g.Add("corner.half-pin", measure.Length(d.HalfPin))
		g.Add("corner.tail-long", measure.Length(d.TailLength()))
	}
	if b.splined() {
		g.Add("corner.spline", measure.Length(b.splineThick()))
		g.Add("corner.spline-deep", measure.Length(splineDeep*b.thickness()))
		g.Add("corner.spline-from-inside", measure.Length(splinePlace*b.mitre()))
	}
	return g.Group
}

// mitre returns how wide the mitre is, square to the line in which the faces meet: the
// thickness lies across it, tilted.
func (b Box) mitre() float64 { return b.thickness() / math.Cos(b.tilt(0)) }

// extent returns the size of the outside at a height.
func (b Box) extent(z float64) geometry.Point {
	return geometry.Bounds(b.outline(z, 0)...).Size()
}

// outline returns what the faces, moved inward by so much, enclose at a height.
func (b Box) outline(z, inward float64) []geometry.Point {
	level := solid.Plane{N: solid.V(0, 0, 1), D: z}
	var out []geometry.Point
	for i := range b.faces {
		p := solid.Meet(b.faces[b.before(i)].inside(inward), b.faces[i].inside(inward), level)
		out = append(out, geometry.Pt(p.X, p.Y))
	}
	return out
}

// mass returns that of all parts in kg.
func (b Box) mass() float64 {
	return lists.Sum(b.Parts(), func(p assembly.Part) float64 { return p.Volume() }) * piece.DensityOf(b.design) / 1e9
}

// Parts returns the sides, the splines and the bottom.
func (b Box) Parts() []assembly.Part {
	var out []assembly.Part
	for i := range b.faces {
		s := b.sortOf(i)
		name := sized.With(sideNames[s.id].With(i+1), b.mm(b.longest(i)), b.mm(b.wide(i)), b.mm(b.thickness()))
		out = append(out, assembly.Part{Part: b.side(i), Kind: "side", Name: name})
	}
	if b.splined() {
		for i := range b.faces {
			out = append(out, assembly.Part{Part: solid.Stock("", b.spline(i)), Kind: "spline", Name: splineName.With(i + 1)})
		}
	}
	if s, ok := b.bottom(); ok {
		out = append(out, assembly.Part{Part: solid.Stock("", s), Kind: "bottom", Name: bottomName.With(b.mm(b.design.Box.Bottom.Thickness))})
	}
	return out
}

func (b Box) mm(v float64) string { return measure.Length(v).Text(b.design.Unit) }

func (b Box) angle(v float64) string { return measure.Angle(v).Text(b.design.Unit) }

// trim is what the blank of a side is longer at either end, to saw off.
func (b Box) trim() float64 { return b.design.Unit.Round(10, 3.0/8) }

// squared is how long side i is when its ends are sawn square.
func (b Box) squared(i int) float64 { return b.longest(i) + 2*b.trim() }

// shortest is the least length of a board that small pieces are sawn from (common practice,
// no source).
func (b Box) shortest() float64 { return b.design.Unit.Round(300, 12) }

// Cuts are the parts as they are sawn from boards.
func (b Box) Cuts() []shop.CutRow {
	var out []shop.CutRow
	t := b.thickness()
	for _, s := range b.sorts() {
		long := b.longest(s.first)
		finished := piece.StockSize{Length: long, Width: b.blank(s.first), Thickness: t}
		sawn := finished
		sawn.Length = b.squared(s.first)
		out = append(out, shop.Row(b.design, s.part, s.count, finished, sawn, b.side(s.first).Volume(), b.faces[s.first].slope, b.corner(s.first).OffSquare(), b.tilt(s.first)))
	}
	if b.splined() {
		// The grain of a spline runs across the joint: all are crosscut from one board as wide
		// as the corner is long, and long enough to be planed.
		n := float64(len(b.faces) + b.design.Wood.Spares)
		size := piece.StockSize{Length: 2 * splineDeep * t, Width: b.cornerLong(), Thickness: b.splineThick()}
		stock := size
		stock.Length = math.Max(n*(size.Length+b.design.Saw.Kerf), b.shortest())
		out = append(out, shop.RowOfStock(b.design, shop.BoxSpline, stock, float64(len(b.faces))*b.spline(0).Volume()))
	}
	if n := b.wedges(); n > 0 {
		// Two from each length, head to tail, their grain along the side; what stays in the hand
		// when the last is sawn off is common practice, no source.
		corners, kerf := b.wedgeCorners(), 2*b.design.Saw.Kerf
		long := math.Max(math.Ceil(float64(n)/2)*(corners[1].X+kerf)+b.design.Unit.Round(100, 4), b.shortest())
		stock := piece.StockSize{Length: long, Width: corners[2].Y + kerf, Thickness: t}
		out = append(out, shop.RowOfStock(b.design, shop.BoxWedge, stock, 0))
	}
	if s, ok := b.bottom(); ok {
		size := s.Bounds().Size()
		board := piece.StockSize{Length: math.Max(size.X, size.Y), Width: math.Min(size.X, size.Y), Thickness: b.design.Box.Bottom.Thickness}
		sawn := board
		sawn.Length += 2 * b.trim()
		out = append(out, shop.Row(b.design, shop.BoxBottom, 1, board, sawn, s.Volume()))
	}
	return out
}

// cornerLong returns the length of the arris of a corner.
func (b Box) cornerLong() float64 {
	at := func(z float64) solid.Vec {
		return solid.Meet(b.faces[0].inside(0), b.faces[1].inside(0), solid.Plane{N: solid.V(0, 0, 1), D: z})
	}
	return at(b.design.Box.Height).Distance(at(0))
}

// Wares is nothing: a box is held by glue.
func (b Box) Wares() []shop.Ware { return nil }

// MainSizes are those of the cover.
func (b Box) MainSizes() [][2]string {
	low, high := b.extent(0), b.extent(b.design.Box.Height)
	rows := [][2]string{
		{mainHeight.With(), b.mm(b.design.Box.Height)},
		{mainBelow.With(), times.With(b.mm(low.X), b.mm(low.Y))},
		{mainRim.With(), times.With(b.mm(high.X), b.mm(high.Y))},
		{mainThickness.With(), b.mm(b.thickness())},
		{mainCapacity.With(), measure.Volume(b.capacity()).Text(b.design.Unit)},
	}
	for _, s := range b.sorts() {
		rows = append(rows, [2]string{mainSlope.With(sortNames[s.id].With()), b.angle(b.faces[s.first].slope)})
	}
	return rows
}

// Dimensions are those of the plan and of the elevation.
func (b Box) Dimensions(l kind.Look) (out []kind.Dimension, hold []kind.Handle) {
	d := b.design.Box
	low, high := b.outline(0, 0), b.outline(d.Height, 0)
	wide := geometry.Bounds(append(low, high...)...)
	off := 0.12 * wide.Width()
	add := func(key design.Key, text string, a, c geometry.Point) {
		out = append(out, kind.Dimension{Key: key, Text: text, Segment: geometry.Segment{A: a, B: c}})
	}
	below, rim := design.Key("box.side"), design.Key("box.rim-side")
	if d.Outline == design.RectangleBox {
		below, rim = "box.length", "box.rim-length"
	}
	if l.View == kind.FromAbove.View {
		// The first side is the front one, from low[0] to low[1].
		y := wide.Min.Y - off/2
		add(below, b.mm(low[0].Distance(low[1])), geometry.Pt(low[0].X, y), geometry.Pt(low[1].X, y))
		return out, nil
	}
	add("box.height", b.mm(d.Height), geometry.Pt(wide.Min.X-off, 0), geometry.Pt(wide.Min.X-off, d.Height))
	y := d.Height + off/2
	add(rim, b.mm(high[0].Distance(high[1])), geometry.Pt(high[0].X, y), geometry.Pt(high[1].X, y))
	return out, []kind.Handle{{ID: "height", At: geometry.Pt(0, d.Height), Up: true}}
}

// Joint is the front corner on the right, at the rim.
func (b Box) Joint() (at solid.Vec, reach float64) {
	rim := b.outline(b.design.Box.Height, b.thickness()/2)[1]
	reach = math.Min(4*b.thickness(), b.design.Box.Height)
	return solid.V(rim.X, rim.Y, b.design.Box.Height-reach/2), reach
}

// grips is the height.
func (b Box) grips() map[measure.ID]assembly.Grip[Box] {
	return map[measure.ID]assembly.Grip[Box]{"height": {Key: "box.height", Up: true}}
}

// Follows are the figures that follow where they are not given.
func (b Box) Follows() map[design.Key]measure.Quantity {
	high := b.outline(b.design.Box.Height, 0)
	rim := func(i int) measure.Quantity { return measure.Length(high[i].Distance(high[i+1])) }
	out := map[design.Key]measure.Quantity{"box.slope": measure.Angle(b.faces[0].slope)}
	if b.splined() {
		out["box.spline"] = measure.Length(b.splineThick())
	}
	if b.dovetailed() {
		out["box.tails"] = measure.Number(float64(b.dovetail().Tails))
	}
	if b.design.Box.Outline == design.RegularBox {
		out["box.rim-side"] = rim(0)
		return out
	}
	out["box.end-slope"], out["box.rim-length"], out["box.rim-width"] = measure.Angle(b.faces[1].slope), rim(0), rim(1)
	return out
}
