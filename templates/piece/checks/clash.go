package checks

import (
	"fmt"
	"strings"

	"rodsheet/geometry/measure"
	"rodsheet/geometry/solid"
	"rodsheet/templates/piece"
	"rodsheet/templates/piece/design"
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
		out = append(out, pair{a, len(m.parts) - 1})
	}
	return out
}

// askClash asks whether two parts want the same wood, by the exact
// intersection of their solids.
func askClash(m model) []Check {
	room := extents(m.parts)
	var out []Check
	for _, q := range m.pairs() {
		if !room[q.a].Overlaps(room[q.b]) {
			continue
		}
		a, b := m.parts[q.a], m.parts[q.b]
		if shared := solid.Clash(a, b); len(shared) > 0 {
			out = append(out, m.clash(q, shared))
		}
	}
	if out == nil {
		out = []Check{{Name: "parts and parts", Words: fmt.Sprintf(
			"No two of the %d parts want the same wood.", len(m.parts))}}
	}
	return out
}

// extents returns the room that each part takes.
func extents(parts []solid.Part) []solid.Extent {
	out := make([]solid.Extent, len(parts))
	for i, p := range parts {
		out[i] = p.Bounds()
	}
	return out
}

// clash returns the check of a pair of parts that share the given solids. The
// place is told from the stretcher of the first of them.
func (m model) clash(q pair, shared []solid.Solid) Check {
	a, b := m.parts[q.a], m.parts[q.b]
	side := q.a / m.kinds()
	all := solid.Part{Pieces: shared}
	e := fromStretcher(m.Piece, side, all)
	size := e.Size()
	c := limited(a.Name+" and "+b.Name, "overlap", measure.Length(min(size.X, size.Y, size.Z)),
		atMost, measure.Length(0), Fail)
	c.Grade = Fail
	c.Words = fmt.Sprintf("%s and %s want the same wood, %s of it, in a space of %s × %s × %s: %s.",
		a.Name, b.Name, m.Say(measure.Volume(all.Volume())), m.MM(size.X), m.MM(size.Y), m.MM(size.Z), room(m.Piece, side, e))
	if !m.askedAlone(q) {
		c.Words += " So it is at every corner."
	}
	return c
}

// askedAlone reports whether a pair stands for itself only: a part under a top
// that is not alike all round.
func (m model) askedAlone(q pair) bool {
	return m.Design.Top.Kind != design.NoTop && m.Design.Top.Outline == design.FreeOutline && q.b == len(m.parts)-1
}

// kinds returns how many parts each side has.
func (m model) kinds() int { return len(m.parts) / m.Frame.Ring.Sides }

// fromStretcher returns the extent of a part in the frame of the stretcher of a
// side. That of the first side is not turned.
func fromStretcher(p piece.Piece, side int, part solid.Part) solid.Extent {
	back := solid.TurnZ(-float64(side) * p.Frame.Ring.Polygon().Turn())
	return part.Transform(back.Then(solid.Translate(p.Place(0).O.Mul(-1)))).Bounds()
}

// room says where an extent lies on the stretcher of a side.
func room(p piece.Piece, side int, e solid.Extent) string {
	return fmt.Sprintf("along stretcher %d from %s to %s from mid-length towards its leg,"+
		" from %s to %s outward of its inside edge, and from %s to %s above its underside", side+1,
		p.Bare(e.Min.X), p.MM(e.Max.X), p.Bare(e.Min.Y), p.MM(e.Max.Y), p.Bare(e.Min.Z), p.MM(e.Max.Z))
}

// fixClash offers what moves parts out of each other's way: the changes of
// the leg's head, of the ends, of the head under the top and of the pads.
func fixClash(m model, c Check) []change {
	out := fixHead(m.Piece, c)
	out = append(out, fixEnds(m, c)...)
	out = append(out, lowerHead(m.Piece)...)
	if !strings.Contains(c.Name, "pad") {
		return out
	}
	return append(out, movePads(m.Piece, func(w piece.Piece) bool { return withSolids(w).free(c.Name) })...)
}

// free reports whether the parts named by a check do not clash.
func (m model) free(name string) bool {
	for _, c := range askClash(m) {
		if c.Name == name {
			return false
		}
	}
	return true
}

// stretcherBar and bars are what is moved when the ring is put together: a
// stretcher alone, or with its leg on. They stand where they do in the closed
// ring, at the first side.
func (m model) stretcherBar() []solid.Part { return m.parts[:1] }
func (m model) bars() []solid.Part         { return m.parts[:2] }
