package piecetest

import (
	"fmt"
	"testing"

	"rodsheet/geometry/measure"
	"rodsheet/templates/piece/design"
	"rodsheet/templates/piece/kind"
	"rodsheet/templates/wording"
)

// Mends wants each key that may mend a check to hold a figure and to have words for that,
// and no words that nothing asks for.
func Mends(t *testing.T, mends map[measure.ID][]design.Key, words map[design.Key]wording.Text) {
	t.Helper()
	asked := map[design.Key]bool{}
	for id, keys := range mends {
		for _, key := range keys {
			asked[key] = true
			if at, _ := key.Figure(); at == nil || words[key] == "" {
				t.Errorf("%s: %s holds no figure, or has no words", id, key)
			}
		}
	}
	for key := range words {
		if !asked[key] {
			t.Errorf("%s mends nothing", key)
		}
	}
}

// Written wants the design file to take each figure that mends a check, as it stands there.
func Written(t *testing.T, d design.Design, c kind.Check) {
	t.Helper()
	text, err := design.Start(d.Kind, 4, d.Unit)
	if err != nil {
		t.Fatal(err)
	}
	for _, f := range c.Fixes {
		value, _ := f.To.JSON()
		if _, err := design.Edit(text, design.Change{Key: f.Key, Value: fmt.Sprint(value)}); err != nil {
			t.Errorf("%s: %s: %v", c.ID, f.Words, err)
		}
	}
}
