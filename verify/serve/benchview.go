package serve

import (
	"strings"

	"example.com/hingeline/mixcore"
	"example.com/hingeline/verify"
	"example.com/hingeline/verify/bench"
	"example.com/hingeline/verify/report/figure"
	"example.com/hingeline/verify/result"
	"example.com/hingeline/verify/result/said"
	"example.com/hingeline/verify/sheet"
	"example.com/hingeline/verify/wording"
)

// benchView is all that the bench page shows.
type benchView struct {
	Kind       string    `json:"kind"` // "bench"
	Turn       int       `json:"turn"`
	Phase      string    `json:"phase"` // "start", "working", "question", "step", "again", "last", "over"
	Model      string    `json:"model"`
	Said       string    `json:"said"`
	Amiss      bool      `json:"amiss"`
	Changed    bool      `json:"changed"`    // the set-up is no longer what the walk is of
	Unfinished int       `json:"unfinished"` // at the start: the record to go on with
	Record     string    `json:"record"`
	How        string    `json:"how"`   // the steps were chosen
	Leave      string    `json:"leave"` // what to do before anybody goes away from the model
	Rests      []string  `json:"rests"` // how the controls stand at rest
	Question   string    `json:"question"`
	Number     int       `json:"number"` // of the question or the step
	Of         int       `json:"of"`
	Step       *stepView `json:"step,omitempty"`
	Seen       []string  `json:"seen"` // what is to be said once more: it was seen
	Outcome    *outcome  `json:"outcome,omitempty"`
	Report     string    `json:"report"`
	Tone       string    `json:"tone"`  // of the script's verdict on the set-up as it is now: "good", "heed" or "bad"
	Short      string    `json:"short"` // that verdict
	Fails      string    `json:"fails"` // what that means for a walk; empty where the script does not fail
	Motors     string    `json:"motors"`
	Runs       bool      `json:"runs"` // a motor runs in the step
	Look       int64     `json:"look"` // how long a question must stand there before it is answered, in milliseconds
}

// stepView is one step to do.
type stepView struct {
	Stand    []string   `json:"stand"`
	Move     []string   `json:"move"`
	Lost     bool       `json:"lost"`   // the movement is that the transmitter is switched off
	Back     bool       `json:"back"`   // first it is switched on again
	Beware   []string   `json:"beware"` // what to know before it is done
	Picture  string     `json:"picture"`
	Parts    []partView `json:"parts"`
	Touched  bool       `json:"touched"`
	Measured bool       `json:"measured"` // how far everything goes is asked too
}

// partView is one part in a step.
type partView struct {
	Number  int      `json:"number"`
	Name    string   `json:"name"`
	Moves   bool     `json:"moves"`
	Must    string   `json:"must"`
	Little  bool     `json:"little"` // it may move, so little that nobody could be sure
	Said    []string `json:"said"`
	Differs bool     `json:"differs"`
	MayBe   []string `json:"mayBe"`
	Ways    []string `json:"ways"` // in which a measurement may be; none of what has no angle
	MM      bool     `json:"mm"`   // it may be measured at the trailing edge, in millimetres
}

// view is what a page shows now; model is that at hand where there is no walk.
func (b *table) view(subject *subject) *benchView {
	b.mu.Lock()
	defer b.mu.Unlock()
	b.sending()
	c := &subject.checks
	v := &benchView{
		Kind: "bench", Turn: b.turn, Phase: "start", Model: subject.model.Name, Said: b.said, Amiss: b.amiss,
		Tone: c.Tone, Short: c.Short, Look: b.look.Milliseconds(),
	}
	if c.Tone == tones[said.Bad] {
		v.Fails = scriptFails
	}
	switch {
	case b.working != "":
		v.Phase, v.Said = "working", b.working
		return v
	case b.walk == nil:
		v.Unfinished = b.walks.Unfinished()
		return v
	}
	g, m := b.walk.Guide, b.walk.Steps.Model
	v.Model, v.Changed, v.Record, v.How, v.Of = m.Name, b.setUp != b.now, b.walk.Record(), b.walk.How, len(b.walk.Steps.Steps)
	at := g.Present()
	switch {
	case at.Ended:
		v.Phase, v.Report, v.Outcome = "over", b.report, b.outcome
		if o := b.outcome; o != nil && o.Tone == tones[said.Bad] { // a script that passes does not stand green above it
			v.Tone, v.Short = o.Tone, o.Word+": the report says why"
		}
	case at.Question != nil:
		v.Phase, v.Question, v.Of, v.Rests = "question", at.Question.Text, len(bench.Questions), verify.Resting(m)
		for i := range bench.Questions {
			if bench.Questions[i].Name == at.Question.Name {
				v.Number = i + 1
			}
		}
		if v.Number == 0 { // whether anything was changed since: it is none of those
			v.Of = 0
		}
	case at.Last:
		v.Phase, v.Leave = "last", g.Leave()
	case at.Step != nil:
		v.Phase, v.Number, v.Step = "step", at.Step.Number, b.step(g, &at)
		v.Motors, v.Runs = b.running(g)
		if b.again {
			v.Phase, v.Seen = "again", bench.OnceMore(at.Step)
		}
	}
	return v
}

// step is the step that is asked about.
func (b *table) step(g *bench.Guide, at *bench.Present) *stepView {
	s := at.Step
	v := &stepView{Stand: s.Stand, Move: s.Move, Lost: s.SignalLost, Back: s.SignalBack, Beware: s.Beware, Touched: at.Touched, Measured: b.walk.Steps.Look.Ruler}
	setup := &b.walk.Steps.Model.Setup
	from, to, _ := g.Poses()
	picture := sheet.Stands(b.walk.Steps.Model, &to)
	if !s.Stands() {
		picture = sheet.Moves(b.walk.Steps.Model, &from, &to)
	}
	for i := range s.Parts {
		part := &s.Parts[i]
		one := partView{Number: part.Number, Name: part.Name, Moves: part.Moves, Must: must(s, part, v.Measured), Little: !part.Moves && !part.Sure, Differs: part.Differs}
		if part.Said != "" {
			one.Said = append(one.Said, part.Said)
		}
		for _, r := range part.Reading {
			one.Said = append(one.Said, said.Measured(&r))
		}
		for _, saw := range g.MayBe(part.Number) {
			one.MayBe = append(one.MayBe, string(saw))
		}
		for k := range setup.Parts {
			if p := &setup.Parts[k]; p.Name == part.Name {
				one.Ways, one.MM = waysOf(p), p.Motion.Hinged() && p.Chord > 0
				if part.Moves {
					picture.Of = append(picture.Of, k)
				}
			}
		}
		v.Parts = append(v.Parts, one)
	}
	d := figure.Behind(&b.shape, &picture, "What must be seen, from behind")
	v.Picture = svgOf(&d, "seen")
	return v
}

// must is what a part must do in a step, in words.
func must(s *result.BenchStep, part *result.BenchPart, ruler bool) string {
	switch {
	case part.Moves:
		return said.MustDo(s, part, ruler)
	case !part.Sure:
		return said.MayMove + ": " + part.Exact
	case part.Way == "STOPPED":
		return "stays stopped"
	case part.Motion == result.Power:
		return "runs on, alike"
	case s.Stands():
		return "at neutral"
	}
	return "must not move"
}

// waysOf are the words for which way a hinged part stands off neutral.
func waysOf(p *mixcore.Part) []string {
	if !p.Motion.Hinged() {
		return nil
	}
	minus, plus := wording.Direction(p.Motion, false), wording.Direction(p.Motion, true)
	if p.Motion == mixcore.LeftRight {
		minus, plus = plus, minus
	}
	return []string{strings.ToLower(minus), strings.ToLower(plus)}
}
