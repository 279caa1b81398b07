// Package kinds lists the kinds of piece.
package kinds

import (
	"rodsheet/templates/piece/aprons"
	"rodsheet/templates/piece/box"
	"rodsheet/templates/piece/design"
	"rodsheet/templates/piece/kind"
	"rodsheet/templates/piece/seat"
)

// all are the kinds in the order of the constants of package design.
var all = [...]func() kind.Kind{
	design.RingKind:   ring,
	design.ApronsKind: aprons.Kind,
	design.BoxKind:    box.Kind,
	design.SeatKind:   seat.Kind,
}

// HasPlan reports whether the pack of a design can have a full-size plan.
func HasPlan(d design.Design) bool { return all[d.Kind]().Plan }

// Sizes are those of one file, of any kind, the same for all. The zero value has none yet;
// its Add is what design.Read asks.
type Sizes struct{ kind.Sizes }

// Add works out one more size, as kind.Sizes has it.
func (s *Sizes) Add(d design.Design, doubts design.Doubts) []error {
	if s.Sizes == nil {
		s.Sizes = all[d.Kind]().Sizes()
	}
	return s.Sizes.Add(d, doubts)
}

// Solve works out the sizes of one file, as kind.Kind.Solve does.
func Solve(sizes []design.Design) (kind.Work, error) { return all[sizes[0].Kind]().Solve(sizes) }
