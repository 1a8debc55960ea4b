package airframes

import (
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
	r.fail(r.place(n), codeUnknownWord, r.suggestion(text, among, ""), "%s is %s, want %s", what, quoted(text), listed(among, "or"))
	return "", false
}

// yes reads true or false.
func (r *reader) yes(n *yaml.Node, what string) (bool, bool) {
	if !readable(n) {
		return false, false
	}
	if n.Kind == yaml.ScalarNode && n.Style == 0 {
		switch n.Value {
		case "true":
			return true, true
		case "false":
			return false, true
		}
	}
	hint := ""
	if n.Kind == yaml.ScalarNode {
		switch strings.ToLower(n.Value) {
		case "yes", "on", "y", "true":
			hint = "write true"
		case "no", "off", "n", "false":
			hint = "write false"
		}
	}
	r.fail(r.place(n), codeWrongKind, hint, "%s is %s, want true or false", what, kindOf(n))
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
		value, ok := r.number(n, what, inPercent, low, high)
		return mixcore.Both(mixcore.Percent(value)), ok
	}
	f, ok := r.fields(n, r.place(n), path, what, words.plus, words.minus)
	if !ok {
		return mixcore.Sides{}, false
	}
	hint := "say both sides, or one percent for both"
	plus, plusOK := r.number(f.require(words.plus, hint), words.plus+" of "+what, inPercent, low, high)
	minus, minusOK := r.number(f.require(words.minus, hint), words.minus+" of "+what, inPercent, low, high)
	return mixcore.Sides{Plus: mixcore.Percent(plus), Minus: mixcore.Percent(minus)}, plusOK && minusOK
}
