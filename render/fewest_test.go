package render

import (
	"fmt"
	"math"
	"reflect"
	"slices"
	"testing"

	"pgregory.net/rapid"

	"rodsheet/geometry"
	"rodsheet/geometry/measure"
	"rodsheet/templates"
	"rodsheet/templates/wording"
)

// outline returns a drawing of one closed outline.
func outline(name string, free bool, corners ...geometry.Point) templates.Drawing {
	return templates.Drawing{Name: name, Free: free,
		Strokes: []templates.Stroke{{Points: geometry.Closed(corners)}}}
}

func boxOutline(w, h float64) templates.Drawing {
	return outline(fmt.Sprintf("%.0f × %.0f", w, h), false, geometry.Box(0, 0, w, h).Corners()...)
}

func polygonOutline(n int, across float64) templates.Drawing {
	var corners []geometry.Point
	for i := range n {
		corners = append(corners, geometry.Polar(across/2, fullTurn*float64(i)/float64(n)))
	}
	return outline(fmt.Sprintf("%d corners, %.0f", n, across), true, corners...)
}

func roundOutline(across float64) templates.Drawing {
	return templates.Drawing{Name: fmt.Sprintf("round, %.0f", across), Free: true,
		Strokes: []templates.Stroke{{Points: geometry.Arc(geometry.Point{}, across/2, 0, fullTurn)}}}
}

func a4() Layout { return DefaultLayout(measure.Millimetre, papers()[3]) }

func layOne(t testing.TB, l Layout, drawings ...templates.Drawing) Plan {
	t.Helper()
	p := must(Lay(templates.Job{Name: "job", Title: "job", Sections: []templates.Section{{Drawings: drawings}}}, l))(t)
	return p
}

// bruteTiles tries every shift of full windows in steps of 1 mm, on upright
// sheets and turned ones, as drawn and turned by a quarter, with up to one row
// and one column more than need be and no slivers, and returns the least number of tiles.
func bruteTiles(d templates.Drawing, l Layout) int {
	best := math.MaxInt
	for _, s := range []orientation{{0, false}, {math.Pi / 2, false}, {0, true}, {math.Pi / 2, true}} {
		size := l.of(s.turned).clear()
		p := lay(d, s, size, l.Overlap)
		x, y := p.axes(size)
		all := func(a axis) (out [][]float64) {
			for n := a.least(); n <= a.least()+1; n++ {
				if n == 1 {
					return append(out, a.equal(1))
				}
				for shift := 0.0; shift <= a.slack(n); shift++ {
					if v := a.shifted(n, shift/a.slack(n)); v != nil {
						out = append(out, v)
					}
				}
			}
			return out
		}
		ys, ink := all(y), p.ink(true)
		for _, xs := range all(x) {
			for _, v := range ys {
				if len(xs)+len(v)-3 >= best {
					continue
				}
				kept := touched(inColumns(ink, xs), negated(v))
				join(kept, len(xs)-1)
				best = min(best, number(kept))
			}
		}
	}
	return best
}

func TestFewestTilesAgainstBruteForce(t *testing.T) {
	for _, d := range []templates.Drawing{
		boxOutline(300, 20), boxOutline(300, 220), boxOutline(500, 400), boxOutline(800, 600), boxOutline(640, 45),
		outline("triangle", false, geometry.Pt(0, 0), geometry.Pt(600, 0), geometry.Pt(0, 350)),
		outline("wedge", false, geometry.Pt(0, 0), geometry.Pt(520, 0), geometry.Pt(520, 60), geometry.Pt(0, 320)),
		{Name: "slant", Strokes: []templates.Stroke{{Points: []geometry.Point{{}, {X: 500, Y: 430}}}}},
		{Name: "apart", Strokes: []templates.Stroke{
			{Points: []geometry.Point{{}, {X: 50, Y: 20}}}, {Points: []geometry.Point{{X: 600, Y: 400}, {X: 650, Y: 500}}}}},
		{Name: "round", Strokes: []templates.Stroke{{Points: geometry.Arc(geometry.Point{}, 220, 0, fullTurn)}}},
	} {
		l := a4()
		c := cutter{d, l.Overlap, [2]geometry.Point{l.clear(), l.onSide().clear()}}
		if got, want := number(c.survey().lay(strategy{}).kept), bruteTiles(d, l); got != want {
			t.Errorf("%s: %d tiles, brute force finds %d", d.Name, got, want)
		}
	}
}

func TestTopOnTwelveSheets(t *testing.T) {
	if n := layOne(t, a4(), boxOutline(800, 600)).Count(); n > 12 {
		t.Errorf("a top of 800 × 600 mm takes %d sheets of A4, want 12 at most", n)
	}
}

// The search never does worse than the plain grid, nor better than the bounds.
func TestBetweenBoundAndPlainGrid(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		d, l := drawRandom(t), drawLayout(t)
		job := templates.Job{Name: "random", Title: "random", Sections: []templates.Section{{Drawings: []templates.Drawing{d}}}}
		l.Plain = false
		p := must(Lay(job, l))(t)
		l.Plain = true
		plain := must(Lay(job, l))(t)
		if p.Count() > plain.Count() {
			t.Fatalf("%d sheets, the plain grid takes %d", p.Count(), plain.Count())
		}
		b := p.Bound()
		if b.Sheets < b.Least {
			t.Fatalf("%d sheets, below the bound of %d", b.Sheets, b.Least)
		}
		for _, x := range b.Tiles {
			if x.Tiles < x.Least {
				t.Fatalf("%d tiles, below the bound of %d", x.Tiles, x.Least)
			}
		}
	})
}

// The bound is told by more than one reason: points apart, and reach.
func TestBoundsMet(t *testing.T) {
	for _, c := range []struct {
		d    templates.Drawing
		want string
	}{
		{boxOutline(800, 600), "12 tiles, the fewest by extent"},
		{boxOutline(640, 45), "3 tiles, the fewest by extent"},
	} {
		b := layOne(t, a4(), c.d).Bound()
		if got := counted(b.Tiles[0].Tiles, b.Tiles[0].Least, oneTile, manyTiles, byExtent); got != c.want {
			t.Errorf("%s: %s, want %s", c.d.Name, got, c.want)
		}
	}
	for _, c := range []struct {
		bound Bound
		want  string
	}{
		{Bound{13, 11, []TileBound{{"top", 12, 10}}},
			"13 sheets, no fewer than 11 by what a sheet holds of these tiles; top: 12 tiles, no fewer than 10 by extent"},
		{Bound{2, 2, nil}, "2 sheets, the fewest by what a sheet holds"},
	} {
		if got := c.bound.String(); got != c.want {
			t.Errorf("got %q, want %q", got, c.want)
		}
	}
}

// Blocks stay on their sheet and keep a gap from one another, whichever way
// the sheet stands.
func TestBlocksKeepApart(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		l := drawLayout(t)
		var drawings []templates.Drawing
		for range rapid.IntRange(1, 12).Draw(t, "drawings") {
			drawings = append(drawings, drawRandom(t))
		}
		p := must(Lay(templates.Job{Name: "pack", Title: "pack", Sections: []templates.Section{{Drawings: drawings}}}, l))(t)
		for i, s := range p.sheets {
			var boxes []geometry.Rect
			clear := s.layout.clear()
			for _, b := range s.blocks {
				box := geometry.Rect{Min: b.at, Max: b.at.Add(b.size)}
				if !geometry.Box(0, 0, clear.X, clear.Y).Offset(1e-6).Holds(box) {
					t.Fatalf("sheet %d: block %v leaves the clear part %v", i+1, box, clear)
				}
				for _, o := range boxes {
					if o.Offset(gap/2 - 1e-6).Overlaps(box.Offset(gap/2 - 1e-6)) {
						t.Fatalf("sheet %d: blocks %v and %v touch", i+1, o, box)
					}
				}
				boxes = append(boxes, box)
			}
		}
	})
}

// mindful finds seams that do no more harm than any brute force finds among
// the same places.
func TestSeamsKeepFromCornersAndJoints(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		a := axis{lo: 0, hi: rapid.Float64Range(300, 560).Draw(t, "extent"), most: 200, overlap: 15}
		for range rapid.IntRange(0, 8).Draw(t, "corners") {
			a.corners = append(a.corners, rapid.Float64Range(0, a.hi).Draw(t, "corner"))
		}
		slices.Sort(a.corners)
		if rapid.Bool().Draw(t, "joint") {
			from := rapid.Float64Range(0, a.hi-60).Draw(t, "from")
			a.joints = [][2]float64{{from, from + 60}}
		}
		n := a.least()
		got := a.bestSeams(n)
		for i := 1; i <= n; i++ {
			half := 0.0
			if i > 1 {
				half += a.overlap / 2
			}
			if i < n {
				half += a.overlap / 2
			}
			if w := got[i] - got[i-1] + half; w > a.most+1e-6 || w <= a.overlap {
				t.Fatalf("part %d of %v has a window of %.3f mm", i, got, w)
			}
		}
		if n > 3 {
			return
		}
		best := math.MaxInt
		full := a.most - a.overlap
		short := math.Min(shortPart, full/2)
		span := a.slack(n)
		step := math.Max(1, span/60)
		try := func(i, k int) float64 { return a.lo + float64(i)*full + a.overlap/2 - span + float64(k)*step }
		first := func(x float64) bool { return x >= short && x <= a.most-a.overlap/2+1e-9 }
		last := func(x float64) bool { return a.hi-x >= short && a.hi-x <= a.most-a.overlap/2+1e-9 }
		for k := range int(span/step) + 1 {
			x := try(1, k)
			if !first(x) {
				continue
			}
			if n == 2 && last(x) {
				best = min(best, a.harm(x))
			}
			for j := 0; n == 3 && j < int(span/step)+1; j++ {
				if y := try(2, j); last(y) && y-x >= short && y-x <= full+1e-9 {
					best = min(best, a.harm(x)+a.harm(y))
				}
			}
		}
		if h := a.harms(got); h > best && best < math.MaxInt {
			t.Fatalf("seams %v do harm %d, brute force finds %d", got, h, best)
		}
	})
}

// A seam keeps out of a lap in the middle of a bar, though equal tiles would
// cut it there.
func TestNoSeamThroughAJoint(t *testing.T) {
	d := boxOutline(450, 40)
	d.Strokes = append(d.Strokes, templates.Stroke{Points: geometry.Closed(geometry.Box(210, 0, 240, 40).Corners())})
	p := layOne(t, a4(), d)
	laid := p.sections[0].laids[0]
	if number(laid.kept) != 2 {
		t.Fatalf("%d tiles, want 2", number(laid.kept))
	}
	for _, b := range [][]float64{laid.xs, laid.ys} {
		for _, s := range b[1 : len(b)-1] {
			if at := math.Abs(s); at > 195 && at < 255 {
				t.Errorf("a seam at %.1f mm, within 15 mm of the lap from 210 to 240", at)
			}
		}
	}
}

// The sheets asked for come out as they do among all, and nothing else does.
func TestOnlyDrawsTheSameSheets(t *testing.T) {
	all := layOne(t, a4(), boxOutline(800, 600))
	l := a4()
	l.Only = []int{3, 5, 6}
	some := layOne(t, l, boxOutline(800, 600))
	want, got := all.Document(), some.Document()
	if len(got.Pages) != len(l.Only) || some.Count() != all.Count() {
		t.Fatalf("%d pages of %d, want 3 of %d", len(got.Pages), some.Count(), all.Count())
	}
	for i, n := range l.Only {
		if !reflect.DeepEqual(got.Pages[i], want.Pages[n-1]) {
			t.Errorf("sheet %d differs when printed alone", n)
		}
	}
	for _, p := range some.Placements() {
		if p.Sheet != 3 && p.Sheet != 5 && p.Sheet != 6 {
			t.Errorf("a placement on sheet %d, which is not drawn", p.Sheet)
		}
	}
	for _, c := range []struct {
		only int
		want string
	}{
		{0, "sheet 0 must be at least 1"},
		{99, fmt.Sprintf("sheet 99 must be at most the last sheet, %d", all.Count())},
	} {
		l.Only = []int{2, c.only}
		_, err := Lay(templates.Job{Name: "job", Title: "job", Sections: []templates.Section{{Drawings: []templates.Drawing{boxOutline(800, 600)}}}}, l)
		if line, _ := wording.Fault(err, l.Unit); line != c.want {
			t.Errorf("only %d: got %v, want %s", c.only, err, c.want)
		}
	}
}

// Strokes far apart are still taped up as one piece.
func TestStrokesApartHangTogether(t *testing.T) {
	d := templates.Drawing{Name: "apart", Strokes: []templates.Stroke{
		{Points: []geometry.Point{{}, {X: 50, Y: 20}}},
		{Points: []geometry.Point{{X: 900, Y: 700}, {X: 930, Y: 760}}},
		{Points: []geometry.Point{{X: 900, Y: 0}, {X: 930, Y: 60}}},
	}}
	p := layOne(t, a4(), d).sections[0].laids[0]
	if got, want := number(pieceOf(p.kept, p.cols)), number(p.kept); got != want || want == p.rows*p.cols {
		t.Errorf("%d of %d tiles hang together, of %d in the grid; want all that are kept, and fewer than the grid",
			got, want, p.rows*p.cols)
	}
}

// A drawing that stands upright is neither turned nor on a sheet on its side.
func TestUprightStaysUpright(t *testing.T) {
	tall := boxOutline(100, 200)
	tall.Upright, tall.Name = true, "tall"
	flat := outline("tall", false, geometry.Box(0, 0, 240, 100).Corners()...)
	flat.Upright = true // on two tiles, though turned it would take one
	p := layOne(t, a4(), tall, flat, boxOutline(150, 40), boxOutline(262, 160), boxOutline(262, 150))
	for _, s := range p.sheets {
		for _, b := range s.blocks {
			if b.tile != nil && b.tile.Name == "tall" && (b.tile.turn != geometry.Identity() || s.layout.Paper.Width > s.layout.Paper.Height) {
				t.Error("an upright drawing is turned")
			}
		}
	}
}

// A strip as long as so many tiles just hold is cut into just so many, and the
// bound allows it: ink a little outside its core keeps no tile.
func TestBoundAllowsWhatJustFits(t *testing.T) {
	cut := func(w float64) TileBound { return layOne(t, a4(), boxOutline(w, 60)).Bound().Tiles[0] }
	for _, tiles := range []int{2, 3} {
		fits, not := 300.0, 1200.0
		for not-fits > 1e-3 {
			if mid := (fits + not) / 2; cut(mid).Tiles <= tiles {
				fits = mid
			} else {
				not = mid
			}
		}
		if b := cut(fits); b.Tiles != tiles || b.Least > tiles {
			t.Errorf("%.3f mm: %d tiles, want %d; the bound is %d", fits, b.Tiles, tiles, b.Least)
		}
	}
}

// Packs of small templates take so many sheets at most; filled item by item in
// the best of simple orders they took 6, 14 and 26.
func TestSheetsOfPacks(t *testing.T) {
	for _, c := range []struct{ templates, sheets int }{{20, 6}, {50, 13}, {100, 26}} {
		if got := layOne(t, a4(), smallDrawings(c.templates)...).Count(); got > c.sheets {
			t.Errorf("%d templates take %d sheets, want %d", c.templates, got, c.sheets)
		}
	}
}
