package chain

import (
	"fmt"
	"slices"
	"strings"

	"example.com/hingeline/mixcore"
	"example.com/hingeline/verify/chain/where"
	"example.com/hingeline/verify/result"
	"example.com/hingeline/verify/wording"
)

// mix adds the lines of a channel's mix with the running sum.
func (b *builder) mix(channel int) {
	c, ct := &b.s.Channels[channel], &b.t.Channels[channel]
	if ct.Failsafe {
		return
	}
	name := fmt.Sprintf("channel %d", c.Number)
	if len(c.Mix) == 0 {
		b.add(result.Step{Stage: "mix", Name: name, Text: "its mix is empty",
			Place: found(where.Channel(b.m, channel))}, percent(0))
	}
	for i := firstLine(b.s, b.t, channel); i < len(c.Mix); i++ {
		b.add(result.Step{Stage: "mix", Name: name, Text: b.lineWords(channel, i),
			Place: found(where.Line(b.m, channel, i))}, percent(ct.Lines[i].Sum))
	}
}

// lineWords says what one line of a mix did to the sum.
func (b *builder) lineWords(channel, i int) string {
	line, lt := &b.s.Channels[channel].Mix[i], &b.t.Channels[channel].Lines[i]
	if lt.Weight == 0 {
		return b.lineName(line) + " not in force: " + b.whyNot(line.When)
	}
	fading := ""
	if lt.Weight != 1 {
		fading = ", " + wording.Percent(mixcore.Percent(lt.Weight*100)) + " faded in"
	}
	var said string
	switch line.Op {
	case mixcore.Add:
		said = b.lineName(line) + " " + wording.Percent(lt.Demand) + " × share " + wording.Setpoint(lt.Share) + fading
		if lt.Change != lt.Sum {
			said += " = " + wording.Percent(lt.Change)
		}
		return said
	case mixcore.Fixed:
		said = "fixed " + wording.Setpoint(line.Value)
	case mixcore.ScaleBy:
		said = "scaled by " + b.lineName(line) + " " + wording.Percent(lt.Demand)
	case mixcore.ReplaceWith:
		said = "replaces " + wording.Percent(lt.Sum-lt.Change) + " with " + wording.Setpoint(line.Value)
	}
	said += fading
	if line.When != nil {
		said += ": " + wording.Condition(b.s, line.When)
	}
	return said
}

// lineName is what a line of a mix is about: its demand, or its fixed percent.
func (b *builder) lineName(line *mixcore.MixLine) string {
	switch line.Op {
	case mixcore.Fixed:
		return "fixed " + wording.Setpoint(line.Value)
	case mixcore.ReplaceWith:
		return "replacing with " + wording.Setpoint(line.Value)
	}
	return b.s.Demands[line.Demand].Name
}

// whyNot says how the controls stand that keep a condition from holding, such
// as "rate switch is low".
func (b *builder) whyNot(when *mixcore.Condition) string {
	if b.m.Plan.Holds(when, &b.t.Input) {
		return wording.Condition(b.s, when) + " is still fading in"
	}
	var controls []int
	b.blocking(when, false, &controls)
	said := make([]string, len(controls))
	for i, c := range controls {
		said[i] = b.s.Controls[c].Name + " is " + wording.Stand(&b.s.Controls[c], b.t.Input.Position[c])
	}
	return strings.Join(said, ", ")
}

// blocking gathers the controls of those tests in a condition that give it the
// truth that it has: of an and that fails the parts that fail, of an or that
// fails all.
func (b *builder) blocking(c *mixcore.Condition, truth bool, controls *[]int) {
	switch c.Op {
	case mixcore.And, mixcore.Or:
		for i := range c.Args {
			if b.m.Plan.Holds(&c.Args[i], &b.t.Input) == truth {
				b.blocking(&c.Args[i], truth, controls)
			}
		}
	case mixcore.Not:
		b.blocking(&c.Args[0], !truth, controls)
	case mixcore.InPhase:
		b.blocking(&b.s.Phases[c.Phase].When, truth, controls)
	default:
		if !slices.Contains(*controls, c.Control) {
			*controls = append(*controls, c.Control)
		}
	}
}
