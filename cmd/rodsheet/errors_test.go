package main

import (
	"errors"
	"fmt"
	"io"
	"strings"
	"testing"

	"rodsheet/geometry/measure"
	"rodsheet/templates/wording"
)

func TestReport(t *testing.T) {
	for _, test := range []struct {
		err    error
		status int
		want   string
	}{
		{nil, 0, ""},
		{errors.New("out of ink"), 1, "rodsheet: out of ink\n"},
		{interrupted{}, 1, "rodsheet: interrupted; nothing written\n"},
		{refuse("no wood", "buy some"), 2, "rodsheet: no wood\n  hint: buy some\n"},
		{refuse("no wood", ""), 2, "rodsheet: no wood\n"},
		{refusal{{"one", ""}, {"two", "2"}}, 2, "rodsheet: one\nrodsheet: two\n  hint: 2\n"},
		{fmt.Errorf("so: %w", refuse("no wood", "")), 2, "rodsheet: no wood\n"},
		{errors.New("a\x1b[2Jb\nc"), 1, "rodsheet: a?[2Jb?c\n"},
	} {
		var b strings.Builder
		if status := report(&b, test.err); status != test.status || b.String() != test.want {
			t.Errorf("report(%v) = %d, %q; want %d, %q", test.err, status, b.String(), test.status, test.want)
		}
	}
}

func TestExplain(t *testing.T) {
	inches := measure.Below("lap.crossing-width", measure.Length(50.8), "taper.top", measure.Length(25.4), "")
	for _, test := range []struct {
		err        error
		text, hint string
	}{
		{inches, "crossing width 2 in must be less than the top, 1 in", "--other sets it"},
		{measure.Positive("lap.kerf", measure.Length(0)), "kerf 0 in must be more than 0 in", "--kerf sets it"},
		{measure.Below("lap.kerf", measure.Length(0), "", measure.Length(0), "own"), "kerf 0 in must be less than 0 in", "own"},
		{measure.Positive("other", measure.Number(0)), "other 0 must be more than 0", ""},
		{measure.AtMost("job.sheets", measure.Number(37), "", measure.Number(30), "paper.larger"),
			"number of sheets 37 must be at most 30", "larger paper needs fewer; --max-sheets 37 allows it"},
		{measure.AtMost("job.sheets", measure.Number(37), "", measure.Number(30), ""),
			"number of sheets 37 must be at most 30", "--max-sheets 37 allows it"},
		{&measure.ParseError{Text: "x", Reason: measure.Slip{ID: "empty"}, Hint: measure.Slip{ID: "a-figure"}}, `"x" is empty`, "write a figure"},
		{io.ErrUnexpectedEOF, "unexpected EOF", ""},
	} {
		var got refusal
		if err := explain(test.err, measure.Inch, lapCommand()); !errors.As(err, &got) || got[0] != (problem{test.text, test.hint}) {
			t.Errorf("explain(%v) = %q; want %q, %q", test.err, got, test.text, test.hint)
		}
	}
}

func TestSuggest(t *testing.T) {
	known := []string{"angle", "taper", "lap", "bridle", "scale", "help"}
	for word, want := range map[string]string{
		"bridel":                      "did you mean bridle?", // swapped
		"tapr":                        "did you mean taper?",  // left out
		"lapp":                        "did you mean lap?",    // put in
		"scaly":                       "did you mean scale?",  // changed
		"tenon":                       "",
		"":                            "",
		strings.Repeat("angle", 2000): "",
	} {
		if got := suggest("", word, known); got != want {
			t.Errorf("suggest(%.20q) = %q, want %q", word, got, want)
		}
	}
}

func TestShown(t *testing.T) {
	for in, want := range map[string]string{
		"lap":                     "lap",
		"22½°":                    "22½°",
		"":                        `""`,
		"two words":               `"two words"`,
		"a\nb":                    `"a\nb"`,
		"\xff":                    `"\xff"`,
		strings.Repeat("x", 1000): strings.Repeat("x", 39) + "…",
	} {
		if got := wording.Shown(in); got != want {
			t.Errorf("wording.Shown(%.20q) = %s, want %s", in, got, want)
		}
	}
}
