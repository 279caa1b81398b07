package shop

import (
	"math"
	"slices"
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
		off := offcutSolid(p, piecetest.Worked(t, d).Leg()).Transform(solid.RotateY(p.Frame.Leg.Splay))
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
		for _, f := range s.Faces() {
			q := f.Plane
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
	for _, c := range []struct {
		foot, kerf float64
		from       Source
		then       []NoteID
	}{
		{26, 3.2, TaperOffcuts, []NoteID{"taper-to-line", "keep-offcut", "later-wedges"}},
		{26, 9, LegSticks, []NoteID{"taper-to-line", "keep-offcut"}},
		{38, 3.2, LegSticks, []NoteID{"no-offcut"}},
	} {
		d := piecetest.Low()
		d.Legs.Taper, d.Saw.Kerf = &design.Taper{Start: 90, Foot: c.foot, Faces: joint.OneFace}, c.kerf
		p := piecetest.Worked(t, d)
		b := foldingWedge(p)
		if b.From != c.from {
			t.Errorf("foot %v, kerf %v: wedges from %v, want %v", c.foot, c.kerf, b.From, c.from)
		}
		if b.From == TaperOffcuts && b.Thick > p.Taper.Loss()-p.Kerf {
			t.Errorf("foot %v, kerf %v: a wedge %v thick", c.foot, c.kerf, b.Thick)
		}
		var then []NoteID
		for _, n := range only(stepsOf([]piece.Piece{p}), CutTaper)[0].Then.All() {
			then = append(then, n.ID)
		}
		if !slices.Equal(then, c.then) {
			t.Errorf("foot %v, kerf %v: notes %v, want %v", c.foot, c.kerf, then, c.then)
		}
		last := glueUp(p).Blocks.All()
		if got := last[len(last)-1].ID == "wedge-rise"; got != (c.from != TaperOffcuts) {
			t.Errorf("foot %v, kerf %v: wedges sawn by their own slope %v", c.foot, c.kerf, got)
		}
	}
}

// Where nothing is left to tape back a shim as thick as the loss takes its place.
func TestShimsInThePlaceOfOffcuts(t *testing.T) {
	for faces, turn := range taperTurns {
		d := piecetest.Low()
		d.Legs.Taper = &design.Taper{Start: 90, Foot: 36, Faces: faces}
		p := piecetest.Worked(t, d)
		want := note(turn.shim, length(p.Taper.Loss()))
		if faces == joint.OneFace { // the leg is not turned
			want = Note{}
		}
		if got := taperNotes(p)[1]; got != want {
			t.Errorf("%v: %v, want %v", faces, got, want)
		}
	}
}
