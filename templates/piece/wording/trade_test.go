package wording

import (
	"slices"
	"strings"
	"testing"

	"rodsheet/geometry/measure"
	"rodsheet/templates"
	"rodsheet/templates/piece/design"
	"rodsheet/templates/piece/internal/piecetest"
	"rodsheet/templates/piece/shop"
)

// screwed is a square table whose top is held by screws.
func screwed() design.Design {
	d := piecetest.Square()
	d.Ring.Inside, d.Ring.Width = 300, 34
	d.Top = design.Top{Kind: design.WoodTop, Outline: design.RingTop, Overhang: 110, Thickness: 20, Fixing: design.Fixing{Kind: design.Screws}}
	d.Wood.Species, d.Wood.MoistureFrom, d.Wood.MoistureTo = "oak, white", 8, 12
	return d
}

// Stretchers that are drilled alike share their rows, and so do two holes that mirror
// each other.
func TestFixingsOfTheTop(t *testing.T) {
	panels := Fixings(planOf(t, screwed()))
	if len(panels) != 1 {
		t.Fatalf("%d tables", len(panels))
	}
	want := [][]string{
		{"stretcher", "from mid-length", "hole"},
		{"1, 3", "75 mm, to either end", "slot, 90° to the edge"},
		{"2, 4", "at mid-length", "round"},
		{"2, 4", "75 mm, to either end", "slot along the stretcher"},
	}
	if !slices.EqualFunc(panels[0].Table, want, slices.Equal) {
		t.Errorf("got %q, want %q", panels[0].Table, want)
	}
	d := screwed()
	d.Top.Fixing.Kind = design.Buttons
	for i, want := range []string{"half in, free to go in and out", "home, in the middle of its mortise", "home, free to slide along"} {
		if got := Fixings(planOf(t, d))[0].Table[1+i][2]; got != want {
			t.Errorf("row %d: %q, want %q", i+1, got, want)
		}
	}
	glass := piecetest.Low()
	if panels := Fixings(planOf(t, glass)); len(panels) != 0 {
		t.Errorf("glass is screwed down: %v", panels)
	}
}

func TestWares(t *testing.T) {
	for want, ware := range map[string]struct {
		shop.Ware
		unit measure.Unit
	}{
		"screw for the top, flat under its head, 4 mm, 35 mm long":     {shop.Ware{What: shop.TopScrew, Length: 35}, measure.Millimetre},
		"screw for the top, flat under its head, No. 8, 1 1/2 in long": {shop.Ware{What: shop.TopScrew, Length: 38.1}, measure.Inch},
		"button for the top, 40 × 25 × 12 mm":                          {shop.Ware{What: shop.TopButton, Length: 40, Width: 25, Thickness: 12}, measure.Millimetre},
		"silicone for glass on wood, a small cartridge":                {shop.Ware{What: shop.Silicone}, measure.Millimetre},
	} {
		if got := Ware(ware.Ware, ware.unit); got != want {
			t.Errorf("got %q, want %q", got, want)
		}
	}
}

// A card says in few words whether the guard stays, beside its own caution.
func TestCardsSayWhatHoldsThePart(t *testing.T) {
	plan := planOf(t, piecetest.Low())
	for _, c := range plan.Cards {
		guard := noteTexts()[c.Guard()].With()
		if got := Card(plan, c).Caution; guard != "" && got[max(0, len(got)-len(guard)):] != guard {
			t.Errorf("card %d: %q says nothing of the guard: %q", c.Number, got, guard)
		}
	}
}

// The hole for a screw is named with its width: narrower than the screw, which is 4 mm or
// No. 8, 0.164 in (0.060 in and 0.013 in for each number; from memory), and narrower in soft
// wood (common practice, no source).
func TestPilotHolesAreNamed(t *testing.T) {
	for unit, want := range map[measure.Unit]string{
		measure.Millimetre: "3 mm wide, in soft wood 2.5 mm, and 13 mm deep",
		measure.Inch:       "1/8 in wide, in soft wood 7/64 in, and 1/2 in deep",
	} {
		for _, fixing := range []design.FixingKind{design.Screws, design.Buttons} {
			d := screwed()
			d.Unit, d.Top.Fixing.Kind = unit, fixing
			if got := strings.Join(cardOf(planOf(t, d), shop.FitTop).Text, " "); !strings.Contains(got, want) {
				t.Errorf("%v, %v: %q holds no %q", unit, fixing, got, want)
			}
		}
	}
}

// A test lap is sawn in stretcher stock, and its card says so.
func TestTheTestLapNamesItsStock(t *testing.T) {
	d := screwed()
	d.Wood.Tests = 2
	want := []templates.Tick{{Text: "test piece, stretcher stock: 2", Boxes: 2}}
	if got := cardOf(planOf(t, d), shop.TestLap).Ticks; !slices.Equal(got, want) {
		t.Errorf("got %v, want %v", got, want)
	}
}

// Once the plain end is cut, mid-length is no longer the middle of the stretcher: whoever
// measures from it then is told where it was.
func TestMidLengthIsTold(t *testing.T) {
	for _, id := range []shop.NoteID{"fixings-by-table", "glue-pads", "stick-bumpers"} {
		if !strings.Contains(string(noteTexts()[id]), midLength) {
			t.Errorf("%s does not say where mid-length is", id)
		}
	}
}
