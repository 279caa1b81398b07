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

// GlueUp returns the order of assembly, in two halves that stand beside each other, and
// before it where all is asked for the blocks that it takes: cards say how they are made.
func GlueUp(plan shop.Plan, full bool) []templates.Panel {
	if len(plan.Pieces) == 0 {
		return nil
	}
	s := speakerFor(plan.Designs...)
	var out []templates.Panel
	if full {
		out = append(out, s.blocks(plan.Blocks))
	}
	for _, l := range plan.GlueUps() {
		var steps []string
		for i, step := range l.What.Steps {
			steps = append(steps, fmt.Sprintf("%d. %s", i+1, strings.Join(s.all(step.All()), " ")))
		}
		steps = append(steps, strings.Join(s.all(l.What.Blocks.All()), " "))
		half := len(steps) - 3 // the last ones are the longest
		heading := piece.WithSizes(say("Glue-up"), l.Sizes, s.sizes)
		out = append(out, templates.Panel{Heading: heading, Text: steps[:half]},
			templates.Panel{Heading: say("%s, from step %d", heading, half+1), Text: steps[half:]})
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
