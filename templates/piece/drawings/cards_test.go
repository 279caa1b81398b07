package drawings

import (
	"strings"
	"testing"
)

// A template of one size is called for by cards of that size only.
func TestTemplatesOfASizeAreForItsCards(t *testing.T) {
	sized := 0
	for _, s := range packed(t, twoSizes(t), false) {
		for _, d := range s.Drawings {
			if name, ok := strings.CutSuffix(d.Name, ", size "+d.View.Size); ok != (d.View.Size != "") {
				t.Errorf("%q is of size %q", name, d.View.Size)
			}
		}
		for _, c := range s.Cards {
			_, size, one := strings.Cut(c.Heading, ", size ")
			for _, v := range c.Templates {
				if v.Size != "" && one {
					sized++
					if v.Size != size {
						t.Errorf("%s calls for %v", c.Heading, v)
					}
				}
			}
		}
	}
	if sized == 0 {
		t.Error("no card of one size calls for a template of it")
	}
}
