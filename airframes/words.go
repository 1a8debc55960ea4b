package airframes

import (
	"slices"
	"strings"

	"gopkg.in/yaml.v3"

	"example.com/hingeline/mixcore"
)

// word reads one of a few words.
func (r *reader) word(n *yaml.Node, what string, among ...string) (string, bool) {
	text, ok := r.text(n, what, listed(among, "or"))
	if !ok {
		return "", false
	}
	fold := FoldName(text)
	for _, one := range among {
		if FoldName(one) == fold {
			return one, true
		}
	}
	r.fail(r.place(n), codeUnknownWord, r.meant(text, among, ""), "%s is %s, want %s", what, quoted(text), listed(among, "or"))
	return "", false
}

// otherWords are words that people write for one of the format's own, to be
// named in a hint. What a word stands for depends on where it is.
var otherWords = map[string][]string{
	"bottom": {"below"}, "under": {"below"}, "underneath": {"below"}, "lower": {"below"},
	"top": {"above"}, "over": {"above"}, "upper": {"above"},
	"forward": {"fore"}, "forwards": {"fore"}, "front": {"fore", "nose"},
	"back": {"aft", "tail"}, "backward": {"aft"}, "backwards": {"aft"}, "rear": {"aft", "tail"}, "rearward": {"aft"},
	"aileron": {"roll"}, "ailerons": {"roll"}, "elevator": {"pitch"}, "rudder": {"yaw"}, "slider": {"lever"}, "knob": {"lever"},
	"stbd": {"starboard"}, "rt": {"right"}, "lft": {"left"}, "center": {"centre"}, "middle": {"centre"},
	"upward": {"up"}, "upwards": {"up"}, "downward": {"down"}, "downwards": {"down"},
	"extended": {"out"}, "retracted": {"in"},
}

// meant is the hint for a word that is not among those there are.
func (r *reader) meant(word string, among []string, say string) string {
	for _, one := range otherWords[FoldName(word)] {
		if slices.Contains(among, one) {
			return "write " + one
		}
	}
	return r.suggestion(word, among, say)
}

// yes reads true or false, yes or no.
func (r *reader) yes(n *yaml.Node, what string) (bool, bool) {
	const want = "true or false"
	text, ok := r.text(n, what, want)
	if !ok {
		return false, false
	}
	hint := ""
	switch strings.ToLower(text) {
	case "true", "yes":
		return true, true
	case "false", "no":
		return false, true
	case "on", "y", "1":
		hint = "write true"
	case "off", "n", "0":
		hint = "write false"
	}
	r.fail(r.place(n), codeWrongKind, hint, "%s is %s, want %s", what, quoted(text), want)
	return false, false
}

// sideWords are the words for the sides of the model, left and right
// understood.
var sideWords = map[string]mixcore.Side{
	"port": mixcore.Port, "left": mixcore.Port,
	"starboard": mixcore.Starboard, "right": mixcore.Starboard,
	"centre": mixcore.Centre,
}

// twoWords are the words for the plus and the minus side of a setting.
type twoWords struct{ plus, minus string }

var (
	plusMinus   = twoWords{"plus", "minus"}
	rightLeft   = twoWords{"right", "left"}
	backForward = twoWords{"back", "forward"}
)

// sidesOf are the words for the two directions of a control.
func sidesOf(c mixcore.Control) twoWords {
	switch c.Axis {
	case mixcore.Roll, mixcore.Yaw:
		return rightLeft
	case mixcore.Pitch:
		return backForward
	}
	return plusMinus
}

// sides reads a percent that may differ either side: 80% or {plus: 80%, minus:
// 60%}.
func (r *reader) sides(n *yaml.Node, path, what string, words twoWords, low, high float64) (mixcore.Sides, bool) {
	if !readable(n) {
		return mixcore.Sides{}, false
	}
	if n.Kind == yaml.ScalarNode {
		value, ok := r.number(n, what, inTravel, low, high)
		return mixcore.Both(mixcore.Percent(value)), ok
	}
	f, ok := r.fields(n, r.place(n), path, what, words.plus, words.minus)
	if !ok {
		return mixcore.Sides{}, false
	}
	hint := "say both sides, or one percent for both"
	plus, plusOK := r.number(f.require(words.plus, hint), words.plus+" of "+what, inTravel, low, high)
	minus, minusOK := r.number(f.require(words.minus, hint), words.minus+" of "+what, inTravel, low, high)
	return mixcore.Sides{Plus: mixcore.Percent(plus), Minus: mixcore.Percent(minus)}, plusOK && minusOK
}
