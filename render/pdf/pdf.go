// Package pdf writes a page.Document as a PDF file at true size.
//
// Every page has the size the document gives it and nothing on it is scaled.
// Coordinates are written to a ten-thousandth of a point (0.04 µm). The same
// document gives the same bytes.
package pdf

import (
	"bytes"
	"fmt"
	"io"
	"sync"
	"time"

	"github.com/jung-kurt/gofpdf"

	"rodsheet/geometry/lists"
	"rodsheet/render/lettering"
	"rodsheet/render/page"
)

// perMM is points to the millimetre: a point is 1/72 in, an inch 25.4 mm.
const perMM = 72 / 25.4

// The side of a PDF page lies between 3 and 14400 points (ISO 32000-1,
// Annex C, from memory).
const (
	shortest = 3 / perMM
	longest  = 14400 / perMM
)

const family = "lettering"

// Write writes doc. When doc cannot be written the error names the page and
// nothing has reached w.
func Write(w io.Writer, doc page.Document) error {
	if err := check(doc); err != nil {
		return fmt.Errorf("pdf: %w", err)
	}
	file, err := compose(doc)
	if err != nil {
		return fmt.Errorf("pdf: %w", err)
	}
	_, err = w.Write(file)
	return err
}

// compose lets gofpdf write the frame of the file, and puts the content of the
// pages into it.
func compose(doc page.Document) ([]byte, error) {
	var b bytes.Buffer
	var err error
	contents := make([][]byte, len(doc.Pages))
	lists.Each(1+len(contents), func(i int) {
		if i == 0 {
			err = frame(doc).Output(&b)
			return
		}
		contents[i-1] = content(doc.Lines, doc.Pages[i-1])
	})
	if err != nil {
		return nil, err
	}
	packers := sync.Pool{New: func() any { return newPacker() }}
	return rewrite(b.Bytes(), func(n int, object []byte) ([]byte, error) {
		// The content of page i, counted from 1, is object 2i + 2.
		if i := n/2 - 2; n%2 == 0 && i >= 0 && i < len(contents) {
			p := packers.Get().(*packer)
			defer packers.Put(p)
			return p.object(n, object, contents[i])
		}
		return withPreferences(n, object), nil
	})
}

func check(doc page.Document) error {
	if err := doc.Check(); err != nil {
		return err
	}
	for i, p := range doc.Pages {
		if min(p.Width, p.Height) < shortest || max(p.Width, p.Height) > longest {
			return fmt.Errorf("page %d %q: size %.1f × %.1f mm; a PDF page has sides of %.1f to %.1f mm",
				i+1, p.Name, p.Width, p.Height, shortest, longest)
		}
	}
	return nil
}

// frame is a file with all pages, their bookmarks and the font, but with
// nothing drawn on the pages. The date is fixed so that the bytes depend on
// nothing but doc.
func frame(doc page.Document) *gofpdf.Fpdf {
	f := gofpdf.NewCustom(&gofpdf.InitType{OrientationStr: "P", UnitStr: "mm", Size: sheet(doc.Pages[0])})
	epoch := time.Date(2000, 1, 1, 0, 0, 0, 0, time.UTC)
	f.SetCreationDate(epoch)
	f.SetModificationDate(epoch)
	f.SetCatalogSort(true)
	f.SetCompression(false) // of the pages; the font is compressed nevertheless
	f.SetMargins(0, 0, 0)
	f.SetAutoPageBreak(false, 0)
	f.SetTitle(lettering.Clean(doc.Title), true)
	f.SetSubject(lettering.Clean(doc.Subject), true)
	f.SetCreator("rodsheet", true)
	// The library pads tables in place, and files are written side by side: each
	// has a face of its own. The race detector tells, where commands run in parallel.
	f.AddUTF8FontFromBytes(family, "", bytes.Clone(lettering.TTF()))
	f.SetFont(family, "", 1)

	last := doc.Pages[len(doc.Pages)-1]
	level := 0
	for _, p := range doc.Pages {
		f.AddPageFormat("P", sheet(p))
		// gofpdf counts the place of a bookmark down from the top of the last
		// page, whatever page it is on.
		top := last.Height - p.Height
		if p.Part != "" {
			f.Bookmark(lettering.Clean(p.Part), 0, top)
			level = 1
		}
		f.Bookmark(lettering.Clean(p.Name), level, top)
	}
	// The font that is embedded holds the letters set by Text.
	f.Text(0, 0, letters(doc))
	return f
}

// letters returns every letter that is set in doc, once.
func letters(doc page.Document) string {
	seen := map[rune]bool{}
	var out []rune
	for _, p := range doc.Pages {
		for _, t := range p.Texts {
			for _, r := range t.String {
				if !seen[r] {
					seen[r] = true
					out = append(out, r)
				}
			}
		}
	}
	return lettering.Clean(string(out))
}

func sheet(p page.Page) gofpdf.SizeType { return gofpdf.SizeType{Wd: p.Width, Ht: p.Height} }
