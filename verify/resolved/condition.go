package resolved

import (
	"slices"
	"strconv"
	"strings"

	"example.com/hingeline/airframes"
	"example.com/hingeline/mixcore"
	"example.com/hingeline/verify/wording"
)

// always is the value of a condition that is not there.
const always = "always"

// when is a setting that is a condition, or none.
func when(path, name string, s *mixcore.Setup, c *mixcore.Condition) Setting {
	if c == nil {
		return word(path, name, always)
	}
	return Setting{Path: path, Value: condition(s, c), name: name, words: "when " + wording.Condition(s, c)}
}

// condition is a condition in one form, however it was written: what and and or join is
// sorted, once each, and an and inside an and is one with it. (The weight of the one is
// the smallest and of the other the largest, so that no last bit depends on it.) A stretch
// that is just what counts as a lever's detent is said by its name.
func condition(s *mixcore.Setup, c *mixcore.Condition) string {
	switch c.Op {
	case mixcore.And, mixcore.Or:
		sign := " & "
		if c.Op == mixcore.Or {
			sign = " | "
		}
		terms := terms(s, c, c.Op)
		slices.Sort(terms)
		terms = slices.Compact(terms)
		if len(terms) == 1 {
			return terms[0]
		}
		return "(" + strings.Join(terms, sign) + ")"
	case mixcore.Not:
		return "!" + condition(s, &c.Args[0])
	case mixcore.InPhase:
		return "phase [" + airframes.FoldName(s.Phases[c.Phase].Name) + "]"
	}
	control := &s.Controls[c.Control]
	return "[" + airframes.FoldName(control.Name) + "] " + test(control, c)
}

// terms are what an operation joins, those of the same operation inside it among them.
func terms(s *mixcore.Setup, c *mixcore.Condition, op mixcore.ConditionOp) (list []string) {
	for i := range c.Args {
		if a := &c.Args[i]; a.Op == op {
			list = append(list, terms(s, a, op)...)
		} else {
			list = append(list, condition(s, a))
		}
	}
	return list
}

func test(control *mixcore.Control, c *mixcore.Condition) string {
	low, high := exact(float64(c.Low)), exact(float64(c.High))
	switch c.Op {
	case mixcore.AtPosition:
		if c.Position < len(control.Positions) {
			return "at [" + airframes.FoldName(control.Positions[c.Position]) + "]"
		}
		return "at " + strconv.Itoa(c.Position)
	case mixcore.Above:
		return "> " + low
	case mixcore.AtLeast:
		return ">= " + low
	case mixcore.Below:
		return "< " + high
	case mixcore.AtMost:
		return "<= " + high
	}
	if i := control.DetentOf(c); i >= 0 {
		return "at [" + airframes.FoldName(control.Detents[i].Name) + "]"
	}
	return low + ".." + high
}
