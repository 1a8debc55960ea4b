package main

import (
	"bufio"
	"context"
	"errors"
	"fmt"
	"strconv"
	"strings"

	"example.com/hingeline/mixcore"
	"example.com/hingeline/verify"
	"example.com/hingeline/verify/faults/cause"
	"example.com/hingeline/verify/faults/mistake"
	"example.com/hingeline/verify/faults/sight"
	"example.com/hingeline/verify/faults/table"
	"example.com/hingeline/verify/report/terminal"
	"example.com/hingeline/verify/result"
)

// errEnough is that somebody has said enough, by the end of the input or a q.
var errEnough = errors.New("no more answers")

// askSeen asks for one step after another what is seen, and finds the cause.
func (s *session) askSeen(in *inputs, flags *faultsFlags, o cause.Options, named string) error {
	ctx, stop := untilInterrupted()
	defer stop()
	t := table.New(in.model, mistake.All(in.model, o.Options), table.Steps(in.model))
	ask := cause.NewSession(context.Background(), t, in.scripts, o.Look) // Ctrl-C ends the questions, not the answer
	e := &eyes{s: s, ctx: ctx, lines: s.linesUntil(ctx), setup: &in.model.Setup, ruler: o.Look.Ruler}
	e.explain()
	for n := 1; ctx.Err() == nil; n++ {
		step, more := ask.Step()
		if !more {
			break
		}
		said := ask.Say(step)
		e.tell(n, ask.Left(), &said)
		var seen []cause.Seen
		for _, part := range ask.Parts(step) {
			one, err := e.look(part, &t.Steps[step], asked{ask.Before(step, part), ask.Way(step, part), ask.Timed(step, part)})
			if one != (cause.Seen{Part: part}) {
				seen = append(seen, one)
			}
			if err != nil {
				ask.Answer(step, seen)
				return s.finishAsking(in, flags, ask, named)
			}
		}
		ask.Answer(step, seen)
	}
	return s.finishAsking(in, flags, ask, named)
}

func (s *session) finishAsking(in *inputs, flags *faultsFlags, ask *cause.Session, named string) error {
	fmt.Fprintln(s.stderr)
	report := ask.Causes()
	verify.Finish(report, in.model, in.sources)
	return s.renderCauses(report, flags, named)
}

// eyes asks somebody with the model in hand.
type eyes struct {
	s     *session
	ctx   context.Context // is done by Ctrl-C
	lines <-chan string   // that are typed
	setup *mixcore.Setup
	ruler bool
}

// linesUntil are the lines of standard input, until they end or ctx is done.
func (s *session) linesUntil(ctx context.Context) <-chan string {
	lines := make(chan string)
	go func() {
		defer close(lines)
		in := bufio.NewScanner(s.stdin)
		for in.Scan() {
			select {
			case lines <- in.Text():
			case <-ctx.Done():
				return
			}
		}
	}()
	return lines
}

func (e *eyes) explain() {
	text := terminal.NewText(e.s.layout(false))
	text.Paragraph(0, "Propeller off, or the model restrained. Do each step and say what you see, as it is, not as it should be.")
	text.Paragraph(0, "The first letters are enough. Enter: cannot say. ?: help. q or Ctrl-D: enough.")
	text.Render(e.s.stderr)
}

func (e *eyes) tell(n, left int, said *result.WalkStep) {
	text := terminal.NewText(e.s.layout(false))
	text.Gap()
	text.Title(fmt.Sprintf("Step %d (%d things in question)", n, left))
	for _, one := range said.Beware {
		text.Entry("  ! ", one)
	}
	if len(said.Stand) > 0 {
		text.Entry("  set   ", strings.Join(said.Stand, ", ")+"; all else at rest")
	} else {
		text.Entry("  set   ", "everything at rest")
	}
	if len(said.Move) > 0 {
		text.Entry("  move  ", strings.Join(said.Move, ", "))
	} else {
		text.Entry("  look  ", "at the model as it stands")
	}
	text.Render(e.s.stderr)
}

// asked is what matters of a part in a step besides what it does: what it does before,
// which way it goes, and how soon it comes.
type asked struct{ before, way, timed bool }

// look asks what one part does.
func (e *eyes) look(part int, step *sight.Step, matters asked) (cause.Seen, error) {
	p := &e.setup.Parts[part]
	seen := cause.Seen{Part: part}
	var err error
	if matters.before {
		err = e.before(p, &seen)
	}
	if err == nil {
		err = e.choose("  "+p.Name, wordsOf(p, step.Stands()), &seen)
	}
	if err == nil && p.Motion == mixcore.Power && matters.way && !step.Stands() && runsBoth(&seen) {
		err = e.choose("  "+p.Name+", beside before", speedWords, &seen)
	}
	if err == nil && e.ruler {
		err = e.measure("  "+p.Name+": where is it now", p, &seen.After)
	}
	if err == nil && matters.timed {
		err = e.answer(fmt.Sprintf("  %s: does it take as long as it should? yes, no", p.Name), []string{"yes", "no"}, func(said string) bool {
			early := strings.HasPrefix(said, "n")
			seen.Early = &early
			return early || strings.HasPrefix(said, "y")
		})
	}
	return seen, err
}

// before asks what a part does before the step.
func (e *eyes) before(p *mixcore.Part, seen *cause.Seen) error {
	if p.Motion == mixcore.Power {
		ran := func(runs bool) func(*cause.Seen) { return func(s *cause.Seen) { s.RanBefore = &runs } }
		if err := e.choose("  "+p.Name+", before you move anything", []seenWord{{"runs", ran(true)}, {"stopped", ran(false)}}, seen); err != nil {
			return err
		}
	}
	if e.ruler {
		return e.measure("  "+p.Name+": where is it before you move anything", p, &seen.Before)
	}
	return nil
}

// runsBoth says whether a motor may have run before a step and after it: only then can it
// run faster or slower.
func runsBoth(seen *cause.Seen) bool {
	return (seen.RanBefore == nil || *seen.RanBefore) && (seen.Runs == nil || *seen.Runs)
}

// speedWords are the words for what a motor does that runs on.
var speedWords = []seenWord{
	{"faster", func(s *cause.Seen) { s.Way = sight.Plus }},
	{"slower", func(s *cause.Seen) { s.Way = sight.Minus }},
	{"alike", func(s *cause.Seen) { s.Way = sight.Still }},
}

// choose asks for one of some words.
func (e *eyes) choose(question string, words []seenWord, seen *cause.Seen) error {
	var names []string
	for _, w := range words {
		names = append(names, w.word)
	}
	return e.answer(fmt.Sprintf("%s: %s?", question, strings.Join(names, ", ")), names, func(said string) bool {
		for _, w := range words {
			if strings.HasPrefix(w.word, said) {
				w.take(seen)
				return true
			}
		}
		return false
	})
}

// seenWord is a word for what a part does.
type seenWord struct {
	word string
	take func(*cause.Seen)
}

func wordsOf(p *mixcore.Part, stands bool) []seenWord {
	way := func(w sight.Way) func(*cause.Seen) { return func(s *cause.Seen) { s.Way = w } }
	turns := func(runs bool) func(*cause.Seen) { return func(s *cause.Seen) { s.Runs = &runs } }
	still := seenWord{"still", way(sight.Still)}
	if stands {
		still.word = "neutral"
	}
	switch p.Motion {
	case mixcore.Power:
		return []seenWord{{"runs", turns(true)}, {"stopped", turns(false)}}
	case mixcore.LeftRight:
		return []seenWord{{"left", way(sight.Plus)}, {"right", way(sight.Minus)}, still}
	case mixcore.OutIn:
		still.word = "still"
		if stands {
			return []seenWord{{"out", way(sight.Plus)}, {"in", way(sight.Still)}}
		}
		return []seenWord{{"out", way(sight.Plus)}, {"in", way(sight.Minus)}, still}
	}
	return []seenWord{{"up", way(sight.Minus)}, {"down", way(sight.Plus)}, still}
}

// measure asks where a part is.
func (e *eyes) measure(question string, p *mixcore.Part, where **float64) error {
	unit := "percent of its travel or power"
	if p.Motion.Hinged() {
		unit = map[mixcore.Motion]string{mixcore.UpDown: "degrees, such as 12 up or 3 down", mixcore.LeftRight: "degrees, such as 12 left or 3 right"}[p.Motion]
	}
	return e.answer(fmt.Sprintf("%s, in %s?", question, unit), nil, func(said string) bool {
		fields := strings.Fields(strings.NewReplacer("°", " ", "%", " ").Replace(said))
		if len(fields) == 0 {
			return false
		}
		at, err := strconv.ParseFloat(strings.ReplaceAll(fields[0], ",", "."), 64)
		if err != nil || at < 0 || at > 180 {
			return false
		}
		if p.Motion.Hinged() && at != 0 {
			if len(fields) != 2 {
				return false
			}
			switch side := fields[1]; {
			case p.Motion == mixcore.UpDown && side == "up", p.Motion == mixcore.LeftRight && side == "right":
				at = -at
			case p.Motion == mixcore.UpDown && side == "down", p.Motion == mixcore.LeftRight && side == "left":
			default:
				return false
			}
		}
		*where = &at
		return true
	})
}

// answer asks until what is said is understood, nothing is said, or it is enough.
func (e *eyes) answer(question string, words []string, understand func(string) bool) error {
	for {
		fmt.Fprint(e.s.stderr, question+" ")
		line, more := "", false
		select {
		case line, more = <-e.lines:
		case <-e.ctx.Done():
		}
		said := strings.ToLower(strings.TrimSpace(line))
		switch {
		case !more, said == "q", said == "quit":
			return errEnough
		case said == "", said == "don't know", said == "dont know":
			return nil
		case said == "?":
			fmt.Fprintln(e.s.stderr, "    say what it does as the step is done: "+hintFor(words)+"\n    Enter if you cannot say; q ends the questions")
		case understand(said):
			return nil
		default:
			fmt.Fprintln(e.s.stderr, "    not understood: "+hintFor(words))
		}
	}
}

func hintFor(words []string) string {
	if len(words) == 0 {
		return "write a number, and which way"
	}
	return "write " + strings.Join(words, " or ")
}
