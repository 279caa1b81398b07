package templates

import (
	"cmp"
	"fmt"
	"math"
	"slices"
	"strings"

	"rodsheet/geometry"
	"rodsheet/geometry/joint"
	"rodsheet/geometry/lists"
	"rodsheet/geometry/measure"
	"rodsheet/templates/wording"
)

// Angles returns the triangles that a bevel gauge is set from, in the order given.
// One serves both hands, as the gauge turns over; a full setting draws both. An
// obtuse angle is drawn as its supplement, an angle that prints like an earlier
// one is drawn once; either is a warning.
//
// Angles are in radians. base is the length of the gauge edge in mm; 0
// takes what leaves room for the calibration square on the sheet or, in a full
// setting, the largest that one sheet offers, up to 250 mm or 10 in. Without
// either an angle that paper does not hold is set out by two points. The error is
// a *measure.BoundError.
//
// With more than one angle drawn, the name of each figure begins with its angle
// and its identity ends in it: "14.5° rise", "angle.rise-14.5".
func Angles(angles []float64, base float64, s Setting) (Job, error) {
	acute, warnings, err := acuteOnce(angles)
	if err != nil {
		return Job{}, err
	}
	if err := checkBase(base); err != nil {
		return Job{}, err
	}
	job := Job{Warnings: warnings}
	var section Section
	section, job.Figures = gauges(acute, base, s)
	switch words := gaugeWords(s.Full); {
	case len(section.Drawings) == 0: // nothing to lay a gauge on
	case len(section.Panels) == 1 && !s.Full: // a heading less may be a sheet less
		section.Panels[0].Text = words.Text
	default:
		section.Panels = append(section.Panels, words)
	}
	names := lists.Map(acute, func(a wanted) string { return angleText(a.drawn) })
	job.Sections = []Section{section}
	job.Name, job.Title = angleTitles(names)
	return job, nil
}

// gauges returns the triangles with their tables, and the figures. A triangle shares its
// strip with the next one that goes on it.
func gauges(acute []wanted, base float64, s Setting) (section Section, all []Figure) {
	var left []gauge
	for _, a := range acute {
		g := gaugeFor(a, base, s)
		for _, f := range g.figures() {
			if len(acute) > 1 {
				name := angleText(a.drawn)
				f.ID, f.Name = f.ID+"-"+measure.ID(strings.TrimSuffix(name, "°")), name+" "+f.Name
			}
			all = append(all, f)
		}
		left = append(left, g)
	}
	for len(left) > 0 {
		g := left[0]
		left = left[1:]
		figures := g.panel()
		figures.Near = View{Part: AngleView(g.drawn)}
		other := slices.IndexFunc(left, g.shares)
		switch {
		case g.pointed:
			p := g.line().Picture(say(anglePoints, g.name()), s.Unit)
			p.View = View{Part: AngleView(g.drawn)}
			figures.Of = p.View
			section.Pictures = append(section.Pictures, p)
			figures.Text = g.pointWords()
		case base == 0 && !s.Full && other >= 0:
			var d Drawing
			d, figures = g.paired(left[other])
			left = slices.Delete(left, other, other+1)
			section.Drawings = append(section.Drawings, d)
		default:
			section.Drawings = append(section.Drawings, g.views(s.Full)...)
		}
		section.Panels = append(section.Panels, figures)
	}
	return section, all
}

// A bevel is one that a triangle is wanted for, and what it is that of.
type bevel struct {
	angle float64
	of    string
}

// bevelGauges returns the triangles of the bevels that need one, each under its name:
// none for a square end, one for two that print alike. Their figures are told by who
// asks, but for an angle that is set out by two points.
func bevelGauges(bevels []bevel, s Setting) Section {
	var acute []wanted
	for _, b := range bevels {
		a, _, err := joint.Acute(b.angle)
		if err != nil {
			continue
		}
		w := wanted{drawn: a, asked: b.angle, of: b.of}
		same := slices.IndexFunc(acute, func(o wanted) bool { return angleText(o.drawn) == angleText(w.drawn) })
		if same < 0 {
			acute = append(acute, w)
			continue
		}
		acute[same].of = wording.And(acute[same].of, b.of)
	}
	section, _ := gauges(acute, 0, s)
	section.Panels = slices.DeleteFunc(section.Panels, func(p Panel) bool { return len(p.Text) == 0 })
	if len(section.Drawings) > 0 {
		section.Panels = append(section.Panels, gaugeInShort())
	}
	return section
}

func checkBase(base float64) error {
	if base == 0 {
		return nil
	}
	b := measure.Length(base)
	return cmp.Or(
		measure.AtLeast("base", b, "", measure.Length(50), "angle.short-edge"),
		measure.AtMost("base", b, "", measure.Length(3000), ""),
	)
}

// AngleTriangle returns the triangle of one angle, which may be obtuse and serves
// both hands, and its table of figures. A cut along a part takes its angle to the
// edge and has no bevel across it. The error is a *measure.BoundError.
func AngleTriangle(angle float64, along bool, s Setting) (Drawing, Panel, error) {
	acute, _, err := joint.Acute(angle)
	if err != nil {
		return Drawing{}, Panel{}, err
	}
	g := gaugeFor(wanted{drawn: acute, asked: angle, along: along}, 0, s)
	return g.views(false)[0], g.panel(), nil
}

// AnglePair returns the triangles of two angles on one strip for the gauge's stock, one
// to each side of it, and the figures of both in one table. It reports false where one
// sheet would not hold them, or where they are not of one length.
func AnglePair(angles [2]float64, s Setting) (d Drawing, p Panel, ok bool) {
	var pair [2]gauge
	for i, asked := range angles {
		acute, _, err := joint.Acute(asked)
		if err != nil {
			return d, p, false
		}
		pair[i] = gaugeFor(wanted{drawn: acute, asked: asked}, 0, s)
	}
	if ok = pair[0].shares(pair[1]); ok {
		d, p = pair[0].paired(pair[1])
	}
	return d, p, ok
}

// shares reports whether two triangles go on one strip, to a sheet, and have no names.
func (g gauge) shares(o gauge) bool {
	return g.of+o.of == "" && g.steep() && o.steep() && !g.pointed && !o.pointed && g.Base == o.Base &&
		g.Rise()+math.Max(g.stock, o.stock)+o.Rise() <= sizesOfGauge(g.Setting).narrow
}

// paired returns two triangles on one strip with the figures of both.
func (g gauge) paired(o gauge) (Drawing, Panel) {
	strip := math.Max(g.stock, o.stock)
	g.stock, o.stock = strip, strip
	d := g.drawing()
	d.Add(o.triangle().Moved(geometry.Rotate(math.Pi).Then(geometry.Translate(geometry.Pt(g.Base, -strip)))))
	d = d.Of(View{Part: AngleView(g.drawn)}, say(anglesHeading, angleText(g.drawn), angleText(o.drawn)))
	d.Also = View{Part: AngleView(o.drawn)}
	p := g.panel()
	p.Heading, p.Near = d.Name, d.View
	for i, row := range o.panel().Table {
		p.Table[i] = append(p.Table[i], row[1])
	}
	return d, p
}

// A wanted angle is drawn as its supplement where it is obtuse.
type wanted struct {
	drawn, asked float64
	along        bool   // it is that of a cut along the part
	of           string // what it is the bevel of; may be empty
}

// acuteOnce returns the angles to draw and what there is to say about the
// others.
func acuteOnce(angles []float64) (acute []wanted, warnings []string, err error) {
	if err := measure.Positive("angles", measure.Number(float64(len(angles)))); err != nil {
		return nil, nil, err
	}
	seen := map[string]bool{}
	for _, given := range angles {
		a, obtuse, err := joint.Acute(given)
		if err != nil {
			return nil, nil, err
		}
		name := angleText(a)
		if obtuse {
			warnings = append(warnings, say(drawnAsSupplement, angleText(given), name))
		}
		if seen[name] {
			warnings = append(warnings, say(drawnOnce, name))
			continue
		}
		seen[name] = true
		acute = append(acute, wanted{drawn: a, asked: given})
	}
	return acute, warnings, nil
}

// angleText is an angle as it is printed, the same in every unit.
func angleText(rad float64) string { return measure.Angle(rad).Text(measure.Millimetre) }

// angleTitles returns the name and the title of a job from the printed angles.
// Past four of them the rest is counted.
func angleTitles(names []string) (name, title string) {
	const most = 4
	shown, rest := names, ""
	if len(names) > most {
		shown, rest = names[:most], say(nMore, len(names)-most)
	}
	plain := strings.ReplaceAll(strings.Join(shown, "-"), "°", "")
	list := strings.Join(shown, ", ")
	switch {
	case len(names) == 1:
		return "angle-" + plain, say(angleTitle, list)
	case rest == "":
		return "angles-" + plain, say(anglesTitle, list)
	}
	return fmt.Sprintf("angles-%s-and-%d-more", plain, len(names)-most), say(anglesTitle, say(andRest, list, rest))
}
