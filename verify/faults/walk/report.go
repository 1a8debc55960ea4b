package walk

import (
	"cmp"
	"fmt"
	"slices"

	"example.com/hingeline/airframes/diag"
	"example.com/hingeline/mixcore"
	"example.com/hingeline/verify/faults/sight"
	"example.com/hingeline/verify/result"
	"example.com/hingeline/verify/script"
	"example.com/hingeline/verify/wording"
)

// Result is the walk-around for people. Tool, Findings and Cautions are left to who
// asked for it.
func (f *Found) Result() *result.Walk {
	m := f.Table.Model
	r := &result.Walk{
		Model: result.Model{Name: m.Name}, Look: lookWords(f.Look), Ruler: f.Look.Ruler,
		Tried: len(f.Table.Steps), AtLeast: f.AtLeast, Moves: f.Moves, MovesMin: f.MovesMin,
	}
	if m.Source != nil {
		r.Model.File = m.Source.Name
	}
	if f.Stopped {
		r.Stopped = "stopped before the search was done"
	}
	r.Further, r.Groups = f.Table.Named(f.Look)
	left := m.Plan.Rest()
	if f.Left != nil {
		left = *f.Left
	}
	for i, step := range f.Order {
		r.Steps = append(r.Steps, f.say(i, &left))
		left = f.Table.Steps[step].To
	}
	for i := range f.Table.Mistakes {
		if f.Visible(i) {
			r.Mistakes++
			continue
		}
		made := &f.Table.Mistakes[i]
		r.Unseen = append(r.Unseen, result.Unseen{Kind: made.Kind.Code, Text: made.Text, Place: at(made.Place()), Why: f.why(i)})
	}
	return r
}

func at(p diag.Place) result.Place {
	return result.Place{File: p.File, Line: p.Line, Column: p.Column}
}

func lookWords(look sight.Look) string {
	less := "less than " + wording.SetAngle(look.Visible) + " is not seen"
	if !look.Ruler {
		return "which way each part goes; " + less
	}
	return "which way each part goes and how far, to " + wording.SetAngle(look.Accuracy) + "; " + less + " as a movement"
}

// say is a step of the walk with what it shows.
func (f *Found) say(i int, left *mixcore.Input) result.WalkStep {
	step := f.Order[i]
	said := SayAfter(f.Table, f.Look, step, left)
	var first []int
	for m := range f.shows {
		if !f.shows[m].Has(step) {
			continue
		}
		said.Shows++
		if f.First(m) == i {
			first = append(first, m)
		}
	}
	said.First = len(first)
	slices.SortStableFunc(first, func(a, b int) int {
		return cmp.Compare(f.Table.Mistakes[b].Kind.Odds, f.Table.Mistakes[a].Kind.Odds)
	})
	for _, m := range first {
		said.Kinds = append(said.Kinds, f.Table.Mistakes[m].Text)
	}
	parts := f.Table.Gives(f.Look, step)
	for _, stage := range result.Stages {
		if slices.ContainsFunc(parts, func(p int) bool { return script.PartStage(&f.Table.Model.Setup.Parts[p]) == stage }) {
			said.Stages = append(said.Stages, stage)
		}
	}
	return said
}

// why says why a mistake cannot be noticed.
func (f *Found) why(made int) string {
	if faults := f.Table.Fault(made); faults != nil {
		return "the set-up cannot be worked out with it: " + faults[0].Message
	}
	part, most := f.Table.Furthest(made)
	if part < 0 {
		return "moves nothing elsewhere at any step that was tried"
	}
	p := &f.Table.Model.Setup.Parts[part]
	size := wording.Percent(mixcore.Percent(most))
	if p.Motion.Hinged() {
		size = wording.Angle(mixcore.Degrees(most))
	}
	text := fmt.Sprintf("moves nothing by more than %s, the %s", size, p.Name)
	if most < float64(wording.NeutralBelow) {
		text = "moves nothing by as much as is shown"
	}
	if !f.Look.Ruler && f.Table.ShowsAnywhere(sight.Measured, made) {
		return "moves everything the same way, though not as far: use a ruler"
	}
	return text
}
