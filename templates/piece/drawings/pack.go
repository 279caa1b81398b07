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

// Pack returns the jobs of the whole pack in the order in which they are
// needed: the cover, the cut list, the settings, the full-size templates, the
// checks with all figures. withPlan adds the full-size plan of the ring to the
// templates.
//
// The error is a *measure.BoundError. There is none for a Piece that Work has
// returned without one.
func Pack(f checks.Findings, withPlan bool, s templates.Setting) ([]templates.Job, error) {
	pieces := f.Pieces
	if len(pieces) == 0 {
		return nil, nil
	}
	s.Unit = pieces[0].Design.Unit
	fullSize, err := fullSizeJob(pieces, withPlan, s)
	if err != nil {
		return nil, err
	}
	plan := shop.NewPlan(pieces)
	return slices.DeleteFunc([]templates.Job{
		coverJob(pieces),
		{Name: "cut-list", Title: "Cut list", Panels: wording.CutList(plan)},
		{Name: "settings", Title: "Settings", Panels: append(wording.Settings(plan), wording.GlueUp(plan)...)},
		fullSize,
		{Name: "figures", Title: "Checks and figures", Panels: f.Panels()},
	}, empty), nil
}

// empty reports whether a job would print nothing.
func empty(j templates.Job) bool {
	return len(j.Pictures) == 0 && len(j.Drawings) == 0 && len(j.Panels) == 0
}

// fullSizeJob returns all that is drawn at full size, nothing of it twice:
// what two sizes share is drawn once and says so.
func fullSizeJob(pieces []piece.Piece, plan bool, s templates.Setting) (templates.Job, error) {
	out := templates.Job{Name: "templates", Title: "Templates"}
	angles, err := anglesJob(pieces, s)
	if err != nil {
		return out, err
	}
	join(&out, angles)
	kinds := []kind{lapJob, bridleJob, legJob, holdingJob, padJob, topJob}
	if plan {
		kinds = append(kinds, planJob)
	}
	for _, k := range kinds {
		job, err := k.shared(pieces, s)
		if err != nil {
			return out, err
		}
		join(&out, job)
	}
	return out, nil
}

// join puts the drawings and panels of part behind those of whole.
func join(whole *templates.Job, part templates.Job) {
	whole.Drawings = append(whole.Drawings, part.Drawings...)
	whole.Panels = append(whole.Panels, part.Panels...)
}
