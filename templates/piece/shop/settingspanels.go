package shop

import (
	"cmp"
	"fmt"
	"slices"
	"strings"

	"rodsheet/geometry/measure"
	"rodsheet/templates"
	"rodsheet/templates/piece"
)

// none fills a cell that has nothing to say; an empty one asks to be filled in.
const none = "–"

// settingsHead names the columns of the settings list.
func settingsHead() []string {
	return []string{"no.", "step", "parts", "down; on the fence", "gauge", "blade", "stop, spacer", "used"}
}

// Settings returns the settings list as it is printed, numbered right
// through. It is one table, for two could come to stand in another order on
// the sheets. Each stage has its heading, and under each row stands what else
// there is to know of it.
func Settings(pieces []piece.Piece) []templates.Panel {
	if len(pieces) == 0 {
		return nil
	}
	list := templates.Panel{Heading: "Settings, in working order", Ruled: true, Under: true, Table: [][]string{settingsHead()}}
	steps := workingOrder(pieces)
	for i, s := range steps {
		if i == 0 || steps[i-1].Op.stage() != s.Op.stage() {
			list.Table = append(list.Table, []string{strings.ToUpper(s.Op.stage().String())})
		}
		number := fmt.Sprint(i + 1)
		row := append([]string{number, s.Name, s.partText()}, s.cells()[1:]...)
		list.Table = append(list.Table, append(row, ""))
		if words := s.words(); words != "" {
			list.Table = append(list.Table, []string{number + ": " + words})
		}
	}
	return []templates.Panel{list}
}

// cells returns the step's name and how part and saw stand for it.
func (s step) cells() []string {
	lie := strings.Trim(s.Down+"; "+s.Fence, "; ")
	if lie == "" {
		lie = none
	}
	if s.Cut == nil {
		return []string{s.Name, lie, none, none, none}
	}
	return []string{s.Name, lie, s.gaugeText(), s.bladeText(), s.stopText()}
}

// gaugeText gives the angle both ways, first as the gauge at hand reads it.
func (s step) gaugeText() string {
	square := measure.Angle(s.Cut.Square).Text(s.unit)
	edge := measure.Angle(s.Cut.edge()).Text(s.unit)
	switch {
	case s.Cut.How == onTaper && s.Cut.ByHand:
		return square + " to the straight face"
	case s.Cut.ByHand: // the bevel, whatever would hold the part at the saw
	case s.Cut.How == upright && s.Cut.Square == 0:
		return "upright jig"
	case s.Cut.How == upright:
		return "upright jig, filler strip " + square
	case s.Cut.How == onTaper:
		return "tapering jig, " + square + " to the straight face"
	}
	text := square + " from square, " + edge + " from the edge"
	if s.fromFence {
		text = edge + " from the edge, " + square + " from square"
	}
	if s.Cut.Toward != "" {
		text += ", " + s.Cut.Toward
	}
	return text
}

func (s step) bladeText() string {
	switch {
	case s.Cut.ByHand && s.Cut.Through:
		return "by hand, through " + s.mm(s.Cut.Height)
	case s.Cut.ByHand && s.Cut.How == upright:
		return "by hand, " + s.mm(s.Cut.Height) + " from the rough end"
	case s.Cut.ByHand:
		return "by hand, " + s.mm(s.Cut.Height) + " deep"
	case s.Cut.Through:
		return "tilt " + measure.Angle(s.Cut.Tilt).Text(s.unit) + ", through " + s.mm(s.Cut.Height)
	}
	return "tilt " + measure.Angle(s.Cut.Tilt).Text(s.unit) + ", " + s.mm(s.Cut.Height) + " high"
}

func (s step) stopText() string {
	var all []string
	c := s.Cut
	if c.Stop > 0 {
		text := s.mm(c.Stop) + ", " + c.Against
		if c.Beyond {
			text += "; farther than the stop reaches, saw to a knife line"
		}
		all = append(all, text)
	}
	if c.Spacer > 0 {
		all = append(all, "spacer "+s.mm(c.Spacer))
	}
	switch {
	case c.Line > 0 && c.How == onTaper:
		all = append(all, "starts "+s.mm(c.Line)+" from "+c.From)
	case c.Line > 0 && c.ByHand:
		all = append(all, "line "+s.mm(c.Line)+" from "+c.From)
	case c.Line > 0:
		all = append(all, "no stop: line "+s.mm(c.Line)+" from "+c.From)
	}
	if c.Along > 0 {
		all = append(all, "lap "+s.mm(c.Along)+" long along the edge")
	}
	if len(all) == 0 {
		return none
	}
	return strings.Join(all, "; ")
}

// mm writes a length in the unit of the list.
func (s step) mm(v float64) string { return measure.Length(v).Text(s.unit) }

// words is what stands under a step.
func (s step) words() string {
	all := slices.Concat(s.Then, s.Once)
	if s.Test != "" {
		all = append(all, "Test: "+s.Test)
	}
	if s.Caution != "" {
		all = append(all, "Caution: "+s.Caution)
	}
	return strings.Join(all, " ")
}

// countText says how many, and of or for which sizes.
func (b batch) countText() string {
	words := fmt.Sprint(b.Count)
	if b.Size != "" {
		words += " " + b.Size
	}
	if b.For != "" {
		words += " for " + b.For
	}
	return words
}

// partText names the parts of a step: "stretcher: 3 low, 3 tall, 1 spare".
func (s step) partText() string {
	var parts []string
	counts := map[string][]string{}
	extra := map[string][2]int{}
	for _, b := range s.Parts {
		if !slices.Contains(parts, b.Part) {
			parts = append(parts, b.Part)
		}
		if b.Count > 0 {
			counts[b.Part] = append(counts[b.Part], b.countText())
		}
		e := extra[b.Part]
		extra[b.Part] = [2]int{e[0] + b.Spares, e[1] + b.Tests}
	}
	for i, part := range parts {
		all := counts[part]
		for k, word := range []string{"spare", "test"} {
			if n := extra[part][k]; n > 0 {
				all = append(all, fmt.Sprintf("%d %s", n, word))
			}
		}
		parts[i] = part
		if len(all) > 0 {
			parts[i] += ": " + strings.Join(all, ", ")
		}
	}
	return cmp.Or(strings.Join(parts, "; "), none)
}
