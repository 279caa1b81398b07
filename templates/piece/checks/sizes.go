package checks

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"rodsheet/geometry/measure"
	"rodsheet/templates"
	"rodsheet/templates/piece"
	"rodsheet/templates/piece/design"
	"rodsheet/templates/piece/shop"
	piecewording "rodsheet/templates/piece/wording"
	"rodsheet/templates/wording"
)

// Settings that differ by less than this are rather a slip than a wish, and
// cost a second setting up all the same (common practice, no source).
const (
	nearLength = 0.3           // mm
	nearAngle  = math.Pi / 600 // 0.3°
)

// shared returns the settings that several sizes may share, in the order of
// the bench.
func shared(p piece.Piece) []templates.Figure {
	var g Group
	lap := p.EndLap()
	fromSquare := lap.OffSquare()
	g.add("width of the stretchers", measure.Length(p.Frame.Ring.Width))
	g.add("depth of the stretchers", measure.Length(p.Frame.Ring.Depth))
	g.add("breadth of the legs", measure.Length(p.Frame.Leg.Breadth))
	g.add("gauge at the laps, from square", measure.Angle(fromSquare))
	g.add("blade height at the laps", measure.Length(lap.BladeHeight()))
	g.add("spacer at the laps", measure.Length(lap.Spacer()))
	g.add("stop at the laps", measure.Length(lap.Stop()))
	g.add("tenon", measure.Length(p.Bridle.Tenon))
	g.add(sharedSplay, measure.Angle(p.Frame.Leg.Splay))
	if p.Taper != nil {
		g.add("taper of one face", measure.Angle(p.Taper.ToEdge()))
	}
	return g.Figures
}

const sharedSplay = "splay, gauge at heads, feet and bridles"

// A sharer is a size and its figure for one setting.
type sharer struct {
	piece piece.Piece
	value measure.Quantity
}

// checkAll returns the checks over all sizes of one design: of the boards for
// them, and where there are several of the settings that they share.
func checkAll(pieces []piece.Piece) []Check {
	return append(checkBoards(pieces), sharing(pieces)...)
}

// checkBoards asks whether the boards that are listed are enough. The cutting
// plan is a good one and not always the best, so that too few are a doubt.
func checkBoards(pieces []piece.Piece) []Check {
	plan := shop.Boards(pieces)
	if plan == nil {
		return nil
	}
	count, names := len(plan.Missed), piecewording.Missing(plan.NoRoom())
	return []Check{limited("boards for all parts", "parts without room", measure.Number(float64(count)), atMost, measure.Number(0), Warn).with(
		"The cutting plan finds room for every part, spare and test piece.",
		"The cutting plan finds no room on the boards listed for: "+names+". Have another board at hand.")}
}

// sharing returns the checks of the settings of several sizes, with the mends
// that leave fewer of them in doubt.
func sharing(pieces []piece.Piece) []Check {
	if len(pieces) < 2 {
		return nil
	}
	all := checkSettings(pieces)
	for i := range all {
		all[i].Fixes = slices.DeleteFunc(all[i].Fixes, func(m Fix) bool {
			return inDoubt(checkSettings(exchanged(pieces, m.Design))) >= inDoubt(all)
		})
	}
	return all
}

// exchanged returns the pieces with that of one size worked out from another
// design.
func exchanged(pieces []piece.Piece, d design.Design) []piece.Piece {
	out := slices.Clone(pieces)
	for i, p := range pieces {
		if w, err := piece.Solve(d); err == nil && p.Design.Size == d.Size {
			out[i] = w
		}
	}
	return out
}

func inDoubt(checks []Check) int {
	n := 0
	for _, c := range checks {
		if c.Grade != Pass {
			n++
		}
	}
	return n
}

// checkSettings returns the settings that two or more sizes share, and those
// that miss it by so little that they may as well be made equal. Settings that
// plainly differ are not named.
func checkSettings(pieces []piece.Piece) []Check {
	var names []string
	by := map[string][]sharer{}
	for _, p := range pieces {
		for _, f := range shared(p) {
			if by[f.Name] == nil {
				names = append(names, f.Name)
			}
			by[f.Name] = append(by[f.Name], sharer{p, f.Value})
		}
	}
	var out []Check
	for _, name := range names {
		out = append(out, checkShared(name, by[name])...)
	}
	return out
}

// checkShared returns the checks of one setting: one for each pair of sizes
// that nearly agree, or else one for all that do agree.
func checkShared(name string, all []sharer) []Check {
	var near []Check
	best := []sharer{}
	for i, a := range all {
		same := []sharer{a}
		for _, b := range all[i+1:] {
			switch off := math.Abs(a.value.Value - b.value.Value); {
			case off <= piece.Slip:
				same = append(same, b)
			case off < nearMost(a.value.Kind):
				near = append(near, nearMiss(name, a, b))
			}
		}
		if len(same) > len(best) {
			best = same
		}
	}
	if near != nil || len(best) < 2 {
		return near
	}
	words := fmt.Sprintf("%s: %s for %s; set it once and cut them together.",
		capital(name), best[0].value.Text(best[0].piece.Design.Unit), sizeNames(best))
	return []Check{{Name: "shared: " + name, Words: words}}
}

// nearMost is the difference below which two settings are a near miss.
func nearMost(k measure.Kind) float64 {
	if k == measure.KindAngle {
		return nearAngle
	}
	return nearLength
}

// nearMiss is the check of two sizes that all but agree.
func nearMiss(name string, a, b sharer) Check {
	u := a.piece.Design.Unit
	off := measure.Quantity{Kind: a.value.Kind, Value: math.Abs(a.value.Value - b.value.Value)}
	c := Check{
		Name: "nearly shared: " + name, Grade: Warn,
		Figure: "difference", Value: off, Relation: atMost, Limit: measure.Quantity{Kind: off.Kind},
		Words: fmt.Sprintf("%s: %s for %s but %s for %s. Make them equal and set once.",
			capital(name), a.value.Text(u), sizeName(a.piece), b.value.Text(u), sizeName(b.piece)),
	}
	if a.value.Kind == measure.KindAngle && b.piece.Design.Legs.Lean == design.BySplay && name == sharedSplay {
		d := b.piece.Design
		d.Legs.Given = a.value.Value
		if w, err := piece.Solve(d); err == nil && !worsened(b.piece, w) {
			c.Fixes = []Fix{{"splay the legs of " + sizeName(b.piece) + " by " + a.value.Text(u), d}}
		}
	}
	return c
}

// worsened reports whether any check of a piece comes out worse than before.
func worsened(before, p piece.Piece) bool {
	grades := gradesOf(withSolids(before).ask()...)
	return slices.ContainsFunc(slices.Concat(withSolids(p).ask()...), func(c Check) bool { return worse(grades, c) })
}

// sizeNames joins the names of the sizes.
func sizeNames(all []sharer) string {
	names := make([]string, len(all))
	for i, s := range all {
		names[i] = sizeName(s.piece)
	}
	return wording.And(names...)
}

func sizeName(p piece.Piece) string {
	if p.Design.Size == "" {
		return "the size without a name"
	}
	return p.Design.Size
}

// capital begins a sentence with s.
func capital(s string) string {
	if s == "" {
		return s
	}
	return strings.ToUpper(s[:1]) + s[1:]
}
