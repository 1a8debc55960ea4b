package main

import (
	"fmt"

	"github.com/spf13/cobra"

	"example.com/hingeline/airframes"
	"example.com/hingeline/airframes/diag"
	"example.com/hingeline/verify"
	"example.com/hingeline/verify/faults"
	"example.com/hingeline/verify/faults/cause"
	"example.com/hingeline/verify/faults/mistake"
	"example.com/hingeline/verify/faults/walk"
	"example.com/hingeline/verify/report/jsonout"
	"example.com/hingeline/verify/report/terminal"
	"example.com/hingeline/verify/result"
	"example.com/hingeline/verify/script"
)

// faultsFlags are the flags of faults.
type faultsFlags struct {
	only, others                  []string
	write, yes, pairs, kinds      bool
	walk, ask, ruler, brief, json bool
	least, mutations              string
	visible, script, seen         string
}

func (s *session) faultsCommand() *cobra.Command {
	var flags faultsFlags
	c := &cobra.Command{
		Use:   "faults AIRFRAME [SCRIPT...]",
		Short: "which single mistake would the script miss? the shortest walk-around; the cause of what was seen",
		Long: `Faults makes one mistake after another in the set-up (a channel reversed, two plugs
swapped, a share with the wrong sign ...) and holds the script against each. What no
check catches is shown worst first, with what the aeroplane would do and a sentence
to add to the script. Each mistake is

  caught      a check fails
  missed      every check passes, and the model does something else
  undecided   whether the model does anything else was not decided; that is not caught
  invisible   proved: it changes nothing that counts at any position of the controls

With --walk it finds the shortest walk-around instead: the fewest steps at which
somebody who watches which way everything goes (with --ruler: and how far) notices
every mistake that can be noticed at all.

With --seen FILE it takes what was really seen on the model, written as a script (the
one that --walk --script writes, edited), and names the mistakes that explain it, the
step that tells them apart, and what would put it right. --ask asks step by step. It
changes nothing by itself.

Exit status: 0 nothing is missed, or all is as it should, 1 something is missed or
wrong, or the search was stopped, 3 a file cannot be used, 4 nothing was tried.`,
		Example: `  hingeline faults my-model.yaml
  hingeline faults my-model.yaml --min 100 --brief
  hingeline faults my-model.yaml --walk --script walk.feature
  hingeline faults my-model.yaml --seen walk.feature`,
		ValidArgsFunction: completing(1),
		RunE:              func(c *cobra.Command, args []string) error { return s.faults(c, args, flags) },
	}
	f := c.Flags()
	f.StringArrayVar(&flags.only, "only", nil, "only mistakes of this `KIND` (see --kinds); may be given again")
	f.BoolVar(&flags.kinds, "kinds", false, "list the kinds of mistakes, and what each means")
	f.StringArrayVar(&flags.others, "other", nil, "the airframe `FILE` of another model that may be loaded by mistake; may be given again")
	f.BoolVar(&flags.pairs, "pairs", false, "two mistakes that may hide each other as well")
	f.StringVar(&flags.least, "min", "", "exit with 0 if at least this `PERCENT` is caught, else with 1")
	f.BoolVar(&flags.write, "write", false, "append the missing sentences to the script, after asking")
	f.BoolVar(&flags.yes, "yes", false, "with --write: do not ask")
	f.StringVar(&flags.mutations, "mutations", "", "write a mutation-testing report (the open schema, version 2) to `FILE`")
	f.BoolVar(&flags.walk, "walk", false, "the shortest walk-around")
	f.StringVar(&flags.script, "script", "", "with --walk: write it as a script to `FILE`, which must not be there yet")
	f.BoolVar(&flags.ruler, "ruler", false, "with --walk, --seen, --ask: how far everything goes is measured too")
	f.StringVar(&flags.visible, "visible", "", "with --walk, --seen, --ask: a movement of this many `DEGREES` is seen (2)")
	f.StringVar(&flags.seen, "seen", "", "what was seen on the model, a script in `FILE`: find the cause")
	f.BoolVar(&flags.ask, "ask", false, "ask what is seen, step by step, and find the cause")
	f.BoolVar(&flags.brief, "brief", false, "only what is missed and the verdict")
	f.BoolVar(&flags.json, "json", false, "write it as JSON (hingeline schema --faults, --walk, --causes)")
	c.RegisterFlagCompletionFunc("only", func(*cobra.Command, []string, string) ([]string, cobra.ShellCompDirective) {
		return kindCodes(), cobra.ShellCompDirectiveNoFileComp
	})
	return c
}

func (s *session) faults(c *cobra.Command, args []string, flags faultsFlags) error {
	if flags.kinds {
		return s.listKinds(c, args)
	}
	least, look, err := flags.check(c, args)
	if err != nil {
		return err
	}
	s.asJSON = flags.json
	in := s.gatherFaults(args, &flags)
	others := s.gatherOthers(in, flags.others)
	if in.model == nil || diag.HasErrors(in.problems) {
		return &inputError{in.problems, in.sources}
	}
	options := mistake.Options{Others: others, Only: flags.only, Pairs: flags.pairs}
	switch {
	case flags.walk:
		return s.walkAround(in, &flags, walk.Options{Look: look, Others: others}, args[0])
	case flags.seen != "":
		return s.explainSeen(in, &flags, cause.Options{Options: options, Look: look}, args[0])
	case flags.ask:
		return s.askSeen(in, &flags, cause.Options{Options: options, Look: look}, args[0])
	}
	return s.judgeScript(in, &flags, options, least, args[0])
}

// gatherFaults reads the model and, unless it is about the walk-around alone, its scripts.
// To find a cause a script helps but need not be there.
func (s *session) gatherFaults(args []string, flags *faultsFlags) *inputs {
	if flags.walk {
		return s.gatherModel(args[0])
	}
	in := s.gather(args[0], args[1:])
	if (flags.seen != "" || flags.ask) && len(args) == 1 {
		for i := range in.problems {
			if in.problems[i].Code == "no-script" {
				in.problems = append(in.problems[:i], in.problems[i+1:]...)
				break
			}
		}
	}
	return in
}

func (s *session) gatherOthers(in *inputs, names []string) (others []*airframes.Model) {
	for _, name := range names {
		other := s.gatherModel(name)
		for _, p := range other.problems {
			if p.Severity == diag.Error {
				in.problems = append(in.problems, p)
			}
		}
		in.sources = append(in.sources, other.sources...)
		if other.model != nil {
			others = append(others, other.model)
		}
	}
	return others
}

// judgeScript holds the script against every mistake.
func (s *session) judgeScript(in *inputs, flags *faultsFlags, o mistake.Options, least int, named string) error {
	ctx, stop := untilInterrupted()
	defer stop()
	line := s.progress()
	options := faults.Options{Options: o}
	if line != nil {
		options.Progress = func(done, all int) { line.tell(fmt.Sprintf("mistake %d of %d", done+1, all)) }
	}
	report, problems := verify.Faults(ctx, in.model, in.scripts, options)
	line.erase()
	if report == nil {
		return &inputError{append(in.problems, problems...), in.sources}
	}
	report.Min = least
	report.Findings = append(verify.Findings(in.problems, in.sources...), report.Findings...)
	s.status = statusOfFaults(report)
	if flags.mutations != "" {
		if written, err := s.writeMutations(in, report, flags.mutations); !written {
			return err
		}
	}
	if flags.json {
		return written(jsonout.RenderFaults(s.results(), report))
	}
	layout := s.layout(flags.brief)
	layout.Airframe = named
	if err := terminal.RenderFaults(s.results(), report, layout); err != nil {
		return written(err)
	}
	if flags.write {
		return s.appendSentences(in, report, o, flags.yes)
	}
	return nil
}

// statusOfFaults is the exit status of a score: what --min asks for, else all.
func statusOfFaults(r *result.Faults) int {
	switch {
	case r.Verdict == result.NoMistakes:
		return statusNothingChecked
	case r.Verdict == result.AlreadyWrong, r.Stopped != "":
		return statusNo
	case r.Min > 0 && r.Score().Percent() >= r.Min, r.Verdict == result.NoneMissed:
		return statusYes
	}
	return statusNo
}

// walkAround finds the shortest walk-around.
func (s *session) walkAround(in *inputs, flags *faultsFlags, o walk.Options, named string) error {
	ctx, stop := untilInterrupted()
	defer stop()
	line := s.progress()
	if line != nil {
		o.Progress = line.tell
	}
	report, text := verify.Walk(ctx, in.model, o)
	line.erase()
	report.Findings = append(verify.Findings(in.problems, in.sources...), report.Findings...)
	s.status = statusOfWalk(report)
	if flags.script != "" {
		if err := writeNew([]newFile{{flags.script, text}}); err != nil {
			return s.notWritten(err)
		}
	}
	if flags.json {
		return written(jsonout.RenderWalk(s.results(), report))
	}
	layout := s.layout(flags.brief)
	layout.Airframe = named
	return written(terminal.RenderWalk(s.results(), report, layout))
}

// statusOfWalk is a yes where a walk-around was found and the search was not cut short.
func statusOfWalk(r *result.Walk) int {
	switch {
	case len(r.Steps) == 0:
		return statusNothingChecked
	case r.Stopped != "":
		return statusNo
	}
	return statusYes
}

// explainSeen finds the cause of what a file says was seen.
func (s *session) explainSeen(in *inputs, flags *faultsFlags, o cause.Options, named string) error {
	text, problem := s.readFile(flags.seen, scriptKind)
	if problem != nil {
		return &inputError{append(in.problems, *problem), in.sources}
	}
	name := flags.seen
	if name == "-" {
		name = stdinName
	}
	seen := script.File{Name: name, Text: text}
	ctx, stop := untilInterrupted()
	defer stop()
	report, problems := verify.Causes(ctx, in.model, in.scripts, seen, o)
	if report == nil {
		return &inputError{append(in.problems, problems...), append(in.sources, diag.NewSource(name, text))}
	}
	report.Findings = append(verify.Findings(in.problems, in.sources...), report.Findings...)
	return s.renderCauses(report, flags, named)
}

func (s *session) renderCauses(report *result.Causes, flags *faultsFlags, named string) error {
	s.status = statusNo
	if report.Verdict == result.AsItShould {
		s.status = statusYes
	}
	if flags.json {
		return written(jsonout.RenderCauses(s.results(), report))
	}
	layout := s.layout(flags.brief)
	layout.Airframe = named
	return written(terminal.RenderCauses(s.results(), report, layout))
}
