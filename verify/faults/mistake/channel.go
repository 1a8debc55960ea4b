package mistake

import (
	"fmt"
	"math"

	"example.com/hingeline/mixcore"
	"example.com/hingeline/verify/chain/where"
	"example.com/hingeline/verify/wording"
)

func reversedChannels(l *lister) {
	for i := range l.s.Channels {
		name := l.channel(i)
		w := back(name+" is reversed", "reverse "+name)
		if l.s.Channels[i].Reversed {
			w = words{name + " is not reversed", "take the reversing off " + name, "reverse " + name}
		} else {
			w.undo = "take the reversing off " + name
		}
		l.add(w, where.Channel(l.m, i, "reversed"), func(s *mixcore.Setup) {
			s.Channels[i].Reversed = !s.Channels[i].Reversed
		})
	}
}

// Half of what an end point or limit should be.
const cut = 0.5

func cutEnds(l *lister) {
	for i := range l.s.Channels {
		for _, plus := range []bool{true, false} {
			side, word := endOf(&l.s.Channels[i], plus), endWord(plus)
			if *side == 0 {
				continue
			}
			name := l.channel(i)
			l.add(words{
				fmt.Sprintf("the %s end point of %s is %s instead of %s", word, name, wording.Percent(*side*cut), wording.Percent(*side)),
				fmt.Sprintf("set the %s end point of %s to %s", word, name, wording.Percent(*side*cut)),
				fmt.Sprintf("set the %s end point of %s to %s", word, name, wording.Percent(*side)),
			}, where.Channel(l.m, i, "end_points."+word, "end_points"), func(s *mixcore.Setup) {
				*endOf(&s.Channels[i], plus) *= cut
			})
		}
	}
}

func endOf(c *mixcore.Channel, plus bool) *mixcore.Percent {
	if plus {
		return &c.EndPoints.Plus
	}
	return &c.EndPoints.Minus
}

func endWord(plus bool) string {
	if plus {
		return "plus"
	}
	return "minus"
}

func swappedEnds(l *lister) {
	for i := range l.s.Channels {
		if e := l.s.Channels[i].EndPoints; e.Plus == e.Minus {
			continue
		}
		l.add(back("the end points of "+l.channel(i)+" are exchanged", "exchange the end points of "+l.channel(i)),
			where.Channel(l.m, i, "end_points"), func(s *mixcore.Setup) {
				e := &s.Channels[i].EndPoints
				e.Plus, e.Minus = e.Minus, e.Plus
			})
	}
}

func lowLimits(l *lister) {
	for i := range l.s.Channels {
		limit := l.s.Channels[i].Limit
		name := l.channel(i)
		l.add(words{
			fmt.Sprintf("the limit of %s is %s instead of %s", name, wording.Percent(limit*cut), wording.Percent(limit)),
			fmt.Sprintf("set the limit of %s to %s", name, wording.Percent(limit*cut)),
			fmt.Sprintf("set the limit of %s to %s", name, wording.Percent(limit)),
		}, where.Channel(l.m, i, "limit"), func(s *mixcore.Setup) { s.Channels[i].Limit *= cut })
	}
}

// farOff is how far a wrong sub-trim is off, in percent. Where a linkage would lock or a
// measured table ends before that, it is off by fewer whole steps, as far as can be built.
const (
	farOff     mixcore.Percent = 25
	farOffStep mixcore.Percent = 5
)

func wrongSubTrims(l *lister) {
	for i := range l.s.Channels {
		was := l.s.Channels[i].SubTrim
		for _, way := range []mixcore.Percent{1, -1} {
			by := way * l.mostOff(i, way)
			if by == 0 {
				continue
			}
			to := was + by
			name := l.channel(i)
			l.add(words{
				fmt.Sprintf("the sub-trim of %s is %s instead of %s", name, wording.Percent(to), wording.Percent(was)),
				fmt.Sprintf("set the sub-trim of %s to %s", name, wording.Percent(to)),
				fmt.Sprintf("set the sub-trim of %s to %s", name, wording.Percent(was)),
			}, where.Channel(l.m, i, "sub_trim"), func(s *mixcore.Setup) { s.Channels[i].SubTrim += by })
		}
	}
}

// mostOff is how far a channel's sub-trim can be off one way, in percent: farOff, or less
// where that cannot be built. It is 0 where nothing can.
func (l *lister) mostOff(channel int, way mixcore.Percent) mixcore.Percent {
	for by := farOff; by > 0; by -= farOffStep {
		if math.Abs(float64(l.s.Channels[channel].SubTrim+way*by)) > 100 {
			continue
		}
		if _, faults := l.m.Plan.Vary(func(s *mixcore.Setup) { s.Channels[channel].SubTrim += way * by }); faults == nil {
			return by
		}
	}
	return 0
}

func missingSlows(l *lister) {
	for i := range l.s.Channels {
		if l.s.Channels[i].Slow == 0 {
			continue
		}
		name := l.channel(i)
		l.add(words{
			name + " is not slowed", "let " + name + " move at once",
			fmt.Sprintf("slow %s to %s for 100 %%", name, wording.Time(l.s.Channels[i].Slow)),
		}, where.Channel(l.m, i, "slow"), func(s *mixcore.Setup) { s.Channels[i].Slow = 0 })
	}
}

func wrongFailsafes(l *lister) {
	for i := range l.s.Channels {
		was := l.s.Channels[i].Failsafe
		put := func(is mixcore.Failsafe) {
			if is == was {
				return
			}
			name := l.channel(i)
			l.add(words{
				"without a signal " + name + " " + failsafeWords(is) + " instead of " + failsafeGerund(was),
				"let " + name + " without a signal " + failsafeOrder(is),
				"let " + name + " without a signal " + failsafeOrder(was),
			}, where.Channel(l.m, i, "failsafe"), func(s *mixcore.Setup) { s.Channels[i].Failsafe = is })
		}
		put(mixcore.Failsafe{Hold: true})
		put(mixcore.Failsafe{})
		if !was.Hold && was.Output != 0 {
			put(mixcore.Failsafe{Output: -was.Output})
			continue
		}
		put(mixcore.Failsafe{Output: 100})
		put(mixcore.Failsafe{Output: -100})
	}
}

func failsafeWords(f mixcore.Failsafe) string {
	if f.Hold {
		return "holds what it had"
	}
	return "goes to " + wording.Setpoint(f.Output)
}

func failsafeGerund(f mixcore.Failsafe) string {
	if f.Hold {
		return "holding"
	}
	return "going to " + wording.Setpoint(f.Output)
}

func failsafeOrder(f mixcore.Failsafe) string {
	if f.Hold {
		return "hold what it had"
	}
	return "go to " + wording.Setpoint(f.Output)
}
