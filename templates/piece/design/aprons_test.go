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
	lengths := []struct {
		least, under, most, over string
		keys                     string
	}{
		{"0.001", "0", "10000", "10000.01", "frame.length frame.width frame.height frame.stretchers.height frame.legs.taper-start"},
		{"1", "0.99", "1000", "1000.01", "frame.legs.size frame.legs.foot"},
		{"1", "0.99", "200", "200.01", "frame.top.thickness"},
		{"-1000", "-1000.01", "1000", "1000.01", "frame.top.overhang"},
		{"0", "-0.01", "1000", "1000.01", "frame.aprons.arch"},
		{"-15", "-15.01", "45", "45.01", "frame.legs.rake frame.legs.splay"},
		{"3", "2", "8", "9", "frame.sides"},
	}
	for _, table := range []string{"frame.aprons.", "frame.stretchers."} {
		lengths = append(lengths, []struct{ least, under, most, over, keys string }{
			{"1", "0.99", "1000", "1000.01", table + "depth " + table + "thickness " + table + "tenon"},
			{"0", "-0.01", "1000", "1000.01", table + "inset " + table + "lower-cut"},
			{"0.001", "0", "1000", "1000.01", table + "upper-cut " + table + "tenon-length"},
		}...)
	}
	tried := map[Key]bool{}
	for _, tt := range lengths {
		for _, word := range strings.Fields(tt.keys) {
			key := Key(word)
			tried[key] = true
			base := soundFrame
			if key == "frame.sides" {
				base = strings.NewReplacer("width = 400", `shape = "regular"`, "splay = 8\n", "").Replace(soundFrame)
			}
			for _, value := range []string{tt.least, tt.most} {
				if _, err := Read([]byte(setIn(base, key, value)), nil); err != nil {
					t.Errorf("%s = %s: %s", key, value, complaints(err))
				}
			}
			for value, limit := range map[string]string{tt.under: tt.least, tt.over: tt.most} {
				_, err := Read([]byte(setIn(base, key, value)), nil)
				got := complaints(err)
				if limit == "0.001" {
					limit = "0"
				}
				if !strings.Contains(got, " "+word+": "+value) || !strings.Contains(got, " "+limit) || strings.Contains(got, "\n") {
					t.Errorf("%s = %s: got %q", key, value, got)
				}
			}
		}
	}
	allTried(t, ApronsKind, tried)
}

// Keys that mean nothing beside the shape, and keys that it asks for.
func TestFrameShapes(t *testing.T) {
	for _, tt := range []struct {
		name, text, want string
	}{
		{"rectangle", soundFrame, ""},
		{"no splay", strings.Replace(soundFrame, "splay = 8\n", "", 1), "frame.legs.splay: is missing"},
		{"no width", strings.Replace(soundFrame, "width = 400\n", "", 1), "frame.width: is missing"},
		{"regular with a width", strings.NewReplacer("width = 400", "width = 400\nshape = \"regular\"\nsides = 5", "splay = 8\n", "").Replace(soundFrame), "frame.width: goes with"},
		{"regular without sides", strings.NewReplacer("width = 400", "shape = \"regular\"", "splay = 8\n", "").Replace(soundFrame), "frame.sides: is missing"},
		{"a table of another kind", soundFrame + "\n[ring]\nwidth = 20", "ring: goes with"},
	} {
		_, err := Read([]byte(tt.text), nil)
		if got := complaints(err); tt.want == "" && err != nil || !strings.Contains(got, tt.want) || strings.Contains(got, "\n") {
			t.Errorf("%s: got %q, want %q", tt.name, got, tt.want)
		}
	}
}

// The starting text of every frame is read, and says what was asked.
func TestFrameStarts(t *testing.T) {
	for sides := FrameFewest; sides <= FrameMost; sides++ {
		for _, unit := range []measure.Unit{measure.Millimetre, measure.Inch} {
			text, err := Start(ApronsKind, sides, unit)
			if err != nil {
				t.Fatal(err)
			}
			file, err := Read(text, nil)
			if err != nil {
				t.Fatalf("%d sides: %s\n%s", sides, complaints(err), text)
			}
			if f := file.Sizes[0].Frame; f.Corners() != sides || f.Aprons.Depth < 80 || f.Top.None {
				t.Errorf("%d sides: %+v", sides, f)
			}
		}
	}
}
