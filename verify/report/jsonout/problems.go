package jsonout

import (
	"io"

	"example.com/hingeline/verify/result"
)

type problemsJSON struct {
	Format   int           `json:"hingeline_problems"`
	Tool     string        `json:"tool"`
	Verdict  string        `json:"verdict"`
	Problems []problemJSON `json:"problems"`
}

type problemJSON struct {
	Severity string     `json:"severity"`
	Code     string     `json:"code"`
	Message  string     `json:"message"`
	Hint     string     `json:"hint"`
	Place    *placeJSON `json:"place"`
}

// RenderProblems writes what is wrong with files that cannot be used, in place
// of an answer. The error is the writer's.
func RenderProblems(w io.Writer, p *result.Problems) error {
	doc := problemsJSON{
		Format: Format, Tool: p.Tool, Verdict: string(result.NothingChecked), Problems: []problemJSON{},
	}
	for _, one := range p.List {
		severity := "error"
		if one.Warning {
			severity = "warning"
		}
		doc.Problems = append(doc.Problems, problemJSON{
			Severity: severity, Code: one.Code, Message: one.Message, Hint: one.Hint, Place: placeOf(one.Place),
		})
	}
	return write(w, doc)
}
