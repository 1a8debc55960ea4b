package bench

import (
	"context"
	"slices"

	"example.com/hingeline/verify/faults/cause"
	"example.com/hingeline/verify/faults/sight"
	"example.com/hingeline/verify/faults/table"
	"example.com/hingeline/verify/result"
	"example.com/hingeline/verify/script"
)

// inQuestion is what the answers so far leave in question. Where that is nothing, and a
// surface goes to the same part of what is computed everywhere, it is what the rest leaves.
func (g *Guide) inQuestion() *cause.Session {
	all := g.inquiry(context.Background(), nil, nil)
	if all.Left() == 0 {
		if rest := g.withoutSizes(context.Background(), nil); rest != nil && rest.Left() > 0 {
			return rest
		}
	}
	return all
}

// withoutSizes is what the answers leave in question where of surfaces that go to the same
// part of what is computed everywhere only the way counts; nil where there is none.
func (g *Guide) withoutSizes(ctx context.Context, files []script.File) *cause.Session {
	ratios := g.walk.ratios(g.steps)
	if len(ratios) == 0 {
		return nil
	}
	return g.inquiry(ctx, files, func(part int) bool {
		name := g.walk.Model.Setup.Parts[part].Name
		return slices.ContainsFunc(ratios, func(r result.BenchRatio) bool { return r.Part == name })
	})
}

// inquiry is what all answers so far leave in question; of parts that sized, which may be
// nil, says go wrong in how far and not in which way, it does not count where they were
// measured.
func (g *Guide) inquiry(ctx context.Context, files []script.File, sized func(part int) bool) *cause.Session {
	w := g.walk
	look, measured := w.Look, w.Look.Ruler
	for i := range g.steps {
		for r := range g.steps[i].read {
			measured = measured || r.servo == 0
		}
	}
	if measured && !look.Ruler {
		look.Ruler, look.Accuracy = true, sight.UsualAccuracy
	}
	ask := cause.NewSession(ctx, w.table(), files, look)
	for i := range w.Steps {
		s, st := &w.Steps[i], &g.steps[i]
		if !st.touched() {
			continue
		}
		var list []cause.Seen
		for k := range s.Expect {
			seen, ok := w.seen(s, &s.Expect[k], st, measured)
			if !ok {
				continue
			}
			if sized != nil && sized(seen.Part) {
				if _, said := st.saw[seen.Part]; !said && (seen.Before != nil || seen.After != nil) {
					seen.Way = sight.Unclear
				}
				seen.Before, seen.After = nil, nil
			}
			list = append(list, seen)
		}
		if at := w.inTable(i); at >= 0 {
			ask.AnswerAs(i+1, at, list)
		}
	}
	return ask
}

// inTable is the index of a step of the walk in the table of mistakes; −1 of one that a
// record of another version asked for, and that is not there.
func (w *Walk) inTable(step int) int {
	if step < w.chosen {
		return step
	}
	key := keyOf(&w.Steps[step].Step)
	return slices.IndexFunc(w.table().Steps, func(s sight.Step) bool { return keyOf(&s) == key })
}

// next is what comes behind the last step.
type next struct {
	step  *sight.Step // that tells best apart what is left; nil: the walk is done
	watch []int
	left  int // kinds of mistakes that are in question, which look different somewhere
}

// decides finds the step that tells best apart what would explain the answers. There is
// none where all was as expected, where what was said of sizes only says nothing about
// mistakes, or where no step tells more.
func (g *Guide) decides() *next {
	if g.next != nil {
		return g.next
	}
	g.next = &next{}
	if g.seenSoFar().Verdict != result.SeenDiffers {
		return g.next
	}
	ask := g.inQuestion()
	g.next.left = ask.Left()
	if ask.Keeps(table.None) {
		return g.next
	}
	if i, ok := ask.Step(); ok {
		g.next.step = &g.walk.table().Steps[i]
		for part := range g.walk.Model.Setup.Parts {
			if ask.Timed(i, part) {
				g.next.watch = append(g.next.watch, part)
			}
		}
	}
	return g.next
}

// behindTheLast is what is asked when every step is done.
func (g *Guide) behindTheLast() Ask {
	n := g.decides()
	decided := len(g.steps) > g.walk.chosen
	switch {
	case n.step != nil && decided:
		return Ask{Said: "One more step tells more about which mistake it is.", Prompt: "y: show it; f: finish without; b: back> "}
	case n.step != nil:
		return Ask{
			Said:   "That was the last step, and not all was as expected: DO NOT FLY. A step more tells more about which mistake it is.",
			Prompt: "y: show it; f: finish without; b: back> ",
		}
	case decided && n.left == 0:
		return Ask{Said: "No single mistake looks so; the report says more.", Prompt: "y: finish; b: back> "}
	case decided:
		return Ask{Said: "No step tells more: the report names what is left.", Prompt: "y: finish; b: back> "}
	}
	return Ask{Prompt: "That was the last step. y: finish; b: back> "}
}

// decide asks for the step that decides.
func (g *Guide) decide() error {
	w, n := g.walk, g.decides()
	shown := w.own() // for the words in which the step will be shown
	shown.add([]sight.Step{*n.step}, [][]int{n.watch})
	pose := w.written(&shown.Steps[w.chosen])
	return g.note(Event{Kind: Further, Step: g.at + 1, Pose: &pose})
}
