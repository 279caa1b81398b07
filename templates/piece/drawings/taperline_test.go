package drawings

import (
	"testing"

	"rodsheet/geometry/joint"
	"rodsheet/templates/piece/design"
	"rodsheet/templates/piece/internal/piecetest"
)

// The point on the sole is where the line of the taper crosses the level cut of the foot,
// as both are drawn on the ring side.
func TestTaperComesToTheSole(t *testing.T) {
	for _, splay := range []float64{0, 0.1, 0.4} {
		d := piecetest.Low()
		d.Legs.Given = splay
		d.Legs.Taper = &design.Taper{Start: 100, Foot: 22, Faces: joint.OneFace}
		p := piecetest.Worked(t, d)
		l := legShape{p, p.Frame.Leg}
		f := legFace{legShape: l, face: "ring-side", low: true, size: l.Breadth, lean: l.Splay}
		sole, ok := f.footLine()
		if !ok {
			t.Fatal("no sole")
		}
		piecetest.Nearly(t, "along the sole", onSole(p), sole.Length())
	}
}
