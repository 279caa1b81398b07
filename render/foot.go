package render

import (
	"rodsheet/geometry"
	"rodsheet/geometry/measure"
	"rodsheet/render/lettering"
	"rodsheet/render/page"
)

// footLines is the number of text lines below the level rule: the title's (one
// for that of the job, where the layout has none of its own), those of the
// remark, the imprint and the correction, and on narrow paper the words that otherwise
// stand beside the rule.
func (l Layout) footLines() int {
	high, low := l.footWords("")
	n := max(1, len(l.titleLines(l.Title))) + len(high) + len(low)
	if l.narrow() {
		n += 2
	}
	return n
}

// narrow reports whether the words do not fit beside the level rule.
func (l Layout) narrow() bool {
	return !l.Paper.Whole && l.Paper.Width-2*l.Margin < ruleLength+18+footText
}

// footWidth is what a line of words at the foot of a sheet may take. Papers
// too narrow for words do not pass Check, which asks for it as well.
func (l Layout) footWidth() float64 {
	const whole, narrowest = 180, 40
	if l.Paper.Whole {
		return whole
	}
	return max(narrowest, l.Paper.Width-2*l.Margin)
}

// titleLines sets a title in as many lines as the layout's own takes; what
// does not fit in them is cut short.
func (l Layout) titleLines(title string) []string {
	width := l.footWidth()
	lines := lettering.Wrap(title, large, width)
	if most := max(1, len(lettering.Wrap(l.Title, large, width))); len(lines) > most {
		lines = lines[:most]
		lines[most-1] = shorten(lines[most-1], width)
	}
	return lines
}

// shorten drops the end of a line until it fits with an ellipsis.
func shorten(line string, width float64) string {
	runes := []rune(line)
	for len(runes) > 0 && lettering.Width(string(runes)+" …", large) > width {
		runes = runes[:len(runes)-1]
	}
	return string(runes) + " …"
}

// footWords are the title and the remark in large letters, imprint and correction in
// small ones.
func (l Layout) footWords(title string) (high, low []string) {
	width := l.footWidth()
	return append(l.titleLines(title), lettering.Wrap(l.Remark, large, width)...),
		append(lettering.Wrap(l.Imprint, small, width), lettering.Wrap(l.Correct.Text, small, width)...)
}

// footHeight is the strip at the bottom with the level rule and the words.
func (l Layout) footHeight() float64 {
	return levelHeight + float64(l.footLines())*lettering.Pitch(large)
}

// drawFoot draws what every sheet carries: the two rules, what it is, which
// sheet it is, and how it is to be printed.
func (p Plan) drawFoot(n *pen, i int) {
	l := p.sheets[i].layout
	foot := l.Margin + l.footHeight()
	left := l.Margin + longTick
	n.rules(geometry.Translate(geometry.Pt(l.Margin, foot-levelHeight/2)), l.Unit)
	n.rules(geometry.Rotate(fullTurn/4).Then(geometry.Translate(geometry.Pt(left, foot))), l.Unit)
	unit := millimetres
	if l.Unit == measure.Inch {
		unit = inches
	}
	words := []string{
		say(sheetOf, i+1, len(p.sheets), l.Paper.Name, say(unit)),
		say(actualSize),
	}
	x, y := l.Margin+ruleLength+18, foot-lettering.Pitch(small)+0.5
	if l.narrow() {
		x, y = l.Margin, foot-levelHeight-small
	}
	for _, s := range words {
		n.text(x, y, small, s)
		y -= lettering.Pitch(small)
	}
	y = foot - levelHeight - large
	if l.narrow() {
		y -= 2 * lettering.Pitch(large)
	}
	high, low := l.footWords(p.sheets[i].title)
	for _, s := range high {
		n.text(l.Margin, y, large, s)
		y -= lettering.Pitch(large)
	}
	for _, s := range low {
		n.text(l.Margin, y, small, s)
		y -= lettering.Pitch(large)
	}
}

// rules draws a 100 mm rule and a 4 in rule back to back along the x axis
// from the origin of m, that of the unit above.
func (n *pen) rules(m geometry.Affine, u measure.Unit) {
	at := func(x, y float64) geometry.Point { return m.Apply(geometry.Pt(x, y)) }
	n.line(rule, at(0, 0), at(ruleLength, 0))
	metric, imperial, first, second := 1.0, -1.0, "100 mm", "4 in"
	if u == measure.Inch {
		metric, imperial, first, second = imperial, metric, second, first
	}
	for k := 0; k <= 20; k++ {
		n.line(rule, at(float64(k)*5, 0), at(float64(k)*5, metric*tick(k, 2, 10)))
	}
	for k := 0; k <= 32; k++ {
		x := float64(k) * measure.MillimetresPerInch / 8
		n.line(rule, at(x, 0), at(x, imperial*tick(k, 4, 8)))
	}
	angle := geometry.Segment{A: at(0, 0), B: at(1, 0)}.Angle()
	n.page.Texts = append(n.page.Texts,
		page.Text{At: at(ruleLength+1.2, 0.4), Height: small, Angle: angle, String: first},
		page.Text{At: at(ruleLength+1.2, -0.4-small), Height: small, Angle: angle, String: second})
}

const longTick = 3.0 // mm, of the longest marks of a rule

// tick returns the length of the k-th mark of a rule: longest at every long,
// middling at every mid.
func tick(k, mid, long int) float64 {
	switch {
	case k%long == 0:
		return longTick
	case k%mid == 0:
		return 2
	}
	return 1.2
}
