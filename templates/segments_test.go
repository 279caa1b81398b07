package templates

import (
	"math"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"rodsheet/geometry"
	"rodsheet/geometry/joint"
	"rodsheet/geometry/measure"
)

// Machinery's Handbook, 31st ed., p. 82: the inradius of an octagon is 1.2071 of its
// side, of a polygon of 12 sides 1.8660.
func TestSegmentsFigures(t *testing.T) {
	for n, inradius := range map[int]float64{8: 1.2071, 12: 1.8660} {
		job := sound(t)(Segments(joint.SegmentRing{Pieces: n, Outer: 300, Inner: 200, Kerf: 3}, Setting{Clear: a4}))
		for name, want := range map[string]float64{"outer side": 150 / inradius, "ring side": 100 / inradius, "width of board": 50} {
			if got := valueOf(t, job, name); math.Abs(got-want) > 0.005 {
				t.Errorf("%d pieces: %s %.4f, want %.4f", n, name, got, want)
			}
		}
		if got := measure.Degrees(valueOf(t, job, "gauge, off square")); math.Abs(got-180/float64(n)) > 1e-9 {
			t.Errorf("%d pieces: %.9f off square", n, got)
		}
	}
}

// The piece is drawn as it is: its two ends are cut, and lean as said. A straight piece
// longer than a sheet is left to its figures.
func TestSegmentsPiece(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		r := joint.SegmentRing{Pieces: rapid.IntRange(3, 36).Draw(t, "pieces"), Outer: rapid.Float64Range(50, 2000).Draw(t, "outer"),
			Round: rapid.Bool().Draw(t, "round"), Kerf: 3}
		r.Inner = 0.8 * r.Outer
		job := sound(t)(Segments(r, Setting{Clear: a4, Full: rapid.Bool().Draw(t, "full")}))
		d := job.Drawings()[0]
		if d.View.Part != "segment" {
			if r.Round || r.OuterSide() < a4.Y && r.Board() < a4.X-10 {
				t.Fatalf("no piece of %v", r)
			}
			return
		}
		cuts := linesOf(d, Cut)
		half := d.View.Face == "right-half"
		if want := map[bool]int{false: 2, true: 1}[half]; len(cuts) != want {
			t.Fatalf("%d ends, want %d", len(cuts), want)
		}
		if b := d.Bounds(); half && (b.Min.X < -1e-9 || math.Abs(b.Max.X-r.OuterSide()/2) > 1e-9 || r.OuterSide() < a4.X) {
			t.Errorf("half of %v: %v", r, b)
		}
		for _, end := range cuts {
			way := end[1].Sub(end[0])
			if got := math.Abs(math.Atan(way.X / way.Y)); math.Abs(got-r.OffSquare()) > 1e-9 {
				t.Errorf("end %.9f off square, want %.9f", got, r.OffSquare())
			}
		}
		for _, l := range linesOf(d, Construction) {
			if len(l) == 2 && (l[0].Y != l[1].Y || l[0].Y != 0 && l[0].Y != r.Board()) {
				t.Errorf("%v is no edge of the board", l)
			}
			if len(l) > 2 && !r.Round {
				t.Error("a ring that keeps its flats has circles")
			}
		}
	})
}

func staves() joint.Staves {
	return joint.Staves{Pieces: 12, Top: 320, Bottom: 260, Height: 400, Thickness: 18}
}

// A stave's two points give the angle of its edge; straight staves have none.
func TestStaves(t *testing.T) {
	job := sound(t)(Staves(staves(), Setting{Clear: a4}))
	narrowing := (valueOf(t, job, "wide end, outer side") - valueOf(t, job, "narrow end, outer side")) / 2
	if got := math.Atan(narrowing / valueOf(t, job, "length of a stave")); math.Abs(got-valueOf(t, job, "to the edge, each side")) > 1e-9 || len(job.Sections[0].Pictures) != 1 {
		t.Errorf("to the edge %.9f, %d pictures", got, len(job.Sections[0].Pictures))
	}
	labels := map[measure.ID]string{}
	for _, l := range job.Sections[0].Pictures[0].Lettering() {
		labels[l.ID] += l.Text + " "
	}
	if want := measure.Length(narrowing).Text(measure.Millimetre); !strings.Contains(labels["from-edge"], want) || !strings.Contains(labels["along-edge"], "401.12 mm") {
		t.Errorf("the points are at %q, %q; want %s", labels["from-edge"], labels["along-edge"], want)
	}
	straight := staves()
	straight.Bottom = straight.Top
	job = sound(t)(Staves(straight, Setting{Clear: a4}))
	if got := measure.Degrees(valueOf(t, job, "edges, tilt")); math.Abs(got-15) > 1e-9 || len(job.Sections[0].Pictures) != 0 {
		t.Errorf("tilt %.9f, %d pictures", got, len(job.Sections[0].Pictures))
	}
}

func TestStavesInFull(t *testing.T) {
	job := sound(t)(Staves(staves(), Setting{Clear: a4, Full: true}))
	d := job.Drawings()[0]
	if got := linesOf(d, Cut)[0]; d.View.Part != "stave" || math.Abs(geometry.Area(got[:4])-(staves().Wide()+staves().Narrow())/2*staves().Long()) > 1e-6 {
		t.Errorf("%s: %v", d.Name, got)
	}
}

func TestSegmentsWords(t *testing.T) {
	job := sound(t)(Segments(joint.SegmentRing{Pieces: 12, Outer: 300, Inner: 200, Kerf: 3, Round: true}, Setting{Clear: a4}))
	wantSaid(t, job, "roll the board over", "leaves the last joint open by 6.5 mm", "face shield")
}

// The blade is tilted for every stave: by the fence where it is upright, in a jig where it
// narrows. Nobody is sent to a jig that the work does not take.
func TestStavesCaution(t *testing.T) {
	straight := staves()
	straight.Bottom = straight.Top
	job := sound(t)(Staves(straight, Setting{Clear: a4}))
	wantSaid(t, job, "from which the blade leans away", "Push blocks")
	if strings.Contains(said(job), "tapering jig") {
		t.Error("an upright stave is ripped in a tapering jig")
	}
	wantSaid(t, sound(t)(Staves(staves(), Setting{Clear: a4})), "from which the blade leans away", "tapering jig with hold-downs")
}
