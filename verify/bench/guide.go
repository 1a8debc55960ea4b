package bench

import (
	"errors"
	"fmt"
	"slices"
	"strings"

	"example.com/hingeline/mixcore"
	"example.com/hingeline/verify/result"
)

// Guide leads through a walk. It takes one line at a time and says what to ask next. Every
// event is in the journal before the next thing is asked. Make one with NewGuide.
type Guide struct {
	walk    *Walk
	journal Journal
	now     func() string // RFC 3339, UTC
	state

	asking  asking
	next    *next        // what comes behind the last step; nil where nobody has looked since the last answer
	pending Saw          // said without a part
	among   []int        // of the parts that may be meant; nil for all
	told    map[int]bool // by place in Expect: that it often differs
	part    int          // in Expect: that was named without what it did
	shown   bool         // the present step was shown in whole
}

// asking is what the next line answers.
type asking uint8

const (
	askStep asking = iota // what was seen
	askPart               // which part did what was said
	askWhat               // what a part did
	askAlso               // which other part moved
	askWhy                // why a step is skipped
)

// NewGuide begins a walk.
func NewGuide(w *Walk, to Journal, now func() string) *Guide {
	return &Guide{walk: w.own(), journal: to, now: now, state: state{steps: make([]stepState, w.chosen)}}
}

// Replay takes the events of a record that is gone on with or looked at, writing nothing.
// The error says which of them cannot be.
func (g *Guide) Replay(events []Event) error {
	for i := range events {
		if err := g.walk.apply(&g.state, &events[i]); err != nil {
			return fmt.Errorf("line %d of it: %w", i+2, err)
		}
	}
	return nil
}

// Resume goes on with a record after Replay. What must be so before anything moves is
// asked again.
func (g *Guide) Resume() error {
	if g.ended {
		return nil
	}
	return g.note(Event{Kind: Resumed})
}

// Ask is what to say and to ask next.
type Ask struct {
	Step   *result.BenchStep // a step that is come to anew; nil where it is gone on with
	Said   string            // before the question; may be empty
	Prompt string
}

// Walk is the walk that is led through, with the steps that were asked for on the way to
// decide.
func (g *Guide) Walk() *Walk { return g.walk }

// Over says whether nothing is asked any more.
func (g *Guide) Over() bool { return g.ended || g.paused || g.refused }

// Ended, HasRefused say how it is over.
func (g *Guide) Ended() bool      { return g.ended }
func (g *Guide) HasRefused() bool { return g.refused }

// Ask is the present question. It is for once: a step is shown in whole the first time.
func (g *Guide) Ask() Ask {
	switch {
	case g.changed:
		return Ask{Said: sinceThen, Prompt: "yes, no> "}
	case g.confirmed < len(Questions):
		return Ask{Said: g.walk.questions()[g.confirmed].Text, Prompt: "yes, no> "}
	case g.at == len(g.steps):
		a := g.behindTheLast()
		a.Said = g.leaving(a.Said)
		return a
	}
	s := &g.walk.Steps[g.at]
	switch g.asking {
	case askPart:
		if g.among != nil {
			return Ask{Said: "which of them: " + g.walk.listed(g.among), Prompt: "  which? its number or name> "}
		}
		return Ask{Prompt: "  which part? its number or name> "}
	case askAlso:
		return Ask{Prompt: "  which part moved as well? its number or name> "}
	case askWhat:
		p := &g.walk.Model.Setup.Parts[s.Expect[g.part].Part]
		return Ask{Prompt: "  " + g.walk.ask(s, p) + "> "}
	case askWhy:
		return Ask{Prompt: "  why is it skipped?> "}
	}
	var a Ask
	if !g.shown {
		g.shown = true
		step := g.walk.step(g.at, &g.steps[g.at])
		a.Step = &step
		a.Said = strings.Join(append(g.notedSoFar(), g.keys(s)), "\n")
	}
	a.Prompt = fmt.Sprintf("step %d> ", g.at+1)
	if g.steps[g.at].touched() {
		a.Prompt = fmt.Sprintf("step %d, anything else? y: the rest is as expected> ", g.at+1)
	}
	return a
}

// keys is about what can be answered.
func (g *Guide) keys(s *Step) string {
	moving := s.Moving()
	all := "All"
	if g.steps[g.at].touched() {
		all = "The rest"
	}
	text := all + " as expected: y. Else a part and what it did, such as " + g.example(s) + ". h: help."
	switch {
	case s.Stands() && len(moving) == 0:
		text = all + " at neutral: y. Else a part and where it stands, such as " + g.example(s) + ". h: help."
	case s.Stands():
		text = all + " as expected: y. Else a part and where it stands, such as " + g.example(s) + ". h: help."
	case len(moving) == 1 && g.walk.Model.Setup.Parts[s.Expect[moving[0]].Part].Motion != mixcore.Power:
		text = all + " as expected: y. Else o other way, n did not move, l too little, m too much, e something else moved. h: help."
	}
	if g.walk.Look.Ruler {
		text = all + " as expected by eye: y. Measured: " + g.measuredExample(s) + ". Else as " + g.example(s) + ". h: help."
	}
	return text
}

// measuredExample is a measurement of a part of the step.
func (g *Guide) measuredExample(s *Step) string {
	for _, at := range append(s.Moving(), 0) {
		if p := &g.walk.Model.Setup.Parts[s.Expect[at].Part]; p.Motion.Hinged() {
			return fmt.Sprintf("\"%d 12.5 %s\"", at+1, g.walk.wordsOf(s, p)[0])
		}
	}
	return "\"1 50 %\""
}

// example is an answer about a part of the step.
func (g *Guide) example(s *Step) string {
	at := 0
	if moving := s.Moving(); len(moving) > 0 {
		at = moving[0]
	}
	p := &g.walk.Model.Setup.Parts[s.Expect[at].Part]
	if p.Motion == mixcore.Power {
		return fmt.Sprintf("\"%d runs\"", at+1)
	}
	number := ""
	if g.walk.Look.Ruler && len(s.Moving()) == 1 { // a bare number could be measured
		number = "#"
	}
	return fmt.Sprintf("\"%s%d %s\"", number, at+1, g.walk.wordsOf(s, p)[0])
}

// Help is what a line may say at the present step.
func (g *Guide) Help() []string {
	more := "o the other way · n did not move · l moved too little · m moved too much · u cannot say"
	example := "\"3 other way\", \"port flap went down\", \"left aileron still\", \"2, 4 and 5 up\""
	if g.at < len(g.walk.Steps) {
		s := &g.walk.Steps[g.at]
		if slices.ContainsFunc(s.Expect, func(e Expect) bool { return e.Takes > 0 }) {
			more += " · t took another time than it should"
		}
		if s.Stands() {
			more, example = "u cannot say", "\"3 up\", \"port flap down\", \"2, 4 and 5 up\""
		}
	}
	return []string{
		"y: all of it, or all the rest, is as expected. Enter alone says nothing.",
		"First the part, by its number or name (left is port, right is starboard), then what it did: " + example + ".",
		"For what it did also: " + more,
		"e something else moved as well · undo takes back the last thing noted · r shows the step again, with what is noted",
		"Measured is where a part is, from neutral, in degrees or in mm at the trailing edge, and not by how much it moved: \"3 12 up\", \"3 9 mm down\"; and before the movement \"3 before 2 up\".",
		"b back to the step before · s skip, and why: \"s no time\" · p pause, with a report: --resume goes on",
	}
}

// note writes an event into the journal and takes it.
func (g *Guide) note(e Event) error {
	e.At = g.now()
	line, err := encode(&e)
	if err != nil {
		return err
	}
	if err := g.journal.Append(line); err != nil {
		return err
	}
	at := g.at
	if err := g.walk.apply(&g.state, &e); err != nil {
		panic("bench: an event of its own cannot be: " + err.Error())
	}
	g.asking, g.next = askStep, nil
	if g.at != at || e.Kind == Back || e.Kind == Further || e.Kind == Resumed || e.Kind == Changed {
		g.shown = false
	}
	return nil
}

// Stop is the end of what is said: with every step done the end of the walk, else a pause.
func (g *Guide) Stop() error {
	switch {
	case g.Over(), g.confirmed == 0 && g.at == 0: // nothing was said
		return nil
	case g.at == len(g.steps) && g.confirmed == len(Questions):
		return g.note(Event{Kind: End})
	}
	return g.note(Event{Kind: Pause})
}

// Reply is what is said to a line.
type Reply struct {
	Text       string // may be empty
	Understood bool   // false: nothing came of the line, and the same is asked again
	Hint       string // of what was not understood, what may be meant; may be empty
	Word       int    // of what was not understood, the first of the line's words that it is about, from 0
}

// Take takes a line. The error is the journal's: then the line was not taken, or of several
// parts only those that the journal has.
func (g *Guide) Take(line string) (Reply, error) {
	r, err := reply(g.take(line))
	r.Word = wordIn(line, r.Word)
	return r, err
}

// reply is what is said where text and err came of a line.
func reply(text string, err error) (Reply, error) {
	var not *misunderstanding
	if errors.As(err, &not) {
		return Reply{Text: not.text, Hint: not.hint, Word: not.word}, nil
	}
	return Reply{Text: text, Understood: err == nil}, err
}

func (g *Guide) take(line string) (reply string, err error) {
	text := tidy(line)
	switch {
	case g.Over():
		return "", errors.New("the walk is over")
	case orders[text] == pauseWalk:
		return g.leaving("paused; --resume goes on"), g.note(Event{Kind: Pause})
	case g.changed:
		return g.since(text)
	case g.confirmed < len(Questions):
		return g.confirm(text)
	case g.asking == askWhy:
		return g.why(line)
	case orders[text] == help:
		return strings.Join(g.Help(), "\n"), nil
	case orders[text] == goBack, orders[text] == undo && g.asking != askStep:
		return g.back()
	case g.at == len(g.steps):
		return g.finish(text)
	case g.asking != askStep && text == "":
		g.asking = askStep
		return "", nil
	}
	switch g.asking {
	case askPart, askAlso:
		return g.which(text)
	case askWhat:
		return g.about(g.part, text, false)
	}
	return g.seenLine(line, text)
}

func (g *Guide) confirm(text string) (string, error) {
	q := Questions[g.confirmed]
	switch text {
	case "y", "yes":
		return "", g.note(Event{Kind: Confirmed, What: q.Name})
	case "n", "no":
		return "then nothing starts", g.note(Event{Kind: Refused, What: q.Name})
	}
	return "", misunderstood("yes or no, please")
}

// since takes whether anything was changed since the record was broken off.
func (g *Guide) since(text string) (string, error) {
	switch text {
	case "y", "yes":
		return "then every step is to be done again; what was seen before stays in the record and does not count", g.note(Event{Kind: Changed})
	case "n", "no":
		return "", g.note(Event{Kind: Unchanged})
	}
	return "", misunderstood("yes or no, please; if you do not know: yes")
}

func (g *Guide) finish(text string) (string, error) {
	goesOn := g.decides().step != nil
	switch {
	case slices.Contains([]string{"f", "finish", "end"}, text):
		return g.leaving(""), g.note(Event{Kind: End})
	case slices.Contains(yeses, text) && goesOn:
		return "", g.decide()
	case slices.Contains(yeses, text):
		return g.leaving(""), g.note(Event{Kind: End})
	case goesOn:
		return "", misunderstood("y shows the step; f finishes without it; b goes back to the last step")
	}
	return "", misunderstood("y finishes; b goes back to the last step")
}

func (g *Guide) back() (string, error) {
	switch {
	case g.asking != askStep:
		g.asking = askStep
		return "", nil
	case g.at < len(g.steps) && g.steps[g.at].touched():
		return "the answers of this step are forgotten", g.note(Event{Kind: Back, Step: g.at + 1})
	case g.at == 0:
		return "", misunderstood("this is the first step")
	}
	text := ""
	if g.at < len(g.steps) && g.walk.Steps[g.at].To.SignalLost { // the transmitter may be off already
		text = g.Leave()
	}
	return text, g.note(Event{Kind: Back, Step: g.at})
}

// longestReason is the most characters that a reason may have.
const longestReason = 200

func (g *Guide) why(line string) (string, error) {
	reason := strings.Join(strings.Fields(strings.ToValidUTF8(line, "?")), " ")
	switch {
	case reason == "":
		g.asking = askStep
		return "", misunderstood("not skipped: a step is skipped for a reason")
	case len([]rune(reason)) > longestReason:
		return "", misunderstood(fmt.Sprintf("in at most %d characters, please", longestReason))
	}
	return "", g.note(Event{Kind: Skip, Step: g.at + 1, Reason: reason})
}

// Steps are all steps with what was said in them so far.
func (g *Guide) Steps() []result.BenchStep { return g.seenSoFar().Steps }
