package design

import (
	_ "embed"
	"slices"
	"sync"

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
	Front, Middle, Back     LegRow
	Circle                  LegRow // legs alike on a circle about the middle
	LegAhead                bool   // one of the circle stands at the front; else two, a gap between
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
// Those of a circle lean outward from the middle of the seat.
type LegRow struct {
	Legs  int     // 0: there is no such row
	Apart float64 // from the outermost hole to the one that mirrors it, on the face that is bored
	From  float64 // from the middle of the seat to the row: forward of the front row, backward of the others; radius of a circle
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

// A SeatRow says which row legs stand in, from the front, or that they stand on the circle.
type SeatRow uint8

const (
	FrontRow SeatRow = iota
	MiddleRow
	BackRow
	CircleRow
)

var seatRows = [...]Key{"seat.front", "seat.middle", "seat.back", "seat.circle"}

// Table returns that of a row in the design file.
func (r SeatRow) Table() Key { return seatRows[r] }

// Row returns the decisions of a row.
func (s *Seat) Row(r SeatRow) *LegRow {
	return [...]*LegRow{&s.Front, &s.Middle, &s.Back, &s.Circle}[r]
}

// Rows are those that have legs.
func (s Seat) Rows() []SeatRow {
	var out []SeatRow
	for i := range seatRows {
		if r := SeatRow(i); s.Row(r).Legs > 0 {
			out = append(out, r)
		}
	}
	return out
}

// Ways are the keys of a row for its lean: by each way one forward or backward, one
// aside; "" where it has none.
func (r SeatRow) Ways() [3][2]Key { return seatWays()[r] }

var seatWays = sync.OnceValue(func() (out [CircleRow + 1][3][2]Key) {
	for i, t := range seatRows {
		out[i] = [3][2]Key{
			ByRake:      {t.with("rake"), t.with("splay")},
			ByResultant: {t.with("resultant"), t.with("sightline")},
			ByFeet:      {t.with("feet-from-middle"), t.with("feet-apart")},
		}
	}
	t := CircleRow.Table()
	out[CircleRow] = [3][2]Key{ByResultant: {t.with("resultant")}, ByFeet: {t.with("feet-from-middle")}}
	return out
})

// given leaves out the keys that there are not.
func given(keys ...Key) []Key {
	return slices.DeleteFunc(keys, func(key Key) bool { return key == everything })
}

// Leans are all keys by which the lean of a row may be given.
func (r SeatRow) Leans() []Key {
	var out []Key
	for _, pair := range r.Ways() {
		out = append(out, pair[:]...)
	}
	return given(out...)
}

// Places are the keys for where the holes of a row are.
func (r SeatRow) Places() []Key {
	t := r.Table()
	if r == CircleRow {
		return []Key{t.with("from-middle")}
	}
	return []Key{t.with("from-middle"), t.with("apart")}
}

// rowGroups are the keys of a row of which one at most is given: two of one direction,
// and any two of different ways.
func rowGroups(r SeatRow) [][]Key {
	l := r.Ways()
	out := [][]Key{given(l[0][0], l[1][0], l[2][0]), given(l[0][1], l[1][1], l[2][1])}
	for i := range l {
		for j := range l {
			if i != j {
				out = append(out, given(l[i][0], l[j][1]))
			}
		}
	}
	return slices.DeleteFunc(out, func(group []Key) bool { return len(group) < 2 })
}

func seatSchema() schema {
	words := seatShapes()
	round := words[RoundSeat]
	sized := words[OvalSeat:FreeSeat]
	s := schema{
		name:   "seat",
		tables: append([]Key{"seat", "seat.legs", "seat.mortise", "seat.stretchers"}, seatRows[:]...),
		// What rows there are is a matter of how many legs they have together.
		optional: seatRows[:],
		fields:   seatFields,
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
		hangsOn: map[Key][]Key{},
		aside:   []Key{"seat.stretchers"},
		start:   starting{text: seatText, fewest: SeatFewest, most: SeatMost, usual: 3, titles: seatTitles},
	}
	for i, table := range seatRows {
		r := SeatRow(i)
		var ways, aside []Key
		for _, pair := range r.Ways() {
			ways, aside = append(ways, pair[0]), append(aside, pair[1])
		}
		id := measure.ID(table)
		for _, key := range r.Leans() {
			s.hangsOn[key] = append(r.Leans(), table.with("legs"))
		}
		s.groups = append(s.groups, rowGroups(r)...)
		s.must = append(s.must, []Key{table.with("legs")}, []Key{table.with("from-middle")}, given(ways...))
		s.setters = append(s.setters,
			setter{r.Leans(), []measure.ID{id + ".lean"}},
			setter{append(given(aside...), table.with("from-middle")), []measure.ID{id + ".feet"}},
			setter{r.Places(), []measure.ID{id + ".hole"}})
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
		{[]Key{"seat.front.legs", "seat.middle.legs", "seat.back.legs", "seat.circle.legs"}, []measure.ID{"seat.legs-together"}},
		{[]Key{"seat.circle.from-middle", "seat.circle.legs"}, []measure.ID{"seat.circle.apart"}},
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
func seatStretchers() []string { return []string{"none", "box", "h"} }

func seatHas(d *Design, key Key) bool {
	s := &d.Seat
	for i, table := range seatRows {
		r := SeatRow(i)
		if !table.holds(key) {
			continue
		}
		for by, pair := range r.Ways() {
			if slices.Contains(pair[:], key) && int(s.Row(r).By) != by {
				return false
			}
		}
		return s.Row(r).Legs > 0
	}
	return key != "seat.stretchers.tenon" || s.Stretchers.Tenon > 0
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
		pick("seat.legs.section", []string{"octagon", "square", "round"}, func(d *Design) *LegSection { return &d.Seat.Legs.Section }),
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
	for i := range seatRows {
		out = append(out, rowFields(SeatRow(i))...)
	}
	return append(out, choice("seat.circle.at-front", []string{"gap", "leg"}, func(d *Design, i int) { d.Seat.LegAhead = i == 1 }))
}

func rowFields(r SeatRow) []field[Design] {
	of := func(d *Design) *LegRow { return d.Seat.Row(r) }
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
	t, lean, keys := r.Table(), from(inmostStake, SteepestStake), r.Ways()
	legs := func(least, most float64) field[Design] {
		return count(t.with("legs"), from(least, most), func(d *Design) *int { return &of(d).Legs })
	}
	place := func(least float64) field[Design] {
		return length(t.with("from-middle"), from(least, Longest), func(d *Design) *float64 { return &of(d).From })
	}
	resultant := angle(keys[ByResultant][0], from(0, SteepestStake), by(ByResultant, false))
	feet := func(least float64) field[Design] {
		return length(keys[ByFeet][0], from(least, Longest), by(ByFeet, false))
	}
	if r == CircleRow {
		return []field[Design]{legs(SeatFewest, SeatMost), place(0), resultant, feet(0)}
	}
	return []field[Design]{
		legs(1, RowMost), place(-Longest), resultant, feet(-Longest),
		length(t.with("apart"), from(0, Longest), func(d *Design) *float64 { return &of(d).Apart }),
		angle(keys[ByRake][0], lean, by(ByRake, false)),
		angle(keys[ByRake][1], lean, by(ByRake, true)),
		angle(keys[ByResultant][1], from(0, 180), by(ByResultant, true)),
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
	return []beginningRow{{"front", "forward", (b.N + 1) / 2}, {"middle", "backward", 0}, {"back", "backward", b.N / 2}}
}
