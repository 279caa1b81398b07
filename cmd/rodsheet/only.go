package main

import (
	"fmt"
	"strconv"
	"strings"

	"rodsheet/templates/wording"
)

// only reads --only, a list of sheets and of runs of sheets: "3,5-7", or the word
// for those that hang on the sizes as milled. It returns nil where the flag is not
// given.
func (v *values) only() (sheets []int, milled bool) {
	switch {
	case !v.given("only"):
		return nil, false
	case v.text("only") == "milled":
		if v.command != "piece" {
			v.add("--only milled is for a whole piece", "rodsheet help piece")
		}
		return nil, true
	}
	hint := "write sheets and runs of sheets, like 3,5-7"
	if v.command == "piece" {
		hint += ", or milled by itself"
	}
	var out []int
	for _, part := range strings.Split(v.text("only"), ",") {
		first, last, err := sheetRun(strings.TrimSpace(part))
		if err != nil {
			v.add("--only "+wording.Shown(v.text("only"))+" "+err.Error(), hint)
			return nil, false
		}
		for n := first; n <= last; n++ {
			out = append(out, n)
		}
	}
	return out, false
}

// sheetRun reads "3" or "5-7". Sheets count from 1, and no job has more than
// mostSheets.
func sheetRun(text string) (first, last int, err error) {
	from, to, run := strings.Cut(text, "-")
	if !run {
		to = from
	}
	first, errFirst := strconv.Atoi(strings.TrimSpace(from))
	last, errLast := strconv.Atoi(strings.TrimSpace(to))
	switch {
	case errFirst != nil || errLast != nil || first < 1:
		return 0, 0, fmt.Errorf("holds %s, which is no sheet", wording.Shown(text))
	case last > mostSheets:
		return 0, 0, fmt.Errorf("goes beyond sheet %d", mostSheets)
	case last < first:
		return 0, 0, fmt.Errorf("holds %s, which runs backwards", wording.Shown(text))
	}
	return first, last, nil
}
