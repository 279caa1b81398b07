package measure

import "fmt"

// An ID is the identity of a figure, a check, a limit, an operation or a label:
// lower-case words joined by "-", in parts joined by ".", as "lap.kerf". It is
// for programs: unique where it stands, stable, and no text to be read.
type ID string

// A Relation is what a figure has to be to its limit.
type Relation uint8

const (
	IsFinite  Relation = iota // neither infinite nor NaN; there is no limit
	IsBelow                   // value < limit
	IsAtMost                  // value ≤ limit
	IsAbove                   // value > limit
	IsAtLeast                 // value ≥ limit
	IsLeftOf                  // corner value of an outline turns to the left of corner limit
)

// String returns the relation as a sign.
func (r Relation) String() string {
	signs := [...]string{IsFinite: "finite", IsBelow: "<", IsAtMost: "≤", IsAbove: ">", IsAtLeast: "≥", IsLeftOf: "left of"}
	if int(r) < len(signs) {
		return signs[r]
	}
	return fmt.Sprintf("Relation(%d)", uint8(r))
}

// A BoundError says that a figure is outside its limit. Like errors of the
// system it is a value to be told apart by its fields.
type BoundError struct {
	Figure   ID // whose value it is: "lap.kerf"
	Value    Quantity
	Relation Relation // what the value fails to be
	Limit    Quantity
	Than     ID // the figure that sets the limit; empty for a plain number
	Hint     ID // what to do about it; may be empty
}

// Error names the figures by their IDs and gives lengths in millimetres:
// "lap.kerf 30 mm: not < lap.crossing-width, 28 mm".
func (e *BoundError) Error() string {
	if !e.Value.Finite() {
		return string(e.Figure) + ": not " + IsFinite.String()
	}
	value, limit := e.Figures(Millimetre)
	if e.Than != "" {
		limit = string(e.Than) + ", " + limit
	}
	return fmt.Sprintf("%s %s: not %v %s", e.Figure, value, e.Relation, limit)
}

// Figures returns value and limit for printing, lengths in u. Two different
// figures are never printed alike, nor a small one as 0, while six decimals
// tell them apart.
func (e *BoundError) Figures(u Unit) (value, limit string) {
	value, limit = e.Value.Text(u), e.Limit.Text(u)
	zero := Quantity{Kind: e.Value.Kind}
	if value == limit && e.Value != e.Limit || value == zero.Text(u) && e.Value != zero {
		return e.Value.fine(u, 6), e.Limit.fine(u, 6)
	}
	return value, limit
}

// Below returns a *BoundError unless value < limit. Like the checks after it,
// it refuses NaN and infinite values, and returns nil when all is well, so
// that cmp.Or picks the first failure out of several checks.
func Below(figure ID, value Quantity, than ID, limit Quantity, hint ID) error {
	return check(value.Value < limit.Value, BoundError{figure, value, IsBelow, limit, than, hint})
}

// AtMost returns a *BoundError unless value ≤ limit.
func AtMost(figure ID, value Quantity, than ID, limit Quantity, hint ID) error {
	return check(value.Value <= limit.Value, BoundError{figure, value, IsAtMost, limit, than, hint})
}

// Above returns a *BoundError unless value > limit.
func Above(figure ID, value Quantity, than ID, limit Quantity, hint ID) error {
	return check(value.Value > limit.Value, BoundError{figure, value, IsAbove, limit, than, hint})
}

// AtLeast returns a *BoundError unless value ≥ limit.
func AtLeast(figure ID, value Quantity, than ID, limit Quantity, hint ID) error {
	return check(value.Value >= limit.Value, BoundError{figure, value, IsAtLeast, limit, than, hint})
}

// Positive returns a *BoundError unless value > 0.
func Positive(figure ID, value Quantity) error {
	return Above(figure, value, "", Quantity{Kind: value.Kind}, "")
}

// NotNegative returns a *BoundError unless value ≥ 0.
func NotNegative(figure ID, value Quantity) error {
	return AtLeast(figure, value, "", Quantity{Kind: value.Kind}, "")
}

func check(ok bool, e BoundError) error {
	if ok && e.Value.Finite() {
		return nil
	}
	bad := e // so that what holds, nearly all, costs no memory
	return &bad
}
