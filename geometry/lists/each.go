package lists

import (
	"fmt"
	"runtime"
	"runtime/debug"
	"sync"
	"sync/atomic"
)

// Each calls f with every number below n, several at a time. A panic in f is
// one of the caller, who may recover it; its value holds the stack of where it
// came from.
func Each(n int, f func(int)) {
	var next atomic.Int64
	var broken atomic.Pointer[string]
	var group sync.WaitGroup
	for range min(n, runtime.GOMAXPROCS(0)) {
		group.Go(func() {
			defer func() {
				if p := recover(); p != nil {
					text := fmt.Sprintf("%v\n%s", p, debug.Stack())
					broken.CompareAndSwap(nil, &text)
				}
			}()
			for i := int(next.Add(1)) - 1; i < n && broken.Load() == nil; i = int(next.Add(1)) - 1 {
				f(i)
			}
		})
	}
	group.Wait()
	if text := broken.Load(); text != nil {
		panic(*text)
	}
}
