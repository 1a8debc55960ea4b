package terminal

import (
	"fmt"
	"slices"
	"strconv"
	"strings"

	"example.com/hingeline/verify/result"
)

// heading says what the report is about, with the caution that must come before
// anything else, and what "rests" means below.
func (p *page) heading(r *result.Report) {
	p.para(0, r.Model.Name+": control check", p.strong)
	if len(r.Cautions) > 0 {
		p.hang("▲ ", p.warn, r.Cautions[0], p.warn)
	}
	p.about(r.Model, r.Scripts, r.Tool)
	if len(r.Rest) > 0 {
		p.blank()
		p.hang("AT REST: ", p.strong, strings.Join(r.Rest, gap), plain)
	}
}

// about says which files, and by which version.
func (p *page) about(m result.Model, scripts []string, tool string) {
	p.hang("  airframe  ", p.faint, m.File, plain)
	if len(scripts) > 0 {
		p.hang("  script    ", p.faint, strings.Join(scripts, ", "), plain)
	}
	if tool != "" {
		p.hang("  by        ", p.faint, "Hingeline "+tool, plain)
	}
}

// walkAround lists every check, stage by stage; scenario and pose are written
// once for the checks that share them.
func (p *page) walkAround(r *result.Report) {
	var last *result.Check
	lastPose, failure := "", 0
	for i := range r.Checks {
		c, pose := &r.Checks[i], p.poses[i]
		sameStage := last != nil && last.Stage == c.Stage
		sameScenario := sameStage && last.Scenario == c.Scenario && last.Feature == c.Feature && last.Place.File == c.Place.File
		samePose := sameScenario && lastPose == pose
		if !sameStage {
			p.blank()
			p.para(0, stageHeading(r, c.Stage), p.strong)
			if c.Stage == result.MotorAndSignal && len(r.Cautions) > 0 {
				p.hang("  ▲ ", p.warn, r.Cautions[0], p.warn)
			}
		}
		if !sameScenario {
			p.para(2, c.Scenario, plain)
		}
		if !samePose && pose != "" {
			p.para(4, pose, plain)
		}
		if !c.Passed {
			failure++
		}
		sentence := c.Sentence
		if samePose && c.Passed && last.Place == c.Place && last.Sentence == c.Sentence {
			sentence = likewise
		}
		got := p.answer(r, i)
		if c.Passed {
			got += assuming(c.Proof)
		}
		p.check(i+1, c, sentence, got, failure)
		last, lastPose = c, pose
	}
}

func stageHeading(r *result.Report, stage result.Stage) string {
	all, failed := 0, 0
	for i := range r.Checks {
		if r.Checks[i].Stage == stage {
			all++
			if !r.Checks[i].Passed {
				failed++
			}
		}
	}
	heading := fmt.Sprintf("%s: %s", strings.ToUpper(string(stage)), count(all, "check"))
	if failed > 0 {
		heading += fmt.Sprintf(", %d FAILED", failed)
	}
	return heading
}

// gap stands between a sentence and what was got where both fit on one line.
const gap = " · "

// question is what makes two checks parts of one sentence, asked once.
type question struct {
	file     string
	line     int
	sentence string
	pose     string
}

// checkBytes is about as long as a check gets, so that the text seldom moves.
const checkBytes = 256

// survey notes once for all checks how the controls stand and how often each
// question is asked.
func (p *page) survey(r *result.Report) {
	p.out.Grow(checkBytes * len(r.Checks))
	p.poses = make([]string, len(r.Checks))
	p.asks = make(map[question]int, len(r.Checks))
	for i := range r.Checks {
		p.poses[i] = poseOf(&r.Checks[i])
		p.asks[p.question(r, i)]++
	}
}

func (p *page) question(r *result.Report, i int) question {
	c := &r.Checks[i]
	return question{c.Place.File, c.Place.Line, c.Sentence, p.poses[i]}
}

// answer is what check i got, and of which part where the sentence leaves that
// open: it does not name the part, or it asks about several.
func (p *page) answer(r *result.Report, i int) string {
	c := &r.Checks[i]
	if c.Subject == "" ||
		p.asks[p.question(r, i)] == 1 && strings.Contains(strings.ToLower(c.Sentence), strings.ToLower(c.Subject)) {
		return c.Got
	}
	return c.Subject + ": " + c.Got
}

// likewise stands in place of the sentence just above, asked of another part.
const likewise = "likewise"

// check is one check, on one line if it fits.
func (p *page) check(number int, c *result.Check, sentence, got string, failure int) {
	mark, ink := "pass ✓", p.good
	if !c.Passed {
		mark, ink = "FAIL ✗", p.bad
		got = fmt.Sprintf("%s (failure %d below)", got, failure)
	}
	label := fmt.Sprintf("  %3d %s  ", number, pad(p.say(mark), columns(p.say("pass ✓"))))
	room := p.width - columns(label)
	if both := sentence + gap + got; columns(p.say(both)) <= room {
		p.hang(label, ink, both, plain)
		return
	}
	p.hang(label, ink, sentence, plain)
	p.hang(spaces(columns(label))+"got: ", plain, got, plain)
}

// poseOf is how the controls stand at a check, as one phrase; empty where the
// sentence speaks of every position.
func poseOf(c *result.Check) string {
	if c.Proof != nil && c.Proof.Answer != result.Disproved {
		return everyPosition(c)
	}
	return pose(c.Pose, c.Before, c.Moved, c.Rests)
}

func pose(stand, before, moved []string, rests bool) string {
	words := strings.Join(stand, ", ")
	if len(moved) > 0 {
		words = "then " + strings.Join(moved, ", ")
		if len(before) > 0 {
			words = strings.Join(before, ", ") + "; " + words
		}
		words = strings.TrimPrefix(words, "then ")
	}
	switch {
	case words == "" && rests:
		return "everything rests"
	case rests:
		return words + "; everything else rests"
	}
	return words
}

// count is a number and its noun, in the plural where it wants one.
func count(n int, noun string) string {
	if n == 1 {
		return "1 " + noun
	}
	if strings.HasSuffix(noun, "x") {
		noun += "e"
	}
	return grouped(n) + " " + noun + "s"
}

// grouped is a number with its thousands marked: 200,000.
func grouped(n int) string {
	digits := strconv.Itoa(n)
	for i := len(digits) - 3; i > 0 && digits[i-1] != '-'; i -= 3 {
		digits = digits[:i] + "," + digits[i:]
	}
	return digits
}

func number(n int, one, many string) string {
	if n == 1 {
		return one
	}
	return many
}

func stagesOf[T any](all []T, stage func(T) result.Stage) []result.Stage {
	var out []result.Stage
	for _, s := range result.Stages {
		if slices.ContainsFunc(all, func(t T) bool { return stage(t) == s }) {
			out = append(out, s)
		}
	}
	return out
}
