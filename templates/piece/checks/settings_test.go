package checks

import (
	"math"
	"slices"
	"testing"

	"rodsheet/geometry/measure"
	"rodsheet/templates/piece"
	"rodsheet/templates/piece/design"
	"rodsheet/templates/piece/internal/piecetest"
	"rodsheet/templates/piece/kind"
	"rodsheet/templates/piece/shop"
)

// stepsOf returns every step of the cards.
func stepsOf(p piece.Piece) []shop.Step {
	var out []shop.Step
	for _, c := range shop.NewPlan([]piece.Piece{p}).Cards {
		out = append(out, c.Steps...)
	}
	return out
}

// step returns the step of the cards that is called so.
func step(t *testing.T, p piece.Piece, what shop.Note) shop.Step {
	t.Helper()
	for _, s := range stepsOf(p) {
		if s.What == what {
			return s
		}
	}
	t.Errorf("no step %v", what)
	return shop.Step{}
}

// of is what a step is called that names a part.
func of(id shop.NoteID, part shop.Part) shop.Note {
	return shop.Note{ID: id, Args: [3]shop.Arg{{Is: shop.PartArg, Part: part}}}
}

// Figures, check and settings give one height for slot and cheeks.
func TestCutHeightsAgree(t *testing.T) {
	d := piecetest.Low()
	d.Top.Kind = design.NoTop
	for _, proud := range []float64{0, 8} {
		d.Legs.Proud = proud
		p := piecetest.Worked(t, d)
		stretcher, leg := p.CutHeights()
		piecetest.Nearly(t, "figure of the stretcher", figure(t, p, "bridle.cut-height.stretcher").Value, stretcher)
		piecetest.Nearly(t, "figure of the leg", figure(t, p, "bridle.cut-height.leg").Value, leg)
		piecetest.Nearly(t, "check", find(t, checksOf(p), "blade-bridle").Value.Value, math.Max(stretcher, leg))
		piecetest.Nearly(t, "slot", step(t, p, of("step.slot", shop.Stretcher)).Cut.Height, stretcher)
		piecetest.Nearly(t, "cheeks", step(t, p, of("step.cheeks", shop.Leg)).Cut.Height, leg)
	}
}

// The check says that the ring is trimmed first where the settings lay it together
// only then.
func TestTrimmedFirstIsSaid(t *testing.T) {
	for inside, late := range map[float64]bool{200: false, 60: true} {
		d := piecetest.Low()
		d.Ring.Sides, d.Ring.Inside, d.Ring.Width, d.Ring.Horn = 8, inside, 16, 12
		d.Legs.Breadth = 20
		d.Legs.Taper = nil
		p := piecetest.Worked(t, d)
		found := find(t, checksOf(p), "together").Found.ID
		if said := found == "trimmed-first"; said != late || p.TrimFirst() != late {
			t.Errorf("inside %.0f: trimmed first %v, and the check finds %q", inside, p.TrimFirst(), found)
		}
	}
}

// The check of the stop's reach and the rows that say it does not reach so far are
// of one mind, whatever it reaches.
func TestReachOfTheStopAgreesWithTheSettings(t *testing.T) {
	d := piecetest.Low()
	for _, reach := range []float64{90, 200, 350, 377.5, 420, 500} {
		d.Saw.StopReach = reach
		p := piecetest.Worked(t, d)
		c := find(t, checksOf(p), "stop-reach")
		rows := 0
		for _, s := range stepsOf(p) {
			if !s.Cut.Beyond {
				continue
			}
			rows++
			if !slices.Contains(c.Found.Steps, s.What) {
				t.Errorf("reach %v: no word of %v in %v", reach, s.What, c.Found.Steps)
			}
		}
		if (c.Grade == kind.Warn) != (rows > 0) {
			t.Errorf("reach %v: %v, with %d rows that the stop does not reach", reach, c.Grade, rows)
		}
	}
}

// The farthest stop is the largest that a card prints, tests and milled sizes
// and cuts by hand among them.
func TestFarthestStop(t *testing.T) {
	for i, d := range append(piecetest.Bases(), piecetest.Low(), piecetest.Square()) {
		for _, highest := range []float64{0, 20, 30} {
			d.Saw.Highest, d.Saw.StopReach, d.Unit = highest, 1, measure.Millimetre
			p := piecetest.Worked(t, d)
			want := 0.0
			for _, s := range stepsOf(p) {
				if s.Cut.How == shop.OnGauge {
					want = math.Max(want, s.Cut.Stop)
				}
			}
			if got := find(t, checksOf(p), "stop-reach").Value.Value; math.Abs(got-want) > 1e-9 {
				t.Errorf("base %d, blade %v: farthest stop %.3f, the list has %.3f", i, highest, got, want)
			}
		}
	}
}

// The check of the blade names the cuts through the stock that the settings leave
// to a handsaw, and no others.
func TestBladeComesThrough(t *testing.T) {
	for _, highest := range []float64{100, 30, 20} {
		d := piecetest.Low()
		d.Saw.Highest = highest
		p := piecetest.Worked(t, d)
		c := find(t, checksOf(p), "blade-stock")
		if got, want := c.Grade == kind.Pass, p.Frame.Ring.Depth <= highest; got != want {
			t.Errorf("blade of %.0f: %v", highest, c.Grade)
		}
		piecetest.Nearly(t, "stock sawn through", c.Value.Value, p.Frame.Ring.Depth)
		for part, thick := range map[shop.Part]float64{shop.Stretcher: p.Frame.Ring.Depth, shop.Leg: p.Frame.Ring.Width} {
			low, what := thick > highest, of("step.crosscut", part)
			cut := step(t, p, what).Cut
			if slices.Contains(c.Found.Steps, what) != low || cut.ByHand() != low {
				t.Errorf("blade of %.0f, %v %.0f thick: %v, and by hand %v", highest, what, thick, c.Found.Steps, cut.ByHand())
			}
		}
	}
}
