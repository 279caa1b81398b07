package wording

import (
	"rodsheet/templates"
	"rodsheet/templates/piece/shop"
	"rodsheet/templates/wording"
)

// cautionNotes are the cautions of steps.
var cautionNotes = []shop.NoteID{
	"isolate-power", "change-blade", "free-offcut", "small-parts", "hands-on-jig", "taper-in-jig", "clamp-to-drill", "dust", "data-sheets", "rags", "glass-care", "falls-over",
	"saw-by-hand", "chop-by-hand", "plane-by-hand", "panel-care", "jig-screws", "fingers-clear", "knife-away", "pare-clamped", "trim-clamped", "draw-evenly", "pads-on-stick", "bumper-sheet", "saw-outline", "drill-top",
}

// guardNotes say what becomes of the guard at each kind of cut.
var guardNotes = []struct {
	cut wording.Text
	id  shop.NoteID
}{
	{"Right through, at the gauge", "guard-stays"},
	{"Tapers, in the jig", "guard-taper"},
	{"Not through, at the gauge", "guard-not-through"},
	{"On end, in the jig", "guard-on-end"},
	{"With a dado set", "dado-guard"},
}

const under wording.Text = "%s. %s"

// Cautions lists all that cards and jigs caution against, whatever the piece.
func Cautions() []templates.Panel {
	cards := templates.Panel{Heading: say("On the cards, each beside the set-up that it is about")}
	for _, id := range cautionNotes {
		cards.Text = append(cards.Text, noteTexts()[id].With())
	}
	cards.Text = append(cards.Text, noteTexts()["tips-leaned-on"].With(say("the load on its card")))
	guards := templates.Panel{Heading: say("Guard and riving knife at the saw")}
	for _, g := range guardNotes {
		guards.Text = append(guards.Text, under.With(g.cut.With(), noteTexts()[g.id].With()))
	}
	jigs := templates.Panel{Heading: say("On the jigs")}
	for _, kind := range []shop.Part{shop.TenoningJig, shop.LapSled, shop.TaperSled} {
		caution := jigTexts[kind][len(jigTexts[kind])-1] // it comes last
		jigs.Text = append(jigs.Text, under.With(JigName(kind), caution.With()))
	}
	return []templates.Panel{cards, guards, jigs}
}
