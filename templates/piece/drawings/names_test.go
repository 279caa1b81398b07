package drawings

import (
	"math"
	"testing"

	"pgregory.net/rapid"

	"rodsheet/geometry"
	"rodsheet/geometry/joint"
	"rodsheet/geometry/measure"
	"rodsheet/geometry/solid"
	"rodsheet/templates/piece"
	"rodsheet/templates/piece/design"
	"rodsheet/templates/piece/internal/piecetest"
)

// Each name stands on the face that it names, where this is seen: the patch of the
// part under it looks that way. x is along the part, the ring side y = 0, z up from
// the underside of a stretcher, from the back of a leg.
func TestNamesStandOnTheirFaces(t *testing.T) {
	ways := map[measure.ID]solid.Vec{
		"ring-side-reference": solid.V(0, -1, 0), "ring-side": solid.V(0, -1, 0), "outer-side": solid.V(0, 1, 0),
		"face-top": solid.V(0, 0, 1), "face-underside": solid.V(0, 0, -1),
		"stretcher-side": solid.V(0, 0, 1), "back-reference": solid.V(0, 0, -1),
		"leg-end": solid.V(1, 0, 0), "plain-end": solid.V(-1, 0, 0), "head": solid.V(1, 0, 0), "foot-end": solid.V(-1, 0, 0),
		"number": solid.V(0, -1, 0), "loop": solid.V(0, -1, 0),
	}
	for k, d := range piecetest.Bases() {
		p := piecetest.Worked(t, d)
		found := map[measure.ID]bool{}
		for _, sides := range []func(piece.Piece) (*namedPart, *namedPart){stretcherSides, legSides} {
			front, behind := sides(p)
			for _, n := range []*namedPart{front, behind} {
				patches := n.seen
				for _, l := range n.Labels {
					want, ok := ways[l.ID]
					if !ok {
						continue
					}
					found[l.ID] = true
					if got, seen := under(patches, l.On.A); !seen || got.Dot(want) < 0.8 {
						t.Errorf("base %d: %q stands on a face that looks to %.2f (seen: %v), want %v", k, l.ID, got, seen, want)
					}
				}
			}
		}
		if len(found) != len(ways) {
			t.Errorf("base %d: names %v, want %d of them", k, found, len(ways))
		}
	}
}

// The bottom of the slot is named on a line of it that is seen: in a leg its cheeks hide the rest.
func TestSlotBottomIsNamedWhereItIsSeen(t *testing.T) {
	for k, d := range piecetest.Bases() {
		for _, d.Legs.Mortise = range []joint.BridleMember{joint.MortiseInStretcher, joint.MortiseInLeg} {
			picture, near := bridleApart(piecetest.Worked(t, d)), math.Inf(1)
			for _, l := range picture.Labels {
				if l.ID != "slot-bottom" {
					continue
				}
				for _, s := range picture.Strokes {
					for i := range len(s.Points) - 1 {
						near = math.Min(near, geometry.Segment{A: s.Points[i], B: s.Points[i+1]}.Distance(l.On.A))
					}
				}
			}
			if near > 0.01 {
				t.Errorf("base %d, slot in the %v: the nearest line is %.2f mm off", k, d.Legs.Mortise, near)
			}
		}
	}
}

// under returns the way the face looks that is seen at a place, or right beside it.
func under(patches []solid.Patch, at geometry.Point) (n solid.Vec, seen bool) {
	best := math.Inf(-1)
	for _, q := range patches {
		deep := math.Inf(1)
		for i, c := range q.Corners {
			deep = math.Min(deep, q.Corners[(i+1)%len(q.Corners)].Sub(c).Unit().Cross(at.Sub(c)))
		}
		if deep > best {
			best, n = deep, q.N
		}
	}
	return n, best > -1e-6
}

// The parts of an open lap come together by the way between them: there they touch
// over the area of the lap and do not clash.
func TestOpenLapGoesTogether(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		p := piecetest.Worked(t, piecetest.Sound(t))
		crossed, crossing, _, up := openLap(p)
		back := crossing.Transform(solid.Translate(solid.V(0, 0, -up)))
		if len(solid.Clash(crossed, back)) > 0 {
			t.Error("the parts clash when they come together")
		}
		const far = 0.1 // mm, so little that ends which slope take nothing of the area
		past := back.Transform(solid.Translate(solid.V(0, 0, -math.Copysign(far, up))))
		over := 0.0
		for _, c := range solid.Clash(crossed, past) {
			over += c.Volume()
		}
		want := p.Frame.Ring.Lap(p.Kerf)
		if area := want.Width * want.Other / math.Sin(want.Angle); over < 0.99*area*far {
			t.Errorf("%g mm too far they clash by %.1f mm³, want the lap of %.1f mm²", far, over, area)
		}
	})
}

// Every arrow takes its stretcher from where it stands open to where it stands shut.
func TestArrowsShutTheRing(t *testing.T) {
	for k, d := range piecetest.Bases() {
		if d.Ring.Plain == design.ClosedEnd {
			continue
		}
		p := piecetest.Worked(t, d)
		picture, n := ringShut(p), p.Frame.Ring.Sides
		if len(picture.Arrows) != 2*n || len(picture.Labels) != 3 {
			t.Errorf("base %d: %d arrows, %d labels", k, len(picture.Arrows), len(picture.Labels))
			continue
		}
		for i, a := range picture.Arrows {
			open := p.PlaceOpen(i%n, [...]float64{1.8, 0.8}[i/n]*p.Apart())
			way := a.Points[1].Sub(a.Points[0])
			shut := open.Apply(solid.V(0, 0, 0)).Add(solid.V(way.X, way.Y, 0))
			if want := p.Place(i % n).Apply(solid.V(0, 0, 0)); shut.Distance(want) > 1e-9 {
				t.Errorf("base %d: arrow %d ends %.3f mm off", k, i, shut.Distance(want))
			}
		}
	}
}
