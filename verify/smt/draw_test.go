package smt

import (
	"math"
	"math/rand/v2"

	"example.com/hingeline/mixcore"
	"example.com/hingeline/verify/prove"
)

// drawnClaims is how many claims are drawn for a model.
const drawnClaims = 24

// drawClaim draws a claim of any kind about a set-up: stretches, mirrored and apart
// controls, conditions and a lost signal.
func drawClaim(r *rand.Rand, s *mixcore.Setup) prove.Claim {
	c := prove.Claim{Lost: r.IntN(6) == 0, OtherLost: r.IntN(6) == 0}
	for i := range s.Controls {
		c.Now = append(c.Now, drawSpan(r, &s.Controls[i]))
		other := prove.Other{}
		switch kind := s.Controls[i].Kind; r.IntN(4) {
		case 0:
			other = prove.Other{Kind: prove.Apart, Span: drawSpan(r, &s.Controls[i])}
		case 1:
			if kind == mixcore.AxisControl || kind == mixcore.TrimControl {
				other.Kind = prove.Mirrored
			}
		}
		c.Other = append(c.Other, other)
	}
	if r.IntN(3) == 0 {
		when := drawCondition(r, s, 2)
		c.When = &when
	}
	c.Want = drawWant(r, s)
	if _, ok := c.Want.(prove.Rising); ok {
		c.OtherLost = c.Lost
	}
	return c
}

func drawSpan(r *rand.Rand, c *mixcore.Control) prove.Span {
	whole := prove.Whole(c)
	if r.IntN(2) == 0 {
		return whole
	}
	if whole.Places != nil {
		return prove.Span{Places: []int{r.IntN(len(whole.Places))}}
	}
	a, b := drawAt(r, whole), drawAt(r, whole)
	if r.IntN(2) == 0 {
		return prove.At(a)
	}
	return prove.Span{Low: min(a, b), High: max(a, b)}
}

func drawAt(r *rand.Rand, s prove.Span) float64 {
	return math.Round((s.Low+r.Float64()*(s.High-s.Low))*10) / 10
}

func drawCondition(r *rand.Rand, s *mixcore.Setup, depth int) mixcore.Condition {
	if depth > 0 && r.IntN(3) == 0 {
		op := []mixcore.ConditionOp{mixcore.And, mixcore.Or, mixcore.Not}[r.IntN(3)]
		c := mixcore.Condition{Op: op, Args: []mixcore.Condition{drawCondition(r, s, depth-1)}}
		if op != mixcore.Not {
			c.Args = append(c.Args, drawCondition(r, s, depth-1))
		}
		return c
	}
	if len(s.Phases) > 0 && r.IntN(5) == 0 {
		return mixcore.Condition{Op: mixcore.InPhase, Phase: r.IntN(len(s.Phases))}
	}
	i := r.IntN(len(s.Controls))
	c := &s.Controls[i]
	if c.Kind == mixcore.SwitchControl {
		return mixcore.Condition{Op: mixcore.AtPosition, Control: i, Position: r.IntN(len(c.Positions))}
	}
	a, b := drawAt(r, prove.Whole(c)), drawAt(r, prove.Whole(c))
	op := []mixcore.ConditionOp{mixcore.Above, mixcore.AtLeast, mixcore.Below, mixcore.AtMost, mixcore.Within}[r.IntN(5)]
	return mixcore.Condition{Op: op, Control: i, Low: mixcore.Percent(min(a, b)), High: mixcore.Percent(max(a, b))}
}

func drawWant(r *rand.Rand, s *mixcore.Setup) prove.Want {
	low := float64(r.IntN(120)-100) / 2
	high := low + float64(r.IntN(120))
	switch r.IntN(4) {
	case 0:
		low = math.Inf(-1)
	case 1:
		high = math.Inf(1)
	}
	sign := float64(r.IntN(2)*2 - 1)
	part, second := 0, 0
	if len(s.Parts) > 0 {
		part, second = r.IntN(len(s.Parts)), r.IntN(len(s.Parts))
	}
	channel := r.IntN(len(s.Channels))
	kind := r.IntN(10)
	if len(s.Parts) == 0 {
		kind = r.IntN(2)
	}
	still := []float64{0.3, 1, 0.05}[r.IntN(3)]
	switch kind {
	case 0:
		return prove.Travel{Channel: channel}
	case 1:
		return prove.Output{Channel: channel, Low: low, High: high}
	case 2:
		return prove.Place{Part: part, Low: low, High: high}
	case 3:
		return prove.Differ{A: part, B: second, Sign: sign, Low: low, High: high}
	case 4:
		return prove.Change(part, low, high)
	case 5:
		return prove.Pair{A: part, B: second, Opposite: sign < 0, StillA: still, StillB: still}
	case 6:
		return prove.Far{A: part, B: second, Low: low, High: high, Idle: sign > 0, StillA: still, StillB: still}
	case 7, 8:
		return prove.Rising{Part: part, Control: r.IntN(len(s.Controls)), Sign: sign}
	}
	return prove.Turn{Axis: mixcore.Axis(1 + r.IntN(3)), Plus: sign > 0, Not: r.IntN(2) == 0, None: r.IntN(4) == 0}
}
