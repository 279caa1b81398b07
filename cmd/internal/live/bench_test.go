//go:build unix

package live_test

import (
	"fmt"
	"runtime/debug"
	"syscall"
	"testing"
	"time"

	"rodsheet/cmd/internal/live"
)

// processTime reports what an operation takes of the machine, whatever else runs on it.
func processTime(b *testing.B) func() {
	debug.SetGCPercent(400) // as the program does
	used := func() time.Duration {
		var u syscall.Rusage
		if err := syscall.Getrusage(syscall.RUSAGE_SELF, &u); err != nil {
			b.Fatal(err)
		}
		return time.Duration(u.Utime.Nano() + u.Stime.Nano())
	}
	start := used()
	return func() { b.ReportMetric(float64((used()-start).Microseconds())/1000/float64(b.N), "cpu-ms/op") }
}

// BenchmarkKey times what follows a key typed into the form: the text changed, both
// sizes worked out and checked, and one size drawn from three sides.
func BenchmarkKey(b *testing.B) {
	desk := &live.Desk{}
	text := exampleDesign(b, "window-seat")
	for _, want := range [][]string{{"form", "plan", "front", "corner", "checks"}, {"corner"}, {"checks"}, {"form"}} {
		b.Run(want[0], func(b *testing.B) {
			i := 0
			defer processTime(b)()
			for b.Loop() {
				i++
				r := live.Request{Text: text, Want: want, Changes: []live.Change{{Key: "ring.inside", Value: fmt.Sprint(255 + i%20)}}}
				if a := desk.Ask(b.Context(), r); len(a.Faults) > 0 {
					b.Fatal(a.Faults)
				}
			}
		})
	}
}

// BenchmarkTurn times a turn of the view at a corner.
func BenchmarkTurn(b *testing.B) {
	desk := &live.Desk{}
	text := exampleDesign(b, "window-seat")
	i := 0
	defer processTime(b)()
	for b.Loop() {
		i++
		desk.Ask(b.Context(), live.Request{Text: text, Want: []string{"corner"}, Look: live.Look{Aside: float64(i%100) / 50, Above: 0.5}})
	}
}
