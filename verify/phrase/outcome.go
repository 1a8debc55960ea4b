package phrase

import (
	"fmt"

	"example.com/hingeline/mixcore"
)

// outcome reads a subject and what it does. With the subject of the outcome
// before, a verb alone is enough.
func (r *reader) outcome(before *Subject) (Outcome, bool) {
	start, tokens := r.at, r.tokens
	var o Outcome
	if !r.adverseYaw(&o) && !r.aboutEvery(&o) && !r.subjectAndVerb(&o, before) || !r.tail(&o) {
		if r.problem == nil {
			r.at, r.tokens = start, tokens
		}
		return Outcome{}, false
	}
	o.At = r.span(start)
	return o, true
}

// subjectAndVerb reads an outcome up to its time.
func (r *reader) subjectAndVerb(o *Outcome, before *Subject) bool {
	if r.problem != nil {
		return false
	}
	subject, ok := r.servos()
	if !ok && r.problem == nil {
		subject, ok = r.subjects()
	}
	if !ok && r.problem == nil && before != nil {
		subject, ok = *before, true
	}
	if !ok || r.problem != nil {
		return false
	}
	o.Subject = subject
	return r.predicate(o)
}

// tail reads what may stand behind every outcome: a time, and that it is so on
// purpose.
func (r *reader) tail(o *Outcome) bool {
	r.purpose(o)
	if !r.trailingTime(o) {
		return false
	}
	r.purpose(o)
	return true
}

// purpose reads "on purpose", if it stands here.
func (r *reader) purpose(o *Outcome) {
	said := r.try(func() bool {
		r.words(",")
		return r.words("on", "purpose")
	})
	o.OnPurpose = o.OnPurpose || said
}

// predicate reads everything behind the subject.
func (r *reader) predicate(o *Outcome) bool {
	r.adverb(o)
	switch {
	case o.Subject.Servos:
		return r.agree(o) || r.problem == nil && r.torque(o)
	case o.Subject.Model:
		return r.turns(o)
	}
	verb := r.at
	switch {
	case r.addsToRoll(o):
		return r.problem == nil
	case r.problem != nil, r.misplacedVerb(o):
		return false
	case r.dependsOn(o), r.neverVerb(o):
		return r.problem == nil && r.suits(o, verb)
	case r.problem != nil:
		return false
	case r.comparison(o), r.still(o), r.stop(o), r.movement(o), r.standing(o):
		return r.problem == nil && r.suits(o, verb)
	case r.problem != nil:
		return false
	}
	return r.bareMove()
}

// bareMove refuses "the port flap moves": that something moves says nothing.
func (r *reader) bareMove() bool {
	verb := r.at
	if r.any("moves", "move") && (r.ended() || r.peek().kind == numberToken || r.peek().text == ",") {
		return r.fail(problemAt(r.tokens[verb], CodeUnknownSentence, "moves which way?",
			"write rises, drops, moves left or moves right: a surface that moves the wrong way moves too"))
	}
	return false
}

// moveWords are the verbs of movement.
var moveWords = []struct {
	words [][]string
	way   Way
}{
	{[][]string{{"rises"}, {"rise"}, {"goes", "up"}, {"go", "up"}, {"moves", "up"}, {"move", "up"}}, Up},
	{[][]string{{"drops"}, {"drop"}, {"goes", "down"}, {"go", "down"}, {"moves", "down"}, {"move", "down"}}, Down},
	{[][]string{{"moves", "left"}, {"move", "left"}, {"goes", "left"}, {"go", "left"}}, Left},
	{[][]string{{"moves", "right"}, {"move", "right"}, {"goes", "right"}, {"go", "right"}}, Right},
	{[][]string{{"speeds", "up"}, {"speed", "up"}}, Faster},
	{[][]string{{"slows", "down"}, {"slow", "down"}}, Slower},
	{[][]string{{"extends"}, {"extend"}, {"goes", "out"}, {"go", "out"}, {"moves", "out"}, {"move", "out"}}, Out},
	{[][]string{{"retracts"}, {"retract"}, {"goes", "in"}, {"go", "in"}, {"moves", "in"}, {"move", "in"}}, In},
}

// movement reads "rises 18° ± 2°", "drops, at least 8°".
func (r *reader) movement(o *Outcome) bool {
	for _, m := range moveWords {
		for _, run := range m.words {
			if !r.words(run...) {
				continue
			}
			o.Verb, o.Way = Move, m.way
			r.movedAmount(o)
			return r.problem == nil
		}
	}
	return false
}

// movedAmount reads the amount of a movement, if there is one.
func (r *reader) movedAmount(o *Outcome) {
	start := r.at
	r.words(",")
	r.words("by")
	from := r.at
	amount, ok := r.amount()
	switch {
	case r.problem != nil:
	case !ok && r.tokens[max(from-1, 0)].text == "by" && from > start:
		r.fail(problemAt(r.peek(), CodeBadNumber, "by how much?", "write an amount such as 8° or 5 mm"))
	case !ok:
		r.at = start
	case r.suits(o, start) && r.fits(o.Subject, amount, from) && r.bites(o, amount, from):
		o.Amount = amount
	}
}

func (r *reader) still(o *Outcome) bool {
	switch {
	case r.words("stays", "still"), r.words("stay", "still"),
		r.words("does", "not", "move"), r.words("do", "not", "move"), r.words("doesn't", "move"), r.words("don't", "move"),
		r.words("stays", "where", "it", "is"), r.words("stay", "where", "they", "are"):
		o.Verb = Still
		return true
	}
	return false
}

// stop reads the verbs of motors.
func (r *reader) stop(o *Outcome) bool {
	switch {
	case r.words("stays", "stopped"), r.words("stay", "stopped"):
		o.Verb = StaysStopped
	case r.any("stops", "stop"):
		o.Verb = Stops
	case r.any("runs", "run"):
		o.Verb = Running
	default:
		return false
	}
	return true
}

// suits says whether every subject can do what the outcome asks.
func (r *reader) suits(o *Outcome, verb int) bool {
	bad := func(name, hint string) bool {
		return r.fail(across(r.tokens[verb], r.last(), CodeWrongMotion,
			fmt.Sprintf("the %s cannot do that", name), hint))
	}
	for range o.Subject.Channels {
		switch o.Verb {
		case PulseAt, OutputAt, InTravel:
		default:
			return bad("channel", "it is at a pulse or a percent, or is within its travel; ask the part that it moves")
		}
	}
	for _, i := range o.Subject.Parts {
		p := &r.setup.Parts[i]
		allowed := false
		switch o.Verb {
		case Move, Stand:
			allowed = o.Way.motion() == p.Motion && !(o.Verb == Stand && p.Motion == mixcore.Power)
		case Still:
			allowed = p.Motion != mixcore.Power
		case Neutral, AtStop, NotAtStop:
			allowed = p.Motion.Hinged()
		case Rising:
			allowed = o.Way.motion() == p.Motion
		case DependsOn:
			allowed = true
		case PowerAt, Stopped, Running, Stops, StaysStopped:
			allowed = p.Motion == mixcore.Power
		case Together, Opposite, AsFar, LessThan, MoreThan:
			allowed = true
		}
		if !allowed {
			return bad(p.Name, motionHint(p))
		}
	}
	return true
}

// motionHint says in which words a part moves.
func motionHint(p *mixcore.Part) string {
	switch p.Motion {
	case mixcore.UpDown:
		return "it rises, drops, stays still, is up, down or at neutral"
	case mixcore.LeftRight:
		return "it moves left or right, stays still, is left, right or at neutral"
	case mixcore.Power:
		return "it speeds up, slows down, stops, stays stopped, runs, is stopped or is at a percent"
	}
	return "it extends, retracts, stays still, is in or out"
}
