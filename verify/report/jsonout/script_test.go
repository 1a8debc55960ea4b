package jsonout

import (
	"encoding/json"
	"testing"

	"example.com/hingeline/verify/report/sample"
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
