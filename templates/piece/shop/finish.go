package shop

import "rodsheet/templates/piece/design"

func sandParts(p sized) (row, bool) {
	return plain(Operation{
		Do: Sand, What: note("step.sand-parts"),
		Then: notes(note("sand-before-glue"), note("crisp-joints"), note("ease-where")),
		Test: note("joints-as-before"), Caution: "dust",
	}, p.stretchers.real(), p.legs.real()), true
}

func sandAll(p sized) (row, bool) {
	o := Operation{Do: Sand, What: note("step.sand-all"), Then: notes(note("sand-after-glue"), note("ease-feet")), Caution: "dust"}
	if p.Design.Top.Kind == design.WoodTop {
		o.Then = o.Then.with(note("sand-top"))
	}
	return plain(o), true
}

func finishAll(p sized) (row, bool) {
	o := Operation{Do: Finish, What: note("step.finish"), Then: notes(note("finish-by-sheet")), Caution: "rags"}
	switch top := p.Design.Top; {
	case top.Kind == design.WoodTop:
		o.Then = o.Then.with(note("finish-both-faces"))
	case bonds(p):
		o.Then = o.Then.with(note("bare-bond"))
	}
	return plain(o), true
}

// bonds reports whether something is still to be stuck to the finished frame.
func bonds(p sized) bool {
	top := p.Design.Top
	return top.Kind == design.GlassTop && (top.Fixing.Bond == design.Silicone || top.Pads.Bumpers)
}

// sawTop saws the outline of a wooden top before it is finished.
func sawTop(p sized) (row, bool) {
	grain := note("grain-along")
	if p.TopAlong().Y > 0 {
		grain = note("grain-across")
	}
	return plain(Operation{
		Do: SawTop, What: note("step.saw-top"), Then: notes(note("outline-to-line"), grain), Caution: "isolate-power",
	}, Batch{Part: Top, Size: p.Design.Size, Count: 1}), p.Design.Top.Kind == design.WoodTop
}
