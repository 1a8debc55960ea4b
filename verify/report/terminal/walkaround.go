package terminal

import (
	"fmt"
	"slices"
	"strings"

	"example.com/hingeline/verify/result"
	"example.com/hingeline/verify/result/said"
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
		c, pose := &r.Checks[i], p.checks.Pose(i)
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
		got := p.checks.Got(i)
		if c.Passed {
			got += said.Assuming(c.Proof)
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
	heading := fmt.Sprintf("%s: %s", strings.ToUpper(string(stage)), said.Count(all, "check"))
	if failed > 0 {
		heading += fmt.Sprintf(", %d FAILED", failed)
	}
	return heading
}

// gap stands between a sentence and what was got where both fit on one line.
const gap = " · "

// checkBytes is about as long as a check gets, so that the text seldom moves.
const checkBytes = 256

// survey looks at all checks once.
func (p *page) survey(r *result.Report) {
	p.out.Grow(checkBytes * len(r.Checks))
	p.checks = said.ChecksOf(r)
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

func stagesOf[T any](all []T, stage func(T) result.Stage) []result.Stage {
	var out []result.Stage
	for _, s := range result.Stages {
		if slices.ContainsFunc(all, func(t T) bool { return stage(t) == s }) {
			out = append(out, s)
		}
	}
	return out
}
