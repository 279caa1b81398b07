package shop

import (
	"fmt"
	"slices"
	"strconv"
	"strings"

	"rodsheet/geometry/measure"
	"rodsheet/templates"
	"rodsheet/templates/piece"
)

// boardFeet returns a volume in mm³ in board feet of 144 cubic inches: 12 × 12
// × 1 in (Noyes, Handwork in Wood, 1910).
func boardFeet(mm3 float64) float64 {
	const cubicInch = measure.MillimetresPerInch * measure.MillimetresPerInch * measure.MillimetresPerInch
	return mm3 / (144 * cubicInch)
}

// woodText writes a volume as wood is bought: in m³ or in board feet.
func woodText(mm3 float64, u measure.Unit) string {
	if u == measure.Inch {
		return strconv.FormatFloat(boardFeet(mm3), 'f', 2, 64) + " board feet"
	}
	return strconv.FormatFloat(mm3/1e9, 'f', 4, 64) + " m³"
}

// CutList returns the cut list as it is printed, with the boards' cutting
// plan where the design lists boards.
func CutList(pieces []piece.Piece) []templates.Panel {
	if len(pieces) == 0 {
		return nil
	}
	c := newCutList(pieces)
	out := []templates.Panel{c.partsPanel(), c.woodPanel()}
	if len(c.Hardware) > 0 {
		out = append(out, c.hardwarePanel())
	}
	out = append(out, SharedPanels(pieces, func(i int) []templates.Panel { return glassPanel(pieces[i]) })...)
	if c.Boards != nil {
		out = append(out, c.Boards.panel(c.Unit))
	}
	return out
}

// tested reports whether there are test pieces.
func (c cutList) tested() bool {
	return slices.ContainsFunc(c.Rows, func(r cutRow) bool {
		_, ok := r.kind.(testKind)
		return ok
	})
}

func (c cutList) partsPanel() templates.Panel {
	p := templates.Panel{
		Heading: "Cut list, length along the grain × width × thickness, " + c.Unit.String(),
		Ruled:   true,
		Table:   [][]string{{"part", "count", "spare", "finished", "sawn square to", "rough"}},
		Text: []string{
			"Finished is from tip to tip, as milled. Sawn is the length at which both ends are square and the settings begin. Rough is that and the allowances, rounded up.",
			"Mill " + extras(c.tested()) + " with the rest, and take them through every setting: a piece milled later never matches.",
		},
	}
	if c.Unasked {
		p.Text = append(p.Text, "The design asks for no spares. Stretchers and legs get one all the same: a slip at the last cut must not cost every setting before it.")
	}
	for _, r := range c.Rows {
		p.Table = append(p.Table, c.partRow(r))
	}
	return p
}

func (c cutList) partRow(r cutRow) []string {
	spare, sawn, rough := none, measure.Length(r.Sawn.Length).Bare(c.Unit), c.stickText(r.Rough)
	if r.Spares > 0 {
		spare = strconv.Itoa(r.Spares)
	}
	if !r.bought() {
		sawn, rough = none, "from "+r.From
	}
	return []string{r.Part, r.countText(), spare, c.stickText(r.Finished), sawn, rough}
}

// countText gives the count of each size and their sum: "3 low + 3 tall = 6".
func (r cutRow) countText() string {
	var all []string
	for _, s := range r.Sizes {
		all = append(all, strings.TrimSpace(strconv.Itoa(s.Count)+" "+s.Size))
	}
	switch len(all) {
	case 0:
		return strconv.Itoa(r.Serves)
	case 1:
		return all[0]
	}
	return strings.Join(all, " + ") + " = " + strconv.Itoa(r.parts())
}

func (c cutList) stickText(s piece.StockSize) string {
	bare := func(mm float64) string { return measure.Length(mm).Bare(c.Unit) }
	return bare(s.Length) + " × " + bare(s.Width) + " × " + bare(s.Thickness)
}

func (c cutList) woodPanel() templates.Panel {
	wood := func(mm3 float64) string { return woodText(mm3, c.Unit) }
	p := templates.Panel{Heading: "Wood"}
	for _, s := range c.bySize() {
		p.Table = append(p.Table, []string{strings.TrimSuffix("rough parts, "+s.Size, ", "), wood(s.Wood)})
	}
	waste := strconv.FormatFloat(100*c.Waste, 'f', 0, 64) + " %"
	p.Table = append(p.Table,
		[]string{extras(c.tested()), wood(c.spareWood())},
		[]string{"together, rough", wood(c.rough())},
		[]string{"of which in the finished parts", wood(c.net())},
		[]string{"with " + waste + " waste, to buy", wood(c.buy())},
	)
	p.Text = []string{"Cauls, wedges, filler strips and what else comes from offcuts take no wood of their own."}
	return p
}

func (c cutList) hardwarePanel() templates.Panel {
	p := templates.Panel{Heading: "To buy ready"}
	for _, h := range c.Hardware {
		p.Table = append(p.Table, []string{h.Name, strconv.Itoa(h.Count)})
	}
	return p
}

// glassPanel is the order for the glass of one piece.
func glassPanel(p piece.Piece) []templates.Panel {
	if lines := glassOrder(p); len(lines) > 0 {
		return []templates.Panel{{Heading: "Glass order", Text: lines}}
	}
	return nil
}

// leastOffcut is the shortest offcut worth a line, mm.
const leastOffcut = 100.0

// panel prints the plan, a row for each lane.
func (c cuttingPlan) panel(u measure.Unit) templates.Panel {
	bare := boardText(u)
	p := templates.Panel{
		Heading: "Cutting plan, " + u.String(), Ruled: true,
		Table: [][]string{{"board", "lane, from one edge", "pieces, each from so far from one end", "offcut"}},
		Text: []string{
			"Rip the lanes first, then crosscut them. A kerf of " + measure.Length(c.Kerf).Text(u) +
				" is left between lanes and between pieces. The plan is a plain one: look at each board before you follow it, for knots, checks and the run of the grain.",
		},
	}
	for i, b := range c.Boards {
		name := fmt.Sprintf("%d: %s × %s × %s", i+1, bare(b.Length), bare(b.Width), bare(b.Thickness))
		for _, l := range b.Lanes {
			p.Table = append(p.Table, []string{name, bare(l.At) + " to " + bare(l.At+l.Width), l.text(bare), leftover(b.behind(l, c.Kerf), bare)})
			name = "″"
		}
		if left := b.beside(c.Kerf); left > 1 {
			p.Table = append(p.Table, []string{"″", none, "not ripped", bare(b.Length) + " × " + bare(left)})
		}
	}
	if missed := c.missedText(); missed != "" {
		p.Table = append(p.Table, []string{"No room on these boards for: " + missed + "."})
	}
	return p
}

// boardText writes lengths on a board: no finer than 1/64 in.
func boardText(u measure.Unit) func(mm float64) string {
	if u == measure.Inch {
		return func(mm float64) string { return measure.Fraction(mm / measure.MillimetresPerInch) }
	}
	return func(mm float64) string { return measure.Length(mm).Bare(u) }
}

// leftover writes what is left of a lane, if it is worth a line.
func leftover(length float64, bare func(float64) string) string {
	if length >= leastOffcut {
		return bare(length) + " long"
	}
	return none
}

func (l lane) text(bare func(float64) string) string {
	all := make([]string, len(l.Places))
	for i, p := range l.Places {
		all[i] = p.Name + " at " + bare(p.At)
	}
	return strings.Join(all, "; ")
}

// missedText counts what has no room.
func (c cuttingPlan) missedText() string {
	var names []string
	counts := map[string]int{}
	for _, p := range c.Missed {
		if counts[p.Name] == 0 {
			names = append(names, p.Name)
		}
		counts[p.Name]++
	}
	for i, n := range names {
		names[i] = fmt.Sprintf("%d %s", counts[n], n)
	}
	return strings.Join(names, ", ")
}
