package phrase

import (
	"math"
	"strconv"
	"strings"

	"example.com/hingeline/mixcore"
	"example.com/hingeline/verify/prove"
	"example.com/hingeline/verify/result"
	"example.com/hingeline/verify/wording"
)

// wantedEverywhere is what an outcome about every position asks, in the words of
// reports.
func (j *judge) wantedEverywhere(plain string) string {
	o := j.o
	switch {
	case o.Verb == Rising:
		return "never " + moveWanted[opposite[o.Way]] + " as the " + j.setup.Controls[o.Control].Name + " moves " + j.along(o)
	case o.Verb == DependsOn:
		return "depends on nothing but " + j.theControls(o.On)
	case o.Not:
		return "never " + plain
	}
	return "at every position: " + plain
}

// opposite is the other way of each pair.
var opposite = map[Way]Way{Down: Up, Up: Down, Left: Right, Right: Left, Faster: Slower, Slower: Faster, Out: In, In: Out}

// along is the way that the control of a Rising moves.
func (v *Vocabulary) along(o *Outcome) string {
	c := &v.setup.Controls[o.Control]
	switch {
	case c.Kind == mixcore.LeverControl:
		return "further"
	case o.Plus:
		return axisSides[c.Axis][0]
	}
	return axisSides[c.Axis][1]
}

func (v *Vocabulary) theControls(indices []int) string {
	names := make([]string, len(indices))
	for i, index := range indices {
		names[i] = "the " + v.setup.Controls[index].Name
	}
	return wording.Listed(names)
}

// provedGot says what a proof covers and what there is to spare.
func (v *Vocabulary) provedGot(o *Outcome, n *need, r *ruling, proof *result.Proof) string {
	got := "proved over " + proof.Over
	if n.unit == "" || math.IsInf(r.Margin, 0) || math.IsInf(r.AtLeast, 0) || math.IsNaN(r.Margin) {
		return got
	}
	d := r.Decision
	d.Margin, d.AtLeast = d.Margin*n.per, d.AtLeast*n.per
	spare, least := wording.ToSpare(d.Margin, n.unit), "at the least "
	if spare == wording.ToSpare(0, n.unit) {
		least = ""
	}
	if o.Verb == Still || o.Verb == DependsOn {
		spare, least = v.movesAtMost(o, d.Margin), ""
	}
	proof.Margin = wording.Margin(v.setup, &d, spare, n.unit)
	switch {
	case spare == motionless:
		return got + "; " + spare
	case len(proof.Margin.Pose) > 0:
		return got + "; " + least + spare + ", with " + strings.Join(proof.Margin.Pose, ", ")
	}
	return got + "; " + least + spare + ", with everything at rest"
}

// motionless is said of a part that stays exactly where it is.
const motionless = "it does not move at all"

// movesAtMost is how far a part moves that counts as still.
func (v *Vocabulary) movesAtMost(o *Outcome, margin float64) string {
	p := &v.setup.Parts[o.Subject.Parts[0]]
	by := v.still(p) - margin
	switch {
	case by < Rounding:
		return motionless
	case p.Motion.Hinged():
		return "it moves " + wording.AngleBeside(mixcore.Degrees(by), 0) + " at most"
	}
	return "it moves " + wording.PercentBeside(mixcore.Percent(by), 0) + " at most"
}

// neverMoves is said of a comparison in which nothing ever moves, and of a part that
// does not answer the control.
func (v *Vocabulary) neverMoves(o *Outcome) string {
	switch o.Verb {
	case Rising:
		return "does not answer the " + v.setup.Controls[o.Control].Name + " at all"
	case LessThan:
		return "the " + v.setup.Parts[o.Other].Name + " moves nowhere: nothing to compare"
	}
	return "moves nowhere: nothing to compare"
}

func (v *Vocabulary) whyUndecided(r *ruling) string {
	if r.Close {
		return "it stands so exactly at its bound that rounding decides"
	}
	return "the search stopped at its limit of " + strconv.Itoa(prove.UsualBoxes) + " boxes"
}

// seenAt is what is seen where an outcome about every position fails.
func (v *Vocabulary) seenAt(o *Outcome, at Situation) seen {
	j := v.judgeHere(o, at)
	j.instants = j.instants[:1]
	out := j.instants[0].out
	switch {
	case o.Subject.Model:
		return j.turns(out)
	case len(o.Subject.Channels) > 0:
		_, got := j.channel(&out.Channels[o.Subject.Channels[0]])
		return seen{got: got}
	}
	part := o.Subject.Parts[0]
	p, to := &v.setup.Parts[part], out.Parts[part]
	switch {
	case o.Verb == StaysStopped && !at.Moved:
		return seen{got: j.standsWords(p, to)}
	case o.Verb == Rising:
		c := &v.setup.Controls[o.Control]
		return seen{got: v.movementExactly(p, j.before.Parts[part], to) + " as the " + c.Name + " moves from " +
			wording.Stand(c, at.Before.Position[o.Control]) + " to " + wording.Stand(c, at.Now.Position[o.Control])}
	case o.Verb == DependsOn:
		return seen{got: v.movementExactly(p, j.before.Parts[part], to) + ", though " + v.stays(o.On)}
	}
	_, got := j.part(part, out)
	return seen{got: got}
}

// movementExactly says a movement, however small.
func (v *Vocabulary) movementExactly(p *mixcore.Part, from, to mixcore.PartOutput) string {
	return wording.Movement(p, from, to, wording.NeutralBelow)
}

func (v *Vocabulary) stays(controls []int) string {
	verb := " stays where it is"
	if len(controls) > 1 {
		verb = " stay where they are"
	}
	return v.theControls(controls) + verb
}
