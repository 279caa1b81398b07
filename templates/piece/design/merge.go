package design

import (
	"bytes"
	"cmp"
	"maps"
	"slices"
)

// A spot is where a key stands: in a size by its name, in a row.
type spot struct {
	size string
	key  Key
	row  int
}

func (s spot) change(value string) Change { return Change{s.size, s.key, s.row, value} }
func (s spot) String() string             { return subject(string(s.key), sizeNames(s.size)) }

// Merge lays the changes from base to mine over theirs, whose comments and order stay.
// clash lists the keys that both changed, differently; then merged is nil. Other units
// change what every bare figure means, and clash with any other change.
func Merge(base, mine, theirs []byte) (merged []byte, clash []string, err error) {
	for _, text := range [][]byte{base, mine, theirs} {
		if err := unsound(text); err != nil {
			return nil, nil, err
		}
	}
	switch {
	case bytes.Equal(base, mine):
		return theirs, nil, nil
	case bytes.Equal(base, theirs):
		return mine, nil, nil
	}
	m := merger{base: surveyed(base), mine: surveyed(mine)}
	merged, err = rewrite(theirs, func(l layout) (layout, error) {
		m.theirs = l
		changes := m.changes()
		if m.theirs = m.resized(m.theirs); len(m.clash) > 0 {
			return l, nil
		}
		out, err := m.theirs.all(changes)
		if err != nil {
			return l, err
		}
		return m.shortened(out), nil
	})
	if err != nil || len(m.clash) > 0 {
		return nil, slices.Compact(slices.Sorted(slices.Values(m.clash))), err
	}
	return merged, nil, nil
}

func surveyed(text []byte) layout { return survey(bytes.TrimPrefix(text, []byte(byteOrderMark))) }

type merger struct {
	base, mine, theirs layout
	clash              []string
}

func (m *merger) clashes(s spot) { m.clash = append(m.clash, s.String()) }

// values are what a text says, by where it does.
func (l layout) values() map[spot]string {
	out := map[spot]string{}
	for _, e := range l.entries {
		if e.off || e.size > 0 && e.key == "name" {
			continue
		}
		s := spot{key: e.key, row: e.row}
		if e.size > 0 {
			s.size = l.sizeName(e.size)
		}
		out[s] = e.shown()
	}
	return out
}

// changes returns what makes mine of base, to be made to theirs as well.
func (m *merger) changes() []Change {
	m.rename()
	base, mine, theirs := m.base.values(), m.mine.values(), m.theirs.values()
	units := spot{key: "units"}
	if base[units] != mine[units] && !maps.Equal(base, theirs) || base[units] != theirs[units] && !maps.Equal(base, mine) {
		m.clashes(units)
	}
	both := maps.Clone(base)
	maps.Copy(both, mine)
	var out []Change
	for _, s := range slices.SortedFunc(maps.Keys(both), m.mine.kind().before) {
		gone := s.size != "" && !slices.Contains(m.mine.sizeNames(), s.size)
		if base[s] == mine[s] || gone {
			continue
		}
		if !m.free(s, base, mine, theirs) {
			m.clashes(s)
			continue
		}
		out = append(out, s.change(mine[s]))
	}
	return out
}

func (k Kind) before(s, other spot) int {
	return cmp.Or(cmp.Compare(s.size, other.size), cmp.Compare(s.row, other.row), cmp.Compare(k.rank(s.key), k.rank(other.key)), cmp.Compare(s.key, other.key))
}

// free reports whether theirs has at a spot, and for the keys that say the same in
// another way, what base or mine has; and as many rows.
func (m *merger) free(s spot, base, mine, theirs map[spot]string) bool {
	if n := m.theirs.rows[s.key.table()]; s.row > 0 && n != m.base.rows[s.key.table()] && n != m.mine.rows[s.key.table()] {
		return false
	}
	return !slices.ContainsFunc(alternatives(s.key), func(k Key) bool {
		t := spot{s.size, k, s.row}
		return theirs[t] != base[t] && theirs[t] != mine[t]
	})
}

// rename gives a size of base and theirs the name that mine gave it.
func (m *merger) rename() {
	old, now := m.base.sizeNames(), m.mine.sizeNames()
	if len(old) != len(now) {
		return
	}
	for i, name := range old {
		if name == now[i] || name == "" || now[i] == "" || slices.Contains(now, name) || slices.Contains(old, now[i]) {
			continue
		}
		c := Change{Size: name, Key: "size.name", Value: now[i]}
		base, err := m.base.changed(c)
		theirs, err2 := m.theirs.changed(c)
		if cmp.Or(err, err2) != nil {
			m.clashes(spot{name, "size.name", 0})
			continue
		}
		m.base, m.theirs = base, theirs
	}
}

// resized returns a layout with the sizes that mine added, and without those that it
// took out and that are as in base.
func (m *merger) resized(l layout) layout {
	old, now := m.base.sizeNames(), m.mine.sizeNames()
	for _, name := range now {
		if name == "" || slices.Contains(l.sizeNames(), name) {
			continue
		}
		if slices.Contains(old, name) {
			if !m.same(name, m.mine) {
				m.clashes(spot{name, "size", 0})
			}
			continue
		}
		l = l.sized(name)
	}
	for _, name := range old {
		size, err := l.sizeOf(name)
		if slices.Contains(now, name) || err != nil {
			continue
		}
		if !m.same(name, m.theirs) {
			m.clashes(spot{name, "size", 0})
			continue
		}
		l = l.sizeless(size)
	}
	return l
}

// same reports whether a size says in a layout what it says in base.
func (m *merger) same(size string, l layout) bool {
	of := func(l layout) map[spot]string {
		out := l.values()
		maps.DeleteFunc(out, func(s spot, _ string) bool { return s.size != size })
		return out
	}
	return maps.Equal(of(m.base), of(l))
}

// shortened returns a layout without the last rows where mine has fewer than base.
func (m *merger) shortened(l layout) layout {
	for _, table := range rowTables() {
		for mine := m.mine.rows[table]; mine < m.base.rows[table] && l.rows[table] > mine; {
			l = l.emptied(scope{row: l.rows[table]}, table)
		}
	}
	return l
}
