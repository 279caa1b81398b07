package render

import (
	"cmp"
	"math"
	"slices"

	"rodsheet/geometry"
	"rodsheet/geometry/lists"
	"rodsheet/geometry/measure"
	"rodsheet/render/accuracy"
	"rodsheet/render/pack"
	"rodsheet/templates"
)

// A part is a section to be laid, with what the sheets add to it.
type part struct {
	templates.Section
	first bool            // behind the calibration square
	told  bool            // says how true templates are; others do where they are taped
	added []deferredWords // panels that speak of sheets
	notes []string        // what was noticed
}

// A laidSection is a section cut and packed by one strategy.
type laidSection struct {
	size     [2]geometry.Point // clear part of a sheet as it is, and on its side
	laids    []*tiling
	items    []item
	cardWays [][]item // the cards in the ways to compare
	ways     [][]item // all items in the ways to compare
	sheets   []*pack.Sheet
	surveys  []survey
	panels   []item                    // of the section
	figures  map[templates.View][]item // those of its drawings and pictures
	deferred []deferredPanel
}

// laySection lays one section by the strategy that takes the fewest sheets.
func (l Layout) laySection(section part) (laidSection, error) {
	clear := l.clear()
	if l.Paper.Whole {
		clear = wholeSize(section.Drawings, l.Unit)
	}
	j := laidSection{size: [2]geometry.Point{clear, clear}, figures: map[templates.View][]item{}}
	if l.turns() {
		j.size[1] = l.onSide().clear()
	}
	if err := j.survey(section.Drawings, l); err != nil {
		return laidSection{}, err
	}
	if section.first {
		square := lay(templates.Calibration(l.Unit), orientation{}, clear, l.Overlap).tiles()[0].block()
		square.first = true
		j.items = append(j.items, item{square})
	}
	j.cardWays = j.cards(section.Cards, fullWidth(clear.X, l))
	for _, p := range section.Panels {
		drawn := slices.ContainsFunc(section.Drawings, func(d templates.Drawing) bool { return d.View == p.Of })
		pictured := slices.ContainsFunc(section.Pictures, func(v templates.Picture) bool { return v.View == p.Of })
		if p.Of != (templates.View{}) && (drawn || pictured) {
			j.figures[p.Of] = append(j.figures[p.Of], j.set(p, l)...)
		} else {
			j.panels = append(j.panels, j.set(p, l)...)
		}
	}
	var best, last laidSection
	var refused error
	for _, m := range l.strategies() {
		k, err := j.layIn(m, section, l)
		if err != nil {
			refused = cmp.Or(refused, err)
			continue
		}
		if best.sheets == nil || len(k.sheets) < len(best.sheets) {
			best = k
		}
		last = k
		if best.ordinary() || len(best.sheets) == 1 {
			break // no strategy differs, or none can do better
		}
	}
	if best.sheets == nil {
		return laidSection{}, refused
	}
	best.sheets = best.packing(best.items).Fewer(best.sheets)
	// The even grid comes last, and small tiles of it may share what turned ones do not.
	if len(best.sheets) > 1 {
		if fewer := last.packing(last.items).Fewer(last.sheets); len(fewer) < len(best.sheets) {
			best, best.sheets = last, fewer
		}
	}
	best.join()
	for _, p := range best.laids {
		p.register(l.Unit)
	}
	return best, nil
}

// join has words stand with what they speak of, where as many sheets allow that: with
// smaller pictures too, where the largest leave no room.
func (j *laidSection) join() {
	packing := j.packing(j.items)
	j.sheets = packing.Joined(j.sheets)
	for _, items := range j.ways {
		apart := packing.Apart(j.sheets)
		if apart == 0 {
			break
		}
		other := j.packing(items)
		if sheets := other.Joined(other.Pack()); len(sheets) <= len(j.sheets) && other.Apart(sheets) < apart {
			j.items, j.sheets, packing = items, sheets, other
		}
	}
	j.sheets = packing.Collated(j.sheets)
}

// cards lays cards, to be read in order, in the ways to compare. One that no sheet
// holds is set as words.
func (j laidSection) cards(cards []templates.Card, width float64) (out [][]item) {
	if len(cards) == 0 {
		return [][]item{nil}
	}
	for _, rows := range layCards(cards, geometry.Pt(width, j.size[0].Y)) {
		var way []item
		at := 0
		for _, r := range rows {
			if len(r) > 0 {
				way = append(way, item{r.block(width)})
			} else {
				way = append(way, panelItems(cardPanel(cards[at]), columns(j.size[0].X), j.size[0])...)
			}
			at += max(1, len(r))
		}
		for _, it := range way {
			for i := range it {
				it[i].chain, it[i].first = &cards[0], true
			}
		}
		out = append(out, way)
	}
	return out
}

// plannable refuses to plan a job that takes more sheets than it may, however it
// is cut and packed: a large one would take long. Of every other it is known how
// many sheets it takes when it is planned.
func (l Layout) plannable(least int) error {
	return measure.AtMost("job.least-sheets", measure.Number(float64(least)), "",
		measure.Number(float64(l.MaxSheets)), "paper.larger")
}

// survey looks at every drawing by itself, each in its own goroutine.
func (j *laidSection) survey(drawings []templates.Drawing, l Layout) error {
	for _, d := range drawings {
		c := cutter{d, l.Overlap, j.size}
		if err := l.plannable(c.leastSheets()); err != nil {
			return err
		}
		j.surveys = append(j.surveys, survey{cutter: c})
	}
	lists.Each(len(drawings), func(i int) { j.surveys[i] = j.surveys[i].cutter.survey() })
	return nil
}

// ordinary reports whether every drawing stands whole on a sheet as it is,
// turned by quarters at most: it then does so by every strategy.
func (j laidSection) ordinary() bool {
	return !slices.ContainsFunc(j.laids, func(p *tiling) bool { return p.rows*p.cols > 1 || p.turned || p.angle != 0 && p.angle != math.Pi/2 })
}

// layIn lays a section by one strategy, behind the items it has. Its pictures
// are as large as half a sheet allows, or as much smaller as saves a sheet.
func (j laidSection) layIn(m strategy, of part, l Layout) (laidSection, error) {
	front := j.items
	j.items = nil
	if err := j.layDrawings(l, m); err != nil {
		return laidSection{}, err
	}
	j.layPanels(of, l)
	back := j.items
	pictures := j.layPictures(of.Pictures)
	var tried []*pack.Job
	for _, cards := range j.cardWays {
		for _, p := range pictures {
			items := slices.Concat(front, cards, p, back)
			j.ways = append(j.ways, items)
			packing := j.packing(items)
			if j.sheets != nil && packing.Least() >= len(j.sheets) || slices.ContainsFunc(tried, packing.Alike) {
				continue // it takes no fewer sheets
			}
			tried = append(tried, packing)
			if sheets := packing.Pack(); j.sheets == nil || len(sheets) < len(j.sheets) {
				j.items, j.sheets = items, sheets
			}
		}
	}
	return j, nil
}

func (j laidSection) packing(items []item) *pack.Job {
	out := &pack.Job{Size: j.size, Gap: gap}
	for _, it := range items {
		p := pack.Item{Chain: it[0].chain, Group: it[0].group, First: it[0].first, Behind: it[0].behind, Shows: it[0].shows(), With: it[0].with}
		for _, b := range it {
			p.Shapes = append(p.Shapes, pack.Shape{Size: b.size, Turned: b.turned, Upright: b.upright})
		}
		out.Items = append(out.Items, p)
	}
	return out
}

// layPictures returns the pictures in the sizes to compare, all of them smaller from
// one to the next. One too small to show anything is none.
func (j laidSection) layPictures(pictures []templates.Picture) [][]item {
	const (
		share    = 0.45 // of the height of a sheet, at most
		smallest = 25.0 // mm, of the larger side of a picture
	)
	most := share * j.size[0].Y
	wide, pictures := wideFirst(pictures)
	over := geometry.Pt(j.size[0].X, most)
	front, _ := pictureItems(wide, scaleFor(wide, 1, over), []float64{over.X}, most)
	front = j.withWords(wide, front)
	if len(pictures) == 0 {
		return [][]item{front}
	}
	widest := 0.0
	for _, p := range pictures {
		b := p.Bounds()
		widest = max(widest, b.Width(), b.Height())
	}
	widths := []float64{columns(j.size[0].X)[0], 80, 70, 62, 56, 50, 40}
	var out [][]item
	for i, width := range widths {
		scale := scaleFor(pictures, 1, geometry.Pt(width, most))
		if len(out) > 0 && scale > 1 && widest/reduction(scale) < smallest {
			break
		}
		free := widths[i : i+1]
		if slices.ContainsFunc(pictures, func(p templates.Picture) bool { return !p.NoScale }) {
			free = widths[i:] // those of no scale make room for the others
		}
		items, clear := pictureItems(pictures, scale, free, most)
		if len(out) > 0 && !clear {
			break // smaller, its lettering would be struck
		}
		out = append(out, slices.Concat(front, j.withWords(pictures, items)))
	}
	return out
}

// withWords returns the items of pictures with those of their figures, in one item where
// a sheet holds both.
func (j laidSection) withWords(pictures []templates.Picture, items []item) (out []item) {
	for i, it := range items {
		own := []item{it}
		for _, figures := range j.figures[pictures[i].View] {
			if both := j.together(own[0], figures); both != nil {
				own[0] = both
			} else {
				own = append(own, figures)
			}
		}
		out = append(out, own...)
	}
	return out
}

func wideFirst(pictures []templates.Picture) (wide, others []templates.Picture) {
	for _, p := range pictures {
		if p.Wide {
			wide = append(wide, p)
		} else {
			others = append(others, p)
		}
	}
	return wide, others
}

func (j laidSection) set(p templates.Panel, l Layout) []item {
	most := j.size[0]
	if p.Ruled {
		most.X = fullWidth(most.X, l)
	}
	items := panelItems(p, columns(j.size[0].X), most)
	if p.Near != (templates.View{}) {
		items[0][0].with = p.Near
	}
	return items
}

// layPanels lays the panels of the section, those that speak of sheets, and those the
// sheets add: how to tape up, how far to trust them, and what was noticed.
func (j *laidSection) layPanels(of part, l Layout) {
	add := func(p templates.Panel) { j.items = append(j.items, j.set(p, l)...) }
	addDeferred := func(words deferredWords) {
		items := j.set(words(numbers{}), l)
		j.items = append(j.items, items...)
		j.deferred = append(j.deferred, deferredPanel{words, items, j.size[0].Y})
	}
	j.items = append(j.items, j.panels...)
	for _, words := range of.added {
		addDeferred(words)
	}
	laids := j.laids
	if _, ok := checkPanel(laids, l.Unit, numbers{}); ok {
		addDeferred(func(n numbers) templates.Panel {
			p, _ := checkPanel(laids, l.Unit, n)
			return p
		})
	}
	judged, taped := false, false
	for _, p := range laids {
		judged = judged || p.trust != accuracy.Accuracy{}
		taped = taped || p.rows*p.cols > 1
	}
	if judged && (of.told || taped) {
		add(accuracy.Panel(!l.Correct.none(), taped, l.Unit))
	}
	if len(of.notes) > 0 {
		add(templates.Panel{Heading: say(noteHeading), Text: of.notes})
	}
}

func fullWidth(clear float64, l Layout) float64 {
	if l.Paper.Whole {
		return math.Min(clear, widestWords)
	}
	return clear
}

// widestWords is what two columns of words take at most, in mm.
const widestWords = 190

// columns returns the widths of a column of words: half the sheet by
// preference, or what is left beside the calibration square.
func columns(clear float64) []float64 {
	half := (math.Min(clear, widestWords) - gap) / 2
	return []float64{half, math.Min(half, 62), math.Min(half, 50)}
}

// layDrawings turns and cuts every drawing and makes its blocks; one of a
// single tile may be packed in any shape it fits in.
func (j *laidSection) layDrawings(l Layout, m strategy) error {
	sum := 0
	for _, v := range j.surveys {
		p := v.lay(m)
		p.addCrosses(checkStep(l.Unit))
		p.assess(l)
		j.laids = append(j.laids, p)
		if p.rows*p.cols == 1 {
			j.items = append(j.items, j.withFigures(v.shapes(p, m))...)
			continue
		}
		sum += p.large(j.size)
		if err := l.plannable(sum); err != nil {
			return err
		}
		tiles := lists.Map(p.tiles(), func(t *tile) item { return item{t.block()} })
		j.items = append(j.items, j.withFigures(tiles...)...)
	}
	return nil
}

// withFigures returns the items of a drawing with those of its figures: in one
// item where a sheet holds both, else to be read behind it.
func (j *laidSection) withFigures(drawing ...item) []item {
	own, last := drawing[0][0], len(drawing)-1
	for i := range drawing {
		for k := range drawing[i] {
			drawing[i][k].behind = true // templates follow the cards
		}
	}
	for _, figures := range j.figures[own.tile.View] {
		if both := j.together(drawing[0], figures); last == 0 && both != nil {
			drawing[0] = both
			continue
		}
		drawing = append(drawing, slices.Clone(figures))
	}
	if len(drawing) > last+1 {
		for _, it := range drawing[last:] {
			it[0].group, it[0].chain = own.tile.tiling, own.tile.tiling
		}
	}
	return drawing
}

// together returns two items as one, side by side or one below the other in the
// shapes that take the least room; nil where no sheet holds both.
func (j laidSection) together(a, b item) (out item) {
	const most = 6
	for _, p := range a {
		clear := j.size[0]
		if p.turned {
			clear = j.size[1]
		}
		for _, q := range b {
			for _, at := range []geometry.Point{{X: p.size.X + gap}, {Y: p.size.Y + gap}} {
				size := geometry.Pt(max(p.size.X, at.X+q.size.X), max(p.size.Y, at.Y+q.size.Y))
				if size.X <= clear.X && size.Y <= clear.Y && q.chain == nil {
					out = append(out, block{
						size: size, parts: []placed{{p, geometry.Point{}}, {q, at}},
						group: p.group, turned: p.turned, upright: p.upright || q.upright, behind: true,
					})
				}
			}
		}
	}
	slices.SortStableFunc(out, func(a, b block) int { return cmp.Compare(a.size.X*a.size.Y, b.size.X*b.size.Y) })
	return out[:min(most, len(out))]
}

// shapes returns the blocks of a drawing of one tile, the one of p first.
func (v survey) shapes(p *tiling, m strategy) item {
	const most = 4 // shapes tried of a free drawing
	out := item{p.tiles()[0].block()}
	for _, s := range v.all {
		if s.orientation == p.orientation || s.turned != p.turned || s.rows*s.cols > 1 || len(out) == most || !m.allows(s.orientation) {
			continue
		}
		q := s.copy()
		q.trust = p.trust
		out = append(out, q.tiles()[0].block())
	}
	return out
}
