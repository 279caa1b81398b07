package assembly

import (
	"rodsheet/geometry/joint"
	"rodsheet/geometry/measure"
	"rodsheet/templates/piece/design"
)

// A Question is asked of a few figures of a design. It hangs on keys, and is not asked
// where one of them is in doubt.
type Question struct {
	Keys []design.Key
	Ask  func() error
}

// Faults returns an error for each figure that is outside its limits or that a question
// refuses. The keys of an error are in doubt for what is asked after it.
func Faults(d design.Design, doubts design.Doubts, questions ...Question) []error {
	errs := d.Outside(doubts)
	doubts = doubts.Clone()
	for _, err := range errs {
		doubts = doubts.With(design.SetBy(err)...)
	}
	for _, q := range questions {
		if doubts.Any(q.Keys...) {
			continue
		}
		if err := q.Ask(); err != nil {
			errs = append(errs, err)
			doubts = doubts.With(design.SetBy(err)...)
		}
	}
	return errs
}

// Within asks whether one length of a design is as another wants it, by a relation such as
// measure.AtMost. It hangs on both keys, and on more where these say so.
func Within(relation func(measure.ID, measure.Quantity, measure.ID, measure.Quantity, measure.ID) error,
	key design.Key, mm float64, limit design.Key, most float64, hint measure.ID, also ...design.Key) Question {
	return Question{append(also, key, limit), func() error {
		return relation(measure.ID(key), measure.Length(mm), measure.ID(limit), measure.Length(most), hint)
	}}
}

// Under gives an error about an outline the keys of the table that says it.
func Under(table measure.ID, err error) error {
	bound, ok := err.(*measure.BoundError)
	if !ok {
		return err
	}
	own := *bound
	own.Figure = table + "." + own.Figure
	return &own
}

// Moisture refuses what the rule of movement does not cover; where both are 0 the design
// states none.
func Moisture(w design.Wood) Question {
	return Question{[]design.Key{"wood.moisture"}, func() error {
		if w.MoistureFrom == 0 && w.MoistureTo == 0 {
			return nil
		}
		return joint.Movement{Width: 1, Coefficient: 0.001, From: w.MoistureFrom, To: w.MoistureTo}.Check()
	}}
}
