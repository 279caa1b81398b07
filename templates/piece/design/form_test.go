package design

import (
	"bytes"
	"fmt"
	"reflect"
	"slices"
	"strings"
	"testing"

	"rodsheet/geometry/measure"
)

func formFields(t *testing.T, text string) (Form, map[Key]FormField) {
	t.Helper()
	form := must(FormOf([]byte(text)))(t)
	out := map[Key]FormField{}
	for _, g := range form.Groups {
		for _, f := range g.Fields {
			if _, twice := out[f.Key]; twice || f.Key.table() != g.Table {
				t.Errorf("%s stands twice, or in [%s]", f.Key, g.Table)
			}
			out[f.Key] = f
		}
	}
	return form, out
}

// Every key is asked for, in words of its own, and nothing else.
func TestFormHasEveryKey(t *testing.T) {
	for kind, name := range Kinds() {
		for _, unit := range []string{"mm", "in"} {
			_, fields := formFields(t, "kind = \""+name+"\"\nunits = \""+unit+"\"\n")
			for key := range allAsked() {
				if k, _, own := schemaOf(key); own && k != Kind(kind) {
					continue
				}
				if f, ok := fields[key]; key != "name" && (!ok || f.Words == "" || strings.Contains(f.Words, "#")) {
					t.Errorf("%s: %+v", key, f)
				}
				delete(fields, key)
			}
			if len(fields) > 0 {
				t.Errorf("no keys: %v", fields)
			}
		}
	}
}

func TestForm(t *testing.T) {
	form, fields := formFields(t, sized("[size.legs]\nfoot-circle = '64cm'\n[size.top]\nkind = \"none\"", 24,
		"species = \"ash\"\n[[wood.board]]\nlength = 2000\n[[wood.board]]\ncount = 3", 8, "# horn = 12"))
	if want := []string{"low", "tall"}; !slices.Equal(form.Sizes, want) || form.Unit != measure.Millimetre {
		t.Errorf("sizes %q in %v", form.Sizes, form.Unit)
	}
	for _, g := range form.Groups {
		if g.Repeats != (g.Table == "wood.board" || g.Table == "item") || g.Table == "wood.board" && g.Rows != 2 {
			t.Errorf("%s: %v, %d", g.Table, g.Repeats, g.Rows)
		}
	}
	for _, want := range []FormField{
		{Key: "legs.foot-circle", Kind: LengthField, Limits: "more than 0 mm, at most 20000 mm", Most: 20000, Own: []string{"", "64cm"},
			Words: "diameter of the circle through the middles of the feet's backs; their corners reach further"},
		{Key: "legs.splay", Kind: AngleField, Limits: "0° to 60°", Most: 60, Given: "14", Own: []string{"", ""}, Words: "lean from plumb; or give one of the next two instead"},
		{Key: "legs.foot-spread", Kind: LengthField, Limits: "more than 0 mm, at most 20000 mm", Most: 20000, Own: []string{"", ""}, Idle: true, Words: "from the middle of one foot's back to the next"},
		{Key: "ring.horn", Kind: LengthField, Limits: "0 mm to 1000 mm", Most: 1000, Own: []string{"", ""}, Standard: "0", Words: "the plain end past its neighbour; 0 if left out"},
		{Key: "ring.slack", Kind: LengthField, Limits: "0 mm to 10 mm", Most: 10, Own: []string{"", ""}, Standard: "0", Idle: true, Words: "play of a closed lap, square to it; 0 if left out"},
		{Key: "top.pads.diameter", Kind: LengthField, Limits: "1 mm to 1000 mm", Least: 1, Most: 1000, Given: "20", Own: []string{"", ""}, Words: "of a pad"},
		{Key: "wood.board.count", Kind: CountField, Limits: "1 to 1000", Least: 1, Most: 1000, Own: []string{"", "3"}, Standard: "1", Words: "boards alike; 1 if left out"},
		{Key: "prices.wood-per-m3", Kind: NumberField, Limits: "0 to 1000000", Most: 1e6, Words: "of a cubic metre; or give the next instead"},
		{Key: "wood.moisture", Kind: RangeField, Limits: "6 to 14", Least: 6, Most: 14, Own: []string{"", ""}, Standard: "8, 12", Words: "per cent, between which the wood will live"},
	} {
		if got := fields[want.Key]; !reflect.DeepEqual(got, want) {
			t.Errorf("got  %+v\nwant %+v", got, want)
		}
	}
}

// Limits are in the unit of the file.
func TestFormInInches(t *testing.T) {
	form, fields := formFields(t, "units = \"in\"\n[top]\nkind = \"none\"\n")
	if got := fields["saw.kerf"]; form.Unit != measure.Inch || got.Limits != "more than 0 in, at most 15/32 in (0.472)" || got.Most < 0.4724 || got.Most > 0.4725 {
		t.Errorf("%v: %+v", form.Unit, got)
	}
	if got := fields["wood.rough-width"].Standard; got != "1/8" {
		t.Errorf("rough width: %s", got)
	}
	if !fields["top.pads.height"].Idle || fields["top.kind"].Idle {
		t.Error("pads without a top")
	}
}

// What a form says holds where a key is left out does so.
func TestFormStandards(t *testing.T) {
	tried := 0
	for _, text := range append(texts(t), sound+"[[wood.board]]\nlength = 2\nwidth = 2\nthickness = 2\n[[item]]\nname = \"a\"\n") {
		_, fields := formFields(t, text)
		l := survey([]byte(text))
		for key, f := range fields {
			c := Change{Key: key}
			if table := key.table(); slices.Contains(rowTables(), table) {
				if c.Row = 1; l.rows[table] == 0 {
					continue
				}
			}
			without := must(Edit([]byte(text), c))(t)
			c.Value = f.Standard
			with, err := Edit(without, c)
			if err != nil {
				t.Fatalf("%s = %s: %v", key, f.Standard, err)
			}
			a, err1 := Read(without, nil)
			b, err2 := Read(with, nil)
			if f.Standard == "" || f.Idle || err1 != nil || err2 != nil || bytes.Equal(without, with) {
				continue
			}
			tried++
			if !reflect.DeepEqual(a, b) {
				t.Errorf("%s = %s: got\n%+v\nwant\n%+v", key, f.Standard, b, a)
			}
		}
	}
	if tried < 100 {
		t.Errorf("only %d tried", tried)
	}
}

// What no longer fits beside a word can be taken out with it, in each size by itself.
func TestMisfits(t *testing.T) {
	text := sized("[size.ring]\nplain-end = \"closed\"\nslack = 0.2\n[size.top]\ndiameter = 500", 8, "horn = 12 # past", 20, "[top.fixing]\nbond = \"silicone\"\n[top.pads]")
	if got := Misfits([]byte(text)); len(got) > 0 {
		t.Errorf("of a sound design: %v", got)
	}
	for _, tt := range []struct {
		change Change
		want   string
	}{
		{Change{Key: "ring.plain-end", Value: "flush"}, "[{ ring.horn 0 }]"},
		{Change{Key: "ring.plain-end", Size: "tall", Value: "open"}, "[{tall ring.slack 0 }]"},
		{Change{Key: "top.outline", Value: "ring"}, "[{ top.diameter 0 } {tall top.diameter 0 }]"},
		{Change{Key: "top.outline", Size: "low", Value: "ring"}, "[]"},
		{Change{Key: "top.kind", Value: "wood"}, "[{ top.fixing.bond 0 }]"},
		{Change{Key: "top.kind", Value: "none"}, "[]"},
		{Change{Key: "legs.height", Value: "470"}, "[]"},
	} {
		changed := edit(t, text, tt.change)
		if _, err := Read([]byte(changed), nil); (err == nil) != (tt.want == "[]") {
			t.Errorf("%v: %v", tt.change, err)
		}
		misfits := Misfits([]byte(changed))
		if got := fmt.Sprint(misfits); got != tt.want {
			t.Errorf("%v: got %s, want %s", tt.change, got, tt.want)
		}
		if _, err := Read([]byte(edit(t, changed, misfits...)), nil); err != nil {
			t.Errorf("%v: %s", tt.change, complaints(err))
		}
	}
}

// Straight legs have no taper, a top without pads lies on the frame.
func TestFormOfTablesLeftOut(t *testing.T) {
	for text, want := range map[string]string{"": "none", "[legs.taper]\nstart = 3\n": "one", sizeLow + "legs.taper.start = 3\n": "one"} {
		if _, fields := formFields(t, text); fields["legs.taper.faces"].Standard != want || fields["top.pads.kind"].Standard != "none" {
			t.Errorf("%q: %+v, %+v", text, fields["legs.taper.faces"], fields["top.pads.kind"])
		}
	}
}

// A file with mistakes shows what can be read of it.
func TestFormOfMistakes(t *testing.T) {
	_, fields := formFields(t, "title = \"a\nunits = \"mm\"\n[ring\nsides = 3\n[legs]\nheight = tall\nbreadth = 40\nsplay = true\nfoot-circle = 600\n[wood]\nmoisture = [8,\n[saw]\nkerf = 3\n")
	for key, want := range map[Key]string{"title": "", "units": "mm", "legs.height": "", "legs.breadth": "40", "legs.splay": "true", "legs.foot-circle": "600", "saw.kerf": "3"} {
		if got := fields[key].Given; got != want {
			t.Errorf("%s: %q, want %q", key, got, want)
		}
	}
	if _, err := FormOf([]byte("\xff\xfe")); err == nil {
		t.Error("no text has a form")
	}
}

func BenchmarkFormOf(b *testing.B) {
	text := []byte(texts(b)[5])
	for b.Loop() {
		if _, err := FormOf(text); err != nil {
			b.Fatal(err)
		}
	}
}

func BenchmarkEdit(b *testing.B) {
	text := []byte(texts(b)[5])
	for b.Loop() {
		if _, err := Edit(text, Change{Key: "legs.breadth", Value: "1 5/16"}); err != nil {
			b.Fatal(err)
		}
	}
}
