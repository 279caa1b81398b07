package templates

import (
	"math"
	"testing"

	"rodsheet/geometry"
	"rodsheet/geometry/joint"
	"rodsheet/geometry/measure"
)

// someOvals are of both kinds, with a line inside and without, and small.
func someOvals() []joint.Oval {
	return []joint.Oval{
		{Length: 900, Width: 600},
		{Length: 1200, Width: 500, Inset: 12},
		{Length: 900, Width: 600, EndRadius: joint.CompassEndRadius(900, 600)},
		{Length: 900, Width: 300, EndRadius: 60, Inset: 25},
		{Length: 90, Width: 60},
	}
}

// The line that is cut holds the printed area, all round or in a quarter of it, and
// nothing is drawn outside it.
func TestOvalDrawsItsFigures(t *testing.T) {
	for _, o := range someOvals() {
		for _, full := range []bool{false, true} {
			job := sound(t)(Oval(o, Setting{Full: full}))
			d := job.Drawings()[0]
			cut := strokesOf(d, Cut)
			if len(cut) != 1 {
				t.Fatalf("%+v: %d lines to cut", o, len(cut))
			}
			area := geometry.Area(cut[0].Points)
			if !full {
				area = 4 * geometry.Area(append([]geometry.Point{{}}, cut[0].Points...))
			}
			if math.Abs(area/o.Area()-1) > 1e-4 {
				t.Errorf("%+v, full %v: the outline has %.7f of the area", o, full, area/o.Area())
			}
			for _, s := range d.Strokes {
				for _, p := range s.Points {
					if math.Abs(p.X) > o.Length/2+1e-9 || math.Abs(p.Y) > o.Height(math.Abs(p.X))+2*geometry.Sagitta && math.Abs(p.X) > o.Across(math.Abs(p.Y))+2*geometry.Sagitta {
						t.Errorf("%+v, full %v: %v lies outside the rim", o, full, p)
					}
				}
			}
		}
	}
}

// The rim is struck again from printed figures alone: each offset stands on it, four
// arcs by their centres and radii reach the ends of both axes and the joins, and the
// string round both foci reaches all four ends.
func TestOvalIsStruckFromItsFigures(t *testing.T) {
	const fine = 0.06 // mm: up to four figures to 0.001 in add up
	for _, o := range someOvals() {
		for _, u := range []measure.Unit{measure.Millimetre, measure.Inch} {
			job := sound(t)(Oval(o, Setting{Unit: u}))
			printed := map[measure.ID]float64{}
			for _, f := range job.Figures {
				if f.ID != "oval.area" && f.ID != "oval.inset-area" && f.ID != "oval.join-angle" {
					printed[f.ID] = printedLength(t, f.Value.Text(u), u)
				}
			}
			near := func(what string, got, want float64) {
				if math.Abs(got-want) > fine {
					t.Errorf("%+v, %v: %s %.4f, want %.4f", o, u, what, got, want)
				}
			}
			for _, row := range job.Sections[0].Panels[1].Table[1:] {
				x, y := printedLength(t, row[0], u), printedLength(t, row[1], u)
				near("offset "+row[0], math.Min(math.Abs(o.Height(x)-y), math.Abs(o.Across(y)-x)), 0)
			}
			a, b := o.Length/2, o.Width/2
			if o.Ellipse() {
				focus := geometry.Pt(printed["oval.focus"], 0)
				for _, p := range []geometry.Point{geometry.Pt(a, 0), geometry.Pt(0, b)} {
					near("string", p.Distance(focus)+p.Distance(focus.Mul(-1))+2*focus.X, printed["oval.string"])
				}
				continue
			}
			end, side := geometry.Pt(printed["oval.end-centre"], 0), geometry.Pt(0, -printed["oval.side-centre"])
			join := geometry.Pt(printed["oval.join-along"], printed["oval.join-across"])
			near("end arc at the long axis", geometry.Pt(a, 0).Distance(end), printed["oval.end-radius"])
			near("side arc at the short axis", geometry.Pt(0, b).Distance(side), printed["oval.side-radius"])
			near("end arc at the join", join.Distance(end), printed["oval.end-radius"])
			near("side arc at the join", join.Distance(side), printed["oval.side-radius"])
		}
	}
}

// What one sheet holds is drawn whole, either way round; what it does not is a quarter.
func TestOvalOnOneSheet(t *testing.T) {
	for length, want := range map[float64]measure.ID{260: "outline", 280: "quarter"} {
		for _, clear := range []geometry.Point{geometry.Pt(190, 270), geometry.Pt(270, 190)} {
			job, err := Oval(joint.Oval{Length: length, Width: 180}, Setting{Clear: clear})
			if err != nil || job.Drawings()[0].View.Face != want {
				t.Errorf("%v long on %v: %+v, %v, want %s", length, clear, job.Drawings(), err, want)
			}
		}
	}
}
