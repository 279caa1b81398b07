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

// A doubt is a key, a table with all that it holds, or one of the constants
// below; own says that it is about one size and not about all of them.
type doubt struct {
	key string
	own bool
}

const (
	everything = ""  // whatever is said in the file
	anyOf      = "*" // behind a table and its point: each of its keys that is not given
)

// doubts returns those of one size, which goes by s: what could not be read, and
// what the notes about all sizes, about this one and on what it goes by leave in
// doubt. A bare figure without a unit to rely on is no figure.
func (r *reader) doubts(s settings, size string, found []note) Doubts {
	noted := map[doubt]bool{} // of many notes each but once
	for _, n := range r.notes {
		for _, key := range n.doubts {
			if n.sizes == nil || slices.Contains(n.sizes, size) {
				noted[doubt{key, n.sizes != nil}] = true
			}
		}
	}
	for _, n := range found {
		for _, key := range n.doubts {
			noted[doubt{key, true}] = true
		}
	}
	var out Doubts
	unitless := s.inDoubt("units", noted)
	for _, f := range r.fields {
		if unitless || s.inDoubt(f.key, noted) {
			out = out.With(f.key)
		}
	}
	return out
}

// inDoubt reports whether a key is in doubt. What is wrong for all sizes is not
// where a size says better itself.
func (s settings) inDoubt(key string, noted map[doubt]bool) bool {
	if set, given := s[key]; given && !set.ok || s.unreadTable(key) {
		return true
	}
	better := slices.ContainsFunc(alternatives(key), func(k string) bool { return s[k].own && s[k].ok })
	for d := range noted {
		if (d.own || !better) && d.holds(key, s) {
			return true
		}
	}
	return false
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

// holds reports whether the doubt is about a key.
func (d doubt) holds(key string, s settings) bool {
	if table, free := strings.CutSuffix(d.key, anyOf); free {
		return strings.HasPrefix(key, table) && s.vacant(key, d.own)
	}
	return d.key == everything || d.key == key || strings.HasPrefix(key, d.key+".")
}

// vacant reports whether a key may still be meant by one that is not known, by
// the size itself or for all of them: neither it nor another that says the same in
// another way is given there.
func (s settings) vacant(key string, own bool) bool {
	return !slices.ContainsFunc(alternatives(key), func(k string) bool {
		set, given := s[k]
		return given && (!own || set.own)
	})
}
