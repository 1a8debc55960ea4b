package draft

import (
	"example.com/hingeline/airframes"
	"example.com/hingeline/mixcore"
	"example.com/hingeline/mixcore/effect"
	"example.com/hingeline/verify/phrase"
	"example.com/hingeline/verify/poses"
	"example.com/hingeline/verify/purpose"
)

// YouDecide begins a comment that is a sentence of the script once the mark is
// taken away.
const YouDecide = "# you decide: "

// Draft is a script, and how much of it is left to the pilot.
type Draft struct {
	Text      []byte // Gherkin
	Undecided int    // lines that begin with YouDecide
}

// Script drafts the script of a model.
func Script(m *airframes.Model) Draft {
	d := newDrafter(m)
	d.heading()
	d.rest()
	for i := range d.s.Controls {
		d.control(i)
	}
	d.untouched()
	d.signal()
	return Draft{Text: d.text.Bytes(), Undecided: d.undecided}
}

func newDrafter(m *airframes.Model) *drafter {
	d := &drafter{
		m: m, s: &m.Setup, plan: m.Plan,
		air: effect.New(&m.Setup), probe: poses.New(m.Plan), vocabulary: phrase.NewVocabulary(m),
		names: map[string][]int{}, grouped: map[string][]string{}, titles: map[string]int{}, before: m.Plan.NewOutput(), after: m.Plan.NewOutput(),
	}
	d.partner = make([]int, len(d.s.Parts))
	for i := range d.partner {
		d.partner[i] = alone
	}
	for _, p := range poses.Pairs(d.s) {
		d.partner[p.Port], d.partner[p.Starboard] = p.Starboard, p.Port
	}
	for i := range d.s.Parts {
		d.stems = append(d.stems, poses.WithoutSide(d.s.Parts[i].Name))
		d.reach = append(d.reach, d.probe.PartReach(i))
	}
	for range d.s.Controls {
		d.spokenOf = append(d.spokenOf, make([]bool, len(d.s.Parts)))
	}
	for i := range d.s.Controls {
		d.words = append(d.words, purpose.Words(m, i))
		d.purposes = append(d.purposes, purpose.Of(m, i))
	}
	d.served = d.allServed()
	d.places = d.allPlaces()
	return d
}

// alone is the partner of a part that has none.
const alone = -1

// drafter is one draft in the making.
type drafter struct {
	m          *airframes.Model
	s          *mixcore.Setup
	plan       *mixcore.Plan
	air        *effect.Airframe
	probe      *poses.Probe
	vocabulary *phrase.Vocabulary
	partner    []int         // by part: the same part on the other side, or alone
	reach      []poses.Reach // by part: the controls that bear on it
	places     [][]float64   // by lever and switch: where a script puts it, its rest first
	words      [][]string    // by control: the words of its names
	purposes   []purpose.Purpose
	served     [][]int  // by lever and switch: the parts that it is there for
	spokenOf   [][]bool // by control and part: a sentence says what the part does
	stems      []string // by part: its name without its side
	grouped    map[string][]string
	names      map[string][]int // what a script takes a name of several parts for
	titles     map[string]int   // how often a scenario was called so
	before     *mixcore.Output
	after      *mixcore.Output
	page
}
