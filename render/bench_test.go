package render

import (
	"fmt"
	"io"
	"testing"
	"time"

	"rodsheet/geometry"
	"rodsheet/geometry/joint"
	"rodsheet/render/pdf"
	"rodsheet/render/pdf/bare"
	"rodsheet/templates"
)

// A sample is a named set of drawings.
type sample struct {
	name     string
	drawings []templates.Drawing
}

// samples is the set over which counts of sheets are compared: long tapers,
// triangles, round and many-sided tops, and packs of small templates.
func samples() []sample {
	var out []sample
	for _, length := range []float64{400, 700, 1000, 1500, 2000} {
		out = append(out, sample{fmt.Sprintf("taper-%.0f", length), []templates.Drawing{outline("taper", false,
			geometry.Pt(0, 0), geometry.Pt(length, 0), geometry.Pt(length, 28), geometry.Pt(110, 45), geometry.Pt(0, 45))}})
	}
	for _, base := range []float64{300, 600, 900} {
		out = append(out, sample{fmt.Sprintf("triangle-%.0f", base), []templates.Drawing{outline("triangle", false,
			geometry.Pt(0, 0), geometry.Pt(base, 0), geometry.Pt(base, base*0.6))}})
	}
	for _, across := range []float64{300, 600, 900, 1200} {
		out = append(out, sample{fmt.Sprintf("round-%.0f", across), []templates.Drawing{roundOutline(across)}})
		for _, n := range []int{3, 5, 6, 8} {
			out = append(out, sample{fmt.Sprintf("%d-corners-%.0f", n, across), []templates.Drawing{polygonOutline(n, across)}})
		}
	}
	out = append(out, sample{"top-800x600", []templates.Drawing{boxOutline(800, 600)}})
	for _, n := range []int{5, 20, 50, 100} {
		out = append(out, sample{fmt.Sprintf("pack-%d", n), smallDrawings(n)})
	}
	return out
}

// smallDrawings returns n different templates of 30 to 170 mm.
func smallDrawings(n int) []templates.Drawing {
	var out []templates.Drawing
	for i := range n {
		w, h := 30+float64(i*37%140), 25+float64(i*53%90)
		d := boxOutline(w, h)
		d.Name = fmt.Sprintf("part %d", i+1)
		d.Labels = []templates.Label{{Text: "edge", On: geometry.Segment{B: geometry.Pt(w, 0)}}}
		out = append(out, d)
	}
	return out
}

// BenchmarkSheets plans the samples on A4 and reports the sheets, those of
// the plain grid and the bound.
func BenchmarkSheets(b *testing.B) {
	for _, s := range samples() {
		b.Run(s.name, func(b *testing.B) {
			l := a4()
			var p Plan
			for b.Loop() {
				p = layOne(b, l, s.drawings...)
			}
			l.Plain = true
			bound := p.Bound()
			tiles, least := 0, 0
			for _, t := range bound.Tiles {
				tiles, least = tiles+t.Tiles, least+t.Least
			}
			b.ReportMetric(float64(p.Count()), "sheets")
			b.ReportMetric(float64(bound.Least), "bound")
			b.ReportMetric(float64(layOne(b, l, s.drawings...).Count()), "plain")
			b.ReportMetric(float64(tiles), "tiles")
			b.ReportMetric(float64(least), "tile-bound")
		})
	}
}

// longJob returns a job of about 100 sheets with hatching and many labels.
func longJob(tb testing.TB, l Layout) templates.Job {
	tb.Helper()
	var section templates.Section
	for i := range 5 {
		one, err := templates.Taper(joint.Taper{Length: 1900 + 20*float64(i), Top: 300, Foot: 120, Start: 150},
			templates.Setting{Unit: l.Unit, Clear: l.Clear(), Full: true})
		if err != nil {
			tb.Fatal(err)
		}
		section.Drawings = append(section.Drawings, one.Drawings()...)
		section.Panels = one.Sections[0].Panels
	}
	return jobOf(section)
}

// BenchmarkAgainstBareWriter draws a job of 100 sheets from its figures to the
// compressed file, and the same strokes and words with bare calls of the PDF
// library, a Line each. ratio is the first time over the second.
func BenchmarkAgainstBareWriter(b *testing.B) {
	l := a4()
	var ours, plain time.Duration
	pages := 0
	for b.Loop() {
		start := time.Now()
		p := must(Lay(longJob(b, l), l))(b)
		doc := p.Document()
		if err := pdf.Write(io.Discard, doc); err != nil {
			b.Fatal(err)
		}
		ours += time.Since(start)
		start = time.Now()
		if err := bare.Write(io.Discard, doc); err != nil {
			b.Fatal(err)
		}
		plain += time.Since(start)
		pages = len(doc.Pages)
	}
	b.ReportMetric(float64(ours)/float64(plain), "ratio")
	b.ReportMetric(float64(pages), "pages")
	b.ReportMetric(plain.Seconds()*1000/float64(b.N), "bare-ms/op")
}

// BenchmarkStages times planning and drawing apart.
func BenchmarkStages(b *testing.B) {
	l := a4()
	job := longJob(b, l)
	p := must(Lay(job, l))(b)
	b.Run("plan", func(b *testing.B) {
		for b.Loop() {
			if _, err := Lay(job, l); err != nil {
				b.Fatal(err)
			}
		}
	})
	b.Run("draw", func(b *testing.B) {
		for b.Loop() {
			p.Document()
		}
	})
	b.Run("write", func(b *testing.B) {
		doc := p.Document()
		for b.Loop() {
			if err := pdf.Write(io.Discard, doc); err != nil {
				b.Fatal(err)
			}
		}
	})
}
