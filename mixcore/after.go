package mixcore

import "math"

// TimeStep is the step in which movement over time is followed. A channel or
// servo that moves at its own speed, and a phase that fades, are exact at any
// step as long as they do not act on one another; where they do, the error is
// no more than a servo's or channel's movement in one step.
const TimeStep Seconds = 0.001

// underWay is the state of everything that takes time.
type underWay struct {
	phases  []float64 // weight of each phase
	limited []float64 // by channel: the limited sum as the slowed channel has reached it
	late    []float64 // by drive, over all parts: the output as the servo has reached it
	held    []Percent // by channel: the output at the start, which a channel that holds keeps
}

// EvalAfter is Eval at a time after the controls jumped from one position,
// where everything had come to rest, to another: slowed channels, fading phases
// and servos of known speed are still under way. A channel that holds on loss
// of signal keeps what it had at from. Unlike Eval it allocates.
func (p *Plan) EvalAfter(from, to *Input, after Seconds, out *Output) {
	p.compute(to, p.follow(from, to, after, out), out, nil)
}

// During visits what every channel and part does on the way from one position,
// where everything had come to rest, to another: at once after the jump, then
// every TimeStep until everything has come to rest, until has passed, or visit
// returns false. out is the same Output each time.
func (p *Plan) During(from, to *Input, until Seconds, visit func(now Seconds, out *Output) bool) {
	out := p.NewOutput()
	j := p.jump(from, to, out)
	for now := Seconds(0); ; now += TimeStep {
		rest := j.advance(min(now, until), out)
		p.compute(to, j.state, out, nil)
		if !visit(min(now, until), out) || rest || now >= until {
			return
		}
	}
}

// journey is a jump of the controls and what follows from it.
type journey struct {
	plan       *Plan
	to         *Input
	start, end []float64 // weights of the phases
	now        Seconds
	state      *underWay
}

// jump is the journey at its start. scratch is overwritten.
func (p *Plan) jump(from, to *Input, scratch *Output) *journey {
	p.Eval(from, scratch)
	u := &underWay{
		phases:  append([]float64(nil), scratch.phases...),
		limited: make([]float64, len(p.lines)),
		late:    make([]float64, 0, p.drives),
		held:    make([]Percent, len(p.lines)),
	}
	for i := range scratch.Channels {
		u.limited[i], _ = p.setup.Channels[i].limited(float64(scratch.Channels[i].Sum))
		u.held[i] = scratch.Channels[i].Output
	}
	for i := range p.parts {
		for j := range p.parts[i].drives {
			u.late = append(u.late, float64(scratch.Channels[p.parts[i].drives[j].Channel].Output))
		}
	}
	j := &journey{plan: p, to: to, start: append([]float64(nil), u.phases...), end: make([]float64, len(u.phases)), state: u}
	p.phaseWeights(to.Position, j.end)
	return j
}

// follow moves everything that takes time on from one position towards the
// other for a while. scratch is overwritten.
func (p *Plan) follow(from, to *Input, after Seconds, scratch *Output) *underWay {
	j := p.jump(from, to, scratch)
	steps := max(1, int(math.Ceil(float64(after/TimeStep))))
	for k := 1; k <= steps; k++ {
		if j.advance(after*Seconds(k)/Seconds(steps), scratch) {
			break
		}
	}
	return j.state
}

// advance goes on to a time after the jump and says whether everything has come
// to rest.
func (j *journey) advance(now Seconds, scratch *Output) (rest bool) {
	faded := j.plan.fade(j.start, j.end, now, j.state.phases)
	moving := j.plan.advance(j.to, j.state, now-j.now, scratch)
	j.now = now
	return faded && !moving
}

// fade sets the weight of every phase at a time after the jump and says whether
// all have come to their end.
func (p *Plan) fade(start, end []float64, now Seconds, weights []float64) bool {
	done := true
	for i := range weights {
		fade := p.setup.Phases[i].Fade
		if now >= fade {
			weights[i] = end[i]
			continue
		}
		done = done && start[i] == end[i]
		weights[i] = start[i] + float64((end[i]-start[i])*float64(now/fade))
	}
	return done
}

// advance moves slowed channels and servos on by one step towards where the
// chain now sends them, and says whether any has still to move.
func (p *Plan) advance(to *Input, u *underWay, step Seconds, scratch *Output) (moving bool) {
	copy(scratch.phases, u.phases)
	p.mixAll(to.Position, scratch, nil)
	for i := range scratch.Channels {
		c := &p.setup.Channels[i]
		target, _ := c.limited(float64(scratch.Channels[i].Sum))
		if c.Slow == 0 {
			u.limited[i] = target
		} else {
			u.limited[i] = approach(u.limited[i], target, float64(100*step/c.Slow))
			moving = moving || u.limited[i] != target
		}
		p.channel(i, to, u, scratch, nil)
	}
	n := 0
	for i := range p.parts {
		for j := range p.parts[i].drives {
			d := &p.parts[i].drives[j]
			target := float64(scratch.Channels[d.Channel].Output)
			u.late[n] = approach(u.late[n], target, d.speed*float64(step))
			moving = moving || u.late[n] != target
			n++
		}
	}
	return moving
}

// approach moves v towards target by at most reach.
func approach(v, target, reach float64) float64 {
	switch {
	case target > v+reach:
		return v + reach
	case target < v-reach:
		return v - reach
	}
	return target
}
