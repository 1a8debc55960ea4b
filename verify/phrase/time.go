package phrase

import (
	"fmt"

	"example.com/hingeline/mixcore"
)

// LongestTime is the longest time a sentence may wait.
const LongestTime mixcore.Seconds = 600

// time reads "after 2 s" or "within 1.5 s".
func (r *reader) time() (Clock, mixcore.Seconds, bool) {
	start := r.at
	clock := AtRest
	switch {
	case r.words("after"):
		clock = After
	case r.words("within"):
		clock = Within
	default:
		return AtRest, 0, false
	}
	number := r.peek()
	if number.kind != numberToken {
		r.at = start
		return AtRest, 0, false
	}
	r.at++
	if units[r.peek().text] != "s" {
		r.fail(problemAt(number, CodeBadUnit, number.text+" is no time", "write seconds, such as 2 s"))
		return AtRest, 0, false
	}
	r.at++
	seconds := mixcore.Seconds(number.number)
	if seconds < 0 || seconds > LongestTime || seconds == 0 {
		r.fail(across(number, r.last(), CodeBadNumber, fmt.Sprintf("%v s is no time to wait", number.number), "write more than 0 s and at most 600 s"))
		return AtRest, 0, false
	}
	return clock, seconds, true
}

// trailingTime reads the time behind an outcome, if there is one.
func (r *reader) trailingTime(o *Outcome) bool {
	start := r.at
	r.words(",")
	clock, seconds, ok := r.time()
	if !ok {
		r.at = start
		return r.problem == nil
	}
	behind := r.at
	r.words(",")
	if _, _, again := r.time(); again {
		return r.fail(across(r.tokens[start], r.last(), CodeConflict, "the time is given twice", "say when it is so once"))
	}
	if r.problem != nil {
		return false
	}
	r.at = behind
	return r.clock(o, clock, seconds)
}

// clock sets when an outcome is judged.
func (r *reader) clock(o *Outcome, clock Clock, seconds mixcore.Seconds) bool {
	if o.Every != nil {
		return r.notTimed(o)
	}
	if clock == Within && o.Verb == HoldsAir {
		return r.fail(&Problem{Column: o.Subject.At.Column, Width: o.Subject.At.Width, Code: CodeWrongMotion,
			Message: "a torque is asked for as the part stands", Hint: "write \"after\" with the time, or leave the time out"})
	}
	o.Clock, o.Time = clock, seconds
	return true
}
