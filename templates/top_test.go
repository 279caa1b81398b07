package templates

import (
	"math"
	"slices"
	"strconv"
	"strings"
	"testing"

	"rodsheet/geometry"
	"rodsheet/geometry/joint"
	"rodsheet/geometry/measure"
)

// The outline that is drawn encloses the area that is printed, and no line
// leaves its box, so that nothing but the top takes paper.
func TestTopDrawsItsFigures(t *testing.T) {
	rounded := joint.RectangleTop(800, 600)
	rounded.Round = 40
	clipped := joint.Top{Corners: joint.RegularBySide(5, 400).Corners(), Clip: 30}
	for name, top := range map[string]joint.Top{
		"round": {Diameter: 640}, "rounded": rounded, "clipped": clipped,
	} {
		job := sound(t)(Top(top, Setting{Unit: measure.Millimetre, Full: true}))
		d := job.Drawings()[0]
		outline := d.Strokes[0].Points
		if got, want := geometry.Area(outline)/top.Area(), 1.0; math.Abs(got-want) > 1e-5 {
			t.Errorf("%s: the outline has %.7f of the area", name, got)
		}
		if got, want := d.Bounds(), geometry.Bounds(outline...); !want.Offset(1e-9).Holds(got) {
			t.Errorf("%s: strokes reach to %v, the top to %v", name, got, want)
		}
		if !d.Free {
			t.Errorf("%s: the outline may not be turned", name)
		}
		for _, f := range job.Figures {
			if f.Name == "area" && f.Value != measure.Area(top.Area()) {
				t.Errorf("%s: area %v, want %.6f mm²", name, f.Value, top.Area())
			}
		}
	}
}

// Both centre lines cross in the centre when their ends are joined.
func TestTopCentreLines(t *testing.T) {
	job := sound(t)(Top(joint.Top{Corners: joint.RegularBySide(3, 900).Corners()}, Setting{Full: true}))
	count := 0
	for _, s := range job.Drawings()[0].Strokes {
		if s.Role != Centre {
			continue
		}
		count++
		a, b := s.Points[0], s.Points[1]
		if off := math.Abs(a.Cross(b.Sub(a).Unit())); off > 1e-9 {
			t.Errorf("a centre line misses the centre by %.9f mm", off)
		}
	}
	if count != 4 {
		t.Errorf("%d ends of centre lines, want 4", count)
	}
}

// straightTops are tops with straight edges of every kind, by name.
func straightTops() map[string]joint.Top {
	rounded, clipped := joint.RectangleTop(800, 600), joint.Top{Corners: joint.RegularBySide(5, 400).Corners(), Clip: 30}
	rounded.Round = 40
	free := joint.Top{Corners: []geometry.Point{geometry.Pt(-400, -210), geometry.Pt(390, -260), geometry.Pt(300, 250), geometry.Pt(-310.5, 240.25)}, Round: 25}
	return map[string]joint.Top{
		"rectangle": joint.RectangleTop(900, 450), "rounded": rounded, "clipped": clipped, "free": free,
		"triangle": {Corners: joint.RegularBySide(3, 914.4).Corners(), Clip: 100},
	}
}

// printedLength reads a length as it is printed, in millimetres: of an inch the
// decimals in brackets, where there are any.
func printedLength(t *testing.T, text string, u measure.Unit) float64 {
	t.Helper()
	text = strings.TrimSuffix(strings.TrimSuffix(text, " mm"), " in")
	if _, decimals, ok := strings.Cut(text, "("); ok {
		text = strings.TrimSuffix(decimals, ")")
	}
	text = strings.ReplaceAll(text, "−", "-")
	value := 0.0
	for _, part := range strings.Fields(text) { // "12 3/4"
		over, under, fraction := strings.Cut(part, "/")
		v, err := strconv.ParseFloat(over, 64)
		if err != nil {
			t.Fatalf("%q is no length: %v", text, err)
		}
		if fraction {
			d, err := strconv.ParseFloat(under, 64)
			if err != nil {
				t.Fatalf("%q is no length: %v", text, err)
			}
			v /= d
		}
		if value < 0 {
			v = -v
		}
		value += v
	}
	return u.Round(value, value)
}

// The outline is struck again from the printed figures alone: the corners from the
// centre lines, and once more from one side by the distances that prove them; the work
// on a corner from its size. No corner is off by more than 0.05 mm.
func TestTopIsStruckFromItsFigures(t *testing.T) {
	for name, top := range straightTops() {
		for _, u := range []measure.Unit{measure.Millimetre, measure.Inch} {
			rows := TopCornerTable(top, u).Table[1:]
			again := joint.Top{Clip: top.Clip, Round: top.Round}
			for i, row := range rows {
				if row[0] != strconv.Itoa(i+1) {
					t.Fatalf("%s: row %d is of corner %s", name, i+1, row[0])
				}
				again.Corners = append(again.Corners, geometry.Pt(printedLength(t, row[1], u), printedLength(t, row[2], u)))
			}
			struck, want := again.Outline(), top.Outline()
			for i, c := range want {
				if off := struck[i].Distance(c); off > 0.05 {
					t.Errorf("%s in %v: point %d is struck %.3f mm off", name, u, i+1, off)
				}
			}
			for i, row := range rows {
				next := top.Corners[(i+1)%len(rows)]
				if off := printedLength(t, row[3], u) - top.Corners[i].Distance(next); math.Abs(off) > 0.05 {
					t.Errorf("%s in %v: side %d is %.3f mm off", name, u, i+1, off)
				}
				if off := printedLength(t, row[4], u) - top.Corners[i].Distance(top.Corners[0]); math.Abs(off) > 0.05 {
					t.Errorf("%s in %v: corner %d is %.3f mm off from corner 1", name, u, i+1, off)
				}
			}
		}
	}
}

// Each corner that differs has one drawing, which is the outline there, with 100 mm of
// both its edges beyond what is worked, or 90 mm where the sheet offers no more.
func TestTopCornersAreOfTheOutline(t *testing.T) {
	for name, want := range map[string]int{"rectangle": 0, "rounded": 1, "clipped": 1, "free": 4, "triangle": 1} {
		top := straightTops()[name]
		drawings := TopCorners(top, geometry.Point{}, Setting{Clear: geometry.Pt(170, 227)})
		if len(drawings) != want {
			t.Errorf("%s: %d drawings, want %d", name, len(drawings), want)
		}
		outline := geometry.Closed(top.Outline())
		for k, d := range drawings {
			line := d.Strokes[0].Points
			at := top.Corners[k]
			for _, p := range line {
				if off := fromOutline(p.Add(at), outline); off > 1e-6 {
					t.Errorf("%s, %s: %v is %.6f mm off the outline", name, d.Name, p, off)
				}
			}
			least := 100.0
			if name == "triangle" {
				least = 90
			}
			if d.Strokes[0].Role != Cut || line[0].Distance(line[1]) < least-1e-9 || line[len(line)-1].Distance(line[len(line)-2]) < least-1e-9 {
				t.Errorf("%s, %s: edges of %.1f and %.1f mm", name, d.Name, line[0].Distance(line[1]), line[len(line)-1].Distance(line[len(line)-2]))
			}
		}
	}
}

// fromOutline returns how far a point is from a closed line.
func fromOutline(p geometry.Point, closed []geometry.Point) float64 {
	least := math.Inf(1)
	for i := range len(closed) - 1 {
		a, way := closed[i], closed[i+1].Sub(closed[i])
		along := math.Max(0, math.Min(1, p.Sub(a).Dot(way)/way.Dot(way)))
		least = math.Min(least, p.Distance(a.Add(way.Mul(along))))
	}
	return least
}

// A size overall is named as one, and how its corners are worked; the side that was asked
// for has a row of its own. By hand: a triangle of side 700 clipped 40 is 700 − 2·40/2
// long and 700·√3/2 − 40·√3/2 high; a hexagon of side 300 is 600 across its corners.
func TestTopNamesItsSizes(t *testing.T) {
	triangle := joint.Top{Corners: joint.RegularBySide(3, 700).Corners(), Clip: 40}
	hexagon := joint.Top{Corners: joint.RegularBySide(6, 300).Corners()}
	for _, full := range []bool{false, true} {
		job := sound(t)(Top(triangle, Setting{Full: full}))
		wantFigure(t, job, "length overall, as clipped", "660 mm")
		wantFigure(t, job, "width overall, as clipped", "571.58 mm")
		wantFigure(t, job, "side, to the sharp corners", "700 mm")
		wantSaid(t, job, "the size overall, as clipped, the side to the sharp corners and what is clipped off")
		if want := "Top, 660 mm × 571.58 mm overall, as clipped"; job.Title != want {
			t.Errorf("title %q, want %q", job.Title, want)
		}
		job = sound(t)(Top(hexagon, Setting{Full: full}))
		wantFigure(t, job, "length overall", "600 mm")
		wantFigure(t, job, "side, to the sharp corners", "300 mm")
		job = sound(t)(Top(joint.Top{Corners: joint.RegularBySide(4, 300).Corners()}, Setting{Full: full}))
		if slices.ContainsFunc(job.Figures, func(f Figure) bool { return f.ID == "top.side" }) {
			t.Error("a square says its size a third time as its side")
		}
	}
}

// Words speak of a sheet of a corner only where there is one.
func TestTopSpeaksOfSheetsThatItHas(t *testing.T) {
	for name, want := range map[string]string{
		"rectangle": "2. Prove each corner by a square.", "rounded": "2. Lay the sheet of a corner", "free": "2. Lay the sheet of a corner",
	} {
		wantSaid(t, sound(t)(Top(straightTops()[name], Setting{Clear: a4})), want)
	}
	wantSaid(t, sound(t)(Top(joint.Top{Corners: joint.RegularBySide(6, 300).Corners()}, Setting{Clear: a4})), "2. Prove each corner by its sheet")
}

// Whether a template lies on one sheet or on several is said by the sheets: no sentence of
// its own speaks of taping it.
func TestCurvesDoNotSpeakOfTaping(t *testing.T) {
	full := Setting{Clear: a4, Full: true}
	for _, job := range []Job{
		sound(t)(Arc(joint.CircularSegment{Chord: 120, Rise: 60}, full)),
		sound(t)(Oval(joint.Oval{Length: 200, Width: 60}, full)),
		sound(t)(Top(joint.Top{Diameter: 120}, full)),
	} {
		for _, p := range job.Sections[0].Panels {
			if words := strings.Join(p.Text, "\n"); strings.Contains(words, "tape") || strings.Contains(words, "check length") {
				t.Errorf("%s: %s", job.Title, words)
			}
		}
	}
}
