package said

import (
	"fmt"
	"strings"

	"example.com/hingeline/verify/result"
)

// Nearly announces mistakes that explain all but a few answers.
func Nearly(c *result.Causes) string {
	if c.Verdict == result.NoCause {
		return fmt.Sprintf("NEARLY: no single mistake of %s explains every answer. %s all but a few, which may not be what was seen",
			Grouped(c.Tried), Number(len(c.Near), "This one explains", "Each of these explains"))
	}
	return "MADE MORE OFTEN, and explains nearly all: the other answers may not be what was seen"
}

// NearOf is how much a mistake explains.
func NearOf(n *result.Near) string {
	return fmt.Sprintf("%s (made %s): explains %d of %d [%s]", n.Text, n.Odds, n.Explains, n.Of, n.Kind)
}

// mostAgainst is how many answers that speak against a mistake are named.
const mostAgainst = 8

// LookAgain is which answers speak against a mistake.
func LookAgain(n *result.Near) string {
	var list []string
	for i := range n.Against[:min(mostAgainst, len(n.Against))] {
		a := &n.Against[i]
		what := strings.Join(a.What, ", ")
		if a.Step > 0 {
			list = append(list, fmt.Sprintf("step %d (%s)", a.Step, what))
			continue
		}
		list = append(list, fmt.Sprintf("%q (%s)", what, At(a.Place)))
	}
	text := "look again at " + strings.Join(list, ", ")
	if left := len(n.Against) - mostAgainst; left > 0 {
		text += fmt.Sprintf(" and %d more", left)
	}
	if n.Lost {
		text += "; there the signal was lost: its failsafe may have been stored with the mistake made"
	}
	return text
}

// UndoOf is what would take a mistake back.
func UndoOf(n *result.Near) string {
	return AsTheFileSays(&result.Repair{Change: n.Undo, OnModel: n.OnModel})
}

// Nearest is the verdict where no mistake explains all and some nearly do.
func Nearest(c *result.Causes) string {
	n := &c.Near[0]
	return fmt.Sprintf("NO CAUSE IS SURE, DO NOT FLY: the nearest is that %s, which explains %d of %d; %s", n.Text, n.Explains, n.Of, LookAgain(n))
}
