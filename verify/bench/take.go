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
	case slices.Contains(yeses, text):
		return "", g.note(Event{Kind: Answer, Step: g.at + 1})
	case orders[text] == again:
		g.shown = false
		return "", nil
	case orders[text] == also:
		g.asking = askAlso
		return "", nil
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
	if saw, ok := saws[words[0]]; ok && len(words) > 1 { // "o 3", "o port flap"
		if part, used, _ := g.walk.partOf(words[1:]); used == len(words)-1 {
			return g.saw(g.walk.place(s, part), saw, false)
		}
	}
	if reply, mine, err := g.bareMeasure(s, words); mine {
		return reply, err
	}
	return g.named(words)
}

// alone takes what was said without a part: of the only one that moves, or of one that is
// asked for.
func (g *Guide) alone(s *Step, saw Saw) (string, error) {
	if moving := s.Moving(); len(moving) == 1 {
		return g.saw(moving[0], saw, false)
	}
	if len(s.Expect) == 1 {
		return g.saw(0, saw, false)
	}
	g.asking, g.pending = askPart, saw
	return "", nil
}

// bareMeasure takes a measurement without a part, of the only one that moves. mine is false
// where the line is something else.
func (g *Guide) bareMeasure(s *Step, words []string) (reply string, mine bool, err error) {
	moving := s.Moving()
	if len(moving) != 1 {
		return "", false, nil
	}
	part := s.Expect[moving[0]].Part
	e, ok, problem := g.walk.measureOf(part, words)
	if !ok {
		return "", false, nil
	}
	n, numberErr := strconv.Atoi(words[0])
	if numberErr == nil && n >= 1 && n <= len(g.walk.numbers) {
		if len(words) == 2 && problem == "" {
			return "", true, misunderstood(fmt.Sprintf("is that part %d, or %d degrees? write \"#%d %s\" or \"%d deg %s\"", n, n, n, words[1], n, words[1]))
		}
		if e.Length == nil {
			return "", false, nil // "3 12 up", "3 still"
		}
	}
	if problem != "" {
		return "", true, misunderstood(problem)
	}
	reply, err = g.measured(moving[0], e, false)
	return reply, true, err
}

// which takes a part that was asked for.
func (g *Guide) which(text string) (string, error) {
	s := &g.walk.Steps[g.at]
	words := strings.Fields(text)
	part, used, problem := g.walk.partOf(words)
	switch {
	case problem != "":
		return "", misunderstood(problem)
	case used == 0:
		return "", hinted("there is no such part", g.walk.nearest(text))
	case used < len(words):
		return g.named(words)
	}
	at := g.walk.place(s, part)
	if g.asking == askPart {
		return g.saw(at, g.pending, false)
	}
	g.asking, g.part = askWhat, at
	return "", nil
}

// named takes a part and what it did.
func (g *Guide) named(words []string) (string, error) {
	s := &g.walk.Steps[g.at]
	part, used, problem := g.walk.partOf(words)
	switch {
	case problem != "":
		return "", misunderstood(problem)
	case used == 0:
		return "", hinted(fmt.Sprintf("not understood: %q; wanted a part and what it did, such as %s", strings.Join(words, " "), g.example(s)), g.walk.nearest(strings.Join(words, " ")))
	case used == len(words):
		g.asking, g.part = askWhat, g.walk.place(s, part)
		return "", nil
	}
	reply, err := g.about(g.walk.place(s, part), strings.Join(words[used:], " "))
	return reply, behind(err, used)
}

// about takes what a part did, or where it was measured.
func (g *Guide) about(at int, text string) (string, error) {
	s := &g.walk.Steps[g.at]
	p := &g.walk.Model.Setup.Parts[s.Expect[at].Part]
	rest, before := strings.CutPrefix(text, "before ")
	if before && s.Stands() {
		return "", misunderstood("nothing is moved in this step: say what it is now")
	}
	if saw, ok := sawOf(rest); ok {
		return g.saw(at, saw, before)
	}
	e, ok, problem := g.walk.measureOf(s.Expect[at].Part, strings.Fields(rest))
	switch {
	case !ok:
		return "", misunderstood(fmt.Sprintf("not understood: %q; the %s: %s; or measured: %s", text, p.Name, strings.Join(g.walk.wordsOf(p), ", "), g.measureExample(at)))
	case problem != "":
		return "", misunderstood(problem)
	}
	return g.measured(at, e, before)
}

func (g *Guide) measureExample(at int) string {
	p := &g.walk.Model.Setup.Parts[g.walk.Steps[g.at].Expect[at].Part]
	if p.Motion.Hinged() {
		return "12 " + strings.ToLower(wording.Direction(p.Motion, false))
	}
	return "50 %"
}

// saw notes what a part did.
func (g *Guide) saw(at int, saw Saw, before bool) (string, error) {
	s := &g.walk.Steps[g.at]
	e := &s.Expect[at]
	if problem := g.walk.fitting(s, e, saw, before); problem != "" {
		return "", misunderstood(problem)
	}
	name := g.walk.Model.Setup.Parts[e.Part].Name
	step := g.at
	if err := g.note(Event{Kind: Answer, Step: step + 1, Part: name, Saw: saw, Before: before}); err != nil {
		return "", err
	}
	return g.noted(step, at, name+" "+string(saw)), nil
}

// measured notes where a part is.
func (g *Guide) measured(at int, e Event, before bool) (string, error) {
	s := &g.walk.Steps[g.at]
	step := g.at
	e.Step, e.Before = step+1, before
	if before && s.Stands() {
		return "", misunderstood("nothing is moved in this step: say where it is now")
	}
	if err := g.note(e); err != nil {
		return "", err
	}
	where, _ := g.walk.placeOf(s.Expect[at].Part, &e)
	said := g.walk.placeWords(s.Expect[at].Part, where)
	if before {
		said += " before the movement"
	}
	return g.noted(step, at, e.Part+" "+said), nil
}

// noted says what was taken, and whether it is as expected.
func (g *Guide) noted(step, at int, what string) string {
	s := &g.walk.Steps[step]
	if g.walk.differs(s, &s.Expect[at], &g.steps[step]) {
		return "noted: " + what + ". Not as expected."
	}
	return "noted: " + what + "."
}

// place is where a part is in a step's Expect: the same in every step.
func (w *Walk) place(s *Step, part int) int {
	return slices.IndexFunc(s.Expect, func(e Expect) bool { return e.Part == part })
}
