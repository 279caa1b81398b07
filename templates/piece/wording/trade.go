package wording

import (
	"maps"
	"slices"

	"rodsheet/geometry/measure"
	"rodsheet/templates"
	"rodsheet/templates/piece"
	"rodsheet/templates/piece/shop"
	"rodsheet/templates/wording"
)

// tradeTexts are the sentences of notes about fixing the top, guards, blades and the
// finish.
var tradeTexts = map[shop.NoteID]wording.Text{
	"step.drill-fixings":  "holes for the screws of the top",
	"step.groove-fixings": "mortises for the buttons of the top",
	"fixings-by-table":    "Places on the centre line of each stretcher by the table of fixings, from mid-length.",
	"drill-through":       "From the underside, %s through.",
	"bore-and-drill":      "From the underside: first %s wide, %s deep for the head, then %s through.",
	"drill-slots":         "Slots are %s long, square to the grain of the top: two holes and the wood between them taken out.",
	"bore-slots":          "Over a slot the room for the head is as long: %s.",
	"screw-stands-out":    "a screw pushed home stands %s above the stretcher, in a top of %s.",
	"clamp-to-drill":      "Clamp the work down to drill it; the machine's manual and the usual eye protection hold here too.",
	"mortise-buttons":     "In the ring side, %s below the top of the stretcher, %s high, %s deep.",
	"mortise-long":        "%s long, so that a button can slide along or stand off.",
	"button-pulls":        "a button pushed in stands a hair below the top of the stretcher: so its screw pulls the top down.",
	"screws-up":           "Face down on a clean blanket, frame on it. %s screws of %s, the holes in the top %s deep with a stop on the bit; snug, so that the top still slides.",
	"buttons-up":          "Face down on a clean blanket, frame on it. %s buttons, each on a screw of %s, the holes in the top %s deep with a stop on the bit; where the top moves, leave a button half its mortise to go either way.",
	"silicone-bond":       "Bond it to its supports with a silicone for glass on wood, by its data sheet: that says how both are cleaned, how large and thick the bond is, and how long it is left alone.",
	"lies-loose":          "It lies loose: lift it off before the piece is moved.",
}

// merged puts tables of sentences together.
func merged(all ...map[shop.NoteID]wording.Text) map[shop.NoteID]wording.Text {
	out := map[shop.NoteID]wording.Text{}
	for _, one := range all {
		maps.Copy(out, one)
	}
	return out
}

var fixingsHead = []wording.Text{"stretcher", "from mid-length", "hole"}

const (
	fixingsHeading wording.Text = "Fixings of the top, from mid-length of each stretcher"
	fixingsGrain   wording.Text = "Stretcher 1 is any one; the others follow counter-clockwise, seen from above. The grain of the top runs %s stretcher 1."
	grainAlong     wording.Text = "along"
	grainAcross    wording.Text = "square to"
	atMidLength    wording.Text = "at it"
	toLegEnd       wording.Text = "%s to the leg end"
	toPlainEnd     wording.Text = "%s to the plain end"
	eitherSide     wording.Text = "%s, to either end"
	roundHole      wording.Text = "round"
	slotAcross     wording.Text = "slot, %s to the edge"
	slotAlong      wording.Text = "slot along the stretcher"
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
			Heading: piece.WithSizes(fixingsHeading.With(), []string{p.Design.Size}, len(plan.Pieces)),
			Table:   fixingRows(p, f), Ruled: true, Text: []string{fixingsGrain.With(grain.With())},
		})
	}
	return out
}

// fixingRows has a row for every place; stretchers that are drilled alike share theirs.
func fixingRows(p piece.Piece, f shop.Fixing) [][]string {
	s := speakerFor([]piece.Piece{p})
	table := [][]string{said(fixingsHead)}
	var names []string // of stretchers that are drilled alike, by their rows
	var drilled [][][2]string
	for i := range p.Frame.Ring.Sides {
		rows := s.holeRows(p, f, i)
		name := numberText.With(i + 1)
		if at := slices.IndexFunc(drilled, func(other [][2]string) bool { return slices.Equal(other, rows) }); at >= 0 {
			names[at] += ", " + name
			continue
		}
		names, drilled = append(names, name), append(drilled, rows)
	}
	for i, rows := range drilled {
		for _, r := range rows {
			table = append(table, []string{names[i], r[0], r[1]})
			names[i] = ""
		}
	}
	return table
}

const numberText wording.Text = "%d"

// holeRows says where the holes of one stretcher are and how they are made. Two that
// mirror each other are one row.
func (s speaker) holeRows(p piece.Piece, f shop.Fixing, stretcher int) [][2]string {
	var out [][2]string
	var holes []shop.Hole
	for _, h := range f.Holes {
		if h.Stretcher == stretcher {
			holes = append(holes, h)
		}
	}
	for _, h := range holes {
		mirrored := slices.ContainsFunc(holes, func(o shop.Hole) bool {
			return h.At != 0 && o.At == -h.At && o.Slotted == h.Slotted
		})
		where := toLegEnd.With(s.mm(h.At))
		switch {
		case h.At == 0:
			where = atMidLength.With()
		case mirrored && h.At < 0:
			continue
		case mirrored:
			where = eitherSide.With(s.mm(h.At))
		case h.At < 0:
			where = toPlainEnd.With(s.mm(-h.At))
		}
		out = append(out, [2]string{where, s.hole(p, h)})
	}
	return out
}

func (s speaker) hole(p piece.Piece, h shop.Hole) string {
	lean := shop.SlotAngle(p, h.Stretcher)
	switch {
	case !h.Slotted:
		return roundHole.With()
	case measure.Degrees(lean) < 0.01:
		return slotAlong.With()
	}
	return slotAcross.With(s.angle(lean))
}

const (
	screwWare    wording.Text = "screw for the top, 4 mm, %s long"
	inchWare     wording.Text = "screw for the top, No. 8, %s long"
	buttonWare   wording.Text = "button for the top"
	siliconeWare wording.Text = "silicone for glass on wood, a small cartridge"
)

// Ware names what is bought to hold the top.
func Ware(w shop.Ware, u measure.Unit) string {
	switch {
	case w.What == shop.TopButton:
		return buttonWare.With()
	case w.What == shop.Silicone:
		return siliconeWare.With()
	case u == measure.Inch:
		return inchWare.With(measure.Length(w.Length).Text(u))
	}
	return screwWare.With(measure.Length(w.Length).Text(u))
}
