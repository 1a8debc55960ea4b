package verify

import (
	"example.com/hingeline/airframes/diag"
	"example.com/hingeline/verify/result"
)

// Problems are problems as plain values, each with the line of the file that it
// speaks of: what is said in place of a report.
func Problems(problems []diag.Problem, sources ...*diag.Source) *result.Problems {
	all := &result.Problems{Tool: Version}
	for _, p := range problems {
		all.List = append(all.List, result.Problem{Finding: finding(p, sources), Warning: p.Severity == diag.Warning})
	}
	return all
}

func finding(p diag.Problem, sources []*diag.Source) result.Finding {
	place := result.Place{File: p.File, Line: p.Line, Column: p.Column}
	quotePlace(&place, sources)
	return result.Finding{Code: p.Code, Message: p.Message, Hint: p.Hint, Place: place}
}
