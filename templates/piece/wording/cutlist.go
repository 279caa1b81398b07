package wording

import (
	"fmt"
	"strconv"
	"strings"

	"rodsheet/geometry/measure"
	"rodsheet/templates"
	"rodsheet/templates/piece"
	"rodsheet/templates/piece/design"
	"rodsheet/templates/piece/shop"
	"rodsheet/templates/wording"
)

var (
	cutListHead = []wording.Text{"part", "count", "spare", "finished", "sawn square to", "rough"}
	boardsHead  = []wording.Text{"board", "lane, from one edge", "pieces, each from so far from one end", "offcut"}
)

const (
	cutListHeading wording.Text = "Cut list, length along the grain × width × thickness, %s"
	sizesText      wording.Text = "Finished is from tip to tip, as milled. Sawn is the length at which both ends are square and the settings begin. Rough is that and the allowances, rounded up."
	millText       wording.Text = "Mill %s with the rest, and take them through every setting: a piece milled later never matches."
	noSparesText   wording.Text = "The design asks for no spares: a slip at the last cut of a part costs every setting before it. With spares = 1 in [wood] there is one of each."
	sizeText       wording.Text = "× %[2]s"

	woodHeading  wording.Text = "Wood"
	roughText    wording.Text = "rough parts"
	roughOfText  wording.Text = "rough parts, %s"
	roughSumText wording.Text = "together, rough"
	netText      wording.Text = "of which in the finished parts"
	buyText      wording.Text = "with %.0f %% waste, to buy"
	offcutsText  wording.Text = "Cauls, wedges, filler strips and what else comes from offcuts take no wood of their own."
	cubicText    wording.Text = "%.4f m³"
	feetText     wording.Text = "%.2f board feet"

	readyHeading wording.Text = "To buy ready"
	bumperText   wording.Text = "bumper, %s across, %s high"

	boardsHeading wording.Text = "Cutting plan, %s"
	boardsText    wording.Text = "Rip the lanes first, then crosscut them. A kerf of %s is left between lanes and between pieces. The plan is a plain one: look at each board before you follow it, for knots, checks and the run of the grain."
	laneText      wording.Text = "%s to %s"
	placeText     wording.Text = "%s at %s"
	longText      wording.Text = "%s long"
	notRippedText wording.Text = "not ripped"
	noRoomText    wording.Text = "No room on these boards for: %s."
	spareOfText   wording.Text = "spare %s"
)

// boardFeet returns a volume in mm³ in board feet of 144 cubic inches: 12 × 12
// × 1 in (Noyes, Handwork in Wood, 1910).
func boardFeet(mm3 float64) float64 {
	const cubicInch = measure.MillimetresPerInch * measure.MillimetresPerInch * measure.MillimetresPerInch
	return mm3 / (144 * cubicInch)
}

// woodVolume writes a volume as wood is bought: in m³ or in board feet.
func woodVolume(mm3 float64, u measure.Unit) string {
	if u == measure.Inch {
		return feetText.With(boardFeet(mm3))
	}
	return cubicText.With(mm3 / 1e9)
}

// CutList returns the cut list as it is printed, with the boards' cutting
// plan where the design lists boards.
func CutList(plan shop.Plan) []templates.Panel {
	if len(plan.Pieces) == 0 {
		return nil
	}
	s, c := speakerFor(plan.Pieces), plan.Cuts
	out := []templates.Panel{s.partsPanel(c), s.woodPanel(c)}
	if len(c.Bumpers) > 0 {
		out = append(out, s.readyPanel(c))
	}
	for _, l := range plan.Glass() {
		out = append(out, templates.Panel{Heading: piece.WithSizes(glassHeading.With(), l.Sizes, s.sizes), Text: s.glass(l.What)})
	}
	if c.Boards != nil {
		out = append(out, s.boardsPanel(*c.Boards))
	}
	return out
}

func (s speaker) partsPanel(c shop.CutList) templates.Panel {
	p := templates.Panel{Heading: cutListHeading.With(s.unit), Ruled: true, Table: [][]string{said(cutListHead)}, Text: []string{sizesText.With()}}
	if e := c.Extras(); e != shop.NoExtras {
		p.Text = append(p.Text, millText.With(extraNames[e].With()))
	}
	if c.NoSpares {
		p.Text = append(p.Text, noSparesText.With())
	}
	for _, r := range c.Rows {
		p.Table = append(p.Table, s.partRow(r))
	}
	return p
}

func (s speaker) partRow(r shop.CutRow) []string {
	name, spare, sawn, rough := Part(r.Part), empty, s.bare(r.Sawn.Length), s.stock(r.Rough)
	if r.Spares > 0 {
		spare = strconv.Itoa(r.Spares)
	}
	if r.From != shop.Bought {
		sawn, rough = empty, fromText.With(sourceNames[r.From].With())
	}
	if len(r.For) > 0 {
		name = piece.WithSizes(blockNames[r.Part].name.With()+", "+s.angle(r.Angle), r.For, s.sizes)
	}
	return []string{name, countText(r), spare, s.stock(r.Finished), sawn, rough}
}

// countText gives the count of each size and their sum: "3 low + 3 tall = 6".
func countText(r shop.CutRow) string {
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
	return strings.Join(all, " + ") + " = " + strconv.Itoa(r.Parts())
}

func (s speaker) stock(k piece.StockSize) string {
	return s.bare(k.Length) + " × " + s.bare(k.Width) + " × " + s.bare(k.Thickness)
}

func (s speaker) woodPanel(c shop.CutList) templates.Panel {
	p := templates.Panel{Heading: woodHeading.With(), Text: []string{offcutsText.With()}}
	add := func(name string, mm3 float64) { p.Table = append(p.Table, []string{name, woodVolume(mm3, s.unit)}) }
	for _, w := range c.BySize() {
		name := roughText.With()
		if w.Size != "" {
			name = roughOfText.With(w.Size)
		}
		add(name, w.Wood)
	}
	if e := c.Extras(); e != shop.NoExtras {
		add(extraNames[e].With(), c.SpareWood())
	}
	add(roughSumText.With(), c.Rough())
	add(netText.With(), c.Net())
	add(buyText.With(100*c.Waste), c.Buy())
	return p
}

func (s speaker) readyPanel(c shop.CutList) templates.Panel {
	p := templates.Panel{Heading: readyHeading.With()}
	for _, b := range c.Bumpers {
		p.Table = append(p.Table, []string{bumperText.With(s.mm(b.Diameter), s.mm(b.Height)), strconv.Itoa(b.Count)})
	}
	return p
}

// leastOffcut is the shortest offcut worth a line, mm.
const leastOffcut = 100.0

// boardsPanel prints the plan, a row for each lane.
func (s speaker) boardsPanel(c shop.CuttingPlan) templates.Panel {
	bare := s.coarse
	p := templates.Panel{
		Heading: boardsHeading.With(s.unit), Ruled: true, Table: [][]string{said(boardsHead)},
		Text: []string{boardsText.With(s.mm(c.Kerf))},
	}
	for i, b := range c.Boards {
		name := fmt.Sprintf("%d: %s × %s × %s", i+1, bare(b.Length), bare(b.Width), bare(b.Thickness))
		for _, l := range b.Lanes {
			p.Table = append(p.Table, []string{name, laneText.With(bare(l.At), bare(l.At+l.Width)), s.places(l), s.leftover(b.Behind(l, c.Kerf))})
			name = "″"
		}
		if left := b.Beside(c.Kerf); left > 1 {
			p.Table = append(p.Table, []string{"″", empty, notRippedText.With(), bare(b.Length) + " × " + bare(left)})
		}
	}
	if missed := c.NoRoom(); len(missed) > 0 {
		p.Table = append(p.Table, []string{noRoomText.With(Missing(missed))})
	}
	return p
}

// coarse writes lengths on a board: no finer than 1/64 in.
func (s speaker) coarse(mm float64) string {
	if s.unit == measure.Inch {
		return measure.Fraction(mm / measure.MillimetresPerInch)
	}
	return s.bare(mm)
}

// leftover writes what is left of a lane, if it is worth a line.
func (s speaker) leftover(length float64) string {
	if length >= leastOffcut {
		return longText.With(s.coarse(length))
	}
	return empty
}

func (s speaker) places(l shop.Lane) string {
	all := make([]string, len(l.Places))
	for i, p := range l.Places {
		all[i] = placeText.With(pieceName(p.Name, partNames[p.Name.Part].one), s.coarse(p.At))
	}
	return strings.Join(all, "; ")
}

// pieceName names a piece of a board and the size it belongs to.
func pieceName(n shop.Name, part wording.Text) string {
	name := part.With()
	if n.Spare {
		name = spareOfText.With(name)
	}
	return strings.TrimSpace(name + " " + n.Size)
}

// Missing counts what has no room: "4 legs low, 1 spare leg".
func Missing(all []shop.Missing) string {
	names := make([]string, len(all))
	for i, m := range all {
		part := partNames[m.Name.Part].one
		if m.Count > 1 {
			part = partNames[m.Name.Part].many
		}
		names[i] = fmt.Sprintf("%d %s", m.Count, pieceName(m.Name, part))
	}
	return strings.Join(names, ", ")
}

const (
	glassHeading wording.Text = "Glass order"
	tableTopText wording.Text = "1 table top of clear float glass, %s thick, fully tempered."
	outlineText  wording.Text = "Outline: %s."
	finishedText wording.Text = "All sizes are glass sizes, finished: add nothing and take nothing off."
	cornersText  wording.Text = "Corners: %s."
	edgesText    wording.Text = "Edges: ground flat and polished all round, both arrises taken off."
	beforeText   wording.Text = "All cutting, corner and edge work comes before tempering: tempered glass cannot be worked."
	weightText   wording.Text = "Area %s, weight %s."
	safetyText   wording.Text = "Tempered or laminated safety glass is what ASTM F2813 asks of table tops; the rules of the place come first."

	roundText   wording.Text = "round, diameter %s"
	freeText    wording.Text = "%d sides, to the full-size template, %s × %s over all"
	regularText wording.Text = "%s of equal sides and corners, sides %s between the sharp corners, %s from the centre to each side"
	polygonText wording.Text = "polygon of %d sides"

	noCornersText wording.Text = "none"
	sharpText     wording.Text = "sharp, only dubbed"
	clippedText   wording.Text = "clipped %s back along both sides, dubbed"
	roundedText   wording.Text = "rounded to a radius of %s"
)

var polygonNames = map[int]wording.Text{3: "triangle", 4: "square", 5: "pentagon", 6: "hexagon", 7: "heptagon", 8: "octagon"}

// glass writes what a glass shop asks for, a line each.
func (s speaker) glass(g shop.Glass) []string {
	return []string{
		tableTopText.With(s.mm(g.Thickness)),
		outlineText.With(s.outline(g)),
		finishedText.With(),
		cornersText.With(s.corners(g)),
		edgesText.With(),
		beforeText.With(),
		weightText.With(measure.Area(g.Area).Text(s.unit), measure.Mass(g.Mass).Text(s.unit)),
		safetyText.With(),
	}
}

// outline says the outline and its sizes.
func (s speaker) outline(g shop.Glass) string {
	switch g.Outline {
	case design.RoundTop:
		return roundText.With(s.mm(g.Diameter))
	case design.FreeOutline:
		return freeText.With(g.Sides, s.bare(g.Across), s.mm(g.Height))
	}
	name := polygonText.With(g.Sides)
	if known, ok := polygonNames[g.Sides]; ok {
		name = known.With()
	}
	return regularText.With(name, s.mm(g.Side), s.mm(g.Apothem))
}

// corners says how the corners are worked.
func (s speaker) corners(g shop.Glass) string {
	switch {
	case g.Outline == design.RoundTop:
		return noCornersText.With()
	case g.CornerSize == 0 || g.Corner == design.SharpCorner:
		return sharpText.With()
	case g.Corner == design.ClippedCorner:
		return clippedText.With(s.mm(g.CornerSize))
	}
	return roundedText.With(s.mm(g.CornerSize))
}
