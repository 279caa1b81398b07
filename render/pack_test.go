package render

import (
	"bytes"
	"fmt"
	"slices"
	"strconv"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"rodsheet/geometry"
	"rodsheet/geometry/measure"
	"rodsheet/render/page"
	"rodsheet/render/pdf"
	"rodsheet/render/readback"
	"rodsheet/templates"
)

// layPack lays the sample pack.
func layPack(t testing.TB, l Layout, wide, high float64) (Plan, []templates.Section) {
	t.Helper()
	sections := samplePack(wide, high, l.Unit, l)
	p := must(Lay(templates.Job{Name: "pack", Sections: sections}, l))(t)
	return p, sections
}

// readPDF writes a document and reads it back by PDFium.
func readPDF(t testing.TB, doc page.Document) readback.File {
	t.Helper()
	var b bytes.Buffer
	if err := pdf.Write(&b, doc); err != nil {
		t.Fatal(err)
	}
	f := must(readback.PDF(b.Bytes()))(t)
	return f
}

// everyday returns the layouts that makers use most, with a remark.
func everyday() []Layout {
	var out []Layout
	for _, u := range []measure.Unit{measure.Millimetre, measure.Inch} {
		for _, paper := range []Paper{papers()[3], papers()[0]} {
			l := DefaultLayout(u, paper)
			l.Title, l.Remark = "Low table", "not to be built as it stands: 2 checks fail"
			out = append(out, l)
		}
	}
	return out
}

// wantInside checks that a written page keeps its margin: its lines with half
// their width, and its letters.
func wantInside(t *testing.T, what string, p readback.Page, margin float64) {
	t.Helper()
	clear := geometry.Box(0, 0, p.Width, p.Height).Offset(0.01 - margin)
	for _, s := range p.Strokes {
		if b := geometry.Bounds(s.Points...).Offset(s.Width / 2); !clear.Offset(0.2).Holds(b) {
			t.Errorf("%s: a line in %.2f is outside the margin", what, b)
		}
	}
	for _, x := range p.Texts {
		if !clear.Holds(x.Box) {
			t.Errorf("%s: %q in %.2f is outside the margin", what, x.String, x.Box)
		}
	}
}

// A whole pack as it is written keeps its margins, and its lettering is clear
// of every line and of other lettering.
func TestPackIsClear(t *testing.T) {
	for _, l := range everyday() {
		p, _ := layPack(t, l, 520, 450)
		doc := p.Document()
		file := readPDF(t, doc)
		for i, pg := range doc.Pages {
			what := fmt.Sprintf("%s in %v, sheet %d", l.Paper.Name, l.Unit, i+1)
			for _, text := range struck(pg) {
				t.Errorf("%s: %q is struck", what, text)
			}
			wantInside(t, what, file.Pages[i], l.Margin)
			if n := len(file.Pages[i].Texts); n < len(pg.Texts) {
				t.Errorf("%s: %d texts in the file, want %d", what, n, len(pg.Texts))
			}
		}
	}
}

// The cover holds pictures, sizes, the list of sheets and the calibration
// square on one sheet, whatever the size of the piece.
func TestCoverIsOneSheet(t *testing.T) {
	for _, l := range everyday() {
		for _, size := range [][2]float64{{350, 300}, {520, 450}, {600, 700}, {900, 400}, {1200, 740}} {
			p, sections := layPack(t, l, size[0], size[1])
			if n := len(p.sections[0].sheets); n != 1 {
				t.Errorf("%.0f × %.0f mm on %s: a cover of %d sheets", size[0], size[1], l.Paper.Name, n)
			}
			found := 0
			for _, b := range p.sheets[0].blocks {
				if b.view != nil {
					found++
				}
			}
			if found != len(sections[0].Pictures) {
				t.Errorf("%d pictures on the cover, want %d", found, len(sections[0].Pictures))
			}
		}
	}
}

// Pictures a step smaller make room for a long table of sizes, but not so small
// that they show nothing.
func TestSmallerPicturesSaveASheet(t *testing.T) {
	l := everyday()[0]
	for _, c := range []struct {
		wide   float64
		rows   int
		sheets int
		want   string
	}{{300, 0, 1, "scale 1:5"}, {300, 26, 1, "scale 1:10"}, {190, 60, 2, "scale 1:5"}} {
		cover := samplePack(c.wide, 200, l.Unit, l)[0]
		for range c.rows {
			cover.Panels[0].Table = append(cover.Panels[0].Table, []string{"figure", "100 mm"})
		}
		p := must(Lay(jobOf(cover), l))(t)
		pages := p.Document().Pages
		if len(pages) != c.sheets || !slices.ContainsFunc(pages, func(p page.Page) bool { return textOn(p, c.want) }) {
			t.Errorf("%.0f mm and %d more rows: %d sheets, want %d with pictures at %s", c.wide, c.rows, len(pages), c.sheets, c.want)
		}
	}
}

// The list of sheets on the cover is right: each job has the sheets that say
// so at their foot.
func TestListOfSheets(t *testing.T) {
	l := everyday()[0]
	for _, most := range []int{99, 400, MostSheets} {
		l.MaxSheets = most
		p, sections := layPack(t, l, 900, 450)
		doc := p.Document()
		want := map[string]string{}
		for _, job := range sections {
			var on []int
			for i, pg := range doc.Pages {
				if slices.ContainsFunc(pg.Texts, func(x page.Text) bool { return x.String == l.Title+": "+job.Heading }) {
					on = append(on, i+1)
				}
			}
			want[job.Heading] = run(on[0], on[len(on)-1])
			if len(on) != on[len(on)-1]-on[0]+1 {
				t.Errorf("%s stands on the sheets %d", job.Heading, on)
			}
		}
		for title, sheets := range want {
			if !sideBySide(doc.Pages[0], title, sheets) {
				t.Errorf("of at most %d: %s is not listed on sheets %s", most, title, sheets)
			}
		}
	}
	if p, _ := layPackOf(t, 1); textOn(p.Document().Pages[0], "Sheets") {
		t.Error("a pack of one job lists its sheets")
	}
}

// A section that holds nothing takes no sheet and no line in the list of them.
func TestEmptySection(t *testing.T) {
	section := func(heading string) templates.Section {
		return templates.Section{Heading: heading, Panels: []templates.Panel{{Heading: heading, Text: []string{"words"}}}}
	}
	job := templates.Job{Name: "job", Title: "job", Sections: []templates.Section{section("first"), {Heading: "nothing"}, section("last")}}
	p, err := Lay(job, everyday()[0])
	if err != nil || p.Count() != 2 {
		t.Fatalf("%d sheets, %v, want one for each of two sections", p.Count(), err)
	}
	if doc := p.Document(); textOn(doc.Pages[0], "nothing") || !sideBySide(doc.Pages[0], "last", "2") {
		t.Error("the list of sheets is not of the two sections")
	}
	if len(job.Sections) != 3 {
		t.Error("the job is changed")
	}
}

func layPackOf(t *testing.T, sections int) (Plan, []templates.Section) {
	l := everyday()[0]
	all := samplePack(520, 450, l.Unit, l)[:sections]
	p := must(Lay(templates.Job{Name: "pack", Sections: all}, l))(t)
	return p, all
}

func textOn(p page.Page, s string) bool {
	return slices.ContainsFunc(p.Texts, func(x page.Text) bool { return x.String == s })
}

// sideBySide reports whether two texts stand in one line.
func sideBySide(p page.Page, a, b string) bool {
	for _, x := range p.Texts {
		for _, y := range p.Texts {
			if x.String == a && y.String == b && x.At.Y == y.At.Y && x.At.X < y.At.X {
				return true
			}
		}
	}
	return false
}

// A pack has a bookmark for each job, over one for each of its sheets, also
// where only some sheets are drawn.
func TestBookmarksOfAPack(t *testing.T) {
	l := everyday()[0]
	for _, only := range [][]int{nil, {2, 4, 9}} {
		l.Only = only
		p, sections := layPack(t, l, 520, 450)
		marks := readPDF(t, p.Document()).Bookmarks
		pages := 0
		part := ""
		for _, m := range marks {
			if m.Level == 0 {
				part = m.Title
				continue
			}
			at := pages
			if only != nil {
				at = only[pages] - 1
			}
			if want := p.sheets[at].part; part != want || m.Page != pages || !strings.HasPrefix(m.Title, strconv.Itoa(at+1)+": ") {
				t.Errorf("bookmark %+v under %q, want sheet %d under %q", m, part, at+1, want)
			}
			pages++
		}
		if want := len(p.Document().Pages); pages != want || only == nil && len(marks) != pages+len(sections) {
			t.Errorf("%d bookmarks over %d sheets, want %d and %d over them", len(marks), pages, want, len(sections))
		}
	}
	one := must(Lay(jobOf(samplePack(520, 450, 0, l)[0]), DefaultLayout(0, papers()[3])))(t)
	for _, m := range readPDF(t, one.Document()).Bookmarks {
		if m.Level != 0 {
			t.Errorf("a single job has the bookmark %+v under another", m)
		}
	}
}

// A bookmark tells its sheet from others: by templates, pictures and lists.
func TestBookmarkNames(t *testing.T) {
	p, _ := layPack(t, everyday()[0], 520, 450)
	for i, want := range map[int][]string{
		0: {"1: ", "calibration square", "plan", "elevation of one side", "from above at a corner"},
		1: {"2: cut list"},
		2: {"3: settings, in working order"},
	} {
		for _, w := range want {
			if got := p.bookmark(i); !strings.Contains(got, w) || strings.Contains(got, "main sizes") {
				t.Errorf("bookmark %q, want %q in it", got, w)
			}
		}
	}
}

// The remark is on every sheet in a line of its own, at the foot and not over
// the bottom of what is laid.
func TestRemark(t *testing.T) {
	long := strings.Repeat("not to be built as it stands ", 8)
	for _, l := range everyday() {
		for _, remark := range []string{"", "not to be built", long} {
			l.Remark = remark
			p, _ := layPack(t, l, 520, 450)
			for i, pg := range p.Document().Pages {
				var foot []string
				for _, x := range pg.Texts {
					if x.Height == large && x.At.X == l.Margin && x.At.Y < l.Margin+l.footHeight() {
						foot = append(foot, x.String)
						if x.At.Y < l.Margin {
							t.Errorf("sheet %d: %q stands in the margin", i+1, x.String)
						}
					}
				}
				got := strings.Join(foot[1:], " ")
				if got != strings.TrimSpace(remark) {
					t.Fatalf("sheet %d says %q, want %q", i+1, got, remark)
				}
				if hit := struck(pg); remark == long && len(hit) > 0 {
					t.Errorf("sheet %d: %q is struck", i+1, hit)
				}
			}
		}
	}
}

// Words laid with the widest numbers keep their places when the numbers are
// known, whatever these are.
func TestNumbersFitTheirPlaces(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		most := rapid.SampledFrom([]int{9, 40, 400, MostSheets}).Draw(t, "most")
		d := []templates.Drawing{boxOutline(rapid.Float64Range(300, 1500).Draw(t, "w"), rapid.Float64Range(300, 900).Draw(t, "h"))}
		l := a4()
		l.Unit = measure.Unit(rapid.IntRange(0, 1).Draw(t, "unit"))
		p := must(Lay(templates.Job{Name: "job", Title: "job", Sections: []templates.Section{{Drawings: d}}}, l))(t)
		known := numbers{tiles: map[place]int{}}
		for at := range p.tileSheets() {
			known.tiles[at] = rapid.IntRange(1, most).Draw(t, "sheet")
		}
		laids := p.sections[0].laids
		wide, _ := checkPanel(laids, l.Unit, numbers{})
		now, _ := checkPanel(laids, l.Unit, known)
		for _, width := range []float64{50, 62, 91} {
			items := panelItems(wide, []float64{width}, geometry.Pt(187, 200))
			deferredPanel{func(numbers) templates.Panel { return now }, items, 200}.set(known)
			said := ""
			for i, it := range items {
				if it[0].panel.Size.X > it[0].size.X+1e-9 || it[0].panel.Size.Y > it[0].size.Y+1e-9 {
					t.Fatalf("block %d is %.6f, was %.6f", i, it[0].panel.Size, it[0].size)
				}
				if len(struck(page.Page{Texts: it[0].panel.Texts})) > 0 {
					t.Fatalf("block %d is struck", i)
				}
				for _, x := range it[0].panel.Texts {
					said += x.String + " "
				}
			}
			if text := strings.Join(strings.Fields(laids[0].retape(l.Unit, known)), " "); !strings.Contains(said, text) {
				t.Fatalf("%q is not said in %q", text, said)
			}
		}
	})
}

// Tables a little wider than half a sheet wrap, and stand side by side.
func TestWideTablesStandSideBySide(t *testing.T) {
	l := everyday()[0]
	var section templates.Section
	for range 2 {
		table := [][]string{{"stretcher shoulder, underside, from the sawn tip", "1 31/64 in (1.484)"}}
		for range 50 {
			table = append(table, []string{"slot", "1 in"})
		}
		section.Panels = append(section.Panels, templates.Panel{Heading: "Figures", Table: table})
	}
	p := must(Lay(jobOf(section), l))(t)
	if p.Count() != 2 { // the calibration square stands on the first
		t.Errorf("%d sheets for two columns, want 2", p.Count())
	}
}

// The same sheets come out whatever the job was allowed to take.
func TestLimitMovesNothing(t *testing.T) {
	l := everyday()[0]
	var want []Placement
	for _, most := range []int{40, 400, MostSheets} {
		l.MaxSheets = most
		p, _ := layPack(t, l, 900, 450)
		if want == nil {
			want = p.Placements()
		}
		if !slices.Equal(p.Placements(), want) {
			t.Errorf("of at most %d sheets the templates stand elsewhere", most)
		}
	}
}
