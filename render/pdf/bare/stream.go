package bare

import (
	"bytes"
	"compress/zlib"
	"fmt"
	"io"
	"strconv"

	"rodsheet/render/page"
)

// perMM is points to the millimetre.
const perMM = 72 / 25.4

// Stream draws the same as Write without the library: a file by hand with the
// operators of each page in one buffer, one compressor for all pages, and the
// letters in a font that every reader has. It leaves out what costs time and
// shows nothing: dates, bookmarks, letters beyond that font.
func Stream(w io.Writer, doc page.Document) error {
	s := stream{}
	s.zlib, _ = zlib.NewWriterLevel(&s.packed, zlib.BestSpeed)
	s.file = append(s.file, "%PDF-1.4\n"...)
	s.object("<</Type /Catalog /Pages 2 0 R>>")
	kids := ""
	for i := range doc.Pages {
		kids += fmt.Sprintf("%d 0 R ", 4+2*i)
	}
	s.object(fmt.Sprintf("<</Type /Pages /Kids [%s] /Count %d>>", kids, len(doc.Pages)))
	s.object("<</Type /Font /Subtype /Type1 /BaseFont /Helvetica>>")
	for _, p := range doc.Pages {
		n := len(s.offsets)
		s.object(fmt.Sprintf("<</Type /Page /Parent 2 0 R /MediaBox [0 0 %.2f %.2f] /Resources <</Font <</F 3 0 R>>>> /Contents %d 0 R>>",
			p.Width*perMM, p.Height*perMM, n+2))
		s.content(doc.Lines, p)
		s.object(fmt.Sprintf("<</Filter /FlateDecode /Length %d>>\nstream\n%s\nendstream", s.packed.Len(), s.packed.Bytes()))
	}
	at := len(s.file)
	s.file = fmt.Appendf(s.file, "xref\n0 %d\n0000000000 65535 f \n", len(s.offsets)+1)
	for _, o := range s.offsets {
		s.file = fmt.Appendf(s.file, "%010d 00000 n \n", o)
	}
	s.file = fmt.Appendf(s.file, "trailer\n<</Root 1 0 R /Size %d>>\nstartxref\n%d\n%%%%EOF\n", len(s.offsets)+1, at)
	_, err := w.Write(s.file)
	return err
}

type stream struct {
	file, text []byte
	offsets    []int
	packed     bytes.Buffer
	zlib       *zlib.Writer
}

func (s *stream) object(body string) {
	s.offsets = append(s.offsets, len(s.file))
	s.file = fmt.Appendf(s.file, "%d 0 obj\n%s\nendobj\n", len(s.offsets), body)
}

func (s *stream) content(lines []page.Line, p page.Page) {
	s.text = s.text[:0]
	line := -1
	for _, stroke := range p.Strokes {
		if stroke.Line != line {
			line = stroke.Line
			s.text = append(s.text, '[')
			s.numbers("] 0 d ", lines[line].Dash...)
			s.numbers("w\n", lines[line].Width)
		}
		for i, q := range stroke.Points {
			s.numbers([]string{"m ", "l "}[min(i, 1)], q.X, q.Y)
		}
		s.text = append(s.text, "S\n"...)
	}
	s.text = append(s.text, "BT /F 10 Tf "...)
	for _, t := range p.Texts {
		s.text = append(s.text, "1 0 0 1 "...)
		s.numbers("Tm (", t.At.X, t.At.Y)
		s.text = append(append(s.text, t.String...), ") Tj\n"...)
	}
	s.text = append(s.text, "ET\n"...)
	s.packed.Reset()
	s.zlib.Reset(&s.packed)
	s.zlib.Write(s.text)
	s.zlib.Close()
}

// numbers adds lengths in mm as points, and an operator.
func (s *stream) numbers(operator string, mm ...float64) {
	for _, v := range mm {
		s.text = append(strconv.AppendFloat(s.text, v*perMM, 'f', 2, 64), ' ')
	}
	s.text = append(s.text, operator...)
}
