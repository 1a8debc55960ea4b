package bench

import (
	"fmt"
	"regexp"
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
	undo
	wrong // something is not as expected, and not said what
)

var orders = map[string]order{
	"b": goBack, "back": goBack, "s": skipStep, "skip": skipStep,
	"p": pauseWalk, "pause": pauseWalk, "q": pauseWalk, "quit": pauseWalk, "exit": pauseWalk,
	"h": help, "help": help, "?": help, "r": again, "repeat": again, "again": again,
	"e": also, "else": also, "also": also, "something else also moved": also, "something else": also, "something else moved": also,
	"undo": undo, "take back": undo,
	"no": wrong, "wrong": wrong, "not as expected": wrong, "not right": wrong, "bad": wrong,
}

// yeses are the ways to say that all is as expected. A bare Enter is none: it may be a
// glove on a key.
var yeses = []string{"y", "yes", "ok", "all", "as expected", "all as expected"}

// nothings say that not one part moved that must.
var nothings = []string{"nothing", "nothing moved", "nothing moves", "nothing happened", "nothing happens", "none moved"}

// saws are the words for what a part did, without the part.
var saws = map[string]Saw{
	"y": AsExpected, "yes": AsExpected, "ok": AsExpected, "as expected": AsExpected,
	"o": OtherWay, "other": OtherWay, "other way": OtherWay, "wrong way": OtherWay, "other way round": OtherWay, "wrong way round": OtherWay,
	"opposite": OtherWay, "opposite way": OtherWay, "wrong direction": OtherWay, "in wrong direction": OtherWay, "reversed": OtherWay, "backwards": OtherWay,
	"n": DidNot, "not": DidNot, "did not": DidNot, "did not move": DidNot, "does not move": DidNot, "has not moved": DidNot, "no movement": DidNot, "not moved": DidNot,
	"still": DidNot, "stays": DidNot, "stayed": DidNot, "stayed still": DidNot, "stays still": DidNot, "stood still": DidNot, "neutral": DidNot, "at neutral": DidNot,
	"l": TooLittle, "little": TooLittle, "a little": TooLittle, "too little": TooLittle, "less": TooLittle, "not enough": TooLittle, "not far enough": TooLittle,
	"m": TooMuch, "much": TooMuch, "too much": TooMuch, "more": TooMuch, "too far": TooMuch,
	"t": WrongTime, "time": WrongTime, "another time": WrongTime, "too soon": WrongTime, "too late": WrongTime, "too fast": WrongTime, "too slow": WrongTime, "at once": WrongTime,
	"u": Unsure, "cannot say": Unsure, "cannot see": Unsure, "cannot tell": Unsure, "unsure": Unsure, "not sure": Unsure,
	"up": WentUp, "upwards": WentUp, "rises": WentUp, "rose": WentUp, "down": WentDown, "downwards": WentDown, "drops": WentDown, "dropped": WentDown,
	"left": WentLeft, "right": WentRight, "out": WentOut, "in": WentIn,
	"runs": Runs, "running": Runs, "ran": Runs, "turns": Runs, "stopped": Stopped, "stops": Stopped, "stop": Stopped, "faster": Faster, "slower": Slower,
}

// fillers may stand before a word for what a part did, and afterwords behind it.
var (
	fillers    = []string{"goes", "went", "going", "gone", "moves", "moved", "moving", "is", "was", "it", "has", "stands", "stood", "turned", "to", "only"}
	afterwords = []string{" at all", " now", " instead", " only"}
)

// shortened are words that are written together, as they are meant.
var shortened = strings.NewReplacer(
	"didn't", "did not", "didnt", "did not", "doesn't", "does not", "doesnt", "does not", "hasn't", "has not", "can't", "cannot", "can not", "cannot",
)

// joined is a number without a space before the word that belongs to it: "4up", "12deg".
var joined = regexp.MustCompile(`(^|[ ,])(#?\d+(?:\.\d+)?)(up|down|left|right|out|in|still|runs|stopped|deg|degrees|mm|o|n|l|m|t|u)\b`)

// tidy is a line in small letters, without what says nothing: articles, points at its end.
func tidy(line string) string {
	words := strings.Fields(strings.ToLower(line))
	words = slices.DeleteFunc(words, func(word string) bool { return word == "the" || word == "my" })
	text := joined.ReplaceAllString(shortened.Replace(strings.ReplaceAll(strings.Join(words, " "), "\u2019", "'")), "$1$2 $3")
	return strings.TrimRight(text, ".!")
}

// sawOf reads what a part did: "up", "went up", "did not move at all". ok is false where
// it is something else.
func sawOf(text string) (saw Saw, ok bool) {
	for _, after := range afterwords {
		text = strings.TrimSuffix(text, after)
	}
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

// meant is the part that words begin with.
type meant struct {
	part, used int    // used is how many words it is; 0 where there is none
	among      []int  // where several fit: the parts
	number     bool   // it is a bare number, which could be degrees too
	problem    string // why there is none; empty for words that speak of no part
}

// partOf reads a part at the beginning of words: its number, its name or another name that
// the file gives, or the beginning or end of one that fits no other.
func (w *Walk) partOf(words []string) meant {
	if len(words) == 0 {
		return meant{}
	}
	if n, err := strconv.Atoi(strings.TrimPrefix(words[0], "#")); err == nil {
		if !w.hasNumber(n) {
			return meant{problem: fmt.Sprintf("there is no part %d; they are 1 to %d", n, len(w.numbers))}
		}
		return meant{part: w.numbers[n-1], used: 1, number: words[0][0] != '#'}
	}
	said := func(used int) string { return airframes.FoldName(sided(strings.Join(words[:used], " "))) }
	for used := len(words); used > 0; used-- {
		if part, ok := w.exactly(said(used)); ok {
			return meant{part: part, used: used}
		}
	}
	for used := len(words); used > 0; used-- {
		var fits []int
		for _, i := range w.numbers {
			name := airframes.FoldName(w.Model.Setup.Parts[i].Name)
			if text := said(used); len(text) > 1 && (strings.HasPrefix(name, text) || strings.HasSuffix(name, airframes.FoldName(" "+text))) {
				fits = append(fits, i)
			}
		}
		switch {
		case len(fits) == 1:
			return meant{part: fits[0], used: used}
		case len(fits) > 1:
			return meant{used: used, among: fits}
		}
	}
	return meant{}
}

// hasNumber says whether there is a part with a number.
func (w *Walk) hasNumber(n int) bool { return n >= 1 && n <= len(w.numbers) }

// listed are parts with their numbers, as one chooses among them.
func (w *Walk) listed(parts []int) string {
	var list []string
	for _, part := range parts {
		list = append(list, fmt.Sprintf("%d %s", slices.Index(w.numbers, part)+1, w.Model.Setup.Parts[part].Name))
	}
	return strings.Join(list, ", ")
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
	switch {
	case before && !power:
		return "before a movement a surface is measured: before 2 up"
	case before && !may(Runs, Stopped, Unsure):
		return "before a movement a motor runs or is stopped"
	case may(AsExpected, Unsure, DidNot):
		return ""
	case may(WrongTime) && e.Takes == 0:
		return "nobody watches here how long the " + p.Name + " takes; " + w.ask(s, p)
	case may(OtherWay) && power:
		return w.ask(s, p)
	case may(OtherWay, TooLittle, TooMuch) && !power && !e.Moves && s.Stands():
		return "the " + p.Name + " should be at neutral here; " + w.ask(s, p)
	case may(OtherWay) && !e.Moves:
		return "the " + p.Name + " should not move here, so it has no other way; " + w.ask(s, p)
	case may(TooLittle, TooMuch) && !e.Moves:
		return "the " + p.Name + " should not move here; " + w.ask(s, p)
	case power && may(WentUp, WentDown, WentLeft, WentRight, WentOut, WentIn),
		!power && may(Runs, Stopped, Faster, Slower),
		p.Motion == mixcore.UpDown && may(WentLeft, WentRight, WentOut, WentIn),
		p.Motion == mixcore.LeftRight && may(WentUp, WentDown, WentOut, WentIn),
		p.Motion == mixcore.OutIn && may(WentUp, WentDown, WentLeft, WentRight):
		return w.ask(s, p)
	}
	return ""
}

// ask asks what a part did, with the words for it.
func (w *Walk) ask(s *Step, p *mixcore.Part) string {
	words := w.wordsOf(s, p)
	list := strings.Join(words[:len(words)-1], ", ") + " or " + words[len(words)-1]
	switch {
	case p.Motion == mixcore.Power:
		return "say what the " + p.Name + " does: " + list
	case s.Stands():
		return "say where the " + p.Name + " stands: " + list
	}
	return "say what the " + p.Name + " did: " + list
}

// wordsOf are the words for what a part may do in a step, or where it may stand.
func (w *Walk) wordsOf(s *Step, p *mixcore.Part) []string {
	still := "still"
	if s.Stands() {
		still = "at neutral"
	}
	switch {
	case p.Motion == mixcore.Power && s.Stands():
		return []string{"runs", "stopped"}
	case p.Motion == mixcore.Power:
		return []string{"runs", "stopped", "faster", "slower"}
	case p.Motion == mixcore.OutIn && s.Stands():
		return []string{"out", "in"}
	case p.Motion == mixcore.OutIn:
		return []string{"out", "in", still}
	case p.Motion == mixcore.LeftRight:
		return []string{"left", "right", still}
	}
	return []string{"up", "down", still}
}
