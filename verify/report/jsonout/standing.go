package jsonout

import (
	_ "embed"
	"io"

	"example.com/hingeline/verify/result"
)

// StandingSchema is the JSON Schema (2020-12) of what RenderStanding writes.
//
//go:embed standing.schema.json
var StandingSchema []byte

type standingJSON struct {
	Format     int             `json:"hingeline_standing"`
	Tool       string          `json:"tool"`
	Model      modelJSON       `json:"model"`
	Summary    string          `json:"summary"`
	Seen       string          `json:"seen_on_the_model"`
	Since      string          `json:"not_as_expected_since"`
	Current    bool            `json:"current"`
	Signatures []signatureJSON `json:"signatures"`
	Changes    []changeJSON    `json:"changes"`
	Troubles   []string        `json:"troubles"`
}

type signatureJSON struct {
	Number   int       `json:"number"`
	Name     string    `json:"name"`
	Role     string    `json:"role"`
	Date     string    `json:"date"`
	Key      string    `json:"key"`
	Vouched  string    `json:"vouched"`
	Tool     string    `json:"tool"`
	Place    string    `json:"place"`
	Remarks  string    `json:"remarks"`
	Accepted []string  `json:"accepted"`
	Genuine  bool      `json:"genuine"`
	Current  bool      `json:"current"`
	Counts   bool      `json:"counts"`
	Seen     *seenJSON `json:"seen_on_the_model"`
	Note     string    `json:"note"`
}

type seenJSON struct {
	Record     string `json:"record"`
	Date       string `json:"date"`
	Summary    string `json:"summary"`
	Steps      int    `json:"steps"`
	AsExpected int    `json:"as_expected"`
	Differ     int    `json:"not_as_expected"`
	Skipped    int    `json:"skipped"`
	Unseen     int    `json:"not_seen"`
	Reason     string `json:"reason"`

	ReasonUnseen string `json:"reason_not_all_seen"`
}

type changeJSON struct {
	Text   string     `json:"text"`
	Place  *placeJSON `json:"place"`
	Parts  []string   `json:"parts"`
	Checks []string   `json:"checks"`
}

// RenderStanding writes what has been signed about a model and what of it stands. The
// error is the writer's.
func RenderStanding(w io.Writer, tool string, model result.Model, s *result.Standing) error {
	doc := standingJSON{
		Format: Format, Tool: tool, Model: modelJSON(model), Summary: s.Summary, Seen: s.Seen, Since: s.Since, Current: s.Stands(),
		Signatures: []signatureJSON{}, Changes: []changeJSON{}, Troubles: list(s.Troubles),
	}
	for _, sig := range s.Signatures {
		doc.Signatures = append(doc.Signatures, signatureJSON{
			Number: sig.Number, Name: sig.Name, Role: sig.Role, Date: sig.Date, Key: sig.Key, Vouched: sig.Vouched, Tool: sig.Tool,
			Place: sig.Place, Remarks: sig.Remarks, Accepted: list(sig.Accepted), Genuine: sig.Genuine, Current: sig.Current, Counts: sig.Counts,
			Seen: (*seenJSON)(sig.Seen), Note: sig.Note,
		})
	}
	for _, c := range s.Changes {
		doc.Changes = append(doc.Changes, changeJSON{c.Text, placeOf(c.Place), list(c.Parts), list(c.Checks)})
	}
	return write(w, doc)
}
