package bench

import (
	"fmt"
	"slices"
	"strconv"
	"strings"

	"example.com/hingeline/verify/wording"
)

// seenLine takes a line about what was seen.
func (g *Guide) seenLine(line, text string) (string, error) {
	s := &g.walk.Steps[g.at]
	words := strings.Fields(text)
	switch {
	case text == "":
		return "", misunderstood("Enter alone says nothing: y is \"" + g.yesMeans() + "\"; else " + g.example(s) + " and the like; h: help")
	case slices.Contains(yeses, text):
		return g.yes()
	case slices.Contains(nothings, text):
		return g.nothing()
	case slices.Contains(seenSo, text):
		return "", misunderstood(text + " is asked for only at a terminal, and behind a yes to a step in which a motor may run")
	case orders[text] == again:
		g.shown = false
		return "", nil
	case orders[text] == undo:
		return g.undo()
	case orders[text] == also:
		g.asking = askAlso
		return "", nil
	case orders[text] == wrong:
		return "", misunderstood("then say which part, and what it did, such as " + g.example(s) + "; h: help")
	case orders[words[0]] == skipStep:
		_, reason, _ := strings.Cut(strings.TrimSpace(line), " ")
		g.asking = askWhy
		if reason == "" {
			return "", nil
		}
		return g.why(reason)
	case orders[words[0]] == also:
		reply, err := g.named(words[1:])
		return reply, behind(err, 1)
	}
	if saw, ok := sawOf(text); ok {
		return g.alone(s, saw)
	}
	if reply, mine, err := g.several(text); mine {
		return reply, err
	}
	if saw, ok := saws[words[0]]; ok && len(words) > 1 { // "o 3", "o port flap"
		if m := g.walk.partOf(words[1:]); m.used == len(words)-1 && m.among == nil {
			return g.about(g.walk.place(s, m.part), words[0], false)
		} else if m.used == len(words)-1 {
			return g.whichOf(m.among, saw)
		}
	}
	if reply, mine, err := g.bareMeasure(s, words); mine {
		return reply, err
	}
	return g.named(words)
}

// yesMeans is what a yes says at the present step.
func (g *Guide) yesMeans() string {
	if g.steps[g.at].touched() {
		return "the rest is as expected"
	}
	return "all is as expected"
}

// yes takes that the rest of a step is as expected.
func (g *Guide) yes() (string, error) {
	if len(g.onceMore()) > 0 {
		g.asking = askAgain
		return "", nil
	}
	return g.close()
}

// close ends a step: the rest is as expected.
func (g *Guide) close() (string, error) {
	step := g.at
	if err := g.note(Event{Kind: Answer, Step: step + 1}); err != nil {
		return "", err
	}
	if names := g.walk.unmeasured(&g.walk.Steps[step], &g.steps[step]); len(names) > 0 {
		return fmt.Sprintf("step %d counts as seen by eye; not measured: %s", step+1, strings.Join(names, ", ")), nil
	}
	return "", nil
}

// nothing takes that nothing moved of what must.
func (g *Guide) nothing() (string, error) {
	s := &g.walk.Steps[g.at]
	moving := s.Moving()
	if s.Stands() || len(moving) == 0 {
		return "", misunderstood("nothing must move here: y is \"" + g.yesMeans() + "\"")
	}
	var list []said
	for _, at := range moving {
		list = append(list, said{at, g.event(at, DidNot)})
	}
	return g.noteAll(list)
}

// event is what one part did.
func (g *Guide) event(at int, saw Saw) Event {
	return Event{Kind: Answer, Part: g.walk.Model.Setup.Parts[g.walk.Steps[g.at].Expect[at].Part].Name, Saw: saw}
}

// alone takes what was said without a part: of the only one that moves, or of one that is
// asked for.
func (g *Guide) alone(s *Step, saw Saw) (string, error) {
	moving := s.Moving()
	switch {
	case s.Stands() && slices.Contains([]Saw{OtherWay, DidNot, TooLittle, TooMuch}, saw) && len(moving) == 0:
		return "", misunderstood("nothing is moved in this step: say which part does not stand as it should, such as " + g.example(s))
	case len(moving) == 1:
		return g.saw(moving[0], saw)
	case len(s.Expect) == 1:
		return g.saw(0, saw)
	}
	return g.whichOf(nil, saw)
}

// whichOf asks of which part something was said; among some, where not all may be meant.
func (g *Guide) whichOf(among []int, saw Saw) (string, error) {
	g.asking, g.pending, g.among = askPart, saw, among
	return "", nil
}

// bareMeasure takes a measurement without a part, of the only one that moves. mine is false
// where the line is something else.
func (g *Guide) bareMeasure(s *Step, words []string) (reply string, mine bool, err error) {
	moving := s.Moving()
	if len(moving) != 1 {
		return "", false, nil
	}
	m, ok, problem := g.walk.measureOf(s.Expect[moving[0]].Part, words)
	if !ok {
		return "", false, nil
	}
	if n, err := strconv.Atoi(words[0]); err == nil && g.walk.hasNumber(n) {
		if !g.walk.Look.Ruler && len(words) == 2 && n == moving[0]+1 {
			return "", false, nil // "1 left" by eye: part 1 is the one that moves
		}
		if len(words) == 2 && problem == "" {
			return "", true, misunderstood(fmt.Sprintf("is that part %d, or %d degrees? write \"#%d %s\" or \"%d deg %s\"", n, n, n, words[1], n, words[1]))
		}
		if m.Length == nil && (len(words) < 2 || words[1] != "deg" && words[1] != "degrees") {
			return "", false, nil // "3 12 up", "3 still"
		}
	}
	if problem == "" {
		problem = g.walk.doubted(s, &s.Expect[moving[0]], &m)
	}
	if problem != "" {
		return "", true, misunderstood(problem)
	}
	reply, err = g.noteAll([]said{{moving[0], m.Event}})
	return reply, true, err
}

// which takes a part that was asked for.
func (g *Guide) which(text string) (string, error) {
	s := &g.walk.Steps[g.at]
	words := strings.Fields(text)
	m := g.walk.partOf(words)
	switch {
	case m.problem != "":
		return "", misunderstood(m.problem)
	case m.used == 0:
		return "", hinted("there is no such part", g.walk.nearest(text))
	case m.used < len(words):
		return g.named(words)
	case m.among != nil:
		return "", misunderstood("which of them: " + g.walk.listed(m.among))
	}
	at := g.walk.place(s, m.part)
	if g.asking == askPart {
		return g.saw(at, g.pending)
	}
	g.asking, g.part = askWhat, at
	return "", nil
}

// named takes a part and what it did.
func (g *Guide) named(words []string) (string, error) {
	s := &g.walk.Steps[g.at]
	m := g.walk.partOf(words)
	rest := strings.Join(words[m.used:], " ")
	switch {
	case m.problem != "":
		return "", misunderstood(m.problem)
	case m.used == 0:
		return "", hinted(fmt.Sprintf("not understood: %q; wanted a part and what it did, such as %s", strings.Join(words, " "), g.example(s)), g.walk.nearest(strings.Join(words, " ")))
	case m.among != nil:
		if saw, ok := sawOf(rest); ok {
			return g.whichOf(m.among, saw)
		}
		return "", misunderstood("which of them: " + g.walk.listed(m.among))
	case rest == "":
		g.asking, g.part = askWhat, g.walk.place(s, m.part)
		return "", nil
	}
	reply, err := g.about(g.walk.place(s, m.part), rest, m.number)
	return reply, behind(err, m.used)
}

// about takes what a part did, or where it was measured. number: the part was named by a
// bare number.
func (g *Guide) about(at int, text string, number bool) (string, error) {
	e, problem := g.read(at, text, number)
	if problem != "" {
		return "", misunderstood(problem)
	}
	return g.noteAll([]said{{at, e}})
}

// read reads what a part did, or where it was measured; problem says why it cannot be taken.
func (g *Guide) read(at int, text string, number bool) (e Event, problem string) {
	s := &g.walk.Steps[g.at]
	expect := &s.Expect[at]
	p := &g.walk.Model.Setup.Parts[expect.Part]
	rest, before := strings.CutPrefix(text, "before ")
	if before && s.Stands() {
		return e, "nothing is moved in this step: say what it is now"
	}
	if saw, ok := sawOf(rest); ok {
		e = g.event(at, saw)
		e.Before = before
		return e, g.walk.fitting(s, expect, saw, before)
	}
	if number && !before {
		if problem := g.twoNumbers(at, strings.Fields(rest)); problem != "" {
			return e, problem
		}
	}
	servo, rest, problem := g.walk.aloneOf(expect.Part, rest)
	if problem != "" {
		return e, problem
	}
	m, ok, problem := g.walk.measureOf(expect.Part, strings.Fields(rest))
	m.Before, m.Servo = before, servo
	switch {
	case !ok:
		return e, fmt.Sprintf("not understood: %q; %s; or measured: %s", text, g.walk.ask(s, p), g.measureExample(at))
	case problem != "":
		return e, problem
	}
	return m.Event, g.walk.doubted(s, expect, &m)
}

// twoNumbers asks what "4 5 down" means: 5° of part 4, or parts 4 and 5.
func (g *Guide) twoNumbers(at int, words []string) string {
	numbers := []string{strconv.Itoa(at + 1)}
	for len(words) > 0 {
		n, err := strconv.Atoi(strings.TrimPrefix(words[0], "#"))
		if err != nil || !g.walk.hasNumber(n) {
			break
		}
		numbers, words = append(numbers, strconv.Itoa(n)), words[1:]
	}
	way := strings.Join(words, " ")
	if _, ok := sawOf(way); !ok || len(numbers) == 1 {
		return ""
	}
	several := fmt.Sprintf("\"%s %s\"", strings.Join(numbers, ", "), way)
	if len(numbers) > 2 {
		return "several parts are written with commas: " + several
	}
	return fmt.Sprintf("is that %s° of part %s, or parts %s and %s? write \"%s %s° %s\" or %s", numbers[1], numbers[0], numbers[0], numbers[1], numbers[0], numbers[1], way, several)
}

func (g *Guide) measureExample(at int) string {
	p := &g.walk.Model.Setup.Parts[g.walk.Steps[g.at].Expect[at].Part]
	if p.Motion.Hinged() {
		return "12 " + strings.ToLower(wording.Direction(p.Motion, false))
	}
	return "50 %"
}

// saw notes what a part did.
func (g *Guide) saw(at int, saw Saw) (string, error) {
	s := &g.walk.Steps[g.at]
	if problem := g.walk.fitting(s, &s.Expect[at], saw, false); problem != "" {
		return "", misunderstood(problem)
	}
	return g.noteAll([]said{{at, g.event(at, saw)}})
}

// place is where a part is in a step's Expect: the same in every step.
func (w *Walk) place(s *Step, part int) int {
	return slices.IndexFunc(s.Expect, func(e Expect) bool { return e.Part == part })
}
