package shop

import (
	"math"

	"rodsheet/geometry/joint"
	"rodsheet/templates/piece"
	"rodsheet/templates/piece/design"
)

// cutFaces returns the faces that are cut at the leg end and at the plain end:
// the underside where the stretcher passes over its neighbour.
func cutFaces(p piece.Piece) (legEnd, plainEnd Face) {
	if p.Frame.Over {
		return UpperFace, Underside
	}
	return Underside, UpperFace
}

// lapLonger returns the edge along which a lap's shoulder stands farther from the
// end: an obtuse lap leans back over it.
func lapLonger(l joint.Lap) Face {
	switch shift := l.Shift(); {
	case math.Abs(shift) < 1e-9:
		return NoFace
	case shift < 0:
		return RingSide
	}
	return OuterSide
}

// lapCut returns how the saw stands for a lap of p.
func lapCut(p piece.Piece) Cut {
	l := p.EndLap()
	square := l.OffSquare()
	return Cut{
		How: OnGauge, OffSquare: square, Longer: lapLonger(l), Height: l.BladeHeight(),
		Stop: l.Stop(), At: Datum{Point: StretcherEnd, Inner: true}, Spacer: l.Spacer(), Passes: true,
	}
}

func testLap(p sized) (row, bool) {
	part := Batch{Part: StretcherTest, Count: p.testLaps}
	legEnd, _ := cutFaces(p.Piece)
	cut := lapCut(p.Piece)
	cut.Stop, cut.At = 0, Datum{} // any place on the piece will do
	if !p.tested {
		part.Part = StretcherStick
	}
	return row{Operation{
		Do: TestLap, What: note("step.test-lap"), Lies: lie(legEnd, RingSide, LegEnd), Cut: cut,
		Then: notes(note("test-lap-order")).with(bottom(p.Piece)...),
		Test: note("lap-fits"),
	}, []Batch{part}, handWork{Then: notes(note("test-lap-by-hand"), note("lap-by-hand")), Test: note("lap-fits-by-hand")}}, true
}

// lapTrial returns what a test lap is tried for: its setting, the stop apart.
func lapTrial(p piece.Piece) [4]float64 {
	l := p.EndLap()
	return [4]float64{quantize(l.OffSquare()), quantize(l.BladeHeight()), quantize(l.Spacer()), quantize(p.Frame.Ring.Width)}
}

// bottom says how the bottom of a lap is cleared and finished.
func bottom(p piece.Piece) []Note {
	var out []Note
	if width := p.Frame.Ring.Width; p.Design.Saw.Dado > 0 && p.Design.Saw.Dado <= width {
		out = append(out, note("dado-clears", length(p.Design.Saw.Dado), number(p.Passes(width)), length(p.Kerf)))
	}
	if !p.Design.Saw.FlatTooth {
		out = append(out, note("leave-lap-bottom"))
	}
	return out
}

// innerLine returns how far the inner shoulder of a lap stands from the end, along
// the ring side.
func innerLine(p piece.Piece) float64 { return p.EndLap().At + p.EndLap().EdgeLength() }

// cutLaps is both laps of every stretcher at one setting.
func cutLaps(p sized) (row, bool) {
	legEnd, plainEnd := cutFaces(p.Piece)
	order := note("laps-order")
	switch {
	case dadoSet(p.Piece):
		order = note("laps-order-dado")
	case !p.Design.Saw.FlatTooth:
		order = note("laps-order-vee")
	}
	return row{Operation{
		Do: CutLap, What: note("step.laps"), Cut: lapCut(p.Piece),
		Lies: [2]Lie{{legEnd, RingSide, LegEnd}, {plainEnd, RingSide, PlainEnd}},
		Then: notes(note("laps-tumbled", face(legEnd), face(plainEnd)), order, note("never-rolled")),
		Test: note("stretchers-cross", angle(p.Frame.Ring.Angle())),
	}, []Batch{p.stretchers.spared()}, handWork{
		Then: notes(note("laps-tumbled-by-hand", face(legEnd), face(plainEnd)), note("lap-by-hand"), note("never-rolled")),
		Line: innerLine(p.Piece), From: Datum{StretcherEnd, RingSide, true},
	}}, true
}

// slackLaps widens closed plain ends by their play, which leaves the inner
// shoulder and moves the outer one towards the end.
func slackLaps(p sized) (row, bool) {
	_, plainEnd := cutFaces(p.Piece)
	cut := lapCut(p.Piece)
	cut.Spacer += p.Design.Ring.Slack / math.Sin(p.Frame.Ring.Angle())
	cut.At = Datum{Point: ThePlainEnd}
	return row{Operation{
		Do: CutLap, What: note("step.slack"), Lies: lie(plainEnd, RingSide, PlainEnd), Cut: cut,
		Then: notes(note("only-outer-shoulder", length(p.Design.Ring.Slack))),
		Test: note(p.tried("lap-moves", "lap-moves-spare"), length(p.Design.Ring.Slack)),
	}, []Batch{p.stretchers.spared()}, handWork{
		Then: notes(note("only-outer-by-hand", length(p.Design.Ring.Slack))),
		Line: innerLine(p.Piece), From: Datum{ThePlainEnd, RingSide, true},
	}}, p.Design.Ring.Plain == design.ClosedEnd && p.Design.Ring.Slack > 0
}

// openEnds clears the plain end from the lap out to the end, with the blade of the
// laps or with the dado set.
func openEnds(dado bool) op {
	return func(p sized) (row, bool) {
		_, plainEnd := cutFaces(p.Piece)
		cut, l := lapCut(p.Piece), p.EndLap()
		cut.Stop, cut.At, cut.Spacer = 0, Datum{}, 0
		cut.Line, cut.From = l.At, Datum{Point: ThePlainEnd, Along: RingSide}
		then, guard := notes(note("passes-to-end")), NoteID("")
		if dado {
			guard = "dado-guard"
			widest := (l.At + math.Max(0, l.Shift())) * math.Sin(l.Angle)
			then = then.with(note("dado-passes", number(p.Passes(widest))))
		} else if !p.Design.Saw.FlatTooth {
			then = then.with(note("leave-lap-bottom"))
		}
		return row{Operation{
			Do: OpenEnd, What: note("step.open-ends"), Lies: lie(plainEnd, RingSide, PlainEnd), Cut: cut,
			Then: then, Test: note("bottom-level"), Caution: guard,
		}, []Batch{p.stretchers.spared()}, handWork{Then: notes(note("open-by-hand"))}}, p.Design.Ring.Plain != design.ClosedEnd && dado == dadoSet(p.Piece)
	}
}

// dryRing lays the ring together before anything else is cut, or where it does
// not go together so, once its ends are trimmed.
func dryRing(trimmed bool) op {
	return func(p sized) (row, bool) {
		how := note("slide-shut")
		if p.Design.Ring.Plain == design.ClosedEnd {
			how = closedRing(p.Piece)
		}
		do := DryRing
		if trimmed {
			do = DryTrimmedRing
		}
		return plain(Operation{
			Do: do, What: note("step.dry-ring"), Then: notes(how, note("number-laps")),
			Test: note("laps-closed", length(p.Frame.Ring.Inside)), Caution: "fingers-clear",
		}, p.stretchers.real()), trimmed == p.TrimFirst()
	}
}

// closedRing says how a ring goes together whose laps all have both shoulders.
func closedRing(p piece.Piece) Note { return note("closed-ring", length(p.Design.Ring.Slack)) }
