package sense

import (
	"example.com/hingeline/verify/phrase"
	"example.com/hingeline/verify/result"
)

// suspicious finds the sentences that fight the aeroplane.
func (l *looker) suspicious() {
	for i := range l.asked {
		a := &l.asked[i]
		if a.Check < 0 {
			continue
		}
		if f, ok := l.fights(a); ok {
			f.Hint = "write " + quoted(f.Right) + ", or end the sentence with " + quoted("on purpose")
			f.OnPurpose, f.Fails = a.Outcome.OnPurpose, !a.Outcome.OnPurpose
			l.add(f)
		}
	}
}

// fights says why an outcome fights the aeroplane, if it does.
func (l *looker) fights(a *phrase.Asked) (result.ScriptFinding, bool) {
	o := &a.Outcome
	switch {
	case o.Every != nil:
		return l.everyFights(a)
	case o.Verb == phrase.Turn:
		return l.turnFights(a)
	case len(o.Subject.Parts) != 1 || o.Subject.Servos:
		return result.ScriptFinding{}, false
	case o.Verb == phrase.Together, o.Verb == phrase.Opposite:
		return l.pairFights(a)
	}
	if way := movedWay(o); way != phrase.NoWay {
		if c, ok := l.movedCue(a); ok {
			return l.partFights(a, c, way)
		}
		return l.leverFights(a, way)
	}
	if c, ok := l.stoodCue(&a.At.Now); ok {
		if in := l.centred(&a.At.Now); l.standsFromNeutral(a, &in) {
			return l.partFights(a, c, o.Way)
		}
	}
	if before := a.At.Before.Input(); a.At.Moved && l.standsFromNeutral(a, &before) {
		return l.leverFights(a, o.Way)
	}
	return result.ScriptFinding{}, false
}

// helps is the way in which a part helps what the hand asks; NoWay if it is not
// there for it.
func (l *looker) helps(part int, c cue) phrase.Way {
	turns := l.air.Duty(part, c.axis)
	if turns == 0 {
		return phrase.NoWay
	}
	return phrase.WayOf(l.s.Parts[part].Motion, turns > 0 == c.plus)
}

func (l *looker) partFights(a *phrase.Asked, c cue, way phrase.Way) (result.ScriptFinding, bool) {
	part := a.Outcome.Subject.Parts[0]
	right := l.helps(part, c)
	if right == phrase.NoWay || right == way {
		return result.ScriptFinding{}, false
	}
	p := &l.s.Parts[part]
	f := about(a, codeSuspicious,
		"the "+p.Name+" "+doesWords[way]+" as "+l.words(c)+": that fights the aeroplane",
		l.pushes(part, way, c)+"; "+l.should(c), "")
	f.Picture = l.picture(part, way, c)
	f.Right = "the " + p.Name + " " + doesWords[right]
	if a.Outcome.Verb == phrase.Stand {
		f.Right = "the " + p.Name + " is " + isWords[right]
	}
	return f, true
}

// turnFights is for "the model rolls left" with the stick to the right.
func (l *looker) turnFights(a *phrase.Asked) (result.ScriptFinding, bool) {
	c, ok := l.movedCue(a)
	plus := a.Outcome.Way == phrase.Right || a.Outcome.Way == phrase.Up
	if !ok || a.Outcome.Axis != c.axis || plus == c.plus {
		return result.ScriptFinding{}, false
	}
	f := about(a, codeSuspicious,
		"the model "+turnVerb(c.axis)+" "+turnSide(c.axis, plus)+" as "+l.words(c)+": that fights the aeroplane",
		l.should(c), "")
	f.Picture = turnPicture(c.axis, plus)
	f.Right = "the model " + turnVerb(c.axis) + " " + turnSide(c.axis, c.plus)
	return f, true
}

// pairFights is for two parts that are both there for what the hand asks: whether
// they have to move together or opposite ways is known.
func (l *looker) pairFights(a *phrase.Asked) (result.ScriptFinding, bool) {
	c, ok := l.movedCue(a)
	if !ok {
		return result.ScriptFinding{}, false
	}
	part, other := a.Outcome.Subject.Parts[0], a.Outcome.Other
	way, otherWay := l.helps(part, c), l.helps(other, c)
	together := a.Outcome.Verb == phrase.Together
	if way == phrase.NoWay || otherWay == phrase.NoWay || together == (way == otherWay) {
		return result.ScriptFinding{}, false
	}
	p, q := &l.s.Parts[part], &l.s.Parts[other]
	verb, right := "moves together with", "moves opposite to"
	if !together {
		verb, right = right, verb
	}
	f := about(a, codeSuspicious,
		"the "+p.Name+" "+verb+" the "+q.Name+" as "+l.words(c)+": one of the two fights the aeroplane",
		"for that the "+p.Name+" "+doesWords[way]+" and the "+q.Name+" "+doesWords[otherWay]+"; "+l.should(c), "")
	f.Right = "the " + p.Name + " " + right + " the " + q.Name
	return f, true
}
