package readback

import (
	"fmt"
	"math"
	"strings"

	"github.com/klippa-app/go-pdfium"
	"github.com/klippa-app/go-pdfium/enums"
	"github.com/klippa-app/go-pdfium/references"
	"github.com/klippa-app/go-pdfium/requests"
	"github.com/klippa-app/go-pdfium/responses"
	"github.com/klippa-app/go-pdfium/structs"

	"rodsheet/geometry"
)

// PDF reads a whole file.
func PDF(data []byte) (File, error) {
	lib, err := start()
	if err != nil {
		return File{}, err
	}
	busy.Lock()
	defer busy.Unlock()
	doc, err := lib.OpenDocument(&requests.OpenDocument{File: &data})
	if err != nil {
		return File{}, fmt.Errorf("open: %w", err)
	}
	defer lib.FPDF_CloseDocument(&requests.FPDF_CloseDocument{Document: doc.Document})
	r := reader{lib: lib, doc: doc.Document}
	f := r.file()
	if r.err != nil {
		return File{}, r.err
	}
	return f, nil
}

// A reader remembers the first error and reads on; what it returned is then
// of no use.
type reader struct {
	lib  pdfium.Pdfium
	doc  references.FPDF_DOCUMENT
	page requests.Page
	text references.FPDF_TEXTPAGE
	err  error
}

// ask makes one call of the library. After an error it returns the zero
// answer.
func ask[Q, A any](r *reader, call func(*Q) (*A, error), q Q) A {
	var none A
	if r.err != nil {
		return none
	}
	a, err := call(&q)
	if err != nil {
		r.err = fmt.Errorf("%T: %w", q, err)
		return none
	}
	return *a
}

func (r *reader) file() File {
	f := File{Title: r.meta("Title"), Subject: r.meta("Subject"), Creator: r.meta("Creator")}
	f.PrintScaling = ask(r, r.lib.FPDF_VIEWERREF_GetPrintScaling,
		requests.FPDF_VIEWERREF_GetPrintScaling{Document: r.doc}).PreferPrintScaling
	f.Bookmarks = r.bookmarks(ask(r, r.lib.GetBookmarks, requests.GetBookmarks{Document: r.doc}).Bookmarks, 0)
	n := ask(r, r.lib.FPDF_GetPageCount, requests.FPDF_GetPageCount{Document: r.doc}).PageCount
	for i := range n {
		f.Pages = append(f.Pages, r.readPage(i))
	}
	return f
}

// bookmarks lists marks of one level, each before those under it.
func (r *reader) bookmarks(marks []responses.GetBookmarksBookmark, level int) []Bookmark {
	var out []Bookmark
	for _, b := range marks {
		mark := Bookmark{Title: b.Title, Level: level, Page: -1}
		if b.DestInfo != nil {
			mark.Page = b.DestInfo.PageIndex
			at := ask(r, r.lib.FPDFDest_GetLocationInPage, requests.FPDFDest_GetLocationInPage{Dest: b.DestInfo.Reference})
			if at.Y != nil {
				mark.Top = float64(*at.Y) * mmPerPoint
			}
		}
		out = append(out, mark)
		out = append(out, r.bookmarks(b.Children, level+1)...)
	}
	return out
}

func (r *reader) meta(tag string) string {
	return ask(r, r.lib.FPDF_GetMetaText, requests.FPDF_GetMetaText{Document: r.doc, Tag: tag}).Value
}

func (r *reader) readPage(i int) Page {
	loaded := ask(r, r.lib.FPDF_LoadPage, requests.FPDF_LoadPage{Document: r.doc, Index: i})
	if r.err != nil {
		return Page{}
	}
	defer r.lib.FPDF_ClosePage(&requests.FPDF_ClosePage{Page: loaded.Page})
	r.page = requests.Page{ByReference: &loaded.Page}
	r.text = ask(r, r.lib.FPDFText_LoadPage, requests.FPDFText_LoadPage{Page: r.page}).TextPage
	if r.err != nil {
		return Page{}
	}
	defer r.lib.FPDFText_ClosePage(&requests.FPDFText_ClosePage{TextPage: r.text})

	p := Page{
		Width:  float64(ask(r, r.lib.FPDF_GetPageWidthF, requests.FPDF_GetPageWidthF{Page: r.page}).PageWidth) * mmPerPoint,
		Height: float64(ask(r, r.lib.FPDF_GetPageHeightF, requests.FPDF_GetPageHeightF{Page: r.page}).PageHeight) * mmPerPoint,
	}
	toMM := geometry.Scale(mmPerPoint, mmPerPoint)
	n := ask(r, r.lib.FPDFPage_CountObjects, requests.FPDFPage_CountObjects{Page: r.page}).Count
	for k := range n {
		object := ask(r, r.lib.FPDFPage_GetObject, requests.FPDFPage_GetObject{Page: r.page, Index: k}).PageObject
		r.object(&p, object, toMM)
	}
	return p
}

// object adds one object to p. The matrix takes what the object's own matrix
// gives to mm on the page; the parts of a form know nothing of the form's.
func (r *reader) object(p *Page, o references.FPDF_PAGEOBJECT, toMM geometry.Affine) {
	own := affine(ask(r, r.lib.FPDFPageObj_GetMatrix, requests.FPDFPageObj_GetMatrix{PageObject: o}).Matrix)
	m := own.Then(toMM)
	switch ask(r, r.lib.FPDFPageObj_GetType, requests.FPDFPageObj_GetType{PageObject: o}).Type {
	case enums.FPDF_PAGEOBJ_PATH:
		r.painted(p, o, m)
	case enums.FPDF_PAGEOBJ_TEXT:
		p.Texts = append(p.Texts, r.string(o, m, toMM))
	case enums.FPDF_PAGEOBJ_FORM:
		n := ask(r, r.lib.FPDFFormObj_CountObjects, requests.FPDFFormObj_CountObjects{PageObject: o}).Count
		for k := range n {
			part := ask(r, r.lib.FPDFFormObj_GetObject, requests.FPDFFormObj_GetObject{PageObject: o, Index: uint64(k)})
			r.object(p, part.PageObject, m)
		}
	}
}

// painted adds a path object to p as what it is painted: strokes, areas, or both.
func (r *reader) painted(p *Page, o references.FPDF_PAGEOBJECT, m geometry.Affine) {
	mode := ask(r, r.lib.FPDFPath_GetDrawMode, requests.FPDFPath_GetDrawMode{PageObject: o})
	if mode.Stroke {
		p.Strokes = append(p.Strokes, r.path(o, m, r.pen(o, m))...)
	}
	if mode.FillMode == enums.FPDF_FILLMODE_NONE {
		return
	}
	c := ask(r, r.lib.FPDFPageObj_GetFillColor, requests.FPDFPageObj_GetFillColor{PageObject: o}).FillColor
	gray := float64(c.R) / 255
	if c.R != c.G || c.G != c.B {
		gray = -1
	}
	for _, s := range r.path(o, m, Stroke{}) {
		p.Areas = append(p.Areas, Area{gray, s.Points})
	}
}

// path returns the polylines of a path object.
func (r *reader) path(o references.FPDF_PAGEOBJECT, m geometry.Affine, pen Stroke) []Stroke {
	var out []Stroke
	n := ask(r, r.lib.FPDFPath_CountSegments, requests.FPDFPath_CountSegments{PageObject: o}).Count
	for i := range n {
		s := ask(r, r.lib.FPDFPath_GetPathSegment, requests.FPDFPath_GetPathSegment{PageObject: o, Index: i}).PathSegment
		at := ask(r, r.lib.FPDFPathSegment_GetPoint, requests.FPDFPathSegment_GetPoint{PathSegment: s})
		kind := ask(r, r.lib.FPDFPathSegment_GetType, requests.FPDFPathSegment_GetType{PathSegment: s}).Type
		closes := ask(r, r.lib.FPDFPathSegment_GetClose, requests.FPDFPathSegment_GetClose{PathSegment: s}).IsClose
		if r.err != nil {
			return nil
		}
		if kind == enums.FPDF_SEGMENT_MOVETO || len(out) == 0 {
			out = append(out, pen)
		}
		last := &out[len(out)-1]
		last.Points = append(last.Points, m.Apply(geometry.Pt(float64(at.X), float64(at.Y))))
		last.Curved = last.Curved || kind == enums.FPDF_SEGMENT_BEZIERTO
		if closes {
			last.close()
		}
	}
	return out
}

// pen returns a stroke without points. Widths and dashes are stretched like
// the path.
func (r *reader) pen(o references.FPDF_PAGEOBJECT, m geometry.Affine) Stroke {
	k := scale(m)
	pen := Stroke{
		Width: k * float64(ask(r, r.lib.FPDFPageObj_GetStrokeWidth, requests.FPDFPageObj_GetStrokeWidth{PageObject: o}).StrokeWidth),
		RoundEnds: ask(r, r.lib.FPDFPageObj_GetLineCap,
			requests.FPDFPageObj_GetLineCap{PageObject: o}).LineCap == enums.FPDF_LINECAP_ROUND,
		RoundCorners: ask(r, r.lib.FPDFPageObj_GetLineJoin,
			requests.FPDFPageObj_GetLineJoin{PageObject: o}).LineJoin == enums.FPDF_LINEJOIN_ROUND,
	}
	if ask(r, r.lib.FPDFPageObj_GetDashCount, requests.FPDFPageObj_GetDashCount{PageObject: o}).DashCount > 0 {
		for _, d := range ask(r, r.lib.FPDFPageObj_GetDashArray, requests.FPDFPageObj_GetDashArray{PageObject: o}).DashArray {
			pen.Dash = append(pen.Dash, k*float64(d))
		}
	}
	return pen
}

// string returns a text object. Its matrix is m; its box is given on the page
// already, in points.
func (r *reader) string(o references.FPDF_PAGEOBJECT, m, toMM geometry.Affine) Text {
	said := ask(r, r.lib.FPDFTextObj_GetText, requests.FPDFTextObj_GetText{PageObject: o, TextPage: r.text}).Text
	size := ask(r, r.lib.FPDFTextObj_GetFontSize, requests.FPDFTextObj_GetFontSize{PageObject: o}).FontSize
	t := Text{
		String: strings.TrimRight(said, "\x00"),
		At:     geometry.Pt(m.E, m.F),
		Size:   float64(size) * scale(m),
		Angle:  math.Atan2(m.B, m.A),
	}
	q := ask(r, r.lib.FPDFPageObj_GetRotatedBounds, requests.FPDFPageObj_GetRotatedBounds{PageObject: o}).QuadPoints
	for i, c := range [4][2]float32{{q.X1, q.Y1}, {q.X2, q.Y2}, {q.X3, q.Y3}, {q.X4, q.Y4}} {
		t.Ink[i] = toMM.Apply(geometry.Pt(float64(c[0]), float64(c[1])))
	}
	c := ask(r, r.lib.FPDFPageObj_GetFillColor, requests.FPDFPageObj_GetFillColor{PageObject: o}).FillColor
	t.Black = c.R == 0 && c.G == 0 && c.B == 0
	t.Box = geometry.Bounds(t.Ink[:]...)
	return t
}

func affine(m structs.FPDF_FS_MATRIX) geometry.Affine {
	return geometry.Affine{
		A: float64(m.A), B: float64(m.B), C: float64(m.C),
		D: float64(m.D), E: float64(m.E), F: float64(m.F),
	}
}
