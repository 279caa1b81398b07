package joint

import (
	"cmp"
	"math"

	"rodsheet/geometry/measure"
)

// A Compound is a leg that leans two ways: by Rake as seen from the side of
// the piece and by Splay as seen from its front.
//
// Frame: x sideways and y fore-and-aft, both in the direction in which the
// foot leans out, z up.
type Compound struct {
	Rake  float64 // fore-and-aft, from plumb, rad
	Splay float64 // sideways, from plumb, rad
}

// CompoundOf returns the rake and splay of a leg that leans by resultant along
// a sightline counted from the fore-and-aft line: tan Rake is the resultant's
// tangent times the cosine of the sightline, tan Splay times its sine.
func CompoundOf(resultant, sightline float64) Compound {
	s, c := math.Sincos(sightline)
	lean := math.Tan(resultant)
	return Compound{Rake: math.Atan(lean * c), Splay: math.Atan(lean * s)}
}

// Lean checks a resultant and a sightline as CompoundOf takes them.
func Lean(resultant, sightline float64) error {
	return cmp.Or(within("leg.resultant", resultant), within("leg.sightline", sightline))
}

// Check returns a *measure.BoundError for a lean no leg has. The other methods
// take a Compound that has passed.
func (c Compound) Check() error {
	return cmp.Or(
		within("leg.rake", c.Rake), within("leg.splay", c.Splay),
		within("leg.resultant", c.Resultant()),
	)
}

// lean returns how far the foot stands out from under the head, as seen in
// plan, for each mm of height.
func (c Compound) lean() float64 { return math.Hypot(math.Tan(c.Rake), math.Tan(c.Splay)) }

// Resultant returns the true lean from plumb, seen square to the sightline:
// its tangent is √(tan² Rake + tan² Splay). It is less than √(Rake² + Splay²).
func (c Compound) Resultant() float64 { return math.Atan(c.lean()) }

// Sightline returns the direction in plan along which the leg leans, counted
// from the fore-and-aft line towards the side: atan(tan Splay/tan Rake). A
// plumb leg has none, and Sightline returns 0.
func (c Compound) Sightline() float64 { return math.Atan2(math.Tan(c.Splay), math.Tan(c.Rake)) }

// TrueLength returns the length of the leg's centre line between two levels
// height mm apart: height/cos Resultant.
func (c Compound) TrueLength(height float64) float64 { return height * math.Hypot(1, c.lean()) }

// Bevels returns the slopes, off square across the face, of a level cut on a
// leg whose faces stay in line with the room: on the front and back faces
// tan = tan Splay·cos Rake, on the two others tan = tan Rake·cos Splay. It is
// the trace of a plane on a leaning face (Machinery's Handbook, 31st ed.,
// p. 121, Fig. 1).
func (c Compound) Bevels() (front, side float64) {
	return math.Atan(math.Tan(c.Splay) * math.Cos(c.Rake)),
		math.Atan(math.Tan(c.Rake) * math.Cos(c.Splay))
}

// Diamond returns the angles between neighbouring faces of the same leg. Its
// section on the level is square or rectangular, so square to the leg it is a
// diamond: obtuse at the arrises that lead and trail the lean, acute at the
// two beside it. They add up to π.
//
// The front face has the normal (0, 1, tan Rake), the side (1, 0, tan Splay):
// the cosine between them is sin Rake·sin Splay.
func (c Compound) Diamond() (acute, obtuse float64) {
	acute = math.Acos(math.Sin(c.Rake) * math.Sin(c.Splay))
	return acute, math.Pi - acute
}

// A Staked leg leans two ways out of a slab.
type Staked struct {
	Compound
	Height float64 // between the levels that its length is counted between, mm; 0: not asked
	In     float64 // from the edge of the slab to the centre of the hole, mm
}

// Check returns a *measure.BoundError for a leg that has no sightline, or whose
// figures no workshop has.
func (s Staked) Check() error {
	return cmp.Or(
		s.Compound.Check(),
		measure.AtLeast("leg.resultant", measure.Angle(s.Resultant()), "", measure.Angle(leastResultant), "leg.plumb"),
		within("staked.height", s.Height), within("staked.in", s.In),
	)
}
