package wording

import (
	"cmp"
	"math"
	"strconv"
	"strings"

	"rodsheet/geometry/lists"
	"rodsheet/geometry/measure"
	"rodsheet/templates"
	"rodsheet/templates/piece"
	"rodsheet/templates/piece/design"
	"rodsheet/templates/piece/shop"
	"rodsheet/templates/wording"
)

var buyingHead = []wording.Text{"to buy", "count", "amount", "price", "sum"}

const (
	asNeeded wording.Text = "as needed"
	usedUp   wording.Text = "As needed: %s."
)

// buyNames are what the lines of the buying list are called.
var buyNames = map[shop.BuyKind]wording.Text{
	shop.BoardToBuy:  "board, rough",
	shop.WoodToBuy:   "wood, rough, waste included",
	shop.GlassToBuy:  "glass top, by its order",
	shop.SheetToBuy:  "flat sheet for jigs, cuts and waste not counted",
	shop.BumperToBuy: "bumper",
}

// buyName says what is bought and which it is.
func (s speaker) buyName(b shop.Buy, species string) string {
	switch b.Kind {
	case shop.ItemToBuy:
		return b.Item.Name
	case shop.WareToBuy:
		return Ware(b.Ware, s.unit)
	case shop.BoardToBuy, shop.WoodToBuy:
		if species != "" {
			return buyNames[b.Kind].With() + ", " + species
		}
	case shop.GlassToBuy:
		return piece.WithSizes(buyNames[b.Kind].With(), b.Sizes, s.sizes)
	}
	return buyNames[b.Kind].With()
}

// buySize says how large it is, with the unit; nothing of an item.
func (s speaker) buySize(b shop.Buy) string {
	switch b.Kind {
	case shop.BoardToBuy:
		size, up := b.Size, func(mm float64) float64 { return shop.UpToEighths(mm, s.unit) }
		size = piece.StockSize{Length: up(size.Length), Width: up(size.Width), Thickness: up(size.Thickness)}
		text := s.bare(size.Length) + " × " + s.bare(size.Width) + " × " + s.mm(size.Thickness)
		if size != b.Size {
			text = say("%s, or more", text)
		}
		return text
	case shop.GlassToBuy:
		return s.bare(b.Size.Length) + " × " + s.bare(b.Size.Width) + " × " + s.mm(b.Size.Thickness)
	case shop.SheetToBuy:
		return say("%s thick", s.mm(b.Size.Thickness))
	case shop.WareToBuy: // its name says it
		return ""
	case shop.BumperToBuy:
		return say("%s across, %s high", s.mm(b.Size.Length), s.mm(b.Size.Thickness))
	}
	return b.Item.Note
}

// A bulk is how wood, or glass and sheet, are bought in one unit.
type bulk struct {
	unit, per wording.Text
	of        float64 // mm³ or mm²
	places    int
}

// bulkOf returns how a line is bought in a unit.
func bulkOf(b shop.Buy, u measure.Unit) bulk {
	return map[[2]bool]bulk{
		{true, false}:  {"m³", "per m³", 1e9, 4},
		{true, true}:   {"board feet", "per board foot", design.BoardFoot, 2},
		{false, false}: {"m²", "per m²", 1e6, 3},
		{false, true}:  {"square feet", "per square foot", design.SquareFoot, 3},
	}[[2]bool{b.Kind <= shop.WoodToBuy, u == measure.Inch}]
}

// amount writes how much there is of it, wood as the wood panel has it.
func (in bulk) amount(of float64) string {
	return strconv.FormatFloat(of/in.of, 'f', in.places, 64) + " " + in.unit.With()
}

// price returns the price that a line goes by, and of what it is the price.
func price(b shop.Buy) (design.Price, wording.Text) {
	if b.Kind <= shop.GlassToBuy {
		return b.Per.Price, bulkOf(b, b.Per.Unit).per
	}
	return b.Price, "each"
}

func money(v float64) string { return strconv.FormatFloat(v, 'f', 2, 64) }

func written(p design.Price) string {
	if !p.Given {
		return ""
	}
	return money(p.Value)
}

func counted(n int) string {
	if n == 0 {
		return ""
	}
	return strconv.Itoa(n)
}

// Buying returns the buying list as it is printed.
func Buying(plan shop.Plan) templates.Panel {
	s, lines, d := speakerFor(plan.Designs...), plan.Buying(), plan.Designs[0]
	p := templates.Panel{Heading: say("Buying list"), Ruled: true, Table: [][]string{said(buyingHead)}}
	var used []string
	for _, b := range lines {
		name, amount, cost := s.buyName(b, d.Wood.Species), empty, empty
		if b.AsNeeded() {
			used = append(used, name)
			continue
		}
		if b.Kind == shop.WoodToBuy {
			name = say("%s, so thick or more: %s", name, strings.Join(lists.Map(plan.Cuts.Thicknesses(), s.mm), ", "))
		}
		if size := s.buySize(b); size != "" {
			name += ", " + size
		}
		if in := bulkOf(b, s.unit); b.Amount > 0 {
			amount = in.amount(b.Amount)
		}
		if v, per := price(b); v.Given {
			cost = money(v.Value) + " " + per.With()
		}
		p.Table = append(p.Table, []string{name, cmp.Or(counted(b.Count), empty), amount, cost, cmp.Or(written(b.Sum()), empty)})
	}
	if len(used) > 0 {
		p.Text = append(p.Text, say(usedUp, strings.Join(used, ", ")))
	}
	if total, unpriced := shop.Total(lines); unpriced < len(lines) {
		words := say("together")
		if unpriced > 0 {
			words = say("together, but for %d without a price", unpriced)
		}
		p.Table = append(p.Table, []string{words, empty, empty, empty, strings.TrimSpace(d.Prices.Currency + " " + money(total))})
	}
	return p
}

// BuyingRecords returns the buying list as records of figures and texts, the first
// naming the columns with their units, the last the total.
func BuyingRecords(plan shop.Plan) [][]string {
	s, lines, d := speakerFor(plan.Designs...), plan.Buying(), plan.Designs[0]
	solid, flat := bulkOf(shop.Buy{Kind: shop.WoodToBuy}, s.unit), bulkOf(shop.Buy{Kind: shop.GlassToBuy}, s.unit)
	in := func(t wording.Text, unit string) string { return strings.TrimSpace(say(t) + " " + unit) }
	currency := d.Prices.Currency
	out := [][]string{{
		say("what"), say("note"), in("length", s.unit.String()), in("width", s.unit.String()), in("thickness", s.unit.String()),
		say("count"), in("wood", solid.unit.With()), in("area", flat.unit.With()), in("price", currency), say("price is"), in("sum", currency),
	}}
	figure := func(v float64) string {
		if v == 0 {
			return ""
		}
		return strconv.FormatFloat(math.Round(v*1e6)/1e6, 'f', -1, 64)
	}
	size := func(mm float64) string {
		if s.unit == measure.Inch {
			mm /= measure.MillimetresPerInch
		}
		return figure(mm)
	}
	for _, b := range lines {
		wood, area := "", figure(b.Amount/flat.of)
		if b.Kind <= shop.WoodToBuy {
			wood, area = figure(b.Amount/solid.of), ""
		}
		if b.AsNeeded() {
			b.Item.Note = say(asNeeded)
		}
		cost, per := price(b)
		if !cost.Given {
			per = ""
		}
		out = append(out, []string{
			harmless(s.buyName(b, d.Wood.Species)), harmless(b.Item.Note), size(b.Size.Length), size(b.Size.Width), size(b.Size.Thickness),
			counted(b.Count), wood, area, written(cost), per.With(), written(b.Sum()),
		})
	}
	total, unpriced := shop.Total(lines)
	last := make([]string, len(out[0]))
	last[0], last[len(last)-1] = say("together"), written(design.Price{Value: total, Given: unpriced < len(lines)})
	if unpriced > 0 {
		last[1] = say("%d without a price", unpriced)
	}
	return append(out, last)
}

// harmless keeps a spreadsheet from reading a text as a formula.
func harmless(t string) string {
	if t != "" && strings.ContainsRune("=+-@\t\r", rune(t[0])) {
		return "'" + t
	}
	return t
}
