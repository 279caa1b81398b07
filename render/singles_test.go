package render

import (
	"testing"

	"rodsheet/geometry/joint"
	"rodsheet/geometry/measure"
	"rodsheet/templates"
)

// single is a template that makers print by itself.
type single func(templates.Setting) (templates.Job, error)

func angles(deg ...float64) single {
	rad := make([]float64, len(deg))
	for i, d := range deg {
		rad[i] = measure.Radians(d)
	}
	return func(s templates.Setting) (templates.Job, error) { return templates.Angles(rad, 0, s) }
}

// one is a template of figures.
func one[T any](draw func(T, templates.Setting) (templates.Job, error), figures T) single {
	return func(s templates.Setting) (templates.Job, error) { return draw(figures, s) }
}

// No single template takes more sheets than it must, with the calibration square:
// on both papers and in both units.
func TestSheetsOfSingles(t *testing.T) {
	lap := joint.Lap{Width: 28, Other: 28, Depth: 36, Angle: measure.Radians(60), Kerf: 3.2, At: 155}
	bridle := joint.Bridle{Width: 28, Depth: 36, Angle: measure.Radians(12), Leg: 38}
	for _, c := range []struct {
		name string
		most int
		make single
	}{
		{"angle 14.5°", 1, angles(14.5)},
		{"angle 5°", 1, angles(5)},
		{"angle 20°", 1, angles(20)},
		{"angle 45°", 1, angles(45)},
		{"angle 60°", 1, angles(60)},
		{"angle 85°", 1, angles(85)},
		{"three angles", 3, angles(14.5, 60, 9.46)},
		{"lap", 2, one(templates.Lap, lap)},
		{"bridle", 3, one(templates.Bridle, bridle)},
		{"square mortise", 2, one(templates.Mortise, joint.Mortise{Width: 22, Depth: 70, Leg: 40, LegWidth: 40, Inset: 9, Long: 28, Haunch: joint.SquareHaunch})},
		{"leaning mortise", 3, one(templates.Mortise, joint.Mortise{Width: 22, Depth: 70, Leg: 40, LegWidth: 40, Inset: 9, Long: 28, UpperCut: 10,
			Splay: measure.Radians(8), Rake: measure.Radians(5)})},
		{"dovetails", 2, one(templates.Dovetail, joint.Dovetail{Width: 120, TailBoard: 12, PinBoard: 20, Slope: 0.125, Tails: 4, Pin: 6, HalfPin: 6, Lap: 5,
			Angle: measure.Radians(90), BoardSlope: measure.Radians(90)})},
		{"taper", 3, one(templates.Taper, joint.Taper{Length: 640, Top: 45, Foot: 28, Start: 110})},
		{"round top", 1, one(templates.Top, joint.Top{Diameter: 600})},
		{"sightline", 3, func(s templates.Setting) (templates.Job, error) {
			return templates.Sightline(joint.Staked{Compound: joint.Compound{Rake: 0.21, Splay: 0.14}, Height: 430}, s)
		}},
		{"hopper", 2, func(s templates.Setting) (templates.Job, error) {
			return templates.Hopper(joint.Hopper{SlopingCorner: joint.HopperCorner(5, 1.3), Sides: 5}, s)
		}},
		{"segments", 2, func(s templates.Setting) (templates.Job, error) {
			return templates.Segments(joint.SegmentRing{Pieces: 12, Outer: 300, Inner: 240, Kerf: 3, Round: true}, s)
		}},
		{"staves", 2, func(s templates.Setting) (templates.Job, error) {
			return templates.Staves(joint.Staves{Pieces: 12, Top: 320, Bottom: 260, Height: 400, Thickness: 18}, s)
		}},
		{"rectangular top", 2, one(templates.Top, joint.Top{Corners: joint.RectangleTop(800, 600).Corners, Round: 40})},
		{"flat arc", 5, func(s templates.Setting) (templates.Job, error) {
			return templates.Arc(joint.CircularSegment{Chord: 900, Rise: 40}, s)
		}},
		{"oval top", 4, func(s templates.Setting) (templates.Job, error) {
			return templates.Oval(joint.Oval{Length: 900, Width: 600}, s)
		}},
		{"sharp top", 1, one(templates.Top, joint.RectangleTop(800, 600))},
		{"top of three sides", 2, one(templates.Top, joint.Top{Corners: joint.RegularBySide(3, 900).Corners(), Clip: 100})},
	} {
		for _, u := range []measure.Unit{measure.Millimetre, measure.Inch} {
			for _, paper := range []Paper{papers()[3], papers()[0]} {
				l := DefaultLayout(u, paper)
				job := must(c.make(templates.Setting{Unit: u, Clear: l.Clear()}))(t)
				plan := must(Lay(job, l))(t)
				if got := plan.Count(); got > c.most {
					t.Errorf("%s in %v on %s: %d sheets, want at most %d", c.name, u, paper.Name, got, c.most)
				}
			}
		}
	}
}

// Whatever the angle, the edge that a gauge lies on is 100 mm or 4 in long, beside the
// calibration square on one sheet.
func TestTriangleOfAnyAngleIsLongEnough(t *testing.T) {
	for deg := 5.0; deg <= 85; deg += 2.5 {
		for _, u := range []measure.Unit{measure.Millimetre, measure.Inch} {
			for _, paper := range []Paper{papers()[3], papers()[0]} {
				l := DefaultLayout(u, paper)
				job := must(angles(deg)(templates.Setting{Unit: u, Clear: l.Clear()}))(t)
				long := 0.0
				for _, f := range job.Figures {
					if f.ID == "angle.base" || f.ID == "angle.rise" {
						long = max(long, f.Value.Value)
					}
				}
				plan := must(Lay(job, l))(t)
				if least := u.Round(100, 4); long < least-1e-9 || plan.Count() > 1 {
					t.Errorf("%v° in %v on %s: %.1f mm long on %d sheets, want %.1f on one", deg, u, paper.Name, long, plan.Count(), least)
				}
			}
		}
	}
}
