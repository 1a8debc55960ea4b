package main

import (
	"fmt"
	"strconv"
	"strings"

	"github.com/spf13/cobra"

	"example.com/hingeline/airframes"
	"example.com/hingeline/airframes/diag"
	"example.com/hingeline/verify"
	"example.com/hingeline/verify/laws"
	"example.com/hingeline/verify/prove"
	"example.com/hingeline/verify/report/jsonout"
	"example.com/hingeline/verify/report/terminal"
	"example.com/hingeline/verify/result"
)

// proveFlags are the flags of prove.
type proveFlags struct {
	only                []string
	brief, replay, json bool
	boxes, smt          string
}

func (s *session) proveCommand() *cobra.Command {
	var flags proveFlags
	c := &cobra.Command{
		Use:   "prove AIRFRAME",
		Short: "always and never: what holds at every position of the controls",
		Long: `Prove decides the laws that hold for every model, at every position of the
switches and at every place of every stick, lever and trim, and not only at those
that somebody thought of trying. It needs no script. Each claim is

  proved      with how much there is to spare where it is least, and where that is
  disproved   with a position to set and see it at, as near to rest as it found
  undecided   the search reached its limit; that is not a yes

A proof is about the set-up as written. A built-in model goes by its name: prove
bracken-20; "-" is standard input. The laws:

` + lawList() + `
With --smt each claim is written as a file that an independent solver (z3, cvc5)
can confirm: it answers unsat for a claim that holds, and sat for one that does not.

Ctrl-C ends the search and reports what was decided until then; a second one ends
the program.

Exit status: 0 every claim proved, 1 a claim disproved (do not fly) or undecided,
3 a file cannot be used, 4 nothing was proved.`,
		Example: `  hingeline prove bracken-20
  hingeline prove my-model.yaml --brief --replay
  hingeline prove my-model.yaml --only control-sense --boxes 2000000`,
		ValidArgsFunction: func(*cobra.Command, []string, string) ([]string, cobra.ShellCompDirective) {
			return airframes.Shipped(), cobra.ShellCompDirectiveDefault
		},
		RunE: func(c *cobra.Command, args []string) error { return s.prove(c, args, flags) },
	}
	f := c.Flags()
	f.StringArrayVar(&flags.only, "only", nil, "only this `LAW`: its code, or words of its title; may be given again")
	f.BoolVar(&flags.brief, "brief", false, "only what is not proved, warnings in a line each, and the verdict")
	f.BoolVar(&flags.replay, "replay", false, "with every counterexample, every step from the pilot's hand to the part")
	f.StringVar(&flags.boxes, "boxes", strconv.Itoa(prove.UsualBoxes), "search at most this `NUMBER` of boxes of the controls' travel for a claim")
	f.StringVar(&flags.smt, "smt", "", "write every claim as SMT-LIB 2 into `DIR`")
	f.BoolVar(&flags.json, "json", false, "write it as JSON (hingeline schema --proofs)")
	c.RegisterFlagCompletionFunc("only", func(*cobra.Command, []string, string) ([]string, cobra.ShellCompDirective) {
		return lawCodes(), cobra.ShellCompDirectiveNoFileComp
	})
	return c
}

func (s *session) prove(c *cobra.Command, args []string, flags proveFlags) error {
	switch {
	case len(args) == 0:
		return withoutAirframe(c)
	case len(args) > 1:
		return &usageError{
			message: fmt.Sprintf("prove takes one airframe file, got %q as well", args[1]),
			hint:    "it needs no script; sentences about every position can stand in one, for check",
			usage:   usageOf(c),
		}
	case flags.brief && flags.json:
		return &usageError{
			message: "--brief and --json do not go together: the JSON report is always whole",
			usage:   usageOf(c),
		}
	case flags.smt == "" && c.Flags().Changed("smt"):
		return &usageError{message: "--smt wants the name of a directory", usage: usageOf(c)}
	}
	boxes, err := boxesOf(c, flags.boxes)
	if err != nil {
		return err
	}
	s.asJSON = flags.json
	in := s.gatherModel(args[0])
	in.problems = append(in.problems, laws.CheckOnly(flags.only)...)
	if in.model == nil || diag.HasErrors(in.problems) {
		return &inputError{in.problems, in.sources}
	}
	if flags.smt != "" {
		if written, err := s.writeClaims(in.model, flags.only, flags.smt); !written {
			return err
		}
	}
	proofs := s.decide(in.model, laws.Options{Only: flags.only, Boxes: boxes, Replay: flags.replay})
	proofs.Findings = append(verify.Findings(in.problems, in.sources...), proofs.Findings...)
	s.status = statusOfProofs(proofs.Verdict)
	if flags.json {
		return written(jsonout.RenderProofs(s.results(), proofs))
	}
	layout := s.layout(flags.brief)
	layout.Airframe = args[0]
	return written(terminal.RenderProofs(s.results(), proofs, layout))
}

// boxesOf reads --boxes.
func boxesOf(c *cobra.Command, text string) (int, error) {
	n, err := strconv.Atoi(strings.ReplaceAll(text, ",", ""))
	if err != nil || n < 1 {
		return 0, &usageError{
			message: fmt.Sprintf("--boxes is %q, wanted a whole number from 1, such as %d", text, 10*prove.UsualBoxes),
			usage:   usageOf(c),
		}
	}
	return n, nil
}

// decide runs the proofs, with a line that tells how far they are on a terminal,
// until they are done or somebody interrupts.
func (s *session) decide(m *airframes.Model, o laws.Options) *result.Proofs {
	ctx, stop := untilInterrupted()
	defer stop()
	line := s.progress()
	if line != nil {
		o.Progress = line.show
	}
	proofs := s.proving(ctx, m, o)
	line.erase()
	if ctx.Err() != nil && proofs.Stopped == "" && proofs.Counts().Undecided > 0 {
		proofs.Stopped = "stopped by hand"
	}
	return proofs
}

func statusOfProofs(v result.ProofVerdict) int {
	switch v {
	case result.AllProved:
		return statusYes
	case result.SomeDisproved, result.SomeUndecided:
		return statusNo
	}
	return statusNothingChecked
}

// lawList is every law with its title, a line each.
func lawList() string {
	width := 0
	for _, code := range lawCodes() {
		width = max(width, len(code))
	}
	var b strings.Builder
	for _, l := range laws.Codes() {
		fmt.Fprintf(&b, "  %s  %s\n", l.Code+strings.Repeat(" ", width-len(l.Code)), l.Title)
	}
	return b.String()
}
