package table

import (
	"encoding/binary"
	"math"
	"slices"

	"example.com/hingeline/airframes"
	"example.com/hingeline/mixcore"
	"example.com/hingeline/verify/faults/sight"
	"example.com/hingeline/verify/poses"
)

// How many steps are tried.
const (
	// MostSteps is how many candidate steps there are at most.
	MostSteps = 4000
	// mostStates is in how many states of the levers and switches that bear on the
	// same parts a stick is moved, those with the fewest off rest first.
	mostStates = 96
	// mostRunning is how many states are tried to find one in which motors run.
	mostRunning = 2000
)

// Steps are the candidate steps of a walk-around, each once, the plainest first: the
// model as it stands; each control alone; sticks and trims in the states of levers
// and switches that change what they do; conditions either way; all sticks at once;
// and the loss of the signal. Every control stands where a hand puts it without
// measuring, clear of thresholds.
func Steps(m *airframes.Model) []sight.Step {
	steps, _ := Candidates(m)
	return steps
}

// Candidates are Steps, and whether there would have been more than MostSteps.
func Candidates(m *airframes.Model) (steps []sight.Step, cut bool) {
	c := &collector{setup: &m.Setup, plan: m.Plan, probe: poses.New(m.Plan), rest: m.Plan.Rest(), seen: map[string]bool{}}
	c.hand = newHand(c.probe, c.setup)
	for i := range c.setup.Parts {
		c.reach = append(c.reach, c.probe.PartReach(i))
	}
	c.add(c.rest)
	c.alone()
	c.lost()
	c.conditions()
	c.sticks()
	c.together()
	c.states()
	return c.steps, c.cut
}

// collector gathers steps.
type collector struct {
	setup *mixcore.Setup
	plan  *mixcore.Plan
	probe *poses.Probe
	hand  *hand
	rest  mixcore.Input
	reach []poses.Reach // by part
	seen  map[string]bool
	steps []sight.Step
	cut   bool
}

// add takes the step that ends with the controls at to, unless it is there. Where it
// begins follows from where it ends.
func (c *collector) add(to mixcore.Input) {
	key := keyOf(&to, nil)
	if c.seen[key] {
		return
	}
	if len(c.steps) >= MostSteps {
		c.cut = true
		return
	}
	c.seen[key] = true
	c.steps = append(c.steps, sight.StepTo(c.setup, to.Clone()))
}

// keyOf is a text that is the same for inputs that are the same in some of the
// controls; nil is all of them.
func keyOf(in *mixcore.Input, some poses.Reach) string {
	key := make([]byte, 0, 8*len(in.Position)+1)
	for i, at := range in.Position {
		if some == nil || some[i] {
			key = binary.LittleEndian.AppendUint64(key, math.Float64bits(at))
		}
	}
	if in.SignalLost {
		key = append(key, 1)
	}
	return string(key)
}

// alone is every control by itself.
func (c *collector) alone() {
	for i := range c.setup.Controls {
		to := c.rest.Clone()
		for _, at := range c.hand.alone[i][1:] {
			to.Position[i] = at
			c.add(to)
		}
	}
}

// deflect adds the steps in which the sticks and trims of a reach are moved in a
// state, one at a time.
func (c *collector) deflect(state mixcore.Input, reach poses.Reach, trims bool) {
	to := state.Clone()
	for i, in := range reach {
		control := &c.setup.Controls[i]
		if !in || !centres(control) || control.Kind == mixcore.TrimControl && !trims {
			continue
		}
		was := to.Position[i]
		for _, at := range c.hand.alone[i][1:] {
			to.Position[i] = at
			c.add(to)
		}
		to.Position[i] = was
	}
}

// sticks is every stick and trim in every combination of the levers and switches that
// bear on the parts it moves.
func (c *collector) sticks() {
	for i := range c.setup.Controls {
		control := &c.setup.Controls[i]
		if !centres(control) {
			continue
		}
		only := c.probe.Nothing()
		only[i] = true
		for _, state := range c.combined(c.beside(i), mostStates) {
			c.deflect(state, only, true)
		}
	}
}

// beside is what bears on the parts that a control bears on.
func (c *collector) beside(control int) poses.Reach {
	all := c.probe.Nothing()
	for _, reach := range c.reach {
		if reach[control] {
			all.AddAll(reach)
		}
	}
	return all
}

// combined are states of the levers and switches of a reach, those with the fewest
// off rest first, at most so many.
func (c *collector) combined(reach poses.Reach, most int) []mixcore.Input {
	controls := slices.DeleteFunc(reach.Controls(), func(i int) bool { return centres(&c.setup.Controls[i]) })
	in := c.rest.Clone()
	var states []mixcore.Input
	var choose func(from, more int)
	choose = func(from, more int) {
		if more == 0 {
			states = append(states, in.Clone())
			return
		}
		for i := from; i <= len(controls)-more; i++ {
			control := controls[i]
			places := c.hand.main[control]
			for _, at := range places[1:] {
				if len(states) >= most {
					break
				}
				in.Position[control] = at
				choose(i+1, more-1)
			}
			in.Position[control] = places[0]
		}
	}
	for moved := 0; moved <= len(controls) && len(states) < most; moved++ {
		choose(0, moved)
	}
	return states
}

// states is every state of the levers and switches that bear on one part, by itself.
func (c *collector) states() {
	for _, reach := range c.reach {
		for _, state := range c.combined(reach, mostStates) {
			c.add(state)
		}
	}
}

// together is all sticks at once, in both opposite corners and in the rows of a
// pairwise array, with each lever and switch in turn off rest.
func (c *collector) together() {
	var sticks []int
	for i := range c.setup.Controls {
		if c.setup.Controls[i].Kind == mixcore.AxisControl {
			sticks = append(sticks, i)
		}
	}
	if len(sticks) < 2 {
		return
	}
	for _, state := range c.single(c.rest) {
		for _, row := range corners(len(sticks)) {
			to := state.Clone()
			for k, plus := range row {
				low, high := c.setup.Controls[sticks[k]].Range()
				to.Position[sticks[k]] = low
				if plus {
					to.Position[sticks[k]] = high
				}
			}
			c.add(to)
		}
	}
}

// single is a pose, and with each lever and switch in turn at each of its places.
func (c *collector) single(pose mixcore.Input) []mixcore.Input {
	list := []mixcore.Input{pose.Clone()}
	for i := range c.setup.Controls {
		if centres(&c.setup.Controls[i]) {
			continue
		}
		for _, at := range c.hand.main[i] {
			if at != pose.Position[i] {
				in := pose.Clone()
				in.Position[i] = at
				list = append(list, in)
			}
		}
	}
	return list
}

// lost is the loss of the signal: from rest, and from flight with motors running and
// the sticks over, with each lever and switch in turn somewhere else.
func (c *collector) lost() {
	running := c.running()
	poses := append([]mixcore.Input{c.rest}, c.single(running)...)
	for _, end := range []int{0, 1} {
		over := running.Clone()
		for i := range c.setup.Controls {
			if control := &c.setup.Controls[i]; control.Kind == mixcore.AxisControl {
				low, high := control.Range()
				over.Position[i] = []float64{high, low}[end]
			}
		}
		poses = append(poses, c.single(over)...)
	}
	for _, pose := range poses {
		to := pose.Clone()
		to.SignalLost = true
		c.add(to)
	}
}

// running is the state with the fewest controls off rest in which the most motors run.
func (c *collector) running() mixcore.Input {
	reach := c.probe.Nothing()
	for i := range c.setup.Parts {
		if c.setup.Parts[i].Motor != nil {
			reach.AddAll(c.reach[i])
		}
	}
	best, most := c.rest, 0
	out := c.plan.NewOutput()
	for _, state := range c.combined(reach, mostRunning) {
		c.plan.Eval(&state, out)
		running := 0
		for i := range c.setup.Parts {
			if motor := c.setup.Parts[i].Motor; motor != nil && !motor.Stopped(out.Parts[i].Amount) {
				running++
			}
		}
		if running > most {
			best, most = state, running
		}
	}
	return best
}
