package aprons

import (
	"math"
	"slices"
	"sync"

	"rodsheet/geometry/joint"
	"rodsheet/geometry/lists"
	"rodsheet/geometry/solid"
	"rodsheet/templates/piece/design"
)

// A RowKind says which rails of the frame are meant.
type RowKind uint8

const (
	Aprons RowKind = iota
	Stretchers
)

// A Row is the rails of one height, one on each side.
type Row struct {
	Kind  RowKind
	Of    design.Rail
	Under float64 // height of the underside over the floor
	Tenon float64 // thickness
	Upper float64 // what the tenon is narrower at the top
	Joint design.RailJoint
	Rails []Rail
}

// Top returns the height of the top of its rails over the floor.
func (r Row) Top() float64 { return r.Under + r.Of.Depth }

// A Rail is one of them. Its outer side is looked at from outside: along to the right,
// up the face, in away from the reader.
type Rail struct {
	Row           *Row
	Side          int
	Along, Up, In solid.Vec // of length 1, square to each other
	outer         solid.Plane
	Ends          [2]End               // left and right, as seen from outside
	whole         func() []solid.Solid // with its tenons, its underside straight; worked out once
}

// An End is one end of a rail at its leg.
type End struct {
	corner, takes int         // the leg, and which of its sides that take rails
	shoulder      solid.Plane // the rail inside, the leg outside
	// Mouth is the outline of the shoulder: outer side at the underside, at the top,
	// frame side at the top, at the underside.
	Mouth [4]solid.Vec
	Joint joint.Shoulder
	meets solid.Plane // where its tenon meets that of the other rail; the tenon inside
	// tenon and mortise are worked out once: the first piece, then the haunch where there is one.
	tenon, mortise func() []solid.Solid
}

// Left and right ends.
const (
	left = iota
	right
)

// newRow returns the rails of one height. Its shoulders are those of legs as they are
// by then.
func (m Model) newRow(kind RowKind, of design.Rail, under float64) *Row {
	row := &Row{Kind: kind, Of: of, Under: under, Tenon: third(of), Upper: upperCut(of), Joint: of.Joint}
	if kind == Stretchers {
		row.Joint = design.PlainTenon
	}
	for i := range m.sides {
		r := m.newRail(row, i)
		r.Ends[left] = m.newEnd(r, i, own)
		r.Ends[right] = m.newEnd(r, (i+1)%len(m.sides), before)
		row.Rails = append(row.Rails, r)
	}
	for i := range row.Rails {
		r, l := &row.Rails[i], &row.Rails[m.before(i)]
		// Tenons meet where they are equally far behind the outer sides of their rails:
		// in the plane that halves the corner.
		n := l.outer.N.Sub(r.outer.N)
		meets := solid.Plane{N: n.Unit(), D: (l.outer.D - r.outer.D) / n.Norm()}
		r.Ends[left].meets, l.Ends[right].meets = meets, meets.Flip()
	}
	for i := range row.Rails {
		r := &row.Rails[i]
		for k := range r.Ends {
			r.Ends[k].tenon = sync.OnceValue(func() []solid.Solid { return r.tenonOf(k, false) })
			r.Ends[k].mortise = sync.OnceValue(func() []solid.Solid { return r.tenonOf(k, true) })
		}
		r.whole = sync.OnceValue(r.pieces)
	}
	return row
}

// newRail returns the rail of a side without its ends. One that leans is parallel to
// the plane of its side; a plumb one is as far behind that at its top.
func (m Model) newRail(row *Row, i int) Rail {
	s := m.sides[i]
	r := Rail{Row: row, Side: i, Along: flat(s.along)}
	sin, cos := math.Sincos(s.lean)
	if row.Of.Plumb {
		// The plane of the side cuts the level of the top at D/cos lean − z·tan lean.
		r.outer = solid.Plane{N: flat(s.out), D: s.plane.D/cos - row.Top()*sin/cos - row.Of.Inset}
		r.Up, r.In = solid.V(0, 0, 1), flat(s.out).Mul(-1)
		return r
	}
	r.outer = solid.Plane{N: s.plane.N, D: s.plane.D - row.Of.Inset}
	r.Up, r.In = flat(s.out.Mul(-sin)).Add(solid.V(0, 0, cos)), s.plane.N.Mul(-1)
	return r
}

// away returns the way from the leg at one of its ends along a rail.
func (r Rail) away(end int) solid.Vec {
	if end == left {
		return r.Along
	}
	return r.Along.Mul(-1)
}

// newEnd returns the end of a rail at a leg: on its straight side, or on the tapered
// one where the rail does not lie above the taper as a whole.
func (m Model) newEnd(r Rail, corner, takes int) End {
	l := m.legs[corner]
	e := End{corner: corner, takes: takes, shoulder: l.straight(takes).Flip()}
	e.Mouth = r.mouth(e.shoulder)
	if _, low := l.span(e.Mouth[:]); l.taper.Top > 0 && low > l.taper.Start {
		e.shoulder = l.tapered(takes).Flip()
		e.Mouth = r.mouth(e.shoulder)
	}
	n, away := e.shoulder.N.Mul(-1), r.Along
	if takes == before {
		away = away.Mul(-1)
	}
	e.Joint = joint.ShoulderAgainst(solid.V(n.Dot(away), n.Dot(r.Up), n.Dot(r.In)))
	return e
}

// mouth returns the corners in which the shoulder crosses the four arrises of a rail.
func (r Rail) mouth(shoulder solid.Plane) [4]solid.Vec {
	outer, frame, top, under := r.outer, r.deep(r.Row.Of.Thickness), r.upTo(0), r.downTo(0)
	return [4]solid.Vec{
		solid.Meet(shoulder, outer, under), solid.Meet(shoulder, outer, top),
		solid.Meet(shoulder, frame, top), solid.Meet(shoulder, frame, under),
	}
}

// deep returns what is not deeper than so much below the outer side, upTo what is so
// much below the top or lower, downTo what is so much above the underside or higher.
func (r Rail) deep(mm float64) solid.Plane {
	return solid.Plane{N: r.outer.N.Mul(-1), D: mm - r.outer.D}
}

func (r Rail) upTo(below float64) solid.Plane {
	p, _ := level(r.Row.Top() - below)
	return p
}

func (r Rail) downTo(above float64) solid.Plane {
	_, p := level(r.Row.Under + above)
	return p
}

// What is cut off so that joints close (common practice, no source): each of two
// mitred tenons stays this far from where they meet, a mortise is as much deeper than
// a tenon with a square end.
const tenonRoom = 0.5

// Cheeks returns how deep below the outer side of the rail the cheeks of its tenon lie:
// in the middle of its thickness.
func (r Row) Cheeks() (outer, frame float64) {
	outer = (r.Of.Thickness - r.Tenon) / 2
	return outer, outer + r.Tenon
}

// inward returns a plane moved by so much towards what it has inside.
func inward(p solid.Plane, mm float64) solid.Plane { return solid.Plane{N: p.N, D: p.D - mm} }

// bluntAt returns the plane parallel to the shoulder that lies so far from it along the
// rail, in the leg; the shoulder inside.
//
// The shoulder has the rail inside, so the leg lies along its normal.
func (e End) bluntAt(long float64) solid.Plane { return inward(e.shoulder, -long*e.Joint.Square()) }

// tenonOf returns the tenon of an end and its haunch from the shoulder on: as it is cut, or
// the mortise for it. Both are mitred where two could meet.
func (r Rail) tenonOf(end int, mortise bool) []solid.Solid {
	e, row := r.Ends[end], r.Row
	room, deeper := tenonRoom, 0.0
	if mortise {
		room, deeper = 0, tenonRoom
	}
	outer, frame := row.Cheeks()
	stock := block(e.shoulder.Flip(), r.deep(outer).Flip(), r.deep(frame), r.upTo(0), r.downTo(row.Of.LowerCut))
	if row.Of.Long > 0 {
		stock = stock.Cut(e.bluntAt(row.Of.Long + deeper))
	} else {
		stock = stock.Cut(inward(e.meets, room))
	}
	out := []solid.Solid{stock.Cut(r.upTo(row.Upper))}
	if row.Haunch() > 0 {
		out = append(out, stock.Cut(r.upTo(row.Upper).Flip()).Cut(r.haunchEnd(e)))
	}
	return out
}

// Haunch returns how far the haunch runs along the rail: it is square in section
// (common practice, no source), or as long at its root where it slopes; 0 where there is
// none.
func (r Row) Haunch() float64 {
	if r.Joint == design.PlainTenon || r.Joint == design.Bridled {
		return 0
	}
	return r.Tenon
}

// haunchEnd returns the plane in which the haunch of an end ends.
//
// With s the distance from the shoulder, S that of a square haunch and v the height below the
// top, a sloping one ends where s = S·v/Upper.
func (r Rail) haunchEnd(e End) solid.Plane {
	if r.Row.Joint != design.SlopingHaunch {
		return e.bluntAt(r.Row.Haunch())
	}
	slope := r.Row.Haunch() * e.Joint.Square() / r.Row.Upper
	n := e.shoulder.N.Add(solid.V(0, 0, slope))
	return solid.Plane{N: n.Unit(), D: (e.shoulder.D + slope*r.Row.Top()) / n.Norm()}
}

// pieces are the body of a rail and its tenons in the room, its underside straight.
func (r *Rail) pieces() []solid.Solid {
	out := []solid.Solid{r.body()}
	for _, e := range r.Ends {
		out = append(out, e.tenon()...)
	}
	return slices.DeleteFunc(out, solid.Solid.Empty)
}

// uncut returns the rail with its tenons in the room, its underside straight.
func (r Rail) uncut(name string) solid.Part {
	return solid.Part{Name: name, Pieces: slices.Clone(r.whole())}
}

// Part returns the finished rail in the room.
func (r Rail) Part(name string) solid.Part {
	out, arch := r.uncut(name), r.arch()
	if len(arch) == 0 {
		return out
	}
	// The wood over the arch stays in one piece.
	crown := solid.Through(r.Ends[left].Mouth[0].Add(r.Up.Mul(r.Row.Of.Arch+1)), r.Up)
	over := out.Cut(crown.Flip())
	out = out.Cut(crown)
	for _, waste := range arch {
		out = out.Subtract(waste)
	}
	out.Pieces = append(out.Pieces, over.Pieces...)
	return out
}

// body is the rail between its shoulders, its underside straight.
func (r Rail) body() solid.Solid {
	return block(r.outer, r.deep(r.Row.Of.Thickness), r.upTo(0), r.downTo(0), r.Ends[left].shoulder, r.Ends[right].shoulder)
}

// archChords is how many chords stand for the arc of an underside in solids.
const archChords = 24

// Arc returns the arch of the underside: the height of its chord on the outer side,
// measured up that face, and the bow over it. ok is false where it is straight. It
// begins as far from the shoulders as the rail is thick (common practice, no source).
func (r Rail) Arc() (bow joint.CircularSegment, ok bool) {
	chord := r.Ends[left].Mouth[0].Distance(r.Ends[right].Mouth[0]) - 2*r.Row.Of.Thickness
	return joint.CircularSegment{Chord: chord, Rise: r.Row.Of.Arch}, r.Row.Of.Arch > 0
}

// arch returns what is sawn out under an arched rail, square through it, in convex
// pieces.
func (r Rail) arch() []solid.Solid {
	bow, ok := r.Arc()
	if !ok {
		return nil
	}
	mid := r.Ends[left].Mouth[0].Lerp(r.Ends[right].Mouth[0], 0.5)
	thick := r.Row.Of.Thickness
	at := func(x, y float64) solid.Vec {
		return mid.Add(r.Along.Mul(x)).Add(r.Up.Mul(y)).Sub(r.In.Mul(thick))
	}
	var out []solid.Solid
	low := -r.Row.Of.Depth
	for k := range archChords {
		a, b := bow.Chord*(float64(k)/archChords-0.5), bow.Chord*(float64(k+1)/archChords-0.5)
		base := []solid.Vec{at(a, low), at(b, low), at(b, bow.Height(b)), at(a, bow.Height(a))}
		out = append(out, solid.Prism(base, r.In.Mul(3*thick)))
	}
	return out
}

// all returns all parts of the table in the room.
func (m Model) all() []func() solid.Part {
	var out []func() solid.Part
	add := func(made func() solid.Part) { out = append(out, sync.OnceValue(made)) }
	for i := range m.legs {
		add(func() solid.Part { return m.Leg(i) })
	}
	for _, row := range m.Rows {
		for _, r := range row.Rails {
			add(func() solid.Part { return r.Part(row.Kind.String()) })
		}
	}
	if !m.Design.Frame.Top.None {
		add(m.Top)
	}
	return out
}

// rail returns the finished rail of a row on a side, in the room.
func (m Model) rail(row *Row, side int) solid.Part {
	return m.parts[len(m.legs)+int(row.Kind)*len(m.sides)+side]()
}

// solids returns all parts in the room.
func (m Model) solids() []solid.Part {
	return lists.Map(m.parts, func(made func() solid.Part) solid.Part { return made() })
}

// Leg returns the finished leg at corner i in the room.
func (m Model) Leg(i int) solid.Part {
	out := solid.Stock("leg", block(m.legs[i].planes()...))
	for _, row := range m.Rows {
		for _, mortise := range slices.Concat(row.Rails[i].Ends[left].mortise(), row.Rails[m.before(i)].Ends[right].mortise()) {
			out = out.Subtract(mortise)
		}
	}
	return out
}

// String returns the name of a rail in programs.
func (k RowKind) String() string { return [...]string{Aprons: "apron", Stretchers: "stretcher"}[k] }
