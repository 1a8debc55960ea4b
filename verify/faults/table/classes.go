package table

import (
	"example.com/hingeline/mixcore"
	"example.com/hingeline/verify/faults/sight"
	"example.com/hingeline/verify/poses"
)

// classes sort poses and steps by where some controls stand: of those that nothing
// else tells apart, one is enough to know what a part does in all of them.
type classes struct {
	pose  []int32 // by pose: its class
	first []int32 // by class: its first pose
	step  []int32 // by step: its kind
	kinds []kind
	among [][]uint64 // by kind: which steps are of it
}

// kind is a step as the controls in question see it.
type kind struct {
	from, to int32 // classes of poses
	stands   bool
	step     int32 // the first of its steps
}

// moments are the poses before and after all steps, each once.
type moments struct {
	setup    *mixcore.Setup
	steps    []sight.Step
	stands   []bool
	poses    []*mixcore.Input
	from, to []int32 // by step: its poses
	sorted   map[string]*classes
}

func newMoments(s *mixcore.Setup, steps []sight.Step) *moments {
	m := &moments{setup: s, steps: steps, sorted: map[string]*classes{}}
	known := map[string]int32{}
	number := func(in *mixcore.Input) int32 {
		key := keyOf(in, nil)
		n, ok := known[key]
		if !ok {
			n = int32(len(m.poses))
			known[key] = n
			m.poses = append(m.poses, in)
		}
		return n
	}
	for i := range steps {
		m.from, m.to = append(m.from, number(&steps[i].From)), append(m.to, number(&steps[i].To))
		m.stands = append(m.stands, steps[i].Stands())
	}
	return m
}

// words is how many machine words hold a bit for every step.
func (m *moments) words() int { return (len(m.steps) + 63) / 64 }

// by sorts poses and steps by the controls of a reach and the signal.
func (m *moments) by(reach poses.Reach) *classes {
	key := make([]byte, len(reach))
	for i, in := range reach {
		if in {
			key[i] = 1
		}
	}
	if c := m.sorted[string(key)]; c != nil {
		return c
	}
	c := &classes{pose: make([]int32, len(m.poses)), step: make([]int32, len(m.steps))}
	known := map[string]int32{}
	for i, in := range m.poses {
		name := keyOf(in, reach)
		n, ok := known[name]
		if !ok {
			n = int32(len(c.first))
			known[name] = n
			c.first = append(c.first, int32(i))
		}
		c.pose[i] = n
	}
	type ends struct {
		from, to int32
		stands   bool
	}
	kinds := map[ends]int32{}
	for i := range m.steps {
		e := ends{c.pose[m.from[i]], c.pose[m.to[i]], m.stands[i]}
		n, ok := kinds[e]
		if !ok {
			n = int32(len(c.kinds))
			kinds[e] = n
			c.kinds = append(c.kinds, kind{e.from, e.to, e.stands, int32(i)})
			c.among = append(c.among, make([]uint64, m.words()))
		}
		c.step[i] = n
		c.among[n][i/64] |= 1 << (i % 64)
	}
	m.sorted[string(key)] = c
	return c
}
