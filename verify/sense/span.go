package sense

import (
	"math"

	"example.com/hingeline/mixcore"
	"example.com/hingeline/verify/phrase"
)

// span is the values from low to high, both included.
type span struct{ low, high float64 }

// hair is what arithmetic in binary may add to or take from a bound.
const hair = 1e-6

func (a span) overlaps(b span) bool { return a.low <= b.high+hair && b.low <= a.high+hair }

// overlap is true if some value is in both.
func overlap(a, b []span) bool {
	for _, x := range a {
		for _, y := range b {
			if x.overlaps(y) {
				return true
			}
		}
	}
	return false
}

// spanOf is the amounts that an amount allows, in its own unit.
func spanOf(a *phrase.Amount) span {
	s := span{math.Inf(-1), math.Inf(1)}
	switch a.Kind {
	case phrase.About:
		s = span{a.Value - a.Slack, a.Value + a.Slack}
	case phrase.AtLeast, phrase.Over:
		s.low = a.Value
	case phrase.AtMost, phrase.Under:
		s.high = a.Value
	case phrase.Between:
		s = span{a.Low, a.High}
	}
	return s
}

// inDegrees is spanOf, with millimetres along the trailing edge as degrees.
func inDegrees(p *mixcore.Part, a *phrase.Amount) span {
	s := spanOf(a)
	if a.Unit != "mm" {
		return s
	}
	degrees := func(mm float64) float64 {
		half := mm / (2 * float64(p.Chord)) // mixcore.ChordTravel the other way round
		switch {
		case half <= 0:
			return 0
		case half >= 1:
			return math.Inf(1)
		}
		return 360 / math.Pi * math.Asin(half)
	}
	return span{degrees(s.low), degrees(s.high)}
}

// still is what does not count as a movement of a part, either way, in degrees or
// percent.
func (l *looker) still(p *mixcore.Part) float64 { return l.m.StillOf(p) }

// quiet is the movements that count as none: clearly less than still.
func (l *looker) quiet(p *mixcore.Part) span {
	within := l.still(p) - 3*hair
	return span{-within, within}
}

// astir is the movements that count, either way.
func (l *looker) astir(p *mixcore.Part) []span {
	return []span{{math.Inf(-1), -l.still(p)}, {l.still(p), math.Inf(1)}}
}

// towards is the movements, or places off neutral, that go one way by an amount.
func (l *looker) towards(p *mixcore.Part, way phrase.Way, a *phrase.Amount) span {
	s := inDegrees(p, a)
	s.low = max(s.low, l.still(p))
	if way == phrase.WayOf(p.Motion, true) {
		return s
	}
	return span{-s.high, -s.low}
}
