package render

import (
	"testing"

	"rodsheet/geometry/measure"
	"rodsheet/templates"
	"rodsheet/templates/piece/kind"
	"rodsheet/templates/piece/kinds"
)

// Packs of kinds other than the ring: no lettering is struck, on both papers and in both
// units, and no card has flaws.
func TestPacksOfKindsKeepClear(t *testing.T) {
	for _, name := range []string{"staked-stool", "side-table"} {
		for _, u := range []measure.Unit{measure.Millimetre, measure.Inch} {
			for _, paper := range []Paper{papers()[3], papers()[0]} {
				sizes := exampleSizes(t, name)
				for i := range sizes {
					sizes[i].Unit = u
				}
				w := must(kinds.Solve(sizes))(t)
				l := DefaultLayout(u, paper)
				job := must(w.Pack(kind.Options{For: kind.Buying | kind.Bench | kind.Record}, templates.Setting{Unit: u, Clear: l.Clear(), Full: u == measure.Inch}))(t)
				plan := must(Lay(job, l))(t)
				for i, p := range plan.Document().Pages {
					for _, text := range struck(p) {
						t.Errorf("%s on %s in %v, sheet %d: %q is struck", name, paper.Name, u, i+1, text)
					}
				}
				for _, s := range plan.sheets {
					for _, b := range s.blocks {
						if b.card != nil && b.card.flaws > 0 {
							t.Errorf("%s on %s in %v: card %d has %d flaws", name, paper.Name, u, b.card.Number, b.card.flaws)
						}
					}
				}
			}
		}
	}
}
