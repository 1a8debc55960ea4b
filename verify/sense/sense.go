package sense

import (
	"example.com/hingeline/airframes"
	"example.com/hingeline/airframes/diag"
	"example.com/hingeline/mixcore"
	"example.com/hingeline/mixcore/effect"
	"example.com/hingeline/verify/phrase"
	"example.com/hingeline/verify/result"
)

// Look looks at what scripts ask of a model: first what fights the aeroplane, in
// the script's order, then the rest in the order of Codes. Suspicious
// expectations are looked for among the sentences that were selected, and fail
// the check unless the sentence says that it is on purpose; all else is a
// warning, about the script as a whole.
func Look(m *airframes.Model, asked []phrase.Asked) []result.ScriptFinding {
	l := &looker{m: m, s: &m.Setup, air: effect.New(&m.Setup), asked: asked}
	l.suspicious()
	l.contradictions()
	l.toothless()
	l.unmentioned()
	l.controls()
	l.rates()
	return l.found
}

// looker is one look at a script.
type looker struct {
	m     *airframes.Model
	s     *mixcore.Setup
	air   *effect.Airframe
	asked []phrase.Asked
	found []result.ScriptFinding
}

func (l *looker) add(f result.ScriptFinding) { l.found = append(l.found, f) }

// about is a finding about one sentence.
func about(a *phrase.Asked, code, message, reason, hint string) result.ScriptFinding {
	return result.ScriptFinding{Code: code, Message: message, Sentence: a.Sentence, Place: a.Place, Reason: reason, Hint: hint}
}

// missing is a finding about a sentence that is not there, at the line of the
// airframe file that wants it. right is one that would do; it may be empty.
func missing(at diag.Place, code, message, reason, right string) result.ScriptFinding {
	f := result.ScriptFinding{Code: code, Message: message, Reason: reason, Right: right,
		Place: result.Place{File: at.File, Line: at.Line, Column: at.Column}}
	if right != "" {
		f.Hint = "write " + quoted(right)
	}
	return f
}

func quoted(sentence string) string { return "“" + sentence + "”" }
