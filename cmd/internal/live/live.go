// Package live answers what a page in the browser asks about one design: it changes the
// text of the design, draws the piece, lists its checks, cards and sheets. A request
// holds all that it goes by. Nothing is kept between two of them but what was worked
// out last, which the same text gives again.
//
// The page is served from this machine (Server), or runs from a folder with the same
// code built for the browser. Figures, sentences and files are those of the commands.
package live

import (
	"context"
	"errors"
	"slices"
	"sync"

	"rodsheet/geometry/measure"
	"rodsheet/render/lettering"
	"rodsheet/render/page"
	"rodsheet/templates/piece/design"
	"rodsheet/templates/piece/kind"
	"rodsheet/templates/piece/kinds"
)

// A Desk answers requests. Its fields are what it borrows from the command line.
type Desk struct {
	// Sheets lays the pack of a design, and Run carries out a command line; both read
	// the text in place of the file that is named.
	Sheets func(ctx context.Context, args []string, text []byte) (page.Document, error)
	Run    func(ctx context.Context, args []string, text []byte) (out []byte, complaint string)
	memo   memo
}

type memo struct {
	sync.Mutex
	text    string
	works   works
	sheets  string // the command line of doc
	doc     page.Document
	problem error
}

// A Request is a design as the page has it, what is to be changed in it and what is to
// be shown of it.
type Request struct {
	Text string `json:"text"`
	Name string `json:"name"` // of the file, "" for none

	Changes []Change `json:"changes"` // the newest last
	Fix     *Fix     `json:"fix"`
	Drag    *Drag    `json:"drag"`
	Resize  *Resize  `json:"resize"`
	Begin   *Begin   `json:"begin"`
	Merge   *Merge   `json:"merge"`
	Example string   `json:"example"`

	Size  string   `json:"size"` // that is shown
	Own   string   `json:"own"`  // whose fields are shown, "" for those of all sizes
	Look  Look     `json:"look"`
	Print Print    `json:"print"`
	Sheet int      `json:"sheet"` // from 1
	Want  []string `json:"want"`  // names of elements of the page
}

// A Change is that of one key.
type Change struct {
	Size  string     `json:"size"`
	Key   design.Key `json:"key"`
	Row   int        `json:"row"`
	Value string     `json:"value"`
}

// A Resize adds a size or a row of a table, or takes one away.
type Resize struct {
	Add    string     `json:"add"` // name of a size
	Remove string     `json:"remove"`
	Table  design.Key `json:"table"` // whose row goes
	Row    int        `json:"row"`
}

// A Merge brings what stands in the file together with what was changed here since
// Base was read.
type Merge struct {
	Base   string `json:"base"`
	Theirs string `json:"theirs"`
}

// Look is how the view at a corner is turned, in radians, and how far it is apart.
type Look struct {
	Aside float64 `json:"aside"`
	Above float64 `json:"above"`
	Apart float64 `json:"apart"`
	Close bool    `json:"close"`
}

// An Answer is the design after the change and the elements of the page that were asked
// for, as HTML by their names. Where the change was not sound Text is as it was, and
// Faults say why.
type Answer struct {
	Text    string            `json:"text"`
	Faults  []Fault           `json:"faults"`
	Pending []Change          `json:"pending"` // changes that wait for another one
	Swap    map[string]string `json:"swap"`
	Size    string            `json:"size"`
	Title   string            `json:"title"`
	Clash   []string          `json:"clash"` // keys that two hands changed
}

// A Fault is one thing to put right, at the field of a key where it has one.
type Fault struct {
	Size string     `json:"size"`
	Key  design.Key `json:"key"`
	Text string     `json:"text"`
	Hint string     `json:"hint"`
}

type works struct {
	text   string
	design design.File
	work   kind.Work // nil where the text is no sound design
	found  kind.Report
}

// Ask answers a request.
func (d *Desk) Ask(ctx context.Context, r Request) Answer {
	text, w, pending, clash, err := d.changed(r)
	a := Answer{Text: text, Pending: pending, Faults: faults(err), Swap: map[string]string{}, Clash: clash, Size: r.Size}
	if w.work != nil {
		p := w.sized(r.Size)
		a.Title = w.design.Title
		a.Size = w.found.Sizes[p].Design.Size
		all := elements()
		in := newAsked(ctx, d, r, text, w, p)
		for _, name := range r.Want {
			if draw, ok := all[name]; ok {
				a.Swap[name] = string(draw(in))
			}
		}
	} else if slices.Contains(r.Want, "form") {
		a.Swap["form"] = string(formOf(newAsked(ctx, d, r, text, w, 0)))
	}
	return a
}

type asked struct {
	desk *Desk
	ctx  context.Context
	Request
	text string
	works
	shown int               // the size
	stand func() kind.Stand // of that size, put together when it is first drawn
	// follows are the figures of that size that follow from others.
	follows func() map[design.Key]measure.Quantity
}

func newAsked(ctx context.Context, d *Desk, r Request, text string, w works, shown int) asked {
	return asked{d, ctx, r, text, w, shown, sync.OnceValue(func() kind.Stand { return w.work.Stand(shown) }),
		sync.OnceValue(func() map[design.Key]measure.Quantity {
			if w.work == nil {
				return nil
			}
			return w.work.Follows(shown)
		})}
}

// sized returns the place of a size, the first where there is none of the name.
func (w works) sized(name string) int {
	return max(0, slices.IndexFunc(w.found.Sizes, func(s kind.Size) bool { return s.Design.Size == name }))
}

// solve works a text out, unless it was the last one. The error is of type
// design.Mistakes.
func (d *Desk) solve(text string) (works, error) {
	d.memo.Lock()
	defer d.memo.Unlock()
	if text == d.memo.text && d.memo.works.work != nil {
		return d.memo.works, nil
	}
	w, err := solve(text)
	if err == nil {
		d.memo.text, d.memo.works = text, w
	}
	return w, err
}

func solve(text string) (works, error) {
	var sizes kinds.Sizes
	f, err := design.ReadLettered([]byte(text), sizes.Add, lettering.Missing)
	if err != nil {
		return works{}, err
	}
	return works{text: text, design: f}.worked(sizes.Work()), nil
}

func (w works) worked(work kind.Work) works {
	w.work, w.found = work, work.Report()
	return w
}

// in returns the same with its figures in another unit.
func (w works) in(u measure.Unit) (works, error) {
	w.design.Unit, w.design.Sizes = u, slices.Clone(w.design.Sizes)
	for i := range w.design.Sizes {
		w.design.Sizes[i].Unit = u
	}
	work, err := kinds.Solve(w.design.Sizes)
	if err != nil {
		return works{}, err
	}
	return w.worked(work), nil
}

// faults lists what an error says, for the fields that it is about.
func faults(err error) []Fault {
	var mistakes design.Mistakes
	if !errors.As(err, &mistakes) {
		if err != nil {
			return []Fault{{Text: err.Error()}}
		}
		return nil
	}
	var out []Fault
	for _, m := range mistakes {
		if len(m.Sizes) == 0 {
			out = append(out, Fault{"", m.Key, m.Text, m.Hint})
		}
		for _, size := range m.Sizes {
			out = append(out, Fault{size, m.Key, m.Text, m.Hint})
		}
	}
	return out
}
