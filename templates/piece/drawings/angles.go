package drawings

import (
	"math"
	"slices"
	"strings"

	"rodsheet/geometry/joint"
	"rodsheet/geometry/measure"
	"rodsheet/templates"
	"rodsheet/templates/piece"
	"rodsheet/templates/piece/design"
	"rodsheet/templates/piece/shop"
)

// A use is one angle of a piece and where it is met, as a bevel gauge takes
// it: the acute one of the two between the lines.
type use struct {
	angle  float64
	places string
}

// uses returns every angle of the piece that is not square.
func uses(p piece.Piece) []use {
	var out []use
	if splay := p.Frame.Leg.Splay; splay > 0 {
		places := "head, foot and shoulder of the leg; leg end and shoulder of the stretcher; "
		if shop.NeedsStrip(p) {
			places += "filler strips; "
		}
		out = append(out, use{splay, places + "cauls"})
	}
	crossing := p.Frame.Ring.Angle()
	places := "laps"
	if p.Design.Ring.Plain == design.FlushEnd {
		places += "; flush plain end of the stretcher"
	}
	if p.Design.Top.Kind == design.WoodTop && p.Design.Top.Outline == design.RingTop && p.Design.Top.Corner == design.SharpCorner {
		places += "; corners of the top"
	}
	out = append(out, use{math.Min(crossing, math.Pi-crossing), places})
	if p.Taper != nil {
		out = append(out, use{p.Taper.ToEdge(), "taper of the leg"})
	}
	return out
}

// An angleRow is an angle as it is printed, with all that all sizes use it for.
type angleRow struct {
	use
	text  string
	sizes []string
}

// angleRows returns the angles of all sizes, each with one line for every thing
// it is used for.
func angleRows(pieces []piece.Piece) []angleRow {
	var out []angleRow
	for _, p := range pieces {
		for _, u := range uses(p) {
			text := p.Say(measure.Angle(u.angle))
			k := slices.IndexFunc(out, func(q angleRow) bool { return q.text == text && q.places == u.places })
			if k < 0 {
				k = len(out)
				out = append(out, angleRow{u, text, nil})
			}
			out[k].sizes = append(out[k].sizes, p.Design.Size)
		}
	}
	return out
}

// anglesJob returns the triangle of every angle, once each, and where each is
// used.
func anglesJob(pieces []piece.Piece, s templates.Setting) (templates.Section, error) {
	all := angleRows(pieces)
	var angles []float64
	var seen []string
	for _, q := range all {
		if _, _, err := joint.Acute(q.angle); err == nil && !slices.Contains(seen, q.text) {
			angles, seen = append(angles, q.angle), append(seen, q.text)
		}
	}
	job := templates.Section{Panels: []templates.Panel{usesPanel(all, len(pieces), s.Unit)}}
	if len(angles) == 0 {
		return job, nil
	}
	drawn, err := templates.Angles(angles, 0, s)
	if err != nil {
		return job, err
	}
	// A gauge that is set from one hand is turned over for the other.
	for _, d := range drawn.Drawings() {
		if name, ok := strings.CutSuffix(d.Name, ", right hand"); ok {
			job.Drawings = append(job.Drawings, d.Named(name))
		}
	}
	job.Panels = append(job.Panels, drawn.Panels()[:len(angles)]...)
	return job, nil
}

// usesPanel says where each angle is used, and what to do with those that
// have no triangle.
func usesPanel(all []angleRow, sizes int, u measure.Unit) templates.Panel {
	panel := templates.Panel{
		Heading: "Where the angles are used",
		Table:   [][]string{{"angle", "from square", "used for"}},
		Text: []string{
			"Stock of the gauge on the registration edge, blade along the slope. Cut along the slope, or strike it on a board from its working edge and set to that: a setting by a line alone is uncertain.",
			"A gauge set once serves both hands: turn it over. A mitre gauge that reads from square is set to the figure in the middle column.",
		},
	}
	for _, q := range all {
		where := q.places
		if words := piece.SizeWords(q.sizes, sizes); words != "" {
			where += " (" + words + ")"
		}
		if _, _, err := joint.Acute(q.angle); err != nil {
			where += ". " + withoutTriangle(q.angle, u)
		}
		panel.Table = append(panel.Table, []string{q.text, measure.Angle(math.Pi/2 - q.angle).Text(u), where})
	}
	return panel
}

// withoutTriangle says how an angle is set that geometry.Acute refuses.
func withoutTriangle(angle float64, u measure.Unit) string {
	if angle > math.Pi/4 {
		return "Set by a square"
	}
	run, text := 250.0, "250 mm"
	if u == measure.Inch {
		run, text = 10*measure.MillimetresPerInch, "10 in"
	}
	return "Set out by a rise of " + measure.Length(joint.RiseOver(run, angle)).Text(u) + " over " + text
}
