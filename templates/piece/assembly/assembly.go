// Package assembly makes a kind of piece of what its sizes are built of: given the solids,
// figures, checks, cut list and drawings of one size, it gives the pack, the views and the
// fixes of all of them.
package assembly

import (
	"slices"
	"sync"

	"rodsheet/geometry/lists"
	"rodsheet/geometry/measure"
	"rodsheet/geometry/solid"
	"rodsheet/templates"
	"rodsheet/templates/piece"
	"rodsheet/templates/piece/checks"
	"rodsheet/templates/piece/design"
	"rodsheet/templates/piece/drawings"
	"rodsheet/templates/piece/kind"
	"rodsheet/templates/piece/shop"
	"rodsheet/templates/piece/wording"
	plain "rodsheet/templates/wording"
)

// A Part is one part of a piece as it stands in the room, in mm: the floor is z = 0, the
// front looks to −y, x runs to the right.
type Part struct {
	solid.Part
	Kind measure.ID // "side"; of several alike the same
	Name string     // in words, with its number and finished size
}

// A Model is one size of a piece, worked out.
type Model interface {
	Decided() design.Design
	Parts() []Part
	Groups() []kind.Group
	Checks() []kind.Check // without their fixes
	Cuts() []shop.CutRow
	Wares() []shop.Ware
	// MainSizes are names and figures for the cover, no name twice.
	MainSizes() [][2]string
	// Dimensions are what the keys of the design fix, and the handles that move them, in
	// kind.FromAbove and kind.FromFront.
	Dimensions(kind.Look) ([]kind.Dimension, []kind.Handle)
	Follows() map[design.Key]measure.Quantity
}

// A Jointed model has a joint to be looked at close up: its middle, and how far round it is
// shown, mm.
type Jointed interface {
	Joint() (at solid.Vec, reach float64)
}

// A Spec is what a kind of piece is made of.
type Spec[M Model] struct {
	// Judge works a design out, and returns an error for each figure that no piece of the
	// kind can have: a *measure.BoundError. What hangs on a key in doubt, or on a figure
	// with an error, is not asked; with an error the model is none.
	Judge func(design.Design, design.Doubts) (M, []error)
	// Envelopes come between what is bought and the record, in the order of the work.
	Envelopes []Envelope[M]
	// Mends are the keys of the design whose figures may mend a check of an ID.
	Mends map[measure.ID][]design.Key
	// Mending are the words for that: "make the sides %s thick".
	Mending map[design.Key]plain.Text
	// Usual are the figures from which a search starts where the design leaves them open.
	Usual map[design.Key]func(design.Design) float64
	Grips func(M) map[measure.ID]Grip[M]
}

// An Envelope is one section of the pack. Fill returns what one size puts into it; what
// several sizes have alike is printed once.
type Envelope[M Model] struct {
	ID      measure.ID
	Heading plain.Text
	Milled  func(M) bool // whether it hangs on the stock as it was planed; nil: none does
	Fill    func(M, templates.Setting) (templates.Section, error)
}

// A Grip says which figure a handle moves, and where it stands on its axis.
type Grip[M Model] struct {
	Key design.Key
	Up  bool
	At  func(M) float64 // nil: as high as the figure says
}

// Kind returns the kind of piece of a spec.
func Kind[M Model](s Spec[M]) kind.Kind {
	return kind.Kind{Sizes: func() kind.Sizes { return &sizes[M]{Spec: s} }}
}

// sizes are kind.Sizes.
type sizes[M Model] struct {
	Spec[M]
	models []M
}

func (s *sizes[M]) Add(d design.Design, doubts design.Doubts) []error {
	m, errs := s.Judge(d, doubts)
	s.models = append(s.models, m)
	return errs
}

func (s *sizes[M]) Work() kind.Work { return workOf(s.Spec, s.models) }

type work[M Model] struct {
	Spec[M]
	models []M
	report func() kind.Report
}

func workOf[M Model](s Spec[M], models []M) work[M] {
	w := work[M]{Spec: s, models: models}
	w.report = sync.OnceValue(w.examine)
	return w
}

func (w work[M]) Only(size int) kind.Work { return workOf(w.Spec, w.models[size:size+1]) }

func (w work[M]) Report() kind.Report { return w.report() }

func (w work[M]) examine() kind.Report {
	var out kind.Report
	for _, m := range w.models {
		out.Sizes = append(out.Sizes, kind.Size{Design: m.Decided(), Checks: w.mended(m), Groups: m.Groups()})
	}
	if d := w.designs()[0]; len(d.Wood.Boards) > 0 { // else there is nothing to plan on
		out.Together = wording.Checks(checks.AllBoards(w.plan().Cuts.Boards), d.Unit)
	}
	return out
}

func (w work[M]) designs() []design.Design { return lists.Map(w.models, M.Decided) }

func (w work[M]) sizes() []string {
	return lists.Map(w.designs(), func(d design.Design) string { return d.Size })
}

// screwed reports whether a top is screwed on.
func (w work[M]) screwed() bool {
	return slices.ContainsFunc(w.models, func(m M) bool {
		return slices.ContainsFunc(m.Wares(), func(x shop.Ware) bool { return x.What == shop.TopScrew })
	})
}

func (w work[M]) plan() shop.Plan {
	var rows []shop.CutRow
	var wares []shop.Ware
	for _, m := range w.models {
		rows = append(rows, m.Cuts()...)
		wares = append(wares, m.Wares()...)
	}
	return shop.ListPlan(w.designs(), rows, wares)
}

func (w work[M]) Buying() [][]string { return wording.BuyingRecords(w.plan()) }

func (w work[M]) Follows(size int) map[design.Key]measure.Quantity { return w.models[size].Follows() }

func (w work[M]) Grips(size int) map[measure.ID]kind.Grip {
	out := map[measure.ID]kind.Grip{}
	for id, g := range w.Spec.Grips(w.models[size]) {
		out[id] = kind.Grip{Key: g.Key, Up: g.Up, At: func(d design.Design) (float64, bool) {
			m, errs := w.Judge(d, nil)
			if len(errs) > 0 {
				return 0, false
			}
			if g.At == nil {
				at, _ := g.Key.Figure()
				return *at(&d), true
			}
			return g.At(m), true
		}}
	}
	return out
}

// Pack returns the pack in its envelopes: cover, wood and buying, those of the kind, the
// record.
func (w work[M]) Pack(o kind.Options, s templates.Setting) (templates.Job, error) {
	designs, plan := w.designs(), w.plan()
	s.Unit, s.Proved = designs[0].Unit, true
	all := []drawings.Envelope{w.cover(), drawings.Wood(plan)}
	for k, e := range w.Envelopes {
		all = append(all, drawings.Envelope{ID: e.ID, Heading: e.Heading, For: kind.Bench, Milled: e.Milled != nil && slices.ContainsFunc(w.models, e.Milled), Fill: func() (templates.Section, error) {
			section, err := w.filled(e, s)
			if k == len(w.Envelopes)-1 {
				section.Cards = append(section.Cards, finish(len(w.models), w.screwed()))
			}
			return section, err
		}})
	}
	job, err := drawings.Packed(designs[0].Title, o, append(all, drawings.Record(w.report())))
	number := 0
	for _, section := range job.Sections {
		for i := range section.Cards {
			number++
			section.Cards[i].Number = number
		}
	}
	return job, err
}

// filled returns what all sizes put into an envelope. A card of one of several sizes
// says of which.
func (w work[M]) filled(e Envelope[M], s templates.Setting) (templates.Section, error) {
	jobs, sizes := make([]templates.Section, len(w.models)), w.sizes()
	cards := make([][]templates.Card, len(w.models))
	for i, m := range w.models {
		job, err := e.Fill(m, s)
		if err != nil {
			return job, err
		}
		jobs[i], cards[i] = job, job.Cards
	}
	out := drawings.Shared(sizes, jobs)
	out.Cards = sharedCards(sizes, cards)
	return out, nil
}

// sharedCards returns the cards of all sizes, step by step where each size has as many:
// the same set-up comes once. One of a single size says of which, and calls for the
// templates of that.
func sharedCards(sizes []string, all [][]templates.Card) []templates.Card {
	var out []templates.Card
	add := func(l piece.Lot[templates.Card], ticks []templates.Tick) {
		c := l.What
		c.Heading, c.Ticks = piece.WithSizes(c.Heading, l.Sizes, len(sizes)), ticks
		if len(l.Sizes) == 1 && len(sizes) > 1 {
			c.Templates = slices.Clone(c.Templates)
			for i := range c.Templates {
				c.Templates[i].Size = l.Sizes[0]
			}
		}
		out = append(out, c)
	}
	if slices.ContainsFunc(all, func(own []templates.Card) bool { return len(own) != len(all[0]) }) {
		for i, own := range all {
			for _, c := range own {
				add(piece.Lot[templates.Card]{What: c, Sizes: sizes[i : i+1]}, c.Ticks)
			}
		}
		return out
	}
	for step := range all[0] {
		for _, l := range piece.Lots(sizes, func(i int) []templates.Card { return all[i][step : step+1] }, sameSetUp) {
			var ticks []templates.Tick
			for i, size := range sizes {
				if !slices.Contains(l.Sizes, size) {
					continue
				}
				for _, t := range all[i][step].Ticks {
					if len(l.Sizes) > 1 {
						t.Text = piece.WithSizes(t.Text, sizes[i:i+1], len(sizes))
					}
					ticks = append(ticks, t)
				}
			}
			add(l, ticks)
		}
	}
	return out
}

// sameSetUp reports whether two cards say the same of all but the parts to tick off; what
// is drawn follows from what is said.
func sameSetUp(a, b templates.Card) bool {
	return a.Heading == b.Heading && slices.Equal(a.Figures, b.Figures) && slices.Equal(a.Text, b.Text) &&
		a.Test == b.Test && a.Caution == b.Caution && slices.Equal(a.Templates, b.Templates)
}

// cover shows how the piece looks, how large it is and what is in doubt.
func (w work[M]) cover() drawings.Envelope {
	looks, rows := make([]templates.Picture, len(w.models)), make([][][2]string, len(w.models))
	for i, m := range w.models {
		looks[i], rows[i] = cornerView(m.Parts()), m.MainSizes()
	}
	return drawings.Cover(w.designs(), looks, rows, w.report().DoubtPanels())
}
