package resolved

import (
	"fmt"
	"strconv"

	"example.com/hingeline/airframes"
	"example.com/hingeline/mixcore"
	"example.com/hingeline/verify/chain/where"
	"example.com/hingeline/verify/wording"
)

func (b *builder) channel(i int) *node {
	c := &b.s.Channels[i]
	n := &node{key: fmt.Sprintf("channels/%02d", c.Number), title: channelTitle(c), sort: "channel",
		place: where.Channel(b.m, i), bears: b.bears.channel(i)}
	called := named("name", "name", airframes.FoldName(c.Name), c.Name)
	if c.Name == "" {
		called.words = none
	}
	n.set(called, where.Channel(b.m, i, "name"))
	l := n.list("mix")
	for k := range c.Mix {
		b.line(n, l, i, k)
	}
	n.set(percent("limit", "travel limit", c.Limit), where.Channel(b.m, i, "limit"))
	n.set(flag("reversed", c.Reversed, "is reversed", "is no longer reversed"), where.Channel(b.m, i, "reversed"))
	n.set(sides("end points", "end points", c.EndPoints, "plus", "minus"), where.Channel(b.m, i, "end_points"))
	n.set(percent("sub-trim", "sub-trim", c.SubTrim), where.Channel(b.m, i, "sub_trim"))
	n.set(number("pulse min", "shortest pulse", float64(c.PulseMin), " µs"), where.Channel(b.m, i, "pulse_us"))
	n.set(number("pulse max", "longest pulse", float64(c.PulseMax), " µs"), where.Channel(b.m, i, "pulse_us"))
	n.set(number("slow", "moves through 100 % in", float64(c.Slow), " s", "no time"), where.Channel(b.m, i, "slow"))
	lost := word("failsafe", "on loss of signal", "hold")
	if !c.Failsafe.Hold {
		lost = percent("failsafe", "on loss of signal", c.Failsafe.Output)
	}
	n.set(lost, where.Channel(b.m, i, "failsafe"))
	return n
}

// line adds one line of a mix.
func (b *builder) line(n *node, l *list, channel, k int) {
	m := &b.s.Channels[channel].Mix[k]
	place := where.Line(b.m, channel, k)
	w := when("when", "", b.s, m.When)
	behind := ""
	if m.When != nil {
		behind = " " + w.words
	}
	add := func(kind, of, fold, says, name string, settings ...Setting) {
		item := l.item(n, kind+" "+fold, "line")
		item.place, item.says = place, says+behind
		item.leaves = append(item.leaves, Setting{Path: "does", Value: kind, Place: place, name: "line " + strconv.Itoa(k+1), words: kind, bears: n.bears})
		if of != "" {
			item.set(named("demand", "line "+strconv.Itoa(k+1)+" follows", fold, of), place)
		}
		for _, s := range settings {
			item.set(s, place)
		}
		w.name = name + " counts"
		item.set(w, place)
	}
	switch m.Op {
	case mixcore.Add, mixcore.ScaleBy:
		d := &b.s.Demands[m.Demand]
		plus, minus := directions(&b.s.Controls[d.From])
		if m.Op == mixcore.ScaleBy {
			add("scale by", d.Name, airframes.FoldName(d.Name), "scaled by "+d.Name, "scaling by "+d.Name)
			return
		}
		share := sides("share", "share of "+d.Name, m.Share, plus, minus)
		if m.When != nil && b.more(channel, m.Demand) {
			share.name += " (" + wording.Condition(b.s, m.When) + ")"
		}
		add("add", d.Name, airframes.FoldName(d.Name), share.words+share.unit+" of "+d.Name, "share of "+d.Name, share)
	case mixcore.Fixed:
		add("fixed", "", "", wording.Setpoint(m.Value)+" fixed", "fixed percent", percent("value", "fixed percent", m.Value))
	case mixcore.ReplaceWith:
		add("replace with", "", "", "replaced with "+wording.Setpoint(m.Value), "replacement", percent("value", "replaced with", m.Value))
	}
}

// more says whether a channel adds a demand in several lines.
func (b *builder) more(channel, demand int) bool {
	count := 0
	for _, m := range b.s.Channels[channel].Mix {
		if m.Op == mixcore.Add && m.Demand == demand {
			count++
		}
	}
	return count > 1
}
