package aprons

import (
	"errors"
	"flag"
	"fmt"
	"maps"
	"math"
	"os"
	"slices"
	"strings"
	"testing"

	"rodsheet/geometry/joint"
	"rodsheet/geometry/lists"
	"rodsheet/geometry/measure"
	"rodsheet/geometry/solid"
	"rodsheet/templates/piece/design"
	"rodsheet/templates/piece/internal/piecetest"
	"rodsheet/templates/piece/kind"
)

// Each check comes out as it should on a table made for it, and what it offers mends it.
func TestChecks(t *testing.T) {
	stretchers := design.Rail{Depth: 30, Thickness: 18, Height: 120, Inset: 3}
	for _, tt := range []struct {
		id     measure.ID
		want   kind.Grade
		mends  bool
		change func(*design.Frame)
	}{
		{"aprons.end-on-leg", kind.Fail, true, func(f *design.Frame) { f.Aprons.Inset = 20 }},
		{"aprons.mitre", kind.Fail, true, func(f *design.Frame) { f.Aprons.Inset = 17.6 }},
		{"aprons.stretcher-mitre", kind.Fail, true, func(f *design.Frame) { f.Stretchers = stretchers; f.Stretchers.Thickness = 27 }},
		{"aprons.tenons-meet", kind.Fail, true, func(f *design.Frame) { f.Aprons.Long = 35 }},
		{"aprons.outside-mortise", kind.Warn, true, func(f *design.Frame) { f.Aprons.Inset, f.Aprons.Tenon = 0, 12 }},
		{"aprons.outside-mortise", kind.Fail, true, func(f *design.Frame) { f.Aprons.Inset, f.Aprons.Tenon = 0, 21 }},
		{"aprons.above-tenon", kind.Warn, true, func(f *design.Frame) { f.Aprons.UpperCut = 3 }},
		{"aprons.above-tenon", kind.Warn, true, func(f *design.Frame) { f.Aprons.UpperCut = 1 }}, // of 0 it would follow
		{"aprons.taper-below", kind.Fail, true, func(f *design.Frame) { f.Legs.Start = 60 }},
		{"aprons.stretcher-end", kind.Fail, true, func(f *design.Frame) { f.Stretchers = stretchers; f.Stretchers.Thickness = 28 }},
		{"aprons.stretcher-tenons", kind.Fail, true, func(f *design.Frame) { f.Stretchers = stretchers; f.Stretchers.Long = 25 }},
		{"aprons.stretcher-mortise", kind.Warn, true, func(f *design.Frame) { f.Stretchers = stretchers; f.Stretchers.Inset, f.Stretchers.Tenon = 0, 8 }},
		{"aprons.taper-at-stretcher", kind.Fail, true, func(f *design.Frame) { f.Stretchers = stretchers; f.Legs.Start = 390 }},
		{"aprons.over-arch", kind.Warn, true, func(f *design.Frame) { f.Aprons.Arch = 60 }},
		{"aprons.overhang", kind.Warn, true, func(f *design.Frame) { f.Top.Overhang = -5 }},
		{"aprons.overhang", kind.Warn, true, func(f *design.Frame) { f.Top.Corner, f.Top.CornerSize = design.RoundedCorner, 110 }},
		{"aprons.overhang", kind.Warn, true, func(f *design.Frame) { f.Top.Corner, f.Top.CornerSize = design.ClippedCorner, 70 }},
		{"aprons.overhang", kind.Warn, true, func(f *design.Frame) { f.Top.Outline, f.Top.Diameter = design.RoundOnFrame, 640 }},
		{"aprons.overhang", kind.Warn, true, func(f *design.Frame) {
			f.Top.Outline, f.Top.Length, f.Top.Width = design.OvalOnFrame, 800, 520
		}},
		{"aprons.screw-edge", kind.Warn, true, func(f *design.Frame) { f.Top.Fixing, f.Top.Overhang, f.Aprons.Inset = design.Screws, -12, 3 }},
		{"aprons.tipping-load", kind.Warn, true, func(f *design.Frame) { f.Top.Overhang, f.Length, f.Width, f.Top.Thickness = 260, 220, 220, 12 }},
		{"aprons.top-held", kind.Warn, false, func(f *design.Frame) {}},
		{"aprons.screw-through", kind.Fail, true, func(f *design.Frame) { f.Top.Fixing, f.Top.Thickness, f.Aprons.Depth = design.Screws, 4, 10 }},
		{"aprons.screw-hold", kind.Warn, true, func(f *design.Frame) { f.Top.Fixing, f.Top.Thickness = design.Screws, 10 }},
		{"aprons.beside-screw", kind.Warn, true, func(f *design.Frame) { f.Top.Fixing, f.Aprons.Thickness = design.Screws, 18 }},
		{"aprons.screw-bore", kind.Warn, true, func(f *design.Frame) { f.Top.Fixing, f.Aprons.Depth = design.Screws, 130 }},
		{"aprons.behind-groove", kind.Warn, true, func(f *design.Frame) { f.Top.Fixing, f.Aprons.Thickness = design.Buttons, 12 }},
		{"aprons.behind-groove", kind.Fail, true, func(f *design.Frame) { f.Top.Fixing, f.Aprons.Thickness = design.Buttons, 8.5 }},
		{"aprons.groove-long", kind.Fail, true, func(f *design.Frame) { f.Top.Fixing, f.Length = design.Buttons, 135 }},
		{"aprons.tongue", kind.Fail, false, func(f *design.Frame) { f.Top.Fixing, f.Legs.Rake, f.Legs.Splay = design.Buttons, 0.78, 0.78 }},
		{"aprons.button-edge", kind.Warn, true, func(f *design.Frame) { f.Top.Fixing, f.Top.Overhang, f.Aprons.Inset = design.Buttons, -38, 3 }},
		{"aprons.tenon-hold", kind.Warn, true, func(f *design.Frame) { f.Aprons.Long = 7 }},
		{"aprons.tenon-hold", kind.Warn, true, func(f *design.Frame) { // its longer cheek is long enough
			f.Legs.Size, f.Legs.Foot, f.Aprons.Thickness, f.Aprons.Tenon, f.Aprons.Inset, f.Aprons.Long = 17, 12, 12, 7, 3, 0
		}},
		{"aprons.stretcher-hold", kind.Warn, true, func(f *design.Frame) { f.Stretchers = stretchers; f.Stretchers.Long = 7 }},
		{"aprons.tilt", kind.Warn, false, func(f *design.Frame) {
			f.Shape, f.Sides, f.Legs.Splay, f.Legs.Size = design.RegularFrame, 3, 0, 56
		}},
		{"aprons.clash", kind.Fail, true, func(f *design.Frame) { f.Shape, f.Sides, f.Legs.Splay = design.RegularFrame, 3, 0 }},
		{"aprons.clash", kind.Fail, true, func(f *design.Frame) { // by planing the aprons thinner, what the design says moves nothing
			f.Shape, f.Sides, f.Legs.Splay, f.Legs.Size, f.Milled = design.RegularFrame, 3, 0, 50, design.FrameMilled{Legs: 47, Aprons: 24}
		}},
	} {
		d := table()
		tt.change(&d.Frame)
		w, err := Kind().Solve([]design.Design{d})
		if err != nil {
			t.Errorf("%s: %v", tt.id, err)
			continue
		}
		found := false
		for _, c := range w.Report().Sizes[0].Checks {
			if c.ID != tt.id {
				continue
			}
			found = true
			piecetest.Written(t, d, c)
			if c.Grade != tt.want || c.Words == "" || (len(c.Fixes) > 0) != tt.mends {
				t.Errorf("%s: %v, %d fixes, %q", tt.id, c.Grade, len(c.Fixes), c.Words)
			}
		}
		if !found {
			t.Errorf("%s was not asked", tt.id)
		}
	}
	for _, c := range newModel(table()).Checks() {
		if c.Grade != kind.Pass && c.ID != "aprons.top-held" {
			t.Errorf("the sound table: %s: %s", c.ID, c.Words)
		}
	}
}

// A milled size of stretchers without stretchers is refused for that.
func TestMilledStretchersOfNone(t *testing.T) {
	d := table()
	d.Frame.Milled.Stretchers = 17.7
	var bound *measure.BoundError
	if _, err := piecetest.Solved(judge(d, nil)); !errors.As(err, &bound) || bound.Than != "aprons.no-stretchers" || bound.Hint != "aprons.add-stretchers" {
		t.Errorf("%+v", bound)
	}
}

// What no table can have, each by its figure.
func TestFaults(t *testing.T) {
	for _, tt := range []struct {
		figure measure.ID
		change func(*design.Frame)
	}{
		{"frame.height", func(f *design.Frame) { f.Height = 110 }},
		{"frame.legs.foot", func(f *design.Frame) { f.Legs.Foot = 40 }},
		{"frame.legs.taper-start", func(f *design.Frame) { f.Legs.Start = 530 }},
		{"frame.top.overhang", func(f *design.Frame) { f.Top.Overhang = -200 }},
		{"frame.outline.round", func(f *design.Frame) { f.Top.Corner, f.Top.CornerSize = design.RoundedCorner, 230.1 }},
		{"frame.outline.clip", func(f *design.Frame) { f.Top.Corner, f.Top.CornerSize = design.ClippedCorner, 230.1 }},
		{"frame.outline.side", func(f *design.Frame) { f.Top.Overhang = -199.8 }},
		{"frame.outline.reach", func(f *design.Frame) { f.Shape, f.Sides, f.Length = design.RegularFrame, 8, 9000 }},
		{"frame.outline.diameter", func(f *design.Frame) { f.Top.Outline, f.Length = design.RoundOnFrame, 9990 }},
		{"frame.top.width", func(f *design.Frame) { f.Top.Outline, f.Top.Length, f.Top.Width = design.OvalOnFrame, 800, 70 }},
		{"frame.top.width", func(f *design.Frame) { f.Top.Outline, f.Top.Length, f.Top.Width = design.OvalOnFrame, 800, 800 }},
		{"frame.top.length", func(f *design.Frame) { f.Top.Outline, f.Top.Length, f.Top.Width = design.OvalOnFrame, 70, 800 }},
		{"frame.aprons.tenon", func(f *design.Frame) { f.Aprons.Tenon = 22 }},
		{"frame.aprons.upper-cut", func(f *design.Frame) { f.Aprons.UpperCut = 84 }},
		{"frame.aprons.lower-cut", func(f *design.Frame) { f.Aprons.LowerCut = 70 }},
		{"frame.aprons.arch", func(f *design.Frame) { f.Aprons.Arch = 90 }},
		{"frame.stretchers.height", func(f *design.Frame) {
			f.Stretchers = design.Rail{Depth: 30, Thickness: 18, Height: 405}
		}},
		{"aprons.foot-side", func(f *design.Frame) { f.Legs.Splay, f.Legs.Rake, f.Width = -0.2, -0.2, 250 }},
		{"aprons.between", func(f *design.Frame) { f.Length, f.Legs.Foot = 80, 0 }},
		{"aprons.turn", func(f *design.Frame) { f.Legs.Faces, f.Legs.Rake = design.ToSightline, 0 }},
		{"frame.milled.legs", func(f *design.Frame) { f.Milled.Legs = 29.9 }},
		{"frame.milled.legs", func(f *design.Frame) { f.Milled.Legs = -40 }},
		{"frame.milled.aprons", func(f *design.Frame) { f.Milled.Aprons = 27.6 }},
		{"frame.milled.stretchers", func(f *design.Frame) { f.Milled.Stretchers = 18 }}, // of which there are none
		{"frame.legs.foot", func(f *design.Frame) { f.Legs.Foot, f.Milled.Legs = 37, 36 }},
		{"frame.aprons.tenon", func(f *design.Frame) { f.Aprons.Tenon, f.Milled.Aprons = 21, 20 }},
		{"aprons.tenon-long", func(f *design.Frame) { f.Aprons.Inset = 200 }},
	} {
		d := table()
		tt.change(&d.Frame)
		_, err := piecetest.Solved(judge(d, nil))
		var bound *measure.BoundError
		if !errors.As(err, &bound) || bound.Figure != tt.figure {
			t.Errorf("%s: got %v", tt.figure, err)
			continue
		}
		if len(design.SetBy(err)) == 0 {
			t.Errorf("%s: no key is named", tt.figure)
		}
	}
}

// A figure that is refused says of what kind its limit is, and is refused once.
func TestLimitsOfFaults(t *testing.T) {
	for _, tt := range []struct {
		fault  string
		change func(*design.Frame)
	}{
		{"frame.top.length aprons.tenth 170", func(f *design.Frame) { f.Top.Outline, f.Top.Length, f.Top.Width = design.OvalOnFrame, 100, 1700 }},
		{"frame.aprons.arch frame.aprons.depth 90", func(f *design.Frame) { f.Aprons.Arch, f.Width = 95, 120 }},
		{"frame.aprons.arch aprons.half-chord 0", func(f *design.Frame) { f.Aprons.Arch, f.Width = 15, 104 }},
		// A frame of 600 by 800 is 1000 over the corners.
		{"frame.top.overhang aprons.to-middle -500", func(f *design.Frame) {
			f.Top.Outline, f.Top.Overhang, f.Length, f.Width = design.RoundOnFrame, -500, 600, 800
		}},
		{"", func(f *design.Frame) { f.Top.Outline, f.Top.Overhang = design.RoundOnFrame, -200 }},
	} {
		d := table()
		tt.change(&d.Frame)
		var got []string
		for _, err := range piecetest.Faults(judge)(d, nil) {
			var bound *measure.BoundError
			errors.As(err, &bound)
			got = append(got, fmt.Sprint(bound.Figure, " ", bound.Than, " ", bound.Limit.Value))
		}
		if strings.Join(got, "; ") != tt.fault {
			t.Errorf("%q, want %q", got, tt.fault)
		}
	}
}

// What is not known is asked of nothing.
func TestDoubtsOfFaults(t *testing.T) {
	d := table()
	d.Frame.Shape, d.Frame.Sides, d.Frame.Legs.Splay, d.Frame.Top.Overhang = design.RegularFrame, 0, 0, -50
	d.Frame.Top.Thickness = 900
	if errs := piecetest.Faults(judge)(d, design.Doubts{"frame.sides": true, "frame.top.thickness": true}); len(errs) > 0 {
		t.Error(errs)
	}
}

// A tenon is not made ever shorter to mend its mitre: 2 mm of it would hold nothing.
func TestMitreKeepsItsTenon(t *testing.T) {
	d := table()
	d.Frame.Aprons.Inset = 17.6
	fixes := fixesOf(t, d, "aprons.mitre")
	if len(fixes) == 0 {
		t.Error("nothing mends it")
	}
	for _, f := range fixes {
		if f.Key == "frame.aprons.tenon-length" {
			t.Error(f.Words)
		}
	}
}

// Of an oval top that tips, the top can be made smaller, not the frame larger only.
func TestSmallerOvalTipsLess(t *testing.T) {
	d := table()
	d.Frame.Legs.Rake, d.Frame.Legs.Splay = 0, 0
	d.Frame.Top.Outline, d.Frame.Top.Length, d.Frame.Top.Width, d.Frame.Top.Overhang = design.OvalOnFrame, 1500, 900, 0
	if fixes := fixesOf(t, d, "aprons.tipping-load"); !slices.ContainsFunc(fixes, func(f kind.Fix) bool { return f.Key == "frame.top.length" }) {
		t.Errorf("%+v", fixes)
	}
}

// A shoulder beside its leg is one fault: its mitre is not asked.
func TestMitreOfAShoulderBesideTheLeg(t *testing.T) {
	d := table()
	d.Frame.Aprons.Inset = 20
	asked := map[measure.ID]bool{}
	for _, c := range newModel(d).Checks() {
		asked[c.ID] = true
	}
	if !asked["aprons.end-on-leg"] || asked["aprons.mitre"] {
		t.Errorf("asked: %v", asked)
	}
}

func fixesOf(t *testing.T, d design.Design, id measure.ID) []kind.Fix {
	t.Helper()
	w, err := Kind().Solve([]design.Design{d})
	if err != nil {
		t.Fatal(err)
	}
	c, ok := lists.First(w.Report().All(), func(c kind.Check) bool { return c.ID == id })
	if !ok || c.Grade == kind.Pass {
		t.Fatalf("%s: %v", id, c.Grade)
	}
	return c.Fixes
}

// The table tips over the line through the outermost points of two soles, as its solids
// have them, and weighs what they weigh.
func TestStandingFromSolids(t *testing.T) {
	for _, lean := range []float64{0, 0.1, -0.05} {
		d := table()
		d.Frame.Legs.Rake = lean
		m := newModel(d)
		volume := 0.0
		for _, p := range m.solids() {
			volume += p.Volume()
		}
		for i, s := range m.sides {
			reach := math.Inf(-1)
			for k := range m.legs {
				for _, piece := range m.Leg(k).Pieces {
					for _, p := range corners(piece) {
						if p.Z < 1e-9 {
							reach = math.Max(reach, p.Dot(flat(s.out)))
						}
					}
				}
			}
			got := m.Standing(i)
			if !near(got.TippingLine(), reach) {
				t.Errorf("rake %g, side %d: tips over %g, the soles reach %g", lean, i, got.TippingLine(), reach)
			}
			half := []float64{d.Frame.Width, d.Frame.Length}[i%2] / 2
			if !near(got.Rim, half+d.Frame.Top.Overhang) {
				t.Errorf("side %d: rim at %g", i, got.Rim)
			}
			if !near(got.Mass, joint.Mass(volume, m.Density())) {
				t.Errorf("%g kg", got.Mass)
			}
		}
	}
}

// What is asked of one corner holds of all: at every end a rail has the wood round its
// tenon that it has at the left end of the first of its sort, and all parts weigh what
// those of each sort are counted for.
func TestCornersAlike(t *testing.T) {
	variants(t, func(t *testing.T, m Model) {
		if got, want := m.volume(), lists.Sum(m.solids(), solid.Part.Volume); !near(got, want) {
			t.Errorf("%.6f mm³, the parts have %.6f", got, want)
		}
		for _, row := range m.Rows {
			for i, r := range row.Rails {
				first := row.Rails[i%m.RailSorts()].Ends[left]
				for k, e := range r.Ends {
					for _, of := range []func(End) float64{
						func(e End) float64 {
							return lists.Least(e.Mouth[:], func(p solid.Vec) float64 { return m.inside(e, p) })
						},
						func(e End) float64 {
							return lists.Least(corners(e.mortise()[0]), func(p solid.Vec) float64 { return m.inside(e, p) })
						},
						func(e End) float64 { return lists.Least(corners(e.tenon()[0]), e.meets.Height) },
					} {
						if got, want := of(e), of(first); math.Abs(got-want) > 1e-6 {
							t.Errorf("%v %d, end %d: %g, the first has %g", row.Kind, i, k, got, want)
						}
					}
				}
			}
		}
	})
}

var update = flag.Bool("update", false, "write the list of identities anew")

// The identities that scripts go by are those in the file: one more is a new line there,
// and none goes.
func TestIdentitiesStay(t *testing.T) {
	all := map[measure.ID]bool{}
	variants(t, func(t *testing.T, m Model) {
		for _, c := range m.Checks() {
			all[c.ID] = true
		}
		for _, g := range m.Groups() {
			all[g.ID] = true
			for _, f := range g.Figures {
				all[f.ID] = true
				if f.Name == string(f.ID) {
					t.Errorf("%s has no name", f.ID)
				}
			}
		}
	})
	var lines strings.Builder
	for _, id := range slices.Sorted(maps.Keys(all)) {
		fmt.Fprintln(&lines, id)
	}
	const golden = "testdata/identities.txt"
	if *update {
		if err := os.WriteFile(golden, []byte(lines.String()), 0o644); err != nil {
			t.Fatal(err)
		}
	}
	want, err := os.ReadFile(golden)
	if err != nil || lines.String() != string(want) {
		t.Errorf("the identities are not those of %s (%v):\n%s", golden, err, lines.String())
	}
}

func TestWhatMendsHasItsWords(t *testing.T) { piecetest.Mends(t, mends(), mending) }

// A mend of what lies between two whole figures tries the nearer one first.
func TestMendsTryTheWholeFigureItself(t *testing.T) {
	d := table()
	d.Frame.Aprons.Long = 7.9978
	w, err := Kind().Solve([]design.Design{d})
	if err != nil {
		t.Fatal(err)
	}
	c := w.Report().Sizes[0].Checks
	i := slices.IndexFunc(c, func(c kind.Check) bool { return c.ID == "aprons.tenon-hold" })
	if len(c[i].Fixes) == 0 || c[i].Fixes[0].To != measure.Length(8) {
		t.Errorf("mends %+v, want 8 mm", c[i].Fixes)
	}
}

// A mitred tenon is judged by the mean of its cheeks. By hand: between plumb legs of a
// rectangle the mitre runs at 45°, so the cheeks differ by the thickness of the tenon, and
// its mean is half of that less than its longest.
func TestMitredTenonsAreJudgedByTheirMean(t *testing.T) {
	d := table()
	f := &d.Frame
	f.Legs.Rake, f.Legs.Splay, f.Legs.Foot = 0, 0, 0
	f.Aprons.Long, f.Aprons.Tenon = 0, 7
	m := newModel(d)
	for _, r := range m.Rows[0].Rails {
		piecetest.Nearly(t, "mean of a mitred tenon", r.mean(), r.longest()-3.5)
	}
	f.Aprons.Long = 12
	for _, r := range newModel(d).Rows[0].Rails {
		piecetest.Nearly(t, "a square tenon", r.mean(), 12)
	}
}

// Between shoulders that nearly meet there is no groove: it has no length, not less than none.
func TestNoGrooveIsShorterThanNothing(t *testing.T) {
	nothing := 0
	for length := 92.0; length <= 140; length += 4 {
		d := table()
		d.Frame.Length, d.Frame.Top.Fixing = length, design.Buttons
		m, err := piecetest.Solved(judge(d, nil))
		if err != nil {
			continue
		}
		long, _ := m.grooveSpare(m.button())
		if long < 0 {
			t.Errorf("frame of %g mm: a groove of %g mm", length, long)
		}
		if long == 0 {
			nothing++
		}
	}
	if nothing == 0 {
		t.Error("every groove has a length")
	}
}
