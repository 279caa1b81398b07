package joint_test

import (
	"rodsheet/geometry/joint"
	"testing"
)

func TestMovementByHand(t *testing.T) {
	m := joint.Movement{Width: 500, Coefficient: 0.00274, From: 8, To: 12}
	within(t, "swells", m.Change(), 5.48, 1e-9)
	m.From, m.To = m.To, m.From
	within(t, "shrinks", m.Change(), -5.48, 1e-9)
}

func TestMovementCheck(t *testing.T) {
	good := joint.Movement{Width: 500, Coefficient: 0.00274, From: 6, To: 14}
	refuses(t, good, []refused[joint.Movement]{
		{"movement.width", "> 0 mm", func(m *joint.Movement) { m.Width = 0 }},
		{"movement.width", "≤ 10000 mm", func(m *joint.Movement) { m.Width = 10001 }},
		{"movement.coefficient", "> 0", func(m *joint.Movement) { m.Coefficient = 0 }},
		{"movement.coefficient", "≤ 0.01", func(m *joint.Movement) { m.Coefficient = 7.8 }},
		{"movement.from", "≥ 6", func(m *joint.Movement) { m.From = 0.08 }},
		{"movement.to", "≤ 14", func(m *joint.Movement) { m.To = 20 }},
	})
}
