// Package lettering measures and outlines strings in the one face that all
// files are lettered in, so that a label takes the same room in each of them.
//
// Lengths are in mm. The height of lettering is that of a capital letter, as
// in ISO 3098. Outlines start at the left end of the base line, y up.
package lettering

import (
	"math"
	"strings"
	"sync"
	"sync/atomic"
	"unicode"

	"golang.org/x/image/font"
	"golang.org/x/image/font/gofont/goregular"
	"golang.org/x/image/font/sfnt"
	"golang.org/x/image/math/fixed"
)

// TTF returns the face as a TrueType file. The bytes are shared: they are for
// reading only.
func TTF() []byte { return goregular.TTF }

// A typeface is the parsed face with the figures taken from it once.
type typeface struct {
	font *sfnt.Font
	ppem fixed.Int26_6 // at this size one unit of sfnt is one unit of the font
	em   float64       // font units to the em

	capital, ascent, descent float64 // in em

	// advance holds, for each rune that was asked for, one more than step
	// returns; 0 for the others.
	advance []atomic.Uint32
}

var face = sync.OnceValue(parse)

// parse panics when the embedded font is broken, which only a broken build
// can bring about.
func parse() *typeface {
	f := try(sfnt.Parse(goregular.TTF))
	t := &typeface{font: f, ppem: fixed.Int26_6(f.UnitsPerEm()), em: float64(f.UnitsPerEm())}
	var b sfnt.Buffer
	m := try(f.Metrics(&b, t.ppem, font.HintingNone))
	t.capital, t.ascent, t.descent = float64(m.CapHeight)/t.em, float64(m.Ascent)/t.em, float64(m.Descent)/t.em
	t.advance = make([]atomic.Uint32, maxRune+1)
	return t
}

func try[T any](v T, err error) T {
	if err != nil {
		panic("lettering: embedded font: " + err.Error())
	}
	return v
}

// maxRune is the last rune of the basic plane; the PDF writer's strings are
// pairs of bytes and hold none beyond it.
const maxRune = 0xFFFF

// settable reports whether r may be lettered at all, whatever the face holds.
// Control and format characters (a soft hyphen is one) may not, nor the
// replacement character, which stands for bytes that are no text.
func settable(r rune) bool {
	return !unicode.In(r, unicode.Cc, unicode.Cf) && r != unicode.ReplacementChar
}

// step returns the advance of r in thousandths of an em; 0 when r cannot be
// lettered.
func (t *typeface) step(r rune) uint32 {
	if r < 0 || r > maxRune {
		return 0
	}
	if known := t.advance[r].Load(); known > 0 {
		return known - 1
	}
	step := t.measure(r)
	t.advance[r].Store(step + 1)
	return step
}

// measure takes a step from the font. Thousandths are the unit of widths in a
// PDF file: rounding to them keeps every file to the same widths.
func (t *typeface) measure(r rune) uint32 {
	var b sfnt.Buffer
	g := try(t.font.GlyphIndex(&b, r))
	if g == 0 || !settable(r) {
		return 0
	}
	return uint32(math.Round(1000 * float64(try(t.font.GlyphAdvance(&b, g, t.ppem, font.HintingNone))) / t.em))
}

// substitute stands for every rune that cannot be lettered.
const substitute = '?'

// stepOr is step, with the substitute's advance where r has none.
func (t *typeface) stepOr(r rune) float64 {
	if w := t.step(r); w > 0 {
		return float64(w)
	}
	return float64(t.step(substitute))
}

// Em returns the font size in mm at which a capital letter is height mm high.
func Em(height float64) float64 { return height / face().capital }

// Ascent returns how far lettering may rise above the base line, accents
// included. A few capitals with two accents go beyond it.
func Ascent(height float64) float64 { return Em(height) * face().ascent }

// Descent returns how far lettering may hang below the base line, as a
// positive length.
func Descent(height float64) float64 { return Em(height) * face().descent }

// Letter heights on a sheet (ISO 3098 series): 2.5 mm is the least that is
// printed.
const (
	Small = 2.5
	Large = 3.5
)

// Pitch returns the distance from base line to base line.
func Pitch(height float64) float64 { return 1.6 * height }

// Width returns the length of the base line of s: the plain sum of the
// advances, without kerning. Runes that cannot be lettered count as the one
// Clean puts for them.
func Width(s string, height float64) float64 {
	t := face()
	sum := 0.0
	for _, r := range s {
		sum += t.stepOr(r)
	}
	return sum / 1000 * Em(height)
}

// Missing returns, once each and in order of appearance, the runes of s that
// cannot be lettered: those without a glyph, control and format characters, everything
// outside the basic plane and, as U+FFFD, bytes that are not UTF-8.
func Missing(s string) []rune {
	var out []rune
	for _, r := range s {
		// The face has all of ASCII that prints: it is not read for that.
		if ascii := ' ' <= r && r <= '~'; !ascii && face().step(r) == 0 && !strings.ContainsRune(string(out), r) {
			out = append(out, r)
		}
	}
	return out
}

// Clean returns s with a question mark for every rune that Missing names. It
// is the last line of defence: what a maker types is refused long before.
func Clean(s string) string {
	t := face()
	return strings.Map(func(r rune) rune {
		if t.step(r) == 0 {
			return substitute
		}
		return r
	}, s)
}
