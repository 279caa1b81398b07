package drawings

import (
	"math"
	"slices"

	"rodsheet/geometry"
	"rodsheet/geometry/measure"
	"rodsheet/templates"
	"rodsheet/templates/piece"
	"rodsheet/templates/piece/shop"
	"rodsheet/templates/piece/wording"
)

// blocksJob returns those of the blocks that are among some parts. Wedges that
// are the offcuts of the tapers need no template.
func blocksJob(of ...shop.Part) drawer {
	return func(p piece.Piece, _ templates.Setting) (templates.Section, error) {
		var job templates.Section
		for _, b := range shop.Blocks(p) {
			if slices.Contains(of, b.Part) && b.From != shop.TaperOffcuts {
				job.Drawings = append(job.Drawings, blockDrawing(p, b))
			}
		}
		return job, nil
	}
}

// blockCorners returns the outline of a block, the straight face on y = 0, the
// thin side on x = 0.
func blockCorners(b shop.Block) []geometry.Point {
	return []geometry.Point{{}, geometry.Pt(b.Across, 0), geometry.Pt(b.Across, b.Thick), geometry.Pt(0, b.Thin)}
}

func blockDrawing(p piece.Piece, b shop.Block) templates.Drawing {
	d := templates.Drawing{}.Of(templates.View{Part: "block", Face: wording.BlockIDs[b.Part]}, wording.Block(b))
	c := blockCorners(b)
	straight, leaning := wording.BlockFaces(b)
	d.Polygon(templates.Cut, c...)
	d.LabelLine(c[0], c[1], tag("straight-face", straight))
	d.LabelLine(c[3], c[2], tag("leaning-face", leaning, p.Say(measure.Angle(b.Angle))))
	d.Span(c[1], c[0], tag("across", p.MM(b.Across)))
	d.Span(c[2], c[1], tag("thick-side", p.MM(b.Thick)))
	if b.Thin > 0 {
		d.Span(c[0], c[3], tag("thin-side", p.MM(b.Thin)))
	}
	along, long := geometry.Pt(1, 0), b.Across/3
	if b.Along {
		along, long = geometry.Pt(0, 1), b.Thin/2
	}
	grainArrow(&d, geometry.Pt(b.Across/2, (b.Thin+b.Thick)/4), along, math.Min(long, 40))
	d.LabelPoint(c[2], tag("wide-square", p.MM(b.Width)))
	return d
}

// blockPictures returns the outline of every block that is among some parts, with its
// figures.
func blockPictures(plan shop.Plan, parts []shop.Batch) []templates.Picture {
	var out []templates.Picture
	for _, l := range plan.Blocks {
		b, p := l.What, plan.Pieces[0]
		if !slices.ContainsFunc(parts, func(q shop.Batch) bool { return q.Part == b.Part && slices.Equal(q.For, l.Sizes) }) {
			continue
		}
		k := NewSketch()
		k.NoScale = true // small: the figures say it
		c := blockCorners(b)
		k.Block(templates.Light, c...)
		k.Span(c[0], c[1], geometry.Pt(0, -1), tag("across", p.MM(b.Across)))
		k.Span(c[1], c[2], geometry.Pt(1, 0), tag("thick-side", p.MM(b.Thick)))
		if b.Thin > 0 {
			k.Span(c[0], c[3], geometry.Pt(-1, 0), tag("thin-side", p.MM(b.Thin)))
		}
		k.Heading = piece.WithSizes(say(blockHeading, wording.Block(b), p.Say(measure.Angle(b.Angle)), p.MM(b.Width)), l.Sizes, len(plan.Pieces))
		out = append(out, k.Picture)
	}
	return out
}
