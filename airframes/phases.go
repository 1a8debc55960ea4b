package airframes

import (
	"gopkg.in/yaml.v3"

	"example.com/hingeline/mixcore"
)

// maxFade is the longest time, in seconds, that a phase may take to come in or
// a channel to move.
const maxFade = 60

// readPhases reads the section phases. All names are known before the first
// condition is read, so that one which comes too early is told from one that
// does not exist.
func (r *reader) readPhases(section *yaml.Node) {
	r.phases.absent = section != nil && (!readable(section) || section.Kind != yaml.MappingNode)
	all := r.namedEntries(section, "phases", "phases", maxPhases)
	for i, e := range all {
		r.setup.Phases = append(r.setup.Phases, mixcore.Phase{Name: e.name})
		r.model.Places.Phases = append(r.model.Places.Phases, e.at)
		r.add(&r.phases, e.name, i, e.at)
	}
	for i, e := range all {
		r.readPhase(e, i)
	}
}

func (r *reader) readPhase(e entry, index int) {
	if !readable(e.value) {
		return
	}
	what, phase := "phase "+quoted(e.name), &r.setup.Phases[index]
	when := e.value
	if e.value.Kind != yaml.ScalarNode {
		f, ok := r.fields(e.value, e.at, e.path, what, "when", "fade")
		if !ok {
			return
		}
		when = f.require("when", "say when it is in force, such as when: flap lever is above 50%")
		if fade, ok := r.number(f.get("fade"), "fade of "+what, inSeconds, 0, maxFade); ok {
			phase.Fade = mixcore.Seconds(fade)
		}
	}
	if condition, ok := r.condition(when, what, index); ok {
		phase.When = *condition
	}
}
