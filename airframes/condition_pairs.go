package airframes

import (
	"strings"

	"example.com/hingeline/mixcore"
)

// phaseOrPair reads the name of a phase or, as in a script, a control and its
// position without "is": "rates high", "high rates".
func (p *conditionParser) phaseOrPair(name words) mixcore.Condition {
	if _, isPhase := p.scope.phases.find(name.text); isPhase {
		return p.phase(name)
	}
	pairs, unread := p.pairs(name.text)
	switch {
	case unread:
		return mixcore.Condition{}
	case len(pairs) == 0:
		return p.phase(name)
	case len(pairs) > 1:
		p.failAt(name, codeBadCondition, "write "+pairs[0].said(p)+" or "+pairs[1].said(p), "%s can be read in two ways", quoted(name.text))
		return mixcore.Condition{}
	case !pairs[0].controlFirst:
		return pairs[0].test
	}
	all := []mixcore.Condition{pairs[0].test}
	p.furtherPositions(func(position string) bool {
		test, ok := standsAt(p.scope.setup.Controls[pairs[0].control], pairs[0].control, position)
		if ok {
			all = append(all, test)
		}
		return ok
	})
	if len(all) == 1 {
		return all[0]
	}
	return mixcore.Condition{Op: mixcore.Or, Args: all}
}

// pair is one way to take words for a control and its position.
type pair struct {
	control      int
	position     string
	controlFirst bool
	test         mixcore.Condition
}

// said is the pair written out.
func (w pair) said(p *conditionParser) string {
	return p.scope.setup.Controls[w.control].Name + " is " + w.position
}

// mostWords is the most words that a name can have.
const mostWords = (maxNameLength + 1) / 2

// pairs are all ways to take words for a control and its position; unread says
// that it cannot be told, for the file does not say what the controls are.
func (p *conditionParser) pairs(text string) (all []pair, unread bool) {
	said := strings.Fields(text)
	if len(said) < 2 || len(said) > 2*mostWords {
		return nil, false
	}
	if p.scope.controls.absent {
		return nil, true
	}
	for cut := 1; cut < len(said); cut++ {
		before, after := strings.Join(said[:cut], " "), strings.Join(said[cut:], " ")
		for _, way := range []struct {
			control, position string
			controlFirst      bool
		}{{before, after, true}, {after, before, false}} {
			i, ok := p.scope.controls.find(way.control)
			if !ok {
				continue
			}
			unread = unread || p.scope.setup.Controls[i].Kind == 0
			if test, ok := standsAt(p.scope.setup.Controls[i], i, way.position); ok {
				all = append(all, pair{i, way.position, way.controlFirst, test})
			}
		}
	}
	return all, unread
}

// signs are what people write for the words of a condition.
var signs = strings.NewReplacer("==", " is ", "!=", " is not ", ">=", " is at least ", "<=", " is at most ",
	"=", " is ", ">", " is above ", "<", " is below ")

// wouldRead is the hint for words that would be a condition with "is" in place
// of a sign or of nothing; it is empty if they would not.
func (p *conditionParser) wouldRead(text string) string {
	said := strings.Fields(signs.Replace(text))
	for cut := min(len(said)-1, mostWords); cut > 0; cut-- {
		control := strings.Join(said[:cut], " ")
		i, ok := p.scope.controls.find(control)
		if !ok {
			continue
		}
		rest := said[cut:]
		if rest[0] == "is" {
			rest = rest[1:]
		}
		stands, not := strings.CutPrefix(strings.Join(rest, " "), "not ")
		if best, ok := p.scope.closest(stands, namesOfPositions(p.scope.setup.Controls[i])); ok {
			stands = best
		}
		if not {
			stands = "not " + stands
		}
		if hint := p.withIs(control, i, stands); hint != "" {
			return "write " + hint
		}
		return "write " + exampleTest(control, p.scope.setup.Controls[i])
	}
	return ""
}

// withIs is a control and what is said of where it stands as a condition, or
// nothing if that is none.
func (p *conditionParser) withIs(control string, index int, rest string) string {
	is := " is "
	if strings.HasSuffix(FoldName(control), "s") {
		is = " are "
	}
	text := control + is + rest
	try := &conditionParser{scope: p.scope, text: text, tokens: tokensOf(text)}
	try.condition()
	if try.pos < len(try.tokens) || len(try.problems) > 0 {
		return ""
	}
	return text
}

// example shows conditions about the controls that there are.
func (p *conditionParser) example() string {
	switched, lever := "", ""
	for _, c := range p.scope.setup.Controls {
		switch {
		case switched == "" && len(c.Positions) > 0:
			switched = c.Name + " is " + c.Positions[len(c.Positions)-1] + ", "
		case lever == "" && c.Kind == mixcore.LeverControl:
			lever = c.Name + " is above 20%, "
		}
	}
	if switched+lever == "" {
		return hintCondition
	}
	return "write " + switched + lever + "or the name of a phase"
}
