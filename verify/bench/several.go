package bench

import (
	"fmt"
	"regexp"
	"strings"
)

// said is what was said of the part at a place in Expect.
type said struct {
	at    int
	event Event
}

// between is what stands between parts that are told in one line. A comma without a space
// is that of a decimal number.
var between = regexp.MustCompile(`\s*(?:,\s+(?:and\s+)?|;\s*|\s+and\s+|\s+&\s+)`)

// decimals are two numbers that may be parts or one decimal number.
var decimals = regexp.MustCompile(`^#?(\d+),(\d+)\b(.*)$`)

// several takes a line about more parts than one: "4, 5 down", "4 up and 5 down". mine is
// false where the line is something else. All of it is taken or nothing.
func (g *Guide) several(text string) (reply string, mine bool, err error) {
	not := func(why string) (string, bool, error) { return "", true, misunderstood(why) }
	if d := decimals.FindStringSubmatch(text); d != nil {
		return not(fmt.Sprintf("is that parts %s and %s, or %s.%s? write \"%s, %s%s\" for parts, and a number with a point", d[1], d[2], d[1], d[2], d[1], d[2], d[3]))
	}
	pieces := between.Split(text, -1)
	if len(pieces) < 2 {
		return "", false, nil
	}
	s := &g.walk.Steps[g.at]
	var list []said
	var waiting []meant // parts of which it is not yet said what they did
	seen := map[int]bool{}
	for i, piece := range pieces {
		words := strings.Fields(piece)
		m := g.walk.partOf(words)
		switch {
		case m.used == 0 && i == 0 && m.problem == "":
			return "", false, nil
		case m.problem != "":
			return not(m.problem)
		case m.used == 0:
			return "", true, hinted(fmt.Sprintf("not understood: %q; several parts are told as in \"1, 2 %s\"", piece, g.walk.wordsOf(s, &g.walk.Model.Setup.Parts[s.Expect[0].Part])[0]), g.walk.nearest(piece))
		case m.among != nil:
			return not(fmt.Sprintf("%q: which of them: %s", piece, g.walk.listed(m.among)))
		case seen[m.part]:
			return not("the " + g.walk.Model.Setup.Parts[m.part].Name + " is told twice")
		}
		seen[m.part] = true
		waiting = append(waiting, m)
		rest := strings.Join(words[m.used:], " ")
		if rest == "" {
			continue
		}
		for _, w := range waiting {
			at := g.walk.place(s, w.part)
			e, problem := g.read(at, rest, w.number)
			if problem != "" {
				return not(problem)
			}
			list = append(list, said{at, e})
		}
		waiting = nil
	}
	if len(waiting) > 0 {
		return not(g.walk.ask(s, &g.walk.Model.Setup.Parts[waiting[0].part]))
	}
	reply, err = g.noteAll(list)
	return reply, true, err
}

// noteAll notes what was said of parts, and says what was noted.
func (g *Guide) noteAll(list []said) (string, error) {
	var lines []string
	step := g.at
	for i := range list {
		at, e := list[i].at, list[i].event
		e.Step = step + 1
		was := g.before(at, &e)
		if err := g.note(e); err != nil {
			return "", err
		}
		lines = append(lines, g.noted(step, at, &e, was))
	}
	return strings.Join(lines, "\n"), nil
}

// before is what was said until now in place of an event, in words; empty for nothing.
func (g *Guide) before(at int, e *Event) string {
	st := &g.steps[e.Step-1]
	part := g.walk.Steps[e.Step-1].Expect[at].Part
	if e.Kind == Measured {
		if was, ok := st.read[reading{part, e.Before, e.Servo}]; ok {
			return g.walk.placeWords(part, was)
		}
		return ""
	}
	if e.Before {
		return string(st.before[part])
	}
	return string(st.saw[part])
}

// words is what an event says.
func (g *Guide) words(at int, e *Event) string {
	what := string(e.Saw)
	if e.Kind == Measured {
		part := g.walk.Steps[e.Step-1].Expect[at].Part
		where, _ := g.walk.placeOf(part, e)
		what = g.walk.placeWords(part, where) + alone(e.Servo)
	}
	if e.Before {
		what += " before the movement"
	}
	return e.Part + " " + what
}

// oftenEnough is in how many steps a part may differ before somebody is told that the cause
// can be asked for.
const oftenEnough = 3

// noted says what was taken, whether it is as expected, and what it takes the place of.
func (g *Guide) noted(step, at int, e *Event, was string) string {
	text := "noted: " + g.words(at, e)
	if was != "" && !strings.HasSuffix(text, was) {
		text += " (instead of: " + was + ")"
	}
	text += "."
	if !g.differsIn(step, at) {
		return text
	}
	text += " Not as expected."
	times := 0
	for i := range g.walk.Steps {
		if g.differsIn(i, at) {
			times++
		}
	}
	if times >= oftenEnough && !g.told[at] {
		if g.told == nil {
			g.told = map[int]bool{}
		}
		g.told[at] = true
		text += fmt.Sprintf("\nThe %s was not as expected in %d steps: p stops here and shows what explains it.", e.Part, times)
	}
	return text
}

// differsIn says whether what was said of a part in a step is not as expected.
func (g *Guide) differsIn(step, at int) bool {
	s := &g.walk.Steps[step]
	return g.walk.differs(s, &s.Expect[at], &g.steps[step])
}

// undo takes back the last thing that was noted in the step.
func (g *Guide) undo() (string, error) {
	events := g.steps[g.at].events
	if len(events) == 0 {
		return "", misunderstood("nothing is noted in this step; b goes back to the step before")
	}
	last := events[len(events)-1]
	s := &g.walk.Steps[g.at]
	at := g.walk.place(s, partCalled(&g.walk.Model.Setup, last.Part))
	if err := g.note(Event{Kind: Undo, Step: g.at + 1}); err != nil {
		return "", err
	}
	text := "taken back: " + g.words(at, &last)
	if now := g.before(at, &last); now != "" {
		text += "; as before: " + now
	}
	return text, nil
}

// notedSoFar is what was noted in the present step, a line each.
func (g *Guide) notedSoFar() (list []string) {
	s := &g.walk.Steps[g.at]
	st := &g.steps[g.at]
	for i := range st.events {
		e := &st.events[i]
		at := g.walk.place(s, partCalled(&g.walk.Model.Setup, e.Part))
		if now := g.words(at, e); strings.HasPrefix(now, e.Part+" "+g.before(at, e)) {
			list = append(list, "noted: "+now)
		}
	}
	return list
}
