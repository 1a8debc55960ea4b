package mistake

import (
	"fmt"
	"slices"

	"example.com/hingeline/airframes/diag"
	"example.com/hingeline/mixcore"
	"example.com/hingeline/verify/chain/where"
	"example.com/hingeline/verify/wording"
)

// eachLine visits every line of every mix.
func (l *lister) eachLine(visit func(channel, line int, m *mixcore.MixLine)) {
	for i := range l.s.Channels {
		for k := range l.s.Channels[i].Mix {
			visit(i, k, &l.s.Channels[i].Mix[k])
		}
	}
}

// line names a line of a mix: "the share of roll on channel 3 (port flap)"; where several
// are called so, with which it is.
func (l *lister) line(channel, line int) string {
	name := l.does(channel, line)
	for k := range l.s.Channels[channel].Mix {
		if k != line && l.does(channel, k) == name {
			return fmt.Sprintf("%s, line %d", name, line+1)
		}
	}
	return name
}

// does says what a line of a mix does, and where.
func (l *lister) does(channel, line int) string {
	m := &l.s.Channels[channel].Mix[line]
	what := ""
	switch m.Op {
	case mixcore.Add:
		what = "the share of " + l.s.Demands[m.Demand].Name
	case mixcore.Fixed:
		what = "the fixed " + wording.Percent(m.Value)
	case mixcore.ScaleBy:
		what = "the scaling by " + l.s.Demands[m.Demand].Name
	case mixcore.ReplaceWith:
		what = "the " + wording.Percent(m.Value) + " that replaces all"
	}
	if m.When != nil {
		what += " when " + wording.Condition(l.s, m.When)
	}
	return what + " on " + l.channel(channel)
}

// addLine adds a mistake in one line of a mix.
func (l *lister) addLine(channel, line int, w words, field string, edit func(*mixcore.MixLine)) {
	l.add(w, l.lineAt(channel, line, field), func(s *mixcore.Setup) { edit(&s.Channels[channel].Mix[line]) })
}

func (l *lister) lineAt(channel, line int, field string) diag.Place {
	path := fmt.Sprintf("channels.%d.mix.%d.%s", l.s.Channels[channel].Number, line, field)
	if at, ok := l.m.Places.Fields[path]; ok {
		return at
	}
	return where.Line(l.m, channel, line)
}

// weight is what a line of a mix does by itself: both sides of a share, or a value.
// It is none for a line that scales.
func weight(m *mixcore.MixLine) (share mixcore.Sides, some bool) {
	switch m.Op {
	case mixcore.Add:
		return m.Share, m.Share != mixcore.Sides{}
	case mixcore.Fixed, mixcore.ReplaceWith:
		return mixcore.Both(m.Value), m.Value != 0
	}
	return mixcore.Sides{}, false
}

// times multiplies a line's share or value.
func times(m *mixcore.MixLine, by mixcore.Percent) {
	m.Share.Plus, m.Share.Minus, m.Value = m.Share.Plus*by, m.Share.Minus*by, m.Value*by
}

func wrongSigns(l *lister) {
	l.eachLine(func(channel, line int, m *mixcore.MixLine) {
		if _, some := weight(m); !some {
			return
		}
		name := l.line(channel, line)
		l.addLine(channel, line, back(name+" has the wrong sign", "change the sign of "+name), "share",
			func(m *mixcore.MixLine) { times(m, -1) })
	})
}

// sided says whether a line's demand can come to both sides.
func (l *lister) sided(m *mixcore.MixLine) bool {
	if m.Op != mixcore.Add {
		return false
	}
	low, high := l.s.Demands[m.Demand].Range(l.s.Controls)
	return low < 0 && high > 0
}

func wrongSides(l *lister) {
	l.eachLine(func(channel, line int, m *mixcore.MixLine) {
		if !l.sided(m) {
			return
		}
		for _, plus := range []bool{true, false} {
			if *sideOf(&m.Share, plus) == 0 || *sideOf(&m.Share, !plus) == 0 { // of one side it is a wrong sign
				continue
			}
			side := l.sideWord(l.s.Demands[m.Demand].From, plus)
			name := l.line(channel, line)
			l.addLine(channel, line, back(name+" has the wrong sign "+side, "change the sign of "+name+" "+side), "share",
				func(m *mixcore.MixLine) { *sideOf(&m.Share, plus) *= -1 })
		}
	})
}

func sideOf(s *mixcore.Sides, plus bool) *mixcore.Percent {
	if plus {
		return &s.Plus
	}
	return &s.Minus
}

// sideWord says which side of a control is meant: "to the right", "on the plus side".
func (l *lister) sideWord(control int, plus bool) string {
	c := &l.s.Controls[control]
	switch {
	case c.Kind != mixcore.AxisControl:
		return "on the " + endWord(plus) + " side"
	case c.Axis == mixcore.Pitch:
		return wording.AxisSide(c.Axis, plus)
	}
	return "to the " + wording.AxisSide(c.Axis, plus)
}

func missingLines(l *lister) {
	l.eachLine(func(channel, line int, m *mixcore.MixLine) {
		name := l.line(channel, line)
		place := l.lineAt(channel, line, "share")
		l.add(words{name + " is missing", "take " + name + " out", "put " + name + " in"}, place, func(s *mixcore.Setup) {
			switch m := &s.Channels[channel].Mix[line]; m.Op {
			case mixcore.Add, mixcore.Fixed:
				times(m, 0)
			default: // no number makes these do nothing
				s.Channels[channel].Mix = slices.Delete(s.Channels[channel].Mix, line, line+1)
			}
		})
	})
}

// mostShare is what the file allows a share or value to be, in percent.
const mostShare = 200

func wrongSizes(l *lister) {
	l.eachLine(func(channel, line int, m *mixcore.MixLine) {
		w, some := weight(m)
		if !some {
			return
		}
		for _, size := range []struct {
			by   mixcore.Percent
			word string
		}{{0.5, "half"}, {2, "twice"}} {
			if most := max(w.Plus, -w.Plus, w.Minus, -w.Minus); most*size.by > mostShare {
				continue
			}
			name := l.line(channel, line)
			l.addLine(channel, line, words{
				name + " is " + size.word + " what it should be",
				"make " + name + " " + size.word + " what it is",
				"make " + name + " what it was",
			}, "share", func(m *mixcore.MixLine) { times(m, size.by) })
		}
	})
}

// wrongDemands puts a share to the other demands that come from a control of the same
// kind.
func wrongDemands(l *lister) {
	l.eachLine(func(channel, line int, m *mixcore.MixLine) {
		if _, some := weight(m); m.Op != mixcore.Add || !some {
			return
		}
		is := &l.s.Demands[m.Demand]
		for other := range l.s.Demands {
			d := &l.s.Demands[other]
			if other == m.Demand || d.From == is.From || l.s.Controls[d.From].Kind != l.s.Controls[is.From].Kind {
				continue
			}
			name := l.line(channel, line)
			l.addLine(channel, line, words{
				name + " follows " + d.Name + " instead",
				"let " + name + " follow " + d.Name,
				"let it follow " + is.Name,
			}, "add", func(m *mixcore.MixLine) { m.Demand = other })
		}
	})
}

func reversedDifferentials(l *lister) {
	l.eachLine(func(channel, line int, m *mixcore.MixLine) {
		if m.Op != mixcore.Add || m.Share.Plus == m.Share.Minus || !l.sided(m) {
			return
		}
		name := l.line(channel, line)
		l.addLine(channel, line, back("the two sides of "+name+" are exchanged", "exchange the two sides of "+name), "share",
			func(m *mixcore.MixLine) { m.Share.Plus, m.Share.Minus = m.Share.Minus, m.Share.Plus })
	})
	l.eachRate(func(demand, rate int, d *mixcore.Demand, r *mixcore.Rate) {
		if low, _ := l.s.Controls[d.From].Range(); r.Throw.Plus == r.Throw.Minus || low >= 0 {
			return
		}
		name := rateName(d, rate)
		l.add(back("the throws of "+name+" are exchanged", "exchange the two throws of "+name),
			where.Rate(l.m, demand, rate, "throw"), func(s *mixcore.Setup) {
				t := &s.Demands[demand].Rates[rate].Throw
				t.Plus, t.Minus = t.Minus, t.Plus
			})
	})
}
