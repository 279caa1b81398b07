// Package bare writes a document with gofpdf's own calls and nothing besides:
// what the writer of this program is timed against. Only benchmarks use it.
package bare

import (
	"io"

	"github.com/jung-kurt/gofpdf"

	"rodsheet/render/page"
)

// Write draws the same strokes and texts as pdf.Write, compressed.
func Write(w io.Writer, doc page.Document) error {
	f := gofpdf.NewCustom(&gofpdf.InitType{OrientationStr: "P", UnitStr: "mm", Size: gofpdf.SizeType{Wd: 210, Ht: 297}})
	f.SetCompression(true)
	f.SetFont("Helvetica", "", 10)
	for _, p := range doc.Pages {
		f.AddPageFormat("P", gofpdf.SizeType{Wd: p.Width, Ht: p.Height})
		line := -1
		for _, s := range p.Strokes {
			if s.Line != line {
				line = s.Line
				f.SetLineWidth(doc.Lines[line].Width)
				f.SetDashPattern(doc.Lines[line].Dash, 0)
			}
			for i := 1; i < len(s.Points); i++ {
				a, b := s.Points[i-1], s.Points[i]
				f.Line(a.X, p.Height-a.Y, b.X, p.Height-b.Y)
			}
		}
		for _, t := range p.Texts {
			f.Text(t.At.X, p.Height-t.At.Y, t.String)
		}
	}
	return f.Output(w)
}
