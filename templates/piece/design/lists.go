package design

import (
	"errors"
	"slices"
	"strconv"

	"rodsheet/geometry"
	"rodsheet/geometry/joint"
	"rodsheet/geometry/lists"
	"rodsheet/geometry/measure"
	"rodsheet/templates/wording"
)

// all makes one fault of several; it is nil where there is none.
func all(faults []*fault) *fault {
	if len(faults) == 0 {
		return nil
	}
	first := *faults[0]
	first.also = append(first.also, faults[1:]...)
	return &first
}

func pair(n *node, what, hint wording.Text, parse func(*node) (float64, *fault)) (a, b float64, bad *fault) {
	if n.kind != isList || n.headed {
		return 0, 0, wanted(n, what, hint)
	}
	if len(n.kids) != 2 {
		return 0, 0, &fault{at: n.value, words: wantedFor.With(what.With(), strconv.Itoa(len(n.kids))), hint: hint.With()}
	}
	a, bad1 := parse(n.kids[0])
	b, bad2 := parse(n.kids[1])
	faults := lists.Where([]*fault{bad1, bad2}, func(f *fault) bool { return f != nil })
	return a, b, all(faults)
}

func moistures() limits { return from(joint.MoistureLeast, joint.MoistureMost) }

// corners limit how far one lies from the centre, along and across.
func corners() limits { return from(-Longest, Longest) }

func readMoisture(n *node, u measure.Unit) (reading[Design], *fault) {
	span := moistures()
	low, high, bad := pair(n, pairOfPercents, moistureHint, func(item *node) (float64, *fault) {
		q, f := parseNumber(item, u)
		if f == nil {
			f = span.check(item, q, u)
		}
		return q.Value, f
	})
	return reading[Design]{apply: func(d *Design) { d.Wood.MoistureFrom, d.Wood.MoistureTo = low, high }}, bad
}

func points(key Key, of func(*Design) *[]geometry.Point) field[Design] {
	return field[Design]{key: key, kind: PointsField, within: corners(), read: func(n *node, u measure.Unit) (reading[Design], *fault) {
		corners, bad := readPoints(n, u)
		return reading[Design]{apply: func(d *Design) { *of(d) = corners }}, bad
	}}
}

func readPoints(n *node, u measure.Unit) ([]geometry.Point, *fault) {
	if n.kind != isList || n.headed {
		return nil, wanted(n, listOfCorners, pointsHint)
	}
	if len(n.kids) < 3 || len(n.kids) > MostPoints {
		return nil, &fault{at: n.value,
			words: cornersOutside.With(MostPoints, len(n.kids)), hint: pointsHint.With()}
	}
	var points []geometry.Point
	var faults []*fault
	for _, corner := range n.kids {
		x, y, bad := pair(corner, pairOfLengths, pointsHint, func(item *node) (float64, *fault) {
			q, f := parseLength(item, u)
			if f == nil {
				f = corners().check(item, q, u)
			}
			return q.Value, f
		})
		if bad != nil {
			faults = append(faults, bad)
		}
		points = append(points, geometry.Pt(x, y))
	}
	return points, all(faults)
}

// entries say how the tables of a list are read, each under a header of its own.
type entries[T any] struct {
	most   int
	fresh  T // before anything is set
	must   []Key
	fields []field[T]

	list, one, inline, hint, many, sharing wording.Text
}

// listOf reads the tables of a list.
func listOf[T any](key Key, e entries[T], of func(*Design) *[]T) field[Design] {
	read := func(n *node, u measure.Unit) (reading[Design], *fault) {
		switch {
		case n.kind != isList:
			return reading[Design]{}, wanted(n, e.list, e.hint)
		case !n.headed:
			return reading[Design]{}, &fault{at: n.value, words: e.inline.With(), hint: e.hint.With()}
		case len(n.kids) > e.most:
			return reading[Design]{}, &fault{at: n.value, words: e.many.With(len(n.kids), e.most), hint: e.sharing.With()}
		}
		var out []T
		var faults []*fault
		for _, item := range n.kids {
			if item.kind != isTable {
				faults = append(faults, wanted(item, e.one, e.hint))
				continue
			}
			one, bad := e.read(item, u)
			out, faults = append(out, one), append(faults, bad...)
		}
		return reading[Design]{apply: func(d *Design) { *of(d) = out }}, all(faults)
	}
	return field[Design]{key: key, kind: rowsField, read: read, outside: func(d *Design) error {
		for _, one := range *of(d) {
			if bound := e.outside(&one); bound != nil {
				bound.Figure = measure.ID(key.with(string(bound.Figure)))
				return bound
			}
		}
		return nil
	}}
}

// outside returns the first figure of an entry that is outside its limits.
func (e entries[T]) outside(one *T) *measure.BoundError {
	for _, f := range e.fields {
		var bound *measure.BoundError
		if f.outside != nil && errors.As(f.outside(one), &bound) {
			return bound
		}
	}
	return nil
}

func (e entries[T]) read(n *node, u measure.Unit) (T, []*fault) {
	one := e.fresh
	var faults []*fault
	known := map[Key]bool{}
	var words []string
	for _, f := range e.fields {
		words = append(words, f.key.word())
		known[f.key] = true
		kid := n.child(f.key.word())
		if kid == nil {
			if slices.Contains(e.must, f.key) {
				faults = append(faults, &fault{at: n.value, key: f.key, words: isMissing.With()})
			}
			continue
		}
		if kid.kind == isBroken {
			continue
		}
		r, bad := f.read(kid, u)
		if bad != nil {
			bad.key = f.key
			faults = append(faults, bad)
			continue
		}
		r.apply(&one)
	}
	for _, kid := range n.kids {
		if !known[Key(kid.key)] && kid.kind != isBroken {
			faults = append(faults, &fault{at: kid.at, key: Key(wording.Shown(kid.key)), words: keyUnknown.With(), hint: didYouMean(kid.key, words)})
		}
	}
	return one, faults
}
