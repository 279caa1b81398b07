package aprons

import (
	"math"
	"slices"
	"strings"
	"testing"

	"rodsheet/geometry"
	"rodsheet/geometry/measure"
	"rodsheet/geometry/solid"
	"rodsheet/templates"
	"rodsheet/templates/piece/design"
	"rodsheet/templates/piece/internal/piecetest"
	"rodsheet/templates/piece/kind"
)

// setting is that of an A4 sheet.
var setting = templates.Setting{Unit: measure.Millimetre, Clear: geometry.Pt(180, 250)}

func pack(t *testing.T, d design.Design) templates.Job {
	t.Helper()
	w, err := Kind().Solve([]design.Design{d})
	if err != nil {
		t.Fatal(err)
	}
	job, err := w.Pack(kind.Options{For: kind.Buying | kind.Bench | kind.Record}, setting)
	if err != nil {
		t.Fatal(err)
	}
	return job
}

// Every card has words, a caution and a test, and every template that one calls for is
// in the pack, once.
func TestPackIsWhole(t *testing.T) {
	variants(t, func(t *testing.T, m Model) {
		job := pack(t, m.Design)
		count := map[templates.View]int{}
		for _, s := range job.Sections {
			for _, d := range s.Drawings {
				count[d.View]++
				count[d.Also]++
				if d.Name == "" || len(d.Strokes) == 0 {
					t.Errorf("%v: no name or no lines", d.View)
				}
			}
			for _, p := range s.Pictures {
				count[p.View]++
			}
		}
		for v, n := range count {
			if n > 1 && v != (templates.View{}) {
				t.Errorf("%v stands %d times", v, n)
			}
		}
		for _, s := range job.Sections {
			for _, c := range s.Cards {
				if c.Heading == "" || c.Caution == "" || c.Test == "" || len(c.Text) == 0 || len(c.Text) > 3 || len(c.Ticks) == 0 {
					t.Errorf("card %q lacks something", c.Heading)
				}
				for _, v := range c.Templates {
					if count[v] == 0 {
						t.Errorf("card %q calls for %v, which is not there", c.Heading, v)
					}
				}
			}
		}
	})
}

// has reports whether a line of a role begins or ends at a point.
func has(d templates.Drawing, role templates.Role, p geometry.Point) bool {
	return slices.ContainsFunc(d.Strokes, func(s templates.Stroke) bool {
		return s.Role == role && slices.ContainsFunc(s.Points, func(q geometry.Point) bool { return q.Distance(p) < 1e-6 })
	})
}

// The strip of a rail holds the corners of its shoulder and of its blank end where the
// solid has them, on every side that meets there.
func TestRailStripIsTheSolid(t *testing.T) {
	variants(t, func(t *testing.T, m Model) {
		for _, row := range m.Rows {
			for k, r := range m.sorts(row) {
				d := m.wrapRail(r, k)
				e := r.Ends[left]
				wide := func(a, b int) float64 { // across a side, square to the rail
					step := e.Mouth[b].Sub(e.Mouth[a])
					return step.Sub(r.Along.Mul(step.Dot(r.Along))).Norm()
				}
				levels := []float64{-wide(3, 0), 0, wide(0, 1), wide(0, 1) + wide(1, 2), wide(0, 1) + wide(1, 2) + wide(2, 3)}
				end := r.end(left)
				for i, corner := range []int{3, 0, 1, 2, 3} {
					x := e.Mouth[corner].Sub(e.Mouth[0]).Dot(r.Along)
					if p := geometry.Pt(x, levels[i]); !has(d, templates.Cut, p) {
						t.Errorf("%v %d: no shoulder at %v", row.Kind, k, p)
					}
					out := e.Mouth[corner].Add(r.Along.Mul(-end.Height(e.Mouth[corner]) / end.N.Dot(r.Along)))
					if p := geometry.Pt(out.Sub(e.Mouth[0]).Dot(r.Along), levels[i]); !has(d, templates.Cut, p) {
						t.Errorf("%v %d: no end at %v", row.Kind, k, p)
					}
				}
			}
		}
	})
}

// The strip of a leg holds every mortise as the solid of the leg has its mouth: as long, as
// wide, and as far from the head and from the corner arris.
func TestLegStripIsTheSolid(t *testing.T) {
	variants(t, func(t *testing.T, m Model) {
		if m.outside(m.Rows[0]) < 0 {
			return // a mortise breaks out of the leg, as its check says
		}
		for i := range m.LegSorts() {
			l, d := m.legs[i], m.wrapLeg(i)
			level := 0.0
			arris := l.arrises()
			for k := range 4 {
				next := arris[(k+1)%4]
				for _, takes := range []int{own, before} {
					if (takes == own) != (k == 1) || (takes == before) != (k == 2) {
						continue
					}
					r, end := m.railAt(m.Rows[0], i, takes)
					leg := m.Leg(i)
					across := next.Sub(arris[k]).Unit()
					for _, p := range r.mouthOf(r.Ends[end], m.Rows[0].Of.LowerCut, m.Rows[0].Upper) {
						if !onSurface(leg, p) {
							t.Errorf("leg %d: %v lies on no side of the leg", i, p)
						}
						if q := geometry.Pt(l.down(p), level+p.Sub(arris[k]).Dot(across)); !has(d, templates.Cut, q) {
							t.Errorf("leg %d: no mortise at %v", i, q)
						}
					}
				}
				level += arris[k].Distance(next)
			}
		}
	})
}

// onSurface reports whether a point lies on some piece of a part, within rounding: what
// cuts a mortise cuts its leg there.
func onSurface(p solid.Part, at solid.Vec) bool {
	return slices.ContainsFunc(p.Pieces, func(s solid.Solid) bool {
		far := math.Inf(-1)
		for _, f := range s.Faces() {
			far = math.Max(far, f.Plane.Height(at))
		}
		return math.Abs(far) < 1e-6
	})
}

// The strip of a stretcher's mortise lies flat: every distance on it is that in the room,
// and it is seen from outside.
func TestLowStripIsFlat(t *testing.T) {
	variants(t, func(t *testing.T, m Model) {
		if len(m.Rows) < 2 {
			return
		}
		for i := range m.LegSorts() {
			for _, takes := range []int{own, before} {
				r, end := m.railAt(m.Rows[1], i, takes)
				d := m.lowStrip(i, takes)
				mouth := r.mouthOf(r.Ends[end], 0, m.Rows[1].Upper)
				n := slices.IndexFunc(d.Strokes, func(s templates.Stroke) bool { return s.Role == templates.Cut && len(s.Points) == 5 })
				if n < 0 {
					t.Fatal("no mortise")
				}
				drawn := d.Strokes[n].Points
				turn := 0.0
				for k, p := range mouth {
					next, after := mouth[(k+1)%4], mouth[(k+2)%4]
					if got, want := drawn[k].Distance(drawn[(k+1)%4]), p.Distance(next); math.Abs(got-want) > 1e-6 {
						t.Errorf("leg %d: %g on the strip, %g in the room", i, got, want)
					}
					// The corners turn on paper as for one who stands outside the leg.
					room := next.Sub(p).Cross(after.Sub(next)).Dot(r.Ends[end].shoulder.N.Mul(-1))
					turn = drawn[k+1].Sub(drawn[k]).Cross(drawn[(k+2)%4].Sub(drawn[k+1]))
					if room*turn <= 0 {
						t.Errorf("leg %d, side %d: the strip is seen from inside", i, takes)
					}
				}
			}
		}
	})
}

// Two sizes that differ in height share every set-up but those that hang on it, and what
// they do not share comes one after the other.
func TestSizesShareCards(t *testing.T) {
	low, tall := table(), table()
	low.Size, tall.Size, tall.Frame.Height = "low", "tall", 700
	w, err := Kind().Solve([]design.Design{low, tall})
	if err != nil {
		t.Fatal(err)
	}
	job, err := w.Pack(kind.Options{For: kind.Bench}, setting)
	if err != nil {
		t.Fatal(err)
	}
	count := map[string]int{}
	var order []string
	for _, s := range job.Sections {
		for _, c := range s.Cards {
			word, _, _ := strings.Cut(c.Heading, ",")
			count[word]++
			order = append(order, c.Heading)
		}
	}
	for word, want := range map[string]int{sectionCard.Heading.With(): 1, legEndsCard.Heading.With(): 2, mortiseCards[Aprons].With(): 1, taperCard.Heading.With(): 2, tenonCard.Heading.With(): 1} {
		if count[word] != want {
			t.Errorf("%s: %d cards, want %d, of %q", word, count[word], want, order)
		}
	}
	for _, s := range job.Sections {
		for _, c := range s.Cards {
			for _, v := range c.Templates {
				if v.Size != "" && !strings.Contains(c.Heading, v.Size) {
					t.Errorf("%s calls for %v", c.Heading, v)
				}
			}
		}
	}
}

// The tongue of a button lies level in the groove of every apron, touches its upper arris
// and draws the top down: what is of it inside the apron is inside the groove.
func TestTheTongueFitsItsGroove(t *testing.T) {
	variants(t, func(t *testing.T, m Model) {
		m.Design.Frame.Top.Fixing = design.Buttons
		cards, row := bench{TB: t, m: m}, m.Rows[0]
		c := m.grooveCard(row)
		b := button{below: cards.figure(c, grooveBelow), high: cards.figure(c, grooveHigh), deep: cards.figure(c, grooveDeep)}
		b.step, b.reach, b.tongue = cards.figure(c, stepReading), m.button().reach, m.button().tongue
		if said := by(m.bare(b.reach), m.length(b.tongue)); !slices.ContainsFunc(c.Figures, func(r templates.Reading) bool { return r.Name == tongueReading.With() && r.Value == said }) {
			t.Errorf("no tongue of %s: %v", said, c.Figures)
		}
		for i, r := range row.Rails {
			// In the plane square to the rail: x inward and level, y up, from the mouth's upper arris.
			at := func(p geometry.Point) geometry.Point {
				v := r.In.Mul(p.X).Add(r.Up.Mul(p.Y))
				return geometry.Pt(v.Dot(flat(m.sides[i].out))*-1, v.Z)
			}
			groove := r.groove(b)
			for k := range groove {
				groove[k] = at(groove[k])
			}
			top := at(geometry.Pt(r.Row.Of.Thickness, r.topAt(r.Row.Of.Thickness)))
			mouth, tip := groove[2], groove[3]
			far := 0.99 * (mouth.X - tip.X) * b.reach / b.deep
			mouth.Y = min(mouth.Y, mouth.Lerp(tip, far/(mouth.X-tip.X)).Y)
			if hair := top.Y - mouth.Y - b.step; hair < 0 || hair > 1.1 {
				t.Errorf("apron %d: the button stands %g below the top", i, hair)
			}
			for _, c := range geometry.Box(mouth.X-far, mouth.Y-b.tongue, mouth.X, mouth.Y).Corners() {
				for k, p := range groove {
					if k == 1 { // open at the mouth
						continue
					}
					q := groove[(k+1)%4]
					if d := q.Sub(p).Unit().Cross(c.Sub(p)); d < -1e-6 {
						t.Errorf("apron %d: the tongue is %g outside the groove, side %d", i, -d, k)
					}
				}
			}
			if behind := r.Row.Of.Thickness - b.deep; behind <= 0 {
				t.Errorf("apron %d: the groove leaves %g", i, behind)
			}
		}
	})
}

// A card has a box for each part that the cut list has, spares with them, and an angle that
// no triangle has by itself names the one that serves.
func TestCardsCountAndNameTriangles(t *testing.T) {
	variants(t, func(t *testing.T, m Model) {
		boxes := 0
		for _, tick := range m.legTicks() {
			boxes += tick.Boxes
		}
		if row := m.Cuts()[0]; boxes != row.Parts()+row.Spares {
			t.Errorf("%d boxes for %d legs and %d spares", boxes, row.Parts(), row.Spares)
		}
		for _, row := range m.Rows {
			for _, r := range m.sorts(row) {
				for _, p := range r.Passes() {
					said := len(m.standIns(p))
					for _, a := range []float64{math.Abs(p.Saw.OffSquare), math.Abs(p.Saw.Tilt)} {
						if a >= drawn && !slices.ContainsFunc(m.triangles(), func(b float64) bool { return m.angle(a) == m.angle(b) }) {
							said--
						}
					}
					if said < 0 {
						t.Errorf("%s: a triangle stands in unnamed", p.ID)
					}
				}
			}
		}
	})
}

// The section of a leg is drawn where paper proves it: no gauge sees 0.8° on a leg's end.
func TestSectionsThatPaperHolds(t *testing.T) {
	steep, six := table(), table()
	steep.Frame.Legs.Rake, steep.Frame.Legs.Splay = measure.Radians(15), measure.Radians(15)
	six.Frame.Shape, six.Frame.Sides, six.Frame.Length, six.Frame.Legs.Splay = design.RegularFrame, 6, 360, 0
	for i, c := range []struct {
		d    design.Design
		want bool
	}{{table(), false}, {steep, true}, {six, true}} {
		m, err := piecetest.Solved(judge(c.d, nil))
		if err != nil {
			t.Fatal(err)
		}
		section, err := m.stock(setting)
		if err != nil {
			t.Fatal(err)
		}
		view := m.section().View
		drawn := slices.ContainsFunc(section.Drawings, func(d templates.Drawing) bool { return d.View == view })
		called := slices.Contains(section.Cards[0].Templates, view)
		if drawn != c.want || called != c.want {
			t.Errorf("%d: drawn %t, called for %t, want %t", i, drawn, called, c.want)
		}
	}
}

// Every triangle in a pack is called for by a card.
func TestTrianglesAreUsed(t *testing.T) {
	variants(t, func(t *testing.T, m Model) {
		called := map[templates.View]bool{}
		for _, s := range pack(t, m.Design).Sections {
			for _, c := range s.Cards {
				for _, v := range c.Templates {
					called[v] = true
				}
			}
		}
		for _, a := range m.triangles() {
			if v := (templates.View{Part: templates.AngleView(math.Pi/2 - a)}); !called[v] {
				t.Errorf("no card calls for the triangle of %.2f°", measure.Degrees(a))
			}
		}
	})
}

// Parts that differ from some card on are marked before it.
func TestWhatDiffersIsMarked(t *testing.T) {
	variants(t, func(t *testing.T, m Model) {
		stock, err := m.stock(setting)
		if err != nil {
			t.Fatal(err)
		}
		if said := slices.Contains(stock.Cards[0].Text, handText.With()); said != (m.LegSorts() > 1) {
			t.Errorf("%d sorts of legs: %q", m.LegSorts(), stock.Cards[0].Text)
		}
		if f, ok := m.Screws(); ok {
			c := m.screwCard(m.Rows[0], f)
			if said := slices.Contains(c.Text, sidesText.With()); said != (m.Design.Frame.Shape == design.Rectangle && m.RailSorts() == 1) {
				t.Errorf("%d sorts of rails: %q", m.RailSorts(), c.Text)
			}
		}
	})
}

// A button's screw has a hole through the button and one in the top that it does not go through.
func TestHolesForTheScrewOfAButton(t *testing.T) {
	variants(t, func(t *testing.T, m Model) {
		m.Design.Frame.Top.Fixing = design.Buttons
		cards := bench{TB: t, m: m}
		c := topCard.Card(m.Design.Unit, nil)
		m.topOn(&c)
		bite, thick := cards.figure(c.Card, pilotDeep), m.Design.Frame.Top.Thickness
		if through := cards.figure(c.Card, screwReading) - m.button().thick(); math.Abs(through-bite) > 0.5 || bite <= 0 || bite > thick*2/3+0.5 {
			t.Errorf("%g into a top of %g, the screw %g", bite, thick, through)
		}
		if got := cards.figure(m.grooveCard(m.Rows[0]), boreReading); got < 3 {
			t.Errorf("a hole of %g through the button", got)
		}
	})
}

// How a top lies is what its maker can measure: of an oval on six sides of 300, 900 by 1000,
// the corner arrises at (±300, 0) are 150 from the rim, those of apron 1, at (150, −260),
// about 184 by a search along the ellipse.
func TestOvalLiesOnSixSides(t *testing.T) {
	d := table()
	f := &d.Frame
	f.Shape, f.Sides, f.Legs.Splay, f.Length = design.RegularFrame, 6, 0, 300
	f.Top.Outline, f.Top.Length, f.Top.Width = design.OvalOnFrame, 900, 1000
	near := math.Inf(1)
	for a := 0.0; a < 2*math.Pi; a += 1e-5 {
		near = math.Min(near, math.Hypot(450*math.Cos(a)-150, 500*math.Sin(a)+300*math.Sqrt(3)/2))
	}
	m := newModel(d)
	if got, want := m.laying(), layFirstText.With(squareToFirst.With(), m.length(near)); got != want || math.Abs(near-184) > 1 {
		t.Errorf("%q, want %q", got, want)
	}
	f.Top.Length, f.Top.Width = 1000, 900
	m = newModel(d)
	if got, want := m.laying(), layFirstText.With(alongFirst.With(), m.length(m.overCorners()[0])); got != want {
		t.Errorf("%q, want %q", got, want)
	}
	f.Shape, f.Width = design.Rectangle, 400 // all four alike
	m = newModel(d)
	if got, want := m.laying(), layRimText.With(alongFront.With(), m.length(m.overLegs())); got != want {
		t.Errorf("%q, want %q", got, want)
	}
}

// A top that no screw or button of the design holds is laid all the same.
func TestATopHeldOtherwiseIsLaid(t *testing.T) {
	d := table()
	d.Frame.Top.Fixing = design.NoFixing
	m := newModel(d)
	c := topCard.Card(m.Design.Unit, nil)
	if !m.topOn(&c) || len(c.Text) != 2 || c.Text[0] != m.laying() || c.Test == "" {
		t.Errorf("%+v", c)
	}
	d.Frame.Top.None = true
	if m = newModel(d); m.topOn(&c) {
		t.Error("no top is laid")
	}
}
