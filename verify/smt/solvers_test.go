//go:build solvers

package smt

import (
	"flag"
	"fmt"
	"maps"
	"math/rand/v2"
	"slices"
	"strings"
	"sync"
	"testing"
	"time"

	"example.com/hingeline/airframes"
	"example.com/hingeline/airframes/airframestest"
	"example.com/hingeline/mixcore"
	"example.com/hingeline/verify/laws"
	"example.com/hingeline/verify/prove"
	"example.com/hingeline/verify/prove/provetest"
	"pgregory.net/rapid"
)

var budget = flag.Duration("budget", 13*time.Minute, "how long the claims are compared")

// generated is how many airframes are drawn beside those that ship.
const generated = 50

// leastCompared is how many claims must have been compared for the comparison to count.
const leastCompared = 200

func shippedModels(t *testing.T) (list []*airframes.Model) {
	t.Helper()
	for _, name := range airframes.Shipped() {
		text, ok := airframes.ReadShipped(name)
		if !ok {
			t.Fatalf("shipped airframe %q cannot be read", name)
		}
		list = append(list, loaded(t, name, text))
	}
	return list
}

func loaded(t *testing.T, name string, text []byte) *airframes.Model {
	t.Helper()
	m, problems := airframes.Load(name+".yaml", text)
	if m == nil {
		t.Fatalf("%s does not load: %v", name, problems)
	}
	return m
}

// drawnClaims is how many claims are drawn about a model beside those of the laws.
const drawnClaims = 12

// subjectsOf are all claims of the laws about a model, and some drawn ones for what no
// law asks.
func subjectsOf(name string, m *airframes.Model, seed int) (list []subject) {
	for _, c := range laws.Claims(m) {
		list = append(list, subject{name + ": " + c.Name, m.Plan, m.Plan, c.Claim})
	}
	return append(list, drawnAbout(name, m.Plan, seed)...)
}

func drawnAbout(name string, plan *mixcore.Plan, seed int) (list []subject) {
	if len(plan.Setup().Parts) == 0 || len(plan.Setup().Channels) == 0 {
		return nil
	}
	draw := rapid.Custom(func(t *rapid.T) *prove.Claim { return provetest.Claim(t, plan) })
	for i := range drawnClaims {
		claim := draw.Example(100*seed + i)
		list = append(list, subject{fmt.Sprintf("%s: drawn %d, %T%+v of %+v", name, i+1, claim.Want, claim.Want, *claim), plan, plan, *claim})
	}
	return list
}

// tally counts outcomes by what is wanted.
type tally struct {
	mu         sync.Mutex
	claims     map[string]int // compared
	count      map[string]*[2][outcomes]int
	pinned     int
	notWritten map[string]int
}

func (c *tally) at(kind string) *[2][outcomes]int {
	if c.count[kind] == nil {
		c.count[kind] = new([2][outcomes]int)
	}
	return c.count[kind]
}

// fairly orders subjects so that wherever one stops, every model and every kind of
// claim has had its turn.
func fairly(list []subject) []subject {
	buckets := map[string][]subject{}
	r := rand.New(rand.NewPCG(7, 7))
	for _, s := range list {
		model, _, _ := strings.Cut(s.name, ":")
		key := model + " " + kindOf(&s.claim)
		buckets[key] = append(buckets[key], s)
	}
	keys := slices.Sorted(maps.Keys(buckets))
	for _, key := range keys {
		r.Shuffle(len(buckets[key]), func(i, j int) { buckets[key][i], buckets[key][j] = buckets[key][j], buckets[key][i] })
	}
	r.Shuffle(len(keys), func(i, j int) { keys[i], keys[j] = keys[j], keys[i] })
	var out []subject
	for round := 0; len(out) < len(list); round++ {
		for _, key := range keys {
			if round < len(buckets[key]) {
				out = append(out, buckets[key][round])
			}
		}
	}
	return out
}

// Every shipped airframe, generated ones and set-ups that are harder still: what is proved must never be sat, what is
// disproved never unsat.
func TestSolversAgree(t *testing.T) {
	requireSolvers(t)
	var list []subject
	for i, m := range shippedModels(t) {
		list = append(list, subjectsOf(m.Name, m, i)...)
	}
	draw := rapid.Custom(airframestest.Generate)
	for seed := range generated {
		name := fmt.Sprintf("generated %d", seed)
		list = append(list, subjectsOf(name, loaded(t, name, draw.Example(seed)), 1000+seed)...)
	}
	setups := rapid.Custom(provetest.Setup)
	for seed := range generated {
		plan, faults := mixcore.Compile(setups.Example(seed))
		if faults != nil {
			t.Fatalf("set-up %d: %v", seed, faults)
		}
		list = append(list, drawnAbout(fmt.Sprintf("set-up %d", seed), plan, 2000+seed)...)
	}
	list = fairly(list)
	c := &tally{claims: map[string]int{}, count: map[string]*[2][outcomes]int{}, notWritten: map[string]int{}}
	compared := compareAll(t, list, c)
	c.report(t, len(list), compared)
	if compared < leastCompared {
		t.Errorf("only %d claims were compared", compared)
	}
}

// compareAll compares until all is done or the budget is spent.
func compareAll(t *testing.T, list []subject, c *tally) (compared int) {
	t.Helper()
	until := time.Now().Add(*budget)
	work := make(chan int)
	var group sync.WaitGroup
	for range 2 {
		group.Go(func() {
			provers := map[*mixcore.Plan]*prove.Prover{}
			for i := range work {
				s := &list[i]
				if provers[s.plan] == nil {
					provers[s.plan] = prove.New(s.plan)
				}
				compareOne(t, s, provers[s.plan], c, uint64(i))
			}
		})
	}
	for i := range list {
		if time.Now().After(until) {
			break
		}
		work <- i
		compared++
	}
	close(work)
	group.Wait()
	return compared
}

func compareOne(t *testing.T, s *subject, p *prove.Prover, c *tally, seed uint64) {
	kind := kindOf(&s.claim)
	if _, _, err := build(s.plan, &s.claim, ratOf(0)); err != nil {
		c.mu.Lock()
		defer c.mu.Unlock()
		c.notWritten[err.Error()]++
		return
	}
	d := s.verdict(p)
	asked, why := s.pinned(t, &solvers[0], p, &d, rand.New(rand.NewPCG(seed, 2)))
	if why != "" {
		t.Errorf("%s: %s", s.name, why)
	}
	var outs [2]outcome
	for k := range solvers {
		out, why := s.held(t, &solvers[k], p, &d)
		outs[k] = out
		if out == contradicts {
			t.Errorf("%s: %s", s.name, why)
		}
	}
	c.mu.Lock()
	defer c.mu.Unlock()
	c.pinned += asked
	c.claims[kind]++
	for k := range solvers {
		c.at(kind)[k][outs[k]]++
	}
}

func (c *tally) report(t *testing.T, all, compared int) {
	t.Helper()
	t.Logf("%d of %d claims taken, in turns over models and kinds; %d single poses held against the Plan", compared, all, c.pinned)
	for _, kind := range slices.Sorted(maps.Keys(c.count)) {
		for k := range solvers {
			line := fmt.Sprintf("%-7s %-5s of %4d:", kind, solvers[k].name, c.claims[kind])
			for out := outcome(0); out < outcomes; out++ {
				line += fmt.Sprintf(" %d %s,", c.count[kind][k][out], outcomeWords[out])
			}
			t.Log(strings.TrimSuffix(line, ","))
		}
	}
	for why, n := range c.notWritten {
		t.Logf("%d not written: %s", n, why)
	}
}
