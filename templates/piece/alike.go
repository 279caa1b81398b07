package piece

import (
	"slices"

	"rodsheet/geometry/lists"
	"rodsheet/templates/wording"
)

// A Lot is one thing and the sizes of the design that have it alike.
type Lot[T any] struct {
	What  T
	Sizes []string
}

// Lots takes from every size what of returns for its number, each thing once, in
// the order in which it comes up first.
func Lots[T any](sizes []string, of func(int) []T, same func(a, b T) bool) []Lot[T] {
	var out []Lot[T]
	for i, size := range sizes {
		for _, what := range of(i) {
			k := slices.IndexFunc(out, func(l Lot[T]) bool { return same(l.What, what) })
			if k < 0 {
				k = len(out)
				out = append(out, Lot[T]{What: what})
			}
			if !slices.Contains(out[k].Sizes, size) {
				out[k].Sizes = append(out[k].Sizes, size)
			}
		}
	}
	return out
}

// Sizes returns the names of sizes.
func Sizes(pieces []Piece) []string {
	return lists.Map(pieces, func(p Piece) string { return p.Design.Size })
}

// SizeWords says which of all sizes are meant, as "both sizes" or "sizes a and b";
// nothing where there is only one.
func SizeWords(sizes []string, all int) string {
	n := len(sizes)
	switch {
	case all == 1:
		return ""
	case n == all && n == 2:
		return bothSizes.With()
	case n == all:
		return allSizes.With()
	case n == 1:
		return oneSize.With(sizes[0])
	}
	return someSizes.With(wording.And(sizes...))
}

// WithSizes puts behind a name which of all sizes it is for, where there are
// several.
func WithSizes(name string, sizes []string, all int) string {
	if words := SizeWords(sizes, all); words != "" {
		return name + ", " + words
	}
	return name
}
