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

func drawerFront() joint.Dovetail {
	return joint.Dovetail{Width: 120, TailBoard: 12, PinBoard: 20, Slope: math.Atan(1.0 / 8), Tails: 4, Pin: 6, HalfPin: 6,
		Angle: math.Pi / 2, BoardSlope: math.Pi / 2}
}

// level returns the sorted x of the corners of the cut lines at that height of a strip.
func level(d Drawing, y float64) []float64 {
	var out []float64
	for _, s := range strokesOf(d, Cut) {
		for _, p := range s.Points {
			if math.Abs(p.Y-y) < 1e-9 {
				out = append(out, math.Round(p.X*1e6)/1e6)
			}
		}
	}
	slices.Sort(out)
	return slices.Compact(out)
}

// By hand: tails of (120 − 2·6 − 3·6)/4 = 22.5, narrower by 20/8 on either side. The
// strip of the pin board has the lower edge on the right.
func TestDovetailStripsByHand(t *testing.T) {
	job := sound(t)(Dovetail(drawerFront(), Setting{}))
	tails, pins := drawingNamed(t, job, "tail board, strip over the end"), drawingNamed(t, job, "pin board, strip over the end")
	tips := []float64{6, 28.5, 34.5, 57, 63, 85.5, 91.5, 114}
	roots := []float64{8.5, 26, 37, 54.5, 65.5, 83, 94, 111.5}
	mirror := func(x []float64) (out []float64) {
		for _, v := range slices.Backward(x) {
			out = append(out, -v)
		}
		return out
	}
	withEdges := append(append([]float64{0}, roots...), 120)
	for _, c := range []struct {
		name string
		d    Drawing
		y    float64
		want []float64
	}{
		{"tails, gauge line on the outer side", tails, -20, withEdges},
		{"tails, outer arris", tails, 0, tips},
		{"tails, other arris", tails, 12, tips},
		{"tails, gauge line on the hollow side", tails, 32, withEdges},
		{"pins, gauge line on the outer side", pins, -12, mirror(tips)},
		{"pins, outer arris", pins, 0, mirror(tips)},
		{"pins, other arris", pins, 20, mirror(roots)},
		{"pins, gauge line on the hollow side", pins, 32, mirror(roots)},
	} {
		if got := level(c.d, c.y); !slices.EqualFunc(got, c.want, func(a, b float64) bool { return math.Abs(a-b) < 1e-6 }) {
			t.Errorf("%s: %v, want %v", c.name, got, c.want)
		}
	}
	if got := job.Sections[0].Panels[1].Table[2]; !slices.Equal(got, []string{"2", "34.5", "57", "37", "54.5"}) {
		t.Errorf("second tail set out at %q", got)
	}
}

// A lapped joint cuts nothing on the outer side of the pin board, and stops its
// sockets at the lap.
func TestDovetailLapped(t *testing.T) {
	d := drawerFront()
	d.Lap = 5
	job := sound(t)(Dovetail(d, Setting{}))
	pins := drawingNamed(t, job, "pin board, strip over the end")
	for _, role := range []Role{Cut, Waste} {
		for _, s := range strokesOf(pins, role) {
			for _, p := range s.Points {
				if p.Y < 5-1e-9 {
					t.Errorf("role %d cut at %v, before the lap", role, p)
				}
			}
		}
	}
	wantSaid(t, job, "on the pin board across the hollow side", "Its outer side has no line")
	if got := level(pins, 5); len(got) != 8 {
		t.Errorf("%d corners at the lap, want 8", len(got))
	}
}

// Hatched is what is cut away: on each side of a board tails and sockets add up to
// the rest of it.
func TestDovetailWaste(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		d := drawerFront()
		d.Tails = rapid.IntRange(1, 5).Draw(t, "tails")
		d.BoardSlope = measure.Radians(rapid.SampledFrom([]float64{90, 75, 60}).Draw(t, "board slope"))
		d.Angle = measure.Radians(rapid.SampledFrom([]float64{90, 108, 120}).Draw(t, "corner"))
		d.HalfPin = d.UsualHalfPin()
		job := sound(t)(Dovetail(d, Setting{}))
		hands := 2
		if d.BoardSlope != math.Pi/2 {
			hands = 4
		}
		if got := len(job.Drawings()); got != hands {
			t.Fatalf("%d drawings, want %d", got, hands)
		}
		if hands == 4 {
			wantMirror(t, job.Drawings()[0], job.Drawings()[1])
			wantMirror(t, job.Drawings()[2], job.Drawings()[3])
		}
		// No line of waste or cut leaves the board: its outline is closed here.
		for _, strip := range job.Drawings() {
			edges := strokesOf(strip, Outline)
			back := slices.Clone(edges[1].Points)
			slices.Reverse(back)
			outline := append(slices.Clone(edges[0].Points), back...)
			for _, role := range []Role{Cut, Waste} {
				for _, s := range strokesOf(strip, role) {
					for _, p := range s.Points {
						if !inside(outline, p) {
							t.Errorf("%+v, %s: %v lies off the board", d, strip.Name, p)
						}
					}
				}
			}
		}
	})
}

// inside reports whether p is in the polygon or within a hair of its rim.
func inside(polygon []geometry.Point, p geometry.Point) bool {
	in := false
	for i, a := range polygon {
		b := polygon[(i+1)%len(polygon)]
		if (geometry.Segment{A: a, B: b}).Distance(p) < 1e-6 {
			return true
		}
		if (a.Y > p.Y) != (b.Y > p.Y) && p.X < a.X+(b.X-a.X)*(p.Y-a.Y)/(b.Y-a.Y) {
			in = !in
		}
	}
	return in
}

func TestDovetailWarns(t *testing.T) {
	d := drawerFront()
	if job, err := Dovetail(d, Setting{}); err != nil || len(job.Warnings) != 0 {
		t.Errorf("%q, %v", job.Warnings, err)
	}
	d.Lap, d.Slope, d.Pin = 3, math.Atan(1.0/4.5), 2
	job, err := Dovetail(d, Setting{})
	words := strings.Join(job.Warnings, "\n")
	for _, want := range []string{"short grain", "lap before the tails: 3 mm", "pins of 2 mm"} {
		if err != nil || !strings.Contains(words, want) {
			t.Errorf("no %q in %q, %v", want, words, err)
		}
	}
}

// A piece is warned of in both units or in none: 3 mm is under 1/8 in.
func TestDovetailWarnsAlikeInBothUnits(t *testing.T) {
	for lap := 3.9; lap < 4.1; lap += 0.01 {
		for pin := 2.9; pin < 3.3; pin += 0.05 {
			d := drawerFront()
			d.Lap, d.Pin = lap, pin
			mm, in := sound(t)(Dovetail(d, Setting{})), sound(t)(Dovetail(d, Setting{Unit: measure.Inch}))
			if len(mm.Warnings) != len(in.Warnings) {
				t.Errorf("lap %.2f, pin %.2f: %q, %q", lap, pin, mm.Warnings, in.Warnings)
			}
		}
	}
}

// The words follow the corner.
func TestDovetailWords(t *testing.T) {
	for _, c := range []struct {
		change func(*joint.Dovetail)
		want   string
	}{
		{func(*joint.Dovetail) {}, "the ends square all round"},
		{func(d *joint.Dovetail) { d.Angle = measure.Radians(120) }, "30° off square through the thickness, the hollow side the longer"},
		{func(d *joint.Dovetail) { d.Angle = measure.Radians(70) }, "20° off square through the thickness, the outer side the longer"},
		{func(d *joint.Dovetail) { d.BoardSlope, d.HalfPin = measure.Radians(70), 15 }, "18.88° off square across the board, the upper edge the longer"},
		{func(d *joint.Dovetail) { d.Lap = 5 }, "stop 5 mm behind its outer side"},
	} {
		d := drawerFront()
		c.change(&d)
		job := sound(t)(Dovetail(d, Setting{}))
		wantSaid(t, job, c.want)
	}
}
