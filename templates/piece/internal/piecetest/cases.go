package piecetest

import (
	"pgregory.net/rapid"

	"rodsheet/geometry/joint"
	"rodsheet/geometry/lists"
	"rodsheet/geometry/measure"
	"rodsheet/templates/piece"
	"rodsheet/templates/piece/design"
)

// Tall is the second size of Low: the same ring on longer legs.
func Tall() design.Design {
	d := Low()
	d.Size, d.Legs.Height, d.Legs.Given = "tall", 560, measure.Radians(11)
	return d
}

// WorkedAll works several designs out, which must have no fault.
func WorkedAll(t rapid.TB, designs ...design.Design) []piece.Piece {
	t.Helper()
	return lists.Map(designs, func(d design.Design) piece.Piece { return Worked(t, d) })
}

// Cases returns designs in which everything that changes the lists differs.
func Cases() map[string][]design.Design {
	change := func(d design.Design, f func(*design.Design)) design.Design {
		f(&d)
		return d
	}
	deep := change(Tall(), func(d *design.Design) { d.Ring.Depth = 44 })
	flush := func(d *design.Design) { d.Ring.Plain, d.Ring.Horn = design.FlushEnd, 0 }
	closed := func(d *design.Design) { d.Ring.Plain, d.Ring.Slack = design.ClosedEnd, 0.5 }
	inLeg := func(d *design.Design) { d.Legs.Mortise = joint.MortiseInLeg; d.Ring.LegEndOver = true }
	third := change(Tall(), func(d *design.Design) { d.Size = "bench" })
	return map[string][]design.Design{
		"one":         {Low()},
		"pair":        {Low(), Tall()},
		"two depths":  {Low(), deep},
		"interlaced":  {Low(), deep, third},
		"flush":       {change(Low(), flush), change(Tall(), flush)},
		"closed":      {change(Low(), closed)},
		"leg slotted": {change(Low(), inLeg), Tall()},
	}
}
