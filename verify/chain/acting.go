package chain

import (
	"cmp"
	"math"
	"slices"

	"example.com/hingeline/mixcore"
	"example.com/hingeline/verify/chain/where"
)

// acting are the lines of a channel's mix that had to do with what was judged,
// the largest effect first.
func (l *looker) acting(channel int) []int {
	if l.Now.Channels[channel].Failsafe {
		return nil
	}
	var order []int
	for i := range l.m.Setup.Channels[channel].Mix {
		if l.effect(channel, i) > 0 {
			order = append(order, i)
		}
	}
	slices.SortStableFunc(order, func(a, b int) int { return cmp.Compare(l.effect(channel, b), l.effect(channel, a)) })
	return order
}

// lines points at the acting lines of a channel.
func (l *looker) lines(channel int) {
	for _, i := range l.acting(channel) {
		l.add(where.Line(l.m, channel, i), l.lineNote(channel, i))
	}
}

// lineNote says what a line of a mix does.
func (l *looker) lineNote(channel, i int) string {
	line := &l.m.Setup.Channels[channel].Mix[i]
	switch line.Op {
	case mixcore.Add:
		return "share of " + l.m.Setup.Demands[line.Demand].Name
	case mixcore.ScaleBy:
		return "scale_by " + l.m.Setup.Demands[line.Demand].Name
	case mixcore.ReplaceWith:
		return "replace_with:"
	}
	return "fixed percent of " + l.channelName(channel)
}

// effect is by how many percent a line of the mix changed the channel's sum,
// or, of a movement, moved it. A line in force that replaces the sum decides all
// of it, even if it was the same before.
func (l *looker) effect(channel, i int) float64 {
	line := &l.m.Setup.Channels[channel].Mix[i]
	if line.Op == mixcore.ReplaceWith && counts(&l.m.Setup, l.Now, channel, i) && l.Now.Channels[channel].Lines[i].Weight != 0 {
		return math.Inf(1)
	}
	now := change(&l.m.Setup, l.Now, channel, i)
	if l.Before == nil {
		return math.Abs(now)
	}
	return math.Abs(now - change(&l.m.Setup, l.Before, channel, i))
}

// change is what a line did to the channel's sum, in percent; nothing if a later
// line replaced it.
func change(s *mixcore.Setup, t *mixcore.Trace, channel, i int) float64 {
	if !counts(s, t, channel, i) {
		return 0
	}
	return float64(t.Channels[channel].Lines[i].Change)
}

// counts is false for a line of a mix that a later one replaces.
func counts(s *mixcore.Setup, t *mixcore.Trace, channel, i int) bool {
	return i >= firstLine(s, t, channel)
}

// notInForce points at the lines of a mix that are out of force and would
// explain the doubt: first those that are likely to, late those that are less so than
// what gives an amount its size.
func (l *looker) notInForce(channel int, late bool) {
	if l.Now.Channels[channel].Failsafe {
		return
	}
	for i, lt := range l.Now.Channels[channel].Lines {
		if lt.Weight == 0 && counts(&l.m.Setup, l.Now, channel, i) && l.awaited(channel, i) && l.unlikely(channel, i) == late {
			l.add(where.Line(l.m, channel, i), l.lineNote(channel, i)+" is not in force")
		}
	}
}

// unlikely reports whether a line that is not in force is a guess among many: a fixed
// percent of another switch position, where the part goes the right way.
func (l *looker) unlikely(channel, i int) bool {
	return l.Doubt == Amount && l.m.Setup.Channels[channel].Mix[i].Op == mixcore.Fixed
}

// awaited reports whether a line that is not in force would explain the doubt:
// its demand is there, or was moved; or it needs no demand, and something is
// where it should not be.
func (l *looker) awaited(channel, i int) bool {
	line := &l.m.Setup.Channels[channel].Mix[i]
	switch line.Op {
	case mixcore.Add:
		now := l.Now.Demands[line.Demand].Value
		if l.Before != nil {
			return now != l.Before.Demands[line.Demand].Value
		}
		return now != 0
	case mixcore.ReplaceWith:
		return l.Doubt == Stuck || l.Doubt == Astir
	}
	return l.Doubt != Direction
}
