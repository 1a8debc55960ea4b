package terminal

import (
	"fmt"
	"math"
	"reflect"
	"slices"
	"strconv"
	"strings"

	"example.com/hingeline/verify/result"
	"example.com/hingeline/verify/result/said"
)

// numbered is a claim with its number in the report and its law.
type numbered struct {
	*result.Proof
	number int
	law    *result.Law
}

// answered are the claims with one answer, in the order of the report. With
// Undecided they are all that is no answer.
func answered(r *result.Proofs, want result.ProofAnswer) []numbered {
	var out []numbered
	number := 0
	for i := range r.Laws {
		for k := range r.Laws[i].Claims {
			number++
			c := &r.Laws[i].Claims[k]
			if said.AnswerTo(c) == want {
				out = append(out, numbered{c, number, &r.Laws[i]})
			}
		}
	}
	return out
}

// disproved shows every claim that does not hold, with the position at which
// that can be seen.
func (p *page) disproved(r *result.Proofs) {
	claims := answered(r, result.Disproved)
	if len(claims) == 0 {
		return
	}
	p.blank()
	p.para(0, fmt.Sprintf("DISPROVED: %d of %s", len(claims), said.Count(r.Counts().Claims, "claim")), p.bad)
	for i, c := range claims {
		p.blank()
		p.hang(fmt.Sprintf("%d. %s  ", i+1, markDisproved), p.bad, c.Claim, p.strong)
		p.lawOf(c)
		p.counter(c.Counter, r.Model)
		if same := sameReason(claims[:i], c); same >= 0 {
			p.hang("   why      ", p.faint, fmt.Sprintf("as at %d above", same+1), plain)
			continue
		}
		p.reasons(c.Counter)
		p.lookAt(c.LookAt)
	}
}

// reasons are the cause chains of a counterexample, where they were asked for.
func (p *page) reasons(c *result.Counter) {
	if c == nil {
		return
	}
	for k, why := range c.Why {
		title := "   why, from the pilot's hand to " + said.WithArticle(why.Of) + ":"
		if k > 0 {
			title = "   and to " + said.WithArticle(why.Of) + ":"
		}
		p.chain(title, why.Chain)
	}
}

// sameReason is the first of the claims before that fails for the same reason, at
// the same lines of the airframe file; -1 if there is none.
func sameReason(before []numbered, c numbered) int {
	return slices.IndexFunc(before, func(b numbered) bool {
		return b.Counter != nil && c.Counter != nil && len(c.LookAt) > 0 &&
			reflect.DeepEqual(b.LookAt, c.LookAt) && reflect.DeepEqual(b.Counter.Why, c.Counter.Why)
	})
}

func (p *page) lawOf(c numbered) {
	p.hang("   law      ", p.faint, fmt.Sprintf("%s [%s], claim %d", c.law.Title, c.law.Code, c.number), plain)
}

// counter is a position at which a claim does not hold: how to set it, what is
// seen there, and the command that shows it.
func (p *page) counter(c *result.Counter, m result.Model) {
	if c == nil {
		return
	}
	p.hang("   set      ", p.faint, said.Pose(c.Pose, c.Before, c.Moved, true), plain)
	p.hang("   SEEN     ", p.bad, c.Got, plain)
	p.showCommand(c, m)
}

// showCommand is the command line that shows a counterexample.
func (p *page) showCommand(c *result.Counter, m result.Model) {
	p.hang("   show it  ", p.faint, "with this command:", plain)
	p.command(said.ShowCommand(c, p.airframe(m)))
}

// airframe is the model as a command line names it.
func (p *page) airframe(m result.Model) string {
	if p.named != "" {
		return p.named
	}
	return m.File
}

// commandIndent is where a command line stands; what goes on is indented more.
const commandIndent = 5

// command writes a command line, broken between its words as shells allow.
func (p *page) command(words []string) {
	line, indent := "", commandIndent
	for i, word := range words {
		joined := strings.TrimLeft(line+" "+word, " ")
		more := ""
		if i < len(words)-1 {
			more = ` \`
		}
		if line != "" && columns(p.say(joined+more)) > p.width-indent {
			p.para(indent, line+` \`, p.strong)
			joined, indent = word, commandIndent+2
		}
		line = joined
	}
	p.para(indent, line, p.strong)
}

// undecided shows every claim that has no answer, and what to do about it.
func (p *page) undecided(r *result.Proofs, brief bool) {
	claims := answered(r, result.Undecided)
	if len(claims) == 0 {
		return
	}
	p.blank()
	p.para(0, fmt.Sprintf("UNDECIDED: %d of %s, and that is not a yes", len(claims), said.Count(r.Counts().Claims, "claim")), p.warn)
	var stopped []numbered
	for len(claims) > 0 {
		var limited []numbered
		l := claims[0].law
		for ; len(claims) > 0 && claims[0].law == l; claims = claims[1:] {
			if claims[0].Limit > 0 {
				limited = append(limited, claims[0])
			} else {
				stopped = append(stopped, claims[0])
			}
		}
		p.limited(r, l, limited)
	}
	p.stopped(r, stopped, brief)
}

// limited are the claims of one law for which the search reached its limit.
func (p *page) limited(r *result.Proofs, l *result.Law, claims []numbered) {
	if len(claims) == 0 {
		return
	}
	p.blank()
	p.hang("   law      ", p.faint, l.Title+" ["+l.Code+"]", plain)
	limit := 0
	for _, c := range claims {
		p.open(c, "")
		limit = max(limit, c.Limit)
	}
	p.hang("   why      ", p.faint, said.Neither(limit), plain)
	p.hang("   do       ", p.strong, "search longer, or try the positions that you will fly in by hand:", plain)
	p.command([]string{"hingeline prove", said.ShellWord(p.airframe(r.Model)), "--only " + said.ShellWord(l.Code), "--boxes " + strconv.Itoa(longer(limit))})
}

// stopped are the claims that a run did not come to. Where the laws list them, only
// their numbers are said.
func (p *page) stopped(r *result.Proofs, claims []numbered, brief bool) {
	if len(claims) == 0 {
		return
	}
	p.blank()
	var numbers []int
	for _, c := range claims {
		numbers = append(numbers, c.number)
		if brief {
			p.open(c, " ["+c.law.Code+"]")
		}
	}
	why := "there is no answer"
	if r.Stopped != "" {
		why = "the run was " + r.Stopped
	}
	p.hang("   why      ", p.faint, why+", without an answer to "+claimNumbers(numbers), plain)
	p.hang("   do       ", p.strong, "run it again and let it finish:", plain)
	p.command([]string{"hingeline prove", said.ShellWord(p.airframe(r.Model))})
}

// open is one claim without an answer.
func (p *page) open(c numbered, code string) {
	p.hang(fmt.Sprintf("%5d %s  ", c.number, markUndecided), p.warn, c.Claim+code, plain)
}

// tenfold is how much longer an undecided claim is worth searching next.
const tenfold = 10

func longer(limit int) int {
	if limit > math.MaxInt32/tenfold {
		return math.MaxInt32
	}
	return limit * tenfold
}

// grounds say what the proofs cover and what they rest on.
func (p *page) grounds(r *result.Proofs) {
	proved := answered(r, result.Proved)
	if len(proved) == 0 {
		return
	}
	states, forms, boxes := 0, 0, 0
	for _, c := range proved {
		states = max(states, c.States)
		forms += c.Forms
		boxes += c.Boxes
	}
	p.blank()
	p.para(0, "WHAT THE PROOFS COVER", p.strong)
	p.hang("  - ", plain, "every position that a claim speaks of, not samples of them: up to "+said.Count(states, "combination")+
		" of switch positions, and between their ends every place of the sticks, levers and trims", plain)
	p.hang("  - ", plain, fmt.Sprintf("%s of the set-up decided, %s of the controls' travel searched", said.Count(forms, "form"), said.Count(boxes, "box")), plain)
	p.hang("  - ", plain, "the set-up as the airframe file has it: what the radio and the model really do is not in them", plain)
	p.assumed(proved)
}

// assumed is what the proofs need that they could not show, each with the claims
// that need it.
func (p *page) assumed(proved []numbered) {
	var all []string
	claims := map[string][]int{}
	for _, c := range proved {
		for _, a := range c.Assumes {
			if claims[a] == nil {
				all = append(all, a)
			}
			claims[a] = append(claims[a], c.number)
		}
	}
	if len(all) == 0 {
		return
	}
	p.blank()
	p.para(0, "WHAT THEY ASSUME", p.strong)
	for _, a := range all {
		p.hang("  - ", plain, a+": "+claimNumbers(claims[a]), plain)
	}
}

// claimNumbers are claims by their numbers.
func claimNumbers(numbers []int) string {
	return said.Number(len(numbers), "claim ", "claims ") + said.Runs(numbers)
}

// marginNotable is how much less than the smallest margin found, as a part of it,
// the proved one must be to be said.
const marginNotable = 0.01

// downDigits is how finely a proved margin is said.
const downDigits = 3

// downLeast is the smallest margin that is not said as 0.
const downLeast = 1e-6

// downMost is the largest margin that is said: more than any angle or percent.
const downMost = 1e9

// roundedDown is a number up to downMost to three figures, never more than it is.
func roundedDown(x float64) string {
	if 0 <= x && x < downLeast {
		return "0"
	}
	if -downLeast < x && x < 0 {
		x = -downLeast
	}
	scale := math.Pow10(downDigits - 1 - int(math.Floor(math.Log10(math.Abs(x)))))
	return strconv.FormatFloat(math.Floor(x*scale)/scale, 'f', -1, 64)
}
