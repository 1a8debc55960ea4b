package findings

import (
	"cmp"
	"math"
	"slices"

	"example.com/hingeline/mixcore"
)

// channelRecord is what the survey saw of one channel.
type channelRecord struct {
	travel, travelMost sighting // beyond the travel limit: simplest, and where most is lost
	pulse              sighting // beyond the pulse limits, within the travel limit
}

// partRecord is what the survey saw of one part.
type partRecord struct {
	servo, stop, fight sighting
	runsWhenSafe       sighting
	canRun             bool // a motor that runs at some pose
	least, most        float64
	seen, complete     bool
}

// controlRecord is what the survey saw of one control.
type controlRecord struct {
	moves    bool   // some channel differs
	differs  []bool // by probe point: some channel differs from the point before it
	complete bool   // every combination was tried wherever the control reaches
}

// sighting is the simplest pose at which something was seen: the fewest controls
// off rest, and of those the largest amount.
type sighting struct {
	seen     bool
	moved    int
	amount   float64
	position []float64
}

// clearly is by how much an amount must be larger to count as larger.
const clearly = 1e-6

func (s *sighting) offer(in *mixcore.Input, moved int, amount float64) {
	if s.seen && (moved > s.moved || moved == s.moved && amount <= s.amount+clearly) {
		return
	}
	s.seen, s.moved, s.amount = true, moved, amount
	s.position = append(s.position[:0], in.Position...)
}

// survey tries poses of every group of channels and parts, small groups first,
// and shares what is left of the budget among those that remain.
func (f *finder) survey() {
	groups := f.groups()
	size := func(g group) int { return f.Combinations(g.reach.Controls(), f.left) }
	slices.SortStableFunc(groups, func(a, b group) int { return cmp.Compare(size(a), size(b)) })
	total := f.left / 2 // the other half is for pairs and climbs
	for i := range groups {
		spent := f.surveyGroup(&groups[i], max(total/(len(groups)-i), 1))
		total -= spent
	}
}

func (f *finder) surveyGroup(g *group, most int) (spent int) {
	controls := g.reach.Controls()
	table := newOutputs(f, controls, len(g.channels), most)
	extremes := make([][2]sighting, len(g.channels))
	complete := f.Walk(controls, most, func(in *mixcore.Input, digits []int, moved int) {
		f.look(g, in, moved)
		spent++
		for k, c := range g.channels {
			table.put(digits, k, float64(f.out.Channels[c].Output))
			sum := float64(f.out.Channels[c].Sum)
			extremes[k][0].offer(in, 0, sum)
			extremes[k][1].offer(in, 0, -sum)
		}
	})
	if complete {
		table.compare(f)
	} else {
		for _, c := range controls {
			f.controls[c].complete = f.controls[c].complete && len(g.channels) == 0
		}
		for k, c := range g.channels {
			f.climb(g, controls, c, +1, extremes[k][0].position)
			f.climb(g, controls, c, -1, extremes[k][1].position)
		}
	}
	for _, p := range g.parts {
		f.parts[p].complete = complete
	}
	f.left -= spent
	return spent
}

// climbRounds is how often a climb goes through all controls at most.
const climbRounds = 4

// climb goes from a pose towards the largest sum (way +1) or the smallest (way
// −1) of a channel, one control after the other, and looks at every pose on the
// way.
func (f *finder) climb(g *group, controls []int, channel int, way float64, from []float64) {
	in := mixcore.Input{Position: slices.Clone(from)}
	f.look(g, &in, f.movedIn(in.Position))
	best := way * float64(f.out.Channels[channel].Sum)
	for range climbRounds {
		before := best
		for _, c := range controls {
			keep := in.Position[c]
			for _, at := range f.Points[c] {
				in.Position[c] = at
				f.look(g, &in, f.movedIn(in.Position))
				f.left--
				if sum := way * float64(f.out.Channels[channel].Sum); sum > best+clearly {
					best, keep = sum, at
				}
			}
			in.Position[c] = keep
		}
		if best == before {
			return
		}
	}
}

func (f *finder) movedIn(position []float64) int {
	moved := 0
	for i, at := range position {
		if at != f.rest.Position[i] {
			moved++
		}
	}
	return moved
}

// look evaluates a pose and notes what is seen of a group.
func (f *finder) look(g *group, in *mixcore.Input, moved int) {
	f.plan.Eval(in, f.out)
	for _, i := range g.channels {
		o, r := &f.out.Channels[i], &f.channels[i]
		over := math.Abs(float64(o.Sum)) - float64(f.s.Channels[i].Limit)
		switch {
		case o.Limits&mixcore.TravelLimit != 0:
			r.travel.offer(in, moved, over)
			r.travelMost.offer(in, 0, over)
		case o.Limits&mixcore.PulseLimit != 0:
			r.pulse.offer(in, moved, math.Abs(float64(o.Sum)))
		}
	}
	for _, i := range g.parts {
		f.lookAtPart(i, in, moved)
	}
}

func (f *finder) lookAtPart(i int, in *mixcore.Input, moved int) {
	p, o, r := &f.s.Parts[i], &f.out.Parts[i], &f.parts[i]
	amount := 0.0 // how far its channels are out
	for j := range p.Drives {
		amount = max(amount, math.Abs(float64(f.out.Channels[p.Drives[j].Channel].Output)))
	}
	if o.Limits&mixcore.ServoMax != 0 {
		r.servo.offer(in, moved, amount)
	}
	if o.Limits&mixcore.AtStop != 0 {
		r.stop.offer(in, moved, amount)
	}
	if o.Limits&mixcore.ServosFight != 0 {
		r.fight.offer(in, moved, amount)
	}
	at := o.Place()
	if !r.seen {
		r.least, r.most, r.seen = at, at, true
	}
	r.least, r.most = min(r.least, at), max(r.most, at)
	if p.Motion != mixcore.Power || p.Motor.Stopped(o.Amount) {
		return
	}
	r.canRun = true
	if when := p.Motor.StoppedWhen; when != nil && f.plan.Holds(when, in) {
		r.runsWhenSafe.offer(in, moved, float64(o.Amount))
	}
}

// outputs keeps what the channels of a group put out at every combination of
// its controls, to see which control and which position makes a difference.
type outputs struct {
	controls []int
	sizes    []int // probe points of each control
	channels int
	values   []float64
}

// newOutputs has no room, and then keeps nothing, where there are more than most
// combinations.
func newOutputs(f *finder, controls []int, channels, most int) *outputs {
	t := &outputs{controls: controls, channels: channels}
	for _, c := range controls {
		t.sizes = append(t.sizes, len(f.Points[c]))
	}
	if n := f.Combinations(controls, most+1); n <= most {
		t.values = make([]float64, n*channels)
	}
	return t
}

func (t *outputs) index(digits []int) int {
	at := 0
	for i, d := range digits {
		at = at*t.sizes[i] + d
	}
	return at
}

func (t *outputs) put(digits []int, channel int, value float64) {
	if t.values != nil {
		t.values[t.index(digits)*t.channels+channel] = value
	}
}

// compare notes for each control and probe point whether some channel differs
// from what it puts out at the point before, and at rest, with everything else
// the same.
func (t *outputs) compare(f *finder) {
	combinations := 1
	for _, n := range t.sizes {
		combinations *= n
	}
	stride := combinations
	for i, c := range t.controls {
		stride /= t.sizes[i]
		record := &f.controls[c]
		for at := range combinations {
			digit := at / stride % t.sizes[i]
			if digit > 0 && !record.differs[digit] && t.apart(at, at-stride) {
				record.differs[digit], record.moves = true, true
			}
		}
	}
}

func (t *outputs) apart(a, b int) bool {
	for k := range t.channels {
		if math.Abs(t.values[a*t.channels+k]-t.values[b*t.channels+k]) > mixcore.Hair {
			return true
		}
	}
	return false
}
