package render

import (
	"math"
	"slices"

	"rodsheet/geometry"
	"rodsheet/templates"
)

// A stuff is some of what stands on a card.
type stuff uint8

const (
	setups    stuff = iota
	afters          // the part afterwards
	pictures        // both
	readings        // the figures
	sentences       // all other words
)

// A way says in what columns, from the left, a card is laid below pictures over its
// whole width, and what stands in each from the top.
type way struct {
	over    []stuff
	columns [][]stuff
	words   []float64 // shares of the width for the columns of words, to compare
}

// cardWays are those compared, the preferred one first; the last serves any width.
var cardWays = []way{
	{nil, [][]stuff{{setups}, {afters, readings, sentences}}, []float64{0.37, 0.45, 0.52}},
	{nil, [][]stuff{{pictures}, {readings, sentences}}, []float64{0.37, 0.45, 0.52}},
	{nil, [][]stuff{{setups, sentences}, {afters, readings}}, []float64{0.37, 0.45}},
	{[]stuff{pictures}, [][]stuff{{sentences}, {readings}}, []float64{1}},
	{nil, [][]stuff{{setups}, {afters, readings}, {sentences}}, []float64{0.56, 0.62}},
	{nil, [][]stuff{{pictures}, {readings}, {sentences}}, []float64{0.56, 0.62}},
	{nil, [][]stuff{{setups}, {readings}, {afters, sentences}}, []float64{0.56, 0.62}},
	{nil, [][]stuff{{pictures, readings, sentences}}, []float64{0}},
}

// cardShares are the shares of their usual size that pictures may take.
var cardShares = [...]float64{1, 0.8, 0.65, 0.5, 0.4}

const (
	cardSlack  = 1.0  // mm by which a card has to be lower than another to be preferred
	cardShown  = 0.8  // of the size of its pictures that a lower card keeps
	narrowest  = 42.0 // mm, of a column of words beside another
	readingsOf = 0.45 // of the room for both, for figures beside sentences
)

// layCard lays a card as wide as most, its pictures at a share of their usual size or
// as large as its height allows. It reports whether one sheet holds it.
func layCard(c templates.Card, most geometry.Point, share float64, seen map[hanging]int) (k *card, ok bool) {
	for _, s := range cardShares {
		if s > share {
			continue
		}
		if k = layCardAt(c, most.X, s, 0, seen); k.size.Y <= most.Y {
			return k, true
		}
	}
	return nil, false
}

// layCardAt lays a card with its pictures at a share of their usual size, in the way in
// which it is lowest with its pictures no smaller than least or, where that is 0, hardly
// smaller than beside words. It returns nil where no way has them so large with as much
// of their lettering in clear places.
func layCardAt(c templates.Card, width, share, least float64, seen map[hanging]int) (best *card) {
	if len(c.Setup) == 0 {
		c.Setup, c.After = c.After, nil
	}
	var all []*card
	beside, struck := 0.0, math.MaxInt
	for i, w := range cardWays {
		for _, words := range w.words {
			k := &card{Card: c, size: geometry.Pt(width, 0), share: share, hanging: seen}
			low, ok := k.lay(w, words)
			if k.size.Y = cardEdge - low; !ok && i < len(cardWays)-1 {
				continue
			}
			all = append(all, k)
			struck = min(struck, k.struck)
			if len(w.over) == 0 && len(w.columns) > 1 || len(all) == 1 {
				beside = math.Max(beside, k.shown())
			}
		}
	}
	if least == 0 {
		least = cardShown * beside
	}
	for _, k := range all {
		if k.struck == struck && k.shown() >= least && (best == nil || k.size.Y < best.size.Y-cardSlack) {
			best = k
		}
	}
	return best
}

// shown returns how large the pictures are, all together.
func (k *card) shown() (sum float64) {
	for _, v := range k.views {
		sum += v.factor
	}
	return sum
}

// lay lays the card in a way, with a share of the width for words, and returns the
// level under all. It reports whether each column is wide enough. One of pictures alone
// is as wide as these, one of nothing takes no room.
func (k *card) lay(w way, words float64) (low float64, ok bool) {
	inner := k.size.X - 2*cardEdge
	x, right := cardEdge, cardEdge+inner
	y := k.head(inner)
	for _, s := range w.over {
		y = k.set(s, x, y, inner)
	}
	low = y
	for i, column := range w.columns {
		width, last := right-x, i == len(w.columns)-1
		figures := len(k.Figures) > 0 && slices.Contains(column, readings)
		said := figures || slices.Contains(column, sentences)
		switch {
		case last:
		case i == 0 && len(w.over) == 0:
			width = (1-words)*inner - gap
		case figures:
			width = math.Min(readingsOf*(width-gap), cardFigures)
		case said:
			width = (1 - readingsOf) * (width - gap)
		}
		if len(w.columns) > 1 && said && width < narrowest {
			return low, false
		}
		from, level := len(k.views), y
		for _, s := range column {
			level = k.set(s, x, level, width)
		}
		low = math.Min(low, level)
		end := x
		if said {
			end += width
		}
		for _, v := range k.views[from:] {
			end = math.Max(end, v.at.X+v.cell().X)
		}
		if end > x {
			x = end + gap
		}
	}
	return low, x-gap <= right+1e-9
}

// set sets some of what stands on the card and returns the level below it.
func (k *card) set(s stuff, x, y, width float64) float64 {
	switch s {
	case setups:
		return k.hang(k.Setup, x, y, width)
	case afters:
		return k.hang(k.After, x, y, width)
	case pictures:
		return k.hang(slices.Concat(k.Setup, k.After), x, y, width)
	case readings:
		return k.figures(x, y, math.Min(width, cardFigures))
	}
	return k.text(x, y, math.Min(width, cardReadable))
}

// A cardRow is a card over the whole width or two side by side; or, empty, one that no
// sheet holds.
type cardRow []*card

func (r cardRow) height() (most float64) {
	for _, k := range r {
		most = math.Max(most, k.size.Y)
	}
	return most
}

// block returns the row as it stands on a sheet, its frames of one height.
func (r cardRow) block(width float64) block {
	out := block{size: geometry.Pt(width, r.height()), upright: true}
	x := 0.0
	for _, k := range r {
		k := *k
		k.size.Y = out.size.Y
		out.parts = append(out.parts, placed{block{card: &k, size: k.size}, geometry.Pt(x, 0)})
		x += k.size.X + gap
	}
	return out
}

// layCards lays cards to be read in order in several ways: with the largest pictures
// first, each time card below card and then two side by side where that saves room.
func layCards(all []templates.Card, most geometry.Point) (out [][]cardRow) {
	seen := map[hanging]int{}
	for _, share := range cardShares[:3] {
		single, half := make([]*card, len(all)), make([]*card, len(all))
		for i, c := range all {
			k, ok := layCard(c, most, share, seen)
			if !ok {
				continue
			}
			single[i] = k
			if h := layCardAt(c, (most.X-gap)/2, k.share, cardShown*k.shown(), seen); h != nil && h.size.Y <= most.Y {
				half[i] = h
			}
		}
		out = append(out, cardRows(single, make([]*card, len(all)), most.Y), cardRows(single, half, most.Y))
	}
	return out
}

// A filled tells how far cards up to one of them reach, and the row that is the last.
type filled struct {
	sheets int
	used   float64 // of the last sheet
	row    cardRow
	cards  int // in the row
}

// cardRows returns cards in rows, those of half the width in pairs, on the fewest
// sheets of a height and between equals with the least on the last.
func cardRows(single, half []*card, high float64) []cardRow {
	best := []filled{{}}
	for i := range single {
		to := func(from, cards int, row cardRow) filled {
			f := filled{best[from].sheets, best[from].used + gap + row.height(), row, cards}
			if len(row) == 0 || f.sheets == 0 || f.used > high {
				f.sheets, f.used = f.sheets+1, row.height()
			}
			return f
		}
		var one cardRow
		if single[i] != nil {
			one = cardRow{single[i]}
		}
		f := to(i, 1, one)
		if i > 0 && half[i] != nil && half[i-1] != nil {
			two := to(i-1, 2, cardRow{half[i-1], half[i]})
			if two.sheets < f.sheets || two.sheets == f.sheets && two.used < f.used-cardSlack {
				f = two
			}
		}
		best = append(best, f)
	}
	var out []cardRow
	for i := len(single); i > 0; i -= best[i].cards {
		out = append(out, best[i].row)
	}
	slices.Reverse(out)
	return out
}
