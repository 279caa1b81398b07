package render

import (
	"fmt"
	"testing"

	"rodsheet/geometry"
	"rodsheet/geometry/measure"
	"rodsheet/templates"
	"rodsheet/templates/piece"
	"rodsheet/templates/piece/checks"
	"rodsheet/templates/piece/design"
	"rodsheet/templates/piece/drawings"
	"rodsheet/templates/piece/kind"
)

// The cover of a design of two sizes, on A4 of three, is one sheet, with every size, the
// contents and whose it is, and the same on every sheet, small.
func TestCoverOfAPiece(t *testing.T) {
	whose := design.Plan{Maker: "the workshop", Date: "2030-01-31", Revision: "B", Note: "for private use"}
	for _, name := range []string{"hall-table", "plant-stand", "window-seat"} {
		sizes := exampleSizes(t, name)
		for _, l := range everyday() {
			var pieces []piece.Piece
			most := 2
			if l.Paper.Name == "A4" {
				most = 3
			}
			for n := 1; n <= most; n++ {
				d := sizes[min(n, len(sizes))-1]
				d.Size, d.Plan = fmt.Sprint("no ", n), whose
				d.Legs.Height += float64(10 * n)
				pieces = append(pieces, solved(t, []design.Design{d}, l.Unit)...)
				cover(t, pieces, l)
			}
		}
	}
}

func cover(t *testing.T, pieces []piece.Piece, l Layout) {
	t.Helper()
	l.Imprint = drawings.Imprint(pieces[0].Design.Plan)
	job := must(drawings.Pack(checks.Examine(pieces), kind.Options{For: kind.Buying}, templates.Setting{Unit: l.Unit, Clear: l.Clear()}))(t)
	plan := must(Lay(job, l))(t)
	if n := len(plan.sections[0].sheets); n != 1 {
		t.Errorf("%d sizes on %s in %v: a cover of %d sheets", len(pieces), l.Paper.Name, l.Unit, n)
	}
	pages := plan.Document().Pages
	for i, p := range pages {
		if !textOn(p, "the workshop; 2030-01-31; revision B; for private use") {
			t.Errorf("sheet %d does not say whose it is", i+1)
		}
	}
	for _, want := range []string{"maker", "for private use", "Sheets", "Main sizes", "How to print", "Cautions"} {
		if !textOn(pages[0], want) {
			t.Errorf("no %q on the cover", want)
		}
	}
	const small = 45.0 // mm: less shows nothing
	for _, b := range plan.sheets[0].blocks {
		if b.view != nil && max(b.size.X, b.size.Y) < small {
			t.Errorf("a view of %v", b.size)
		}
	}
}

// Pictures of no scale are as large as a sheet allows, however little room is
// left in the corner that comes first.
func TestPicturesOfNoScaleAreLarge(t *testing.T) {
	round := templates.Drawing{}
	round.Line(templates.Outline, geometry.Arc(geometry.Point{}, 300, 0, 6)...)
	section := templates.Section{Pictures: []templates.Picture{{Heading: "view", Strokes: round.Strokes, NoScale: true}}}
	l := DefaultLayout(measure.Millimetre, papers()[3])
	plan, err := Lay(jobOf(section), l)
	if err != nil || len(plan.sheets) != 1 {
		t.Fatalf("%d sheets, %v", len(plan.sheets), err)
	}
	for _, b := range plan.sheets[0].blocks {
		if b.view != nil && b.size.X < 85 {
			t.Errorf("the picture is %.0f mm wide, want half the sheet", b.size.X)
		}
	}
}
