package templates

import (
	"math"
	"slices"
	"strconv"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"rodsheet/geometry"
	"rodsheet/geometry/joint"
	"rodsheet/geometry/measure"
)

func leg(faces joint.TaperFaces) joint.Taper {
	return joint.Taper{Length: 700, Top: 40, Foot: 22, Start: 150, Faces: faces}
}

func TestTaperDrawings(t *testing.T) {
	hands := []string{"taper, right hand, face", "taper, left hand, face"}
	either := []string{"taper, face"}
	for _, c := range []struct {
		faces  joint.TaperFaces
		names  []string
		labels []string
	}{
		{joint.OneFace, hands, []string{"cut line, 1.87° to the edge", "reference edge"}},
		{joint.AdjacentFaces, hands, []string{"cut line, 1.87° to the edge", "reference edge: on the arris of the straight faces"}},
		{joint.OppositeFaces, either, []string{"cut line, 0.94° to the edge", "centre line"}},
		{joint.FourFaces, either, []string{"cut line, 0.94° to the edge", "centre line"}},
	} {
		job := sound(t)(Taper(leg(c.faces), Setting{Full: true}))
		var names []string
		for _, d := range job.Drawings() {
			names = append(names, d.Name)
		}
		if !slices.Equal(names, c.names) {
			t.Errorf("%s: drawings %q, want %q", c.faces, names, c.names)
		}
		texts := labelTexts(job.Drawings()[0])
		for _, want := range append(c.labels, "top 40 mm", "foot 22 mm", "start, 150 mm from the top end", "waste", "grain") {
			if !slices.Contains(texts, want) {
				t.Errorf("%s: no label %q among %q", c.faces, want, texts)
			}
		}
	}
}

func TestTaperFigures(t *testing.T) {
	one := sound(t)(Taper(leg(joint.OneFace), Setting{Full: true}))
	both := sound(t)(Taper(leg(joint.OppositeFaces), Setting{Full: true}))
	for _, c := range []struct {
		job  Job
		name string
		want float64
	}{
		{one, "to the edge, one face", math.Atan(18.0 / 550)},
		{one, "loss at the foot, one face", 18},
		{one, "length of cut", math.Hypot(18, 550)},
		{one, "one face, per 100 mm", 18.0 / 5.5},
		{one, "one face, per 12 in", 18.0 / 550 * 304.8},
		{both, "to the edge, one face", math.Atan(9.0 / 550)},
		{both, "included angle of both faces", 2 * math.Atan(9.0/550)},
		{both, "loss at the foot, one face", 9},
		{both, "one face, per 100 mm", 9.0 / 5.5},
		{both, "both faces together, per 100 mm", 18.0 / 5.5},
	} {
		if got := valueOf(t, c.job, c.name); math.Abs(got-c.want) > 1e-9 {
			t.Errorf("%s, %s = %.12f, want %.12f", c.job.Name, c.name, got, c.want)
		}
	}
	if slices.ContainsFunc(one.Figures, func(f Figure) bool { return f.ID == "taper.included" }) {
		t.Error("one tapered face has no included angle")
	}
}

// The table leaves out the taper per length of the other unit.
func TestTaperTable(t *testing.T) {
	for _, c := range []struct {
		unit           measure.Unit
		perMM, perFoot string
	}{
		{measure.Millimetre, "3.27 mm", ""},
		{measure.Inch, "", "25/64 in (0.393)"},
	} {
		job := sound(t)(Taper(leg(joint.OneFace), Setting{Unit: c.unit}))
		if got := cell(job.Sections[0].Panels[0], "one face, per 100 mm"); got != c.perMM {
			t.Errorf("%s: taper per 100 mm %q, want %q", c.unit, got, c.perMM)
		}
		if got := cell(job.Sections[0].Panels[0], "one face, per 12 in"); got != c.perFoot {
			t.Errorf("%s: taper per foot %q, want %q", c.unit, got, c.perFoot)
		}
	}
}

func TestTaperOffsets(t *testing.T) {
	job := sound(t)(Taper(joint.Taper{Length: 220, Top: 40, Foot: 20, Start: 20}, Setting{Full: true}))
	want := [][]string{
		{"from the top end", "from the reference edge", "to cut away"},
		{"0", "40", "0"}, {"20", "40", "0"}, {"50", "37", "3"}, {"100", "32", "8"},
		{"150", "27", "13"}, {"200", "22", "18"}, {"220", "20", "20"},
	}
	if got := job.Sections[0].Panels[1].Table; !slices.EqualFunc(got, want, slices.Equal[[]string]) {
		t.Errorf("offsets %q, want %q", got, want)
	}
	inches := joint.Taper{Length: 6 * 25.4, Top: 4 * 25.4, Foot: 1 * 25.4, Faces: joint.FourFaces}
	job = sound(t)(Taper(inches, Setting{Unit: measure.Inch}))
	want = [][]string{
		{"from the top end", "width", "each side of the centre line", "from each edge"},
		{"0", "4", "2", "0"}, {"2", "3", "1 1/2", "1/2"}, {"4", "2", "1", "1"}, {"6", "1", "1/2", "1 1/2"},
	}
	if got := job.Sections[0].Panels[1].Table; !slices.EqualFunc(got, want, slices.Equal[[]string]) {
		t.Errorf("offsets in inches %q, want %q", got, want)
	}
}

// Each arrangement says what becomes of the offcut, and every job how a saw is
// made safe.
func TestTaperWords(t *testing.T) {
	for f, want := range map[joint.TaperFaces]string{
		joint.OneFace:       "Keep the offcut",
		joint.AdjacentFaces: "left-hand template on its neighbour",
		joint.OppositeFaces: "the included angle, 1.87°",
		joint.FourFaces:     "Tape this offcut back too",
	} {
		job := sound(t)(Taper(leg(f), Setting{Full: true}))
		wantSaid(t, job, want, "A bevel taken off the tapered face differs", "Never trap the offcut")
	}
}

func TestTaperDrawingLaws(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		top := rapid.Float64Range(20, 100).Draw(t, "top")
		taper := joint.Taper{
			Length: rapid.Float64Range(250, 2000).Draw(t, "length"),
			Top:    top,
			Foot:   top * rapid.Float64Range(0.2, 0.95).Draw(t, "foot"),
			Start:  rapid.Float64Range(0, 120).Draw(t, "start"),
			Faces:  joint.TaperFaces(rapid.IntRange(0, 3).Draw(t, "faces")),
		}
		job := sound(t)(Taper(taper, Setting{Full: true}))
		d := job.Drawings()[0]
		if len(job.Drawings()) == 2 && !mirrored(d, job.Drawings()[1]) {
			t.Fatal("left hand is not the mirror image of the right")
		}
		cuts := linesOf(d, Cut)
		if want := len(taper.Cuts()); len(cuts) != want {
			t.Fatalf("%d cut lines, want %d", len(cuts), want)
		}
		loss, start, length := valueOf(t, job, "loss at the foot, one face"), valueOf(t, job, "start, from the top end"), valueOf(t, job, "length")
		for i, c := range cuts {
			from, to := geometry.Pt(start, top), geometry.Pt(length, top-loss)
			if i == 1 {
				from, to = geometry.Pt(start, 0), geometry.Pt(length, loss)
			}
			if c[0].Distance(from) > 1e-9 || c[1].Distance(to) > 1e-9 {
				t.Fatalf("cut %d runs %v, want %v to %v", i, c, from, to)
			}
			if got := c[0].Distance(c[1]); math.Abs(got-valueOf(t, job, "length of cut")) > 1e-9 {
				t.Fatalf("cut %d is %.9f long", i, got)
			}
		}
		lo, hi := taper.Edges(length)
		for _, l := range d.Labels {
			want := geometry.Segment{A: geometry.Pt(length, lo), B: geometry.Pt(length, hi)}
			if strings.HasPrefix(l.Text, "foot ") && l.On != want {
				t.Fatalf("foot is named at %v, want %v", l.On, want)
			}
		}
		for _, line := range linesOf(d, Waste) {
			mid := line[0].Lerp(line[1], 0.5)
			if lo, hi := taper.Edges(mid.X); lo+1e-9 < mid.Y && mid.Y < hi-1e-9 {
				t.Fatalf("hatching runs into the leg at %v", mid)
			}
			if !geometry.Box(-1e-9, -1e-9, length+1e-9, top+1e-9).Contains(mid) {
				t.Fatalf("hatching leaves the blank at %v", mid)
			}
		}
	})
}

// Without the templates two points give the angle of the cut, and the words speak of
// no template.
func TestTaperByTwoPoints(t *testing.T) {
	for _, f := range []joint.TaperFaces{joint.OneFace, joint.AdjacentFaces, joint.OppositeFaces, joint.FourFaces} {
		job := sound(t)(Taper(leg(f), Setting{}))
		if len(job.Drawings()) != 0 || len(job.Sections[0].Pictures) != 1 {
			t.Fatalf("%s: %d drawings, %d pictures", f, len(job.Drawings()), len(job.Sections[0].Pictures))
		}
		var said []float64
		var along float64
		for _, l := range job.Sections[0].Pictures[0].Lettering() {
			if l.ID == "on-edge" {
				said = append(said, 0)
			}
			if l.ID == "from-edge" || l.ID == "along-edge" {
				v, err := strconv.ParseFloat(strings.Fields(l.Text)[0], 64)
				if err != nil {
					t.Fatal(err)
				}
				if said = append(said, v); l.ID == "along-edge" {
					along = v
				}
			}
		}
		if got := labelTexts(Drawing{Labels: job.Sections[0].Pictures[0].Lettering()}); !slices.Contains(got, "start") {
			t.Errorf("%s: no start in %q", f, got)
		}
		if len(said) != 3 {
			t.Fatalf("%s: %v are said", f, said)
		}
		said = slices.DeleteFunc(said, func(v float64) bool { return v == along })
		if got, want := math.Atan(math.Abs(said[1]-said[0])/along), leg(f).ToEdge(); math.Abs(got-want) > 1e-6 {
			t.Errorf("%s: the points give %.9f, want %.9f", f, got, want)
		}
		for _, p := range job.Sections[0].Panels {
			if words := strings.Join(p.Text, " "); strings.Contains(words, "emplate") {
				t.Errorf("%s: a template is spoken of: %s", f, words)
			}
		}
	}
}
