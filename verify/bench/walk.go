package bench

import (
	"context"
	"math"
	"slices"
	"sync"

	"example.com/hingeline/airframes"
	"example.com/hingeline/airframes/diag"
	"example.com/hingeline/mixcore"
	"example.com/hingeline/verify/faults/mistake"
	"example.com/hingeline/verify/faults/sight"
	"example.com/hingeline/verify/faults/table"
	"example.com/hingeline/verify/faults/walk"
	"example.com/hingeline/verify/result"
	"example.com/hingeline/verify/script"
)

// Walk is what is looked at, in order, and what must be seen.
type Walk struct {
	Model *airframes.Model
	Look  sight.Look
	Steps []Step

	chosen  int           // steps that were chosen before it began; those behind them are to decide
	numbers []int         // by number from 0: the part, in the order in which one meets them
	spots   []result.Spot // by part: where it is on a picture
	mishaps *mishaps
}

// Step is one thing to do with the model in hand.
type Step struct {
	sight.Step
	Watch   []int // parts of which it is watched how long they take, ascending
	Further bool  // it is to tell apart what would explain the answers to those before it
	Said    result.WalkStep
	Expect  []Expect // in the order in which one meets the parts
}

// mishaps is what every part does at the steps of a walk with every mistake of the
// catalogue, worked out once, when it is needed.
type mishaps struct {
	once  sync.Once
	steps []sight.Step // those that were chosen
	made  *table.Table
}

// Expect is what one part must do in a step.
type Expect struct {
	Part  int
	Move  sight.Move
	Way   string // in a word, as result.WalkPart.Way
	Exact string
	Moves bool // whoever looks must see something: it moves, runs, or stands off neutral
	Sure  bool // false: between moving and not, so nobody is asked
	Takes mixcore.Seconds
}

// Chosen are steps that were chosen for a model: what a record keeps.
type Chosen struct {
	Steps []sight.Step
	Watch [][]int // by step
	How   string  // in words

	made *table.Table // tableOf the steps; nil of those of a record
}

// Usual chooses each stick alone, both ways, and then the fewest steps that show every
// other single mistake that can be seen. Where ctx is done before the search is, they are
// the best that it found.
func Usual(ctx context.Context, m *airframes.Model, look sight.Look, progress func(string)) Chosen {
	t, _ := walk.Candidates(m, nil, progress)
	found := walk.After(ctx, t, look, walk.Plain(t, look))
	return chosen(found, "each stick alone, both ways; then the fewest steps that show every other single mistake that can be seen")
}

// Shortest chooses the fewest steps that show every single mistake that can be seen, and
// is like Usual else.
func Shortest(ctx context.Context, m *airframes.Model, look sight.Look, progress func(string)) Chosen {
	found := walk.Shortest(ctx, m, walk.Options{Look: look, Progress: progress})
	return chosen(found, "the fewest steps that show every single mistake that can be seen")
}

func chosen(found *walk.Found, how string) Chosen {
	c := Chosen{How: how}
	if found.Stopped {
		c.How += ", of those found before the search was stopped"
	}
	for _, i := range found.Order {
		c.Steps = append(c.Steps, found.Table.Steps[i])
	}
	if found.Look.Ruler {
		if more := reaching(found.Table, c.Steps); len(more) > 0 {
			c.Steps = append(c.Steps, more...)
			c.How += "; then those at which every surface goes as far as it can, to measure"
		}
	}
	c.watch(found.Table.Model, found.Look)
	return c
}

// OfScript chooses the poses of scripts, each once, in walk-around order. Sentences about
// every position name none. It returns every problem of the scripts; there are no steps
// if one is an error.
func OfScript(m *airframes.Model, files []script.File, look sight.Look) (Chosen, []diag.Problem) {
	record, problems := script.Run(m, files, script.Selection{})
	c := Chosen{How: "the poses of the script, in walk-around order"}
	if diag.HasErrors(problems) {
		return c, problems
	}
	seen := map[string]bool{}
	for i := range record.Judged {
		j := &record.Judged[i]
		if j.Outcome.Every != nil {
			continue
		}
		step := sight.Step{To: j.At.Now.Input()}
		step.From = step.To.Clone()
		step.From.SignalLost = false // a loss is seen as it happens
		if j.At.Moved {
			step.From = j.At.Before.Input()
		}
		key := keyOf(&step)
		if !seen[key] {
			seen[key] = true
			c.Steps = append(c.Steps, step)
		}
	}
	c.watch(m, look)
	return c, problems
}

func keyOf(s *sight.Step) string { return s.From.Key() + "|" + s.To.Key() }

// watch finds the parts of which it is watched how long they take.
func (c *Chosen) watch(m *airframes.Model, look sight.Look) {
	c.Watch = make([][]int, len(c.Steps))
	t := tableOf(m, c.Steps)
	c.made = t
	for made := range t.Mistakes {
		if k := t.Mistakes[made].Kind; k == nil || !k.Timed || t.Fault(made) != nil {
			continue
		}
		for step := range c.Steps {
			for part := range m.Setup.Parts {
				late := t.Late(made, step, part)
				if late > 0 && late >= visible(look, &m.Setup.Parts[part]) && !slices.Contains(c.Watch[step], part) {
					c.Watch[step] = append(c.Watch[step], part)
				}
			}
		}
	}
	for _, parts := range c.Watch {
		slices.Sort(parts)
	}
}

// visible is from how much on somebody sees that a part is not where it should be.
func visible(look sight.Look, p *mixcore.Part) float64 {
	if p.Motion.Hinged() {
		return float64(look.Visible)
	}
	return float64(sight.VisibleAmount)
}

// tableOf is what every part does at the steps of a walk, which come first, and at those
// that may be asked afterwards, with every mistake of the catalogue.
func tableOf(m *airframes.Model, steps []sight.Step) *table.Table {
	all := slices.Clone(steps)
	known := map[string]bool{}
	for i := range all {
		known[keyOf(&all[i])] = true
	}
	for _, s := range table.Steps(m) {
		if !known[keyOf(&s)] {
			all = append(all, s)
		}
	}
	return table.New(m, mistake.All(m, mistake.Options{}), all)
}

// table is tableOf the steps that were chosen, made once.
func (w *Walk) table() *table.Table {
	w.mishaps.once.Do(func() {
		if w.mishaps.made == nil {
			w.mishaps.made = tableOf(w.Model, w.mishaps.steps)
		}
	})
	return w.mishaps.made
}

// NewWalk works out what must be seen at chosen steps.
func NewWalk(m *airframes.Model, c Chosen, look sight.Look) *Walk {
	w := &Walk{Model: m, Look: look, spots: spots(m), chosen: len(c.Steps), mishaps: &mishaps{steps: c.Steps, made: c.made}}
	w.add(c.Steps, c.Watch)
	if len(w.Steps) > 0 {
		for _, e := range w.Steps[0].Expect {
			w.numbers = append(w.numbers, e.Part)
		}
	}
	return w
}

// add works out what must be seen at steps, and puts them behind those that are there.
func (w *Walk) add(steps []sight.Step, watch [][]int) {
	order := make([]int, len(steps))
	for i := range order {
		order[i] = i
	}
	t := table.New(w.Model, nil, steps)
	found := walk.Found{Table: t, Look: w.Look, Order: order}
	if n := len(w.Steps); n > 0 { // they come behind others, which leave the controls somewhere
		found.Left = &w.Steps[n-1].To
	}
	said := found.Result().Steps
	for i := range steps {
		s := Step{Step: steps[i], Watch: watch[i], Said: said[i], Further: len(w.Steps) >= w.chosen}
		for _, p := range said[i].Parts {
			s.Expect = append(s.Expect, w.expect(t, &s, i, p))
		}
		w.Steps = append(w.Steps, s)
	}
}

// own is the walk for one guide, to which steps may be added.
func (w *Walk) own() *Walk {
	o := *w
	o.Steps = slices.Clone(w.Steps[:w.chosen])
	return &o
}

// expect is what one part must do.
func (w *Walk) expect(t *table.Table, s *Step, step int, said result.WalkPart) Expect {
	parts := w.Model.Setup.Parts
	part := slices.IndexFunc(parts, func(p mixcore.Part) bool { return p.Name == said.Name })
	p := &parts[part]
	e := Expect{Part: part, Move: t.Move(table.None, step, part), Way: said.Way, Exact: said.Exact, Sure: true}
	way := w.Look.Way(p, e.Move)
	switch {
	case p.Motion == mixcore.Power:
		e.Sure = said.Way != "A LITTLE" && turns(p, e.Move.To) != unclear && turns(p, e.Move.From) != unclear
		e.Moves = said.Way != "STOPPED" && said.Way != "STAYS"
	default:
		e.Sure = way != sight.Unclear
		e.Moves = way == sight.Plus || way == sight.Minus
	}
	if slices.Contains(s.Watch, part) {
		e.Takes = w.takes(s, part)
	}
	return e
}

// turning is what can be said of a propeller.
type turning uint8

const (
	unclear turning = iota // it creeps, and may be taken for either
	stands
	runs
)

func turns(p *mixcore.Part, power float64) turning {
	switch still, turns := sight.Propeller(p, power); {
	case still:
		return stands
	case turns:
		return runs
	}
	return unclear
}

// longestWatch is how long a movement is followed.
const longestWatch mixcore.Seconds = 60

// takes is when a part has come to where it stays, to what an eye sees.
func (w *Walk) takes(s *Step, part int) mixcore.Seconds {
	setup, plan := &w.Model.Setup, w.Model.Plan
	out := plan.NewOutput()
	plan.Eval(&s.To, out)
	end, last := sight.PlaceOf(setup, part, out), mixcore.Seconds(0)
	near := visible(w.Look, &setup.Parts[part]) / 2
	plan.During(&s.From, &s.To, longestWatch, func(now mixcore.Seconds, out *mixcore.Output) bool {
		if math.Abs(sight.PlaceOf(setup, part, out)-end) > near {
			last = now
		}
		return true
	})
	return last
}

// Moving are the places in Expect of the parts that must be seen to do something.
func (s *Step) Moving() (list []int) {
	for i := range s.Expect {
		if s.Expect[i].Moves {
			list = append(list, i)
		}
	}
	return list
}
