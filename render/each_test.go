package render

import (
	"fmt"
	"strings"
	"testing"
)

// A panic of what runs side by side comes out of the caller, where it can be
// caught, and says where it happened.
func TestEachPanics(t *testing.T) {
	defer func() {
		if p := fmt.Sprint(recover()); !strings.HasPrefix(p, "out of ink\n") || !strings.Contains(p, "each_test.go") {
			t.Errorf("got %q", p)
		}
	}()
	each(5, func(i int) {
		if i == 3 {
			panic("out of ink")
		}
	})
	t.Error("no panic")
}
