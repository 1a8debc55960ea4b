package script

import (
	"fmt"

	"example.com/hingeline/airframes/diag"
	"example.com/hingeline/mixcore"
	"example.com/hingeline/verify/phrase"
)

// The most that a script may hold. A hand writes far less; a machine that
// writes more is refused at once instead of being worked on for minutes.
const (
	maxBytes  = 1 << 20 // of one file
	maxLines  = 10000   // of one file
	maxLine   = 4096    // bytes of one line
	maxSteps  = 20000   // steps of all scenarios of a run, outlines and backgrounds written out
	maxChecks = 20000   // checks of a run: of a group, one for each of its parts

	maxProofs = 2000 // checks of a run about every position

	// maxFollowed is how much time all checks of a run may take together, as it
	// passes on the model, where they follow a movement on its way. A model of more
	// than usualSize counts for as many times as it is bigger.
	maxFollowed mixcore.Seconds = 5000
)

// usualSize is how many mix lines, servos and phases a model may have together before it
// counts as a big one.
const usualSize = 200

// checkSize says whether the scenarios of all files are few enough to compile.
func (c *compiler) checkSize(documents []*document) bool {
	total := 0
	for _, d := range documents {
		total += d.steps()
		if total > maxSteps {
			c.tooBig(d, fmt.Sprintf("the scenarios come to more than %d steps, outlines written out", maxSteps))
			return false
		}
	}
	return true
}

// checkWork says whether the checks so far are few enough to run.
func (c *compiler) checkWork(d *document) bool {
	switch {
	case c.checked > maxChecks:
		c.tooBig(d, fmt.Sprintf("the sentences come to more than %d checks, groups and outlines written out", maxChecks))
	case c.proofs > maxProofs:
		c.tooBig(d, fmt.Sprintf("the sentences come to more than %d checks about every position", maxProofs))
	case c.followed > maxFollowed:
		c.tooBig(d, fmt.Sprintf("the sentences about time and about what stays still follow the model for more than %v s together, or less of a big model", maxFollowed))
	default:
		return true
	}
	return false
}

func (c *compiler) tooBig(d *document, message string) {
	c.report(diag.Problem{Place: diag.Place{File: d.name}, Code: codeTooBig, Message: message,
		Hint: "split the script, or run fewer scripts at once"})
}

// count adds one check to the work of the run.
func (c *compiler) count(o *phrase.Outcome, at phrase.Situation) {
	c.checked++
	if o.Every != nil {
		c.proofs++
		return
	}
	if !at.Moved {
		return
	}
	onTheWay := o.Clock == phrase.Within || o.Verb == phrase.Still || o.Verb == phrase.StaysStopped
	if o.Clock == phrase.AtRest && !onTheWay {
		return
	}
	before, now := at.Before.Input(), at.Now.Input()
	if o.Clock == phrase.AtRest && onTheWay && c.model.Plan.Steady(o.Subject.Parts[0], &before, &now) {
		return // it is not followed
	}
	settled := settling(c.model.Plan, at)
	if !onTheWay {
		settled = min(o.Time, settled)
	}
	c.followed += settled * max(1, mixcore.Seconds(size(&c.model.Setup))/usualSize)
}

// size is how much there is to work out at each moment of a movement.
func size(s *mixcore.Setup) int {
	n := len(s.Phases)
	for i := range s.Channels {
		n += len(s.Channels[i].Mix)
	}
	for i := range s.Parts {
		n += len(s.Parts[i].Drives)
	}
	return n
}

// widest is the widest that the end points of a channel make its output, in
// percent of what they are given.
const widest = 150

// settling is a time after which everything on a model has come to rest from a
// movement, or a little more.
func settling(plan *mixcore.Plan, at phrase.Situation) mixcore.Seconds {
	setup, from, to := plan.Setup(), plan.NewOutput(), plan.NewOutput()
	before, now := at.Before.Input(), at.Now.Input()
	plan.Eval(&before, from)
	plan.Eval(&now, to)
	var fade, slow, servo mixcore.Seconds
	for i := range setup.Phases {
		fade = max(fade, setup.Phases[i].Fade)
	}
	for i := range setup.Channels {
		c := &setup.Channels[i]
		limited := func(sum mixcore.Percent) mixcore.Percent { return min(max(sum, -c.Limit), c.Limit) }
		travel := max(limited(from.Channels[i].Sum), limited(to.Channels[i].Sum)) - min(limited(from.Channels[i].Sum), limited(to.Channels[i].Sum))
		if fade > 0 {
			travel = 2 * c.Limit // a fade may lead it anywhere on its way
		}
		slow = max(slow, c.Slow*mixcore.Seconds(travel/100))
	}
	for i := range setup.Parts {
		for _, d := range setup.Parts[i].Drives {
			travel := from.Channels[d.Channel].Output - to.Channels[d.Channel].Output
			if fade > 0 {
				travel = 2 * widest
			}
			swing := d.Servo.Swing * mixcore.Degrees(max(travel, -travel)/100)
			servo = max(servo, d.Servo.SecondsPer60Deg*mixcore.Seconds(swing/60))
		}
	}
	return min(fade+slow+servo, phrase.LongestTime)
}
