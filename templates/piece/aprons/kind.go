package aprons

import (
	"rodsheet/geometry/measure"
	"rodsheet/templates/piece/assembly"
	"rodsheet/templates/piece/design"
	"rodsheet/templates/piece/kind"
)

// Kind returns the kind of piece.
func Kind() kind.Kind {
	return assembly.Kind(assembly.Spec[Model]{
		Solve: Solve, Faults: Faults, Envelopes: envelopes(), Mends: mends(),
		Grips: func(Model) map[measure.ID]assembly.Grip[Model] {
			return map[measure.ID]assembly.Grip[Model]{"height": {
				Key: "frame.height", Up: true,
				Figure: func(d *design.Design) *float64 { return &d.Frame.Height },
				At:     func(m Model) float64 { return m.Design.Frame.Height },
			}}
		},
	})
}

// mends are the figures whose change may mend a check.
func mends() map[measure.ID][]assembly.Turner {
	turner := func(key design.Key, at func(*design.Frame) *float64) assembly.Turner {
		return assembly.Turner{Key: key, Words: mendTexts[key], At: func(d *design.Design) *float64 { return at(&d.Frame) }}
	}
	// Planed stock has its own key: the designed figure then moves nothing.
	planed := func(key, milled design.Key, at, measure func(*design.Frame) *float64) (t, again assembly.Turner) {
		t, again = turner(key, at), turner(milled, measure)
		again.Words, again.Has = t.Words, func(d design.Design) bool { return *measure(&d.Frame) > 0 }
		return t, again
	}
	size, sizePlaned := planed("frame.legs.size", "frame.milled.legs",
		func(f *design.Frame) *float64 { return &f.Legs.Size }, func(f *design.Frame) *float64 { return &f.Milled.Legs })
	start := turner("frame.legs.taper-start", func(f *design.Frame) *float64 { return &f.Legs.Start })
	inset := turner("frame.aprons.inset", func(f *design.Frame) *float64 { return &f.Aprons.Inset })
	thick, thickPlaned := planed("frame.aprons.thickness", "frame.milled.aprons",
		func(f *design.Frame) *float64 { return &f.Aprons.Thickness }, func(f *design.Frame) *float64 { return &f.Milled.Aprons })
	tenon := turner("frame.aprons.tenon-length", func(f *design.Frame) *float64 { return &f.Aprons.Long })
	low := turner("frame.stretchers.inset", func(f *design.Frame) *float64 { return &f.Stretchers.Inset })
	lowThick, lowPlaned := planed("frame.stretchers.thickness", "frame.milled.stretchers",
		func(f *design.Frame) *float64 { return &f.Stretchers.Thickness }, func(f *design.Frame) *float64 { return &f.Milled.Stretchers })
	top := turner("frame.top.thickness", func(f *design.Frame) *float64 { return &f.Top.Thickness })
	corner := turner("frame.top.corner-size", func(f *design.Frame) *float64 { return &f.Top.CornerSize })
	corner.Has = func(d design.Design) bool { return d.Frame.Top.Corner != design.SharpCorner }
	return map[measure.ID][]assembly.Turner{
		"aprons.clash":            {size, sizePlaned, thick, thickPlaned},
		"aprons.end-on-leg":       {size, sizePlaned, inset, thick, thickPlaned},
		"aprons.tenons-meet":      {tenon, size, sizePlaned},
		"aprons.outside-mortise":  {inset, size, sizePlaned},
		"aprons.above-tenon":      {turner("frame.aprons.upper-cut", func(f *design.Frame) *float64 { return &f.Aprons.UpperCut })},
		"aprons.taper-below":      {start},
		"aprons.stretcher-end":    {low, lowThick, lowPlaned},
		"aprons.stretcher-tenons": {turner("frame.stretchers.tenon-length", func(f *design.Frame) *float64 { return &f.Stretchers.Long })},
		"aprons.stretcher-mortise": {
			low, lowThick, lowPlaned, turner("frame.legs.foot", func(f *design.Frame) *float64 { return &f.Legs.Foot }),
		},
		"aprons.taper-at-stretcher": {start, turner("frame.stretchers.height", func(f *design.Frame) *float64 { return &f.Stretchers.Height })},
		"aprons.over-arch":          {turner("frame.aprons.arch", func(f *design.Frame) *float64 { return &f.Aprons.Arch })},
		"aprons.screw-through":      {top},
		"aprons.screw-hold":         {top},
		"aprons.beside-screw":       {thick, thickPlaned},
		"aprons.behind-groove":      {thick, thickPlaned},
		"aprons.screw-bore":         {turner("frame.aprons.depth", func(f *design.Frame) *float64 { return &f.Aprons.Depth })},
		"aprons.overhang":           {turner("frame.top.overhang", func(f *design.Frame) *float64 { return &f.Top.Overhang }), corner},
		"aprons.tipping-load": {
			turner("frame.top.overhang", func(f *design.Frame) *float64 { return &f.Top.Overhang }),
			turner("frame.length", func(f *design.Frame) *float64 { return &f.Length }),
			turner("frame.width", func(f *design.Frame) *float64 { return &f.Width }),
		},
	}
}
