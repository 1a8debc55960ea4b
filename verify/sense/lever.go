package sense

import (
	"slices"
	"strings"

	"example.com/hingeline/airframes"
	"example.com/hingeline/mixcore"
	"example.com/hingeline/verify/phrase"
	"example.com/hingeline/verify/result"
	"example.com/hingeline/verify/wording"
)

// lowered is how far down a detent's name says that flaps are, and opened how far
// open that a throttle is. Common practice, no source.
var (
	lowered = map[string]int{
		"reflex": -1, "speed": -1,
		"up": 0, "parked": 0, "clean": 0, "cruise": 0, "normal": 0, "neutral": 0, "in": 0, "retracted": 0, "raised": 0,
		"closed": 0, "shut": 0, "off": 0, "zero": 0, "none": 0,
		"thermal": 1, "launch": 1, "takeoff": 1, "start": 1, "half": 2, "approach": 2,
		"landing": 3, "full": 3, "down": 3, "out": 3, "open": 3, "extended": 3, "lowered": 3, "on": 3,
	}
	opened = map[string]int{
		"closed": 0, "shut": 0, "off": 0, "stop": 0, "idle": 0, "zero": 0, "low": 1,
		"cruise": 2, "half": 2, "climb": 3, "high": 3, "full": 4, "open": 4, "max": 4,
	}
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

// leverCue is what a movement of one flap lever or throttle alone asks.
func (l *looker) leverCue(at *phrase.Situation) (leverCue, bool) {
	moved := at.MovedControls()
	if len(moved) != 1 || at.Before.Lost || at.Now.Lost || l.s.Controls[moved[0]].Kind != mixcore.LeverControl {
		return leverCue{}, false
	}
	c := leverCue{control: moved[0]}
	scale := lowered
	switch {
	case l.says(c.control, "flap", "flaps"):
		c.kinds, c.noun, c.asks, c.lacks = []mixcore.Kind{"flap", "flaperon"}, "flap", "lowers the flaps", "raises them"
	case l.says(c.control, "throttle"):
		c.kinds, c.noun, c.asks, c.lacks = []mixcore.Kind{"motor"}, "throttle", "gives more power", "less"
		scale = opened
	default:
		return leverCue{}, false
	}
	more, known := l.more(c.control, at.Before.Position[c.control], at.Now.Position[c.control], scale)
	c.more = more
	return c, known
}

// says is true if a control's names, or those of its detents, hold one of the
// words.
func (l *looker) says(control int, words ...string) bool {
	names := []string{l.s.Controls[control].Name}
	if control < len(l.m.ControlAka) {
		names = append(names, l.m.ControlAka[control]...)
	}
	for _, d := range l.s.Controls[control].Detents {
		names = append(names, d.Name)
	}
	return slices.ContainsFunc(strings.Fields(airframes.FoldName(strings.Join(names, " "))), func(w string) bool {
		return slices.Contains(words, w)
	})
}

// more is whether a lever asks more than before. Up its travel is more, unless its
// detents are named the other way round; where the names are no order at all,
// nobody knows.
func (l *looker) more(control int, from, to float64, scale map[string]int) (more, known bool) {
	rising, falling := false, false
	last, any := 0, false
	for _, d := range l.s.Controls[control].Detents {
		rank, ok := rankOf(d.Name, scale)
		if !ok {
			continue
		}
		rising, falling = rising || any && rank > last, falling || any && rank < last
		last, any = rank, true
	}
	return (to > from) != falling, !(rising && falling)
}

// rankOf is the place of a detent's name on a scale, by the first of its words
// that is on it: "flaps up".
func rankOf(name string, scale map[string]int) (int, bool) {
	for _, w := range strings.Fields(airframes.FoldName(name)) {
		if rank, ok := scale[w]; ok {
			return rank, true
		}
	}
	return 0, false
}

// leverFights is for flaps that rise with more flap lever, and a motor that slows
// down with more throttle.
func (l *looker) leverFights(a *phrase.Asked, way phrase.Way) (result.ScriptFinding, bool) {
	c, ok := l.leverCue(&a.At)
	p := &l.s.Parts[a.Outcome.Subject.Parts[0]]
	if !ok || !slices.Contains(c.kinds, p.Kind) {
		return result.ScriptFinding{}, false
	}
	right := wayOf(p.Motion, c.more)
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
