package piecetest

import "rodsheet/templates/piece/design"

// Solved returns what a judge worked out, or its first error.
func Solved[M any](m M, errs []error) (M, error) {
	if len(errs) > 0 {
		return *new(M), errs[0]
	}
	return m, nil
}

// Faults is a judge that design.Read can ask: what it works out is left.
func Faults[M any](judge func(design.Design, design.Doubts) (M, []error)) func(design.Design, design.Doubts) []error {
	return func(d design.Design, doubts design.Doubts) []error {
		_, errs := judge(d, doubts)
		return errs
	}
}
