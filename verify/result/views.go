package result

import "slices"

// Views are the pictures that show checks which are looked at together, each once: checks
// for which every part stands alike share one, about the parts of all of them. A picture
// of several checks has no Want. Checks without a picture, or about no part, have none.
func (p *Paper) Views(checks []int) []Picture {
	var all []Picture
	for _, i := range checks {
		if i >= len(p.Pictures) || len(p.Pictures[i].Of) == 0 {
			continue
		}
		one := &p.Pictures[i]
		k := slices.IndexFunc(all, func(v Picture) bool { return slices.Equal(v.Stands, one.Stands) })
		if k < 0 {
			view := *one
			view.Of = slices.Clone(one.Of)
			all = append(all, view)
			continue
		}
		view := &all[k]
		view.Want = nil
		view.Moves = view.Moves || one.Moves
		for _, part := range one.Of {
			if !slices.Contains(view.Of, part) {
				view.Of = append(view.Of, part)
			}
		}
	}
	return all
}
