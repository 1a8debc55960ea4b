package junit

import (
	"fmt"
	"strings"
	"time"
	"unicode"

	"example.com/hingeline/verify/result"
	"example.com/hingeline/verify/result/said"
)

// builder makes the suites of one report.
type builder struct {
	r     *result.Report
	all   *said.Checks
	named map[[2]string]int // how often a class and name were given
}

func (b *builder) suite(name string) suiteXML {
	return suiteXML{Name: name, Time: noTime, Timestamp: timestamp(b.r.Date)}
}

// timestamp is the date of the check as XML has it; empty where nobody said one.
func timestamp(date string) string {
	for _, layout := range []string{time.RFC3339, time.DateOnly} {
		if at, err := time.Parse(layout, date); err == nil {
			return at.UTC().Format(time.RFC3339)
		}
	}
	return ""
}

// newCase makes a case whose name no other of its class has: readers take two of the same
// name for two runs of one test.
func (b *builder) newCase(class, name string, place result.Place) caseXML {
	b.named[[2]string{class, name}]++
	if n := b.named[[2]string{class, name}]; n > 1 {
		name = fmt.Sprintf("%s (%d)", name, n)
	}
	return caseXML{Class: class, Name: name, File: place.File, Line: place.Line, Time: noTime}
}

// stage is the suite of the checks of one stage.
func (b *builder) stage(stage result.Stage) suiteXML {
	s := b.suite(string(stage))
	for i := range b.r.Checks {
		c := &b.r.Checks[i]
		if c.Stage != stage {
			continue
		}
		one := b.newCase(className(c.Feature, c.Scenario), b.all.Sentence(i), c.Place)
		if !c.Passed {
			one.Failure = &wrongXML{Message: b.all.Headline(i), Type: "check", Text: text(b.all.Failure(i))}
		}
		s.add(one)
	}
	return s
}

// className is where a check stands: feature and scenario, which readers show as levels.
func className(feature, scenario string) string { return feature + "." + scenario }

// whole is the suite of what belongs to no single check and is no pass.
func (b *builder) whole() suiteXML {
	s := b.suite("the check as a whole")
	class := className(b.r.Model.Name, s.Name)
	for i := range b.r.Script {
		f := &b.r.Script[i]
		if !f.Fails {
			continue
		}
		one := b.newCase(class, "the script: "+f.Message, f.Place)
		one.Failure = &wrongXML{Message: f.Message, Type: f.Code, Text: text(said.ScriptReasons(f))}
		s.add(one)
	}
	if b.r.NotSelected > 0 {
		one := b.newCase(class, "every check ran", result.Place{})
		one.Skipped = &skippedXML{Message: said.LeftOut(b.r)}
		s.add(one)
	}
	verdict := said.VerdictOf(b.r).String()
	switch {
	case b.r.Verdict == result.NothingChecked || len(b.r.Checks) == 0:
		one := b.newCase(class, "something was checked", result.Place{File: b.r.Model.File})
		one.Error = &wrongXML{Message: verdict, Type: string(result.NothingChecked), Text: text([]string{verdict})}
		s.add(one)
	case b.r.Verdict == result.Failed && !b.failing():
		one := b.newCase(class, "the verdict", result.Place{File: b.r.Model.File})
		one.Failure = &wrongXML{Message: verdict, Type: string(result.Failed), Text: text([]string{verdict})}
		s.add(one)
	}
	return s
}

// failing says whether some check or finding shows why the verdict is "failed".
func (b *builder) failing() bool {
	_, failed := b.r.Counts()
	wrong, _, _ := b.r.ScriptCounts()
	return failed+wrong > 0
}

// remarks are what fails nothing and wants to be read all the same.
func remarks(r *result.Report) string {
	lines := []string{said.VerdictOf(r).String()}
	for _, f := range r.Findings {
		lines = append(lines, "", "WARNING: "+f.Message+" ["+f.Code+"]")
		if f.Place.File != "" {
			lines = append(lines, "  "+said.At(f.Place))
		}
		if f.Hint != "" {
			lines = append(lines, "  "+f.Hint)
		}
	}
	for _, f := range said.ScriptFindings(r) {
		if f.Fails {
			continue
		}
		lines = append(lines, "", "ABOUT THE SCRIPT: "+said.ScriptFinding(f))
		if f.Place.File != "" {
			lines = append(lines, "  "+said.At(f.Place))
		}
		for _, l := range said.ScriptReasons(f) {
			lines = append(lines, "  "+l)
		}
	}
	if u := said.Uncovered(r); len(u) > 0 {
		lines = append(append(lines, ""), u...)
	}
	if len(r.Cautions) > 0 {
		lines = append(lines, "", "LEFT TO DO, with the model in front of you")
		for _, c := range r.Cautions {
			lines = append(lines, "- "+c)
		}
	}
	return text(lines)
}

// text is lines for a section of character data, which unlike all other texts nobody
// clears of characters that XML cannot hold. A carriage return ends a line as well: a
// reader of XML makes it one.
func text(lines []string) string {
	all := strings.NewReplacer("\r\n", "\n", "\r", "\n").Replace("\n" + strings.Join(lines, "\n") + "\n")
	return strings.Map(func(r rune) rune {
		if r < ' ' && r != '\t' && r != '\n' || r == '\uFFFE' || r == '\uFFFF' {
			return unicode.ReplacementChar
		}
		return r
	}, all)
}
