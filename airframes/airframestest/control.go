package airframestest

import (
	"fmt"
	"strings"
)

func (g *generator) head(sections map[string]tree) {
	sections["hingeline"] = scalar("1")
	sections["name"] = scalar(g.quotes(g.pick("Fennel 12", "Skerry", "Ousel, the second: \"Möwe\"", "Nr. 7")))
	if strings.ContainsAny(sections["name"].scalar, `:"'`) {
		sections["name"] = scalar("'Ousel, the second: \"Möwe\"'")
	}
	if g.maybe() {
		sections["about"] = scalar(g.pick("A sentence, or two. It flies.", "|\n    Several lines\n    of text: here", "\"with \\\"quotes\\\"\""))
	}
	if g.maybe() {
		sections["mass_kg"] = scalar(g.written(float64(g.between(1, 24999)) / 1000))
	}
	if g.maybe() {
		sections["still_deg"] = scalar(g.written(float64(g.between(1, 2000))/1000, "°", "deg"))
	}
	if g.maybe() {
		sections["airspeed_ms"] = scalar(g.written(float64(g.between(100, 200000))/1000, "m/s"))
	}
	if g.maybe() {
		sections["wing"] = g.wing()
	}
	switch g.between(0, 3) {
	case 0:
		sections["script"] = scalar("fennel.feature")
	case 1:
		sections["script"] = list(scalar("../features/one.feature"), scalar("'two and a half.feature'"))
	}
}

// wing is a wing that is large enough for every surface that is drawn.
func (g *generator) wing() tree {
	n := tree{keys: []string{}}
	for _, size := range []struct {
		key       string
		low, high float64
	}{{"span_mm", 4002, 20000}, {"root_chord_mm", 201, 20000}, {"tip_chord_mm", 201, 20000}} {
		value, _ := g.number(size.low, size.high, "mm")
		n.put(size.key, value)
	}
	return n
}

func (g *generator) makeControls() tree {
	section := tree{keys: []string{}}
	add := func(c control, n tree) {
		g.controls = append(g.controls, c)
		section.put(g.quotes(c.name), n)
	}
	for _, axis := range []string{"roll", "pitch", "yaw"} {
		g.makeAxis(axis, add)
	}
	for range g.between(1, 2) {
		g.makeLever(add)
	}
	for range g.between(1, 3) {
		g.makeSwitch(add)
	}
	return section
}

func (g *generator) makeAxis(axis string, add func(control, tree)) {
	c := control{name: g.name("stick"), axis: axis}
	if g.between(0, 2) == 0 {
		add(c, scalar(axis))
		return
	}
	n := tree{keys: []string{}}
	n.put("axis", scalar(axis))
	g.aka(&n)
	switch g.between(0, 2) {
	case 0:
		c.trimmed = true
		trim, _ := g.travel(0, 30)
		n.put("trim", trim)
		add(c, n)
		g.controls = append(g.controls, control{name: axis + " trim", axis: axis, trim: true})
		return
	case 1:
		c.trimmed = true
		long, name := tree{keys: []string{}}, g.name("trim wheel")
		reach, _ := g.travel(0, 100)
		long.put("range", reach)
		long.put("name", scalar(name))
		if g.maybe() {
			long.put("reversed", g.yes())
		}
		n.put("trim", long)
		add(c, n)
		g.controls = append(g.controls, control{name: name, axis: axis, trim: true})
		return
	}
	add(c, n)
}

func (g *generator) makeLever(add func(control, tree)) {
	c := control{name: g.name("lever", "slider", "knob")}
	if g.between(0, 3) == 0 {
		add(c, scalar("lever"))
		return
	}
	detents := tree{keys: []string{}}
	for i := range g.between(0, 4) {
		name, at := g.name("detent"), g.percent(float64(i*20), float64(i*20+15))
		if i == 2 && g.between(0, 3) == 0 {
			name, at = g.pick("half", "Half"), scalar(g.written(50, "%"))
		}
		c.detents = append(c.detents, name)
		detents.put(name, at)
	}
	n := tree{keys: []string{}}
	n.put("lever", detents)
	g.aka(&n)
	add(c, n)
}

func (g *generator) makeSwitch(add func(control, tree)) {
	c := control{name: g.name("switch")}
	positions := list()
	for range g.between(2, 6) {
		name := g.name("position")
		c.positions = append(c.positions, name)
		positions.list = append(positions.list, scalar(g.quotes(name)))
	}
	if g.maybe() {
		add(c, positions)
		return
	}
	n := tree{keys: []string{}}
	n.put("switch", positions)
	g.aka(&n)
	add(c, n)
}

func (g *generator) makePhases() tree {
	section := tree{keys: []string{}}
	for range g.between(0, 3) {
		name := g.name("flight", "landing")
		n := scalar(g.condition(2))
		if g.maybe() {
			long := tree{keys: []string{}}
			long.put("when", n)
			if g.maybe() {
				fade, _ := g.number(0, 59, "s")
				long.put("fade", fade)
			}
			n = long
		}
		section.put(name, n)
		g.phases = append(g.phases, name)
	}
	return section
}

// condition draws a condition about the controls and phases so far.
func (g *generator) condition(depth int) string {
	if depth > 0 {
		switch g.between(0, 7) {
		case 0:
			return g.condition(depth-1) + " and " + g.condition(depth-1)
		case 1:
			return g.condition(depth-1) + " or " + g.condition(depth-1)
		case 2:
			return "not " + g.condition(0)
		case 3:
			return "(" + g.condition(depth-1) + ")"
		}
	}
	if len(g.phases) > 0 && g.between(0, 3) == 0 {
		return g.pick("", "in ") + g.said(g.pick(g.phases...))
	}
	c := g.controls[g.between(0, len(g.controls)-1)]
	if places := append(c.positions, c.detents...); len(places) > 0 && g.between(0, 5) == 0 {
		place := g.said(g.pick(places...))
		return g.pick(g.said(c.name)+" "+place, place+" "+g.said(c.name))
	}
	return fmt.Sprintf("%s %s%s", g.said(c.name), g.pick("is ", "is not ", "are "), g.predicate(c))
}

func (g *generator) predicate(c control) string {
	low := 0
	switch {
	case len(c.positions) > 0:
		if i := g.between(0, len(c.positions)-2); g.maybe() {
			return g.said(c.positions[i]) + " or " + g.said(c.positions[i+1])
		}
		return g.said(g.pick(c.positions...))
	case len(c.detents) > 0 && g.maybe():
		return g.said(g.pick(c.detents...))
	case c.axis != "":
		low = -100
		if g.maybe() {
			way := g.pick("right", "left")
			if c.axis == "pitch" {
				way = g.pick("back", "forward")
			}
			return fmt.Sprintf("%s of %d%%", way, g.between(0, 100))
		}
	}
	if g.between(0, 3) == 0 {
		from := g.between(low, 50)
		return fmt.Sprintf("between %d%% and %d %%", from, g.between(from+1, 100))
	}
	return fmt.Sprintf("%s %d%s", g.pick("above", "below", "at least", "at most"), g.between(low, 100), g.pick("%", " %", ""))
}
