package render

import (
	"math"
	"slices"

	"rodsheet/geometry"
	"rodsheet/geometry/lists"
	"rodsheet/render/lettering"
	"rodsheet/templates"
)

// A stuff is some of what stands on a card.
type stuff uint8

const (
	setups    stuff = iota
	afters          // the part afterwards
	pictures        // both; what follows is words
	readings        // the figures
	sentences       // all other words
)

// A way says in what columns, from the left, a card is laid below pictures over its
// whole width, and what stands in each from the top.
type way struct {
	over    []stuff
	columns [][]stuff
	// shares of the width, to compare: for the columns of words or, below pictures, for
	// each of these at most.
	shares []float64
}

// cardWays are those compared, the preferred one first; the last serves any width.
var cardWays = []way{
	{nil, [][]stuff{{setups}, {afters, readings, sentences}}, []float64{0.37, 0.45, 0.52}},
	{nil, [][]stuff{{pictures}, {readings, sentences}}, []float64{0.37, 0.45, 0.52}},
	{nil, [][]stuff{{setups, sentences}, {afters, readings}}, []float64{0.37}},
	{[]stuff{setups}, [][]stuff{{sentences}, {afters, readings}}, []float64{0.5}},
	{nil, [][]stuff{{setups}, {afters, readings}, {sentences}}, []float64{0.6}},
	{nil, [][]stuff{{pictures, readings, sentences}}, []float64{0}},
}

// cardShares are the shares of their usual size that pictures may take.
var cardShares = [...]float64{1, 0.7, 0.55, 0.4}

const (
	cardSlack  = 1.0  // mm by which a card has to be lower than another to be preferred
	cardShown  = 0.8  // of the size of its pictures that a lower card keeps
	narrowest  = 42.0 // mm, of a column of words beside another
	readingsOf = 0.45 // of the room for both, for figures beside sentences
)

// layCard lays a card as wide as most, its pictures at a share of the usual height or as
// large as its own allows, and hardly smaller than that share of what is usual. It
// reports whether one sheet holds it.
func layCard(c templates.Card, most geometry.Point, share, usual float64, seen hangings) (k *card, ok bool) {
	for _, s := range cardShares {
		if s > share {
			continue
		}
		if k = layCardAt(c, most.X, s, cardShown*s*usual, seen); k == nil {
			k = layCardAt(c, most.X, s, 0, seen)
		}
		if k.size.Y <= most.Y {
			return k, true
		}
	}
	return nil, false
}

// layCardAt lays a card with its pictures at a share of the usual height, in the way with
// the fewest flaws in which it is lowest with its pictures no smaller than least. It
// returns nil where no way has them so large.
func layCardAt(c templates.Card, width, share, least float64, seen hangings) (best *card) {
	headed := &card{Card: c, size: geometry.Pt(width, 0), share: share, hanging: seen}
	headed.head()
	headed.draft = true
	var as way
	var its float64
	for i, w := range cardWays {
		for _, of := range w.shares {
			floor := math.Inf(-1)
			if best != nil && best.flaws == 0 {
				floor = cardEdge + cardSlack - best.size.Y
			}
			k, ok := headed.laid(w, of, floor)
			if !ok && i < len(cardWays)-1 || k.shown() < least {
				continue
			}
			if best == nil || k.flaws < best.flaws || k.flaws == best.flaws && k.size.Y < best.size.Y-cardSlack {
				best, as, its = k, w, of
			}
		}
	}
	if best == nil {
		return nil
	}
	headed.draft = false
	best, _ = headed.laid(as, its, math.Inf(-1))
	return best
}

// laid returns a copy of the card, laid as lay does.
func (k *card) laid(w way, of, floor float64) (*card, bool) {
	out := *k
	out.words.Texts = slices.Clip(k.words.Texts)
	out.areas, out.boxes = slices.Clip(k.areas), slices.Clip(k.boxes)
	low, ok := out.lay(w, of, floor)
	out.size.Y = cardEdge - low
	return &out, ok
}

// usualShown returns how large the pictures of a card are beside its words.
func usualShown(c templates.Card, width float64, seen hangings) float64 {
	k := &card{Card: c, share: cardShares[0], hanging: seen}
	words := cardWays[0].shares[0] * (width - 2*cardEdge)
	left := width - 2*cardEdge - words - gap
	k.hang(c.Setup, 0, 0, left, left)
	k.hang(c.After, 0, 0, words, words)
	return k.shown()
}

func (k *card) shown() (sum float64) {
	for _, v := range k.views {
		sum += v.factor
	}
	return sum
}

// lay lays a card that has its head in a way, with one of its shares, and returns the level under all.
// It reports whether each column is wide enough and none reaches below a floor. One of
// pictures alone is as wide as these, one of nothing takes no room.
func (k *card) lay(w way, of, floor float64) (low float64, ok bool) {
	inner := k.size.X - 2*cardEdge
	x, right := cardEdge, cardEdge+inner
	y := k.under
	for _, s := range w.over {
		y = k.set(s, x, y, inner, of*inner-captionGap) - underPicture
	}
	low = y
	for i, column := range w.columns {
		width, last := right-x, i == len(w.columns)-1
		figures := len(k.Figures) > 0 && slices.Contains(column, readings)
		said := figures || slices.Contains(column, sentences)
		switch {
		case last:
		case i == 0 && len(w.over) == 0:
			width = (1-of)*inner - gap
		case figures:
			width = k.forFigures(readingsOf * (width - gap))
		case said:
			width = (1 - readingsOf) * (width - gap)
		}
		if len(w.columns) > 1 && said && width < narrowest {
			return low, false
		}
		from, level := len(k.views), y
		for n, s := range column {
			if n > 0 && level < y && column[n-1] <= pictures && s > pictures {
				level -= underPicture
			}
			level = k.set(s, x, level, width, width)
		}
		if low = math.Min(low, level); low < floor {
			return low, false
		}
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

// forFigures returns the width of a column of figures: with each name beside its value
// as far as that takes no more than most, and without a value broken.
func (k *card) forFigures(most float64) float64 {
	least, beside := 0.0, 0.0
	for _, f := range k.Figures {
		wide := lettering.Width(f.Value, figureHigh)
		if f.Write {
			wide += writeWide + 2
		}
		least = math.Max(least, wide)
		beside = math.Max(beside, wide+3+lettering.Width(f.Name, small))
	}
	return math.Max(least+0.1, math.Min(most, math.Min(beside+0.1, cardFigures)))
}

// set sets some of what stands on the card, no picture wider than each, and returns the
// level below it.
func (k *card) set(s stuff, x, y, width, each float64) float64 {
	switch s {
	case setups:
		return k.hang(k.Setup, x, y, width, each)
	case afters:
		return k.hang(k.After, x, y, width, each)
	case pictures:
		return k.hang(slices.Concat(k.Setup, k.After), x, y, width, each)
	case readings:
		return k.figures(x, y, math.Min(width, k.forFigures(width)))
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
	const shares = 3
	var single, half [shares][]*card
	for i := range shares {
		single[i], half[i] = make([]*card, len(all)), make([]*card, len(all))
	}
	lists.Each(len(all), func(n int) {
		c, seen := all[n], newHangings()
		if len(c.Setup) == 0 {
			c.Setup, c.After = c.After, nil
		}
		usual := usualShown(c, most.X, seen)
		for i, share := range cardShares[:shares] {
			k, ok := layCard(c, most, share, usual, seen)
			var h *card
			if ok {
				h = layCardAt(c, (most.X-gap)/2, k.share, cardShown*k.share*usual, seen)
			}
			if h != nil && (h.size.Y > most.Y || h.flaws > k.flaws) {
				h = nil
			}
			single[i][n], half[i][n] = k, h
		}
	})
	none := make([]*card, len(all))
	for i := range shares {
		for _, halves := range [][]*card{none, half[i]} {
			rows := cardRows(single[i], halves, most.Y)
			out = append(out, grown(rows, single[:i], half[:i], most.Y), rows)
		}
	}
	return out
}

// grown returns rows, each with the largest pictures of several that leave it on its
// sheet with those it shares that with.
func grown(rows []cardRow, single, half [][]*card, high float64) []cardRow {
	out := slices.Clone(rows)
	card := 0 // that a row begins with
	for from := 0; from < len(rows); {
		to, room := from, high+gap
		for to < len(rows) && (to == from || room >= gap+rows[to].height()) {
			room -= gap + rows[to].height()
			to++
		}
		for i, r := range rows[from:to] {
			for s := range single {
				larger := cardRow{single[s][card]}
				if len(r) == 2 {
					larger = cardRow{half[s][card], half[s][card+1]}
				}
				if len(r) == 0 || slices.Contains(larger, nil) {
					continue
				}
				if more := larger.height() - r.height(); more <= room {
					out[from+i] = larger
					room -= more
					break
				}
			}
			card += max(1, len(r))
		}
		from = to
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
