package lists

import (
	"fmt"
	"strings"
	"sync/atomic"
	"testing"
)

func TestEachCallsEveryNumberOnce(t *testing.T) {
	for _, n := range []int{0, 1, 2, 100} {
		calls := make([]atomic.Int64, n)
		Each(n, func(i int) { calls[i].Add(1) })
		for i := range calls {
			if got := calls[i].Load(); got != 1 {
				t.Errorf("%d of %d is called %d times", i, n, got)
			}
		}
	}
}

// What goes wrong in one of several goroutines can be caught like all else, and
// says where it was.
func TestEachPassesAPanicOn(t *testing.T) {
	defer func() {
		text := fmt.Sprint(recover())
		if line, stack, _ := strings.Cut(text, "\n"); line != "broken at 3" || !strings.Contains(stack, "each_test.go") {
			t.Errorf("caught %q, want the panic and where it was", text)
		}
	}()
	Each(8, func(i int) {
		if i == 3 {
			panic("broken at 3")
		}
	})
	t.Error("no panic")
}
