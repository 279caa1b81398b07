package main

import (
	"fmt"

	"rodsheet/geometry/joint"
	"rodsheet/geometry/measure"
	"rodsheet/templates"
)

func lapCommand() command {
	return command{
		name:    "lap",
		summary: "half-laps at any angle, with spacer and stop",
		about: `Draws the lap on one part as a strip to wrap round it, and works out the spacer
and the stop for the saw. Where parts cross at a slant the usual rule for the
spacer cuts too wide; the sheet says by how much.`,
		caution: sawCaution,
		flags: []flag{
			{name: "width", value: "LENGTH", usage: "of the part, across the face that is cut", required: true},
			{name: "other", value: "LENGTH", usage: "width of the part that crosses", required: true, figure: "lap.crossing-width"},
			{name: "depth", value: "LENGTH", usage: "of the part; half of it is cut away", required: true},
			{name: "angle", value: "ANGLE", usage: "bevel between the two parts; 90 is square", required: true},
			{name: "kerf", value: "LENGTH", usage: "of the blade; 3.2 mm or 1/8 in is assumed if not given"},
			{name: "at", value: "LENGTH", usage: "datum to near shoulder, along the reference edge",
				figure: "lap.at"},
			fullFlag(),
		},
		examples: []example{
			{"rodsheet lap --width 28 --other 28 --depth 36 --angle 60", "two stretchers of a three-legged table"},
			{"rodsheet lap --width 28 --other 28 --depth 36 --angle 60 --kerf 2.6 --at 155", "with your blade, 155 mm from the end"},
			{"rodsheet lap --width 1-1/8 --other 1-1/8 --depth 1-3/8 --angle 60 --units in", "in inches, on letter paper"},
		},
		read: func(v *values) maker {
			l := joint.Lap{
				Width: v.length("width", 0),
				Other: v.length("other", 0),
				Depth: v.length("depth", 0),
				Angle: v.angle("angle"),
				Kerf:  v.length("kerf", usualKerf(v.unit)),
				At:    v.length("at", 0),
			}
			return drawn(withKerf(v, l.Kerf, templates.Lap), l)
		},
	}
}

// withKerf adds a word on a kerf that was not given.
func withKerf[T any](v *values, kerf float64, draw drawer[T]) drawer[T] {
	if v.given("kerf") {
		return draw
	}
	return func(figures T, s templates.Setting) (templates.Job, error) {
		job, err := draw(figures, s)
		job.Warnings = append(job.Warnings, fmt.Sprintf(
			"kerf assumed to be %s; measure a cut of your blade and give it with --kerf", measure.Length(kerf).Text(s.Unit)))
		return job, err
	}
}

// usualKerf is the kerf of a full-kerf table saw blade (common practice, no
// source).
func usualKerf(u measure.Unit) float64 {
	if u == measure.Inch {
		return measure.MillimetresPerInch / 8
	}
	return 3.2
}
