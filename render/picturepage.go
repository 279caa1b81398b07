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

// A gallery is how pictures hang on one page: in rows of so many.
type gallery struct {
	across int
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
	g.draw(n, y)
	for _, line := range lettering.Wrap(title, large, g.paper.Width-2*pictureMargin) {
		y -= lettering.Pitch(large)
		n.text(pictureMargin, y, large, line)
	}
	n.text(pictureMargin, y-lettering.Pitch(small), small, say(lookOnly))
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

func captionOf(title string, p Paper) float64 {
	lines := len(lettering.Wrap(title, large, p.Width-2*pictureMargin))
	return float64(lines)*lettering.Pitch(large) + lettering.Pitch(small) + 1
}

// placePictures returns the gallery with the largest pictures. Between equals it is
// that on the paper as it is with the fewest in a row.
func placePictures(pictures []templates.Picture, p Paper, caption float64) (best gallery) {
	side := p
	side.Width, side.Height = p.Height, p.Width
	largest := math.Inf(-1)
	for _, paper := range []Paper{p, side} {
		for across := 1; across <= max(1, len(pictures)); across++ {
			g := gallery{across: across, paper: paper}
			if size := g.place(pictures, caption); size > largest+1e-9 {
				best, largest = g, size
			}
		}
	}
	return best
}

// place hangs the pictures, each in its share of the page. It returns what
// compares galleries: the scale, and then how much of the page is covered.
func (g *gallery) place(pictures []templates.Picture, caption float64) float64 {
	share := func(whole float64, n int) float64 {
		return (whole - 2*pictureMargin - gap*float64(n-1)) / float64(n)
	}
	rows := max(1, (len(pictures)+g.across-1)/g.across)
	cell := geometry.Pt(share(g.paper.Width, g.across), share(g.paper.Height-caption, rows))
	scale := reduction(scaleFor(pictures, 0, cell))
	factor, area := 1.0, 0.0
	for _, p := range pictures {
		v := fitted(p, cell)
		if !p.NoScale {
			v = newView(p, scale)
			factor = v.factor
		}
		g.views = append(g.views, v)
		area += v.bounds.Width() * v.bounds.Height() * v.factor * v.factor
	}
	const page = 1e9 // mm²: no paper is larger
	return factor + area/page
}

// rows returns the views row by row, what each row takes without gaps, and all.
func (g gallery) rows() (rows [][]*view, sizes []geometry.Point, all geometry.Point) {
	rows = slices.Collect(slices.Chunk(g.views, g.across))
	for _, row := range rows {
		var size geometry.Point
		for _, v := range row {
			s := v.size()
			size = geometry.Pt(size.X+s.X, max(size.Y, s.Y))
		}
		sizes = append(sizes, size)
		all = geometry.Pt(max(all.X, size.X+gap*float64(len(row)-1)), all.Y+size.Y)
	}
	return rows, sizes, all
}

func (g *gallery) shrink(title string) {
	const narrowest = 80
	rows, _, all := g.rows()
	g.paper = Paper{Name: "whole", Width: max(narrowest, all.X) + 2*pictureMargin}
	g.paper.Height = all.Y + gap*float64(max(0, len(rows)-1)) + pictureMargin + captionOf(title, g.paper) + pictureMargin
}

// draw hangs the pictures with even spaces between them, over the foot.
func (g gallery) draw(n *pen, foot float64) {
	rows, sizes, all := g.rows()
	y := g.paper.Height - pictureMargin
	spare := (y - foot - all.Y) / float64(len(rows))
	for i, row := range rows {
		space := (g.paper.Width - 2*pictureMargin - sizes[i].X - gap*float64(len(row)-1)) / float64(len(row)+1)
		x := pictureMargin + space
		for _, v := range row {
			v.draw(n, geometry.Pt(x, y))
			x += v.size().X + gap + space
		}
		y -= sizes[i].Y + spare
	}
}

// SinglePicture returns one page just round a picture, which is as large as a width and
// a height in mm allow, without its heading and by no round scale.
func SinglePicture(p templates.Picture, most geometry.Point) page.Document {
	v := fitted(p, most)
	size := v.drawn.Max.Sub(v.drawn.Min)
	n := &pen{page.Page{Width: size.X, Height: size.Y, Number: 1, Name: p.Heading}}
	v.inside(n, geometry.Box(0, 0, size.X, size.Y), math.MaxInt)
	return page.Document{Title: p.Heading, Lines: lines(), Pages: []page.Page{n.page}}
}
