package main

import (
	"bufio"
	"errors"
	"fmt"
	"io"
	"strconv"
	"strings"

	"example.com/hingeline/verify/draft"
)

// errNoAnswer is the end of the input before the last question was answered.
var errNoAnswer = errors.New("the answers ended before the last question")

// questions asks one after the other. A bare Enter takes the answer in brackets.
type questions struct {
	answers *bufio.Reader
	ask     io.Writer
	err     error // then nothing is asked any more
}

// answer asks until what is said is understood. understand returns what is wrong
// with it, or "".
func (q *questions) answer(question, usual string, understand func(string) string) {
	for q.err == nil {
		fmt.Fprintf(q.ask, "%s [%s] ", question, usual)
		line, err := q.answers.ReadString('\n')
		if err != nil && (line == "" || !errors.Is(err, io.EOF)) {
			fmt.Fprintln(q.ask)
			q.err = errNoAnswer
			return
		}
		said := strings.TrimSpace(line)
		if said == "" {
			said = usual
		}
		wrong := understand(said)
		if wrong == "" {
			return
		}
		fmt.Fprintln(q.ask, wrong)
	}
}

func (q *questions) yes(question string, answer *bool) {
	usual := map[bool]string{true: "yes", false: "no"}[*answer]
	q.answer(question, usual, func(said string) string {
		switch strings.ToLower(said) {
		case "y", "yes":
			*answer = true
		case "n", "no":
			*answer = false
		default:
			return "  yes or no, please"
		}
		return ""
	})
}

// newByAsking asks for what --layout and NAME do not say.
func (s *session) newByAsking(layout draft.Layout, args []string, flags newFlags) error {
	q := &questions{answers: bufio.NewReader(s.stdin), ask: s.stderr}
	if layout.Name == "" {
		fmt.Fprint(s.stderr, layoutList())
		q.answer("Which layout?", draft.Layouts()[0].Name, func(said string) (wrong string) {
			var known bool
			if layout, known = draft.FindLayout(said); !known {
				wrong = "  there is none called " + strconv.Quote(said)
				if hint := didYouMean(said, layoutNames()); hint != "" {
					wrong += "; " + hint
				}
			}
			return wrong
		})
	}
	choices := layout.Usual()
	choices.Name = "My Model"
	if len(args) > 0 {
		choices.Name = args[0]
	}
	q.answer("What is the model called?", choices.Name, func(said string) string {
		choices.Name = said
		if _, problem := fileBase(said); problem != "" {
			return "  " + problem
		}
		return ""
	})
	if layout.MayMotor {
		q.yes("Has it a motor?", &choices.Motor)
	}
	if layout.MayFlaps {
		q.yes("Has it flaps?", &choices.Flaps)
	}
	q.yes("Has it a switch for low and high rates?", &choices.Rates)
	q.answer("How much does full trim add, in percent (0 is no trim)?", strconv.Itoa(choices.Trim), func(said string) string {
		percent, err := strconv.Atoi(strings.TrimSpace(strings.TrimSuffix(said, "%")))
		if err != nil || percent < 0 || percent > draft.MostTrim {
			return fmt.Sprintf("  a whole number from 0 to %d, please", draft.MostTrim)
		}
		choices.Trim = percent
		return ""
	})
	if q.err != nil {
		return s.refuse(q.err.Error()+", so nothing was written", "a bare Enter takes the answer in brackets")
	}
	return s.writeModel(layout, choices, flags.dir)
}
