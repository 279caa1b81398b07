package main

import (
	"bytes"
	"compress/zlib"
	"fmt"
	"io"
	"strconv"
	"strings"
	"testing"

	"rodsheet/render/page"
	"rodsheet/render/readback"
)

const pointsPerMM = 72 / 25.4

// writeByHand draws the same as bare.Write without the library: a file with the
// operators of each page in one buffer, one compressor for all pages, and the
// letters in a font that every reader has. It leaves out what costs time and
// shows nothing: dates, bookmarks, letters beyond that font.
func writeByHand(w io.Writer, doc page.Document) error {
	s := byHand{}
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
			p.Width*pointsPerMM, p.Height*pointsPerMM, n+2))
		s.content(doc.Lines, p)
		s.object(fmt.Sprintf("<</Filter /FlateDecode /Length %d>>\nstream\n%s\nendstream", s.packed.Len(), s.packed.Bytes()))
	}
	s.object("<</Title (floor) /Subject (floor) /Creator (floor)>>")
	at := len(s.file)
	s.file = fmt.Appendf(s.file, "xref\n0 %d\n0000000000 65535 f \n", len(s.offsets)+1)
	for _, o := range s.offsets {
		s.file = fmt.Appendf(s.file, "%010d 00000 n \n", o)
	}
	s.file = fmt.Appendf(s.file, "trailer\n<</Root 1 0 R /Info %d 0 R /Size %d>>\nstartxref\n%d\n%%%%EOF\n", len(s.offsets), len(s.offsets)+1, at)
	_, err := w.Write(s.file)
	return err
}

type byHand struct {
	file, text []byte
	offsets    []int
	packed     bytes.Buffer
	zlib       *zlib.Writer
}

func (s *byHand) object(body string) {
	s.offsets = append(s.offsets, len(s.file))
	s.file = fmt.Appendf(s.file, "%d 0 obj\n%s\nendobj\n", len(s.offsets), body)
}

func (s *byHand) content(lines []page.Line, p page.Page) {
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
		s.text = append(append(s.text, escaped.Replace(t.String)...), ") Tj\n"...)
	}
	s.text = append(s.text, "ET\n"...)
	s.packed.Reset()
	s.zlib.Reset(&s.packed)
	s.zlib.Write(s.text)
	s.zlib.Close()
}

var escaped = strings.NewReplacer(`\`, `\\`, "(", `\(`, ")", `\)`)

// numbers adds lengths in mm as points, and an operator.
func (s *byHand) numbers(operator string, mm ...float64) {
	for _, v := range mm {
		s.text = append(strconv.AppendFloat(s.text, v*pointsPerMM, 'f', 2, 64), ' ')
	}
	s.text = append(s.text, operator...)
}

// What is timed against is a file that can be read: it has the pages, and as
// many strokes as are drawn.
func TestWriteByHand(t *testing.T) {
	doc := packDocument(t, anExample)
	var b bytes.Buffer
	done(t, writeByHand(&b, doc))
	f, err := readback.PDF(b.Bytes())
	if err != nil || len(f.Pages) != len(doc.Pages) {
		t.Fatalf("%d pages, %v, want %d", len(f.Pages), err, len(doc.Pages))
	}
	for i, p := range f.Pages {
		if got, want := len(p.Strokes), len(doc.Pages[i].Strokes); got != want || len(p.Texts) == 0 {
			t.Errorf("page %d: %d strokes and %d texts, want %d strokes", i+1, got, len(p.Texts), want)
		}
	}
}
