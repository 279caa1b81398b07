package live

import (
	"math"

	"rodsheet/geometry"
	"rodsheet/geometry/measure"
	"rodsheet/templates/piece"
	"rodsheet/templates/piece/design"
	"rodsheet/templates/piece/drawings"
)

// A Drag is a handle of the drawing brought to a place, in mm on the picture.
type Drag struct {
	Handle measure.ID `json:"handle"`
	X      float64    `json:"x"`
	Y      float64    `json:"y"`
}

// A grip says which figure follows a handle.
type grip struct {
	key    func(piece.Piece) design.Key
	at     func(piece.Piece) float64 // where the handle stands on its axis
	figure func(*design.Design) *float64
	up     bool
}

func grips() map[measure.ID]grip {
	return map[measure.ID]grip{
		"foot": {
			key: drawings.LeanKey, at: func(p piece.Piece) float64 { return -p.FootPoint(0).X },
			figure: func(d *design.Design) *float64 { return &d.Legs.Given },
		},
		"height": {
			key: drawings.HeightKey, at: piece.Piece.Overall, up: true,
			figure: func(d *design.Design) *float64 { return &d.Legs.Height },
		},
		"rim": {
			key: drawings.RimKey, at: func(p piece.Piece) float64 { return -geometry.Bounds(p.TopCorners()...).Min.X },
			figure: func(d *design.Design) *float64 {
				if d.Top.Outline == design.RoundTop && d.Top.Diameter > 0 {
					return &d.Top.Diameter
				}
				return &d.Top.Overhang
			},
		},
	}
}

// changes returns the figure with which the handle stands where it was brought, rounded
// to what the unit makes sensible.
func (g Drag) changes(w works, size string) []Change {
	grip, ok := grips()[g.Handle]
	if !ok {
		return nil
	}
	p := w.pieces[w.sized(size)]
	aim := g.X
	if grip.up {
		aim = g.Y
	}
	key, round, kind := grip.key(p), p.Design.Unit.Round(1, 1.0/16), measure.Length
	if key == "legs.splay" {
		round, kind = measure.Radians(0.25), measure.Angle
	}
	value := math.Round(grip.follow(p, aim, round)/round) * round
	c := Change{Key: key, Value: written(kind(value), p.Design.Unit)}
	if own(w, p.Design.Size, key) {
		c.Size = p.Design.Size
	}
	return []Change{c}
}

// follow returns the figure with which the handle stands at aim or, where no piece can
// have that, as near to it as halving finds: by the secant through two pieces worked
// out, a step apart.
func (g grip) follow(p piece.Piece, aim, step float64) float64 {
	const near = 0.01 // mm
	value := *g.figure(&p.Design)
	for range 6 {
		here, sound := moved(p, g, value)
		next, beside := moved(p, g, value+step)
		if !beside {
			step = -step
			next, beside = moved(p, g, value+step)
		}
		if !sound || !beside || next == here || math.Abs(here-aim) < near {
			break
		}
		by := (aim - here) * step / (next - here)
		for range 6 {
			if _, ok := moved(p, g, value+by); ok {
				value += by
				break
			}
			by /= 2
		}
	}
	return value
}

// moved returns where a handle stands with another figure.
func moved(p piece.Piece, g grip, figure float64) (at float64, ok bool) {
	d := p.Design
	*g.figure(&d) = figure
	q, err := piece.Solve(d)
	if err != nil {
		return 0, false
	}
	return g.at(q), true
}
