package render

import (
	"fmt"
	"math"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"rodsheet/geometry"
	"rodsheet/geometry/joint"
	"rodsheet/geometry/measure"
	"rodsheet/render/accuracy"
	"rodsheet/templates"
)

// Sheets that are off by k steps along the seam have the k-th ticks in line,
// and only those; slanting ticks read the misfit along and the gap together.
func TestVernierReadsTheMisfit(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		v := vernier{
			at:       geometry.Pt(rapid.Float64Range(-500, 500).Draw(t, "x"), rapid.Float64Range(-500, 500).Draw(t, "y")),
			along:    geometry.Polar(1, rapid.Float64Range(0, fullTurn).Draw(t, "direction")),
			slanting: rapid.Bool().Draw(t, "slanting"),
		}
		unit := rapid.SampledFrom([]measure.Unit{measure.Millimetre, measure.Inch}).Draw(t, "unit")
		v.step = vernierStep(unit)
		told := map[measure.Unit]float64{measure.Millimetre: 0.2, measure.Inch: 25.4 / 128}[unit]
		k := rapid.IntRange(-vernierTicks, vernierTicks).Draw(t, "reading")
		gap := rapid.Float64Range(-1, 1).Draw(t, "gap")
		along := float64(k) * told
		if v.slanting {
			along -= gap
		}
		// The sheet under the trimmed one is moved: along the seam, and away.
		moved := v.along.Mul(along).Add(v.along.Perp().Mul(-gap))
		for i, p := range v.pairs() {
			a := p.trimmed
			b := geometry.Segment{A: p.under.A.Add(moved), B: p.under.B.Add(moved)}
			dir := a.B.Sub(a.A).Unit()
			off := math.Max(math.Abs(dir.Cross(b.A.Sub(a.A))), math.Abs(dir.Cross(b.B.Sub(a.A))))
			number := i - vernierTicks
			if number == k && off > 1e-9 {
				t.Fatalf("ticks %d are %.4f mm out of line, want in line", number, off)
			}
			if number != k && off < 0.14 {
				t.Fatalf("ticks %d are %.4f mm out of line; only ticks %d should be in line", number, off, k)
			}
		}
	})
}

// Both sheets of a seam show the same ticks at the same template coordinates.
func TestVerniersCoincide(t *testing.T) {
	p := layOne(t, a4(), boxOutline(800, 600))
	doc := p.Document()
	seen := map[[4]int64]int{}
	key := func(s []geometry.Point) [4]int64 {
		r := func(v float64) int64 { return int64(math.Round(v * 1e4)) }
		return [4]int64{r(s[0].X), r(s[0].Y), r(s[1].X), r(s[1].Y)}
	}
	for i, s := range p.sheets {
		for _, b := range s.blocks {
			if b.tile == nil {
				continue
			}
			for _, tick := range s.onTile(b, doc.Pages[i], vernierLine) {
				seen[key(tick)]++
			}
		}
	}
	laid := p.sections[0].laids[0]
	if want := len(laid.verniers) * 2 * (2*vernierTicks + 1); len(seen) != want || want == 0 {
		t.Errorf("%d ticks in all, want %d", len(seen), want)
	}
	if seams := len(laid.seams(nil)); len(laid.verniers) != 2*seams {
		t.Errorf("%d verniers on %d seams, want two on each", len(laid.verniers), seams)
	}
	for k, n := range seen {
		if n != 2 {
			t.Errorf("tick %v is on %d sheets, want 2", k, n)
		}
	}
}

// A trim line on a centre line would not be told from it.
func TestSeamKeepsOffACentreLine(t *testing.T) {
	d := boxOutline(300, 100)
	d.Line(templates.Centre, geometry.Pt(150, -6), geometry.Pt(150, 106))
	p := layOne(t, a4(), d)
	laid := p.sections[0].laids[0]
	if laid.rows*laid.cols != 2 {
		t.Fatalf("%d × %d tiles, want two", laid.rows, laid.cols)
	}
	for _, s := range laid.Strokes {
		if s.Role != templates.Centre {
			continue
		}
		on := laid.turn.ApplyAll(s.Points)
		for _, seam := range laid.seams(nil) {
			if off := seam.Distance(on[0].Lerp(on[1], 0.5)); off < seamClear-1e-9 {
				t.Errorf("a seam lies %.1f mm beside the centre line", off)
			}
		}
	}
}

// A seam names the sheet of its neighbour, and which tile it is where that has two.
func TestSeamNamesItsNeighbour(t *testing.T) {
	p := layOne(t, a4(), boxOutline(800, 600), boxOutline(640, 45))
	where := p.tileSheets()
	for at, sheet := range where {
		shared := 0
		for other := range where {
			if other.drawing == at.drawing && where[other] == sheet {
				shared++
			}
		}
		want := fmt.Sprintf("sheet %d", sheet)
		if shared > 1 {
			want = at.name() + ", " + want
		}
		if got := (numbers{tiles: where}).tile(at); got != want {
			t.Errorf("%q, want %q", got, want)
		}
	}
}

// Check lengths run between crosses that are drawn, along and across in whole
// steps, and the panel states them.
func TestCheckLengths(t *testing.T) {
	for _, d := range []templates.Drawing{
		boxOutline(800, 600), boxOutline(640, 45), roundOutline(1200), polygonOutline(5, 700),
		{Name: "slant", Strokes: []templates.Stroke{{Points: []geometry.Point{{}, {X: 900, Y: 700}}}}},
	} {
		for _, u := range []measure.Unit{measure.Millimetre, measure.Inch} {
			l := a4()
			l.Unit = u
			p := layOne(t, l, d)
			laid := p.sections[0].laids[0]
			if n := len(laid.crosses); n != 3 && n != 4 {
				t.Errorf("%s: %d crosses, want 3 or 4", d.Name, n)
				continue
			}
			a, b, c := laid.crosses[0].at, laid.crosses[1].at, laid.crosses[2].at
			along, across := b.Sub(a), c.Sub(a)
			if along.Y != 0 || math.Abs(across.X) > 1e-9 {
				t.Errorf("%s: A–B %v and A–C %v, want level and plumb", d.Name, along, across)
			}
			step := checkStep(u)
			for _, length := range []float64{along.Norm() / step, across.Norm() / step} {
				if length < 0.5 || math.Abs(length-math.Round(length)) > 1e-6 {
					t.Errorf("%s: a check length of %.6f steps, want whole ones", d.Name, length)
				}
			}
			panel, ok := checkPanel(laids(laid), u, numbers{tiles: p.tileSheets()})
			if text := panelText(panel); !ok || !strings.Contains(text, bothUnits(b.Distance(c), u)) || !strings.Contains(text, "retape") {
				t.Errorf("%s: the panel does not state the diagonal or what to do: %s", d.Name, text)
			}
			for _, x := range laid.crosses {
				if n := crossesDrawn(p, x.at); n < 1 {
					t.Errorf("%s: cross %s is drawn on no sheet", d.Name, x.name)
				}
			}
		}
	}
}

// Whichever corner sheet is taped off, a check length tells: each sheet at the
// end of a row or a column at the rim carries a cross or lies between two.
func TestCheckLengthsReachTheCorners(t *testing.T) {
	clipped := outline("clipped triangle", true, joint.Top{Corners: joint.RegularBySide(3, 900).Corners(), Clip: 60}.Outline()...)
	for _, d := range []templates.Drawing{boxOutline(800, 600), boxOutline(400, 250), clipped} {
		laid := layOne(t, a4(), d).sections[0].laids[0]
		rows, cols := map[int]bool{}, map[int]bool{}
		for _, x := range laid.crosses {
			row, col := laid.at(x.at)
			rows[row], cols[col] = true, true
		}
		if !rows[1] || !rows[laid.rows] || !cols[1] || !cols[laid.cols] {
			t.Errorf("%s: crosses on rows %v of %d and columns %v of %d", d.Name, rows, laid.rows, cols, laid.cols)
		}
		measured := map[string]int{}
		for _, l := range laid.lengths {
			for _, end := range l {
				measured[laid.crosses[end].name]++
			}
		}
		for _, x := range laid.crosses {
			if measured[x.name] < 2 {
				t.Errorf("%s: %s is an end of %d lengths, which do not fix it", d.Name, x.name, measured[x.name])
			}
		}
	}
	box := layOne(t, a4(), boxOutline(800, 600)).sections[0].laids[0].crosses
	if len(box) != 4 {
		t.Fatalf("%d crosses on a box, want 4", len(box))
	}
	if a, d := box[0].at, box[3].at; !(geometry.Rect{Min: a, Max: a}).Offset(1e-9).Contains(box[1].at.Add(box[2].at).Sub(d)) {
		t.Errorf("the crosses of a box stand at %v, want a rectangle", box)
	}
}

func laids(p ...*tiling) []*tiling { return p }

func panelText(p templates.Panel) string {
	var out []string
	for _, row := range p.Table {
		out = append(out, row...)
	}
	return strings.Join(append(out, p.Text...), "\n")
}

// crossesDrawn counts the level arms of a cross on all sheets.
func crossesDrawn(p Plan, at geometry.Point) int {
	n := 0
	doc := p.Document()
	for i, s := range p.sheets {
		for _, b := range s.blocks {
			if b.tile == nil || b.tile.Name == "calibration square" {
				continue
			}
			for _, arm := range s.onTile(b, doc.Pages[i], register) {
				mid := b.tile.turn.ApplyAll(arm)
				if len(arm) == 2 && mid[0].Lerp(mid[1], 0.5).Distance(at) < 1e-6 &&
					math.Abs(arm[0].Distance(arm[1])-2*markRadius) < 1e-6 {
					n++
				}
			}
		}
	}
	return n
}

// The seams of a template are as many as lie on the way through it, the shortest
// as long as the narrowest tile.
func TestTaping(t *testing.T) {
	p := layOne(t, a4(), boxOutline(640, 45)).sections[0].laids[0]
	if got, want := p.taping(), (accuracy.Taping{Seams: 2, Shortest: 45 + 2*room}); got != want {
		t.Errorf("a strip is taped as %+v, want %+v", got, want)
	}
	if got := layOne(t, a4(), boxOutline(60, 45)).sections[0].laids[0].taping(); got.Seams != 0 {
		t.Errorf("one sheet is taped as %+v", got)
	}
}

// A template that proves a printer is not judged by the model; one that must
// stand upright is.
func TestProofIsNotJudged(t *testing.T) {
	proof, upright := boxOutline(100, 60), boxOutline(100, 60)
	proof.Proof, upright.Upright = true, true
	p := layOne(t, a4(), proof, upright).sections[0].laids
	if p[0].trust.String() != "" || p[1].trust.String() == "" {
		t.Errorf("the proof is %q, the upright template %q", p[0].trust, p[1].trust)
	}
}

// Each template says once how true it is.
func TestAccuracyIsSaidOnce(t *testing.T) {
	doc := layOne(t, a4(), boxOutline(800, 600), boxOutline(60, 40)).Document()
	n := 0
	for _, p := range doc.Pages {
		for _, x := range p.Texts {
			if strings.HasPrefix(x.String, "good to ±") {
				n++
			}
		}
	}
	if n != 2 {
		t.Errorf("%d accuracy lines for two templates, want 2", n)
	}
}
