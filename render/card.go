package render

import (
	"math"
	"slices"
	"strconv"

	"rodsheet/geometry"
	"rodsheet/render/lettering"
	"rodsheet/render/page"
	"rodsheet/render/table"
	"rodsheet/templates"
)

// A card is a set-up as it stands on a sheet: a frame, how tool and part stand on the
// left, the part afterwards, the figures and the words on the right. Places are from
// its upper left corner, y up.
type card struct {
	templates.Card
	size  geometry.Point
	words table.Block
	areas []page.Area     // of the head and of the warning sign
	boxes []geometry.Rect // to tick off, to write in
	views []hung
	under float64 // the level below the head
	// sheets is where the sheets of the templates are named, in a column so wide.
	sheets  geometry.Point
	column  float64
	share   float64 // of their usual size that the pictures have
	hanging hangings
	flaws   int  // labels struck, figures broken
	draft   bool // laid to see what room it takes: no words are set
}

// hangings are the views of pictures, told by their first strokes, as far as they were
// asked for, how many of their labels are struck at a scale and in a window, and the
// lines of small words.
type hangings struct {
	views  map[hanging]*view
	struck map[hanging]int
	lines  map[phrase][]string
}

type hanging struct {
	first  *templates.Stroke
	in     geometry.Point // window, or width there is and share of the usual height
	factor float64
}

// A phrase is words to be set no wider than a width.
type phrase struct {
	words string
	width float64
}

func newHangings() hangings {
	return hangings{map[hanging]*view{}, map[hanging]int{}, map[phrase][]string{}}
}

func (h hangings) wrap(words string, width float64) []string {
	asked := phrase{words, width}
	lines, known := h.lines[asked]
	if !known {
		lines = lettering.Wrap(words, small, width)
		h.lines[asked] = lines
	}
	return lines
}

// A hung picture has its upper left corner at a place.
type hung struct {
	*view
	at geometry.Point
}

const (
	cardEdge     = 2.5 // mm, inside the frame
	numberHigh   = 5.0
	headingHigh  = 4.0
	tickSide     = 2.8
	figureHigh   = 4.0
	figureRow    = 6.6
	writeWide    = 17.0  // of a box for a figure used
	signSide     = 4.2   // of the warning sign
	setupHigh    = 48.0  // a picture of a set-up at most
	afterHigh    = 22.0  // a picture without scale at most
	cardReadable = 140.0 // longest line of words
	cardFigures  = 80.0  // widest column of figures: wider, a value stands far from its name
	afterWide    = 46.0
	afterLeast   = 8.0  // of one between its labels: they may leave nothing
	captionWide  = 42.0 // of words below a picture narrower than that
	underPicture = 1.2  // below the words of a picture, or those that follow would go on from them
	captionGap   = 5.0  // between pictures: less, and the words below two of them read as one line
)

// window is where the picture stands on a card with its upper left corner at a place.
func (v hung) window(at geometry.Point) geometry.Rect {
	size, corner := v.frame(), at.Add(v.at)
	left := corner.X + (v.cell().X-size.X)/2
	return geometry.Box(left, corner.Y-size.Y, left+size.X, corner.Y)
}

// head sets number and heading on a band and what is to be ticked off below it.
func (k *card) head() {
	inner := k.size.X - 2*cardEdge
	number := strconv.Itoa(k.Number)
	y := -cardEdge - numberHigh
	wide := lettering.Width(number, numberHigh) + 2*cardEdge
	k.words.Text(cardEdge, y, numberHigh, number)
	x := wide + cardEdge
	for i, line := range lettering.Wrap(k.Heading, headingHigh, inner+cardEdge-x) {
		if i > 0 {
			y -= lettering.Pitch(headingHigh)
		}
		k.words.Text(x, y, headingHigh, line)
	}
	k.words.Title = say(cardTitle, number, k.Heading)
	y -= cardEdge
	k.area(templates.Light, geometry.Box(0, y, inner+2*cardEdge, 0).Corners()...)
	k.area(templates.Middle, geometry.Box(0, y, wide, 0).Corners()...)
	k.under = k.ticks(cardEdge, y-0.4, inner)
}

// word sets a line of words, but of a draft.
func (k *card) word(x, y, height float64, s string) {
	if !k.draft {
		k.words.Text(x, y, height, s)
	}
}

func (k *card) area(t templates.Tone, points ...geometry.Point) {
	k.areas = append(k.areas, page.Area{Gray: grays[t], Points: points})
}

// ticks sets what is to be ticked off, a box for each.
func (k *card) ticks(left, y, inner float64) float64 {
	const between, row = 4.0, 4.6
	x := left
	level := y - row
	for _, t := range k.Ticks {
		wide := lettering.Width(t.Text, small) + 1.5 + float64(t.Boxes)*(tickSide+0.8)
		if x > left && x+wide > inner {
			x, level = left, level-row
		}
		for i, line := range lettering.Wrap(t.Text, small, inner-left) {
			if i > 0 {
				x, level = left, level-row
			}
			k.words.Text(x, level, small, line)
			x += lettering.Width(line, small) + 1.5
		}
		for range t.Boxes {
			if x+tickSide > inner {
				x, level = left, level-row
			}
			k.boxes = append(k.boxes, geometry.Box(x, level-0.2, x+tickSide, level-0.2+tickSide))
			x += tickSide + 0.8
		}
		x += between
	}
	if len(k.Ticks) == 0 {
		return y - 1
	}
	return level - 2.2
}

// hang hangs pictures, none wider than each, in rows no wider than width, and returns
// the level below them.
func (k *card) hang(pictures []templates.Picture, left, y, width, each float64) float64 {
	x, low := left, y
	for _, p := range pictures {
		v := k.view(p, each)
		size := v.cell()
		if x > left && x+size.X > left+width {
			x, y = left, low
		}
		k.views = append(k.views, hung{v, geometry.Pt(x, y)})
		k.flaws += v.struck
		x += size.X + captionGap
		low = math.Min(low, y-size.Y)
	}
	return low
}

// cardReductions are the scales of the pictures on cards: those of ISO 5455 and
// steps between them, for there a larger picture says more than a familiar scale.
var cardReductions = [...]float64{1, 1.5, 2, 2.5, 3, 4, 5, 6, 8, 10, 12, 15, 20, 25, 30, 40, 50, 75, 100}

// cardAirs are kept free beside, and above and below, a picture with lettering: the one
// with the least height that serves.
var cardAirs = []geometry.Point{{X: 5, Y: 5}, {X: 12, Y: 5}, {X: 9, Y: 9}, {X: 18, Y: 9}, {X: 14, Y: 14}, {X: 20, Y: 20}}

// view returns a picture as large as a card has room for, with so much air round
// it that its lettering finds clear places.
func (k *card) view(p templates.Picture, width float64) *view {
	if len(p.Strokes) == 0 {
		return newView(p, 1).onCard(width, k.share, cardAirs[0]).captioned(width)
	}
	if free := k.viewIn(p, math.Inf(1)); free.needs <= width {
		return free
	}
	return k.viewIn(p, width)
}

// viewIn is view for a picture with strokes, looked for once.
func (k *card) viewIn(p templates.Picture, width float64) *view {
	asked := hanging{first: &p.Strokes[0], in: geometry.Pt(width, k.share)}
	if v := k.hanging.views[asked]; v != nil {
		return v
	}
	airs := cardAirs
	if len(p.Labels) == 0 {
		airs = []geometry.Point{{X: 2, Y: 2}, {X: 9, Y: 9}, {X: 20, Y: 20}}[:1+2*min(1, len(p.Spans))]
	}
	best := newView(p, 1)
	best.needs = captionWide
	if p.NoScale {
		best.needs = math.Max(captionWide, k.share*afterWide)
	}
	for i, air := range airs {
		best = best.onCard(width, k.share, air)
		best.needs = math.Max(best.needs, best.drawn.Width())
		enough := 0
		if i == len(airs)-1 {
			enough = math.MaxInt // none is better
		}
		if best.struck = k.hanging.strikes(best, enough); best.struck == 0 {
			break
		}
	}
	k.hanging.views[asked] = best.captioned(width)
	return best
}

// strikes returns how many labels of a picture find no clear place, or where these are
// more than enough some of them.
func (h hangings) strikes(v *view, enough int) int {
	size := v.frame()
	at := hanging{&v.Strokes[0], size, v.factor}
	n, known := h.struck[at]
	if !known {
		n = v.inside(nil, geometry.Box(0, 0, size.X, size.Y), enough)
		h.struck[at] = n
	}
	return n
}

// onCard puts so much air round a picture and makes it as large as a width and a share
// of the usual height allow. Figures of spans may take height beyond that.
func (v *view) onCard(width, share float64, air geometry.Point) *view {
	v.air = air
	if v.NoScale {
		wide := math.Min(share*afterWide, width)
		v.fill(geometry.Pt(math.Max(wide-2*air.X, afterLeast), share*afterHigh), geometry.Pt(math.Max(wide, afterLeast+2*air.X), math.Inf(1)))
		return v
	}
	for i, r := range cardReductions {
		strokes := v.bounds.Height()/r <= share*setupHigh && v.bounds.Width()/r <= width
		if !strokes && i < len(cardReductions)-1 {
			continue // without asking what the spans take
		}
		v.reduced = r
		if v.scaleTo(1 / r); strokes && v.drawn.Width() <= width {
			break
		}
	}
	return v
}

// captioned wraps the words below a picture on a card, its heading and its scale, no
// wider than the picture unless that is narrow.
func (v *view) captioned(width float64) *view {
	words := v.Heading
	if !v.NoScale {
		words = say(cardScale, v.reduced)
		if v.Heading != "" {
			words = say(headingAndScale, v.Heading, words)
		}
		v.scale = words
	}
	if words != "" {
		v.caption = lettering.Wrap(words, small, math.Min(width, math.Max(v.drawn.Width(), captionWide)))
	}
	return v
}

// frame is what a picture takes on a card without the words below it.
func (v *view) frame() geometry.Point {
	size := v.drawn.Max.Sub(v.drawn.Min)
	for _, l := range v.Labels {
		size.X = math.Max(size.X, lettering.Width(l.Text, letterHeight(l))+2)
	}
	return size
}

// cell is what a picture takes on a card, with the words below it.
func (v *view) cell() geometry.Point {
	size := v.frame()
	for _, line := range v.caption {
		size.X = math.Max(size.X, lettering.Width(line, small))
	}
	return size.Add(geometry.Pt(0, v.foot()))
}

func (v *view) foot() float64 { return float64(len(v.caption)) * lettering.Pitch(small) }

// figures sets what the tool is set to, large, with a box for the figure used.
func (k *card) figures(x, y, width float64) float64 {
	for _, f := range k.Figures {
		room := width
		if f.Write {
			room -= writeWide + 2
		}
		value := lettering.Wrap(f.Value, figureHigh, room)
		k.flaws += len(value) - 1
		beside := len(value) == 1 && lettering.Width(f.Name, small)+3+lettering.Width(f.Value, figureHigh) <= room
		level := y - figureRow + 1.8
		if !beside {
			for _, line := range k.hanging.wrap(f.Name, room) {
				y -= lettering.Pitch(small)
				k.word(x, y, small, line)
			}
			level = y - figureHigh - lettering.Descent(small) - 0.8
		} else {
			k.word(x, level, small, f.Name)
		}
		if f.Write {
			k.boxes = append(k.boxes, geometry.Box(x+width-writeWide, level-1.2, x+width, level-1.2+figureRow-1))
		}
		for i, line := range value {
			at := x
			if beside {
				at = x + room - lettering.Width(line, figureHigh)
			}
			k.word(at, level-float64(i)*lettering.Pitch(figureHigh), figureHigh, line)
		}
		y = level - 1.8 - float64(len(value)-1)*lettering.Pitch(figureHigh)
	}
	return y
}

// text sets the words: what is done, its test, its caution, its templates.
func (k *card) text(x, y, width float64) float64 {
	set := func(s string, x, width float64) {
		for _, line := range k.hanging.wrap(s, width) {
			y -= lettering.Pitch(small)
			k.word(x, y, small, line)
		}
	}
	for _, s := range k.Text {
		set(s, x, width)
	}
	if k.Test != "" {
		y -= 1
		set(say(cardTest, k.Test), x, width)
	}
	if k.Caution != "" {
		y -= 1.4
		if !k.draft {
			k.sign(geometry.Pt(x, y-lettering.Pitch(small)-0.6))
		}
		top := y
		set(k.Caution, x+signSide+2, width-signSide-2)
		y = math.Min(y, top-lettering.Pitch(small)-0.6)
	}
	if len(k.Templates) > 0 {
		k.sheets, k.column = geometry.Pt(x, y-1), width
		for range k.hanging.wrap(k.templateWords(numbers{}, nil), width) {
			y -= lettering.Pitch(small)
		}
		y -= 1
	}
	return y - 1
}

// sign draws the general warning sign, a triangle with an exclamation mark in it (ISO
// 7010, W001, from memory), its lower left corner at a place.
func (k *card) sign(at geometry.Point) {
	const border = 0.45
	high := signSide * math.Sqrt(3) / 2
	triangle := func(in float64) []geometry.Point {
		dx := in * math.Sqrt(3) // a side moved in by so much has its ends so far along
		return []geometry.Point{{X: at.X + dx, Y: at.Y + in}, {X: at.X + signSide - dx, Y: at.Y + in}, {X: at.X + signSide/2, Y: at.Y + high - 2*in}}
	}
	k.areas = append(k.areas, page.Area{Points: triangle(0)}, page.Area{Gray: 1, Points: triangle(border)})
	mid := at.X + signSide/2
	for _, y := range [][2]float64{{0.75, 1.15}, {1.35, 2.5}} {
		k.areas = append(k.areas, page.Area{Points: geometry.Box(mid-0.22, at.Y+y[0], mid+0.22, at.Y+y[1]).Corners()})
	}
}

// templateWords names the sheets of the templates that the card calls for.
func (k *card) templateWords(n numbers, places []place) string {
	if n.tiles == nil {
		places = make([]place, len(k.Templates))
	}
	if len(places) == 0 {
		return ""
	}
	return say(cardTemplate, n.sheets(places))
}

func (k *card) draw(n *pen, at geometry.Point, tiles map[place]int) {
	for _, a := range k.areas {
		n.area(a.Gray, geometry.Translate(at), a.Points)
	}
	frame := geometry.Box(at.X, at.Y-k.size.Y, at.X+k.size.X, at.Y)
	n.line(tableLine, geometry.Closed(frame.Corners())...)
	for _, v := range k.views {
		window := v.window(at)
		v.inside(n, window, math.MaxInt)
		for i, line := range v.caption {
			n.text(at.X+v.at.X+1, window.Min.Y-float64(i+1)*lettering.Pitch(small)+1.2, small, line)
		}
	}
	n.words(&k.words, at)
	for _, b := range k.boxes {
		n.line(tableLine, geometry.Closed(b.Add(at).Corners())...)
	}
	var places []place
	for p := range tiles {
		if slices.ContainsFunc(k.Templates, p.shows) {
			places = append(places, p)
		}
	}
	for i, line := range lettering.Wrap(k.templateWords(numbers{tiles: tiles}, places), small, k.column) {
		n.text(at.X+k.sheets.X, at.Y+k.sheets.Y-float64(i+1)*lettering.Pitch(small), small, line)
	}
}

// cardPanel returns the words of a card for a sheet that holds no card.
func cardPanel(c templates.Card) templates.Panel {
	p := templates.Panel{Heading: say(cardTitle, strconv.Itoa(c.Number), c.Heading), Text: c.Text}
	for _, t := range c.Ticks {
		p.Table = append(p.Table, []string{t.Text, strconv.Itoa(t.Boxes)})
	}
	for _, f := range c.Figures {
		p.Table = append(p.Table, []string{f.Name, f.Value})
	}
	if c.Test != "" {
		p.Text = append(p.Text, say(cardTest, c.Test))
	}
	if c.Caution != "" {
		p.Text = append(p.Text, c.Caution)
	}
	return p
}
