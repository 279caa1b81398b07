package templates

import (
	"math"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"rodsheet/geometry"
	"rodsheet/geometry/joint"
	"rodsheet/geometry/measure"
)

// Every label of a single template has an identity and its words, and what it says
// of a place is said there once.
func TestLabelsHaveIdentity(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		mm := func(name string, from, to float64) float64 { return rapid.Float64Range(from, to).Draw(t, name) }
		s := Setting{Unit: measure.Unit(rapid.IntRange(0, 1).Draw(t, "unit")), Clear: geometry.Pt(180, 260), Full: true}
		for _, made := range []func() (Job, error){
			func() (Job, error) {
				return Lap(joint.Lap{Width: mm("width", 20, 80), Other: mm("other", 20, 80), Depth: mm("depth", 20, 80),
					Angle: measure.Radians(mm("angle", 30, 150)), Kerf: 3, At: rapid.SampledFrom([]float64{0, 30, 400}).Draw(t, "at")}, s)
			},
			func() (Job, error) {
				return Taper(joint.Taper{Length: mm("length", 200, 900), Top: 45, Foot: mm("foot", 22, 40), Start: mm("start", 0, 100),
					Faces: joint.TaperFaces(rapid.IntRange(0, 3).Draw(t, "faces"))}, s)
			},
			func() (Job, error) {
				return Angles([]float64{measure.Radians(mm("triangle", 5, 85)), measure.Radians(106)}, 0, s)
			},
			func() (Job, error) {
				return Mortise(joint.Mortise{Width: mm("rail", 20, 40), Depth: 80, Leg: 45, LegWidth: 200, Inset: 60, UpperCut: 8, LowerCut: 5,
					Splay: measure.Radians(mm("splay", 0, 30)), Rake: measure.Radians(mm("rake", 0, 30)), FromHead: mm("from head", 40, 300),
					Haunch: joint.Haunch(rapid.IntRange(0, 2).Draw(t, "haunch")), Long: rapid.SampledFrom([]float64{0, 30}).Draw(t, "long")}, s)
			},
			func() (Job, error) {
				return Sightline(joint.Staked{Compound: joint.Compound{
					Rake: measure.Radians(mm("rake", 0, 40)), Splay: measure.Radians(mm("splay", 0, 40)),
				}}, s)
			},
			func() (Job, error) {
				return Hopper(joint.Hopper{SlopingCorner: joint.HopperCorner(5, measure.Radians(mm("slope", 5, 90))), Sides: 5}, s)
			},
			func() (Job, error) {
				return Segments(joint.SegmentRing{Pieces: 7, Outer: mm("outer", 250, 2000), Inner: 200, Kerf: 3, Round: true},
					Setting{Unit: s.Unit, Clear: s.Clear})
			},
			func() (Job, error) {
				return Staves(joint.Staves{Pieces: 9, Top: mm("wide", 250, 900), Bottom: 250, Height: 400, Thickness: 18}, s)
			},
			func() (Job, error) {
				return Dovetail(joint.Dovetail{Width: mm("board", 100, 300), TailBoard: 12, PinBoard: mm("pin board", 8, 20), Slope: 0.14,
					Tails: rapid.IntRange(1, 4).Draw(t, "tails"), Pin: 6, HalfPin: 16, Lap: rapid.SampledFrom([]float64{0, 3}).Draw(t, "lap"),
					Angle: 1.7, BoardSlope: rapid.SampledFrom([]float64{1.3, math.Pi / 2}).Draw(t, "board slope")}, s)
			},
			func() (Job, error) { return Scale(s) },
		} {
			if job, err := made(); err == nil {
				checkLabels(t, job.Drawings())
			}
		}
		checkLabels(t, []Drawing{Calibration(s.Unit)})
	})
}

func checkLabels(t *rapid.T, drawings []Drawing) {
	for _, d := range drawings {
		told := map[Label]bool{}
		for _, l := range d.Labels {
			if l.ID == "" || l.Text == "" || strings.Contains(l.Text, "%!") {
				t.Errorf("%s: label %q says %q", d.Name, l.ID, l.Text)
			}
			at := Label{ID: l.ID, On: l.On}
			if told[at] {
				t.Errorf("%s: label %q twice at %v", d.Name, l.ID, l.On)
			}
			told[at] = true
		}
	}
}
