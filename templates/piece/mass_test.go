package piece_test

import (
	"math"
	"testing"

	"rodsheet/templates/piece/design"
	"rodsheet/templates/piece/internal/piecetest"
)

func TestWeightByHand(t *testing.T) {
	d := piecetest.Square()
	p := piecetest.Worked(t, d)
	// Stretcher: from −130 to 130 + 5 + 40, less two laps of half the depth and
	// the slot. Leg: less the two cheeks beside its tenon.
	stretcher := 305.*30*40 - 2*30*30*20 - 40*10*40
	leg := 40.*30*400 - 40*20*40
	frame := 4 * (stretcher + leg) * 700e-9
	piecetest.Nearly(t, "frame", (p.FrameMass(p.Stretcher(), p.Leg()) + p.TopMass()), frame)

	d.Top = design.Top{Kind: design.WoodTop, Outline: design.RingTop, Thickness: 20, Overhang: 20}
	piecetest.Nearly(t, "wooden top", piecetest.Worked(t, d).TopMass(), 300*300*20*700e-9)
	d.Top.Pads = design.Pads{Diameter: 20, Height: 5}
	pads := 4 * math.Pi * 10 * 10 * 5 * 700e-9
	p = piecetest.Worked(t, d)
	piecetest.Nearly(t, "pads", p.FrameMass(p.Stretcher(), p.Leg()), frame+pads)
	d.Top.Pads.Bumpers = true
	p = piecetest.Worked(t, d)
	piecetest.Nearly(t, "bumpers", p.FrameMass(p.Stretcher(), p.Leg()), frame)

	// 2500 kg/m³ (EN 572-1), so a square metre of 6 mm glass weighs 15.0 kg.
	d.Top = design.Top{Kind: design.GlassTop, Outline: design.RingTop, Thickness: 6, Overhang: 370}
	piecetest.Nearly(t, "glass", piecetest.Worked(t, d).TopMass(), 15)
}
