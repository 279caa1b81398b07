// Package piece makes a whole table frame out of a design: its parts as
// solids, every figure, the checks that say what will not fit, the cut list,
// the settings list and the full-size templates.
//
// The way of the data: design.Design (the decisions for one size) → Piece (all
// that follows) → templates.Job (what is printed).
package piece

import (
	"cmp"
	"errors"
	"math"

	"rodsheet/geometry"
	"rodsheet/geometry/measure"
	"rodsheet/templates/piece/design"
)

// A Piece is all that follows from a Design. Its sizes are as milled where
// the design gives such: they fix every joint and every setting, while the
// outline (the inside of the ring, the place and lean of the legs) stays as
// it was designed.
type Piece struct {
	design.Design
	Frame  geometry.Frame // ring and legs as milled
	Bridle geometry.Bridle
	Taper  *geometry.Taper // along the leg, between its level cuts; nil for none
	// PlainReach and LegReach are from mid-length to the farthest point of the
	// stretcher's two ends, finished.
	PlainReach, LegReach float64
	Kerf                 float64
}

// Work works out one size. It returns a *measure.BoundError for a figure that
// no piece can have; what a piece can have and cannot be built with is the
// affair of Checks.
func Work(d design.Design) (Piece, error) {
	frame, err := outline(d)
	if err != nil {
		return Piece{}, err
	}
	p := Piece{Design: d, Frame: milled(d, frame), Kerf: cmp.Or(d.Milled.Kerf, d.Saw.Kerf)}
	p.Bridle = geometry.Bridle{
		Width: p.Frame.Ring.Width, Depth: p.Frame.Ring.Depth, Angle: frame.Leg.Splay,
		Leg: p.Frame.Leg.Breadth, Tenon: p.tenon(), Mortise: d.Legs.Mortise,
	}
	p.PlainReach = p.Frame.Ring.Reach(d.Ring.Horn)
	p.LegReach = p.Frame.Leg.Outer(p.Frame.Ring.Depth)
	if t := d.Legs.Taper; t != nil {
		p.Taper = &geometry.Taper{
			Length: p.Frame.Leg.Length(), Top: p.Frame.Leg.Breadth,
			Foot: t.Foot, Start: t.Start, Faces: t.Faces,
		}
	}
	return p, p.check()
}

// check refuses figures that have no geometry.
func (p Piece) check() error {
	var taper error
	if p.Taper != nil {
		taper = p.Taper.Check()
	}
	return cmp.Or(
		p.Frame.Check(),
		p.Bridle.Check(),
		p.EndLap().Check(),
		taper,
		p.checkTop(),
		measure.NotNegative("horn", measure.Length(p.Ring.Horn)),
		measure.NotNegative("slack", measure.Length(p.Ring.Slack)),
		measure.NotNegative("proud head", measure.Length(p.Legs.Proud)),
	)
}

// outline returns the frame as designed, with its splay and its legs' places
// worked out from whatever the design gives.
func outline(d design.Design) (geometry.Frame, error) {
	f := geometry.Frame{
		Ring: d.Ring.Ring,
		Leg: geometry.Leg{
			Breadth: d.Legs.Breadth, Thickness: d.Ring.Width, Height: frameHeight(d), At: d.Legs.At,
		},
		Head: d.Ring.Width,
		Over: !d.Ring.LegEndOver,
	}
	if d.Legs.Mortise == geometry.MortiseInStretcher {
		f.Head = cmp.Or(d.Legs.Tenon, d.Ring.Width/3)
	}
	if d.Legs.Lean == design.BySplay {
		f.Leg.Splay = d.Legs.Given
	}
	probe := f
	probe.Leg.At = cmp.Or(f.Leg.At, 1) // not yet known: any will do to check the rest
	if err := probe.Check(); err != nil {
		return f, err
	}
	return settle(d, f)
}

// settle finds splay and place of the legs, each of which may hang on the
// other. A step of the splay moves the leg by far less than the foot, so a few
// rounds leave nothing to correct.
func settle(d design.Design, f geometry.Frame) (geometry.Frame, error) {
	const rounds = 60
	for range rounds {
		if d.Legs.At == 0 {
			f.Leg.At = f.LeastAt(d.Legs.Clear)
		}
		var err error
		before := f.Leg.Splay
		switch d.Legs.Lean {
		case design.ByFootCircle:
			f.Leg.Splay, err = f.SplayForFootRadius(d.Legs.Given / 2)
			err = asDiameter(err)
		case design.ByFootSpread:
			f.Leg.Splay, err = f.SplayForFootSpread(d.Legs.Given)
		}
		if err != nil {
			return f, err
		}
		if math.Abs(f.Leg.Splay-before) < 1e-14 {
			break
		}
	}
	return f, nil
}

// asDiameter makes an error about the radius of the foot circle one about its
// diameter, which is what a design gives.
func asDiameter(err error) error {
	var bound *measure.BoundError
	if !errors.As(err, &bound) {
		return err
	}
	twice := *bound
	twice.Figure = "foot circle"
	twice.Value.Value *= 2
	twice.Limit.Value *= 2
	return &twice
}

// frameHeight returns the height of the top of the stretchers over the floor.
func frameHeight(d design.Design) float64 {
	if d.Legs.To == design.Overall && d.Top.Kind != design.NoTop {
		return d.Legs.Height - d.Top.Thickness - padHeight(d)
	}
	return d.Legs.Height
}

// padHeight returns what the pads hold the top off the frame.
func padHeight(d design.Design) float64 {
	if d.Top.Kind == design.NoTop || d.Top.Pads.Diameter == 0 {
		return 0
	}
	return d.Top.Pads.Height
}

// Overall returns the height of the whole piece over the floor.
func (p Piece) Overall() float64 {
	if p.Top.Kind == design.NoTop {
		return p.Frame.Leg.Height + p.Legs.Proud
	}
	return p.Frame.Leg.Height + padHeight(p.Design) + p.Top.Thickness
}

// milled puts the sizes as milled in the place of the designed ones.
func milled(d design.Design, f geometry.Frame) geometry.Frame {
	f.Ring.Width = cmp.Or(d.Milled.Width, f.Ring.Width)
	f.Ring.Depth = cmp.Or(d.Milled.Depth, f.Ring.Depth)
	f.Leg.Breadth = cmp.Or(d.Milled.Breadth, f.Leg.Breadth)
	f.Leg.Thickness = f.Ring.Width
	f.Head = f.Ring.Width
	if d.Legs.Mortise == geometry.MortiseInStretcher {
		f.Head = cmp.Or(d.Legs.Tenon, f.Ring.Width/3)
	}
	return f
}

// tenon returns the thickness of the tenon.
func (p Piece) tenon() float64 { return cmp.Or(p.Legs.Tenon, p.Frame.Ring.Width/3) }

// EndLap returns the lap at the leg end with the square end of the rough
// stretcher as its datum: what a stop is set from.
func (p Piece) EndLap() geometry.Lap {
	return p.Frame.Ring.EndLap(p.RoughReach(), p.Kerf)
}

// RoughReach returns how far from mid-length the stretcher's ends stand
// before they are trimmed, the same at both, so that one stop serves both
// laps: the longer of the two reaches and what a bridle is left long.
func (p Piece) RoughReach() float64 {
	return math.Max(p.PlainReach, p.LegReach) + geometry.BridleLong
}

// RoughStretcher returns the length of the stretcher as it goes to the saw.
func (p Piece) RoughStretcher() float64 { return 2 * p.RoughReach() }

// FinishedStretcher returns the length of the finished stretcher from tip to
// tip.
func (p Piece) FinishedStretcher() float64 { return p.PlainReach + p.LegReach }
