package cause

import (
	"context"
	"math"
	"slices"

	"example.com/hingeline/airframes"
	"example.com/hingeline/verify/laws"
	"example.com/hingeline/verify/prove"
)

// holding is which claims of the laws hold on a model: those that a change of it must
// keep.
type holding struct {
	ctx   context.Context
	asked []question
	held  map[string]bool // by sentence: holds on the model
	boxes int             // looked at for all changes so far
}

// Limits of what the laws may cost, in boxes. A change about which a claim needs more
// than boxesForLaw is not offered: undecided is not held. Once mostBoxes were looked at,
// for all changes together, no further change is tried.
const (
	boxesFirst  = 200 // what is plainly broken shows within these
	boxesForLaw = 5_000
	mostBoxes   = 60_000
)

func newHolding(ctx context.Context, m *airframes.Model) *holding {
	h := &holding{ctx: ctx, asked: questions(m), held: map[string]bool{}}
	p := prove.New(m.Plan)
	for i := range h.asked {
		h.held[h.asked[i].sentence] = h.decide(p, &h.asked[i], boxesForLaw) == prove.Proved
	}
	h.boxes = 0
	return h
}

// spent says whether no further change may be tried.
func (h *holding) spent() bool { return h.boxes >= mostBoxes }

// question is one sentence of a law, with all that it needs.
type question struct {
	sentence, law string
	needs         []*prove.Claim
}

func questions(m *airframes.Model) (list []question) {
	at := map[string]int{}
	claims := laws.Claims(m)
	for i := range claims {
		c := &claims[i]
		n, ok := at[c.Sentence]
		if !ok {
			n = len(list)
			at[c.Sentence] = n
			list = append(list, question{sentence: c.Sentence, law: c.Law})
		}
		list[n].needs = append(list[n].needs, &c.Claim)
	}
	return list
}

// decide is proved, as with the laws, if everything is that a sentence needs, or if some
// is and the rest has no position at which it would have to hold.
func (h *holding) decide(p *prove.Prover, q *question, boxes int) prove.Answer {
	answer := prove.Empty
	for _, c := range q.needs {
		d := p.Decide(h.ctx, c, prove.Options{Boxes: boxes, Plain: true})
		h.boxes += d.Boxes
		switch {
		case d.Answer == prove.Disproved:
			return prove.Disproved
		case d.Answer == prove.Undecided:
			answer = prove.Undecided
		case d.Answer == prove.Proved && answer == prove.Empty:
			answer = prove.Proved
		}
	}
	return answer
}

// ownTerms are the laws whose claims repeat what the set-up itself says, its throws and
// what a stick moves at every position: after a change they may be others. What any other
// law claimed and found must hold after a change even where the law would no longer ask:
// it does not ask which way a rudder goes that no stick moves.
var ownTerms = map[string]bool{"rates": true, "rate-order": true, "trims": true}

// broken is the number of failing claims of a change that breaks one which held.
const broken = math.MaxInt

// kept is how many claims hold with a change and how many do not; the latter is broken
// where one that held without it does not.
func (h *holding) kept(repaired *airframes.Model) (claims, failing int) {
	p := prove.New(repaired.Plan)
	asked := questions(repaired)
	all := slices.Clone(asked)
	for _, q := range h.asked {
		again := slices.ContainsFunc(asked, func(other question) bool { return other.sentence == q.sentence })
		if !again && h.held[q.sentence] && !ownTerms[q.law] {
			all = append(all, q)
		}
	}
	answers := make([]prove.Answer, len(all))
	for _, boxes := range []int{boxesFirst, boxesForLaw} {
		for i := range all {
			if answers[i] != prove.Undecided {
				continue
			}
			answers[i] = h.decide(p, &all[i], boxes)
			mayStillHold := answers[i] == prove.Undecided && boxes < boxesForLaw
			if answers[i] != prove.Proved && h.held[all[i].sentence] && !mayStillHold {
				return 0, broken
			}
		}
	}
	for i := range asked {
		if answers[i] == prove.Proved {
			claims++
		} else {
			failing++
		}
	}
	return claims, failing
}
