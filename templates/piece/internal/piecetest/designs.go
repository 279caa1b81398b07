// Package piecetest holds designs to test pieces by, and measures their solids by
// themselves. It is for tests only.
package piecetest

import (
	"fmt"
	"math"
	"reflect"

	"pgregory.net/rapid"

	"rodsheet/geometry"
	"rodsheet/geometry/joint"
	"rodsheet/geometry/measure"
	"rodsheet/templates/piece"
	"rodsheet/templates/piece/design"
)

// Low is a sound three-sided table in millimetres.
func Low() design.Design {
	return design.Design{
		Title: "three-sided table", Size: "low", Unit: measure.Millimetre,
		Ring: design.Ring{Ring: joint.Ring{Sides: 3, Inside: 260, Width: 28, Depth: 36}, Plain: design.OpenEnd, Horn: 12},
		Legs: design.Legs{
			Breadth: 40, Mortise: joint.MortiseInStretcher, Lean: design.BySplay,
			Given: measure.Radians(16), Height: 380, To: design.ToFrame, Clear: 3,
			Taper: &design.Taper{Start: 90, Foot: 26, Faces: joint.OneFace},
		},
		Top: design.Top{
			Kind: design.GlassTop, Outline: design.RoundTop, Thickness: 8, Diameter: 640,
			Pads: design.Pads{Diameter: 22, Height: 8, Outermost: true},
		},
		Wood: design.Wood{
			Species: "Ash, white", ExtraLength: 20, ExtraWidth: 3, ExtraThickness: 3,
			Spares: 1, Tests: 1, MoistureFrom: 8, MoistureTo: 12, Waste: 0.25,
		},
		Saw: design.Saw{Kerf: 3.2, Highest: 80, StopReach: 900},
	}
}

// Phi returns the crossing angle of a ring of n sides.
func Phi(n int) float64 { return math.Pi * float64(n-2) / float64(n) }

// Sound draws a design without a top whose stretchers clear each other.
func Sound(t *rapid.T) design.Design {
	mm := func(lo, hi float64, name string) float64 { return rapid.Float64Range(lo, hi).Draw(t, name) }
	n := rapid.IntRange(3, 8).Draw(t, "sides")
	d := design.Design{Saw: design.Saw{Kerf: 3}}
	d.Ring = design.Ring{
		Ring:       joint.Ring{Sides: n, Inside: mm(150, 900, "inside"), Width: mm(18, 50, "width"), Depth: mm(20, 60, "depth")},
		LegEndOver: rapid.Bool().Draw(t, "leg end over"),
		Plain:      design.PlainEnd(rapid.IntRange(0, 2).Draw(t, "plain end")),
	}
	if d.Ring.Plain != design.FlushEnd {
		d.Ring.Horn = mm(0, 30, "horn")
	}
	if d.Ring.Plain == design.ClosedEnd {
		d.Ring.Slack = mm(0.01, 3, "slack")
		d.Ring.Horn += d.Ring.Slack/math.Sin(Phi(n)) + 1
	}
	d.Legs = design.Legs{
		Breadth: mm(20, 60, "breadth"), Mortise: joint.BridleMember(rapid.IntRange(0, 1).Draw(t, "mortise")),
		Given: mm(0, 0.5, "splay"), Height: mm(250, 800, "height"), Clear: mm(0, 20, "clear"),
	}
	if rapid.Bool().Draw(t, "own tenon") {
		d.Legs.Tenon = d.Ring.Width * mm(0.2, 0.6, "tenon")
	}
	if rapid.Bool().Draw(t, "proud") {
		d.Legs.Proud = mm(0, 12, "proud by")
	}
	// Ends that cross the same stretcher must not meet.
	for n > 4 && Worked(t, d).RoughReach() > 0.95*d.Ring.MostReach() {
		d.Ring.Inside *= 1.2
	}
	return d
}

// Any draws any design, sound or not.
func Any(t *rapid.T) design.Design {
	mm := func(lo, hi float64, name string) float64 { return rapid.Float64Range(lo, hi).Draw(t, name) }
	pick := func(last int, name string) int { return rapid.IntRange(0, last).Draw(t, name) }
	n := 3 + pick(5, "sides")
	d := design.Design{
		Unit: measure.Unit(pick(1, "unit")),
		Ring: design.Ring{
			Ring:       joint.Ring{Sides: n, Inside: mm(60, 600, "inside"), Width: mm(10, 60, "width"), Depth: mm(10, 70, "depth")},
			LegEndOver: rapid.Bool().Draw(t, "over"), Plain: design.PlainEnd(pick(2, "plain")),
			Horn: mm(0, 60, "horn"), Slack: mm(0, 2, "slack"),
		},
		Legs: design.Legs{
			Breadth: mm(15, 70, "breadth"), Mortise: joint.BridleMember(pick(1, "mortise")),
			Given: mm(0, 0.6, "splay"), Height: mm(150, 800, "height"), Clear: mm(0, 6, "clear"),
			At: float64(pick(1, "own place")) * mm(20, 500, "at"), Proud: float64(pick(1, "proud")) * mm(0, 12, "proud by"),
		},
		Top: design.Top{
			Kind: design.TopKind(pick(2, "kind")), Outline: design.TopOutline(pick(1, "outline")),
			Thickness: mm(4, 25, "thickness"), Overhang: mm(-20, 150, "overhang"),
			Corner: design.Corner(pick(2, "corner")), CornerSize: mm(0, 20, "corner size"),
			Pads: design.Pads{Diameter: float64(pick(1, "pads")) * mm(8, 70, "pad"), Height: mm(2, 12, "pad height"),
				At: mm(-100, 250, "pad at"), Outermost: rapid.Bool().Draw(t, "outermost")},
		},
		Wood: design.Wood{Species: "Ash, white", MoistureFrom: 8, MoistureTo: 12, ExtraLength: 20,
			Boards: []design.Board{{Length: mm(300, 1200, "board"), Width: 150, Thickness: mm(20, 80, "thick"), Count: 3}}},
		Saw: design.Saw{Kerf: 3, Highest: mm(10, 80, "highest"), Dado: mm(5, 30, "dado"), StopReach: mm(50, 400, "reach")},
	}
	if rapid.Bool().Draw(t, "free") {
		d.Top.Outline, d.Top.Corner = design.FreeOutline, design.SharpCorner
		d.Top.Points = []geometry.Point{{X: -300, Y: -mm(100, 300, "a")}, {X: mm(100, 400, "b"), Y: -200}, {X: 350, Y: 250}, {X: -mm(100, 300, "c"), Y: 300}}
	}
	if rapid.Bool().Draw(t, "tapered") {
		d.Legs.Taper = &design.Taper{Start: mm(0, 140, "start"), Foot: mm(6, 60, "foot"), Faces: joint.TaperFaces(pick(3, "faces"))}
	}
	return d
}

// Worked works a design out, which must have no fault.
func Worked(t rapid.TB, d design.Design) piece.Piece {
	t.Helper()
	p, err := piece.Solve(d)
	if err != nil {
		t.Fatalf("%+v: %v", d, err)
	}
	return p
}

// Taper draws a taper that its leg can have: it starts below the joint.
func Taper(t *rapid.T, d design.Design) *design.Taper {
	faces := joint.TaperFaces(rapid.IntRange(0, 3).Draw(t, "tapered faces"))
	most := 0.6 * math.Min(d.Legs.Breadth, d.Ring.Width)
	return &design.Taper{
		Start: d.Ring.Depth/math.Cos(d.Legs.Given) + rapid.Float64Range(5, 80).Draw(t, "start of taper"),
		Foot:  d.Legs.Breadth - most*rapid.Float64Range(0.05, 1).Draw(t, "taken off"),
		Faces: faces,
	}
}

// A Knob is a figure of a design that a test may set: its name, and how.
type Knob struct {
	Name string
	Set  func(float64)
}

// Knobs returns every figure of a design, choices and counts among them, by
// looking at its type: none is forgotten when one is added.
func Knobs(d *design.Design) []Knob {
	var out []Knob
	var walk func(name string, v reflect.Value)
	walk = func(name string, v reflect.Value) {
		switch v.Kind() {
		case reflect.Float64:
			out = append(out, Knob{name, v.SetFloat})
		case reflect.Int:
			out = append(out, Knob{name, func(x float64) { v.SetInt(int64(math.Max(-1e9, math.Min(1e9, x)))) }})
		case reflect.Uint8:
			out = append(out, Knob{name, func(x float64) { v.SetUint(uint64(math.Max(0, math.Min(255, x)))) }})
		case reflect.Struct:
			for i := range v.NumField() {
				walk(name+"."+v.Type().Field(i).Name, v.Field(i))
			}
		case reflect.Slice:
			for i := range v.Len() {
				walk(fmt.Sprintf("%s[%d]", name, i), v.Index(i))
			}
		case reflect.Pointer:
			if !v.IsNil() {
				walk(name, v.Elem())
			}
		}
	}
	walk("", reflect.ValueOf(d).Elem())
	return out
}

// Bases returns designs that between them use every figure.
func Bases() []design.Design {
	var out []design.Design
	for k := range 4 {
		d := Low()
		d.Legs.Taper = &design.Taper{Start: 90, Foot: 26, Faces: joint.TaperFaces(k)}
		d.Wood.Boards = []design.Board{{Length: 2000, Width: 200, Thickness: 40, Count: 2}}
		d.Milled = design.Milled{Width: 27.6, Depth: 36.2, Breadth: 39.8, Kerf: 3.1}
		d.Legs.At, d.Legs.Tenon, d.Wood.Density = 300, 9, 650
		d.Items = []design.Item{{Name: "insert", Count: 3, Price: design.Price{Value: 2, Given: true}}}
		switch k {
		case 1:
			d.Legs.At, d.Legs.Lean, d.Legs.Given = 0, design.ByFootCircle, 1000
			d.Top.Outline, d.Top.Corner, d.Top.CornerSize = design.RingTop, design.RoundedCorner, 30
		case 2:
			d.Legs.At, d.Legs.Lean, d.Legs.Given = 0, design.ByFootSpread, 800
			d.Top.Kind, d.Top.Outline, d.Top.Corner, d.Top.CornerSize = design.WoodTop, design.FreeOutline, design.ClippedCorner, 30
			d.Top.Points = []geometry.Point{{X: -200, Y: -200}, {X: 200, Y: -200}, {X: 250, Y: 100}, {X: 0, Y: 300}}
		case 3:
			d.Ring.Plain, d.Ring.Slack, d.Top.Kind, d.Legs.Proud = design.ClosedEnd, 0.4, design.NoTop, 2
			d.Ring.Sides = 6
		}
		out = append(out, d)
	}
	return out
}

// Square is simple enough to be reckoned in the head: plumb legs, square
// crossings, plain ends cut flush.
func Square() design.Design {
	return design.Design{
		Ring: design.Ring{Ring: joint.Ring{Sides: 4, Inside: 200, Width: 30, Depth: 40}},
		Legs: design.Legs{Breadth: 40, Tenon: 10, Height: 400, Clear: 5},
		Wood: design.Wood{Density: 700},
		Saw:  design.Saw{Kerf: 3},
	}
}
