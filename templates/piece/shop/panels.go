package shop

import (
	"slices"

	"rodsheet/templates"
	"rodsheet/templates/piece"
)

// SharedPanels returns the panels of all sizes; of returns those of one. What
// several sizes have alike comes once, and its heading names them.
func SharedPanels(pieces []piece.Piece, of func(i int) []templates.Panel) []templates.Panel {
	var out []templates.Panel
	for _, l := range piece.Lots(pieces, of, samePanel) {
		l.What.Heading = piece.WithSizes(l.What.Heading, l.Sizes, len(pieces))
		out = append(out, l.What)
	}
	return out
}

func samePanel(a, b templates.Panel) bool {
	return a.Heading == b.Heading && slices.Equal(a.Text, b.Text) &&
		slices.EqualFunc(a.Table, b.Table, func(r, s []string) bool { return slices.Equal(r, s) })
}
