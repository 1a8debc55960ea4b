package draft

import (
	"fmt"
	"slices"
	"strings"

	"example.com/hingeline/mixcore"
	"example.com/hingeline/verify/phrase"
	"example.com/hingeline/verify/wording"
)

// line is one sentence of a draft.
type line struct {
	text string
	open bool // left to the pilot
}

// does are the words of a verb, for one part and for several.
type does struct{ one, several string }

var moveWords = map[phrase.Way]does{
	phrase.Down:   {"drops", "drop"},
	phrase.Up:     {"rises", "rise"},
	phrase.Left:   {"moves left", "move left"},
	phrase.Right:  {"moves right", "move right"},
	phrase.Faster: {"speeds up", "speed up"},
	phrase.Slower: {"slows down", "slow down"},
	phrase.Out:    {"extends", "extend"},
	phrase.In:     {"retracts", "retract"},
}

var verbWords = map[phrase.Verb]does{
	phrase.Still:        {"stays still", "stay still"},
	phrase.Stops:        {"stops", "stop"},
	phrase.StaysStopped: {"stays stopped", "stay stopped"},
}

func (a *asked) words() does {
	if a.verb == phrase.Move {
		return moveWords[a.way]
	}
	return verbWords[a.verb]
}

// lines are the sentences of what is asked: parts that do the same share one.
// Movements come first, what stays still last, what is open at the end.
func (d *drafter) lines(list []asked) []line {
	var moved, still, open []line
	for len(list) > 0 {
		first := list[0]
		var parts []int
		list = slices.DeleteFunc(slices.Clone(list), func(a asked) bool {
			same := a.verb == first.verb && a.way == first.way && a.open == first.open
			if same {
				parts = append(parts, a.part)
			}
			return same
		})
		l := line{d.sentence(parts, first.words()), first.open}
		switch {
		case first.open:
			open = append(open, l)
		case first.verb == phrase.Still:
			still = append(still, l)
		default:
			moved = append(moved, l)
		}
	}
	return slices.Concat(moved, still, open)
}

// sentence says that parts do something: "both ailerons rise".
func (d *drafter) sentence(parts []int, does does) string {
	names := d.groups(parts)
	verb := does.several
	if len(parts) == 1 && !strings.HasSuffix(names[0], "s") {
		verb = does.one
	}
	return wording.Listed(names) + " " + verb
}

// groups are parts as a person names them: "both flaps", "the elevator".
func (d *drafter) groups(parts []int) []string {
	key := fmt.Sprint(parts)
	names, known := d.grouped[key]
	if !known {
		names = d.groupsOf(parts)
		d.grouped[key] = names
	}
	return names
}

func (d *drafter) groupsOf(parts []int) []string {
	var names []string
	done := map[int]bool{}
	if surfaces := d.meant("all surfaces"); len(surfaces) > 2 && containsAll(parts, surfaces) {
		names = append(names, "all surfaces")
		for _, i := range surfaces {
			done[i] = true
		}
	}
	for _, i := range parts {
		if done[i] {
			continue
		}
		name, members := d.group(i, parts)
		for _, m := range members {
			done[m] = true
		}
		names = append(names, name)
	}
	return names
}

func containsAll(list, of []int) bool {
	return !slices.ContainsFunc(of, func(i int) bool { return !slices.Contains(list, i) })
}

// group is the largest group of a part that is wholly among parts, or the part
// alone.
func (d *drafter) group(part int, parts []int) (name string, members []int) {
	p := &d.s.Parts[part]
	for _, word := range []string{string(p.Kind), d.stems[part]} {
		members = slices.DeleteFunc(slices.Clone(parts), func(i int) bool {
			q := &d.s.Parts[i]
			return word != string(q.Kind) && word != d.stems[i]
		})
		for _, name := range []string{"both " + word + "s", "all " + word + "s"} {
			if len(members) > 1 && d.meansExactly(name, members) {
				return name, members
			}
		}
	}
	return "the " + p.Name, []int{part}
}

// meansExactly says whether a script would take a name for just these parts.
func (d *drafter) meansExactly(name string, parts []int) bool {
	return slices.Equal(d.meant(name), slices.Sorted(slices.Values(parts)))
}

// meant are the parts that a script takes a name for, ascending; nil if it would
// not understand it.
func (d *drafter) meant(name string) []int {
	parts, known := d.names[name]
	if known {
		return parts
	}
	for _, verb := range []phrase.Verb{phrase.Still, phrase.StaysStopped} {
		meaning, problem := d.vocabulary.Parse(phrase.Then, name+" "+verbWords[verb].several)
		if problem == nil && len(meaning.Outcomes) == 1 {
			parts = slices.Sorted(slices.Values(meaning.Outcomes[0].Subject.Parts))
			break
		}
	}
	d.names[name] = parts
	return parts
}

// stands is where a control stands, as a sentence has it behind its name: "is
// high", or with no verb "high"; a lever stands at its place.
func (d *drafter) stands(control int, at float64, verb string) string {
	return strings.TrimSpace(verb + " " + d.preposition(control) + d.placeWords(control, at))
}

func (d *drafter) preposition(control int) string {
	if d.s.Controls[control].Kind == mixcore.LeverControl {
		return "at "
	}
	return ""
}

// placeWords is where a control stands: "landing", "50%", "full right".
func (d *drafter) placeWords(control int, at float64) string {
	c := &d.s.Controls[control]
	return strings.ReplaceAll(wording.Stand(c, at), " %", "%")
}

// setting is "the rate switch is high", or with no verb "the rate switch high".
func (d *drafter) setting(control int, at float64, verb string) string {
	return "the " + d.s.Controls[control].Name + " " + d.stands(control, at, verb)
}

// turnWords are the words for a turn about an axis, plus and minus.
var turnWords = map[mixcore.Axis][2]string{
	mixcore.Roll:  {"rolls right", "rolls left"},
	mixcore.Pitch: {"pitches up", "pitches down"},
	mixcore.Yaw:   {"yaws right", "yaws left"},
}

// title is a name as a title begins: "Flap lever".
func title(name string) string {
	if name == "" {
		return name
	}
	runes := []rune(name)
	return strings.ToUpper(string(runes[:1])) + string(runes[1:])
}
