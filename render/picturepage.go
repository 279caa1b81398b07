package render

import (
	"cmp"
	"math"
	"slices"

	"rodsheet/geometry"
	"rodsheet/geometry/measure"
	"rodsheet/render/lettering"
	"rodsheet/render/page"
	"rodsheet/templates"
)

// A gallery is how pictures hang on one page: in rows of so many, each in a
// cell of the same size.
type gallery struct {
	across int
	cell   geometry.Point
	views  []*view
	paper  Paper
}

const pictureMargin = 8.0 // mm, as in DefaultLayout

// PictureDocument returns one page with the pictures, as large as they can be
// together: those to scale at one scale, on the paper as it is or on its side.
// On whole paper the page is as large as the pictures need at the scale that
// the usual paper of the unit holds.
func PictureDocument(name, title string, pictures []templates.Picture, u measure.Unit, p Paper) page.Document {
	whole := p.Whole
	if whole {
		p, _ = ParsePaper(usualPaper(u), u)
	}
	g := placePictures(pictures, p, captionOf(title, p))
	if whole {
		g.shrink(title)
	}
	n := &pen{page.Page{Width: g.paper.Width, Height: g.paper.Height, Number: 1, Name: title}}
	y := pictureMargin + captionOf(title, g.paper)
	g.draw(n, y-pictureMargin)
	for _, line := range lettering.Wrap(title, large, g.paper.Width-2*pictureMargin) {
		y -= pitch(large)
		n.text(pictureMargin, y, large, line)
	}
	n.text(pictureMargin, y-pitch(small), small, say(lookOnly))
	return page.Document{Title: title, Subject: name, Lines: lines(), Pages: []page.Page{n.page}}
}

// CheckForPicture reports a *measure.BoundError for a page on which no picture
// could be looked at, or that no file can hold.
func (p Paper) CheckForPicture() error {
	if p.Whole {
		return nil
	}
	const least = 60
	mm := measure.Length
	return cmp.Or(
		measure.AtLeast("paper.width", mm(p.Width), "", mm(least), ""),
		measure.AtLeast("paper.height", mm(p.Height), "", mm(least), ""),
		measure.AtMost("paper", mm(max(p.Width, p.Height)), "page.longest", mm(wholeLimit), ""),
	)
}

// usualPaper names the paper that goes with a unit.
func usualPaper(u measure.Unit) string {
	if u == measure.Inch {
		return "letter"
	}
	return "A4"
}

// captionOf returns the height of the words at the foot of the page.
func captionOf(title string, p Paper) float64 {
	lines := len(lettering.Wrap(title, large, p.Width-2*pictureMargin))
	return float64(lines)*pitch(large) + pitch(small) + 1
}

// placePictures returns the gallery with the largest pictures. Between equals it is
// that on the paper as it is with the fewest in a row.
func placePictures(pictures []templates.Picture, p Paper, caption float64) gallery {
	side := p
	side.Width, side.Height = p.Height, p.Width
	var best gallery
	largest := 0.0
	for _, paper := range []Paper{p, side} {
		for across := 1; across <= max(1, len(pictures)); across++ {
			g := newGallery(pictures, paper, across, caption)
			if size := g.size(); best.across == 0 || size > largest+1e-9 {
				best, largest = g, size
			}
		}
	}
	return best
}

func newGallery(pictures []templates.Picture, p Paper, across int, caption float64) gallery {
	rows := (len(pictures) + across - 1) / across
	g := gallery{across: across, paper: p}
	share := func(whole float64, n int) float64 { return (whole - 2*pictureMargin - gap*float64(n-1)) / float64(n) }
	g.cell = geometry.Pt(share(p.Width, across), share(p.Height-caption, max(1, rows)))
	scale := scaleFor(pictures, 0, g.cell)
	for _, q := range pictures {
		if q.NoScale {
			g.views = append(g.views, fitted(q, g.cell))
		} else {
			g.views = append(g.views, newView(q, reduction(scale)))
		}
	}
	return g
}

// size compares galleries: by the scale and then by how much of the page the
// pictures cover.
func (g gallery) size() float64 {
	factor, area := 1.0, 0.0
	for _, v := range g.views {
		if !v.NoScale {
			factor = math.Min(factor, v.factor)
		}
		area += v.bounds.Width() * v.bounds.Height() * v.factor * v.factor
	}
	const page = 1e9 // mm²: no paper is larger
	return factor + area/page
}

// rows returns the views row by row.
func (g gallery) rows() [][]*view { return slices.Collect(slices.Chunk(g.views, g.across)) }

// rowSize returns what a row takes.
func rowSize(row []*view) geometry.Point {
	size := geometry.Pt(-gap, 0)
	for _, v := range row {
		s := v.size()
		size = geometry.Pt(size.X+gap+s.X, max(size.Y, s.Y))
	}
	return size
}

// shrink makes the page as small as the rows and the words allow.
func (g *gallery) shrink(title string) {
	const narrowest = 80
	width, height := narrowest+0.0, -gap
	for _, row := range g.rows() {
		s := rowSize(row)
		width, height = max(width, s.X), height+gap+s.Y
	}
	g.paper = Paper{Name: "whole", Width: width + 2*pictureMargin}
	g.paper.Height = max(0, height) + 2*pictureMargin + captionOf(title, g.paper)
}

// draw hangs the pictures with even spaces between them.
func (g gallery) draw(n *pen, caption float64) {
	rows := g.rows()
	spare := g.paper.Height - 2*pictureMargin - caption
	for _, row := range rows {
		spare -= rowSize(row).Y
	}
	y := g.paper.Height - pictureMargin
	for _, row := range rows {
		size := rowSize(row)
		space := (g.paper.Width - 2*pictureMargin - size.X) / float64(len(row)+1)
		x := pictureMargin + space
		for _, v := range row {
			v.draw(n, geometry.Pt(x, y))
			x += v.size().X + gap + space
		}
		y -= size.Y + spare/float64(len(rows))
	}
}
