package script

import (
	"cmp"
	"slices"

	"example.com/hingeline/mixcore"
	"example.com/hingeline/verify/phrase"
	"example.com/hingeline/verify/result"
)

// stageTags are the tags that put a scenario's checks at a stage of the
// walk-around, whatever they are about. Of several the last one counts: a
// scenario's own over its feature's.
var stageTags = map[string]result.Stage{
	"@before-power":   result.BeforePower,
	"@port-wing":      result.PortWing,
	"@tail":           result.Tail,
	"@starboard-wing": result.StarboardWing,
	"@motor":          result.MotorAndSignal,
}

// stage is where on the walk-around a check belongs.
func (c *compiler) stage(o *phrase.Outcome, at phrase.Situation, tags []string) result.Stage {
	for _, tag := range slices.Backward(tags) {
		if stage, ok := stageTags[tag]; ok {
			return stage
		}
	}
	setup := &c.model.Setup
	part := partOf(setup, o)
	switch {
	case o.Subject.Model && !at.Now.Lost && !(at.Moved && at.Before.Lost):
		return modelStage(o)
	case at.Now.Lost, at.Moved && at.Before.Lost, part != nil && part.Motion == mixcore.Power:
		return result.MotorAndSignal
	case !at.Moved && o.Every == nil && at.Now.Same(phrase.RestPose(setup)), part == nil:
		return result.BeforePower
	}
	return PartStage(part)
}

// modelStage is where an outcome about the model belongs: where the last of the
// parts stands that make it so. A roll is both wings' doing, and the starboard
// one is reached last.
func modelStage(o *phrase.Outcome) result.Stage {
	if o.Axis == mixcore.Pitch || o.Axis == mixcore.Yaw {
		return result.Tail
	}
	return result.StarboardWing
}

// partOf is the part that an outcome is about, of several together the last, or
// the first that its channel moves; nil if there is none.
func partOf(setup *mixcore.Setup, o *phrase.Outcome) *mixcore.Part {
	if n := len(o.Subject.Parts); n > 0 {
		return &setup.Parts[o.Subject.Parts[n-1]]
	}
	if o.Subject.Model {
		return nil
	}
	for i := range setup.Parts {
		for _, drive := range setup.Parts[i].Drives {
			if drive.Channel == o.Subject.Channels[0] {
				return &setup.Parts[i]
			}
		}
	}
	return nil
}

// PartStage is the stage of the walk-around at which a part is looked at:
// motors last, then what is at the tail or nose, then by its side. What is in
// the middle of the wing is met first.
func PartStage(p *mixcore.Part) result.Stage {
	info, _ := p.Kind.Info()
	switch {
	case p.Motion == mixcore.Power:
		return result.MotorAndSignal
	case info.Tail, p.Kind == "canard":
		return result.Tail
	case p.Side == mixcore.Starboard:
		return result.StarboardWing
	}
	return result.PortWing
}

// PartOrder are the parts in the order in which one meets them on the way round the model:
// the first is number 1 wherever parts have numbers.
func PartOrder(s *mixcore.Setup) []int {
	order := make([]int, len(s.Parts))
	for i := range order {
		order[i] = i
	}
	stage := func(i int) int { return slices.Index(result.Stages, PartStage(&s.Parts[i])) }
	slices.SortStableFunc(order, func(a, b int) int { return cmp.Compare(stage(a), stage(b)) })
	return order
}
