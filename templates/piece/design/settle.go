package design

import (
	"cmp"
	"maps"
	"slices"
	"strings"

	"rodsheet/geometry/joint"
	"rodsheet/geometry/lists"
	"rodsheet/geometry/measure"
	"rodsheet/templates/wording"
)

// overlay lays what a size says over what holds for all. A key of a group
// takes the place of the others in it, and a size that names a figure of its
// own has other stock, or another blade, than was measured for all.
func overlay(base, own settings) settings {
	out := maps.Clone(base)
	for _, group := range groups() {
		if slices.ContainsFunc(group, func(key Key) bool { _, ok := own[key]; return ok }) {
			for _, key := range group {
				delete(out, key)
			}
		}
	}
	for measured, key := range measures() {
		if _, ok := own[key]; ok {
			delete(out, measured)
		}
	}
	for key, s := range own {
		// A table is known by its first header.
		if _, ok := out[key]; !ok || s.apply != nil || !s.ok {
			out[key] = s
		}
	}
	return out
}

// word returns the word that a choice stands at.
func (s settings) word(key Key, standard string) string {
	if set, given := s[key]; given {
		return set.word
	}
	return standard
}

func (s settings) good(keys ...Key) bool {
	return !slices.ContainsFunc(keys, func(key Key) bool { return !s[key].ok })
}

// sound reports whether all of them could be read.
func (s settings) sound() bool {
	for _, set := range s {
		if !set.ok {
			return false
		}
	}
	return true
}

// start is a design before anything is set: the standards of the keys that
// may be left out. The rough allowances are common practice, no source.
func (r *reader) start() Design {
	d := Design{
		Title: untitled.With(), Unit: r.unit, Written: r.unit,
		Ring: Ring{Plain: OpenEnd},
		Wood: Wood{
			ExtraLength: 20, ExtraWidth: 4, ExtraThickness: 4, Spares: 1, Tests: 1,
			MoistureFrom: 8, MoistureTo: 12, Waste: 0.25,
		},
	}
	if r.kind != RingKind {
		d.Title = r.kind.String()
	}
	if r.unit == measure.Inch {
		const eighth = measure.MillimetresPerInch / 8
		d.Wood.ExtraLength, d.Wood.ExtraWidth, d.Wood.ExtraThickness = 6*eighth, eighth, eighth
	}
	return d
}

// design puts together what a size goes by, and notes what is missing in it or
// does not go together.
func (r *reader) design(s settings, size string) (Design, []note) {
	doubts := r.doubts(s, size, nil)
	notes := r.misfits(s, doubts)
	if !r.lost {
		notes = append(notes, missing(s, doubts)...)
	}
	d := r.start()
	for _, f := range r.fields {
		if set, given := s[f.key]; given && set.ok {
			set.apply(&d)
		}
	}
	notes = append(notes, resolveSpecies(&d, s)...)
	return d, append(notes, r.impossible(d, s, r.doubts(s, size, notes))...)
}

// A misfit is a key that means nothing beside the word of another.
type misfit struct {
	need
	setting
	name Key
	word string
}

// misfits takes out keys that mean nothing beside the word of another, and returns
// those with which that is a mistake: where the two stand together, or where a size
// gives such a key. A size that changes the word need not undo what hangs on it.
func (s settings) misfits(doubts Doubts) []misfit {
	var out []misfit
	keys := slices.Sorted(maps.Keys(s))
	for _, n := range needs() {
		word := s.word(n.of, n.standard)
		if doubts.Any(n.of) || slices.Contains(n.words, word) {
			continue
		}
		// In order, a table is followed by what begins as it does.
		from, _ := slices.BinarySearch(keys, n.key)
		for _, key := range keys[from:] {
			if !strings.HasPrefix(string(key), string(n.key)) {
				break
			}
			set, there := s[key]
			if !there || !n.touches(key) {
				continue
			}
			table := slices.ContainsFunc(out, func(m misfit) bool { return m.name.holds(key) })
			if !n.quiet && !table && !(set.ok && set.idle) && (set.own || !s[n.of].own) {
				out = append(out, misfit{n, set, key, word})
			}
			delete(s, key)
		}
	}
	return out
}

// misfits takes such keys out and notes the mistakes.
func (r *reader) misfits(s settings, doubts Doubts) []note {
	return lists.Map(s.misfits(doubts), func(m misfit) note {
		return note{at: m.at, path: string(m.name),
			words: goesWith.With(m.of.word(), wording.Or(m.words...), m.word),
			hint:  r.whereSaid(s, m.need), doubts: []Key{m.name, m.of}}
	})
}

func (r *reader) whereSaid(s settings, n need) string {
	if set, given := s[n.of]; given {
		return standsInLine.With(n.of.word(), r.source.place(set.at).line)
	}
	return standardIs.With(n.of.word(), n.standard)
}

// missing notes at the header of its table each key that is wanted.
func missing(s settings, doubts Doubts) []note {
	var notes []note
	lost := map[Key]bool{}
	for _, keys := range musts() {
		if slices.ContainsFunc(keys, func(key Key) bool { _, given := s[key]; return given }) {
			continue
		}
		table := keys[0].table()
		header, there := s[table]
		optional, asked := s.asks(keys[0], doubts)
		switch {
		case !optional && !asked, !there && (optional || lost[table]):
		case !there:
			lost[table] = true
			notes = append(notes, note{path: string(table), words: tableMissing.With(table),
				hint: allTablesHint.With(), doubts: []Key{table}})
		case !asked:
		case len(keys) == 1:
			notes = append(notes, note{at: header.at, path: string(keys[0]), words: isMissing.With(), doubts: keys})
		default:
			notes = append(notes, note{at: header.at, path: string(table), words: oneMissing.With(oneOf(keys)), doubts: keys})
		}
	}
	return notes
}

// asks reports whether a key that must be given is wanted beside the others, and whether
// that is a matter of its table's being there: what neither hangs on a word nor stands in
// an optional table is wanted by the kind of piece. One of another kind is not wanted.
func (s settings) asks(key Key, doubts Doubts) (optional, asked bool) {
	_, own, ofKind := schemaOf(key)
	unsure := ofKind && doubts.Any("kind")
	if ofKind && !unsure && own.name != s.word("kind", schemas()[RingKind].name) {
		return false, false
	}
	optional, asked = slices.Contains(own.optional, key.table()), true
	for _, n := range own.needs {
		if n.of != key && (n.key == key || n.key == key.table()) {
			optional, asked = true, asked && !doubts.Any(n.of) && slices.Contains(n.words, s.word(n.of, n.standard))
		}
	}
	return optional, asked && (optional || !unsure)
}

// impossible notes figures that were read and cannot be together. What hangs
// on more than a few keys is found out when the piece is worked out.
func (r *reader) impossible(d Design, s settings, doubts Doubts) []note {
	var errs []error
	check := func(err error, keys ...Key) {
		if s.good(keys...) && !doubts.Any(keys...) {
			errs = append(errs, err)
		}
	}
	width := measure.Length(cmp.Or(d.Milled.Width, d.Ring.Width))
	plan := d.Ring.Ring
	plan.Depth = plan.Width // the laps meet in plan, whatever the depth
	check(plan.Check(), "ring.sides", "ring.inside", "ring.width")
	check(measure.Below("legs.tenon", measure.Length(d.Legs.Tenon), "ring.width", width, "tenon.third"),
		"legs.tenon", "ring.width")
	if t := d.Legs.Taper; t != nil {
		breadth := measure.Length(cmp.Or(d.Milled.Breadth, d.Legs.Breadth))
		check(measure.Below("legs.taper.foot", measure.Length(t.Foot), "legs.breadth", breadth, "taper.narrows"),
			"legs.taper.foot", "legs.breadth")
	}
	if d.Top.Kind == GlassTop {
		check(joint.Glass{Area: 1, Thickness: d.Top.Thickness}.Check(), "top.thickness")
	}
	check(measure.Above("top.overhang", measure.Length(d.Top.Overhang), "ring.inside", measure.Length(-d.Ring.Width),
		"top.over-stretchers"), "top.overhang", "ring.width")
	return r.placed(errs, s)
}

// shared makes one note of those that several sizes have in common. A note
// that not all of them have says whose it is.
func shared(found [][]note, names []string) []note {
	var out []note
	for i, notes := range found {
		for _, n := range notes {
			same := func(o note) bool { return o.at == n.at && o.path == n.path && o.words == n.words }
			if k := slices.IndexFunc(out, same); k >= 0 {
				out[k].sizes = append(out[k].sizes, names[i])
				continue
			}
			n.sizes = []string{names[i]}
			out = append(out, n)
		}
	}
	for i := range out {
		if len(out[i].sizes) == len(names) {
			out[i].sizes = nil
		}
	}
	return out
}
