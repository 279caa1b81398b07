package drawings

import (
	"slices"
	"strings"
	"testing"

	"rodsheet/templates/piece/shop"
	"rodsheet/templates/piece/wording"
)

// A template of one size is called for by cards of that size only.
func TestTemplatesOfASizeAreForItsCards(t *testing.T) {
	sized := 0
	for _, s := range packed(t, twoSizes(t), false) {
		for _, d := range s.Drawings {
			if name, ok := strings.CutSuffix(d.Name, ", size "+d.View.Size); ok != (d.View.Size != "") {
				t.Errorf("%q is of size %q", name, d.View.Size)
			}
		}
		for _, c := range s.Cards {
			_, size, one := strings.Cut(c.Heading, ", size ")
			for _, v := range c.Templates {
				if v.Size != "" && one {
					sized++
					if v.Size != size {
						t.Errorf("%s calls for %v", c.Heading, v)
					}
				}
			}
		}
	}
	if sized == 0 {
		t.Error("no card of one size calls for a template of it")
	}
}

// Every block that is sawn stands on its card with its figures, the strips of all splays
// on one card.
func TestBlocksStandOnTheirCards(t *testing.T) {
	plan := shop.NewPlan(twoSizes(t))
	pictures := galleries(plan)
	stripCards, shown := 0, 0
	for i, c := range plan.Cards {
		if c.Steps[0].What.ID == "step.strip" {
			stripCards++
		}
		var said []string
		for _, p := range pictures[i].setup {
			for _, l := range p.Labels {
				said = append(said, l.Text)
			}
		}
		for _, s := range c.Steps {
			for _, b := range s.Parts {
				for _, l := range plan.Blocks {
					if l.What.Part != b.Part || !slices.Equal(l.Sizes, b.For) {
						continue
					}
					shown++
					for _, mm := range []float64{l.What.Across, l.What.Thick} {
						if want := plan.Pieces[0].MM(mm); !slices.Contains(said, want) {
							t.Errorf("card %d: no %s of %s among %q", c.Number, want, wording.Block(l.What), said)
						}
					}
				}
			}
		}
	}
	if stripCards != 1 || shown < 4 {
		t.Errorf("%d cards of strips, %d blocks shown", stripCards, shown)
	}
}
