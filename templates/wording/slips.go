package wording

import (
	"sync"

	"rodsheet/geometry/lists"
	"rodsheet/geometry/measure"
)

// slipped says what is wrong with a text, or what to write instead.
func slipped(s measure.Slip) string {
	t, ok := slips()[s.ID]
	if !ok {
		return string(s.ID)
	}
	args := lists.Map(s.Args, func(a string) any { return a })
	return t.With(args...)
}

// slips says what is wrong with a text behind that text, and what to write instead.
var slips = sync.OnceValue(func() map[measure.ID]Text {
	return map[measure.ID]Text{
		"brackets":             "has brackets",
		"comma":                "has a comma",
		"decimal-and-fraction": "mixes a decimal with a fraction",
		"divides-by-zero":      "divides by 0",
		"empty":                "is empty",
		"full-turn":            "is 360° or more",
		"inches-over":          "has 12 inches or more after the feet",
		"long":                 "is 100 m or more",
		"long-text":            "is longer than %s characters",
		"minutes-over":         "has 60 or more minutes or seconds",
		"no-angle":             "is not an angle",
		"no-base":              "is a slope over no base",
		"no-decimal":           "is not a decimal figure",
		"no-length":            "is not a length",
		"no-paper":             "is no paper size",
		"no-unit":              "is not a unit",
		"one-or-two":           "can be read in two ways: %s or %s and %s",
		"part-of-foot":         "has part of a foot as well as inches",
		"part-of-minute":       "has part of a minute as well as seconds",
		"power-of-ten":         "has a power of ten",
		"several-figures":      "has more than one figure, and nothing to tell them apart",
		"several-lengths":      "has more than one length",
		"short":                "is under 0.001 mm",
		"slope-or-degrees":     "can be read in two ways: the slope %s (%s) or %s of a degree",
		"two-ways":             "can be read in two ways: %s or %s",
		"unknown-unit":         "has an unknown unit, %s",
		"whole-fraction":       "has a fraction of 1 or more behind a whole number",

		"a-figure":            "write a figure",
		"angles":              "write 14.5, 14°30' or, rise over base, 1:6",
		"bare-unit":           "a length without a unit is read as %s",
		"decimal-or-fraction": "write 1.75 or 1 3/4",
		"digits":              "write digits, with a point for decimals",
		"either":              "write %s or %s",
		"feet-and-inches":     `only feet and inches go together: 2' 1 1/4"`,
		"feet-or-inches":      `write 3' 3" or 39in`,
		"feet-or-part":        `write 2' 6" or 2.5ft`,
		"fraction-or-decimal": "write one figure: the fraction or the decimal",
		"lengths":             `write 640, 64cm, 25 1/4in or 2' 1 1/4"`,
		"less-than-turn":      "write less than one turn",
		"mark-degrees":        "write the degrees with their mark: %s",
		"mark-minutes":        "write the minutes with their mark: %s",
		"minutes-or-seconds":  `write 14°30.5' or 14°30'30"`,
		"mixed-or-fraction":   "write it as 1 1/4 or as 5/4",
		"mm-or-in":            "write mm or in",
		"no-thousands":        "use a point for decimals, and nothing between thousands",
		"one-figure":          "write one figure",
		"other-below":         "write the fraction with another number below",
		"papers":              "use %s or WIDTHxHEIGHT, like 300x450",
		"point":               "use a point for decimals",
		"sixty":               "write 15°10', not 14°70'",
		"units":               "the units are mm, cm, m, in and ft",
		"upright":             "write 90 for upright",
		"written-out":         "write the figure out",
	}
})
