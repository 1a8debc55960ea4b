package jsonout

import (
	"encoding/json"
	"io"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"example.com/hingeline/airframes/airframestest"
	"example.com/hingeline/verify/report/sample"
	"example.com/hingeline/verify/result"
)

// openSchema is what readers of the open mutation-testing report schema, version 2, must
// find: its required fields, its words for a status, and its lines and columns from 1.
const openSchema = `{
  "type": "object",
  "required": ["schemaVersion", "thresholds", "files"],
  "properties": {
    "schemaVersion": {"const": "2"},
    "thresholds": {
      "type": "object", "required": ["high", "low"],
      "properties": {"high": {"$ref": "#/$defs/percent"}, "low": {"$ref": "#/$defs/percent"}}
    },
    "files": {"type": "object", "additionalProperties": {
      "type": "object", "required": ["language", "source", "mutants"],
      "properties": {
        "language": {"type": "string"}, "source": {"type": "string"},
        "mutants": {"type": "array", "uniqueItems": true, "items": {
          "type": "object", "required": ["id", "mutatorName", "location", "status"],
          "properties": {
            "id": {"type": "string"}, "mutatorName": {"type": "string"}, "description": {"type": "string"},
            "statusReason": {"type": "string"}, "killedBy": {"type": "array", "items": {"type": "string"}},
            "status": {"enum": ["Killed", "Survived", "NoCoverage", "CompileError", "RuntimeError", "Timeout", "Ignored", "Pending"]},
            "location": {
              "type": "object", "required": ["start", "end"],
              "properties": {"start": {"$ref": "#/$defs/position"}, "end": {"$ref": "#/$defs/position"}}
            }
          }
        }}
      }
    }},
    "testFiles": {"type": "object", "additionalProperties": {
      "type": "object", "required": ["tests"],
      "properties": {"tests": {"type": "array", "items": {
        "type": "object", "required": ["id", "name"], "properties": {"id": {"type": "string"}, "name": {"type": "string"}}
      }}}
    }},
    "framework": {"type": "object", "required": ["name"], "properties": {"name": {"type": "string"}, "version": {"type": "string"}}}
  },
  "$defs": {
    "percent": {"type": "integer", "minimum": 0, "maximum": 100},
    "position": {
      "type": "object", "required": ["line", "column"],
      "properties": {"line": {"type": "integer", "minimum": 1}, "column": {"type": "integer", "minimum": 1}}
    }
  }
}`

// airframeText is a text with as many lines as the sample's places need.
var airframeText = strings.Repeat("  - {add: roll, share: 40%}   # µ\r\n", 50)

func mutations(t *testing.T, r *result.Faults) []byte {
	return document(t, func(w io.Writer) error { return RenderMutations(w, r, airframeText) })
}

func TestMutationsGolden(t *testing.T) {
	airframestest.Golden(t, filepath.Join("testdata", "mutations.json"), mutations(t, sample.Faults()), *update)
}

func TestMutationsKeepToTheOpenSchema(t *testing.T) {
	schema := compile(t, []byte(openSchema))
	for name, r := range map[string]*result.Faults{"faults": sample.Faults(), "stopped": sample.FaultsStopped(), "none": sample.NoneMissed()} {
		if err := validate(t, schema, mutations(t, r)); err != nil {
			t.Errorf("%s: %v", name, err)
		}
	}
	good := string(mutations(t, sample.Faults()))
	for _, c := range [][2]string{
		{`"status": "Killed"`, `"status": "caught"`}, {`"line": 31`, `"line": 0`}, {`"schemaVersion": "2"`, `"schemaVersion": 2`},
		{`"mutatorName": "motor`, `"mutator": "motor`}, {`"language": "yaml",`, ``},
	} {
		bad := strings.Replace(good, c[0], c[1], 1)
		if bad == good {
			t.Fatalf("%q is not in the report", c[0])
		}
		if validate(t, schema, []byte(bad)) == nil {
			t.Errorf("%q in place of %q: accepted", c[1], c[0])
		}
	}
}

// What other readers make of it: the score is ours, an undecided mistake is not detected,
// and each sentence that kills is a test that is there.
func TestMutationsSayWhatTheScoreSays(t *testing.T) {
	for _, r := range []*result.Faults{sample.Faults(), sample.FaultsStopped()} {
		var doc mutationsJSON
		if err := json.Unmarshal(mutations(t, r), &doc); err != nil {
			t.Fatal(err)
		}
		counts, ids, tests := map[string]int{}, map[string]bool{}, []string{}
		for _, f := range doc.TestFiles {
			for _, one := range f.Tests {
				tests = append(tests, one.ID)
			}
		}
		lines := strings.Split(airframeText, "\n")
		for _, m := range doc.Files[r.Model.File].Mutants {
			counts[m.Status]++
			ids[m.ID] = true
			for _, by := range m.KilledBy {
				if !slices.Contains(tests, by) {
					t.Errorf("%s is killed by %q, which is no test", m.Description, by)
				}
			}
			if (m.Status == "Killed") != (len(m.KilledBy) > 0) || m.Status != "Killed" && m.StatusReason == "" {
				t.Errorf("%s is %s by %q because of %q", m.Description, m.Status, m.KilledBy, m.StatusReason)
			}
			start, end := m.Location.Start, m.Location.End
			if end.Line != start.Line || end.Column < start.Column || end.Column > len([]rune(lines[start.Line-1]))+1 {
				t.Errorf("%s stands from %v to %v", m.Description, start, end)
			}
		}
		s := r.Score()
		want := map[string]int{"Killed": s.Caught, "Survived": s.Missed + s.Open, "Ignored": s.Invisible, "CompileError": s.NotBuilt}
		for status, n := range want {
			if counts[status] != n {
				t.Errorf("%d are %s, wanted %d", counts[status], status, n)
			}
		}
		if len(ids) != len(r.Faults) || counts["Timeout"] > 0 {
			t.Errorf("%d different ids for %d mistakes; by status %v", len(ids), len(r.Faults), counts)
		}
	}
}

func TestIsMutations(t *testing.T) {
	if !IsMutations(mutations(t, sample.Faults())) {
		t.Error("our own report is not taken for one")
	}
	for _, text := range []string{"", "{}", "[]", `{"schemaVersion": "2"}`, `{"files": {}}`, "hingeline: 1\n", `{"schemaVersion": 2, "files": {}}`} {
		if IsMutations([]byte(text)) {
			t.Errorf("%q is taken for a report", text)
		}
	}
}
