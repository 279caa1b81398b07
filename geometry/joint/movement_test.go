package joint_test

import (
	"rodsheet/geometry/joint"
	"rodsheet/geometry/measure"
	"testing"
)

// USDA, Wood Handbook, FPL-GTR-190 (2010), Tables 4-3 and 13-5. The rule gives
// every row to a unit of the last place, but for the three species on which
// the tables do not agree.
func TestCoefficientAgainstWoodHandbook(t *testing.T) {
	unlike := map[string]bool{"Ash, green": true, "Birch, sweet": true, "White oak": true}
	for _, row := range tableRows(t, "wood-movement.csv") {
		if unlike[row[0]] {
			continue
		}
		for i, grain := range []string{"radial", "tangential"} {
			got := joint.MovementCoefficient(fraction(t, row[1+i]))
			within(t, row[0]+", "+grain, got, fraction(t, row[3+i]), 0.00001)
		}
	}
}

// The rule from first principles: a board that shrinks evenly from 30 % of
// moisture down to none changes by C of its width at 10 %.
func TestCoefficientFromShrinkage(t *testing.T) {
	const green, shrinkage = 300.0, 8.1 // mm, per cent
	width := func(moisture float64) float64 { return green * (1 - shrinkage/100*(30-moisture)/30) }
	m := joint.Movement{
		Width: width(10), Coefficient: joint.MovementCoefficient(shrinkage), From: 8, To: 13,
	}
	within(t, "change", m.Change(), width(13)-width(8), 1e-9)
}

func TestMovementByHand(t *testing.T) {
	m := joint.Movement{Width: 500, Coefficient: 0.00274, From: 8, To: 12}
	within(t, "swells", m.Change(), 5.48, 1e-9)
	m.From, m.To = m.To, m.From
	within(t, "shrinks", m.Change(), -5.48, 1e-9)
}

func TestMovementCheck(t *testing.T) {
	good := joint.Movement{Width: 500, Coefficient: 0.00274, From: 6, To: 14}
	if err := good.Check(); err != nil {
		t.Errorf("%+v: %v", good, err)
	}
	for _, tt := range []struct {
		figure measure.ID
		want   string
		change func(*joint.Movement)
	}{
		{"movement.width", "> 0 mm", func(m *joint.Movement) { m.Width = 0 }},
		{"movement.width", "≤ 10000 mm", func(m *joint.Movement) { m.Width = 10001 }},
		{"movement.coefficient", "> 0", func(m *joint.Movement) { m.Coefficient = 0 }},
		{"movement.coefficient", "≤ 0.01", func(m *joint.Movement) { m.Coefficient = 7.8 }},
		{"movement.from", "≥ 6", func(m *joint.Movement) { m.From = 0.08 }},
		{"movement.to", "≤ 14", func(m *joint.Movement) { m.To = 20 }},
	} {
		m := good
		tt.change(&m)
		checkBound(t, m.Check(), tt.figure, tt.want)
	}
}
