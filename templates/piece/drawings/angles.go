package drawings

import (
	"math"
	"slices"

	"rodsheet/geometry/joint"
	"rodsheet/geometry/measure"
	"rodsheet/templates"
	"rodsheet/templates/piece"
	"rodsheet/templates/piece/design"
	"rodsheet/templates/piece/shop"
)

// A use is one cut that is not square, as a gauge takes it, and where it is met.
type use struct {
	// angle is the bevel of a cut across a part, or what one along it is to the
	// edge.
	angle  float64
	along  bool
	places places
}

// places is a set of what a gauge is set for.
type places uint8

const (
	legEnds places = 1 << iota
	fillerStrips
	cauls
	laps
	flushEnds
	topCorners
	tapers
)

// uses returns every angle of the piece that is not square.
func uses(p piece.Piece) []use {
	var out []use
	if splay := p.Frame.Leg.Splay; splay > 0 {
		at := legEnds | cauls
		if shop.NeedsStrip(p) {
			at |= fillerStrips
		}
		out = append(out, use{math.Pi/2 - splay, false, at})
	}
	at := laps
	if p.Design.Ring.Plain == design.FlushEnd {
		at |= flushEnds
	}
	if p.Design.Top.Kind == design.WoodTop && p.Design.Top.Outline == design.RingTop && p.Design.Top.Corner == design.SharpCorner {
		at |= topCorners
	}
	out = append(out, use{p.Frame.Ring.Lap(p.Kerf).Bevel(), false, at})
	if p.Taper != nil {
		out = append(out, use{p.Taper.ToEdge(), true, tapers})
	}
	return out
}

// quantized is the use with its angle as fine as it is printed: in hundredths of
// a degree.
func (u use) quantized() use {
	u.angle = math.Round(measure.Degrees(u.angle) * 100)
	return u
}

// An angleRow is one use of an angle and the sizes that have it.
type angleRow struct {
	use
	sizes []string
}

// angleRows returns the angles of all sizes, each with one row for every thing
// it is used for.
func angleRows(pieces []piece.Piece) []angleRow {
	var out []angleRow
	for _, p := range pieces {
		for _, u := range uses(p) {
			k := slices.IndexFunc(out, func(q angleRow) bool { return q.quantized() == u.quantized() })
			if k < 0 {
				k = len(out)
				out = append(out, angleRow{u, nil})
			}
			out[k].sizes = append(out[k].sizes, p.Design.Size)
		}
	}
	return out
}

// stage returns the part of the work that an angle is first set for.
func (at places) stage() shop.Stage {
	switch {
	case at&(laps|flushEnds|topCorners) != 0:
		return shop.LapStage
	case at&tapers != 0:
		return shop.TaperStage
	}
	return shop.BridleStage
}

// anglesJob returns the triangle of every angle that a part of the work takes,
// unless an earlier part has it, and where each is used. A gauge that is set from
// one hand is turned over for the other.
func anglesJob(pieces []piece.Piece, at shop.Stage, s templates.Setting) (templates.Section, error) {
	var job templates.Section
	var own []angleRow
	seen := map[float64]bool{}
	for _, row := range angleRows(pieces) {
		switch stage := row.places.stage(); {
		case stage == at:
			own = append(own, row)
		case stage < at:
			seen[row.quantized().angle] = true
		}
	}
	if len(own) > 0 {
		job.Panels = append(job.Panels, usesPanel(own, len(pieces), s.Unit))
	}
	for _, row := range own {
		if _, _, err := joint.Acute(row.angle); err != nil || seen[row.quantized().angle] {
			continue
		}
		seen[row.quantized().angle] = true
		views, figures, err := templates.AngleViews(row.angle, row.along, s)
		if err != nil {
			return job, err
		}
		text := measure.Angle(row.angle).Text(s.Unit)
		d := views[0]
		d.View.Hand = templates.EitherHand
		job.Drawings = append(job.Drawings, d.Of(d.View, say(angleName, text)))
		job.Panels = append(job.Panels, figures)
	}
	return job, nil
}
