package templates

import (
	"rodsheet/geometry/joint"
	"rodsheet/templates/wording"
)

// Titles, headings and notes of tapers.
const (
	taperTitle   wording.Text = "Taper, %s: %s to %s over %s"
	taperHeading wording.Text = "Taper"
	cutsHeading  wording.Text = "Order of cuts"
)

// faces names the tapered faces.
func (t taperTemplate) faces() string {
	return say([...]wording.Text{joint.OneFace: "one face", joint.AdjacentFaces: "two adjacent faces",
		joint.OppositeFaces: "two opposite faces", joint.FourFaces: "four faces"}[t.Faces])
}

// reference names what the taper is counted from.
func (t taperTemplate) reference() string {
	if t.Faces.Symmetric() {
		return say("centre line")
	}
	return say("straight edge")
}

// referenceEdge names the edge y = 0 of the blank.
func (t taperTemplate) referenceEdge() Tag {
	if t.Faces == joint.AdjacentFaces {
		return tag("reference-arris")
	}
	return tag("reference-edge")
}

func offsetsHead(symmetric bool) []string {
	if symmetric {
		return []string{say("from the top end"), say("width"), say("each side of the centre line"), say("from each edge")}
	}
	return []string{say("from the top end"), say("from the reference edge"), say("to cut away")}
}

// mark is how the line comes on the wood: by the template, or by points.
func (t taperTemplate) mark(byTemplate, byPoints string) string {
	if t.Full {
		return byTemplate
	}
	return byPoints
}

// cuts is the order of work, and what becomes of the offcut.
func (t taperTemplate) cuts() []string {
	flat := say("Tape the offcut back, with a shim as thick as the kerf, so that the work lies flat and bears on its whole length.")
	keep := say("Saw beside the line, in the waste, and plane to it.")
	by := angleText(t.ToEdge())
	switch t.Faces {
	case joint.AdjacentFaces:
		return []string{
			say("1. Mark the arris between the two faces that stay straight. The two tapers are cut from the faces opposite."),
			t.mark(say("2. Trace the right-hand template on one straight face and the left-hand template on its neighbour, both with the reference edge on that arris and the foot at the foot."), say("2. Set out the line by its two points on both straight faces, from that arris, the foot at the foot.")),
			say("3. First cut: to the line on one of them. %s", keep),
			say("4. %s", flat),
			say("5. Second cut: roll the leg a quarter turn, and cut to the line on the other."),
			say("In a tapering jig one setting serves both, foot the same way and a straight face against the jig: the traced face down for the first cut, up for the second."),
			say("All four legs of a set are cut alike; which way each is turned makes left and right."),
		}
	case joint.OppositeFaces:
		return []string{
			t.mark(say("1. Trace the template on the two faces that stay parallel, and mark the centre line on both ends. The drawing is its own mirror image and serves either hand."), say("1. Set out both lines by their points on the two faces that stay parallel, and mark the centre line on both ends.")),
			say("2. First cut: %s to the edge. %s", by, keep),
			say("3. %s", flat),
			say("4. Second cut: roll the leg half a turn about its length, foot the same way, the taped edge where the other one was, and cut at the same setting."),
			say("Without the offcut the leg would bear on its taper, and the second cut would need the included angle, %s.", angleText(t.Included())),
		}
	case joint.FourFaces:
		return []string{
			t.mark(say("1. Trace the template on all four faces before any cut, and mark the centre lines on both ends. The drawing is its own mirror image and serves either hand."), say("1. Set out both lines by their points on all four faces before any cut, and mark the centre lines on both ends.")),
			say("2. First pair: cut one side, %s to the edge. %s", by, keep),
			say("3. %s", flat),
			say("4. Roll the leg half a turn, foot the same way, and cut the other side at the same setting. Tape this offcut back too."),
			say("5. Second pair: roll the leg a quarter turn and cut both sides as before. Take the tape off last."),
		}
	}
	return []string{
		t.mark(say("1. Trace the template on the face, its reference edge on the edge that stays straight. Use the hand that lays the foot at the foot."), say("1. Set out the line on the face by its two points, from the edge that stays straight, and join them by a straight edge.")),
		say("2. Cut to the line, %s to the edge. %s", by, keep),
		say("3. Keep the offcut: taped back, it holds the leg parallel for joints cut later."),
	}
}

// bevels says which face a bevel on the leg is counted from.
func (t taperTemplate) bevels() Panel {
	by := angleText(t.ToEdge())
	return panel("Bevels",
		say("A bevel taken off the tapered face differs by %s from one taken off the %s. Write the face beside every angle.", by, t.reference()),
		say("Cut joints while the blank is square. A shoulder square to the %s is %s off square on the tapered face.", t.reference(), by),
	)
}

// taperCaution goes with what is sawn to a taper: legs and staves that narrow.
func taperCaution() Panel {
	return panel(cautionHeading,
		say("Isolate power before setting. At a saw use a tapering jig with hold-downs, the guard and a push block, and follow the machine's manual."),
		say("Never trap the offcut between fence and blade. Short or thin pieces are safer by hand saw and plane."),
	)
}
