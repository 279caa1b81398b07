package kind

import "testing"

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
