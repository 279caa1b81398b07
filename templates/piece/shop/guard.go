package shop

// Guard returns what is to be known of guard and riving knife for the cuts of a card:
// whether they can stay, and what holds the part where they cannot. There is none for
// work away from the saw.
func (c Card) Guard() NoteID {
	switch {
	case c.How == AwayFromSaw || c.Hand:
		return ""
	case c.How == OnEnd:
		return "guard-on-end"
	case c.How == OnTaper:
		return "guard-taper"
	case !c.Through:
		return "guard-not-through"
	}
	return "guard-stays"
}
