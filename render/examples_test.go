package render

import (
	"os"
	"path/filepath"
	"testing"

	"rodsheet/geometry/measure"
	"rodsheet/templates"
	"rodsheet/templates/piece"
	"rodsheet/templates/piece/checks"
	"rodsheet/templates/piece/design"
	"rodsheet/templates/piece/drawings"
	"rodsheet/templates/piece/kind"
)

// exampleSizes returns the sizes of an example.
func exampleSizes(tb testing.TB, name string) []design.Design {
	tb.Helper()
	data := must(os.ReadFile(filepath.Join("..", "examples", name+".toml")))(tb)
	file := must(design.Read(data, nil))(tb)
	return file.Sizes
}

// solved works designs out in a unit.
func solved(tb testing.TB, sizes []design.Design, u measure.Unit) (pieces []piece.Piece) {
	tb.Helper()
	for _, d := range sizes {
		d.Unit = u
		p := must(piece.Solve(d))(tb)
		pieces = append(pieces, p)
	}
	return pieces
}

// examplePack returns an example for buying and bench, as it is printed.
func examplePack(tb testing.TB, name string, l Layout) templates.Job {
	tb.Helper()
	pieces := solved(tb, exampleSizes(tb, name), l.Unit)
	job := must(drawings.Pack(checks.Examine(pieces), kind.Options{}, templates.Setting{Unit: l.Unit, Clear: l.Clear()}))(tb)
	return job
}

// An example takes so many sheets of its paper at most, none of them for want of a
// place to put something.
func TestSheetsOfExamples(t *testing.T) {
	for _, c := range []struct {
		name  string
		unit  measure.Unit
		paper Paper
		most  int
	}{
		{"window-seat", measure.Millimetre, papers()[3], 20},
		{"hall-table", measure.Millimetre, papers()[3], 17},
		{"plant-stand", measure.Inch, papers()[0], 17},
	} {
		l := DefaultLayout(c.unit, c.paper)
		p := must(Lay(examplePack(t, c.name, l), l))(t)
		if got := p.Count(); got > c.most {
			t.Errorf("%s on %s: %d sheets, want %d at most", c.name, c.paper.Name, got, c.most)
		}
	}
}
