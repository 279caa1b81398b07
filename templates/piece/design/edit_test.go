package design

import (
	"fmt"
	"reflect"
	"strings"
	"testing"

	"rodsheet/geometry/measure"
)

const sizeLow = "[[size]]\nname = \"low\"\n"

// What a change makes of a text, line by line.
func TestEdit(t *testing.T) {
	for _, tt := range []struct {
		name, text string
		change     Change
		want       string
	}{
		{"bare number", "[legs]\nheight = 450  # tall\n", Change{Key: "legs.height", Value: "460.5"}, "[legs]\nheight = 460.5  # tall\n"},
		{"number with a unit", "[legs]\nheight = 450\n", Change{Key: "legs.height", Value: "46cm"}, "[legs]\nheight = \"46cm\"\n"},
		{"back to a bare number", "[legs]\nheight = \"46cm\"\n", Change{Key: "legs.height", Value: " 450 "}, "[legs]\nheight = 450\n"},
		{"quotes without need", "[legs]\nheight = '450'\n", Change{Key: "legs.height", Value: "460"}, "[legs]\nheight = '460'\n"},
		{"single quotes", "[legs]\nheight = '25 1/4in'\n", Change{Key: "legs.height", Value: "2ft"}, "[legs]\nheight = '2ft'\n"},
		{"inch marks", "[legs]\nheight = 25\n", Change{Key: "legs.height", Value: `25 1/4"`}, "[legs]\nheight = '25 1/4\"'\n"},
		{"feet in single quotes", "[legs]\nheight = '25in'\n", Change{Key: "legs.height", Value: `2'`}, "[legs]\nheight = \"2'\"\n"},
		{"feet and inches", "[legs]\nheight = 25\n", Change{Key: "legs.height", Value: `2' 1"`}, "[legs]\nheight = \"2' 1\\\"\"\n"},
		{"minutes", "[legs]\nsplay = 14\n", Change{Key: "legs.splay", Value: "14°30'"}, "[legs]\nsplay = \"14°30'\"\n"},
		{"text", "title = \"\"\"one\"\"\"", Change{Key: "title", Value: "two"}, "title = \"\"\"two\"\"\""},
		{"text with quotes", "title = \"one\"", Change{Key: "title", Value: `the "two"`}, "title = 'the \"two\"'"},
		{"price", "[prices]\nwood-per-m3 = 3\n", Change{Key: "prices.wood-per-m3", Value: ".5"}, "[prices]\nwood-per-m3 = 0.5\n"},
		{"yes", "[saw]\nflat-tooth = false\n", Change{Key: "saw.flat-tooth", Value: "yes"}, "[saw]\nflat-tooth = true\n"},
		{"date", "[plan]\ndate = \"May\"\n", Change{Key: "plan.date", Value: "2031-05-04"}, "[plan]\ndate = 2031-05-04\n"},
		{"no date", "[plan]\ndate = 2031-05-04\n", Change{Key: "plan.date", Value: "2031-02-30"}, "[plan]\ndate = \"2031-02-30\"\n"},

		{"list in its lines", "[wood]\nmoisture = [ # %\n  8,\n  12, # summer\n]\n", Change{Key: "wood.moisture", Value: "8, 11"}, "[wood]\nmoisture = [ # %\n  8,\n  11, # summer\n]\n"},
		{"corners in their places", "[top]\npoints = [[1, 2],\n [3, \"4mm\"], [5, 6]]\n", Change{Key: "top.points", Value: "1, 2; 3, 40mm; 5, 7"}, "[top]\npoints = [[1, 2],\n [3, \"40mm\"], [5, 7]]\n"},
		{"more corners", "[top]\npoints = [[1, 2], [3, 4], [5, 6]]\n", Change{Key: "top.points", Value: "[[1, 2], [3, '4mm'], [5, 6], [-7, 8 1/2in]]"}, "[top]\npoints = [[1, 2], [3, \"4mm\"], [5, 6], [-7, \"8 1/2in\"]]\n"},

		{"as it stands", "[prices]\nwood-per-m3 = 1_000.50\n", Change{Key: "prices.wood-per-m3", Value: "1_000.50"}, "[prices]\nwood-per-m3 = 1_000.50\n"},
		{"as it should stand", "[prices]\nwood-per-m3 = \"10\"\n", Change{Key: "prices.wood-per-m3", Value: "10"}, "[prices]\nwood-per-m3 = 10\n"},

		{"lists in lists", "[top]\npoints = [[[1], 2], [3, 4], [5, 6]]\n", Change{Key: "top.points", Value: "9, 2; 3, 4; 5, 6"}, "[top]\npoints = [[9, 2], [3, 4], [5, 6]]\n"},

		{"commented key", "[legs]\n  #proud = 0   # head\nheight = 1\n", Change{Key: "legs.proud", Value: "2"}, "[legs]\n  proud = 2   # head\nheight = 1\n"},
		{"commented in another table", "[ring]\n# proud = 0\n[legs]\nheight = 1\n", Change{Key: "legs.proud", Value: "2"}, "[ring]\n# proud = 0\n[legs]\nheight = 1\nproud = 2\n"},
		{"commented table", "[top]\nkind = \"wood\"\n\n# [top.pads] # hold it\n# diameter = 20\n# height = 6\n\n[wood]\n", Change{Key: "top.pads.height", Value: "7"}, "[top]\nkind = \"wood\"\n\n[top.pads] # hold it\n# diameter = 20\nheight = 7\n\n[wood]\n"},
		{"commented table that is there", "[top.pads]\nheight = 6\n\n# [top.pads]\n# diameter = 20\n", Change{Key: "top.pads.diameter", Value: "7"}, "[top.pads]\ndiameter = 7\nheight = 6\n\n# [top.pads]\n# diameter = 20\n"},
		{"commented table with a key behind it", "[top]\n# [top.pads]\n# height = 6\nkind = \"wood\"\n", Change{Key: "top.pads.height", Value: "7"}, "[top]\n# [top.pads]\n# height = 6\nkind = \"wood\"\n\n[top.pads]\nheight = 7\n"},
		{"behind the key before", "[ring]\nsides = 3\nwidth = 28 # mm\n#    # planed\nhorn = 3\n", Change{Key: "ring.depth", Value: "36"}, "[ring]\nsides = 3\nwidth = 28 # mm\n#    # planed\ndepth = 36\nhorn = 3\n"},
		{"first of its table", "[ring] # three\n\twidth = 28\n", Change{Key: "ring.sides", Value: "4"}, "[ring] # three\nsides = 4\n\twidth = 28\n"},
		{"indented", "[ring]\n\tsides = 3\n", Change{Key: "ring.width", Value: "4"}, "[ring]\n\tsides = 3\n\twidth = 4\n"},
		{"no table yet", "[ring]\nsides = 3\n\n[wood]\n", Change{Key: "legs.proud", Value: "1"}, "[ring]\nsides = 3\n\n[legs]\nproud = 1\n\n[wood]\n"},
		{"table that would be the first", "[wood]\nspares = 1\n", Change{Key: "ring.width", Value: "1"}, "[ring]\nwidth = 1\n\n[wood]\nspares = 1\n"},
		{"head of the file", "# mine\n[wood]\nspares = 1\n", Change{Key: "units", Value: "in"}, "# mine\nunits = \"in\"\n\n[wood]\nspares = 1\n"},
		{"before the title", "# mine\nunits = \"in\"\n[wood]\nspares = 1\n", Change{Key: "title", Value: "a"}, "# mine\ntitle = \"a\"\nunits = \"in\"\n[wood]\nspares = 1\n"},
		{"empty file", "", Change{Key: "ring.width", Value: "1"}, "[ring]\nwidth = 1\n"},

		{"no final line end", "[ring]\nsides = 3", Change{Key: "ring.width", Value: "4"}, "[ring]\nsides = 3\nwidth = 4"},
		{"line ends of Windows", "\ufeff[ring]\r\nsides = 3\r\n", Change{Key: "legs.height", Value: "4"}, "\ufeff[ring]\r\nsides = 3\r\n\r\n[legs]\r\nheight = 4\r\n"},
		{"dots", "legs.height = 3\nsaw.kerf = 2\n", Change{Key: "legs.proud", Value: "4"}, "legs.height = 3\nlegs.proud = 4\nsaw.kerf = 2\n"},
		{"dots below a header", "[legs]\ntaper.start = 3\n", Change{Key: "legs.taper.foot", Value: "4"}, "[legs]\ntaper.start = 3\ntaper.foot = 4\n"},
		{"dots and a table below", "legs.height = 3\n", Change{Key: "legs.taper.foot", Value: "4"}, "legs.height = 3\n\n[legs.taper]\nfoot = 4\n"},
		{"braces", "legs = { height = 3, proud = 1 }\n", Change{Key: "legs.proud", Value: "4"}, "legs = { height = 3, proud = 4 }\n"},
		{"new in braces", "legs = { height = 3, proud = 1 }\n", Change{Key: "legs.clear", Value: "4"}, "legs = { height = 3, clear = 4, proud = 1 }\n"},
		{"first in braces", "legs = { height = 3 }\n", Change{Key: "legs.breadth", Value: "4"}, "legs = { breadth = 4, height = 3 }\n"},
		{"empty braces", "legs = {}\n", Change{Key: "legs.taper.foot", Value: "4"}, "legs = {taper.foot = 4}\n"},
		{"commented braces", "# legs = {height = 3}\n[saw]\nkerf = 3\n", Change{Key: "legs.height", Value: "4"}, "# legs = {height = 3}\n[legs]\nheight = 4\n\n[saw]\nkerf = 3\n"},
		{"out of braces", "legs = {height = 3, proud = 1}\n", Change{Key: "legs.height"}, "legs = {proud = 1}\n"},
		{"last out of braces", "legs = {height = 3, proud = 1}\n", Change{Key: "legs.proud"}, "legs = {height = 3}\n"},

		{"taken out", "[legs]\n  proud = 2   # head\n", Change{Key: "legs.proud"}, "[legs]\n  # proud = 2   # head\n"},
		{"taken out of a list of lines", "[top]\npoints = [[1, 2],\n [3, 4]]\n", Change{Key: "top.points"}, "[top]\n# points = [[1, 2],\n # [3, 4]]\n"},
		{"not there", "[legs]\n", Change{Key: "legs.proud"}, "[legs]\n"},
		{"another of its group", "[legs]\nsplay = 14 # lean\n# foot-circle = 600 # wide\n", Change{Key: "legs.foot-circle", Value: "640"}, "[legs]\n# splay = 14 # lean\nfoot-circle = 640 # wide\n"},
		{"group of a size", "[legs]\nsplay = 14\n" + sizeLow + "[size.legs]\nfoot-circle = 600 # wide\n", Change{Size: "low", Key: "legs.splay", Value: "10"}, "[legs]\nsplay = 14\n" + sizeLow + "[size.legs]\nsplay = 10\n"},

		{"of a size", sizeLow + "[size.legs]\nheight = 3\n", Change{Size: "low", Key: "legs.height", Value: "4"}, sizeLow + "[size.legs]\nheight = 4\n"},
		{"new in a size", sizeLow + "[size.legs]\nheight = 3\n[[size]]\nname = \"b\"\n", Change{Size: "low", Key: "ring.width", Value: "4"}, sizeLow + "[size.ring]\nwidth = 4\n[size.legs]\nheight = 3\n[[size]]\nname = \"b\"\n"},
		{"new in the last size", sizeLow + "[[size]]\nname = \"b\"\n[wood]\nspares = 1\n", Change{Size: "b", Key: "ring.width", Value: "4"}, sizeLow + "[[size]]\nname = \"b\"\n[size.ring]\nwidth = 4\n[wood]\nspares = 1\n"},
		{"out of a size", sizeLow + "[size.legs]\nheight = 3\nproud = 1\n", Change{Size: "low", Key: "legs.proud"}, sizeLow + "[size.legs]\nheight = 3\n"},
		{"last out of a size", sizeLow + "[size.legs]\nproud = 1\n", Change{Size: "low", Key: "legs.proud"}, sizeLow},
		{"last line out of a size", sizeLow + "[size.legs]\r\nheight = 3\r\nproud = 1", Change{Size: "low", Key: "legs.proud"}, sizeLow + "[size.legs]\r\nheight = 3"},
		{"for all beside sizes", "[legs]\nproud = 1\n" + sizeLow + "[size.legs]\nheight = 3\n", Change{Key: "legs.height", Value: "4"}, "[legs]\nheight = 4\nproud = 1\n" + sizeLow + "[size.legs]\nheight = 3\n"},
		{"sizes in braces", "size = [{name = \"low\"}, {name = \"b\"}]\n", Change{Size: "b", Key: "legs.height", Value: "4"}, "size = [{name = \"low\"}, {name = \"b\", legs.height = 4}]\n"},
		{"other name", "[[size]]\nname = 'low'\n", Change{Size: "low", Key: "size.name", Value: "tall"}, "[[size]]\nname = 'tall'\n"},

		{"board", "[[wood.board]]\nlength = 1\n[[wood.board]]\nlength = 2\n", Change{Key: "wood.board.length", Row: 2, Value: "3"}, "[[wood.board]]\nlength = 1\n[[wood.board]]\nlength = 3\n"},
		{"one more board", "[[wood.board]]\nlength = 1\n\n[saw]\nkerf = 3\n", Change{Key: "wood.board.length", Row: 2, Value: "3"}, "[[wood.board]]\nlength = 1\n\n[[wood.board]]\nlength = 3\n\n[saw]\nkerf = 3\n"},
	} {
		got, err := Edit([]byte(tt.text), tt.change)
		if err != nil {
			t.Errorf("%s: %s", tt.name, complaints(err))
			continue
		}
		if string(got) != tt.want {
			t.Errorf("%s: got\n%s\nwant\n%s", tt.name, got, tt.want)
		}
	}
}

// What the starting file explains is used where it stands, a table with its keys.
func TestEditStart(t *testing.T) {
	text := must(Start(RingKind, 3, measure.Millimetre))(t)
	row := func(key Key, n int, value string) Change { return Change{Key: key, Row: n, Value: value} }
	got := edit(t, string(text), row("wood.board.length", 1, "2000"), row("wood.board.width", 1, "200"), row("wood.board.thickness", 1, "40"),
		row("wood.board.length", 2, "3m"), row("wood.board.width", 2, "150"), row("wood.board.thickness", 2, "30"),
		row("item.name", 1, "nut"), row("legs.foot-circle", 0, "700"), row("legs.proud", 0, "2"), row("plan.maker", 0, "a shop"))
	for _, size := range []string{"tall", "bar"} {
		added := must(AddSize([]byte(got), size))(t)
		got = string(added)
	}
	got = edit(t, got, Change{Size: "standard", Key: "size.name", Value: "low"}, Change{Size: "tall", Key: "legs.height", Value: "550"},
		Change{Size: "tall", Key: "legs.splay", Value: "9"}, Change{Size: "bar", Key: "ring.width", Value: "30"})
	file, err := Read([]byte(got), nil)
	if err != nil {
		t.Fatalf("%s\n%s", complaints(err), got)
	}
	var saw []string
	for _, d := range file.Sizes {
		saw = append(saw, fmt.Sprint(d.Size, d.Legs.Height, d.Legs.Lean, d.Ring.Width, d.Legs.Proud, d.Wood.Boards, d.Items, d.Plan.Maker))
	}
	const rest = " 2 [{2000 200 40 1} {3000 150 30 1}] [{nut  1 {0 false}}]a shop"
	want := []string{"low450 1 28" + rest, "tall550 0 28" + rest, "bar450 1 30" + rest}
	if !reflect.DeepEqual(saw, want) {
		t.Errorf("got  %q\nwant %q", saw, want)
	}
}

func edit(t *testing.T, text string, changes ...Change) string {
	t.Helper()
	got, err := Edit([]byte(text), changes...)
	if err != nil {
		t.Fatalf("%v: %s", changes, complaints(err))
	}
	return string(got)
}

func TestEditRefuses(t *testing.T) {
	two := with(27, low+"[[size]]\nname = \"tall\"\n")
	for _, tt := range []struct {
		name, text string
		change     Change
		want       string
	}{
		{"no figure", sound, Change{Key: "legs.height", Value: "tall"}, `12:10 legs.height: "tall" is not a length`},
		{"outside", sound, Change{Key: "legs.height", Value: "99m"}, "12:10 legs.height: 99000 mm must be at most 10000 mm"},
		{"of a size", two, Change{Size: "tall", Key: "legs.splay", Value: "90"}, "32:9 legs.splay of size tall: 90° must be at most 60°"},
		{"no such word", sound, Change{Key: "top.kind", Value: "glas"}, `17:8 top.kind: "glas" is not none, glass or wood | did you mean glass?`},
		{"lines", sound, Change{Key: "title", Value: "a\nb"}, "1:9 title: the text holds a character that cannot be printed | one line of plain text is wanted"},
		{"control character", sound, Change{Key: "title", Value: "a\x1b[2Jb"}, "1:9 title: the text holds a character that cannot be printed | one line of plain text is wanted"},
		{"control character of a length", sound, Change{Key: "legs.height", Value: "4\x000"}, `12:10 legs.height: "4\x000"`},
		{"many letters", sound, Change{Key: "title", Value: strings.Repeat("n", 10_000)}, "1:9 title: the text has 10000 characters, the most is 120"},
		{"many letters of a word", sound, Change{Key: "top.kind", Value: strings.Repeat("n", 10_000)}, `17:8 top.kind: "nnn`},
		{"many digits", sound, Change{Key: "wood.density", Value: strings.Repeat("9", 10_000)}, "25:11 wood.density: a number is wanted, not 9999"},
		{"no text", sound, Change{Key: "title", Value: "a\xff"}, "1:11 this is not UTF-8"},
		{"more bytes than a file has", sound, Change{Key: "title", Value: strings.Repeat("n", mostBytes)}, "1:1 a design file is a page or two of text"},
		{"both corners", sound, Change{Key: "wood.moisture", Value: "x, y"}, "25:13 wood.moisture: a number is wanted, not \"x\" | write it without quotes and without a unit\n25:18 wood.moisture: a number"},
		{"corners of three", with(18, "points = [[1, 2], [3, 4], [5, 6]]"), Change{Key: "top.points", Value: "1, 2, 3; 4; 5, 6"}, "18:12 top.points: a pair of lengths is wanted, not 3 | write points"},
		{"unknown key", sound, Change{Key: "legs.hieght", Value: "3"}, "1:1 legs.hieght: this key is not known"},
		{"table", sound, Change{Key: "legs", Value: "3"}, "1:1 legs: this key is not known"},
		{"unknown size", two, Change{Size: "high", Key: "legs.height", Value: "3"}, "1:1 there is no size high"},
		{"for all sizes", two, Change{Size: "low", Key: "units", Value: "in"}, "1:1 units of size low: this holds for all sizes | write it at the head of the file"},
		{"name twice", two, Change{Size: "low", Key: "size.name", Value: "TALL"}, "1:1 size.name: a size above has this name | give each size its own"},
		{"no name", two, Change{Size: "low", Key: "size.name"}, "1:1 size.name: the text is empty"},
		{"row", sound, Change{Key: "wood.board.length", Row: 2, Value: "3"}, "1:1 there is no [[wood.board]] number 2"},
		{"no row", sound, Change{Key: "item.name", Value: "3"}, "1:1 there is no [[item]] number 0"},
		{"no TOML", "[ring\n", Change{Key: "ring.width", Value: "3"}, "1:6 the name of a table is not closed | write [ring], or [[size]] for one of several"},
		{"twice", "[ring]\nwidth = 3\nwidth = 4\n", Change{Key: "ring.width", Value: "3"}, "3:1 width stands twice; first in line 2 | keep one of them"},
		{"table for a figure", "[ring]\nwidth = {a = 3}\n", Change{Key: "ring.width", Value: "3"}, "3:1 width stands twice; first in line 2"},
	} {
		got, err := Edit([]byte(tt.text), tt.change)
		if got != nil || !strings.HasPrefix(complaints(err), tt.want) || tt.want == "" {
			t.Errorf("%s: got %q, %s\nwant %s", tt.name, got, complaints(err), tt.want)
		}
	}
}

func TestSizesAddedAndRemoved(t *testing.T) {
	const b = "[[size]]\nname = \"b\"\n"
	add := func(name string) func([]byte) ([]byte, error) {
		return func(text []byte) ([]byte, error) { return AddSize(text, name) }
	}
	remove := func(name string) func([]byte) ([]byte, error) {
		return func(text []byte) ([]byte, error) { return RemoveSize(text, name) }
	}
	row := func(table Key, row int) func([]byte) ([]byte, error) {
		return func(text []byte) ([]byte, error) { return RemoveRow(text, table, row) }
	}
	for _, tt := range []struct {
		name, text string
		do         func([]byte) ([]byte, error)
		want       string
	}{
		{"first", "[saw]\nkerf = 3\n", add("b"), "[saw]\nkerf = 3\n\n[[size]]\nname = \"standard\"\n\n" + b},
		{"of that name", "[saw]\nkerf = 3\n", add("Standard"), "[saw]\nkerf = 3\n\n[[size]]\nname = \"first\"\n\n[[size]]\nname = \"Standard\"\n"},
		{"one more", sizeLow + "[size.saw]\nkerf = 3", add("b"), sizeLow + "[size.saw]\nkerf = 3\n\n[[size]]\nname = \"b\""},
		{"one more in braces", "size = [{name = \"low\"}] # sizes\n", add("b"), "size = [{name = \"low\"}, {name = \"b\"}] # sizes\n"},
		{"name twice", sizeLow, add("Low"), "1:1 size.name: a size above has this name | give each size its own"},
		{"no name", sizeLow, add(""), "1:1 size.name: the text is empty"},
		{"too many", strings.Repeat(sizeLow, 12), add("b"), "1:1 size: there are 13 sizes, the most is 12"},
		{"removed", sizeLow + "[size.saw]\nkerf = 3\n\n# the other\n" + b, remove("low"), "\n# the other\n" + b},
		{"last removed", sizeLow + "\n" + b + "[size.legs]\n# height = 3\n", remove("b"), sizeLow},
		{"only one", "[saw]\nkerf = 3\n" + sizeLow, remove("low"), "[saw]\nkerf = 3\n"},
		{"removed around another table", sizeLow + "[saw]\nkerf = 3\n[size.saw]\nkerf = 4\n", remove("low"), "[saw]\nkerf = 3\n"},
		{"removed from braces", "size = [{name = \"low\"}, {name = \"b\", legs = {height = 3}}]", remove("b"), "size = [{name = \"low\"}]"},
		{"no such", sizeLow, remove("b"), "1:1 there is no size b"},
		{"row", "[[item]]\nname = \"a\"\n\n[[item]]\nname = \"b\"\n# count = 3\n\n[saw]\n", row("item", 2), "[[item]]\nname = \"a\"\n\n[saw]\n"},
		{"no such row", "[[item]]\nname = \"a\"\n", row("item", 2), "1:1 there is no [[item]] number 2"},
		{"no table of rows", "[saw]\nkerf = 3\n", row("saw", 1), "1:1 there is no [[saw]] number 1"},
	} {
		got, err := tt.do([]byte(tt.text))
		if saw := string(got) + complaints(err); saw != tt.want {
			t.Errorf("%s: got\n%s\nwant\n%s", tt.name, saw, tt.want)
		}
	}
}
