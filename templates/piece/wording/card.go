package wording

import (
	"cmp"
	"fmt"
	"slices"
	"strings"

	"rodsheet/geometry/lists"
	"rodsheet/geometry/measure"
	"rodsheet/templates"
	"rodsheet/templates/piece"
	"rodsheet/templates/piece/shop"
	"rodsheet/templates/wording"
)

// Card returns all that is written on a card.
func Card(plan shop.Plan, c shop.Card) templates.Card {
	w := writer{speakerFor(plan.Designs...), c}
	heading := w.sentence(c.What)
	if sizes := sizesOf(c.Steps); len(sizes) > 0 && len(sizes) < w.sizes {
		heading = piece.WithSizes(heading, sizes, w.sizes)
	}
	out := templates.Card{
		Number: c.Number, Heading: heading, Ticks: w.ticks(), Figures: w.figures(),
		Text: w.notes(func(s shop.Step) []shop.Note { return s.Then.All() }, wording.Text.Capital),
		Test: strings.Join(w.tests(), " "),
	}
	var cautions []string
	for _, s := range c.Steps {
		cautions = appendNew(cautions, noteTexts()[s.Caution].With())
	}
	cautions = append(cautions, w.notes(func(s shop.Step) []shop.Note { return []shop.Note{s.Heed} }, asItIs)...)
	cautions = appendNew(cautions, noteTexts()[c.Guard()].With())
	out.Caution = strings.Join(cautions, " ")
	for _, t := range c.Templates {
		for _, v := range views(plan, t) {
			v.Size = t.Size
			out.Templates = append(out.Templates, v)
		}
	}
	out.Templates = lists.Unique(out.Templates)
	return out
}

// sheetViews are the views of what a card calls for.
var sheetViews = map[shop.Sheet][]templates.View{
	shop.LapWrap:       {{Part: "lap", Face: "wrap-round"}},
	shop.StretcherWrap: {{Part: "stretcher", Face: "wrap-round"}},
	shop.LegWrap:       {{Part: "leg", Face: "wrap-round"}},
	shop.TaperFace:     {{Part: "whole-leg", Face: "ring-side"}, {Part: "whole-leg", Face: "back"}},
	shop.SoleShape:     {{Part: "foot"}},
	shop.PadPlace:      {{Part: "pad", Face: "stretcher-top"}},
	shop.FixingPlan:    {FixingsView},
	shop.TopSupports:   {{Part: "top", Face: "from-above"}, {Part: "top", Face: "quarter"}, {Part: "top", Face: "wedge"}, {Part: "top", Face: "wedge-of-ring"}},
}

// FixingsView is that of the ring with what holds its top.
var FixingsView = templates.View{Part: "top", Face: "fixings"}

// BlockIDs name the views of blocks.
var BlockIDs = map[shop.Part]measure.ID{
	shop.FillerStrip:  "filler-strip",
	shop.LegCaul:      "leg-caul",
	shop.EndCaul:      "end-caul",
	shop.FoldingWedge: "folding-wedge",
}

// views returns the views of a drawing, whatever their hand.
func views(plan shop.Plan, t shop.Template) []templates.View {
	switch t.Of {
	case shop.TopOutline:
		out := slices.Clone(sheetViews[shop.TopSupports])
		for _, p := range plan.Pieces {
			if p.Design.Size == t.Size || t.Size == "" {
				out = append(out, templates.TopCornerViews(p.TopShape())...)
			}
		}
		return out
	case shop.Triangle:
		return []templates.View{{Part: templates.AngleView(t.Angle)}}
	case shop.JigPicture:
		return []templates.View{JigView(t.Block)}
	case shop.BlockShape:
		return []templates.View{{Part: "block", Face: BlockIDs[t.Block]}}
	}
	return sheetViews[t.Of]
}

// A writer writes one card.
type writer struct {
	speaker
	shop.Card
}

// kindNames tell the steps of one card apart that are not called the same. Those
// without one are told by their parts.
var kindNames = map[shop.NoteID]wording.Text{
	"step.leg-end":         "leg end",
	"step.leg-end-square":  "leg end",
	"step.head":            "head",
	"step.head-square":     "head",
	"step.foot":            "foot",
	"step.horn":            "plain end",
	"step.flush-end":       "plain end",
	"step.taper-one":       "stretcher side",
	"step.taper-adjacent":  "stretcher side and ring side",
	"step.taper-opposite":  "stretcher side and back",
	"step.taper-four":      "four faces",
	"step.measure-width":   "width of stretcher, thickness of leg",
	"step.measure-depth":   "depth of stretcher",
	"step.measure-breadth": "breadth of leg",
	"step.measure-kerf":    "kerf of a cut into an offcut",
}

// A sort is what steps of one card have in common: what they are called, or where that
// tells none apart, what they are done to.
type sort struct {
	id   shop.NoteID
	part shop.Part
}

func sortOf(s shop.Step) sort {
	if _, named := kindNames[s.What.ID]; named || len(s.Parts) == 0 {
		return sort{id: s.What.ID}
	}
	return sort{part: s.Parts[0].Part}
}

func (k sort) name(begins func(wording.Text) wording.Text) string {
	if k.part != 0 {
		return begins(partNames[k.part].one).With()
	}
	return begins(kindNames[k.id]).With()
}

// sortsOf returns the kinds of steps, each once.
func sortsOf(steps []shop.Step) []sort { return lists.Unique(lists.Map(steps, sortOf)) }

// of returns the steps of the card that a test picks.
func (w writer) of(pick func(shop.Step) bool) []shop.Step { return lists.Where(w.Steps, pick) }

// sizesOf returns the sizes of what steps are done to.
func sizesOf(steps []shop.Step) []string {
	var out []string
	for _, s := range steps {
		for _, b := range s.Parts {
			for _, size := range append([]string{b.Size}, b.For...) {
				out = appendNew(out, size)
			}
		}
	}
	return out
}

// which says which steps of the card are meant: their kinds where it has others too,
// and their sizes where it has other sizes of those.
func (w writer) which(some []shop.Step, begins func(wording.Text) wording.Text) string {
	kinds := sortsOf(some)
	var words []string
	if len(kinds) < len(sortsOf(w.Steps)) {
		var names []string
		for _, k := range kinds {
			names = appendNew(names, k.name(begins))
			begins = asItIs
		}
		words = append(words, wording.And(names...))
	}
	alike := w.of(func(s shop.Step) bool { return slices.Contains(kinds, sortOf(s)) })
	if sizes := sizesOf(some); len(sizes) < len(sizesOf(alike)) {
		words = append(words, wording.And(sizes...))
	}
	return strings.Join(words, " ")
}

// ticks names the parts of each kind of step, with a box for every one.
func (w writer) ticks() []templates.Tick {
	var out []templates.Tick
	kinds := sortsOf(w.Steps)
	for _, k := range kinds {
		parts := lists.Flat(w.of(func(s shop.Step) bool { return sortOf(s) == k }), func(s shop.Step) []shop.Batch { return s.Parts })
		for i, b := range parts {
			if slices.ContainsFunc(parts[:i], func(c shop.Batch) bool { return c.Part == b.Part }) {
				continue
			}
			t := templates.Tick{Text: w.counts(b.Part, parts)}
			if len(kinds) > 1 && k.part == 0 {
				t.Text = say("%s, %s", k.name(asItIs), t.Text)
			}
			for _, c := range parts[i:] {
				if c.Part == b.Part {
					t.Boxes += c.Count + c.Spares + c.Tests
				}
			}
			if t.Boxes > 0 {
				out = append(out, t)
			}
		}
	}
	return out
}

// A setting is one figure of a step as it is set.
type setting struct {
	rank        // settings stand in the order of their ranks
	name, value string
	write       bool
}

// A rank is what a setting is of. From ofStop on each step has its own: it says whose
// it is.
type rank uint8

const (
	ofGauge rank = iota
	ofBevel
	ofBlade
	ofStop
	ofSpacer
	ofLine
	ofLap
	ofPlane
	ofMeasure
)

// figures are what the tool is set to, each once, with the steps that it is for where
// others have another.
func (w writer) figures() []templates.Reading {
	all := lists.Map(w.Steps, w.settings)
	order := lists.Unique(slices.Concat(all...))
	slices.SortStableFunc(order, func(a, b setting) int { return cmp.Compare(a.rank, b.rank) })
	out := make([]templates.Reading, len(order))
	for i, f := range order {
		var its []shop.Step
		named := 0
		for k, s := range w.Steps {
			if slices.Contains(all[k], f) {
				its = append(its, s)
			}
			if slices.ContainsFunc(all[k], func(g setting) bool { return g.name == f.name }) {
				named++
			}
		}
		out[i] = templates.Reading{Name: f.name, Value: f.value, Write: f.write}
		if which := w.which(its, asItIs); which != "" && (len(its) < named || f.rank >= ofStop) {
			out[i].Name = strings.TrimPrefix(say("%s, %s", f.name, which), ", ")
		}
	}
	if w.TestsToLines() {
		out = append(out, templates.Reading{Name: say("stop, test piece"), Value: say(testsToLines)})
	}
	return out
}

// settings are the figures of one step.
func (w writer) settings(s shop.Step) []setting {
	c := s.Cut
	switch {
	case s.What.ID == "step.plane":
		return []setting{{ofPlane, say("planed"), say("%[1]b × %[2]s", w.args(s.What)...), false}}
	case s.What.ID == "step.flat-tooth":
		return []setting{{ofMeasure, say("kerf"), w.mm(s.What.Args[0].Figure.Value), true}}
	case s.Do == shop.Measure:
		return []setting{{ofMeasure, "", w.mm(s.What.Args[0].Figure.Value), true}}
	case c.How == shop.AwayFromSaw:
		return nil
	}
	out := append(w.tool(s), w.bladeSet(s))
	put := func(mm float64, of rank, name string) {
		if mm > 0 {
			out = append(out, setting{of, name, w.mm(mm), of == ofStop || of == ofSpacer})
		}
	}
	stop := say("stop")
	switch {
	case c.How == shop.OnEnd:
		stop = say("jig to near side of blade")
	case c.Beyond:
		stop = say("beyond the stop's reach: knife line, from the %s", datum(c.At))
	}
	line := say("line, from %s", from(c.From))
	if c.How == shop.OnTaper {
		line = say("starts from the foot, up the %s, squared across", faceOrNone(c.From.Along))
	}
	put(c.Stop, ofStop, stop)
	put(c.Spacer, ofSpacer, say("spacer"))
	put(c.Line, ofLine, line)
	put(c.Along, ofLap, say("length of the lap, along the edge"))
	return out
}

// bladeSet is how high the blade stands, or how deep is sawn by hand.
func (w writer) bladeSet(s shop.Step) setting {
	high, c := w.mm(w.Height), s.Cut
	switch {
	case c.ByHand() && c.How == shop.OnEnd:
		return setting{ofBlade, say("by hand, depth along the edge, from the rough end"), w.mm(c.Depth()), false}
	case c.ByHand() && c.Through:
		return setting{ofBlade, say("by hand, through"), high, false}
	case c.ByHand():
		return setting{ofBlade, say("by hand, depth"), w.mm(c.Height), false}
	case c.Through && c.How == shop.OnTaper:
		return setting{ofBlade, say("blade through, above the jig"), high, false}
	case c.Through:
		return setting{ofBlade, say("blade through"), high, false}
	case c.How == shop.OnGauge && w.Stage == shop.LapStage:
		return setting{ofBlade, say("blade height above table or sled"), high, true}
	}
	return setting{ofBlade, say("blade height"), high, true}
}

// tool are the angles of a cut, that first which the gauge at hand reads.
func (w writer) tool(s shop.Step) []setting {
	c := s.Cut
	square, bevel := w.angle(c.OffSquare), w.angle(c.Bevel())
	gauge := setting{ofGauge, say("gauge"), say("%s off square", square), c.OffSquare > 0}
	other := setting{ofBevel, say("bevel"), bevel, false}
	switch {
	case c.How == shop.OnTaper && c.ByHand():
		return []setting{{ofGauge, say("taper"), say("%s to the edge", square), false}}
	case c.How == shop.OnTaper:
		return []setting{{ofGauge, say("tapering jig"), say("%s to the edge", square), true}}
	case c.ByHand():
		return []setting{{ofGauge, say("off square"), square, false}, other}
	case c.How == shop.OnEnd && c.OffSquare == 0:
		return nil
	case c.How == shop.OnEnd && s.ThinEndDown():
		return []setting{{ofGauge, say("filler strip, first thin end down"), square, false}}
	case c.How == shop.OnEnd:
		return []setting{{ofGauge, say("filler strip, first thick end down"), square, false}}
	case w.Swing > 0:
		gauge.name = say("gauge, right end away")
	case w.Swing < 0:
		gauge.name = say("gauge, left end away")
	}
	if w.bevelFirst {
		gauge.value, other.name, other.value = say("bevel %s", bevel), say("off square"), square
	}
	if c.OffSquare == 0 && !w.bevelFirst {
		return []setting{gauge}
	}
	return []setting{gauge, other}
}

// notes says what several steps have to say, each thing once: its figures by size
// where they differ, and what it is for where steps that do the same have it not.
// begins says how one begins that has nothing before it.
func (w writer) notes(of func(shop.Step) []shop.Note, begins func(wording.Text) wording.Text) []string {
	var out []string
	for _, id := range lists.Unique(lists.Map(lists.Flat(w.Steps, of), func(n shop.Note) shop.NoteID { return n.ID })) {
		if id == "" {
			continue
		}
		var said []shop.Note
		its := w.of(func(s shop.Step) bool {
			i := slices.IndexFunc(of(s), func(n shop.Note) bool { return n.ID == id })
			if i >= 0 {
				said = append(said, of(s)[i])
			}
			return i >= 0
		})
		does := lists.Unique(lists.Map(its, func(s shop.Step) shop.Do { return s.Do }))
		text := noteTexts()[id]
		if len(its) < lists.Count(w.Steps, func(s shop.Step) bool { return slices.Contains(does, s.Do) }) {
			if which := w.which(its, begins); which != "" {
				out = append(out, say("%s: %s", which, w.together(its, said, text)))
				continue
			}
		}
		out = append(out, w.together(its, said, begins(text)))
	}
	return out
}

// tests are what the steps must show: the first stands behind its label.
func (w writer) tests() []string {
	of := func(s shop.Step) []shop.Note { return []shop.Note{s.Test} }
	out := w.notes(of, wording.Text.Capital)
	copy(out, w.notes(of, asItIs)[:min(1, len(out))])
	return out
}

// lyingTexts say of each tool what the faces of a part come to there: the face down,
// that on fence or jig, the end at the stop.
var lyingTexts = [...][3]wording.Text{
	shop.OnGauge: {"%s down", "%s on the fence", "%s at the stop"},
	shop.OnEnd:   {"on %s", "%s on the jig"},
	shop.OnTaper: {"%s down", "%s on the jig", "%s first"},
}

// Lying says how a part lies for a cut.
func Lying(l shop.Lie, c shop.Cut) string {
	texts := lyingTexts[c.How]
	switch {
	case c.How == shop.OnTaper:
		l.Rest = shop.Foot
	case c.Stop == 0:
		l.Rest = shop.NoFace
	}
	var all []string
	for i, f := range [...]shop.Face{l.Down, l.Fence, l.Rest} {
		if f != shop.NoFace && texts[i] != "" {
			all = append(all, texts[i].With(Face(f)))
		}
	}
	return strings.Join(all, ", ")
}

func asItIs(t wording.Text) wording.Text { return t }

// together says one note of several steps.
func (w writer) together(steps []shop.Step, said []shop.Note, text wording.Text) string {
	if past, ok := w.overhang(steps[0], said[0].ID); ok {
		return past
	}
	alike := writer{w.speaker, shop.Card{Steps: steps}}
	args := w.args(said[0])
	for i := range args {
		differ := slices.ContainsFunc(said, func(n shop.Note) bool { return fmt.Sprint(w.args(n)[i]) != fmt.Sprint(args[i]) })
		if !differ {
			continue
		}
		var each []string
		for k, n := range said {
			each = appendNew(each, strings.TrimSpace(fmt.Sprint(w.args(n)[i])+" "+alike.which(steps[k:k+1], asItIs)))
		}
		args[i] = list(strings.Join(each, ", "))
	}
	return text.With(args...)
}

// A list is several figures in the place of one.
type list string

// Format implements fmt.Formatter.
func (l list) Format(s fmt.State, _ rune) { fmt.Fprint(s, string(l)) }
