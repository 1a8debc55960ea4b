package jsonout

import (
	"io"
	"path/filepath"
	"strings"
	"testing"

	"example.com/hingeline/airframes/airframestest"
	"example.com/hingeline/verify/report/sample"
	"example.com/hingeline/verify/result"
)

func standingOf(t *testing.T, s *result.Standing) []byte {
	return document(t, func(w io.Writer) error { return RenderStanding(w, "0.1.0", sample.SignedModel(), s) })
}

func TestStandingGolden(t *testing.T) {
	airframestest.Golden(t, filepath.Join("testdata", "standing.json"), standingOf(t, sample.SignedBefore()), *update)
}

func TestStandingKeepsToItsSchema(t *testing.T) {
	schema := compile(t, StandingSchema)
	for name, s := range map[string]*result.Standing{
		"signed": sample.Signed(), "before": sample.SignedBefore(), "falsely": sample.SignedFalsely(), "in spite": sample.SignedInSpite(), "since": sample.SignedThenSeen(), "one": sample.SignedByOne(), "nothing": sample.NotSigned(),
	} {
		if err := validate(t, schema, standingOf(t, s)); err != nil {
			t.Errorf("%s: %v", name, err)
		}
	}
}

// Every planted fault must be refused, or the schema would accept anything.
func TestStandingSchemaRefusesOtherShapes(t *testing.T) {
	schema := compile(t, StandingSchema)
	good := string(standingOf(t, sample.SignedBefore()))
	for _, c := range []struct{ from, to string }{
		{`"hingeline_standing": 6`, `"hingeline_standing": 5`},
		{`"role": "builder"`, `"role": "pilot"`},
		{`"date": "2026-11-25T20:15:00Z"`, `"date": "2026-11-25"`},
		{`"key": "SHA256:`, `"key": "MD5:`},
		{`"genuine": true`, `"genuine": "true"`},
		{`"counts": true,`, ``},
		{`"number": 1`, `"number": 0`},
		{`"current": false,`, `"current": false, "safe": true,`},
		{`"troubles": []`, `"troubles": null`},
		{`"parts": [`, `"parts": [0, `},
	} {
		bad := strings.Replace(good, c.from, c.to, 1)
		if bad == good {
			t.Fatalf("%q is not in the document", c.from)
		}
		if validate(t, schema, []byte(bad)) == nil {
			t.Errorf("%s: accepted", c.to)
		}
	}
}
