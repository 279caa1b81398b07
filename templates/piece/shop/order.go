package shop

import (
	"math"
	"slices"
	"strings"

	"rodsheet/templates/piece"
)

// An op makes the step of one size, or none where that size has no need of it.
type op func(batchedPiece) (step, bool)

// A round is the ops that are run through before the next are taken up: for all
// sizes at once, or where by is given for those of one setting after the other.
type round struct {
	ops []op
	by  func(batchedPiece) float64
	// away is work away from the saw.
	away bool
}

// rounds returns every op in working order.
func rounds() []round {
	return []round{
		{ops: stockOps()},
		{ops: lapOps(), by: lapHeight},
		{ops: ringOps(), away: true},
		{ops: endOps(), by: splay},
		{ops: uprightOps()},
		{ops: shoulderOps(), by: splay},
		{ops: fitOps(), away: true},
		{ops: taperOps()},
		{ops: trimmedRingOps(), away: true},
		{ops: glueOps(), away: true},
	}
}

// workingOrder returns the steps over all sizes of one design in working order.
// What is the same for several sizes is one step, and steps that differ in
// nothing but the stop follow each other.
func workingOrder(pieces []piece.Piece) []step {
	shop := batched(pieces)
	var out []step
	for _, r := range rounds() {
		same := [][]batchedPiece{shop}
		if r.by != nil {
			same = grouped(shop, r.by)
		}
		for _, s := range same {
			for _, o := range r.ops {
				out = append(out, together(s, o)...)
			}
		}
	}
	return finish(out, len(pieces))
}

// Stops returns the farthest stop that the settings list asks for, mm from the
// blade, and the names of the steps whose stop stands beyond reach.
func Stops(p piece.Piece) (farthest float64, beyond []string) {
	for _, s := range sawn(p) {
		if s.Cut.How != onGauge {
			continue
		}
		uncounted(p).limit(&s)
		farthest = math.Max(farthest, s.Cut.Stop)
		if s.Cut.Beyond && !slices.Contains(beyond, s.Name) {
			beyond = append(beyond, s.Name)
		}
	}
	return farthest, beyond
}

// Through returns how thick the stock is, in mm, that the blade comes through at
// most, and the names of the steps for which it does not rise so high.
func Through(p piece.Piece) (thickest float64, beyond []string) {
	for _, s := range sawn(p) {
		if !s.Cut.Through {
			continue
		}
		thickest = math.Max(thickest, s.Cut.Height)
		if !rises(p, s.Cut.Height) && !slices.Contains(beyond, s.Name) {
			beyond = append(beyond, s.Name)
		}
	}
	return thickest, beyond
}

// sawn returns the steps of one size at the saw, before it is asked how far that
// reaches.
func sawn(p piece.Piece) []step {
	var out []step
	for _, r := range rounds() {
		if r.away {
			continue
		}
		for _, o := range r.ops {
			if s, ok := o(uncounted(p)); ok && s.Cut != nil {
				out = append(out, s)
			}
		}
	}
	return out
}

func lapHeight(p batchedPiece) float64 { return p.EndLap().BladeHeight() }
func splay(p batchedPiece) float64     { return p.Frame.Leg.Splay }

// grouped puts together the sizes that have one figure in common, in the order
// of the design.
func grouped(shop []batchedPiece, figure func(batchedPiece) float64) [][]batchedPiece {
	var out [][]batchedPiece
	for _, p := range shop {
		i := slices.IndexFunc(out, func(g []batchedPiece) bool {
			return quantize(figure(g[0])) == quantize(figure(p))
		})
		if i < 0 {
			out = append(out, nil)
			i = len(out) - 1
		}
		out[i] = append(out[i], p)
	}
	return out
}

// together makes one step for all the sizes that print alike. Those that
// differ in the stop only come next to each other.
func together(shop []batchedPiece, o op) []step {
	var out []step
	for _, p := range shop {
		s, ok := o(p)
		if !ok {
			continue
		}
		s.unit, s.fromFence = p.Design.Unit, p.Design.Saw.FromFence
		p.limit(&s)
		out = place(out, s)
	}
	return out
}

// place adds a step to the one that prints alike, else behind the last that
// differs in the stop only, else at the end.
func place(steps []step, s step) []step {
	at := len(steps)
	for i := range steps {
		switch {
		case steps[i].setting() == s.setting():
			steps[i].Parts = append(steps[i].Parts, s.Parts...)
			return steps
		case steps[i].butStop() == s.butStop():
			at = i + 1
		}
	}
	return slices.Insert(steps, at, s)
}

// limit marks what the saw cannot reach.
func (p batchedPiece) limit(s *step) {
	if s.Cut == nil {
		return
	}
	c := s.Cut
	if !c.ByHand && !rises(p.Piece, c.Height) {
		s.byHand("The blade rises "+p.MM(p.Design.Saw.Highest)+": saw this by hand or at the bandsaw, to the knifed lines.", p.Kerf)
	}
	c.Beyond = c.How == onGauge && p.Design.Saw.StopReach > 0 && c.Stop > p.Design.Saw.StopReach+piece.Slip
}

// setting is all of a step as it is printed, but for its parts.
func (s step) setting() string {
	return strings.Join(append(s.cells(), s.words()), "\n")
}

// butStop is setting without the stop.
func (s step) butStop() string {
	if s.Cut == nil {
		return s.setting()
	}
	cut := *s.Cut
	cut.Stop, cut.Line, cut.Beyond = 0, 0, false
	s.Cut = &cut
	return s.setting()
}

// finish gives each reason and each caution once, and says what is shared.
func finish(steps []step, sizes int) []step {
	reasons := map[operation]bool{}
	cautions := map[string]bool{}
	for i := range steps {
		s := &steps[i]
		if reasons[s.Op] {
			s.Once = nil
		}
		reasons[s.Op] = true
		if cautions[s.Caution] {
			s.Caution = ""
		}
		cautions[s.Caution] = true
	}
	for i := len(steps) - 1; i >= 0; i-- {
		s := &steps[i]
		if i > 0 {
			s.shorten(steps[i-1])
		}
		if words := s.shared(sizes); words != "" {
			s.Then = append([]string{words}, s.Then...)
		}
	}
	return steps
}

// shorten leaves out what the row above has said already.
func (s *step) shorten(above step) {
	if s.Op != above.Op || s.Name != above.Name {
		return
	}
	before := len(s.Then)
	s.Then = slices.DeleteFunc(slices.Clone(s.Then), func(w string) bool { return slices.Contains(above.Then, w) })
	said := len(s.Then) < before
	if s.Test == above.Test && s.Test != "" {
		s.Test, said = "", true
	}
	switch {
	case s.sameBlade(above):
		s.Then = append([]string{"As the row above: only the " + s.mark() + " moves."}, s.Then...)
	case said:
		s.Then = append([]string{"Otherwise as the row above."}, s.Then...)
	}
}

// mark names what the end of the part comes to.
func (s step) mark() string {
	if s.Cut.Line > 0 {
		return "line"
	}
	return "stop"
}

// sameBlade reports whether two cuts differ in nothing but stop or line.
func (s step) sameBlade(t step) bool {
	if s.Cut == nil || t.Cut == nil || s.Down != t.Down || s.Fence != t.Fence || s.Cut.Stop+s.Cut.Line == 0 {
		return false
	}
	blade := func(c sawCut) string {
		c.Stop, c.Line, c.Beyond = 0, 0, false
		return strings.Join(step{Cut: &c, unit: s.unit, fromFence: s.fromFence}.cells(), "\n")
	}
	return blade(*s.Cut) == blade(*t.Cut)
}

// shared says which sizes are cut together.
func (s step) shared(sizes int) string {
	var names []string
	for _, b := range s.Parts {
		if !slices.Contains(names, b.Size) {
			names = append(names, b.Size)
		}
	}
	switch {
	case s.Cut == nil || len(names) < 2:
		return ""
	case len(names) < sizes:
		return strings.Join(names, ", ") + ": cut them together."
	case sizes == 2:
		return "Both sizes: cut them together."
	}
	return "All sizes: cut them together."
}
