package design

import (
	"maps"
	"slices"
	"strings"
	"testing"

	"pgregory.net/rapid"
)

func TestMerge(t *testing.T) {
	const (
		base  = "# mine\n[legs]\nsplay = 14 # lean\nheight = 450\n\n[saw]\nkerf = 3\n"
		board = "[[wood.board]]\nlength = 1\nwidth = 1\nthickness = 1\n"
		two   = "[[size]]\nname = \"low\"\n\n[[size]]\nname = \"tall\"\n[size.legs]\nheight = 500\n"
	)
	edited := func(text string, pairs ...string) string { return strings.NewReplacer(pairs...).Replace(text) }
	for _, tt := range []struct{ name, base, mine, theirs, want, clash string }{
		{"nothing of mine", base, base, "[saw]\nkerf = 1\n", "[saw]\nkerf = 1\n", ""},
		{"nothing of theirs", base, "[saw]\nkerf = 1\n", base, "[saw]\nkerf = 1\n", ""},
		{"two keys", base, edited(base, "450", "460"), edited(base, "kerf = 3", "kerf = 2.4 # new blade", "# mine", "# ours"),
			edited(base, "450", "460", "kerf = 3", "kerf = 2.4 # new blade", "# mine", "# ours"), ""},
		{"the same", base, edited(base, "450", "460"), edited(base, "450", "'460' # now"), edited(base, "450", "'460' # now"), ""},
		{"one key", base, edited(base, "450", "460"), edited(base, "450", "470"), "", "legs.height"},
		{"one taken out", base, edited(base, "height = 450\n", "", "kerf = 3", "kerf = 1"), edited(base, "kerf = 3", "kerf = 2", "450", "470"), "", "legs.height, saw.kerf"},
		{"one group", base, edited(base, "splay = 14", "foot-circle = 600"), edited(base, "splay = 14", "foot-spread = 500"), "", "legs.foot-circle, legs.splay"},
		{"group of mine", base, edited(base, "splay = 14", "foot-circle = 600"), edited(base, "450", "470"), edited(base, "splay = 14 # lean", "# splay = 14 # lean\nfoot-circle = 600", "450", "470"), ""},
		{"units", "units = \"mm\"\n" + base, "units = \"in\"\n" + base, "units = \"mm\"\n" + edited(base, "450", "470"), "", "units"},
		{"new table", base, base + "[wood]\nspares = 2\n", edited(base, "450", "470"), edited(base, "450", "470", "\n[saw]", "\n[wood]\nspares = 2\n\n[saw]"), ""},

		{"more rows", base, base + "\n" + board, edited(base, "450", "470"), edited(base, "450", "470", "kerf = 3\n", "kerf = 3\n\n"+board), ""},
		{"rows of both", base, base + board, base + edited(board, "1", "2"), "", "wood.board.length, wood.board.thickness, wood.board.width"},
		{"fewer rows", base + board + "\n" + board, base + board, edited(base, "450", "470") + board + "\n" + board, edited(base, "450", "470") + board, ""},
		{"row of theirs", base + board, edited(base, "450", "470") + board, base + board + "\n" + board, edited(base, "450", "470") + board + "\n" + board, ""},

		{"of sizes", base + two, base + edited(two, "500", "510"), base + edited(two, "\"low\"", "\"low\"\nsaw.kerf = 1"), base + edited(two, "500", "510", "\"low\"", "\"low\"\nsaw.kerf = 1"), ""},
		{"of one size", base + two, base + edited(two, "500", "510"), base + edited(two, "500", "520"), "", "legs.height of size tall"},
		{"size added", base + two, base + two + "\n[[size]]\nname = \"bar\"\n[size.legs]\nheight = 900\n", edited(base, "450", "470") + two, edited(base, "450", "470") + two + "\n[[size]]\nname = \"bar\"\n[size.legs]\nheight = 900\n", ""},
		{"first sizes", base, base + "\n" + two, edited(base, "450", "470"), edited(base, "450", "470") + "\n" + two, ""},
		{"size taken out", base + two, base + "[[size]]\nname = \"low\"\n", edited(base, "450", "470") + two, edited(base, "450", "470") + "[[size]]\nname = \"low\"\n", ""},
		{"size taken out that they changed", base + two, base + "[[size]]\nname = \"low\"\n", base + edited(two, "500", "470"), "", "size of size tall"},
		{"size changed that they took out", base + two, base + edited(two, "500", "470"), base + "[[size]]\nname = \"low\"\n", "", "legs.height of size tall, size of size tall"},
		{"size renamed", base + two, base + edited(two, "tall", "high"), base + edited(two, "500", "510"), base + edited(two, "tall", "high", "500", "510"), ""},
		{"renamed by both", base + two, base + edited(two, "tall", "high"), base + edited(two, "tall", "higher"), "", "size.name of size tall"},
	} {
		got, clash, err := Merge([]byte(tt.base), []byte(tt.mine), []byte(tt.theirs))
		if err != nil || string(got) != tt.want || strings.Join(clash, ", ") != tt.clash {
			t.Errorf("%s: %v, %q, got\n%s\nwant\n%s", tt.name, err, clash, got, tt.want)
		}
	}
	if _, _, err := Merge([]byte(base), []byte(base+"title = \"a\"\n"), []byte("[ring")); err == nil {
		t.Error("merged with what is no TOML")
	}
}

// Changes of two that do not touch each other come out as if one had made them all.
func TestMergeIsBoth(t *testing.T) {
	all := texts(t)
	rapid.Check(t, func(t *rapid.T) {
		base := []byte(ended(t, rapid.SampledFrom(all).Draw(t, "text")))
		l := surveyed(base)
		a, b := drawChange(t, l), drawChange(t, l)
		near := slices.Contains(alternatives(a.Key), b.Key) && a.Size == b.Size && a.Row == b.Row
		rows := slices.Contains(rowTables(), a.Key.table()) && a.Key.table() == b.Key.table()
		for _, k := range []Key{"units", "size.name"} {
			near = near || a.Key == k || b.Key == k
		}
		mine, err1 := Edit(base, a)
		theirs, err2 := Edit(base, b)
		both, err3 := Edit(theirs, a)
		if near || rows || err1 != nil || err2 != nil || err3 != nil {
			return
		}
		got, clash, err := Merge(base, mine, theirs)
		if err != nil || len(clash) > 0 {
			t.Fatalf("%+v, %+v: %v, %v", a, b, clash, err)
		}
		if !maps.Equal(flat(t, got), flat(t, both)) {
			t.Fatalf("%+v, %+v: got\n%s\nwant\n%s", a, b, got, both)
		}
	})
}
