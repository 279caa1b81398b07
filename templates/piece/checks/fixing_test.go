package checks

import (
	"testing"

	"rodsheet/geometry/measure"
	"rodsheet/templates/piece/design"
	"rodsheet/templates/piece/internal/piecetest"
	"rodsheet/templates/piece/kind"
)

// By hand: through a stretcher 50 mm deep a screw of 80 mm goes 30 mm into a top of
// 20 mm, one of 66 mm 16 mm, one of 63 mm 13 mm, of which 13.33 mm is the most; one of
// 15 mm with 12 mm of wood under its head 3 mm.
func TestScrewsOfATop(t *testing.T) {
	for _, tt := range []struct {
		screw, width  float64
		through, hold kind.Grade
		edge          kind.Grade
	}{
		{0, 34, kind.Pass, kind.Pass, kind.Pass},
		{80, 34, kind.Fail, kind.Pass, kind.Pass},
		{66, 34, kind.Warn, kind.Pass, kind.Pass},
		{63, 34, kind.Pass, kind.Pass, kind.Pass},
		{15, 34, kind.Pass, kind.Warn, kind.Pass},
		{0, 20, kind.Pass, kind.Pass, kind.Warn},
	} {
		d := piecetest.Square()
		d.Ring.Inside, d.Ring.Width, d.Ring.Depth = 300, tt.width, 50
		d.Top = design.Top{
			Kind: design.WoodTop, Outline: design.RingTop, Overhang: 110, Thickness: 20,
			Fixing: design.Fixing{Kind: design.Screws, Screw: tt.screw},
		}
		d.Wood.Species, d.Wood.MoistureFrom, d.Wood.MoistureTo = "oak, white", 8, 12
		got := map[measure.ID]Check{}
		for _, c := range withSolids(piecetest.Worked(t, d)).checks() {
			got[c.Question] = c
		}
		for id, want := range map[measure.ID]kind.Grade{"screw-through": tt.through, "screw-hold": tt.hold, "hole-edge": tt.edge, "hole-lap": kind.Pass} {
			if got[id].Grade != want {
				t.Errorf("screw %v in %v: %s %v, want %v: %+v", tt.screw, tt.width, id, got[id].Grade, want, got[id].Value)
			}
		}
		if c := got["screw-through"]; tt.through != kind.Pass && (len(c.Fixes) == 0 || c.Fixes[0].To.Value != 63) {
			t.Errorf("screw %v: mended by %+v, want 63 mm", tt.screw, c.Fixes)
		}
	}
}

// A pane that silicone holds is not loose.
func TestBondedPane(t *testing.T) {
	d := piecetest.Low()
	ask := func() Check {
		c, asked := askLooseTop(piecetest.Worked(t, d))
		if !asked {
			t.Fatal("not asked")
		}
		return c
	}
	if c := ask(); c.Grade != kind.Warn {
		t.Errorf("loose: %+v", c)
	}
	d.Top.Fixing.Bond = design.Silicone
	if c := ask(); c.Grade != kind.Pass || c.Found.ID != "bonded" {
		t.Errorf("bonded: %+v", c)
	}
}
