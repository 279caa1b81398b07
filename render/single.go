package render

import (
	"math"

	"rodsheet/geometry"
	"rodsheet/render/page"
	"rodsheet/templates"
)

// SinglePicture returns one page just round a picture, which is as large as a width and
// a height in mm allow, without its heading and by no round scale.
func SinglePicture(p templates.Picture, most geometry.Point) page.Document {
	v := fitted(p, most)
	size := v.drawn.Max.Sub(v.drawn.Min)
	n := &pen{page.Page{Width: size.X, Height: size.Y, Number: 1, Name: p.Heading}}
	v.inside(n, geometry.Box(0, 0, size.X, size.Y), math.MaxInt)
	return page.Document{Title: p.Heading, Lines: lines(), Pages: []page.Page{n.page}}
}
