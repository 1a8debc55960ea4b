package laws_test

import (
	"bytes"
	"context"
	"fmt"
	"math/rand/v2"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"testing"
	"time"

	"example.com/hingeline/airframes"
	"example.com/hingeline/airframes/diag"
	"example.com/hingeline/mixcore"
	"example.com/hingeline/verify/findings"
	"example.com/hingeline/verify/laws"
	"example.com/hingeline/verify/prove"
	"example.com/hingeline/verify/prove/provetest"
	"example.com/hingeline/verify/smt"
	"example.com/hingeline/verify/verifytest"
)

// TestBenchmarkModelIsWhatIsMeasured holds the model to what DEVELOPERS.md says of it,
// and to keeping every law, so that the benchmark is of proofs.
func TestBenchmarkModelIsWhatIsMeasured(t *testing.T) {
	m := verifytest.Twelve(t)
	states, continuous, lines := 1, 0, 0
	for i := range m.Setup.Controls {
		if n := len(m.Setup.Controls[i].Positions); n > 0 {
			states *= n
		} else {
			continuous++
		}
	}
	for i := range m.Setup.Channels {
		lines += len(m.Setup.Channels[i].Mix)
	}
	for _, c := range []struct {
		what      string
		got, want int
	}{
		{"channels", len(m.Setup.Channels), 12}, {"switch states", states, 216},
		{"continuous controls", continuous, 12}, {"mix lines", lines, 81},
	} {
		if c.got != c.want {
			t.Errorf("%d %s, want %d", c.got, c.what, c.want)
		}
	}
	if found := findings.Find(m); found != nil {
		var said bytes.Buffer
		diag.Write(&said, found, m.Source)
		t.Errorf("findings:\n%s", &said)
	}
	prover := prove.New(m.Plan)
	for _, c := range laws.Claims(m) {
		if d := prover.Decide(context.Background(), &c.Claim, prove.Options{}); d.Answer != prove.Proved {
			t.Errorf("%s: answer %d at %+v, want proved", c.Name, d.Answer, d.Pose)
		}
	}
}

// decideAll decides every claim with a new prover, and says how many boxes it took.
func decideAll(b *testing.B, m *airframes.Model, claims []laws.Named, o prove.Options) (boxes int) {
	b.Helper()
	prover := prove.New(m.Plan)
	for i := range claims {
		d := prover.Decide(context.Background(), &claims[i].Claim, o)
		if d.Answer != prove.Proved {
			b.Fatalf("%s: answer %d, want proved", claims[i].Name, d.Answer)
		}
		boxes += d.Boxes
	}
	return boxes
}

// BenchmarkLaws decides every law about the model of twelve channels, against plain
// evaluation and two solvers on the same properties. Each run begins with a new
// prover, which remembers nothing.
func BenchmarkLaws(b *testing.B) {
	m := verifytest.Twelve(b)
	claims := laws.Claims(m)
	b.Run("claims", func(b *testing.B) {
		b.ReportAllocs()
		for b.Loop() {
			laws.Claims(m)
		}
	})
	for _, c := range []struct {
		name    string
		margins bool
	}{{"margins", true}, {"decide", false}} {
		b.Run(c.name, func(b *testing.B) {
			b.ReportAllocs()
			boxes := 0
			for b.Loop() {
				boxes = decideAll(b, m, claims, prove.Options{Margins: c.margins})
			}
			b.ReportMetric(float64(len(claims)), "claims")
			b.ReportMetric(float64(boxes), "boxes")
		})
	}
	b.Run("evaluation", func(b *testing.B) { benchmarkGrid(b, m) })
	sample := everySo(claims)
	b.Run("sample/decide", func(b *testing.B) {
		for b.Loop() {
			decideAll(b, m, sample, prove.Options{})
		}
	})
	for _, solver := range solvers {
		b.Run("sample/"+solver.name, func(b *testing.B) { benchmarkSolver(b, m, sample, solver) })
	}
}

// sampled is how many claims there are for each one that the solvers are given: all of
// them would take a solver a quarter of an hour.
const sampled = 8

func everySo(claims []laws.Named) (sample []laws.Named) {
	for i := 0; i < len(claims); i += sampled {
		sample = append(sample, claims[i])
	}
	return sample
}

// benchmarkGrid is one evaluation, and what a grid would take that has every switch
// state, and both ends and the middle of everything else. It would find no fault that is
// narrower than half a travel.
func benchmarkGrid(b *testing.B, m *airframes.Model) {
	everywhere := prove.Claim{Now: prove.Everywhere(&m.Setup)}
	sampler := provetest.Poses(m.Plan, &everywhere, rand.New(rand.NewPCG(3, 5)))
	poses := make([]mixcore.Input, 256)
	for i := range poses {
		at, _ := sampler.Draw() // without a condition every pose counts
		poses[i] = at.Now
	}
	out := m.Plan.NewOutput()
	points := 1.0
	for i := range m.Setup.Controls {
		if n := len(m.Setup.Controls[i].Positions); n > 0 {
			points *= float64(n)
		} else {
			points *= 3
		}
	}
	i := 0
	for b.Loop() {
		m.Plan.Eval(&poses[i%len(poses)], out)
		i++
	}
	perPose := b.Elapsed().Seconds() / float64(b.N)
	b.ReportMetric(points, "grid-points")
	b.ReportMetric(perPose*points, "grid-s")
}

// solver is a program that reads SMT-LIB 2. Its limit is in its own words, and is what
// one property may take: without one, the hardest would run for hours.
type solver struct {
	name      string
	arguments []string
	check     string // what to write for (check-sat)
}

var solvers = []solver{
	{"z3", []string{"-smt2", "-T:2"}, "(check-sat-using smt)"},
	{"cvc5", []string{"--lang=smt2", "--tlimit=2000"}, "(check-sat)"},
}

// benchmarkSolver gives every property to a solver, a process each, its start included.
// Where it runs into its limit the time is too small, in the solver's favour.
func benchmarkSolver(b *testing.B, m *airframes.Model, claims []laws.Named, s solver) {
	path, err := exec.LookPath(s.name)
	if err != nil {
		b.Logf("%s is not installed: its baseline is left out", s.name)
		return
	}
	dir := b.TempDir()
	empty := filepath.Join(dir, "empty.smt2")
	writeFile(b, empty, "(set-logic QF_NRA)\n(check-sat)\n")
	var files []string
	refused := 0
	for i := range claims {
		var text bytes.Buffer
		if err := smt.Write(&text, m.Plan, &claims[i].Claim, claims[i].Sentence); err != nil {
			refused++
			continue
		}
		name := filepath.Join(dir, fmt.Sprintf("%03d.smt2", i))
		writeFile(b, name, strings.Replace(text.String(), "(check-sat)", s.check, 1))
		files = append(files, name)
	}
	unsat := 0
	for b.Loop() {
		unsat = 0
		for _, name := range files {
			if strings.HasPrefix(ask(path, s.arguments, name), "unsat") {
				unsat++
			}
		}
	}
	total := b.Elapsed().Seconds() / float64(b.N)
	const starts = 20
	began := time.Now()
	for range starts {
		ask(path, s.arguments, empty)
	}
	start := time.Since(began).Seconds() / starts
	b.ReportMetric(float64(unsat), "unsat")
	b.ReportMetric(float64(len(files)-unsat), "open")
	b.ReportMetric(float64(refused), "not-written")
	b.ReportMetric(1e3*start, "start-ms")
	b.Logf("%s: %d properties in %.1f s, of which %d are open after 2 s each and %d could not be written",
		s.name, len(files), total, len(files)-unsat, refused)
}

func writeFile(b *testing.B, name, text string) {
	b.Helper()
	if err := os.WriteFile(name, []byte(text), 0o644); err != nil {
		b.Fatal(err)
	}
}

// ask runs a solver on a file. A solver that runs into its limit ends with an error and
// without an answer, which counts as one.
func ask(path string, arguments []string, file string) string {
	out, _ := exec.Command(path, append(append([]string(nil), arguments...), file)...).Output()
	return string(out)
}
