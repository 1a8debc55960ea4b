package serve

import (
	"strings"

	"example.com/hingeline/mixcore"
	"example.com/hingeline/verify/bench"
)

// tooSoon is said of what comes sooner.
const tooSoon = "Too soon: look first. Nothing was taken."

// answers are the deeds that answer a question.
var answers = map[string]bool{"yes": true, "no": true, "all": true, "seen": true, "say": true, "measure": true, "skip": true, "finish": true}

// sending notes when the present question is sent for the first time.
func (b *table) sending() {
	if b.sent != b.turn {
		b.sent, b.since = b.turn, b.clock()
	}
}

// lookedAt says whether the present question has stood there long enough. One that no page
// was sent has not.
func (b *table) lookedAt() bool { return b.sent == b.turn && b.clock().Sub(b.since) >= b.look }

// motorsAt are the motors of a model that run at a pose: "MOTOR RUNS at 40 %".
func motorsAt(setup *mixcore.Setup, parts []partAt) (list []string) {
	for i := range parts {
		if strings.HasPrefix(parts[i].Short, runsAt) {
			list = append(list, strings.ToUpper(setup.Parts[i].Name)+" "+parts[i].Short)
		}
	}
	return list
}

// running is what is said of the motors in the step that is asked about; alarm says whether
// one of them runs. It is empty of a model without motors.
func (b *table) running(g *bench.Guide) (words string, alarm bool) {
	m := b.walk.Steps.Model
	motor := false
	for i := range m.Setup.Parts {
		motor = motor || m.Setup.Parts[i].Motion == mixcore.Power
	}
	from, to, ok := g.Poses()
	if !motor || !ok {
		return "", false
	}
	at := func(in *mixcore.Input) []string {
		out := m.Plan.NewOutput()
		m.Plan.Eval(in, out)
		parts := make([]partAt, len(m.Setup.Parts))
		for i := range parts {
			parts[i] = standing(&m.Setup.Parts[i], out.Parts[i])
		}
		return motorsAt(&m.Setup, parts)
	}
	if list := at(&to); len(list) > 0 {
		return strings.Join(list, ", "), true
	}
	if list := at(&from); len(list) > 0 {
		return strings.Join(list, ", ") + " before the movement", true
	}
	return "Every motor must be stopped.", false
}
