package shop

import (
	"math"
	"slices"
	"testing"

	"pgregory.net/rapid"

	"rodsheet/geometry"
	"rodsheet/geometry/joint"
	"rodsheet/templates/piece"
	"rodsheet/templates/piece/design"
	"rodsheet/templates/piece/internal/piecetest"
)

// A jig does what its figures say, built from them alone: the fence of the sled stands
// off square to the blade as the laps do and all of it on the base, with room for stop
// and part; a leg against the fence of the taper sled has its taper on the trimmed edge;
// the tenoning jig is wide enough for a part that leans on its strip.
func TestJigsHoldTheirParts(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		d := piecetest.Low()
		d.Saw.StopReach = 0
		d.Ring.Sides = rapid.IntRange(3, 8).Draw(t, "sides")
		d.Ring.Inside = rapid.Float64Range(200, 400).Draw(t, "inside")
		d.Ring.LegEndOver = rapid.Bool().Draw(t, "over")
		d.Legs.Given = rapid.Float64Range(0, 0.4).Draw(t, "splay")
		d.Legs.Taper = &design.Taper{Start: 100, Foot: rapid.Float64Range(14, 39).Draw(t, "foot"), Faces: joint.TaperFaces(rapid.IntRange(0, 3).Draw(t, "faces"))}
		p := piecetest.Worked(t, d)
		for _, l := range Jigs([]piece.Piece{p}) {
			switch j := l.What; j.Kind {
			case LapSled:
				checkLapSled(t, p, j)
			case TaperSled:
				checkTaperSled(t, p, j)
			case TenoningJig:
				splay := p.Frame.Leg.Splay
				if need := jigSizes(p).Cleat + p.Frame.Leg.Breadth/math.Cos(splay) + math.Tan(splay)*j.Tall; j.Wide < need {
					t.Fatalf("%v mm wide, a leg leaning away from the cleat takes %v", j.Wide, need)
				}
				// Leaning over the cleat it meets that where the strip comes to nothing.
				if s := fillerStrip(p); splay > 0 && j.High > s.Across+s.Thin/math.Tan(splay) {
					t.Fatalf("a cleat %v high, a leg leaning over it meets it at %v", j.High, s.Across+s.Thin/math.Tan(splay))
				}
			}
		}
	})
}

func checkLapSled(t *rapid.T, p piece.Piece, j Jig) {
	lap := p.EndLap()
	along := geometry.Pt(j.Wide, j.Far-j.Near)
	if off := math.Abs(math.Atan2(along.Y, along.X)); math.Abs(off-math.Abs(math.Pi/2-lap.Angle)) > 1e-9 {
		t.Fatalf("the fence stands %v off square, laps at %v", off, lap.Angle)
	}
	if j.Wide/math.Cos(j.Angle) < lap.Stop()+20 {
		t.Fatalf("stop at %v on a fence %v long", lap.Stop(), j.Wide/math.Cos(j.Angle))
	}
	// With the middle of a blade of 250 mm under the fence its rim, which comes through the
	// table 125·cos b from there, is covered, and the cover stands on the base.
	sheet := jigSizes(p).Sheet
	if rim := 125 * math.Cos(math.Asin((125-lap.BladeHeight()-sheet)/125)); j.Cover+sheet < rim+10 || float64(j.Layers)*sheet < lap.BladeHeight()+10 || j.Near < j.Cover+sheet {
		t.Fatalf("the blade comes out %v behind the fence, the cover is %v long, the fence at %v", rim, j.Cover, j.Near)
	}
	slope := along.Y / along.X
	for _, x := range []float64{-jigSizes(p).Beyond, 0, j.Wide} {
		y := j.Near + slope*x
		if y < jigSizes(p).Sheet/math.Cos(j.Angle) || y+p.Frame.Ring.Width/math.Cos(j.Angle)+jigSizes(p).Sheet > j.Tall {
			t.Fatalf("at %v the fence stands at %v on a base of %v", x, y, j.Tall)
		}
	}
	// The ring side lies on the fence and the shoulder along the blade, straight away
	// from the maker: where it leans away from the end at the stop, the fence comes
	// away from the maker on its way to the blade.
	if shift := lap.Shift(); math.Abs(shift) > 1e-9 && (shift > 0) != (j.Near > j.Far) {
		t.Fatalf("shift %v, the fence at %v by the blade and %v at the far edge", shift, j.Near, j.Far)
	}
}

// checkTaperSled lays the leg against the fence: its back runs through the two
// places, and the line of its taper must fall on x = 0.
func checkTaperSled(t *rapid.T, p piece.Piece, j Jig) {
	start, foot := geometry.Pt(j.Near, 0), geometry.Pt(j.Far, j.Apart)
	back := foot.Sub(start)
	if math.Abs(back.Norm()-p.Taper.Run()) > 1e-6 {
		t.Fatalf("the places are %v apart along the back, the taper runs %v", back.Norm(), p.Taper.Run())
	}
	square := back.Unit().Perp() // towards the blade
	for _, q := range []geometry.Point{start.Add(square.Mul(p.Frame.Leg.Breadth)), foot.Add(square.Mul(p.Frame.Leg.Breadth - p.Taper.Loss()))} {
		if math.Abs(q.X) > 1e-6 {
			t.Fatalf("the taper runs %v mm off the edge", q.X)
		}
	}
	if math.Abs(j.Angle-p.Taper.ToEdge()) > 1e-9 || j.Wide < j.Near+jigSizes(p).Cleat || j.Tall < p.SawnLeg().Length {
		t.Fatalf("taper sled %+v", j)
	}
}

// What holds a part at the saw, or stops it, is made on a card before, and every jig and
// spacer on one only.
func TestJigsAreMadeBeforeTheyServe(t *testing.T) {
	served := 0
	for name, designs := range piecetest.Cases() {
		made := map[Part][]string{} // sizes
		pieces := piecetest.WorkedAll(t, designs...)
		plan := NewPlan(pieces)
		count := 0
		for _, c := range plan.Cards {
			for _, s := range c.Steps {
				if s.Do == MakeJigs {
					for _, b := range s.Parts {
						made[b.Part] = append(made[b.Part], b.For...)
						count += b.Count
					}
				}
				jig := map[How]Part{OnEnd: TenoningJig, OnTaper: TaperSled}[s.Cut.How]
				if s.Cut.Spacer > 0 && s.Cut.How == OnGauge {
					jig = SpacerBlock
				}
				for _, b := range s.Parts {
					if jig == 0 || s.Cut.ByHand() || b.Size == "" {
						continue
					}
					served++
					if !slices.Contains(made[jig], b.Size) {
						t.Errorf("%s: card %d, %s: no jig %d for size %q yet, made are %v", name, c.Number, s.What.ID, jig, b.Size, made)
					}
				}
			}
		}
		want := 0 // as many as have their base, or face, in the cut list
		for _, r := range plan.Cuts.Rows {
			if r.Part == SpacerBlock || r.Part == TenoningJigFace || r.Part == LapSledBase || r.Part == TaperSledBase {
				want += r.Serves
			}
		}
		if count != want {
			t.Errorf("%s: %d jigs and spacers are made, want %d", name, count, want)
		}
	}
	if served == 0 {
		t.Error("no jig serves")
	}
}

// The sled is sawn and the spacer shot by the blade that saws the laps, and the kerf that is
// measured is that blade's: once, after it is on.
func TestTheBladeOfTheLapsComesFirst(t *testing.T) {
	for _, flat := range []bool{false, true} {
		d := piecetest.Low()
		d.Saw.FlatTooth = flat
		var order []NoteID
		for _, s := range stepsOf(piecetest.WorkedAll(t, d)) {
			switch id := s.What.ID; {
			case id == "step.measure-kerf", id == "step.flat-tooth", s.Do == MakeJigs && s.Parts[0].Part == LapSled:
				order = append(order, id)
			}
		}
		want := []NoteID{map[bool]NoteID{false: "step.measure-kerf", true: "step.flat-tooth"}[flat], "step.jig"}
		if !slices.Equal(order, want) {
			t.Errorf("flat teeth %v: %v, want %v", flat, order, want)
		}
	}
}
