package shop

import (
	"math"
	"testing"

	"pgregory.net/rapid"

	"rodsheet/templates/piece"
	"rodsheet/templates/piece/internal/piecetest"
)

// What the sole measures is what the solids leave of it on the floor.
func TestSoleOfATaperedLeg(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		d := piecetest.Sound(t)
		d.Legs.Taper = piecetest.Taper(t, d)
		p := piecetest.Worked(t, d)
		inner, outer := math.Inf(1), math.Inf(-1)
		for _, f := range piecetest.Levels(p.Leg(), d.Ring.Depth-d.Legs.Height) {
			for _, c := range f.Corners {
				inner, outer = math.Min(inner, c.X), math.Max(outer, c.X)
			}
		}
		piecetest.Nearly(t, "sole", sole(p), outer-inner)
	})
}

// The settings give the piece's own height for slot and cheeks, which grows with
// what a head stands proud.
func TestCutHeights(t *testing.T) {
	d := piecetest.Low()
	d.Saw.Highest = 10
	for _, proud := range []float64{0, 8} {
		d.Legs.Proud = proud
		p := piecetest.WorkedAll(t, d)[0]
		stretcher, leg := p.CutHeights()
		steps := stepsOf([]piece.Piece{p})
		for _, c := range []struct {
			where     string
			got, want float64
		}{
			{"slot", only(steps, CutSlot)[0].Cut.Height, stretcher},
			{"cheeks", only(steps, CutCheeks)[0].Cut.Height, leg},
			{"leg by hand", leg, 36 + 3*math.Cos(p.Frame.Leg.Splay) + proud},
		} {
			if math.Abs(c.got-c.want) > 1e-9 {
				t.Errorf("proud by %v, %s: %.6f, want %.6f", proud, c.where, c.got, c.want)
			}
		}
	}
}

// A ring whose rough ends would meet is laid together only once they are trimmed.
func TestRingThatIsTrimmedFirst(t *testing.T) {
	for inside, late := range map[float64]bool{200: false, 60: true} {
		d := piecetest.Low()
		d.Ring.Sides, d.Ring.Inside, d.Ring.Width, d.Ring.Horn = 8, inside, 16, 12
		d.Legs.Breadth = 20
		d.Legs.Taper = nil
		p := piecetest.Worked(t, d)
		steps := stepsOf([]piece.Piece{p})
		if got := len(only(steps, DryTrimmedRing)) == 1; got != late || len(only(steps, DryRing)) == 1 == late {
			t.Errorf("inside %.0f: laid together after trimming %v, want %v", inside, got, late)
		}
	}
}
