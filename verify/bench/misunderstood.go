package bench

import "errors"

// misunderstanding is a line that cannot be taken.
type misunderstanding struct {
	text string // what is wrong, and what is wanted
	hint string // what may be meant; may be empty
	word int    // index of the first word that it is about
}

func (m *misunderstanding) Error() string { return m.text }

func misunderstood(text string) error { return &misunderstanding{text: text} }

func hinted(text, hint string) error { return &misunderstanding{text: text, hint: hint} }

// behind is a misunderstanding about words that so many others stand before.
func behind(err error, words int) error {
	var m *misunderstanding
	if errors.As(err, &m) {
		m.word += words
	}
	return err
}

// Misread is a line among answers that were written beforehand, of which nothing comes.
type Misread struct {
	Line int // index among the lines
	Word int // index of the word in it that the problem begins at
	Text string
	Hint string // may be empty
	Over bool   // nothing is asked any more where it stands
}

// Nowhere is a journal that keeps nothing.
type Nowhere struct{}

// Append keeps nothing.
func (Nowhere) Append([]byte) error { return nil }

// Rehearse takes lines with a guide that is for nothing else, whose journal should be
// [Nowhere], and finds every one of which nothing comes. It goes on behind such a line as
// if it were not there, or where one of the questions is asked as if it were yes.
func Rehearse(g *Guide, lines []string) (all []Misread, err error) {
	for i, line := range lines {
		if g.Over() {
			return append(all, Misread{Line: i, Text: "nothing is asked any more here: the walk is over", Over: true}), nil
		}
		r, err := g.Take(line)
		if err != nil {
			return nil, err
		}
		if r.Understood {
			continue
		}
		all = append(all, Misread{Line: i, Word: r.Word, Text: r.Text, Hint: r.Hint})
		g.asking = askStep
		if g.confirmed < len(Questions) {
			if err := g.note(Event{Kind: Confirmed, What: Questions[g.confirmed].Name}); err != nil {
				return nil, err
			}
		}
	}
	return all, nil
}
