package checks

import (
	"math"
	"strings"
	"testing"

	"rodsheet/geometry/measure"
	"rodsheet/templates/piece"
	"rodsheet/templates/piece/design"
	"rodsheet/templates/piece/internal/piecetest"
	"rodsheet/templates/piece/kind"
)

// tallTable is low with longer legs that spread less.
func tallTable() design.Design {
	d := piecetest.Low()
	d.Size, d.Legs.Height, d.Legs.Given = "tall", 560, measure.Radians(11)
	return d
}

func TestSharedSettings(t *testing.T) {
	near := tallTable()
	near.Legs.Given = measure.Radians(16.2)
	deeper := tallTable()
	deeper.Ring.Depth += 0.2
	third := tallTable()
	third.Size = "third"
	for _, tt := range []struct {
		name    string
		designs []design.Design
		check   measure.ID
		grade   kind.Grade
		values  []float64 // mm or degrees; none: no such check
		sizes   string
	}{
		{"one size", []design.Design{piecetest.Low()}, "shared.lap-spacer", kind.Pass, nil, ""},
		{"low and tall", []design.Design{piecetest.Low(), tallTable()}, "shared.lap-spacer", kind.Pass, []float64{24.8 / math.Sin(math.Pi/3)}, "low tall"},
		{"plainly different", []design.Design{piecetest.Low(), tallTable()}, "shared.splay", kind.Pass, nil, ""},
		{"plainly different", []design.Design{piecetest.Low(), tallTable()}, "nearly-shared.splay.1-2", kind.Warn, nil, ""},
		{"nearly", []design.Design{piecetest.Low(), near}, "nearly-shared.splay.1-2", kind.Warn, []float64{16, 16.2}, "low tall"},
		{"nearly", []design.Design{piecetest.Low(), deeper}, "nearly-shared.stretcher-depth.1-2", kind.Warn, []float64{36, 36.2}, "low tall"},
		{"half of it", []design.Design{piecetest.Low(), deeper}, "nearly-shared.lap-blade-height.1-2", kind.Warn, []float64{18, 18.1}, "low tall"},
		{"two of three", []design.Design{piecetest.Low(), tallTable(), third}, "shared.splay", kind.Pass, []float64{11}, "tall third"},
	} {
		var pieces []piece.Piece
		for _, d := range tt.designs {
			pieces = append(pieces, piecetest.Worked(t, d))
		}
		var got *Check
		for _, c := range checkAll(pieces) {
			if c.ID() == tt.check {
				got = &c
			}
		}
		if (got != nil) != (tt.values != nil) {
			t.Errorf("%s: check %q is %+v", tt.name, tt.check, got)
			continue
		}
		for i, want := range tt.values {
			value, _ := got.Found.Figures[i].JSON()
			if got.Grade != tt.grade || math.Abs(value-want) > 1e-6 || strings.Join(got.Found.Names, " ") != tt.sizes {
				t.Errorf("%s: %+v, want %v, %v and %s", tt.name, got, tt.grade, want, tt.sizes)
			}
		}
	}
}

// The mend of a splay that is nearly shared makes it shared.
func TestNearMissIsMended(t *testing.T) {
	near := tallTable()
	near.Legs.Given = measure.Radians(16.2)
	pieces := []piece.Piece{piecetest.Worked(t, piecetest.Low()), piecetest.Worked(t, near)}
	c := find(t, checkAll(pieces), "nearly-shared.splay.1-2")
	if len(c.Fixes) != 1 || !c.Fixes[0].Sized || c.Fixes[0].Design.Size != "tall" || advice(c) != "legs.splay 16°" {
		t.Fatalf("mends: %+v", c.Fixes)
	}
	pieces[1] = piecetest.Worked(t, c.Fixes[0].Design)
	find(t, checkAll(pieces), "shared.splay")
}

// It is not offered where it costs another fault: less splay takes the feet of
// the second size in, and a load at the rim then tips it.
func TestNearMissIsNotMendedByAFault(t *testing.T) {
	steady, tippy := piecetest.Low(), tallTable()
	for _, d := range []*design.Design{&steady, &tippy} {
		d.Top.Kind, d.Top.Thickness, d.Top.Pads = design.WoodTop, 20, design.Pads{}
	}
	tippy.Legs.Given = steady.Legs.Given + measure.Radians(0.2)
	for tippy.Top.Diameter = 500; ; tippy.Top.Diameter++ {
		d := tippy
		d.Legs.Given = steady.Legs.Given
		if find(t, checksOf(piecetest.Worked(t, d)), "standing").Grade == kind.Warn {
			break
		}
	}
	graded(t, tippy, "standing", kind.Pass)
	c := find(t, checkAll([]piece.Piece{piecetest.Worked(t, steady), piecetest.Worked(t, tippy)}), "nearly-shared.splay.1-2")
	if len(c.Fixes) > 0 {
		t.Errorf("offered: %s", advice(c))
	}
}

// Nor where it puts other settings in doubt: the third size has the splay that
// the second would give up.
func TestNearMissIsNotMendedByAnother(t *testing.T) {
	near := tallTable()
	near.Legs.Given = measure.Radians(16.2)
	third := near
	third.Size, third.Legs.Height = "third", 500
	c := find(t, checkAll([]piece.Piece{piecetest.Worked(t, piecetest.Low()), piecetest.Worked(t, near), piecetest.Worked(t, third)}), "nearly-shared.splay.1-2")
	if len(c.Fixes) > 0 {
		t.Errorf("offered: %s", advice(c))
	}
}

// Boards are asked for all sizes together: each may have enough by itself.
func TestBoardsForAllParts(t *testing.T) {
	with := func(count int) piece.Piece {
		d := piecetest.Low()
		d.Wood.Boards = nil
		if count > 0 {
			d.Wood.Boards = []design.Board{{Length: 1000, Width: 60, Thickness: 50, Count: count}}
		}
		return piecetest.Worked(t, d)
	}
	if got := checkAll([]piece.Piece{with(0)}); len(got) != 0 {
		t.Errorf("without boards: %v", got)
	}
	enough := 1
	for enough < 20 && find(t, checkAll([]piece.Piece{with(enough)}), "boards").Grade != kind.Pass {
		enough++
	}
	if enough == 20 {
		t.Fatalf("%d boards for one table", enough)
	}
	one, other := with(enough), with(enough)
	other.Design.Size = "other"
	few := find(t, checkAll([]piece.Piece{one, other}), "boards")
	if few.Grade != kind.Warn || few.Value.Value < 1 || few.Found.Missing[0].Count < 1 {
		t.Errorf("the boards of one table for two: %+v", few)
	}
}
