package checks

import (
	"math"
	"reflect"
	"slices"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"rodsheet/geometry/joint"
	"rodsheet/geometry/measure"
	"rodsheet/templates/piece"
	"rodsheet/templates/piece/design"
	"rodsheet/templates/piece/internal/piecetest"
	"rodsheet/templates/piece/kind"
)

// The mistake that makers make at first: the head reaches into the lap. The
// check fails by the figure that the solids give and passes after each of its
// mends, a step short of which it still fails.
func TestHeadInTheLapAndItsMends(t *testing.T) {
	d := piecetest.Low()
	d.Legs.At = piecetest.Worked(t, d).Frame.LeastAt(-6.75)
	p := piecetest.Worked(t, d)
	c := graded(t, d, "leg-head", kind.Fail)
	if got := overlapOf(p); math.Abs(got-6.75) > 1e-9 || math.Abs(c.Value.Value+got) > 1e-9 {
		t.Errorf("overlap %.9f by the solids, check %.9f, want 6.75", got, c.Value.Value)
	}
	// By hand: 40 − 6.75·cos 16° = 33.5115 is 33.5 below. The legs stand at
	// 217.7208 − 3 − 6.75 = 207.9708 and have to stand at 214.7208: 214.8 above.
	const want = "legs.mid-to-leg 214.8 mm, legs.breadth 33.5 mm"
	if advice(c) != want {
		t.Errorf("advice %q, want %q", advice(c), want)
	}
	if len(c.Fixes) != 2 {
		t.Fatalf("%d mends", len(c.Fixes))
	}
	for _, m := range c.Fixes {
		mended := piecetest.Worked(t, m.Design)
		if !buildable(checksOf(mended)) || overlapOf(mended) > 0 {
			t.Errorf("%+v: still clashes by %.6f", m.Turn, overlapOf(mended))
		}
	}
	short := c.Fixes[1].Design
	short.Legs.Breadth += 0.1
	graded(t, short, "leg-head", kind.Fail)
	short = c.Fixes[0].Design
	short.Legs.At -= 0.1
	graded(t, short, "leg-head", kind.Fail)
}

// Where the neighbour passes over, the leg's section at the top is all that
// counts: less splay, or a leg milled too broad brought back, clears it.
func TestOtherMendsOfTheHead(t *testing.T) {
	d := piecetest.Low()
	d.Legs.At = piecetest.Worked(t, d).Frame.LeastAt(-0.5)
	// By hand: 40/cos 16° − 0.5 = 41.112 holds 40/cos α up to α = 13.36°.
	if c := graded(t, d, "leg-head", kind.Fail); !strings.HasSuffix(advice(c), "legs.splay 13.3°") {
		t.Errorf("advice %q", advice(c))
	}
	d = piecetest.Low()
	d.Legs.Clear, d.Milled.Breadth = 0, 41
	if c := graded(t, d, "leg-head", kind.Fail); !strings.Contains(advice(c), "milled.breadth 40 mm") {
		t.Errorf("milled too broad: advice %q", advice(c))
	}
}

// No mend is offered that is dearer than the one after it.
func TestCheapestMendFirst(t *testing.T) {
	d := piecetest.Low()
	d.Legs.At = piecetest.Worked(t, d).Frame.LeastAt(-2)
	d.Ring.LegEndOver = true // the neighbour passes under: a larger splay clears it
	p := piecetest.Worked(t, d)
	c := find(t, checksOf(p), "leg-head")
	if c.Grade == kind.Fail {
		t.Fatalf("passing under, the head is clear by %.3f", p.Frame.Clearance())
	}
	d.Legs.At = p.Frame.LeastAt(-0.3)
	p = piecetest.Worked(t, d)
	c = find(t, checksOf(p), "leg-head")
	if len(c.Fixes) != 3 {
		t.Fatalf("mends: %s", advice(c))
	}
	last := 0.0
	for _, m := range c.Fixes {
		e := m.Design
		share := math.Max(math.Abs(e.Legs.Breadth/d.Legs.Breadth-1),
			math.Max(math.Abs(e.Legs.At/d.Legs.At-1), math.Abs(e.Legs.Given/d.Legs.Given-1)))
		if share < last {
			t.Errorf("%+v costs %.4f, the one before %.4f", m.Turn, share, last)
		}
		last = share
	}
}

// What a fix names is what is typed into the file: its key and its figure do it.
func TestMendsSayWhatIsTyped(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		d := piecetest.Sound(t)
		d.Unit = rapid.SampledFrom([]measure.Unit{measure.Millimetre, measure.Inch}).Draw(t, "unit")
		if rapid.Bool().Draw(t, "given place") {
			d.Legs.At = piecetest.Worked(t, d).Frame.LeastAt(rapid.Float64Range(-8, 1.5).Draw(t, "clearance"))
		} else {
			d.Legs.Clear = rapid.Float64Range(0, 1.5).Draw(t, "clear")
		}
		p := piecetest.Worked(t, d)
		if _, asked := askShortGrain(p); !asked {
			t.Skip("the head reaches into the lap")
		}
		for _, m := range clearHead(p, leastShortGrain(p)) {
			typed := d
			switch m.Key {
			case "legs.breadth":
				typed.Legs.Breadth = m.To.Value
			case "legs.mid-to-leg":
				typed.Legs.At = m.To.Value
			case "legs.clear":
				typed.Legs.Clear = m.To.Value
			case "legs.splay":
				typed.Legs.Lean, typed.Legs.Given = design.BySplay, m.To.Value
			default:
				t.Fatalf("no key for %+v", m.Turn)
			}
			if got := piecetest.Worked(t, typed).Frame.Clearance(); got < leastShortGrain(p)-piece.Slip {
				t.Errorf("%+v leaves %.6f mm", m.Turn, got)
			}
		}
	})
}

// How far a leg's tip stands out is counted square to the edge of the top: by
// hand the tip at (228.044, 75.056) lies 159.964 mm out towards the next side of
// the triangle, whose own edge is 75.056 + 28 + 50 from the centre.
func TestFrameUnderATriangle(t *testing.T) {
	d := piecetest.Low()
	d.Top.Outline, d.Top.Overhang = design.RingTop, 50
	c := graded(t, d, "frame-under-top", kind.Warn)
	if math.Abs(c.Value.Value+6.908) > 0.001 || advice(c) != "top.overhang 57 mm" {
		t.Errorf("%.4f mm, advice %q", c.Value.Value, advice(c))
	}
}

// heptagon is a ring of seven whose ends pass each other, its legs given a place
// of their own.
func heptagon() design.Design {
	d := piecetest.Low()
	d.Ring = design.Ring{Ring: joint.Ring{Sides: 7, Inside: 98, Width: 35.7, Depth: 38.9}, LegEndOver: true, Plain: design.FlushEnd}
	d.Legs = design.Legs{Breadth: 58.1, Mortise: joint.MortiseInLeg, Given: measure.Radians(13.5), Height: 524.2, To: design.Overall, At: 154.3}
	d.Top = design.Top{}
	return d
}

// A larger ring takes the legs along, and says so: by hand a side longer by
// 48.8 mm sets each lap 24.4 mm further out. With the place as it was the legs
// would stand in the laps.
func TestLargerRingTakesTheLegsAlong(t *testing.T) {
	c := graded(t, heptagon(), "ends-rough", kind.Warn)
	const want = "ring.inside 146.8 mm + legs.mid-to-leg 178.7 mm"
	if advice(c) != want {
		t.Errorf("advice %q, want %q", advice(c), want)
	}
	typed := heptagon()
	typed.Ring.Inside, typed.Legs.At = 146.8, 178.7
	for _, c := range checksOf(piecetest.Worked(t, typed)) {
		if c.Grade != kind.Pass {
			t.Errorf("%s: %v", c.ID(), c.Grade)
		}
	}
	typed.Legs.At = 154.3
	graded(t, typed, "leg-head", kind.Fail)
}

// decided returns every length and angle of a design that a mend may change, by
// its name.
func decided(d design.Design) map[string]float64 {
	out := map[string]float64{}
	var walk func(name string, v reflect.Value)
	walk = func(name string, v reflect.Value) {
		switch v.Kind() {
		case reflect.Float64:
			out[name] = v.Float()
		case reflect.Struct:
			for i := range v.NumField() {
				walk(name+"."+v.Type().Field(i).Name, v.Field(i))
			}
		case reflect.Pointer:
			if !v.IsNil() {
				walk(name, v.Elem())
			}
		}
	}
	walk("", reflect.ValueOf(d))
	return out
}

// A mend says every figure that it changes: what is typed is all of it.
func TestMendsSayAllThatTheyChange(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		d := piecetest.Any(t)
		if rapid.Bool().Draw(t, "milled") {
			d.Milled = design.Milled{Width: d.Ring.Width * 0.99, Depth: d.Ring.Depth * 0.98, Breadth: d.Legs.Breadth * 0.97}
		}
		p, err := piece.Solve(d)
		if err != nil {
			t.Skip("no such piece")
		}
		before := decided(d)
		for _, c := range checksOf(p) {
			for _, m := range c.Fixes {
				for name, now := range decided(m.Design) {
					if now == before[name] || name == ".Ring.Slack" {
						continue
					}
					// A place to the other side of mid-length is told by its distance, an
					// overhang inside the ring with its sign.
					says := func(turn kind.Turn) bool { return turn.To.Value == now || turn.To.Value == math.Abs(now) }
					if !says(m.Turn) && !slices.ContainsFunc(m.Follows, says) {
						t.Errorf("%s: %+v does not say that %s goes from %v to %v", c.ID(), m, name, before[name], now)
					}
				}
			}
		}
	})
}
