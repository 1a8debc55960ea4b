package laws

import (
	"fmt"
	"slices"
	"strconv"
	"strings"

	"example.com/hingeline/airframes"
	"example.com/hingeline/mixcore"
	"example.com/hingeline/mixcore/effect"
	"example.com/hingeline/verify/chain"
	"example.com/hingeline/verify/poses"
	"example.com/hingeline/verify/prove"
)

// claim is one sentence of a law about a model: it holds if all that it needs does.
type claim struct {
	sentence string
	needs    []prove.Claim
	assumes  []string
	mirror   bool // what it compares are two sides, not before and after
	// spare says the margin of a need in words; nil, or ok false, where a margin
	// would tell nothing.
	spare func(need int, margin float64) (m spare, ok bool)
	// seen says what is seen where a need fails.
	seen func(v *view) sight
}

// spare is a margin in words.
type spare struct {
	value float64
	unit  string // "°" or "%"
	text  string
}

// sight is what is seen at a counterexample, and what shows why.
type sight struct {
	got   string
	shows []shown
}

// shown is a part or channel whose cause chain tells why a claim fails.
type shown struct {
	part, channel int // one of the two is none
	doubt         chain.Doubt
	mirrored      bool // it is the other pose that tells
}

const none = -1

func showPart(part int, doubt chain.Doubt) shown {
	return shown{part: part, channel: none, doubt: doubt}
}

func showChannel(channel int) shown { return shown{part: none, channel: channel, doubt: chain.Amount} }

// Named is one thing that package prove decides, with the sentence that it is for.
type Named struct {
	Name     string // for a file: "travel-port-flap", of letters a to z, digits and "-"
	Law      string // its code
	Sentence string
	Claim    prove.Claim
}

// Claims are everything that the laws want decided about a model, in their order. A
// sentence that needs several things is there once for each.
func Claims(m *airframes.Model) []Named {
	var list []Named
	taken := map[string]bool{}
	mk := newMaker(m)
	for i := range all {
		l := &all[i]
		mk := mk.under(l)
		for k := range mk.claims {
			c := &mk.claims[k]
			for n := range c.needs {
				name := fmt.Sprintf("%s-%02d-%s", l.Code, k+1, fileName(c.sentence))
				if len(c.needs) > 1 {
					name += "-" + strconv.Itoa(n+1)
				}
				for taken[name] {
					name += "-x"
				}
				taken[name] = true
				list = append(list, Named{Name: name, Law: l.Code, Sentence: c.sentence, Claim: c.needs[n]})
			}
		}
	}
	return list
}

// longestName is how much of a sentence goes into the name of a file.
const longestName = 60

// fileName is a sentence as part of a file's name.
func fileName(sentence string) string {
	words := strings.FieldsFunc(strings.ToLower(sentence), func(r rune) bool {
		return !(r >= 'a' && r <= 'z' || r >= '0' && r <= '9')
	})
	name := ""
	for _, w := range words {
		if len(name)+1+len(w) > longestName {
			break
		}
		if name != "" {
			name += "-"
		}
		name += w
	}
	return name
}

// maker makes the claims of one law about one model.
type maker struct {
	m     *airframes.Model
	s     *mixcore.Setup
	air   *effect.Airframe
	probe *poses.Probe
	reach []poses.Reach // by part: what bears on it
	rest  mixcore.Input
	out   [2]*mixcore.Output // scratch
	known map[int][]tried    // by stick

	claims  []claim
	none    string   // why there is nothing to prove
	remarks []string // what the law leaves out of this model, and why, each a sentence
}

func newMaker(m *airframes.Model) *maker {
	mk := &maker{m: m, s: &m.Setup, air: effect.New(&m.Setup), probe: poses.New(m.Plan), rest: m.Plan.Rest(),
		out: [2]*mixcore.Output{m.Plan.NewOutput(), m.Plan.NewOutput()}, known: map[int][]tried{}}
	for i := range m.Setup.Parts {
		mk.reach = append(mk.reach, mk.probe.PartReach(i))
	}
	return mk
}

// under is a maker that has made the claims of a law.
func (mk *maker) under(l *law) *maker {
	own := *mk
	own.claims, own.none, own.remarks = nil, "", nil
	l.make(&own)
	return &own
}

// remark says what a law leaves out of this model, once.
func (mk *maker) remark(sentence string) {
	if !slices.Contains(mk.remarks, sentence) {
		mk.remarks = append(mk.remarks, sentence)
	}
}

func (mk *maker) add(c claim) { mk.claims = append(mk.claims, c) }
