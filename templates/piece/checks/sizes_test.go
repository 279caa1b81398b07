package checks

import (
	"fmt"
	"strings"
	"testing"

	"rodsheet/geometry/measure"
	"rodsheet/templates/piece"
	"rodsheet/templates/piece/design"
	"rodsheet/templates/piece/internal/piecetest"
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
		check   string
		grade   Grade
		words   []string // none: no such check
	}{
		{"one size", []design.Design{piecetest.Low()}, "shared: spacer at the laps", Pass, nil},
		{"low and tall", []design.Design{piecetest.Low(), tallTable()}, "shared: spacer at the laps", Pass, []string{"28.64 mm for low and tall", "cut them together"}},
		{"plainly different", []design.Design{piecetest.Low(), tallTable()}, "shared: " + sharedSplay, Pass, nil},
		{"plainly different", []design.Design{piecetest.Low(), tallTable()}, "nearly shared: " + sharedSplay, Warn, nil},
		{"nearly", []design.Design{piecetest.Low(), near}, "nearly shared: " + sharedSplay, Warn, []string{"16° for low but 16.2° for tall", "set once"}},
		{"nearly", []design.Design{piecetest.Low(), deeper}, "nearly shared: depth of the stretchers", Warn, []string{"36 mm for low but 36.2 mm for tall"}},
		{"half of it", []design.Design{piecetest.Low(), deeper}, "nearly shared: blade height at the laps", Warn, []string{"18.1 mm"}},
		{"two of three", []design.Design{piecetest.Low(), tallTable(), third}, "shared: " + sharedSplay, Pass, []string{"11° for tall and third"}},
	} {
		var pieces []piece.Piece
		for _, d := range tt.designs {
			pieces = append(pieces, piecetest.Worked(t, d))
		}
		var got *Check
		for _, c := range checkAll(pieces) {
			if c.Name == tt.check {
				got = &c
			}
		}
		if (got != nil) != (tt.words != nil) {
			t.Errorf("%s: check %q is %+v", tt.name, tt.check, got)
			continue
		}
		for _, want := range tt.words {
			if got.Grade != tt.grade || !strings.Contains(got.Words, want) {
				t.Errorf("%s: %v %q, want %v and %q", tt.name, got.Grade, got.Words, tt.grade, want)
			}
		}
	}
}

// The mend of a splay that is nearly shared makes it shared.
func TestNearMissIsMended(t *testing.T) {
	near := tallTable()
	near.Legs.Given = measure.Radians(16.2)
	pieces := []piece.Piece{piecetest.Worked(t, piecetest.Low()), piecetest.Worked(t, near)}
	c := find(t, checkAll(pieces), "nearly shared: "+sharedSplay)
	if len(c.Fixes) != 1 || c.Fixes[0].Words != "splay the legs of tall by 16°" {
		t.Fatalf("mends: %+v", c.Fixes)
	}
	pieces[1] = piecetest.Worked(t, c.Fixes[0].Design)
	find(t, checkAll(pieces), "shared: "+sharedSplay)
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
		if find(t, checksOf(piecetest.Worked(t, d)), "standing").Grade == Warn {
			break
		}
	}
	graded(t, tippy, "standing", Pass)
	c := find(t, checkAll([]piece.Piece{piecetest.Worked(t, steady), piecetest.Worked(t, tippy)}), "nearly shared: "+sharedSplay)
	if len(c.Fixes) > 0 {
		t.Errorf("offered: %s", c.advice())
	}
}

// Nor where it puts other settings in doubt: the third size has the splay that
// the second would give up.
func TestNearMissIsNotMendedByAnother(t *testing.T) {
	near := tallTable()
	near.Legs.Given = measure.Radians(16.2)
	third := near
	third.Size, third.Legs.Height = "third", 500
	c := find(t, checkAll([]piece.Piece{piecetest.Worked(t, piecetest.Low()), piecetest.Worked(t, near), piecetest.Worked(t, third)}), "nearly shared: "+sharedSplay)
	if len(c.Fixes) > 0 {
		t.Errorf("offered: %s", c.advice())
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
	for enough < 20 && find(t, checkAll([]piece.Piece{with(enough)}), "boards for all parts").Grade != Pass {
		enough++
	}
	if enough == 20 {
		t.Fatalf("%d boards for one table", enough)
	}
	one, other := with(enough), with(enough)
	other.Design.Size = "other"
	few := find(t, checkAll([]piece.Piece{one, other}), "boards for all parts")
	if few.Grade != Warn || few.Value.Value < 1 || !strings.Contains(few.Words, "leg") && !strings.Contains(few.Words, "stretcher") {
		t.Errorf("the boards of one table for two: %+v", few)
	}
	for _, p := range Examine([]piece.Piece{one}).Panels() {
		if strings.Contains(p.Heading, "all sizes") {
			t.Errorf("one size has the heading %q", p.Heading)
		}
	}
	text := fmt.Sprint(Examine([]piece.Piece{one}).Panels())
	if !strings.Contains(text, "boards for all parts") {
		t.Error("the sheets do not say whether the boards are enough")
	}
}
