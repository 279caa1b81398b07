package live

import (
	"fmt"
	"html/template"
	"io"
	"io/fs"
	"math"
	"strings"

	"rodsheet/examples"
	"rodsheet/geometry"
	"rodsheet/geometry/joint"
	"rodsheet/geometry/lists"
	"rodsheet/templates/piece/design"
	"rodsheet/templates/wording"
)

// A Page is the page as it is first written.
type Page struct {
	Name     string // of the file
	Version  string
	Title    string
	Caution  string
	Printers []string // that were measured
	// Of a folder: what is shown before or without any script, and what stands beside
	// the page.
	Published bool
	Engine    bool
	Shown     map[string]template.HTML
	Files     []Link
	Notes     []string
}

// A Link leads to a file beside a published page.
type Link struct{ File, Words string }

// Write writes the page as HTML.
func (p Page) Write(w io.Writer) error { return layouts().ExecuteTemplate(w, "page", p) }

type tab struct {
	ID    string
	Words string
}

// A topChoice is what may lie on the ring, in the starting questions.
type topChoice struct {
	Value, Words string
	Picture      template.HTML
	First        bool
}

func helpers() template.FuncMap {
	return template.FuncMap{
		"picture":    pictureSVG,
		"boxes":      func(n int) []struct{} { return make([]struct{}, n) },
		"rowsOf":     rowsOf,
		"papers":     func() []string { return []string{"a4", "letter", "a3", "legal", "tabloid"} },
		"examples":   exampleNames,
		"otherKinds": func() []string { return design.Kinds()[1:] },
		"polygon":    polygon,
		"legCounts": func() map[int]string {
			out := map[int]string{}
			for n := joint.RingFewest; n <= joint.RingMost; n++ {
				out[n] = ""
			}
			return out
		},
		"tops": func() []topChoice {
			return []topChoice{
				{"glass", glassTop.With(), lidPicture("glass"), true},
				{"wood", woodTop.With(), lidPicture("wood"), false},
				{"none", noTop.With(), lidPicture("none"), false},
			}
		},
		"tabs": func() []tab {
			return []tab{
				{"cards", cardsTab.With()}, {"buying", buyingTab.With()}, {"sheets", sheetsTab.With()},
				{"glue", glueTab.With()}, {"figures", figuresTab.With()}, {"printer", printerTab.With()},
			}
		},
	}
}

func polygon(n int) template.HTML {
	var corners []geometry.Point
	for i := range n {
		corners = append(corners, geometry.Polar(9, math.Pi/2+2*math.Pi*(float64(i)+0.5*float64((n+1)%2))/float64(n)))
	}
	return template.HTML(fmt.Sprintf(`<svg viewBox="-11 -11 22 22" aria-hidden="true"><path class="sign" d="%s"/></svg>`, route(corners, true)))
}

// lidPicture is a sign for a kind of top: a frame with glass, wood or nothing on it.
func lidPicture(kind string) template.HTML {
	lid := map[string]string{
		"glass": `<path class="sign pane" d="M-10 -4H10V-6H-10Z"/><path class="sign" d="M4 -4L6 -6M1 -4L3 -6"/>`,
		"wood":  `<path class="sign fill" d="M-10 -4H10V-7H-10Z"/>`,
	}[kind]
	return template.HTML(`<svg viewBox="-12 -11 24 22" aria-hidden="true"><path class="sign" d="M-7 9L-5 -2H5L7 9M-6 -2H6V-4H-6Z"/>` + lid + `</svg>`)
}

func exampleNames() []string {
	entries, err := examples.Designs.ReadDir(".")
	if err != nil {
		return nil
	}
	return lists.Map(entries, func(e fs.DirEntry) string { return strings.TrimSuffix(e.Name(), ".toml") })
}

func exampleText(name string) string {
	data, err := examples.Designs.ReadFile(name + ".toml")
	if err != nil {
		return ""
	}
	return string(data)
}

func tableName(k design.Key) string { return wording.Look(tableNames, k) }
