package measure

import (
	"cmp"
	"errors"
	"math"
	"testing"
)

func TestBounds(t *testing.T) {
	check := func(f func(ID, Quantity, ID, Quantity, ID) error) func(v float64) error {
		return func(v float64) error { return f("foot", Length(v), "top", Length(45), "swap") }
	}
	positive := func(v float64) error { return Positive("foot", Length(v)) }
	notNegative := func(v float64) error { return NotNegative("foot", Length(v)) }
	tests := []struct {
		name  string
		check func(float64) error
		value float64
		want  string // empty: no error
	}{
		{"Below", check(Below), 44.9, ""},
		{"Below", check(Below), 45, "foot 45 mm: not < top, 45 mm"},
		{"Below", check(Below), 50, "foot 50 mm: not < top, 45 mm"},
		{"Below", check(Below), 45.001, "foot 45.001 mm: not < top, 45 mm"},
		{"AtMost", check(AtMost), 45, ""},
		{"AtMost", check(AtMost), 46, "foot 46 mm: not ≤ top, 45 mm"},
		{"Above", check(Above), 46, ""},
		{"Above", check(Above), 45, "foot 45 mm: not > top, 45 mm"},
		{"AtLeast", check(AtLeast), 45, ""},
		{"AtLeast", check(AtLeast), 44.9999, "foot 44.9999 mm: not ≥ top, 45 mm"},
		{"AtLeast", check(AtLeast), 0.001, "foot 0.001 mm: not ≥ top, 45 mm"},
		{"Positive", positive, 0.001, ""},
		{"Positive", positive, 0, "foot 0 mm: not > 0 mm"},
		{"Positive", positive, -5, "foot -5 mm: not > 0 mm"},
		{"NotNegative", notNegative, 0, ""},
		{"NotNegative", notNegative, -5, "foot -5 mm: not ≥ 0 mm"},
	}
	for _, tt := range tests {
		err := tt.check(tt.value)
		if err == nil && tt.want == "" {
			continue
		}
		if err == nil || err.Error() != tt.want {
			t.Errorf("%s of %v: %v, want %q", tt.name, tt.value, err, tt.want)
		}
	}
	for _, f := range []func(float64) error{check(Below), check(AtMost), check(Above), check(AtLeast), positive, notNegative} {
		for _, v := range []float64{math.NaN(), math.Inf(1), math.Inf(-1)} {
			const want = "foot: not finite"
			if err := f(v); err == nil || err.Error() != want {
				t.Errorf("%v: %v, want %q", v, err, want)
			}
		}
	}
}

// Two different figures are not printed alike, nor a small one as 0.
func TestBoundErrorFigures(t *testing.T) {
	for _, tt := range []struct {
		err                  error
		mm, limit, in, limIn string
	}{
		{Below("foot", Length(50.8), "top", Length(44.45), ""), "50.8 mm", "44.45 mm", "2 in", "1 3/4 in"},
		{Below("foot", Length(50.8001), "top", Length(50.8), ""), "50.8001 mm", "50.8 mm", "2.000004 in", "2 in"},
		{AtMost("splay", Angle(Radians(45.001)), "", Angle(Radians(45)), ""), "45.001°", "45°", "45.001°", "45°"},
		{AtMost("ratio", Number(3.0001), "", Number(3), ""), "3.0001", "3", "3.0001", "3"},
		{AtLeast("kerf", Length(0.0001), "", Length(1), ""), "0.0001 mm", "1 mm", "0.000004 in", "0.03937 in"},
	} {
		var e *BoundError
		if !errors.As(tt.err, &e) {
			t.Fatalf("%v is not a BoundError", tt.err)
		}
		mm, limit := e.Figures(Millimetre)
		if in, limIn := e.Figures(Inch); mm != tt.mm || limit != tt.limit || in != tt.in || limIn != tt.limIn {
			t.Errorf("%v: got %q, %q, %q, %q", tt.err, mm, limit, in, limIn)
		}
	}
}

// Checks are meant to be strung together: the first failure counts.
func TestChecksCombine(t *testing.T) {
	err := cmp.Or(
		Positive("top", Length(45)),
		Below("foot", Length(50), "top", Length(45), "swap"),
		Positive("length", Length(-1)),
	)
	var e *BoundError
	if !errors.As(err, &e) || e.Figure != "foot" || e.Hint != "swap" {
		t.Errorf("got %#v", err)
	}
	if err := cmp.Or(Positive("top", Length(45)), NotNegative("foot", Length(1))); err != nil {
		t.Errorf("got %v, want nil", err)
	}
}
