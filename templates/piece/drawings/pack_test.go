package drawings

import (
	"fmt"
	"math"
	"slices"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"rodsheet/geometry"
	"rodsheet/geometry/measure"
	"rodsheet/templates"
	"rodsheet/templates/piece"
	"rodsheet/templates/piece/checks"
	"rodsheet/templates/piece/design"
	"rodsheet/templates/piece/internal/piecetest"
	"rodsheet/templates/piece/kind"
	"rodsheet/templates/piece/shop"
	"rodsheet/templates/piece/wording"
)

// twoSizes is a low and a tall table of one design.
func twoSizes(t rapid.TB) []piece.Piece {
	t.Helper()
	tall := piecetest.Low()
	tall.Size, tall.Legs.Height, tall.Legs.Given, tall.Top.Diameter = "tall", 560, measure.Radians(11), 480
	return []piece.Piece{piecetest.Worked(t, piecetest.Low()), piecetest.Worked(t, tall)}
}

func eightSided(t rapid.TB) piece.Piece {
	t.Helper()
	d := piecetest.Low()
	d.Ring.Sides = 8
	return piecetest.Worked(t, d)
}

// packed returns all that a pack can hold.
func packed(t rapid.TB, pieces []piece.Piece, plan bool) []templates.Section {
	t.Helper()
	return packedFor(t, pieces, kind.Options{For: kind.Buying | kind.Bench | kind.Record, Plan: plan})
}

func packedFor(t rapid.TB, pieces []piece.Piece, o kind.Options) []templates.Section {
	t.Helper()
	job, err := Pack(checks.Examine(pieces), o, aSheet)
	if err != nil {
		t.Fatalf("%v", err)
	}
	return job.Sections
}

func TestOrderOfThePack(t *testing.T) {
	var got []string
	for _, j := range packed(t, twoSizes(t), true) {
		got = append(got, j.Heading)
		if j.Empty() {
			t.Errorf("%s is empty", j.Heading)
		}
	}
	want := []string{"Cover", "Names", "Wood and buying", "Stock", "Laps", "Bridles", "Tapers and plain ends", "Top", "Ring and glue-up", "Finish", "Figures and checks"}
	if !slices.Equal(got, want) {
		t.Errorf("got %q, want %q", got, want)
	}
	if job, err := Pack(checks.Findings{}, kind.Options{}, aSheet); job.Sections != nil || err != nil {
		t.Errorf("a pack of nothing: %v, %v", job, err)
	}
}

// Each envelope is printed for what it is wanted for, and says whether it hangs on
// the sizes as milled. An envelope that does is another one after planing.
func TestWhatIsPrintedForWhat(t *testing.T) {
	pieces := twoSizes(t)
	for _, tt := range []struct {
		of   kind.Purposes
		want []string
	}{
		{0, []string{"Cover", "Names", "Wood and buying", "Stock", "Laps", "Bridles", "Tapers and plain ends", "Top", "Ring and glue-up", "Finish"}},
		{kind.Buying, []string{"Cover", "Wood and buying"}},
		{kind.Bench, []string{"Cover", "Names", "Stock", "Laps", "Bridles", "Tapers and plain ends", "Top", "Ring and glue-up", "Finish"}},
		{kind.Record, []string{"Figures and checks"}},
		{kind.Buying | kind.Record, []string{"Cover", "Wood and buying", "Figures and checks"}},
	} {
		var got []string
		for _, s := range packedFor(t, pieces, kind.Options{For: tt.of}) {
			got = append(got, s.Heading)
		}
		if !slices.Equal(got, tt.want) {
			t.Errorf("for %d: got %q, want %q", tt.of, got, tt.want)
		}
	}
}

// A drawing whose figures change with the wood is in an envelope that says so.
func TestWhatHangsOnTheSizesAsMilled(t *testing.T) {
	d := piecetest.Low()
	d.Top.Kind, d.Top.Outline = design.WoodTop, design.RingTop
	before := packedFor(t, []piece.Piece{piecetest.Worked(t, d)}, kind.Options{For: kind.Buying | kind.Bench | kind.Record, Plan: true})
	d.Milled = design.Milled{Width: d.Ring.Width - 0.6, Depth: d.Ring.Depth - 0.7, Breadth: d.Legs.Breadth - 0.8, Kerf: d.Saw.Kerf + 0.3}
	after := packedFor(t, []piece.Piece{piecetest.Worked(t, d)}, kind.Options{For: kind.Buying | kind.Bench | kind.Record, Plan: true})
	for i, s := range before {
		same := slices.EqualFunc(s.Drawings, after[i].Drawings, alike)
		if !same && !s.Milled {
			t.Errorf("%s changes with the wood and does not say so", s.Heading)
		}
	}
	for _, heading := range []string{"Cover", "Wood and buying"} {
		if jobTitled(t, before, heading).Milled {
			t.Errorf("%s is printed again after planing", heading)
		}
	}
}

// What a wrap-round shows is not shown again by faces, unless all is asked for;
// both sizes of one view follow each other.
func TestWrapRoundsStandForFaces(t *testing.T) {
	printed, err := Pack(checks.Examine(twoSizes(t)), kind.Options{}, forBench)
	if err != nil {
		t.Fatal(err)
	}
	sections := printed.Sections
	for _, tt := range []struct {
		heading string
		want    []string
	}{
		{"Laps", []string{"lap, wrap-round, both sizes"}},
		{"Tapers and plain ends", nil},
		{"Bridles", []string{
			"angles 74° and 79°",
			"bridle, stretcher, wrap-round, size low", "bridle, stretcher, wrap-round, size tall",
			"bridle, leg, wrap-round, size low", "bridle, leg, wrap-round, size tall",
		}},
	} {
		var got []string
		for _, d := range jobTitled(t, sections, tt.heading).Drawings {
			got = append(got, d.Name)
		}
		if !slices.Equal(got, tt.want) {
			t.Errorf("%s: got %q, want %q", tt.heading, got, tt.want)
		}
	}
	if full := jobTitled(t, packed(t, twoSizes(t), false), "Bridles"); len(full.Drawings) <= 8 {
		t.Errorf("%d drawings in full", len(full.Drawings))
	}
}

// templatesOf returns the drawings and panels of all envelopes of the bench.
func templatesOf(sections []templates.Section) (out templates.Section) {
	for _, s := range sections {
		if len(s.Drawings) > 0 {
			out.Append(s)
		}
	}
	return out
}

// jobTitled returns the job of a title.
func jobTitled(t *testing.T, jobs []templates.Section, title string) templates.Section {
	t.Helper()
	for _, j := range jobs {
		if j.Heading == title {
			return j
		}
	}
	t.Fatalf("no job %q", title)
	return templates.Section{}
}

// What two sizes share is drawn once and says so; what differs says its size;
// no two drawings hold the same lines.
func TestNothingIsDrawnTwice(t *testing.T) {
	job := templatesOf(packed(t, twoSizes(t), true))
	sizes := map[string]int{}
	for i, d := range job.Drawings {
		for _, e := range job.Drawings[:i] {
			if alike(templates.Drawing{Strokes: d.Strokes}, templates.Drawing{Strokes: e.Strokes}) {
				t.Errorf("%q and %q hold the same lines", d.Name, e.Name)
			}
			if d.Name == e.Name {
				t.Errorf("two drawings are called %q", d.Name)
			}
		}
		for _, size := range []string{"both sizes", "size low", "size tall"} {
			if strings.HasSuffix(d.Name, ", "+size) {
				sizes[size]++
			}
		}
	}
	if sizes["both sizes"] < 4 || sizes["size low"] == 0 || sizes["size low"] != sizes["size tall"] {
		t.Errorf("drawings by size: %v; want the laps and the pad shared, the rest in pairs", sizes)
	}
	for _, name := range []string{"lap, cut face, both sizes", "pad, top of the stretcher, both sizes", "leg, ring side, size tall"} {
		if !slices.ContainsFunc(job.Drawings, func(d templates.Drawing) bool { return d.Name == name }) {
			t.Errorf("no drawing %q", name)
		}
	}
}

// The same size given twice makes no more templates than once.
func TestASizeTwiceIsDrawnOnce(t *testing.T) {
	twin := piecetest.Low()
	twin.Size = "twin"
	one := templatesOf(packed(t, []piece.Piece{piecetest.Worked(t, piecetest.Low())}, true))
	two := templatesOf(packed(t, []piece.Piece{piecetest.Worked(t, piecetest.Low()), piecetest.Worked(t, twin)}, true))
	if len(two.Drawings) != len(one.Drawings) || len(two.Panels) != len(one.Panels) {
		t.Errorf("%d drawings and %d panels, want %d and %d", len(two.Drawings), len(two.Panels), len(one.Drawings), len(one.Panels))
	}
}

// Each distinct angle has one triangle and says every place where it is used.
func TestAnglesOnceEach(t *testing.T) {
	pieces := twoSizes(t)
	job := templatesOf(packed(t, pieces, false))
	var triangles []string
	for _, d := range job.Drawings {
		if name, ok := strings.CutPrefix(d.Name, "angle "); ok {
			triangles = append(triangles, name)
		}
	}
	if want := []string{"60°", "74°", "79°", "2.63°", "1.67°"}; !slices.Equal(triangles, want) {
		t.Errorf("triangles of %q, want %q", triangles, want)
	}
	var table [][]string
	for _, p := range job.Panels {
		table = append(table, p.Table...)
	}
	for _, want := range [][2]string{{"bevel 74°", "(size low)"}, {"bevel 74°", "foot"}, {"bevel 74°", "filler strips"}, {"bevel 60°", "laps (both sizes)"}, {"bevel 79°", "(size tall)"}, {"2.63° to the edge", "taper"}} {
		if !slices.ContainsFunc(table, func(row []string) bool {
			return len(row) == 3 && row[0] == want[0] && strings.Contains(row[2], want[1])
		}) {
			t.Errorf("%s is not said to be used for %q in %q", want[0], want[1], table)
		}
	}
}

// A square crossing and a hardly leaning leg have no triangle, but a row.
func TestAnglesWithoutTriangle(t *testing.T) {
	withoutTriangles(t, 0.2, "rise of 0.87 mm over 250 mm", aSheet)
	withoutTriangles(t, 2, "rise of 8.73 mm over 250 mm", forBench)
}

func withoutTriangles(t *testing.T, splay float64, rise string, s templates.Setting) {
	t.Helper()
	d := piecetest.Low()
	d.Ring.Sides, d.Legs.Given, d.Legs.Taper = 4, measure.Radians(splay), nil
	all := ""
	for _, at := range []shop.Stage{shop.LapStage, shop.BridleStage} {
		job, err := anglesJob([]piece.Piece{piecetest.Worked(t, d)}, at, s)
		if err != nil || len(job.Drawings) != 0 {
			t.Fatalf("%d triangles, %v; want none", len(job.Drawings), err)
		}
		for _, row := range job.Panels[0].Table {
			all += strings.Join(row, " ") + "\n"
		}
	}
	for _, want := range []string{"Set by a square, no sheet needed", rise} {
		if !strings.Contains(all, want) {
			t.Errorf("%q is not in\n%s", want, all)
		}
	}
}

// An angle that serves two ends has two rows and one triangle: stretchers of an
// octagon cross at 45°, and so lean its legs.
func TestAnAngleOfTwoUses(t *testing.T) {
	d := piecetest.Low()
	d.Ring.Sides, d.Legs.Given, d.Legs.Taper = 8, measure.Radians(45), nil
	for at, want := range map[shop.Stage]int{shop.LapStage: 1, shop.BridleStage: 0} {
		job, err := anglesJob([]piece.Piece{piecetest.Worked(t, d)}, at, aSheet)
		if err != nil || len(job.Drawings) != want || len(job.Panels) != 1+want || len(job.Panels[0].Table) != 2 {
			t.Errorf("%d triangles, %d panels, %q, %v", len(job.Drawings), len(job.Panels), job.Panels[0].Table, err)
		}
	}
}

// Whatever Work accepts has its drawings: no error, no size that is not finite or
// beyond reason, no empty name or label. A label has an identity, and what it says
// of a place is said there once.
func TestEveryPieceIsDrawn(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		d := piecetest.Sound(t)
		d.Unit = measure.Unit(rapid.IntRange(0, 1).Draw(t, "unit"))
		if rapid.Bool().Draw(t, "tapered") {
			d.Legs.Taper = piecetest.Taper(t, d)
		}
		d.Top = piecetest.Bases()[rapid.IntRange(0, 3).Draw(t, "top")].Top
		p, err := piece.Solve(d)
		if err != nil {
			t.Skip("no such piece")
		}
		checkJobs(t, packedFor(t, []piece.Piece{p}, kind.Options{For: kind.Bench, Plan: true}))
	})
}

// So is what is wild, as long as Work accepts it.
func TestWildPiecesHaveTheirPack(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		d := piecetest.Bases()[rapid.IntRange(0, 3).Draw(t, "base")]
		all := piecetest.Knobs(&d)
		for range rapid.IntRange(1, 3).Draw(t, "changes") {
			k := all[rapid.IntRange(0, len(all)-1).Draw(t, "figure")]
			k.Set(rapid.SampledFrom([]float64{0, 0.001, 0.5, 1, 2, 3, 7, 20, 90, 1000, 9999}).Draw(t, k.Name))
		}
		p, err := piece.Solve(d)
		if err != nil {
			return
		}
		checkJobs(t, packed(t, []piece.Piece{p}, true))
	})
}

func checkJobs(t *rapid.T, jobs []templates.Section) {
	t.Helper()
	for _, j := range jobs {
		for _, p := range j.Pictures {
			checkInk(t, p.Heading, p.Strokes, p.Lettering())
		}
		for _, d := range j.Drawings {
			if d.Name == "" {
				t.Errorf("%s: a drawing without a name", j.Heading)
			}
			checkInk(t, d.Name, d.Strokes, d.Labels)
		}
	}
}

func checkInk(t *rapid.T, name string, strokes []templates.Stroke, labels []templates.Label) {
	t.Helper()
	var all []geometry.Point
	for _, s := range strokes {
		if len(s.Points) < 2 {
			t.Errorf("%s: a stroke of %d points", name, len(s.Points))
		}
		all = append(all, s.Points...)
	}
	told := map[templates.Label]bool{}
	for _, l := range labels {
		if l.ID == "" || l.Text == "" || strings.Contains(l.Text, "%!") {
			t.Errorf("%s: label %q says %q", name, l.ID, l.Text)
		}
		at := templates.Label{ID: l.ID, On: l.On}
		if told[at] {
			t.Errorf("%s: label %q twice at %v", name, l.ID, l.On)
		}
		told[at] = true
		all = append(all, l.On.A, l.On.B)
	}
	const most = 1e5 // mm: ten times the longest figure of a design
	for _, q := range all {
		if !(math.Abs(q.X) < most && math.Abs(q.Y) < most) {
			t.Fatalf("%s: a point at %v", name, q)
		}
	}
	if b := geometry.Bounds(all...); len(strokes) == 0 || b.Width()+b.Height() < 1 {
		t.Errorf("%s: nothing is drawn", name)
	}
}

// Every label of an inch design is in inches.
func TestLabelsKeepTheUnit(t *testing.T) {
	d := piecetest.Low()
	d.Unit = measure.Inch
	for _, j := range packed(t, []piece.Piece{piecetest.Worked(t, d)}, true) {
		var labels []templates.Label
		for _, p := range j.Pictures {
			labels = append(labels, p.Lettering()...)
		}
		for _, d := range j.Drawings {
			labels = append(labels, d.Labels...)
		}
		for _, l := range labels {
			if strings.Contains(l.Text, " mm") {
				t.Errorf("%s: %q", j.Heading, l.Text)
			}
		}
	}
}

// The cover says the sizes, how to print, and what to mind of glass where
// there is any.
func TestCover(t *testing.T) {
	pieces := twoSizes(t)
	job := jobTitled(t, packed(t, pieces, false), "Cover")
	if len(job.Pictures) != 2 || job.Pictures[0].Heading != "size low" || job.Pictures[1].Heading != "size tall" {
		t.Errorf("%d pictures, want one of each size under its name", len(job.Pictures))
	}
	for _, want := range []string{"Main sizes", "How to print", "Cautions"} {
		if !slices.ContainsFunc(job.Panels, func(p templates.Panel) bool { return p.Heading == want }) {
			t.Errorf("no panel %q", want)
		}
	}
	table := job.Panels[0].Table
	for _, want := range [][]string{{"", "low", "tall"}, {"overall height", "396 mm", "576 mm"}, {"inside, along each side", "260 mm"}, {"splay from plumb", "16°", "11°"}} {
		if !slices.ContainsFunc(table, func(row []string) bool { return slices.Equal(row, want) }) {
			t.Errorf("%q is not in %q", want, table)
		}
	}
	d := piecetest.Low()
	d.Top.Kind = design.WoodTop
	for _, p := range []piece.Piece{pieces[0], piecetest.Worked(t, d)} {
		glass := strings.Contains(fmt.Sprint(jobTitled(t, packed(t, []piece.Piece{p}, false), "Cover").Panels), "Glass tempered")
		if glass != (p.Design.Top.Kind == design.GlassTop) {
			t.Errorf("caution of glass: %v", glass)
		}
	}
}

// Sizes stand side by side only as far as a sheet is wide; none is left out,
// and what all have alike stands once.
func TestMainSizesOfMany(t *testing.T) {
	var pieces []piece.Piece
	var names []string
	for i := range 12 {
		d := piecetest.Low()
		d.Size = fmt.Sprintf("size %d", i+1)
		d.Legs.Height += float64(20 * i)
		pieces, names = append(pieces, piecetest.Worked(t, d)), append(names, d.Size)
	}
	var heads, heights []string
	splays := 0
	rows := make([][][2]string, len(pieces))
	for i, p := range pieces {
		rows[i] = sizeRows(p)
	}
	for _, p := range mainSizes(names, rows) {
		for _, row := range p.Table {
			switch {
			case len(row) > 6:
				t.Errorf("%d columns: %q", len(row), row)
			case row[0] == "":
				heads = append(heads, row[1:]...)
			case row[0] == "overall height":
				heights = append(heights, row[1:]...)
			case row[0] == "splay from plumb":
				splays++
			}
		}
	}
	if !slices.Equal(heads, names) || len(heights) != 12 || heights[11] != pieces[11].MM(pieces[11].Overall()) {
		t.Errorf("%q and %q, want %q", heads, heights, names)
	}
	if splays != 1 {
		t.Errorf("the splay that all have stands %d times", splays)
	}
}

func BenchmarkPack(b *testing.B) {
	for _, bb := range []struct {
		name   string
		pieces []piece.Piece
	}{{"one size", twoSizes(b)[:1]}, {"two sizes", twoSizes(b)}, {"eight sides", []piece.Piece{eightSided(b)}}} {
		b.Run(bb.name, func(b *testing.B) {
			for b.Loop() {
				packed(b, bb.pieces, true)
			}
		})
	}
}

func BenchmarkViews(b *testing.B) {
	p := twoSizes(b)[0]
	for b.Loop() {
		views(p)
	}
}

// What is in doubt is on paper without being asked for: on the cover or, where that is
// full of sizes, before the first cut.
func TestDoubtsAreOnPaper(t *testing.T) {
	low, tall := piecetest.Low(), piecetest.Tall()
	for _, d := range []*design.Design{&low, &tall} {
		d.Ring.Plain, d.Ring.Slack = design.ClosedEnd, 0.3
	}
	for want, designs := range map[measure.ID][]design.Design{"cover": {low}, "stock": {low, tall}} {
		f := checks.Examine(piecetest.WorkedAll(t, designs...))
		said := wording.Report(f).DoubtPanels()
		job, err := Pack(f, kind.Options{}, templates.Setting{Unit: low.Unit})
		if err != nil || len(said) != 1 {
			t.Fatal(err, said)
		}
		for _, s := range job.Sections {
			has := slices.ContainsFunc(s.Panels, func(p templates.Panel) bool { return p.Heading == said[0].Heading })
			if has != (s.ID == want) {
				t.Errorf("%d sizes: doubts stand with %s: %v, want them with %s", len(designs), s.ID, has, want)
			}
		}
	}
}

// In inches the cover says which of two figures is the size; in millimetres there is one.
func TestTheCoverSaysWhichFigureIsTheSize(t *testing.T) {
	for _, u := range []measure.Unit{measure.Millimetre, measure.Inch} {
		d := piecetest.Low()
		d.Unit = u
		job := jobTitled(t, packed(t, []piece.Piece{piecetest.Worked(t, d)}, false), "Cover")
		if got := strings.Contains(fmt.Sprint(job.Panels), "the decimals in brackets are the size"); got != (u == measure.Inch) {
			t.Errorf("%v: said %v", u, got)
		}
	}
}
