package drawings

import (
	"math"
	"slices"
	"strings"

	"rodsheet/geometry"
	"rodsheet/geometry/joint"
	"rodsheet/geometry/measure"
	"rodsheet/templates"
	"rodsheet/templates/piece"
	"rodsheet/templates/piece/design"
)

// lapJob returns the lap that every end of every stretcher takes, seen on the
// face that is cut, the inside edge towards the maker. Both ends show the same
// hand, for tumbled end over end the one comes to lie as the other lay: the
// right one where the leg end is lapped on the upper face, for there the leg
// end lies to the right.
//
// The lap is counted from its own inner shoulder, and that from mid-length, so
// that sizes whose stretchers differ beyond the lap only share it.
func lapJob(p piece.Piece, s templates.Setting) (templates.Section, error) {
	lap := p.Frame.Ring.Lap(p.Kerf)
	lap.At = 0
	drawn, err := templates.Lap(lap, s)
	if err != nil {
		return templates.Section{}, err
	}
	fromEdge := lap.Bevel()
	inner, _ := p.Frame.Ring.Shoulders(0)
	hand, view := ", left hand, ", geometry.MirrorX()
	if p.Frame.Over {
		hand, view = ", right hand, ", geometry.Identity()
	}
	job := templates.Section{Panels: []templates.Panel{lapPanel(p)}}
	for _, d := range drawn.Drawings() {
		before, after, ok := strings.Cut(d.Name, hand)
		if !ok {
			continue
		}
		d = relabelled(d, map[string]string{
			"datum": p.MM(inner) + " to mid-length",
			p.Say(measure.Angle(lap.Angle)) + " from the edge": p.Say(measure.Angle(fromEdge)) + " from the edge",
			"reference edge":    "inside edge",
			"far edge":          "outside edge",
			"face side":         "cut face",
			"lap up: face side": "cut face",
		})
		name := map[string]string{"face": "cut face", "reference edge": "inside edge"}[after]
		if name == "" {
			name = after
		}
		if after != "reference edge" {
			d.Add(shoulders(p, lap).Moved(view))
		}
		d.LabelLine(view.Apply(geometry.Pt(-beyond, 0)), geometry.Point{}, "reference edge")
		job.Drawings = append(job.Drawings, d.Named(before+", "+name))
	}
	return job, nil
}

// shoulders names the two shoulders of a lap and, where the plain end is
// closed with slack, adds the shoulder that has it.
func shoulders(p piece.Piece, lap joint.Lap) templates.Drawing {
	var d templates.Drawing
	c := lap.Corners()
	d.LabelLine(c[0], c[3], "inner shoulder")
	if p.Design.Ring.Plain == design.ClosedEnd && p.Design.Ring.Slack > 0 {
		by := geometry.Pt(p.Design.Ring.Slack/math.Sin(lap.Angle), 0)
		a, b := c[1].Add(by), c[2].Add(by)
		d.Line(templates.Construction, a, b)
		d.LabelLine(a, b, "plain end: "+p.MM(p.Design.Ring.Slack)+" slack")
	}
	d.LabelLine(c[1], c[2], "outer shoulder")
	if p.Design.Ring.Plain != design.ClosedEnd || p.Design.Ring.Slack > 0 {
		d.LabelLine(c[1], c[2], "leg end only")
	}
	return d
}

// lapPanel says where the laps stand, and on which faces.
func lapPanel(p piece.Piece) templates.Panel {
	r := p.Frame.Ring
	inner, outer := r.Shoulders(0)
	innerFar, outerFar := r.Shoulders(r.Width)
	up, down := "leg end", "plain end"
	if !p.Frame.Over {
		up, down = down, up
	}
	plain := "The plain end is left open: everything from the inner shoulder to the end comes away, so that the ring can be slid together."
	if p.Design.Ring.Plain == design.ClosedEnd {
		plain = "The plain end is closed: its outer shoulder leaves " + p.MM(p.Design.Ring.Slack) + " of slack, square to the lap."
	}
	return templates.Panel{
		Heading: "Where the laps stand",
		Table: [][]string{
			{"from mid-length of the stretcher", "inside edge", "outside edge"},
			{"inner shoulder", p.MM(inner), p.MM(innerFar)},
			{"outer shoulder", p.MM(outer), p.MM(outerFar)},
			{"deep", p.MM(r.Depth / 2)},
		},
		Text: []string{
			"One template serves both ends: the lap of the " + up + " is on the upper face, that of the " + down + " on the underside. Mark mid-length on the inside edge, lay the template on the face that is cut with the inside edge towards you, then tumble the stretcher end over end for the other lap. Never roll it.",
			plain,
		},
	}
}

// bridleJob returns both parts of the joint between stretcher and leg. The
// corner is a right hand one for whoever looks at the inside face of the
// stretcher: the leg end lies to the right there, and so all face sides look
// into the ring.
func bridleJob(p piece.Piece, s templates.Setting) (templates.Section, error) {
	drawn, err := templates.Bridle(p.Bridle, s)
	if err != nil {
		return templates.Section{}, err
	}
	var job templates.Section
	for _, d := range drawn.Drawings() {
		part, view, ok := strings.Cut(d.Name, ", right hand, ")
		if !ok {
			part, view, ok = strings.Cut(d.Name, ", both hands, ")
		}
		if !ok {
			continue
		}
		name := "bridle, " + part + ", " + view
		if view == "face" {
			name = "bridle, " + part + ", inside face"
		}
		if part == "leg" && p.Design.Legs.Proud > 0 {
			d = runsOn(p, d)
		}
		job.Drawings = append(job.Drawings, relabelled(d, bridleWords(p, part)).Named(name))
	}
	return job, nil
}

// bridleWords is what the lines of a bridle are called on this piece.
func bridleWords(p piece.Piece, part string) map[string]string {
	words := map[string]string{"face side": "inside face: face side", "back face": "outside face"}
	if part == "leg" && p.Design.Legs.Proud > 0 {
		words["trim line"] = "top of the stretcher"
		words["saw, "+p.MM(joint.BridleLong)+" long"] = "runs on: " + p.MM(p.Design.Legs.Proud) + " proud"
	}
	return words
}

// runsOn turns the end of a leg whose head stands proud into a mere break: the
// saw cuts further out.
func runsOn(p piece.Piece, d templates.Drawing) templates.Drawing {
	head := p.Bridle.Head().FromFarEdge()
	ends := [2]float64{head.RoughEnd(0), head.RoughEnd(head.Width)}
	for i, s := range d.Strokes {
		atEnd := s.Role == templates.Cut && !slices.ContainsFunc(s.Points, func(q geometry.Point) bool {
			return math.Abs(q.X-ends[0]) > 1e-9 && math.Abs(q.X-ends[1]) > 1e-9
		})
		if atEnd {
			d.Strokes[i].Role = templates.Construction
		}
	}
	return d
}
