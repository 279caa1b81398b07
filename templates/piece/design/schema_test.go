package design

import (
	"slices"
	"strings"
	"testing"

	"rodsheet/geometry/measure"
)

// The starting design names every key there is, each in its table.
func TestStartNamesEveryKey(t *testing.T) {
	text, err := Start(3, measure.Millimetre)
	if err != nil {
		t.Fatal(err)
	}
	named := map[string]bool{}
	table := ""
	for line := range strings.Lines(string(text)) {
		line = strings.TrimPrefix(line, "# ")
		if strings.HasPrefix(line, "[") {
			table, _, _ = strings.Cut(strings.TrimLeft(line, "["), "]")
			named[table] = true
		}
		if word, _, found := strings.Cut(line, " = "); found {
			named[strings.TrimPrefix(table+"."+word, ".")] = true
		}
	}
	for _, f := range fields() {
		if !named[string(f.key)] {
			t.Errorf("%s is not explained", f.key)
		}
	}
}

// Tables, groups, needs and demands speak of keys that there are.
func TestSchemaIsWhole(t *testing.T) {
	keys := slices.Clone(tables())
	for _, f := range fields() {
		if slices.Contains(keys, f.key) {
			t.Errorf("%s stands twice", f.key)
		}
		keys = append(keys, f.key)
		if table := f.key.table(); table != "" && !slices.Contains(tables(), table) {
			t.Errorf("%s stands in no table", f.key)
		}
	}
	var spoken []Key
	for _, g := range groups() {
		spoken = append(spoken, g...)
	}
	for _, n := range needs() {
		spoken = append(spoken, n.key, n.of)
	}
	for _, d := range demands() {
		spoken = append(spoken, d.keys...)
		if d.of != "" {
			spoken = append(spoken, d.of)
		}
	}
	for _, key := range spoken {
		if !slices.Contains(keys, key) {
			t.Errorf("there is no key %s", key)
		}
	}
}

func TestSettersAreKeys(t *testing.T) {
	var keys []Key
	for _, f := range fields() {
		keys = append(keys, f.key)
	}
	seen := map[measure.ID]bool{}
	for _, s := range otherSetters() {
		for _, figure := range s.figures {
			if seen[figure] {
				t.Errorf("%s stands twice", figure)
			}
			seen[figure] = true
			for _, key := range setters(figure) {
				if !slices.Contains(keys, key) {
					t.Errorf("%s: there is no key %s", figure, key)
				}
			}
		}
	}
}
