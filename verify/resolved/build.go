package resolved

import (
	"fmt"
	"strconv"

	"example.com/hingeline/airframes"
	"example.com/hingeline/airframes/diag"
	"example.com/hingeline/mixcore"
	"example.com/hingeline/verify/chain/where"
	"example.com/hingeline/verify/wording"
)

// builder makes the nodes of a model. Its set-up is the model's, in which things may
// have other names: those of the model that it is compared with.
type builder struct {
	m     *airframes.Model
	s     *mixcore.Setup
	bears *bearings
}

// build is a model as nodes.
func build(m *airframes.Model, s *mixcore.Setup) *node {
	b := newBuilder(m, s)
	top := &node{title: "the model"}
	if m.Source != nil {
		top.place = m.Source.Whole()
	}
	everything := b.bears.all()
	at := func(field string) diag.Place { return m.Places.Fields[field] }
	top.set(named("name", "name", airframes.FoldName(m.Name), m.Name), at("name"))
	top.set(number("mass", "mass", m.MassKg, " kg", "not said"), at("mass_kg"))
	top.set(number("airspeed", "airspeed", m.AirspeedMs, " m/s", "not said"), at("airspeed_ms"))
	top.bears = everything
	top.set(number("still", "what counts as still", float64(m.Still), "°"), at("still_deg"))
	b.wing(top)
	for i := range s.Controls {
		top.things = append(top.things, b.control(i))
	}
	for i := range s.Phases {
		top.things = append(top.things, b.phase(i))
	}
	for i := range s.Demands {
		top.things = append(top.things, b.demand(i))
	}
	for i := range s.Channels {
		top.things = append(top.things, b.channel(i))
	}
	for i := range s.Parts {
		top.things = append(top.things, b.part(i))
	}
	return top
}

func newBuilder(m *airframes.Model, s *mixcore.Setup) *builder {
	return &builder{m: m, s: s, bears: newBearings(s)}
}

func (b *builder) wing(top *node) {
	w, measured := b.s.Wing, b.s.Wing != nil
	if !measured {
		w = &mixcore.Wing{}
	}
	n := top.child("wing", "the wing", "wing")
	n.bears = b.bears.onWing()
	at := func(field string) diag.Place { return b.m.Places.Fields["wing."+field] }
	if place, ok := b.m.Places.Fields["wing"]; ok {
		n.place = place
	}
	n.set(maybe(length("span", "span", w.Span), measured), at("span_mm"))
	n.set(maybe(length("root chord", "root chord", w.RootChord), measured), at("root_chord_mm"))
	n.set(maybe(length("tip chord", "tip chord", w.TipChord), measured), at("tip_chord_mm"))
}

var controlKinds = map[mixcore.ControlKind]string{
	mixcore.AxisControl: "stick", mixcore.TrimControl: "trim", mixcore.LeverControl: "lever", mixcore.SwitchControl: "switch",
}

var axisNames = map[mixcore.Axis]string{mixcore.NoAxis: "no axis", mixcore.Roll: "roll", mixcore.Pitch: "pitch", mixcore.Yaw: "yaw"}

func (b *builder) control(i int) *node {
	c := &b.s.Controls[i]
	n := &node{key: "controls/" + airframes.FoldName(c.Name), title: c.Name, sort: "control",
		place: where.Control(b.m, i), bears: b.bears.control(i)}
	n.set(word("kind", "kind", controlKinds[c.Kind]))
	n.set(word("axis", "axis", axisNames[c.Axis]))
	if i < len(b.m.ControlAka) {
		n.set(aka(b.m.ControlAka[i], airframes.FoldName))
	}
	for _, d := range c.Detents {
		t := n.child("detents/"+airframes.FoldName(d.Name), c.Name+" "+d.Name, "position "+d.Name)
		t.says = d.Name
		t.set(percent("at", "is at", d.At))
	}
	l := n.list("positions")
	for _, p := range c.Positions {
		t := l.item(n, airframes.FoldName(p), "position")
		t.says, t.fixed = p, true
		t.set(named("name", "position", airframes.FoldName(p), p))
	}
	return n
}

func (b *builder) phase(i int) *node {
	p := &b.s.Phases[i]
	n := &node{key: "phases/" + airframes.FoldName(p.Name), title: "phase " + p.Name, sort: "phase",
		place: where.Phase(b.m, i), bears: b.bears.phase(i)}
	n.set(when("when", "is in force", b.s, &p.When))
	n.set(number("fade", "fades in", float64(p.Fade), " s", "at once"))
	return n
}

func (b *builder) demand(i int) *node {
	d := &b.s.Demands[i]
	from := &b.s.Controls[d.From]
	n := &node{key: "demands/" + airframes.FoldName(d.Name), title: "demand " + d.Name, sort: "demand",
		place: where.Demand(b.m, i), bears: b.bears.demand(i)}
	n.set(named("from", "comes from", airframes.FoldName(from.Name), from.Name), where.Demand(b.m, i, "from"))
	for k, v := range d.Values {
		position := strconv.Itoa(k + 1)
		if k < len(from.Positions) {
			position = from.Positions[k]
		}
		n.set(percent("values/"+airframes.FoldName(position), "value at "+position, v), where.Demand(b.m, i, "values"))
	}
	b.rates(n, i, from)
	if d.Curve != nil {
		b.curve(n, i)
	}
	b.trim(n, i)
	return n
}

func (b *builder) trim(n *node, i int) {
	d := &b.s.Demands[i]
	if d.Trim == mixcore.NoTrim {
		n.set(word("trim", "trim", none))
		return
	}
	trim := b.s.Controls[d.Trim].Name
	n.set(named("trim", "trim", airframes.FoldName(trim), trim), where.Control(b.m, d.Trim))
	n.set(percent("trim range", "full trim adds", d.TrimRange), where.Control(b.m, d.Trim))
}

func (b *builder) rates(n *node, i int, from *mixcore.Control) {
	d := &b.s.Demands[i]
	l := n.list("rates")
	plus, minus := directions(from)
	for k := range d.Rates {
		r := &d.Rates[k]
		w := when("when", "", b.s, r.When)
		item := l.item(n, w.Value, "rate")
		item.place = where.Rate(b.m, i, k, "")
		item.says = w.words
		which := ""
		switch {
		case r.When != nil:
			which = " (" + wording.Condition(b.s, r.When) + ")"
		case len(d.Rates) > 1:
			which = " (otherwise)"
		}
		w.name = "rate " + strconv.Itoa(k+1) + " counts"
		item.set(w, where.Rate(b.m, i, k, "when"))
		item.set(sides("throw", "throw"+which, r.Throw, plus, minus), where.Rate(b.m, i, k, "throw"))
		item.set(percent("expo", "expo"+which, r.Expo), where.Rate(b.m, i, k, "expo"))
	}
}

func (b *builder) curve(n *node, i int) {
	c := b.s.Demands[i].Curve
	at := where.Demand(b.m, i, "curve")
	t := n.child("curve", n.title, "curve")
	t.place = at
	t.set(flag("smooth", c.Smooth, "has a smooth curve", "has a curve of straight lines"), where.Demand(b.m, i, "smooth", "curve"))
	b.points(t, c.Points, "curve", func(x float64) (string, string) { return exact(x), " %" })
}

// points are those of a curve or a measured table, in the order of their positions.
func (b *builder) points(n *node, points []mixcore.Point, what string, value func(y float64) (words, unit string)) {
	for _, p := range points {
		at := number("", "", p.X, " %")
		words, unit := value(p.Y)
		t := n.child("points/"+at.Value, n.title, what+" point at "+at.words+at.unit)
		t.says = words + unit
		t.set(Setting{Path: "y", Value: exact(p.Y), name: what + " at " + at.words + at.unit, words: words, unit: unit})
	}
}

// channelTitle is what sentences call a channel: "channel 3 (port flap)".
func channelTitle(c *mixcore.Channel) string {
	if c.Name == "" {
		return fmt.Sprintf("channel %d", c.Number)
	}
	return fmt.Sprintf("channel %d (%s)", c.Number, c.Name)
}
