package checks

import (
	"math"
	"regexp"
	"testing"

	"pgregory.net/rapid"

	"rodsheet/geometry/measure"
	"rodsheet/templates/piece"
	"rodsheet/templates/piece/internal/piecetest"
)

// figure returns a figure by its ID.
func figure(t *testing.T, p piece.Piece, id measure.ID) measure.Quantity {
	t.Helper()
	for _, g := range withSolids(p).groups() {
		for _, f := range g.Figures {
			if f.ID == id {
				return f.Value
			}
		}
	}
	t.Errorf("no figure %s", id)
	return measure.Quantity{}
}

// The figures of the low table, reckoned with a pocket calculator from its
// decisions: inside 260, stretchers 28 by 36, legs 40 at 16°, 380 high, 3 clear.
func TestFiguresByHand(t *testing.T) {
	p := piecetest.Worked(t, piecetest.Low())
	const sin60, tan60, cos16, tan16 = 0.8660254038, 1.7320508076, 0.9612616959, 0.2867453858
	for _, tt := range []struct {
		id   measure.ID
		want float64
	}{
		{"ring.crossing", math.Pi / 3},
		{"ring.to-ring-side", 130 / tan60},
		{"ring.to-axis", 130/tan60 + 14},
		{"stretcher.ring-side.inner-shoulder", 130},
		{"stretcher.ring-side.outer-shoulder", 130 + 28/sin60},
		{"stretcher.outer-side.inner-shoulder", 130 + 28/tan60},
		{"stretcher.outer-side.outer-shoulder", 130 + 28/tan60 + 28/sin60},
		{"lap.spacer", (28 - 3.2) / sin60},
		{"lap.blade-height", 18},
		{"lap.usual-rule.square", 3.2 * (1 - sin60)},
		{"leg.between-level-cuts", 380 / cos16},
		{"leg.finished", 380/cos16 + 40*tan16},
		{"leg.splay-rise", 200 * tan16},
		{"leg.ends.bevel", 74 * math.Pi / 180},
		{"leg.section.along", 40 / cos16},
		{"leg.taper.joint-ends", 36/cos16 - 40*tan16},
		{"bridle.tenon", 28. / 3},
		{"bridle.clearance", 3},
		{"bridle.cut-height.leg", 36 + 3*cos16},
		{"bridle.filler-strip", 16 * math.Pi / 180},
		{"top.area", math.Pi * 320 * 320},
		{"top.past-sides", 320 - (130/tan60 + 28)},
		{"top.past-corners", 320 - 2*(130/tan60+28)},
		{"top.pad.mid-to-centre", 130 + 14/tan60 - 11/sin60},
		{"weight.top", math.Pi * 320 * 320 * 8 * 2500e-9},
		{"standing.rim", 320},
		// White ash, radial and tangential coefficients: USDA, Wood Handbook,
		// FPL-GTR-190 (2010), Table 13-5. Four per cent of moisture.
		{"movement.stretcher-width.quarter-sawn", 28 * 0.00169 * 4},
		{"movement.stretcher-width.flat-sawn", 28 * 0.00274 * 4},
	} {
		if got := figure(t, p, tt.id).Value; math.Abs(got-tt.want) > 1e-6*math.Max(1, tt.want) {
			t.Errorf("%s: got %.9f, want %.9f", tt.id, got, tt.want)
		}
	}
}

// A proud head makes the leg longer at its trim line: what is counted from its
// trimmed tip, or from one level cut to the other, holds on the solid.
func TestFiguresOfAProudHead(t *testing.T) {
	d := piecetest.Low()
	d.Legs.Proud, d.Legs.Taper = 3, nil
	p := piecetest.Worked(t, d)
	tan, cos := math.Tan(p.Frame.Leg.Splay), math.Cos(p.Frame.Leg.Splay)
	b := p.Leg().Bounds()
	piecetest.Nearly(t, "true length", figure(t, p, "leg.between-level-cuts").Value, b.Size().Z/cos)
	// The trimmed tip is the head's long corner, on the inner edge; the outer one
	// is shorter by what the level cut leans.
	inner := b.Max.Z / cos // the underside of the stretcher is z = 0
	piecetest.Nearly(t, "inner edge", figure(t, p, "bridle.leg-shoulder.stretcher-side").Value, inner)
	piecetest.Nearly(t, "outer edge", figure(t, p, "bridle.leg-shoulder.back").Value, inner+40*tan)
}

// The foot on the floor is measured on the solid: with the inner face tapered
// that face leans more than the leg.
func TestFootprint(t *testing.T) {
	d := piecetest.Low()
	d.Legs.Taper = nil
	p := piecetest.Worked(t, d)
	piecetest.Nearly(t, "plain foot", figure(t, p, "feet.along").Value, p.Frame.Leg.Section())
	piecetest.Nearly(t, "across", figure(t, p, "feet.across").Value, 28)

	p = piecetest.Worked(t, piecetest.Low())
	// The inner face comes nearer to the outer one by 14 mm in 305.3 mm.
	turn := math.Atan(14 / (380/math.Cos(16*math.Pi/180) - 90))
	piecetest.Nearly(t, "taper", p.Taper.ToEdge(), turn)
	got := figure(t, p, "feet.along").Value
	// Square across at the outer edge of the foot the leg is 26 mm; with the level
	// cut and the inner face that makes a triangle of angles 16°, 90° + turn and
	// the rest.
	piecetest.Nearly(t, "tapered foot", got, 26*math.Cos(turn)/math.Cos(16*math.Pi/180+turn))
}

// An identity is lower-case words joined by hyphens, in parts joined by points; no
// two checks or figures of a size share one, whatever the design.
func TestIdentities(t *testing.T) {
	word := regexp.MustCompile(`^[a-z]+(-[a-z0-9]+)*(\.[a-z0-9]+(-[a-z0-9]+)*)*$`)
	rapid.Check(t, func(t *rapid.T) {
		p, err := piece.Solve(piecetest.Any(t))
		if err != nil {
			t.Skip("no such piece")
		}
		f := Examine([]piece.Piece{p, p, p})
		seen := map[measure.ID]bool{}
		once := func(kind string, id measure.ID) {
			if !word.MatchString(string(id)) || seen[measure.ID(kind)+id] {
				t.Errorf("%s %q is none, or stands twice", kind, id)
			}
			seen[measure.ID(kind)+id] = true
		}
		for _, c := range f.Sizes[0].Checks {
			once("check ", c.ID())
		}
		for _, c := range f.Together {
			once("together ", c.ID())
		}
		for _, g := range f.Sizes[0].Groups {
			once("group ", g.ID)
			for _, figure := range g.Figures {
				once("figure ", figure.ID)
			}
		}
	})
}

// The circles of the feet, by hand: a leg of 40 at 16° whose outer edge stands at E
// on the floor, 28 thick, E + Height·tan α along the stretcher; the outermost
// corner of its sole is the outer one on the outer side of the stretcher.
func TestCirclesOfTheFeet(t *testing.T) {
	d := piecetest.Low()
	d.Legs.Taper = nil
	p := piecetest.Worked(t, d)
	apothem := 130 / math.Sqrt(3)
	along := p.Frame.Leg.At + 380*math.Tan(16*math.Pi/180)
	piecetest.Nearly(t, "middles", figure(t, p, "feet.circle").Value, 2*math.Hypot(along, apothem+14))
	piecetest.Nearly(t, "corners", figure(t, p, "feet.outermost-circle").Value, 2*math.Hypot(along, apothem+28))
}
