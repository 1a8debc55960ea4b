package phrase

import (
	"regexp"
	"slices"
	"strings"
	"sync"
)

// rewording turns words that people use into those of the sentences.
type rewording struct {
	from *regexp.Regexp
	to   func(v *Vocabulary, found []string) string // of the groups that from found; "" is as it was
}

// The most that is spent on advice.
const (
	mostTried   = 16  // rewordings of one text
	mostAdvised = 200 // texts of one vocabulary: nobody reads more
)

// advise puts the sentence that was most likely meant into the hint of a
// problem, if one of the rewordings, or several together, make a sentence of the
// text. A text that is one under another keyword keeps its hint.
func (v *Vocabulary) advise(role Role, text string, problem *Problem) {
	text = strings.ToLower(text)
	if len(text) > MaxLength || v.advised.Add(1) > mostAdvised {
		return
	}
	if written, ok := v.reworded(role, text); ok {
		hint := `write "` + written + `"`
		if problem.Code == CodeWrongPlace {
			hint = problem.Hint + `; for the control, ` + hint
		}
		problem.Hint = hint
		return
	}
	if problem.Code == CodeWrongPlace {
		return
	}
	for _, w := range warnings() {
		if w.about.MatchString(text) {
			problem.Hint = w.hint
			return
		}
	}
}

// reworded looks for the sentence that the fewest rewordings make of a text. None
// is used twice.
func (v *Vocabulary) reworded(role Role, text string) (string, bool) {
	type try struct {
		text string
		used []int // indices of rewordings
	}
	queue := []try{{text: strings.TrimSpace(text)}}
	known := map[string]bool{queue[0].text: true}
	for tried := 0; tried < len(queue) && len(queue) < mostTried; tried++ {
		from := queue[tried]
		for i, w := range rewordings() {
			if slices.Contains(from.used, i) {
				continue
			}
			next := inPlural(w.apply(v, from.text))
			if known[next] || len(next) > MaxLength {
				continue
			}
			known[next] = true
			if _, problem := v.parse(role, next); problem == nil {
				return next, true
			}
			queue = append(queue, try{next, append(slices.Clone(from.used), i)})
		}
	}
	return "", false
}

// apply rewords every place that the rewording fits.
func (w *rewording) apply(v *Vocabulary, text string) string {
	places := w.from.FindAllStringSubmatchIndex(text, -1)
	if places == nil {
		return text
	}
	var changed strings.Builder
	done := 0
	for _, at := range places {
		found := make([]string, len(at)/2)
		for i := range found {
			if at[2*i] >= 0 {
				found[i] = text[at[2*i]:at[2*i+1]]
			}
		}
		changed.WriteString(text[done:at[0]])
		if to := w.to(v, found); to != "" {
			changed.WriteString(to)
		} else {
			changed.WriteString(found[0])
		}
		done = at[1]
	}
	changed.WriteString(text[done:])
	return strings.ReplaceAll(strings.Join(strings.Fields(changed.String()), " "), " ,", ",")
}

// warning is advice where no rewording could be right.
type warning struct {
	about *regexp.Regexp
	hint  string
}

// plain is a rewording to a text in which $1, $2 … stand for the groups.
func plain(from, to string) rewording {
	re := regexp.MustCompile(from)
	return rewording{re, func(_ *Vocabulary, found []string) string {
		written := to
		if to == "" {
			written = " "
		}
		for i := len(found) - 1; i > 0; i-- {
			written = strings.ReplaceAll(written, "$"+string(rune('0'+i)), found[i])
		}
		return written
	}}
}

// rewordings are all of them, in the order they are tried.
var rewordings = sync.OnceValue(func() []rewording {
	var all []rewording
	for _, list := range [][]rewording{marks(), numbers(), signals(), stickWords(), settingWords(), outcomeWords(), motorWords(), everyWays(), talk()} {
		all = append(all, list...)
	}
	return all
})
