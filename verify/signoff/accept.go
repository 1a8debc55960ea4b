package signoff

import (
	"fmt"
	"strconv"
	"strings"

	"example.com/hingeline/verify/result"
)

// Acceptance is a warning that somebody takes on themselves, by its code, or where
// several have one code by code and line: "low-rates:14".
type Acceptance struct{ Code, Reason string }

// ParseAcceptance reads CODE=reason, with the reason in quotes or not.
func ParseAcceptance(text string) (Acceptance, error) {
	code, reason, ok := strings.Cut(text, "=")
	a := Acceptance{strings.TrimSpace(code), strings.TrimSpace(reason)}
	if !ok || a.Code == "" {
		return a, fmt.Errorf("%q is not CODE=\"why it is all right\"", text)
	}
	if n := len(a.Reason); n >= 2 && a.Reason[0] == '"' && a.Reason[n-1] == '"' {
		a.Reason = a.Reason[1 : n-1]
	}
	var err error
	a.Reason, err = cleanReason(a.Reason)
	return a, err
}

// warning is one that wants to be accepted.
type warning struct {
	Accepted
	several bool // others have the same code
}

// name is how it is accepted.
func (w *warning) name() string {
	if w.several {
		return w.Code + ":" + strconv.Itoa(w.Line)
	}
	return w.Code
}

// called says whether an acceptance names the warning.
func (w *warning) called(code string) bool {
	return code == w.name() || code == w.Code+":"+strconv.Itoa(w.Line)
}

// warningsOf are the warnings of a report that nobody has decided in the script.
func warningsOf(r *result.Report) []warning {
	var all []warning
	for _, f := range r.Findings {
		all = append(all, warning{Accepted: Accepted{Code: f.Code, Message: f.Message, File: f.Place.File, Line: f.Place.Line}})
	}
	for _, f := range r.Script {
		if !f.OnPurpose {
			all = append(all, warning{Accepted: Accepted{Code: f.Code, Message: f.Message, File: f.Place.File, Line: f.Place.Line}})
		}
	}
	for i := range all {
		for k := range all {
			all[i].several = all[i].several || i != k && all[i].Code == all[k].Code
		}
	}
	return all
}

// accept finds a reason for every warning. Each must have one, and each reason must be
// for a warning that is there.
func accept(r *result.Report, with []Acceptance) ([]Accepted, error) {
	all := warningsOf(r)
	done := []Accepted{}
	used := make([]bool, len(with))
	var open, odd []string
	for i := range all {
		w := &all[i]
		for k, a := range with {
			if !w.called(a.Code) {
				continue
			}
			if w.Reason != "" && !used[k] {
				odd = append(odd, fmt.Sprintf("%s is accepted twice", a.Code))
			}
			w.Reason, used[k] = a.Reason, true
		}
		if w.Reason == "" {
			open = append(open, fmt.Sprintf("%s (%s): --accept %s=\"why it is all right\"", w.Message, placeOf(w.File, w.Line), w.name()))
		}
		done = append(done, w.Accepted)
	}
	for k, a := range with {
		if !used[k] {
			odd = append(odd, fmt.Sprintf("there is no warning %s to accept", a.Code))
		}
	}
	switch {
	case len(open) > 0:
		what := fmt.Sprintf("%d warnings are", len(open))
		if len(open) == 1 {
			what = "a warning is"
		}
		refusal := refuse("put it right and check again, or accept each by its name with a reason", "%s not decided, so nothing is signed", what)
		refusal.Details = append(open, odd...)
		return nil, refusal
	case len(odd) > 0:
		refusal := refuse("accept what the report warns of, each once, and nothing else", "the warnings accepted are not those of the report, so nothing is signed")
		refusal.Details = odd
		return nil, refusal
	}
	return done, nil
}

func placeOf(file string, line int) string {
	if line == 0 {
		return file
	}
	return fmt.Sprintf("%s:%d", file, line)
}
