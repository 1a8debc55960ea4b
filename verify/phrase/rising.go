package phrase

import (
	"fmt"
	"slices"

	"example.com/hingeline/mixcore"
)

// rising reads "the more right the roll stick, the higher the starboard aileron",
// "the further the flap lever, the lower the flaps".
func (r *reader) rising(o *Outcome) bool {
	start := r.at
	if !r.words("the") || !r.any("more", "further", "farther", "higher") {
		r.at = start
		return false
	}
	sided := r.at
	var side string
	if slices.Contains(directions, r.peek().text) {
		side = r.peek().text
		r.at++
	}
	control, ok := r.control()
	if !ok || r.problem != nil {
		if r.problem == nil && r.hasComma() {
			return r.unknownFree(r.at)
		}
		r.at = start
		return false
	}
	if r.any("is", "stands", "moves", "goes") && side == "" && slices.Contains(directions, r.peek().text) {
		sided = r.at
		side = r.peek().text
		r.at++
	}
	plus, ok := r.risingSide(control, side, sided)
	if !ok {
		return false
	}
	r.words(",")
	o.Control, o.Plus = control, plus
	return r.goes(o)
}

func (r *reader) hasComma() bool { return r.commaAfter(r.at) < len(r.tokens)-1 }

// risingSide is whether the control moves its plus way.
func (r *reader) risingSide(control int, side string, at int) (plus, ok bool) {
	c := &r.setup.Controls[control]
	switch {
	case c.Kind == mixcore.SwitchControl:
		return false, r.fail(across(r.tokens[at], r.last(), CodeNotAlways, fmt.Sprintf("the %s is a switch: it has no more and less", c.Name), "write \"whenever the "+c.Name+" is …, …\""))
	case c.Kind == mixcore.LeverControl && side == "":
		return true, true
	case c.Kind == mixcore.LeverControl && (side == "up" || side == "forward"):
		return true, true
	case c.Kind == mixcore.LeverControl:
		return false, r.fail(problemAt(r.tokens[at], CodeUnknownPosition, fmt.Sprintf("%q is no way that the %s goes", side, c.Name), "write \"the further the "+c.Name+", …\""))
	}
	sides := axisSides[c.Axis]
	switch side {
	case sides[0]:
		return true, true
	case sides[1]:
		return false, true
	case "":
		return false, r.fail(problemAt(r.tokens[at], CodeUnknownSentence, fmt.Sprintf("the more which way the %s?", c.Name), "write \"the more "+sides[0]+" the "+c.Name+", …\""))
	}
	return false, r.fail(problemAt(r.tokens[at], CodeUnknownPosition, fmt.Sprintf("%q is no way that the %s goes", side, c.Name), "it goes "+sides[0]+" and "+sides[1]))
}

// furtherWays are the ways that a part goes by degrees.
var furtherWays = []struct {
	words []string
	way   Way
}{
	{[]string{"higher"}, Up}, {[]string{"lower"}, Down}, {[]string{"faster"}, Faster}, {[]string{"slower"}, Slower},
	{[]string{"further", "up"}, Up}, {[]string{"further", "down"}, Down},
	{[]string{"further", "left"}, Left}, {[]string{"further", "right"}, Right}, {[]string{"further", "out"}, Out}, {[]string{"further", "in"}, In},
	{[]string{"more", "up"}, Up}, {[]string{"more", "down"}, Down}, {[]string{"more", "left"}, Left}, {[]string{"more", "right"}, Right},
}

// goes reads the second half: "the higher the starboard aileron".
func (r *reader) goes(o *Outcome) bool {
	start := r.at
	if r.words("the") {
		for _, f := range furtherWays {
			if r.words(f.words...) {
				o.Way = f.way
				break
			}
		}
	}
	if o.Way == NoWay {
		return r.fail(across(r.tokens[start], r.tokens[max(r.phraseEnd(start)-1, start)], CodeUnknownSentence, "and what then?",
			"end it with \"the higher the …\", \"the lower the …\", \"the further left the …\" or \"the faster the …\""))
	}
	from := r.at
	subject, ok := r.subjects()
	switch {
	case r.problem != nil:
		return false
	case !ok:
		return r.unknownSubject(from, r.phraseEnd(from))
	case subject.Model:
		return r.fail(across(r.tokens[start], r.last(), CodeWrongMotion, "the model is neither higher nor lower here", "name a part, or write \"whenever …, the model rolls right\""))
	}
	r.any("is", "are", "stands", "stand", "goes", "go", "moves", "move", "turns", "turn", "runs", "run")
	o.Subject, o.Verb, o.Every = subject, Rising, &Every{}
	if !r.suits(o, start) {
		return false
	}
	risen := *o
	r.risen = &risen
	return true
}

// risingAgain reads "and the lower the port aileron" behind another such outcome.
func (r *reader) risingAgain(o *Outcome) bool {
	if r.risen == nil || r.peek().text != "the" {
		return false
	}
	again := r.tokens[r.at+1].text
	if !slices.ContainsFunc(furtherWays, func(f struct {
		words []string
		way   Way
	}) bool {
		return f.words[0] == again
	}) {
		return false
	}
	o.Control, o.Plus = r.risen.Control, r.risen.Plus
	return r.goes(o)
}

// dependsOn reads "depends on nothing but the pitch stick and the pitch trim".
func (r *reader) dependsOn(o *Outcome) bool {
	start := r.at
	if !r.any("depends", "depend") {
		return false
	}
	if !r.words("on", "nothing", "but") && !r.words("only", "on") && !r.words("on", "nothing", "except") {
		return r.fail(across(r.tokens[start], r.peek(), CodeUnknownSentence, "that it depends on something says little", "write \"depends on nothing but the …\""))
	}
	for {
		from := r.at
		control, ok := r.control()
		if !ok {
			return r.problem == nil && r.unknownFree(from)
		}
		if next := r.peek(); next.kind == wordToken && !r.outcomeEnds() && next.text != "or" {
			return r.unknownFree(from)
		}
		o.On = appendNew(o.On, []int{control})
		if !r.try(func() bool {
			if !r.joint() && !r.words("or") {
				return false
			}
			probe := r.probe(r.at)
			_, ok := probe.control()
			return ok && !slices.Contains(outcomeVerbs, probe.peek().text)
		}) {
			break
		}
	}
	o.Verb, o.Every = DependsOn, &Every{}
	return true
}
