package kind

import (
	"testing"

	"rodsheet/geometry/measure"
)

// What is printed all the same is not called doubtful where it fails.
func TestHeadingOfWhatDoesNotHold(t *testing.T) {
	for grade, want := range map[Grade]string{Warn: checksInDoubt.With(), Fail: checksNotHeld.With()} {
		r := Report{Sizes: []Size{{Checks: []Check{{Name: "tilt", Grade: grade, Words: "too far"}}}}}
		if got := r.DoubtPanels(); len(got) != 1 || got[0].Heading != want {
			t.Errorf("%s: %+v, want %q", grade, got, want)
		}
	}
	if got := (Report{Together: []Check{{Grade: Pass}}}).DoubtPanels(); got != nil {
		t.Errorf("all holds: %+v", got)
	}
}

// A figure and its limit are printed alike only where they are.
func TestFigureAndLimitAreToldApart(t *testing.T) {
	at := func(value, limit measure.Quantity, u measure.Unit) string {
		return Check{Figure: "x", FigureName: "x", Value: value, Relation: measure.IsAtLeast, Limit: limit}.Measured(u)
	}
	for got, want := range map[string]string{
		at(measure.Mass(9.996), measure.Mass(10), measure.Millimetre):              "x 9.996 kg, at least 10 kg",
		at(measure.Mass(10), measure.Mass(10), measure.Millimetre):                 "x 10 kg, at least 10 kg",
		at(measure.Length(2.998), measure.Length(3), measure.Millimetre):           "x 2.998 mm, at least 3 mm",
		at(measure.Length(25.4001), measure.Length(25.4), measure.Inch):            "x 1.000004 in, at least 1 in",
		at(measure.Mass(4.5359237*0.99999), measure.Mass(4.5359237), measure.Inch): "x 9.9999 lb, at least 10 lb",
		at(measure.Length(4), measure.Length(3), measure.Millimetre):               "x 4 mm, at least 3 mm",
	} {
		if got != want {
			t.Errorf("%q, want %q", got, want)
		}
	}
}
