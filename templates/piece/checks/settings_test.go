package checks

import (
	"fmt"
	"math"
	"regexp"
	"strings"
	"testing"

	"rodsheet/geometry/measure"
	"rodsheet/templates/piece"
	"rodsheet/templates/piece/design"
	"rodsheet/templates/piece/internal/piecetest"
	"rodsheet/templates/piece/shop"
)

// row returns the row of the settings list whose step begins so, its cells one
// after the other.
func row(t *testing.T, p piece.Piece, step string) string {
	t.Helper()
	for _, r := range shop.Settings([]piece.Piece{p})[0].Table {
		if len(r) > 1 && strings.HasPrefix(r[1], step) {
			return strings.Join(r, " | ")
		}
	}
	t.Errorf("no row %q", step)
	return ""
}

// Figures, check and settings give one height for slot and cheeks.
func TestCutHeightsAgree(t *testing.T) {
	d := piecetest.Low()
	d.Top.Kind = design.NoTop
	for _, proud := range []float64{0, 8} {
		d.Legs.Proud = proud
		p := piecetest.Worked(t, d)
		stretcher, leg := p.CutHeights()
		piecetest.Nearly(t, "figure of the stretcher", figure(t, p, "Bridle", "cut height, stretcher on its rough end").Value, stretcher)
		piecetest.Nearly(t, "figure of the leg", figure(t, p, "Bridle", "cut height, leg on its rough head").Value, leg)
		piecetest.Nearly(t, "check", find(t, askSaw(p), "blade at the bridle").Value.Value, math.Max(stretcher, leg))
		for step, height := range map[string]float64{"slot in the stretcher": stretcher, "tenon cheeks on the leg": leg} {
			if got := row(t, p, step); !strings.Contains(got, " "+p.MM(height)+" high") {
				t.Errorf("proud by %v: want %s high in %s", proud, p.MM(height), got)
			}
		}
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
		words := find(t, askTogether(withSolids(p)), "putting the ring together").Words
		if said := strings.Contains(words, "only once their ends are trimmed"); said != late || p.TrimFirst() != late {
			t.Errorf("inside %.0f: trimmed first %v, and the check says %q", inside, p.TrimFirst(), words)
		}
	}
}

// The check of the stop's reach and the rows that say it does not reach so far are
// of one mind, whatever it reaches.
func TestReachOfTheStopAgreesWithTheSettings(t *testing.T) {
	const beyond = "farther than the stop reaches"
	d := piecetest.Low()
	for _, reach := range []float64{90, 200, 350, 377.5, 420, 500} {
		d.Saw.StopReach = reach
		p := piecetest.Worked(t, d)
		c := find(t, askSaw(p), "reach of the stop")
		rows := 0
		for _, r := range shop.Settings([]piece.Piece{p})[0].Table {
			if !strings.Contains(strings.Join(r, " "), beyond) {
				continue
			}
			rows++
			if !strings.Contains(c.Words, r[1]) {
				t.Errorf("reach %v: no word of %q in %q", reach, r[1], c.Words)
			}
		}
		if (c.Grade == Warn) != (rows > 0) {
			t.Errorf("reach %v: %v, with %d rows that the stop does not reach", reach, c.Grade, rows)
		}
	}
}

// The farthest stop is the largest that the list prints, tests and milled sizes
// and cuts by hand among them.
func TestFarthestStop(t *testing.T) {
	stop := regexp.MustCompile(`^([0-9.]+) mm, [a-z]`)
	for i, d := range append(piecetest.Bases(), piecetest.Low(), piecetest.Square()) {
		for _, highest := range []float64{0, 20, 30} {
			d.Saw.Highest, d.Saw.StopReach, d.Unit = highest, 1, measure.Millimetre
			p := piecetest.Worked(t, d)
			want := 0.0
			for _, r := range shop.Settings([]piece.Piece{p})[0].Table {
				if len(r) < 7 || strings.HasPrefix(r[4], "upright") {
					continue
				}
				if m := stop.FindStringSubmatch(r[6]); m != nil {
					var mm float64
					fmt.Sscan(m[1], &mm)
					want = math.Max(want, mm)
				}
			}
			if got := find(t, askSaw(p), "reach of the stop").Value.Value; math.Abs(got-want) > 0.006 {
				t.Errorf("base %d, blade %v: farthest stop %.3f, the list prints %.2f", i, highest, got, want)
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
		c := find(t, askSaw(p), "blade and stock")
		if got, want := c.Grade == Pass, p.Frame.Ring.Depth <= highest; got != want {
			t.Errorf("blade of %.0f: %v", highest, c.Grade)
		}
		piecetest.Nearly(t, "stock sawn through", c.Value.Value, p.Frame.Ring.Depth)
		for step, thick := range map[string]float64{"stretcher, square to length": p.Frame.Ring.Depth, "leg, square to length": p.Frame.Ring.Width} {
			low := thick > highest
			if strings.Contains(c.Words, step) != low || strings.Contains(row(t, p, step), "by hand") != low {
				t.Errorf("blade of %.0f, %s %.0f thick: %q, and the row %q", highest, step, thick, c.Words, row(t, p, step))
			}
		}
	}
}
