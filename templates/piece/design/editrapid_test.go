package design

import (
	"bytes"
	"fmt"
	"maps"
	"os"
	"path/filepath"
	"slices"
	"strconv"
	"strings"
	"testing"

	"github.com/pelletier/go-toml/v2"
	"pgregory.net/rapid"

	"rodsheet/geometry/measure"
)

// texts are designs written in every way that TOML has.
func texts(t testing.TB) []string {
	out := []string{sound, sized("[size.legs]\nfoot-circle = 640\n[size.top]\nkind = \"none\""),
		"title = 'a'\nlegs.breadth = 40\nlegs.splay = 3\nlegs.height = '450'\nring = { sides = 3, inside = 260,width=28 , depth = 36 }\nsaw = {kerf = 3}\n" +
			"wood.density = 700\nsize = [{name = \"low\", legs = {height = 400}}, {name = \"tall\"}]\n",
		"[legs]\nbreadth = 40\ntaper.start = 90\nheight = 450\nsplay = '1:6'\ntaper.foot = 20\n[wood] # boards\nmoisture = [\n 8, # dry\n 12\n]\nspecies=\"\"\"ash\"\"\"\n[top]\n" +
			"outline='free'\npoints = [\n  [-300, '-20cm'],\n  [300, -200],\n  [0, 350], # the tip\n]\nkind = \"wood\"\n[saw]\nkerf = \"1/8in\"",
	}
	for i := range schemas() {
		for sides := 3; sides <= 4; sides++ {
			for _, u := range []measure.Unit{measure.Millimetre, measure.Inch} {
				text := must(Start(Kind(i), sides, u))(t)
				out = append(out, string(text))
			}
		}
	}
	files, err := filepath.Glob("../../../examples/*.toml")
	if err != nil || len(files) == 0 {
		t.Fatal(files, err)
	}
	for _, name := range files {
		text := must(os.ReadFile(name))(t)
		out = append(out, string(text))
	}
	return out
}

// scrawled draws a text with comments, spaces and line ends of a maker's own.
func scrawled(t *rapid.T, text string) string {
	var out []string
	for _, line := range strings.Split(text, "\n") {
		setting := !strings.Contains(line, "#") && strings.TrimSpace(line) != "" && !strings.HasPrefix(line, " ")
		switch rapid.IntRange(0, 12).Draw(t, "scrawl") {
		case 0:
			out = append(out, "# a note")
		case 1:
			out = append(out, "", "  # proud = 5 # height")
		case 2:
			if setting {
				line = "  " + line
			}
		case 3:
			if setting {
				line += rapid.SampledFrom([]string{" #", "\t# says 'so\"", "   "}).Draw(t, "behind")
			}
		case 4:
			line = strings.Replace(line, " = ", "=", 1)
		}
		out = append(out, line)
	}
	return strings.Join(out, "\n")
}

// ended draws the line ends of a text, and a mark at its beginning.
func ended(t *rapid.T, text string) string {
	if rapid.Bool().Draw(t, "final") {
		text = strings.TrimRight(text, "\n")
	}
	if rapid.Bool().Draw(t, "windows") {
		text = byteOrderMark + strings.ReplaceAll(text, "\n", "\r\n")
	}
	return text
}

var valuesOf = map[FormKind][]string{
	LengthField: {"640", "0", "1.5", "64cm", "25 1/4in", `2' 1 1/4"`, `3/4"`, "20", "36"}, AngleField: {"12", "12.5", "14°30'", "1:6"},
	NumberField: {"700", ".5", "20"}, CountField: {"1", "3", "4"}, LineField: {"ash", `an "A"`, `back\slash`, "it's", `both ' and "`, "ąż"},
	DateField: {"2031-05-04", "4 May"}, YesNoField: {"true", "no"}, RangeField: {"8, 12", "9, 11.5"},
	PointsField: {"1, 2; 3, 4; 5, 6", "-300, -20cm; 300, -200; 0, 351", "1, 2; 3, 4; 5, 6; 7, 8 1/2in"},
}

// drawChange draws one that a text may take, with a value or none.
func drawChange(t *rapid.T, l layout) Change {
	keys := slices.Sorted(maps.Keys(allAsked()))
	c := Change{Key: rapid.SampledFrom(keys[1:]).Draw(t, "key")}
	if c.Key == "name" {
		c.Key = "size.name"
	}
	a := allAsked()[c.Key]
	if table := c.Key.table(); slices.Contains(rowTables(), table) {
		c.Row = rapid.IntRange(1, l.rows[table]+1).Draw(t, "row")
	} else if l.sizes > 0 && (c.Key == "size.name" || !c.Key.forAll() && rapid.Bool().Draw(t, "own")) {
		c.Size = l.sizeName(rapid.IntRange(1, l.sizes).Draw(t, "size"))
	}
	if rapid.IntRange(0, 4).Draw(t, "out") > 0 {
		c.Value = rapid.SampledFrom(append(valuesOf[a.kind], a.choices...)).Draw(t, "value")
	}
	return c
}

// flat reads a text as TOML and returns its values by their whole keys, without those
// that a change is to touch.
func flat(t *rapid.T, text []byte) map[string]string {
	var tree map[string]any
	if err := toml.Unmarshal(bytes.TrimPrefix(text, []byte(byteOrderMark)), &tree); err != nil {
		t.Fatalf("%v\n%s", err, text)
	}
	out := map[string]string{}
	var walk func(string, any)
	walk = func(at string, v any) {
		switch v := v.(type) {
		case map[string]any:
			for key, kid := range v {
				walk(at+"."+key, kid)
			}
		case []any:
			if len(v) > 0 {
				if _, tables := v[0].(map[string]any); !tables {
					out[at] = fmt.Sprint(v...)
					return
				}
			}
			for i, kid := range v {
				walk(at+"."+strconv.Itoa(i+1), kid)
			}
		default:
			out[at] = fmt.Sprint(v)
		}
	}
	walk("", tree)
	return out
}

// placeOf is how flat calls the key of a change.
func placeOf(l layout, c Change, key Key) string {
	size, _ := l.sizeOf(c.Size)
	switch {
	case c.Row > 0:
		return fmt.Sprintf(".%s.%d.%s", key.table(), c.Row, key.word())
	case c.Key == "size.name":
		return fmt.Sprintf(".size.%d.name", size)
	case c.Size != "":
		return fmt.Sprintf(".size.%d.%s", size, key)
	}
	return "." + string(key)
}

// decoded is what a value means in TOML.
func decoded(k FormKind, value string) string {
	switch k {
	case YesNoField:
		return trueOrFalse(value)
	case DateField, LineField, ChoiceField:
		return value
	case PointsField, RangeField:
		var tree map[string]any
		if err := toml.Unmarshal([]byte("x = "+k.list(value)), &tree); err != nil {
			return err.Error()
		}
		return fmt.Sprint(tree["x"].([]any)...)
	}
	if v, err := strconv.ParseFloat(value, 64); err == nil {
		return fmt.Sprint(v)
	}
	return value
}

// Whatever is changed in whatever text: another reader of TOML finds the new value and
// nothing else changed; and the old value, written as it is written here, gives back
// the old text.
func TestEditChangesNothingElse(t *testing.T) {
	all := texts(t)
	done, undone := 0, 0
	rapid.Check(t, func(t *rapid.T) {
		text := []byte(ended(t, scrawled(t, rapid.SampledFrom(all).Draw(t, "text"))))
		l := survey(bytes.TrimPrefix(text, []byte(byteOrderMark)))
		c := drawChange(t, l)
		got, err := Edit(text, c)
		if err != nil {
			if _, ok := err.(Mistakes); !ok {
				t.Fatalf("%T: %v", err, err)
			}
			return
		}
		done++
		key := c.Key
		want := flat(t, text)
		saw := flat(t, got)
		place := placeOf(l, c, key)
		_, given := want[place]
		for _, k := range alternatives(key) {
			if k != key && c.Value != "" {
				given = given && want[placeOf(l, c, k)] == ""
				delete(want, placeOf(l, c, k))
			}
		}
		delete(want, place)
		if c.Value != "" {
			asked := allAsked()[key]
			if c.Key == "size.name" {
				asked = allAsked()["name"]
			}
			want[place] = decoded(asked.kind, c.Value)
		}
		if !maps.Equal(want, saw) {
			t.Fatalf("%+v: want %v, saw %v\n%s", c, want, saw, got)
		}
		if undo(t, text, got, l, c, given) {
			undone++
		}
	})
	if !testing.Short() && (done < 30 || undone < 3) {
		t.Errorf("only %d changes, %d of them undone", done, undone)
	}
}

// A size or a row that is added and taken out again leaves no trace; what is given
// again as it is given changes nothing.
func TestEditsThatLeaveNoTrace(t *testing.T) {
	all := texts(t)
	rapid.Check(t, func(t *rapid.T) {
		text := []byte(ended(t, scrawled(t, rapid.SampledFrom(all).Draw(t, "text"))))
		l := surveyed(text)
		check := func(what string, got []byte, err error) {
			if err != nil || !bytes.Equal(got, text) {
				t.Fatalf("%s: %v\n%q\n%q", what, err, text, got)
			}
		}
		for _, e := range l.entries {
			c := Change{Key: e.key, Row: e.row, Value: e.shown()}
			if e.size > 0 {
				c.Size = l.sizeName(e.size)
			}
			if e.off || e.size > 0 && e.key == "name" {
				continue
			}
			got, err := Edit(text, c)
			check(fmt.Sprint(c), got, err)
		}
		if l.sizes > 0 {
			more, err := AddSize(text, "another")
			if err == nil {
				more, err = RemoveSize(more, "another")
			}
			check("a size", more, err)
		}
		if n := l.rows["wood.board"]; n > 0 {
			more, err := Edit(text, Change{Key: "wood.board.length", Row: n + 1, Value: "9"})
			if err == nil {
				more, err = RemoveRow(more, "wood.board", n+1)
			}
			check("a board", more, err)
		}
	})
}

// undo takes a change back where that gives the old text, and reports whether it
// does.
func undo(t *rapid.T, text, got []byte, l layout, c Change, given bool) bool {
	key, at, err := l.target(c)
	if err != nil || c.Value == "" {
		return false
	}
	back := c
	e, found := l.find(key, at)
	kind := allAsked()[key].kind
	switch {
	case found && given:
		if back.Value = e.shown(); kind.fresh(back.Value) != l.of(e.value) {
			return false
		}
		if key == "name" {
			back.Size = c.Value
		}
	case !found && at.size > 0 && !slices.ContainsFunc(l.entries, func(e entry) bool { return e.off && e.key == key && e.size == at.size }):
		if slices.ContainsFunc(alternatives(key), func(k Key) bool { _, ok := l.find(k, at); return ok }) {
			return false
		}
		back.Value = ""
	default:
		return false
	}
	again, err := Edit(got, back)
	if err != nil || !bytes.Equal(again, text) {
		t.Fatalf("%+v and %+v: %v\n%q\n%q", c, back, err, text, again)
	}
	return true
}
