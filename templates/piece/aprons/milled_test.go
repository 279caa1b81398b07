package aprons

import (
	"math"
	"reflect"
	"slices"
	"testing"

	"rodsheet/geometry/solid"
	"rodsheet/templates"
	"rodsheet/templates/piece/design"
	"rodsheet/templates/piece/internal/piecetest"
)

// asMilled is a table with stretchers whose stock came out a little off.
func asMilled(d design.Design) design.Design {
	f := d.Frame
	d.Frame.Milled = design.FrameMilled{Legs: f.Legs.Size - 0.6, Aprons: f.Aprons.Thickness - 0.4}
	if f.Stretchers.Depth > 0 {
		d.Frame.Milled.Stretchers = f.Stretchers.Thickness + 0.3
	}
	return d
}

// Planed stock moves what is inside: outer sides of legs and rails, corner arrises, head,
// feet and top stay where they were drawn, and joints are as tight as before.
func TestOuterSidesStayAsDesigned(t *testing.T) {
	variants(t, func(t *testing.T, m Model) {
		q := newModel(asMilled(m.decided))
		if q.Decided().Frame.Legs.Size != m.Design.Frame.Legs.Size {
			t.Error("the decided size of the legs is lost")
		}
		milled := q.decided.Frame.Milled
		if !reflect.DeepEqual(q.sides, m.sides) || !reflect.DeepEqual(q.Top(), m.Top()) {
			t.Error("the outline moves")
		}
		for i, l := range m.legs {
			o := q.legs[i]
			if l.at != o.at || l.along != o.along || l.outer != o.outer || l.taper.Foot != o.taper.Foot {
				t.Errorf("leg %d moves", i)
			}
			for k, n := range o.inner {
				deep := o.at.Dot(n) + milled.Legs
				if !slices.ContainsFunc(facing(q.Leg(i), n), func(f solid.Face) bool { return near(f.Plane.D, deep) }) {
					t.Errorf("leg %d, side %d: not %g from its arris", i, k, milled.Legs)
				}
			}
		}
		for k, row := range q.Rows {
			thick := []float64{milled.Aprons, milled.Stretchers}[k]
			for i, r := range row.Rails {
				if r.outer != m.Rows[k].Rails[i].outer {
					t.Errorf("%v %d: its outer side moves", row.Kind, i)
				}
				low, high := math.Inf(1), math.Inf(-1)
				for _, s := range r.Part("").Pieces {
					for _, f := range s.Faces() {
						for _, p := range f.Corners {
							low, high = math.Min(low, p.Dot(r.In)), math.Max(high, p.Dot(r.In))
						}
					}
				}
				if !near(high-low, thick) {
					t.Errorf("%v %d: %g thick, want %g", row.Kind, i, high-low, thick)
				}
			}
		}
		parts := q.solids()
		for i, a := range parts {
			for _, b := range parts[:i] {
				if len(solid.Clash(a, b)) > 0 {
					t.Errorf("%s and %s share wood", a.Name, b.Name)
				}
			}
		}
	})
}

// Between plumb legs an apron is shorter than its side by two legs as they measure, its
// tenon a third of what it measures itself.
func TestPlumbTableAsMilled(t *testing.T) {
	d := table()
	d.Frame.Legs.Rake, d.Frame.Legs.Splay = 0, 0
	d.Frame.Milled = design.FrameMilled{Legs: 39.1, Aprons: 21}
	m, err := piecetest.Solved(judge(d, nil))
	if err != nil {
		t.Fatal(err)
	}
	row := m.Rows[0]
	if got := row.Rails[0].shortest(); !near(got, 520-2*39.1) {
		t.Errorf("shoulder to shoulder %g", got)
	}
	if outer, frame := row.Cheeks(); !near(outer, 7) || !near(frame, 14) {
		t.Errorf("cheeks at %g and %g", outer, frame)
	}
}

// An envelope is printed again if and only if its figures or templates change with the
// stock. The stock itself is planed by then.
func TestWhatIsPrintedAgain(t *testing.T) {
	variants(t, func(t *testing.T, m Model) {
		before, after := pack(t, m.decided), pack(t, asMilled(m.decided))
		for i, s := range before.Sections {
			if s.ID == "cover" || s.ID == "stock" || s.ID == "wood" || s.ID == "record" {
				if s.Milled != (s.ID == "record") {
					t.Errorf("%s: printed again %t", s.ID, s.Milled)
				}
				continue
			}
			o := after.Sections[i]
			same := len(s.Cards) == len(o.Cards) && reflect.DeepEqual(s.Drawings, o.Drawings)
			for k := 0; same && k < len(s.Cards); k++ {
				a, b := s.Cards[k], o.Cards[k]
				same = reflect.DeepEqual([]any{a.Figures, a.Text, a.Test, a.Templates}, []any{b.Figures, b.Text, b.Test, b.Templates})
			}
			if same == s.Milled {
				t.Errorf("%s: changes %t, printed again %t", s.ID, !same, s.Milled)
			}
		}
	})
}

// Where stock is planed it is said where to write what it measures.
func TestStockSaysWhereItsMeasureGoes(t *testing.T) {
	variants(t, func(t *testing.T, m Model) {
		s, err := m.stock(templates.Setting{})
		if err != nil {
			t.Fatal(err)
		}
		if len(s.Cards) != 1+len(m.Rows) {
			t.Fatalf("%d cards", len(s.Cards))
		}
		f := m.Design.Frame
		for i, c := range s.Cards {
			key, size := []string{"legs", "aprons", "stretchers"}[i], []float64{f.Legs.Size, f.Aprons.Thickness, f.Stretchers.Thickness}[i]
			if !slices.ContainsFunc(c.Figures, func(r templates.Reading) bool {
				return r.Value == m.length(size) && r.Write && c.Text[len(c.Text)-1] == writeDownText.With(key, r.Name)
			}) {
				t.Errorf("%s: %v, %q", c.Heading, c.Figures, c.Text)
			}
		}
	})
}
