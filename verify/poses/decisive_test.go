package poses_test

import (
	"reflect"
	"testing"

	"example.com/hingeline/airframes"
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
