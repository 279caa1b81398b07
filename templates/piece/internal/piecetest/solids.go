package piecetest

import (
	"cmp"
	"math"
	"slices"

	"gonum.org/v1/gonum/spatial/r3"
	"pgregory.net/rapid"

	"rodsheet/geometry/solid"
)

// Nearly asks for agreement to a billionth of the size of want, or of 1 mm.
func Nearly(t rapid.TB, what string, got, want float64) {
	t.Helper()
	if !(math.Abs(got-want) <= 1e-9*math.Max(100, math.Abs(want))) {
		t.Errorf("%s: got %.9f, want %.9f", what, got, want)
	}
}

// A Run is a stretch of wood along a line, from Lo to Hi mm.
type Run struct{ Lo, Hi float64 }

const shortest = 1e-6 // mm, of a run that counts

// Along returns the wood of a part on the line through at along x, from its
// planes alone. Pieces that touch are one run.
func Along(p solid.Part, at solid.Vec) []Run {
	var all []Run
	for _, s := range p.Pieces {
		r := Run{math.Inf(-1), math.Inf(1)}
		for _, f := range s.Faces() {
			q := f.Plane
			rest := -q.Height(at)
			switch {
			case q.N.X > 1e-12:
				r.Hi = math.Min(r.Hi, rest/q.N.X)
			case q.N.X < -1e-12:
				r.Lo = math.Max(r.Lo, rest/q.N.X)
			case rest < -1e-9:
				r.Hi = math.Inf(-1)
			}
		}
		if r.Hi > r.Lo {
			all = append(all, Run{at.X + r.Lo, at.X + r.Hi})
		}
	}
	slices.SortFunc(all, func(a, b Run) int { return cmp.Compare(a.Lo, b.Lo) })
	var out []Run
	for _, r := range all {
		if k := len(out) - 1; k >= 0 && r.Lo < out[k].Hi+1e-9 {
			out[k].Hi = math.Max(out[k].Hi, r.Hi)
		} else {
			out = append(out, r)
		}
	}
	return SomeRuns(out...)
}

// SomeRuns leaves out runs without length.
func SomeRuns(runs ...Run) []Run {
	return slices.DeleteFunc(runs, func(r Run) bool { return r.Hi-r.Lo <= shortest })
}

// Vec is a vector for gonum, which measures independently of the solids.
func Vec(v solid.Vec) r3.Vec { return r3.Vec{X: v.X, Y: v.Y, Z: v.Z} }

// Between returns the angle between two directions.
func Between(a, b r3.Vec) float64 { return math.Atan2(r3.Norm(r3.Cross(a, b)), r3.Dot(a, b)) }

// LongestEdge returns the longest edge of a part that passes ok, as a step
// downward or, where level, as it comes.
func LongestEdge(p solid.Part, ok func(solid.Edge) bool) (solid.Edge, r3.Vec) {
	var best solid.Edge
	for _, e := range p.Edges() {
		if ok(e) && e.A.Distance(e.B) > best.A.Distance(best.B) {
			best = e
		}
	}
	if best.A.Z < best.B.Z {
		best.A, best.B = best.B, best.A
	}
	return best, Vec(best.B.Sub(best.A))
}

// AnyEdge lets every edge pass.
func AnyEdge(solid.Edge) bool { return true }

// Levels returns the faces of a part that lie level at a height.
func Levels(p solid.Part, z float64) []solid.Face {
	var out []solid.Face
	for _, s := range p.Pieces {
		for _, f := range s.Faces() {
			if math.Abs(math.Abs(f.Plane.N.Z)-1) < 1e-12 && math.Abs(f.Corners[0].Z-z) < 1e-9*math.Max(100, z) {
				out = append(out, f)
			}
		}
	}
	return out
}

// Area adds up the areas of faces.
func Area(faces []solid.Face) float64 {
	sum := 0.0
	for _, f := range faces {
		var twice r3.Vec
		for i := 2; i < len(f.Corners); i++ {
			o := f.Corners[0]
			twice = r3.Add(twice, r3.Cross(Vec(f.Corners[i-1].Sub(o)), Vec(f.Corners[i].Sub(o))))
		}
		sum += r3.Norm(twice) / 2
	}
	return sum
}
