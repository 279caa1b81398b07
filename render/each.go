package render

import (
	"fmt"
	"runtime"
	"runtime/debug"
	"sync"
	"sync/atomic"
)

// each calls f with every number below n, several at a time. A panic in f is
// one of the caller, who may recover it; its value holds the stack of where it
// came from.
//
// A panic comes out of the caller, with the place where it happened.
func each(n int, f func(int)) {
	var next atomic.Int64
	var group sync.WaitGroup
	var broken atomic.Value
	for range min(n, runtime.GOMAXPROCS(0)) {
		group.Go(func() {
			defer func() {
				if p := recover(); p != nil {
					broken.Store(fmt.Sprintf("%v\n%s", p, debug.Stack()))
				}
			}()
			for i := int(next.Add(1)) - 1; i < n; i = int(next.Add(1)) - 1 {
				f(i)
			}
		})
	}
	group.Wait()
	if p := broken.Load(); p != nil {
		panic(p)
	}
}
