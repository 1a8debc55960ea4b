package mistake

import (
	"fmt"
	"slices"

	"example.com/hingeline/airframes/diag"
	"example.com/hingeline/mixcore"
	"example.com/hingeline/verify/chain/where"
	"example.com/hingeline/verify/wording"
)

// spot is one condition that a set-up has, where it can be got at.
type spot struct {
	of     string // what it is the condition of: "the share of camber on channel 3 (port flap)"
	place  diag.Place
	motor  bool // of a mix line of a motor's channel
	phases int  // how many phases it may name: the first ones
	is     *mixcore.Condition
	put    func(*mixcore.Setup, *mixcore.Condition)
}

// spots are all conditions: of phases, rates and mix lines.
func (l *lister) spots() []spot {
	var list []spot
	for i := range l.s.Phases {
		p := &l.s.Phases[i]
		list = append(list, spot{"the phase " + p.Name, where.Phase(l.m, i), false, i, &p.When,
			func(s *mixcore.Setup, c *mixcore.Condition) { s.Phases[i].When = *c }})
	}
	l.eachRate(func(demand, rate int, d *mixcore.Demand, r *mixcore.Rate) {
		if r.When != nil {
			list = append(list, spot{rateName(d, rate), where.Rate(l.m, demand, rate, "when"), false, len(l.s.Phases), r.When,
				func(s *mixcore.Setup, c *mixcore.Condition) { s.Demands[demand].Rates[rate].When = c }})
		}
	})
	l.eachLine(func(channel, line int, m *mixcore.MixLine) {
		if m.When != nil {
			list = append(list, spot{l.line(channel, line), l.lineAt(channel, line, "when"), l.isMotors(channel), len(l.s.Phases), m.When,
				func(s *mixcore.Setup, c *mixcore.Condition) { s.Channels[channel].Mix[line].When = c }})
		}
	})
	return list
}

// isMotors says whether a channel drives a motor.
func (l *lister) isMotors(channel int) bool {
	motor := false
	l.eachDrive(func(_, _ int, p *mixcore.Part, d *mixcore.Drive) {
		motor = motor || d.Channel == channel && p.Motion == mixcore.Power
	})
	return motor
}

// change adds a mistake in a condition.
func (l *lister) change(at *spot, text, change string, to mixcore.Condition) {
	l.add(words{text, change, "put back the condition of " + at.of}, at.place, func(s *mixcore.Setup) { at.put(s, &to) })
}

func inverted(c *mixcore.Condition) mixcore.Condition {
	if c.Op == mixcore.Not {
		return c.Args[0]
	}
	return mixcore.Condition{Op: mixcore.Not, Args: []mixcore.Condition{*c}}
}

func invertedConditions(l *lister) {
	for _, at := range l.spots() {
		if !at.motor {
			l.change(&at, "the condition of "+at.of+" is inverted", "invert the condition of "+at.of, inverted(at.is))
		}
	}
}

func invertedSafeties(l *lister) {
	for _, at := range l.spots() {
		if at.motor {
			l.change(&at, "the condition of "+at.of+" is inverted", "invert the condition of "+at.of, inverted(at.is))
		}
	}
}

func unconditionalLines(l *lister) {
	l.eachLine(func(channel, line int, m *mixcore.MixLine) {
		if m.When == nil {
			return
		}
		name := l.line(channel, line)
		when := wording.Condition(l.s, m.When)
		l.addLine(channel, line, words{
			name + " is in force always",
			"take the condition off " + name,
			"let " + name + " be in force only when " + when,
		}, "when", func(m *mixcore.MixLine) { m.When = nil })
	})
}

// eachInside visits every condition inside another one, with what the whole is when
// that one is put in its place.
func eachInside(c *mixcore.Condition, visit func(inner *mixcore.Condition, with func(mixcore.Condition) mixcore.Condition)) {
	var down func(c *mixcore.Condition, with func(mixcore.Condition) mixcore.Condition)
	down = func(c *mixcore.Condition, with func(mixcore.Condition) mixcore.Condition) {
		visit(c, with)
		for i := range c.Args {
			down(&c.Args[i], func(inner mixcore.Condition) mixcore.Condition {
				changed := *c
				changed.Args = slices.Clone(c.Args)
				changed.Args[i] = inner
				return with(changed)
			})
		}
	}
	down(c, func(whole mixcore.Condition) mixcore.Condition { return whole })
}

func wrongParts(l *lister) {
	for _, at := range l.spots() {
		eachInside(at.is, func(inner *mixcore.Condition, with func(mixcore.Condition) mixcore.Condition) {
			said := wording.Condition(l.s, inner)
			switch inner.Op {
			case mixcore.And, mixcore.Or:
				to, word, instead := *inner, "or", "and"
				to.Op = mixcore.Or
				if inner.Op == mixcore.Or {
					to.Op, word, instead = mixcore.And, "and", "or"
				}
				whole := with(to)
				l.change(&at, fmt.Sprintf("the condition of %s has %q instead of %q", at.of, word, instead),
					fmt.Sprintf("make the condition of %s %q", at.of, wording.Condition(l.s, &whole)), whole)
			case mixcore.Not:
			default:
				if inner != at.is && !(at.is.Op == mixcore.Not && inner == &at.is.Args[0]) {
					l.change(&at, fmt.Sprintf("in the condition of %s, %q is inverted", at.of, said),
						fmt.Sprintf("in the condition of %s, invert %q", at.of, said), with(inverted(inner)))
				}
			}
		})
	}
}

// wrongPositions puts each test of a switch to another position of it, each test of one
// detent to another detent, and each phase to another phase that may stand there.
func wrongPositions(l *lister) {
	for _, at := range l.spots() {
		eachInside(at.is, func(inner *mixcore.Condition, with func(mixcore.Condition) mixcore.Condition) {
			put := func(to mixcore.Condition) {
				l.change(&at, fmt.Sprintf("the condition of %s asks for %q instead of %q", at.of, wording.Condition(l.s, &to), wording.Condition(l.s, inner)),
					fmt.Sprintf("in the condition of %s, ask for %q", at.of, wording.Condition(l.s, &to)), with(to))
			}
			switch inner.Op {
			case mixcore.AtPosition:
				for i := range l.s.Controls[inner.Control].Positions {
					if i != inner.Position {
						to := *inner
						to.Position = i
						put(to)
					}
				}
			case mixcore.InPhase:
				for i := range l.s.Phases[:at.phases] {
					if i != inner.Phase {
						to := *inner
						to.Phase = i
						put(to)
					}
				}
			case mixcore.Within:
				l.otherDetents(inner, put)
			}
		})
	}
}

// otherDetents are the tests of the other detents of a lever, if the test is of one.
func (l *lister) otherDetents(c *mixcore.Condition, put func(mixcore.Condition)) {
	detents := l.s.Controls[c.Control].Detents
	is := slices.IndexFunc(detents, func(d mixcore.Detent) bool {
		low, high := d.Stretch()
		return c.Low >= low && c.High <= high
	})
	if is < 0 {
		return
	}
	for i, d := range detents {
		if i != is {
			to := *c
			to.Low, to.High = c.Low+d.At-detents[is].At, c.High+d.At-detents[is].At
			put(to)
		}
	}
}

func missingFades(l *lister) {
	for i := range l.s.Phases {
		p := &l.s.Phases[i]
		if p.Fade == 0 {
			continue
		}
		l.add(words{
			"the phase " + p.Name + " comes and goes at once",
			"let the phase " + p.Name + " come and go at once",
			fmt.Sprintf("let the phase %s take %s to come and go", p.Name, wording.Time(p.Fade)),
		}, where.Phase(l.m, i), func(s *mixcore.Setup) { s.Phases[i].Fade = 0 })
	}
}
