package resolved

import (
	"fmt"
	"strings"

	"example.com/hingeline/airframes/diag"
)

// node is one thing of a set-up with its settings: a control, a channel, a line of a
// mix. Settings, things and lists are said in the order in which they stand here.
type node struct {
	key    string     // its element of the path
	title  string     // what sentences call it: "channel 3 (port flap)"
	sort   string     // "control"; of an item of a list "line"
	says   string     // what it is, in a few words; of an item of a list
	match  string     // of an item of a list: two with the same one are most likely the same item, changed
	fixed  bool       // of an item of a list: with another match it is another item, whatever else is alike
	place  diag.Place // in its file
	bears  []string   // the parts that it can bear on
	leaves []Setting
	things []*node // each found by its key, in whatever order
	lists  []*list // in which the order counts
}

// list is things of which the order counts.
type list struct {
	key   string
	items []*node
}

// flatten adds all settings of a node to a list, with their paths.
func (n *node) flatten(path string, to *[]Setting) {
	for _, s := range n.leaves {
		s.Path = path + s.Path
		*to = append(*to, s)
	}
	for _, t := range n.things {
		t.flatten(path+t.key+"/", to)
	}
	for _, l := range n.lists {
		for i, item := range l.items {
			item.flatten(fmt.Sprintf("%s%s/%02d/", path, l.key, i+1), to)
		}
	}
}

// content is what a node says, whatever it is called.
func (n *node) content() string {
	var all []Setting
	n.flatten("", &all)
	var text strings.Builder
	for i := range all {
		if all[i].Path != alsoCalled {
			fmt.Fprintf(&text, "%q=%q\n", all[i].Path, all[i].Value)
		}
	}
	return text.String()
}

// set adds a setting whose place is given, or that of the node.
func (n *node) set(s Setting, at ...diag.Place) {
	s.Place, s.bears = n.place, n.bears
	if len(at) > 0 && at[0] != (diag.Place{}) {
		s.Place = at[0]
	}
	n.leaves = append(n.leaves, s)
}

// child is a thing inside a node.
func (n *node) child(key, title, sort string) *node {
	c := &node{key: key, title: title, sort: sort, place: n.place, bears: n.bears}
	n.things = append(n.things, c)
	return c
}

// list begins a list inside a node.
func (n *node) list(key string) *list {
	l := &list{key: key}
	n.lists = append(n.lists, l)
	return l
}

// item adds an item to a list of a node.
func (l *list) item(of *node, match, sort string) *node {
	i := &node{title: of.title, sort: sort, match: match, place: of.place, bears: of.bears}
	l.items = append(l.items, i)
	return i
}
