package html

import (
	"fmt"
	"slices"
	"strconv"
	"strings"

	"example.com/hingeline/verify/report/figure"
	"example.com/hingeline/verify/result"
	"example.com/hingeline/verify/result/said"
)

// stage is a stage of the walk-around.
type stage struct {
	ID, Title string
	Caution   string
	Stops     []stop
}

// stop is one position of the controls, with what is to be seen there.
type stop struct {
	ID     string
	Number int
	Pose   string
	Views  []*shot
	Sights []sight

	DoNotFly bool // a check failed here
}

// sight is one sentence and its answers.
type sight struct {
	Sentence string
	Passed   bool
	Answers  []answer
	Sections []*shot
}

// answer is what one check wants and what it got, or several that want and got the same.
type answer struct {
	Numbers string // of the checks in the report: "check 8", "checks 8, 12"
	Wanted  string // empty where the sentence says it
	Got     string
	Miss    string
	Failure int // its number among the failures, 0 for none
}

// walk is the walk-around, and the checks that nobody can set.
func (p *page) walk(d *drawer) {
	checks := said.ChecksOf(p.Report)
	fails := failuresOf(p.Report)
	stops := checks.Walk()
	if len(stops) > 0 && d.paper != nil {
		p.Legend = d.shot("legend", "The signs and patterns of all pictures", figure.Legend)
	}
	for n, s := range stops {
		if n == 0 || stops[n-1].Stage != s.Stage {
			p.Stages = append(p.Stages, p.stageOf(s.Stage, len(p.Stages)+1, stops))
		}
		one := stop{ID: fmt.Sprintf("stop-%d", n+1), Number: n + 1, Pose: s.Pose, Views: d.views(s.Checks, p.sentences(s.Checks))}
		drawn := map[section]bool{}
		for _, seen := range checks.Sights(s.Checks) {
			asked := p.sightOf(checks, &seen, fails)
			for _, i := range seen.Checks {
				asked.Sections = append(asked.Sections, d.sections(i, seen.Sentence, drawn)...)
			}
			one.Sights = append(one.Sights, asked)
			one.DoNotFly = one.DoNotFly || !asked.Passed
		}
		last := &p.Stages[len(p.Stages)-1]
		last.Stops = append(last.Stops, one)
	}
	for _, s := range checks.Asked() {
		one := stop{Pose: s.Pose}
		for _, asked := range checks.Sights(s.Checks) {
			one.Sights = append(one.Sights, p.sightOf(checks, &asked, fails))
		}
		p.Asked = append(p.Asked, one)
	}
	for _, seen := range checks.Sights(checks.Everywhere()) {
		p.Always = append(p.Always, p.sightOf(checks, &seen, fails))
	}
}

// failuresOf are the numbers of the failures, by the index of their checks.
func failuresOf(r *result.Report) map[int]int {
	numbers := map[int]int{}
	for i := range r.Checks {
		if !r.Checks[i].Passed {
			numbers[i] = len(numbers) + 1
		}
	}
	return numbers
}

func (p *page) stageOf(s result.Stage, n int, stops []said.Stop) stage {
	all, failed := 0, 0
	for _, one := range stops {
		if one.Stage != s {
			continue
		}
		for _, i := range one.Checks {
			all++
			if !p.Report.Checks[i].Passed {
				failed++
			}
		}
	}
	st := stage{ID: fmt.Sprintf("stage-%d", n), Title: sentence(string(s)) + ": " + said.Count(all, "check")}
	if failed > 0 {
		st.Title += fmt.Sprintf(", %d FAILED", failed)
	}
	if s == result.MotorAndSignal && len(p.Report.Cautions) > 0 {
		st.Caution = p.Report.Cautions[0]
	}
	return st
}

// mostSentences is how many sentences stand under a picture that shows many.
const mostSentences = 3

// sentences are those of several checks, each once, for under a picture.
func (p *page) sentences(checks []int) string {
	var all []string
	for _, i := range checks {
		if s := p.Report.Checks[i].Sentence; !slices.Contains(all, s) {
			all = append(all, s)
		}
	}
	if n := len(all) - mostSentences; n > 0 {
		return strings.Join(all[:mostSentences], "; ") + "; and " + said.Count(n, "more sentence") + " below"
	}
	return strings.Join(all, "; ")
}

func (p *page) sightOf(checks *said.Checks, seen *said.Sight, fails map[int]int) sight {
	s := sight{Sentence: seen.Sentence, Passed: seen.Passed}
	for _, i := range seen.Checks {
		c := &p.Report.Checks[i]
		a := answer{Numbers: "check " + strconv.Itoa(i+1), Got: checks.Got(i) + said.Assuming(c.Proof), Miss: c.Miss, Failure: fails[i]}
		if !c.Passed || c.Wanted != c.Got && !strings.Contains(c.Sentence, c.Wanted) {
			a.Wanted = checks.Wanted(i)
		}
		same := func(b answer) bool { return b.Got == a.Got && b.Wanted == a.Wanted }
		if k := slices.IndexFunc(s.Answers, same); k >= 0 {
			all := strings.TrimPrefix(strings.TrimPrefix(s.Answers[k].Numbers, "check "), "checks ")
			s.Answers[k].Numbers = "checks " + all + ", " + strconv.Itoa(i+1)
			continue
		}
		s.Answers = append(s.Answers, a)
	}
	return s
}
