package phrase

import (
	"slices"
	"strings"
	"sync"
	"sync/atomic"

	"example.com/hingeline/airframes"
	"example.com/hingeline/mixcore"
	"example.com/hingeline/mixcore/effect"
	"example.com/hingeline/verify/prove"
)

// Vocabulary is what things on one model may be called. What it understands never
// changes after NewVocabulary, and it is safe for concurrent use.
type Vocabulary struct {
	model    *airframes.Model
	setup    *mixcore.Setup
	air      *effect.Airframe
	controls names        // of controls
	parts    names        // of single parts
	groups   names        // of several parts: plurals
	channels names        // of channels, without the word "channel"
	advised  atomic.Int32 // texts that advice was looked for
	places   names        // of switch positions and lever detents; the index is the control

	unseen float64 // up to how many percent of a motor or extra nobody sees: see Watching

	proving sync.Mutex
	prover  *prove.Prover // made when first used; guarded by proving
}

// names are names with what they stand for. A name that stands for several
// things that were not meant to share it is unclear.
type names struct {
	byName  map[string]meant
	longest int
}

type meant struct {
	indices []int
	sure    bool // given in the file; a derived name never takes its place
}

// add gives a name to one more thing. An explicit name drives out derived
// ones.
func (n *names) add(name string, index int, explicit bool) {
	words := nameWords(name)
	if len(words) == 0 {
		return
	}
	if n.byName == nil {
		n.byName = map[string]meant{}
	}
	n.longest = max(n.longest, len(words))
	key := strings.Join(words, " ")
	old, taken := n.byName[key]
	switch {
	case !taken || explicit && !old.sure:
		n.byName[key] = meant{indices: []int{index}, sure: explicit}
	case old.sure && !explicit || slices.Contains(old.indices, index):
	default:
		old.indices = append(old.indices, index)
		n.byName[key] = old
	}
}

// find is the longest name that begins at the tokens; words is how many
// tokens it takes, 0 if there is none.
func (n *names) find(tokens []token) (m meant, words int) {
	var key strings.Builder
	for i, t := range tokens {
		if i >= n.longest || t.kind == symbolToken || t.kind == endToken || t.signed {
			break
		}
		if i > 0 {
			key.WriteByte(' ')
		}
		key.WriteString(t.text)
		if found, ok := n.byName[key.String()]; ok {
			m, words = found, i+1
		}
	}
	return m, words
}

// list is all names, sorted.
func (n *names) list() []string {
	all := make([]string, 0, len(n.byName))
	for name := range n.byName {
		all = append(all, name)
	}
	slices.Sort(all)
	return all
}

// nameWords is a name as the words it is matched by.
func nameWords(name string) []string {
	tokens, problem := tokenize(name)
	if problem != nil {
		return nil
	}
	words := make([]string, 0, len(tokens))
	for _, t := range tokens[:len(tokens)-1] {
		if t.kind == symbolToken {
			return nil
		}
		words = append(words, t.text)
	}
	return words
}

// NewVocabulary gathers the names of a model: those that its file gives, and
// the short and plural forms that people use for them.
func NewVocabulary(m *airframes.Model) *Vocabulary {
	v := &Vocabulary{model: m, setup: &m.Setup, air: effect.New(&m.Setup)}
	v.nameControls(m.ControlAka)
	v.nameParts(m.PartAka)
	for i := range v.setup.Channels {
		c := &v.setup.Channels[i]
		if c.Name != "" {
			for k, name := range sideForms(c.Name) {
				v.channels.add(name, i, k == 0)
			}
		}
	}
	return v
}

// handles are the last words of a control's name that people leave out.
var handles = []string{"stick", "lever", "switch", "knob"}

var axisWords = map[mixcore.Axis]string{mixcore.Roll: "roll", mixcore.Pitch: "pitch", mixcore.Yaw: "yaw"}

func (v *Vocabulary) nameControls(aka [][]string) {
	for i := range v.setup.Controls {
		c := &v.setup.Controls[i]
		v.controls.add(c.Name, i, true)
		if i < len(aka) {
			for _, name := range aka[i] {
				v.controls.add(name, i, true)
			}
		}
		if words := nameWords(c.Name); len(words) > 1 && slices.Contains(handles, words[len(words)-1]) {
			short := strings.Join(words[:len(words)-1], " ")
			v.controls.add(short, i, false)
			v.controls.add(plural(short), i, false)
		}
		if word := axisWords[c.Axis]; word != "" && c.Kind == mixcore.AxisControl {
			v.controls.add(word, i, false)
		}
		for _, position := range c.Positions {
			v.places.add(position, i, true)
		}
		for _, detent := range c.Detents {
			v.places.add(detent.Name, i, true)
		}
	}
}

func (v *Vocabulary) nameParts(aka [][]string) {
	for i := range v.setup.Parts {
		p := &v.setup.Parts[i]
		given := []string{p.Name}
		if i < len(aka) {
			given = append(given, aka[i]...)
		}
		for _, name := range given {
			for k, form := range sideForms(name) {
				v.parts.add(form, i, k == 0)
			}
			if bare := withoutSide(name); bare != "" {
				v.groups.add(plural(bare), i, false)
			}
		}
		for _, kind := range kindWords(p) {
			v.parts.add(kind, i, false)
			v.groups.add(plural(kind), i, false)
		}
	}
}

// kindWords are the general words for a part: its kind, and "wheel" for every
// wheel.
func kindWords(p *mixcore.Part) []string {
	kind := string(p.Kind)
	switch {
	case kind == "" || kind == "other":
		return nil
	case strings.HasSuffix(kind, " wheel"):
		return []string{kind, "wheel"}
	}
	return []string{kind}
}

// plural is the plain plural of a name's last word.
func plural(name string) string {
	name = strings.TrimSpace(strings.ToLower(name))
	switch {
	case strings.HasSuffix(name, "s"), strings.HasSuffix(name, "x"), strings.HasSuffix(name, "ch"), strings.HasSuffix(name, "sh"):
		return name + "es"
	}
	return name + "s"
}

var otherSide = map[string]string{"port": "left", "left": "port", "starboard": "right", "right": "starboard"}

// sideForms is a name as given, then with port and left, starboard and right
// exchanged.
func sideForms(name string) []string {
	words := nameWords(name)
	forms := []string{name}
	for i, word := range words {
		if other := otherSide[word]; other != "" {
			swapped := slices.Clone(words)
			swapped[i] = other
			forms = append(forms, strings.Join(swapped, " "))
		}
	}
	return forms
}

// withoutSide is a name without its side word; empty if nothing is left.
func withoutSide(name string) string {
	words := slices.DeleteFunc(nameWords(name), func(word string) bool { return otherSide[word] != "" })
	return strings.Join(words, " ")
}

// controlNames lists the controls that indices stand for, for messages.
func (v *Vocabulary) controlNames(indices []int) []string {
	list := make([]string, len(indices))
	for i, index := range indices {
		list[i] = `"` + v.setup.Controls[index].Name + `"`
	}
	return list
}

func (v *Vocabulary) partNames(indices []int) []string {
	list := make([]string, len(indices))
	for i, index := range indices {
		list[i] = `"` + v.setup.Parts[index].Name + `"`
	}
	return list
}
