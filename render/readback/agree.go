package readback

import (
	"fmt"
	"math"
	"slices"

	"rodsheet/geometry"
	"rodsheet/render/page"
)

// Differences compares strokes read from a file with those of the page they
// were written from: every segment within tolerance mm, drawn with the pen of
// its line. It returns a line for each thing that differs. Segments of no
// length are left out, as readers drop some.
func Differences(lines []page.Line, p page.Page, got []Stroke, tolerance float64) []string {
	var out []string
	left := len(got)
	for i, line := range lines {
		var segments []geometry.Segment
		for _, s := range got {
			if !drawnWith(s, line) {
				continue
			}
			left--
			segments = append(segments, s.Segments()...)
			if s.Curved {
				out = append(out, fmt.Sprintf("line %q: a curve", line.Name))
			}
		}
		segments = slices.DeleteFunc(segments, dot)
		want := slices.DeleteFunc(OnPage(p, i), dot)
		if len(segments) != len(want) {
			out = append(out, fmt.Sprintf("line %q: %d segments, want %d", line.Name, len(segments), len(want)))
		}
		for _, s := range Strays(want, segments, tolerance) {
			out = append(out, fmt.Sprintf("line %q: no segment at %.5f", line.Name, s))
		}
	}
	if left > 0 {
		out = append(out, fmt.Sprintf("%d strokes with the pen of no line", left))
	}
	return out
}

// AreaDifferences compares areas read from a file with those of the page: corner by
// corner within tolerance mm, the gray as near as a byte holds it.
func AreaDifferences(p page.Page, got []Area, tolerance float64) []string {
	if len(got) != len(p.Areas) {
		return []string{fmt.Sprintf("%d areas, want %d", len(got), len(p.Areas))}
	}
	var out []string
	for i, w := range p.Areas {
		g := got[i]
		alike := func(a, b geometry.Point) bool { return a.Distance(b) <= tolerance }
		if math.Abs(g.Gray-w.Gray) > 1.0/255 || !slices.EqualFunc(g.Points, w.Points, alike) {
			out = append(out, fmt.Sprintf("area %d: %.3f, gray %.3f, want %.3f, gray %.3f", i+1, g.Points, g.Gray, w.Points, w.Gray))
		}
	}
	return out
}

// dot reports whether s is shorter than anything that is drawn on purpose.
func dot(s geometry.Segment) bool { return s.Length() < 0.005 }

// drawnWith reports whether s has the pen of line: its width and dashes to a
// ten-thousandth of a mm, round corners, and round ends unless dashed.
func drawnWith(s Stroke, line page.Line) bool {
	if !close4(s.Width, line.Width) || len(s.Dash) != len(line.Dash) {
		return false
	}
	for i, d := range line.Dash {
		if !close4(s.Dash[i], d) {
			return false
		}
	}
	return s.RoundCorners && s.RoundEnds == (len(line.Dash) == 0)
}

func close4(a, b float64) bool { return math.Abs(a-b) < 1e-4 }
