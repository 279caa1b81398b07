package aprons

import (
	"cmp"
	"math"

	"rodsheet/geometry/joint"
	"rodsheet/geometry/solid"
	"rodsheet/templates/piece"
	"rodsheet/templates/piece/design"
	"rodsheet/templates/piece/shop"
)

// A frame of a part: x along it, y across the side that lies on the table of the saw,
// z up from there; O is where x, y and z are 0.
type frame struct {
	x, y, z solid.Vec
	o       solid.Vec
}

// to returns what takes the room into the frame.
func (f frame) to() solid.Affine3 { return solid.Into(f.x, f.y, f.z, f.o) }

// frame returns that of a rail: on its outer side, x from mid-length to its right end as
// seen from outside, y up from the corner arris of its underside.
//
// Along, up and in make a left-handed frame; lying on its outer side a rail is seen from
// inside, so what runs to the right in it has its left end on the right. x is turned.
func (r Rail) frame() frame {
	mid := r.Ends[left].Mouth[0].Lerp(r.Ends[right].Mouth[0], 0.5)
	return frame{r.Along.Mul(-1), r.Up, r.In, mid}
}

// frame returns that of a leg: on the outer side that it has from its own side, x up
// from the foot along the corner arris, y from that arris towards the rail of that side.
//
// Seen from inside, foot to the left, in × up is the way along the side.
func (l leg) frame() frame {
	x, z := l.along.Mul(-1), l.outer[own].Mul(-1)
	return frame{x, z.Cross(x), z, l.at.Add(l.along.Mul(l.length()))}
}

// sorts returns a rail of each sort of a row.
func (m Model) sorts(row *Row) []Rail { return row.Rails[:m.RailSorts()] }

// count returns how many rails of a sort, or legs, there are.
func (m Model) count(sorts int) int { return len(m.sides) / sorts }

// Blank returns a rail squared to length, before its edges are bevelled: from the end of
// one tenon to that of the other.
func (r Rail) Blank(name string) piece.StockSize {
	box := r.uncut(name).Transform(r.frame().to()).Bounds().Size()
	return piece.StockSize{Length: box.X, Width: box.Y, Thickness: r.Row.Of.Thickness}
}

// trim is what a part is sawn longer at each end than its cuts need.
func (m Model) trim() float64 { return m.Design.Unit.Round(6, 1.0/4) }

// sawn returns a blank as it is squared to length, with enough at both ends for level cuts.
func (m Model) sawn(blank piece.StockSize) piece.StockSize {
	blank.Length += 2 * m.trim()
	return blank
}

// sawnRail returns the same of a rail, whose left end is sawn askew through the whole
// section of its blank before its edges or its tenons are: the right end is its mirror image.
func (m Model) sawnRail(r Rail) piece.StockSize {
	blank, end := r.Blank(""), r.frame().moved(r.end(left))
	room := r.uncut("").Transform(r.frame().to()).Bounds()
	half := 0.0
	for _, y := range []float64{room.Min.Y, room.Min.Y + blank.Width} {
		for _, z := range []float64{0, blank.Thickness} {
			half = math.Max(half, (end.D-end.N.Y*y-end.N.Z*z)/end.N.X)
		}
	}
	blank.Length = 2 * half
	return m.sawn(blank)
}

// Blank returns a leg squared to length, before it is planed out of square.
func (l leg) Blank() piece.StockSize {
	box := block(append(l.sides(), l.planes()[:2]...)...).Transform(l.frame().to()).Bounds().Size()
	return piece.StockSize{Length: box.X, Width: box.Y, Thickness: box.Z}
}

// Parts of a cut list, by row and sort.
func (m Model) partOf(k RowKind, sort int) shop.Part {
	if m.RailSorts() == 1 {
		return [...]shop.Part{Aprons: shop.Apron, Stretchers: shop.Stretcher}[k]
	}
	return [...][2]shop.Part{Aprons: {shop.FrontApron, shop.SideApron}, Stretchers: {shop.FrontStretcher, shop.SideStretcher}}[k][sort]
}

// Cuts returns the rows of the cut list.
func (m Model) Cuts() []shop.CutRow {
	d := m.Design
	l := m.legs[0]
	blank := l.Blank()
	angles := func(v ...float64) []float64 { return v }
	leg := m.parts[0]()
	finished := leg.Transform(l.frame().to()).Bounds().Size()
	out := []shop.CutRow{shop.Row(d, shop.Leg, len(m.legs), piece.StockSize{Length: finished.X, Width: finished.Y, Thickness: finished.Z}, m.sawn(blank), leg.Volume(),
		angles(d.Frame.Legs.Rake, d.Frame.Legs.Splay, float64(d.Frame.Legs.Faces), l.taper.Start, l.taper.Foot)...)}
	for _, row := range m.Rows {
		for k, r := range m.sorts(row) {
			blank := r.Blank("")
			out = append(out, shop.Row(d, m.partOf(row.Kind, k), m.count(m.RailSorts()), blank, m.sawnRail(r), m.rail(row, k).Volume(),
				angles(r.Ends[left].Joint.Face, r.Ends[left].Joint.Edge, r.shortest(), m.sides[k].lean, row.Tenon)...))
		}
	}
	if size, ok := m.TopSize(); ok {
		boards := m.TopBoards()
		board := piece.StockSize{Length: size.Length, Width: size.Width / float64(boards), Thickness: size.Thickness}
		out = append(out, shop.Row(d, shop.TopBoard, boards, board, board, m.Top().Volume()/float64(boards)))
	}
	return out
}

// TopSize returns the rectangle that the top is sawn from, its grain along the longer
// side and its corners sharp; ok is false where there is none.
func (m Model) TopSize() (size piece.StockSize, ok bool) {
	if m.Design.Frame.Top.None {
		return size, false
	}
	p := m.panel()
	return piece.StockSize{Length: math.Max(p.X, p.Y), Width: math.Min(p.X, p.Y), Thickness: m.Design.Frame.Top.Thickness}, true
}

// widestBoard is the widest board that a top is glued up from, mm (common practice, no
// source).
const widestBoard = 150.0

// TopBoards returns of how many boards the top is glued up, side by side.
func (m Model) TopBoards() int {
	size, _ := m.TopSize()
	return int(math.Ceil(size.Width/widestBoard - 1e-9))
}

// Density returns that of the wood, kg/m³: a middling hardwood where nothing is known
// (common practice, no source).
func (m Model) Density() float64 {
	wood, _ := m.Design.Wood.Known()
	return cmp.Or(m.Design.Wood.Density, wood.Density, 700)
}

// wood returns the volume of all parts. Those of a sort, and both hands of a leg, are alike.
func (m Model) wood() float64 {
	out := float64(len(m.legs))*m.parts[0]().Volume() + m.Top().Volume()
	for _, row := range m.Rows {
		for k := range m.sorts(row) {
			out += float64(m.count(m.RailSorts())) * m.rail(row, k).Volume()
		}
	}
	return out
}

// Mass returns the mass of all wood in kg.
func (m Model) Mass() float64 { return joint.Mass(m.volume(), m.Density()) }

// TopMoves returns what the width of the top changes at most over the stated change of
// moisture; ok is false where the wood or the change is not known.
func (m Model) TopMoves() (mm float64, ok bool) {
	wood, known := m.Design.Wood.Known()
	size, there := m.TopSize()
	w := m.Design.Wood
	if !known || !there || w.MoistureFrom == w.MoistureTo {
		return 0, false
	}
	change := func(c float64) float64 {
		return math.Abs(joint.Movement{Width: size.Width, Coefficient: c, From: w.MoistureFrom, To: w.MoistureTo}.Change())
	}
	return math.Max(change(wood.Radial), change(wood.Tangential)), true
}

// Standing returns the table about the tipping line of a side: its feet stand on the
// floor where the plane of the side does.
func (m Model) Standing(i int) joint.Standing {
	s := m.sides[i]
	n := len(m.sides)
	rim := 0.0
	if !m.Design.Frame.Top.None {
		rim = math.Max(rim, m.TopShape().Support(s.out))
	}
	return joint.Standing{Feet: n, FootRadius: s.plane.D / math.Cos(s.lean) / math.Cos(math.Pi/float64(n)), Rim: rim, Mass: m.Mass()}
}

// Weakest returns the standing over the line over which the least load at the rim tips
// the table.
func (m Model) Weakest() joint.Standing {
	weak := m.Standing(0)
	for i := range m.sides {
		s := m.Standing(i)
		load, least := s.TippingLoad(0), weak.TippingLoad(0)
		if load < least || load == least && s.Overhang() > weak.Overhang() {
			weak = s
		}
	}
	return weak
}

// Decided returns the design, before its stock was planed.
func (m Model) Decided() design.Design { return m.decided }
