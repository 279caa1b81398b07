package design

import (
	"maps"
	"slices"
	"strings"
)

// Doubts are the keys of a design whose figures are not to be relied on: they
// are mistaken or missing, or may have been meant by a key that is not known.
type Doubts map[string]bool

// Any reports whether one of the keys is in doubt.
func (d Doubts) Any(keys ...string) bool {
	return slices.ContainsFunc(keys, func(key string) bool { return d[key] })
}

// Clone returns doubts to which With may add.
func (d Doubts) Clone() Doubts { return maps.Clone(d) }

// With returns the doubts with more of them. It may use what it was given.
func (d Doubts) With(keys ...string) Doubts {
	if d == nil {
		d = Doubts{}
	}
	for _, key := range keys {
		d[key] = true
	}
	return d
}

// doubts returns those of one size, which goes by s: what could not be read, and
// what the notes about all sizes, about this one and on what it goes by leave in
// doubt. A bare figure without a unit to rely on is no figure.
func (r *reader) doubts(s settings, size string, found []note) Doubts {
	inDoubt := func(key string) bool {
		set, given := s[key]
		return given && !set.ok || s.unreadTable(key) ||
			slices.ContainsFunc(r.notes, func(n note) bool { return n.concerns(size, key, s) && n.leaves(key, s) }) ||
			slices.ContainsFunc(found, func(n note) bool { return n.leaves(key, s) })
	}
	unitless := inDoubt("units")
	var out Doubts
	for _, f := range r.fields {
		if unitless || inDoubt(f.key) {
			out = out.With(f.key)
		}
	}
	return out
}

// concerns reports whether what is wrong with a key for all sizes, or for some,
// is so for this one: it is not where a size says better itself.
func (n note) concerns(size, key string, s settings) bool {
	if n.sizes != nil {
		return slices.Contains(n.sizes, size)
	}
	return !slices.ContainsFunc(alternatives(key), func(k string) bool { return s[k].own && s[k].ok })
}

// alternatives are the keys that say the same in another way, with the key.
func alternatives(key string) []string {
	for _, group := range groups() {
		if slices.Contains(group, key) {
			return group
		}
	}
	return []string{key}
}

// unreadTable reports whether a table that holds the key could not be read.
func (s settings) unreadTable(key string) bool {
	for table := tableOf(key); table != ""; table = tableOf(table) {
		if set, given := s[table]; given && !set.ok {
			return true
		}
	}
	return false
}

// leaves reports whether a note leaves a key in doubt.
func (n note) leaves(key string, s settings) bool {
	return slices.ContainsFunc(n.doubts, func(doubt string) bool {
		if table, free := strings.CutSuffix(doubt, anyOf); free {
			return strings.HasPrefix(key, table) && s.vacant(key, len(n.sizes) > 0)
		}
		return doubt == everything || key == doubt || strings.HasPrefix(key, doubt+".")
	})
}

// A doubt is a key, a table with all that it holds, or one of these.
const (
	everything = ""  // whatever is said in the file
	anyOf      = "*" // behind a table and its point: each of its keys that is not given
)

// vacant reports whether a key may still be meant by one that is not known, of
// all sizes or of the size itself: neither it nor another that says the same in
// another way is given there.
func (s settings) vacant(key string, inSize bool) bool {
	return !slices.ContainsFunc(alternatives(key), func(k string) bool {
		set, given := s[k]
		return given && (!inSize || set.own)
	})
}
