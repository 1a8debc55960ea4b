package mistake

import (
	"fmt"

	"example.com/hingeline/airframes"
	"example.com/hingeline/airframes/diag"
	"example.com/hingeline/mixcore"
)

// lister gathers the mistakes of one kind.
type lister struct {
	m      *airframes.Model
	s      *mixcore.Setup
	others []*airframes.Model
	kind   *Kind
	found  []Mistake
}

func all(m *airframes.Model, o Options) []Mistake {
	l := &lister{m: m, s: &m.Setup, others: o.Others}
	for _, k := range kinds {
		if o.wants(k.Code) {
			l.kind = k
			k.list(l)
		}
	}
	if o.Pairs {
		l.pairs()
	}
	return l.found
}

// wants says whether a kind is asked for.
func (o *Options) wants(code string) bool {
	for _, c := range o.Only {
		if c == code {
			return true
		}
	}
	return len(o.Only) == 0
}

// words are what is said of a mistake: what is wrong, the edit as an instruction, and
// the instruction that takes it back.
type words struct{ text, change, undo string }

// back are words of which the edit is its own way back.
func back(text, change string) words { return words{text, change, change} }

func (l *lister) add(w words, place diag.Place, edit func(*mixcore.Setup)) {
	l.found = append(l.found, Mistake{Kind: l.kind, Text: w.text, Change: w.change, Undo: w.undo, place: place, Edit: edit})
}

// addOnModel adds a mistake that is made on the model and not in the transmitter.
func (l *lister) addOnModel(w words, place diag.Place, edit func(*mixcore.Setup)) {
	l.add(w, place, edit)
	l.found[len(l.found)-1].OnModel = true
}

// channel names a channel: "channel 4 (port flap)".
func (l *lister) channel(i int) string { return channelName(&l.s.Channels[i]) }

func channelName(c *mixcore.Channel) string {
	if c.Name == "" {
		return fmt.Sprintf("channel %d", c.Number)
	}
	return fmt.Sprintf("channel %d (%s)", c.Number, c.Name)
}

// eachDrive visits every servo of every part.
func (l *lister) eachDrive(visit func(part, drive int, p *mixcore.Part, d *mixcore.Drive)) {
	for i := range l.s.Parts {
		for k := range l.s.Parts[i].Drives {
			visit(i, k, &l.s.Parts[i], &l.s.Parts[i].Drives[k])
		}
	}
}

// servo names one servo: "the servo of the port flap", "servo 2 of the port flap".
func servo(p *mixcore.Part, drive int) string {
	what := "the servo"
	if p.Motion == mixcore.Power {
		what = "the motor controller"
	}
	if len(p.Drives) > 1 {
		what = fmt.Sprintf("servo %d", drive+1)
	}
	return what + " of the " + p.Name
}
