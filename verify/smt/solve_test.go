//go:build solvers

package smt

import (
	"bytes"
	"context"
	"errors"
	"fmt"
	"math/big"
	"os/exec"
	"strings"
	"testing"
	"time"

	"example.com/hingeline/mixcore"
	"example.com/hingeline/verify/prove"
)

// solver is a program that answers a script.
type solver struct {
	name    string
	command []string
	check   string // how it is asked
}

// The two solvers. Of z3 its tactic smt is asked for first, then what it does by itself,
// which is weaker on most of these scripts.
var solvers = []solver{
	{"z3", []string{"z3", "-in", "-memory:2000"}, "(check-sat-using (or-else (try-for smt 7000) default))"},
	{"cvc5", []string{"cvc5", "--lang=smt2", "-"}, "(check-sat)"},
}

// patience is how long one solver may think about one claim.
const patience = 10 * time.Second

// answers of a solver; anything else is no answer.
const (
	unsat   = "unsat"
	sat     = "sat"
	unknown = "unknown"
)

// requireSolvers fails where one is missing: without them nothing is compared.
func requireSolvers(t *testing.T) {
	t.Helper()
	for _, s := range solvers {
		version, err := exec.Command(s.command[0], "--version").Output()
		if err != nil {
			t.Fatalf("%s does not run (on Debian: apt-get install z3 cvc5): %v", s.name, err)
		}
		t.Logf("%s", strings.SplitN(string(version), "\n", 2)[0])
	}
}

// ask runs a solver on a script that ends with commands after its assertions, and
// returns what it said, line by line. A solver that complains fails the test.
func (s *solver) ask(t *testing.T, script, commands string) []string {
	t.Helper()
	ctx, cancel := context.WithTimeout(context.Background(), patience)
	defer cancel()
	text := "(set-option :produce-models true)\n"
	if s.name == "z3" {
		text += "(set-option :pp.decimal true)\n(set-option :pp.decimal_precision 17)\n"
	}
	text += strings.TrimSuffix(script, "(check-sat)\n") + strings.ReplaceAll(commands, "(check-sat)", s.check)
	command := exec.CommandContext(ctx, s.command[0], s.command[1:]...)
	command.Stdin = strings.NewReader(text)
	command.WaitDelay = time.Second
	said, err := command.CombinedOutput()
	lines := strings.Split(strings.TrimSpace(string(said)), "\n")
	if ctx.Err() != nil {
		return lines
	}
	for _, line := range lines {
		if strings.HasPrefix(line, "(error") && !noModel(line) {
			t.Errorf("%s: %s in\n%s", s.name, line, text)
			return nil
		}
	}
	if exit := new(exec.ExitError); err != nil && !errors.As(err, &exit) {
		t.Errorf("%s: %v", s.name, err)
	}
	return lines
}

// noModel is what a solver says that is asked for a model after unsat or unknown, or
// that has run out of memory.
func noModel(line string) bool {
	for _, words := range []string{"model is not available", "annot get value", "out of memory"} {
		if strings.Contains(line, words) {
			return true
		}
	}
	return false
}

func answerOf(lines []string) string {
	if len(lines) > 0 && (lines[0] == sat || lines[0] == unsat) {
		return lines[0]
	}
	return unknown
}

// script is a claim as a solver gets it, with what is needed to understand its answer.
type question struct {
	*script
	text string
}

func newQuestion(plan *mixcore.Plan, c *prove.Claim, clearance *big.Rat) (question, error) {
	s, failure, err := build(plan, c, clearance)
	if err != nil {
		return question{}, err
	}
	return question{s, string(s.assemble("to be compared", failure))}, nil
}

// decide asks a solver; of sat it reads the position, if it can be read.
func (q *question) decide(t *testing.T, s *solver) (answer string, pose prove.Pose, readable bool) {
	t.Helper()
	commands := "(check-sat)\n"
	if len(q.constants) > 0 {
		commands += "(get-value (" + strings.Join(q.symbols(), " ") + "))\n"
	}
	lines := s.ask(t, q.text, commands)
	answer = answerOf(lines)
	if answer != sat {
		return answer, pose, false
	}
	values := make([]float64, len(q.constants))
	if len(values) > 0 {
		values, readable = q.read(strings.Join(lines[1:], " "))
		if !readable {
			return answer, pose, false
		}
	}
	return answer, q.pose(values), true
}

func (q *question) symbols() (list []string) {
	for _, c := range q.constants {
		list = append(list, c.symbol)
	}
	return list
}

// read reads the answer to get-value: ((symbol value) …) in the order asked.
func (q *question) read(text string) ([]float64, bool) {
	var values []float64
	for i, c := range q.constants {
		at := strings.Index(text, c.symbol)
		if at < 0 {
			return nil, false
		}
		text = text[at+len(c.symbol):]
		end := len(text)
		if i+1 < len(q.constants) {
			if end = strings.Index(text, q.constants[i+1].symbol); end < 0 {
				return nil, false
			}
		}
		value, ok := readNumber(text[:end])
		if !ok {
			return nil, false
		}
		values = append(values, value)
	}
	return values, true
}

// readNumber reads 1.5, (- 1.5), (/ 1.0 3.0), (- (/ 1.0 3.0)), true or false, with
// brackets and spaces around it. A ? marks a decimal that z3 has cut off.
func readNumber(text string) (float64, bool) {
	words := strings.FieldsFunc(text, func(r rune) bool { return strings.ContainsRune("() \t\n", r) })
	sign := 1.0
	var numbers []float64
	for _, word := range words {
		switch word {
		case "-":
			sign = -sign
		case "/":
		case "true":
			return 1, true
		case "false":
			return 0, true
		default:
			r, ok := new(big.Rat).SetString(strings.TrimSuffix(word, "?"))
			if !ok {
				return 0, false
			}
			x, _ := r.Float64()
			numbers = append(numbers, x)
		}
	}
	switch len(numbers) {
	case 1:
		return sign * numbers[0], true
	case 2:
		return sign * numbers[0] / numbers[1], true
	}
	return 0, false
}

// pose puts the controls where the constants say; controls that do not bear on the
// claim stand at the first place that they may have.
func (q *question) pose(values []float64) prove.Pose {
	c := q.claim
	now, other := make([]float64, len(c.Now)), make([]float64, len(c.Now))
	for i := range c.Now {
		now[i] = first(&c.Now[i])
	}
	q.put(now, values, false)
	pose := prove.Pose{Now: mixcore.Input{Position: now, SignalLost: c.Lost}}
	if !q.usesOther() {
		return pose
	}
	for i := range other {
		switch how, span := q.other.stands(i); how {
		case prove.Same:
			other[i] = now[i]
		case prove.Mirrored:
			other[i] = -now[i]
		default:
			other[i] = first(&span)
		}
	}
	q.put(other, values, true)
	pose.Other = mixcore.Input{Position: other, SignalLost: q.other.lost}
	return pose
}

func first(s *prove.Span) float64 {
	if s.Places != nil {
		return float64(s.Places[0])
	}
	return s.Low
}

func (q *question) put(position, values []float64, other bool) {
	for i, c := range q.constants {
		if c.other != other {
			continue
		}
		if q.setup.Controls[c.control].Kind != mixcore.SwitchControl {
			position[c.control] = values[i]
		} else if values[i] == 1 {
			position[c.control] = float64(c.position)
		}
	}
}

// pinned are commands that ask whether the claim fails at each of some poses.
func (q *question) pinned(poses []prove.Pose) string {
	var b bytes.Buffer
	for i := range poses {
		b.WriteString("(push 1)\n")
		for _, c := range q.constants {
			at := poses[i].Now.Position[c.control]
			if c.other {
				at = poses[i].Other.Position[c.control]
			}
			if q.setup.Controls[c.control].Kind == mixcore.SwitchControl {
				if int(at) == c.position {
					fmt.Fprintf(&b, "(assert %s)\n", c.symbol)
				}
			} else {
				fmt.Fprintf(&b, "(assert (= %s %s))\n", c.symbol, setting(at).text)
			}
		}
		b.WriteString("(check-sat)\n(pop 1)\n")
	}
	return b.String()
}
