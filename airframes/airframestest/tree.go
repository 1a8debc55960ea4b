// Package airframestest makes airframe files for tests: random ones that are
// right in every form the format has. It knows nothing of package airframes,
// so that loader, JSON schema and writers can all be held against it. Start at
// [Generate]. It is for tests only.
package airframestest

import (
	"strings"

	"pgregory.net/rapid"
)

// tree is a value of a YAML file: a scalar as it is written, a list, or keys
// and values in order.
type tree struct {
	scalar string
	list   []tree
	keys   []string
	values []tree
}

func scalar(text string) tree { return tree{scalar: text} }

func list(items ...tree) tree { return tree{list: items} }

// put adds a key.
func (n *tree) put(key string, value tree) {
	n.keys = append(n.keys, key)
	n.values = append(n.values, value)
}

// writer writes a tree in brackets or by indentation, as it is drawn.
type writer struct {
	t   *rapid.T
	out strings.Builder
}

func (w *writer) flip(label string) bool { return rapid.Bool().Draw(w.t, label) }

// comment ends a line, sometimes with a remark.
func (w *writer) endLine() {
	if rapid.IntRange(0, 15).Draw(w.t, "remark") == 15 {
		w.out.WriteString("  # a remark: {not, read]")
	}
	w.out.WriteString("\n")
}

// block writes a value below its key; indent is that of the key.
func (w *writer) block(n tree, indent int) {
	switch {
	case n.keys == nil && n.list == nil:
		w.out.WriteString(" " + n.scalar)
		w.endLine()
	case len(n.keys) == 0 && len(n.list) == 0, indent > 0 && w.flip("in brackets"):
		w.out.WriteString(" ")
		w.flow(n)
		w.endLine()
	case n.keys != nil:
		w.endLine()
		step := rapid.IntRange(1, 4).Draw(w.t, "step")
		for i, key := range n.keys {
			w.out.WriteString(strings.Repeat(" ", indent+step) + key + ":")
			w.block(n.values[i], indent+step)
		}
	default:
		w.endLine()
		for _, item := range n.list {
			w.out.WriteString(strings.Repeat(" ", indent+2) + "- ")
			w.flow(item)
			w.endLine()
		}
	}
}

// flow writes a value in brackets.
func (w *writer) flow(n tree) {
	switch {
	case n.keys != nil:
		w.out.WriteString("{")
		for i, key := range n.keys {
			if i > 0 {
				w.out.WriteString(", ")
			}
			w.out.WriteString(key + ": ")
			w.flow(n.values[i])
		}
		w.out.WriteString("}")
	case n.list != nil:
		w.out.WriteString("[")
		for i, item := range n.list {
			if i > 0 {
				w.out.WriteString(", ")
			}
			w.flow(item)
		}
		w.out.WriteString("]")
	default:
		w.out.WriteString(n.scalar)
	}
}

// file writes a whole file, sometimes with CR LF and a byte order mark.
func (w *writer) file(n tree) []byte {
	for i, key := range n.keys {
		w.out.WriteString(key + ":")
		w.block(n.values[i], 0)
	}
	text := w.out.String()
	if rapid.IntRange(0, 7).Draw(w.t, "crlf") == 7 {
		text = "\uFEFF" + strings.ReplaceAll(text, "\n", "\r\n")
	}
	return []byte(text)
}
