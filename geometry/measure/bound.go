package measure

import "fmt"

// A BoundError says that a figure is outside its limit.
type BoundError struct {
	Figure    string // what the maker calls it: "foot"
	Value     Quantity
	Relation  string // what it fails to be: "must be less than"
	Limit     Quantity
	LimitName string // "the top"; empty for a limit that is a plain number
	Hint      string // what to do about it; may be empty
}

// Error is Text in millimetres.
func (e *BoundError) Error() string { return e.Text(Millimetre) }

// Text returns the error in one line, its lengths in unit u:
// "foot 50 mm must be less than the top, 45 mm". Two different figures are
// never printed alike, nor a small one as 0, while six decimals tell them apart.
func (e *BoundError) Text(u Unit) string {
	if !e.Value.Finite() {
		return e.Figure + " " + notFinite
	}
	value, limit := e.Value.Text(u), e.Limit.Text(u)
	zero := Quantity{Kind: e.Value.Kind}
	if value == limit && e.Value != e.Limit || value == zero.Text(u) && e.Value != zero {
		value, limit = e.Value.fine(u), e.Limit.fine(u)
	}
	if e.LimitName != "" {
		limit = e.LimitName + ", " + limit
	}
	return fmt.Sprintf("%s %s %s %s", e.Figure, value, e.Relation, limit)
}

const notFinite = "must be a finite number"

// Below returns a *BoundError unless value < limit. Like the checks after it,
// it refuses NaN and infinite values, and returns nil when all is well, so
// that cmp.Or picks the first failure out of several checks.
func Below(figure string, value Quantity, limitName string, limit Quantity, hint string) error {
	return check(value.Value < limit.Value, BoundError{figure, value, "must be less than", limit, limitName, hint})
}

// AtMost returns a *BoundError unless value ≤ limit.
func AtMost(figure string, value Quantity, limitName string, limit Quantity, hint string) error {
	return check(value.Value <= limit.Value, BoundError{figure, value, "must be at most", limit, limitName, hint})
}

// Above returns a *BoundError unless value > limit.
func Above(figure string, value Quantity, limitName string, limit Quantity, hint string) error {
	return check(value.Value > limit.Value, BoundError{figure, value, "must be more than", limit, limitName, hint})
}

// AtLeast returns a *BoundError unless value ≥ limit.
func AtLeast(figure string, value Quantity, limitName string, limit Quantity, hint string) error {
	return check(value.Value >= limit.Value, BoundError{figure, value, "must be at least", limit, limitName, hint})
}

// Positive returns a *BoundError unless value > 0.
func Positive(figure string, value Quantity) error {
	return Above(figure, value, "", Quantity{Kind: value.Kind}, "")
}

// NotNegative returns a *BoundError unless value ≥ 0.
func NotNegative(figure string, value Quantity) error {
	return AtLeast(figure, value, "", Quantity{Kind: value.Kind}, "")
}

// Finite returns a *BoundError for NaN and for an infinite value.
func Finite(figure string, value Quantity) error {
	return check(true, BoundError{Figure: figure, Value: value, Relation: notFinite})
}

func check(ok bool, e BoundError) error {
	if ok && e.Value.Finite() {
		return nil
	}
	bad := e // so that what holds, nearly all, costs no memory
	return &bad
}
