package kinds

import (
	"cmp"
	"fmt"
	"io/fs"
	"slices"
	"strconv"
	"strings"
	"testing"

	"rodsheet/examples"
	"rodsheet/geometry"
	"rodsheet/geometry/measure"
	"rodsheet/templates"
	"rodsheet/templates/piece/design"
	"rodsheet/templates/piece/kind"
)

// Every starting design, of every kind and number of sides, can be built without a doubt,
// and has its pack, its pictures, its buying list and its views.
func TestStartsAreSound(t *testing.T) {
	for k, name := range design.Kinds() {
		i := design.Kind(k)
		fewest, most, _ := i.Sides()
		for sides := fewest; sides <= most; sides++ {
			for _, u := range []measure.Unit{measure.Millimetre, measure.Inch} {
				t.Run(fmt.Sprintf("%s of %d, %s", name, sides, u), func(t *testing.T) {
					text, err := design.Start(i, sides, u)
					if err != nil {
						t.Fatal(err)
					}
					checkStart(t, text, i)
				})
			}
		}
	}
}

func checkStart(t *testing.T, text []byte, want design.Kind) {
	file, err := design.Read(text, new(Sizes).Add)
	if err != nil {
		t.Fatalf("%v\n%s", err, text)
	}
	if got := file.Sizes[0].Kind; got != want {
		t.Errorf("it is a %s", got)
	}
	w, err := Solve(file.Sizes)
	if err != nil {
		t.Fatal(err)
	}
	for _, c := range w.Report().All() {
		if c.Grade >= kind.Warn {
			t.Errorf("%s %s: %s; %s", c.Name, c.Grade, c.Measured(file.Unit), c.Words)
		}
	}
	for _, g := range w.Report().Sizes[0].Groups {
		for _, f := range g.Figures {
			if g.Heading == "" || g.Heading == string(g.ID) || f.Name == "" || f.Name == string(f.ID) {
				t.Errorf("%s of %s has no words", f.ID, g.ID)
			}
		}
	}
	for _, c := range w.Report().All() {
		if c.Name == "" || c.Words == "" || (c.Figure == "") != (c.FigureName == "") {
			t.Errorf("the check %s has no words: %+v", c.ID, c)
		}
	}
	job, err := w.Pack(kind.Options{For: kind.Buying | kind.Bench | kind.Record}, templates.Setting{Unit: file.Unit, Clear: geometry.Pt(170, 230)})
	if err != nil {
		t.Fatal(err)
	}
	checkCards(t, job)
	if all := fmt.Sprintf("%+v", job); strings.Contains(all, "what is screwed on") && !strings.Contains(all, "screw for the top") {
		t.Error("nothing is screwed on, a card takes it off")
	}
	if want != design.RingKind {
		checkTicks(t, job)
	}
	var cards, drawings int
	for _, s := range job.Sections {
		cards, drawings = cards+len(s.Cards), drawings+len(s.Drawings)
	}
	if cards == 0 || drawings == 0 || len(w.Pictures()) != 3*len(file.Sizes) || len(w.Buying()) < 6 {
		t.Errorf("%d cards, %d drawings, %d pictures, %d lines to buy", cards, drawings, len(w.Pictures()), len(w.Buying()))
	}
	stand := w.Stand(0)
	for _, l := range []kind.Look{kind.FromAbove, kind.FromFront, {View: kind.AtCorner(), Apart: 0.5}, {View: kind.AtCorner(), Close: true}} {
		shown := stand.Show(l)
		seen := 0
		for _, p := range shown.Parts {
			seen += len(p.Areas)
		}
		if seen == 0 || len(shown.Strokes) == 0 || len(shown.Clashes) > 0 {
			t.Errorf("%+v shows %d areas, %d strokes, %d clashes", l, seen, len(shown.Strokes), len(shown.Clashes))
		}
	}
	for id, g := range w.Grips(0) {
		if at, ok := g.At(file.Sizes[0]); !ok || at == 0 {
			t.Errorf("the handle %s stands nowhere", id)
		}
	}
}

// ticked are how cards call the parts of the cut list whose name takes no s at its end.
var ticked = map[string]string{
	"front or back": "front and back", "bottom": "bottom", "board for splines": "board for splines", "board for wedge blocks": "board for wedge blocks",
	"strip for the wedges":  "strip for the wedges",
	"apron, front and back": "aprons, front and back", "apron, left and right": "aprons, left and right",
	"stretcher, front and back": "stretchers, front and back", "stretcher, left and right": "stretchers, left and right",
}

// Every card says what it is, what is done, how it is proved and what to beware of.
func checkCards(t *testing.T, job templates.Job) {
	for _, s := range job.Sections {
		for _, c := range s.Cards {
			if c.Heading == "" || len(c.Text) == 0 || slices.Contains(c.Text, "") || c.Test == "" || c.Caution == "" {
				t.Errorf("card %d lacks words: %q", c.Number, []any{c.Heading, c.Text, c.Test, c.Caution})
			}
			if strings.Count(strings.ToLower(c.Caution), "push block") > 1 {
				t.Errorf("card %d speaks of push blocks twice: %s", c.Number, c.Caution)
			}
		}
	}
}

// Every part of the cut list, spares too, has its boxes on a card. The ring's are counted
// where its cards are made.
func checkTicks(t *testing.T, job templates.Job) {
	for _, r := range job.Sections[1].Panels[0].Table[1:] {
		want := 0
		for _, cell := range r[1:3] {
			n, _ := strconv.Atoi(cell) // none is a dash
			want += n
		}
		var found []int
		for _, s := range job.Sections {
			for _, c := range s.Cards {
				boxes := 0
				for _, k := range c.Ticks {
					if name := cmp.Or(ticked[r[0]], r[0]+"s"); k.Text == name || strings.HasPrefix(k.Text, name+",") {
						boxes += k.Boxes
					}
				}
				found = append(found, boxes)
			}
		}
		if !slices.Contains(found, want) {
			t.Errorf("%d of %s in the cut list, on the cards %v", want, r[0], found)
		}
	}
}

// The examples are as sound as the starting designs, and a check comes out the same in
// whatever unit it is printed, the round sizes and limits of the file's own unit deciding.
func TestExamplesHangOnNoUnit(t *testing.T) {
	files, err := fs.Glob(examples.Designs, "*.toml")
	if err != nil || len(files) == 0 {
		t.Fatal(err)
	}
	for _, name := range files {
		text, err := examples.Designs.ReadFile(name)
		if err != nil {
			t.Fatal(err)
		}
		file, err := design.Read(text, new(Sizes).Add)
		if err != nil {
			t.Fatal(err)
		}
		checkStart(t, text, file.Sizes[0].Kind)
		var all [2][]kind.Check
		for _, u := range []measure.Unit{measure.Millimetre, measure.Inch} {
			for i := range file.Sizes {
				file.Sizes[i].Unit = u
			}
			w, err := Solve(file.Sizes)
			if err != nil {
				t.Fatal(err)
			}
			all[u] = w.Report().All()
		}
		for i, c := range all[0] {
			if d := all[1][i]; c.Grade != d.Grade || c.Value != d.Value || c.Limit != d.Limit {
				t.Errorf("%s: %s %s in mm, %s %s in inches", name, c.Grade, c.Measured(0), d.Grade, d.Measured(0))
			}
		}
	}
}

// What mends one size alone, by a figure of its own, says which; what all have alike does not.
func TestFixesNameTheirSize(t *testing.T) {
	const text = "kind = \"box\"\n[box]\nsides = 5\nside = 300\nheight = 200\nthickness = 15\nslope = 2\n" +
		"[box.bottom]\nthickness = 12\ngap = 0.4\n[wood]\nspecies = \"Larch, western\"\nmoisture = [9, 14]\n[saw]\nkerf = 3\n" +
		"[[size]]\nname = \"low\"\n[[size]]\nname = \"tall\"\n[size.box]\nheight = 300\n[size.box.bottom]\ngap = 0.5\n"
	file, err := design.Read([]byte(text), new(Sizes).Add)
	if err != nil {
		t.Fatal(err)
	}
	w, err := Solve(file.Sizes)
	if err != nil {
		t.Fatal(err)
	}
	named := 0
	for _, s := range w.Report().Sizes {
		for _, c := range s.Checks {
			for _, f := range c.Fixes {
				want := ""
				if f.Key == "box.bottom.gap" || f.Key == "box.height" {
					want, named = s.Design.Size, named+1
				}
				if f.Size != want {
					t.Errorf("%s of %s is mended by %s of size %q, want %q", c.ID, s.Design.Size, f.Key, f.Size, want)
				}
			}
		}
	}
	if named == 0 {
		t.Error("nothing is mended by a figure of one size")
	}
}

// A design of one kind that holds what another kind asks for is told so once.
func TestTablesOfAnotherKind(t *testing.T) {
	text, err := design.Start(design.BoxKind, 5, measure.Millimetre)
	if err != nil {
		t.Fatal(err)
	}
	_, err = design.Read(append(text, "\n[ring]\nsides = 3\nwidth = 28\n"...), new(Sizes).Add)
	mistakes, _ := err.(design.Mistakes)
	if len(mistakes) != 1 || mistakes[0].Key != "ring" {
		t.Errorf("%v", err)
	}
}
