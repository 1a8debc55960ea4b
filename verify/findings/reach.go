package findings

import (
	"slices"

	"example.com/hingeline/verify/poses"
)

// group is the channels and parts that the same controls bear on.
type group struct {
	reach    poses.Reach
	channels []int
	parts    []int
}

func (f *finder) groups() []group {
	var groups []group
	of := func(r poses.Reach) *group {
		for i := range groups {
			if slices.Equal(groups[i].reach, r) {
				return &groups[i]
			}
		}
		groups = append(groups, group{reach: r})
		return &groups[len(groups)-1]
	}
	for i := range f.s.Channels {
		g := of(f.ChannelReach(i))
		g.channels = append(g.channels, i)
	}
	for i := range f.s.Parts {
		g := of(f.PartReach(i))
		g.parts = append(g.parts, i)
	}
	return groups
}
