package laws

import (
	"example.com/hingeline/mixcore"
	"example.com/hingeline/verify/chain"
	"example.com/hingeline/verify/prove"
	"example.com/hingeline/verify/wording"
)

var motorSafe = law{Info{"motor-safe", "Safe motor",
	"A motor is stopped wherever the airframe file says that it is (stopped_when), whatever else moves."},
	func(mk *maker) {
		motors := mk.motors()
		for _, i := range motors {
			when := mk.s.Parts[i].Motor.StoppedWhen
			if when == nil {
				mk.remark("Nothing says when the " + mk.s.Parts[i].Name + " is sure to be stopped.")
				continue
			}
			mk.stopped("the "+mk.s.Parts[i].Name+" is stopped whenever "+wording.Condition(mk.s, when), i,
				prove.Claim{Now: mk.everywhere(), When: when})
		}
		switch {
		case len(motors) == 0:
			mk.none = "no motor"
		case len(mk.claims) == 0:
			mk.none = "no motor has a stopped_when: in the airframe file"
		}
	}}

var motorSignal = law{Info{"motor-signal", "Motor on loss of signal",
	"When the signal is lost every motor is stopped, wherever the controls stood."},
	func(mk *maker) {
		for _, i := range mk.motors() {
			mk.stopped("with the signal lost the "+mk.s.Parts[i].Name+" is stopped", i,
				prove.Claim{Now: mk.everywhere(), Lost: true})
		}
		if len(mk.claims) == 0 {
			mk.none = "no motor"
		}
	}}

// motors are the parts that are motors.
func (mk *maker) motors() []int {
	var list []int
	for i := range mk.s.Parts {
		if mk.s.Parts[i].Motion == mixcore.Power {
			list = append(list, i)
		}
	}
	return list
}

// stopped claims that a motor stands still over some poses.
func (mk *maker) stopped(sentence string, part int, over prove.Claim) {
	p := &mk.s.Parts[part]
	over.Want = prove.Place{Part: part, Low: -beyond, High: float64(p.Motor.StoppedBelow)}
	mk.add(claim{
		sentence: sentence,
		needs:    []prove.Claim{over},
		spare: func(_ int, margin float64) (spare, bool) {
			return spare{margin, "%", wording.Percent(mixcore.Percent(margin)) + " of power short of turning"}, true
		},
		seen: func(v *view) sight {
			return sight{
				got:   "the " + p.Name + " runs, " + wording.Position(p, v.now.Output.Parts[part]),
				shows: []shown{showPart(part, chain.Astir)},
			}
		},
	})
}
