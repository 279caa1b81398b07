package seat

import (
	"testing"

	"rodsheet/geometry/measure"
	"rodsheet/templates/piece/design"
)

// BenchmarkReport works a stool out, asks its checks and lists its figures.
func BenchmarkReport(b *testing.B) {
	for b.Loop() {
		d := stool()
		d.Seat.Front.Aside = measure.Radians(12)
		w, err := Kind().Solve([]design.Design{d})
		if err != nil {
			b.Fatal(err)
		}
		w.Report()
	}
}
