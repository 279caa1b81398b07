package shop

import (
	"strings"
	"testing"

	"rodsheet/geometry/measure"
	"rodsheet/templates/piece/design"
	"rodsheet/templates/piece/internal/piecetest"
)

func TestGlassOrder(t *testing.T) {
	d := piecetest.Low()
	d.Top.Kind = design.WoodTop
	if got := glassOrder(piecetest.Worked(t, d)); got != nil {
		t.Errorf("a wooden top is ordered as glass: %q", got)
	}
	for _, tt := range []struct {
		change func(*design.Design)
		want   []string
	}{
		{func(*design.Design) {}, []string{"8 mm thick", "tempered", "round, diameter 640 mm.", "6.4 kg", "before tempering", "ASTM F2813", "glass sizes"}},
		{func(d *design.Design) { d.Unit, d.Top.Diameter = measure.Inch, 25.4*24 }, []string{"5/16 in", "round, diameter 24 in."}},
		{func(d *design.Design) {
			d.Top.Outline, d.Top.Overhang, d.Top.Corner, d.Top.CornerSize = design.RingTop, 60, design.RoundedCorner, 20
		}, []string{"triangle", "rounded to a radius of 20 mm"}},
		{func(d *design.Design) {
			d.Top.Outline, d.Top.Overhang, d.Top.Corner, d.Top.CornerSize = design.RingTop, 60, design.ClippedCorner, 20
		}, []string{"clipped 20 mm back"}},
	} {
		d := piecetest.Low()
		tt.change(&d)
		order := strings.Join(glassOrder(piecetest.Worked(t, d)), "\n")
		for _, want := range tt.want {
			if !strings.Contains(order, want) {
				t.Errorf("order lacks %q:\n%s", want, order)
			}
		}
	}
}
