package live

import (
	"math"

	"rodsheet/geometry/measure"
	"rodsheet/templates/piece/design"
	"rodsheet/templates/piece/kind"
)

// A Drag is a handle of the drawing brought to a place, in mm on the picture.
type Drag struct {
	Handle measure.ID `json:"handle"`
	X      float64    `json:"x"`
	Y      float64    `json:"y"`
}

// changes returns the figure with which the handle stands where it was brought, rounded
// to what the unit makes sensible.
func (g Drag) changes(w works, size string) []Change {
	i := w.sized(size)
	grip, ok := w.work.Grips(i)[g.Handle]
	if !ok {
		return nil
	}
	d := w.design.Sizes[i]
	_, angle := grip.Key.Figure()
	aim := g.X
	if grip.Up {
		aim = g.Y
	}
	round, quantity := d.Unit.Round(1, 1.0/16), measure.Length
	if angle {
		round, quantity = measure.Radians(0.25), measure.Angle
	}
	value := math.Round(follow(grip, d, aim, round)/round) * round
	c := Change{Key: grip.Key, Value: written(quantity(value), d.Unit)}
	if own(w, d.Size, grip.Key) {
		c.Size = d.Size
	}
	return []Change{c}
}

// follow returns the figure with which the handle stands at aim or, where no piece can
// have that, as near to it as halving finds: by the secant through two designs, a step
// apart.
func follow(g kind.Grip, d design.Design, aim, step float64) float64 {
	const near = 0.01 // mm
	at, _ := g.Key.Figure()
	moved := func(figure float64) (float64, bool) {
		*at(&d) = figure
		return g.At(d)
	}
	value := *at(&d)
	for range 6 {
		here, sound := moved(value)
		next, beside := moved(value + step)
		if !beside {
			step = -step
			next, beside = moved(value + step)
		}
		if !sound || !beside || next == here || math.Abs(here-aim) < near {
			break
		}
		by := (aim - here) * step / (next - here)
		for range 6 {
			if _, ok := moved(value + by); ok {
				value += by
				break
			}
			by /= 2
		}
	}
	return value
}
