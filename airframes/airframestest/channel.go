package airframestest

import (
	"math"
	"strconv"
)

func (g *generator) makeDemands() tree {
	section := tree{keys: []string{}}
	for _, c := range g.controls {
		if c.trim {
			continue
		}
		name := g.name("wish")
		d := demand{name: name, axis: c.axis, positive: c.axis == "" && len(c.positions) == 0}
		n := g.makeDemand(c, &d)
		section.put(g.quotes(name), n)
		g.demands = append(g.demands, d)
	}
	return section
}

func (g *generator) makeDemand(c control, d *demand) tree {
	isSwitch := len(c.positions) > 0
	if !isSwitch && g.between(0, 3) == 0 {
		return g.named(c.name)
	}
	n := tree{keys: []string{}}
	n.put("from", g.named(c.name))
	if isSwitch {
		values := tree{keys: []string{}}
		for _, position := range c.positions {
			values.put(g.said(position), g.percent(-100, 100))
		}
		n.put("values", values)
	}
	if g.maybe() {
		g.rate(&n, c)
	} else if g.maybe() {
		rates := list()
		for range g.between(0, 2) {
			rate := tree{keys: []string{}}
			rate.put("when", scalar(g.condition(1)))
			g.rate(&rate, c)
			rates.list = append(rates.list, rate)
		}
		last := tree{keys: []string{}}
		last.put("throw", g.sides(c.axis, 0, 100))
		rates.list = append(rates.list, last)
		n.put("rates", rates)
	}
	if !isSwitch && g.between(0, 3) == 0 {
		d.positive = false
		n.put("curve", g.curve(c))
		if g.maybe() {
			n.put("smooth", g.yes())
		}
	}
	if c.axis != "" && g.between(0, 5) == 0 {
		n.put("trim", scalar("no"))
	}
	return n
}

// rate puts a throw and an expo, or one of them, or none.
func (g *generator) rate(n *tree, c control) {
	if g.maybe() {
		n.put("throw", g.sides(c.axis, 0, 100))
	}
	if len(c.positions) == 0 && g.maybe() {
		n.put("expo", g.percent(-100, 100))
	}
}

func (g *generator) curve(c control) tree {
	low := 0
	if c.axis != "" {
		low = -100
	}
	n := tree{keys: []string{}}
	steps := g.between(1, 32)
	for i := range steps + 1 {
		n.put(g.written(float64(low)+math.Round(float64(100-low)*float64(i)/float64(steps)*1000)/1000, "%"), g.percent(-100, 100))
	}
	return n
}

func (g *generator) makeChannels() tree {
	section := tree{keys: []string{}}
	number := 0
	for range g.between(1, 6) {
		number += g.between(1, 5)
		c := channel{number: number, reach: 100}
		if g.between(0, 4) == 0 {
			section.put(strconv.Itoa(number), g.named(g.pickDemand().name))
		} else {
			section.put(strconv.Itoa(number), g.makeChannel(&c))
		}
		g.channels = append(g.channels, c)
	}
	return section
}

func (g *generator) pickDemand() demand { return g.demands[g.between(0, len(g.demands)-1)] }

func (g *generator) makeChannel(c *channel) tree {
	n := tree{keys: []string{}}
	if g.maybe() {
		n.put("name", scalar(g.quotes(g.name("channel"))))
	}
	if g.between(0, 3) == 0 {
		n.put("mix", g.named(g.pickDemand().name))
	} else {
		lines := list()
		for range g.between(1, 5) {
			lines.list = append(lines.list, g.line())
		}
		n.put("mix", lines)
	}
	limit, plus, minus, sub := 100.0, 100.0, 100.0, 0.0
	if g.between(0, 3) == 0 {
		var value tree
		value, limit = g.travel(1, 150)
		n.put("limit", value)
	}
	if g.maybe() {
		n.put("reversed", g.yes())
	}
	switch g.between(0, 3) {
	case 0:
		var value tree
		value, plus = g.travel(0, 150)
		minus = plus
		n.put("end_points", value)
	case 1:
		ends := tree{keys: []string{}}
		var up, down tree
		up, plus = g.travel(0, 150)
		down, minus = g.travel(0, 150)
		ends.put("plus", up)
		ends.put("minus", down)
		n.put("end_points", ends)
	}
	if g.between(0, 2) == 0 {
		var value tree
		value, sub = g.number(-100, 100, "%")
		n.put("sub_trim", value)
	}
	low, high := g.pulses(&n)
	if g.between(0, 3) == 0 {
		slow, _ := g.number(0, 59, "s")
		n.put("slow", slow)
	}
	switch g.between(0, 3) {
	case 0:
		n.put("failsafe", scalar("hold"))
	case 1:
		n.put("failsafe", scalar(strconv.Itoa(g.between(int(math.Ceil(low)), int(high)))+g.pick(" µs", "us")))
	case 2:
		n.put("failsafe", scalar(strconv.Itoa(g.between(int((low-1500)/5), int((high-1500)/5)))+g.pick("%", " %")))
	}
	c.reach = math.Max(limit*math.Max(plus, minus)/100+math.Abs(sub), 1)
	c.reach = math.Max(math.Min(c.reach, math.Max(1500-low, high-1500)/5), 1)
	if c.reach < 200 {
		c.reach = math.Max(c.reach, math.Max(1500-low, high-1500)/5)
	}
	return n
}

// pulses sometimes puts pulse limits.
func (g *generator) pulses(n *tree) (low, high float64) {
	low, high = 1000, 2000
	if g.between(0, 2) > 0 {
		return low, high
	}
	limits := tree{keys: []string{}}
	var value tree
	if g.maybe() {
		value, low = g.number(500, 1450, "µs", "us")
		limits.put("min", value)
	}
	if g.maybe() || len(limits.keys) == 0 {
		value, high = g.number(1550, 2499, "µs", "us")
		limits.put("max", value)
	}
	n.put("pulse_us", limits)
	return low, high
}

// line draws one line of a mix.
func (g *generator) line() tree {
	n := tree{keys: []string{}}
	d := g.pickDemand()
	switch g.between(0, 6) {
	case 0:
		return g.named(d.name)
	case 1:
		return scalar(strconv.Itoa(g.between(-200, 200)) + g.pick("%", " %", ""))
	case 2:
		n.put("fixed", g.percent(-200, 200))
	case 3:
		n.put("replace_with", g.percent(-200, 200))
	case 4:
		if !d.positive {
			return scalar("0%")
		}
		n.put("scale_by", g.named(d.name))
	default:
		n.put("add", g.named(d.name))
		if d.axis != "" && g.maybe() {
			n.put("share", g.sides(d.axis, -200, 200))
		} else if g.maybe() {
			share, _ := g.travel(-200, 200)
			n.put("share", share)
		}
	}
	if g.maybe() {
		n.put("when", scalar(g.condition(2)))
	}
	return n
}
