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
type places uint16

const (
	legEnds places = 1 << iota
	fillerStrips
	legCauls
	endCauls
	laps
	flushEnds
	topCorners
	tapers
	slottedLegEnds // of a leg that has the slot
)

// uses returns every angle of the piece that is not square.
func uses(p piece.Piece) []use {
	var out []use
	if splay := p.Frame.Leg.Splay; splay > 0 {
		at := legEnds | legCauls
		if p.Design.Legs.Mortise == joint.MortiseInLeg {
			at = slottedLegEnds | legCauls
		}
		if shop.NeedsStrip(p) {
			at |= fillerStrips
		}
		out = append(out, use{math.Pi/2 - splay, false, at})
	}
	at := laps
	if p.Design.Ring.Plain == design.FlushEnd {
		at |= flushEnds
	}
	if slices.ContainsFunc(shop.Blocks(p), func(b shop.Block) bool { return b.Part == shop.EndCaul }) {
		at |= endCauls
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
// one hand is turned over for the other. What a set square holds, a taper,
// and what else is truer by two points, have a triangle in a full setting only.
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
	if s.Full || slices.ContainsFunc(own, func(r angleRow) bool { return !r.along }) { // a taper has its points
		job.Panels = append(job.Panels, usesPanel(own, len(pieces), s))
	}
	var drawn []angleRow
	for _, row := range own {
		if row.drawn(s.Full) && !seen[row.quantized().angle] {
			seen[row.quantized().angle] = true
			drawn = append(drawn, row)
		}
	}
	for len(drawn) > 0 {
		n, d, figures, err := triangles(drawn, s)
		if err != nil {
			return job, err
		}
		drawn = drawn[n:]
		job.Drawings = append(job.Drawings, d)
		figures.Of = d.View
		job.Panels = append(job.Panels, figures)
	}
	return job, nil
}

// triangles returns those of the first two rows together where they go on one strip, and
// else that of the first, with how many there are.
func triangles(rows []angleRow, s templates.Setting) (n int, d templates.Drawing, figures templates.Panel, err error) {
	if len(rows) > 1 && !s.Full && !rows[0].along && !rows[1].along {
		if d, figures, ok := templates.AnglePair([2]float64{rows[0].angle, rows[1].angle}, s); ok {
			return 2, d, figures, nil
		}
	}
	d, figures, err = templates.AngleTriangle(rows[0].angle, rows[0].along, s)
	return 1, d, figures, err
}

// drawn reports whether the angle has a triangle.
func (u use) drawn(full bool) bool {
	_, _, err := joint.Acute(u.angle)
	return err == nil && (full || !u.along && !u.ofSetSquare() && !templates.TooShallow(u.angle))
}

// ofSetSquare reports whether set squares, or a combination square, have the
// angle: 30°, 45° or 60°.
func (u use) ofSetSquare() bool {
	hundredths := u.quantized().angle
	return hundredths == 3000 || hundredths == 4500 || hundredths == 6000
}

// taperJob returns how the tapers of a leg are set out by two points on each face
// that shows one. The foot is where the back meets the floor, the end of the blank.
func taperJob(p piece.Piece) templates.Section {
	if p.Taper == nil {
		return templates.Section{}
	}
	lines := taperLines(p)
	job := templates.Section{Panels: []templates.Panel{taperPanel(p, lines)}}
	for _, l := range lines {
		picture := l.Picture(l.name(), p.Design.Unit)
		picture.View = templates.View{Part: "whole-leg", Face: l.face}
		job.Pictures = append(job.Pictures, picture)
	}
	job.Panels[0].Of = job.Pictures[0].View
	return job
}

// A taperLine is the edge of a taper on one face of the leg.
type taperLine struct {
	templates.PointedLine
	face measure.ID // that shows it
	both bool       // on the other edge of the face too
}

// taperLines returns the lines of the ring side, which shows the tapers of
// stretcher side and back, and where ring side or outer side taper that of the
// back.
func taperLines(p piece.Piece) []taperLine {
	l := p.Frame.Leg
	both := p.Taper.Faces.Symmetric()
	out := []taperLine{newTaperLine(p, "ring-side", l.Breadth, both, tag("back"), tag("foot-end"))}
	if p.Taper.Faces.Square() {
		out = append(out, newTaperLine(p, "back", l.Thickness, both, tag("outer-side"), tag("foot-end")))
	}
	return out
}

// newTaperLine counts the taper from the straight edge of the face or, where both
// its edges are cut, from that of the blank that it is cut out of.
func newTaperLine(p piece.Piece, face measure.ID, across float64, both bool, edge, end templates.Tag) taperLine {
	line := templates.PointedLine{
		AtEnd: across - p.Taper.Loss(), AtRun: across, Run: p.Taper.Run(), Across: across, Edge: edge, End: end,
	}
	if both {
		line.AtEnd, line.AtRun, line.Edge = p.Taper.Loss(), 0, tag("either-edge")
	}
	return taperLine{line, face, both}
}
