package shop

import (
	"fmt"
	"math"
	"strings"
	"testing"

	"rodsheet/templates/piece"
	"rodsheet/templates/piece/internal/piecetest"

	"pgregory.net/rapid"
)

// The list is one table, so that no stage comes to stand on a sheet before the
// one that it follows, and the row above a heading has its words between them.
func TestTheListIsOneTable(t *testing.T) {
	for name, designs := range settingsCases() {
		panels := Settings(workAll(t, designs...))
		if len(panels) != 1 {
			t.Fatalf("%s: %d tables", name, len(panels))
		}
		var headings []string
		number, above := 0, 1
		for _, r := range panels[0].Table[1:] {
			switch {
			case len(r) > 1:
				number++
				if r[0] != fmt.Sprint(number) {
					t.Errorf("%s: row %q comes as number %d", name, r[0], number)
				}
			case r[0] == strings.ToUpper(r[0]):
				headings = append(headings, r[0])
				if above > 1 {
					t.Errorf("%s: %s stands right under row %d", name, r[0], number)
				}
			}
			above = len(r)
		}
		if got, want := strings.Join(headings, "; "), "STOCK; LAPS; BRIDLE JOINTS; FEET, TAPERS, PLAIN ENDS; GLUE-UP AND AFTER"; got != want {
			t.Errorf("%s: headings %s, want %s", name, got, want)
		}
	}
}

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
		p := workAll(t, d)[0]
		stretcher, leg := p.CutHeights()
		steps := workingOrder([]piece.Piece{p})
		for _, c := range []struct {
			where     string
			got, want float64
		}{
			{"slot", only(steps, doCutSlot)[0].Cut.Height, stretcher},
			{"cheeks", only(steps, doCutCheeks)[0].Cut.Height, leg},
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
		steps := workingOrder([]piece.Piece{p})
		if got := len(only(steps, doDryTrimmedRing)) == 1; got != late || len(only(steps, doDryRing)) == 1 == late {
			t.Errorf("inside %.0f: laid together after trimming %v, want %v", inside, got, late)
		}
	}
}
