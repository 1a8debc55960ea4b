package provetest

import (
	"math"
	"math/rand/v2"
	"slices"

	"example.com/hingeline/mixcore"
	"example.com/hingeline/verify/prove"
	"pgregory.net/rapid"
)

// claimer draws one claim.
type claimer struct {
	drawing
	m    *maker
	plan *mixcore.Plan
	s    *mixcore.Setup
	c    *prove.Claim
}

// Claim draws a claim about a plan that has channels and parts.
func Claim(t *rapid.T, plan *mixcore.Plan) *prove.Claim {
	s := plan.Setup()
	d := drawing{t}
	c := &claimer{drawing: d, m: &maker{drawing: d, s: *s}, plan: plan, s: s, c: &prove.Claim{}}
	c.spans()
	c.c.Lost = c.one(8)
	if c.one(3) {
		when := c.m.condition(2)
		c.c.When = &when
	}
	c.want()
	return c.c
}

func (c *claimer) spans() {
	rest := c.plan.Rest()
	for i := range c.s.Controls {
		span := prove.Whole(&c.s.Controls[i])
		switch c.between(0, 7) {
		case 0:
			span = c.stands(i, rest.Position[i])
		case 1, 2:
			span = c.part(i)
		}
		c.c.Now = append(c.c.Now, span)
	}
}

func (c *claimer) stands(control int, at float64) prove.Span {
	return prove.Stands(&c.s.Controls[control], at).Span
}

// part is a part of a control's travel.
func (c *claimer) part(control int) prove.Span {
	low, high := c.s.Controls[control].Range()
	if c.s.Controls[control].Kind == mixcore.SwitchControl {
		var places []int
		for i := range int(high) + 1 {
			if c.maybe() {
				places = append(places, i)
			}
		}
		if places == nil {
			places = []int{int(high)}
		}
		return prove.Span{Places: places}
	}
	a, b := c.setting(low, high), c.setting(low, high)
	if c.one(3) {
		b = a
	}
	return prove.Span{Low: min(a, b), High: max(a, b)}
}

// beside draws the pose to compare with.
func (c *claimer) beside() {
	c.c.OtherLost = c.one(10)
	how := c.between(0, 4)
	for i := range c.s.Controls {
		var o prove.Other
		k := &c.s.Controls[i]
		turns := k.Kind == mixcore.AxisControl || k.Kind == mixcore.TrimControl
		switch {
		case how == 0 && turns, how == 4 && turns && c.one(3):
			o.Kind = prove.Mirrored
		case how == 1 && i == 0, how == 2, how == 4 && c.one(3): // from rest
			o = prove.Stands(k, k.Rest())
		case how == 3 && c.maybe(), how == 4 && c.one(3):
			o = prove.Other{Kind: prove.Apart, Span: c.part(i)}
			if c.maybe() {
				o.Span = prove.Whole(k)
			}
		}
		c.c.Other = append(c.c.Other, o)
	}
}

func (c *claimer) want() {
	s := c.s
	part, channel := c.between(0, len(s.Parts)-1), c.between(0, len(s.Channels)-1)
	second := c.second(part)
	switch c.between(0, 9) {
	case 0:
		low, high := c.bounds(func(now, _ *mixcore.Output) float64 { return now.Parts[part].Place() })
		c.c.Want = prove.Place{Part: part, Low: low, High: high}
	case 1:
		low, high := c.bounds(func(now, _ *mixcore.Output) float64 { return float64(now.Channels[channel].Output) })
		c.c.Want = prove.Output{Channel: channel, Low: low, High: high}
	case 2:
		c.c.Want = prove.Travel{Channel: channel}
	case 3, 4:
		c.beside()
		w := prove.Differ{A: part, B: second, Sign: pick(c.drawing, 1.0, -1)}
		if c.maybe() {
			w.B, w.Sign = part, 1
		}
		w.Low, w.High = c.bounds(func(now, other *mixcore.Output) float64 {
			return now.Parts[w.A].Place() - w.Sign*other.Parts[w.B].Place()
		})
		c.c.Want = w
	case 5:
		c.beside()
		c.c.Want = prove.Pair{A: part, B: second, Opposite: c.maybe(), StillA: c.still(), StillB: c.still()}
	case 6:
		c.beside()
		w := prove.Far{A: part, B: second, Idle: c.maybe(), StillA: c.still(), StillB: c.still()}
		w.Low, w.High = c.bounds(func(now, other *mixcore.Output) float64 {
			return math.Abs(now.Parts[part].Place()-other.Parts[part].Place()) - math.Abs(now.Parts[second].Place()-other.Parts[second].Place())
		})
		c.c.Want = w
	case 7:
		w := prove.Rising{Part: part, Control: c.between(0, len(s.Controls)-1), Sign: pick(c.drawing, 1.0, -1)}
		if span := c.c.Now[w.Control]; span.Low == span.High && len(span.Places) < 2 {
			c.c.Now[w.Control] = prove.Whole(&s.Controls[w.Control])
		}
		c.c.Want = w
	default:
		c.beside()
		w := prove.Turn{Axis: pick(c.drawing, mixcore.Roll, mixcore.Pitch, mixcore.Yaw), Plus: c.maybe()}
		w.Not, w.None, w.Told = c.one(3), c.one(4), c.maybe()
		c.c.Want = w
	}
}

// second is a part to compare with: the next one of the same motion, often a mirror.
func (c *claimer) second(part int) int {
	for _, other := range []int{part + 1, part - 1} {
		if other >= 0 && other < len(c.s.Parts) && c.maybe() {
			return other
		}
	}
	return c.between(0, len(c.s.Parts)-1)
}

func (c *claimer) still() float64 { return pick(c.drawing, 0.2, 0.5, 1, 2) }

// bounds puts two bounds about the values that a claim speaks of: at the least and
// most of some, a little beside, anywhere, or nowhere.
func (c *claimer) bounds(value func(now, other *mixcore.Output) float64) (low, high float64) {
	var values []float64
	now, other := c.plan.NewOutput(), c.plan.NewOutput()
	poses := Poses(c.plan, c.c, rand.New(rand.NewPCG(uint64(c.between(0, 1<<30)), 1)))
	for range 40 {
		at, _ := poses.Draw()
		c.plan.Eval(&at.Now, now)
		if at.Other.Position != nil {
			c.plan.Eval(&at.Other, other)
		}
		values = append(values, value(now, other))
	}
	slices.Sort(values)
	least, most := values[0], values[len(values)-1]
	bound := func(end, way float64) float64 {
		switch c.between(0, 6) {
		case 0:
			return way * math.Inf(1)
		case 1:
			return end
		case 2:
			return end + way*c.setting(-1, 1)
		case 3:
			return end + way*pick(c.drawing, 1e-6, 1e-9, 1e-12, -1e-12, -1e-9)
		case 4:
			return pick(c.drawing, values...)
		}
		return math.Round((end+way*c.setting(0, 10))*10) / 10
	}
	low, high = bound(least, -1), bound(most, 1)
	return min(low, high), max(low, high)
}
