package checks

import (
	"math"
	"strings"
	"testing"

	"rodsheet/geometry/measure"
	"rodsheet/templates/piece"
	"rodsheet/templates/piece/design"
	"rodsheet/templates/piece/internal/piecetest"
)

// figure returns a figure by the heading of its group, which begins so, and its
// name.
func figure(t *testing.T, p piece.Piece, heading, name string) measure.Quantity {
	t.Helper()
	for _, g := range Groups(p) {
		for _, f := range g.Figures {
			if strings.HasPrefix(g.Heading, heading) && f.Name == name {
				return f.Value
			}
		}
	}
	t.Errorf("no figure %s, %s", heading, name)
	return measure.Quantity{}
}

// The figures of the low table, reckoned with a pocket calculator from its
// decisions: inside 260, stretchers 28 by 36, legs 40 at 16°, 380 high, 3 clear.
func TestFiguresByHand(t *testing.T) {
	p := piecetest.Worked(t, piecetest.Low())
	const sin60, tan60, cos16, tan16 = 0.8660254038, 1.7320508076, 0.9612616959, 0.2867453858
	for _, tt := range []struct {
		heading, name string
		want          float64
	}{
		{"Ring", "crossing angle", math.Pi / 3},
		{"Ring", "centre to inside edge", 130 / tan60},
		{"Ring", "centre to centre line of the stretcher", 130/tan60 + 14},
		{"Stretcher", "inside edge, inner shoulder", 130},
		{"Stretcher", "inside edge, outer shoulder", 130 + 28/sin60},
		{"Stretcher", "outside edge, inner shoulder", 130 + 28/tan60},
		{"Stretcher", "outside edge, outer shoulder", 130 + 28/tan60 + 28/sin60},
		{"Laps", "spacer", (28 - 3.2) / sin60},
		{"Laps", "blade height", 18},
		{"Laps", "too wide by the usual rule, square to the lap", 3.2 * (1 - sin60)},
		{"Leg", "true length between the level cuts", 380 / cos16},
		{"Leg", "finished length, tip to tip", 380/cos16 + 40*tan16},
		{"Leg", "splay over a base of 200 mm", 200 * tan16},
		{"Leg", "bevel of head and foot from the edge", 74 * math.Pi / 180},
		{"Leg", "true section on the level, along the stretcher", 40 / cos16},
		{"Leg", "joint ends there at", 36/cos16 - 40*tan16},
		{"Bridle", "tenon and slot", 28. / 3},
		{"Bridle", "clearance of leg and neighbour", 3},
		{"Bridle", "cut height, leg on its rough head", 36 + 3*cos16},
		{"Bridle", "filler strip to hold a part upright", 16 * math.Pi / 180},
		{"Top", "area", math.Pi * 320 * 320},
		{"Top", "past the outside edge of the ring, mid-length", 320 - (130/tan60 + 28)},
		{"Top", "past the outside corner of the ring", 320 - 2*(130/tan60+28)},
		{"Top", "pad, mid-length to centre", 130 + 14/tan60 - 11/sin60},
		{"Weight", "top", math.Pi * 320 * 320 * 8 * 2500e-9},
		{"Standing", "rim from the centre of gravity, square to it", 320},
		// White ash, radial and tangential coefficients: USDA, Wood Handbook,
		// FPL-GTR-190 (2010), Table 13-5. Four per cent of moisture.
		{"Movement", "width of the stretcher, quarter sawn", 28 * 0.00169 * 4},
		{"Movement", "width of the stretcher, flat sawn", 28 * 0.00274 * 4},
	} {
		if got := figure(t, p, tt.heading, tt.name).Value; math.Abs(got-tt.want) > 1e-6*math.Max(1, tt.want) {
			t.Errorf("%s, %s: got %.9f, want %.9f", tt.heading, tt.name, got, tt.want)
		}
	}
}

// A proud head makes the leg longer at its trim line: what is counted from its
// trimmed tip, or from one level cut to the other, holds on the solid.
func TestFiguresOfAProudHead(t *testing.T) {
	d := piecetest.Low()
	d.Legs.Proud, d.Legs.Taper = 3, nil
	p := piecetest.Worked(t, d)
	tan, cos := math.Tan(p.Frame.Leg.Splay), math.Cos(p.Frame.Leg.Splay)
	b := p.Leg().Bounds()
	piecetest.Nearly(t, "true length", figure(t, p, "Leg", "true length between the level cuts").Value, b.Size().Z/cos)
	// The trimmed tip is the head's long corner, on the inner edge; the outer one
	// is shorter by what the level cut leans.
	inner := b.Max.Z / cos // the underside of the stretcher is z = 0
	piecetest.Nearly(t, "inner edge", figure(t, p, "Bridle", "leg shoulder, inner edge, from the trimmed tip").Value, inner)
	piecetest.Nearly(t, "outer edge", figure(t, p, "Bridle", "leg shoulder, outer edge").Value, inner+40*tan)
}

// The foot on the floor is measured on the solid: with the inner face tapered
// that face leans more than the leg.
func TestFootprint(t *testing.T) {
	d := piecetest.Low()
	d.Legs.Taper = nil
	p := piecetest.Worked(t, d)
	piecetest.Nearly(t, "plain foot", figure(t, p, "Feet", "foot on the floor, along the stretcher").Value, p.Frame.Leg.Section())
	piecetest.Nearly(t, "across", figure(t, p, "Feet", "foot on the floor, across it").Value, 28)

	p = piecetest.Worked(t, piecetest.Low())
	// The inner face comes nearer to the outer one by 14 mm in 305.3 mm.
	turn := math.Atan(14 / (380/math.Cos(16*math.Pi/180) - 90))
	piecetest.Nearly(t, "taper", p.Taper.ToEdge(), turn)
	got := figure(t, p, "Feet", "foot on the floor, along the stretcher").Value
	// Square across at the outer edge of the foot the leg is 26 mm; with the level
	// cut and the inner face that makes a triangle of angles 16°, 90° + turn and
	// the rest.
	piecetest.Nearly(t, "tapered foot", got, 26*math.Cos(turn)/math.Cos(16*math.Pi/180+turn))
}

func TestMovementWords(t *testing.T) {
	words := func(d design.Design) string {
		g := movementGroup(piecetest.Worked(t, d))
		return g.Heading + strings.Join(g.Text, " ")
	}
	d := piecetest.Low()
	for _, want := range []string{"8 % to 12 %", "Laps: ", "fit them at the moisture", "glued across the grain"} {
		if got := words(d); !strings.Contains(got, want) {
			t.Errorf("%q lacks %q", got, want)
		}
	}
	d.Wood.MoistureTo = 9
	if got := words(d); !strings.Contains(got, "does not mind") {
		t.Errorf("one per cent of moisture: %q", got)
	}
	d.Legs.Breadth, d.Wood.MoistureTo = 80, 12
	if got := words(d); !strings.Contains(got, "may break their glue") {
		t.Errorf("wide cheeks: %q", got)
	}
	d.Wood.Species, d.Wood.Density = "bog wood", 650
	if got := words(d); !strings.Contains(got, "Nothing is known") {
		t.Errorf("an unknown wood: %q", got)
	}
	d = piecetest.Low()
	d.Top.Kind = design.WoodTop
	if got := words(d); !strings.Contains(got, "do not glue it to the frame") {
		t.Errorf("a wooden top: %q", got)
	}
}

// The panels hold every figure and every check once.
func TestPanels(t *testing.T) {
	d := piecetest.Low()
	d.Legs.At = piecetest.Worked(t, d).Frame.LeastAt(-5)
	p := piecetest.Worked(t, d)
	panels := figurePanels(p)
	for i, g := range Groups(p) {
		if panels[i].Heading != g.Heading || len(panels[i].Table) != len(g.Figures) {
			t.Errorf("panel %q has %d rows for %d figures", panels[i].Heading, len(panels[i].Table), len(g.Figures))
		}
	}
	rows := map[string]int{}
	for _, panel := range gradedPanels(checksOf(p), p.Design.Unit) {
		for _, row := range panel.Table {
			rows[row[0]]++
		}
	}
	for _, c := range checksOf(p) {
		if rows[c.Name] != 1 {
			t.Errorf("check %q stands %d times", c.Name, rows[c.Name])
		}
		if c.advice() != "" && rows["To mend it: "+c.advice()+"."] == 0 {
			t.Errorf("check %q lacks its advice", c.Name)
		}
	}
	if got := gradedPanels(checksOf(p), p.Design.Unit)[0].Heading; got != "Checks that fail" {
		t.Errorf("first panel %q", got)
	}
}
