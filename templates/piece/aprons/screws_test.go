package aprons

import (
	"math"
	"slices"
	"testing"

	"rodsheet/geometry"
	"rodsheet/geometry/measure"
	"rodsheet/geometry/solid"
	"rodsheet/templates"
	"rodsheet/templates/piece/design"
	"rodsheet/templates/piece/shop"
)

// Every screw stands in the wood of its apron from underside to top, between the shoulders
// and under the top, on every apron; every slot lets the top move as far as it does there,
// across its grain.
func TestScrewsHoldAndLetMove(t *testing.T) {
	variants(t, func(t *testing.T, m Model) {
		m.Design.Frame.Top.Fixing = design.Screws
		f, ok := m.Screws()
		if !ok {
			t.Fatal("no screws")
		}
		u := m.Design.Unit
		shank, _ := shop.Bits(u)
		wood, _ := m.Design.Wood.Known()
		share := math.Max(wood.Radial, wood.Tangential) * (m.Design.Wood.MoistureTo - m.Design.Wood.MoistureFrom)
		size, _ := m.TopSize()
		held := map[int]bool{}
		for _, h := range f.Holes {
			held[h.Part] = true
			r := m.Rows[0].Rails[h.Part]
			// The axis at the top of the apron, from the corners of its shoulders, and a step
			// down the sides of the apron.
			at := r.Along.Mul(h.At)
			for _, e := range r.Ends {
				at = at.Add(e.Mouth[1].Add(e.Mouth[2]).Mul(0.25))
			}
			body := r.body()
			for _, down := range []float64{0.1, 0.5, 0.9} {
				p := at.Sub(r.Up.Mul(down * m.deep(m.Rows[0], h.Part)))
				if body.Cut(solid.Through(p, r.Along)).Empty() || body.Cut(solid.Through(p, r.Along.Mul(-1))).Empty() {
					t.Errorf("%+v is past a shoulder", h)
				}
				if deep := -r.outer.Height(p); math.Abs(deep-r.Row.Of.Thickness/2) > 1e-6 {
					t.Errorf("%+v: %g below the outer side", h, deep)
				}
			}
			off := math.Abs(at.Y)
			if box := geometry.Bounds(m.TopOutline()...); box.Height() > box.Width()+1e-6 {
				off = math.Abs(at.X)
			}
			if off > size.Width/2 {
				t.Errorf("%+v is not under the top", h)
			}
			free := (f.Slot(u) - shank) / 2
			if !h.Slotted {
				free = 0.51
			}
			if free < share*off-1e-9 {
				t.Errorf("%+v: free for %g mm, the top moves %g", h, free, share*off)
			}
		}
		across := geometry.Pt(0, 1) // the grain of the top runs along its longer way
		if box := geometry.Bounds(m.TopOutline()...); box.Height() > box.Width()+1e-6 {
			across = geometry.Pt(1, 0)
		}
		for i, s := range m.sides { // as they lie in the room
			for _, h := range m.slots(f, i) {
				way := s.along.Mul(h.way.X).Add(s.out.Mul(h.way.Y))
				if way.Norm() > 0 && math.Abs(math.Abs(way.Dot(across))-1) > 1e-9 {
					t.Errorf("apron %d: a slot runs %v in the room", i, way)
				}
			}
		}
		if len(held) != len(m.sides) {
			t.Errorf("held on %d aprons", len(held))
		}
	})
}

// By hand, from the table of 520 by 400 whose top is 20 thick: the longest screw of a shop
// with 25 under its head and 13.3 in the top is 35 mm, pulled back to 22 under the head; on
// front and back two slots, on left and right two about the round hole in the middle. The
// apron is 90/cos 6° = 90.5 deep along its side.
func TestScrewsByHand(t *testing.T) {
	d := table()
	d.Frame.Top.Fixing = design.Screws
	m := newModel(d)
	f, _ := m.Screws()
	round, slots := 0, 0
	for _, h := range f.Holes {
		if h.Slotted {
			slots++
			continue
		}
		if round++; h.At != 0 || h.Part%2 != 1 {
			t.Errorf("round: %+v", h)
		}
	}
	if round != 2 || slots != 8 || f.Screw != 35 || f.Bite != 13 || math.Abs(m.bore(f, 0)-(90/math.Cos(d.Frame.Legs.Rake)-22)) > 1e-9 {
		t.Errorf("%d round, %d slots, screw %g, bite %g, bore %g", round, slots, f.Screw, f.Bite, m.bore(f, 0))
	}
	if w := m.Wares(); len(w) == 0 || w[0] != (shop.Ware{What: shop.TopScrew, Count: 10, Length: 35}) {
		t.Errorf("bought: %+v", w)
	}
	// Front and back are drilled alike, left and right too, with slots square to the
	// others' on the parts.
	pictures := m.underPictures(f)
	if n := len(pictures); n != 2 {
		t.Errorf("%d pictures", n)
	}
	for i, p := range pictures {
		drawn := geometry.Bounds(p.Strokes[0].Points...).Width()
		if e := m.Rows[0].Rails[i].Ends; math.Abs(drawn-e[right].Mouth[0].Distance(e[left].Mouth[0])) > 1e-9 {
			t.Errorf("picture %d: drawn %g long", i, drawn)
		}
	}
	for i, want := range []geometry.Point{geometry.Pt(0, 1), geometry.Pt(1, 0)} {
		s := m.slots(f, i)[0].axis(12, 10)
		if way := s.B.Sub(s.A); math.Abs(math.Abs(way.Dot(want))-2) > 1e-9 {
			t.Errorf("side %d: a slot runs %v", i, way)
		}
	}
}

// Heads are let into an apron before it is arched, so what they leave beside them does not
// hang on the wood over the arch: here less than a head needs below it.
func TestScrewsOfAnArch(t *testing.T) {
	beside := func(arch float64) (out float64) {
		d := table()
		d.Frame.Top.Fixing, d.Frame.Aprons.Arch = design.Screws, arch
		for _, c := range newModel(d).screwChecks() {
			if c.ID == "aprons.beside-screw" {
				out = c.Value.Value
			}
		}
		return out
	}
	if straight, arched := beside(0), beside(80); straight != arched {
		t.Errorf("beside a hole %g of a straight apron, %g of an arched one", straight, arched)
	}
}

// A screw pushed home in the holes of the card stands out of the apron as far as it says; an
// apron too shallow for that has no holes for heads, and none is spoken of.
func TestHolesOfTheScrewCard(t *testing.T) {
	for _, tt := range []struct {
		depth, arch, rake, splay float64
		heads                    int
		words, bore              text
	}{{90, 0, 6, 8, 2, "", boreText}, {90, 15, 6, 8, 2, beforeArchText, boreText}, {12, 0, 6, 8, 0, "", noBoreText}, {22, 0, 0, 30, 1, "", someBoreText}} {
		d := table()
		d.Frame.Legs.Rake, d.Frame.Legs.Splay = measure.Radians(tt.rake), measure.Radians(tt.splay)
		d.Frame.Top.Fixing, d.Frame.Aprons.Depth, d.Frame.Aprons.Arch, d.Frame.Aprons.UpperCut = design.Screws, tt.depth, tt.arch, 3
		m := newModel(d)
		f, _ := m.Screws()
		b := bench{TB: t, m: m}
		row := m.Rows[0]
		c, top := m.screwCard(row, f), topCard.Card(m.Design.Unit, nil)
		m.screwTop(&top, f)
		if want := drillText.With(tt.words.With(), tt.bore.With()); c.Text[0] != want {
			t.Errorf("%g deep: %q, want %q", tt.depth, c.Text[0], want)
		}
		heads := 0
		for k, r := range m.sorts(row) {
			deep, ok := b.optional(c, text(headDeep.With(m.sortName(row, k))))
			if ok {
				heads++
			}
			holes := slices.ContainsFunc(m.underside(f, k, "").Strokes, func(s templates.Stroke) bool { return s.Role == templates.Hidden })
			if holes != ok || ok && deep < leastBore {
				t.Errorf("%g deep, sort %d: a head %g deep, drawn %t", tt.depth, k, deep, holes)
			}
			axis := r.uncut("").Transform(r.frame().to()).Pieces[0].Bounds().Size().Y - math.Abs(r.topAt(row.Of.Thickness))
			if out := deep + b.figure(top.Card, screwReading) - axis; math.Abs(out-b.figure(top.Card, pilotDeep)) > leastBore {
				t.Errorf("%g deep, sort %d: %g stands out", tt.depth, k, out)
			}
		}
		if heads != tt.heads {
			t.Errorf("%g deep: %d holes for heads", tt.depth, heads)
		}
	}
}
