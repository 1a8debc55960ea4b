package sheet

import (
	"context"
	"math"

	"example.com/hingeline/airframes"
	"example.com/hingeline/mixcore"
	"example.com/hingeline/verify/prove"
	"example.com/hingeline/verify/result"
	"example.com/hingeline/verify/wording"
)

// motors is what the set-up says about stopping each motor, and how to make it run
// full.
func motors(ctx context.Context, m *airframes.Model, p *prove.Prover) []result.Motor {
	t := newTraveller(ctx, m, p)
	var list []result.Motor
	rest := m.Plan.Rest()
	for i := range m.Setup.Parts {
		part := &m.Setup.Parts[i]
		if part.Motion != mixcore.Power {
			continue
		}
		m.Plan.Eval(&rest, t.out)
		motor := result.Motor{
			Name: part.Name, Channel: channelName(&m.Setup.Channels[part.Drives[0].Channel]),
			Rest: wording.Position(part, t.out.Parts[i]), Full: t.full(i),
		}
		if part.Motor.StoppedWhen != nil {
			motor.StoppedWhen = wording.Condition(&m.Setup, part.Motor.StoppedWhen)
			motor.Breaks, motor.NotSure = t.breaks(i)
		}
		list = append(list, motor)
	}
	return list
}

// breaks is a position at which a motor runs although its promise says that it is
// stopped; none where there is none. It is not sure where the search ended before that
// was decided.
func (t *traveller) breaks(part int) (at []string, notSure bool) {
	motor := t.s.Parts[part].Motor
	d := t.p.Decide(t.ctx, &prove.Claim{
		Now: prove.Everywhere(t.s), When: motor.StoppedWhen,
		Want: prove.Place{Part: part, Low: math.Inf(-1), High: float64(motor.StoppedBelow)},
	}, prove.Options{Plain: true, Boxes: travelBoxes})
	switch d.Answer {
	case prove.Disproved:
		if at = wording.Pose(t.s, &d.Pose.Now); len(at) == 0 {
			at = []string{"rest"}
		}
	case prove.Undecided:
		notSure = true
	}
	return at, notSure
}

// full is the position that gives a motor the most power that it can have, and, where
// that is not all, how much it is.
func (t *traveller) full(part int) []string {
	value := func() float64 { return -float64(t.out.Parts[part].Amount) }
	f := t.least(value, func(x float64) prove.Want { return prove.Place{Part: part, Low: math.Inf(-1), High: -x} })
	said := wording.Pose(t.s, t.plain(&f, value))
	if most := mixcore.Percent(-f.value); wording.Percent(most) != wording.Percent(100) {
		said = append(said, wording.Position(&t.s.Parts[part], mixcore.PartOutput{Amount: most})+" there, and never more")
	}
	return said
}
