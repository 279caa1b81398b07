package wording

import (
	"maps"
	"slices"
	"sync"

	"rodsheet/geometry/lists"
	"rodsheet/geometry/measure"
	"rodsheet/templates"
	"rodsheet/templates/piece"
	"rodsheet/templates/piece/design"
	"rodsheet/templates/piece/shop"
	"rodsheet/templates/wording"
)

// midLength is where a stretcher is measured from once its plain end is cut.
const midLength = "midway between its inner shoulders, where mid-length was before the plain end was cut"

// tradeTexts are the sentences of notes about fixing the top, guards, blades and the
// finish.
var tradeTexts = sync.OnceValue(func() map[shop.NoteID]wording.Text {
	return map[shop.NoteID]wording.Text{
		"step.drill-fixings":  "holes for the screws of the top",
		"step.groove-fixings": "mortises for the buttons of the top",
		"fixings-by-table":    "Places on the centre line of each stretcher by the table of fixings, from " + midLength + ".",
		"drill-through":       "From the underside, %s through.",
		"bore-and-drill":      "From the underside: first %s wide, %s deep for the head, then %s through.",
		"drill-slots":         "Slots are %s long and lean as the table has it, square to the grain of the top: two holes and the wood between them taken out.",
		"bore-slots":          "Over a slot the room for the head is a slot too, %s long.",
		"screw-stands-out":    "a screw pushed home stands %s above the stretcher, in a top of %s.",
		"clamp-to-drill":      "Clamp the work down to drill it; the machine's manual and the usual eye protection hold here too.",
		"mortise-buttons":     "In the ring side, %s below the top of the stretcher, %s high, %s deep.",
		"mortise-long":        "%s long, so that a button can slide along or stand off.",
		"button-pulls":        "a button pushed in stands a hair below the top of the stretcher: so its screw pulls the top down.",
		"screws-up":           "Face down on a clean blanket, frame on it. %s screws of %s; snug, so that the top still slides.",
		"pilot-holes":         "Holes for them in the top, %s wide, in soft wood %s, and %s deep with a stop on the bit; try one in an offcut of the top.",
		"drill-top":           "Clamp what is drilled, a stop on the bit. Turn the piece over by two, by its frame.",
		"buttons-up":          "Face down on a clean blanket, frame on it. %s buttons, each on a screw of %s; where the top moves, leave a button half its mortise to go either way.",
		"silicone-bond":       "Bond it to its supports with a silicone for glass on wood, by its data sheet: that says how both are cleaned, how large and thick the bond is, and how long it is left alone.",
		"glass-last":          "Last of all, when the finish is hard.",
		"step.saw-top":        "saw the outline of the top",
		"outline-to-line":     "Strike the outline; saw outside it with a fine blade, the best face up by hand and down at a jigsaw; work to the line, end grain first.",
		"round-true":          "it measures %s across wherever a rule is laid over the middle, and a square shows no light at the rim.",
		"sides-true":          "from corner to corner, before these are worked, every side measures %s; the sheet of its corner fits each.",
		"outline-true":        "no wood stands past the line of its template, and a square shows no light at the rim.",
		"saw-outline":         "Clamp the top, its waste held too; nothing stands under the blade. Isolate a machine before its blade is set or changed.",
		"grain-along":         "Its grain runs along stretcher 1.",
		"grain-across":        "Its grain runs square to stretcher 1.",
		"step.sand-parts":     "sand before the glue-up",
		"sand-before-glue":    "With a block and the grain: one hundred and twenty grit, then one hundred and eighty.",
		"crisp-joints":        "Stop short of every joint: what closes on another face stays as it was cut.",
		"ease-where":          "Two strokes ease an arris, but none on the tops of the stretchers, where parts come flush or at a reference edge in use.",
		"joints-as-before":    "every joint still closes dry as it did before.",
		"dust":                "Extraction and a dust mask: fine dust harms the lungs and can burn.",
		"step.sand-all":       "sand the whole, ease the last arrises",
		"sand-after-glue":     "Scrape off what glue there is, plane flush what stands proud, then one hundred and eighty and two hundred and forty grit, with the grain of each part; wipe off the dust.",
		"level-soles":         "On a flat surface, wedged up until the ring is level all round, strike every sole along one block and pare it to the line.",
		"clip-corners":        "Then clip each corner, %s back along both sides.",
		"round-corners":       "Then round each corner to a radius of %s.",
		"ease-feet":           "Ease the soles all round: sharp ones chip when the piece is pushed.",
		"sand-top":            "The top lies apart, both faces sanded alike, from one hundred and twenty grit on; ease its rim.",
		"no-scratch":          "light from the side shows no scratch across the grain and no glue; a cloth catches on no arris.",
		"step.finish":         "finish",
		"finish-by-sheet":     "By its own data sheet: that says how many coats, how long between them and what to wear. Try it first on an offcut sanded the same way.",
		"finish-hard":         "after the time of its data sheet a thumb leaves no mark on the offcut, nor where nobody looks.",
		"finish-both-faces":   "The top gets as many coats below as above, or it cups.",
		"bare-bond":           "Leave bare the places where something is still to be stuck or bonded, if the data sheets of both want it so.",
		"rags":                "Rags wet with finish can catch fire by themselves: spread them out to dry in the open, or keep them under water in a closed metal can, as the data sheet has it.",
		"step.flat-tooth":     "change to the flat-tooth blade, kerf %s",
		"flat-tooth-for":      "For laps, slots and cheeks: it leaves a flat bottom.",
		"flat-tooth-kerf":     "Its kerf is in spacers and stops: measure it in an offcut; where it differs, put it under [milled] in the design file and print again what follows.",
		"flat-cut":            "a cut in an offcut shows no light under the end of a rule.",
		"step.blade-back":     "change back to the blade for crosscuts and rips",
		"blade-back-for":      "Laps and bridle joints are done.",
		"turns-free":          "turned by hand the blade runs clear of guard and riving knife.",
		"step.dado":           "change to the dado set, clear the laps",
		"dado-height":         "Blade height as for the laps, %s, tried at the end of a block stick.",
		"dado-between":        "The shoulders are sawn: with the set of %[1]s take the wood between them out in %[2]n, keeping off both; without one, in passes with the plain blade.",
		"dado-guard":          "Guard and riving knife off; gauge fence past both sides of the set, hands behind it.",
		"dado-cut":            "a pass at the end of a block stick is as deep as the laps.",
		"step.dado-back":      "change back to the plain blade",
		"dado-back-for":       "Guard and riving knife back on.",
		"change-blade":        "Unplug the machine first; only blades and sets that its manual and arbor allow.",
		"guard-stays":         "Guard and riving knife stay on; gauge fence past both sides of the blade.",
		"guard-not-through":   "No through cut: guard off, riving knife below the top of the blade. Gauge fence past both sides of it, hands behind. Guard back on after.",
		"guard-on-end":        "On end: guard off, riving knife too where it stands above the blade; both back on after.",
		"guard-taper":         "Guard and riving knife stay on; hands on the jig.",
		"lies-loose":          "It lies loose: lift it off before the piece is moved.",
	}
})

// merged puts tables of sentences together.
func merged(all ...map[shop.NoteID]wording.Text) map[shop.NoteID]wording.Text {
	out := map[shop.NoteID]wording.Text{}
	for _, one := range all {
		maps.Copy(out, one)
	}
	return out
}

var fixingsHead = map[design.FixingKind][]wording.Text{
	design.Screws:  {"stretcher", "from mid-length", "hole"},
	design.Buttons: {"stretcher", "from mid-length", "button"},
}

const (
	grainAlong  wording.Text = "along"
	grainAcross wording.Text = "square to"
)

// Fixings returns the places where wooden tops are held, a table for each size.
func Fixings(plan shop.Plan) []templates.Panel {
	var out []templates.Panel
	for _, p := range plan.Pieces {
		f, ok := shop.FixingOf(p)
		if !ok {
			continue
		}
		grain := grainAlong
		if p.TopAlong().Y > 0 {
			grain = grainAcross
		}
		out = append(out, templates.Panel{
			Heading: piece.WithSizes(say("Fixings of the top, from mid-length of each stretcher"), []string{p.Design.Size}, len(plan.Pieces)),
			Table:   fixingRows(p, f), Ruled: true, Text: []string{say("Stretcher 1 is any one; the others follow counter-clockwise, seen from above. The grain of the top runs %s stretcher 1.", grain.With())},
		})
	}
	return out
}

// fixingRows has a row for every place; stretchers that are drilled alike share theirs.
func fixingRows(p piece.Piece, f shop.Fixing) [][]string {
	s := speakerFor(p.Design)
	table := [][]string{said(fixingsHead[f.Kind])}
	var names []string // of stretchers that are drilled alike, by their rows
	var drilled [][][2]string
	for i := range p.Frame.Ring.Sides {
		rows := s.holeRows(p, f, i)
		name := say("%d", i+1)
		if at := slices.IndexFunc(drilled, func(other [][2]string) bool { return slices.Equal(other, rows) }); at >= 0 {
			names[at] += ", " + name
			continue
		}
		names, drilled = append(names, name), append(drilled, rows)
	}
	for i, rows := range drilled {
		for _, r := range rows {
			table = append(table, []string{names[i], r[0], r[1]})
		}
	}
	return table
}

// holeRows says where the holes of one stretcher are and how they are made. Two that
// mirror each other are one row.
func (s speaker) holeRows(p piece.Piece, f shop.Fixing, stretcher int) [][2]string {
	var out [][2]string
	holes := lists.Where(f.Holes, func(h shop.Hole) bool { return h.Part == stretcher })
	for _, h := range holes {
		mirrored := slices.ContainsFunc(holes, func(o shop.Hole) bool {
			return h.At != 0 && o.At == -h.At && o.Slotted == h.Slotted
		})
		where := say("%s to the leg end", s.mm(h.At))
		switch {
		case h.At == 0:
			where = say("at mid-length")
		case mirrored && h.At < 0:
			continue
		case mirrored:
			where = say("%s, to either end", s.mm(h.At))
		case h.At < 0:
			where = say("%s to the plain end", s.mm(-h.At))
		}
		hole := s.hole(h)
		if f.Kind == design.Buttons {
			hole = button(h)
		}
		out = append(out, [2]string{where, hole})
	}
	return out
}

// button says how a button stands in its mortise.
func button(h shop.Hole) string {
	lean := measure.Degrees(h.Lean)
	switch {
	case !h.Slotted:
		return say("home, in the middle of its mortise")
	case lean < 0.01:
		return say("home, free to slide along")
	case lean > 89.99:
		return say("half in, free to go in and out")
	}
	return say("half in, free all ways")
}

func (s speaker) hole(h shop.Hole) string {
	switch {
	case !h.Slotted:
		return say("round")
	case measure.Degrees(h.Lean) < 0.01:
		return say("slot along the stretcher")
	case h.Leans == shop.NoFace:
		return say("slot, %s to the edge", s.angle(h.Lean))
	}
	return say("slot, %s to the edge: at the outer side nearer to the %s", s.angle(h.Lean), Face(h.Leans))
}

const (
	buttonWare wording.Text = "button for the top, %s × %s × %s"
	screwWare  wording.Text = "screw for the top, flat under its head, 4 mm, %s long"
	scrapWare  wording.Text = "scrap for the glue-up (a flat board %s across, for each stretcher a block to screw down on it and two flat ones for its lap, tape)"
	inchWare   wording.Text = "screw for the top, flat under its head, No. 8, %s long"
)

// wareNames are those of what has no size.
var wareNames = map[shop.WareKind]wording.Text{
	shop.Silicone: "silicone for glass on wood, a small cartridge",
	shop.WoodGlue: "wood glue",
	shop.JigScrew: "screws for the jigs",
	shop.Abrasive: "abrasive paper, three grits, by the cards",
	shop.TopCoat:  "finish",
}

// Ware names what is bought ready.
func Ware(w shop.Ware, u measure.Unit) string {
	if name, ok := wareNames[w.What]; ok {
		return name.With()
	}
	if w.What == shop.TopButton {
		return buttonWare.With(measure.Length(w.Length).Bare(u), measure.Length(w.Width).Bare(u), measure.Length(w.Thickness).Text(u))
	}
	if w.What == shop.GlueUpScrap {
		return scrapWare.With(measure.Length(w.Length).Text(u))
	}
	return map[bool]wording.Text{false: screwWare, true: inchWare}[u == measure.Inch].With(measure.Length(w.Length).Text(u))
}
