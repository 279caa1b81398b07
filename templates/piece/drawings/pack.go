// Package drawings draws the templates and pictures of a piece, and puts them
// and all lists together as the pack that is printed.
package drawings

import (
	"slices"

	"rodsheet/templates"
	"rodsheet/templates/piece"
	"rodsheet/templates/piece/checks"
	"rodsheet/templates/piece/shop"
	"rodsheet/templates/piece/wording"
)

// Pack returns the whole pack, its sections in the order in which they are
// needed: the cover, the cut list, the settings, the full-size templates, the
// checks with all figures. withPlan adds the full-size plan of the ring to the
// templates.
//
// The error is a *measure.BoundError. There is none for a Piece that Work has
// returned without one.
func Pack(f checks.Findings, withPlan bool, s templates.Setting) (templates.Job, error) {
	pieces := f.Pieces()
	if len(pieces) == 0 {
		return templates.Job{}, nil
	}
	s.Unit = pieces[0].Design.Unit
	fullSize, err := fullSizeJob(pieces, withPlan, s)
	if err != nil {
		return templates.Job{}, err
	}
	plan := shop.NewPlan(pieces)
	sections := []templates.Section{
		coverJob(pieces),
		{Heading: say(cutListHeading), Pictures: boardPictures(pieces[0], plan.Cuts.Boards), Panels: wording.CutList(plan)},
		{Heading: say(settingsHeading), Panels: append(wording.Settings(plan), wording.GlueUp(plan)...)},
		fullSize,
		{Heading: say(checksHeading), Panels: wording.CheckPanels(f)},
	}
	return templates.Job{
		Title:    pieces[0].Design.Title,
		Sections: slices.DeleteFunc(sections, templates.Section.Empty),
	}, nil
}

// fullSizeJob returns all that is drawn at full size, nothing of it twice:
// what two sizes share is drawn once and says so.
func fullSizeJob(pieces []piece.Piece, plan bool, s templates.Setting) (templates.Section, error) {
	out := templates.Section{Heading: say(templatesHeading)}
	angles, err := anglesJob(pieces, s)
	if err != nil {
		return out, err
	}
	out.Append(angles)
	kinds := []kind{lapJob, bridleJob, legJob, holdingJob, padJob, topJob}
	if plan {
		kinds = append(kinds, planJob)
	}
	for _, k := range kinds {
		job, err := k.shared(pieces, s)
		if err != nil {
			return out, err
		}
		out.Append(job)
	}
	return out, nil
}
