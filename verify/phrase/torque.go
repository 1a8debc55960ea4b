package phrase

import (
	"fmt"
	"math"
	"strings"

	"example.com/hingeline/mixcore"
	"example.com/hingeline/verify/wording"
)

// The bounds of a torque sentence.
const (
	mostTimes    = 100.0 // times the torque needed
	SlowestSpeed = 0.1   // metres a second
	FastestSpeed = 200.0
)

// servos reads "the port flap servo", "both flap servos", "every servo", "the
// servos of the port flap".
func (r *reader) servos() (Subject, bool) {
	start := r.at
	if r.words("the", "servos", "of") || r.words("servos", "of") {
		s, ok := r.subjects()
		if !ok || len(s.Parts) == 0 {
			r.at = start
			return Subject{}, false
		}
		return Subject{Parts: s.Parts, Servos: true, At: r.span(start)}, true
	}
	both := r.words("both")
	every := both || r.any("all", "every", "each")
	r.words("the")
	name := r.tokens[r.at:]
	found, words := r.parts.find(name)
	if group, more := r.groups.find(name); more > words {
		found, words = group, more
	}
	last := name[words]
	if last.text != "servo" && last.text != "servos" {
		r.at = start
		return Subject{}, false
	}
	r.at += words + 1
	if words == 0 {
		found.indices = r.aerodynamic()
	}
	s := Subject{Parts: found.indices, Servos: true, At: r.span(start)}
	switch {
	case words == 0 && !every && last.text == "servo":
		return s, r.fail(across(r.tokens[start], r.last(), CodeUnclearName, "which servo?", "name its part, such as \"the elevator servo\", or write \"every servo\""))
	case !every && last.text == "servo" && len(s.Parts) > 1:
		return s, r.fail(across(r.tokens[start], r.last(), CodeUnclearName,
			fmt.Sprintf("%q could be that of %s", joinText(name[:words+1]), wording.OneOf(r.partNames(s.Parts))),
			fmt.Sprintf("write the whole name, or \"the %ss\" for all of them", joinText(name[:words+1]))))
	}
	return s, r.countBoth(both, start, len(s.Parts))
}

// aerodynamic are the hinged surfaces that the air pulls at.
func (r *reader) aerodynamic() []int {
	var list []int
	for i := range r.setup.Parts {
		if r.setup.Parts[i].Motion.Hinged() && r.air.Acts(i) {
			list = append(list, i)
		}
	}
	return list
}

// countWords are the numbers that people write out.
var countWords = map[string]float64{"one": 1, "two": 2, "three": 3, "four": 4, "five": 5, "six": 6, "seven": 7, "eight": 8, "nine": 9, "ten": 10}

// torque reads "has twice the torque it needs at 30 m/s".
func (r *reader) torque(o *Outcome) bool {
	start := r.at
	if !r.any("has", "have") {
		return false
	}
	const hint = "write it as \"has twice the torque it needs at 30 m/s\""
	times, ok := r.times()
	if r.problem == nil && !ok || r.problem == nil && !r.torqueNeeded() {
		return r.fail(across(r.tokens[start], r.last(), CodeUnknownSentence, "how much torque?", hint))
	}
	if !r.words("at") && r.problem == nil {
		return r.fail(problemAt(r.peek(), CodeUnknownSentence, "at which airspeed?", hint))
	}
	speed, ok := r.speed()
	if !ok || !r.pulledByAir(o, r.tokens[start]) {
		return false
	}
	o.Verb, o.Speed = HoldsAir, speed
	o.Amount = Amount{Kind: AtLeast, Value: times, Unit: "times"}
	return true
}

// times reads "twice", "at least three times", "1.5 times"; nothing, before
// "the torque" and "enough", is once.
func (r *reader) times() (float64, bool) {
	least := r.words("at", "least")
	first := r.peek()
	switch {
	case r.any("twice", "double"):
		return 2, true
	case countWords[first.text] > 0 && r.tokens[r.at+1].text == "times":
		r.at += 2
		return countWords[first.text], true
	case first.kind == numberToken && r.tokens[r.at+1].text == "times":
		r.at += 2
		if !(first.number > 0 && first.number <= mostTimes) {
			return 0, r.fail(across(first, r.last(), CodeBadNumber, first.text+" times makes no sense", "write more than 0 and at most 100 times"))
		}
		return first.number, true
	}
	return 1, !least && (first.text == "the" || first.text == "enough")
}

func (r *reader) torqueNeeded() bool {
	if r.words("enough", "torque") {
		return true
	}
	if !r.words("the", "torque") {
		return false
	}
	return r.words("it", "needs") || r.words("they", "need") || r.words("needed")
}

// speed reads an airspeed.
func (r *reader) speed() (float64, bool) {
	first := r.peek()
	if first.kind != numberToken {
		return 0, r.fail(problemAt(first, CodeBadNumber, "at which airspeed?", "write metres a second, such as 30 m/s"))
	}
	r.at++
	switch {
	case r.any("m/s"), r.words("metres", "per", "second"), r.words("metres", "a", "second"):
	case r.any("km/h"):
		return 0, r.fail(across(first, r.last(), CodeBadUnit, "km/h is no unit here",
			fmt.Sprintf("write metres a second: %v km/h are %.1f m/s", first.number, first.number/3.6)))
	default:
		return 0, r.fail(across(first, first, CodeBadUnit, first.text+" is no airspeed", "write metres a second, such as 30 m/s"))
	}
	if !(first.number >= SlowestSpeed && first.number <= FastestSpeed) {
		return 0, r.fail(across(first, r.last(), CodeBadNumber, fmt.Sprintf("%v m/s is no airspeed of a model", first.number), "write 0.1 m/s to 200 m/s"))
	}
	return first.number, true
}

// pulledByAir refuses servos of which it is not known what they hold.
func (r *reader) pulledByAir(o *Outcome, verb token) bool {
	var lacking []string
	for _, i := range o.Subject.Parts {
		p := &r.setup.Parts[i]
		if !p.Motion.Hinged() || !r.air.Acts(i) {
			return r.fail(across(verb, r.last(), CodeWrongMotion, fmt.Sprintf("the air does not load the servo of the %s", p.Name), "name hinged surfaces"))
		}
		keys := sizesLacking(p)
		for _, d := range p.Drives {
			if d.Servo.TorqueNcm <= 0 {
				keys = append(keys, "servo torque_ncm")
				break
			}
		}
		if keys != nil {
			lacking = append(lacking, keysFor(p, keys))
		}
	}
	if lacking != nil {
		return r.fail(across(verb, r.last(), CodeMissingSize, "the torque cannot be worked out: the airframe file lacks measures",
			"add "+strings.Join(lacking, "; ")))
	}
	return true
}

// trace is the evaluation of an instant with every intermediate value.
func (j *judge) trace(in instant) *mixcore.Trace {
	now := j.at.Now.Input()
	if in.timed {
		before := j.at.Before.Input()
		return j.model.Plan.TraceAfter(&before, &now, in.at)
	}
	return j.model.Plan.Trace(&now)
}

// holdsAir judges the servos of one part by the one that is worst off.
func (j *judge) holdsAir(part int, in instant) seen {
	p, at := &j.setup.Parts[part], in.out.Parts[part]
	switch {
	case math.Abs(float64(at.Angle)) < j.still(p):
		return seen{got: "it stands at neutral, where the air hardly loads it, so this shows nothing"}
	case at.Limits&mixcore.AtStop != 0:
		return seen{got: "driven against its stop, where it needs all the torque it has"}
	case at.Limits&mixcore.ServosFight != 0:
		return seen{got: "its servos fight each other, whatever the air does"}
	}
	worst, got := math.Inf(1), ""
	loads, _ := j.air.Loads(j.model.Plan, j.trace(in), j.o.Speed)
	for _, load := range loads {
		if load.Part != part {
			continue
		}
		margin := load.Margin().Low
		if got == "" || !(margin >= worst) {
			worst = margin
			got = fmt.Sprintf("%s at worst: has %s, needs %s (estimate)",
				wording.TimesBeside(margin, j.o.Amount.Value), wording.Torque(load.Has), wording.TorqueBand(load.Needed.Low, load.Needed.High))
		}
	}
	if got == "" {
		return seen{got: "cannot be worked out: the airframe file lacks measures"}
	}
	return seen{passed: j.o.Amount.holds(worst), got: got}
}
