package checks

import (
	"math"
	"rodsheet/templates/piece/kind"
	"testing"

	"rodsheet/geometry/measure"
	"rodsheet/templates/piece/internal/piecetest"
)

// Steep legs are doubted for what they do, each by its own figure. By hand: at 40° a
// leg 380 mm high stands 380·tan 40° = 318.86 mm out of its joint, and its sole makes a
// corner of 50° with its back.
func TestSteepLegs(t *testing.T) {
	for _, tt := range []struct {
		splay, height, breadth float64
		want                   map[measure.ID]kind.Grade
	}{
		{30, 380, 40, map[measure.ID]kind.Grade{}},
		{32, 380, 40, map[measure.ID]kind.Grade{"steep-standing": kind.Pass, "steep-end-grain": kind.Pass, "steep-blade": kind.Pass}},
		{40, 380, 40, map[measure.ID]kind.Grade{"steep-standing": kind.Pass, "steep-end-grain": kind.Warn, "steep-blade": kind.Pass}},
		{40, 380, 30, map[measure.ID]kind.Grade{"steep-standing": kind.Warn, "steep-end-grain": kind.Warn, "steep-blade": kind.Pass}},
		{50, 300, 40, map[measure.ID]kind.Grade{"steep-standing": kind.Pass, "steep-end-grain": kind.Warn, "steep-blade": kind.Warn}},
	} {
		d := piecetest.Low()
		d.Legs.Given, d.Legs.Height, d.Legs.Breadth, d.Legs.Taper = measure.Radians(tt.splay), tt.height, tt.breadth, nil
		p := piecetest.Worked(t, d)
		got := map[measure.ID]kind.Grade{}
		for _, q := range questions() {
			switch q.id {
			case "steep-standing", "steep-end-grain", "steep-blade":
				for _, c := range q.asked(withSolids(p)) {
					got[c.Question] = c.Grade
					if c.Figure == "foot-arm" && tt.splay == 40 && math.Abs(c.Value.Value-318.86) > 0.01 {
						t.Errorf("arm %v mm, want 318.86", c.Value.Value)
					}
				}
			}
		}
		if len(got) != len(tt.want) {
			t.Errorf("%v°: asked %v, want %v", tt.splay, got, tt.want)
		}
		for id, want := range tt.want {
			if got[id] != want {
				t.Errorf("%v°, %v mm broad: %s %v, want %v", tt.splay, tt.breadth, id, got[id], want)
			}
		}
	}
}
