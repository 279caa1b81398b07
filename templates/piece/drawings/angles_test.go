package drawings

import (
	"math"
	"slices"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"rodsheet/geometry/joint"
	"rodsheet/geometry/measure"
	"rodsheet/templates"
	"rodsheet/templates/piece"
	"rodsheet/templates/piece/internal/piecetest"
	"rodsheet/templates/piece/shop"
)

// forBench is aSheet without what rule and square do better.
var forBench = templates.Setting{Clear: aSheet.Clear}

// What set squares hold and what paper cannot hold has no triangle, and its row
// says how it is set instead.
func TestOnlyAnglesForPaperHaveTriangles(t *testing.T) {
	var job templates.Section
	for _, at := range []shop.Stage{shop.LapStage, shop.BridleStage, shop.TaperStage} {
		own, err := anglesJob(twoSizes(t), at, forBench)
		if err != nil {
			t.Fatal(err)
		}
		job.Append(own)
	}
	tapers, err := drawer(legJob).shared(twoSizes(t), forBench)
	if err != nil {
		t.Fatal(err)
	}
	var names []string
	for _, d := range job.Drawings {
		names = append(names, d.Name)
	}
	if want := []string{"angles 74° and 79°"}; !slices.Equal(names, want) {
		t.Errorf("triangles %q, want %q", names, want)
	}
	for bevel, want := range map[string]string{
		"bevel 60°": "Set by a set square", "2.63° to the edge": "two points", "1.67° to the edge": "two points",
	} {
		if !slices.ContainsFunc(slices.Concat(job.Panels, tapers.Panels), func(p templates.Panel) bool {
			return strings.Contains(strings.Join(p.Text, " "), bevel) && strings.Contains(p.Heading, want) ||
				slices.ContainsFunc(p.Table, func(row []string) bool { return row[0] == bevel && strings.Contains(row[2], want) })
		}) {
			t.Errorf("%s: %q is not said", bevel, want)
		}
	}
	for i, p := range tapers.Pictures {
		if of := tapers.Panels[i].Of; of != p.View || of.Size == "" {
			t.Errorf("the figures of %v are those of %v", of, p.View)
		}
	}
	if len(tapers.Pictures) != 2 {
		t.Errorf("%d pictures of tapers, want one for each size", len(tapers.Pictures))
	}
}

// The two points of a taper give its angle, on every face that shows one, and lie
// on the line that the full-size template of that face has.
func TestTwoPointsGiveTheTaper(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		d := piecetest.Sound(t)
		d.Legs.Taper = piecetest.Taper(t, d)
		p := piecetest.Worked(t, d)
		lines := taperLines(p)
		if want := map[bool]int{false: 1, true: 2}[d.Legs.Taper.Faces == joint.AdjacentFaces || d.Legs.Taper.Faces == joint.FourFaces]; len(lines) != want {
			t.Fatalf("%d lines for %v, want %d", len(lines), d.Legs.Taper.Faces, want)
		}
		full, err := legJob(p, aSheet)
		if err != nil {
			t.Fatal(err)
		}
		for k, l := range lines {
			angle := math.Atan2(math.Abs(l.AtRun-l.AtEnd), l.Run)
			if off := angle - p.Taper.ToEdge(); math.Abs(off) > 1e-6 {
				t.Errorf("%s: the points give %.9f°, want %.9f°", l.face, measure.Degrees(angle), measure.Degrees(p.Taper.ToEdge()))
			}
			if got := full.Drawings[k].View.Face; got != l.face {
				t.Fatalf("drawing %d shows the %s, line %d is on the %s", k, got, k, l.face)
			}
			if !onTemplate(p, full.Drawings[k], l) {
				t.Errorf("%s: no taper of the template has the points %.4f and, %.4f up, %.4f", l.face, l.AtEnd, l.Run, l.AtRun)
			}
		}
	})
}

// onTemplate reports whether a cut line of the template runs through both points of
// l, counted from either edge of the blank.
func onTemplate(p piece.Piece, d templates.Drawing, l taperLine) bool {
	foot := legShape{p, p.Frame.Leg}.foot()
	return slices.ContainsFunc(d.Strokes, func(s templates.Stroke) bool {
		if s.Role != templates.Cut || len(s.Points) != 2 {
			return false
		}
		a, b := s.Points[0], s.Points[1] // of it, the one at the foot second
		if a.X > b.X {
			a, b = b, a
		}
		near := func(x, y float64) bool { return math.Abs(x-y) < 1e-6 }
		along := near(b.X, foot) && near(a.X, foot-l.Run)
		from := func(y float64) float64 { return l.Across - y } // the back, or the outer side, lies above
		return along && (near(from(b.Y), l.AtEnd) && near(from(a.Y), l.AtRun) || l.both && near(b.Y, l.AtEnd) && near(a.Y, l.AtRun))
	})
}

// The gauge of the splay is used at the bottom of the slot on the part that has it, and at
// the shoulder of the other.
func TestSlotBottomAndShoulderAreToldApart(t *testing.T) {
	for mortise, slotted := range map[joint.BridleMember]string{joint.MortiseInLeg: "leg", joint.MortiseInStretcher: "stretcher"} {
		d := piecetest.Low()
		d.Legs.Mortise = mortise
		p := piecetest.Worked(t, d)
		if p.Bridle.Stretcher().Slot != (slotted == "stretcher") {
			t.Fatalf("slot in the %s is one in the stretcher: %v", slotted, p.Bridle.Stretcher().Slot)
		}
		text := uses(p)[0].places.String()
		for _, half := range strings.Split(text, "; ")[:2] {
			part := half[strings.LastIndex(half, " ")+1:]
			if strings.Contains(half, "slot bottom") != (part == slotted) || strings.Contains(half, "shoulder") == (part == slotted) {
				t.Errorf("slot in the %s: %q", slotted, text)
			}
		}
	}
}

// Every block that leans has its angle in the table of angles, under its own name.
func TestAnglesOfBlocksAreListed(t *testing.T) {
	names := map[shop.Part]string{shop.LegCaul: "leg cauls", shop.EndCaul: "end cauls", shop.FillerStrip: "filler strips"}
	met := map[shop.Part]bool{}
	rapid.Check(t, func(t *rapid.T) {
		p := piecetest.Worked(t, piecetest.Sound(t))
		for _, b := range shop.Blocks(p) {
			if names[b.Part] == "" || b.Angle == 0 {
				continue
			}
			met[b.Part] = true
			if !slices.ContainsFunc(uses(p), func(u use) bool {
				return math.Abs(math.Pi/2-b.Angle-u.angle) < 1e-6 && strings.Contains(u.places.String(), names[b.Part])
			}) {
				t.Errorf("no bevel of %g° is for %s", measure.Degrees(math.Pi/2-b.Angle), names[b.Part])
			}
		}
	})
	if len(met) < len(names) {
		t.Errorf("blocks met: %v", met)
	}
}
