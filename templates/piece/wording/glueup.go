package wording

import (
	"fmt"
	"strings"

	"rodsheet/templates"
	"rodsheet/templates/piece"
	"rodsheet/templates/piece/shop"
	"rodsheet/templates/wording"
)

var blocksHead = []wording.Text{"block", "count", "angle", "thin, thick", "across", "width", "from"}

// GlueUp returns the order of assembly and the blocks that it takes.
func GlueUp(plan shop.Plan) []templates.Panel {
	if len(plan.Pieces) == 0 {
		return nil
	}
	s := speakerFor(plan.Pieces)
	out := []templates.Panel{s.blocks(plan.Blocks)}
	for _, l := range plan.GlueUps() {
		panel := templates.Panel{Heading: piece.WithSizes(say("Glue-up"), l.Sizes, s.sizes)}
		for i, step := range l.What.Steps {
			panel.Text = append(panel.Text, fmt.Sprintf("%d. %s", i+1, strings.Join(s.all(step.All()), " ")))
		}
		panel.Text = append(panel.Text, strings.Join(s.all(l.What.Blocks.All()), " "))
		out = append(out, panel)
	}
	return out
}

// blocks lists cauls, wedges and filler strips, those of several sizes once.
func (s speaker) blocks(all []piece.Lot[shop.Block]) templates.Panel {
	panel := templates.Panel{
		Heading: say("Blocks for jig and clamps, %s", s.unit), Ruled: true, Table: [][]string{said(blocksHead)},
	}
	for _, l := range all {
		b := l.What
		panel.Table = append(panel.Table, []string{
			piece.WithSizes(Block(b), l.Sizes, s.sizes), fmt.Sprint(b.Count), s.angle(b.Angle),
			s.bare(b.Thin) + ", " + s.bare(b.Thick), s.bare(b.Across), s.bare(b.Width), sourceNames[b.From].With(),
		})
	}
	return panel
}
