package design

import (
	"strings"

	"rodsheet/geometry/lists"
	"rodsheet/templates/wording"
)

// A Key is what a design file sets a figure by, with its table: "ring.width"; or
// a table. Keys are compared, not read: they are no words for a maker.
type Key string

// everything holds every key.
const everything Key = ""

// table returns what stands before the last point of a key.
func (k Key) table() Key { return k[:max(strings.LastIndexByte(string(k), '.'), 0)] }

// word returns what stands behind it.
func (k Key) word() string { return string(k[strings.LastIndexByte(string(k), '.')+1:]) }

// holds reports whether the key is a table that another stands in.
func (k Key) holds(other Key) bool {
	n := len(k)
	return k == everything || len(other) > n && other[n] == '.' && other[:n] == k
}

// oneOf returns the words of keys for a choice: "height or frame-height".
func oneOf(keys []Key) string { return wording.Or(lists.Map(keys, Key.word)...) }

// with returns the key of a word in a table.
func (k Key) with(word string) Key {
	if k == everything {
		return Key(word)
	}
	return k + "." + Key(word)
}

// asThick are keys that there are none of, since a leg is as thick as its
// stretcher is wide, with those that say so.
func asThick() map[Key]Key {
	return map[Key]Key{"milled.thickness": "milled.width", "legs.thickness": "ring.width"}
}
