package wording

import (
	"cmp"
	"fmt"
	"slices"
	"strings"
	"unicode"
	"unicode/utf8"

	"rodsheet/geometry/joint"
	"rodsheet/geometry/measure"
	"rodsheet/templates"
	"rodsheet/templates/piece"
	"rodsheet/templates/piece/shop"
	"rodsheet/templates/wording"
)

// empty fills a cell that has nothing to say; an empty one asks to be filled in.
const empty = "–"

// settingsHead names the columns of the settings list.
var settingsHead = []wording.Text{"no.", "step", "parts", "down; on the fence", "gauge", "blade", "stop, spacer", "used"}

var stageNames = [...]wording.Text{
	shop.StockStage:  "STOCK",
	shop.LapStage:    "LAPS",
	shop.BridleStage: "BRIDLE JOINTS",
	shop.TaperStage:  "TAPERS, PLAIN ENDS",
	shop.GlueStage:   "GLUE-UP",
	shop.TopStage:    "TOP",
	shop.FinishStage: "FINISH",
}

// A swing says which way the gauge swings for a step that is not square, some of
// them by an edge of the part: that along which the cut stands farther out, or the
// one across from it.
type swing struct {
	text wording.Text
	edge func(shop.Face) shop.Face
}

var (
	nearer  = swing{"the cut nearer the end on the %s", across}
	longer  = swing{"the %s longer", itself}
	farther = swing{"the cut nearer the end on the %s", itself}
	swings  = map[shop.NoteID]swing{
		"step.test-lap": nearer, "step.laps": nearer, "step.slack": nearer, "step.open-ends": nearer, "step.flush-end": nearer,
		"step.leg-end": longer, "step.head": longer,
		"step.leg-caul":       {"as for the ends", nil},
		"step.end-caul":       {"either way", nil},
		"step.shoulder-ring":  farther,
		"step.shoulder-outer": farther,
		"step.foot":           {"as for the head", nil},
	}
)

// pointNames are what distances are counted from.
var pointNames = [...]wording.Text{
	shop.SquaredEnd:   "squared end",
	shop.StretcherEnd: "end of the stretcher",
	shop.ThePlainEnd:  "plain end",
	shop.FootEnd:      "foot end",
	shop.SawnHead:     "sawn head",
	shop.HeadCorner:   "long corner of the head",
	shop.SquareEnd:    "square end, on the long side",
	shop.JigFace:      "jig's face to the near side of the blade",
	shop.EitherFace:   "either face",
}

var likeTexts = [...]wording.Text{
	shop.NotLike:       "",
	shop.ButForStop:    "As the row above: only the stop moves.",
	shop.ButForLine:    "As the row above: only the line moves.",
	shop.LikeOtherwise: "Otherwise as the row above.",
}

// say fills a sentence.
func say(t wording.Text, args ...any) string { return t.With(args...) }

// A speaker says the values of a plan in its unit.
type speaker struct {
	unit       measure.Unit
	bevelFirst bool
	sizes      int
}

func speakerFor(pieces []piece.Piece) speaker {
	d := pieces[0].Design
	return speaker{d.Unit, d.Saw.FromFence, len(pieces)}
}

func (s speaker) mm(v float64) string    { return measure.Length(v).Text(s.unit) }
func (s speaker) bare(v float64) string  { return measure.Length(v).Bare(s.unit) }
func (s speaker) angle(v float64) string { return measure.Angle(v).Text(s.unit) }

// A figure prints a quantity as the verbs of noteTexts have it.
type figure struct {
	measure.Quantity
	unit measure.Unit
}

// Format implements fmt.Formatter.
func (f figure) Format(s fmt.State, verb rune) {
	text := f.Text(f.unit)
	switch verb {
	case 'b':
		text = f.Bare(f.unit)
	case 'n':
		if text = say("one pass"); f.Value != 1 {
			text = say("%d passes", int(f.Value))
		}
	case 'k':
		text = polygonNames[int(f.Value)].With()
	}
	fmt.Fprint(s, text)
}

// polygonNames are those of the outlines that follow a ring.
var polygonNames = map[int]wording.Text{3: "triangle", 4: "square", 5: "pentagon", 6: "hexagon", 7: "heptagon", 8: "octagon"}

// Note says a note in unit u.
func Note(n shop.Note, u measure.Unit) string { return speaker{unit: u}.note(n) }

func (s speaker) note(n shop.Note) string {
	if n.ID == "" {
		return ""
	}
	return noteTexts[n.ID].With(s.args(n)...)
}

// sentence says a note that stands by itself: it begins with a capital.
func (s speaker) sentence(n shop.Note) string { return capital(noteTexts[n.ID]).With(s.args(n)...) }

// capital begins a text with a capital letter, if it begins with one.
func capital(t wording.Text) wording.Text {
	first, n := utf8.DecodeRuneInString(string(t))
	return wording.Text(unicode.ToUpper(first)) + t[n:]
}

// args are what the verbs of a note's sentence stand for.
func (s speaker) args(n shop.Note) []any {
	var args []any
	for _, a := range n.Args {
		switch a.Is {
		case shop.FigureArg:
			args = append(args, figure{a.Figure, s.unit})
		case shop.FaceArg:
			args = append(args, Face(a.Face))
		case shop.PartArg:
			args = append(args, Part(a.Part))
		case shop.ExtrasArg:
			args = append(args, extraNames[a.Extras].With())
		}
	}
	return args
}

// all says several notes.
func (s speaker) all(notes []shop.Note) []string {
	out := make([]string, len(notes))
	for i, n := range notes {
		out[i] = s.sentence(n)
	}
	return out
}

// Settings returns the settings list as it is printed, numbered right through. It
// is one table, for two could come to stand in another order on the sheets. Each
// stage has its heading, and under each row stands what else there is to know of
// it.
func Settings(plan shop.Plan) []templates.Panel {
	if len(plan.Pieces) == 0 {
		return nil
	}
	s := speakerFor(plan.Pieces)
	list := templates.Panel{Heading: say("Settings, in working order"), Ruled: true, Under: true, Table: [][]string{said(settingsHead)}}
	for i, step := range plan.Steps {
		if i == 0 || plan.Steps[i-1].Stage != step.Stage {
			list.Table = append(list.Table, []string{stageNames[step.Stage].With()})
		}
		number := fmt.Sprint(i + 1)
		list.Table = append(list.Table, s.row(number, step))
		if words := s.under(step); words != "" {
			list.Table = append(list.Table, []string{number + ": " + words})
		}
	}
	return []templates.Panel{list}
}

func said(all []wording.Text) []string {
	out := make([]string, len(all))
	for i, t := range all {
		out[i] = t.With()
	}
	return out
}

// row says what a step is and how part and saw stand for it.
func (s speaker) row(number string, step shop.Step) []string {
	cells := []string{number, s.note(step.What), s.parts(step.Parts), cmp.Or(s.lies(step.Operation), empty), empty, empty, empty, ""}
	if step.Cut.How != shop.AwayFromSaw {
		cells[4], cells[5], cells[6] = s.gauge(step.Operation), s.blade(step.Cut), cmp.Or(s.stops(step), empty)
	}
	return cells
}

// lies says which face lies down and what is on the fence, or on the jig.
func (s speaker) lies(o shop.Operation) string {
	if o.From != shop.Bought {
		return say("from %s", sourceNames[o.From].With())
	}
	a, b := o.Lies[0], o.Lies[1]
	var downs, fences []string
	for _, l := range o.Lies {
		down := faceOrNone(l.Down)
		if a.Rest != b.Rest && b.Rest != shop.NoFace {
			down = say("%s: %s", Face(l.Rest), down)
		}
		downs, fences = appendNew(downs, down), appendNew(fences, faceOrNone(l.Fence))
	}
	on := then(fences)
	switch {
	case o.Cut.How == shop.OnEnd && len(fences) > 1:
		on = say("%s on the jig, then the %s", fences[0], fences[1])
	case o.Cut.How == shop.OnTaper && on != "":
		on = say("%s on the jig", on)
	}
	return strings.Trim(then(downs)+"; "+on, "; ")
}

func faceOrNone(f shop.Face) string {
	if f == shop.NoFace {
		return ""
	}
	return Face(f)
}

func appendNew(all []string, s string) []string {
	if s == "" || slices.Contains(all, s) {
		return all
	}
	return append(all, s)
}

func then(all []string) string {
	if len(all) == 2 {
		return say("%s, then %s", all[0], all[1])
	}
	return strings.Join(all, "")
}

// gauge gives the angle under both its names, first as the gauge at hand reads it.
func (s speaker) gauge(o shop.Operation) string {
	c := o.Cut
	square := s.angle(c.OffSquare)
	switch {
	case c.How == shop.OnTaper && c.ByHand():
		return say("%s to the edge", square)
	case c.ByHand(): // the bevel, whatever would hold the part at the saw
	case c.How == shop.OnEnd && c.OffSquare == 0:
		return say("tenoning jig")
	case c.How == shop.OnEnd:
		return say("tenoning jig, filler strip %s", square)
	case c.How == shop.OnTaper:
		return say("tapering jig, %s to the edge", square)
	}
	all := say("%s off square, bevel %s", square, s.angle(c.Bevel()))
	if s.bevelFirst {
		all = say("bevel %s, %s off square", s.angle(c.Bevel()), square)
	}
	switch w, ok := swings[o.What.ID]; {
	case ok && w.edge == nil:
		all += ", " + w.text.With()
	case ok && c.Longer != shop.NoFace:
		all += ", " + w.text.With(Face(w.edge(c.Longer)))
	}
	return all
}

func itself(f shop.Face) shop.Face { return f }

// across returns the side of a stretcher across from another.
func across(f shop.Face) shop.Face {
	if f == shop.RingSide {
		return shop.OuterSide
	}
	return shop.RingSide
}

func (s speaker) blade(c shop.Cut) string {
	switch {
	case c.ByHand() && c.Through:
		return say("by hand, through %s", s.mm(c.Height))
	case c.ByHand() && c.How == shop.OnEnd:
		return say("by hand, %s from the rough end, along the edge", s.mm(c.Depth()))
	case c.ByHand():
		return say("by hand, %s deep", s.mm(c.Height))
	case c.Through:
		return say("tilt %s, through %s", s.angle(c.Tilt), s.mm(c.Height))
	}
	return say("tilt %s, %s high", s.angle(c.Tilt), s.mm(c.Height))
}

func (s speaker) stops(step shop.Step) string {
	var all []string
	c := step.Cut
	switch {
	case c.Beyond:
		all = append(all, say("%s, %s; farther than the stop reaches, saw to a knife line", s.mm(c.Stop), datum(c.At)))
	case c.Stop > 0:
		all = append(all, say("%s, %s", s.mm(c.Stop), datum(c.At)))
	}
	if c.Spacer > 0 {
		all = append(all, say("spacer %s", s.mm(c.Spacer)))
	}
	switch {
	case c.Line > 0 && c.How == shop.OnTaper:
		all = append(all, say("starts %s from the foot, up the %s, squared across", s.mm(c.Line), Face(c.From.Along)))
	case c.Line > 0 && c.ByHand():
		all = append(all, say("line %s from %s", s.mm(c.Line), from(c.From)))
	case c.Line > 0:
		all = append(all, say("no stop: line %s from %s", s.mm(c.Line), from(c.From)))
	}
	if c.Along > 0 {
		all = append(all, say("lap %s long along the edge", s.mm(c.Along)))
	}
	return strings.Join(all, "; ")
}

// from names what a line is measured from.
func from(d shop.Datum) string {
	if d.Point == shop.EitherFace {
		return datum(d)
	}
	return say("the %s", datum(d))
}

// datum names what a distance is counted from.
func datum(d shop.Datum) string {
	text := pointNames[d.Point].With()
	if d.Along != shop.NoFace {
		text = say("%s, along the %s", text, Face(d.Along))
	}
	if d.Inner {
		text = say("%s, for the inner shoulder", text)
	}
	return text
}

// under is what stands under a step.
func (s speaker) under(step shop.Step) string {
	all := []string{s.shared(step), likeTexts[step.Like].With()}
	for _, n := range step.Then.All() {
		text, ok := s.overhang(step, n.ID)
		if !ok {
			text = s.sentence(n)
		}
		all = append(all, text)
	}
	all = append(all, s.all(step.Once.All())...)
	if step.Test.ID != "" {
		all = append(all, say("Test: %s", s.note(step.Test)))
	}
	if step.Caution != "" {
		all = append(all, say("Caution: %s", noteTexts[step.Caution].With()))
	}
	return strings.Join(slices.DeleteFunc(all, func(t string) bool { return t == "" }), " ")
}

// overhang says a note that holds a figure for every stretcher, if it is one.
func (s speaker) overhang(step shop.Step, id shop.NoteID) (string, bool) {
	past := step.Past
	switch id {
	case "past-sides":
		return noteTexts[id].With(s.past(past.Stretchers, past.Sides)), true
	case "past-corners":
		return noteTexts[id].With(s.past(past.Stretchers, past.Corners)), true
	}
	return "", false
}

// past names a length for each stretcher.
func (s speaker) past(n int, all [joint.RingMost]float64) string {
	words := make([]string, n)
	for i := range words {
		words[i] = say("%s at stretcher %d", s.mm(all[i]), i+1)
	}
	return strings.Join(words, ", ")
}

// shared says which sizes are cut together.
func (s speaker) shared(step shop.Step) string {
	var names []string
	for _, b := range step.Parts {
		if !slices.Contains(names, b.Size) {
			names = append(names, b.Size)
		}
	}
	switch {
	case step.Cut.How == shop.AwayFromSaw || len(names) < 2:
		return ""
	case len(names) < s.sizes:
		return say("%s: cut them together.", strings.Join(names, ", "))
	case s.sizes == 2:
		return say("Both sizes: cut them together.")
	}
	return say("All sizes: cut them together.")
}

// parts names the parts of a step: "stretcher: 3 low, 3 tall, 1 spare".
func (s speaker) parts(all []shop.Batch) string {
	var out []string
	for i, b := range all {
		if !slices.ContainsFunc(all[:i], func(c shop.Batch) bool { return c.Part == b.Part }) {
			out = append(out, s.counts(b.Part, all))
		}
	}
	return cmp.Or(strings.Join(out, "; "), empty)
}

// counts says how many of a part there are, and of or for which sizes.
func (s speaker) counts(part shop.Part, all []shop.Batch) string {
	var words []string
	spares, tests := 0, [2]int{}
	for _, b := range all {
		if b.Part != part {
			continue
		}
		if b.Count > 0 {
			words = append(words, s.count(b))
		}
		spares += b.Spares
		if b.OtherEnd {
			tests[1] += b.Tests
		} else {
			tests[0] += b.Tests
		}
	}
	if spares > 0 {
		words = append(words, say("%d spare", spares))
	}
	if tests[0] > 0 {
		words = append(words, say("%d test", tests[0]))
	}
	if tests[1] > 0 {
		words = append(words, say("%d test, its other end", tests[1]))
	}
	if len(words) == 0 {
		return Part(part)
	}
	return Part(part) + ": " + strings.Join(words, ", ")
}

func (s speaker) count(b shop.Batch) string {
	words := strings.TrimSpace(fmt.Sprint(b.Count) + " " + b.Size)
	if len(b.For) == 0 || s.sizes == 1 {
		return words
	}
	return say("%s for %s", words, piece.SizeWords(b.For, s.sizes))
}
