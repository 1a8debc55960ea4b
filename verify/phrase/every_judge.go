package phrase

import (
	"context"

	"example.com/hingeline/verify/prove"
	"example.com/hingeline/verify/result"
	"example.com/hingeline/verify/wording"
)

// ruling is what came of everything that an outcome needs.
type ruling struct {
	prove.Decision
	need  int  // the one that tells: that fails or is undecided, else the first
	idle  bool // nothing ever moves
	boxes int
	forms int
}

// rule decides everything that an outcome about every position needs. It stops at the
// first need that does not hold.
func (v *Vocabulary) rule(needs []need, quick bool) (r ruling) {
	v.proving.Lock()
	defer v.proving.Unlock()
	if v.prover == nil {
		v.prover = prove.New(v.model.Plan)
	}
	for i := range needs {
		n := &needs[i]
		o := prove.Options{Margins: !quick && !n.idle && n.unit != "", Plain: quick || n.idle}
		if quick {
			o.Boxes = quickBoxes
		}
		d := v.prover.Decide(context.Background(), &n.claim, o)
		r.boxes, r.forms = r.boxes+d.Boxes, r.forms+d.Forms
		timed := r.Timed || d.Timed
		switch {
		case n.idle && d.Answer == prove.Disproved: // it moves
		case n.idle && d.Answer == prove.Proved:
			r.Answer, r.idle = prove.Disproved, true
		case i == 0 || d.Answer != prove.Proved:
			r.Decision, r.need = d, i
		}
		r.Timed = timed
		if r.Answer != prove.Proved {
			break
		}
	}
	return r
}

// quickBoxes is the limit of a search for [Vocabulary.Holds].
const quickBoxes = 5_000

// prove decides an outcome about every position, and says where it fails.
func (v *Vocabulary) prove(o *Outcome, at *Situation) Verdict {
	verdict := Verdict{Part: -1, Channel: -1, Subject: v.Title(o)}
	switch {
	case o.Subject.Model:
	case len(o.Subject.Channels) > 0:
		verdict.Channel = o.Subject.Channels[0]
	default:
		verdict.Part = o.Subject.Parts[0]
	}
	j := judge{Vocabulary: v, o: o, at: *at}
	verdict.Wanted = j.wanted()
	needs := v.needs(o, at)
	r := v.rule(needs, false)
	proof := &result.Proof{
		Claim: v.Title(o) + ": " + verdict.Wanted,
		Over:  wording.Over(v.setup, &needs[r.need].claim, r.States), States: r.States, Forms: r.forms, Boxes: r.boxes,
	}
	if verdict.Part >= 0 {
		proof.Claim = "the " + proof.Claim
	}
	if r.Timed {
		proof.Assumes = append(proof.Assumes, wording.OnceAtRest)
	}
	verdict.Proof = proof
	switch {
	case r.idle:
		proof.Answer = result.Disproved
		verdict.Got = v.neverMoves(o)
	case r.Answer == prove.Proved:
		proof.Answer, verdict.Passed = result.Proved, true
		verdict.Got = v.provedGot(o, &needs[0], &r, proof)
		if r.Pose.Now.Position != nil {
			worst := situationOf(&r.Pose)
			verdict.Worst = &worst
		}
	case r.Answer == prove.Empty:
		proof.Answer, verdict.Got = result.Empty, "the condition never holds"
	case r.Answer == prove.Disproved:
		proof.Answer = result.Disproved
		v.disproved(o, &r, &verdict)
	default:
		proof.Answer, proof.Limit = result.Undecided, prove.UsualBoxes
		verdict.Got = "undecided: " + v.whyUndecided(&r)
	}
	return verdict
}

// disproved says what is seen where an outcome fails.
func (v *Vocabulary) disproved(o *Outcome, r *ruling, verdict *Verdict) {
	pose := r.Pose
	if o.Verb == Rising && !o.Plus { // it was found in the control's plus direction
		pose.Now, pose.Other = pose.Other, pose.Now
	}
	found := situationOf(&pose)
	seen := v.seenAt(o, found)
	verdict.Found, verdict.Got, verdict.Explain = &found, seen.got, seen.explain
	verdict.Proof.Counter = wording.Counter(v.setup, &pose)
	verdict.Proof.Counter.Got = seen.got
}

// situationOf is the position or movement of a decision.
func situationOf(p *prove.Pose) Situation {
	s := Situation{Now: Pose{Position: p.Now.Position, Lost: p.Now.SignalLost, held: p.Now.Position}}
	if p.Other.Position != nil {
		s.Before = Pose{Position: p.Other.Position, Lost: p.Other.SignalLost, held: p.Other.Position}
		s.Moved = true
	}
	return s
}
