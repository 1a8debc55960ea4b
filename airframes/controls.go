package airframes

import (
	"fmt"
	"slices"

	"gopkg.in/yaml.v3"

	"example.com/hingeline/airframes/diag"
	"example.com/hingeline/mixcore"
)

// axisWords are the words for an axis.
var axisWords = []string{"roll", "pitch", "yaw"}

var axes = map[string]mixcore.Axis{"roll": mixcore.Roll, "pitch": mixcore.Pitch, "yaw": mixcore.Yaw}

// trim is what a file says about the trim of an axis.
type trim struct {
	control int // index of the trim control
	share   mixcore.Percent
}

const wantControl = "roll, pitch, yaw, lever, a list of switch positions, or settings such as {axis: roll}"

// readControls reads the section controls. Trims come right behind their axes.
func (r *reader) readControls(section *yaml.Node) {
	r.controls.absent = !readable(section) || section.Kind != yaml.MappingNode
	for _, e := range r.namedEntries(section, "controls", "controls", maxControls) {
		index := r.addControl(e.name, e.at)
		r.readControl(e, index)
		if c := r.setup.Controls[index]; c.Kind == mixcore.AxisControl {
			r.checkAxisInName(c.Name, "control "+quoted(c.Name), c.Axis, e.at)
		}
	}
}

// addControl makes room for a control.
func (r *reader) addControl(name string, at diag.Place) int {
	index := len(r.setup.Controls)
	r.setup.Controls = append(r.setup.Controls, mixcore.Control{Name: name})
	r.model.ControlAka = append(r.model.ControlAka, nil)
	r.model.Places.Controls = append(r.model.Places.Controls, at)
	r.add(&r.controls, name, index, at)
	return index
}

func (r *reader) readControl(e entry, index int) {
	what := "control " + quoted(e.name)
	switch {
	case !readable(e.value):
	case e.value.Kind == yaml.ScalarNode:
		r.shortControl(e.value, what, index)
	case e.value.Kind == yaml.SequenceNode:
		r.readSwitch(e.value, what, index)
	default:
		r.longControl(e, what, index)
	}
}

func (r *reader) shortControl(n *yaml.Node, what string, index int) {
	text, _ := r.text(n, what, wantControl)
	word := FoldName(text)
	switch {
	case axes[word] != 0:
		r.setAxis(index, axes[word])
	case word == "lever":
		r.setup.Controls[index].Kind = mixcore.LeverControl
	default:
		among := append(slices.Clone(axisWords), "lever")
		hint := r.meant(text, among, "a switch is written as a list: [low, high]")
		r.fail(r.place(n), codeUnknownWord, hint, "%s is %s, want %s", what, quoted(text), wantControl)
	}
}

func (r *reader) longControl(e entry, what string, index int) {
	f, ok := r.fields(e.value, e.at, e.path, what, "axis", "lever", "switch", "trim", "aka")
	if !ok {
		return
	}
	switch kind := f.apart("axis", "lever", "switch"); kind {
	case "axis":
		if word, ok := r.word(f.get("axis"), "axis of "+what, axisWords...); ok {
			r.setAxis(index, axes[word])
		}
	case "lever":
		r.readLever(&f, what, index)
	case "switch":
		r.readSwitch(f.get("switch"), what, index)
	default:
		r.fail(e.at, codeMissingKey, "say axis: roll, lever: {} or switch: [low, high]", `%s has no "axis", "lever" or "switch"`, what)
	}
	var at []diag.Place
	r.model.ControlAka[index], at = r.aka(&f, &r.controls, index)
	for i, name := range r.model.ControlAka[index] {
		r.checkAxisInName(name, what, r.setup.Controls[index].Axis, at[i])
	}
	if !f.given("trim") {
		return
	}
	if !f.given("axis") {
		r.fail(f.placeOf("trim"), codeNotTogether, "", "%s has a trim, but only an axis can have one", what)
		return
	}
	r.readTrim(&f, what, index)
}

func (r *reader) setAxis(index int, axis mixcore.Axis) {
	r.setup.Controls[index].Kind, r.setup.Controls[index].Axis = mixcore.AxisControl, axis
}

// readTrim makes the control that is an axis's trim.
func (r *reader) readTrim(of *fields, what string, axisIndex int) {
	value := of.get("trim")
	if value == nil {
		return
	}
	axis := r.setup.Controls[axisIndex].Axis
	name, at := "trim", of.placeOf("trim")
	if axis != mixcore.NoAxis {
		name = axisWords[axis-1] + " trim"
	}
	size, reversed, ok := 0.0, false, false
	if value.Kind == yaml.ScalarNode {
		size, ok = r.number(value, "trim of "+what, inTravel, 0, 100)
	} else {
		f, isFields := r.fields(value, at, of.pathOf("trim"), "trim of "+what, "range", "name", "reversed")
		if !isFields {
			return
		}
		size, ok = r.number(f.require("range", "say how much full trim adds, such as range: 20%"), "range of the trim of "+what, inTravel, 0, 100)
		if n := f.get("name"); n != nil {
			if said, ok := r.plainName(n, "name of the trim of "+what); ok {
				name, at = said, r.place(n)
			}
		}
		if n := f.get("reversed"); n != nil {
			reversed, _ = r.yes(n, "reversed")
		}
	}
	if axis == mixcore.NoAxis {
		return
	}
	if _, taken := r.controls.find(name); taken && at == of.placeOf("trim") {
		r.fail(at, codeDuplicateName, fmt.Sprintf("give this one a name: trim: {range: %s%%, name: second %s}", plainNumber(size), name),
			"another control is called %s", quoted(name))
		return
	}
	if at != of.placeOf("trim") {
		r.checkTrimName(name, what, axis, at)
	}
	index := r.addControl(name, at)
	r.setup.Controls[index].Kind, r.setup.Controls[index].Axis = mixcore.TrimControl, axis
	share := mixcore.Percent(size)
	if reversed {
		share = 0 - share
	}
	if ok {
		r.trims[axisIndex] = trim{index, share}
	}
}

// readLever reads a lever's detents; {} is a lever without any.
func (r *reader) readLever(f *fields, what string, index int) {
	r.setup.Controls[index].Kind = mixcore.LeverControl
	n := f.get("lever")
	if n == nil || n.Kind == yaml.MappingNode && len(n.Content) == 0 {
		return
	}
	if n.Kind != yaml.MappingNode {
		r.wrongKind(n, "lever of "+what, "its detents, such as {parked: 0, landing: 100}")
		return
	}
	detents := newNames("detent", FoldName)
	var found []mixcore.Detent
	places := map[string]diag.Place{}
	for _, e := range r.namedEntries(n, f.pathOf("lever"), "lever of "+what, maxDetents) {
		r.add(&detents, e.name, len(found), e.at)
		if at, ok := r.number(e.value, "detent "+quoted(e.name), inPercent, 0, 100); ok {
			found = append(found, mixcore.Detent{Name: e.name, At: mixcore.Percent(at)})
			places[e.name] = r.place(e.value)
			r.checkDetent(found[len(found)-1], e.at)
		}
	}
	slices.SortStableFunc(found, func(a, b mixcore.Detent) int {
		switch {
		case a.At < b.At:
			return -1
		case a.At > b.At:
			return 1
		}
		return 0
	})
	for i := 1; i < len(found); i++ {
		_, before := found[i-1].Stretch()
		if after, _ := found[i].Stretch(); after <= before {
			r.fail(places[found[i].Name], "detents-too-close", "a lever within 1 % of a detent stands at it",
				"detents %s and %s are %s apart, want more than 2 %%", quoted(found[i-1].Name), quoted(found[i].Name),
				inPercent.show(float64(found[i].At-found[i-1].At)))
		}
	}
	r.setup.Controls[index].Detents = found
}

// readSwitch reads a switch's positions.
func (r *reader) readSwitch(n *yaml.Node, what string, index int) {
	items := r.items(n, "switch of "+what, "a list of its positions, such as [low, high]", maxPositions)
	r.setup.Controls[index].Kind = mixcore.SwitchControl
	positions := newNames("position of "+what, FoldName)
	for _, item := range items {
		name, ok := r.plainName(item, "a position of "+what)
		if !ok {
			continue
		}
		r.add(&positions, name, len(positions.list), r.place(item))
		r.checkPosition(name, what, r.place(item))
	}
	if len(items) == 1 {
		r.fail(r.place(n), codeOutOfRange, "a switch rests at its first position; name the other one too", "%s has 1 position, want 2 to 6", what)
	}
	r.setup.Controls[index].Positions = positions.list
}
