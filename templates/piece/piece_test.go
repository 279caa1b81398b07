package piece

import (
	"testing"

	"rodsheet/geometry"
	"rodsheet/geometry/measure"
	"rodsheet/geometry/solid"
	"rodsheet/templates/piece/design"
)

// low is a sound three-sided table in millimetres.
func low() design.Design {
	return design.Design{
		Title: "three-sided table", Size: "low", Unit: measure.Millimetre,
		Ring: design.Ring{Ring: geometry.Ring{Sides: 3, Inside: 260, Width: 28, Depth: 36}, Plain: design.OpenEnd, Horn: 12},
		Legs: design.Legs{
			Breadth: 40, Mortise: geometry.MortiseInStretcher, Lean: design.BySplay,
			Given: measure.Radians(16), Height: 380, To: design.ToFrame, Clear: 3,
			Taper: &design.Taper{Start: 90, Foot: 26, Faces: geometry.OneFace},
		},
		Top: design.Top{
			Kind: design.GlassTop, Outline: design.RoundTop, Thickness: 8, Diameter: 640,
			Pads: design.Pads{Diameter: 22, Height: 8, Outermost: true},
		},
		Wood: design.Wood{
			Species: "Ash, white", ExtraLength: 20, ExtraWidth: 3, ExtraThickness: 3,
			Spares: 1, Tests: 1, MoistureFrom: 8, MoistureTo: 12, Waste: 0.25,
		},
		Saw: design.Saw{Kerf: 3.2, Highest: 80, StopReach: 900},
	}
}

func TestSoundPieceHasNoClash(t *testing.T) {
	p, err := Work(low())
	if err != nil {
		t.Fatal(err)
	}
	parts := p.Parts()
	for i, a := range parts {
		for _, b := range parts[:i] {
			for _, c := range solid.Clash(a, b) {
				t.Errorf("%s and %s clash: %.3f mm³ at %v", a.Name, b.Name, c.Volume(), c.Bounds())
			}
		}
	}
}
