package verify

import (
	"fmt"
	"strings"

	"example.com/hingeline/airframes"
	"example.com/hingeline/airframes/diag"
	"example.com/hingeline/verify/findings"
	"example.com/hingeline/verify/result"
	"example.com/hingeline/verify/script"
)

// FinishBench puts into a report of the bench what stands around it, and whether the
// scripts, which may be none, pass on the set-up as written.
func FinishBench(r *result.Bench, m *airframes.Model, files []script.File) {
	sources := sourcesOf(m, files)
	r.Tool, r.Model = Version, modelOf(m)
	r.Cautions = afterTheWalk(r, m)
	r.Findings = Findings(findings.Find(m), sources...)
	for i := range r.Fits {
		quotePlace(&r.Fits[i].Place, sources)
	}
	if r.Causes != nil {
		Finish(r.Causes, m, sources)
	}
	r.Script, r.Fails = ScriptAsWritten(m, files)
}

// ScriptAsWritten is what scripts say of a set-up as it is written, and whether they do not
// pass on it: "2 of 14 checks fail on the set-up as written". It is empty without a script,
// and of scripts that cannot be used.
func ScriptAsWritten(m *airframes.Model, files []script.File) (says string, fails bool) {
	if len(files) == 0 {
		return "", false
	}
	checked, problems := Check(m, files, script.Selection{})
	if checked == nil || diag.HasErrors(problems) {
		return "", false
	}
	passed, failed := checked.Counts()
	fails = checked.Verdict != result.Passed
	switch {
	case failed > 0:
		return fmt.Sprintf("%d of %d checks fail on the set-up as written", failed, passed+failed), fails
	case fails:
		return "it does not pass on the set-up as written", fails
	}
	return fmt.Sprintf("%d checks pass on the set-up as written", passed), fails
}

// afterTheWalk are the cautions that a walk leaves, as far as it was gone.
func afterTheWalk(r *result.Bench, m *airframes.Model) []string {
	list := cautions(m)
	if r.Done() {
		list = append(list[:1], beyondTheWalk()...)
	}
	if r.SignalWasLost() {
		for i := range list {
			if list[i] == lostSignal {
				list[i] = "Range check."
			}
		}
	}
	if len(r.Unmoved) > 0 {
		list = append(list, "Move what was not moved in this walk, and see what it does: "+strings.Join(r.Unmoved, ", ")+".")
	}
	return list
}

// Resting is how every control of a model stands at rest, in words.
func Resting(m *airframes.Model) []string { return rest(&m.Setup) }
