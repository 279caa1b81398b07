package main

import (
	"regexp"
	"strings"
	"testing"
	"time"

	"rodsheet/render/readback"
)

var dated = edition{"1.2.0", "0123456789ab", time.Date(2026, 2, 28, 0, 0, 0, 0, time.UTC)}

// Readers of such pages that are not ours find nothing to warn of, and show every
// line of the help as it can be typed.
func TestManPage(t *testing.T) {
	for _, reader := range [][]string{
		{"mandoc", "-Wstyle", "-Tutf8", "FILE"},
		{"groff", "-ww", "-k", "-man", "-Tutf8", "-P-c", "FILE"},
	} {
		t.Run(reader[0], func(t *testing.T) {
			shown := readback.Run(t, []byte(manPage(dated)), "rodsheet.1", reader[0], reader[1:]...)
			shown = regexp.MustCompile(".\b").ReplaceAllString(shown, "") // bold and underlined as by a typewriter
			shown = strings.Join(strings.Fields(shown), " ")
			for _, want := range append(wholeHelp(t), "RODSHEET(1)", "rodsheet 1.2.0", "2026-02-28", "rodsheet - full-size templates") {
				if want = strings.Join(strings.Fields(want), " "); !strings.Contains(shown, want) {
					t.Errorf("no %q", want)
				}
			}
			if _, said, warned := strings.Cut(shown, "warning:"); warned { // mandoc fails by its status
				t.Error(said[:min(200, len(said))])
			}
		})
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
		all = append(all, strings.Split(topic.text, "\n")...)
	}
	return all
}

// Signs that some readers show as others, which a shell does not take, are written by
// their names: groff_man_style(7), "Portability". Debian's groff shows both alike.
func TestRoffSigns(t *testing.T) {
	const want = `\-\-title \(aqa \e b\(aq \(ga\(ha\(ti`
	if got := escapedRoff("--title 'a \\ b' `^~"); got != want {
		t.Errorf("%s, want %s", got, want)
	}
}
