package design

import (
	"fmt"
	"reflect"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"rodsheet/geometry"
	"rodsheet/geometry/joint"
	"rodsheet/geometry/measure"
)

// sound is a design with all tables. Tests change single lines of it, so that
// the numbers of the lines stay.
const sound = `title = "stool"
units = "mm"
[ring]
sides = 3
inside = 260
width = 28
depth = 36
horn = 12
[legs]
breadth = 40
splay = 14
height = 450
[legs.taper]
start = 90
foot = 26
[top]
kind = "glass"
thickness = 8
diameter = 560
[top.pads]
diameter = 20
height = 6
[wood]
species = "white ash"
[saw]
kerf = 3.2
`

// with returns sound with lines changed: line number, new text, and so on. Line
// 27 is behind the last.
func with(changes ...any) string {
	lines := strings.Split(sound, "\n")
	for i := 0; i < len(changes); i += 2 {
		lines[changes[i].(int)-1] = changes[i+1].(string)
	}
	return strings.Join(lines, "\n")
}

// complaints returns mistakes one a line, each with its hint behind a bar.
func complaints(err error) string {
	if err == nil {
		return ""
	}
	var out []string
	for _, m := range err.(Mistakes) {
		text := fmt.Sprintf("%d:%d %s", m.Line, m.Column, m.Text)
		if m.Hint != "" {
			text += " | " + m.Hint
		}
		out = append(out, text)
	}
	return strings.Join(out, "\n")
}

func TestReadSound(t *testing.T) {
	got := must(Read([]byte(sound), nil))(t)
	want := Design{
		Title: "stool", Unit: measure.Millimetre,
		Ring: Ring{Ring: joint.Ring{Sides: 3, Inside: 260, Width: 28, Depth: 36}, Plain: OpenEnd, Horn: 12},
		Legs: Legs{
			Breadth: 40, Lean: BySplay, Given: measure.Radians(14), Height: 450, To: Overall,
			Taper: &Taper{Start: 90, Foot: 26, Faces: joint.OneFace},
		},
		Top: Top{
			Kind: GlassTop, Outline: RoundTop, Thickness: 8, Diameter: 560,
			Pads: Pads{Diameter: 20, Height: 6, Outermost: true},
		},
		Wood: Wood{
			Species: "Ash, white", Density: 672, ExtraLength: 20, ExtraWidth: 4, ExtraThickness: 4,
			Spares: 1, Tests: 1, MoistureFrom: 8, MoistureTo: 12, Waste: 0.25,
		},
		Saw: Saw{Kerf: 3.2},
	}
	if got.Title != "stool" || got.Unit != measure.Millimetre || len(got.Sizes) != 1 {
		t.Errorf("got %q in %s with %d sizes", got.Title, got.Unit, len(got.Sizes))
	}
	if !reflect.DeepEqual(got.Sizes[0], want) {
		t.Errorf("got  %+v\nwant %+v", got.Sizes[0], want)
	}
}

// Every key that sound leaves out, and how it is kept.
func TestReadEveryKey(t *testing.T) {
	tests := []struct {
		name string
		text string
		got  func(Design) any
		want any
	}{
		{"inches", with(2, `units = "in"`, 5, `inside = "10 1/4"`, 6, "width = 1", 7, "depth = 1.5", 8, "", 10, "breadth = 1",
			12, "height = 18", 14, "start = 3", 15, `foot = "3/4"`, 18, `thickness = "5/16"`, 19, "diameter = 22",
			21, `diameter = "20mm"`, 22, `height = "1/4"`, 26, `kerf = "1/8"`),
			func(d Design) any { return []float64{d.Ring.Inside, d.Wood.ExtraLength, d.Top.Pads.Diameter} },
			[]float64{10.25 * 25.4, 19.05, 20}},
		{"no title", with(1, ""), func(d Design) any { return d.Title }, "table frame"},
		{"leg end over", with(8, `leg-end = "over"`), func(d Design) any { return d.Ring.LegEndOver }, true},
		{"leg end under", with(8, `leg-end = "under"`), func(d Design) any { return d.Ring.LegEndOver }, false},
		{"flush", with(8, `plain-end = "flush"`), func(d Design) any { return d.Ring.Plain }, FlushEnd},
		{"flush, no horn", with(7, "depth = 36\nplain-end = \"flush\"", 8, "horn = 0"), func(d Design) any { return d.Ring.Horn }, 0.0},
		{"closed", with(8, "plain-end = \"closed\"\nhorn = 5\nslack = 0.3"),
			func(d Design) any { return []any{d.Ring.Plain, d.Ring.Horn, d.Ring.Slack} }, []any{ClosedEnd, 5.0, 0.3}},
		{"slope", with(11, `splay = "1:4"`), func(d Design) any { return fmt.Sprintf("%.4f", d.Legs.Given) }, "0.2450"},
		{"foot circle", with(11, "foot-circle = 600"), func(d Design) any { return []any{d.Legs.Lean, d.Legs.Given} }, []any{ByFootCircle, 600.0}},
		{"foot spread", with(11, "foot-spread = 500"), func(d Design) any { return []any{d.Legs.Lean, d.Legs.Given} }, []any{ByFootSpread, 500.0}},
		{"frame height", with(12, "frame-height = 430"), func(d Design) any { return []any{d.Legs.To, d.Legs.Height} }, []any{ToFrame, 430.0}},
		{"mid to leg", with(12, "height = 450\nmid-to-leg = 230"), func(d Design) any { return d.Legs.At }, 230.0},
		{"clear", with(12, "height = 450\nclear = 3"), func(d Design) any { return d.Legs.Clear }, 3.0},
		{"mortise in leg", with(12, "height = 450\nmortise = \"leg\"\ntenon = 9\nproud = 2"),
			func(d Design) any { return []any{d.Legs.Mortise, d.Legs.Tenon, d.Legs.Proud} }, []any{joint.MortiseInLeg, 9.0, 2.0}},
		{"four faces", with(15, "foot = 26\nfaces = \"four\""), func(d Design) any { return d.Legs.Taper.Faces }, joint.FourFaces},
		{"no taper", with(15, "faces = \"none\""), func(d Design) any { return d.Legs.Taper == nil }, true},
		{"no top", with(17, `kind = "none"`), func(d Design) any { return d.Top }, Top{}},
		{"no pads", with(20, "[top.pads]\nkind = \"none\""), func(d Design) any { return d.Top.Pads }, Pads{}},
		{"bumpers", with(20, "[top.pads]\nkind = \"bumper\"\nmid-to-pad = 0"), func(d Design) any { return d.Top.Pads },
			Pads{Diameter: 20, Height: 6, Bumpers: true}},
		{"wooden ring top", with(17, `kind = "wood"`, 19, "outline = \"ring\"\noverhang = -5\ncorner = \"clipped\"\ncorner-size = 12"),
			func(d Design) any {
				return []any{d.Top.Kind, d.Top.Outline, d.Top.Overhang, d.Top.Corner, d.Top.CornerSize}
			},
			[]any{WoodTop, RingTop, -5.0, ClippedCorner, 12.0}},
		{"free top", with(19, `outline = "free"`+"\n"+`points = [[-300, -200], ["30cm", -200], [0, 350]]`),
			func(d Design) any { return d.Top.Points }, []geometry.Point{{X: -300, Y: -200}, {X: 300, Y: -200}, {X: 0, Y: 350}}},
		{"wood", with(24, "species = \"Walnut\"\ndensity = 640\nmoisture = [6, 14]\nrough-length = 30\nrough-width = 2\nrough-thickness = 1\nspares = 0\ntests = 2\nwaste = 40"),
			func(d Design) any { return d.Wood }, Wood{Species: "Walnut", Density: 640, ExtraLength: 30, ExtraWidth: 2, ExtraThickness: 1,
				Spares: 0, Tests: 2, MoistureFrom: 6, MoistureTo: 14, Waste: 0.4}},
		{"a wood of the maker's", with(24, "species = \"plum\"\ndensity = 800"),
			func(d Design) any { return []any{d.Wood.Species, d.Wood.Density} }, []any{"plum", 800.0}},
		{"density alone", with(24, "density = 800"), func(d Design) any { return d.Wood.Density }, 800.0},
		{"boards", with(24, "species = \"beech\"\n[[wood.board]]\nlength = 2400\nwidth = 180\nthickness = 40\n[[wood.board]]\nlength = 900\nwidth = 90\nthickness = 40\ncount = 3"),
			func(d Design) any { return d.Wood.Boards }, []Board{{2400, 180, 40, 1}, {900, 90, 40, 3}}},
		{"saw", with(26, "kerf = 3\nflat-tooth = true\nblade-height = 80\ndado = 20\nstop-reach = 900\ngauge = \"fence\""),
			func(d Design) any { return d.Saw }, Saw{Kerf: 3, FlatTooth: true, Highest: 80, Dado: 20, StopReach: 900, FromFence: true}},
		{"milled", with(27, "[milled]\nwidth = 27.6\ndepth = 35.5\nbreadth = 39\nkerf = 2.9"),
			func(d Design) any { return d.Milled }, Milled{27.6, 35.5, 39, 2.9}},
		{"plan", with(2, "units = \"mm\"\n[plan]\nmaker = \"Žofie & søn\"\ndate = 2031-05-04\nrevision = \"B\"\nnote = \"one copy\""),
			func(d Design) any { return d.Plan }, Plan{"Žofie & søn", "2031-05-04", "B", "one copy"}},
		{"a date as the maker writes it", with(27, "[plan]\ndate = \"4 May\""), func(d Design) any { return d.Plan }, Plan{Date: "4 May"}},
		{"items", with(27, "[[item]]\nname = \"insert\"\n[[item]]\nname = \"cloth\"\ncount = 2\nnote = \"lint-free\"\nprice = 0\n[[item]]\nname = \"oil\"\nprice = 12.5"),
			func(d Design) any { return d.Items }, []Item{{Name: "insert", Count: 1}, {"cloth", "lint-free", 2, Price{0, true}}, {"oil", "", 1, Price{12.5, true}}}},
		{"prices", with(27, "[prices]\ncurrency = \"€\"\nwood-per-m3 = 1800\nglass-per-square-foot = 14.5"),
			func(d Design) any { return d.Prices }, Prices{"€", Rate{Price{1800, true}, measure.Millimetre}, Rate{Price{14.5, true}, measure.Inch}}},
		{"top on buttons", with(17, "kind = \"wood\"", 19, "[top.fixing]\nkind = \"buttons\"\nscrew = 25", 20, "", 21, "", 22, ""),
			func(d Design) any { return d.Top.Fixing }, Fixing{Kind: Buttons, Screw: 25}},
		{"glass in silicone", with(25, "[top.fixing]\nbond = \"silicone\"\n[saw]"),
			func(d Design) any { return d.Top.Fixing }, Fixing{Bond: Silicone}},
		{"nothing said of how a top of wood is held", with(17, "kind = \"wood\"", 25, "[top.fixing]\nbond = \"none\"\n[saw]"),
			func(d Design) any { return d.Top.Fixing }, Fixing{}},
		{"tables in braces and dotted keys", "ring = {sides = 4, inside = 200, width = 20, depth = 30}\nlegs.breadth = 30\nlegs.splay = 10\nlegs.height = 400\nwood.density = 600\nsaw.kerf = 3\n",
			func(d Design) any { return []any{d.Ring.Sides, d.Legs.Breadth, d.Saw.Kerf, d.Top.Kind} }, []any{4, 30.0, 3.0, NoTop}},
		{"byte order mark and CRLF", "\ufeff" + strings.ReplaceAll(sound, "\n", "\r\n"),
			func(d Design) any { return d.Ring.Depth }, 36.0},
	}
	for _, tt := range tests {
		f, err := Read([]byte(tt.text), nil)
		if err != nil {
			t.Errorf("%s: %s", tt.name, complaints(err))
			continue
		}
		if got := tt.got(f.Sizes[0]); !reflect.DeepEqual(got, tt.want) {
			t.Errorf("%s: got %v, want %v", tt.name, got, tt.want)
		}
	}
}

// 423.776 board feet make a cubic metre and 10.7639 square feet a square metre
// (NIST Handbook 44, appendix C, from memory).
func TestRates(t *testing.T) {
	near := func(got, want float64) bool { return got > want*0.99999 && got < want*1.00001 }
	metric, inches := Rate{Price{1800, true}, measure.Millimetre}, Rate{Price{12, true}, measure.Inch}
	for name, ok := range map[string]bool{
		"m³": near(metric.OfVolume(2e9), 3600), "m²": near(metric.OfArea(1e6), 1800),
		"board feet": near(inches.OfVolume(1e9), 12*423.776), "square feet": near(inches.OfArea(1e6), 12*10.7639),
	} {
		if !ok {
			t.Errorf("%s: %v %v", name, metric.OfVolume(2e9), inches.OfArea(1e6))
		}
	}
}

// must returns what a call gives that has to succeed.
func must[T any](v T, err error) func(rapid.TB) T {
	return func(t rapid.TB) T {
		t.Helper()
		if err != nil {
			t.Fatal(err)
		}
		return v
	}
}
