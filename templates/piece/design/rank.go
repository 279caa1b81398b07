package design

import (
	"sync"

	"rodsheet/geometry/measure"
)

// An order says as the how-manieth keys and tables stand in the starting file of a kind.
type order struct{ keys, tables map[Key]int }

var startOrder = sync.OnceValue(func() []order {
	var all []order
	for kind, s := range schemas() {
		out := order{map[Key]int{}, map[Key]int{}}
		text, _ := Start(Kind(kind), s.start.usual, measure.Millimetre)
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
		all = append(all, out)
	}
	return all
})

func (k Kind) rank(key Key) int      { return startOrder()[k].keys[key] }
func (k Kind) tableRank(key Key) int { return startOrder()[k].tables[key] }
