package bench

import (
	"slices"
	"strings"
	"time"

	"example.com/hingeline/verify/result"
)

// ShortestLook is how long a question must have stood there before something is an answer to
// it: nobody reads a step and looks at a model in less. A choice of ours.
const ShortestLook = 700 * time.Millisecond

// tooSoon is said of what comes sooner.
const tooSoon = "Too soon for anybody to have looked, so nothing was taken. Look, then answer."

// seenSo are the ways to say once more that it was seen. A yes is none: it is what somebody
// types who only wants to go on.
var seenSo = []string{"x", "seen"}

// ByHand says that somebody answers line by line, with the model in front of them: then a
// step in which a motor may run, or the transmitter is off, is asked about once more.
func (g *Guide) ByHand() { g.twice = true }

// TakeSoon takes a line that came sooner after its question than ShortestLook: as Take does
// where it answers nothing that has to be looked at, else not at all.
func (g *Guide) TakeSoon(line string) (Reply, error) {
	text := tidy(line)
	switch order := orders[text]; {
	case text == "", order == goBack, order == pauseWalk, order == help, order == again, order == undo:
		return g.Take(line)
	case g.asking == askStep, g.asking == askAgain:
		return Reply{Text: tooSoon}, nil
	}
	return g.Take(line)
}

// onceMore is what the step that is asked about must be said once more to have shown; empty
// where one answer is enough.
func (g *Guide) onceMore() []string {
	if !g.twice {
		return nil
	}
	s := g.walk.step(g.at, &g.steps[g.at])
	return OnceMore(&s)
}

// askOnceMore is the question for it.
func (g *Guide) askOnceMore() Ask {
	return Ask{Said: "Look once more: " + strings.Join(g.onceMore(), ", ") + ". Was that seen?", Prompt: "  x: yes, it was seen; else what was seen> "}
}

// again takes the answer to it.
func (g *Guide) again(line, text string) (string, error) {
	switch {
	case slices.Contains(seenSo, text):
		return g.close()
	case slices.Contains(yeses, text):
		return "", misunderstood("a yes is soon said twice: x, if you have looked and it was seen")
	}
	g.asking = askStep
	if text == "n" || orders[text] == wrong {
		return "then say which part, and what it did, such as " + g.example(&g.walk.Steps[g.at]), nil
	}
	return g.seenLine(line, text)
}

// OnceMore is what must be said once more to have been seen before a step at the bench counts
// as expected: what motors do where they run, stop or may, and all that happens without the
// transmitter. It is empty where one answer is enough, and of what was said already.
func OnceMore(s *result.BenchStep) (list []string) {
	touched := false
	for i := range s.Parts {
		part := &s.Parts[i]
		touched = touched || part.Said != ""
		asked := part.Moves || s.SignalLost || len(s.Beware) > 0
		if part.Motion != result.Power || !asked || part.Said != "" || len(part.Reading) > 0 {
			continue
		}
		list = append(list, part.Name+" "+motorDoes(part))
	}
	if s.SignalLost && len(list) == 0 && !touched {
		list = append(list, "all as it must be with the transmitter off")
	}
	return list
}

// motorDoes is what a motor must do in a step.
func motorDoes(part *result.BenchPart) string {
	switch {
	case part.Moves:
		return strings.ToLower(part.Way)
	case !part.Sure:
		return "turns a little at most"
	case part.Way == "STOPPED":
		return "stays stopped"
	}
	return "runs on, alike"
}
