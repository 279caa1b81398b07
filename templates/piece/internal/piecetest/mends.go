package piecetest

import (
	"testing"

	"rodsheet/geometry/measure"
	"rodsheet/templates/piece/design"
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
