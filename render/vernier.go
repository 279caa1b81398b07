package render

import (
	"rodsheet/geometry"
	"rodsheet/geometry/measure"
	"rodsheet/render/accuracy"
)

// A vernier shows how far two sheets are off at a seam. Its ticks begin at
// the trim line: on the trimmed sheet they are ten steps apart, on the other a
// step less, and the two long ones in the middle meet. Sheets that
// are off by k steps along the seam have the k-th pair of ticks in line.
//
// Ticks that slant by 45° are shifted sideways by a gap as well: with d the
// misfit along the seam and g the gap, they read d + g.
type vernier struct {
	at, along geometry.Point // the middle, and the unit vector along the seam
	step      float64        // that it tells, mm
	slanting  bool
}

const (
	vernierTicks = 3 // to each side of the middle
	vernierTall  = 2.0
)

// vernierStep is what a vernier tells, about what sheets are off by: 0.2 mm or 1/128 in.
func vernierStep(u measure.Unit) float64 { return u.Round(accuracy.SeamMisfit, 1.0/128) }

// reach returns how far the ticks stand from the middle to either side, the slanting
// ones with their lean.
func (v vernier) reach() float64 { return vernierTicks*10*v.step + vernierTall }

// A tickPair is a tick of the trimmed sheet and the one to be read against it.
type tickPair struct{ trimmed, under geometry.Segment }

// pairs returns the ticks of v on the trimmed sheet and on the one under it,
// from number −vernierTicks on.
func (v vernier) pairs() []tickPair {
	up := v.along.Perp() // towards the trimmed sheet
	lean := up
	if v.slanting {
		lean = up.Add(v.along)
	}
	var out []tickPair
	for k := -vernierTicks; k <= vernierTicks; k++ {
		tall := vernierTall
		if k == 0 {
			tall *= 1.5
		}
		a := v.at.Add(v.along.Mul(float64(k) * 10 * v.step))
		b := v.at.Add(v.along.Mul(float64(k) * 9 * v.step))
		out = append(out, tickPair{
			trimmed: geometry.Segment{A: a, B: a.Add(lean.Mul(tall))},
			under:   geometry.Segment{A: b, B: b.Sub(lean.Mul(tall))},
		})
	}
	return out
}

// box returns what v covers, with a little air. Ticks are at most half as
// long again as vernierTall, and lean as far as they are long.
func (v vernier) box() geometry.Rect {
	const tall, air = 1.5 * vernierTall, 0.5
	half := v.along.Mul(v.reach())
	across := v.along.Perp().Mul(tall)
	return geometry.Bounds(v.at.Sub(half).Sub(across), v.at.Add(half).Add(across)).Offset(air)
}

// verniers places an upright and a slanting vernier between the two
// registration marks of a seam, each at the first place clear of all strokes
// from its mark on. A seam too short for one, or crossed too often, goes
// without.
func (s seam) verniers(first, last geometry.Point, step float64) []vernier {
	along := s.B.Sub(s.A).Unit()
	var out []vernier
	half := vernier{step: step}.reach() + 1
	lo := 2*markRadius + 1 + half // from the first mark to the middle
	hi := first.Distance(last) - lo
	for at := lo; at <= hi; at += 2 {
		if v := (vernier{first.Add(along.Mul(at)), along, step, false}); v.free(s.ink) {
			out, lo = append(out, v), at+2*half+1
			break
		}
	}
	for at := hi; at >= lo; at -= 2 {
		if v := (vernier{first.Add(along.Mul(at)), along, step, true}); v.free(s.ink) {
			return append(out, v)
		}
	}
	return out
}

func (v vernier) free(ink []geometry.Segment) bool {
	b := v.box()
	for _, s := range ink {
		if _, ok := geometry.ClipSegment(s, b); ok {
			return false
		}
	}
	return true
}
