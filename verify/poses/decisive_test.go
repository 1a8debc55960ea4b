package poses_test

import (
	"fmt"
	"math/bits"
	"reflect"
	"slices"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"example.com/hingeline/airframes"
	"example.com/hingeline/mixcore"
	"example.com/hingeline/verify/poses"
)

const threeSwitches = `hingeline: 1
name: Three
controls:
  pitch stick: pitch
  first: {switch: [off, on]}
  second: {switch: [off, on]}
  third: {switch: [off, on]}
  slide: lever
demands:
  pitch: {from: pitch stick}
channels:
  1:
    name: elevator
    mix:
      - pitch
      - {fixed: 10%, when: (first is on and second is on) or third is on}
      - {fixed: 5%, when: slide is above 60% or slide is below 20%}
surfaces:
  elevator: {channel: 1, measured: {-120%: 22° up, 0%: 0°, 120%: 17° down}}
`

func decisive(t *testing.T, line int) poses.Decisive {
	t.Helper()
	m, problems := airframes.Load("three.yaml", []byte(threeSwitches))
	if m == nil {
		t.Fatal(problems)
	}
	p := poses.New(m.Plan)
	return p.Decisive(m.Setup.Channels[0].Mix[line].When, p.Points)
}

// The worked example of modified condition/decision coverage, (A and B) or C: pairs
// A (2, 6), B (2, 4), C (3, 4) (5, 6) (7, 8), smallest sets {2, 3, 4, 6} and {2, 4, 5, 6},
// rows numbered from 1 (TU Delft OCW, software testing, 3.4.3).
func TestDecisiveOfTheWorkedExample(t *testing.T) {
	d := decisive(t, 1)
	if want := [][][2]int{{{1, 5}}, {{1, 3}}, {{2, 3}, {4, 5}, {6, 7}}}; !reflect.DeepEqual(d.Pairs, want) {
		t.Errorf("pairs %v, want %v (counted from 0)", d.Pairs, want)
	}
	if want := [][]int{{1, 2, 3, 5}, {1, 3, 4, 5}}; !reflect.DeepEqual(d.Sets, want) {
		t.Errorf("smallest sets %v, want %v (counted from 0)", d.Sets, want)
	}
}

// Two tests of one lever that cannot hold together have no row in which they do.
func TestDecisiveLeavesOutWhatCannotBe(t *testing.T) {
	d := decisive(t, 2)
	if len(d.Rows) != 4 || d.Rows[0].At != nil || d.Rows[1].At == nil || d.Rows[2].At == nil || d.Rows[3].At == nil {
		t.Fatalf("%+v", d.Rows)
	}
	if want := [][][2]int{{{1, 3}}, {{2, 3}}}; !reflect.DeepEqual(d.Pairs, want) {
		t.Errorf("pairs %v, want %v", d.Pairs, want)
	}
}

// byTrial are the smallest sets of rows that hold a pair of every test that has one, found
// by trying every set of rows that can be.
func byTrial(d *poses.Decisive) (sets [][]int) {
	var can []int
	for row := range d.Rows {
		if d.Rows[row].At != nil {
			can = append(can, row)
		}
	}
	least := len(can) + 1
	for choice := 1; choice < 1<<len(can); choice++ {
		if bits.OnesCount(uint(choice)) > least {
			continue
		}
		var set []int
		for i, row := range can {
			if choice>>i&1 == 1 {
				set = append(set, row)
			}
		}
		if slices.ContainsFunc(d.Pairs, func(pairs [][2]int) bool {
			return len(pairs) > 0 && !slices.ContainsFunc(pairs, func(p [2]int) bool {
				return slices.Contains(set, p[0]) && slices.Contains(set, p[1])
			})
		}) {
			continue
		}
		if len(set) < least {
			least, sets = len(set), nil
		}
		sets = append(sets, set)
	}
	slices.SortFunc(sets, slices.Compare[[]int])
	return sets
}

// tests are those of random conditions: of two switches and three of one lever.
func tests(m *airframes.Model) []mixcore.Condition {
	named := func(name string) int {
		return slices.IndexFunc(m.Setup.Controls, func(c mixcore.Control) bool { return c.Name == name })
	}
	return []mixcore.Condition{
		{Op: mixcore.AtPosition, Control: named("first"), Position: 1},
		{Op: mixcore.Above, Control: named("slide"), Low: 60},
		{Op: mixcore.Below, Control: named("slide"), High: 20},
		{Op: mixcore.AtPosition, Control: named("second"), Position: 1},
		{Op: mixcore.Above, Control: named("slide"), Low: 40},
	}
}

// Tests of one lever that lie apart have no row in common: with below 20 or above 60 each
// decides at its own place, and above 40, named in vain, nowhere between.
func TestDecisiveSetsMayBeInPieces(t *testing.T) {
	m, _ := airframes.Load("three.yaml", []byte(threeSwitches))
	p := poses.New(m.Plan)
	list := tests(m)
	above60, below20, above40 := list[1], list[2], list[4]
	c := mixcore.Condition{Op: mixcore.And, Args: []mixcore.Condition{
		{Op: mixcore.Or, Args: []mixcore.Condition{below20, above60}},
		{Op: mixcore.Or, Args: []mixcore.Condition{above40, {Op: mixcore.Not, Args: []mixcore.Condition{above40}}}},
	}}
	d := p.Decisive(&c, p.Points)
	if want := [][][2]int{{{3, 7}}, {{4, 6}}, nil}; !reflect.DeepEqual(d.Pairs, want) {
		t.Errorf("pairs %v, want %v", d.Pairs, want)
	}
	if want := [][]int{{3, 4, 6, 7}}; !reflect.DeepEqual(d.Sets, want) {
		t.Errorf("smallest sets %v, want %v", d.Sets, want)
	}
}

// Of random conditions the smallest sets are those that trying every set finds, and the
// controls of every row make its tests what they are there.
func TestDecisiveSetsAreAllTheSmallest(t *testing.T) {
	m, _ := airframes.Load("three.yaml", []byte(threeSwitches))
	p := poses.New(m.Plan)
	rapid.Check(t, func(t *rapid.T) {
		var draw func(deep int) mixcore.Condition
		draw = func(deep int) mixcore.Condition {
			op := mixcore.ConditionOp(0)
			if deep > 0 {
				op = rapid.SampledFrom([]mixcore.ConditionOp{0, mixcore.And, mixcore.Or, mixcore.Not}).Draw(t, "op")
			}
			switch op {
			case 0:
				return rapid.SampledFrom(tests(m)).Draw(t, "test")
			case mixcore.Not:
				return mixcore.Condition{Op: op, Args: []mixcore.Condition{draw(deep - 1)}}
			}
			return mixcore.Condition{Op: op, Args: []mixcore.Condition{draw(deep - 1), draw(deep - 1)}}
		}
		c := draw(3)
		d := p.Decisive(&c, p.Points)
		want := byTrial(&d)
		if !slices.ContainsFunc(d.Pairs, func(pairs [][2]int) bool { return pairs != nil }) {
			want = nil
		}
		if !reflect.DeepEqual(d.Sets, want) {
			t.Errorf("%d tests: smallest sets %v, want %v; pairs %v", len(d.Tests), d.Sets, want, d.Pairs)
		}
		for _, row := range d.Rows {
			if row.At != nil && m.Plan.Holds(&c, row.At) != row.Holds {
				t.Errorf("%v: want the condition %v", row.Truths, row.Holds)
			}
			for i := range d.Tests {
				if row.At != nil && m.Plan.Holds(&d.Tests[i], row.At) != row.Truths[i] {
					t.Errorf("%v: test %d is not so at %v", row.Truths, i, row.At.Position)
				}
			}
		}
	})
}

// Eight tests in four pairs: nine rows are enough, in 400 ways (counted by growing trees of
// rows in another language).
func TestDecisiveFindsEveryWayOfEightTests(t *testing.T) {
	var text strings.Builder
	text.WriteString("hingeline: 1\nname: Eight\ncontrols:\n  pitch stick: pitch\n")
	var terms []string
	for i := range 4 {
		fmt.Fprintf(&text, "  s%d: {switch: [off, on]}\n  t%d: {switch: [off, on]}\n", i, i)
		terms = append(terms, fmt.Sprintf("(s%d is on and t%d is on)", i, i))
	}
	fmt.Fprintf(&text, "demands:\n  pitch: {from: pitch stick}\nchannels:\n  1: {name: elevator, mix: [{fixed: 10%%, when: %s}]}\n"+
		"surfaces:\n  elevator: {channel: 1, measured: {-120%%: 22° up, 0%%: 0°, 120%%: 17° down}}\n", strings.Join(terms, " or "))
	m, problems := airframes.Load("eight.yaml", []byte(text.String()))
	if m == nil {
		t.Fatal(problems)
	}
	p := poses.New(m.Plan)
	d := p.Decisive(m.Setup.Channels[0].Mix[0].When, p.Points)
	if len(d.Tests) != 8 || len(d.Sets) != 400 || len(d.Sets[0]) != 9 {
		t.Errorf("%d tests, %d sets, want 400 of 9 rows", len(d.Tests), len(d.Sets))
	}
}
