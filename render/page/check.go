package page

import (
	"errors"
	"fmt"
	"math"

	"rodsheet/geometry"
)

// Reach is the farthest in mm that anything may lie from the lower left
// corner of its sheet. It keeps every coordinate within what readers that
// count in single precision can hold.
const Reach = 100_000

// Check returns an error that names the line or the page when the document
// cannot be written: it has no pages, or it holds a figure that is not a
// number, is out of reach, or must be positive and is not.
func (d Document) Check() error {
	if len(d.Pages) == 0 {
		return errors.New("the document has no pages")
	}
	for _, l := range d.Lines {
		if err := l.check(); err != nil {
			return fmt.Errorf("line %q: %w", l.Name, err)
		}
	}
	for i, p := range d.Pages {
		if err := p.check(len(d.Lines)); err != nil {
			return fmt.Errorf("page %d %q: %w", i+1, p.Name, err)
		}
	}
	return nil
}

func (l Line) check() error {
	if !positive(l.Width) {
		return fmt.Errorf("width %.4f mm is not a positive length", l.Width)
	}
	for _, d := range l.Dash {
		if !positive(d) {
			return fmt.Errorf("dash %.4f mm is not a positive length", d)
		}
	}
	return nil
}

func (p Page) check(lines int) error {
	if !positive(p.Width) || !positive(p.Height) {
		return fmt.Errorf("size %.4f × %.4f mm is not a sheet", p.Width, p.Height)
	}
	for i, s := range p.Strokes {
		if s.Line < 0 || s.Line >= lines {
			return fmt.Errorf("stroke %d: line %d of %d", i+1, s.Line, lines)
		}
		for _, q := range s.Points {
			if !near(q) {
				return fmt.Errorf("stroke %d: point (%.4f, %.4f) mm is out of reach", i+1, q.X, q.Y)
			}
		}
	}
	for i, a := range p.Areas {
		if !(a.Gray >= 0 && a.Gray <= 1) {
			return fmt.Errorf("area %d: gray %.4f is not from 0 to 1", i+1, a.Gray)
		}
		for _, q := range a.Points {
			if !near(q) {
				return fmt.Errorf("area %d: point (%.4f, %.4f) mm is out of reach", i+1, q.X, q.Y)
			}
		}
	}
	for _, t := range p.Texts {
		if !near(t.At) {
			return fmt.Errorf("text %q: place (%.4f, %.4f) mm is out of reach", t.String, t.At.X, t.At.Y)
		}
		if !positive(t.Height) {
			return fmt.Errorf("text %q: height %.4f mm is not a positive length", t.String, t.Height)
		}
		if math.IsNaN(t.Angle) || math.IsInf(t.Angle, 0) {
			return fmt.Errorf("text %q: angle %.4f is not an angle", t.String, t.Angle)
		}
	}
	return nil
}

// near reports whether p is in reach; NaN is not.
func near(p geometry.Point) bool { return math.Abs(p.X) <= Reach && math.Abs(p.Y) <= Reach }

// positive reports whether v is a length of use on paper; NaN is not.
func positive(v float64) bool { return v > 0 && v <= Reach }
