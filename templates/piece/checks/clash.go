package checks

import (
	"rodsheet/geometry/lists"
	"rodsheet/geometry/measure"
	"rodsheet/geometry/solid"
	"rodsheet/templates/piece"
	"rodsheet/templates/piece/design"
	"rodsheet/templates/piece/kind"
)

// A pair is two parts, by their places in Parts.
type pair struct{ a, b int }

// pairs returns the pairs of parts that differ by more than a turn of the
// whole about its axis: one part of each kind of the first stretcher, with
// every part that follows. A top with an outline of its own is asked against
// every part.
func (m model) pairs() []pair {
	sides := m.Frame.Ring.Sides
	kinds := m.kinds()
	var out []pair
	for a := range kinds {
		for side := range sides {
			for kind := a; kind < kinds; kind++ {
				// Of two parts of one kind, half the turns are the other half seen back.
				if kind == a && (side == 0 || 2*side > sides) {
					continue
				}
				out = append(out, pair{a, side*kinds + kind})
			}
		}
	}
	if m.Design.Top.Kind == design.NoTop {
		return out
	}
	asked := kinds
	if m.Design.Top.Outline == design.FreeOutline {
		asked *= sides
	}
	for a := range asked {
		out = append(out, pair{a, len(m.parts()) - 1})
	}
	return out
}

// askClash asks whether two parts clash, by the exact intersection of their
// solids.
func askClash(m model) []Check {
	parts := m.parts()
	room := lists.Map(parts, solid.Part.Bounds)
	var out []Check
	for _, q := range m.pairs() {
		if !room[q.a].Overlaps(room[q.b]) {
			continue
		}
		if shared := solid.Clash(parts[q.a], parts[q.b]); len(shared) > 0 {
			out = append(out, m.clash(q, shared))
		}
	}
	if out == nil {
		none := finding(kind.Pass, Holds)
		none.Found.Figures = []measure.Quantity{measure.Number(float64(len(parts)))}
		return []Check{none}
	}
	return out
}

// Remarks on two parts that clash: there alone, or at every corner alike.
const (
	Here       measure.ID = "here"
	Everywhere measure.ID = "everywhere"
)

// clash returns the check of a pair of parts that share the given solids. Its
// figures are their volume and size, the number of the stretcher of the first
// part, and where they lie on that one: along it, outward and above.
func (m model) clash(q pair, shared []solid.Solid) Check {
	side := q.a / m.kinds()
	all := solid.Part{Pieces: shared}
	e := fromStretcher(m.Piece, side, all)
	size := e.Size()
	c := atMost("overlap", min(size.X, size.Y, size.Z), 0, kind.Fail)
	c.Grade, c.Found.ID = kind.Fail, Everywhere
	if m.askedAlone(q) {
		c.Found.ID = Here
	}
	c.Of = Subject{A: m.partAt(q.a), B: m.partAt(q.b)}
	c.Found.Figures = append([]measure.Quantity{measure.Volume(all.Volume()), measure.Number(float64(side + 1))},
		lengths(size.X, size.Y, size.Z, e.Min.X, e.Max.X, e.Min.Y, e.Max.Y, e.Min.Z, e.Max.Z)...)
	return c
}

// askedAlone reports whether a pair stands for itself only: a part under a top
// that is not alike all round.
func (m model) askedAlone(q pair) bool {
	return m.Design.Top.Kind != design.NoTop && m.Design.Top.Outline == design.FreeOutline && q.b == len(m.parts())-1
}

// kinds returns how many parts each side has.
func (m model) kinds() int { return len(m.parts()) / m.Frame.Ring.Sides }

// partAt tells which part stands at a place in Parts.
func (m model) partAt(i int) Part {
	kinds := m.kinds()
	if i == kinds*m.Frame.Ring.Sides {
		return Part{Kind: Top}
	}
	return Part{[]measure.ID{Stretcher, Leg, Pad}[i%kinds], i/kinds + 1}
}

// fromStretcher returns the extent of a part in the frame of the stretcher of a
// side. That of the first side is not turned.
func fromStretcher(p piece.Piece, side int, part solid.Part) solid.Extent {
	back := solid.RotateZ(-float64(side) * p.Frame.Ring.Polygon().Turn())
	return part.Transform(back.Then(solid.Translate(p.Place(0).O.Mul(-1)))).Bounds()
}

// fixClash offers what moves parts out of each other's way: the changes of
// the leg's head, of the ends, of the head under the top and of the pads.
func fixClash(m model, c Check, holds func(piece.Piece) bool) []change {
	out := clearHead(m.Piece, 0)
	out = append(out, fixEnds(m, c, nil)...)
	out = append(out, lowerHead(m.Piece, nil)...)
	if c.Of.A.Kind != Pad && c.Of.B.Kind != Pad {
		return out
	}
	return append(out, movePads(less)(m.Piece, holds)...)
}

// stretcherBar and bars are what is moved when the ring is put together: a
// stretcher alone, or with its leg on. They stand where they do in the closed
// ring, at the first side.
func (m model) stretcherBar() []solid.Part { return m.parts()[:1] }
func (m model) bars() []solid.Part         { return m.parts()[:2] }
