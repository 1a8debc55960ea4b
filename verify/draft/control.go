package draft

import (
	"fmt"
	"slices"
	"strings"

	"example.com/hingeline/mixcore"
	"example.com/hingeline/mixcore/effect"
	"example.com/hingeline/verify/phrase"
	"example.com/hingeline/verify/wording"
)

// scene is one or more states in which the same is asked.
type scene struct {
	states []state
	lines  [][]line // by step
}

// control writes what happens as one control is moved, in every state of the
// others that makes a difference.
func (d *drafter) control(control int) {
	steps := d.steps(control)
	states := d.statesFor(control)
	ever := d.answering(steps, states)
	var scenes []*scene
	stirs := false
	for i := range states {
		lines, something := d.linesIn(steps, &states[i].in, ever)
		stirs = stirs || something
		at := slices.IndexFunc(scenes, func(s *scene) bool { return sameLines(s.lines, lines) })
		switch {
		case at < 0:
			scenes = append(scenes, &scene{[]state{states[i]}, lines})
		case len(states) <= fullStates || states[i].moved <= 1:
			scenes[at].states = append(scenes[at].states, states[i])
		}
	}
	if !stirs && len(scenes) > 0 { // it moves nothing by itself, wherever the rest stands
		scenes = scenes[:1]
		scenes[0].states = scenes[0].states[:1]
	}
	for _, s := range scenes {
		d.scene(control, steps, s)
	}
}

// steps are the movements of a control that a draft looks at, each on its own.
func (d *drafter) steps(control int) []step {
	c := &d.s.Controls[control]
	if c.Kind == mixcore.AxisControl || c.Kind == mixcore.TrimControl {
		low, high := c.Range()
		return []step{{control, 0, high}, {control, 0, low}}
	}
	var steps []step
	places := d.places[control]
	for i := 1; i < len(places); i++ {
		steps = append(steps, step{control, places[i-1], places[i]})
	}
	return append(steps, step{control, places[len(places)-1], places[0]})
}

// linesIn are the sentences of each step in a state, and whether one of them
// says that something moves.
func (d *drafter) linesIn(steps []step, in *mixcore.Input, ever []bool) (lines [][]line, stirs bool) {
	for _, st := range steps {
		list := d.ask(st, in, ever)
		for _, a := range list {
			d.spokenOf[st.control][a.part] = true
		}
		stirs = stirs || slices.ContainsFunc(list, func(a asked) bool {
			return a.verb != phrase.Still && a.verb != phrase.StaysStopped || a.open
		})
		lines = append(lines, append(d.lines(list), d.turn(st, list)...))
	}
	return lines, stirs
}

func sameLines(a, b [][]line) bool {
	return slices.EqualFunc(a, b, func(x, y []line) bool { return slices.Equal(x, y) })
}

// turn is what the model as a whole does as an axis control is moved.
func (d *drafter) turn(st step, list []asked) []line {
	c := &d.s.Controls[st.control]
	if c.Kind != mixcore.AxisControl && c.Kind != mixcore.TrimControl {
		return nil
	}
	axis := c.Axis
	if !d.turnsAbout(axis, list) {
		if axis != mixcore.Roll || !d.turnsAbout(mixcore.Yaw, list) {
			return nil
		}
		axis = mixcore.Yaw // rudder and elevator only: the roll stick yaws it
	}
	words := turnWords[axis][0]
	if st.to < st.from {
		words = turnWords[axis][1]
	}
	change := d.air.Change(d.before, d.after)
	// The downwash of the wing's parts is for nobody to tell; whether what is there
	// for roll does it, is.
	lines := []line{{"the model " + words, axis == mixcore.Pitch && change.Answer(axis) == effect.Unsure}}
	if c.Kind == mixcore.AxisControl && axis == mixcore.Roll && differential(d.s, list) {
		lines = append(lines, line{"adverse yaw does not grow", false})
	}
	return lines
}

// differential is true if surfaces of the wing are asked to go up and down at
// once: then those that go up should go at least as far, against adverse yaw.
func differential(s *mixcore.Setup, list []asked) bool {
	goes := func(way phrase.Way) bool {
		return slices.ContainsFunc(list, func(a asked) bool {
			return a.verb == phrase.Move && a.way == way && !a.open &&
				slices.Contains([]mixcore.Kind{"aileron", "flaperon", "elevon"}, s.Parts[a.part].Kind)
		})
	}
	return goes(phrase.Up) && goes(phrase.Down)
}

// turnsAbout is true if something is asked of a part that is there to turn the
// model about an axis.
func (d *drafter) turnsAbout(axis mixcore.Axis, list []asked) bool {
	return slices.ContainsFunc(list, func(a asked) bool {
		return a.verb == phrase.Move && !a.open && d.air.Acts(a.part) && d.air.Duty(a.part, axis) != 0
	})
}

// scene writes a scenario, or an outline with a row for each of several states.
func (d *drafter) scene(control int, steps []step, s *scene) {
	fixed, varying := d.controlsOf(s.states)
	all := slices.Concat(s.lines...)
	if len(all) == 0 {
		return
	}
	d.gap()
	if len(settled(all)) == 0 {
		d.line(1, "# %s: what is right here is for you to say.", title(d.s.Controls[control].Name))
		for i, st := range steps {
			d.openStep(1, st, d.standing(&s.states[0]), s.lines[i])
		}
		return
	}
	kind := "Scenario"
	if len(varying) > 0 {
		kind = "Scenario Outline"
	}
	d.line(1, "%s: %s", kind, d.sceneTitle(control, s, fixed, varying))
	keyword := "Given"
	for _, c := range fixed {
		d.line(2, "%s %s", keyword, d.setting(c, s.states[0].in.Position[c], "is"))
		keyword = "And"
	}
	for _, c := range varying {
		name := d.s.Controls[c].Name
		d.line(2, "%s the %s is %s<%s>", keyword, name, d.preposition(c), name)
		keyword = "And"
	}
	centred := true
	for i, st := range steps {
		switch {
		case len(settled(s.lines[i])) == 0:
			d.openStep(2, st, nil, s.lines[i])
		case d.s.Controls[control].Kind == mixcore.AxisControl:
			if !centred {
				d.line(2, "Given %s", d.setting(control, 0, "is"))
			}
			centred = false
			d.line(2, "When %s", d.setting(control, st.to, "is"))
			d.outcomes(2, s.lines[i])
		default:
			d.line(2, "* %s, %s", d.movement(st), wording.Listed(settled(s.lines[i])))
			for _, sentence := range open(s.lines[i]) {
				d.decide(2, "* "+d.movement(st)+", "+sentence)
			}
		}
	}
	d.examples(s, varying)
}

// standing says where the controls of a state stand that do not rest.
func (d *drafter) standing(s *state) []string {
	var list []string
	for c, at := range s.in.Position {
		if at != d.s.Controls[c].Rest() {
			list = append(list, d.setting(c, at, ""))
		}
	}
	return list
}

// openStep writes a step of which everything is left to the pilot.
func (d *drafter) openStep(indent int, st step, standing []string, lines []line) {
	if sentences := open(lines); len(sentences) > 0 {
		d.decide(indent, "* "+d.movement(st, standing...)+", "+wording.Listed(sentences))
	}
}

// movement is a step, with how other controls stand before it, as the beginning
// of a sentence of one line.
func (d *drafter) movement(st step, standing ...string) string {
	c := &d.s.Controls[st.control]
	if c.Kind == mixcore.AxisControl || c.Kind == mixcore.TrimControl {
		return "with " + wording.Listed(append(standing, d.setting(st.control, st.to, "")))
	}
	if st.from != c.Rest() {
		standing = append(standing, d.setting(st.control, st.from, ""))
	}
	moved := "when " + d.setting(st.control, st.to, "is")
	if len(standing) == 0 {
		return moved
	}
	return "with " + wording.Listed(standing) + ", " + moved
}

// controlsOf are the controls that stand off rest in all states alike, and those
// that stand here in one and there in another.
func (d *drafter) controlsOf(states []state) (fixed, varying []int) {
	for c := range d.s.Controls {
		first, same := states[0].in.Position[c], true
		for i := range states {
			same = same && states[i].in.Position[c] == first
		}
		switch {
		case !same:
			varying = append(varying, c)
		case first != d.s.Controls[c].Rest():
			fixed = append(fixed, c)
		}
	}
	return fixed, varying
}

func (d *drafter) sceneTitle(control int, s *scene, fixed, varying []int) string {
	said := []string{title(d.s.Controls[control].Name)}
	for _, c := range fixed {
		said = append(said, d.s.Controls[c].Name+" "+d.placeWords(c, s.states[0].in.Position[c]))
	}
	for _, c := range varying {
		said = append(said, fmt.Sprintf("%s <%s>", d.s.Controls[c].Name, d.s.Controls[c].Name))
	}
	return d.ownTitle(strings.Join(said, ", "))
}

// ownTitle numbers titles that would be the same.
func (d *drafter) ownTitle(title string) string {
	d.titles[title]++
	if count := d.titles[title]; count > 1 {
		return fmt.Sprintf("%s, case %d", title, count)
	}
	return title
}

// examples writes the rows of an outline, in columns.
func (d *drafter) examples(s *scene, varying []int) {
	if len(varying) == 0 {
		return
	}
	rows := [][]string{{}}
	for _, c := range varying {
		rows[0] = append(rows[0], d.s.Controls[c].Name)
	}
	for i := range s.states {
		var row []string
		for _, c := range varying {
			row = append(row, d.placeWords(c, s.states[i].in.Position[c]))
		}
		rows = append(rows, row)
	}
	d.gap()
	d.line(2, "Examples:")
	for _, row := range rows {
		cells := make([]string, len(row))
		for k := range row {
			width := 0
			for _, other := range rows {
				width = max(width, len([]rune(other[k])))
			}
			cells[k] = row[k] + strings.Repeat(" ", width-len([]rune(row[k])))
		}
		d.line(3, "| %s |", strings.Join(cells, " | "))
	}
}
