package pdf

import (
	"bytes"
	"compress/zlib"
	"fmt"
	"math"
	"strconv"

	"rodsheet/geometry"
	"rodsheet/render/lettering"
	"rodsheet/render/page"
)

// A packer compresses the content streams of pages, one after the other: to make a new
// compressor takes longer than to use it.
type packer struct {
	packed bytes.Buffer
	zlib   *zlib.Writer
}

func newPacker() *packer {
	p := &packer{}
	p.zlib, _ = zlib.NewWriterLevel(&p.packed, zlib.BestSpeed) // fails for an unknown level only
	return p
}

// object returns a content stream in place of the one in which gofpdf has set the
// font, which it names by a checksum of its own. That setting is kept.
func (p *packer) object(n int, old, content []byte) ([]byte, error) {
	const begins, fontEnds = ">>\nstream\n", " Tf ET\n"
	_, text, ok := bytes.Cut(old, []byte(begins))
	setting, _, found := bytes.Cut(text, []byte(fontEnds))
	if !ok || !found {
		return nil, errStrange
	}
	p.packed.Reset()
	p.zlib.Reset(&p.packed)
	for _, text := range [][]byte{setting, []byte(fontEnds), content} {
		p.zlib.Write(text) // never fails: it goes to memory
	}
	p.zlib.Close()
	out := fmt.Appendf(nil, "%d 0 obj\n<</Filter /FlateDecode /Length %d%s", n, p.packed.Len(), begins)
	return append(append(out, p.packed.Bytes()...), "\nendstream\nendobj\n"...), nil
}

// A contentWriter writes the operators that draw a page.
type contentWriter struct {
	text   []byte
	starts []int
	order  []int
}

// content returns the operators that draw a page, its strokes in lines.
func content(lines []page.Line, p page.Page) []byte {
	w := contentWriter{text: make([]byte, 0, 64<<10)} // more than most
	w.areas(p.Areas)
	w.strokes(lines, p.Strokes)
	for _, t := range p.Texts {
		w.letter(t)
	}
	return w.text
}

// areas adds the operators that fill the areas, and takes black again. A run whose
// outlines overlap is filled where any of them is: the rule is not that of even and odd.
func (w *contentWriter) areas(areas []page.Area) {
	for run := range page.Runs(areas) {
		w.text = append(appendFixed(w.text, run[0].Gray), " g\n"...)
		for _, a := range run {
			w.path(a.Points)
			w.text = append(w.text, "h\n"...)
		}
		w.text = append(w.text, "f\n"...)
	}
	if len(areas) > 0 {
		w.text = append(w.text, "0 g\n"...)
	}
}

// strokes adds the operators that draw the strokes, line by line and each
// line in one go: state is set once, and where a stroke crosses another of
// its line the paint is laid on once.
func (w *contentWriter) strokes(lines []page.Line, strokes []page.Stroke) {
	w.sort(len(lines), strokes)
	for i, line := range lines {
		own := w.order[w.starts[i]:w.starts[i+1]]
		if len(own) == 0 {
			continue
		}
		w.style(line)
		for _, k := range own {
			w.stroke(strokes[k])
		}
		w.text = append(w.text, "S\n"...)
	}
}

// sort puts the indices of the strokes in the order of their lines, those of
// line i from order[starts[i]] on (a counting sort).
func (w *contentWriter) sort(lines int, strokes []page.Stroke) {
	w.starts = append(w.starts[:0], make([]int, lines+2)...)
	for _, s := range strokes {
		w.starts[s.Line+2]++
	}
	for i := 1; i < len(w.starts); i++ {
		w.starts[i] += w.starts[i-1]
	}
	w.order = append(w.order[:0], make([]int, len(strokes))...)
	for k, s := range strokes {
		w.order[w.starts[s.Line+1]] = k
		w.starts[s.Line+1]++
	}
}

// style sets width, dashes, and ends and corners: round, so that a line ends
// where a pen would leave it; flat for dashes, so that they keep their length.
func (w *contentWriter) style(l page.Line) {
	w.number(l.Width)
	w.text = append(w.text, "w [ "...)
	for _, d := range l.Dash {
		w.number(d)
	}
	w.text = append(w.text, "] 0 d 1 j "...)
	if len(l.Dash) > 0 {
		w.text = append(w.text, "0 J\n"...)
	} else {
		w.text = append(w.text, "1 J\n"...)
	}
}

// stroke adds one polyline. A closed outline is closed by its operator, so
// that its last corner is joined like the others.
func (w *contentWriter) stroke(s page.Stroke) {
	points, closed := s.Outline()
	if len(points) < 2 {
		return
	}
	w.path(points)
	if closed {
		w.text = append(w.text, "h\n"...)
	}
}

func (w *contentWriter) path(points []geometry.Point) {
	for i, p := range points {
		w.number(p.X)
		w.number(p.Y)
		if i == 0 {
			w.text = append(w.text, "m\n"...)
		} else {
			w.text = append(w.text, "l\n"...)
		}
	}
}

// number adds a length in mm as points and a space.
func (w *contentWriter) number(mm float64) { w.text = append(appendFixed(w.text, mm*perMM), ' ') }

// appendFixed appends v to four decimals, without trailing zeros or a minus
// before zero. v is small enough to be counted in whole ten-thousandths.
func appendFixed(b []byte, v float64) []byte {
	n := int64(math.Round(v * 1e4))
	if n < 0 {
		b = append(b, '-')
		n = -n
	}
	b = strconv.AppendInt(b, n/1e4, 10)
	part := n % 1e4
	if part == 0 {
		return b
	}
	b = append(b, '.')
	for unit := int64(1000); part > 0; unit /= 10 {
		b = append(b, byte('0'+part/unit))
		part %= unit
	}
	return b
}

// letter sets t by a matrix that turns, moves and scales a font of size 1.
// Characters are pairs of bytes (the font's encoding is Identity-H).
func (w *contentWriter) letter(t page.Text) {
	if t.String == "" {
		return
	}
	size := lettering.Em(t.Height) * perMM
	turn := geometry.Rotate(t.Angle)
	w.text = append(w.text, "BT "...)
	for _, v := range [...]float64{
		turn.A * size, turn.B * size, turn.C * size, turn.D * size, t.At.X * perMM, t.At.Y * perMM,
	} {
		w.text = append(appendFixed(w.text, v), ' ')
	}
	w.text = append(w.text, "Tm ("...)
	for _, r := range lettering.Clean(t.String) {
		w.text = appendEscaped(appendEscaped(w.text, byte(r>>8)), byte(r))
	}
	w.text = append(w.text, ") Tj ET\n"...)
}

// appendEscaped appends a byte of a string in brackets. A bare carriage return
// would be read as a line feed (ISO 32000-1, 7.3.4.2, from memory).
func appendEscaped(b []byte, c byte) []byte {
	switch c {
	case '\\', '(', ')':
		return append(b, '\\', c)
	case '\r':
		return append(b, '\\', 'r')
	}
	return append(b, c)
}
