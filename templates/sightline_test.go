package templates

import (
	"math"
	"slices"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"rodsheet/geometry"
	"rodsheet/geometry/joint"
	"rodsheet/geometry/measure"
)

func staked(rake, splay float64) joint.Staked {
	return joint.Staked{Compound: joint.Compound{Rake: measure.Radians(rake), Splay: measure.Radians(splay)}}
}

// Machinery's Handbook, 31st ed., p. 122, Fig. 4: A = 47°14′ and B = 38°10′ make
// R = 36°0.9′ and C = 53°12′, to 0.2′.
func TestSightlineFigures(t *testing.T) {
	leg := staked(47+14./60, 38+10./60)
	leg.Height = 300
	job := sound(t)(Sightline(leg, Setting{Clear: a4}))
	for name, want := range map[string]float64{
		"sightline from the fore-and-aft line": 36 + 0.9/60, "sightline to the edge": 54 - 0.9/60,
		"resultant": 53.2, "bevel on the slab": 36.8,
	} {
		if got := measure.Degrees(valueOf(t, job, name)); math.Abs(got-want) > 0.2/60 {
			t.Errorf("%s %.4f, want %.4f", name, got, want)
		}
	}
	out := valueOf(t, job, "foot out, along the sightline")
	if got := math.Hypot(valueOf(t, job, "foot out, rake"), valueOf(t, job, "foot out, splay")); math.Abs(got-out) > 1e-9 {
		t.Errorf("foot %.9f out, %.9f by rake and splay", out, got)
	}
	if got := math.Hypot(out, 300); math.Abs(got-valueOf(t, job, "length along the leg")) > 1e-9 {
		t.Errorf("length %.9f", got)
	}
}

// What is drawn is the figures: the line goes through the centre of the hole, at the
// angle said, to the foot's side; the left hand is the mirror image.
func TestSightlineSheets(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		lean := rapid.Float64Range(1, 40)
		leg := staked(lean.Draw(t, "rake"), lean.Draw(t, "splay"))
		leg.In = rapid.Float64Range(10, 200).Draw(t, "in")
		job := sound(t)(Sightline(leg, Setting{Clear: a4}))
		sheets := slices.DeleteFunc(job.Drawings(), func(d Drawing) bool { return d.View.Part != "slab" })
		if len(sheets) != 2 || !mirrored(sheets[0], sheets[1]) || sheets[0].View.Hand != RightHand {
			t.Fatalf("%d sheets, not a pair", len(sheets))
		}
		line := linesOf(sheets[0], Cut)[0]
		way := line[1].Sub(line[0])
		if mid := line[0].Lerp(line[1], 0.5); mid.Distance(geometry.Pt(0, leg.In)) > 1e-9 {
			t.Errorf("the line is about %v", mid)
		}
		if got, want := way.X/-way.Y, math.Tan(leg.Splay)/math.Tan(leg.Rake); math.Abs(got-want) > 1e-9*want {
			t.Errorf("the foot goes %.9f aside for 1 ahead, want %.9f", got, want)
		}
	})
}

// A leg that leans one way has no hand.
func TestSightlineOfOneLean(t *testing.T) {
	for _, leg := range []joint.Staked{staked(12, 0), staked(0, 12)} {
		job := sound(t)(Sightline(leg, Setting{Clear: a4}))
		if d := job.Drawings(); len(d) != 2 || d[0].View.Hand != EitherHand || !strings.Contains(d[1].Name, "bevel 78°") {
			t.Errorf("%v: %d drawings, %+v", leg, len(d), d[0].View)
		}
		// The legs of a pair that leans along the edge go two ways: no arrow.
		if arrow := slices.Contains(labelTexts(job.Drawings()[0]), "the foot leans this way"); arrow != (leg.Splay == 0) {
			t.Errorf("%v: arrow %v", leg, arrow)
		}
	}
}
