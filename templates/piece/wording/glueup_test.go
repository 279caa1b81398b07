package wording

import (
	"rodsheet/templates"
	"strings"
	"testing"

	"rodsheet/templates/piece/design"
	"rodsheet/templates/piece/internal/piecetest"
	"rodsheet/templates/piece/shop"
)

func TestGlueUpWords(t *testing.T) {
	closed, proud := piecetest.Low(), piecetest.Low()
	closed.Ring.Plain, closed.Ring.Slack = design.ClosedEnd, 0.5
	proud.Legs.Proud = 5
	for _, c := range []struct {
		name    string
		d       design.Design
		has, no string
	}{
		{"open", piecetest.Low(), "all stretchers at once", "cannot slide"},
		{"closed", closed, "the slack of 0.5 mm", "all stretchers at once"},
		{"flush heads", piecetest.Low(), "the head level with the stretcher's top", "thicker than the heads"},
		{"proud heads", proud, "the head level, 5 mm above the stretcher's top", "the head level with"},
	} {
		plan := planOf(t, c.d)
		all := strings.Join(append(wordsOf(GlueUp(plan, false)), cardOf(plan, shop.TrimHeads).Text...), "\n")
		if !strings.Contains(all, c.has) || strings.Contains(all, c.no) {
			t.Errorf("%s: want %q and not %q in\n%s", c.name, c.has, c.no, all)
		}
		dry, glue := strings.Index(all, "Dry run first"), strings.Index(all, "Each leg into")
		if ring := strings.Index(all, "glue in the laps"); dry > glue || glue > ring {
			t.Errorf("%s: dry run at %d, legs at %d, ring at %d", c.name, dry, glue, ring)
		}
	}
}

// Sizes that are put together alike have one panel.
func TestGlueUpShared(t *testing.T) {
	twin := piecetest.Low()
	twin.Size = "twin"
	if got := GlueUp(planOf(t, piecetest.Low(), twin), true); len(got) != 3 || got[1].Heading != "Glue-up, both sizes" {
		t.Errorf("%d panels for twins, want words and blocks", len(got))
	}
	if got := GlueUp(planOf(t, piecetest.Low(), piecetest.Tall()), false); len(got) != 2 {
		t.Errorf("%d panels for low and tall, want the words once", len(got))
	}
}

// wordsOf returns all paragraphs of panels.
func wordsOf(panels []templates.Panel) (out []string) {
	for _, p := range panels {
		out = append(out, p.Text...)
	}
	return out
}
