package drawings

import (
	"math"

	"rodsheet/geometry"
	"rodsheet/templates"
	"rodsheet/templates/piece"
	"rodsheet/templates/piece/design"
)

// lapJob returns the lap that every end of every stretcher takes, seen on the
// face that is cut, the ring side towards the maker. Both ends show the same
// hand, for tumbled end over end the one comes to lie as the other lay: the
// right one where the leg end is lapped on the top, for there the leg end lies
// to the right.
//
// The lap is counted from its own inner shoulder, and that from mid-length, so
// that sizes whose stretchers differ beyond the lap only share it.
func lapJob(p piece.Piece, s templates.Setting) (templates.Section, error) {
	lap := p.Frame.Ring.Lap(p.Kerf)
	lap.At = 0
	if err := lap.Check(); err != nil {
		return templates.Section{}, err
	}
	inner, _ := p.Frame.Ring.Shoulders(0)
	hand, view := templates.LeftHand, geometry.MirrorX()
	if p.Frame.Over {
		hand, view = templates.RightHand, geometry.Identity()
	}
	job := templates.Section{Panels: []templates.Panel{lapPanel(p)}}
	for _, d := range templates.LapViews(lap, lapNames(p, p.MM(inner)), s) {
		if d.View.Hand != hand {
			continue
		}
		if d.View.Face != "reference-edge" {
			d.Add(plainEnd(p).Moved(view))
		}
		d.LabelLine(view.Apply(geometry.Pt(-beyond, 0)), geometry.Point{}, tag("reference-edge"))
		job.Drawings = append(job.Drawings, named(d, d.View.Part, d.View.Face))
	}
	return job, nil
}

// plainEnd draws the outer shoulder of the plain end where that is closed with slack.
func plainEnd(p piece.Piece) templates.Drawing {
	var d templates.Drawing
	if p.Design.Ring.Plain == design.ClosedEnd && p.Design.Ring.Slack > 0 {
		lap := p.Frame.Ring.Lap(p.Kerf)
		lap.At = 0
		c := lap.Corners()
		by := geometry.Pt(p.Design.Ring.Slack/math.Sin(lap.Angle), 0)
		a, b := c[1].Add(by), c[2].Add(by)
		d.Named(templates.Construction, a, b, tag("plain-end-slack", p.MM(p.Design.Ring.Slack)))
	}
	return d
}

// bridleJob returns both parts of the joint between stretcher and leg. The
// corner is a right hand one for whoever looks at the ring side of the
// stretcher: the leg end lies to the right there.
func bridleJob(p piece.Piece, s templates.Setting) (templates.Section, error) {
	if err := p.Bridle.Check(); err != nil {
		return templates.Section{}, err
	}
	var job templates.Section
	for _, d := range templates.BridleViews(p.Bridle, p.Design.Legs.Proud, s) {
		if d.View.Hand != templates.LeftHand {
			job.Drawings = append(job.Drawings, named(d, "bridle", d.View.Part, d.View.Face))
		}
	}
	return job, nil
}
