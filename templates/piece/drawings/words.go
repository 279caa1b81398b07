package drawings

import (
	"math"
	"slices"
	"strings"

	"rodsheet/geometry/joint"
	"rodsheet/geometry/lists"
	"rodsheet/geometry/measure"
	"rodsheet/templates"
	"rodsheet/templates/piece"
	"rodsheet/templates/piece/design"
	"rodsheet/templates/wording"
)

// All sentences of the full-size templates and of the cover.

// say fills the verbs of a sentence.
func say(t wording.Text, args ...any) string { return t.With(args...) }

// tag returns a label under the words of its identity.
func tag(id measure.ID, args ...any) templates.Tag {
	return templates.Tag{ID: id, Text: say(labels[id], args...)}
}

// named returns a drawing under the names of a part and of what is seen of it:
// the last of them but for a part that is all there is to say.
func named(d templates.Drawing, ids ...measure.ID) templates.Drawing {
	words := lists.Map(ids, func(id measure.ID) string { return say(viewNames[id]) })
	v := templates.View{Part: ids[0], Hand: d.View.Hand}
	if len(ids) > 1 {
		v.Part, v.Face = ids[len(ids)-2], ids[len(ids)-1]
	}
	return d.Of(v, strings.Join(words, ", "))
}

const (
	coverHeading wording.Text = "Cover"
	woodHeading  wording.Text = "Wood and buying"

	stockHeading     wording.Text = "Stock"
	lapsHeading      wording.Text = "Laps"
	bridlesHeading   wording.Text = "Bridles"
	blockHeading     wording.Text = "%s, %s, %s wide"
	tapersHeading    wording.Text = "Tapers and plain ends"
	plainEndsHeading wording.Text = "Plain ends"
	glueHeading      wording.Text = "Ring and glue-up"
	topHeading       wording.Text = "Top"
	finishHeading    wording.Text = "Finish"
	checksHeading    wording.Text = "Figures and checks"
	sizesHeading     wording.Text = "Main sizes"
	planHeading      wording.Text = "Plan"
	partOfSize       wording.Text = "%s: %s × %s × %s"
	roundOfSize      wording.Text = "%s: diameter %s, %s"
	boardHeading     wording.Text = "Board %d: %s × %s × %s"
	fenceAt          wording.Text = ", fence %s off square"
	fromAbove        wording.Text = "from above: %s"
	fromTheLeft      wording.Text = "from the left of the saw"
	drawnWider       wording.Text = ", widths drawn %d times larger"
	elevationHeading wording.Text = "Elevation"
	fixingsHeading   wording.Text = "Holes and slots from below, drawn larger"
	cornerHeading    wording.Text = "From above, at a corner"

	namesHeading          wording.Text = "Names"
	stretcherNamesHeading wording.Text = "Stretcher: from the ring side; from the outer side and below"
	legNamesHeading       wording.Text = "Leg, lying: from the ring side; from the outer side and below"
	lapApartHeading       wording.Text = "Lap, apart"
	bridleApartHeading    wording.Text = "Bridle, apart"
	ringShutHeading       wording.Text = "The ring slides shut"
	writeRealSizes        wording.Text = "Where wood or saw turn out different, write the real sizes into the design file and print again."
)

// marksPanel says what is pencilled on the parts.
func marksPanel() []templates.Panel {
	return []templates.Panel{{Heading: say("Marks"), Text: []string{
		say("Pencil on every part before its first cut: a loop on the ring side, a tick across the arris of the reference edge, the number of the stretcher, and the same number on its leg."),
		say("Everything is set out from the reference edge: the ring side of a stretcher, the back of a leg."),
		say("The saw is drawn from above, you at the bottom; the arrow is the way the part goes. A stop is measured to the side of the blade nearer to it. Horn is what a stretcher runs past its lap."),
	}}}
}

// Parts of labels, and what tables call the same.
const (
	offSquare wording.Text = "%s off square"
	square    wording.Text = "square"
)

// lapNames is what the lines of a lap are called on a stretcher; inner is how far
// its inner shoulder stands from mid-length on the ring side.
func lapNames(p piece.Piece, inner string) templates.LapNames {
	names := templates.LapNames{
		Reference: tag("ring-side"), Far: tag("outer-side"),
		Near: tag("inner-shoulder"), Other: tag("outer-shoulder"), Datum: tag("to-mid-length", inner),
	}
	if p.Design.Ring.Plain != design.ClosedEnd || p.Design.Ring.Slack > 0 {
		names.OtherOnly = tag("leg-end-only")
	}
	return names
}

// lapPanel says where the laps stand, and on which faces.
func lapPanel(p piece.Piece) templates.Panel {
	r := p.Frame.Ring
	inner, outer := r.Shoulders(0)
	innerFar, outerFar := r.Shoulders(r.Width)
	up, down := say("leg end"), say("plain end")
	if !p.Frame.Over {
		up, down = down, up
	}
	plain := say("The plain end is left open: everything from the inner shoulder to the end comes away, so that the ring can be slid together.")
	if p.Design.Ring.Plain == design.ClosedEnd {
		plain = say("The plain end is closed: its outer shoulder leaves %s of slack, square to the lap.", p.MM(p.Design.Ring.Slack))
	}
	return templates.Panel{
		Heading: say("Where the laps stand"),
		Table: [][]string{
			{say("from mid-length of the stretcher"), say("on the ring side"), say("on the outer side")},
			{say("inner shoulder"), p.MM(inner), p.MM(innerFar)},
			{say("outer shoulder"), p.MM(outer), p.MM(outerFar)},
			{say("deep"), p.MM(r.Depth / 2)},
		},
		Text: []string{
			say("One template serves both ends: the lap of the %s is on the top, that of the %s on the underside. Mark mid-length on the ring side, lay the template on the face that is cut with the ring side towards you, then tumble the stretcher end over end for the other lap. Never roll it.", up, down),
			plain,
		},
	}
}

// placeNames says what a gauge is set for, in the order in which it is listed.
var placeNames = []struct {
	at   places
	text wording.Text
}{
	{legEnds, "head, foot and shoulder of the leg; leg end and slot bottom of the stretcher"},
	{slottedLegEnds, "head, foot and slot bottom of the leg; leg end and shoulder of the stretcher"},
	{fillerStrips, "filler strips"},
	{legCauls, "leg cauls"},
	{endCauls, "end cauls"},
	{laps, "laps"},
	{flushEnds, "flush plain end of the stretcher"},
	{topCorners, "corners of the top"},
	{tapers, "taper of the leg"},
}

func (at places) String() string {
	var words []string
	for _, p := range placeNames {
		if at&p.at != 0 {
			words = append(words, say(p.text))
		}
	}
	return strings.Join(words, "; ")
}

// usesPanel says where each angle is used, and what to do with those that
// have no triangle.
func usesPanel(all []angleRow, sizes int, s templates.Setting) templates.Panel {
	u := s.Unit
	panel := templates.Panel{
		Heading: say("Where the angles are used"),
		Table:   [][]string{{say("bevel gauge"), say("mitre gauge"), say("used for")}},
		Text: []string{
			say("The large letters name the corner to set: blade along the slope, stock along the other side of it: gauge edge or upright side. Cut along the slope, or strike it on a board from its working edge and set to that: a line alone is uncertain."),
			say("A gauge set once serves both hands: turn it over. A mitre gauge is turned by what the middle column says."),
		},
	}
	if !slices.ContainsFunc(all, func(q angleRow) bool { return q.drawn(s.Full) }) {
		panel.Text = nil // no gauge is set from paper
	}
	for _, q := range all {
		where := q.places.String()
		if words := piece.SizeWords(q.sizes, sizes); words != "" {
			where = say("%s (%s)", where, words)
		}
		if !q.drawn(s.Full) {
			where = say("%s. %s", where, withoutTriangle(q.use, u))
		}
		text := measure.Angle(q.angle).Text(u)
		row := []string{say("bevel %s", text), say(offSquare, measure.Angle(math.Pi/2-q.angle).Text(u)), where}
		if q.along {
			row[0], row[1] = say("%s to the edge", text), say("–")
		}
		panel.Table = append(panel.Table, row)
	}
	return panel
}

// withoutTriangle says how an angle is set that has no triangle.
func withoutTriangle(q use, u measure.Unit) string {
	angle := q.angle
	if !q.along {
		angle = math.Pi/2 - angle
	}
	run := u.Round(250, 10)
	text := measure.Length(run).Text(u)
	rise := measure.Length(joint.RiseOver(run, angle)).Text(u)
	switch {
	case angle == 0:
		return say("Set by a square, no sheet needed")
	case q.along:
		return say("Set out by two points, below")
	case q.ofSetSquare():
		return say("Set by a set square, no sheet needed; proof: off square by %s over %s", rise, text)
	}
	return say("Set out by a rise of %s over %s: paper does not hold so small an angle", rise, text)
}

// name says on which face a taper is set out.
func (l taperLine) name() string { return say("taper, on the %s", say(viewNames[l.face])) }

// taperPanel gives the points by which the tapers of a leg are set out, and what
// paper would make of them.
func taperPanel(p piece.Piece, lines []taperLine) templates.Panel {
	onPaper := p.Taper.Run() * math.Tan(templates.AngleOnPaper)
	panel := templates.Panel{
		Heading: say("The taper, set out by two points"),
		Table:   [][]string{{say("on the leg"), say("measured from"), say("at the foot"), say("%s up from the foot", p.MM(p.Taper.Run()))}},
		Text: []string{
			say("The foot is the square end that the blank had, level with where the back meets the floor. As the foot is sawn now the line comes to the sole %s from the back, along the sole. Lay a straight edge through that point and the start: %s to the edge. At the saw the ring side is down: strike the line on the outer side too. No triangle: %s of paper would be off by %s at the foot.",
				p.MM(onSole(p)), p.Say(measure.Angle(p.Taper.ToEdge())), say("±0.25°"), p.MM(math.Round(10*onPaper)/10)),
		},
	}
	for _, l := range lines {
		panel.Table = append(panel.Table, []string{say(viewNames[l.face]), l.Edge.Text, p.MM(l.AtEnd), p.MM(l.AtRun)})
	}
	return panel
}

// onSole is how far along the sole the taper of the stretcher side comes to it, from the
// corner at the straight back. Across the leg the sole climbs by tan Splay, and up the leg
// the line runs out by Loss/Run.
func onSole(p piece.Piece) float64 {
	l, t := p.Frame.Leg, p.Taper
	return (l.Breadth - t.Loss()) / (1 - math.Tan(l.Splay)*t.Loss()/t.Run()) / math.Cos(l.Splay)
}

// titleBlock says whose the drawing is, as far as the design does.
func titleBlock(d design.Design) []templates.Panel {
	rows := lists.Where([][]string{
		{say("maker"), d.Plan.Maker}, {say("date"), d.Plan.Date},
		{say("revision"), d.Plan.Revision}, {say("note"), d.Plan.Note},
	}, func(r []string) bool { return r[1] != "" })
	if rows == nil {
		return nil
	}
	return []templates.Panel{{Heading: d.Title, Table: rows}}
}

// Imprint returns what stands of that small on every sheet.
func Imprint(d design.Plan) string {
	revision := ""
	if d.Revision != "" {
		revision = say("revision %s", d.Revision)
	}
	return strings.Join(slices.DeleteFunc([]string{d.Maker, d.Date, revision, d.Note}, func(s string) bool { return s == "" }), "; ")
}

// sizeRows returns names and figures, the same names for every size.
func sizeRows(p piece.Piece) [][2]string {
	f, r, l := p.Frame, p.Frame.Ring, p.Frame.Leg
	return [][2]string{
		{say("overall height"), p.MM(p.Overall())},
		{say("floor to top of frame"), p.MM(l.Height)},
		{say("circle of the feet, diameter"), p.MM(2 * p.FootRadius())},
		{say("ring"), say("%d stretchers", r.Sides)},
		{say("inside, along each side"), p.MM(r.Inside)},
		{say("stretcher, width × depth"), say("%s × %s", p.MM(r.Width), p.MM(r.Depth))},
		{say("leg, breadth × thickness"), say("%s × %s", p.MM(l.Breadth), p.MM(l.Thickness))},
		{say("splay from plumb"), p.Say(measure.Angle(f.Leg.Splay))},
		{say("top"), topWords(p)},
		{say("top, left to right"), across(topBounds(p).Width(), p)},
		{say("top, front to back"), across(topBounds(p).Height(), p)},
	}
}

// across says how large a top is one way.
func across(mm float64, p piece.Piece) string {
	if p.Design.Top.Kind == design.NoTop {
		return say("–")
	}
	return p.MM(mm)
}

// topWords describes the top in a few words.
func topWords(p piece.Piece) string {
	if p.Design.Top.Kind == design.NoTop {
		return say("none")
	}
	material := say("glass")
	if p.Design.Top.Kind == design.WoodTop {
		material = say("wood")
	}
	return say("%s %s", p.MM(p.Design.Top.Thickness), material)
}

// printing says how a sheet comes out at full size, and which of two figures is the size.
func printing(u measure.Unit) templates.Panel {
	p := templates.Panel{Heading: say("How to print"), Text: []string{
		say("Print at 100 %%, actual size, one side; never fit, shrink, borderless or several pages a sheet. The choice is under page size or scaling, often in the dialog of the printer itself. Measure the calibration square on sheet 1, and on every sheet its rules before a template is cut out."),
	}}
	if u == measure.Inch {
		p.Text[0] = say("%s Of two figures the decimals in brackets are the size, the fraction is the nearest 64th.", p.Text[0])
	}
	return p
}

// generalCautions are said once a pack.
func generalCautions(glass bool) templates.Panel {
	text := []string{
		say("Isolate power before setting a machine; follow its manual and keep its guards on. Hold small and angled parts by jigs and push blocks. Never trap an offcut between fence and blade."),
	}
	if glass {
		text = append(text, say("Glass tempered, its edges worked, and never lifted by its bonding."))
	}
	return templates.Panel{Heading: say("Cautions"), Text: append(text,
		say("Adhesives and finish by their data sheets: rags soaked in finish can catch fire by themselves. Local rules and licensed practice come before these sheets."),
	)}
}

// strikePads says on what the circle of the pads is struck: a finished pane takes no mark.
var strikePads = map[design.TopKind]wording.Text{
	design.GlassTop: "On paper strike the rim and the circle of the pads from one centre and step these off. The wedge proves it: its point on the centre, its edges through the middles of two pads. Laid on its rim, the glass shows the places; nothing is struck on it.",
	design.WoodTop:  "On the underside strike the circle of the pads from the centre and step them off. The wedge proves it: its point on the centre, its edges through the middles of two pads.",
}

// roundPanel gives what sets out a round top and its supports.
func roundPanel(p piece.Piece) templates.Panel {
	panel := templates.Panel{Heading: say("The round top"), Table: [][]string{
		{say("diameter"), p.MM(2 * p.TopRadius())},
		{say("radius, by beam compass"), p.MM(p.TopRadius())},
	}}
	places, pads := supports(p)
	circle, count := say("circle of the stretchers' mid-lengths, radius"), say("stretchers, evenly round")
	panel.Text = []string{say("On the underside strike the circle of the stretchers from the centre and step off their mid-lengths: there the centre line of a stretcher touches it. The wedge proves it: its point on the centre, its edges through two mid-lengths.")}
	if pads {
		circle, count = say("circle of the pads, radius"), say("pads, evenly round")
		panel.Text = []string{say(strikePads[p.Design.Top.Kind])}
	}
	panel.Table = append(panel.Table,
		[]string{circle, p.MM(places[0].Norm())},
		[]string{count, say("%d", len(places))},
		[]string{say("from the middle of one to the next"), p.MM(places[0].Distance(places[1]))},
	)
	return panel
}

// padPanel says where the pads are below a top with straight edges, and whether there
// are any.
func padPanel(p piece.Piece) (templates.Panel, bool) {
	panel := templates.Panel{Heading: say("Pads below the top"), Table: [][]string{{say("pad"), say("right of the centre"), say("up from it")}}}
	pads := padCentres(p)
	for i, c := range pads {
		panel.Table = append(panel.Table, []string{say("%d", i+1), p.MM(c.X), p.MM(c.Y)})
	}
	return panel, len(pads) > 0
}
