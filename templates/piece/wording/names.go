// Package wording says in sentences what a piece's lists and checks hold as
// values.
package wording

import (
	"rodsheet/templates/piece/shop"
	"rodsheet/templates/wording"
)

// partNames holds what one part is called and several of it.
var partNames = [...]struct{ one, many wording.Text }{
	shop.Stretcher:          {"stretcher", "stretchers"},
	shop.Leg:                {"leg", "legs"},
	shop.TopBoard:           {"top board", "top boards"},
	shop.Top:                {"top", "tops"},
	shop.TestPiece:          {"test piece", "test pieces"},
	shop.StretcherTest:      {"test piece, stretcher stock", "test pieces, stretcher stock"},
	shop.LegTest:            {"test piece, leg stock", "test pieces, leg stock"},
	shop.StretcherStick:     {"block stick, stretcher stock", "block sticks, stretcher stock"},
	shop.LegStick:           {"block stick, leg stock", "block sticks, leg stock"},
	shop.BlockStick:         {"block stick", "block sticks"},
	shop.Pad:                {"pad", "pads"},
	shop.Bumper:             {"bumper", "bumpers"},
	shop.FillerStrip:        {"filler strip", "filler strips"},
	shop.LegCaul:            {"leg caul", "leg cauls"},
	shop.EndCaul:            {"end caul", "end cauls"},
	shop.FoldingWedge:       {"folding wedge", "folding wedges"},
	shop.TenoningJig:        {"tenoning jig", "tenoning jigs"},
	shop.LapSled:            {"lap sled", "lap sleds"},
	shop.TaperSled:          {"tapering jig", "tapering jigs"},
	shop.TenoningJigFace:    {"tenoning jig, face", "tenoning jigs, faces"},
	shop.TenoningJigBase:    {"tenoning jig, base", "tenoning jigs, bases"},
	shop.TenoningJigBracket: {"tenoning jig, bracket", "tenoning jigs, brackets"},
	shop.TenoningJigCleat:   {"tenoning jig, cleat", "tenoning jigs, cleats"},
	shop.LapSledBase:        {"lap sled, base", "lap sleds, bases"},
	shop.LapSledFence:       {"lap sled, fence", "lap sleds, fences"},
	shop.LapSledBridge:      {"lap sled, bridge", "lap sleds, bridges"},
	shop.LapSledStop:        {"lap sled, stop block", "lap sleds, stop blocks"},
	shop.LapSledCover:       {"lap sled, layer of the blade's cover", "lap sleds, layers of the blade's cover"},
	shop.LapSledRunner:      {"lap sled, runner", "lap sleds, runners"},
	shop.SpacerBlock:        {"spacer for the laps", "spacers for the laps"},
	shop.TaperSledBase:      {"tapering jig, base", "tapering jigs, bases"},
	shop.TaperSledFence:     {"tapering jig, fence", "tapering jigs, fences"},
	shop.TaperSledStop:      {"tapering jig, stop block", "tapering jigs, stop blocks"},
	shop.Apron:              {"apron", "aprons"},
	shop.FrontApron:         {"apron, front and back", "aprons, front and back"},
	shop.SideApron:          {"apron, left and right", "aprons, left and right"},
	shop.FrontStretcher:     {"stretcher, front and back", "stretchers, front and back"},
	shop.SideStretcher:      {"stretcher, left and right", "stretchers, left and right"},
	shop.BoxSide:            {"side", "sides"},
	shop.BoxLongSide:        {"front or back", "front and back"},
	shop.BoxEnd:             {"end", "ends"},
	shop.BoxSpline:          {"board for splines", "boards for splines"},
	shop.BoxWedge:           {"board for wedge blocks", "boards for wedge blocks"},
	shop.BoxBottom:          {"bottom", "bottoms"},
	shop.SeatBoard:          {"seat board", "seat boards"},
	shop.FrontLeg:           {"front leg", "front legs"},
	shop.InnerFrontLeg:      {"inner front leg", "inner front legs"},
	shop.BackLeg:            {"back leg", "back legs"},
	shop.InnerBackLeg:       {"inner back leg", "inner back legs"},
	shop.MiddleLeg:          {"middle leg", "middle legs"},
	shop.InnerMiddleLeg:     {"inner middle leg", "inner middle legs"},
	shop.SeatWedge:          {"strip for the wedges", "strips for the wedges"},
}

// shortNames are those of pieces of a board where they have shorter ones.
var shortNames = map[shop.Part]wording.Text{
	shop.StretcherTest:  "test",
	shop.LegTest:        "test, leg",
	shop.StretcherStick: "stick",
	shop.LegStick:       "stick, leg",
}

// Part returns what one part is called.
func Part(p shop.Part) string { return partNames[p].one.With() }

// blockNames are what blocks are called where two of one name must be told apart,
// and what their two faces bear on.
var blockNames = map[shop.Part]struct{ name, straight, leaning wording.Text }{
	shop.FillerStrip:  {"filler strip", "against the jig", "the part leans here"},
	shop.LegCaul:      {"leg caul", "jaw of the clamp", "back of the leg"},
	shop.EndCaul:      {"end caul", "jaw of the clamp", "flush end of the stretcher"},
	shop.FoldingWedge: {"folding wedge", "against block or stretcher", "against its twin"},
}

// Block returns what a block is called.
func Block(b shop.Block) string { return blockNames[b.Part].name.With() }

// BlockFaces says what the straight face of a block bears on, and the leaning one.
func BlockFaces(b shop.Block) (straight, leaning string) {
	n := blockNames[b.Part]
	return n.straight.With(), n.leaning.With()
}

var faceNames = [...]wording.Text{
	shop.UpperFace:     "top",
	shop.Underside:     "underside",
	shop.RingSide:      "ring side",
	shop.OuterSide:     "outer side",
	shop.StretcherSide: "stretcher side",
	shop.Back:          "back",
	shop.LegEnd:        "leg end",
	shop.PlainEnd:      "plain end",
	shop.Head:          "head",
	shop.Foot:          "foot",
	shop.RoughEnd:      "its sawn end",
	shop.OppositeCut:   "edge opposite the cut",
}

// Face returns what a face, edge or end of a part is called.
func Face(f shop.Face) string { return faceNames[f].With() }

var sourceNames = [...]wording.Text{
	shop.StretcherSticks: "block sticks, stretcher stock",
	shop.LegSticks:       "block sticks, leg stock",
	shop.BlockSticks:     "block sticks",
	shop.TaperOffcuts:    "taper offcuts",
	shop.Sheets:          "flat sheet",
}

var extraNames = [...]wording.Text{
	shop.Spares:              "spares",
	shop.Tests:               "test pieces",
	shop.Spares | shop.Tests: "spares and test pieces",
}
