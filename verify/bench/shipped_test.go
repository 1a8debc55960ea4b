package bench_test

import (
	"context"
	"testing"

	"example.com/hingeline/airframes"
	"example.com/hingeline/verify/bench"
	"example.com/hingeline/verify/faults/sight"
)

// usualWalk is a shipped model, and the steps that are usually chosen for it.
type usualWalk struct {
	m      *airframes.Model
	chosen bench.Chosen
}

// usualWalks are those that were asked for: to choose takes longer than to walk.
var usualWalks = map[string]map[sight.Look]usualWalk{}

// usual is the usual walk of a shipped model, which no test changes.
func usual(t testing.TB, name string, look sight.Look) (*airframes.Model, bench.Chosen) {
	t.Helper()
	u, done := usualWalks[name][look]
	if !done {
		u.m = load(t, name)
		u.chosen = bench.Usual(context.Background(), u.m, look, nil)
		if usualWalks[name] == nil {
			usualWalks[name] = map[sight.Look]usualWalk{}
		}
		usualWalks[name][look] = u
	}
	return u.m, u.chosen
}
