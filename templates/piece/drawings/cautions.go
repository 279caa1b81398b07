package drawings

import (
	"slices"

	"rodsheet/templates"
	"rodsheet/templates/piece"
	"rodsheet/templates/piece/design"
	"rodsheet/templates/piece/wording"
)

// cautions are those of the cover; what belongs to one operation stands beside it
// as well.
func cautions(pieces []piece.Piece) templates.Panel {
	return GeneralCautions(slices.ContainsFunc(pieces, func(p piece.Piece) bool { return p.Design.Top.Kind == design.GlassTop }))
}

// Cautions lists every caution that a pack may hold, whatever the piece: those of its
// cover first.
func Cautions() []templates.Panel {
	return append([]templates.Panel{GeneralCautions(true)}, wording.Cautions()...)
}
