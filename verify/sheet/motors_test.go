package sheet

import (
	"slices"
	"testing"

	"example.com/hingeline/airframes"
	"example.com/hingeline/mixcore"
)

// promising has motors that are said to be stopped: one that is, one that a mix line
// after the stop sets running again at the end of a lever, and one that runs always.
const promising = `hingeline: 1
name: Promising
controls: {motor switch: [safe, live], throttle: lever, boost lever: lever}
demands:
  throttle: {from: throttle, curve: {0%: -100%, 100%: 100%}}
  boost: {from: boost lever, curve: {0%: 0%, 90%: 0%, 100%: 60%}}
channels:
  1: {mix: [throttle, {replace_with: -100%, when: motor switch is safe}]}
  2: {mix: [throttle, {replace_with: -100%, when: motor switch is safe}, boost]}
  3: {mix: [throttle, {replace_with: 100%, when: motor switch is safe}]}
motors:
  first motor: {channel: 1, stopped_when: motor switch is safe}
  second motor: {channel: 2, stopped_when: motor switch is safe}
  third motor: {channel: 3, stopped_when: motor switch is safe}
  fourth motor: {channel: 1}
`

func TestMotorsSayWhereTheyBreakTheirPromise(t *testing.T) {
	m, problems := airframes.Load("promising.yaml", []byte(promising))
	if m == nil {
		t.Fatal(problems)
	}
	breaks := map[string]bool{"second motor": true, "third motor": true}
	for _, motor := range motorsOf(m) {
		if motor.NotSure || (len(motor.Breaks) > 0) != breaks[motor.Name] {
			t.Errorf("%+v", motor)
		}
	}
	list := motorsOf(m)
	if list[2].Rest == "stopped" || !slices.Equal(list[2].Breaks, []string{"rest"}) {
		t.Errorf("%+v", list[2])
	}
	at, out := poseSaid(t, m, list[1].Breaks), m.Plan.NewOutput()
	m.Plan.Eval(&at, out)
	p := &m.Setup.Parts[1]
	if p.Motion != mixcore.Power || !m.Plan.Holds(p.Motor.StoppedWhen, &at) || p.Motor.Stopped(out.Parts[1].Amount) {
		t.Errorf("%q: power %v %%", list[1].Breaks, out.Parts[1].Amount)
	}
}
