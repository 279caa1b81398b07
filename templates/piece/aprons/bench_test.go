package aprons

import (
	"testing"

	"rodsheet/templates/piece/internal/piecetest"
)

func BenchmarkSolve(b *testing.B) {
	d := table()
	for b.Loop() {
		if _, err := piecetest.Solved(judge(d, nil)); err != nil {
			b.Fatal(err)
		}
	}
}

func BenchmarkCheck(b *testing.B) {
	m := newModel(table())
	for b.Loop() {
		m.Checks()
	}
}

func BenchmarkGroups(b *testing.B) {
	m := newModel(table())
	for b.Loop() {
		m.Groups()
	}
}

func BenchmarkCuts(b *testing.B) {
	m := newModel(table())
	for b.Loop() {
		m.Cuts()
	}
}
