package laws

import (
	"slices"
	"strings"

	"example.com/hingeline/mixcore"
	"example.com/hingeline/verify/chain"
	"example.com/hingeline/verify/poses"
	"example.com/hingeline/verify/prove"
)

var switchScope = law{Info{"switch-scope", "What switches change",
	"Each switch changes only what its name says: rates nothing while the sticks and trims are at rest, a motor switch only motors, a switch that is called after parts only those parts and, for flaps and brakes, the surfaces that trim them."},
	func(mk *maker) {
		for i := range mk.s.Controls {
			if mk.s.Controls[i].Kind == mixcore.SwitchControl {
				mk.staysInScope(i)
			}
		}
		if len(mk.claims) == 0 {
			mk.none = "no switch that says by its name what it changes"
		}
	}}

// staysInScope claims that a switch changes nothing that its name does not say.
func (mk *maker) staysInScope(control int) {
	c := &mk.s.Controls[control]
	switch meant, words := mk.scopeOf(control); {
	case mk.ratesSwitch(control) && meant == nil:
		mk.changesNothing(control, "with sticks and trims at rest the "+c.Name+" moves nothing", mk.handsOff(), func(int) bool { return true })
	case meant == nil:
		mk.remark(mk.whatChanges(control))
	default:
		mk.changesNothing(control, "the "+c.Name+" changes nothing but "+words, mk.everywhere(), func(part int) bool { return !slices.Contains(meant, part) })
	}
}

// scopes are the words that say which kinds of part a switch is for, in the order in
// which they count, and what a list of those parts is called.
var scopes = []struct {
	words []string
	kinds []mixcore.Kind
	tail  bool // and the surfaces that trim the model
	said  string
}{
	{motorWords, []mixcore.Kind{"motor"}, false, "motors"},
	{flapWords, []mixcore.Kind{"flap", "flaperon"}, true, "flaps and the surfaces that trim them"},
	{brakeWords, []mixcore.Kind{"spoiler", "airbrake", "brake", "drag rudder", "flap", "flaperon", "aileron", "motor"}, true, "brakes, the surfaces that trim them, and motors that they stop"},
	{[]string{"retract", "retracts", "gear", "undercarriage", "legs", "wheel", "wheels"}, []mixcore.Kind{"retract", "door", "nose wheel", "tail wheel"}, false, "the undercarriage"},
	{[]string{"hook", "hooks"}, []mixcore.Kind{"hook"}, false, "the hook"},
	{[]string{"release", "tow", "drop"}, []mixcore.Kind{"release", "hook"}, false, "the release"},
	{[]string{"door", "doors"}, []mixcore.Kind{"door"}, false, "the doors"},
	{[]string{"rudder", "rudders"}, []mixcore.Kind{"rudder", "v-tail", "nose wheel", "tail wheel"}, false, "the rudder and what steers with it"},
	{[]string{"aileron", "ailerons"}, []mixcore.Kind{"aileron", "flaperon"}, false, "the ailerons"},
	{[]string{"elevator", "elevators"}, []mixcore.Kind{"elevator", "v-tail", "taileron"}, false, "the elevator"},
}

// trimmers are the kinds that trim what flaps and brakes do to the pitch.
var trimmers = []mixcore.Kind{"elevator", "elevon", "taileron", "v-tail", "canard"}

// scopeOf are the parts that a switch is for by its name, and what they are called;
// nil where its name does not say.
func (mk *maker) scopeOf(control int) (parts []int, said string) {
	if mk.called(control, rateWords) {
		return nil, ""
	}
	words := mk.wordsOf(control)
	for _, scope := range scopes {
		if !mk.called(control, scope.words) {
			continue
		}
		for i := range mk.s.Parts {
			kind := mk.s.Parts[i].Kind
			if slices.Contains(scope.kinds, kind) || scope.tail && slices.Contains(trimmers, kind) {
				parts = append(parts, i)
			}
		}
		parts = append(parts, mk.partsCalled(words)...)
		if len(parts) > 0 {
			return parts, scope.said
		}
	}
	if parts = mk.partsCalled(words); parts != nil {
		return parts, mk.theParts(parts)
	}
	return nil, ""
}

// partsCalled are the parts that share a word with a name.
func (mk *maker) partsCalled(words []string) (parts []int) {
	for i := range mk.s.Parts {
		for _, w := range strings.Fields(poses.WithoutSide(mk.s.Parts[i].Name)) {
			if slices.Contains(words, w) {
				parts = append(parts, i)
				break
			}
		}
	}
	return parts
}

// changesNothing claims that some parts stay still, over some poses, as a switch goes
// from any of its positions to any other.
func (mk *maker) changesNothing(control int, sentence string, now []prove.Span, stays func(part int) bool) {
	c := claim{sentence: sentence, seen: mk.changed}
	c.spare = func(need int, margin float64) (spare, bool) {
		part := c.needs[need].Want.(prove.Differ).A
		p := &mk.s.Parts[part]
		moves := margin < mk.still(part)-2*rounding
		return spare{margin, unitOf(p), amount(p, margin) + " short of what counts as a movement"}, moves
	}
	other := prove.Beside(mk.s)
	other[control] = prove.Other{Kind: prove.Apart, Span: prove.Whole(&mk.s.Controls[control])}
	for part := range mk.s.Parts {
		if stays(part) {
			most := mk.still(part) - rounding
			c.needs = append(c.needs, prove.Claim{Now: now, Other: other, Want: prove.Change(part, -most, most)})
		}
	}
	if c.needs != nil {
		mk.add(c)
	}
}

// changed says what a switch changes.
func (mk *maker) changed(v *view) sight {
	part := v.need.Want.(prove.Differ).A
	p := &mk.s.Parts[part]
	return sight{
		got:   moves(p, v.before.Output.Parts[part], v.now.Output.Parts[part], mk.m.Still),
		shows: []shown{showPart(part, chain.Astir)},
	}
}

// whatChanges says what a switch bears on whose name does not say what it is for.
func (mk *maker) whatChanges(control int) string {
	var parts []int
	for i := range mk.s.Parts {
		if mk.bearsOn(control, i) {
			parts = append(parts, i)
		}
	}
	name := mk.s.Controls[control].Name
	if len(parts) == 0 {
		return "Nothing is asked of the " + name + ", which changes nothing."
	}
	return "Nothing is asked of the " + name + ", which bears on " + mk.theParts(parts) + "."
}
