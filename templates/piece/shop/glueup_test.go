package shop

import (
	"math"
	"strconv"
	"strings"
	"testing"

	"rodsheet/geometry/joint"
	"rodsheet/geometry/measure"
	"rodsheet/templates/piece/design"
	"rodsheet/templates/piece/internal/piecetest"
)

// A block rises from Thin to Thick at its own angle, and comes out of the
// offcut it names.
func TestBlocksLeanAsTheySay(t *testing.T) {
	for name, designs := range settingsCases() {
		for _, p := range workAll(t, designs...) {
			for _, b := range Blocks(p) {
				if got := math.Atan((b.Thick - b.Thin) / b.Across); math.Abs(got-b.Angle) > 1e-9 {
					t.Errorf("%s, %s: leans %v, says %v", name, b.Name, got, b.Angle)
				}
				room := map[string][2]float64{
					"offcuts of leg stock":       {p.Frame.Leg.Breadth, p.Frame.Leg.Thickness},
					"offcuts of stretcher stock": {p.Frame.Ring.Depth, p.Frame.Ring.Width},
					"taper offcuts":              {p.Frame.Leg.Breadth, p.Frame.Leg.Thickness},
				}[b.From]
				s := b.stick()
				if most, least := math.Max(room[0], room[1]), math.Min(room[0], room[1]); math.Max(s.Width, s.Thickness) > most+1e-9 || math.Min(s.Width, s.Thickness) > least+1e-9 {
					t.Errorf("%s, %s: %v does not come out of %v", name, b.Name, s, room)
				}
			}
		}
	}
}

// Clamp faces become parallel: the caul leans by the splay, at a flush end by
// what the lap leans from square.
func TestCauls(t *testing.T) {
	d := piecetest.Low()
	d.Ring.Plain, d.Ring.Horn = design.FlushEnd, 0
	p := workAll(t, d)[0]
	if got := legCaul(p).Angle; got != p.Frame.Leg.Splay {
		t.Errorf("caul of the leg %v, splay %v", got, p.Frame.Leg.Splay)
	}
	if got, want := endCaul(p).Angle, measure.Radians(30); math.Abs(got-want) > 1e-6 {
		t.Errorf("caul of the plain end %v, want %v", got, want)
	}
	d.Ring.Sides = 4
	if p := workAll(t, d)[0]; slantedEnd(p) {
		t.Error("a square ring asks for a caul at the plain end")
	}
}

// Offcuts of a taper serve as wedges only where their slope holds.
func TestTaperOffcutsAsWedges(t *testing.T) {
	for _, c := range []struct {
		foot, start float64
		want        bool
	}{{26, 90, true}, {39, 90, false}, {12, 250, false}} {
		d := piecetest.Low()
		d.Legs.Taper = &design.Taper{Foot: c.foot, Start: c.start, Faces: joint.OneFace}
		p := workAll(t, d)[0]
		if got := foldingWedge(p).From == "taper offcuts"; got != c.want {
			t.Errorf("foot %v from %v: taper offcuts serve %v, want %v", c.foot, c.start, got, c.want)
		}
	}
}

// Cut list, settings and table of blocks ask for the same number of each kind:
// what several sizes have alike is made once.
func TestBlocksAreCountedOnce(t *testing.T) {
	cases := settingsCases()
	thick, odd := tall(), tall()
	thick.Size, thick.Ring.Depth, thick.Legs.Given = "thick", 42, piecetest.Low().Legs.Given
	odd.Size, odd.Legs.Given, odd.Ring.Sides = "odd", piecetest.Low().Legs.Given, 5
	cases["one splay"] = []design.Design{piecetest.Low(), odd, thick}
	for name, designs := range cases {
		pieces := workAll(t, designs...)
		for _, block := range []string{"caul", "filler strip"} {
			var listed, set, told int
			for _, r := range newCutList(pieces).Rows {
				if strings.HasPrefix(r.Part, block) {
					listed += r.Serves
				}
			}
			for _, s := range only(workingOrder(pieces), doSawBlocks) {
				for _, b := range s.Parts {
					if b.Part == block {
						set += b.Count
					}
				}
			}
			for _, r := range GlueUp(pieces)[0].Table {
				if strings.HasPrefix(r[0], block) {
					n, _ := strconv.Atoi(r[1])
					told += n
				}
			}
			if listed == 0 || set != listed || told != listed {
				t.Errorf("%s, %s: %d in the cut list, %d in the settings, %d in the table", name, block, listed, set, told)
			}
		}
	}
}

// A block that serves several sizes says which.
func TestBlocksNameTheirSizes(t *testing.T) {
	twin := piecetest.Low()
	twin.Size = "twin"
	third := twin
	third.Size, third.Ring.Depth = "thick", 42
	var said []string
	for _, s := range only(workingOrder(workAll(t, piecetest.Low(), twin, third)), doSawBlocks) {
		said = append(said, s.partText())
	}
	want := "caul: 3 for sizes low and twin, 3 for size thick; filler strip: 1 for all sizes"
	if got := strings.Join(said, "; "); got != want {
		t.Errorf("got %s, want %s", got, want)
	}
}

func TestGlueUpWords(t *testing.T) {
	closed, proud := piecetest.Low(), piecetest.Low()
	closed.Ring.Plain, closed.Ring.Slack = design.ClosedEnd, 0.5
	proud.Legs.Proud = 5
	for _, c := range []struct {
		name    string
		d       design.Design
		has, no string
	}{
		{"open", piecetest.Low(), "all stretchers at once", "cannot slide"},
		{"closed", closed, "the slack of 0.5 mm", "all stretchers at once"},
		{"flush heads", piecetest.Low(), "the head level with the stretcher's top", "thicker than the heads"},
		{"proud heads", proud, "the head level, 5 mm above the stretcher's top", "the head level with"},
	} {
		all := strings.Join(GlueUp(workAll(t, c.d))[1].Text, "\n")
		if !strings.Contains(all, c.has) || strings.Contains(all, c.no) {
			t.Errorf("%s: want %q and not %q in\n%s", c.name, c.has, c.no, all)
		}
		dry, glue := strings.Index(all, "Dry run first"), strings.Index(all, "Each leg into")
		if ring := strings.Index(all, "glue in the laps"); dry > glue || glue > ring {
			t.Errorf("%s: dry run at %d, legs at %d, ring at %d", c.name, dry, glue, ring)
		}
	}
}

// Sizes that are put together alike have one panel.
func TestGlueUpShared(t *testing.T) {
	twin := piecetest.Low()
	twin.Size = "twin"
	if got := GlueUp(workAll(t, piecetest.Low(), twin)); len(got) != 2 || got[1].Heading != "Glue-up, both sizes" {
		t.Errorf("%d panels for twins, want words and blocks", len(got))
	}
	if got := GlueUp(workAll(t, piecetest.Low(), tall())); len(got) != 2 {
		t.Errorf("%d panels for low and tall, want the words once", len(got))
	}
	if got := GlueUp(nil); got != nil {
		t.Errorf("no pieces give %v", got)
	}
}
