package wording

import (
	"rodsheet/geometry/measure"
	"rodsheet/templates"
	"rodsheet/templates/piece/shop"
	"rodsheet/templates/wording"
)

// jigTexts say how a jig is made and used.
var jigTexts = map[shop.Part][]wording.Text{
	shop.TenoningJig: {
		"Pictures, here and on the cards: from the left of the saw, you on the right; and from your place. Face and base of flat plywood or the like, both brackets behind, screwed square. The base runs along the rip fence, right of the blade; the part stands on the table, clamped twice to the face.",
		"The cleat is plumb and stays, at the end of the face nearest to you: the teeth push that way. The filler strip, one for each splay, goes between cleat and part, two screws from behind. For a part's second face turn it end for end: the part leans the other way. Try it with the saw off: no light under the sawn end.",
		"Caution: both hands on the jig, behind the part. The blade saws into strip and cleat: no screw as low as it rises.",
	},
	shop.LapSled: {
		"In the place of the mitre gauge. Base of flat sheet, such as plywood, the runner under it planed to the slot of the table. The fence is screwed on by where it meets both edges of the base; the bridge holds both halves together. The first cut saws the slot: the stop is measured from its near side.",
		"The blade's height on the cards is from the top of this base, not from the table. The stop block is clamped to the fence, the spacer goes between part and stop.",
		"Caution: the blade comes out behind the fence. Its cover is glued there, layer on layer, one end cut to lie on the fence; it is long enough for a usual blade of ten inches, for no larger one.",
	},
	shop.TaperSled: {
		"Base of flat sheet, one edge along the rip fence, the other trimmed by the blade. The line of the taper lies over that edge: the fence is screwed on by its two distances, at the foot and at the start of the taper, and anew for another taper. The foot goes first, the stop block stands behind the head.",
		"Caution: clamp the leg down twice before the saw runs.",
	},
}

// JigName heads all that is said of a jig.
func JigName(kind shop.Part) string { return partNames[kind].one.Capital().With() }

var jigIDs = map[shop.Part]measure.ID{shop.TenoningJig: "tenoning-jig", shop.LapSled: "lap-sled", shop.TaperSled: "tapering-jig"}

// JigView is the view of the picture of a jig. A spacer has none.
func JigView(kind shop.Part) templates.View { return templates.View{Part: "jig", Face: jigIDs[kind]} }

// Jig says how a jig is made and used.
func Jig(kind shop.Part) templates.Panel {
	return templates.Panel{Heading: JigName(kind), Text: said(jigTexts[kind])}
}
