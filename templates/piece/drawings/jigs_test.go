package drawings

import (
	"slices"
	"testing"

	"rodsheet/geometry/measure"
	"rodsheet/templates"
	"rodsheet/templates/piece/internal/piecetest"
	"rodsheet/templates/piece/shop"
)

// Every jig is drawn in the part of the work that it serves, with each of the figures that
// it is made by, in the unit of the job.
func TestJigsAreFigured(t *testing.T) {
	for _, u := range []measure.Unit{measure.Millimetre, measure.Inch} {
		low, tall := piecetest.Low(), piecetest.Tall()
		low.Unit, tall.Unit = u, u
		pieces := piecetest.WorkedAll(t, low, tall)
		drawn := 0
		for at := shop.StockStage; at <= shop.FinishStage; at++ {
			section := jigs(pieces, at)
			drawn += len(section.Pictures)
			if (len(section.Panels) > 0) != (len(section.Pictures) > 0) {
				t.Errorf("stage %v: %d pictures, %d panels", at, len(section.Pictures), len(section.Panels))
			}
			i := 0
			for _, l := range shop.Jigs(pieces) {
				j := l.What
				if jigStages[j.Kind] != at {
					continue
				}
				for _, mm := range []float64{j.Wide, j.Tall, j.Near, j.Far, j.Apart} {
					if j.Kind == shop.LapSled && mm == j.Near {
						continue // the fence is set by the edges of the base
					}
					text := measure.Length(mm).Text(u)
					if mm > 0 && !slices.ContainsFunc(section.Pictures[i].Labels, func(l templates.Label) bool { return l.Text == text }) {
						t.Errorf("%s: no %s", section.Pictures[i].Heading, text)
					}
				}
				i++
			}
		}
		if want := len(shop.Jigs(pieces)); drawn != want || want < 4 {
			t.Errorf("%d jigs drawn of %d", drawn, want)
		}
	}
}
