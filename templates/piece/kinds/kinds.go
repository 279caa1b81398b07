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

// Faults returns what Solve refuses of a design of any kind; it is what design.Read asks.
func Faults(d design.Design, doubts design.Doubts) []error { return all[d.Kind]().Faults(d, doubts) }

// HasPlan reports whether the pack of a design can have a full-size plan.
func HasPlan(d design.Design) bool { return all[d.Kind]().Plan }

// Solve works out the sizes of one file, which are of one kind.
func Solve(sizes []design.Design) (kind.Work, error) { return all[sizes[0].Kind]().Solve(sizes) }
