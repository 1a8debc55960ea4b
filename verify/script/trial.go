package script

import (
	"slices"

	"example.com/hingeline/airframes"
	"example.com/hingeline/airframes/diag"
	"example.com/hingeline/mixcore"
	"example.com/hingeline/verify/phrase"
	"example.com/hingeline/verify/result"
)

// Trial is scripts read once for a model, to be held against many variants of
// it: which mistakes would they miss? It judges each check as Run does, but
// without godog and without a record, and works out only what a variant changes.
// A trial is not for two goroutines at once.
type Trial struct {
	vocabulary *phrase.Vocabulary
	checks     []trialCheck
	poses      []mixcore.Input  // each once
	right      []mixcore.Output // at each pose: the model as it should be; only Parts and Channels
	order      []int            // checks, the quickest to judge first
	scenarios  int
}

// trialCheck is one check of a trial.
type trialCheck struct {
	*check
	scenario    int
	before, now int // poses; before is -1 where nothing is moved
}

// NewTrial reads scripts. It returns every problem; the trial is nil if one of
// them is an error.
func NewTrial(m *airframes.Model, files []File) (*Trial, []diag.Problem) {
	scenarios, vocabulary, problems := prepare(m, files)
	if diag.HasErrors(problems) {
		return nil, problems
	}
	t := &Trial{vocabulary: vocabulary, scenarios: len(scenarios)}
	known := map[string]int{}
	for i, s := range scenarios {
		each([]*scenario{s}, func(ch *check) {
			c := trialCheck{check: ch, scenario: i, before: -1}
			c.now = t.pose(m.Plan, known, ch.at.Now)
			if ch.at.Moved {
				c.before = t.pose(m.Plan, known, ch.at.Before)
			}
			t.checks = append(t.checks, c)
		})
	}
	for i := range t.checks {
		t.order = append(t.order, i)
	}
	slices.SortStableFunc(t.order, func(a, b int) int { return t.checks[a].work() - t.checks[b].work() })
	return t, problems
}

// work is how long a check takes, roughly: at rest, on the way, everywhere.
func (c *trialCheck) work() int {
	switch o := &c.outcome; {
	case o.Every != nil:
		return 2
	case o.OnTheWay():
		return 1
	}
	return 0
}

// pose is the index of a pose, which is evaluated when it is new.
func (t *Trial) pose(plan *mixcore.Plan, known map[string]int, p phrase.Pose) int {
	in := p.Input()
	key := in.Key()
	at, ok := known[key]
	if !ok {
		at = len(t.poses)
		known[key] = at
		out := plan.NewOutput()
		plan.Eval(&in, out)
		t.poses = append(t.poses, in.Clone())
		t.right = append(t.right, *out)
	}
	return at
}

// Len is how many checks there are; they are numbered in the script's order.
func (t *Trial) Len() int { return len(t.checks) }

// Scenarios is how many scenarios there are, the rows of an outline written out.
func (t *Trial) Scenarios() int { return t.scenarios }

// Check is what one check is about, and the number of its scenario.
func (t *Trial) Check(i int) (about result.CaughtBy, scenario int) {
	c := &t.checks[i]
	r := &c.result
	return result.CaughtBy{Scenario: r.Scenario, Sentence: r.Sentence, Subject: c.subject, Place: r.Place}, c.scenario
}

// Universal says whether a check asks about every position of some controls, which nobody
// can have looked at.
func (t *Trial) Universal(i int) bool { return t.checks[i].outcome.Every != nil }

// Try holds a variant against the checks that look at one of the touched parts or at a
// channel, the quickest first, until visit returns false. All other checks hold as they
// do on the model. The variant must have the model's controls, parts and channels in the same
// places, and do as the model does with every part that is not touched.
func (t *Trial) Try(variant *airframes.Model, touched []int, visit func(check int, h phrase.Holding) bool) {
	t.try(t.bench(variant, touched), touched, visit)
}

func (t *Trial) try(b *bench, touched []int, visit func(check int, h phrase.Holding) bool) {
	for _, i := range t.order {
		if c := &t.checks[i]; c.outcome.LooksAt(touched) {
			if !visit(i, b.tell(c)) {
				return
			}
		}
	}
}

// TryAll holds a variant against every check, whatever it touches.
func (t *Trial) TryAll(variant *airframes.Model, visit func(check int, h phrase.Holding) bool) {
	t.Try(variant, everyPart(variant), visit)
}

// TryWatching is TryAll as somebody judges a variant who only looks at it: see
// [phrase.Vocabulary.Watching].
func (t *Trial) TryWatching(variant *airframes.Model, unseen float64, visit func(check int, h phrase.Holding) bool) {
	all := everyPart(variant)
	b := t.bench(variant, all)
	b.vocabulary = t.vocabulary.Watching(variant, unseen)
	t.try(b, all, visit)
}

// Failing names what the failing checks on a variant are about, each once, in
// the script's order, and stops when it has named most. An undecided check fails, as it
// does in a run.
func (t *Trial) Failing(variant *airframes.Model, most int) []string {
	b := t.bench(variant, everyPart(variant))
	var subjects []string
	for i := range t.checks {
		c := &t.checks[i]
		if len(subjects) >= most {
			break
		}
		if !slices.Contains(subjects, c.subject) && b.tell(c) != phrase.Holds {
			subjects = append(subjects, c.subject)
		}
	}
	return subjects
}

func everyPart(m *airframes.Model) []int {
	all := make([]int, len(m.Setup.Parts))
	for i := range all {
		all[i] = i
	}
	return all
}

// bench is one variant on trial: its outputs at the two poses that were looked at last,
// worked out for the parts that were touched only; for checks of channels, on which no
// part need hang, as a whole.
type bench struct {
	trial      *Trial
	variant    *airframes.Model
	vocabulary *phrase.Vocabulary
	some       mixcore.Some
	outs       [2]*mixcore.Output
	at         [2]int          // poses
	whole      *mixcore.Output // when it is needed
}

func (t *Trial) bench(variant *airframes.Model, touched []int) *bench {
	return &bench{
		trial: t, variant: variant, vocabulary: t.vocabulary.On(variant), some: variant.Plan.Some(touched),
		outs: [2]*mixcore.Output{variant.Plan.NewOutput(), variant.Plan.NewOutput()}, at: [2]int{-1, -1},
	}
}

func (b *bench) tell(c *trialCheck) phrase.Holding {
	if c.outcome.Every != nil {
		return b.vocabulary.Tell(&c.outcome, c.at, nil, nil)
	}
	if len(c.outcome.Subject.Channels) > 0 {
		return b.vocabulary.Tell(&c.outcome, c.at, nil, b.everything(c.now))
	}
	before := b.outs[0]
	if c.before >= 0 {
		before = b.output(0, c.before)
	}
	return b.vocabulary.Tell(&c.outcome, c.at, before, b.output(1, c.now))
}

// output is what the variant does at a pose.
func (b *bench) output(slot, pose int) *mixcore.Output {
	out := b.outs[slot]
	if b.at[slot] == pose {
		return out
	}
	b.at[slot] = pose
	right := &b.trial.right[pose]
	copy(out.Parts, right.Parts)
	copy(out.Channels, right.Channels)
	b.variant.Plan.EvalSome(&b.trial.poses[pose], &b.some, out)
	return out
}

// everything is what all of the variant does at a pose.
func (b *bench) everything(pose int) *mixcore.Output {
	if b.whole == nil {
		b.whole = b.variant.Plan.NewOutput()
	}
	b.variant.Plan.Eval(&b.trial.poses[pose], b.whole)
	return b.whole
}

// Got is what the model does where a check asks, in words.
func (t *Trial) Got(i int) string {
	c := &t.checks[i]
	return t.vocabulary.Judge(&c.outcome, c.at)[0].Got
}
