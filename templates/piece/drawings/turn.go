package drawings

import (
	"math"

	"rodsheet/geometry"
	"rodsheet/geometry/lists"
	"rodsheet/geometry/measure"
	"rodsheet/geometry/solid"
	"rodsheet/templates"
	"rodsheet/templates/piece/shop"
)

// fromMaker is how the table is looked at by the maker who stands at it.
func fromMaker() solid.View { return solid.Look(solid.V(0.4, -1, 0.9), solid.V(0, 0, 1)) }

// A halfTurn is a turn of a part: the two directions that the arrow turns between,
// and how far from the middle of the part it runs, as a share of its length.
type halfTurn struct {
	from, to solid.Vec
	reach    float64
	id       measure.ID
}

// turnArrows are the arrows of the turns that are drawn: round an upright axis, round
// one across the part, round its length.
var turnArrows = map[shop.Turn]halfTurn{
	shop.EndForEnd:     {solid.V(-1, 0, 0), solid.V(0, -1, 0), 0.35, "end-for-end"},
	shop.Tumbled:       {solid.V(-1, 0, 0), solid.V(0, 0, 1), 0.35, "tumbled"},
	shop.RolledHalf:    {solid.V(0, -1, 0), solid.V(0, 0, 1), 0, "rolled-half"},
	shop.RolledQuarter: {solid.V(0, -1, 0), solid.V(0, 0, 1), 0, "rolled-quarter"},
}

// turned shows how a part is turned to its next lie, from how it lies at first.
func turned(first shop.Work, t shop.Turn) (templates.Picture, bool) {
	by, ok := turnArrows[t]
	if !ok {
		return templates.Picture{}, false
	}
	at := first.At
	if first.Mirrored() {
		at = at.Then(solid.Mirror(solid.Plane{N: solid.V(1, 0, 0)}))
	}
	g := gapOf(first.After, solid.Part{})
	parts := lists.Map(g.close(first.After), func(p solid.Part) solid.Part { return p.Transform(at) })
	k := NewSketch()
	v := fromMaker()
	Toned(&k.Picture, parts, v)
	k.NoScale = true
	room := parts[0].Bounds()
	for _, p := range parts[1:] {
		room = room.Union(p.Bounds())
	}
	centre, size := room.Min.Lerp(room.Max, 0.5), room.Size()
	radius := by.reach * size.X
	if by.reach == 0 {
		radius = 1.2 * math.Max(size.Y, size.Z)
		centre.X = room.Max.X
	}
	var arc []geometry.Point
	for i := range 25 {
		s, c := math.Sincos(math.Pi * (0.1 + 0.8*float64(i)/24))
		arc = append(arc, v.Point(centre.Add(by.from.Mul(radius*c)).Add(by.to.Mul(radius*s))))
	}
	k.Arrow(arc...)
	k.Heading = say(labels[by.id])
	return k.Picture, true
}
