package signoff

import (
	"errors"

	"example.com/hingeline/airframes"
	"example.com/hingeline/airframes/diag"
	"example.com/hingeline/verify/result"
	"example.com/hingeline/verify/script"
)

// work is what was signed, or is there now: a set-up and what it is asked, resolved.
type work struct {
	model        *airframes.Model
	scripts      []script.File
	setUp, asked string // digests
	checks       []result.Check
}

// same says whether nothing that matters differs.
func (w *work) same(other *work) bool {
	return w != nil && other != nil && w.setUp == other.setUp && w.asked == other.asked
}

// workOf resolves a set-up and its scripts.
func workOf(m *airframes.Model, scripts []script.File) (*work, error) {
	w := &work{model: m, scripts: scripts}
	var err error
	w.setUp, w.asked, err = digests(m, scripts)
	return w, err
}

var errUnreadable = errors.New("this version cannot read the files that were signed")

// work resolves what a record holds, as this version understands it.
func (r *Record) work() (*work, error) {
	m, problems := airframes.Load(r.Airframe.File, []byte(r.Airframe.Text))
	if m == nil || diag.HasErrors(problems) {
		return nil, errUnreadable
	}
	w, err := workOf(m, r.files())
	if err != nil {
		return nil, errUnreadable
	}
	return w, nil
}

func (r *Record) files() []script.File {
	var files []script.File
	for _, f := range r.Scripts {
		files = append(files, script.File{Name: f.File, Text: []byte(f.Text)})
	}
	return files
}

// sameTexts says whether a record holds the same files as are there now, whatever they
// are called.
func (r *Record) sameTexts(now *work) bool {
	if r.Airframe.Text != string(now.model.Source.Text) || len(r.Scripts) != len(now.scripts) {
		return false
	}
	for i, f := range r.Scripts {
		if f.Text != string(now.scripts[i].Text) {
			return false
		}
	}
	return true
}

// works resolves records, each once.
type works map[*Record]*work

// of is the work of a record; nil where this version cannot read it.
func (all works) of(r *Record) *work {
	if w, ok := all[r]; ok {
		return w
	}
	for other, w := range all {
		if w != nil && r.sameTexts(w) && r.Airframe.File == other.Airframe.File {
			all[r] = w
			return w
		}
	}
	w, err := r.work()
	if err != nil {
		w = nil
	}
	all[r] = w
	return w
}
