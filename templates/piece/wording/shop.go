package wording

import (
	"cmp"
	"fmt"
	"slices"
	"strings"

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

const settingsHeading wording.Text = "Settings, in working order"

var stageNames = [...]wording.Text{
	shop.StockStage:  "STOCK",
	shop.LapStage:    "LAPS",
	shop.BridleStage: "BRIDLE JOINTS",
	shop.TaperStage:  "FEET, TAPERS, PLAIN ENDS",
	shop.GlueStage:   "GLUE-UP AND AFTER",
}

// A swing says which way the gauge swings for a step that is not square, some of
// them by an edge of the part: that along which the cut stands farther out, or the
// one across from it.
type swing struct {
	text wording.Text
	edge func(shop.Face) shop.Face
}

var (
	nearer = swing{"the cut nearer the end on the %s", across}
	longer = swing{"the %s longer", func(f shop.Face) shop.Face { return f }}
	swings = map[shop.NoteID]swing{
		shop.TitleTestLap: nearer, shop.TitleLaps: nearer, shop.TitleSlack: nearer, shop.TitleOpenEnds: nearer, shop.TitleFlushEnd: nearer,
		shop.TitleLegEnd: longer, shop.TitleHead: longer,
		shop.TitleLegCaul:       {"as for the ends", nil},
		shop.TitleEndCaul:       {"either way", nil},
		shop.TitleShoulderRing:  {"parallel to the sawn end", nil},
		shop.TitleShoulderOuter: {"to the other side of square", nil},
		shop.TitleFoot:          {"as for the head", nil},
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

const (
	offSquareText wording.Text = "%[1]s off square, bevel %[2]s"
	bevelText     wording.Text = "bevel %[2]s, %[1]s off square"
	toEdgeText    wording.Text = "%s to the edge"
	tenoningText  wording.Text = "tenoning jig"
	stripText     wording.Text = "tenoning jig, filler strip %s"
	taperingText  wording.Text = "tapering jig, %s to the edge"

	throughHandText wording.Text = "by hand, through %s"
	depthHandText   wording.Text = "by hand, %s deep"
	endHandText     wording.Text = "by hand, %s from the rough end, along the edge"
	throughText     wording.Text = "tilt %s, through %s"
	highText        wording.Text = "tilt %s, %s high"

	stopText     wording.Text = "%s, %s"
	beyondText   wording.Text = "%s, %s; farther than the stop reaches, saw to a knife line"
	spacerText   wording.Text = "spacer %s"
	startsText   wording.Text = "starts %s from the foot, up the %s, squared across"
	lineText     wording.Text = "line %s from %s"
	noStopText   wording.Text = "no stop: line %s from %s"
	lapLongText  wording.Text = "lap %s long along the edge"
	theText      wording.Text = "the %s"
	alongText    wording.Text = "%s, along the %s"
	shoulderText wording.Text = "%s, for the inner shoulder"

	fromText     wording.Text = "from %s"
	onJigText    wording.Text = "%s on the jig"
	onJigTooText wording.Text = "%s on the jig, then the %s"
	thenText     wording.Text = "%s, then %s"
	endFaceText  wording.Text = "%s: %s"

	testText     wording.Text = "Test: %s"
	cautionText  wording.Text = "Caution: %s"
	togetherText wording.Text = "%s: cut them together."
	bothText     wording.Text = "Both sizes: cut them together."
	allText      wording.Text = "All sizes: cut them together."
	spareText    wording.Text = "%d spare"
	testsText    wording.Text = "%d test"
	forText      wording.Text = "%s for %s"
	pastText     wording.Text = "%s at stretcher %d"
	onePassText  wording.Text = "one pass"
	passesText   wording.Text = "%d passes"
)

var likeTexts = [...]wording.Text{
	shop.NotLike:       "",
	shop.ButForStop:    "As the row above: only the stop moves.",
	shop.ButForLine:    "As the row above: only the line moves.",
	shop.LikeOtherwise: "Otherwise as the row above.",
}

var cautions = [...]wording.Text{
	shop.NoCaution:    "",
	shop.IsolatePower: "Isolate power before setting. Follow the machine's manual and keep its guards on. Local rules and licensed practice come before this sheet.",
	shop.FreeOffcut:   "Never trap an offcut between fence and blade.",
	shop.HandsOnJig:   "The jig slides along the fence; a featherboard holds it there. Hands stay on the jig, never above or beside the cut.",
	shop.SmallParts:   "Small angled parts are held in a jig or clamped, and moved with a push block; cut them free last.",
	shop.TaperInJig:   "Use a tapering jig with hold-downs, the guard and a push block. Short or thin legs are safer by hand saw and plane.",
	shop.DataSheets:   "Glue, finish and finish-soaked rags are handled by their data sheets.",
	shop.GlassCare:    "Glass tempered, its edges worked; never lift a piece by a top that is only bonded on.",
}

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

// A figure prints a quantity: %s with its unit, %b without that of a length, %d as
// a number of passes.
type figure struct {
	measure.Quantity
	unit measure.Unit
}

// Format implements fmt.Formatter.
func (f figure) Format(s fmt.State, verb rune) {
	text := f.Text(f.unit)
	switch {
	case verb == 'b':
		text = f.Bare(f.unit)
	case verb == 'd' && f.Value == 1:
		text = onePassText.With()
	case verb == 'd':
		text = passesText.With(int(f.Value))
	}
	fmt.Fprint(s, text)
}

// Note says a note in unit u.
func Note(n shop.Note, u measure.Unit) string { return speaker{unit: u}.note(n) }

func (s speaker) note(n shop.Note) string {
	if n.ID == shop.NoNote {
		return ""
	}
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
	return noteTexts[n.ID].With(args...)
}

func (s speaker) notes(all shop.Notes) []string {
	out := make([]string, 0, len(all))
	for _, n := range all.All() {
		out = append(out, s.note(n))
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
	list := templates.Panel{Heading: settingsHeading.With(), Ruled: true, Under: true, Table: [][]string{said(settingsHead)}}
	for i, step := range plan.Steps {
		if i == 0 || plan.Steps[i-1].Do.Stage() != step.Do.Stage() {
			list.Table = append(list.Table, []string{stageNames[step.Do.Stage()].With()})
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
		return fromText.With(sourceNames[o.From].With())
	}
	a, b := o.Lies[0], o.Lies[1]
	var downs, fences []string
	for _, l := range o.Lies {
		down := faceOrNone(l.Down)
		if a.Rest != b.Rest && b.Rest != shop.NoFace {
			down = endFaceText.With(Face(l.Rest), down)
		}
		downs, fences = appendNew(downs, down), appendNew(fences, faceOrNone(l.Fence))
	}
	on := then(fences)
	switch {
	case o.Cut.How == shop.OnEnd && len(fences) > 1:
		on = onJigTooText.With(fences[0], fences[1])
	case o.Cut.How == shop.OnTaper && on != "":
		on = onJigText.With(on)
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
		return thenText.With(all[0], all[1])
	}
	return strings.Join(all, "")
}

// gauge gives the angle under both its names, first as the gauge at hand reads it.
func (s speaker) gauge(o shop.Operation) string {
	c := o.Cut
	square := s.angle(c.OffSquare)
	switch {
	case c.How == shop.OnTaper && c.ByHand():
		return toEdgeText.With(square)
	case c.ByHand(): // the bevel, whatever would hold the part at the saw
	case c.How == shop.OnEnd && c.OffSquare == 0:
		return tenoningText.With()
	case c.How == shop.OnEnd:
		return stripText.With(square)
	case c.How == shop.OnTaper:
		return taperingText.With(square)
	}
	text := offSquareText
	if s.bevelFirst {
		text = bevelText
	}
	all := text.With(square, s.angle(c.Bevel()))
	switch w, ok := swings[o.What.ID]; {
	case ok && w.edge == nil:
		all += ", " + w.text.With()
	case ok && c.Longer != shop.NoFace:
		all += ", " + w.text.With(Face(w.edge(c.Longer)))
	}
	return all
}

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
		return throughHandText.With(s.mm(c.Height))
	case c.ByHand() && c.How == shop.OnEnd:
		return endHandText.With(s.mm(c.Depth()))
	case c.ByHand():
		return depthHandText.With(s.mm(c.Height))
	case c.Through:
		return throughText.With(s.angle(c.Tilt), s.mm(c.Height))
	}
	return highText.With(s.angle(c.Tilt), s.mm(c.Height))
}

func (s speaker) stops(step shop.Step) string {
	var all []string
	c := step.Cut
	switch {
	case c.Beyond:
		all = append(all, beyondText.With(s.mm(c.Stop), datum(c.At)))
	case c.Stop > 0:
		all = append(all, stopText.With(s.mm(c.Stop), datum(c.At)))
	}
	if c.Spacer > 0 {
		all = append(all, spacerText.With(s.mm(c.Spacer)))
	}
	switch {
	case c.Line > 0 && c.How == shop.OnTaper:
		all = append(all, startsText.With(s.mm(c.Line), Face(c.From.Along)))
	case c.Line > 0 && c.ByHand():
		all = append(all, lineText.With(s.mm(c.Line), from(c.From)))
	case c.Line > 0:
		all = append(all, noStopText.With(s.mm(c.Line), from(c.From)))
	}
	if c.Along > 0 {
		all = append(all, lapLongText.With(s.mm(c.Along)))
	}
	return strings.Join(all, "; ")
}

// from names what a line is measured from.
func from(d shop.Datum) string {
	if d.Point == shop.EitherFace {
		return datum(d)
	}
	return theText.With(datum(d))
}

// datum names what a distance is counted from.
func datum(d shop.Datum) string {
	text := pointNames[d.Point].With()
	if d.Along != shop.NoFace {
		text = alongText.With(text, Face(d.Along))
	}
	if d.Inner {
		text = shoulderText.With(text)
	}
	return text
}

// under is what stands under a step.
func (s speaker) under(step shop.Step) string {
	all := []string{s.shared(step), likeTexts[step.Like].With()}
	for _, n := range step.Then.All() {
		switch n.ID {
		case shop.PastSides:
			all = append(all, noteTexts[n.ID].With(s.past(step.Past.Stretchers, step.Past.Sides)))
		case shop.PastCorners:
			all = append(all, noteTexts[n.ID].With(s.past(step.Past.Stretchers, step.Past.Corners)))
		default:
			all = append(all, s.note(n))
		}
	}
	all = append(all, s.notes(step.Once)...)
	if step.Test.ID != shop.NoNote {
		all = append(all, testText.With(s.note(step.Test)))
	}
	if step.Caution != shop.NoCaution {
		all = append(all, cautionText.With(cautions[step.Caution].With()))
	}
	return strings.Join(slices.DeleteFunc(all, func(t string) bool { return t == "" }), " ")
}

// past names a length for each stretcher.
func (s speaker) past(n int, all [joint.RingMost]float64) string {
	words := make([]string, n)
	for i := range words {
		words[i] = pastText.With(s.mm(all[i]), i+1)
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
		return togetherText.With(strings.Join(names, ", "))
	case s.sizes == 2:
		return bothText.With()
	}
	return allText.With()
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
	spares, tests := 0, 0
	for _, b := range all {
		if b.Part != part {
			continue
		}
		if b.Count > 0 {
			words = append(words, s.count(b))
		}
		spares, tests = spares+b.Spares, tests+b.Tests
	}
	if spares > 0 {
		words = append(words, spareText.With(spares))
	}
	if tests > 0 {
		words = append(words, testsText.With(tests))
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
	return forText.With(words, piece.SizeWords(b.For, s.sizes))
}
