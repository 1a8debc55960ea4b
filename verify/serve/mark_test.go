package serve

import (
	"fmt"
	"testing"

	"example.com/hingeline/verify/result"
	"example.com/hingeline/verify/verifytest"
)

// TestOnlyWhatFailsByItselfIsSaidToFail holds what is said of two parts that a check which
// fails names, and of the check, by what else is known of either.
func TestOnlyWhatFailsByItselfIsSaidToFail(t *testing.T) {
	m := verifytest.Shipped(t, "bracken-20")
	port, starboard, rudder := partCalled(m, "port aileron"), partCalled(m, "starboard aileron"), partCalled(m, "rudder")
	number := func(part int) int { return map[int]int{port: 1, starboard: 7, rudder: 4}[part] }
	why := func(names ...string) (list []result.Reason) {
		for _, name := range names {
			list = append(list, result.Reason{Of: name})
		}
		return list
	}
	alone := func(name string, passed bool) result.Check {
		c := result.Check{Subject: name, Passed: passed, Wanted: "drops 10°"}
		if !passed {
			c.Why = why(name)
		}
		return c
	}
	opposite := result.Check{Subject: "port aileron", Wanted: "moves opposite to the starboard aileron", Why: why("port aileron", "starboard aileron")}
	undecided := opposite
	undecided.Why = nil
	passes := opposite
	passes.Passed, passes.Why = true, nil
	rolls := result.Check{Subject: "the model", Wanted: "rolls left", Why: why("port aileron", "rudder")}
	for _, c := range []struct {
		when   string
		checks []result.Check
		of     string // the last check
		named  string
		words  string
	}{
		{"nothing else is known", []result.Check{opposite}, "one of port aileron, starboard aileron", "one of port aileron, starboard aileron", "1 ? ONE OF 1, 7; 7 ? ONE OF 1, 7"},
		{"both pass by themselves", []result.Check{alone("port aileron", true), alone("starboard aileron", true), opposite}, "one of port aileron, starboard aileron", "one of port aileron, starboard aileron", "1 ? ONE OF 1, 7; 7 ? ONE OF 1, 7"},
		{"the one asked about fails, the other passes", []result.Check{alone("port aileron", false), alone("starboard aileron", true), opposite}, "port aileron, compared with starboard aileron", "port aileron", "1 ✗ FAILS; 7 ↔ COMPARED WITH 1"},
		{"the other fails, the one asked about passes", []result.Check{alone("port aileron", true), alone("starboard aileron", false), opposite}, "starboard aileron, compared with port aileron", "starboard aileron", "1 ↔ COMPARED WITH 7; 7 ✗ FAILS"},
		{"one fails and nothing is asked of the other", []result.Check{alone("port aileron", false), opposite}, "port aileron, perhaps starboard aileron", "port aileron; perhaps starboard aileron", "1 ✗ FAILS; 7 ? PERHAPS TOO"},
		{"one fails, and of the other only a comparison passes", []result.Check{alone("starboard aileron", false), passes, opposite}, "starboard aileron, perhaps port aileron", "starboard aileron; perhaps port aileron", "1 ? PERHAPS TOO; 7 ✗ FAILS"},
		{"both fail by themselves", []result.Check{alone("port aileron", false), alone("starboard aileron", false), opposite}, "port aileron, starboard aileron", "port aileron, starboard aileron", "1 ✗ FAILS; 7 ✗ FAILS"},
		{"not decided", []result.Check{undecided}, "one of port aileron, starboard aileron", "one of port aileron, starboard aileron", "1 ? ONE OF 1, 7; 7 ? ONE OF 1, 7"},
		{"the model does, of two parts", []result.Check{rolls}, "one of port aileron, rudder", "one of port aileron, rudder", "1 ? ONE OF 1, 4; 4 ? ONE OF 1, 4"},
		{"the model does, and one of the two fails", []result.Check{alone("port aileron", false), alone("rudder", true), rolls}, "port aileron, perhaps rudder", "port aileron; perhaps rudder", "1 ✗ FAILS; 4 ? PERHAPS TOO"},
		{"the model does, of one part", []result.Check{{Subject: "the model", Why: why("rudder")}}, "rudder", "rudder", "4 ✗ FAILS"},
	} {
		f := failuresOf(m, &result.Report{Checks: c.checks})
		words := ""
		for _, i := range []int{port, rudder, starboard} {
			for _, one := range f.marks(m, number) {
				if one.Part == i {
					words += fmt.Sprintf("; %d %s", number(i), one.Word)
				}
			}
		}
		if words != "; "+c.words {
			t.Errorf("%s: marked are %q, wanted %q", c.when, words, c.words)
		}
		if got := f.names(m, len(c.checks)-1); got != c.of {
			t.Errorf("%s: the check is of %q, wanted %q", c.when, got, c.of)
		}
		if got := f.named(m); got != c.named {
			t.Errorf("%s: named is %q, wanted %q", c.when, got, c.named)
		}
	}
}
