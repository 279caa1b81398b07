package shop

import (
	"math"
	"testing"

	"pgregory.net/rapid"

	"rodsheet/templates/piece"
	"rodsheet/templates/piece/design"
	"rodsheet/templates/piece/internal/piecetest"
)

// Every small piece comes out of the sticks that the list asks for: it goes into
// their section, and the sticks are so long that the saw never runs on less than is
// safely held, every piece taking its length and one kerf at least.
func TestSticksAreSafeAndEnough(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		d := piecetest.Low()
		d.Ring.Sides = rapid.IntRange(3, 8).Draw(t, "sides")
		d.Ring.Inside = rapid.Float64Range(150, 400).Draw(t, "inside")
		d.Legs.Given = rapid.Float64Range(0, 0.6).Draw(t, "splay")
		d.Legs.Breadth = rapid.Float64Range(20, 60).Draw(t, "breadth")
		d.Wood.Tests = rapid.IntRange(0, 1).Draw(t, "tests")
		d.Ring.Plain = design.PlainEnd(rapid.IntRange(0, 1).Draw(t, "plain end"))
		d.Legs.Taper = nil
		d.Top.Pads.Diameter = rapid.Float64Range(10, 70).Draw(t, "pad")
		second := d
		second.Size, second.Legs.Given = "second", d.Legs.Given/2
		pieces := piecetest.WorkedAll(t, d, second)
		list := cutListOf(pieces)
		type heap struct{ sticks, length, takes, largest float64 }
		heaps := map[Source]*heap{StretcherSticks: {}, LegSticks: {}, BlockSticks: {}}
		for _, r := range list.Rows {
			for from, part := range stickParts {
				if r.Part == part {
					checkStick(t, pieces, r)
					heaps[from].sticks += float64(r.Serves)
					heaps[from].length += float64(r.Serves) * r.Sawn.Length
				}
			}
			if r.From == Bought || r.From == Sheets {
				continue
			}
			if r.Finished.Width > math.Max(r.stick.section.Width, r.stick.section.Thickness)+piece.Slip || r.Finished.Ripped(r.stick.section.Thickness) > r.stick.section.Width+piece.Slip {
				t.Fatalf("%v %v does not come out of %v", r.Part, r.Finished, r.stick.section)
			}
			each := r.Finished.Length + d.Saw.Kerf
			if r.Part == FillerStrip || r.Part == FoldingWedge { // two of them may lie head to tail
				each /= 2
			}
			h := heaps[r.From]
			h.takes += float64(r.Parts()+r.Serves+r.Spares) * each
			h.largest = math.Max(h.largest, each+2*d.Saw.Kerf)
		}
		for from, h := range heaps {
			safe := pieces[0].SafeLength()
			if h.length-h.sticks*safe < h.takes-h.sticks*h.largest {
				t.Fatalf("source %v: %+v", from, *h)
			}
			if h.takes > 0 && h.sticks == 0 {
				t.Fatalf("source %v: no stick", from)
			}
		}
		if d.Wood.Tests == 0 && heaps[StretcherSticks].sticks == 0 {
			t.Fatal("no wood for a test lap")
		}
	})
}

func checkStick(t *rapid.T, pieces []piece.Piece, r CutRow) {
	longest := 600.0
	for _, p := range pieces {
		longest = math.Max(longest, math.Max(p.RoughStretcher(), p.SawnLeg().Length))
	}
	if r.Sawn.Length < pieces[0].SafeLength() || r.Sawn.Length > longest+1 {
		t.Fatalf("%v: a stick %v long, parts up to %v", r.Part, r.Sawn.Length, longest)
	}
}

// By hand: cauls of three at 60 mm and two kerfs of 3.2/cos 16° each, on one stick:
// two of them and the 300 mm that the last is sawn from.
func TestStickByHand(t *testing.T) {
	d := piecetest.Low()
	d.Saw.Highest = 10 // too low for the laps: no sled
	list := cutListOf(piecetest.WorkedAll(t, d))
	var got []piece.StockSize
	for _, r := range list.Rows {
		if r.Part == StretcherStick {
			got = append(got, r.Sawn)
		}
	}
	pads := 4 * (22 + 2*3.2) // of stretcher stock too, one spare
	want := math.Ceil(2*(60+6.4/math.Cos(16*math.Pi/180)) + pads + 300)
	if len(got) != 1 || got[0].Length != want {
		t.Errorf("sticks %v, want one of %v", got, want)
	}
}
