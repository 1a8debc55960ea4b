package sheet

import (
	"math"

	"example.com/hingeline/airframes"
	"example.com/hingeline/mixcore"
	"example.com/hingeline/verify/phrase"
	"example.com/hingeline/verify/result"
	"example.com/hingeline/verify/script"
	"example.com/hingeline/verify/wording"
)

// pictures is where every part stands in each check of a record, in its order.
//
// A sentence about every position is shown where it fails; where it holds, where it has
// least to spare, if that was looked for, else where the scenario has the controls. What
// was judged at a time on the way is shown at that time.
func pictures(m *airframes.Model, record *script.Record, shape *result.Shape) []result.Picture {
	d := depicter{m: m, shape: shape, words: phrase.NewVocabulary(m), before: m.Plan.NewOutput(), now: m.Plan.NewOutput()}
	list := make([]result.Picture, len(record.Judged))
	for i := range record.Judged {
		list[i] = d.picture(&record.Judged[i], &record.Checks[i])
	}
	return list
}

// depicter makes pictures one after another.
type depicter struct {
	m           *airframes.Model
	shape       *result.Shape
	words       *phrase.Vocabulary
	before, now *mixcore.Output
}

func (d *depicter) picture(judged *script.Judged, check *result.Check) result.Picture {
	at := shownAt(judged)
	before := d.evaluate(judged, at)
	p := result.Picture{Of: d.about(&judged.Outcome), Moves: at.Moved}
	for i := range d.m.Setup.Parts {
		p.Stands = append(p.Stands, d.stand(i, before))
	}
	if judged.Outcome.Verb == phrase.Turn {
		p.Of = moved(p.Stands)
	}
	if len(p.Of) > 0 && tells(judged) {
		p.Want = d.want(&judged.Outcome, before, &p, check)
	}
	return p
}

// moved are the parts that moved: what there is to see where the model is to turn.
func moved(stands []result.Stand) []int {
	var parts []int
	for i := range stands {
		if stands[i].Moved {
			parts = append(parts, i)
		}
	}
	return parts
}

// shownAt is the situation that a check is shown at.
func shownAt(judged *script.Judged) phrase.Situation {
	switch v := &judged.Verdict; {
	case v.Found != nil:
		return *v.Found
	case v.Worst != nil:
		return *v.Worst
	}
	return judged.At
}

// tells says whether the place where a check is shown is what decided it.
func tells(judged *script.Judged) bool {
	return judged.Outcome.Every == nil || judged.Verdict.Found != nil || judged.Verdict.Worst != nil
}

// evaluate works out what the model does before the movement, nil where there was none,
// and when it was judged.
func (d *depicter) evaluate(judged *script.Judged, at phrase.Situation) (before *mixcore.Output) {
	now := at.Now.Input()
	if !at.Moved {
		d.m.Plan.Eval(&now, d.now)
		return nil
	}
	from := at.Before.Input()
	d.m.Plan.Eval(&from, d.before)
	if judged.Verdict.Timed {
		d.m.Plan.EvalAfter(&from, &now, judged.Verdict.Time, d.now)
	} else {
		d.m.Plan.Eval(&now, d.now)
	}
	return d.before
}

// about are the parts that an outcome is about: of a channel those that it moves.
func (d *depicter) about(o *phrase.Outcome) []int {
	if len(o.Subject.Channels) == 0 {
		return append([]int(nil), o.Subject.Parts...)
	}
	return drivenBy(&d.m.Setup, o.Subject.Channels[0])
}

// drivenBy are the parts that a channel moves.
func drivenBy(s *mixcore.Setup, channel int) []int {
	var parts []int
	for i := range s.Parts {
		for _, drive := range s.Parts[i].Drives {
			if drive.Channel == channel {
				parts = append(parts, i)
				break
			}
		}
	}
	return parts
}

func (d *depicter) stand(part int, before *mixcore.Output) result.Stand {
	p := &d.m.Setup.Parts[part]
	out := d.now.Parts[part]
	at := neat(out.Place())
	s := result.Stand{From: at, At: at, Says: wording.Position(p, out)}
	if before != nil {
		s.From = neat(before.Parts[part].Place())
		if by := out.Place() - before.Parts[part].Place(); math.Abs(by) >= d.m.StillOf(p) {
			s.Moved, s.Way = true, wording.Direction(p.Motion, by > 0)
		}
		return s
	}
	s.Way = placeWay(p, out)
	return s
}

// placeWay is the way of a place; empty for neutral and for power.
func placeWay(p *mixcore.Part, o mixcore.PartOutput) string {
	switch {
	case p.Motion == mixcore.OutIn:
		return wording.Direction(p.Motion, wording.Position(p, o) != wording.Direction(p.Motion, false))
	case p.Motion.Hinged() && math.Abs(float64(o.Angle)) >= float64(wording.NeutralBelow):
		return wording.Direction(p.Motion, o.Angle > 0)
	}
	return ""
}

// want is the stretch in which the first of the parts should be.
func (d *depicter) want(o *phrase.Outcome, before *mixcore.Output, p *result.Picture, check *result.Check) *result.Want {
	stretch, told := d.words.StandWanted(o, before, d.now)
	if !told {
		return nil
	}
	stand := &p.Stands[p.Of[0]]
	low, high := d.ends(p.Of[0], stand)
	w := &result.Want{Low: stretch.Low, High: stretch.High, Says: check.Wanted}
	if w.LowOpen = math.IsInf(w.Low, -1); w.LowOpen {
		w.Low = min(low, w.High)
	}
	if w.HighOpen = math.IsInf(w.High, 1); w.HighOpen {
		w.High = max(high, w.Low)
	}
	return w
}

// ends are where a part stops in a drawing.
func (d *depicter) ends(part int, s *result.Stand) (low, high float64) {
	if !d.m.Setup.Parts[part].Motion.Hinged() {
		return 0, 100
	}
	most := d.shape.Parts[part].Most
	return min(-most, s.From, s.At), max(most, s.From, s.At)
}
