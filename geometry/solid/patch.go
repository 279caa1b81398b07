package solid

import (
	"slices"

	"rodsheet/geometry"
	"rodsheet/geometry/lists"
)

// A Patch is what is seen of one face: a convex polygon on the paper, its corners
// counter-clockwise, the outward normal of the face in the room, and the place of
// its part among those of the scene.
type Patch struct {
	Corners []geometry.Point
	N       Vec
	Part    int
}

// faint is the area in mm² on the paper below which a patch is not drawn.
const faint = 1e-6

// Patches returns what v shows of the faces of the parts: every point of the paper
// that a part covers lies in one patch.
//
// On the way from a face that looks to the viewer all heights over its plane are
// positive: what hides a point of it is what stands there before that plane.
func (s Scene) Patches(v View) []Patch {
	var all []Solid
	var of []int
	for i, p := range s.parts {
		all = append(all, p.Pieces...)
		of = append(of, slices.Repeat([]int{i}, len(p.Pieces))...)
	}
	rooms := lists.Map(all, v.room)
	var out []Patch
	for i, t := range all {
		for _, f := range t.faces {
			if f.Plane.N.Dot(v.Out) <= parallel {
				continue
			}
			for _, seen := range v.unhidden(f, i, all, rooms) {
				out = append(out, Patch{seen, f.Plane.N, of[i]})
			}
		}
	}
	return out
}

// unhidden returns what is seen of a face of solid number own.
func (v View) unhidden(f Face, own int, all []Solid, rooms []Extent) [][]geometry.Point {
	flat := lists.Map(f.Corners, v.Point)
	if geometry.Area(flat) <= faint {
		return nil
	}
	box := geometry.Bounds(flat...)
	left := [][]geometry.Point{flat}
	for i, t := range all {
		if len(left) == 0 {
			break
		}
		r := &rooms[i]
		if i == own || !box.Overlaps(geometry.Box(r.Min.X, r.Min.Y, r.Max.X, r.Max.Y)) {
			continue
		}
		if _, high, _ := t.span(f.Plane); high <= hair {
			continue
		}
		shadow := v.Silhouette(t.Cut(f.Plane.Flip()))
		rest := lists.Flat(left, func(polygon []geometry.Point) [][]geometry.Point { return geometry.CutAway(polygon, shadow, faint) })
		left = rest
	}
	return left
}

// Silhouette returns the outline of s on the paper, counter-clockwise.
func (v View) Silhouette(s Solid) []geometry.Point {
	all := make([]geometry.Point, 0, s.corners())
	for _, f := range s.faces {
		for _, c := range f.Corners {
			all = append(all, v.Point(c))
		}
	}
	return geometry.Hull(all)
}
