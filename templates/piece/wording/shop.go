package wording

import (
	"fmt"
	"slices"
	"strings"

	"rodsheet/geometry/joint"
	"rodsheet/geometry/lists"
	"rodsheet/geometry/measure"
	"rodsheet/templates/piece"
	"rodsheet/templates/piece/design"
	"rodsheet/templates/piece/shop"
	"rodsheet/templates/wording"
)

// empty fills a cell that has nothing to say; an empty one asks to be filled in.
const empty = "–"

// pointNames are what distances are counted from.
var pointNames = [...]wording.Text{
	shop.SquaredEnd:   "squared end",
	shop.StretcherEnd: "end of the stretcher",
	shop.ThePlainEnd:  "plain end",
	shop.FootEnd:      "foot end",
	shop.SawnHead:     "sawn head",
	shop.HeadCorner:   "long corner of the head",
	shop.JigFace:      "jig's face to the near side of the blade",
	shop.EitherFace:   "either face",
}

// say fills a sentence.
func say(t wording.Text, args ...any) string { return t.With(args...) }

// A speaker says the values of a plan in its unit.
type speaker struct {
	unit       measure.Unit
	bevelFirst bool
	sizes      int
}

func speakerFor(designs ...design.Design) speaker {
	d := designs[0]
	return speaker{d.Unit, d.Saw.FromFence, len(designs)}
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
	return noteTexts()[n.ID].With(s.args(n)...)
}

// sentence says a note that stands by itself: it begins with a capital.
func (s speaker) sentence(n shop.Note) string { return noteTexts()[n.ID].Capital().With(s.args(n)...) }

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
func (s speaker) all(notes []shop.Note) []string { return lists.Map(notes, s.sentence) }

func said(all []wording.Text) []string {
	return lists.Map(all, func(t wording.Text) string { return t.With() })
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

// overhang says a note that holds a figure for every stretcher, if it is one.
func (s speaker) overhang(step shop.Step, id shop.NoteID) (string, bool) {
	past := step.Past
	switch id {
	case "past-sides":
		return noteTexts()[id].With(s.past(past.Stretchers, past.Sides)), true
	case "past-corners":
		return noteTexts()[id].With(s.past(past.Stretchers, past.Corners)), true
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

// counts says how many of a part there are, and of or for which sizes.
func (s speaker) counts(part shop.Part, all []shop.Batch) string {
	var counted []shop.Batch // by what they are for
	var words []string
	var anew []string
	spares, tests := 0, [2]int{}
	for _, b := range all {
		if b.Part != part {
			continue
		}
		if b.Part == shop.TaperSled && b.Count == 0 {
			anew = append(anew, say("its fence anew for %s", piece.SizeWords(b.For, s.sizes)))
		}
		if b.Count > 0 {
			k := slices.IndexFunc(counted, func(c shop.Batch) bool { return c.Size == b.Size && slices.Equal(c.For, b.For) })
			if k < 0 {
				counted = append(counted, b)
			} else {
				counted[k].Count += b.Count
			}
		}
		spares += b.Spares
		if b.OtherEnd {
			tests[1] += b.Tests
		} else {
			tests[0] += b.Tests
		}
	}
	for _, b := range counted {
		words = append(words, s.count(b))
	}
	words = append(words, anew...)
	if spares > 0 {
		words = append(words, say("%d spare", spares))
	}
	switch one, other := tests[0], tests[1]; {
	case one > 0 && one == other:
		words = append(words, say("%s, both its ends", testPieces(one)))
	case one > 0 && other > 0:
		words = append(words, say("%s, both ends of %d", testPieces(one), other))
	case one > 0:
		words = append(words, testPieces(one))
	case other > 0:
		words = append(words, say("%s, its other end", testPieces(other)))
	}
	if len(words) == 0 {
		return Part(part)
	}
	return Part(part) + ": " + strings.Join(words, ", ")
}

func testPieces(n int) string {
	name := partNames[shop.TestPiece].one
	if n > 1 {
		name = partNames[shop.TestPiece].many
	}
	return say("%d %s", n, name.With())
}

func (s speaker) count(b shop.Batch) string {
	words := strings.TrimSpace(fmt.Sprint(b.Count) + " " + b.Size)
	if len(b.For) == 0 || s.sizes == 1 {
		return words
	}
	return say("%s for %s", words, piece.SizeWords(b.For, s.sizes))
}
