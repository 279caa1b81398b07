package aprons

import (
	"sync"

	"rodsheet/geometry/measure"
	"rodsheet/templates/piece/assembly"
	"rodsheet/templates/piece/design"
	"rodsheet/templates/piece/kind"
)

// Kind returns the kind of piece.
var Kind = sync.OnceValue(func() kind.Kind {
	return assembly.Kind(assembly.Spec[Model]{
		Judge: judge, Envelopes: envelopes(), Mends: mends(), Mending: mending,
		Grips: func(Model) map[measure.ID]assembly.Grip[Model] {
			return map[measure.ID]assembly.Grip[Model]{"height": {Key: "frame.height", Up: true}}
		},
	})
})

// mends are the keys whose figures may mend a check. Planed stock has its own key: the
// designed figure then moves nothing.
func mends() map[measure.ID][]design.Key {
	return map[measure.ID][]design.Key{
		"aprons.clash":              {"frame.legs.size", "frame.milled.legs", "frame.aprons.thickness", "frame.milled.aprons"},
		"aprons.end-on-leg":         {"frame.legs.size", "frame.milled.legs", "frame.aprons.inset", "frame.aprons.thickness", "frame.milled.aprons"},
		"aprons.mitre":              {"frame.aprons.inset", "frame.legs.size", "frame.milled.legs", "frame.aprons.thickness", "frame.milled.aprons"},
		"aprons.stretcher-mitre":    {"frame.stretchers.inset", "frame.stretchers.thickness", "frame.milled.stretchers"},
		"aprons.tenons-meet":        {"frame.aprons.tenon-length", "frame.legs.size", "frame.milled.legs"},
		"aprons.outside-mortise":    {"frame.aprons.inset", "frame.legs.size", "frame.milled.legs"},
		"aprons.above-tenon":        {"frame.aprons.upper-cut"},
		"aprons.taper-below":        {"frame.legs.taper-start"},
		"aprons.stretcher-end":      {"frame.stretchers.inset", "frame.stretchers.thickness", "frame.milled.stretchers"},
		"aprons.stretcher-tenons":   {"frame.stretchers.tenon-length"},
		"aprons.stretcher-mortise":  {"frame.stretchers.inset", "frame.stretchers.thickness", "frame.milled.stretchers", "frame.legs.foot"},
		"aprons.tenon-hold":         {"frame.aprons.tenon-length", "frame.legs.size", "frame.milled.legs"},
		"aprons.stretcher-hold":     {"frame.stretchers.tenon-length", "frame.legs.size", "frame.milled.legs"},
		"aprons.taper-at-stretcher": {"frame.legs.taper-start", "frame.stretchers.height"},
		"aprons.over-arch":          {"frame.aprons.arch"},
		"aprons.screw-through":      {"frame.top.thickness"},
		"aprons.screw-hold":         {"frame.top.thickness"},
		"aprons.beside-screw":       {"frame.aprons.thickness", "frame.milled.aprons"},
		"aprons.behind-groove":      {"frame.aprons.thickness", "frame.milled.aprons"},
		"aprons.groove-long":        {"frame.length", "frame.width", "frame.aprons.thickness", "frame.milled.aprons"},
		"aprons.screw-bore":         {"frame.aprons.depth"},
		"aprons.overhang":           {"frame.top.overhang", "frame.top.diameter", "frame.top.length", "frame.top.width", "frame.top.corner-size"},
		"aprons.tipping-load":       {"frame.top.overhang", "frame.top.diameter", "frame.top.length", "frame.top.width", "frame.length", "frame.width"},
		"aprons.screw-edge":         {"frame.top.overhang", "frame.top.diameter", "frame.top.length", "frame.top.width"},
		"aprons.button-edge":        {"frame.top.overhang", "frame.top.diameter", "frame.top.length", "frame.top.width"},
	}
}
