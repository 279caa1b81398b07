package accuracy

import (
	"math"
	"math/rand/v2"
	"testing"

	"rodsheet/geometry"
	"rodsheet/geometry/measure"
)

// The stated accuracy holds in 95 of 100 simulated prints: the sheet is
// stretched on both axes by the printer and by the damp, the ends of the line
// are struck off by a pencil, and every seam shifts what is beyond it and turns
// it about itself.
func TestAccuracyBySimulation(t *testing.T) {
	random := rand.New(rand.NewPCG(1, 2))
	sd := func(limit float64) float64 { return random.NormFloat64() * limit / 2 }
	for _, c := range []struct {
		base, length float64
		seams        int
		across       float64 // length of a seam
		measured     bool
		angle, cause string // of the angle and of the length
	}{
		{240, 240, 0, 0, false, "printing", "printing"},
		{240, 240, 0, 0, true, "pencil line", "paper"},
		{640, 640, 3, 61, false, "seams", "printing"},
		{640, 640, 3, 61, true, "seams", "paper"},
		{640, 640, 3, 250, false, "printing", "printing"},
		{60, 60, 0, 0, true, "pencil line", "pencil line"},
		{300, 300, 1, 180, true, "seams", "paper"},
		{2000, 2000, 10, 180, true, "seams", "paper"},
	} {
		a := Assess(c.base, c.length, Taping{c.seams, c.across}, c.measured, measure.Millimetre)
		share := 0.005
		if c.measured {
			share = 0.25 / 200
		}
		const runs = 40000
		angles, lengths := 0, 0
		for range runs {
			damp := sd(1)
			x := (1 + sd(share)) * (1 + 0.002*damp)
			y := (1 + sd(share)) * (1 + 0.004*damp)
			// The worst angle: a line at 45° between the axes.
			end := geometry.Scale(x, y).Apply(geometry.Polar(c.base, math.Pi/4))
			side := end.Unit().Perp()
			end = end.Add(side.Mul(sd(0.3)))
			// Every seam is off across the line by one misfit along itself, and
			// open by one at the one end and by another at the other.
			for k := range c.seams {
				beyond := end.Mul(1 - float64(k+1)/float64(c.seams+1))
				turn := math.Atan((sd(0.2) - sd(0.2)) / c.across)
				end = end.Add(geometry.Rotate(turn).Apply(beyond).Sub(beyond)).Add(side.Mul(sd(0.2)))
			}
			if math.Abs(math.Atan2(end.Y, end.X)-math.Pi/4) <= a.angle.total() {
				angles++
			}
			// The worst length: across the grain.
			length := c.length*y + sd(0.3) + sd(0.3)
			for range c.seams {
				length += sd(0.2)
			}
			if math.Abs(length-c.length) <= a.length.total() {
				lengths++
			}
		}
		for name, n := range map[string]int{"angle": angles, "length": lengths} {
			if p := float64(n) / runs; p < 0.945 || p > 0.965 {
				t.Errorf("%+v: the %s holds in %.4f of all prints, want 0.945 to 0.965", c, name, p)
			}
		}
		if a.angle.cause() != c.angle || a.length.cause() != c.cause {
			t.Errorf("%+v: angle and length are blamed on %s and %s", c, a.angle.cause(), a.length.cause())
		}
	}
}

// The turn of equally spaced seams, summed one by one.
func TestTurn(t *testing.T) {
	for n := range 12 {
		sum := 0.0
		for k := 1; k <= n; k++ {
			lever := float64(k) / float64(n+1)
			sum += lever * lever
		}
		want := 0.2 * math.Sqrt2 / 61 * math.Sqrt(sum)
		if got := (Taping{n, 61}).turn(); math.Abs(got-want) > 1e-12 {
			t.Errorf("%d seams turn by %.6f, want %.6f", n, got, want)
		}
	}
}

// The closed form behind the angle: axes that differ by the share e turn a
// line at 45° by e·28.65°.
func TestAxisMismatch(t *testing.T) {
	const e = 0.002
	end := geometry.Scale(1+e, 1).Apply(geometry.Polar(100, math.Pi/4))
	if got, want := measure.Degrees(math.Pi/4-math.Atan2(end.Y, end.X)), e*28.65; math.Abs(got-want) > 1e-4 {
		t.Errorf("turned by %.5f°, want %.5f°", got, want)
	}
}

func TestAccuracyInWords(t *testing.T) {
	for _, c := range []struct {
		a    Accuracy
		want string
	}{
		{Accuracy{}, ""},
		{Assess(240, 240, Taping{}, false, measure.Millimetre), "good to ±0.22°, ±1.6 mm (printing)"},
		{Assess(240, 240, Taping{}, true, measure.Millimetre), "good to ±0.10° (pencil line), ±1.1 mm (paper)"},
		{Assess(0, 600, Taping{4, 180}, true, measure.Inch), "good to ±0.10 in (paper)"},
	} {
		if got := c.a.String(); got != c.want {
			t.Errorf("got %q, want %q", got, c.want)
		}
	}
}

// What is finer than a rule shows is said in tenths of a millimetre, or in parts of an
// inch by halves, as rules are divided.
func TestFineText(t *testing.T) {
	for _, c := range []struct {
		mm   float64
		unit measure.Unit
		want string
	}{
		{0.2, measure.Millimetre, "0.2 mm"},
		{0.2, measure.Inch, "1/128 in"},
		{25.4 / 64, measure.Inch, "1/64 in"},
		{25.4 * 3 / 64, measure.Inch, "3/64 in"},
	} {
		if got := FineText(c.mm, c.unit); got != c.want {
			t.Errorf("%.4f mm is %q, want %q", c.mm, got, c.want)
		}
	}
}
