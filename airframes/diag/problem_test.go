package diag

import (
	"slices"
	"testing"
)

func TestSortPutsProblemsInOrderOfPlace(t *testing.T) {
	want := []Problem{
		{Place: Place{File: "a"}, Message: "whole"},
		{Place: Place{File: "a", Line: 1}, Message: "line"},
		{Place: Place{File: "a", Line: 1, Column: 2}, Code: "x", Message: "a"},
		{Place: Place{File: "a", Line: 1, Column: 2}, Code: "x", Message: "b"},
		{Place: Place{File: "a", Line: 1, Column: 2}, Code: "y", Message: "a"},
		{Place: Place{File: "a", Line: 10, Column: 1}},
		{Place: Place{File: "b", Line: 2, Column: 1}},
	}
	got := slices.Clone(want)
	slices.Reverse(got)
	Sort(got)
	if !slices.Equal(got, want) {
		t.Errorf("got %v, want %v", got, want)
	}
}

func TestHasErrorsPassesOverWarnings(t *testing.T) {
	warning := Problem{Severity: Warning}
	if HasErrors([]Problem{warning, warning}) || HasErrors(nil) {
		t.Error("warnings are no errors")
	}
	if !HasErrors([]Problem{warning, {Severity: Error}}) {
		t.Error("want the error to be seen")
	}
}
