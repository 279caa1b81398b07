package shop

import "rodsheet/templates/piece"

// A blade is changed in a step of its own, and changed back in another: so no card
// stands on a blade that a maker has to remember.

// flatTooth reports whether laps are cut with a blade of their own at the saw.
func flatTooth(p piece.Piece) bool {
	return p.Design.Saw.FlatTooth && rises(p, p.EndLap().BladeHeight())
}

// dadoSet reports whether a dado set clears the laps.
func dadoSet(p piece.Piece) bool {
	d := p.Design.Saw.Dado
	return d > 0 && d <= p.Frame.Ring.Width && rises(p, p.EndLap().BladeHeight())
}

// change is the step that puts another blade on.
func change(what NoteID, asked func(piece.Piece) bool, then func(sized) Notes) op {
	return func(p sized) (row, bool) {
		if !asked(p.Piece) {
			return row{}, false
		}
		return plain(Operation{Do: ChangeBlade, What: note(what), Then: then(p), Caution: "change-blade"}), true
	}
}

// flatToothOps puts the flat-tooth blade on, and bladeBackOps takes it off again.
func flatToothOps() []op {
	return []op{change("step.flat-tooth", flatTooth, func(sized) Notes { return notes(note("flat-tooth-for"), note("flat-tooth-kerf")) })}
}

func bladeBackOps() []op {
	return []op{change("step.blade-back", flatTooth, func(sized) Notes { return notes(note("blade-back-for")) })}
}

// dadoOps clears the laps with the dado set, once the plain blade has sawn all their
// shoulders, and dadoBackOps takes it off.
func dadoOps() []op {
	return []op{change("step.dado", dadoSet, func(p sized) Notes {
		width := p.Frame.Ring.Width
		return notes(
			note("dado-height", length(p.EndLap().BladeHeight())),
			note("dado-between", length(p.Design.Saw.Dado), number(p.Passes(width))), note("dado-guard"),
		)
	})}
}

func dadoBackOps() []op {
	return []op{change("step.dado-back", dadoSet, func(sized) Notes { return notes(note("dado-back-for")) })}
}
