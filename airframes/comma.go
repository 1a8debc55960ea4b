package airframes

import (
	"bytes"
	"unicode/utf8"

	"gopkg.in/yaml.v3"

	"example.com/hingeline/airframes/diag"
)

// A decimal comma inside brackets tears a number apart before anybody can read
// it: to YAML, {arm_mm: 10,5} has a key 5 without a value, and [flap, 4,5%] has
// three items.

// hintComma is what to do about a decimal comma.
func hintComma(number string) string { return "a decimal comma? write " + number }

// mendCommas reports the numbers of a mapping in brackets that a comma has torn
// apart, and joins them, so that nothing else is said of them.
func (r *reader) mendCommas(n *yaml.Node) {
	if n.Style&yaml.FlowStyle == 0 {
		return
	}
	var kept []*yaml.Node
	for i := 0; i+1 < len(n.Content); i += 2 {
		key, value := n.Content[i], n.Content[i+1]
		switch {
		case isNull(value) && len(kept) > 0 && r.torn(kept[len(kept)-1], key):
			before := kept[len(kept)-1]
			r.tornNumber(before, key)
			before.Value += "." + key.Value
			continue
		case isNull(value) && i+2 < len(n.Content) && r.torn(key, n.Content[i+2]):
			next := n.Content[i+2]
			r.tornNumber(key, next)
			next.Line, next.Column, next.Value = key.Line, key.Column, key.Value+"."+next.Value
			continue
		}
		kept = append(kept, key, value)
	}
	n.Content = kept
}

// torn says whether a whole number and what begins with a digit stand in the text with
// nothing but a comma between them, both on one line.
func (r *reader) torn(a, b *yaml.Node) bool {
	if a.Kind != yaml.ScalarNode || b.Kind != yaml.ScalarNode || a.Style != 0 || b.Style != 0 || leadingDigits(b.Value) == "" {
		return false
	}
	digits := trimSign(a.Value)
	if digits == "" || leadingDigits(digits) != digits {
		return false
	}
	from, ok := r.offset(a)
	to, toOK := r.offset(b)
	return ok && toOK && to == from+len(a.Value)+1 && bytes.HasPrefix(r.source.Text[from:], []byte(a.Value+","+b.Value))
}

// tornNumber reports two pieces that torn takes for one number.
func (r *reader) tornNumber(a, b *yaml.Node) {
	at := diag.Place{File: r.source.Name, Line: a.Line, Column: a.Column, Width: utf8.RuneCountInString(a.Value + "," + b.Value)}
	r.fail(at, codeBadNumber, hintComma(a.Value+"."+b.Value), "%s is two things to YAML, want a decimal point, not a comma", quoted(a.Value+","+b.Value))
}
