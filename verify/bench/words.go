package bench

import (
	"math"

	"example.com/hingeline/airframes"
	"example.com/hingeline/mixcore"
	"example.com/hingeline/verify/faults/sight"
	"example.com/hingeline/verify/result"
	"example.com/hingeline/verify/sheet"
	"example.com/hingeline/verify/wording"
)

var motions = map[mixcore.Motion]result.Motion{
	mixcore.UpDown: result.UpDown, mixcore.LeftRight: result.LeftRight, mixcore.Power: result.Power, mixcore.OutIn: result.OutIn,
}

// rows are where kinds of parts are on a picture from behind.
var rows = map[mixcore.Kind]string{
	"aileron": "wing", "flap": "wing", "flaperon": "wing", "elevon": "wing", "spoiler": "brakes", "airbrake": "brakes",
	"elevator": "tail", "taileron": "tail", "v-tail": "tail", "canard": "canard", "rudder": "fin",
}

// spots are where parts are on a picture.
func spots(m *airframes.Model) []result.Spot {
	shape := sheet.Shape(m)
	list := make([]result.Spot, len(m.Setup.Parts))
	for i := range list {
		p, o := &m.Setup.Parts[i], &shape.Parts[i]
		row := rows[p.Kind]
		if row == "" && p.Motion == mixcore.LeftRight {
			row = "wheel"
		}
		if row == "" || shape.Semispan <= 0 {
			continue
		}
		from, to := o.Inner.Out/shape.Semispan, o.Outer.Out/shape.Semispan
		if from > to {
			from, to = to, from
		}
		list[i] = result.Spot{Row: row, From: math.Max(from, -1), To: math.Min(to, 1)}
	}
	return list
}

// step is a step in words, with what was said in it.
func (w *Walk) step(i int, st *stepState) result.BenchStep {
	s := &w.Steps[i]
	said := result.BenchStep{
		Number: i + 1, Of: w.chosen, Further: s.Further, Stand: s.Said.Stand, Move: s.Said.Move, Beware: s.Said.Beware,
		State: w.become(i, st), Reason: st.reason, Measured: st.measured(),
	}
	said.SignalLost = s.To.SignalLost && !s.From.SignalLost
	said.SignalBack = i > 0 && w.Steps[i-1].To.SignalLost && !s.From.SignalLost
	for k := range s.Expect {
		e := &s.Expect[k]
		p := &w.Model.Setup.Parts[e.Part]
		part := result.BenchPart{
			Number: k + 1, Name: p.Name, Stage: s.Said.Parts[k].Stage, Motion: motions[p.Motion], Way: e.Way, Exact: e.Exact, Moves: e.Moves, Sure: e.Sure,
			Amount: w.amount(e), To: w.to(s, e), Spot: w.spots[e.Part], Said: w.said(e, st), Differs: w.differs(s, e, st), How: w.how(s, e, st), Reading: w.readingWords(s, e, st),
		}
		if e.Takes > 0 {
			part.Takes = "about " + wording.Time(mixcore.Seconds(math.Round(float64(e.Takes)*10)/10))
		}
		said.Parts = append(said.Parts, part)
	}
	return said
}

// amount is by how much a part must move: "15.4° (10 mm)", "50 %".
func (w *Walk) amount(e *Expect) string {
	p := &w.Model.Setup.Parts[e.Part]
	by := math.Abs(e.Move.By())
	switch {
	case p.Motion == mixcore.Power && (!e.Moves || e.Way == "STOPS"), by == 0:
		return ""
	case p.Motion == mixcore.Power:
		return "power " + wording.Percent(mixcore.Percent(e.Move.To))
	case !e.Moves:
		return ""
	case !p.Motion.Hinged():
		return wording.Percent(mixcore.Percent(by))
	}
	text := wording.Angle(mixcore.Degrees(by))
	if p.Chord > 0 {
		text += " (" + wording.Length(mixcore.ChordTravel(p.Chord, mixcore.Degrees(by))) + ")"
	}
	return text
}

// to is where a part must come to, of one that clearly does not come from neutral; else empty.
func (w *Walk) to(s *Step, e *Expect) string {
	p := &w.Model.Setup.Parts[e.Part]
	if !e.Moves || s.Stands() || !p.Motion.Hinged() || math.Abs(e.Move.From) < accuracyOf(w.Look, p) {
		return ""
	}
	return w.placeWords(e.Part, e.Move.To)
}

// said is what was said of a part in words.
func (w *Walk) said(e *Expect, st *stepState) string {
	var text string
	if saw, ok := st.saw[e.Part]; ok {
		text = string(saw)
	}
	if was, ok := st.before[e.Part]; ok {
		if text != "" {
			text += "; "
		}
		text += "before the movement " + string(was)
	}
	return text
}

// placeWords is where a part is: "12.4° UP (9 mm)", "neutral", "50 %".
func (w *Walk) placeWords(part int, at float64) string {
	p := &w.Model.Setup.Parts[part]
	if !p.Motion.Hinged() {
		return wording.Percent(mixcore.Percent(at))
	}
	if math.Abs(at) < float64(wording.NeutralBelow) {
		return "neutral"
	}
	text := wording.Angle(mixcore.Degrees(at)) + " " + wording.Direction(p.Motion, at > 0)
	if p.Chord > 0 {
		text += " (" + wording.Length(mixcore.ChordTravel(p.Chord, mixcore.Degrees(math.Abs(at)))) + ")"
	}
	return text
}

// readingWords are the places of a part that were measured.
func (w *Walk) readingWords(s *Step, e *Expect, st *stepState) (list []result.BenchReading) {
	for _, r := range w.readingsOf(e.Part) {
		at, ok := st.read[r]
		if !ok {
			continue
		}
		one := result.BenchReading{Before: r.before, Says: w.placeWords(e.Part, at) + alone(r.servo), Off: w.beyond(e.Part, at, w.should(s, e, r))}
		list = append(list, one)
	}
	return list
}

// LookWords says how somebody looks.
func LookWords(look sight.Look) string {
	less := "less than " + wording.SetAngle(look.Visible) + " is not seen"
	if !look.Ruler {
		return "which way each part goes; " + less
	}
	return "which way each part goes, and where it was measured how far, to " + wording.SetAngle(look.Accuracy) + "; " + less + " as a movement"
}
