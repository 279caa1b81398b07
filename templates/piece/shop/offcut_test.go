package shop

import (
	"math"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"rodsheet/geometry/joint"
	"rodsheet/geometry/solid"
	"rodsheet/templates/piece"
	"rodsheet/templates/piece/design"
	"rodsheet/templates/piece/internal/piecetest"
)

// The offcut is what lies between straight and tapered leg, less what saw and
// plane take beside the line, measured on the solids.
func TestTaperOffcutAgainstTheSolids(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		d := piecetest.Sound(t)
		d.Legs.Taper = piecetest.Taper(t, d)
		d.Legs.Taper.Faces = joint.OneFace
		p := piecetest.Worked(t, d)
		d.Legs.Taper = nil
		off := offcutSolid(p, piecetest.Worked(t, d).Leg()).Transform(solid.TurnY(p.Frame.Leg.Splay))
		long, thick := taperOffcut(p)
		if len(off.Pieces) == 0 || long < 1 {
			if long > 1 || off.Volume() > 100 {
				t.Errorf("%v mm long, yet the solids leave %v mm³", long, off.Volume())
			}
			return
		}
		const hair = 1e-7
		inner := off.Bounds().Min.X
		edge := off.Cut(solid.Through(solid.V(inner+hair, 0, 0), solid.V(1, 0, 0))).Bounds()
		squared := off.Cut(solid.Through(solid.V(0, 0, edge.Min.Z), solid.V(0, 0, -1))).Bounds()
		if got := edge.Size().Z; math.Abs(got-long) > 1e-3 {
			t.Errorf("the solid is %v long, want %v", got, long)
		}
		if got := squared.Size().X; math.Abs(got-thick) > 1e-3 {
			t.Errorf("the solid is %v thick, want %v", got, thick)
		}
	})
}

// offcutSolid returns what falls off the one taper of a leg.
func offcutSolid(p piece.Piece, straight solid.Part) solid.Part {
	sin, cos := math.Sincos(p.Frame.Leg.Splay)
	inner := solid.V(-cos, 0, -sin)
	off := straight
	for _, s := range p.Leg().Pieces {
		off = off.Subtract(s)
		for _, q := range s.Planes() {
			if q.N.Dot(inner) > 0.8 && !hasFace(straight, q.N) { // the tapered face
				on := q.N.Mul(-q.Height(solid.Vec{}) + p.Kerf + planed)
				off = off.Cut(solid.Through(on, q.N).Flip())
			}
		}
	}
	return off
}

// A wide kerf leaves no wedge, and a shallow taper nothing at all: then neither
// the row of the taper nor the glue-up speaks of one.
func TestWedgesHangOnWhatTheSawLeaves(t *testing.T) {
	const wedge, hold, none = "later it is a wedge", "Keep the offcut: taped back", "there is no offcut"
	for _, c := range []struct {
		foot, kerf float64
		from       string
		has, no    []string
	}{
		{26, 3.2, "taper offcuts", []string{wedge, hold}, []string{none}},
		{26, 9, "offcuts of leg stock", []string{hold}, []string{wedge, none}},
		{38, 3.2, "offcuts of leg stock", []string{none}, []string{wedge, hold}},
	} {
		d := piecetest.Low()
		d.Legs.Taper, d.Saw.Kerf = &design.Taper{Start: 90, Foot: c.foot, Faces: joint.OneFace}, c.kerf
		p := workAll(t, d)[0]
		b := foldingWedge(p)
		if b.From != c.from {
			t.Errorf("foot %v, kerf %v: wedges from %s, want %s", c.foot, c.kerf, b.From, c.from)
		}
		if b.Offcut && b.Thick > p.Taper.Loss()-p.Kerf {
			t.Errorf("foot %v, kerf %v: a wedge %v thick", c.foot, c.kerf, b.Thick)
		}
		words := only(workingOrder(workAll(t, d)), doCutTaper)[0].words()
		for _, w := range c.has {
			if !strings.Contains(words, w) {
				t.Errorf("foot %v, kerf %v: no word of %q in %s", c.foot, c.kerf, w, words)
			}
		}
		for _, w := range c.no {
			if strings.Contains(words, w) {
				t.Errorf("foot %v, kerf %v: says %q", c.foot, c.kerf, w)
			}
		}
	}
}

// Where nothing is left to tape back a shim as thick as the loss takes its place.
func TestShimsInThePlaceOfOffcuts(t *testing.T) {
	for _, faces := range []joint.TaperFaces{joint.AdjacentFaces, joint.OppositeFaces, joint.FourFaces} {
		d := piecetest.Low()
		d.Legs.Taper = &design.Taper{Start: 90, Foot: 36, Faces: faces}
		p := workAll(t, d)[0]
		words := strings.Join(taperWords(p), " ")
		if want := "a shim on in its place, " + p.MM(p.Taper.Loss()) + " thick at the foot"; !strings.Contains(words, want) || strings.Contains(words, "back") {
			t.Errorf("%v: want %q in %s", faces, want, words)
		}
	}
}
