package main

import (
	"rodsheet/templates"
	"rodsheet/templates/piece/checks"
	"rodsheet/templates/piece/drawings"
	"rodsheet/templates/piece/wording"
)

func pieceCommand() command {
	return command{
		name:    "piece",
		words:   fileWord,
		summary: "the whole pack of a piece from its design file",
		about: `Prints everything needed at the bench for all sizes of a design, in one PDF: a
cover with pictures, the cut list, the settings list in working order, every
full-size template, and all figures and checks. A piece that cannot be built is
refused; rodsheet check says why, and --anyway prints it with that on every
sheet.`,
		caution: sawCaution,
		flags: []flag{
			sizeFlag(),
			{name: "plan", usage: "with the full-size plan of the ring, to lay the parts on"},
			{name: "anyway", usage: "print it even if it cannot be built"},
		},
		examples: []example{
			{"rodsheet piece table.toml", "all sizes, to table.pdf"},
			{"rodsheet piece table.toml --paper letter", "on letter paper"},
			{"rodsheet piece table.toml --size low --plan -o low.pdf", "one size, with the plan"},
		},
		design: true,
		read:   readPiece,
	}
}

// readPiece returns the maker of the pack.
func readPiece(v *values) maker {
	pieces, err := v.pieces()
	if err != nil {
		return func(templates.Setting) (pack, error) { return pack{}, err }
	}
	found := examine(pieces)
	verdict := found.verdict()
	if verdict != nil && !v.on("anyway") {
		return func(templates.Setting) (pack, error) {
			return pack{}, unbuildable(verdict.Error() + "; rodsheet check says what mends it, --anyway prints it all the same")
		}
	}
	return func(s templates.Setting) (pack, error) {
		job, err := drawings.Pack(found.Findings, v.on("plan"), s)
		job.Name = v.stem()
		p := pack{job: job, warnings: found.doubts()}
		if v.on("json") {
			p.members = found.members()
		}
		if verdict != nil {
			p.remark = verdict.Error()
		}
		return p, err
	}
}

// doubts lists what can be built and should be known.
func (f findings) doubts() []string {
	return f.graded(checks.Warn, func(c checks.Check) string {
		return wording.CheckName(c) + ": " + wording.Words(c, f.Sizes[0].Piece.Design.Unit)
	})
}
