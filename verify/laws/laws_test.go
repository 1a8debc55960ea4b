package laws_test

import (
	"bytes"
	"context"
	"fmt"
	"math/rand/v2"
	"regexp"
	"slices"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"example.com/hingeline/airframes"
	"example.com/hingeline/airframes/airframestest"
	"example.com/hingeline/mixcore"
	"example.com/hingeline/verify/laws"
	"example.com/hingeline/verify/prove"
	"example.com/hingeline/verify/result"
	"example.com/hingeline/verify/verifytest"
)

// TestShippedModelsKeepEveryLaw also writes down which claims there are, and what is
// left out, so that neither changes unseen.
func TestShippedModelsKeepEveryLaw(t *testing.T) {
	var said bytes.Buffer
	for _, name := range airframes.Shipped() {
		p := laws.Prove(context.Background(), verifytest.Shipped(t, name), laws.Options{})
		if p.Verdict != result.AllProved {
			t.Errorf("%s: %s", name, p.Verdict)
		}
		fmt.Fprintf(&said, "# %s\n", name)
		for i, l := range p.Laws {
			fmt.Fprintf(&said, "[%s] %s\n", l.Code, strings.TrimSpace(strings.TrimPrefix(l.Means, laws.Codes()[i].Means)))
			if (l.None == "") != (len(l.Claims) > 0) {
				t.Errorf("%s: %s has %d claims and says %q", name, l.Code, len(l.Claims), l.None)
			}
			if l.None != "" {
				fmt.Fprintf(&said, "  none: %s\n", l.None)
			}
			for _, c := range l.Claims {
				if c.Answer != result.Proved {
					t.Errorf("%s: %s: %s", name, c.Claim, c.Answer)
				}
				if m := c.Margin; m != nil && !(m.Value >= m.AtLeast-1e-6 && m.AtLeast >= -1e-6) {
					t.Errorf("%s: %s: margin %+v", name, c.Claim, m)
				}
				fmt.Fprintf(&said, "  %s", c.Claim)
				if c.Margin != nil {
					fmt.Fprintf(&said, ": %s", c.Margin.Text)
				}
				for _, a := range c.Assumes {
					fmt.Fprintf(&said, " (%s)", a)
				}
				said.WriteByte('\n')
			}
		}
	}
	airframestest.Golden(t, "testdata/claims.txt", said.Bytes(), *update)
}

var fileSafe = regexp.MustCompile(`^[a-z0-9][a-z0-9-]*$`)

// TestClaimsHaveNamesOfTheirOwn that are safe as names of files.
func TestClaimsHaveNamesOfTheirOwn(t *testing.T) {
	var codes []string
	for _, l := range laws.Codes() {
		codes = append(codes, l.Code)
	}
	for _, name := range airframes.Shipped() {
		seen := map[string]bool{}
		m := verifytest.Shipped(t, name)
		for _, c := range laws.Claims(m) {
			if seen[c.Name] || !fileSafe.MatchString(c.Name) || len(c.Name) > 120 {
				t.Errorf("%s: %q is no name of its own for a file", name, c.Name)
			}
			seen[c.Name] = true
			if !slices.Contains(codes, c.Law) || c.Sentence == "" || len(c.Claim.Now) != len(m.Setup.Controls) {
				t.Errorf("%s: %s is not complete: %+v", name, c.Name, c)
			}
		}
	}
}

// TestClaimsHoldAtRandomPoses asks the Plan, and not the search, at poses inside each
// claim of every shipped model.
func TestClaimsHoldAtRandomPoses(t *testing.T) {
	r := rand.New(rand.NewPCG(7, 11))
	for _, name := range airframes.Shipped() {
		m := verifytest.Shipped(t, name)
		p := prove.New(m.Plan)
		for _, c := range laws.Claims(m) {
			for range 40 {
				at := somewhere(r, m, &c.Claim)
				if c.Claim.When != nil && !m.Plan.Holds(c.Claim.When, &at.Now) {
					continue
				}
				if margin := p.Margin(&c.Claim, at); !(margin >= -1e-6) {
					t.Fatalf("%s: %s does not hold at %+v: %v", name, c.Name, at, margin)
				}
			}
		}
	}
}

// somewhere is a pose inside a claim, often at ends.
func somewhere(r *rand.Rand, m *airframes.Model, c *prove.Claim) prove.Pose {
	in := func(s prove.Span) float64 {
		if s.Places != nil {
			return float64(s.Places[r.IntN(len(s.Places))])
		}
		return []float64{s.Low, s.High, s.Low + (s.High-s.Low)*r.Float64()}[r.IntN(3)]
	}
	at := prove.Pose{Now: m.Plan.Rest(), Other: m.Plan.Rest()}
	for i := range c.Now {
		at.Now.Position[i] = in(c.Now[i])
	}
	at.Now.SignalLost = c.Lost
	copy(at.Other.Position, at.Now.Position)
	for i := range c.Other {
		switch c.Other[i].Kind {
		case prove.Mirrored:
			at.Other.Position[i] = -at.Now.Position[i]
		case prove.Apart:
			at.Other.Position[i] = in(c.Other[i].Span)
		}
	}
	if w, ok := c.Want.(prove.Rising); ok {
		a, b := in(c.Now[w.Control]), at.Now.Position[w.Control]
		at.Other.Position[w.Control], at.Now.Position[w.Control] = min(a, b), max(a, b)
	}
	return at
}

// TestRandomModelsAreProvedWithoutAFault: whatever the model, each claim has an answer
// in words, and a disproof a pose.
func TestRandomModelsAreProvedWithoutAFault(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		m, problems := airframes.Load("drawn.yaml", airframestest.Generate(t))
		if m == nil {
			t.Fatalf("%+v", problems)
		}
		p := laws.Prove(context.Background(), m, laws.Options{Boxes: 200, Replay: true})
		if len(p.Laws) != len(laws.Codes()) {
			t.Fatalf("%d laws, want %d", len(p.Laws), len(laws.Codes()))
		}
		for _, l := range p.Laws {
			for _, c := range l.Claims {
				disproved := c.Answer == result.Disproved
				if disproved != (c.Counter != nil) || disproved && (c.Counter.Got == "" || len(c.Counter.Why) == 0) {
					t.Fatalf("%s: %s without what is seen: %+v", c.Claim, c.Answer, c.Counter)
				}
				if c.Answer == "" || c.Claim == "" || c.Over == "" {
					t.Fatalf("not complete: %+v", c)
				}
				if c.Answer == result.Undecided && c.Limit == 0 {
					t.Fatalf("%s is undecided without a limit", c.Claim)
				}
			}
		}
	})
}

func TestReplayGivesTheCauseChain(t *testing.T) {
	m := variant(t, "bracken-20", func(s *mixcore.Setup) { channel(s, "starboard flap").Mix[1].Share.Plus = -25 })
	for _, replay := range []bool{false, true} {
		p := laws.Prove(context.Background(), m, laws.Options{Only: []string{"symmetry"}, Replay: replay})
		for _, c := range p.Laws[0].Claims {
			if c.Answer != result.Disproved {
				continue
			}
			if got := len(c.Counter.Why); got != map[bool]int{false: 0, true: 2}[replay] {
				t.Fatalf("replay %v: %d chains", replay, got)
			}
			for i, of := range []string{"port flap", "starboard flap"} {
				if replay && (c.Counter.Why[i].Of != of || len(c.Counter.Why[i].Chain) < 4) {
					t.Errorf("chain %d is %+v", i, c.Counter.Why[i])
				}
			}
			if len(c.LookAt) == 0 {
				t.Error("no line to look at")
			}
			return
		}
		t.Fatal("the fault was not found")
	}
}

func TestSelectionTakesLawsByCodeOrTitle(t *testing.T) {
	m := verifytest.Shipped(t, "ousel-trainer")
	for _, c := range []struct {
		only  []string
		codes []string
	}{
		{[]string{"travel"}, []string{"travel"}},
		{[]string{"MOTOR"}, []string{"motor-safe", "motor-signal"}},
		{[]string{"left and right", "motor-safe"}, []string{"symmetry", "motor-safe"}},
		{[]string{"rates"}, []string{"rates", "rate-order"}},
	} {
		if problems := laws.CheckOnly(c.only); problems != nil {
			t.Errorf("%q: %+v", c.only, problems)
		}
		p := laws.Prove(context.Background(), m, laws.Options{Only: c.only})
		var codes []string
		for _, l := range p.Laws {
			codes = append(codes, l.Code)
		}
		if !slices.Equal(codes, c.codes) || p.Left != len(laws.Codes())-len(codes) {
			t.Errorf("%q takes %q and leaves %d, want %q", c.only, codes, p.Left, c.codes)
		}
	}
	problems := laws.CheckOnly([]string{"travle", "", "stops"})
	if len(problems) != 2 || problems[0].Hint != `did you mean "travel"?` || problems[0].Code != laws.CodeNothingSelected {
		t.Errorf("%+v", problems)
	}
}

// TestStoppingKeepsWhatWasDecided stops in the middle, from the progress.
func TestStoppingKeepsWhatWasDecided(t *testing.T) {
	ctx, cancel := context.WithCancel(context.Background())
	defer cancel()
	cancel()
	p := laws.Prove(ctx, verifytest.Shipped(t, "bracken-20"), laws.Options{})
	if p.Stopped == "" || p.Verdict != result.SomeUndecided {
		t.Errorf("stopped %q, verdict %q", p.Stopped, p.Verdict)
	}
	for _, l := range p.Laws {
		for _, c := range l.Claims {
			if c.Answer != result.Undecided || c.Limit != 0 || c.Over == "" {
				t.Errorf("%s: %s, limit %d, over %q", c.Claim, c.Answer, c.Limit, c.Over)
			}
		}
	}
}

// TestThrowOfNothingIsMeant: a rate of 0 % switches a stick off on purpose.
func TestThrowOfNothingIsMeant(t *testing.T) {
	m := variant(t, "pellin-park", func(s *mixcore.Setup) { demand(s, "yaw").Rates[1].Throw = mixcore.Both(0) })
	p := laws.Prove(context.Background(), m, laws.Options{Only: []string{"control-sense"}})
	const want = "full turn stick right yaws the model right, and full left yaws it left, where no throw of 0 % switches it off"
	if c := p.Laws[0].Claims[0]; c.Claim != want || c.Answer != result.Proved {
		t.Errorf("%s: %s", c.Claim, c.Answer)
	}
	m = variant(t, "pellin-park", func(s *mixcore.Setup) {
		demand(s, "yaw").Rates[0].Throw, demand(s, "yaw").Rates[1].Throw = mixcore.Both(0), mixcore.Both(0)
		demand(s, "yaw").Rates[1].When = nil
	})
	p = laws.Prove(context.Background(), m, laws.Options{Only: []string{"control-sense"}})
	if c := p.Laws[0].Claims[0]; c.Answer == result.Proved {
		t.Errorf("a stick that never does anything: %s: %s", c.Claim, c.Answer)
	}
}

// TestWingPartsThatGoWithThePitchStick leave nobody sure of the pitch: the claim says
// less, and still catches a tail that goes the wrong way.
func TestWingPartsThatGoWithThePitchStick(t *testing.T) {
	snap := func(s *mixcore.Setup) {
		for _, name := range []string{"port outer flap", "starboard outer flap", "port inner flap", "starboard inner flap"} {
			channel(s, name).Mix[3].Share = mixcore.Both(60)
		}
	}
	find := func(m *airframes.Model) *result.Proof {
		p := laws.Prove(context.Background(), m, laws.Options{Only: []string{"control-sense"}})
		for i := range p.Laws[0].Claims {
			if c := &p.Laws[0].Claims[i]; strings.HasPrefix(c.Claim, "full pitch stick") {
				return c
			}
		}
		t.Fatal("nothing is claimed of the pitch stick")
		return nil
	}
	if c := find(variant(t, "skerry", snap)); c.Answer != result.Proved || !strings.Contains(c.Claim, "as far as can be told") || len(c.Assumes) == 0 {
		t.Errorf("%s: %s, assuming %q", c.Claim, c.Answer, c.Assumes)
	}
	if c := find(verifytest.Shipped(t, "skerry")); c.Answer != result.Proved || strings.Contains(c.Claim, "as far as can be told") {
		t.Errorf("%s: %s", c.Claim, c.Answer)
	}
	reversed := variant(t, "skerry", func(s *mixcore.Setup) {
		for _, name := range []string{"port tail", "starboard tail"} {
			l := &channel(s, name).Mix[0]
			l.Share = mixcore.Sides{Plus: -l.Share.Plus, Minus: -l.Share.Minus}
		}
	})
	if c := find(reversed); c.Answer != result.Disproved {
		t.Errorf("%s: %s", c.Claim, c.Answer)
	}
}

// TestSlowPartsAreJudgedAtRest: Tarn's flaps are slowed.
func TestSlowPartsAreJudgedAtRest(t *testing.T) {
	p := laws.Prove(context.Background(), verifytest.Shipped(t, "tarn-measured"), laws.Options{Only: []string{"symmetry"}})
	for _, c := range p.Laws[0].Claims {
		if strings.Contains(c.Claim, "flap") && !slices.Contains(c.Assumes, "once everything has come to rest") {
			t.Errorf("%s assumes %q", c.Claim, c.Assumes)
		}
	}
}

// TestSearchThatIsCutShortIsUndecided and says at which limit.
func TestSearchThatIsCutShortIsUndecided(t *testing.T) {
	p := laws.Prove(context.Background(), verifytest.Shipped(t, "hollin-spoilers"), laws.Options{Only: []string{"control-sense", "symmetry"}, Boxes: 1})
	c := p.Counts()
	if c.Undecided == 0 || p.Verdict != result.SomeUndecided {
		t.Fatalf("%+v, %s", c, p.Verdict)
	}
	for _, l := range p.Laws {
		for _, c := range l.Claims {
			if c.Answer == result.Undecided && c.Limit != 1 {
				t.Errorf("%s: limit %d", c.Claim, c.Limit)
			}
		}
	}
}
