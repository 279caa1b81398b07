package design

import (
	"maps"
	"slices"
)

// Doubts are the keys of a design whose figures are not to be relied on: they
// are mistaken or missing, or an unknown key may stand for them.
type Doubts map[Key]bool

// Any reports whether one of the keys is in doubt.
func (d Doubts) Any(keys ...Key) bool {
	return len(d) > 0 && slices.ContainsFunc(keys, func(key Key) bool { return d[key] })
}

// Clone returns doubts to which With may add.
func (d Doubts) Clone() Doubts { return maps.Clone(d) }

// With returns the doubts with more of them. It may use what it was given.
func (d Doubts) With(keys ...Key) Doubts {
	if d == nil {
		d = Doubts{}
	}
	for _, key := range keys {
		d[key] = true
	}
	return d
}

// A doubt is about a key, or about what a table holds; own says that it is about
// one size and not about all of them, vacant as in note.
type doubt struct {
	key         Key
	own, vacant bool
}

// doubts returns those of one size with its settings: the keys that could not be
// read, and those left in doubt by the notes about all sizes, about this one, and
// found in its settings. Without a unit to rely on every key is in doubt, without a kind
// those of the kinds.
func (r *reader) doubts(s settings, size string, found []note) Doubts {
	noted := map[doubt]bool{} // of many notes each but once
	for i, notes := range [][]note{r.notes, found} {
		for _, n := range notes {
			for _, key := range n.doubts {
				if i == 1 || n.sizes == nil || slices.Contains(n.sizes, size) {
					noted[doubt{key, i == 1 || n.sizes != nil, n.vacant}] = true
				}
			}
		}
	}
	if len(noted) == 0 && s.sound() {
		return nil
	}
	var out Doubts
	unitless, kindless := s.inDoubt("units", noted), s.inDoubt("kind", noted)
	for _, f := range r.fields {
		_, _, own := schemaOf(f.key)
		if unitless || kindless && own || s.inDoubt(f.key, noted) {
			out = out.With(f.key)
		}
	}
	return out
}

// inDoubt reports whether a key is in doubt. A doubt about all sizes does not
// count where the size gives the key, or another of its group, itself.
func (s settings) inDoubt(key Key, noted map[doubt]bool) bool {
	for k := key; k != ""; k = k.table() {
		if set, given := s[k]; given && !set.ok {
			return true
		}
	}
	better := slices.ContainsFunc(alternatives(key), func(k Key) bool { return s[k].own && s[k].ok })
	for d := range noted {
		if (d.own || !better) && (d.key == key || d.key.holds(key)) && (!d.vacant || s.vacant(key, d.own)) {
			return true
		}
	}
	return false
}

// alternatives are the keys that say the same in another way, with the key.
func alternatives(key Key) []Key {
	for _, group := range groups() {
		if slices.Contains(group, key) {
			return group
		}
	}
	return []Key{key}
}

// vacant reports whether an unknown key, of the size itself or of all, may stand
// for a key: neither it nor another of its group is given there.
func (s settings) vacant(key Key, own bool) bool {
	return !slices.ContainsFunc(alternatives(key), func(k Key) bool {
		set, given := s[k]
		return given && (!own || set.own)
	})
}
