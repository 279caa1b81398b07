package design

import (
	_ "embed"
	"slices"

	"rodsheet/geometry"
	"rodsheet/geometry/measure"
)

// A Seat is a slab on staked legs: it lies with its upper face at Height at its front
// edge and at BackHeight at its back. Places and leans are counted in the slab, from
// square to it, as it is bored.
type Seat struct {
	Shape    SeatShape
	Diameter float64 // of a round seat
	// Width is from side to side and Depth from front to back of the others, BackWidth
	// that of the round back of a shield.
	Width, Depth, BackWidth float64
	Corner                  float64          // radius at the corners of a rectangle or of the front of a shield
	Points                  []geometry.Point // of a free outline seen from above, x to the right, the front at the least y
	Thickness               float64
	Height, BackHeight      float64 // 0 at the back: as at the front
	FrontToBack             bool    // way of the grain; else from side to side
	Front, Back             LegRow
	Legs                    SeatLegs
	Mortise                 SeatMortise
	Stretchers              SeatStretchers
}

// SeatShape is the outline of a seat.
type SeatShape uint8

const (
	RoundSeat SeatShape = iota
	OvalSeat
	RectangleSeat
	ShieldSeat // a straight front, the sides run in to a round back
	FreeSeat
)

// A LegRow is one to four legs in a row across the seat, mirrored left and right: one
// stands on the centre line, more of them stand equally far apart and so do their feet.
type LegRow struct {
	Legs  int
	Apart float64 // from the outermost hole to the one that mirrors it, on the face that is bored
	From  float64 // from the middle of the seat to the row: forward of the front row, backward of the back row
	By    SeatLean
	// FrontBack and Aside are, as By says, rake and splay, resultant and sightline, or the
	// distance of the feet from below the middle and from one outermost to the other.
	FrontBack, Aside float64
}

// SeatLean says which decision fixes the lean of a row; the others follow from it.
type SeatLean uint8

const (
	ByRake SeatLean = iota
	ByResultant
	ByFeet
)

// SeatLegs are alike in both rows.
type SeatLegs struct {
	Section LegSection
	Size    float64 // across its flats below the tenon
	Foot    float64 // the same at the floor; 0: it keeps its size
}

// LegSection is the section of a leg.
type LegSection uint8

const (
	OctagonLeg LegSection = iota
	SquareLeg
	RoundLeg
)

// A SeatMortise is a round hole along the axis of a leg.
type SeatMortise struct {
	Diameter float64 // at the underside of the seat, on the axis
	Taper    float64 // included angle, narrower upward; 0: the hole keeps its diameter
	Depth    float64 // of a blind hole, square to the seat; 0: right through
	Upper    bool    // bored, and its place measured, on the upper face; else on the underside
	NoWedge  bool    // a through tenon is not wedged
}

// Wedged reports whether the tenons are split and wedged from above.
func (m SeatMortise) Wedged() bool { return m.Depth == 0 && !m.NoWedge }

// SeatStretchers are round rods between the legs, low down.
type SeatStretchers struct {
	Shape      StretcherShape
	Height     float64 // of their axes over the floor: in a box those of a row
	SideHeight float64 // in a box those from row to row; 0: Height
	Diameter   float64
	Tenon      float64 // its diameter; 0: that of the rod
	Hole       float64 // depth of the hole, along the rod from the axis side of what it enters; 0: half of what it enters
}

// StretcherShape is how stretchers join the legs.
type StretcherShape uint8

const (
	NoStretchers  StretcherShape = iota
	BoxStretchers                // from each leg to the next all round
	HStretchers                  // from front to back on either side, and one across
)

// Leans of a staked leg, degrees: what leans more breaks out at the edge of its hole.
// Inward the feet come together, and the seat tips (common practice, no source).
const (
	SteepestStake = 45
	inmostStake   = -30
)

// Fewest and most legs of a seat, and the most of a row.
const (
	SeatFewest = 3
	SeatMost   = 8
	RowMost    = 4
)

var seatRows = []struct {
	table Key
	of    func(*Design) *LegRow
}{
	{"seat.front", func(d *Design) *LegRow { return &d.Seat.Front }},
	{"seat.back", func(d *Design) *LegRow { return &d.Seat.Back }},
}

// rowLeans are the keys of a row for its lean: by each way one forward or backward, one
// aside.
func rowLeans(table Key) [3][2]Key {
	return [3][2]Key{
		ByRake:      {table.with("rake"), table.with("splay")},
		ByResultant: {table.with("resultant"), table.with("sightline")},
		ByFeet:      {table.with("feet-from-middle"), table.with("feet-apart")},
	}
}

// RowKeys are all keys by which the lean of a row may be given.
func RowKeys(table Key) []Key {
	var out []Key
	for _, pair := range rowLeans(table) {
		out = append(out, pair[:]...)
	}
	return out
}

// rowGroups are the keys of a row of which one at most is given: two of one direction,
// and any two of different ways.
func rowGroups(table Key) [][]Key {
	l := rowLeans(table)
	out := [][]Key{{l[0][0], l[1][0], l[2][0]}, {l[0][1], l[1][1], l[2][1]}}
	for i := range l {
		for j := range l {
			if i != j {
				out = append(out, []Key{l[i][0], l[j][1]})
			}
		}
	}
	return out
}

func seatSchema() schema {
	words := seatShapes()
	round := words[RoundSeat]
	sized := words[OvalSeat:FreeSeat]
	s := schema{
		name:   "seat",
		tables: []Key{"seat", "seat.front", "seat.back", "seat.legs", "seat.mortise", "seat.stretchers"},
		fields: seatFields,
		needs: []need{
			{"seat.diameter", "seat.shape", []string{round}, round, false},
			{"seat.width", "seat.shape", sized, round, false},
			{"seat.depth", "seat.shape", sized, round, false},
			{"seat.back-width", "seat.shape", []string{words[ShieldSeat]}, round, false},
			{"seat.corner", "seat.shape", words[RectangleSeat:], round, false},
			{"seat.points", "seat.shape", []string{words[FreeSeat]}, round, false},
			{"seat.stretchers", "seat.stretchers.shape", seatStretchers()[1:], "none", true},
			{"seat.stretchers.side-height", "seat.stretchers.shape", []string{"box"}, "none", false},
		},
		must: each("seat.thickness", "seat.height", "seat.diameter", "seat.width", "seat.depth", "seat.back-width", "seat.points",
			"seat.legs.size", "seat.mortise.diameter", "seat.stretchers.height", "seat.stretchers.diameter"),
		setters: seatSetters(),
		stock:   []Key{"seat.thickness", "seat.legs.size", "seat.mortise.diameter"},
		has:     seatHas,
		hangsOn: seatHangsOn,
		start:   starting{text: seatText, fewest: SeatFewest, most: SeatMost, usual: 3, titles: seatTitles},
	}
	for _, r := range seatRows {
		var ways, aside []Key
		for _, pair := range rowLeans(r.table) {
			ways, aside = append(ways, pair[0]), append(aside, pair[1])
		}
		s.groups = append(s.groups, rowGroups(r.table)...)
		s.must = append(s.must, []Key{r.table.with("legs")}, []Key{r.table.with("from-middle")}, ways)
		s.setters = append(s.setters,
			setter{RowKeys(r.table), []measure.ID{measure.ID(r.table.with("lean"))}},
			setter{aside, []measure.ID{measure.ID(r.table.with("feet"))}},
			setter{[]Key{r.table.with("from-middle"), r.table.with("apart")}, []measure.ID{measure.ID(r.table.with("hole"))}})
	}
	return s
}

// seatSetters say which keys set the figures of a seat that are not named like a key;
// those of its rows come with them.
func seatSetters() []setter {
	outline := []measure.ID{"corner", "corners", "reach", "side", "turns", "diameter", "clip"}
	for i := range outline {
		outline[i] = "seat.outline." + outline[i]
	}
	return []setter{
		{[]Key{"seat.front.legs", "seat.back.legs"}, []measure.ID{"seat.legs-together"}},
		{[]Key{"seat.points", "seat.width", "seat.depth"}, outline},
		{[]Key{"seat.corner"}, []measure.ID{"seat.outline.round"}},
		{[]Key{"seat.mortise.reamer"}, []measure.ID{"seat.mortise.narrow"}},
		{[]Key{"seat.mortise.depth"}, []measure.ID{"seat.mortise.reach"}},
		{[]Key{"seat.height"}, []measure.ID{"seat.leg-height"}},
		{[]Key{"seat.stretchers.height"}, []measure.ID{"seat.stretchers.length"}},
	}
}

//go:embed start/seat.toml
var seatText string

// In the order of their constants.
func seatShapes() []string     { return []string{"round", "oval", "rectangle", "shield", "free"} }
func legSections() []string    { return []string{"octagon", "square", "round"} }
func seatStretchers() []string { return []string{"none", "box", "h"} }

func seatHas(d Design, key Key) bool {
	s := d.Seat
	for _, r := range seatRows {
		for by, pair := range rowLeans(r.table) {
			if slices.Contains(pair[:], key) {
				return int(r.of(&d).By) == by
			}
		}
	}
	switch key {
	case "seat.diameter":
		return s.Shape == RoundSeat
	case "seat.width", "seat.depth":
		return s.Shape != RoundSeat && s.Shape != FreeSeat
	case "seat.back-width":
		return s.Shape == ShieldSeat
	}
	return !Key("seat.stretchers").holds(key) || s.Stretchers.Shape != NoStretchers
}

func seatHangsOn(key Key) []Key {
	for _, r := range seatRows {
		if all := RowKeys(r.table); slices.Contains(all, key) {
			return all
		}
	}
	switch {
	case slices.Contains([]Key{"seat.diameter", "seat.width", "seat.depth", "seat.back-width"}, key):
		return []Key{key, "seat.shape"}
	case Key("seat.stretchers").holds(key):
		return []Key{key, "seat.stretchers.shape"}
	}
	return nil
}

func seatFields() []field[Design] {
	out := []field[Design]{
		pick("seat.shape", seatShapes(), func(d *Design) *SeatShape { return &d.Seat.Shape }),
		length("seat.diameter", upTo(Longest), func(d *Design) *float64 { return &d.Seat.Diameter }),
		length("seat.width", upTo(Longest), func(d *Design) *float64 { return &d.Seat.Width }),
		length("seat.depth", upTo(Longest), func(d *Design) *float64 { return &d.Seat.Depth }),
		length("seat.back-width", upTo(Longest), func(d *Design) *float64 { return &d.Seat.BackWidth }),
		length("seat.corner", from(0, Longest), func(d *Design) *float64 { return &d.Seat.Corner }),
		points("seat.points", func(d *Design) *[]geometry.Point { return &d.Seat.Points }),
		length("seat.thickness", from(Thinnest, ThickestTop), func(d *Design) *float64 { return &d.Seat.Thickness }),
		length("seat.height", upTo(Longest), func(d *Design) *float64 { return &d.Seat.Height }),
		length("seat.back-height", upTo(Longest).orNone(), func(d *Design) *float64 { return &d.Seat.BackHeight }),
		choice("seat.grain", []string{"side-to-side", "front-to-back"}, func(d *Design, i int) { d.Seat.FrontToBack = i == 1 }),
		pick("seat.legs.section", legSections(), func(d *Design) *LegSection { return &d.Seat.Legs.Section }),
		length("seat.legs.size", from(Thinnest, widest), func(d *Design) *float64 { return &d.Seat.Legs.Size }),
		length("seat.legs.foot", from(Thinnest, widest).orNone(), func(d *Design) *float64 { return &d.Seat.Legs.Foot }),
		length("seat.mortise.diameter", from(Thinnest, widest), func(d *Design) *float64 { return &d.Seat.Mortise.Diameter }),
		angle("seat.mortise.reamer", from(0, 20), func(d *Design) *float64 { return &d.Seat.Mortise.Taper }),
		length("seat.mortise.depth", from(Thinnest, ThickestTop).orNone(), func(d *Design) *float64 { return &d.Seat.Mortise.Depth }),
		choice("seat.mortise.bored-from", []string{"underside", "upper-face"}, func(d *Design, i int) { d.Seat.Mortise.Upper = i == 1 }),
		choice("seat.mortise.wedge", []string{"across", "none"}, func(d *Design, i int) { d.Seat.Mortise.NoWedge = i == 1 }),
		pick("seat.stretchers.shape", seatStretchers(), func(d *Design) *StretcherShape { return &d.Seat.Stretchers.Shape }),
		length("seat.stretchers.height", upTo(Longest), func(d *Design) *float64 { return &d.Seat.Stretchers.Height }),
		length("seat.stretchers.side-height", upTo(Longest).orNone(), func(d *Design) *float64 { return &d.Seat.Stretchers.SideHeight }),
		length("seat.stretchers.diameter", from(Thinnest, widest), func(d *Design) *float64 { return &d.Seat.Stretchers.Diameter }),
		length("seat.stretchers.tenon", from(Thinnest, widest).orNone(), func(d *Design) *float64 { return &d.Seat.Stretchers.Tenon }),
		length("seat.stretchers.hole", from(Thinnest, widest).orNone(), func(d *Design) *float64 { return &d.Seat.Stretchers.Hole }),
	}
	for _, r := range seatRows {
		out = append(out, rowFields(r.table, r.of)...)
	}
	return out
}

func rowFields(table Key, of func(*Design) *LegRow) []field[Design] {
	by := func(by SeatLean, aside bool) func(*Design) *float64 {
		return func(d *Design) *float64 {
			row := of(d)
			row.By = by
			if aside {
				return &row.Aside
			}
			return &row.FrontBack
		}
	}
	lean, keys := from(inmostStake, SteepestStake), rowLeans(table)
	return []field[Design]{
		count(table.with("legs"), from(1, RowMost), func(d *Design) *int { return &of(d).Legs }),
		length(table.with("apart"), from(0, Longest), func(d *Design) *float64 { return &of(d).Apart }),
		length(table.with("from-middle"), from(-Longest, Longest), func(d *Design) *float64 { return &of(d).From }),
		angle(keys[ByRake][0], lean, by(ByRake, false)),
		angle(keys[ByRake][1], lean, by(ByRake, true)),
		angle(keys[ByResultant][0], from(0, SteepestStake), by(ByResultant, false)),
		angle(keys[ByResultant][1], from(0, 180), by(ByResultant, true)),
		length(keys[ByFeet][0], from(-Longest, Longest), by(ByFeet, false)),
		length(keys[ByFeet][1], from(0, Longest), by(ByFeet, true)),
	}
}

// A beginningRow is a row of legs of the starting text.
type beginningRow struct {
	Table, Way string
	Legs       int
}

// Rows shares the legs out.
func (b beginning) Rows() []beginningRow {
	return []beginningRow{{"front", "forward", (b.N + 1) / 2}, {"back", "backward", b.N / 2}}
}
