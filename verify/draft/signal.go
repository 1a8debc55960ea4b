package draft

import (
	"math"

	"example.com/hingeline/mixcore"
	"example.com/hingeline/verify/phrase"
	"example.com/hingeline/verify/wording"
)

// signal writes what happens when the signal is lost in full flight: motors
// stop. What surfaces should do then is the pilot's choice.
func (d *drafter) signal() {
	in := d.fullFlight()
	d.plan.Eval(&in, d.before)
	lost := in.Clone()
	lost.SignalLost = true
	d.plan.Eval(&lost, d.after)
	var motors []int
	chosen := map[string][]int{}
	words := map[string]does{}
	var order []string
	for i := range d.s.Parts {
		p := &d.s.Parts[i]
		if p.Motion == mixcore.Power {
			motors = append(motors, i)
			continue
		}
		w := d.lostWords(i)
		if chosen[w.one] == nil {
			order = append(order, w.one)
		}
		chosen[w.one], words[w.one] = append(chosen[w.one], i), w
	}
	var lines []line
	if len(motors) > 0 {
		lines = append(lines, line{d.sentence(motors, verbWords[phrase.Stops]), false})
	}
	for _, key := range order {
		lines = append(lines, line{d.sentence(chosen[key], words[key]), true})
	}
	d.lossOfSignal(&in, lines)
}

func (d *drafter) lossOfSignal(in *mixcore.Input, lines []line) {
	standing := func(verb string) (list []string) {
		for c, at := range in.Position {
			if at != d.s.Controls[c].Rest() {
				list = append(list, d.setting(c, at, verb))
			}
		}
		return list
	}
	d.gap()
	if len(settled(lines)) == 0 {
		d.line(1, "# Loss of signal: where surfaces should go is for you to say.")
		for _, l := range lines {
			d.decide(1, "* with "+wording.Listed(standing(""))+", when the signal is lost, "+l.text)
		}
		return
	}
	d.line(1, "Scenario: Loss of signal")
	keyword := "Given"
	for _, s := range standing("is") {
		d.line(2, "%s %s", keyword, s)
		keyword = "And"
	}
	d.line(2, "When the signal is lost")
	d.outcomes(2, lines)
}

// lostWords are what the set-up does with a part when the signal is lost.
func (d *drafter) lostWords(part int) does {
	p, at := &d.s.Parts[part], d.after.Parts[part]
	switch {
	case d.answer(part, d.before, d.after) != moving:
		return verbWords[phrase.Still]
	case p.Motion == mixcore.OutIn:
		return moveWords[d.computed(part, d.before, d.after)]
	case math.Abs(float64(at.Angle)) < float64(d.m.Still):
		return neutralWords
	}
	return standWords[phrase.WayOf(p.Motion, at.Angle > 0)]
}

// fullFlight is every stick over to its plus side, and every motor running if
// any state of its levers and switches makes it run.
func (d *drafter) fullFlight() mixcore.Input {
	reach := d.probe.Nothing()
	for i := range d.s.Parts {
		if d.s.Parts[i].Motion == mixcore.Power {
			reach.AddAll(d.reach[i])
		}
	}
	best, bestRuns := d.plan.Rest(), 0
	for _, st := range d.combined(reach.Controls(), mostStates) {
		d.plan.Eval(&st.in, d.before)
		if runs := d.expectedToRun(&st.in); runs > bestRuns {
			best, bestRuns = st.in, runs
		}
	}
	for i := range d.s.Controls {
		if c := &d.s.Controls[i]; c.Kind == mixcore.AxisControl {
			_, best.Position[i] = c.Range()
		}
	}
	return best
}

// expectedToRun counts the motors that run at the pose in d.before, and as less
// those that are not made safe and so might.
func (d *drafter) expectedToRun(in *mixcore.Input) int {
	count := 0
	for i := range d.s.Parts {
		motor := d.s.Parts[i].Motor
		if motor == nil || motor.StoppedWhen != nil && d.plan.Holds(motor.StoppedWhen, in) {
			continue
		}
		count++
		if d.runs(i, d.before) {
			count += len(d.s.Parts)
		}
	}
	return count
}
