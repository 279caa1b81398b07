package design

import (
	"strings"
	"testing"
)

// Each mistake with its place and its words; one a line where there are several.
func TestMistakes(t *testing.T) {
	tests := []struct{ name, text, want string }{
		{"misspelt key", with(6, "widht = 28"),
			"3:2 ring.width: is missing\n6:1 ring.widht: this key is not known | did you mean width?"},
		{"key of another table", with(8, "kerf = 3"), "8:1 ring.kerf: this key is not known | did you mean milled.kerf or saw.kerf?"},
		{"key above all tables", with(27, "[plan]\ntitle = 'x'"), "28:1 plan.title: this key is not known | title stands in no table: write it above the first line in brackets"},
		{"half a key", with(27, "[prices]\nwood = 3"), "28:1 prices.wood: this key is not known | did you mean wood-per-m3 or wood-per-board-foot?"},
		{"key like none", with(8, "colour = 3"), "8:1 ring.colour: this key is not known"},
		{"unknown table", with(27, "[sawblade]"), "27:2 sawblade: this key is not known"},
		{"misspelt table", with(25, "[swa]"), "1:1 saw: the table [saw] is missing | rodsheet new writes a design with all of them\n" +
			"25:2 swa: this key is not known | did you mean saw?"},
		{"table at the wrong place", with(13, "[taper]"), "13:2 taper: this key is not known | did you mean legs.taper?"},

		{"not a length", with(6, "width = true"), `6:9 ring.width: a length is wanted, not true | write 28, or with a unit and in quotes "1 1/8in"`},
		{"a list", with(6, "width = [28]"), `6:10 ring.width: a length is wanted, not a list | write 28, or with a unit and in quotes "1 1/8in"`},
		{"a table", with(6, "width = {mm = 28}"), `6:9 ring.width: a length is wanted, not a table | write 28, or with a unit and in quotes "1 1/8in"`},
		{"a date", with(6, "width = 2024-01-01"), `6:9 ring.width: a length is wanted, not a date or time | write 28, or with a unit and in quotes "1 1/8in"`},
		{"wrong unit", with(6, `width = "28 furlong"`), `6:9 ring.width: "28 furlong" has an unknown unit, "furlong" | the units are mm, cm, m, in and ft`},
		{"two readings", with(6, `width = "1,250"`), `6:9 ring.width: "1,250" can be read in two ways: 1.250 or 1250 | use a point for decimals, and nothing between thousands`},
		{"fraction without unit", with(6, `width = "3/4"`), `6:9 ring.width: "3/4" can be read in two ways: 0.75 mm or 3/4 in (19.05 mm) | write 3/4in or 0.75 mm`},
		{"power of ten", with(6, "width = 1e2"), `6:9 ring.width: "1e2" has a power of ten | write the figure out`},
		{"huge", with(6, "width = 99999999999999999999"), `6:9 ring.width: "99999999999999999999" is 100 m or more | a length without a unit is read as mm`},
		{"inf", with(6, "width = inf"), `6:9 ring.width: "inf" is not a length | write 640, 64cm, 25 1/4in or 2' 1 1/4"`},
		{"nan angle", with(11, "splay = nan"), `11:9 legs.splay: "nan" is not an angle | write 14.5, 14°30' or, rise over base, 1:6`},
		{"angle as yes or no", with(11, "splay = false"), `11:9 legs.splay: an angle is wanted, not false | write 14.5, or in quotes "14°30'" or "1:6"`},
		{"sides as text", with(4, `sides = "3"`), `4:9 ring.sides: a whole number is wanted, not "3"`},
		{"sides with a fraction", with(4, "sides = 3.5"), "4:9 ring.sides: a whole number is wanted, not 3.5"},
		{"sides beyond numbers", with(4, "sides = 99999999999999999999"), "4:9 ring.sides: a whole number is wanted, not 99999999999999999999"},
		{"density as text", with(24, `density = "700 kg"`), `24:11 wood.density: a number is wanted, not "700 kg" | write it without quotes and without a unit`},
		{"density nan", with(24, "density = nan"), "24:11 wood.density: must be a finite number"},
		{"density inf", with(24, "density = inf"), "24:11 wood.density: must be a finite number"},
		{"density over all numbers", with(24, "density = 1e999"), "24:11 wood.density: a number is wanted, not 1e999 | write it without quotes and without a unit"},
		{"not yes or no", with(26, "kerf = 3\nflat-tooth = \"yes\""), `27:14 saw.flat-tooth: true or false is wanted, not "yes" | write true, without quotes`},
		{"title", with(1, "title = 3"), "1:9 title: a text is wanted, not 3 | a text stands in quotes"},
		{"empty title", with(1, `title = " "`), "1:9 title: the text is empty"},
		{"long title", with(1, `title = "`+strings.Repeat("ä", 121)+`"`), "1:9 title: the text has 121 characters, the most is 120"},
		{"control character in the title", with(1, `title = "a\u0000b"`), "1:9 title: the text holds a character that cannot be printed | one line of plain text is wanted"},
		{"title turned round", with(1, `title = "a\u202eb"`), "1:9 title: the text holds a character that cannot be printed | one line of plain text is wanted"},
		{"unit", with(2, `units = "inch"`), `2:9 units: "inch" is not mm or in`},
		{"unit without quotes is no text", with(2, `units = 25.4`), `2:9 units: "mm" or "in" is wanted, not 25.4 | a word stands in quotes`},
		{"unknown word", with(17, `kind = "glas"`), `17:8 top.kind: "glas" is not none, glass or wood | did you mean glass?`},
		{"capitals", with(17, `kind = "Glass"`), `17:8 top.kind: "Glass" is not none, glass or wood | did you mean glass?`},
		{"table for a figure", with(3, "ring = 3\n[rings]"), "" +
			"1:1 ring: the table [ring] is missing | rodsheet new writes a design with all of them\n" +
			"3:8 ring: one table is wanted, not 3 | write [ring] on a line of its own\n" +
			"4:2 rings: this key is not known | did you mean ring?"},
		{"several for one", with(3, "[[ring]]"), "" +
			"1:1 ring: the table [ring] is missing | rodsheet new writes a design with all of them\n" +
			"3:3 ring: one table is wanted, not a list | write [ring] on a line of its own"},

		{"key twice", with(8, "width = 28"), "8:1 width stands twice; first in line 6 | keep one of them"},
		{"table twice", with(27, "[ring]\nhorn = 3"), "" +
			"27:2 the table [ring] stands twice; first in line 3 | keep one of them\n" +
			"28:1 horn stands twice; first in line 8 | keep one of them"},
		{"figure and table", with(27, "[ring.width]\nmost = 3"), "27:7 ring.width stands twice; first in line 6 | keep one of them"},
		{"table opened in two ways", with(2, "ring.slack = 0"), "3:2 a table is opened in two ways | give each table one header, and keep its keys below it"},

		{"missing", with(6, "", 26, ""), "3:2 ring.width: is missing\n25:2 saw.kerf: is missing"},
		{"missing, one of several", with(11, "", 12, ""), "" +
			"9:2 legs: one of splay, foot-circle or foot-spread is missing\n9:2 legs: one of height or frame-height is missing"},
		{"missing table", with(23, "", 24, ""), "1:1 wood: the table [wood] is missing | rodsheet new writes a design with all of them"},
		{"missing in a table that may be left out", with(14, "", 17, "", 21, ""), "13:7 legs.taper.start: is missing\n16:2 top.kind: is missing"},
		{"missing in a table opened by its boards", with(23, "[[wood.board]]\nlength = 900\nwidth = 90\nthickness = 40", 24, "[wood]\nspares = 2"),
			"27:2 wood: one of species or density is missing"},
		{"columns count characters", with(2, `top = {kind = "gläs", thickness = 0}`, 16, "", 17, "", 18, "", 19, "", 20, "", 21, "", 22, ""), "" +
			"2:15 top.kind: \"gläs\" is not none, glass or wood\n2:35 top.thickness: 0 mm must be at least 1 mm"},
		{"missing pad", with(21, ""), "20:6 top.pads.diameter: is missing"},
		{"missing points", with(19, `outline = "free"`), "16:2 top.points: is missing"},
		{"missing corner size", with(19, "outline = \"ring\"\ncorner = \"rounded\""), "16:2 top.corner-size: is missing"},
		{"missing wood", with(24, "spares = 3"), "23:2 wood: one of species or density is missing"},

		{"splay and foot circle", with(12, "height = 450\nfoot-circle = 600"),
			"13:1 legs.foot-circle: splay in line 11 says the same in another way | keep one of splay, foot-circle or foot-spread"},
		{"two heights", with(12, "frame-height = 400\nheight = 450"),
			"13:1 legs.height: frame-height in line 12 says the same in another way | keep one of height or frame-height"},
		{"place and gap", with(12, "height = 450\nclear = 1\nmid-to-leg = 200"),
			"14:1 legs.mid-to-leg: clear in line 13 says the same in another way | keep one of mid-to-leg or clear"},
		{"diameter and overhang", with(18, "thickness = 8\noverhang = 9"),
			"20:1 top.diameter: overhang in line 19 says the same in another way | keep one of diameter or overhang"},
		{"horn of a flush end", with(7, "depth = 36\nplain-end = \"flush\""),
			"9:1 ring.horn: goes with plain-end open or closed, not with flush | plain-end stands in line 8"},
		{"slack of an open end", with(8, "slack = 0.1"),
			"8:1 ring.slack: goes with plain-end closed, not with open | without plain-end it is open"},
		{"diameter of a ring top", with(18, "thickness = 8\noutline = \"ring\""),
			"20:1 top.diameter: goes with outline round, not with ring | outline stands in line 19"},
		{"corners of a round top", with(18, "thickness = 8\ncorner = \"rounded\"\ncorner-size = 9"), "" +
			"19:1 top.corner: goes with outline ring or free, not with round | without outline it is round\n" +
			"20:1 top.corner-size: goes with outline ring or free, not with round | without outline it is round"},
		{"size of sharp corners", with(19, "outline = \"ring\"\ncorner-size = 9"),
			"20:1 top.corner-size: goes with corner clipped or rounded, not with sharp | without corner it is sharp"},
		{"points of a round top", with(18, "thickness = 8\npoints = [[0, 0], [9, 0], [0, 9]]"),
			"19:1 top.points: goes with outline free, not with round | without outline it is round"},

		{"moisture", with(24, "species = \"beech\"\nmoisture = 8"), "25:12 wood.moisture: a pair of per cents is wanted, not 8 | write moisture = [8, 12]"},
		{"three moistures", with(24, "species = \"beech\"\nmoisture = [8, 9, 10]"), "25:13 wood.moisture: a pair of per cents is wanted, not 3 | write moisture = [8, 12]"},
		{"moistures outside", with(24, "species = \"beech\"\nmoisture = [5, 15]"), "" +
			"25:13 wood.moisture: 5 must be at least 6\n25:16 wood.moisture: 15 must be at most 14"},
		{"few points", with(19, "outline = \"free\"\npoints = [[0, 0]]"),
			"20:12 top.points: an outline has 3 to 100 corners, not 1 | write points = [[-200, -150], [200, -150], [0, 250]], counter-clockwise about the centre"},
		{"bad points", with(19, "outline = \"free\"\npoints = [[0, \"x\"], [9], [true, 1], [0, 1]]"), "" +
			"20:15 top.points: \"x\" is not a length | write 640, 64cm, 25 1/4in or 2' 1 1/4\"\n" +
			"20:22 top.points: a pair of lengths is wanted, not 1 | write points = [[-200, -150], [200, -150], [0, 250]], counter-clockwise about the centre\n" +
			"20:27 top.points: a length is wanted, not true | write 28, or with a unit and in quotes \"1 1/8in\""},
		{"boards", with(24, "species = \"beech\"\n[[wood.board]]\nlenght = 3\nwidth = 0"), "" +
			"25:8 wood.board.length: is missing\n25:8 wood.board.thickness: is missing\n" +
			"26:1 wood.board.lenght: this key is not known | did you mean length?\n27:9 wood.board.width: 0 mm must be more than 0 mm"},
		{"a board", with(24, "species = \"beech\"\nboard = 3"), "25:9 wood.board: a list of boards is wanted, not 3 | write [[wood.board]] and below it length, width and thickness"},

		{"boards in one line", with(24, "species = \"beech\"\nboard = [{length = 900, width = 90, thickness = 40}]"),
			"25:10 wood.board: boards stand each under a header of its own | write [[wood.board]] and below it length, width and thickness"},
		{"items", with(27, "[[item]]\ncount = 0\n[[item]]\nname = \"bolt\"\nprice = -1\nnaem = 3\n[[item]]\nname = \"nut\"\ncount = 1.5\nprice = \"dear\"\n[[item]]\nname = \"\""), "" +
			"27:3 item.name: is missing\n28:9 item.count: 0 must be at least 1\n" +
			"31:9 item.price: -1 must be at least 0\n32:1 item.naem: this key is not known | did you mean name?\n" +
			"35:9 item.count: a whole number is wanted, not 1.5\n36:9 item.price: a number is wanted, not \"dear\" | write it without quotes and without a unit\n" +
			"38:8 item.name: the text is empty"},
		{"an item", with(2, "item = 3"), "2:8 item: a list of items is wanted, not 3 | write [[item]] and below it name, and count and price if you like"},
		{"items in one line", with(2, "item = [{name = \"bolt\"}]"), "2:9 item: items stand each under a header of its own | write [[item]] and below it name, and count and price if you like"},
		{"many items", with(27, strings.Repeat("[[item]]\nname = \"bolt\"\n", 61)), "27:3 item: there are 61 items, the most is 60 | what is alike shares an item: count = 4"},
		{"two prices of wood", with(27, "[prices]\nwood-per-m3 = 3\nwood-per-board-foot = 3"),
			"29:1 prices.wood-per-board-foot: wood-per-m3 in line 28 says the same in another way | keep one of wood-per-m3 or wood-per-board-foot"},
		{"prices in words", with(27, "[prices]\ncurrency = 3\nglass-per-m2 = \"3\""), "28:12 prices.currency: a text is wanted, not 3 | a text stands in quotes\n" +
			"29:16 prices.glass-per-m2: a number is wanted, not \"3\" | write it without quotes and without a unit"},
		{"plan", with(27, "[plan]\nmaker = 3\ndate = 2\nrevision = \""+strings.Repeat("r", 41)+"\"\nnotes = \"a\""), "" +
			"28:9 plan.maker: a text is wanted, not 3 | a text stands in quotes\n29:8 plan.date: a text is wanted, not 2 | a text stands in quotes\n" +
			"30:12 plan.revision: the text has 41 characters, the most is 40\n31:1 plan.notes: this key is not known | did you mean note?"},
		{"plan of a size", with(27, "[[size]]\nname = \"a\"\n[size.plan]\nmaker = \"b\"\n[[size.item]]\nname = \"c\""), "" +
			"29:7 plan of size a: this holds for all sizes | write it at the head of the file\n31:8 item of size a: this holds for all sizes | write it at the head of the file"},
		{"screws in glass", with(25, "[top.fixing]\nkind = \"screws\"\n[saw]"), "26:1 top.fixing.kind: goes with kind wood, not with glass | kind stands in line 17"},
		{"silicone under bumpers", with(25, "[top.fixing]\nbond = \"silicone\"\n[saw]", 20, "[top.pads]\nkind = \"bumper\""), "27:1 top.fixing.bond: goes with kind none or pad, not with bumper | kind stands in line 21"},
		{"screws of nothing", with(17, "kind = \"wood\"", 25, "[top.fixing]\nscrew = 30\n[saw]"), "26:1 top.fixing.screw: goes with kind screws or buttons, not with none | without kind it is none"},
		{"thickness as milled", with(25, "[milled]\nthickness = 27.5\n[saw]"), "26:1 milled.thickness: this key is not known | a leg is as thick as its stretcher is wide: did you mean milled.width?"},
		{"millimetres in a file of inches", with(2, `units = "in"`), `2:1 units: these look like millimetres, but the unit is in | write units = "mm", or give the figures in inches`},
		{"unknown wood", with(24, `species = "wallnut"`), `24:1 wood.species: wallnut is not in the table of woods | did you mean "Walnut"?; or give its density in kg/m³: density = 700`},
		{"half a wood", with(24, `species = "cherry"`), `24:1 wood.species: cherry is not in the table of woods | the table has "Cherry, black"; or give its density in kg/m³: density = 700`},
		{"no such wood", with(24, `species = "xyzzy"`), `24:1 wood.species: xyzzy is not in the table of woods | give its density in kg/m³: density = 700`},

		{"no room", with(4, "sides = 8", 5, "inside = 50"), "5:1 ring.inside: inside 50 mm must be more than where the laps meet, 56 mm | take a larger ring, narrower stretchers or fewer of them"},
		{"no room in inches", with(4, "sides = 8", 2, `units = "in"`, 5, "inside = 2", 6, "width = 1", 7, "depth = 2", 8, "",
			10, "breadth = 1", 12, "height = 20", 14, "start = 3", 15, "foot = 0.5", 18, "thickness = 0.25", 19, "diameter = 20", 21, "diameter = 1", 22, "height = 0.25", 26, "kerf = 0.125"),
			"5:1 ring.inside: inside 2 in must be more than where the laps meet, 2 in | take a larger ring, narrower stretchers or fewer of them"},
		{"tenon", with(12, "height = 450\ntenon = 28"), "13:1 legs.tenon: tenon 28 mm must be less than the width of the stretcher, 28 mm | a third of the width is usual"},
		{"taper the wrong way", with(15, "foot = 40"), "15:1 legs.taper.foot: foot 40 mm must be less than the breadth of the leg, 40 mm | a taper narrows towards the foot"},
		{"thin glass", with(18, "thickness = 1"), "18:1 top.thickness: glass thickness 1 mm must be at least 2 mm"},
		{"top within the ring", with(19, "outline = \"ring\"\noverhang = -28"), "20:1 top.overhang: overhang -28 mm must be more than the inside of the ring, -28 mm | the top must reach over the stretchers"},

		{"all at once", with(4, "sides = 9", 6, "widht = 3", 10, "breadth = 0", 17, `kind = "tin"`, 26, "kerf = \"thin\""), "" +
			"3:2 ring.width: is missing\n4:9 ring.sides: 9 must be at most 8\n6:1 ring.widht: this key is not known | did you mean width?\n" +
			"10:11 legs.breadth: 0 mm must be at least 1 mm\n17:8 top.kind: \"tin\" is not none, glass or wood\n" +
			"26:8 saw.kerf: \"thin\" is not a length | write 640, 64cm, 25 1/4in or 2' 1 1/4\""},
	}
	for _, tt := range tests {
		_, err := Read([]byte(tt.text), nil)
		if got := complaints(err); got != tt.want {
			t.Errorf("%s: got\n%s\nwant\n%s", tt.name, got, tt.want)
		}
	}
}

// What is no TOML is told with a hint that knows how it comes about.
func TestSyntax(t *testing.T) {
	tests := []struct{ line, want string }{
		{"width = 28mm", "6:11 a figure is followed by letters | " + quotesHint.With()},
		{"width = 1 1/8", "6:11 the line does not end here | " + quotesHint.With()},
		{"width = 28,5", "6:11 the line does not end here | use a point for decimals, and nothing between thousands"},
		{"width = .5", "6:9 the value is not understood | write a 0 before the point: 0.5"},
		{"width = 1:6", "6:10 the line does not end here" + ` | a slope stands in quotes: splay = "1:6"`},
		{`width = "1 1/8""`, "6:16 the line does not end here" + ` | for inch marks write 25in, or use single quotes: '25"'`},
		{`width = "28`, "6:12 a text is not closed" + ` | put the same quote at its end; for inch marks write 25in or '25"'`},
		{"width = '2", "6:11 a text is not closed" + ` | put the same quote at its end; for foot marks write 2ft or "2'"`},
		{"width = wide", "6:9 the value is not understood | " + quotesHint.With()},
		{"width = four", "6:9 the value is not understood | " + quotesHint.With()},
		{"width 28", "6:7 an = is missing after the key | write width = 28"},
		{"width = ", "6:9 the value is missing | write width = 28"},
		{"width = 08", "6:9 a number begins with 0 | write 8, not 08"},
		{"width = 3.", "6:11 a digit is missing after the point | write 3.0 or 3"},
		{"[ring", "3:2 ring.width: is missing\n6:6 the name of a table is not closed | write [ring], or [[size]] for one of several"},
		{"width = “28”", "6:9 a curly quote, “, stands here | " + curlyHint.With()},
		{`width = "28”`, "6:12 a curly quote, ”, stands here | " + curlyHint.With()},
		{"width = yes", "6:9 true or false is wanted, not yes | write true, without quotes"},
		{"width = [28", "7:1 a comma or the closing ] of a list is missing | write [8, 12]"},
		{"= 28", "6:1 a key is wanted here | keys are plain words: width = 28"},
		{`width = "2\8"`, "6:11 a backslash means something else in double quotes | take it out, or use single quotes"},
	}
	for _, tt := range tests {
		_, err := Read([]byte(with(6, tt.line)), nil)
		if got := complaints(err); got != tt.want {
			t.Errorf("%s: got\n%s\nwant\n%s", tt.line, got, tt.want)
		}
	}
}

// Behind what is no TOML the file is read on: with what else is wrong, and no
// word of a key that stands in a line that is not understood.
func TestReadingGoesOn(t *testing.T) {
	tests := []struct{ name, text, want string }{
		{"two slips", with(6, "width = 28mm", 26, "kerf = 3,2"), "6:11 a figure is followed by letters | " + quotesHint.With() +
			"\n26:9 the line does not end here | " + commaHint.With()},
		{"a slip and a wrong figure", with(4, "sides = 9", 6, "width = 28mm", 7, "dephts = 36"), "" +
			"3:2 ring.depth: is missing\n4:9 ring.sides: 9 must be at most 8\n" +
			"6:11 a figure is followed by letters | " + quotesHint.With() + "\n7:1 ring.dephts: this key is not known | did you mean depth?"},
		{"a header", with(9, "[legs", 10, "breadht = 40"), "9:2 legs.breadth: is missing\n9:6 the name of a table is not closed | " + headerHint.With() +
			"\n10:1 legs.breadht: this key is not known | did you mean breadth?"},
		{"an open list", with(19, "outline = \"free\"\npoints = [[0, 0], [9, 0]", 27, "widht = 3"), "" +
			"21:1 a comma or the closing ] of a list is missing | write [8, 12]\n28:1 saw.widht: this key is not known"},
		{"a line without a key", with(6, "= 28", 7, ""), "6:1 a key is wanted here | " + keyHint.With()},
		{"broken boards", with(24, "species = \"beech\"\n[[wood.board]]\nlength = 9oo\nwidth = 90\nthickness = 20"), "26:11 a figure is followed by letters | " + quotesHint.With()},
		{"broken name of a size", sound + "[[size]]\nname = low\n", "28:8 the value is not understood | " + quotesHint.With()},
		{"broken sizes", "size = low\n" + sound, "1:8 the value is not understood | " + quotesHint.With()},
	}
	for _, tt := range tests {
		_, err := Read([]byte(tt.text), nil)
		if got := complaints(err); got != tt.want {
			t.Errorf("%s: got\n%s\nwant\n%s", tt.name, got, tt.want)
		}
	}
}

func TestGuards(t *testing.T) {
	const shut = " | save the file as UTF-8, the usual text of today"
	tests := []struct{ name, text, want string }{
		{"empty", "", "1:1 the file holds no design | rodsheet new writes one to begin with"},
		{"comments only", "# nothing\n\n", "1:1 the file holds no design | rodsheet new writes one to begin with"},
		{"large", strings.Repeat("#", mostBytes+1), "1:1 a design file is a page or two of text; this has more than 262144 bytes | is it another file?"},
		{"Latin-1", "title = \"t\"\n# ä\n# caf\xe9\n", "3:6 this is not UTF-8" + shut},
		{"UTF-16", "\xff\xfet\x00", "1:1 the file is in UTF-16 | save it as UTF-8, the usual text of today"},
		{"NUL", "title = \"t\"\n#\x00", "2:2 a control character, U+0000, stands here | take it out; is this a text file?"},
		{"nested lists", "points = " + strings.Repeat("[", 200_000), "1:10010 lists stand within lists without end"},
		{"nested tables", strings.Repeat("a={", 80_000), "1:30003 lists stand within lists without end"},
		{"deep key", strings.Repeat("a.", 100_000) + "a = 1\n" + sound[strings.Index(sound, "[ring]"):], "1:1 a: this key is not known"},
	}
	for _, tt := range tests {
		_, err := Read([]byte(tt.text), nil)
		if got := complaints(err); got != tt.want {
			t.Errorf("%s: got\n%.300s\nwant\n%s", tt.name, got, tt.want)
		}
	}
}

func TestMistakesAreCounted(t *testing.T) {
	var b strings.Builder
	for range 40_000 {
		b.WriteString("a=1\n")
	}
	_, err := Read([]byte(b.String()), nil)
	got := err.(Mistakes)
	if len(got) != mostMistakes+1 || !strings.HasPrefix(got[mostMistakes].Text, "and 39") {
		t.Errorf("%d mistakes, the last %v", len(got), got[len(got)-1])
	}
}

// What the lettering lacks is a mistake at the key of its text, wherever that stands.
func TestTextsThatCannotBeLettered(t *testing.T) {
	text := "title = \"stool\"\n[plan]\nmaker = \"x木\"\ndate = \"木\"\n[wood]\nspecies = \"木\"\ndensity = 3e2\n[[size]]\nname = \"a木\"\n[[item]]\nname = \"木x\"\n"
	lacks := func(s string) []rune {
		if strings.Contains(s, "木") {
			return []rune{'木'}
		}
		return nil
	}
	_, err := ReadLettered([]byte(text), nil, lacks)
	for _, place := range []string{"3:9 plan.maker", "4:8 plan.date", "6:11 wood.species", "9:8 size.name", "11:8 item.name"} {
		want := place + ": the text holds 木 (U+6728), which the lettering lacks | write it in other letters"
		if got := complaints(err); !strings.Contains(got, want) {
			t.Errorf("%s is not among\n%s", want, got)
		}
	}
}

// An accent that follows its letter is set on it, as the lettering has it.
func TestAccentsStandOnTheirLetters(t *testing.T) {
	lacks := func(s string) []rune {
		if strings.ContainsRune(s, '\u0301') {
			return []rune{'\u0301'}
		}
		return nil
	}
	file := must(ReadLettered([]byte(with(1, "title = \"caf\u0065\u0301\"")), nil, lacks))(t)
	if got := file.Title; got != "caf\u00e9" {
		t.Errorf("the title is %q", got)
	}
}
