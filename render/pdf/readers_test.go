package pdf_test

import (
	"encoding/xml"
	"fmt"
	"math"
	"regexp"
	"strconv"
	"strings"
	"testing"

	"rodsheet/geometry"
	"rodsheet/render/page"
	"rodsheet/render/readback"
)

func TestStructureCheck(t *testing.T) {
	data := write(t, readback.Sample())
	if out := readback.Run(t, data, "sample.pdf", "qpdf", "--check", "FILE"); !strings.Contains(out, "No syntax or stream encoding errors") {
		t.Error(out)
	}
	prefs := readback.Run(t, data, "sample.pdf", "qpdf", "--qdf", "--object-streams=disable", "FILE", "-")
	for _, want := range []string{"/PrintScaling /None", "/PickTrayByPDFSize true", "/Duplex /Simplex", "/Version /1.7"} {
		if !strings.Contains(prefs, want) {
			t.Errorf("%s is not in the file", want)
		}
	}
}

// A second reader, which prints the operators of a page.
func TestTrace(t *testing.T) {
	doc := readback.Sample()
	out := readback.Run(t, write(t, doc), "sample.pdf", "mutool", "trace", "FILE")
	pages := traced(t, out)
	if len(pages) != len(doc.Pages) {
		t.Fatalf("%d pages, want %d", len(pages), len(doc.Pages))
	}
	for i, p := range doc.Pages {
		var want []geometry.Segment
		for line := range doc.Lines {
			want = append(want, readback.OnPage(p, line)...)
		}
		if len(pages[i]) != len(want) {
			t.Errorf("page %d: %d segments, want %d", i+1, len(pages[i]), len(want))
		}
		for _, s := range readback.Strays(want, pages[i], aim) {
			t.Errorf("page %d: no segment at %.5f", i+1, s)
		}
	}
}

// A second reader finds a bookmark for each section, and those of its sheets
// under it.
func TestOutline(t *testing.T) {
	doc := page.Document{Title: "pack"}
	for i, part := range []string{"cover", "laps", ""} {
		doc.Pages = append(doc.Pages, page.Page{Width: 210, Height: 297, Name: fmt.Sprint("sheet ", i+1), Part: part})
	}
	out := readback.Run(t, write(t, doc), "outline.pdf", "mutool", "show", "FILE", "outline")
	line := regexp.MustCompile(`(?m)^.(\t+)"(.*)"\t#page=(\d)`)
	got := ""
	for _, m := range line.FindAllStringSubmatch(out, -1) {
		got += fmt.Sprintf("%d %s, page %s\n", len(m[1]), m[2], m[3])
	}
	if want := "1 cover, page 1\n2 sheet 1, page 1\n1 laps, page 2\n2 sheet 2, page 2\n2 sheet 3, page 3\n"; got != want {
		t.Errorf("the outline is\n%swant\n%s", got, want)
	}
}

// traced returns the stroked segments of every page in mm. The trace gives
// coordinates as they stand in the file.
func traced(t *testing.T, out string) [][]geometry.Segment {
	var doc struct {
		Pages []struct {
			Strokes []struct {
				Ops []struct {
					XMLName xml.Name
					X       string `xml:"x,attr"`
					Y       string `xml:"y,attr"`
				} `xml:",any"`
			} `xml:"stroke_path"`
		} `xml:"page"`
	}
	if err := xml.Unmarshal([]byte(out), &doc); err != nil {
		t.Fatal(err)
	}
	var pages [][]geometry.Segment
	for _, p := range doc.Pages {
		var page []geometry.Segment
		for _, s := range p.Strokes {
			var first, last geometry.Point
			for _, op := range s.Ops {
				to := first
				if op.XMLName.Local != "closepath" {
					to = geometry.Pt(points(t, op.X), points(t, op.Y))
				}
				if op.XMLName.Local == "moveto" {
					first = to
				} else {
					page = append(page, geometry.Segment{A: last, B: to})
				}
				last = to
			}
		}
		pages = append(pages, page)
	}
	return pages
}

// points returns a number of points as mm.
func points(t *testing.T, s string) float64 {
	v, err := strconv.ParseFloat(s, 64)
	if err != nil {
		t.Fatal(err)
	}
	return v * 25.4 / 72
}

// A third reader, which finds words and their boxes, y down from the top.
func TestWords(t *testing.T) {
	doc := readback.Sample()
	out := readback.Run(t, write(t, doc), "sample.pdf", "pdftotext", "-bbox", "FILE", "-")
	for _, p := range doc.Pages {
		want := fmt.Sprintf(`<page width="%.2f`, p.Width*72/25.4)
		if !strings.Contains(out, want) {
			t.Errorf("no page %s", want)
		}
	}
	word := regexp.MustCompile(`<word xMin="([\d.]+)" yMin="([\d.]+)" xMax="([\d.]+)" yMax="([\d.]+)">HEAD:</word>`)
	box := word.FindStringSubmatch(out)
	if box == nil {
		t.Fatalf("HEAD: is not among the words:\n%s", out)
	}
	at := doc.Pages[0].Texts[0].At
	if x := points(t, box[1]); math.Abs(x-at.X) > 0.01 {
		t.Errorf("HEAD: begins at x = %.3f mm, want %.3f", x, at.X)
	}
	top, bottom := doc.Pages[0].Height-points(t, box[2]), doc.Pages[0].Height-points(t, box[4])
	if at.Y < bottom || at.Y > top {
		t.Errorf("HEAD: stands from y = %.3f to %.3f mm, its base line is at %.3f", bottom, top, at.Y)
	}
}
