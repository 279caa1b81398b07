package templates

import (
	"math"
	"testing"

	"rodsheet/geometry"
	"rodsheet/geometry/joint"
	"rodsheet/geometry/measure"
)

// someArcs are flat, bold, half a circle, and small.
func someArcs() []joint.CircularSegment {
	return []joint.CircularSegment{{Chord: 900, Rise: 40}, {Chord: 1210, Rise: 400}, {Chord: 700, Rise: 350}, {Chord: 60, Rise: 20}}
}

// The one line that is cut is the arc from end to end: every point of it, and the
// middle of every chord, at the radius from the centre within what a chord may leave
// it. What else is drawn lies inside, on a strip of its width.
func TestArcDrawsItsArc(t *testing.T) {
	for _, b := range someArcs() {
		for _, u := range []measure.Unit{measure.Millimetre, measure.Inch} {
			job := sound(t)(Arc(b, Setting{Unit: u, Clear: geometry.Pt(190, 270)}))
			d := job.Drawings()[0]
			cut := strokesOf(d, Cut)
			if len(cut) != 1 || cut[0].Points[0].Distance(geometry.Pt(-b.Chord/2, 0)) > 1e-6 {
				t.Fatalf("%+v: %d lines to cut", b, len(cut))
			}
			centre := geometry.Pt(0, b.Rise-b.Radius())
			for i, p := range cut[0].Points[1:] {
				for _, q := range []geometry.Point{p, p.Lerp(cut[0].Points[i], 0.5)} {
					if off := math.Abs(q.Distance(centre) - b.Radius()); off > geometry.Sagitta+1e-6 {
						t.Errorf("%+v: %v is %.6f off the arc", b, q, off)
					}
				}
			}
			for _, s := range d.Strokes {
				for _, p := range s.Points {
					if off := p.Distance(centre) - b.Radius(); p.Y >= 0 && off > 1e-6 || math.Abs(p.X) > b.Chord/2+1e-6 {
						t.Errorf("%+v: %v is outside the arc, %.6f from it", b, p, off)
					}
				}
			}
		}
	}
}

// The arc is struck again from the printed offsets alone, and every mark of the
// template bears the figures of the point that it starts from.
func TestArcIsStruckFromItsFigures(t *testing.T) {
	for _, b := range someArcs() {
		for _, u := range []measure.Unit{measure.Millimetre, measure.Inch} {
			job := sound(t)(Arc(b, Setting{Unit: u, Clear: geometry.Pt(190, 270)}))
			rows := job.Sections[0].Panels[1].Table[1:]
			for _, row := range rows {
				x, y := printedLength(t, row[0], u), printedLength(t, row[1], u)
				if off := math.Min(math.Abs(b.Height(x)-y), math.Abs(b.Across(y)-x)); off > 0.02 {
					t.Errorf("%+v: %v stands %.4f off the arc", b, row, off)
				}
			}
			d := job.Drawings()[0]
			left, right := map[string]int{}, map[string]int{}
			for _, l := range d.Labels {
				switch {
				case l.ID == "offset" && l.On.A.X < 0:
					left[l.Text]++
				case l.ID == "offset":
					right[l.Text]++
				}
			}
			for _, row := range rows[1 : len(rows)-1] {
				if text := row[0] + ": " + row[1]; left[text] != 1 || right[text] != 1 {
					t.Errorf("%+v: %s is marked %d times on the left, %d on the right", b, text, left[text], right[text])
				}
			}
		}
	}
}

// Half a circle has its centre on the chord, and nobody is sent below it.
func TestHalfACircleIsStruckFromItsChord(t *testing.T) {
	wantSaid(t, sound(t)(Arc(joint.CircularSegment{Chord: 60, Rise: 30}, Setting{Clear: a4})), "the middle of the chord, by a stick of 30 mm")
	wantSaid(t, sound(t)(Arc(joint.CircularSegment{Chord: 60, Rise: 10}, Setting{Clear: a4})), "40 mm below the chord")
}
