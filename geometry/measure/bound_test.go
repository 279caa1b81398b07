package measure

import (
	"cmp"
	"errors"
	"math"
	"testing"
)

func TestBounds(t *testing.T) {
	check := func(f func(string, Quantity, string, Quantity, string) error) func(v float64) error {
		return func(v float64) error { return f("foot", Length(v), "the top", Length(45), "swap them") }
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
		{"Below", check(Below), 45, "foot 45 mm must be less than the top, 45 mm"},
		{"Below", check(Below), 50, "foot 50 mm must be less than the top, 45 mm"},
		{"Below", check(Below), 45.001, "foot 45.001 mm must be less than the top, 45 mm"},
		{"AtMost", check(AtMost), 45, ""},
		{"AtMost", check(AtMost), 46, "foot 46 mm must be at most the top, 45 mm"},
		{"Above", check(Above), 46, ""},
		{"Above", check(Above), 45, "foot 45 mm must be more than the top, 45 mm"},
		{"AtLeast", check(AtLeast), 45, ""},
		{"AtLeast", check(AtLeast), 44.9999, "foot 44.9999 mm must be at least the top, 45 mm"},
		{"AtLeast", check(AtLeast), 0.001, "foot 0.001 mm must be at least the top, 45 mm"},
		{"Positive", positive, 0.001, ""},
		{"Positive", positive, 0, "foot 0 mm must be more than 0 mm"},
		{"Positive", positive, -5, "foot -5 mm must be more than 0 mm"},
		{"NotNegative", notNegative, 0, ""},
		{"NotNegative", notNegative, -5, "foot -5 mm must be at least 0 mm"},
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
			const want = "foot must be a finite number"
			if err := f(v); err == nil || err.Error() != want {
				t.Errorf("%v: %v, want %q", v, err, want)
			}
		}
	}
}

func TestFinite(t *testing.T) {
	if err := Finite("splay", Angle(0)); err != nil {
		t.Errorf("0: %v", err)
	}
	for _, v := range []float64{math.NaN(), math.Inf(1), math.Inf(-1)} {
		if err := Finite("splay", Angle(v)); err == nil || err.Error() != "splay must be a finite number" {
			t.Errorf("%v: %v", v, err)
		}
	}
}

func TestBoundErrorText(t *testing.T) {
	tests := []struct {
		err      error
		mm, inch string
	}{
		{Below("foot", Length(50.8), "the top", Length(44.45), ""),
			"foot 50.8 mm must be less than the top, 44.45 mm", "foot 2 in must be less than the top, 1 3/4 in"},
		{Below("foot", Length(50.8001), "the top", Length(50.8), ""),
			"foot 50.8001 mm must be less than the top, 50.8 mm", "foot 2.000004 in must be less than the top, 2 in"},
		{AtMost("splay", Angle(Radians(45.001)), "", Angle(Radians(45)), ""),
			"splay 45.001° must be at most 45°", "splay 45.001° must be at most 45°"},
		{AtLeast("legs", Number(2), "", Number(3), ""), "legs 2 must be at least 3", "legs 2 must be at least 3"},
		{AtMost("ratio", Number(3.0001), "", Number(3), ""), "ratio 3.0001 must be at most 3", "ratio 3.0001 must be at most 3"},
	}
	for _, tt := range tests {
		var e *BoundError
		if !errors.As(tt.err, &e) {
			t.Fatalf("%v is not a BoundError", tt.err)
		}
		if e.Text(Millimetre) != tt.mm || e.Error() != tt.mm {
			t.Errorf("got %q and %q, want %q", e.Text(Millimetre), e.Error(), tt.mm)
		}
		if e.Text(Inch) != tt.inch {
			t.Errorf("got %q, want %q", e.Text(Inch), tt.inch)
		}
	}
}

// Checks are meant to be strung together: the first failure counts.
func TestChecksCombine(t *testing.T) {
	err := cmp.Or(
		Positive("top", Length(45)),
		Below("foot", Length(50), "the top", Length(45), "swap them"),
		Positive("length", Length(-1)),
	)
	var e *BoundError
	if !errors.As(err, &e) || e.Figure != "foot" || e.Hint != "swap them" {
		t.Errorf("got %#v", err)
	}
	if err := cmp.Or(Positive("top", Length(45)), Finite("foot", Length(1))); err != nil {
		t.Errorf("got %v, want nil", err)
	}
}
