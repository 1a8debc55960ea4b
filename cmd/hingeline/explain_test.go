package main

import (
	"strings"
	"testing"

	"example.com/hingeline/airframes/diag"
)

// Every code has one explanation, and explain shows the whole of it.
func TestExplainShowsEveryCode(t *testing.T) {
	seen := map[string]bool{}
	for _, info := range diag.Codes() {
		if seen[info.Code] {
			t.Errorf("%s is explained twice", info.Code)
		}
		seen[info.Code] = true
		out, messages, code := called("explain", info.Code)
		if code != statusYes {
			t.Errorf("%s: exit status %d\n%s", info.Code, code, messages)
			continue
		}
		if got, want := strings.Fields(out), strings.Fields(info.Code+": "+info.Title+" "+info.Text); strings.Join(got, " ") != strings.Join(want, " ") {
			t.Errorf("%s: got\n%s\nwanted the words\n%s", info.Code, out, strings.Join(want, " "))
		}
	}
	if len(seen) < 10 {
		t.Errorf("only %d codes", len(seen))
	}
}
