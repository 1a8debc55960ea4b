package signoff

import (
	"errors"
	"slices"

	"example.com/hingeline/airframes"
	"example.com/hingeline/airframes/diag"
	"example.com/hingeline/verify/resolved"
	"example.com/hingeline/verify/result"
	"example.com/hingeline/verify/script"
)

// digests are those of the resolved set-up and of what the scripts ask of it.
func digests(m *airframes.Model, scripts []script.File) (setUp, asked string, err error) {
	sentences, problems := resolved.Script(m, scripts)
	if diag.HasErrors(problems) {
		return "", "", errors.New("the script has mistakes")
	}
	return resolved.Digest(resolved.SetUp(m)), resolved.ScriptDigest(sentences), nil
}

// changesBetween are the differences of two set-ups and of what is asked of them; with
// which sentences each bears on, if that is wanted.
func changesBetween(old, new *work, checks bool) []result.Change {
	all := resolved.Differences(old.model, new.model)
	if old.asked != new.asked {
		asked, _ := resolved.ScriptDifferences(old.model, new.model, old.scripts, new.scripts) // digests has taken both
		all = append(all, asked...)
	}
	var changes []result.Change
	for _, d := range all {
		in := new
		if d.Gone {
			in = old
		}
		c := result.Change{Text: d.Text, Place: in.quoted(d.Place), Parts: d.Parts}
		if checks {
			c.Checks = in.about(d.Parts)
		}
		changes = append(changes, c)
	}
	return changes
}

// about are the sentences about parts, each once.
func (w *work) about(parts []string) (sentences []string) {
	if len(parts) > 0 && w.checks == nil {
		record, _ := script.Run(w.model, w.scripts, script.Selection{})
		w.checks = record.Checks
	}
	for i := range w.checks {
		if c := &w.checks[i]; slices.Contains(parts, c.Subject) && !slices.Contains(sentences, c.Sentence) {
			sentences = append(sentences, c.Sentence)
		}
	}
	return sentences
}

// quoted is a place with the line that stands there.
func (w *work) quoted(at diag.Place) result.Place {
	place := result.Place{File: at.File, Line: at.Line, Column: at.Column}
	sources := []*diag.Source{w.model.Source}
	for _, f := range w.scripts {
		sources = append(sources, diag.NewSource(f.Name, f.Text))
	}
	for _, s := range sources {
		if s.Name == at.File {
			place.Excerpt, _ = s.Line(at.Line)
			break
		}
	}
	return place
}
