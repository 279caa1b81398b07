package wording

import (
	"fmt"
	"math"
	"slices"
	"strconv"
	"strings"

	"rodsheet/geometry/lists"
	"rodsheet/geometry/measure"
	"rodsheet/templates"
	"rodsheet/templates/piece"
	"rodsheet/templates/piece/shop"
	"rodsheet/templates/wording"
)

var cutListHead = []wording.Text{"part", "count", "spare", "finished", "sawn", "rough"}

// woodVolume writes a volume as wood is bought: in m³ or in board feet.
func woodVolume(mm3 float64, u measure.Unit) string {
	return bulkOf(shop.Buy{Kind: shop.WoodToBuy}, u).amount(mm3)
}

// CutList returns the cut list as it is printed, with the boards' cutting
// plan where the design lists boards.
func CutList(plan shop.Plan) []templates.Panel {
	if len(plan.Designs) == 0 {
		return nil
	}
	s, c := speakerFor(plan.Designs...), plan.Cuts
	out := []templates.Panel{s.partsPanel(c), s.woodPanel(plan), Buying(plan)}
	if orders := plan.GlassOrders(); len(orders) > 0 {
		out = append(out, s.glassPanel(orders))
	}
	if c.Boards != nil {
		out = append(out, s.boardsPanel(c))
	}
	return out
}

// glassPanel puts together what the panes of all sizes have alike, but for how many there
// are: of each size a line.
func (s speaker) glassPanel(orders []piece.Lot[shop.GlassOrder]) templates.Panel {
	p := templates.Panel{Heading: say("Glass order")}
	for i, first := range orders[0].What {
		alike := i > 0 || len(orders) == 1
		for _, l := range orders {
			alike = alike && l.What[i] == first
		}
		for _, l := range orders {
			if l.What[i] == (shop.Note{}) {
				continue
			}
			text := s.note(l.What[i])
			if !alike {
				text = say("%s: %s", piece.SizeWords(l.Sizes, s.sizes), text)
			}
			p.Text = append(p.Text, text)
			if alike {
				break
			}
		}
	}
	return p
}

func (s speaker) partsPanel(c shop.CutList) templates.Panel {
	p := templates.Panel{Heading: say("Cut list, length along the grain × width × thickness, %s", s.unit), Ruled: true, Table: [][]string{said(cutListHead)}, Text: []string{say("Finished: as milled, from tip to tip. Sawn: the length to which both ends are squared before the joints. Rough: that and the allowances.")}}
	if c.NoSpares {
		p.Text = append(p.Text, say("The design asks for no spares: a slip at the last cut of a part costs every setting before it. With spares = 1 in [wood] there is one of each."))
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
	if r.Part == shop.TopBoard || r.Part.IsStick() { // glued up first, or sawn up
		sawn = empty
	}
	if r.From != shop.Bought {
		sawn, rough = empty, say("from %s", sourceNames[r.From].With())
	}
	if len(r.For) > 0 {
		name = piece.WithSizes(blockNames[r.Part].name.With()+", "+s.angle(r.Angle), r.For, s.sizes)
	}
	return []string{name, countText(r), spare, s.stock(r.Finished), sawn, rough}
}

// countText gives the count of each size and their sum: "3 low + 3 tall = 6".
func countText(r shop.CutRow) string {
	all := lists.Map(r.Sizes, func(s shop.SizeCount) string { return strings.TrimSpace(strconv.Itoa(s.Count) + " " + s.Size) })
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

// woodPanel sums the wood up as its rows are printed, so that who adds these gets the sum.
func (s speaker) woodPanel(plan shop.Plan) templates.Panel {
	p, c := templates.Panel{Heading: say("Wood")}, plan.Cuts
	row := func(name string, mm3 float64) { p.Table = append(p.Table, []string{name, woodVolume(mm3, s.unit)}) }
	in, sum := bulkOf(shop.Buy{Kind: shop.WoodToBuy}, s.unit), 0.0
	step := in.of / math.Pow10(in.places)
	add := func(name string, mm3 float64) {
		row(name, mm3)
		sum += math.Round(mm3/step) * step
	}
	for _, w := range c.BySize() {
		name := say("rough parts")
		if w.Size != "" {
			name = say("rough parts, %s", w.Size)
		}
		add(name, w.Wood)
	}
	if e := c.Extras(); e != shop.NoExtras {
		add(extraNames[e].With(), c.SpareWood())
	}
	if sticks := c.StickWood(); sticks > 0 {
		add(say("block sticks"), sticks)
	}
	row(say("together, rough"), sum)
	row(say("of which in the finished parts"), c.Net())
	if c.Boards == nil {
		row(say("with %.0f %% waste, to buy", 100*c.Waste), c.Buy())
		return p
	}
	row(say("with %.0f %% waste, the least", 100*c.Waste), c.Buy())
	whole := 0.0
	for _, b := range plan.Buying() {
		if b.Kind <= shop.WoodToBuy {
			whole += b.Amount
		}
	}
	p.Text = append(p.Text, say("The least is what must be there. The buying list has what the plan cuts, whole boards: %s.", woodVolume(whole, s.unit)))
	return p
}

// boardsPanel says how the boards are sawn that the pictures show.
func (s speaker) boardsPanel(c shop.CutList) templates.Panel {
	p := templates.Panel{Heading: say("Cutting plan"), Text: []string{
		say("Rip the lanes in order, each so wide as its rip says; resaw those of several strips; then crosscut to the rough lengths, and last rip again what is narrower than its lane or thinner than its board. A kerf of %s is left between lanes and between pieces.", s.mm(c.Boards.Kerf)),
		say("The plan is a plain one: look at each board before you follow it, for knots, checks and the run of the grain."),
	}}
	if slices.ContainsFunc(c.Rows, func(r shop.CutRow) bool { return r.Part == shop.Stretcher }) {
		p.Text = append(p.Text, say("Spare, test and stick alone are of stretcher stock.")) // as PieceName has it
	}
	if missed := c.Boards.NoRoom(); len(missed) > 0 {
		p.Text = append(p.Text, say("No room on these boards for: %s.", Missing(missed)))
	}
	return p
}

// Coarse writes a length on a board: no finer than 1/64 in.
func Coarse(mm float64, u measure.Unit) string {
	if u == measure.Inch {
		return measure.Fraction(mm / measure.MillimetresPerInch)
	}
	return measure.Length(mm).Bare(u)
}

// PieceName names a piece of a board as short as a picture of one has room for: spare,
// test and stick alone are of stretcher stock.
func PieceName(n shop.Name) string {
	n.Spare = n.Spare && n.Size == "" // of one size it is one more of that
	if n.Spare && n.Part == shop.Stretcher {
		return say("spare")
	}
	if short, ok := shortNames[n.Part]; ok {
		return pieceName(n, short)
	}
	return pieceName(n, partNames[n.Part].one)
}

// pieceName names a piece of a board and the size it belongs to.
func pieceName(n shop.Name, part wording.Text) string {
	name := part.With()
	if n.Spare {
		name = say("spare %s", name)
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
