package sense

import (
	"slices"

	"example.com/hingeline/mixcore"
	"example.com/hingeline/verify/phrase"
	"example.com/hingeline/verify/purpose"
	"example.com/hingeline/verify/result"
	"example.com/hingeline/verify/wording"
)

// leverCue is what a lever asks of the kind of part that it is named for.
type leverCue struct {
	control int
	more    bool // more flap, more throttle
	kinds   []mixcore.Kind
	noun    string // "flap", "throttle"
	asks    string // of more of it
	lacks   string // of less of it
}

// leverCue is what a movement of one flap lever or throttle asks. Sticks and
// switches may move with it, where they leave alone what is asked about.
func (l *looker) leverCue(a *phrase.Asked) (leverCue, bool) {
	at := &a.At
	if at.Before.Lost || at.Now.Lost {
		return leverCue{}, false
	}
	moved := at.MovedControls()
	levers := slices.DeleteFunc(slices.Clone(moved), func(i int) bool { return l.s.Controls[i].Kind != mixcore.LeverControl })
	if len(levers) != 1 || len(moved) > 1 && !l.restLeaves(a, levers) {
		return leverCue{}, false
	}
	c := leverCue{control: levers[0]}
	scale := purpose.Lowered
	switch purpose.Of(l.m, c.control) {
	case purpose.Flaps:
		c.kinds, c.noun, c.asks, c.lacks = []mixcore.Kind{"flap", "flaperon"}, "flap", "lowers the flaps", "raises them"
	case purpose.Power:
		c.kinds, c.noun, c.asks, c.lacks = []mixcore.Kind{"motor"}, "throttle", "gives more power", "less"
		scale = purpose.Opened
	default:
		return leverCue{}, false
	}
	opens := purpose.Opens(&l.s.Controls[c.control], at.Before.Position[c.control], at.Now.Position[c.control], scale)
	c.more = opens > 0
	return c, opens != 0
}

// leverFights is for flaps that rise with more flap lever, and a motor that slows
// down with more throttle.
func (l *looker) leverFights(a *phrase.Asked, way phrase.Way) (result.ScriptFinding, bool) {
	c, ok := l.leverCue(a)
	p := &l.s.Parts[a.Outcome.Subject.Parts[0]]
	if !ok || !slices.Contains(c.kinds, p.Kind) {
		return result.ScriptFinding{}, false
	}
	right := phrase.WayOf(p.Motion, c.more)
	if right == way {
		return result.ScriptFinding{}, false
	}
	lever := &l.s.Controls[c.control]
	moves := "moves to " + wording.Stand(lever, a.At.Now.Position[c.control])
	f := about(a, codeSuspicious,
		"the "+p.Name+" "+doesWords[way]+" as the "+lever.Name+" "+moves+": that is the wrong way round",
		"more "+c.noun+" "+c.asks+", less of it "+c.lacks+"; the "+lever.Name+" "+moves+", which is "+
			either(c.more, "more", "less"), "")
	f.Right = "the " + p.Name + " " + doesWords[right]
	if a.Outcome.Verb == phrase.Stand {
		f.Right = "the " + p.Name + " is " + isWords[right]
	}
	return f, true
}
