package main

import (
	"fmt"
	"os"
	"slices"
	"strings"

	"github.com/spf13/cobra"

	"example.com/hingeline/airframes/diag"
	"example.com/hingeline/verify"
	"example.com/hingeline/verify/compare"
	"example.com/hingeline/verify/report/jsonout"
	"example.com/hingeline/verify/report/terminal"
	"example.com/hingeline/verify/result"
)

// compareFlags are the flags of compare.
type compareFlags struct {
	brief, json bool
	boxes       string
}

func (s *session) compareCommand() *cobra.Command {
	var flags compareFlags
	c := &cobra.Command{
		Use:   "compare OLD NEW [SCRIPT...]",
		Short: "what changed in the set-up, and what that changes at the surfaces",
		Long: `Compare says what differs between two set-ups, in sentences: comments, order and
spelling do not count. For every part it finds the largest change between the two at
the same position of the controls, and where that is, over every position and not by
trying some; with the signal, and with the signal lost. Then it holds the scripts
against both set-ups and says which checks come out otherwise.

OLD and NEW are each

  my-model.yaml            a file; "-" is standard input
  bracken-20               a built-in model
  HEAD~3:my-model.yaml     a file as git had it at a revision
  HEAD~3                   the other file, as git had it at that revision

Each set-up has the scripts that its airframe file names, at the same revision, or
the one beside it, as for check; scripts that are named here are held against both.

Ctrl-C ends the search and reports what was found until then.

Exit status: 0 no check got worse, 1 a check that passed with OLD fails with NEW: do
not fly, 3 a file or revision cannot be read, 4 they differ and no check was held
against both.`,
		Example: `  hingeline compare HEAD~1 my-model.yaml
  hingeline compare spring.yaml autumn.yaml my-model.feature
  hingeline compare v1:my-model.yaml v2:my-model.yaml --json`,
		ValidArgsFunction: completing(2),
		RunE:              func(c *cobra.Command, args []string) error { return s.compare(c, args, flags) },
	}
	f := c.Flags()
	f.BoolVar(&flags.brief, "brief", false, "differences, changes and checks in a line each, and the verdict")
	f.StringVar(&flags.boxes, "boxes", fmt.Sprint(compare.UsualBoxes), "search at most this `NUMBER` of boxes of the controls' travel for a proof")
	f.BoolVar(&flags.json, "json", false, "write it as JSON (hingeline schema --compare)")
	return c
}

func (s *session) compare(c *cobra.Command, args []string, flags compareFlags) error {
	switch {
	case len(args) < 2:
		return &usageError{
			message: "compare takes two set-ups, an older one and a newer one",
			hint:    "a revision of git and a file compare the file with itself as it was: hingeline compare HEAD~1 my-model.yaml",
			usage:   usageOf(c),
		}
	case countOf(args, "-") > 1:
		return &usageError{message: `"-" is standard input, which can be read only once`, usage: usageOf(c)}
	case flags.brief && flags.json:
		return &usageError{message: "--brief and --json do not go together: the JSON report is always whole", usage: usageOf(c)}
	}
	boxes, err := boxesOf(c, flags.boxes)
	if err != nil {
		return err
	}
	s.asJSON = flags.json
	old, new := s.gatherCompared(args[0], args[1], args[2:]), s.gatherCompared(args[1], args[0], args[2:])
	if len(args) > 2 {
		new.scripts = nil
		for _, name := range args[2:] {
			new.addScript(s, name)
		}
		old.scripts = new.scripts
	}
	problems := append(slices.Clone(old.problems), new.problems...)
	sources := append(slices.Clone(old.sources), new.sources...)
	if old.model == nil || new.model == nil || diag.HasErrors(problems) {
		return &inputError{distinctProblems(problems), sources}
	}
	comparison, found := s.comparing(old, new, compare.Options{Boxes: boxes})
	if comparison == nil {
		return &inputError{distinctProblems(append(problems, found...)), sources}
	}
	comparison.Findings = append(verify.Findings(problems, sources...), comparison.Findings...)
	s.status = statusOfComparison(comparison.Verdict)
	if flags.json {
		return written(jsonout.RenderComparison(s.results(), comparison))
	}
	return written(terminal.RenderComparison(s.results(), comparison, s.layout(flags.brief)))
}

func countOf(args []string, word string) (n int) {
	for _, a := range args {
		if a == word {
			n++
		}
	}
	return n
}

// distinctProblems leaves out what is said of both set-ups, because they share a file.
func distinctProblems(problems []diag.Problem) (list []diag.Problem) {
	for _, p := range problems {
		if !slices.Contains(list, p) {
			list = append(list, p)
		}
	}
	return list
}

// comparing compares, with a line that tells how far it is on a terminal.
func (s *session) comparing(old, new *inputs, o compare.Options) (*result.Comparison, []diag.Problem) {
	ctx, stop := untilInterrupted()
	defer stop()
	line := s.progress()
	if line != nil {
		o.Progress = func(part string) { line.tell("comparing: " + part) }
	}
	c, problems := verify.Compare(ctx, compare.Side{Model: old.model, Scripts: old.scripts}, compare.Side{Model: new.model, Scripts: new.scripts}, o)
	line.erase()
	if c != nil && ctx.Err() != nil {
		c.Stopped = "stopped by hand"
	}
	return c, problems
}

func statusOfComparison(v result.ComparisonVerdict) int {
	switch v {
	case result.SomeWorse:
		return statusNo
	case result.NoneCompared:
		return statusNothingChecked
	}
	return statusYes
}

// gatherCompared reads one of the two set-ups, with its scripts unless some are named. The
// other one is the file that a revision without one is of.
func (s *session) gatherCompared(name, other string, scripts []string) *inputs {
	rev, path, isRevision := revisionOf(name, other)
	switch {
	case isRevision:
		return s.gatherRevision(rev, path, len(scripts) == 0)
	case len(scripts) > 0:
		return s.gatherModel(name)
	}
	in := s.gather(name, nil)
	in.problems = slices.DeleteFunc(in.problems, func(p diag.Problem) bool { return p.Code == "no-script" })
	return in
}

// revisionOf takes a name for a revision and a file in it, where it is no file, no model
// that is built in and not meant as a file.
func revisionOf(name, other string) (rev, path string, is bool) {
	if isFileOrModel(name) {
		return "", "", false
	}
	if rev, path, ok := strings.Cut(name, ":"); ok && rev != "" && path != "" {
		return rev, path, true
	}
	if slices.ContainsFunc(airframeKind.suffixes(), func(suffix string) bool { return strings.HasSuffix(name, suffix) }) {
		return "", "", false
	}
	if _, path, ok := strings.Cut(other, ":"); ok && path != "" && !isFileOrModel(other) {
		return name, path, true
	}
	if info, err := os.Stat(other); err == nil && !info.IsDir() {
		return name, other, true
	}
	return "", "", false
}

func isFileOrModel(name string) bool {
	if name == "-" {
		return true
	}
	if _, err := os.Stat(name); err == nil {
		return true
	}
	_, shipped := shippedModel(name)
	return shipped
}
