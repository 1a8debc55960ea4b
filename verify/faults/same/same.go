// Package same decides whether a set-up with a mistake does the same as without it: at
// every position of every control, with and without a signal, once all is at rest. What
// it proves the same is invisible by nature; for the rest it gives a pose to see it at.
//
// It never judges which of the two is right. Start at [Decide].
package same

import (
	"context"
	"math"

	"example.com/hingeline/mixcore"
	"example.com/hingeline/verify/beside"
	"example.com/hingeline/verify/prove"
)

// Answer is what was decided.
type Answer uint8

// The answers.
const (
	Undecided Answer = iota // the search reached its limit, or was stopped
	Same                    // nowhere further apart than what counts
	Different               // at Pose
)

// Decision is the answer, and what it rests on.
type Decision struct {
	Answer Answer
	Exact  bool          // of Same: nowhere apart at all
	Part   int           // of Different and Undecided: which part
	Pose   mixcore.Input // of Different: as few controls off rest as were found
	By     float64       // of Different: how far apart there, degrees or percent, by both plans
	Boxes  int           // what the proofs cost
}

// Options say what counts and how long to search.
type Options struct {
	Still func(part int) float64 // up to which two places count as the same, degrees or percent
	Boxes int                    // most boxes of a proof; 0 is prove.UsualBoxes
}

// Decide compares the parts that were touched in two plans of the same controls, parts
// and channels. A pose is looked for among those of one and two moved controls first,
// where people would look; only where that finds nothing is it proved.
func Decide(ctx context.Context, model, variant *mixcore.Plan, touched []int, o Options) Decision {
	seen := sample(model, variant, touched, o.Still)
	if seen.best.Answer == Different {
		return seen.best
	}
	d := Decision{Answer: Same, Exact: true}
	for _, part := range touched {
		exact, answer := decidePart(ctx, model, variant, part, seen.apart[part], o, &d)
		d.Exact = d.Exact && exact
		if answer != Same {
			d.Answer, d.Part = answer, part
			return d
		}
	}
	return d
}

// exactBoxes is the limit of the proof that nothing at all changes: where it is reached, a
// little may, which is another proof.
const exactBoxes = 200

// decidePart proves that one part is at the same place in both, or finds where it is not.
func decidePart(ctx context.Context, model, variant *mixcore.Plan, part int, apart bool, o Options, d *Decision) (exact bool, answer Answer) {
	halves := beside.Halves{Was: model.Setup(), Is: variant.Setup(), Controls: beside.Same(model.Setup())}
	both, same := halves.Parts(part, part)
	if same {
		return true, Same
	}
	plan, faults := mixcore.Compile(both)
	if faults != nil { // each half was compiled before
		return false, Undecided
	}
	p := prove.New(plan)
	exact = !apart
	for _, lost := range []bool{false, true} {
		if lost && !losesAnything(&both) {
			continue
		}
		claim := prove.Claim{Now: prove.Everywhere(&both), Other: prove.Beside(&both), Lost: lost, OtherLost: lost}
		within := func(most float64, boxes int) prove.Decision {
			claim.Want = prove.Differ{A: 0, B: 1, Sign: 1, Low: -most, High: most}
			decision := p.Decide(ctx, &claim, prove.Options{Boxes: boxes, Plain: true})
			d.Boxes += decision.Boxes
			return decision
		}
		if exact && within(prove.Rounding, exactBoxes).Answer == prove.Proved {
			continue
		}
		exact = false
		switch decision := within(o.Still(part), o.Boxes); decision.Answer {
		case prove.Proved:
		case prove.Disproved:
			d.Pose = plainer(model, variant, part, decision.Pose.Now, o.Still(part))
			if d.By = difference(model, variant, part, &d.Pose); d.By > o.Still(part) {
				return false, Different
			}
			return false, Undecided // the two halves side by side are not the two plans
		default:
			return false, Undecided
		}
	}
	return exact, Same
}

// losesAnything says whether a lost signal can matter: where every channel holds, the
// parts stay where they were.
func losesAnything(s *mixcore.Setup) bool {
	for i := range s.Channels {
		if !s.Channels[i].Failsafe.Hold {
			return true
		}
	}
	return false
}

// difference is how far a part of one plan is from where it is in another.
func difference(model, variant *mixcore.Plan, part int, in *mixcore.Input) float64 {
	a, b := model.NewOutput(), variant.NewOutput()
	model.Eval(in, a)
	variant.Eval(in, b)
	return math.Abs(b.Parts[part].Place() - a.Parts[part].Place())
}

// plainer brings one control after another to rest, or else to an end, while the
// difference stays.
func plainer(model, variant *mixcore.Plan, part int, in mixcore.Input, still float64) mixcore.Input {
	in = in.Clone()
	rest := model.Rest()
	for i := range in.Position {
		was := in.Position[i]
		low, high := model.Setup().Controls[i].Range()
		for _, at := range []float64{rest.Position[i], high, low, was} {
			in.Position[i] = at
			if at == was || difference(model, variant, part, &in) > still {
				break
			}
		}
	}
	return in
}

// Reason says why a mistake that changes nothing that counts cannot be seen.
func (d *Decision) Reason() string {
	if d.Exact {
		return "it changes nothing, wherever every control stands"
	}
	return "it moves nothing by more than what counts as still, wherever every control stands"
}
