package design

import (
	"slices"
	"strings"
	"testing"

	"rodsheet/geometry/measure"
)

// soundSeat is a stool with all its tables.
const soundSeat = `kind = "seat"
units = "mm"
[seat]
diameter = 340
thickness = 44
height = 450
[seat.front]
legs = 2
apart = 180
from-middle = 75
rake = 9
splay = 11
[seat.middle]
legs = 2
from-middle = 0
rake = 0
[seat.back]
legs = 1
from-middle = 115
rake = 14
[seat.circle]
legs = 3
from-middle = 110
resultant = 12
[seat.legs]
size = 38
[seat.mortise]
diameter = 28
[seat.stretchers]
shape = "box"
height = 120
diameter = 20
[wood]
species = "white ash"
[saw]
kerf = 3.2`

var ovalSeat = strings.Replace(soundSeat, "diameter = 340", "shape = \"oval\"\nwidth = 400\ndepth = 300", 1)

// seatWith returns a sound seat in which a key means something, and none of its
// alternatives stands.
func seatWith(key Key) string {
	text := soundSeat
	switch key {
	case "seat.width", "seat.depth":
		text = ovalSeat
	case "seat.back-width", "seat.corner":
		text = strings.Replace(ovalSeat, "oval\"", "shield\"\nback-width = 200", 1)
	}
	for i, table := range seatRows {
		way := key == table.with("resultant") || key == table.with("sightline")
		if slices.Contains(SeatRow(i).Leans(), key) {
			_, row, _ := strings.Cut(text, "["+string(table)+"]")
			row, _, _ = strings.Cut(row, "[")
			head := row[:max(strings.Index(row, "rake"), strings.Index(row, "resultant"))]
			first := "rake = 9"
			if way {
				first = "resultant = 9"
			} else if key.word() == "feet-from-middle" || key.word() == "feet-apart" {
				first = "feet-from-middle = 160"
			}
			text = strings.Replace(text, row, head+first+"\n", 1)
		}
	}
	return text
}

// Every figure of a seat at its limits, and beyond.
func TestSeatLimits(t *testing.T) {
	cases := []limited{
		{"0.001", "0", "10000", "10000.01", "seat.diameter seat.width seat.depth seat.back-width seat.height seat.back-height seat.stretchers.height seat.stretchers.side-height"},
		{"0", "-0.01", "10000", "10000.01", "seat.circle.from-middle seat.circle.feet-from-middle seat.corner seat.front.apart seat.middle.apart seat.back.apart seat.front.feet-apart seat.middle.feet-apart seat.back.feet-apart"},
		{"-10000", "-10000.01", "10000", "10000.01", "seat.front.from-middle seat.middle.from-middle seat.back.from-middle seat.front.feet-from-middle seat.middle.feet-from-middle seat.back.feet-from-middle"},
		{"1", "0.99", "1000", "1000.01", "seat.legs.size seat.legs.foot seat.mortise.diameter seat.stretchers.diameter seat.stretchers.tenon seat.stretchers.hole"},
		{"1", "0.99", "200", "200.01", "seat.thickness seat.mortise.depth"},
		{"-30", "-30.01", "45", "45.01", "seat.front.rake seat.front.splay seat.middle.rake seat.middle.splay seat.back.rake seat.back.splay"},
		{"0", "-0.01", "45", "45.01", "seat.front.resultant seat.middle.resultant seat.back.resultant seat.circle.resultant"},
		{"0", "-0.01", "180", "180.01", "seat.front.sightline seat.middle.sightline seat.back.sightline"},
		{"0", "-0.01", "20", "20.01", "seat.mortise.reamer"},
		{"1", "0", "4", "5", "seat.front.legs seat.middle.legs seat.back.legs"},
		{"3", "2", "8", "9", "seat.circle.legs"},
	}
	tryLimits(t, SeatKind, cases, seatWith)
}

// Keys that mean nothing beside the shape, keys that it asks for, and leans given twice.
func TestSeatShapes(t *testing.T) {
	complainsOf(t, []complaint{
		{"round", soundSeat, ""},
		{"oval", ovalSeat, ""},
		{"round with a width", strings.Replace(soundSeat, "diameter = 340", "diameter = 340\nwidth = 300", 1), "seat.width: goes with"},
		{"no diameter", strings.Replace(soundSeat, "diameter = 340\n", "", 1), "seat.diameter: is missing"},
		{"shield without a back", strings.Replace(ovalSeat, "oval", "shield", 1), "seat.back-width: is missing"},
		{"free without points", strings.Replace(soundSeat, "diameter = 340", `shape = "free"`, 1), "seat.points: is missing"},
		{"no lean", strings.Replace(soundSeat, "rake = 14\n", "", 1), "seat.back: "},
		{"rake and resultant", strings.Replace(soundSeat, "rake = 14", "rake = 14\nresultant = 14", 1), "seat.back.resultant"},
		{"rake and sightline", strings.Replace(soundSeat, "splay = 11", "sightline = 14", 1), "seat.front.sightline"},
		{"feet and splay", strings.Replace(soundSeat, "rake = 9", "feet-from-middle = 150", 1), "seat.front.splay"},
		{"h with side height", strings.Replace(soundSeat, `"box"`, "\"h\"\nside-height = 100", 1), "seat.stretchers.side-height: goes with"},
	})
}

// A size that gives a lean in another way takes the place of the one given for all.
func TestSeatSizeLeansAnotherWay(t *testing.T) {
	file := must(Read([]byte(soundSeat+"\n[[size]]\nname = \"a\"\n[[size]]\nname = \"b\"\n[size.seat.front]\nresultant = 15\nsightline = 50"), nil))(t)
	a, b := file.Sizes[0].Seat.Front, file.Sizes[1].Seat.Front
	if a.By != ByRake || b.By != ByResultant || b.FrontBack != measure.Radians(15) || b.Aside != measure.Radians(50) {
		t.Errorf("%+v, %+v", a, b)
	}
}

// The starting text of every seat is read, and says what was asked.
func TestSeatStarts(t *testing.T) {
	everyStart(t, SeatKind, func(legs int, d Design) bool {
		return d.Seat.Front.Legs+d.Seat.Back.Legs == legs && d.Seat.Legs.Size >= 38 && d.Seat.Legs.Size <= 38.1
	})
}
