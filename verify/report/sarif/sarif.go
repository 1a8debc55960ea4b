// Package sarif writes what a control check found in the Static Analysis Results
// Interchange Format, version 2.1.0, for editors and servers that show such things beside
// the lines of a file.
//
// Failed checks are errors at their sentences, with the lines of the airframe file to look
// at as related places; warnings are warnings where they are. Checks that passed are no
// results. A run in which nothing was checked has a result that says so: an empty list
// would read as a pass. It never decides anything.
// Start at [Render].
package sarif

import (
	"encoding/json"
	"io"
	"time"

	"example.com/hingeline/verify/result"
	"example.com/hingeline/verify/result/said"
)

// Schema is the address by which the format's own schema goes.
const Schema = "https://docs.oasis-open.org/sarif/sarif/v2.1.0/errata01/os/schemas/sarif-schema-2.1.0.json"

// Render writes the report. The error is the writer's.
func Render(w io.Writer, r *result.Report) error {
	found := resultsOf(r)
	run := runJSON{
		Tool: toolJSON{driverJSON{
			Name: driverName, Version: r.Tool,
			FullName: "Hingeline, a control check of radio-control models",
			Rules:    rulesOf(found),
		}},
		Invocations: []invocationJSON{invocationOf(r)},
		Artifacts:   artifactsOf(r),
		ColumnKind:  "unicodeCodePoints",
		Results:     found.list,
		Properties: runPropertiesJSON{
			Model: r.Model.Name, Verdict: string(r.Verdict), Words: said.VerdictOf(r).String(),
			SetUp: r.SetUp, Asked: r.Asked, Date: r.Date,
		},
	}
	run.Properties.Passed, run.Properties.Failed = r.Counts()
	run.Properties.LeftOut = r.NotSelected
	e := json.NewEncoder(w)
	e.SetEscapeHTML(false)
	e.SetIndent("", "  ")
	return e.Encode(logJSON{Schema: Schema, Version: "2.1.0", Runs: []runJSON{run}})
}

// invocationOf says whether the check ran, which one that checked nothing did not.
func invocationOf(r *result.Report) invocationJSON {
	v := invocationJSON{Successful: r.Verdict != result.NothingChecked && len(r.Checks) > 0}
	if at, err := time.Parse(time.RFC3339, r.Date); err == nil {
		v.End = at.UTC().Format(time.RFC3339)
	}
	if !v.Successful {
		v.Notifications = []notificationJSON{{Level: levelError, Message: messageJSON{said.VerdictOf(r).String()}}}
	}
	return v
}

// artifactsOf are the files that the check rests on.
func artifactsOf(r *result.Report) []artifactJSON {
	list := []artifactJSON{}
	for _, p := range r.Prints {
		list = append(list, artifactJSON{Location: artifactLocationJSON{uri(p.File)}, Hashes: map[string]string{"sha-256": p.SHA256}})
	}
	return list
}
