package shop

import (
	"math"
	"slices"
)

// A Card is one set-up of one tool and all that is done before it moves.
type Card struct {
	Number int // from 1, in working order
	What   Note
	Stage  Stage
	Setup
	Steps     []Step
	Templates []Template
}

// A Setup is how a tool stands for every step of a card.
type Setup struct {
	How  How
	Hand bool // sawn by hand, whatever would hold the part at the saw
	// Swing is how far the mitre gauge is turned counter-clockwise, seen from above,
	// rad: its right end away from the maker, who stands behind it, where it is
	// above 0. What the tapering jig holds a part at comes so too.
	Swing   float64
	Tilt    float64
	Height  float64 // of the blade above the table: all that it comes through, at least
	Through bool
	// Stop is that of the tenoning jig; at the gauge each step has its own.
	Stop float64
}

// A Template is a drawing at full size that a card calls for.
type Template struct {
	Of    Sheet
	Block Part    // of the shape of a block, or the jig
	Angle float64 // of a triangle: the bevel, or what a taper is to the edge
	Size  string  // of the design, but for a triangle
}

// A Sheet is a kind of drawing at full size.
type Sheet uint8

const (
	NoSheet Sheet = iota
	LapWrap
	StretcherWrap
	LegWrap
	TaperFace
	SoleShape
	PadPlace
	TopOutline
	TopSupports
	FixingPlan
	BlockShape
	Triangle
	JigPicture
)

// sheetsOf are the drawings that a kind of step calls for.
var sheetsOf = map[Do][]Sheet{
	TestLap: {LapWrap}, CutLap: {LapWrap}, KnifeShoulders: {StretcherWrap, LegWrap},
	CutTaper: {TaperFace, SoleShape}, FitPads: {PadPlace}, SawTop: {TopOutline}, FitTop: {TopSupports, FixingPlan},
}

// templates returns the drawings that a step calls for, with those of its blocks and
// of its angle.
func (s Step) templates() []Template {
	var out []Template
	for _, b := range s.Parts {
		for _, size := range append([]string{b.Size}, b.For...) {
			for _, of := range sheetsOf[s.Do] {
				out = append(out, Template{Of: of, Size: size})
			}
			if s.Do == MakeJigs {
				out = append(out, Template{Of: JigPicture, Block: b.Part})
			}
			if s.Do == SawBlocks && (size != "" || b.For == nil) {
				out = append(out, Template{Of: BlockShape, Block: b.Part, Size: size})
			}
		}
	}
	switch c := s.Cut; {
	case s.Do == SawBlocks: // the block has its angle drawn
	case c.How == OnTaper:
		out = append(out, Template{Of: Triangle, Angle: c.OffSquare}, Template{Of: JigPicture, Block: TaperSled})
	case c.OffSquare > 0 && c.How == OnGauge:
		out = append(out, Template{Of: Triangle, Angle: c.Bevel()})
	}
	return out
}

// sharedWork says which kinds of step share a card with another kind, as far as
// their set-up is one.
var sharedWork = map[Do]Do{Measure: Mill, SawFoot: SawEnd, TrimPlainEnd: SawEnd}

func (d Do) work() Do {
	if w, ok := sharedWork[d]; ok {
		return w
	}
	return d
}

// cards puts steps that follow each other and have one set-up on one card.
func cards(steps []Step) []Card {
	var out []Card
	for _, s := range steps {
		if n := len(out); n == 0 || !out[n-1].take(s) {
			out = append(out, Card{Number: n + 1, What: s.What, Stage: s.Stage, Setup: s.setup(), Steps: []Step{s}})
		}
	}
	for i := range out {
		out[i].finish()
	}
	return out
}

// setup returns how the tool stands for a step.
func (s Step) setup() Setup {
	c := s.Cut
	out := Setup{How: c.How, Hand: c.ByHand(), Tilt: c.Tilt, Height: c.Height, Through: c.Through}
	switch {
	case c.ByHand() || c.How == AwayFromSaw:
	case c.How == OnEnd: // the strip is changed, not the jig
		out.Stop = c.Stop
	case c.How == OnTaper:
		out.Swing = c.OffSquare
	default:
		out.Swing = s.swing()
	}
	return out
}

// take takes a step on the card if nothing need be set for it anew.
func (c *Card) take(s Step) bool {
	work := s.Do.work()
	if _, titled := cardTitles[work]; c.Stage != s.Stage || c.Steps[0].Do.work() != work || !titled && c.What.ID != s.What.ID {
		return false
	}
	set := s.setup()
	high := math.Max(set.Height, c.Height)
	switch {
	case c.Through && set.Through || c.Hand && set.Hand:
		set.Height, c.Height = high, high
	case c.How == OnEnd && c.near(s):
		set.Height = c.Height
	}
	if set.onGrid() != c.Setup.onGrid() {
		return false
	}
	c.Steps = append(c.Steps, s)
	return true
}

func (s Setup) onGrid() Setup {
	putOn(lengthGrid, &s.Height, &s.Stop)
	putOn(angleGrid, &s.Swing, &s.Tilt)
	return s
}

// near is by how much two settings may differ and be one, mm: less than a stop or a
// blade is set to (common practice, no source).
const near = 0.15

// A give is the figure of a step that gives way to that of a neighbour near to it: to
// the larger or the smaller, so that wood is left at the line and none cut short.
// Spacers and the heights of laps do not: a joint would no longer fit.
type give struct {
	of     func(*Cut) *float64
	larger bool
}

func stopOf(c *Cut) *float64   { return &c.Stop }
func lineOf(c *Cut) *float64   { return &c.Line }
func heightOf(c *Cut) *float64 { return &c.Height }

var gives = map[Do]give{
	Crosscut: {stopOf, true}, CutShoulders: {stopOf, true}, SawEnd: {stopOf, true}, SawFoot: {stopOf, true},
	OpenEnd: {lineOf, false}, TrimPlainEnd: {lineOf, false},
	CutSlot: {heightOf, false}, CutCheeks: {heightOf, false},
}

// near reports whether the blade stands for a step as for every one on the card.
func (c *Card) near(s Step) bool {
	return !slices.ContainsFunc(c.Steps, func(t Step) bool { return math.Abs(t.Cut.Height-s.Cut.Height) >= near })
}

// share gives steps of one kind whose figures are near to each other one figure.
func share(steps []Step) {
	was := slices.Clone(steps)
	for i := range steps {
		s := &steps[i]
		g, ok := gives[s.Do]
		if !ok || s.Cut.ByHand() || s.squaresStretcher() {
			continue
		}
		own := *g.of(&s.Cut)
		for _, t := range was {
			at := *g.of(&t.Cut)
			if t.Do == s.Do && !t.Cut.ByHand() && math.Abs(at-own) < near && at > 0 && (at > *g.of(&s.Cut)) == g.larger {
				*g.of(&s.Cut), *g.of(&s.Saw.Cut) = at, at
			}
		}
		s.Left = math.Abs(*g.of(&s.Cut) - own)
	}
}

// squaresStretcher reports whether the step squares a stretcher to length: its laps and
// slot are measured from that end, and would stand where the wood that is left puts them.
func (s Step) squaresStretcher() bool {
	return s.Do == Crosscut && slices.ContainsFunc(s.Parts, func(b Batch) bool { return b.Part == Stretcher })
}

// cardTitles name cards of several kinds of step by the work that they share.
var cardTitles = map[Do]NoteID{
	Mill: "card.plane", Crosscut: "card.crosscut", SawEnd: "card.ends",
	MakeJigs: "card.jigs", SawBlocks: "card.blocks", CutSlot: "card.slots", CutCheeks: "card.cheeks", CutTaper: "card.tapers",
}

// finish settles the figures and the name of the card once all of its steps are known.
func (c *Card) finish() {
	share(c.Steps)
	for _, s := range c.Steps {
		for _, t := range s.templates() {
			if t.Angle = on(angleGrid, t.Angle); !slices.Contains(c.Templates, t) {
				c.Templates = append(c.Templates, t)
			}
		}
	}
	if c.How == OnEnd {
		c.Height = c.Steps[0].Cut.Height
	}
	if title, ok := cardTitles[c.Steps[0].Do.work()]; ok && slices.ContainsFunc(c.Steps, func(s Step) bool { return s.What.onGrid() != c.What.onGrid() }) {
		c.What = note(title)
	}
}
