package airframes

import (
	"fmt"
	"strings"

	"gopkg.in/yaml.v3"
)

// Problem codes of YAML that an airframe file may not use.
const (
	codeAlias   = "alias"
	codeTag     = "tag"
	codeNoValue = "no-value"
	hintAlias   = "write it out in each place; a name that begins with * or & needs quotes"
)

// inspect looks at the whole tree for what an airframe file may not hold
// anywhere: aliases and anchors, tags, merge keys, keys given twice, keys that
// are no single words, and keys without a value. The sections, read afterwards,
// pass over those in silence.
func (r *reader) inspect(n *yaml.Node, depth int) {
	if depth > maxDepth {
		if len(r.problems) == 0 || r.problems[len(r.problems)-1].Code != codeTooDeep {
			r.problems = append(r.problems, tooDeep(r.place(n)))
		}
		return
	}
	r.inspectMarks(n)
	switch n.Kind {
	case yaml.MappingNode:
		r.inspectMapping(n, depth)
	case yaml.SequenceNode:
		for _, item := range n.Content {
			if isNull(item) {
				r.fail(r.place(item), codeNoValue, "take it away, or give it a value", "an item of the list is empty")
				continue
			}
			r.inspect(item, depth+1)
		}
	}
}

// inspectMarks reports aliases, anchors and tags.
func (r *reader) inspectMarks(n *yaml.Node) {
	first := byte(0)
	if offset, ok := r.offset(n); ok && offset < len(r.source.Text) {
		first = r.source.Text[offset]
	}
	switch {
	case n.Kind == yaml.AliasNode:
		r.fail(r.place(n), codeAlias, hintAlias, "%s stands for something written elsewhere, which an airframe may not use", quoted("*"+n.Value))
	case n.Anchor != "":
		r.fail(r.place(n), codeAlias, hintAlias, "%s marks this to be used elsewhere, which an airframe may not do", quoted("&"+n.Anchor))
	case n.Style&yaml.TaggedStyle != 0:
		r.fail(r.place(n), codeTag, "take it away; a value that begins with ! needs quotes", "the tag %s is not used in an airframe", quoted(n.Tag))
	case first == '!' && (n.Kind == yaml.ScalarNode || n.Style&yaml.FlowStyle != 0):
		r.fail(r.place(n), codeTag, "take it away; a value that begins with ! needs quotes", "a tag is not used in an airframe")
	}
}

func (r *reader) inspectMapping(n *yaml.Node, depth int) {
	r.mendCommas(n)
	seen := make(map[string]*yaml.Node, len(n.Content)/2)
	for i := 0; i+1 < len(n.Content); i += 2 {
		key, value := n.Content[i], n.Content[i+1]
		switch {
		case key.Kind == yaml.AliasNode:
			r.inspectMarks(key)
			continue
		case key.Kind != yaml.ScalarNode:
			r.fail(r.place(key), codeWrongKind, hintColon, "a key is a list or holds settings, want a word")
			continue
		case key.Value == "":
			r.fail(r.place(key), codeColon, hintColon, "a value without a key")
			continue
		}
		r.inspectMarks(key)
		if key.Value == "<<" && key.Style&(yaml.SingleQuotedStyle|yaml.DoubleQuotedStyle) == 0 {
			r.fail(r.place(key), "merge-key", "write the settings out in each place", "<< takes over settings from elsewhere, which an airframe may not do")
			continue
		}
		if before, ok := seen[key.Value]; ok {
			r.fail(r.place(key), codeDuplicateKey, fmt.Sprintf("it is on line %d as well: keep one of them", before.Line), "%s is given twice", quoted(key.Value))
		} else {
			seen[key.Value] = key
		}
		if isNull(value) {
			r.noValue(key)
			continue
		}
		r.inspect(value, depth+1)
	}
}

// noValue reports a key without a value. In brackets, "50%:20%" and "a b" are
// such keys as well.
func (r *reader) noValue(key *yaml.Node) {
	if before, after, ok := strings.Cut(key.Value, ":"); ok && key.Style == 0 && before != "" && after != "" {
		r.fail(r.place(key), codeColon, fmt.Sprintf("write %q", before+": "+after), "no space after the colon")
		return
	}
	r.fail(r.place(key), codeNoValue, "give it a value, or take the line away", "%s has no value", quoted(key.Value))
}

// isNull says whether a node is what YAML reads as nothing.
func isNull(n *yaml.Node) bool {
	return n.Kind == yaml.ScalarNode && n.Tag == "!!null"
}

// readable says whether a node is there and inspect has nothing against it.
func readable(n *yaml.Node) bool {
	return n != nil && n.Kind != yaml.AliasNode && n.Kind != 0 && !isNull(n)
}
