package kinds

import (
	"sync"

	"rodsheet/geometry"
	"rodsheet/geometry/measure"
	"rodsheet/templates"
	"rodsheet/templates/piece"
	"rodsheet/templates/piece/checks"
	"rodsheet/templates/piece/design"
	"rodsheet/templates/piece/drawings"
	"rodsheet/templates/piece/kind"
	"rodsheet/templates/piece/shop"
	"rodsheet/templates/piece/wording"
)

func ring() kind.Kind {
	return kind.Kind{Sizes: func() kind.Sizes { return new(ringSizes) }, Plan: true}
}

// ringSizes are the pieces of a ringWork, their stops not shared yet.
type ringSizes struct{ pieces, written []piece.Piece }

func (s *ringSizes) Add(d design.Design, doubts design.Doubts) []error {
	p, errs := piece.Judge(d, doubts)
	s.pieces = append(s.pieces, p)
	if d.Unit != d.Written {
		d.Unit = d.Written
		var more []error
		p, more = piece.Judge(d, doubts)
		errs = append(errs, more...)
	}
	s.written = append(s.written, p)
	return errs
}

func (s *ringSizes) Work() kind.Work {
	return ringOf(piece.ShareStops(s.pieces), piece.ShareStops(s.written))
}

// A ringWork is a ring on splayed legs worked out.
type ringWork struct {
	pieces, written []piece.Piece // as they are printed, and in the unit of their file
	found           func() checks.Findings
}

func ringOf(pieces, written []piece.Piece) ringWork {
	return ringWork{pieces, written, sync.OnceValue(func() checks.Findings {
		if pieces[0].Design.Unit == written[0].Design.Unit {
			return checks.Examine(pieces)
		}
		return checks.ExamineAs(written, pieces)
	})}
}

func (w ringWork) Only(size int) kind.Work {
	return ringOf(w.pieces[size:size+1], w.written[size:size+1])
}

func (w ringWork) Report() kind.Report { return wording.Report(w.found()) }

func (w ringWork) Pack(o kind.Options, s templates.Setting) (templates.Job, error) {
	return drawings.Pack(w.found(), o, s)
}

func (w ringWork) Pictures() []templates.Picture { return drawings.Pictures(w.pieces) }

func (w ringWork) Buying() [][]string { return wording.BuyingRecords(shop.NewPlan(w.pieces)) }

func (w ringWork) Stand(size int) kind.Stand {
	return drawings.NewStand(w.pieces[size], w.found().Sizes[size].Checks)
}

func (w ringWork) Follows(size int) map[design.Key]measure.Quantity {
	p := w.pieces[size]
	out := map[design.Key]measure.Quantity{
		"legs.splay":        measure.Angle(p.Frame.Leg.Splay),
		"legs.foot-circle":  measure.Length(2 * p.FootRadius()),
		"legs.foot-spread":  measure.Length(p.FootSpread()),
		"legs.height":       measure.Length(p.Overall()),
		"legs.frame-height": measure.Length(p.Frame.Leg.Height),
		"legs.mid-to-leg":   measure.Length(p.Frame.Leg.At),
		"legs.tenon":        measure.Length(p.Bridle.Tenon),
		"legs.clear":        measure.Length(p.Frame.Clearance()),
	}
	if p.Design.Top.Kind != design.NoTop && p.Design.Top.Outline == design.RoundTop {
		out["top.diameter"] = measure.Length(2 * p.TopRadius())
	}
	return out
}

// Grips are the foot, the rim of the top and the height.
func (w ringWork) Grips(size int) map[measure.ID]kind.Grip {
	p := w.pieces[size]
	at := func(of func(piece.Piece) float64) func(design.Design) (float64, bool) {
		return func(d design.Design) (float64, bool) {
			q, err := piece.Solve(d)
			if err != nil {
				return 0, false
			}
			return of(q), true
		}
	}
	return map[measure.ID]kind.Grip{
		"foot":   {Key: drawings.LeanKey(p), At: at(func(p piece.Piece) float64 { return -p.FootPoint(0).X })},
		"height": {Key: drawings.HeightKey(p), At: at(piece.Piece.Overall), Up: true},
		"rim":    {Key: drawings.RimKey(p), At: at(func(p piece.Piece) float64 { return -geometry.Bounds(p.TopCorners()...).Min.X })},
	}
}
