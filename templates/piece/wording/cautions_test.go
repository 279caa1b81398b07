package wording

import (
	"strings"
	"testing"

	"rodsheet/templates"
	"rodsheet/templates/piece/shop"
)

// The list of cautions holds whatever stands on a card of any case, and on a jig.
func TestCautionsAreWhole(t *testing.T) {
	all := ""
	for _, p := range Cautions() {
		all += strings.Join(p.Text, "\n") + "\n"
	}
	eachCard(t, func(where string, _ shop.Plan, c shop.Card, _ templates.Card) {
		ids := []shop.NoteID{c.Guard()}
		for _, s := range c.Steps {
			ids = append(ids, s.Caution)
		}
		for _, id := range ids {
			if !strings.Contains(all, noteTexts()[id].With()) {
				t.Errorf("%s: %s is not in the list", where, id)
			}
		}
	})
	for kind := range jigTexts {
		said := Jig(kind).Text
		if want := said[len(said)-1]; !strings.HasPrefix(want, "Caution: ") || !strings.Contains(all, JigName(kind)+". "+want) {
			t.Errorf("%s: %q is not in the list", JigName(kind), want)
		}
	}
}
