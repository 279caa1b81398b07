package shop

import (
	"math"
	"testing"

	"rodsheet/geometry/solid"
	"rodsheet/templates/piece"
	"rodsheet/templates/piece/design"
	"rodsheet/templates/piece/internal/piecetest"
)

// noteOf returns the figures of a note of the steps of one kind.
func noteOf(t *testing.T, p piece.Piece, do Do, id NoteID) [3]Arg {
	t.Helper()
	for _, s := range only(NewPlan([]piece.Piece{p}).steps(), do) {
		for _, n := range append(s.Then.All(), s.Test) {
			if n.ID == id {
				return n.Args
			}
		}
	}
	t.Fatalf("no %s", id)
	return [3]Arg{}
}

// farthest returns how far a part reaches along x in a band of z.
func farthest(p solid.Part, from, to float64) float64 {
	most := math.Inf(-1)
	band := p.Cut(solid.Through(solid.V(0, 0, to), solid.V(0, 0, 1))).Cut(solid.Through(solid.V(0, 0, from), solid.V(0, 0, -1)))
	for _, s := range band.Pieces {
		most = math.Max(most, s.Bounds().Max.X)
	}
	return most
}

// The datum of the wrap-round stands where the finished parts have that corner: at the
// underside of the stretcher, and on the back of the leg.
func TestDatumStandsOnTheFinishedParts(t *testing.T) {
	for name, designs := range piecetest.Cases() {
		for _, p := range piecetest.WorkedAll(t, designs...) {
			if p.Frame.Leg.Splay == 0 || p.Design.Legs.Proud > 0 {
				continue
			}
			args := noteOf(t, p, KnifeShoulders, "datum-from")
			stretcher := farthest(p.Stretcher(), 0, 1e-6) + p.SawnStretcher().Length/2
			foot := LegPlace(p).Apply(solid.Vec{})
			head := LegPlace(p).Apply(solid.V(args[1].Figure.Value, 0, 0))
			if math.Abs(args[0].Figure.Value-stretcher) > 1e-3 {
				t.Errorf("%s: datum of the stretcher at %v, its corner at %v", name, args[0].Figure.Value, stretcher)
			}
			if math.Abs(head.Z-p.Frame.Ring.Depth) > 1e-3 || math.Abs(foot.Z-(p.Frame.Ring.Depth-p.Frame.Leg.Height)) > 1e-3 {
				t.Errorf("%s: datum of the leg at %v, the stretcher is %v deep", name, head, p.Frame.Ring.Depth)
			}
		}
	}
}

// Below the stretcher the leg leans away from it: the corner between them is wide.
func TestCornerUnderTheStretcher(t *testing.T) {
	p := piecetest.WorkedAll(t, piecetest.Low())[0]
	down := LegPlace(p).X.Mul(-1)
	want := math.Acos(down.Dot(solid.V(-1, 0, 0))) // the underside runs towards mid-length
	for do, id := range map[Do]NoteID{FitBridle: "slides-in-by-hand", GlueLegs: "bevel-before-glue"} {
		if got := noteOf(t, p, do, id)[0].Figure.Value; math.Abs(got-want) > 1e-4 {
			t.Errorf("%s: %v, want %v", id, got, want)
		}
	}
}

// Before it is trimmed the stretcher stands proud of the leg's back: in the middle of
// its thickness where it has the tenon, else on both sides. The clamp bears elsewhere.
func TestClampBearsBesideWhatIsProud(t *testing.T) {
	for name, designs := range piecetest.Cases() {
		for _, p := range piecetest.WorkedAll(t, designs...) {
			var last solid.Part
			plan := NewPlan([]piece.Piece{p})
			for w := range Works(p, plan.Cards, Stretcher) {
				if last = w.After; plan.Cards[w.Card].Steps[w.Step].Do == TrimHeads {
					last = w.Before
					break
				}
			}
			s, c := math.Sincos(p.Frame.Leg.Splay)
			back := solid.Through(LegPlace(p).Apply(solid.Vec{}), solid.V(c, 0, s))
			proud := last.Cut(back.Flip())
			middle := solid.Through(solid.V(0, p.Frame.Ring.Width/2, 0), solid.V(0, 1, 0))
			inMiddle := proud.Cut(solid.Plane{N: middle.N, D: middle.D + 0.5}).Cut(solid.Plane{N: middle.N.Mul(-1), D: -middle.D + 0.5}).Volume() > 1e-3
			want := NoteID("clamp-beside-tenon")
			if !inMiddle {
				want = "clamp-on-tenon"
			}
			if got := besideProud(p).ID; got != want || proud.Volume() < 1 {
				t.Errorf("%s: %s, want %s; %v mm³ stand proud", name, got, want, proud.Volume())
			}
		}
	}
}

// The blade stands as high as wood lies under the cut of the plain end, and no higher.
func TestBladeAtThePlainEnd(t *testing.T) {
	for name, designs := range piecetest.Cases() {
		for _, p := range piecetest.WorkedAll(t, designs...) {
			plan := NewPlan([]piece.Piece{p})
			for w := range Works(p, plan.Cards, Stretcher) {
				s := plan.Cards[w.Card].Steps[w.Step]
				if s.Do != TrimPlainEnd {
					continue
				}
				off := w.Before.Transform(w.At)
				for _, q := range w.After.Transform(w.At).Pieces {
					off = off.Subtract(q)
				}
				if got := off.Bounds().Max.Z; math.Abs(got-s.Saw.Cut.Height) > 1e-3 {
					t.Errorf("%s: the blade at %v, %v of wood is sawn through", name, s.Saw.Cut.Height, got)
				}
			}
		}
	}
}

// A wall of short grain is named where it is thinner than it is high: between leg and
// neighbour as the design asks to be clear, and past a closed plain end. By hand: what
// a square lap is wider by comes off the horn.
func TestThinWallsAreNamed(t *testing.T) {
	const slack = 0.5
	for _, c := range []struct{ clear, horn, want, past float64 }{{3, 14, 3, 14 - slack}, {30, 60, 0, 0}} {
		d := piecetest.Square()
		d.Ring.Plain, d.Ring.Slack, d.Ring.Horn, d.Legs.Clear = design.ClosedEnd, slack, c.horn, c.clear
		p := piecetest.Worked(t, d)
		said := map[NoteID]float64{}
		for _, s := range stepsOf([]piece.Piece{p}) {
			for _, n := range s.Then.All() {
				said[n.ID] = n.Args[0].Figure.Value
			}
		}
		if got := said["thin-at-lap"]; math.Abs(got-c.want) > 1e-9 {
			t.Errorf("%v mm named beside the leg, want %v", got, c.want)
		}
		if got := said["thin-horn"]; math.Abs(got-c.past) > 1e-9 {
			t.Errorf("%v mm named past the lap, want %v", got, c.past)
		}
	}
}
