package render

import (
	"math"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"rodsheet/geometry"
	"rodsheet/geometry/measure"
	"rodsheet/render/lettering"
	"rodsheet/render/page"
	"rodsheet/templates"
)

// drawRandom returns a drawing of random open lines within 900 × 700 mm, with
// a label on each.
func drawRandom(t *rapid.T) templates.Drawing {
	w := rapid.Float64Range(1, 900).Draw(t, "width")
	h := rapid.Float64Range(1, 700).Draw(t, "height")
	d := templates.Drawing{Name: "random", Free: rapid.Bool().Draw(t, "free")}
	for range rapid.IntRange(1, 6).Draw(t, "lines") {
		n := rapid.IntRange(2, 5).Draw(t, "corners")
		var points []geometry.Point
		for range n {
			points = append(points, geometry.Pt(
				rapid.Float64Range(0, w).Draw(t, "x"), rapid.Float64Range(0, h).Draw(t, "y")))
		}
		d.Strokes = append(d.Strokes, templates.Stroke{Role: templates.Cut, Points: points})
		d.Labels = append(d.Labels, templates.Label{Text: "cut line", On: geometry.Segment{A: points[0], B: points[1]}})
	}
	return d
}

func drawLayout(t *rapid.T) Layout {
	named := papers()
	l := DefaultLayout(measure.Unit(rapid.IntRange(0, 1).Draw(t, "unit")), named[rapid.IntRange(0, len(named)-2).Draw(t, "paper")])
	if rapid.Bool().Draw(t, "own paper") {
		l.Paper = Paper{Name: "own", Width: rapid.Float64Range(200, 600).Draw(t, "w"), Height: rapid.Float64Range(200, 600).Draw(t, "h")}
	}
	l.Margin = rapid.Float64Range(0, 15).Draw(t, "margin")
	l.Overlap = rapid.OneOf(rapid.Just(leastOverlap), rapid.Float64Range(leastOverlap, 40)).Draw(t, "overlap")
	l.Plain = rapid.IntRange(0, 3).Draw(t, "plain") == 0
	return l
}

// onTile returns the strokes of one line of a page that lie in the window of
// a placed tile, in template millimetres.
func (s sheet) onTile(b placed, pg page.Page, line int) [][]geometry.Point {
	corner := s.corner(b)
	size := geometry.Pt(b.tile.window.Width(), b.tile.window.Height())
	window := geometry.Rect{Min: corner, Max: corner.Add(size)}.Offset(1e-6)
	back := b.tile.toPage(corner).Inverse()
	var out [][]geometry.Point
	for _, k := range pg.Strokes {
		if k.Line == line && window.Holds(geometry.Bounds(k.Points...)) {
			out = append(out, back.ApplyAll(k.Points))
		}
	}
	return out
}

// Sheets laid together by their tiles' places give back every stroke at any
// turn: what is on a sheet lies on a stroke, and every point of a stroke is on
// one sheet at least, and on as many as there are windows that hold it.
func TestSheetsGiveBackEveryStroke(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		d, l := drawRandom(t), drawLayout(t)
		plan := must(Lay(templates.Job{Name: "random", Title: "random", Sections: []templates.Section{{Drawings: []templates.Drawing{d}}}}, l))(t)
		doc := plan.Document()
		var found []geometry.Segment
		var tiles []*tile
		for i, sheet := range plan.sheets {
			for _, b := range sheet.blocks {
				if b.tile == nil || b.tile.Name != d.Name {
					continue
				}
				for _, run := range sheet.onTile(b, doc.Pages[i], int(templates.Cut)) {
					found = append(found, chain(run)...)
				}
				tiles = append(tiles, b.tile)
			}
		}
		var original []geometry.Segment
		for _, s := range d.Strokes {
			original = append(original, chain(s.Points)...)
		}
		for _, f := range found {
			if !liesOn(f, original) {
				t.Fatalf("a line that no template has: %v", f)
			}
		}
		for _, o := range original {
			for k := range 97 {
				at := o.A.Lerp(o.B, (float64(k)+0.5)/97)
				want, edge := holding(at, tiles)
				got := covering(at, found)
				if got < 1 && o.A != o.B { // what has no length is not drawn
					t.Fatalf("point %v of %v is on no sheet", at, o)
				}
				if !edge && got < want {
					t.Fatalf("point %v of %v is on %d sheets, want %d", at, o, got, want)
				}
				if !edge && got > want*len(original) {
					t.Fatalf("point %v of %v is doubled: %d times, want %d", at, o, got, want)
				}
			}
		}
		total := func(s []geometry.Segment) (sum float64) {
			for _, x := range s {
				sum += x.Length()
			}
			return sum
		}
		want := 0.0
		for _, x := range tiles {
			for _, o := range original {
				turned := geometry.Segment{A: x.turn.Apply(o.A), B: x.turn.Apply(o.B)}
				if c, ok := geometry.ClipSegment(turned, x.window); ok {
					want += c.Length()
				}
			}
		}
		if math.Abs(total(found)-want) > 1e-6*(1+want) {
			t.Fatalf("%.6f mm of line on the sheets, want %.6f", total(found), want)
		}
	})
}

func liesOn(s geometry.Segment, original []geometry.Segment) bool {
	for _, o := range original {
		if o.Distance(s.A) < 1e-6 && o.Distance(s.B) < 1e-6 {
			return true
		}
	}
	return false
}

// holding counts the windows that hold p; edge reports that one passes within
// a hair of it.
func holding(p geometry.Point, tiles []*tile) (n int, edge bool) {
	for _, t := range tiles {
		at := t.turn.Apply(p)
		if t.window.Contains(at) {
			n++
		}
		if t.window.Offset(1e-6).Contains(at) != t.window.Offset(-1e-6).Contains(at) {
			edge = true
		}
	}
	return n, edge
}

func covering(p geometry.Point, lines []geometry.Segment) (n int) {
	for _, l := range lines {
		if l.Distance(p) < 1e-6 {
			n++
		}
	}
	return n
}

// Every pair of neighbouring tiles shows at least two registration marks at
// the same template coordinates, and what tiles there are hang together.
func TestMarksOfASeamCoincide(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		d, l := drawRandom(t), drawLayout(t)
		plan := must(Lay(templates.Job{Name: "random", Title: "random", Sections: []templates.Section{{Drawings: []templates.Drawing{d}}}}, l))(t)
		doc := plan.Document()
		rings := map[place][]geometry.Point{}
		for i, sheet := range plan.sheets {
			for _, b := range sheet.blocks {
				if b.tile == nil || b.tile.rows*b.tile.cols == 1 {
					continue
				}
				at := place{row: b.tile.row, col: b.tile.col}
				for _, s := range sheet.onTile(b, doc.Pages[i], register) {
					if len(s) > 2 {
						rings[at] = append(rings[at], geometry.Bounds(s...).Centre())
					}
				}
				if rings[at] == nil {
					t.Fatalf("tile %v has no registration mark", at)
				}
			}
		}
		piece := map[place]place{} // the tile at the head of each one's piece
		var head func(p place) place
		head = func(p place) place {
			if q, ok := piece[p]; ok {
				return head(q)
			}
			return p
		}
		for at := range rings {
			for _, next := range []place{{row: at.row, col: at.col + 1}, {row: at.row + 1, col: at.col}} {
				if _, ok := rings[next]; !ok {
					continue
				}
				if n := shared(rings[at], rings[next]); n < 2 {
					t.Fatalf("tiles %v and %v share %d marks, want 2 or more", at, next, n)
				}
				if a, b := head(at), head(next); a != b {
					piece[a] = b
				}
			}
		}
		if n := len(rings) - len(piece); len(rings) > 0 && n != 1 {
			t.Fatalf("the sheets make %d pieces, want 1", n)
		}
	})
}

func shared(a, b []geometry.Point) (n int) {
	for _, p := range a {
		for _, q := range b {
			if p.Distance(q) < 1e-6 {
				n++
			}
		}
	}
	return n
}

// inked returns the box of everything on a page.
func inked(doc page.Document, pg page.Page) geometry.Rect {
	ink := geometry.Bounds(pg.Strokes[0].Points...)
	for _, s := range pg.Strokes {
		ink = ink.Union(geometry.Bounds(s.Points...).Offset(doc.Lines[s.Line].Width / 2))
	}
	for _, a := range pg.Areas {
		ink = ink.Union(geometry.Bounds(a.Points...))
	}
	for _, x := range pg.Texts {
		ink = ink.Union(geometry.Bounds(letters(x)...))
	}
	return ink
}

// letters returns the corners of the box round a text.
func letters(x page.Text) []geometry.Point {
	u := geometry.Polar(1, x.Angle)
	w, down := lettering.Width(x.String, x.Height), lettering.Descent(x.Height)
	low, high := x.At.Sub(u.Perp().Mul(down)), x.At.Add(u.Perp().Mul(x.Height))
	return []geometry.Point{low, low.Add(u.Mul(w)), high.Add(u.Mul(w)), high}
}

func TestNoInkOutsideTheMargins(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		d, l := drawRandom(t), drawLayout(t)
		plan, err := Lay(templates.Job{
			Name: "random", Title: rapid.StringMatching(`[a-z ]{0,120}`).Draw(t, "title"),
			Sections: []templates.Section{{
				Drawings: []templates.Drawing{d},
				Panels:   []templates.Panel{{Heading: "figures", Table: [][]string{{"one", "2 mm"}}, Text: []string{"words and words"}}},
			}},
		}, l)
		if err != nil {
			t.Fatal(err)
		}
		doc := plan.Document()
		for i, pg := range doc.Pages {
			printable := geometry.Box(0, 0, pg.Width, pg.Height).Offset(-l.Margin + 0.2)
			if ink := inked(doc, pg); !printable.Holds(ink) {
				t.Fatalf("sheet %d has ink in %v, outside %v", i+1, ink, printable)
			}
		}
	})
}

// What Clear offers one sheet holds: a drawing of exactly that size, upright
// or turned, is not cut.
func TestClearIsHeldByOneSheet(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		l := drawLayout(t)
		size := l.Clear()
		if rapid.Bool().Draw(t, "turned") {
			size.X, size.Y = size.Y, size.X
		}
		at := geometry.Pt(rapid.Float64Range(-500, 500).Draw(t, "x"), rapid.Float64Range(-500, 500).Draw(t, "y"))
		box := geometry.Rect{Min: at, Max: at.Add(size)}
		d := templates.Drawing{Name: "full", Strokes: []templates.Stroke{{Points: geometry.Closed(box.Corners())}}}
		plan := must(Lay(templates.Job{Name: "full", Title: "full", Sections: []templates.Section{{Drawings: []templates.Drawing{d}}}}, l))(t)
		tiles := 0
		for _, p := range plan.Placements() {
			if p.Template == d.Name {
				tiles++
			}
		}
		if tiles != 1 {
			t.Errorf("a drawing of %.3f × %.3f mm is cut into %d tiles", size.X, size.Y, tiles)
		}
	})
}

// The rule of the unit stands above the line and is named first, the other one below.
// Marks of 50 mm and of 1 in are the longest: 3 mm.
func TestTheRuleOfTheUnitComesFirst(t *testing.T) {
	for unit, want := range map[measure.Unit][2]string{measure.Millimetre: {"100 mm", "4 in"}, measure.Inch: {"4 in", "100 mm"}} {
		n := &pen{}
		n.rules(geometry.Translate(geometry.Point{}), unit)
		for i, side := range []float64{1, -1} {
			if got := n.page.Texts[i]; got.String != want[i] || got.At.Y*side < -small {
				t.Errorf("%s: rule %d is named %q at %v, want %q", unit, i+1, got.String, got.At, want[i])
			}
			var at []float64
			for _, s := range n.page.Strokes {
				if last := s.Points[len(s.Points)-1]; last.Y*side == 3 {
					at = append(at, last.X)
				}
			}
			pitch, marks := 50.0, 3
			if want[i] == "4 in" {
				pitch, marks = 25.4, 5
			}
			if len(at) != marks || math.Abs(at[1]-at[0]-pitch) > 1e-9 {
				t.Errorf("%s: the rule named %q has long marks at %v", unit, want[i], at)
			}
		}
	}
}

// Where inches are set a step of the vernier is a fraction of an inch, and said so.
func TestTheVernierIsReadInTheUnit(t *testing.T) {
	for unit, want := range map[measure.Unit]string{measure.Millimetre: "in line, 0.2 mm each", measure.Inch: "in line, 1/128 in each"} {
		if got := strings.Join(checkText(unit), " "); !strings.Contains(got, want) {
			t.Errorf("%s: %q is not in %q", unit, want, got)
		}
	}
}

func TestEverySheetHasItsRules(t *testing.T) {
	d := templates.Drawing{Name: "bar", Strokes: []templates.Stroke{{Points: []geometry.Point{{}, {X: 900, Y: 20}}}}}
	plan, err := Lay(templates.Job{Name: "bar", Title: "bar", Sections: []templates.Section{{Drawings: []templates.Drawing{d}}}},
		DefaultLayout(measure.Millimetre, papers()[3]))
	if err != nil {
		t.Fatal(err)
	}
	for i, pg := range plan.Document().Pages {
		level, plumb := 0, 0
		for _, s := range pg.Strokes {
			b := geometry.Bounds(s.Points...)
			if s.Line == rule && math.Abs(b.Width()-ruleLength) < 1e-9 {
				level++
			}
			if s.Line == rule && math.Abs(b.Height()-ruleLength) < 1e-9 {
				plumb++
			}
		}
		if level != 1 || plumb != 1 {
			t.Errorf("sheet %d has %d level and %d upright rules, want one of each", i+1, level, plumb)
		}
	}
}

// must returns what a call gives that has to succeed.
func must[T any](v T, err error) func(rapid.TB) T {
	return func(t rapid.TB) T {
		t.Helper()
		if err != nil {
			t.Fatal(err)
		}
		return v
	}
}
