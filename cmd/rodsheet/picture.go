package main

import (
	"context"
	"io"

	"rodsheet/render"
	"rodsheet/render/page"
	"rodsheet/render/pdf"
	"rodsheet/render/svg"
	"rodsheet/templates/piece/drawings"
)

func pictureCommand() command {
	return command{
		name:    "picture",
		words:   fileWord,
		summary: "plan, elevation and corner view of a piece",
		about: `Draws the piece on one page to look at, not to work from: the plan, the
elevation, and a view from above at a corner, for each size.`,
		flags: []flag{
			{name: "out", short: "o", value: "FILE", usage: "write FILE, .svg or .pdf; - is standard output, as PDF"},
			sizeFlag(),
			{name: "paper", value: "SIZE", usage: "of the page; whole fits it round the pictures"},
			{name: "units", value: "mm|in", usage: "of the sizes printed; the file's own if not given"},
		},
		examples: []example{
			{"rodsheet picture table.toml", "to table.svg"},
			{"rodsheet picture table.toml -o table.pdf", "to table.pdf"},
			{"rodsheet picture table.toml --size low -o low.pdf", "one size, as PDF"},
		},
		design: true,
		act:    drawPicture,
	}
}

// drawPicture writes one page for all sizes asked for.
func drawPicture(ctx context.Context, v *values, w world) error {
	v.unit = v.units(w.getenv(unitsVariable))
	paper := v.paper()
	out := v.destination(w.stdout, false)
	if len(v.problems) > 0 {
		return v.problems
	}
	pieces, err := v.pieces()
	if err != nil {
		return err
	}
	doc := render.PictureDocument(v.stem(), pieces[0].Design.Title, drawings.Pictures(pieces), v.unit, paper)
	if out.stdout {
		return stopped(ctx, pdf.Write(watched{ctx, w.stdout}, doc), cannotPrint)
	}
	if out.name == "" {
		out.name, out.svg = v.stem()+".svg", true
	}
	files := []file{{out.name, func(o io.Writer) error { return writePage(o, doc, out.svg) }}}
	if err := out.spare(files); err != nil {
		return err
	}
	if err := save(ctx, files); err != nil {
		return err
	}
	return emit(w.stdout, "wrote "+out.name+": to look at, not to work from\n")
}

func writePage(w io.Writer, doc page.Document, asSVG bool) error {
	if asSVG {
		return svg.Write(w, doc, 0)
	}
	return pdf.Write(w, doc)
}
