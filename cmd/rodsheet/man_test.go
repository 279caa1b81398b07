package main

import (
	"regexp"
	"strings"
	"testing"
	"time"

	"rodsheet/render/readback"
)

var dated = edition{"1.2.0", "0123456789ab", time.Date(2026, 2, 28, 0, 0, 0, 0, time.UTC)}

// A reader of such pages that is not ours finds nothing to warn of, and shows every
// line of the help as it can be typed.
func TestManPage(t *testing.T) {
	page := []byte(manPage(dated))
	if said := readback.Run(t, page, "rodsheet.1", "mandoc", "-Tlint", "-W", "style", "FILE"); said != "" {
		t.Error(said)
	}
	shown := readback.Run(t, page, "rodsheet.1", "mandoc", "-Tutf8", "FILE")
	shown = regexp.MustCompile(".\b").ReplaceAllString(shown, "") // bold and underlined as by a typewriter
	shown = strings.Join(strings.Fields(shown), " ")
	for _, want := range wholeHelp(t) {
		if want = strings.Join(strings.Fields(want), " "); !strings.Contains(shown, want) {
			t.Errorf("no %q", want)
		}
	}
	for _, want := range []string{"RODSHEET(1)", "rodsheet 1.2.0", "2026-02-28", "rodsheet - full-size templates"} {
		if !strings.Contains(shown, want) {
			t.Errorf("no %q in %q", want, shown[:200])
		}
	}
}

// wholeHelp returns the names, examples and paragraphs that the page must hold.
func wholeHelp(t *testing.T) (all []string) {
	t.Helper()
	for _, c := range commands() {
		all = append(all, c.usage(), c.summary)
		for _, f := range c.all() {
			all = append(all, strings.TrimSpace("--"+f.name+" "+f.value), f.usage)
		}
		for _, e := range c.examples {
			all = append(all, e.line, e.what)
		}
	}
	for _, topic := range topics() {
		for _, line := range strings.Split(topic.text, "\n") {
			all = append(all, line)
		}
	}
	return all
}
