package solid

import (
	"math"

	"rodsheet/geometry"
)

// slotCorners is how many corners stand for the circle of a bit: they stand out of it by
// 1/cos(π/n) − 1, a 28th of its radius.
const slotCorners = 12

// Slot returns what a bit takes that is sunk by deep about a point: so wide and, in a way
// along, so long from end to end, or round where that is no more. Its sides touch the circles
// of the bit, so it is as wide and as long as that. Of the way only what is square to deep
// counts.
func Slot(at, along, deep Vec, wide, long float64) Solid {
	axis := deep.Unit()
	x := along.Sub(axis.Mul(axis.Dot(along))).Unit()
	y := axis.Cross(x)
	base := make([]Vec, slotCorners)
	for i := range base {
		turn := 2 * math.Pi / slotCorners
		p := geometry.Polar(wide/2/math.Cos(turn/2), (float64(i)+0.5)*turn)
		p.X += math.Copysign(math.Max(0, long-wide)/2, p.X)
		base[i] = at.Add(x.Mul(p.X)).Add(y.Mul(p.Y))
	}
	return Prism(base, deep)
}
