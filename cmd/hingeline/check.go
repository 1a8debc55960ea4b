package main

import (
	"fmt"
	"slices"

	"github.com/spf13/cobra"

	"example.com/hingeline/airframes/diag"
	"example.com/hingeline/verify"
	"example.com/hingeline/verify/report/terminal"
	"example.com/hingeline/verify/result"
	"example.com/hingeline/verify/script"
	"example.com/hingeline/verify/signoff"
)

// checkFlags are the flags of check.
type checkFlags struct {
	only         []string
	brief, watch bool
	strictScript bool
	outputs      *outputs
}

func (s *session) checkCommand() *cobra.Command {
	flags := checkFlags{outputs: newOutputs()}
	c := &cobra.Command{
		Use:   "check [AIRFRAME [SCRIPT...]]",
		Short: "the pass/fail control check: does the set-up do what the script asks?",
		Long: `Check runs the script and says, in walk-around order, whether the set-up does
what it asks. Without a file it tries the built-in model Bracken 20; a built-in
model goes by its name: check bracken-20.

The script is the one named, or the one that the airframe file names under
"script:", or the file of the same name that ends in .feature, beside the
airframe file or in ../features. A "-" is standard input.

The script is looked at too: a sentence that fights the aeroplane fails the check,
unless it ends in "on purpose".

The report goes to the screen, and in any number of other forms to files: to print
and sign (--pdf, --card), to read in a browser (--html), for other programs (--json,
--junit, --tap, --messages, --sarif). A "-" is standard output, in place of the
report for people. A file that is there is replaced if it is an older report of the
same form, and left alone otherwise.

Exit status: 0 every check passed, 1 a check failed, the script is wrong, or a model
that was signed was seen otherwise at the bench: do not fly, 3 a file cannot be used,
4 nothing was checked.`,
		Example: `  hingeline check
  hingeline check my-model.yaml --pdf my-model.pdf --html my-model.html
  hingeline check my-model.yaml
  hingeline check my-model.yaml --only @wing --watch`,
		ValidArgsFunction: completing(1),
		RunE:              func(c *cobra.Command, args []string) error { return s.check(c, args, flags) },
	}
	f := c.Flags()
	f.StringArrayVar(&flags.only, "only", nil, "only checks with this `WORDS`: a tag (@wing), a stage (port wing), or words of a scenario; may be given again")
	f.BoolVar(&flags.brief, "brief", false, "only failures, warnings in a line each, and the verdict")
	f.BoolVar(&flags.watch, "watch", false, "check again whenever a file changes, in brief; q quits")
	f.BoolVar(&flags.strictScript, "strict-script", false, "warnings about the script itself fail the check too")
	flags.outputs.flags(f)
	return c
}

func (s *session) check(c *cobra.Command, args []string, flags checkFlags) error {
	args, wrong := flags.outputs.jsonFile(args)
	if wrong != nil {
		wrong.usage = usageOf(c)
		return wrong
	}
	toScreen := flags.outputs.onScreen()
	dashes := 0
	for _, a := range args {
		if a == "-" {
			dashes++
		}
	}
	switch {
	case dashes > 1:
		return &usageError{
			message: `"-" is given twice, but there is only one standard input`,
			usage:   usageOf(c),
		}
	case dashes > 0 && flags.watch:
		return &usageError{
			message: `--watch looks at files for changes, so it cannot go with "-"`,
			usage:   usageOf(c),
		}
	case flags.watch && slices.ContainsFunc(flags.outputs.wanted(), func(out *output) bool { return out.name != toStdout }):
		return &usageError{
			message: "--watch looks at one file after another change, so it writes no files",
			hint:    "check once more without it when all is as it should be",
			usage:   usageOf(c),
		}
	case flags.brief && toScreen != nil:
		return &usageError{
			message: fmt.Sprintf("--brief and --%s do not go together: the report for programs is always whole", toScreen.flag),
			usage:   usageOf(c),
		}
	}
	if wrong := flags.outputs.prepare(s, c.Flags()); wrong != nil {
		wrong.usage = usageOf(c)
		return wrong
	}
	airframe := defaultModel
	var scripts []string
	if len(args) > 0 {
		airframe, scripts = args[0], args[1:]
	} else {
		fmt.Fprintln(s.stderr, "no airframe file is named, so this is the built-in model Bracken 20;\n"+
			"\"hingeline schema --example\" writes an airframe file to start your own from")
	}
	s.asJSON = toScreen != nil && toScreen.flag == "json"
	flags.brief = flags.brief || flags.watch
	render := s.checkRenderer(airframe, flags)
	if flags.watch {
		return s.watch(func() ([]diskFile, error) { return s.checkOnce(airframe, scripts, flags, render) })
	}
	_, err := s.checkOnce(airframe, scripts, flags, render)
	return err
}

// checkRenderer is how a report is written; how it looks is decided once.
func (s *session) checkRenderer(airframe string, flags checkFlags) func(*result.Report) error {
	if out := flags.outputs.onScreen(); out != nil {
		return func(r *result.Report) error { return out.render(s.results(), r) }
	}
	layout := s.layout(flags.brief)
	layout.Airframe = airframe
	return func(r *result.Report) error { return terminal.Render(s.results(), r, layout) }
}

// checkOnce reads, checks and reports, and sets the exit status. It returns
// the files on disk that the answer rests on.
func (s *session) checkOnce(airframe string, scripts []string, flags checkFlags, render func(*result.Report) error) ([]diskFile, error) {
	s.verdict = ""
	in := s.gather(airframe, scripts)
	report, problems := s.judge(in, flags)
	if report == nil {
		flags.outputs.sayStale(s.stderr)
		return in.disk, &inputError{append(in.problems, problems...), in.sources}
	}
	if flags.strictScript {
		verify.Strict(report)
	}
	if !flags.brief || len(flags.outputs.wanted()) > 0 {
		s.offer(in, report)
	}
	report.Standing = standing(in, report.Date)
	s.status, s.verdict = statusOf(report.Verdict), report.Verdict
	if report.Standing != nil && report.Standing.Since != "" && s.status == statusYes {
		s.status, s.verdict = statusNo, result.Failed
	}
	err := written(render(report))
	if err == nil {
		err = flags.outputs.write(report)
		flags.outputs.sayMissing(s.stderr)
	}
	return in.disk, err
}

// judge checks what was read, with what the outputs that were asked for need.
func (s *session) judge(in *inputs, flags checkFlags) (*result.Report, []diag.Problem) {
	if in.model == nil || diag.HasErrors(in.problems) {
		return nil, nil
	}
	out, sel := flags.outputs, script.Selection{Only: flags.only}
	var report *result.Report
	var problems []diag.Problem
	if out.needPaper() {
		ctx, stop := untilInterrupted()
		defer stop()
		report, problems = verify.CheckOnPaper(ctx, in.model, in.scripts, sel)
	} else {
		report, problems = verify.Check(in.model, in.scripts, sel)
	}
	if report == nil {
		return nil, problems
	}
	report.Findings = append(verify.Findings(in.problems, in.sources...), report.Findings...)
	report.Date = out.date
	if out.needMessages() {
		report.Sources = script.Messages(in.model, in.scripts)
	}
	return report, nil
}

func statusOf(v result.Verdict) int {
	switch v {
	case result.Passed, result.PassedInPart:
		return statusYes
	case result.Failed:
		return statusNo
	}
	return statusNothingChecked
}

// standing is what has been signed about the model, and whether that still stands; nil
// for none. Only a file has records beside it.
func standing(in *inputs, date string) *result.Standing {
	at, err := momentOf(date)
	if err != nil || in.shipped || in.model.Source.Name == stdinName {
		return nil
	}
	found, err := signoff.Standing(in.disk[0].name, signoff.Now{Model: in.model, Scripts: in.scripts, Tool: verify.Version, Time: at})
	switch {
	case err != nil:
		why := fmt.Sprintf("the records cannot be read: %v", err)
		return &result.Standing{Troubles: []string{why}, Summary: why}
	case len(found.Signatures)+len(found.Troubles) == 0:
		return nil
	}
	return found
}

// offer looks for single changes that would make a failed check pass, until somebody
// interrupts.
func (s *session) offer(in *inputs, report *result.Report) {
	ctx, stop := untilInterrupted()
	defer stop()
	verify.Offer(ctx, in.model, in.scripts, report)
}
