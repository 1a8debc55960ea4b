package main

import (
	"encoding/json"
	"regexp"
	"strings"
	"testing"

	"example.com/hingeline/airframes"
)

// effort is how much a search took, which says nothing about the model and changes
// whenever the search does.
var effort = regexp.MustCompile(`[0-9,]+ forms? of the set-up decided,\s+[0-9,]+\s+box(es)?`)

// proofGolden compares a report of proofs without what the search took.
func proofGolden(t *testing.T, name, report string) {
	t.Helper()
	if strings.Contains(report, "WHAT THE PROOFS COVER") && !effort.MatchString(report) {
		t.Errorf("the report does not say what the search took:\n%s", report)
	}
	golden(t, name, effort.ReplaceAllString(report, "N forms of the set-up decided, N boxes"))
}

// Every law holds for every built-in model; the whole report, as a person sees it.
func TestProofsOfBuiltInModels(t *testing.T) {
	for _, name := range airframes.Shipped() {
		t.Run(name, func(t *testing.T) {
			report, messages, code := called("prove", name)
			if code != statusYes || messages != "" {
				t.Errorf("exit status %d and messages %q, wanted %d and none", code, messages, statusYes)
			}
			proofGolden(t, "prove-"+name+".txt", report)
		})
	}
}

// provenFaults are mistakes that the laws find without a script.
var provenFaults = append([]plantedFault{
	{"trim-runs-out", "bracken-20", "{add: roll, share: {right: 65%, left: 100%}}", "{add: roll, share: {right: 65%, left: 103%}}"},
}, plantedFaults...)

// A planted mistake is disproved, and each position that is named can be set with
// the command that stands there.
func TestProofsOfPlantedFaults(t *testing.T) {
	for _, fault := range provenFaults {
		t.Run(fault.name, func(t *testing.T) {
			home := plant(t, fault)
			report, messages, code := called("prove", fault.model+".yaml", "--brief", "--replay")
			if code != statusNo || !strings.Contains(report, "✗ DISPROVED, DO NOT FLY: ") {
				t.Errorf("exit status %d, wanted %d; messages:\n%s", code, statusNo, messages)
			}
			out, _, _ := called("prove", fault.model+".yaml", "--json")
			var proofs struct {
				Laws []struct {
					Claims []struct {
						Claim   string
						Counter *struct{ Set []string }
					}
				}
			}
			if err := json.Unmarshal([]byte(out), &proofs); err != nil {
				t.Fatal(err)
			}
			shown := 0
			for _, l := range proofs.Laws {
				for _, c := range l.Claims {
					if c.Counter == nil {
						continue
					}
					shown++
					args := []string{"show", fault.model + ".yaml", "--brief"}
					for _, set := range c.Counter.Set {
						args = append(args, "--set", set)
					}
					if _, messages, code := called(args...); code != statusYes {
						t.Errorf("%s: %q: exit status %d\n%s", c.Claim, args, code, messages)
					}
				}
			}
			if shown == 0 {
				t.Error("no counterexample")
			}
			t.Chdir(home)
			proofGolden(t, "prove-"+fault.name+".txt", report)
		})
	}
}
