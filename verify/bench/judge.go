package bench

import (
	"math"
	"slices"

	"example.com/hingeline/mixcore"
	"example.com/hingeline/verify/faults/cause"
	"example.com/hingeline/verify/faults/sight"
	"example.com/hingeline/verify/result"
)

// ways are the ways that words for a movement say.
var ways = map[Saw]sight.Way{
	WentUp: sight.Minus, WentRight: sight.Minus, WentIn: sight.Minus,
	WentDown: sight.Plus, WentLeft: sight.Plus, WentOut: sight.Plus,
}

var opposite = map[sight.Way]sight.Way{sight.Plus: sight.Minus, sight.Minus: sight.Plus}

// accuracyOf is what two places of a part must be apart for a ruler to tell.
func accuracyOf(look sight.Look, p *mixcore.Part) float64 {
	switch {
	case !p.Motion.Hinged():
		return float64(sight.AccuracyAmount)
	case look.Ruler:
		return float64(look.Accuracy)
	}
	return float64(sight.UsualAccuracy)
}

// seen is what was said of one part in a step, as causes are asked for it; measured is
// whether places count beside ways. False where nothing was said.
func (w *Walk) seen(s *Step, e *Expect, st *stepState, measured bool) (cause.Seen, bool) {
	seen := cause.Seen{Part: e.Part}
	saw, said := st.saw[e.Part]
	if !said {
		if saw = AsExpected; !st.closed {
			saw = Unsure
		}
	}
	w.taken(&seen, s, e, saw)
	if was, said := st.before[e.Part]; said && was != Unsure {
		ran := was == Runs
		seen.RanBefore = &ran
		seen.Way = sight.Unclear // faster or slower was not said beside it
	}
	w.readings(&seen, s, e, st, said && saw != AsExpected)
	if !measured {
		seen.Before, seen.After = nil, nil
	}
	return seen, seen != (cause.Seen{Part: e.Part})
}

// taken puts what was said in words into what was seen.
func (w *Walk) taken(seen *cause.Seen, s *Step, e *Expect, saw Saw) {
	p := &w.Model.Setup.Parts[e.Part]
	if p.Motion == mixcore.Power {
		w.motor(seen, s, e, saw)
		return
	}
	way := w.Look.Way(p, e.Move)
	watched := slices.Contains(s.Watch, e.Part)
	switch saw {
	case AsExpected:
		seen.Way = way
		if watched {
			early := false
			seen.Early = &early
		}
	case TooLittle, TooMuch:
		seen.Way = way
	case WrongTime:
		early := true
		seen.Way, seen.Early = way, &early
	case OtherWay:
		seen.Way = opposite[way]
	case DidNot:
		seen.Way = sight.Still
	case Unsure:
	default:
		seen.Way = ways[saw]
		if s.Stands() && saw == WentIn { // an extra at its inner end is at neutral
			seen.Way = sight.Still
		}
	}
}

// motor is taken of a motor.
func (w *Walk) motor(seen *cause.Seen, s *Step, e *Expect, saw Saw) {
	p := &w.Model.Setup.Parts[e.Part]
	yes, no := true, false
	switch saw {
	case AsExpected, TooLittle, TooMuch, WrongTime:
		seen.Runs = ran(turns(p, e.Move.To))
		if !s.Stands() {
			seen.RanBefore = ran(turns(p, e.Move.From))
		}
		if e.Way == "FASTER" || e.Way == "SLOWER" || e.Way == "STAYS" {
			seen.Way = w.Look.Way(p, e.Move)
		}
		if slices.Contains(s.Watch, e.Part) && saw != TooLittle && saw != TooMuch {
			early := saw == WrongTime
			seen.Early = &early
		}
	case DidNot:
		seen.Runs = ran(turns(p, e.Move.From))
		if seen.Runs != nil {
			seen.RanBefore = seen.Runs
			if *seen.Runs {
				seen.Way = sight.Still
			}
		}
	case Runs:
		seen.Runs = &yes
	case Stopped:
		seen.Runs = &no
	case Faster, Slower:
		seen.Runs, seen.RanBefore = &yes, &yes
		seen.Way = map[Saw]sight.Way{Faster: sight.Plus, Slower: sight.Minus}[saw]
	}
}

func ran(t turning) *bool {
	if t == unclear {
		return nil
	}
	does := t == runs
	return &does
}

// readings puts what was measured in place of what is expected. Where nothing was said of a
// way, it follows from two places, of a model that stands from one: from where a part that
// was measured only once came, or where it went, nobody looked.
func (w *Walk) readings(seen *cause.Seen, s *Step, e *Expect, st *stepState, said bool) {
	before, hasBefore := st.read[reading{part: e.Part, before: true}]
	after, hasAfter := st.read[reading{part: e.Part}]
	if hasBefore {
		seen.Before = &before
	}
	if hasAfter {
		seen.After = &after
	}
	if said || !hasBefore && !hasAfter {
		return
	}
	p := &w.Model.Setup.Parts[e.Part]
	off := w.off(s, e, st)
	switch {
	case p.Motion == mixcore.Power:
		seen.Way = sight.Unclear
	case hasBefore && hasAfter:
		seen.Way = w.Look.Way(p, sight.Move{From: before, To: after})
	case hasAfter && s.Stands():
		seen.Way = w.Look.Way(p, sight.Move{To: after})
	case len(off) > 0:
		seen.Way = sight.Unclear
	}
}

// differs says whether what was said of a part is not what it must do.
func (w *Walk) differs(s *Step, e *Expect, st *stepState) bool {
	switch st.saw[e.Part] {
	case TooLittle, TooMuch, WrongTime:
		return true
	}
	if len(w.off(s, e, st)) > 0 {
		return true
	}
	seen, _ := w.seen(s, e, st, false)
	p := &w.Model.Setup.Parts[e.Part]
	elsewhere := func(power float64, said *bool) bool {
		at := turns(p, power)
		return said != nil && at != unclear && *said != (at == runs)
	}
	switch {
	case seen.Way != sight.Unclear && w.Look.Ways(p, e.Move)&sight.Of(seen.Way) == 0:
		return true
	case p.Motion == mixcore.Power:
		return elsewhere(e.Move.To, seen.Runs) || elsewhere(e.Move.From, seen.RanBefore)
	}
	return false
}

// off are the readings of a part that are not where it must be, by how much.
func (w *Walk) off(s *Step, e *Expect, st *stepState) map[reading]float64 {
	list := map[reading]float64{}
	for _, r := range w.readingsOf(e.Part) {
		at, read := st.read[r]
		should := w.should(s, e, r)
		if by := at - should; read && math.Abs(by) >= accuracyOf(w.Look, &w.Model.Setup.Parts[e.Part]) {
			list[r] = by
		}
	}
	return list
}

// become says what became of a step.
func (w *Walk) become(i int, st *stepState) result.BenchState {
	s := &w.Steps[i]
	unsure := false
	for k := range s.Expect {
		if w.differs(s, &s.Expect[k], st) {
			return result.StepDiffers
		}
		unsure = unsure || st.saw[s.Expect[k].Part] == Unsure
	}
	switch {
	case st.skipped:
		return result.StepSkipped
	case !st.closed:
		return result.StepOpen
	case unsure:
		return result.StepUnsure
	case len(w.unmeasured(s, st)) > 0:
		return result.StepByEye
	}
	return result.StepAsExpected
}

// unmeasured are the names of the surfaces that were not measured in a step, where a ruler is
// at hand: of those that move by what a ruler tells, and where none does so of all. That they
// are as expected was seen by eye only.
func (w *Walk) unmeasured(s *Step, st *stepState) (names []string) {
	if !w.Look.Ruler {
		return nil
	}
	var moving, all []string
	moves := false
	for i := range s.Expect {
		e := &s.Expect[i]
		p := &w.Model.Setup.Parts[e.Part]
		if !p.Motion.Hinged() {
			continue
		}
		told := math.Abs(e.Move.By()) >= accuracyOf(w.Look, p)
		moves = moves || told
		if _, read := st.read[reading{part: e.Part}]; read {
			continue
		}
		all = append(all, p.Name)
		if told {
			moving = append(moving, p.Name)
		}
	}
	if moves {
		return moving
	}
	return all
}
