package main

import (
	"context"

	"rodsheet/render"
	"rodsheet/render/page"
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
			{name: "paper", value: "SIZE", choices: render.PaperNames(), usage: "of the page; whole fits it round the pictures"},
			unitsFlag("of the sizes printed; the file's own if not given"),
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

func drawPicture(ctx context.Context, v *values, w world) error {
	paper := v.paper()
	v.fail("--paper", paper.CheckForPicture())
	out := v.destination(w.stdout, false, ".pdf", ".svg")
	if len(v.problems) > 0 {
		return v.problems
	}
	doc, err := awaited(ctx, func() (page.Document, error) {
		work, err := v.work()
		if err != nil {
			return page.Document{}, err
		}
		return render.PictureDocument(v.stem(), v.file.Title, work.Pictures(), v.unit, paper), nil
	})
	if err != nil {
		return err
	}
	if out.name == "" && !out.stdout {
		out.name, out.svg = v.stem()+".svg", true
	}
	return out.write(ctx, w.stdout, out.files("", doc, 1)[0].Write, ": to look at, not to work from")
}
