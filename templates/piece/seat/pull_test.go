package seat

import (
	"strings"
	"testing"

	"rodsheet/geometry/measure"
	"rodsheet/templates"
	"rodsheet/templates/piece/kind"
)

// A force less than nothing is no figure: the load alone tips the seat.
func TestTipsAlone(t *testing.T) {
	g := kind.Group{Figures: []templates.Figure{
		{ID: "a", Name: "a pull", Value: measure.Force(-11)}, {ID: "b", Name: "a length", Value: measure.Length(-3)},
	}}
	got := finite(g)
	if len(got.Figures) != 1 || got.Figures[0].ID != "b" || len(got.Text) != 1 || !strings.Contains(got.Text[0], "a pull") {
		t.Errorf("%+v", got)
	}
}
