package drawings

import (
	"math"

	"rodsheet/geometry"
	"rodsheet/geometry/solid"
	"rodsheet/templates"
)

// fromRingSide is how a part is looked at on a card, in the frame of its blank:
// the ring side to the front, top or stretcher side up, leg end or head to the right.
func fromRingSide() solid.View { return solid.Look(solid.V(0.5, -1, 0.6), solid.V(0, 0, 1)) }

// afterwards shows a part as it is once a card is done, what the card has taken
// in thin lines. The middle of a long part is left out.
func afterwards(before, after solid.Part) templates.Picture {
	k := Sketch{Picture: templates.Picture{NoScale: true}, To: geometry.Identity()}
	v, waste := fromRingSide(), without(before, after)
	g := gapOf(before, waste)
	Toned(&k.Picture, g.close(after), v)
	taken, _ := solid.Project(g.close(waste), v)
	k.Lines(templates.Construction, taken)
	for _, across := range g.lines(before) {
		k.Line(templates.Centre, v.Point(across[0]), v.Point(across[1]))
	}
	return k.Picture
}

// A breakOut is the middle of a long part that a picture leaves out, between two
// places along it. Where From is not below To there is none.
type breakOut struct{ From, To, Gap float64 }

// gapOf leaves of each end so much that what is cut there is seen whole.
func gapOf(p, waste solid.Part) breakOut {
	room := p.Bounds()
	section := math.Max(room.Size().Y, room.Size().Z)
	mid := (room.Min.X + room.Max.X) / 2
	g := breakOut{room.Min.X + 3*section, room.Max.X - 3*section, section / 2}
	for _, s := range waste.Pieces {
		switch b := s.Bounds(); {
		case b.Max.X < mid:
			g.From = math.Max(g.From, b.Max.X+section)
		case b.Min.X > mid:
			g.To = math.Min(g.To, b.Min.X-section)
		default:
			g.From, g.To = mid, mid
		}
	}
	if g.To-g.From < 2*section {
		return breakOut{}
	}
	return g
}

// close moves the right end up to the left one, but for a gap.
func (g breakOut) close(p solid.Part) []solid.Part {
	if g.From >= g.To {
		return []solid.Part{p}
	}
	left := p.Cut(solid.Plane{N: solid.V(1, 0, 0), D: g.From})
	right := p.Cut(solid.Plane{N: solid.V(-1, 0, 0), D: -g.To})
	return []solid.Part{left, right.Transform(solid.Translate(solid.V(g.From+g.Gap-g.To, 0, 0)))}
}

// lines returns the edges of the section over the gap.
func (g breakOut) lines(p solid.Part) [][2]solid.Vec {
	if g.From >= g.To {
		return nil
	}
	room := p.Bounds()
	var out [][2]solid.Vec
	for _, c := range [3][2]float64{{room.Min.Y, room.Min.Z}, {room.Min.Y, room.Max.Z}, {room.Max.Y, room.Max.Z}} {
		out = append(out, [2]solid.Vec{solid.V(g.From, c[0], c[1]), solid.V(g.From+g.Gap, c[0], c[1])})
	}
	return out
}
