package jsonout

import (
	"encoding/json"
	"testing"

	"example.com/hingeline/verify/report/sample"
	"example.com/hingeline/verify/result"
)

// What the report says about the script, read back as another program would.
func TestRenderSaysWhatIsOddAboutTheScript(t *testing.T) {
	text := rendered(t, sample.Backwards())
	if err := validate(t, compile(t, ReportSchema), text); err != nil {
		t.Error(err)
	}
	var got struct {
		Verdict string
		Counts  map[string]int
		Script  []struct {
			Code, Message, Sentence, Reason, Picture, Right, Hint string
			Place                                                 struct{ Line int }
			OnPurpose                                             bool `json:"on_purpose"`
			Fails                                                 bool
		}
	}
	if err := json.Unmarshal(text, &got); err != nil {
		t.Fatal(err)
	}
	for k, n := range map[string]int{"script_wrong": 1, "script_warnings": 1, "script_on_purpose": 1, "failed": 0} {
		if got.Counts[k] != n {
			t.Errorf("%s is %d, wanted %d", k, got.Counts[k], n)
		}
	}
	want := sample.Backwards().Script
	if got.Verdict != "failed" || len(got.Script) != len(want) {
		t.Fatalf("verdict %q with %d findings about the script, wanted failed with %d", got.Verdict, len(got.Script), len(want))
	}
	for i, w := range want {
		if g := got.Script[i]; g.Code != w.Code || g.Message != w.Message || g.Sentence != w.Sentence || g.Reason != w.Reason || g.Picture != w.Picture ||
			g.Right != w.Right || g.Hint != w.Hint || g.Place.Line != w.Place.Line || g.OnPurpose != w.OnPurpose || g.Fails != w.Fails {
			t.Errorf("finding %d is %+v, wanted %+v", i, g, w)
		}
	}
}

// The tables of the report on paper keep to the schema, full and bare.
func TestRenderWritesThePaper(t *testing.T) {
	schema := compile(t, ReportSchema)
	r := sample.Failing()
	r.Paper = sample.Paper()
	text := rendered(t, r)
	if err := validate(t, schema, text); err != nil {
		t.Error(err)
	}
	var got struct {
		Paper struct {
			Throws []struct {
				Part string
				Ends []struct{ Degrees float64 }
			}
			Travel, Motors []any
			Signal         []any `json:"signal_lost"`
		}
	}
	if err := json.Unmarshal(text, &got); err != nil {
		t.Fatal(err)
	}
	p := r.Paper
	if len(got.Paper.Throws) != len(p.Throws) || len(got.Paper.Travel) != len(p.Travel) || len(got.Paper.Signal) != len(p.Signal) || len(got.Paper.Motors) != len(p.Motors) {
		t.Errorf("not every row is there: %+v", got.Paper)
	}
	for i, row := range got.Paper.Throws {
		if row.Part != p.Throws[i].Part || row.Ends[0].Degrees != p.Throws[i].Ends[0].Degrees {
			t.Errorf("row %d is %+v, wanted %+v", i, row, p.Throws[i])
		}
	}
	r.Paper = &result.Paper{}
	if err := validate(t, schema, rendered(t, r)); err != nil {
		t.Errorf("bare: %v", err)
	}
}
