package bench

import (
	"fmt"
	"slices"
	"strconv"
	"strings"

	"example.com/hingeline/airframes"
	"example.com/hingeline/airframes/diag"
	"example.com/hingeline/mixcore"
)

// order is what somebody wants of the walk, and not something seen.
type order uint8

const (
	noOrder order = iota
	goBack
	skipStep
	pauseWalk
	help
	again
	also // something else moved
)

var orders = map[string]order{
	"b": goBack, "back": goBack, "s": skipStep, "skip": skipStep, "p": pauseWalk, "pause": pauseWalk, "q": pauseWalk, "quit": pauseWalk,
	"h": help, "help": help, "?": help, "r": again, "repeat": again, "again": again,
	"e": also, "else": also, "also": also, "something else also moved": also, "something else": also,
}

// yeses are the ways to say that all is as expected; a bare Enter is one.
var yeses = []string{"", "y", "yes", "ok", "all", "as expected", "all as expected"}

// saws are the words for what a part did, without the part.
var saws = map[string]Saw{
	"y": AsExpected, "yes": AsExpected, "as expected": AsExpected,
	"o": OtherWay, "other": OtherWay, "other way": OtherWay, "the other way": OtherWay, "wrong way": OtherWay,
	"n": DidNot, "not": DidNot, "did not move": DidNot, "does not move": DidNot, "no movement": DidNot, "still": DidNot, "stays": DidNot, "neutral": DidNot,
	"l": TooLittle, "little": TooLittle, "too little": TooLittle, "moved too little": TooLittle, "less": TooLittle,
	"m": TooMuch, "much": TooMuch, "too much": TooMuch, "moved too much": TooMuch, "more": TooMuch,
	"t": WrongTime, "time": WrongTime, "another time": WrongTime, "too soon": WrongTime, "too late": WrongTime, "at once": WrongTime,
	"u": Unsure, "cannot say": Unsure, "cannot see": Unsure, "unsure": Unsure,
	"up": WentUp, "down": WentDown, "left": WentLeft, "right": WentRight, "out": WentOut, "in": WentIn,
	"runs": Runs, "running": Runs, "turns": Runs, "stopped": Stopped, "stops": Stopped, "stop": Stopped, "faster": Faster, "slower": Slower,
}

// fillers may stand before a word for what a part did.
var fillers = []string{"goes", "went", "moves", "moved", "is", "was", "it"}

func tidy(line string) string { return strings.Join(strings.Fields(strings.ToLower(line)), " ") }

// sawOf reads what a part did: "up", "went up", "the other way". ok is false where it is
// something else.
func sawOf(text string) (saw Saw, ok bool) {
	words := strings.Fields(text)
	for len(words) > 1 && slices.Contains(fillers, words[0]) {
		if saw, ok := saws[strings.Join(words, " ")]; ok {
			return saw, true
		}
		words = words[1:]
	}
	saw, ok = saws[strings.Join(words, " ")]
	return saw, ok
}

// partOf reads a part at the beginning of words: its number, its name or another name that
// the file gives, or the beginning of one that fits no other. used is how many words it is;
// 0 where there is none.
func (w *Walk) partOf(words []string) (part, used int, problem string) {
	if len(words) == 0 {
		return 0, 0, ""
	}
	if n, err := strconv.Atoi(strings.TrimPrefix(words[0], "#")); err == nil {
		if n < 1 || n > len(w.numbers) {
			return 0, 0, fmt.Sprintf("there is no part %d; they are 1 to %d", n, len(w.numbers))
		}
		return w.numbers[n-1], 1, ""
	}
	for used := len(words); used > 0; used-- {
		said := airframes.FoldName(sided(strings.Join(words[:used], " ")))
		if part, ok := w.exactly(said); ok {
			return part, used, ""
		}
	}
	for used := len(words); used > 0; used-- {
		said := airframes.FoldName(sided(strings.Join(words[:used], " ")))
		var fits []int
		for i := range w.Model.Setup.Parts {
			if len(said) > 1 && strings.HasPrefix(airframes.FoldName(w.Model.Setup.Parts[i].Name), said) {
				fits = append(fits, i)
			}
		}
		switch {
		case len(fits) == 1:
			return fits[0], used, ""
		case len(fits) > 1 && used == len(words):
			var names []string
			for _, i := range fits {
				names = append(names, w.Model.Setup.Parts[i].Name)
			}
			return 0, 0, "which of them: " + strings.Join(names, ", ")
		}
	}
	return 0, 0, ""
}

// sided takes left and right at the beginning of a name for port and starboard.
func sided(name string) string {
	for _, s := range [][2]string{{"left ", "port "}, {"right ", "starboard "}} {
		if rest, ok := strings.CutPrefix(name, s[0]); ok {
			return s[1] + rest
		}
	}
	return name
}

// exactly is the part of a name.
func (w *Walk) exactly(said string) (int, bool) {
	m := w.Model
	for i := range m.Setup.Parts {
		if airframes.FoldName(m.Setup.Parts[i].Name) == said {
			return i, true
		}
		if i < len(m.PartAka) && slices.ContainsFunc(m.PartAka[i], func(aka string) bool { return airframes.FoldName(aka) == said }) {
			return i, true
		}
	}
	return 0, false
}

// nearest is the hint for words in which no part was found.
func (w *Walk) nearest(text string) string {
	var names []string
	for i := range w.Model.Setup.Parts {
		names = append(names, w.Model.Setup.Parts[i].Name)
	}
	words := strings.Fields(text)
	for used := len(words); used > 0; used-- {
		if best, ok := diag.Closest(strings.Join(words[:used], " "), names); ok {
			return fmt.Sprintf("did you mean %q?", best)
		}
	}
	for i, part := range w.numbers {
		names[i] = fmt.Sprintf("%d %s", i+1, w.Model.Setup.Parts[part].Name)
	}
	return "the parts are " + strings.Join(names, ", ")
}

// fitting says what is wrong with a word for what a part did; empty where it fits.
func (w *Walk) fitting(s *Step, e *Expect, saw Saw, before bool) string {
	p := &w.Model.Setup.Parts[e.Part]
	may := func(among ...Saw) bool { return slices.Contains(among, saw) }
	power := p.Motion == mixcore.Power
	hint := "the " + p.Name + " goes " + strings.Join(w.wordsOf(p), ", ")
	switch {
	case before && !power:
		return "before a movement a surface is measured: before 2 up"
	case before && !may(Runs, Stopped, Unsure):
		return "before a movement a motor runs or is stopped"
	case may(AsExpected, Unsure, DidNot):
		return ""
	case may(WrongTime) && e.Takes == 0:
		return "nobody watches here how long the " + p.Name + " takes; say what it did"
	case may(OtherWay) && !power && !e.Moves:
		return "the " + p.Name + " should not move here, so it has no other way; say " + strings.Join(w.wordsOf(p), ", ")
	case may(OtherWay) && power:
		return hint
	case may(TooLittle, TooMuch) && !e.Moves:
		return "the " + p.Name + " should not move here; " + strings.Replace(hint, "the "+p.Name+" goes", "say", 1)
	case power && may(WentUp, WentDown, WentLeft, WentRight, WentOut, WentIn):
		return strings.Replace(hint, " goes ", " ", 1)
	case !power && may(Runs, Stopped, Faster, Slower):
		return hint
	case p.Motion == mixcore.UpDown && may(WentLeft, WentRight, WentOut, WentIn),
		p.Motion == mixcore.LeftRight && may(WentUp, WentDown, WentOut, WentIn),
		p.Motion == mixcore.OutIn && may(WentUp, WentDown, WentLeft, WentRight):
		return hint
	}
	return ""
}

// wordsOf are the words for what a part may do.
func (w *Walk) wordsOf(p *mixcore.Part) []string {
	switch {
	case p.Motion == mixcore.Power:
		return []string{"runs", "stopped", "faster", "slower"}
	case p.Motion == mixcore.OutIn:
		return []string{"out", "in", "still"}
	case p.Motion == mixcore.LeftRight:
		return []string{"left", "right", "still"}
	case p.Motion.Hinged():
		return []string{"up", "down", "still"}
	}
	return nil
}
