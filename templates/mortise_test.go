package templates

import (
	"math"
	"slices"
	"strings"
	"testing"

	"gonum.org/v1/gonum/spatial/r3"
	"pgregory.net/rapid"

	"rodsheet/geometry/joint"
	"rodsheet/geometry/lists"
	"rodsheet/geometry/measure"
)

func apronMortise() joint.Mortise {
	return joint.Mortise{Width: 22, Depth: 70, Leg: 40, LegWidth: 40, Long: 28, Inset: 9,
		Splay: measure.Radians(8), Rake: measure.Radians(5), UpperCut: 10, Haunch: joint.SquareHaunch}
}

// Folded round the rail, every line across it lies in the leg's face or runs
// parallel to it, at the end of tenon or haunch. The face is put up here by turning
// vectors: the leg lies in the outer side, and its face holds a level line that
// is square to the rail in plan.
func TestMortiseWrapRoundFoldsToTheLeg(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		m := apronMortise()
		m.LegWidth, m.Inset, m.FromHead = 200, 80, 100
		m.Splay = measure.Radians(rapid.Float64Range(0, 40).Draw(t, "splay"))
		m.Rake = measure.Radians(rapid.Float64Range(0, 40).Draw(t, "rake"))
		m.Haunch = joint.Haunch(rapid.IntRange(0, 2).Draw(t, "haunch"))
		if rapid.Bool().Draw(t, "through") {
			m.Long, m.Over = 0, 3
		}
		job := sound(t)(Mortise(m, Setting{Full: true}))
		// The frame of fold: x along the rail, y up its outer side, z to the reader.
		tip := func(v r3.Vec) r3.Vec { return r3.NewRotation(m.Rake, r3.Vec{X: 1}).Rotate(v) }
		up := tip(r3.Vec{Y: 1, X: math.Tan(m.Splay), Z: -math.Tan(m.Rake)})
		n := r3.Unit(r3.Cross(up, tip(r3.Vec{Z: 1})))
		if off := math.Abs(r3.Unit(up).Z); off > 1e-12 {
			t.Fatalf("leg %v off the outer side", off)
		}
		d := drawingNamed(t, job, "rail, left hand, wrap-round")
		along, planes := math.Abs(n.X), map[int]int{}
		heights := []float64{0, m.RoughLength() * along, m.Stub() * along}
		for _, s := range strokesOf(d, Cut) {
			for _, p := range s.Points {
				h := math.Abs(r3.Dot(fold(wrap{width: m.Depth, thickness: m.Width, back: true}, p), n))
				on := slices.IndexFunc(heights, func(want float64) bool { return math.Abs(h-want) < 1e-9 })
				if planes[on]++; on < 0 {
					t.Errorf("%+v: cut point %v stands %v off the leg", m, p, h)
				}
			}
		}
		// A shoulder of two points on each side, and two cheeks on either edge.
		if planes[0] < 12 {
			t.Errorf("%+v: %d points on the leg", m, planes[0])
		}
	})
}

// The outer side of the leg shows how the mortise leans, from the fold down, and that it
// is 1.5 mm deeper than the tenon goes in.
func TestMortiseStrip(t *testing.T) {
	m := apronMortise()
	m.Haunch, m.Rake, m.FromHead = joint.NoHaunch, 0, 20
	job := sound(t)(Mortise(m, Setting{Full: true}))
	d := drawingNamed(t, job, "leg, left hand, mortise strip")
	hole := strokesOf(d, Cut)[0].Points
	wall := strokesOf(d, Hidden)[0].Points
	// By hand: tan 8° = 0.140541, cos 8° = 0.990268; 20 + 10/cos = 30.0983, 60/cos =
	// 60.5897, 28·cos + 1.5 = 29.2275 deep and that by tan 8°, 4.1077, nearer the foot.
	for _, c := range []struct {
		name      string
		got, want float64
	}{
		{"upper end", hole[3].X, 30.0983},
		{"lower end", hole[0].X, 30.0983 + 60.5897},
		{"outer side", hole[0].Y, 9 + 22.0/3},
		{"depth", -wall[1].Y, 29.2275},
		{"bottom nearer the foot", wall[2].X - wall[3].X, 4.1077},
	} {
		if math.Abs(c.got-c.want) > 1e-4 {
			t.Errorf("%s: %v, want %v", c.name, c.got, c.want)
		}
	}
	wantMirror(t, d, drawingNamed(t, job, "leg, right hand, mortise strip"))
	wantMirror(t, drawingNamed(t, job, "rail, left hand, wrap-round"), drawingNamed(t, job, "rail, right hand, wrap-round"))
}

// One drawing serves both hands only where both are alike.
func TestMortiseHands(t *testing.T) {
	for _, c := range []struct {
		name   string
		change func(*joint.Mortise)
		want   int
	}{
		{"leaning both ways", func(*joint.Mortise) {}, 4},
		{"along the rail, in the middle of the leg", func(m *joint.Mortise) { m.Rake = 0 }, 2},
		{"along the rail, not in the middle", func(m *joint.Mortise) { m.Rake, m.Inset = 0, 3 }, 3},
	} {
		m := apronMortise()
		c.change(&m)
		job := sound(t)(Mortise(m, Setting{}))
		if got := len(job.Drawings()); got != c.want {
			t.Errorf("%s: %d drawings, want %d", c.name, got, c.want)
		}
	}
}

func TestMortiseWarnsOfThinWood(t *testing.T) {
	m := apronMortise()
	if job, err := Mortise(m, Setting{}); err != nil || len(job.Warnings) != 0 {
		t.Errorf("%q, %v", job.Warnings, err)
	}
	m.Long, m.Inset = 36, 1
	job, err := Mortise(m, Setting{})
	if err != nil || !strings.Contains(strings.Join(job.Warnings, "\n"), "wood behind the mortise: 2.85 mm; under 6 mm is little") {
		t.Errorf("%q, %v", job.Warnings, err)
	}
}

// The words follow the joint: haunch, through tenon, lean.
func TestMortiseWords(t *testing.T) {
	m := apronMortise()
	m.Haunch = joint.SlopingHaunch
	through := m
	through.Long, through.Haunch = 0, joint.NoHaunch
	for _, c := range []struct {
		m    joint.Mortise
		want []string
	}{
		// 28 and the haunch's 22/3 by cos 7.97° and cos 0.69° as by hand above, and 1.5 mm.
		{m, []string{"nothing at the top", "1.5 mm deeper than the tenon", "29.23 mm deep", "from 8.76 mm deep", "7.97° off square towards the foot", "and 0.69° off square towards the frame side"}},
		{through, []string{"trim it flush", "from both sides", "3 mm over length"}},
	} {
		job := sound(t)(Mortise(c.m, Setting{}))
		wantSaid(t, job, c.want...)
	}
}

// Everything that says how deep the mortise is says the same: bored, shown and listed. Where
// the wood behind is less than the clearance its half is left.
func TestMortiseDepthIsOneFigure(t *testing.T) {
	for long, want := range map[float64]string{28: "29.5 mm", 39: "39.5 mm"} {
		m := apronMortise()
		m.Splay, m.Rake, m.Long = 0, 0, long
		job := sound(t)(Mortise(m, Setting{}))
		wantSaid(t, job, "Bore out the waste "+want+" deep")
		wantFigure(t, job, "depth of the mortise, square to the leg", want)
		if got := labelTexts(drawingNamed(t, job, "leg, right hand, mortise strip")); !slices.Contains(got, want+" deep") {
			t.Errorf("no %s deep in %q", want, got)
		}
	}
}

// A bit in a mortise that leans goes deeper along it than square to the leg: by the pieces of
// 1 mm square to the leg that it drifts towards the foot and to the side. Without the lean
// the two are one, and no slant is spoken of.
func TestMarkOnTheBitIsAlongTheMortise(t *testing.T) {
	m := apronMortise()
	m.Splay, m.Rake, m.Clear = measure.Radians(20), measure.Radians(6), 1.5
	foot, out := m.Lean()
	want := measure.Length(m.Bored() * math.Hypot(1, math.Hypot(math.Tan(foot), math.Tan(out)))).Text(measure.Millimetre)
	wantSaid(t, sound(t)(Mortise(m, Setting{})), "along the slant", "stands "+want+" from its point")
	m.Splay, m.Rake = 0, 0
	if text := said(sound(t)(Mortise(m, Setting{}))); strings.Contains(text, "slant") {
		t.Error("a mortise square to the leg slants")
	}
}

// The title tells a turned leg from one that is not.
func TestMortiseTitleHasTheTurn(t *testing.T) {
	m := apronMortise()
	m.Turn = measure.Radians(10)
	if job := sound(t)(Mortise(m, Setting{})); !strings.Contains(job.Title, "turned 10° in plan") {
		t.Error(job.Title)
	}
}

// What is little wood is so in either unit, though the clearance goes by the unit; and the
// tenon keeps its own figure for programs.
func TestMortiseWarnsAlikeInBothUnits(t *testing.T) {
	for long := 30.0; long < 34; long += 0.05 {
		m := apronMortise()
		m.Splay, m.Rake, m.Long = 0, 0, long
		mm, in := sound(t)(Mortise(m, Setting{})), sound(t)(Mortise(m, Setting{Unit: measure.Inch}))
		if len(mm.Warnings) != len(in.Warnings) {
			t.Errorf("tenon %.2f: %q, %q", long, mm.Warnings, in.Warnings)
		}
		if got := valueOf(t, in, "tenon into the leg, square to it"); math.Abs(got-long) > 1e-9 {
			t.Errorf("a tenon of %.2f mm goes %.2f mm into the leg", long, got)
		}
	}
}

// Where the walls lean is said by the side that they lean to, in the table as in words.
func TestMortiseLeansToANamedSide(t *testing.T) {
	for turn, side := range map[float64]string{0: "frame side", 20: "outer side"} {
		m := apronMortise()
		m.Turn, m.LegWidth, m.FromHead = measure.Radians(turn), 80, 40
		_, out := m.Lean()
		if (out < 0) != (turn == 0) {
			t.Fatalf("turned %v° it leans %v to the outer side", turn, out)
		}
		job, lean := sound(t)(Mortise(m, Setting{})), angleText(math.Abs(out))
		wantFigure(t, job, "mortise off square, towards the "+side, lean)
		wantSaid(t, job, lean+" off square towards the "+side)
	}
}

// A mortise that is worked from both sides has figures on both. By hand, as above: 40·tan 8°
// nearer the foot at the back.
func TestMortiseOutlet(t *testing.T) {
	m := apronMortise()
	m.Rake, m.Haunch, m.Long, m.FromHead = 0, joint.NoHaunch, 0, 20
	job := sound(t)(Mortise(m, Setting{}))
	if got := valueOf(t, job, "back: head of leg to mortise, at its outer side"); math.Abs(got-30.0983-40*math.Tan(m.Splay)) > 1e-4 {
		t.Errorf("%v from the head", got)
	}
	got := labelTexts(drawingNamed(t, job, "leg, right hand, mortise strip"))
	for _, want := range []string{"30.1 mm from the head", "35.72 mm from the head"} {
		if !slices.Contains(got, want) {
			t.Errorf("no %s in %q", want, got)
		}
	}
	if n := lists.Count(got, func(s string) bool { return s == "16.33 mm from the outer side" }); n != 2 {
		t.Errorf("from the outer side %d times in %q", n, got)
	}
}
