package design

import (
	"sync"

	"rodsheet/geometry/measure"
)

// An order says as the how-manieth keys and tables stand in the starting file.
type order struct{ keys, tables map[Key]int }

var startOrder = sync.OnceValue(func() order {
	out := order{map[Key]int{}, map[Key]int{}}
	text, _ := Start(3, measure.Millimetre)
	l := survey(text)
	for i, s := range l.sections {
		if s.size == 0 {
			out.tables[s.table] = i
		}
	}
	for i, e := range l.entries {
		if e.size == 0 {
			out.keys[e.key] = i
		}
	}
	return out
})

func rank(key Key) int      { return startOrder().keys[key] }
func tableRank(key Key) int { return startOrder().tables[key] }
