package aprons

import (
	"math"

	"rodsheet/geometry"
	"rodsheet/geometry/lists"
	"rodsheet/geometry/measure"
	"rodsheet/geometry/solid"
	"rodsheet/templates/piece/assembly"
	"rodsheet/templates/piece/design"
	"rodsheet/templates/piece/kind"
	"rodsheet/templates/piece/shop"
)

// Parts returns the parts in the room with their names.
func (m Model) Parts() []assembly.Part {
	all := m.finished()
	var out []assembly.Part
	for i := range m.legs {
		out = append(out, assembly.Part{Part: all[i], Kind: "leg", Name: m.legName(i)})
	}
	n := len(m.legs)
	for _, row := range m.Rows {
		for i := range row.Rails {
			out = append(out, assembly.Part{Part: all[n], Kind: measure.ID(row.Kind.String()), Name: m.railName(row, i)})
			n++
		}
	}
	if n < len(all) {
		out = append(out, assembly.Part{Part: all[n], Kind: "top", Name: m.topName()})
	}
	return out
}

// Groups returns the figures of the table.
func (m Model) Groups() []kind.Group {
	out := []kind.Group{m.wholeGroup(), m.legGroup()}
	for _, row := range m.Rows {
		for k, r := range m.sorts(row) {
			out = append(out, m.railGroup(row, k, r))
		}
	}
	return out
}

func (m Model) wholeGroup() kind.Group {
	g := names.Group("aprons.whole")
	f := m.Design.Frame
	g.Add("aprons.height", measure.Length(f.Height))
	if size, ok := m.TopSize(); ok {
		g.Add("aprons.top-length", measure.Length(size.Length))
		g.Add("aprons.top-width", measure.Length(size.Width))
		if moves, ok := m.TopMoves(); ok {
			g.Add("aprons.top-moves", measure.Length(moves))
		}
	}
	feet := geometry.Bounds(m.feet()...)
	g.Add("aprons.feet-length", measure.Length(feet.Width()))
	g.Add("aprons.feet-width", measure.Length(feet.Height()))
	g.Add("aprons.mass", measure.Mass(m.Mass()))
	if s := m.Weakest(); !f.Top.None {
		g.Add("aprons.tipping-line", measure.Length(s.TippingLine()))
		if !math.IsInf(s.TippingLoad(0), 1) {
			g.Add("aprons.rim-load", measure.Mass(s.TippingLoad(0)))
		}
	}
	return g.Group
}

// feet returns the outer corners of the soles in plan.
func (m Model) feet() []geometry.Point {
	var out []geometry.Point
	for _, l := range m.legs {
		p := l.at.Add(l.along.Mul(l.length()))
		out = append(out, geometry.Pt(p.X, p.Y))
	}
	return out
}

// addCut adds the two angles of a cut, those that are none for programs only.
func addCut(g *assembly.Grouping, id measure.ID, p Pass) {
	g.Add(id+"-off-square", measure.Angle(math.Abs(p.Saw.OffSquare)))
	g.Add(id+"-tilt", measure.Angle(math.Abs(p.Saw.Tilt)))
}

func (m Model) legGroup() kind.Group {
	g := names.Group("aprons.leg")
	l := m.legs[0]
	resultant, sightline := m.Lean(0)
	g.Add("aprons.leg-resultant", measure.Angle(resultant))
	g.Add("aprons.leg-sightline", measure.Angle(math.Abs(sightline)))
	g.Add("aprons.leg-length", measure.Length(l.length()))
	blank := l.Blank()
	g.Add("aprons.leg-blank", measure.Length(blank.Length))
	angles := sectionAngles(l.Section())
	g.Add("aprons.leg-outer-arris", measure.Angle(angles[0]))
	g.Add("aprons.leg-beside-arris", measure.Angle(angles[1]))
	g.Add("aprons.leg-inner-arris", measure.Angle(angles[2]))
	if len(m.sides) == 4 && l.skewed() {
		g.Add("aprons.leg-out-of-square", measure.Angle(math.Abs(angles[0]-math.Pi/2)))
	}
	level := sectionAngles(l.LevelSection())
	g.Add("aprons.leg-level-arris", measure.Angle(level[0]))
	rad, wide, narrow := l.TaperAngle()
	g.Add("aprons.leg-face", measure.Length(wide))
	g.Add("aprons.leg-thickness", measure.Length(blank.Thickness))
	for _, p := range l.Passes() {
		if p.ID == "foot" {
			addCut(&g, "aprons.leg-foot", p)
		}
	}
	if l.taper.Top > 0 {
		g.Add("aprons.leg-taper-start", measure.Length(l.taper.Start))
		g.Add("aprons.leg-taper", measure.Angle(rad))
		g.Add("aprons.leg-foot-face", measure.Length(narrow))
	}
	return g.Group
}

// sectionAngles returns the angles inside the corners of a section, those of a level
// one from the corner that stands out most.
func sectionAngles(corners []geometry.Point) []float64 {
	n := len(corners)
	out := make([]float64, n)
	for i, p := range corners {
		a, b := corners[(i+n-1)%n].Sub(p), corners[(i+1)%n].Sub(p)
		out[i] = math.Acos(a.Unit().Dot(b.Unit()))
	}
	return out
}

func (m Model) railGroup(row *Row, k int, r Rail) kind.Group {
	g := names.Group(railGroups[row.Kind][m.RailSorts()-1+k])
	e, outer := r.Ends[left], 0.0
	outer, _ = row.Cheeks()
	across := func(i int) float64 { return r.Ends[right].Mouth[i].Sub(e.Mouth[i]).Dot(r.Along) }
	blank := r.Blank("")
	g.Add("aprons.rail-under", measure.Length(across(0)))
	g.Add("aprons.rail-top", measure.Length(across(1)))
	g.Add("aprons.rail-frame-under", measure.Length(across(3)))
	g.Add("aprons.rail-frame-top", measure.Length(across(2)))
	g.Add("aprons.rail-overall", measure.Length(blank.Length))
	g.Add("aprons.rail-deep", measure.Length(m.deep(row, k)))
	for _, p := range r.Passes() {
		switch p.ID {
		case "top":
			g.Add("aprons.rail-bevel", measure.Angle(math.Abs(p.Saw.Tilt)))
		case "end":
			addCut(&g, "aprons.rail-end", p)
		case "shoulder-outer":
			addCut(&g, "aprons.rail-shoulder", p)
		}
	}
	g.Add("aprons.rail-gauge", measure.Angle(math.Pi/2-math.Abs(e.Joint.Face)))
	g.Add("aprons.tenon", measure.Length(row.Tenon))
	g.Add("aprons.tenon-cheek", measure.Length(outer))
	g.Add("aprons.tenon-width", measure.Length(row.Of.Depth-row.Upper-row.Of.LowerCut))
	g.Add("aprons.tenon-long", measure.Length(r.longest()))
	return g.Group
}

// railGroups are the groups of rails: all alike, front and back, left and right.
var railGroups = [...][3]measure.ID{
	Aprons:     {"aprons.apron", "aprons.front-apron", "aprons.side-apron"},
	Stretchers: {"aprons.stretcher", "aprons.front-stretcher", "aprons.side-stretcher"},
}

// tenonLong is the longest of all tenons of a row.
func (m Model) tenonLong(row *Row) float64 { return lists.Most(m.sorts(row), Rail.longest) }

// longest returns how far the tenon runs beyond its shoulder at most, along the rail.
func (r Rail) longest() float64 {
	most := 0.0
	for _, p := range corners(r.Ends[left].tenon()[0]) {
		e := r.Ends[left]
		most = math.Max(most, e.shoulder.Height(p)/e.Joint.Square())
	}
	return most
}

// mean returns how far the tenon runs beyond its shoulder along the rail, the mean of its
// cheeks, of which a mitre shortens one: its volume over its section square to the rail.
func (r Rail) mean() float64 {
	t := r.Ends[left].tenon()[0]
	section := lists.Map(corners(t), func(p solid.Vec) geometry.Point { return geometry.Pt(p.Dot(r.In), p.Dot(r.Up)) })
	return t.Volume() / geometry.Area(geometry.Hull(section))
}

// Wares returns what is bought for one table: screws or buttons for the top.
func (m Model) Wares() []shop.Ware {
	if f, ok := m.Screws(); ok {
		return []shop.Ware{{What: shop.TopScrew, Count: len(f.Holes), Length: f.Screw}}
	}
	if n := m.Buttons(); n > 0 {
		b := m.button()
		return []shop.Ware{{What: shop.TopScrew, Count: n, Length: m.screw()}, {What: shop.TopButton, Count: n, Length: b.long, Width: b.wide, Thickness: b.thick()}}
	}
	return nil
}

// fixingsApart is the most that buttons or screws stand apart along an apron (common practice, no
// source).
const fixingsApart = 250.0

// Buttons returns how many hold the top: on each apron one for each so many mm, one at
// least.
func (m Model) Buttons() int {
	if m.Design.Frame.Top.None || m.Design.Frame.Top.Fixing != design.Buttons {
		return 0
	}
	return lists.Sum(m.Rows[0].Rails, fixings)
}

func fixings(r Rail) int { return max(1, int(math.Ceil(r.shortest()/fixingsApart))) }

// places are those of the buttons or screws along an apron, from mid-length: each in the middle
// of its share of what lies between the shoulders.
func places(r Rail) []float64 {
	out, share := make([]float64, fixings(r)), r.shortest()/float64(fixings(r))
	for k := range out {
		out[k] = share * (float64(k) - float64(len(out)-1)/2)
	}
	return out
}

// screw returns the length of the screw of a button: through its thickness and no more than
// two thirds of the top (common practice, no source).
func (m Model) screw() float64 {
	step := m.Design.Unit.Round(5, 1.0/4)
	return math.Floor((m.button().thick()+m.Design.Frame.Top.Thickness*2/3)/step+1e-9) * step
}

// MainSizes are those of the cover.
func (m Model) MainSizes() [][2]string {
	size := m.length
	feet := geometry.Bounds(m.feet()...)
	out := [][2]string{{names.Of("aprons.height"), size(m.Design.Frame.Height)}}
	if top, ok := m.TopSize(); ok {
		said := by(size(top.Length), size(top.Width))
		if m.Design.Frame.Top.Outline == design.RoundOnFrame {
			said = across.With(size(top.Length))
		}
		out = append(out, [2]string{names.Of("aprons.top"), said})
	}
	return append(out, [2]string{names.Of("aprons.feet"), by(size(feet.Width()), size(feet.Height()))})
}

// Follows are the figures that follow where their keys are not given.
func (m Model) Follows() map[design.Key]measure.Quantity {
	out := map[design.Key]measure.Quantity{}
	for i, table := range []design.Key{"frame.aprons.", "frame.stretchers."}[:len(m.Rows)] {
		out[table+"tenon"] = measure.Length(m.Rows[i].Tenon)
		if m.Rows[i].Upper > 0 {
			out[table+"upper-cut"] = measure.Length(m.Rows[i].Upper)
		}
	}
	if l := m.legs[0]; l.taper.Top > 0 {
		out["frame.legs.taper-start"] = measure.Length(l.taper.Start)
	}
	return out
}

// Dimensions are the figures that keys fix, from above and from the front.
func (m Model) Dimensions(l kind.Look) ([]kind.Dimension, []kind.Handle) {
	f := m.Design.Frame
	between := func(key design.Key, mm float64, a, b geometry.Point) kind.Dimension {
		return kind.Dimension{Key: key, Text: m.length(mm), Segment: geometry.Segment{A: a, B: b}}
	}
	corners, room := planCorners(f), geometry.Bounds(append(m.feet(), m.TopOutline()...)...)
	off := 0.06 * math.Max(room.Width(), f.Height)
	if l.View == kind.FromAbove.View { // beside the whole, which lies to the left of its lines
		y, x := room.Min.Y-off, room.Max.X+off
		out := []kind.Dimension{between("frame.length", f.Length, geometry.Pt(corners[1].X, y), geometry.Pt(corners[0].X, y))}
		if f.Shape == design.Rectangle {
			out = append(out, between("frame.width", f.Width, geometry.Pt(x, corners[2].Y), geometry.Pt(x, corners[1].Y)))
		}
		return out, nil
	}
	x := room.Max.X + off
	out := []kind.Dimension{between("frame.height", f.Height, geometry.Pt(x, f.Height), geometry.Pt(x, 0))}
	return out, []kind.Handle{{ID: "height", At: geometry.Pt(0, f.Height), Up: true}}
}
