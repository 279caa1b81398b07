package aprons

import (
	"math"
	"testing"

	"rodsheet/geometry/joint"
	"rodsheet/geometry/measure"
	"rodsheet/geometry/solid"
	"rodsheet/templates/piece/design"
)

// sameAs reports a part that is not the same wood as another.
func sameAs(t *testing.T, what string, got, want solid.Part) {
	t.Helper()
	shared := 0.0
	for _, s := range solid.Clash(got, want) {
		shared += s.Volume()
	}
	if v := want.Volume(); math.Abs(got.Volume()-v) > 1e-2 || math.Abs(shared-v) > 1e-1 {
		t.Errorf("%s: %.4f mm³, %.4f of them in the finished part of %.4f", what, got.Volume(), shared, v)
	}
}

// mirrored returns the same cut at the other end of a rail.
func mirrored(p solid.Plane) solid.Plane {
	return solid.Plane{N: solid.V(-p.N.X, p.N.Y, p.N.Z), D: p.D}
}

// A blank that is cut by the settings, and by nothing else, becomes the rail: body by
// its edges and shoulders, tenons by the ends and the two distances of the cheeks.
func TestRailsByTheirPasses(t *testing.T) {
	variants(t, func(t *testing.T, m Model) {
		for _, row := range m.Rows {
			for k, r := range row.Rails {
				if r.Row.Of.Arch > 0 {
					continue // sawn to its template
				}
				blank := r.Blank("")
				room := r.Part("").Transform(r.frame().to()).Bounds()
				// As long as the cut list has it sawn, laid on its middle.
				half := m.sawnRail(r).Length / 2
				from := solid.V(-half, room.Min.Y, room.Min.Z)
				stock := solid.Box(from, from.Add(solid.V(2*half, blank.Width, blank.Thickness)))
				var end, outer, frame Pass
				for _, p := range r.Passes() {
					switch p.ID {
					case "end":
						end = p
					case "shoulder-outer":
						outer = p
					case "shoulder-frame":
						frame = p
					default:
						if p.Saw.Tilt > 0 {
							t.Errorf("%v %d, %s: the blade leans over the part, towards the fence", row.Kind, k, p.ID)
						}
						stock = stock.Cut(p.plane())
					}
				}
				long := stock.Cut(end.plane()).Cut(mirrored(end.plane()))
				for _, corner := range []solid.Vec{from, {X: from.X, Y: from.Y, Z: from.Z + blank.Thickness}, {X: from.X, Y: from.Y + blank.Width, Z: from.Z}, {X: from.X, Y: from.Y + blank.Width, Z: from.Z + blank.Thickness}} {
					if h := mirrored(end.plane()).Height(corner); h < 0 {
						t.Errorf("%v %d: a corner of the board as sawn is %g short of the end", row.Kind, k, -h)
					}
				}
				got := solid.Part{Pieces: []solid.Solid{long.Cut(outer.plane()).Cut(mirrored(outer.plane()))}}
				if a, b := outer.plane(), frame.plane(); a.N.Distance(b.N) > 1e-9 || math.Abs(a.D-b.D) > 1e-9 {
					t.Errorf("the shoulders of %v %d do not meet", row.Kind, k)
				}
				beside := blank.Thickness - frame.Deep
				cheeks := []solid.Plane{{N: solid.V(0, 0, -1), D: -outer.Deep}, {N: solid.V(0, 0, 1), D: beside}}
				for _, shoulder := range []solid.Plane{outer.plane().Flip(), mirrored(outer.plane()).Flip()} {
					stub := long.Cut(shoulder).Cut(cheeks[0]).Cut(cheeks[1])
					lower, upper := r.frame().moved(r.downTo(row.Of.LowerCut)), r.frame().moved(r.upTo(row.Upper))
					got.Pieces = append(got.Pieces, stub.Cut(lower).Cut(upper))
					if row.Haunch() > 0 {
						far := shoulder.Flip()
						far.D += row.Haunch() * r.Ends[left].Joint.Square()
						if row.Joint == design.SlopingHaunch { // from that line at its foot to the arris at the top
							top := r.frame().moved(r.upTo(0))
							a, b, c := solid.Meet(shoulder, cheeks[0], top), solid.Meet(shoulder, cheeks[1], top), solid.Meet(far, cheeks[0], upper)
							n := b.Sub(a).Cross(c.Sub(a)).Unit()
							if n.Dot(far.N) < 0 {
								n = n.Mul(-1)
							}
							far = solid.Through(a, n)
						}
						got.Pieces = append(got.Pieces, stub.Cut(upper.Flip()).Cut(far))
					}
				}
				sameAs(t, row.Kind.String(), got, r.Part("").Transform(r.frame().to()))
			}
		}
	})
}

// A blank that is cut by the settings becomes the leg, but for its mortises and where
// a corner of the frame is none of 90° (then the last side is planed to the section).
func TestLegsByTheirPasses(t *testing.T) {
	variants(t, func(t *testing.T, m Model) {
		if len(m.sides) != 4 {
			return
		}
		for i, l := range m.legs {
			blank := l.Blank()
			to := l.frame().to()
			straight := block(append(l.sides(), l.planes()[:2]...)...).Transform(to)
			room := straight.Bounds()
			stock := solid.Box(room.Min, room.Min.Add(solid.V(blank.Length, blank.Width, blank.Thickness)))
			for _, p := range l.Passes() {
				stock = stock.Cut(p.plane())
				if p.ID == "rail-edge" { // the edge sawn before passes through the corner arris
					_, face, _ := l.TaperAngle()
					at := p.plane()
					if got := at.D / at.N.Y; !near(got, face) {
						t.Errorf("leg %d: %g from edge to edge, the fence stands at %g", i, got, face)
					}
				}
				if rip := p.ID == "outer-edge" || p.ID == "rail-edge"; rip && p.Saw.Tilt > 0 {
					t.Errorf("leg %d, %s: the blade leans over the part, towards the fence", i, p.ID)
				}
			}
			sameAs(t, "straight leg", solid.Stock("", stock), solid.Stock("", straight))
			// Tapered on both sides that take rails: on the outer side beside each the
			// taper runs at its angle to the edge, square to its straight side's slope.
			rad, wide, narrow := l.TaperAngle()
			if l.taper.Top == 0 {
				continue
			}
			if got := wide - math.Tan(rad)*l.taper.Run(); !near(got, narrow) {
				t.Errorf("leg %d: %g at the foot, want %g", i, got, narrow)
			}
			// The plane of the taper holds the line that the card sets out on the outer side,
			// and leans as the edge beside it was ripped: to 0.01°, since the line is turned.
			cut := l.frame().moved(l.tapered(own))
			for _, p := range []solid.Vec{solid.V(l.length()-l.taper.Start, wide, 0), solid.V(0, narrow, 0)} {
				if h := cut.Height(p); math.Abs(h) > 1e-9 {
					t.Errorf("leg %d: the taper passes %g beside its line", i, h)
				}
			}
			rip := l.frame().moved(l.straight(own))
			if off := math.Asin(cut.N.Z) - math.Asin(rip.N.Z); math.Abs(off) > measure.Radians(0.01) {
				t.Errorf("leg %d: the blade of the taper leans %g more than for ripping", i, off)
			}
		}
	})
}

// Ends and feet by formulas that hold for them alone: the mitre of two boards that slope
// (checked against published tables in geometry/joint), and the bevels of a level cut on
// a leg that leans two ways.
func TestPassesByClosedForm(t *testing.T) {
	m := newModel(table())
	for i, r := range m.Rows[0].Rails {
		at, next := math.Pi/2-m.sides[i].lean, math.Pi/2-m.sides[m.before(i)].lean
		corner := joint.SlopingCorner{Slope: at, Next: next, Angle: math.Pi / 2}
		front, _ := compound(m, i).Bevels()
		for _, p := range r.Passes() {
			if p.ID == "end" && (!near(math.Abs(p.Saw.OffSquare), math.Abs(corner.OffSquare())) || !near(p.Saw.Tilt, math.Abs(corner.Tilt()))) {
				t.Errorf("side %d: %v, want %g and %g", i, p.Saw, corner.OffSquare(), corner.Tilt())
			}
		}
		for _, p := range m.legs[i].Passes() {
			if p.ID == "foot" || p.ID == "head" {
				if !near(math.Abs(p.Saw.OffSquare), front) || !near(math.Abs(p.Saw.Tilt), m.sides[i].lean) {
					t.Errorf("leg %d, %s: %v, want %g and %g", i, p.ID, p.Saw, front, m.sides[i].lean)
				}
				if p.Saw.Tilt < 0 {
					t.Errorf("leg %d: the blade leans away from the part", i)
				}
			}
		}
	}
	// Head and foot are cut by one setting, turned end over end: mirrored gauge, same tilt.
	all := m.legs[0].Passes()
	foot, head := all[len(all)-2].Saw, all[len(all)-1].Saw
	if !near(foot.OffSquare, -head.OffSquare) || !near(foot.Tilt, head.Tilt) {
		t.Errorf("foot %v, head %v", foot, head)
	}
}
