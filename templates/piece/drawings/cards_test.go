package drawings

import (
	"fmt"
	"math"
	"slices"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"rodsheet/geometry"
	"rodsheet/geometry/joint"
	"rodsheet/geometry/solid"
	"rodsheet/templates"
	"rodsheet/templates/piece"
	"rodsheet/templates/piece/checks"
	"rodsheet/templates/piece/design"
	"rodsheet/templates/piece/internal/piecetest"
	"rodsheet/templates/piece/kind"
	"rodsheet/templates/piece/shop"
	"rodsheet/templates/piece/wording"
)

// A template of one size is called for by cards of that size only.
func TestTemplatesOfASizeAreForItsCards(t *testing.T) {
	sized := 0
	for _, s := range packed(t, twoSizes(t), false) {
		for _, d := range s.Drawings {
			if name, ok := strings.CutSuffix(d.Name, ", size "+d.View.Size); ok != (d.View.Size != "") {
				t.Errorf("%q is of size %q", name, d.View.Size)
			}
		}
		for _, c := range s.Cards {
			_, size, one := strings.Cut(c.Heading, ", size ")
			for _, v := range c.Templates {
				if v.Size != "" && one {
					sized++
					if v.Size != size {
						t.Errorf("%s calls for %v", c.Heading, v)
					}
				}
			}
		}
	}
	if sized == 0 {
		t.Error("no card of one size calls for a template of it")
	}
}

// What sets out a top or a taper is called for by a card: every corner that differs, the
// wedge of a round top, the two points on each face, the holes for its screws.
func TestCardsCallForWhatSetsOut(t *testing.T) {
	square := geometry.Box(-300, -250, 320, 300).Corners()
	square[2].Y += 60
	for name, change := range map[string]func(*design.Design){
		"free":           func(d *design.Design) { d.Top.Outline, d.Top.Points = design.FreeOutline, square },
		"ring":           func(d *design.Design) { d.Top.Outline, d.Top.Overhang = design.RingTop, 60 },
		"round":          func(d *design.Design) {},
		"round on pads":  func(d *design.Design) { d.Top.Pads = piecetest.Low().Top.Pads },
		"tapers on back": func(d *design.Design) { d.Legs.Taper.Faces = joint.AdjacentFaces },
	} {
		d := piecetest.Low()
		d.Top = design.Top{Kind: design.WoodTop, Thickness: 20, Diameter: 600, Corner: design.RoundedCorner, CornerSize: 30}
		d.Top.Fixing.Kind = design.Screws
		change(&d)
		p := piecetest.Worked(t, d)
		job, err := Pack(checks.Examine([]piece.Piece{p}), kind.Options{For: kind.Bench}, forBench)
		if err != nil {
			t.Fatal(err)
		}
		shown := 0
		called := map[templates.View]bool{}
		for _, s := range job.Sections {
			for _, c := range s.Cards {
				for _, v := range c.Templates {
					v.Size = ""
					called[v] = true
				}
			}
		}
		for _, s := range job.Sections {
			var views []templates.View
			for _, d := range s.Drawings {
				views = append(views, d.View)
			}
			for _, p := range s.Pictures {
				views = append(views, p.View)
			}
			for _, v := range views {
				if v.Part == "top" || v.Part == "whole-leg" {
					shown++
					if !called[v] {
						t.Errorf("%s: no card calls for %v", name, v)
					}
				}
			}
		}
		if want := map[string]int{"free": 5, "tapers on back": 4}[name]; shown != max(want, 3) {
			t.Errorf("%s: %d things set out, want %d", name, shown, max(want, 3))
		}
	}
}

// Without pads the wedge of a round top leads from mid-length to mid-length of
// stretchers, as their solids stand.
func TestTheWedgeOfATopOnItsRing(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		d := piecetest.Sound(t)
		d.Top = design.Top{Kind: design.WoodTop, Thickness: 20, Diameter: 3000}
		p := piecetest.Worked(t, d)
		job := roundTop(p, forBench)
		if len(job.Drawings) != 1 {
			t.Fatalf("%d drawings, want the wedge", len(job.Drawings))
		}
		line := job.Drawings[0].Strokes[0].Points
		centre, middle := geometry.Point{}, geometry.Pt(0, d.Ring.Width/2)
		at := func(i int) geometry.Point {
			v := p.Place(i).Apply(solid.V(middle.X, middle.Y, 0))
			return geometry.Pt(v.X, v.Y)
		}
		a, b := at(0), at(1)
		piecetest.Nearly(t, "angle of the wedge", math.Abs(math.Atan2(line[0].Cross(line[2]), line[0].Dot(line[2]))),
			math.Abs(math.Atan2(a.Cross(b), a.Dot(b))))
		if line[1] != centre {
			t.Errorf("its point is at %v", line[1])
		}
		if table := fmt.Sprint(job.Panels[0].Table); !strings.Contains(table, p.MM(a.Norm())) || !strings.Contains(table, p.MM(a.Distance(b))) {
			t.Errorf("%.3f and %.3f mm are not both in %s", a.Norm(), a.Distance(b), table)
		}
	})
}

// Every block that is sawn stands on its card with its figures, the strips of all splays
// on one card.
func TestBlocksStandOnTheirCards(t *testing.T) {
	plan := shop.NewPlan(twoSizes(t))
	pictures := galleries(plan, templates.Picture{})
	stripCards, shown := 0, 0
	for i, c := range plan.Cards {
		if c.Steps[0].What.ID == "step.strip" {
			stripCards++
		}
		var said []string
		for _, p := range slices.Concat(pictures[i].setup, pictures[i].after) {
			for _, l := range p.Lettering() {
				said = append(said, l.Text)
			}
		}
		for _, s := range c.Steps {
			if s.Do == shop.CutTaper { // wedges come off as they are
				continue
			}
			for _, b := range s.Parts {
				for _, l := range plan.Blocks {
					if l.What.Part != b.Part || !slices.Equal(l.Sizes, b.For) {
						continue
					}
					shown++
					for _, mm := range []float64{l.What.Across, l.What.Thick} {
						if want := plan.Pieces[0].MM(mm); !slices.Contains(said, want) {
							t.Errorf("card %d: no %s of %s among %q", c.Number, want, wording.Block(l.What), said)
						}
					}
				}
			}
		}
	}
	if stripCards != 1 || shown < 4 {
		t.Errorf("%d cards of strips, %d blocks shown", stripCards, shown)
	}
}

// A picture of work on the bench shows the parts as the cards so far have left them: it
// reaches as far as these do, and no farther.
func TestPicturesOfTheBenchShowWhatIsSawnSoFar(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		d := piecetest.Sound(t)
		d.Top = design.Top{Kind: design.GlassTop, Thickness: 10, Diameter: 3000}
		d.Top.Pads.Diameter, d.Top.Pads.Height = d.Ring.Width/2, 5
		p := piecetest.Worked(t, d)
		plan := shop.NewPlan([]piece.Piece{p})
		sawn := func(part shop.Part, card int) solid.Part {
			out := solid.Part{}
			for w := range shop.Works(p, plan.Cards, part) {
				if out.Pieces == nil {
					out = w.Before
				}
				if w.Card <= card {
					out = w.After
				}
			}
			return out
		}
		seen := map[shop.Do]int{}
		for i, g := range galleries(plan, templates.Picture{}) {
			do := plan.Cards[i].Steps[0].Do
			stretcher, leg := sawn(shop.Stretcher, i), sawn(shop.Leg, i).Transform(shop.LegPlace(p))
			view, parts, pads := kind.AtCorner(), p.Around(p.Place, stretcher), 0.0
			switch do {
			case shop.FitBridle, shop.GlueLegs:
				apart := shop.LegPlace(p).X.Mul(-jointApart * p.Frame.Ring.Depth)
				view, parts = fromRingSide(), []solid.Part{atJoint(p, stretcher), atJoint(p, leg).Transform(solid.Translate(apart))}
			case shop.TrimHeads:
				view, parts = fromRingSide(), []solid.Part{atJoint(p, stretcher), atJoint(p, leg)}
			case shop.GlueRing:
				parts = p.Around(p.Place, stretcher, leg)
			case shop.FitPads: // the pads stand above it
				turned := func(i int) solid.Affine3 { return p.Place(i).Then(solid.RotateZ(math.Pi)) }
				parts, pads = p.Around(turned, stretcher, leg), 5
			case shop.DryRing, shop.DryTrimmedRing:
			default:
				continue
			}
			seen[do]++
			var want, got []geometry.Point
			for _, q := range parts {
				want = append(want, cornersOf(q, view)...)
			}
			for _, a := range g.after[0].Areas {
				got = append(got, a.Points...)
			}
			for _, line := range g.after[0].Strokes {
				if do != shop.TrimHeads { // what is trimmed off stands in thin lines
					got = append(got, line.Points...)
				}
			}
			w, b := geometry.Bounds(want...), geometry.Bounds(got...)
			allowed := 0.1
			if off := math.Max(b.Min.Distance(w.Min), math.Max(math.Abs(b.Max.X-w.Max.X), math.Max(0, w.Max.Y-b.Max.Y))); off > allowed || b.Max.Y-w.Max.Y > pads+allowed {
				t.Errorf("card %d (%v): the picture fills %v, the parts %v", i+1, plan.Cards[i].What.ID, b, w)
			}
		}
		if len(seen) < 6 {
			t.Errorf("seen only %v", seen)
		}
	})
}
