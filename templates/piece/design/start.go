package design

import (
	"bytes"
	"cmp"
	_ "embed"
	"strings"
	"text/template"
	"unicode/utf8"

	"rodsheet/geometry/joint"
	"rodsheet/geometry/measure"
)

//go:embed start.toml
var startText string

// figures fill the starting text; each is written as it is to stand there.
type figures struct {
	Name, Title                                          string
	Sides                                                int
	Unit                                                 string
	Inside, Width, Depth, Horn                           string
	Breadth, Splay, Height, Clear                        string
	TaperStart, TaperFoot                                string
	Glass                                                bool
	Thickness, Diameter, Overhang                        string
	Corner, PadWide, PadHigh                             string
	Species                                              string
	RoughLength, RoughWidth                              string
	Kerf, BladeHeight, StopReach                         string
	FootCircle, FrameHeight, MidToLeg                    string
	Tenon, Slack, Dado, MilledWidth, MilledDeep, Usual   string
	TallHeight, BoardLong, BoardWide, BoardThick, Points string
}

// Start returns the text of a design to begin with, which can be built as it
// stands: a small table on so many stretchers. Every key is explained in it;
// those that may be left out are commented out.
func Start(sides int, unit measure.Unit) ([]byte, error) {
	n := measure.Number(float64(sides))
	err := cmp.Or(
		measure.AtLeast("sides", n, "", measure.Number(joint.RingFewest), ""),
		measure.AtMost("sides", n, "", measure.Number(joint.RingMost), ""),
	)
	if err != nil {
		return nil, err
	}
	t, err := template.New("start").Parse(startText)
	if err != nil {
		return nil, err
	}
	var out bytes.Buffer
	if err := t.Execute(&out, beginning(sides, unit)); err != nil {
		return nil, err
	}
	return aligned(out.Bytes()), nil
}

// aligned puts the comments, each behind a tab, below one another.
func aligned(text []byte) []byte {
	const column = 26
	var out bytes.Buffer
	for line := range bytes.Lines(text) {
		setting, comment, found := bytes.Cut(line, []byte("\t"))
		out.Write(setting)
		if found {
			out.WriteString(strings.Repeat(" ", max(2, column-utf8.RuneCount(setting))))
			out.Write(comment)
		}
	}
	return out.Bytes()
}

// beginning returns a small side table with round glass on three stretchers,
// and with a wooden top on more.
func beginning(sides int, unit measure.Unit) figures {
	f := figures{
		Unit: "mm", Width: "28", Depth: "36", Horn: "12", Breadth: "36", Clear: "3",
		Height: "450", TaperStart: "90", TaperFoot: "24", Thickness: "18", Overhang: "60",
		Corner: "20", PadWide: "20", PadHigh: "6", RoughLength: "20", RoughWidth: "4",
		Kerf: "3.2", BladeHeight: "80", StopReach: "900", FootCircle: "620", FrameHeight: "420",
		MidToLeg: "230", Tenon: "9", Slack: "0.2", Usual: "6 to 8 mm", Dado: "20", MilledWidth: "27.6", MilledDeep: "35.7", TallHeight: "550",
		BoardLong: "2400", BoardWide: "180", BoardThick: "40",
		Points: "[[-300, -200], [300, -200], [0, 350]]",
	}
	if unit == measure.Inch {
		f = figures{
			Unit: "in", Width: `"1 1/8"`, Depth: `"1 3/8"`, Horn: `"1/2"`, Breadth: `"1 3/8"`, Clear: `"1/8"`,
			Height: "18", TaperStart: `"3 1/2"`, TaperFoot: `"15/16"`, Thickness: `"3/4"`, Overhang: `"2 1/2"`,
			Corner: `"3/4"`, PadWide: `"3/4"`, PadHigh: `"1/4"`, RoughLength: `"3/4"`, RoughWidth: `"1/8"`,
			Kerf: `"1/8"`, BladeHeight: "3", StopReach: "36", FootCircle: "24", FrameHeight: "17",
			MidToLeg: "9", Tenon: `"3/8"`, Slack: "0.01", Usual: "1/4 to 5/16 in", Dado: `"3/4"`, MilledWidth: "1.105", MilledDeep: "1.36", TallHeight: "22",
			BoardLong: `"8ft"`, BoardWide: "7", BoardThick: `"1 1/2"`,
			Points: "[[-12, -8], [12, -8], [0, 14]]",
		}
	}
	f.Sides, f.Splay, f.Name, f.Species = sides, "14", sided(sides), usualWood
	f.Title = f.Name
	f.Inside = inside(sides, unit)
	if sides == joint.RingFewest {
		f.Glass, f.Thickness, f.Diameter, f.Splay = true, "8", "560", "16"
		if unit == measure.Inch {
			f.Thickness, f.Diameter = `"5/16"`, "22"
		}
	}
	return f
}

// inside returns a side that leaves the ring about as wide whatever its
// number of sides, and room for the legs between the laps.
func inside(sides int, unit measure.Unit) string {
	i := sides - joint.RingFewest
	if unit == measure.Inch {
		return []string{"10", "9", "8", "7", "6.5", "6"}[i]
	}
	return []string{"260", "240", "210", "190", "170", "160"}[i]
}
