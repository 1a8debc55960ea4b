package verify

import (
	"fmt"

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
	if len(files) == 0 {
		return
	}
	checked, problems := Check(m, files, script.Selection{})
	if checked == nil || diag.HasErrors(problems) {
		return
	}
	passed, failed := checked.Counts()
	r.Fails = checked.Verdict != result.Passed
	switch {
	case failed > 0:
		r.Script = fmt.Sprintf("%d of %d checks fail on the set-up as written", failed, passed+failed)
	case r.Fails:
		r.Script = "it does not pass on the set-up as written"
	default:
		r.Script = fmt.Sprintf("%d checks pass on the set-up as written", passed)
	}
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
	return list
}

// Resting is how every control of a model stands at rest, in words.
func Resting(m *airframes.Model) []string { return rest(&m.Setup) }
