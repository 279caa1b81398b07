package shop

import (
	"fmt"
	"math"

	"rodsheet/geometry/joint"
	"rodsheet/geometry/measure"
	"rodsheet/templates"
	"rodsheet/templates/piece"
	"rodsheet/templates/piece/design"
)

// A Block is a small angled piece that holds or clamps the parts, sawn from an
// offcut: a caul, a wedge or a filler strip.
//
// Frame: seen on its face, its grain along Length; one end or edge is straight,
// the other leans by Angle, so that it measures Thin at one side and Thick at
// the other.
type Block struct {
	Name        string
	Count       int
	Angle       float64 // between the two faces that hold, rad
	Thin, Thick float64 // between those faces
	Across      float64 // how far it takes to come from Thin to Thick
	Width       float64 // square to the face
	Along       bool    // Thin and Thick are counted along the grain
	From        string
	// Straight and Leaning say what the two faces bear on.
	Straight, Leaning string
	Offcut            bool // comes off the taper as it is
}

// stick returns the wood that the block is sawn from.
func (b Block) stick() piece.StockSize {
	if b.Along {
		return piece.StockSize{Length: b.Thick, Width: b.Across, Thickness: b.Width}
	}
	return piece.StockSize{Length: b.Across, Width: b.Thick, Thickness: b.Width}
}

// Names by which the settings find their blocks.
const (
	stripName   = "filler strip"
	legCaulName = "caul, leg"
	endCaulName = "caul, plain end"
)

const (
	caulLeast   = 25.0  // along the grain at the short side of a caul, mm
	caulLong    = 60.0  // along the grain at its long side, mm, unless it leans more
	wedgeThin   = 6.0   // at the thin end of a wedge or strip, mm
	stripLong   = 200.0 // of a filler strip, mm
	stripShort  = 80.0  // shorter ones do not steady a part, mm
	wedgeLong   = 120.0 // of a folding wedge, mm
	wedgeSlope  = 8.0   // a folding wedge rises 1 in so many
	wedgeSteep  = 1.0 / 7
	wedgeGentle = 1.0 / 40
)

// Blocks returns every block that one size needs.
func Blocks(p piece.Piece) []Block {
	var out []Block
	if NeedsStrip(p) {
		out = append(out, fillerStrip(p))
	}
	if p.Frame.Leg.Splay > 0 {
		out = append(out, legCaul(p))
	}
	if slantedEnd(p) {
		out = append(out, endCaul(p))
	}
	return append(out, foldingWedge(p))
}

// sharedBlocks returns the blocks of all sizes, each kind once, with the sizes it
// serves. Sizes that take another count of a kind share the largest.
func sharedBlocks(pieces []piece.Piece) []piece.Lot[Block] {
	alike := func(a, b Block) bool { return a.kind() == b.kind() }
	all := piece.Lots(pieces, func(i int) []Block { return Blocks(pieces[i]) }, alike)
	for i := range all {
		for _, p := range pieces {
			for _, b := range Blocks(p) {
				if alike(b, all[i].What) {
					all[i].What.Count = max(all[i].What.Count, b.Count)
				}
			}
		}
	}
	return all
}

// NeedsStrip reports whether a part stands in the upright jig leaning: not where
// slot and cheeks are both sawn by hand.
func NeedsStrip(p piece.Piece) bool {
	slot, cheeks := p.CutHeights()
	if p.Bridle.Head().Slot {
		slot, cheeks = cheeks, slot
	}
	atSaw := rises(p, cheeks) || rises(p, slot) && p.Bridle.Tenon >= p.Kerf
	return p.Frame.Leg.Splay > 0 && atSaw
}

// slantedEnd reports whether the plain end is no place for a clamp: cut flush
// in a ring that is not square.
func slantedEnd(p piece.Piece) bool {
	return p.Design.Ring.Plain == design.FlushEnd && squareFromLap(p) > 0
}

// squareFromLap returns the lap's gauge setting from square.
func squareFromLap(p piece.Piece) float64 {
	_, square := p.EndLap().Gauge()
	return quantize(square)
}

// fillerStrip returns the strip that holds a part leaning by the splay in an
// upright jig: as long as a diagonal of an offcut of leg stock gives.
func fillerStrip(p piece.Piece) Block {
	tan := math.Tan(p.Frame.Leg.Splay)
	long := math.Min(stripLong, (p.Frame.Leg.Breadth-wedgeThin)/tan)
	from := "offcuts of leg stock"
	if long < stripShort {
		long, from = stripShort, "scrap"
	}
	return Block{
		Name: stripName, Count: 1, Angle: p.Frame.Leg.Splay, From: from,
		Thin: wedgeThin, Thick: wedgeThin + long*tan, Across: long, Width: p.Frame.Leg.Thickness,
		Straight: "against the jig", Leaning: "the part leans here",
	}
}

// legCaul returns the caul for the outer face of a leg: an offcut of stretcher
// stock with one end at the splay. Its square end faces along the stretcher,
// so the clamp's jaws are parallel.
func legCaul(p piece.Piece) Block {
	return caul(p, legCaulName, "outer face of the leg", p.Frame.Leg.Splay, p.Frame.Ring.Depth, p.Frame.Ring.Width)
}

// endCaul returns the caul for a plain end that is cut flush at the lap's
// angle.
func endCaul(p piece.Piece) Block {
	return caul(p, endCaulName, "flush end of the stretcher", squareFromLap(p), p.Frame.Ring.Width, p.Frame.Ring.Depth)
}

func caul(p piece.Piece, name, leaning string, angle, across, width float64) Block {
	lean := across * math.Tan(angle)
	long := math.Max(caulLong, caulLeast+lean)
	return Block{
		Name: name, Count: p.Frame.Ring.Sides, Angle: angle, Along: true,
		Thin: long - lean, Thick: long, Across: across, Width: width,
		From: "offcuts of stretcher stock", Straight: "jaw of the clamp", Leaning: leaning,
	}
}

// foldingWedge returns one of the wedges that close the ring on its board, two
// to a stretcher. The offcuts of the taper serve where their slope holds and
// they are thick enough.
func foldingWedge(p piece.Piece) Block {
	b := Block{
		Name: "folding wedge", Count: 2 * p.Frame.Ring.Sides, Angle: math.Atan(1 / wedgeSlope),
		Thin: wedgeThin, Thick: wedgeThin + wedgeLong/wedgeSlope, Across: wedgeLong,
		Width: p.Frame.Leg.Thickness, From: "offcuts of leg stock",
		Straight: "against block or stretcher", Leaning: "against its twin",
	}
	if taperWedges(p) {
		t := p.Taper
		b.Angle, b.From, b.Offcut = t.Angle(), "taper offcuts", true
		b.Thin = 0
		b.Across, b.Thick = taperOffcut(p)
		switch t.Faces {
		case joint.OneFace:
			b.Count = p.Frame.Ring.Sides // each makes two
		case joint.AdjacentFaces: // the second face has lost its width at the foot
			b.Width = math.Min(b.Width, t.Foot)
		}
	}
	return b
}

// GlueUp returns the order of assembly in words, and the blocks that it
// takes.
func GlueUp(pieces []piece.Piece) []templates.Panel {
	if len(pieces) == 0 {
		return nil
	}
	words := SharedPanels(pieces, func(i int) []templates.Panel {
		return []templates.Panel{{Heading: "Glue-up", Text: glueUp(pieces[i])}}
	})
	return append([]templates.Panel{blocksPanel(pieces)}, words...)
}

// blocksPanel lists cauls, wedges and filler strips, those of several sizes once.
func blocksPanel(pieces []piece.Piece) templates.Panel {
	panel := templates.Panel{
		Heading: "Blocks for jig and clamps, " + pieces[0].Design.Unit.String(), Ruled: true,
		Table: [][]string{{"block", "count", "angle", "thin, thick", "across", "width", "from"}},
	}
	p := pieces[0]
	for _, l := range sharedBlocks(pieces) {
		b := l.What
		panel.Table = append(panel.Table, []string{
			piece.WithSizes(b.Name, l.Sizes, len(pieces)), fmt.Sprint(b.Count), p.Say(measure.Angle(b.Angle)),
			p.Bare(b.Thin) + ", " + p.Bare(b.Thick), p.Bare(b.Across), p.Bare(b.Width), b.From,
		})
	}
	return panel
}

// glueUp is the order of assembly: each leg into its own stretcher first, flat
// on the bench, and the ring when those are hard. A leg leans in the plane of
// its stretcher, so such a pair is flat; and it stands outside the laps, so the
// ring closes with the legs on.
func glueUp(p piece.Piece) []string {
	steps := []string{
		"Dry run first: the whole assembly without glue, with every caul, wedge and clamp that will be used. It must be done well within the time the glue stays open.",
		"Each leg into its own stretcher, flat on the bench. " + legClamps(p),
		"Check the splay with the bevel before the glue takes, and wipe the laps clean: glue in a lap keeps it open.",
		"When the glue is hard, trim the ends: " + trimWords(p),
		closing(p),
		"Clamp every lap between two flat blocks; its faces are parallel. Measure the inside of each stretcher, " + p.MM(p.Frame.Ring.Inside) +
			" from lap to lap, and from each foot to the next, as the settings say: all alike before the glue takes.",
	}
	out := make([]string, 0, len(steps)+1)
	for i, s := range steps {
		out = append(out, fmt.Sprintf("%d. %s", i+1, s))
	}
	return append(out, blockWords(p))
}

// legClamps says how a leg is clamped into its stretcher.
func legClamps(p piece.Piece) string {
	along := "One clamp along the stretcher, from its plain end to the leg's outer face, pulls the leg home"
	if p.Frame.Leg.Splay > 0 {
		along += "; the leg's caul on that face, its thick side at the stretcher's top, keeps the jaws parallel"
	}
	if slantedEnd(p) {
		along += ", and the plain end's own caul does so there"
	}
	return along + ". A tap on the foot closes the shoulders under the stretcher. A second clamp, across the cheeks, comes last: those faces are parallel."
}

// trimWords says what is trimmed to what.
func trimWords(p piece.Piece) string {
	head := "the head level with the stretcher's top."
	if p.Design.Legs.Proud > 0 {
		head = "the head level, " + p.MM(p.Design.Legs.Proud) + " above the stretcher's top."
	}
	return "the stretcher flush with the leg's outer face, " + head
}

// closing says how the ring goes together.
func closing(p piece.Piece) string {
	flat := "The ring upside down on a flat board, legs up, glue in the laps. "
	if p.Design.Legs.Proud > 0 {
		flat = "The ring upside down, legs up, on strips thicker than the heads stand proud; glue in the laps. "
	}
	if p.Design.Ring.Plain == design.ClosedEnd {
		return flat + closedWords(p)
	}
	return flat + "Lay each plain end at the mouth of its neighbour's lap, on the inside, and slide the ring shut flat, " +
		"all stretchers at once and evenly: one by one they do not go in. " +
		"Screw a block to the board outside the middle of every stretcher and drive the folding wedges, two laid head to tail between block and stretcher, a little at a time in turn."
}

// blockWords says how the blocks are sawn.
func blockWords(p piece.Piece) string {
	words := "Saw every block from the end of a length that is safely held, at least " + p.MM(p.SafeLength()) + ", and cut it free last. "
	if p.Frame.Leg.Splay > 0 {
		words += "The cauls for the legs are sawn with the same gauge setting as the ends at the splay. "
	}
	if taperWedges(p) {
		return words + taperWedgeWords(p)
	}
	return words + fmt.Sprintf("The folding wedges rise 1 in %.0f; two laid head to tail have parallel faces.", wedgeSlope)
}
