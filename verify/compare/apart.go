package compare

import (
	"math"

	"example.com/hingeline/mixcore"
	"example.com/hingeline/verify/prove"
	"example.com/hingeline/verify/result"
	"example.com/hingeline/verify/wording"
)

// How closely the largest change is found, in degrees or percent, and how often the
// prover is asked for it.
const (
	near     = 0.05
	mostAsks = 40
)

// beyond is more than two places of one part can be apart, in degrees or percent.
const beyond = 1000

// pair is one part in both set-ups, side by side.
type pair struct {
	c        *comparison
	was, is  int
	prover   *prove.Prover
	claim    prove.Claim
	wasPlan  *mixcore.Plan
	isPlan   *mixcore.Plan
	wasOut   *mixcore.Output
	isOut    *mixcore.Output
	by       float64       // the largest difference found
	at       mixcore.Input // where, of the controls of both
	atMost   float64
	anywhere bool // at is a pose
}

// part finds how far one part is elsewhere.
func (c *comparison) part(was, is int) (change result.PartChange) {
	if c.options.Progress != nil {
		c.options.Progress(c.new.Model.Setup.Parts[is].Name)
	}
	both, same := c.halves.Parts(was, is)
	if same {
		return change
	}
	plan, faults := mixcore.Compile(both)
	if faults != nil { // each half was compiled before
		panic("compare: " + faults[0].Message)
	}
	p := &pair{c: c, was: was, is: is, prover: prove.New(plan), wasPlan: c.was.Plan, isPlan: c.new.Model.Plan}
	p.wasOut, p.isOut = p.wasPlan.NewOutput(), p.isPlan.NewOutput()
	change.With = p.largest(&both, false)
	if losesAnything(&both) {
		change.Lost = p.largest(&both, true)
	}
	return change
}

// losesAnything says whether a lost signal can matter: where every channel holds, the
// parts stay where they were.
func losesAnything(s *mixcore.Setup) bool {
	for i := range s.Channels {
		if !s.Channels[i].Failsafe.Hold {
			return true
		}
	}
	return false
}

// largest is the largest change, nil where it is proved that there is none.
func (p *pair) largest(both *mixcore.Setup, lost bool) *result.Apart {
	p.claim = prove.Claim{Now: p.c.halves.Controls.Everywhere(), Other: prove.Beside(both), Lost: lost, OtherLost: lost}
	p.by, p.atMost, p.anywhere = 0, math.Inf(1), false
	if p.within(prove.Rounding) == prove.Proved {
		return nil
	}
	p.search()
	if !p.anywhere {
		p.see(p.rest(lost))
	}
	p.plainer()
	return p.apart()
}

// rest is everything at rest, as the newer set-up has it.
func (p *pair) rest(lost bool) mixcore.Input {
	in := mixcore.Input{SignalLost: lost}
	for i := range p.c.halves.Controls.Both {
		in.Position = append(in.Position, p.c.halves.Controls.Rest(i))
	}
	return in
}

// within asks whether the two are nowhere further apart, and keeps where they are.
func (p *pair) within(most float64) prove.Answer {
	p.claim.Want = prove.Differ{A: 0, B: 1, Sign: 1, Low: -most, High: most}
	d := p.prover.Decide(p.c.ctx, &p.claim, prove.Options{Boxes: p.c.options.Boxes, Plain: true})
	switch d.Answer {
	case prove.Proved:
		p.atMost = math.Min(p.atMost, most)
	case prove.Disproved:
		p.see(d.Pose.Now)
	}
	return d.Answer
}

// see keeps a pose where the two are further apart than at any before, by both plans.
func (p *pair) see(in mixcore.Input) {
	if by := math.Abs(p.difference(&in)); by > p.by || !p.anywhere {
		p.by, p.at, p.anywhere = by, in.Clone(), true
	}
}

// difference is how much further plus the part is in the newer set-up.
func (p *pair) difference(in *mixcore.Input) float64 {
	was, is := p.stand(in)
	return is.Place() - was.Place()
}

func (p *pair) stand(in *mixcore.Input) (was, is mixcore.PartOutput) {
	before, now := p.c.halves.Controls.Was(in), p.c.halves.Controls.Is(in)
	p.wasPlan.Eval(&before, p.wasOut)
	p.isPlan.Eval(&now, p.isOut)
	return p.wasOut.Parts[p.was], p.isOut.Parts[p.is]
}

func (p *pair) motion() mixcore.Motion { return p.c.new.Model.Setup.Parts[p.is].Motion }

// search closes in on the largest difference: first the prover's own smallest margin to
// what is beyond all, then halving between what was found and what is proved. Where the
// prover comes to no end, what it finds on the way to twice as much is better than nothing.
func (p *pair) search() {
	p.claim.Want = prove.Differ{A: 0, B: 1, Sign: 1, Low: -beyond, High: beyond}
	d := p.prover.Decide(p.c.ctx, &p.claim, prove.Options{Boxes: p.c.options.Boxes, Margins: true})
	if d.Answer == prove.Proved {
		p.atMost = math.Min(p.atMost, beyond-d.AtLeast)
		if d.Pose.Now.Position != nil {
			p.see(d.Pose.Now)
		}
	}
	for asks := 0; p.atMost-p.by > near && asks < mostAsks && p.c.ctx.Err() == nil; asks++ {
		most := p.by + near*0.9
		switch {
		case math.IsInf(p.atMost, 1):
			most = 2*p.by + near
		case p.atMost-p.by > 4*near:
			most = (p.by + p.atMost) / 2
		}
		if p.within(most) == prove.Undecided {
			return
		}
	}
}

// plainer brings one control after another to rest, or else to an end, while the
// difference stays what it is.
func (p *pair) plainer() {
	rest := p.rest(p.at.SignalLost)
	for i, span := range p.claim.Now {
		was := p.at.Position[i]
		places := []float64{rest.Position[i], span.High, span.Low}
		if span.Places != nil {
			places = places[:1]
			for _, at := range span.Places {
				places = append(places, float64(at))
			}
		}
		for _, at := range places {
			if at == was {
				break
			}
			p.at.Position[i] = at
			if by := math.Abs(p.difference(&p.at)); inSpan(&span, at) && by >= p.by-prove.TooClose {
				break
			}
			p.at.Position[i] = was
		}
	}
	p.by = math.Abs(p.difference(&p.at))
}

func inSpan(s *prove.Span, at float64) bool {
	if s.Places == nil {
		return at >= s.Low && at <= s.High
	}
	for _, place := range s.Places {
		if float64(place) == at {
			return true
		}
	}
	return false
}

// apart is what was found, in words.
func (p *pair) apart() *result.Apart {
	was, is := p.stand(&p.at)
	by := is.Place() - was.Place()
	now := p.c.halves.Controls.Is(&p.at)
	s := &p.c.new.Model.Setup
	a := &result.Apart{
		By: math.Abs(by), AtMost: math.Max(p.atMost, math.Abs(by)), Way: wording.Direction(p.motion(), by > 0), Unit: "%",
		Was: wording.Position(&p.c.was.Setup.Parts[p.was], was), Is: wording.Position(&s.Parts[p.is], is),
		Pose: wording.Pose(s, &now), Set: wording.Sets(s, &now),
	}
	a.Exact = a.AtMost-a.By <= near
	size := wording.PercentBeside(mixcore.Percent(a.By), 0)
	if p.motion().Hinged() {
		a.Unit, size = "°", wording.AngleBeside(mixcore.Degrees(a.By), 0)
	}
	a.Text = size + " further " + a.Way
	if p.motion() == mixcore.Power {
		a.Text = size + " " + a.Way
	}
	return a
}
