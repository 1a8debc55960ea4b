package phrase

// reader walks over the tokens of one sentence. Its methods return false and
// leave the position alone where the text is something else; once a text is
// understood but wrong, problem is set and every reading ends.
type reader struct {
	*Vocabulary
	tokens  []token
	at      int
	problem *Problem

	text  []rune   // of the sentence
	every *Every   // what the prefixes so far set free; nil: there was none
	risen *Outcome // the last outcome of the kind "the more …, the higher …"
}

func (r *reader) peek() token { return r.tokens[r.at] }

// last is the token before the current one.
func (r *reader) last() token { return r.tokens[max(r.at-1, 0)] }

func (r *reader) ended() bool { return r.peek().kind == endToken }

// fail sets the problem, unless there is one.
func (r *reader) fail(p *Problem) bool {
	if r.problem == nil {
		r.problem = p
	}
	return false
}

// words takes a run of words if they come next.
func (r *reader) words(run ...string) bool {
	for i, word := range run {
		if r.at+i >= len(r.tokens) || r.tokens[r.at+i].kind == endToken || r.tokens[r.at+i].text != word {
			return false
		}
	}
	r.at += len(run)
	return true
}

// any takes the first of several words that comes next.
func (r *reader) any(choices ...string) bool {
	for _, word := range choices {
		if r.words(word) {
			return true
		}
	}
	return false
}

// try runs a reading and goes back if it is false.
func (r *reader) try(reading func() bool) bool {
	start := r.at
	if r.problem == nil && reading() && r.problem == nil {
		return true
	}
	r.at = start
	return false
}

// span is the place from a token to the last one taken.
func (r *reader) span(from int) Span {
	first, last := r.tokens[from], r.last()
	return Span{Column: first.column, Width: max(last.column+last.width-first.column, 1)}
}
