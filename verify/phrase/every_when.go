package phrase

import (
	"slices"
	"strings"

	"example.com/hingeline/airframes"
	"example.com/hingeline/mixcore"
	"example.com/hingeline/verify/prove"
)

// commaAfter is the token of the next comma, or of the end.
func (r *reader) commaAfter(at int) int {
	for at < len(r.tokens)-1 && r.tokens[at].text != "," {
		at++
	}
	return at
}

// whenever reads a condition in the words of an airframe file, up to a token. The
// controls that it names are free.
func (r *reader) whenever(end int) bool {
	from := r.at
	if !slices.ContainsFunc(r.tokens[from:end], func(t token) bool { return t.text != "the" }) {
		return r.fail(problemAt(r.peek(), CodeUnknownSentence, "whenever what?", "write where a control stands: \"whenever the "+r.someControl()+" is …, …\""))
	}
	if r.tokens[end].kind == endToken && r.tokens[from-1].column == 1 {
		return r.fail(problemAt(r.tokens[end], CodeUnknownSentence, "what should happen whenever that is so?", "write a comma behind the condition, then a part and what it does"))
	}
	when, ok := r.condition(from, end)
	r.at = end
	if !ok {
		return false
	}
	var named []int
	r.setup.EachTest(&when, func(t *mixcore.Condition) { named = appendNew(named, []int{t.Control}) })
	for _, control := range named {
		r.free(Every{named: []freeControl{{Control: control, Over: prove.Whole(&r.setup.Controls[control]), How: freeWatched, At: r.span(from)}}})
	}
	r.free(Every{When: &when})
	return true
}

// condition reads the text between two tokens as package airframes would, with the
// names of controls that a script may use.
func (r *reader) condition(from, end int) (mixcore.Condition, bool) {
	tokens := r.tokens[from:end]
	if len(tokens) > 1 && slices.ContainsFunc(tokens, func(t token) bool { return t.text == "signal" }) {
		return mixcore.Condition{}, r.fail(across(tokens[0], tokens[len(tokens)-1], CodeUnknownSentence, "the signal is no control",
			"write \"whatever else moves, when the signal is lost, …\""))
	}
	text, of := r.inFileWords(tokens)
	when, problems := r.model.ParseCondition(text)
	if len(problems) == 0 {
		return when, true
	}
	p := problems[0]
	if p.Code == "unknown-name" {
		p.Code = CodeUnknownName
	}
	first, last := of(p.Column), of(p.Column+max(p.Width, 1)-1)
	return mixcore.Condition{}, r.fail(across(tokens[first], tokens[last], p.Code, p.Message, p.Hint))
}

// inFileWords is a condition with every control by the name that the file gives it, and
// of which token each of its columns is.
func (r *reader) inFileWords(tokens []token) (text string, of func(column int) int) {
	var words []string
	var token []int // of each column of the text, that of the space behind a word too
	open := true    // a control may be named here
	add := func(word string, last int) {
		words = append(words, word)
		for range len([]rune(word)) + 1 {
			token = append(token, last)
		}
	}
	for i := 0; i < len(tokens); i++ {
		t := tokens[i]
		if t.text == "the" {
			continue
		}
		found, n := r.controls.find(append(slices.Clone(tokens[i:]), r.tokens[len(r.tokens)-1]))
		if open && n > 0 && len(found.indices) == 1 {
			add(airframes.FoldName(r.setup.Controls[found.indices[0]].Name), i+n-1)
			i += n - 1
			open = false
			continue
		}
		add(t.text, i)
		open = slices.Contains([]string{"and", "or", "not"}, t.text)
	}
	return strings.Join(words, " "), func(column int) int {
		return token[min(max(column-1, 0), len(token)-1)]
	}
}
