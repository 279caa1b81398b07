package design

import (
	"math"
	"testing"

	"rodsheet/geometry/joint"
)

func TestSpecies(t *testing.T) {
	all := Species()
	if len(all) != 32 {
		t.Fatalf("%d woods, want 32", len(all))
	}
	for i, w := range all {
		if w.Density < 350 || w.Density > 1000 || w.Tangential <= w.Radial || w.Radial < 0.001 {
			t.Errorf("%+v", w)
		}
		if i > 0 && plainName(all[i-1].Name) == plainName(w.Name) {
			t.Errorf("%s stands twice", w.Name)
		}
		if err := (joint.Movement{Width: 100, Coefficient: w.Tangential, From: 8, To: 12}).Check(); err != nil {
			t.Errorf("%s: %v", w.Name, err)
		}
	}
}

// Rows of the USDA Wood Handbook, FPL-GTR-190 (2010), Table 13-5; densities from
// memory.
func TestFindSpecies(t *testing.T) {
	tests := []struct {
		name string
		want WoodSpecies
	}{
		{"Ash, white", WoodSpecies{"Ash, white", 672, 0.00169, 0.00274}},
		{"white ash", WoodSpecies{"Ash, white", 672, 0.00169, 0.00274}},
		{"WHITE  Ash", WoodSpecies{"Ash, white", 672, 0.00169, 0.00274}},
		{"walnut", WoodSpecies{"Walnut", 616, 0.0019, 0.00274}},
		{"live oak", WoodSpecies{"Oak, live", 986, 0.0023, 0.00338}},
		{"black cherry", WoodSpecies{"Cherry, black", 560, 0.00126, 0.00248}},
		{"Beech", WoodSpecies{"Beech", 717, 0.0019, 0.00431}},
	}
	for _, tt := range tests {
		if got, ok := FindSpecies(tt.name); !ok || got != tt.want {
			t.Errorf("%s: got %+v, %v", tt.name, got, ok)
		}
		if got, ok := (Wood{Species: tt.name}).Known(); !ok || got != tt.want {
			t.Errorf("a design in %s: got %+v, %v", tt.name, got, ok)
		}
	}
	for _, name := range []string{"", "ash", "plum", "white white ash"} {
		if got, ok := FindSpecies(name); ok {
			t.Errorf("%q found %+v", name, got)
		}
	}
}

// The coefficients follow from the shrinkage (same book): a slip in a row of
// the file would show. Three rows of the book do not follow.
func TestSpeciesMovementFollowsShrinkage(t *testing.T) {
	apart := map[string]bool{"Ash, green": true, "Birch, sweet": true, "Oak, white": true}
	for _, row := range speciesRows() {
		if apart[row[0]] {
			continue
		}
		for _, c := range []int{1, 2} {
			got, want := figureOf(row[c+2]), joint.MovementCoefficient(figureOf(row[c]))
			if math.Abs(got-want) > 0.00006 {
				t.Errorf("%s: %v, want %.5f", row[0], got, want)
			}
		}
	}
}
