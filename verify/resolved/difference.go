package resolved

import (
	"fmt"
	"slices"
	"strings"

	"example.com/hingeline/airframes"
	"example.com/hingeline/airframes/diag"
)

// Difference is one thing that differs between two set-ups.
type Difference struct {
	Text    string     // "port flap: share of flap -55 → -65 %", "channel 3 (port flap) is reversed"
	Path    string     // of the setting, in the newer set-up or, of what is gone, in the older
	Was, Is string     // exact values; empty where there is none
	Place   diag.Place // in the newer file, or, of what is gone, in the older
	Gone    bool       // Place is in the older file
	Parts   []string   // that it can bear on, in the newer file's order; of names none
}

// Differences are what differs between two models, in the order of the chain. There is
// none if and only if their settings are the same.
func Differences(old, new *airframes.Model) []Difference {
	s, renames := translated(old, new)
	d := &differ{}
	was, is := build(old, s), build(new, &new.Setup)
	d.renamed = renames
	d.nodes("", was, is)
	for i := range d.list {
		d.list[i].Parts = inOrder(d.list[i].Parts, is.allParts())
	}
	return d.list
}

// allParts are the names of the parts in a model's order.
func (n *node) allParts() (names []string) {
	for _, t := range n.things {
		if t.sort == "part" {
			names = append(names, t.title)
		}
	}
	return names
}

// inOrder sorts names as they stand in another list; those that do not come last.
func inOrder(names, order []string) []string {
	at := func(name string) int {
		if i := slices.Index(order, name); i >= 0 {
			return i
		}
		return len(order)
	}
	sorted := slices.Clone(names)
	slices.SortStableFunc(sorted, func(a, b string) int { return at(a) - at(b) })
	return sorted
}

// differ collects differences.
type differ struct {
	renamed []rename
	list    []Difference
}

// nodes compares two states of one thing.
func (d *differ) nodes(path string, was, is *node) {
	d.names(path)
	if changed, ok := kindChanged(was, is); ok {
		d.setting(path, was, is, was.leaf(changed), is.leaf(changed))
		return
	}
	for _, s := range is.leaves {
		d.setting(path, was, is, was.leaf(s.Path), &s)
	}
	for _, s := range was.leaves {
		if is.leaf(s.Path) == nil {
			d.setting(path, was, is, &s, nil)
		}
	}
	d.things(path, was, is)
	for i := range max(len(was.lists), len(is.lists)) {
		var a, b list
		if i < len(was.lists) {
			a = *was.lists[i]
		}
		if i < len(is.lists) {
			b = *is.lists[i]
		}
		d.listed(path+cmpKey(a.key, b.key)+"/", was, is, a.items, b.items)
	}
}

func cmpKey(a, b string) string {
	if b == "" {
		return a
	}
	return b
}

// kindChanged finds that a control is another kind of control now: then its other
// settings are not compared.
func kindChanged(was, is *node) (path string, changed bool) {
	if is.sort != "control" {
		return "", false
	}
	for _, path := range []string{"kind", "axis"} {
		if a, b := was.leaf(path), is.leaf(path); a.Value != b.Value {
			return path, true
		}
	}
	return "", false
}

func (n *node) leaf(path string) *Setting {
	for i := range n.leaves {
		if n.leaves[i].Path == path {
			return &n.leaves[i]
		}
	}
	return nil
}

// names says what is called otherwise now, of things that stand right at a path.
func (d *differ) names(path string) {
	for _, r := range d.renamed {
		if r.under == path {
			d.list = append(d.list, r.Difference)
		}
	}
}

// setting compares one setting; one of the two may be nil.
func (d *differ) setting(path string, was, is *node, a, b *Setting) {
	out := Difference{}
	switch {
	case a != nil && b != nil && a.Value == b.Value:
		return
	case a == nil:
		out.Is, out.Path, out.Place, out.Parts = b.Value, path+b.Path, b.Place, b.bears
		out.Text = is.title + ": " + b.name + " is new: " + b.shown(false)
	case b == nil:
		out.Was, out.Path, out.Place, out.Gone, out.Parts = a.Value, path+a.Path, a.Place, true, a.bears
		out.Text = is.title + ": " + a.name + " is gone: " + a.shown(false)
	default:
		out.Was, out.Is, out.Path, out.Place, out.Parts = a.Value, b.Value, path+b.Path, b.Place, union(b.bears, a.bears)
		out.Text = change(is.title, a, b)
		if b.Place.Line == 0 && a.Place.Line > 0 { // the newer file does not say it
			out.Place, out.Gone = a.Place, true
		}
	}
	if strings.HasSuffix(out.Path, alsoCalled) || strings.HasSuffix(out.Path, "name") && is.sort != "position" {
		out.Parts = nil
	}
	d.list = append(d.list, out)
}

// change says what became of a setting: "port flap: share of flap -55 → -65 %".
func change(title string, a, b *Setting) string {
	switch {
	case b.yes != "" && b.Value == "true":
		return title + " " + b.yes
	case b.yes != "":
		return title + " " + b.no
	}
	was, is := a.shown(false), b.shown(false)
	if was == is {
		was, is = a.shown(true), b.shown(true)
	}
	if a.unit != "" && a.unit == b.unit {
		was = strings.TrimSuffix(was, a.unit)
	}
	return title + ": " + b.name + " " + was + " → " + is
}

// shown is a value as people read it, or exactly.
func (s *Setting) shown(exactly bool) string {
	if exactly || s.words == "" {
		return s.Value + s.unit
	}
	return s.words + s.unit
}

// things compares what each side has, found by its key.
func (d *differ) things(path string, was, is *node) {
	before := map[string]*node{}
	for _, t := range was.things {
		before[t.key] = t
	}
	for _, t := range is.things {
		if old := before[t.key]; old != nil {
			d.nodes(path+t.key+"/", old, t)
			delete(before, t.key)
			continue
		}
		d.list = append(d.list, Difference{Text: comes(is, t), Path: path + t.key, Is: summary(t), Place: t.place, Parts: t.bears})
	}
	for _, t := range was.things {
		if before[t.key] != nil {
			d.list = append(d.list, Difference{Text: goes(is, t), Path: path + t.key, Was: summary(t), Place: t.place, Gone: true, Parts: t.bears})
		}
	}
}

// comes says that a thing is new.
func comes(of, t *node) string {
	if topSorts[t.sort] {
		return fmt.Sprintf("%s is new", t.title)
	}
	return fmt.Sprintf("%s has a new %s%s", of.title, t.sort, behind(t))
}

// goes says that a thing is gone.
func goes(of, t *node) string {
	if topSorts[t.sort] {
		return fmt.Sprintf("%s is gone", t.title)
	}
	return fmt.Sprintf("%s no longer has its %s%s", of.title, t.sort, behind(t))
}

func behind(t *node) string {
	switch {
	case t.says == "" || strings.HasSuffix(t.sort, t.says):
		return ""
	case t.sort == "position":
		return " " + t.says
	}
	return ": " + t.says
}

// topSorts are the things that have a name of their own; all others belong to one.
var topSorts = map[string]bool{"control": true, "phase": true, "demand": true, "channel": true, "part": true}

// summary is all that a thing says, exactly.
func summary(t *node) string {
	var all []Setting
	t.flatten("", &all)
	said := make([]string, len(all))
	for i := range all {
		said[i] = all[i].Path + " " + all[i].Value
	}
	return strings.Join(said, "; ")
}
