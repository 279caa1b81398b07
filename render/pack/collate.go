package pack

// Collated returns the sheets of a packing so that those of one group follow
// one another and items come in the order of the job, as far as sheets that they
// share allow. The first sheet, with the first item, stays the first, and what is
// to be read in order stays in order.
func (j *Job) Collated(sheets []*Sheet) []*Sheet {
	holds := make([]*Sheet, len(j.Items))
	for _, s := range sheets {
		for _, p := range s.Placed {
			holds[p.Item] = s
		}
	}
	groups := map[any][]*Sheet{} // item by item
	for i, it := range j.Items {
		if it.Group != nil {
			groups[it.Group] = append(groups[it.Group], holds[i])
		}
	}
	var out []*Sheet
	// take takes a sheet behind those that are to be read before it.
	var take func(s *Sheet)
	done := map[*Sheet]bool{}
	take = func(s *Sheet) {
		if done[s] {
			return
		}
		done[s] = true
		for _, p := range s.Placed {
			for i, it := range j.Items[:p.Item] {
				if it.Chain != nil && it.Chain == j.Items[p.Item].Chain {
					take(holds[i])
				}
			}
		}
		out = append(out, s)
	}
	take(sheets[0])
	for i, it := range j.Items {
		if it.First {
			take(holds[i])
		}
	}
	for _, s := range holds {
		for _, p := range s.Placed {
			for _, of := range groups[j.Items[p.Item].Group] {
				take(of)
			}
		}
		take(s)
	}
	return out
}
