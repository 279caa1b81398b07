package aprons

import (
	"fmt"
	"testing"

	"rodsheet/geometry/measure"
	"rodsheet/templates/piece/design"
)

// table is a rectangle that leans two ways.
func table() design.Design {
	return design.Design{
		Kind: design.ApronsKind, Title: "table", Unit: measure.Millimetre,
		Frame: design.Frame{
			Length: 520, Width: 400, Height: 540,
			Legs:   design.FrameLegs{Size: 40, Rake: measure.Radians(6), Splay: measure.Radians(8), Start: 140, Foot: 26},
			Aprons: design.Rail{Depth: 90, Thickness: 22, Inset: 4, LowerCut: 6},
			Top:    design.FrameTop{Thickness: 20, Overhang: 30},
		},
		Wood: design.Wood{Species: "white ash", ExtraLength: 20, ExtraWidth: 4, ExtraThickness: 4, MoistureFrom: 8, MoistureTo: 12},
		Saw:  design.Saw{Kerf: 3.2},
	}
}

// variants calls f with tables of every sort.
func variants(t *testing.T, f func(t *testing.T, m Model)) {
	t.Helper()
	all := map[string]func(*design.Frame){
		"rectangle":     func(*design.Frame) {},
		"plumb aprons":  func(f *design.Frame) { f.Aprons.Plumb, f.Aprons.Inset = true, 2 },
		"upright":       func(f *design.Frame) { f.Legs.Rake, f.Legs.Splay = 0, 0 },
		"inward":        func(f *design.Frame) { f.Legs.Rake, f.Legs.Splay = -0.05, -0.1 },
		"one way":       func(f *design.Frame) { f.Legs.Rake = 0 },
		"straight legs": func(f *design.Frame) { f.Legs.Foot = 0 },
		"arched":        func(f *design.Frame) { f.Aprons.Arch = 20 },
		"square tenons": func(f *design.Frame) { f.Aprons.Long = 15 },
		"buttons":       func(f *design.Frame) { f.Top.Fixing = design.Buttons },
		"screws":        func(f *design.Frame) { f.Top.Fixing = design.Screws },
		"screws, 5 sides": func(f *design.Frame) {
			f.Shape, f.Sides, f.Legs.Splay, f.Length, f.Top.Fixing = design.RegularFrame, 5, 0, 360, design.Screws
		},
		"screws, arched":  func(f *design.Frame) { f.Top.Fixing, f.Aprons.Arch = design.Screws, 20 },
		"clipped corners": func(f *design.Frame) { f.Top.Corner, f.Top.CornerSize = design.ClippedCorner, 40 },
		"rounded ends":    func(f *design.Frame) { f.Top.Corner, f.Top.CornerSize = design.RoundedCorner, 230 },
		"round top":       func(f *design.Frame) { f.Top.Outline, f.Top.Fixing = design.RoundOnFrame, design.Screws },
		"round top, 5 sides": func(f *design.Frame) {
			f.Shape, f.Sides, f.Legs.Splay, f.Length = design.RegularFrame, 5, 0, 360
			f.Top.Outline, f.Top.Diameter, f.Top.Fixing = design.RoundOnFrame, 700, design.Buttons
		},
		"oval top": func(f *design.Frame) {
			f.Top.Outline, f.Top.Length, f.Top.Width, f.Top.Fixing = design.OvalOnFrame, 820, 640, design.Buttons
		},
		"oval top, across": func(f *design.Frame) { f.Top.Outline, f.Top.Length, f.Top.Width = design.OvalOnFrame, 760, 800 },
		"oval top, 6 sides": func(f *design.Frame) {
			f.Shape, f.Sides, f.Legs.Splay, f.Length = design.RegularFrame, 6, 0, 300
			f.Top.Outline, f.Top.Length, f.Top.Width, f.Top.Fixing = design.OvalOnFrame, 900, 1000, design.Buttons
		},
		"bridle":          func(f *design.Frame) { f.Aprons.Joint = design.Bridled },
		"plain tenon":     func(f *design.Frame) { f.Aprons.Joint = design.PlainTenon },
		"sloping haunch":  func(f *design.Frame) { f.Aprons.Joint = design.SlopingHaunch },
		"plumb bridle":    func(f *design.Frame) { f.Aprons.Plumb, f.Aprons.Inset, f.Aprons.Joint = true, 2, design.Bridled },
		"with stretchers": func(f *design.Frame) { f.Stretchers = design.Rail{Depth: 30, Thickness: 18, Height: 120, Inset: 3} },
		"stretchers plumb": func(f *design.Frame) {
			f.Stretchers = design.Rail{Depth: 30, Thickness: 15, Height: 120, Inset: 6, Plumb: true}
		},
		"sightline": func(f *design.Frame) {
			f.Legs.Faces, f.Legs.Rake, f.Legs.Splay, f.Aprons.Inset = design.ToSightline, measure.Radians(8), measure.Radians(8), 6
		},
		"sightline, square tenons": func(f *design.Frame) { // with a tip that is not at the table
			f.Legs = design.FrameLegs{Size: 40, Faces: design.ToSightline, Rake: measure.Radians(8), Splay: measure.Radians(8)}
			f.Aprons.Inset, f.Aprons.Long = 6, 10
		},
		"sightline, upright": func(f *design.Frame) {
			f.Legs.Faces, f.Legs.Rake, f.Legs.Splay, f.Aprons.Inset = design.ToSightline, 0, 0, 6
		},
		"sightline, two leans": func(f *design.Frame) { f.Legs.Faces, f.Aprons.Inset = design.ToSightline, 8 },
	}
	for n := design.FrameFewest; n <= design.FrameMost; n++ {
		all[fmt.Sprint(n, " sides")] = func(f *design.Frame) {
			f.Shape, f.Sides, f.Legs.Splay, f.Length = design.RegularFrame, n, 0, 360
		}
		all[fmt.Sprint(n, " sides, sightline")] = func(f *design.Frame) {
			f.Shape, f.Sides, f.Legs.Splay, f.Length, f.Legs.Faces, f.Aprons.Inset = design.RegularFrame, n, 0, 360, design.ToSightline, 8
		}
	}
	for _, name := range []string{"3 sides", "3 sides, sightline"} {
		change := all[name]
		all[name] = func(f *design.Frame) { change(f); f.Legs.Size = 56 } // a corner of 60° wants more
	}
	for name, change := range all {
		t.Run(name, func(t *testing.T) {
			d := table()
			change(&d.Frame)
			f(t, newModel(d))
		})
	}
}
