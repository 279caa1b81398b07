package lists

import (
	"math"
	"slices"
	"strconv"
	"testing"
)

func TestLists(t *testing.T) {
	all := []int{3, -1, 2}
	twice := func(n int) []int { return []int{n, n} }
	double := func(n int) float64 { return 2 * float64(n) }
	if got := Map(all, strconv.Itoa); !slices.Equal(got, []string{"3", "-1", "2"}) || Map(nil, strconv.Itoa) != nil {
		t.Error("Map", got)
	}
	if got := Flat(all, twice); !slices.Equal(got, []int{3, 3, -1, -1, 2, 2}) || Flat(nil, twice) != nil {
		t.Error("Flat", got)
	}
	if got := Where(all, func(n int) bool { return n > 0 }); !slices.Equal(got, []int{3, 2}) || Where(all, func(int) bool { return false }) != nil {
		t.Error("Where", got)
	}
	odd := func(n int) bool { return n%2 != 0 }
	one, ok := First(all[1:], odd)
	if _, some := First(nil, odd); one != -1 || !ok || some || Count(all, odd) != 2 {
		t.Error("First, Count", one, ok, some)
	}
	if At(all, uint8(2), 9) != 2 || At(all, uint8(3), 9) != 9 {
		t.Error("At")
	}
	if got := Unique([]int{2, 3, 2, 1, 3}); !slices.Equal(got, []int{2, 3, 1}) {
		t.Error("Unique", got)
	}
	if sum, most, none := Sum(all, double), Most(all, double), Most(all[1:2], double); sum != 8 || most != 6 || none != 0 {
		t.Error("Sum, Most", sum, most, none)
	}
	if least, none := Least(all, double), Least(nil, double); least != -2 || !math.IsInf(none, 1) {
		t.Error("Least", least, none)
	}
}
