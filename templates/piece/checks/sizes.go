package checks

import (
	"math"
	"slices"

	"rodsheet/geometry/lists"
	"rodsheet/geometry/measure"
	"rodsheet/templates/piece"
	"rodsheet/templates/piece/design"
	"rodsheet/templates/piece/kind"
	"rodsheet/templates/piece/shop"
)

// Settings that differ by less than this are rather a slip than a wish, and
// cost a second setting up all the same (common practice, no source).
const (
	nearLength = 0.3           // mm
	nearAngle  = math.Pi / 600 // 0.3°
)

// settings returns those that several sizes may share, in the order of the bench.
func settings(p piece.Piece) []Figure {
	lap := p.EndLap()
	out := []Figure{
		{ID: "stretcher-width", Value: measure.Length(p.Frame.Ring.Width)},
		{ID: "stretcher-depth", Value: measure.Length(p.Frame.Ring.Depth)},
		{ID: "leg-breadth", Value: measure.Length(p.Frame.Leg.Breadth)},
		{ID: "lap-off-square", Value: measure.Angle(lap.OffSquare())},
		{ID: "lap-blade-height", Value: measure.Length(lap.BladeHeight())},
		{ID: "lap-spacer", Value: measure.Length(lap.Spacer())},
		{ID: "lap-stop", Value: measure.Length(lap.Stop())},
		{ID: "tenon", Value: measure.Length(p.Bridle.Tenon)},
		{ID: splaySetting, Value: measure.Angle(p.Frame.Leg.Splay)},
	}
	if p.Taper != nil {
		out = append(out, Figure{ID: "taper", Value: measure.Angle(p.Taper.ToEdge())})
	}
	return out
}

const splaySetting measure.ID = "splay"

// AllBoards asks whether the boards that are listed are enough for all sizes: none are
// where there is no plan. The cutting plan is a good one and not always the best, so that
// too few are a doubt.
func AllBoards(boards *shop.CuttingPlan) []Check {
	if boards == nil {
		return nil
	}
	c := limited("without-room", measure.Number(float64(len(boards.Missed))), measure.IsAtMost, measure.Number(0), kind.Warn)
	c.Question, c.Found.Missing = "boards", boards.NoRoom()
	return []Check{c}
}

// sharing returns the checks of the settings of several sizes, with the fixes
// that leave fewer of them in doubt and make no check of their size worse.
func sharing(models []model) []Check {
	if len(models) < 2 {
		return nil
	}
	all := checkSettings(models)
	for i := range all {
		all[i].Fixes = slices.DeleteFunc(all[i].Fixes, func(f Fix) bool {
			changed, ok := exchanged(models, all[i].Of.Sizes[1]-1, f.Design)
			return !ok || inDoubt(checkSettings(changed)) >= inDoubt(all)
		})
	}
	return all
}

// exchanged returns the models with one of them worked out from another design,
// and false where that makes any of its own checks worse.
func exchanged(models []model, i int, d design.Design) ([]model, bool) {
	p, err := piece.Solve(d)
	if err != nil {
		return nil, false
	}
	out := slices.Clone(models)
	out[i] = withSolids(p)
	grades := gradesOf(slices.Concat(models[i].ask()...))
	return out, !slices.ContainsFunc(slices.Concat(out[i].ask()...), func(c Check) bool { return grades.Worse(c.ID(), c.Grade) })
}

func inDoubt(checks []Check) int {
	return lists.Count(checks, func(c Check) bool { return c.Grade != kind.Pass })
}

// checkSettings returns the settings that two or more sizes share, and those
// that miss it by so little that they may as well be made equal. Settings that
// plainly differ are not named.
func checkSettings(models []model) []Check {
	var order []measure.ID
	by := map[measure.ID]map[int]measure.Quantity{}
	for i, m := range models {
		for _, f := range settings(m.Piece) {
			if by[f.ID] == nil {
				order = append(order, f.ID)
				by[f.ID] = map[int]measure.Quantity{}
			}
			by[f.ID][i] = f.Value
		}
	}
	return lists.Flat(order, func(id measure.ID) []Check { return checkShared(id, models, by[id]) })
}

// checkShared returns the checks of one setting, by the places of the sizes that
// have it: one for each pair of sizes that nearly agree, or else one for all that
// do agree.
func checkShared(id measure.ID, models []model, values map[int]measure.Quantity) []Check {
	var near []Check
	var best []int
	for i := range models {
		a, has := values[i]
		if !has {
			continue
		}
		same := []int{i}
		for j := i + 1; j < len(models); j++ {
			b, has := values[j]
			off := math.Abs(a.Value - b.Value)
			switch {
			case has && off <= piece.Slip:
				same = append(same, j)
			case has && off < nearMost(a.Kind):
				near = append(near, nearMiss(id, models, i, j, a, b))
			}
		}
		if len(same) > len(best) {
			best = same
		}
	}
	if near != nil || len(best) < 2 {
		return near
	}
	c := Check{Question: "shared", Of: Subject{Setting: id}, Found: remark(Holds, values[best[0]])}
	for _, i := range best {
		c.Found.Names = append(c.Found.Names, models[i].Design.Size)
	}
	return []Check{c}
}

// nearMost is the difference below which two settings are a near miss.
func nearMost(k measure.Kind) float64 {
	if k == measure.KindAngle {
		return nearAngle
	}
	return nearLength
}

// nearMiss is the check of two sizes that all but agree. A splay that is given may
// be made that of the other.
func nearMiss(id measure.ID, models []model, i, j int, a, b measure.Quantity) Check {
	off := measure.Quantity{Kind: a.Kind, Value: math.Abs(a.Value - b.Value)}
	c := Check{
		Question: "nearly-shared", Of: Subject{Setting: id, Sizes: [2]int{i + 1, j + 1}}, Grade: kind.Warn,
		Figure: "difference", Value: off, Relation: measure.IsAtMost, Limit: measure.Quantity{Kind: off.Kind},
		Found: remark(Lacks, a, b),
	}
	c.Found.Names = []string{models[i].Design.Size, models[j].Design.Size}
	if d := models[j].Design; id == splaySetting && d.Legs.Lean == design.BySplay {
		d.Legs.Given = a.Value
		c.Fixes = []Fix{{Turn: kind.Turn{Key: "legs.splay", From: b, To: a}, Sized: true, Design: d}}
	}
	return c
}
