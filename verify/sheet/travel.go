package sheet

import (
	"context"
	"math"
	"slices"

	"example.com/hingeline/airframes"
	"example.com/hingeline/mixcore"
	"example.com/hingeline/verify/poses"
	"example.com/hingeline/verify/prove"
	"example.com/hingeline/verify/result"
	"example.com/hingeline/verify/wording"
)

// How the search for the ends of a travel ends.
const (
	travelBoxes = 4000 // boxes of one decision; one that needs more is not sure
	mostTries   = 12   // times that it begins again from a better pose
	// travelClose is how near to the very end what was found is proved to be, in percent
	// of travel or power: a hundredth of a microsecond.
	travelClose = 0.002
	// marginClose is the same of a margin that package prove looked for, in percent.
	marginClose = 0.01
	// tellsSum is the least end point with which the output tells the sum well enough: an
	// output within travelClose is then a sum within marginClose.
	tellsSum mixcore.Percent = 20
	// same is how far apart two values of one thing may be, by rounding.
	same = 1e-9
	// perPercent is how fine the words of a pose are: whole thousandths of a percent.
	perPercent = 1000
)

// travel is how much of its travel each channel uses, with signal, over every position
// of every control. It is decided by package prove and not sampled; what is not Sure
// was found, but something further may be.
func travel(ctx context.Context, m *airframes.Model, p *prove.Prover) []result.Travel {
	t := newTraveller(ctx, m, p)
	list := make([]result.Travel, len(t.s.Channels))
	for i := range list {
		list[i] = t.channel(i)
	}
	return list
}

func newTraveller(ctx context.Context, m *airframes.Model, p *prove.Prover) *traveller {
	return &traveller{ctx: ctx, m: m, s: &m.Setup, p: p, out: m.Plan.NewOutput(), points: poses.New(m.Plan)}
}

// traveller looks for the ends of what channels and motors come to.
type traveller struct {
	ctx    context.Context
	m      *airframes.Model
	s      *mixcore.Setup
	p      *prove.Prover
	out    *mixcore.Output
	points *poses.Probe
}

func (t *traveller) channel(i int) result.Travel {
	c := &t.s.Channels[i]
	r := result.Travel{Channel: channelName(c), Min: float64(c.PulseMin), Max: float64(c.PulseMax)}
	output := func() float64 { return float64(t.out.Channels[i].Output) }
	low := t.least(output, func(x float64) prove.Want { return prove.Output{Channel: i, Low: x, High: math.Inf(1)} })
	high := t.least(func() float64 { return -output() }, func(x float64) prove.Want {
		return prove.Output{Channel: i, Low: math.Inf(-1), High: -x}
	})
	r.Low, r.High = float64(mixcore.PulseOf(mixcore.Percent(low.value))), float64(mixcore.PulseOf(mixcore.Percent(-high.value)))
	spare := t.spare(i, &low, &high)
	r.Sure = low.sure && high.sure && spare.sure
	t.m.Plan.Eval(&spare.at, t.out)
	r.Bites = bites(c, &t.out.Channels[i])
	if r.Spare = neat(max(spare.value, 0)); r.Bites != "" {
		r.Spare = 0
	}
	worst := t.plain(&spare, func() float64 {
		if bites(c, &t.out.Channels[i]) == "" && r.Bites != "" {
			return math.Inf(1)
		}
		return float64(c.Spare(t.out.Channels[i].Sum))
	})
	r.Worst = wording.Pose(t.s, worst)
	if r.Bites != "" { // as it is at the pose that is told
		t.m.Plan.Eval(worst, t.out)
		r.Bites = bites(c, &t.out.Channels[i])
	}
	return r
}

// spare is where a channel has the least travel left. Where no limit bites its output is
// never held, so that it is where the output is least or most, unless small end points
// hide what the sum does.
func (t *traveller) spare(i int, low, high *found) found {
	c := &t.s.Channels[i]
	value := func() float64 { return float64(c.Spare(t.out.Channels[i].Sum)) }
	var worst found
	for _, f := range []*found{low, high} {
		t.m.Plan.Eval(&f.at, t.out)
		if v := value(); f == low || v < worst.value {
			worst = found{value: v, at: f.at.Clone(), sure: low.sure && high.sure}
		}
	}
	flat := min(c.EndPoints.Plus, c.EndPoints.Minus) < tellsSum
	d := t.decide(prove.Travel{Channel: i}, flat)
	worst.sure = worst.sure && d.Answer != prove.Undecided
	switch {
	case d.Answer == prove.Proved && flat:
		worst.at, worst.sure = d.Pose.Now.Clone(), worst.sure && d.Margin-d.AtLeast <= marginClose
		t.descend(&worst, value)
	case d.Answer == prove.Disproved:
		if t.m.Plan.Eval(&worst.at, t.out); t.out.Channels[i].Limits&(mixcore.TravelLimit|mixcore.PulseLimit) == 0 {
			worst.at = d.Pose.Now.Clone()
		}
		t.descend(&worst, value)
	}
	return worst
}

// bites says which limit holds a channel back; empty where none does.
func bites(c *mixcore.Channel, o *mixcore.ChannelOutput) string {
	switch {
	case o.Limits&mixcore.TravelLimit != 0:
		return "its travel limit of " + wording.Setpoint(c.Limit) + ": the mix comes to " + wording.PercentBeside(o.Sum, mixcore.Percent(math.Copysign(float64(c.Limit), float64(o.Sum))))
	case o.Limits&mixcore.PulseLimit != 0:
		return "its pulse limit of " + wording.Pulse(o.Pulse)
	}
	return ""
}

// found is the least of something, and where.
type found struct {
	value float64
	at    mixcore.Input
	sure  bool
}

func (t *traveller) decide(want prove.Want, margins bool) prove.Decision {
	return t.p.Decide(t.ctx, &prove.Claim{Now: prove.Everywhere(t.s), Want: want}, prove.Options{Plain: true, Margins: margins, Boxes: travelBoxes})
}

// least finds the pose at which value, read from the output of an evaluation, is least:
// it goes on from the best pose that it knows until it is proved that no other is better
// by more than travelClose. atLeast makes the claim that the value is nowhere less.
func (t *traveller) least(value func() float64, atLeast func(x float64) prove.Want) found {
	f := found{at: t.m.Plan.Rest()}
	t.descend(&f, value)
	for range mostTries {
		d := t.decide(atLeast(f.value-travelClose), false)
		if d.Answer != prove.Disproved {
			f.sure = d.Answer == prove.Proved
			break
		}
		f.at = d.Pose.Now.Clone()
		t.descend(&f, value)
	}
	return f
}

// descend goes on from a pose to a better one nearby, control by control.
func (t *traveller) descend(f *found, value func() float64) {
	t.m.Plan.Eval(&f.at, t.out)
	f.value = value()
	const rounds = 3 // controls that depend on one another
	for range rounds {
		was := f.value
		for i := range f.at.Position {
			best := f.at.Position[i]
			for _, x := range t.points.Points[i] {
				f.at.Position[i] = x
				t.m.Plan.Eval(&f.at, t.out)
				if v := value(); v < f.value-same {
					f.value, best = v, x
				}
			}
			f.at.Position[i] = best
		}
		if f.value == was {
			return
		}
	}
}

// plain is the pose of what was found as it can be said in few words: every control at
// rest on which the value does not hang, every other one at an end or where something
// changes, if there the value is as good, or else at the better one of the two whole
// thousandths that it stands between, as words give no more.
func (t *traveller) plain(f *found, value func() float64) *mixcore.Input {
	in := f.at.Clone()
	for i := range in.Position {
		c, stood := &t.s.Controls[i], in.Position[i]
		if stood == c.Rest() {
			continue
		}
		with := func(x float64) float64 {
			in.Position[i] = x
			t.m.Plan.Eval(&in, t.out)
			return value()
		}
		low, high := c.Range()
		down, up := math.Floor(stood*perPercent)/perPercent, math.Ceil(stood*perPercent)/perPercent
		easy := append([]float64{c.Rest(), low, high}, t.points.Points[i]...)
		k := slices.IndexFunc(easy, func(x float64) bool {
			return math.Round(x*perPercent)/perPercent == x && with(x) <= f.value+same
		})
		switch atDown, atUp := with(down), with(up); {
		case k >= 0:
			in.Position[i] = easy[k]
		case atDown <= atUp && !math.IsInf(atDown, 1):
			in.Position[i] = down
		case atUp < atDown:
			in.Position[i] = up
		default:
			in.Position[i] = stood
		}
	}
	return &in
}
