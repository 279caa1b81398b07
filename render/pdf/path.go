package pdf

import (
	"math"
	"strconv"

	"github.com/jung-kurt/gofpdf"

	"rodsheet/geometry"
	"rodsheet/render/lettering"
	"rodsheet/render/page"
)

// A pathWriter gathers the drawing operators of a page. Its memory is used
// again for the next.
type pathWriter struct {
	text   []byte
	starts []int
	order  []int
}

// strokes returns the operators that draw the strokes, line by line and each
// line in one go: state is set once, and where a stroke crosses another of
// its line the paint is laid on once.
func (w *pathWriter) strokes(lines []page.Line, strokes []page.Stroke) string {
	w.text = w.text[:0]
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
	return string(w.text)
}

// sort puts the indices of the strokes in the order of their lines, those of
// line i from order[starts[i]] on (a counting sort).
func (w *pathWriter) sort(lines int, strokes []page.Stroke) {
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
func (w *pathWriter) style(l page.Line) {
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
func (w *pathWriter) stroke(s page.Stroke) {
	points, closed := s.Outline()
	if len(points) < 2 {
		return
	}
	for i, p := range points {
		w.number(p.X)
		w.number(p.Y)
		if i == 0 {
			w.text = append(w.text, "m\n"...)
		} else {
			w.text = append(w.text, "l\n"...)
		}
	}
	if closed {
		w.text = append(w.text, "h\n"...)
	}
}

// number adds a length in mm as points and a space.
func (w *pathWriter) number(mm float64) { w.text = append(appendFixed(w.text, mm*perMM), ' ') }

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

// letter sets t by a matrix that turns, moves and scales a font of size 1, as
// gofpdf rounds sizes and places to 0.01 pt.
func letter(f *gofpdf.Fpdf, t page.Text) {
	if t.String == "" {
		return
	}
	size := lettering.Em(t.Height) * perMM
	turn := geometry.Rotate(t.Angle)
	b := append([]byte(nil), "q "...)
	for _, v := range [...]float64{
		turn.A * size, turn.B * size, turn.C * size, turn.D * size, t.At.X * perMM, t.At.Y * perMM,
	} {
		b = append(appendFixed(b, v), ' ')
	}
	f.RawWriteStr(string(append(b, "cm"...)))
	_, height := f.GetPageSize()
	f.Text(0, height, lettering.Clean(t.String))
	f.RawWriteStr("Q")
}
