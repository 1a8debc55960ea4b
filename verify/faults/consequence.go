package faults

import (
	"fmt"
	"math"

	"example.com/hingeline/airframes"
	"example.com/hingeline/mixcore"
	"example.com/hingeline/mixcore/effect"
	"example.com/hingeline/verify/faults/sight"
	"example.com/hingeline/verify/wording"
)

// The ranks of what a mistake does to the aeroplane, the worst first. An order of judgement
// from what accident reports and field practice show; no source gives one.
const (
	rankMotor    = iota + 1 // a motor runs where it should stand
	rankReversed            // rolls, then pitches, then yaws the wrong way
	_                       // pitches
	_                       // yaws
	rankUnasked             // turns where nobody asked it to
	rankDead                // does not answer a control
	rankSignal              // does something else without a signal
	rankStrength            // answers much more or less
	rankStands              // a part is somewhere else
	rankTime                // in the right place, but not in time
)

// muchMore is by how much an answer must differ to be called stronger or weaker.
const muchMore = 1.25

// effects says what mistakes do to the aeroplane.
type effects struct {
	m      *airframes.Model
	air    *effect.Airframe
	trials []sight.Step // each stick to each end, and the loss of the signal
}

func newEffects(m *airframes.Model) *effects {
	e := &effects{m: m, air: effect.New(&m.Setup)}
	for i := range m.Setup.Controls {
		if m.Setup.Controls[i].Kind != mixcore.AxisControl {
			continue
		}
		for _, at := range []float64{100, -100} {
			to := m.Plan.Rest()
			to.Position[i] = at
			e.trials = append(e.trials, sight.StepTo(&m.Setup, to))
		}
	}
	lost := m.Plan.Rest()
	lost.SignalLost = true
	e.trials = append(e.trials, sight.StepTo(&m.Setup, lost))
	return e
}

// consequence is one thing that a mistake does.
type consequence struct {
	rank int
	text string
	at   *showing // where, if somewhere else than where it was found
}

// worst is the worst that a variant does: where a difference was found, and with each
// stick by itself.
func (e *effects) worst(variant *airframes.Model, shows *showing) consequence {
	worst := e.at(variant, shows)
	if shows.after > 0 {
		return worst
	}
	for i := range e.trials {
		s := showing{step: e.trials[i]}
		if !e.differs(variant, &s) {
			continue
		}
		if c := e.at(variant, &s); c.rank < worst.rank && c.rank < rankStrength {
			c.at = &s
			worst = c
		}
	}
	return worst
}

// differs says whether a step shows a difference, and puts the part that is furthest
// away into it.
func (e *effects) differs(variant *airframes.Model, s *showing) bool {
	_, right := outputs(e.m.Plan, s)
	_, wrong := outputs(variant.Plan, s)
	most := 0.0
	for part := range e.m.Setup.Parts {
		p := &e.m.Setup.Parts[part]
		by := math.Abs(right.Parts[part].Place() - wrong.Parts[part].Place())
		if by > e.m.StillOf(p) && by > most {
			most, s.part = by, part
		}
	}
	return most > 0
}

// at is what a variant does at one step, in the worst words that are true.
func (e *effects) at(variant *airframes.Model, s *showing) consequence {
	setup := &e.m.Setup
	p := &setup.Parts[s.part]
	rightFrom, right := outputs(e.m.Plan, s)
	wrongFrom, wrong := outputs(variant.Plan, s)
	if s.after > 0 {
		return consequence{rank: rankTime, text: "the " + p.Name + " moves at another speed"}
	}
	for i := range setup.Parts {
		q := &setup.Parts[i]
		if q.Motion == mixcore.Power && q.Motor.Stopped(right.Parts[i].Amount) && !variant.Setup.Parts[i].Motor.Stopped(wrong.Parts[i].Amount) {
			return consequence{rank: rankMotor, text: "the " + q.Name + " RUNS at " + wording.Percent(wrong.Parts[i].Amount) + " where it should stand"}
		}
	}
	if s.step.To.SignalLost && !s.step.From.SignalLost {
		return consequence{rank: rankSignal, text: "without a signal the " + p.Name + ": " + wording.Position(p, wrong.Parts[s.part])}
	}
	if c, ok := e.turns(e.air.Change(rightFrom, right), e.air.Change(wrongFrom, wrong)); ok && !s.step.Stands() {
		return c
	}
	if p.Motion == mixcore.Power && !p.Motor.Stopped(right.Parts[s.part].Amount) && p.Motor.Stopped(wrong.Parts[s.part].Amount) {
		return consequence{rank: rankDead, text: "the " + p.Name + " stands where it should run at " + wording.Percent(right.Parts[s.part].Amount)}
	}
	return consequence{rank: rankStands, text: fmt.Sprintf("the %s: %s instead of %s", p.Name,
		wording.Position(p, wrong.Parts[s.part]), wording.Position(p, right.Parts[s.part]))}
}

// turnWords are the words for a turn about an axis: what the model does and what it
// should do, plus and minus, and the turn without a side.
var turnWords = map[mixcore.Axis]struct {
	does, should map[effect.Answer]string
	any          string
}{
	mixcore.Roll: {
		map[effect.Answer]string{effect.Plus: "rolls RIGHT", effect.Minus: "rolls LEFT"},
		map[effect.Answer]string{effect.Plus: "roll RIGHT", effect.Minus: "roll LEFT"}, "roll",
	},
	mixcore.Pitch: {
		map[effect.Answer]string{effect.Plus: "pitches UP", effect.Minus: "pitches DOWN"},
		map[effect.Answer]string{effect.Plus: "pitch UP", effect.Minus: "pitch DOWN"}, "pitch",
	},
	mixcore.Yaw: {
		map[effect.Answer]string{effect.Plus: "yaws RIGHT", effect.Minus: "yaws LEFT"},
		map[effect.Answer]string{effect.Plus: "yaw RIGHT", effect.Minus: "yaw LEFT"}, "yaw",
	},
}

// turns compares two turns of the aeroplane, axis by axis; ok is false where they are
// much the same.
func (e *effects) turns(right, wrong effect.Change) (worst consequence, ok bool) {
	put := func(c consequence) {
		if !ok || c.rank < worst.rank {
			worst, ok = c, true
		}
	}
	for i, axis := range []mixcore.Axis{mixcore.Roll, mixcore.Pitch, mixcore.Yaw} {
		w, g, words := right.Answer(axis), wrong.Answer(axis), turnWords[axis]
		wanted, turns := words.should[w] != "", words.does[g] != ""
		switch {
		case wanted && turns && w != g:
			put(consequence{rank: rankReversed + i, text: "the model " + words.does[g] + " where it should " + words.should[w]})
		case wanted && g == effect.None:
			put(consequence{rank: rankDead, text: "the model does not " + words.any + " where it should " + words.should[w]})
		case w == effect.None && turns:
			put(consequence{rank: rankUnasked, text: "the model " + words.does[g] + " where it should not"})
		case wanted && turns:
			by := math.Abs(wrong.About(axis) / right.About(axis))
			if by > muchMore || by < 1/muchMore {
				put(consequence{rank: rankStrength, text: fmt.Sprintf("the model %s, %.2g times as strongly as it should", words.does[g], by)})
			}
		}
	}
	return worst, ok
}
