package design

import (
	"strings"
	"testing"

	"rodsheet/geometry/measure"
)

// soundFrame is a rectangle with all its tables.
const soundFrame = `kind = "aprons"
units = "mm"
[frame]
length = 520
width = 400
height = 540
[frame.legs]
size = 40
rake = 6
splay = 8
[frame.aprons]
depth = 90
thickness = 22
[frame.stretchers]
height = 120
depth = 30
thickness = 18
[frame.top]
thickness = 20
[wood]
species = "white ash"
[saw]
kerf = 3.2`

// Every figure of a frame at its limits, and beyond.
func TestFrameLimits(t *testing.T) {
	lengths := []limited{
		{"0.001", "0", "10000", "10000.01", "frame.length frame.width frame.height frame.stretchers.height frame.legs.taper-start"},
		{"1", "0.99", "1000", "1000.01", "frame.legs.size frame.legs.foot"},
		{"1", "0.99", "200", "200.01", "frame.top.thickness"},
		{"-1000", "-1000.01", "1000", "1000.01", "frame.top.overhang"},
		{"0.001", "0", "10000", "10000.01", "frame.top.corner-size frame.top.diameter frame.top.length frame.top.width"},
		{"0", "-0.01", "1000", "1000.01", "frame.aprons.arch"},
		{"-15", "-15.01", "45", "45.01", "frame.legs.rake frame.legs.splay"},
		{"3", "2", "8", "9", "frame.sides"},
		{"0.001", "0", "1000", "1000.01", "frame.milled.legs frame.milled.aprons frame.milled.stretchers"},
	}
	for _, table := range []string{"frame.aprons.", "frame.stretchers."} {
		lengths = append(lengths, []limited{
			{"1", "0.99", "1000", "1000.01", table + "depth " + table + "thickness " + table + "tenon"},
			{"0", "-0.01", "1000", "1000.01", table + "inset " + table + "lower-cut"},
			{"0.001", "0", "1000", "1000.01", table + "upper-cut " + table + "tenon-length"},
		}...)
	}
	tryLimits(t, ApronsKind, lengths, func(key Key) string {
		switch key {
		case "frame.sides":
			return strings.NewReplacer("width = 400", `shape = "regular"`, "splay = 8\n", "").Replace(soundFrame)
		case "frame.top.corner-size":
			return strings.Replace(soundFrame, "[frame.top]", "[frame.top]\ncorner = \"rounded\"", 1)
		case "frame.top.diameter":
			return strings.Replace(soundFrame, "[frame.top]", "[frame.top]\noutline = \"round\"", 1)
		case "frame.top.length":
			return strings.Replace(soundFrame, "[frame.top]", "[frame.top]\noutline = \"oval\"\nwidth = 600", 1)
		case "frame.top.width":
			return strings.Replace(soundFrame, "[frame.top]", "[frame.top]\noutline = \"oval\"\nlength = 800", 1)
		}
		return soundFrame
	})
}

// Keys that mean nothing beside the shape, and keys that it asks for.
func TestFrameShapes(t *testing.T) {
	complainsOf(t, []complaint{
		{"rectangle", soundFrame, ""},
		{"no splay", strings.Replace(soundFrame, "splay = 8\n", "", 1), "frame.legs.splay: is missing"},
		{"no width", strings.Replace(soundFrame, "width = 400\n", "", 1), "frame.width: is missing"},
		{"regular with a width", strings.NewReplacer("width = 400", "width = 400\nshape = \"regular\"\nsides = 5", "splay = 8\n", "").Replace(soundFrame), "frame.width: goes with"},
		{"regular without sides", strings.NewReplacer("width = 400", "shape = \"regular\"", "splay = 8\n", "").Replace(soundFrame), "frame.sides: is missing"},
		{"a low bridle", strings.Replace(soundFrame, "height = 120", "height = 120\njoint = \"bridle\"", 1), `"bridle" is not tenon`},
		{"an upper cut of a bridle", strings.Replace(soundFrame, "depth = 90", "depth = 90\njoint = \"bridle\"\nupper-cut = 20", 1), "frame.aprons.upper-cut: goes with"},
		{"a size of sharp corners", strings.Replace(soundFrame, "thickness = 20", "thickness = 20\ncorner-size = 30", 1), "frame.top.corner-size: goes with corner clipped or rounded, not with sharp"},
		{"clipped by nothing", strings.Replace(soundFrame, "thickness = 20", "thickness = 20\ncorner = \"clipped\"", 1), "frame.top.corner-size: is missing"},
		{"round by its diameter", strings.Replace(soundFrame, "thickness = 20", "thickness = 20\noutline = \"round\"\ndiameter = 700", 1), ""},
		{"round, and over the legs", strings.Replace(soundFrame, "thickness = 20", "thickness = 20\noutline = \"round\"\ndiameter = 700\noverhang = 20", 1), "frame.top.overhang: "},
		{"a diameter of the frame", strings.Replace(soundFrame, "thickness = 20", "thickness = 20\ndiameter = 700", 1), "frame.top.diameter: goes with outline round, not with frame"},
		{"oval without a width", strings.Replace(soundFrame, "thickness = 20", "thickness = 20\noutline = \"oval\"\nlength = 700", 1), "frame.top.width: is missing"},
		{"oval, and over the legs", strings.Replace(soundFrame, "thickness = 20", "thickness = 20\noutline = \"oval\"\nlength = 700\nwidth = 600\noverhang = 20", 1), "frame.top.overhang: goes with"},
		{"a corner of its own", strings.Replace(soundFrame, "thickness = 20", "thickness = 20\ncorner = \"round\"", 1), `frame.top.corner: "round" is not sharp`},
		{"a table of another kind", soundFrame + "\n[ring]\nwidth = 20", "ring: goes with"},
	})
}

// Sizes go by the stock as planed, but for one with stock of its own.
func TestFrameSizesAsMilled(t *testing.T) {
	f, err := Read([]byte(soundFrame+"\n[frame.milled]\nlegs = 39.4\naprons = 21.6\n[[size]]\nname = \"low\"\n[[size]]\nname = \"stout\"\n[size.frame.legs]\nsize = 50"), nil)
	if err != nil {
		t.Fatal(complaints(err))
	}
	for i, want := range []float64{39.4, 50} {
		if got := f.Sizes[i].Frame.Planed(); got.Legs.Size != want || got.Aprons.Thickness != 21.6 || got.Stretchers.Thickness != 18 {
			t.Errorf("size %d: %+v", i, got)
		}
	}
}

// The starting text of every frame is read, and says what was asked.
func TestFrameStarts(t *testing.T) {
	everyStart(t, ApronsKind, func(sides int, d Design) bool {
		return d.Frame.Corners() == sides && d.Frame.Aprons.Depth >= 80 && !d.Frame.Top.None
	})
}

// A round top goes by its diameter where that is given, else by its overhang: a file that gave
// both would be refused. A diameter below nothing is one.
func TestRoundTopGoesByOneFigure(t *testing.T) {
	d := Design{Kind: ApronsKind, Frame: Frame{Top: FrameTop{Outline: RoundOnFrame}}}
	if d.GoesBy("frame.top.diameter") || !d.GoesBy("frame.top.overhang") {
		t.Error("by its diameter")
	}
	if d.Frame.Top.Diameter = 700; !d.GoesBy("frame.top.diameter") || d.GoesBy("frame.top.overhang") {
		t.Error("by its overhang")
	}
	if d.Frame.Top.Diameter = -1; !d.GoesBy("frame.top.diameter") {
		t.Error("a diameter below nothing is none")
	}
}

// Corners are worked as the starting text says behind its marks; a size of them means
// nothing where they are sharp.
func TestFrameCorners(t *testing.T) {
	text := strings.ReplaceAll(string(must(Start(ApronsKind, 4, measure.Millimetre))(t)), "# corner", "corner")
	f, err := Read([]byte(text), nil)
	if err != nil {
		t.Fatal(complaints(err))
	}
	d := f.Sizes[0]
	if top := d.Frame.Top; top.Corner != RoundedCorner || top.CornerSize != 20 {
		t.Errorf("%+v", top)
	}
	if !d.GoesBy("frame.top.corner-size") {
		t.Error("rounded corners have no size")
	}
	if d.Frame.Top.Corner = SharpCorner; d.GoesBy("frame.top.corner-size") || !d.GoesBy("frame.top.corner") {
		t.Error("sharp corners have a size, or none can be chosen")
	}
}
