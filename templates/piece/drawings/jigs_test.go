package drawings

import (
	"math"
	"slices"
	"testing"

	"pgregory.net/rapid"

	"rodsheet/geometry"
	"rodsheet/geometry/measure"
	"rodsheet/templates"
	"rodsheet/templates/piece"
	"rodsheet/templates/piece/internal/piecetest"
	"rodsheet/templates/piece/shop"
	"rodsheet/templates/piece/wording"
)

// Every jig is drawn in the part of the work that it serves, with each of the figures that
// it is set by, in the unit of the job. How large its board is stands there or in the cut
// list.
func TestJigsAreFigured(t *testing.T) {
	for _, u := range []measure.Unit{measure.Millimetre, measure.Inch} {
		low, tall := piecetest.Low(), piecetest.Tall()
		low.Unit, tall.Unit = u, u
		pieces := piecetest.WorkedAll(t, low, tall)
		drawn := 0
		for at := shop.StockStage; at <= shop.FinishStage; at++ {
			section := jigs(pieces, at)
			drawn += len(section.Pictures)
			if (len(section.Panels) > 0) != (len(section.Pictures) > 0) {
				t.Errorf("stage %v: %d pictures, %d panels", at, len(section.Pictures), len(section.Panels))
			}
			i := 0
			for _, l := range shop.Jigs(pieces) {
				j := l.What
				if jigStages[j.Kind] != at {
					continue
				}
				for _, mm := range []float64{j.Wide, j.Tall, j.Near, j.Far, j.Apart} {
					if j.Kind == shop.LapSled && mm == j.Near {
						continue // the fence is set by the edges of the base
					}
					if (mm == j.Wide || mm == j.Tall) && j.Kind != shop.TenoningJig && cutTo(pieces, j, mm) {
						continue
					}
					text := measure.Length(mm).Text(u)
					if mm > 0 && !slices.ContainsFunc(section.Pictures[i].Lettering(), func(l templates.Label) bool { return l.Text == text }) {
						t.Errorf("%s: no %s", section.Pictures[i].Heading, text)
					}
				}
				i++
			}
		}
		if want := len(shop.Jigs(pieces)); drawn != want || want < 4 {
			t.Errorf("%d jigs drawn of %d", drawn, want)
		}
	}
}

// The card that makes the jigs calls for the picture of every one, in whatever envelope.
func TestTheCardOfJigsCallsForTheirPictures(t *testing.T) {
	pieces := piecetest.WorkedAll(t, piecetest.Low(), piecetest.Tall())
	var called, shown []templates.View
	for _, c := range shop.NewPlan(pieces).Cards {
		for _, v := range wording.Card(shop.NewPlan(pieces), c).Templates {
			if v.Part == "jig" {
				called = append(called, v)
			}
		}
	}
	for at := shop.StockStage; at <= shop.FinishStage; at++ {
		for _, p := range jigs(pieces, at).Pictures {
			shown = append(shown, p.View)
		}
	}
	for _, v := range shown {
		if v.Face == "" || !slices.Contains(called, v) {
			t.Errorf("no card calls for %v: %v", v, called)
		}
	}
	if len(shown) < 4 {
		t.Errorf("%d jigs are shown", len(shown))
	}
}

// cutTo reports whether a board of the cut list is so wide or long.
func cutTo(pieces []piece.Piece, j shop.Jig, mm float64) bool {
	bases := map[shop.Part]shop.Part{shop.LapSled: shop.LapSledBase, shop.TaperSled: shop.TaperSledBase}
	return slices.ContainsFunc(shop.NewPlan(pieces).Cuts.Rows, func(r shop.CutRow) bool {
		return r.Part == bases[j.Kind] && (r.Finished.Length == mm || r.Finished.Width == mm)
	})
}

// Each tapering jig is drawn round the leg of its own size: what lies dashed on it is as
// long as that blank, along the blade.
func TestTaperSledHoldsItsOwnLeg(t *testing.T) {
	pieces := piecetest.WorkedAll(t, piecetest.Low(), piecetest.Tall())
	drawn := jigs(pieces, shop.TaperStage).Pictures
	var sleds []piece.Lot[shop.Jig]
	for _, l := range shop.Jigs(pieces) {
		if l.What.Kind == shop.TaperSled {
			sleds = append(sleds, l)
		}
	}
	if len(drawn) != 2 || len(sleds) != 2 {
		t.Fatalf("%d pictures of %d sleds", len(drawn), len(sleds))
	}
	for i, l := range sleds {
		for _, p := range pieces {
			if p.Design.Size != l.Sizes[0] {
				continue
			}
			want := p.SawnLeg().Length * math.Cos(l.What.Angle)
			for _, s := range drawn[i].Strokes {
				if got := s.Points[len(s.Points)-1].Y - s.Points[0].Y; s.Role == templates.Hidden && math.Abs(got-want) > 1e-6 {
					t.Errorf("size %s: the leg is %.3f mm long, want %.3f", p.Design.Size, got, want)
				}
			}
		}
	}
}

// The layers of a blade's cover are as long as it is drawn, in steps of a jig's sizes, and
// the slot that the blade saws in the base ends under it.
func TestTheCoverOfTheBladeIsAsListed(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		p := piecetest.Worked(t, piecetest.Sound(t))
		pieces := []piece.Piece{p}
		rows := shop.NewPlan(pieces).Cuts.Rows
		i := slices.IndexFunc(rows, func(r shop.CutRow) bool { return r.Part == shop.LapSledCover })
		if i < 0 {
			t.Skip("laps by hand")
		}
		picture := jigs(pieces, shop.LapStage).Pictures[0]
		label := picture.Labels[slices.IndexFunc(picture.Labels, func(l templates.Label) bool { return l.ID == "blade-cover" })].On.A
		var cover geometry.Rect
		for _, a := range picture.Areas {
			if box := geometry.Bounds(a.Points...); box.Contains(label) && math.Abs(box.Width()-shop.JigSizesIn(p.Design.Unit).Covered) < 1e-9 {
				cover = box
			}
		}
		step := p.Design.Unit.Round(10, 0.5)
		if listed := rows[i].Finished.Length; listed < cover.Height()-1e-6 || listed > cover.Height()+step {
			t.Errorf("the cover is listed %g mm long, drawn %g", listed, cover.Height())
		}
		for _, a := range picture.Areas {
			if box := geometry.Bounds(a.Points...); a.Tone == templates.Dark && math.Abs(box.Width()-p.Kerf) < 1e-9 && box.Min.Y < cover.Min.Y {
				t.Errorf("the slot runs out from under the cover by %g mm", cover.Min.Y-box.Min.Y)
			}
		}
	})
}
