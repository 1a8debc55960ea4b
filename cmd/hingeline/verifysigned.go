package main

import (
	"errors"
	"fmt"
	"os"
	"slices"
	"strings"

	"github.com/spf13/cobra"

	"example.com/hingeline/airframes"
	"example.com/hingeline/airframes/diag"
	"example.com/hingeline/verify"
	"example.com/hingeline/verify/report/jsonout"
	"example.com/hingeline/verify/report/terminal"
	"example.com/hingeline/verify/result"
	"example.com/hingeline/verify/script"
	"example.com/hingeline/verify/signoff"
)

// verifyFlags are the flags of verify.
type verifyFlags struct {
	report, allowed, date string
	brief, json           bool
}

func (s *session) verifyCommand() *cobra.Command {
	var flags verifyFlags
	c := &cobra.Command{
		Use:   "verify AIRFRAME [SCRIPT...]",
		Short: "who has signed a model, and does that still stand?",
		Long: `Verify looks at the records that sign wrote beside the airframe file: is each
genuine, who signed, and is what was signed still what is there? A signature stands
while the resolved set-up and script are the same: comments and order do not matter.
Where they are not, it says what has changed, what that bears on, and which
signatures therefore no longer stand. The script is found as check finds it.

Each record's check is run again from the files that it holds: a record whose report
is not what this version writes for them is not genuine.

With --allowed FILE, an allowed-signers file of OpenSSH, every signature of what is
there now must be by a key in it, and the key's principal must be the signer: for
Ada Crane "Ada Crane", ada-crane or ada.crane@club.example. Keys count at the date
of the signature. Lines of certificate authorities are passed over.

A record of the bench in which something was not as expected, and of which no signature
speaks, takes every signature of that set-up down until a later walk shows it put right;
what was measured there, until it is measured again: no eye takes back what a ruler found.

Records taken away from the end, with their signatures, leave no trace that could be
seen here. Compare with a copy kept elsewhere.

Exit status: 0 every record is genuine and somebody has signed what is there now,
1 out of date, not genuine or not as expected on the model, 3 a file cannot be read, 4 nothing is signed.`,
		Example: `  hingeline verify my-model.yaml
  hingeline verify my-model.yaml --report my-model.json --allowed club_signers`,
		ValidArgsFunction: func(_ *cobra.Command, args []string, _ string) ([]string, cobra.ShellCompDirective) {
			if len(args) == 0 {
				return []string{"yaml", "yml"}, cobra.ShellCompDirectiveFilterFileExt
			}
			return []string{"feature"}, cobra.ShellCompDirectiveFilterFileExt
		},
		RunE: func(c *cobra.Command, args []string) error { return s.verifySigned(c, args, flags) },
	}
	f := c.Flags()
	f.StringVar(&flags.report, "report", "", "`FILE` must be a report that was signed")
	f.StringVar(&flags.allowed, "allowed", "", "`FILE` says which key is whose, in the format of OpenSSH")
	f.BoolVar(&flags.brief, "brief", false, "only what does not stand, and the verdict")
	f.BoolVar(&flags.json, "json", false, "write it as JSON (hingeline schema --standing)")
	f.StringVar(&flags.date, "date", "", "the `DATE` to count days from, as 2026-11-25T20:15:00Z; usually now")
	return c
}

func (s *session) verifySigned(c *cobra.Command, args []string, flags verifyFlags) error {
	switch {
	case len(args) == 0:
		return &usageError{message: "the airframe file is missing", usage: usageOf(c)}
	case slices.Contains(args, "-"):
		return &usageError{message: `records lie beside a file, so verify does not read "-"`, usage: usageOf(c)}
	case flags.brief && flags.json:
		return &usageError{message: "--brief and --json do not go together: the JSON report is always whole", usage: usageOf(c)}
	}
	date, err := dateOf(c, flags.date)
	if err != nil {
		return err
	}
	s.asJSON = flags.json
	if _, shipped := shippedModel(args[0]); shipped {
		return s.refuse("a built-in model is nobody's aeroplane, so nobody signs it", "name an airframe file")
	}
	now := signoff.Now{Tool: verify.Version, Time: date, Rewrite: s.rewriting()}
	if now.Allowed, now.Report, err = s.readBeside(flags); err != nil {
		return s.refuse(err.Error(), "")
	}
	in, err := s.gatherSigned(args[0], args[1:])
	if err != nil {
		return err
	}
	now.Model, now.Scripts = in.model, in.scripts
	standing, err := signoff.Standing(args[0], now)
	if err != nil {
		return s.refuse(fmt.Sprintf("the records cannot be read: %v", err), "look at the permissions of "+signoff.Directory(args[0]))
	}
	s.status = statusOfStanding(standing)
	model := result.Model{Name: in.model.Name, File: in.model.Source.Name}
	if flags.json {
		return written(jsonout.RenderStanding(s.results(), verify.Version, model, standing))
	}
	return written(terminal.RenderStanding(s.results(), verify.Version, model, standing, s.layout(flags.brief)))
}

func statusOfStanding(s *result.Standing) int {
	switch {
	case len(s.Signatures) == 0 && len(s.Troubles) == 0:
		return statusNothingChecked
	case s.Stands():
		return statusYes
	}
	return statusNo
}

// readBeside reads the files that flags name.
func (s *session) readBeside(flags verifyFlags) (allowed *signoff.Allowed, report []byte, err error) {
	if flags.allowed != "" {
		text, err := readFileUpTo(flags.allowed, maxFileBytes)
		if err != nil {
			return nil, nil, fmt.Errorf("the allowed-signers file cannot be read: %w", err)
		}
		if allowed, err = signoff.ReadAllowed(flags.allowed, text); err != nil {
			return nil, nil, fmt.Errorf("the allowed-signers file cannot be used: %w", err)
		}
	}
	if flags.report != "" {
		if report, err = s.readReport(flags.report); err != nil {
			return nil, nil, fmt.Errorf("the report cannot be read: %w", err)
		}
	}
	return allowed, report, nil
}

// gatherSigned reads the airframe file and its scripts. Where no script is to be found,
// those are taken that were signed last.
func (s *session) gatherSigned(airframe string, scripts []string) (*inputs, error) {
	in := s.gather(airframe, scripts)
	if in.model != nil && slices.ContainsFunc(in.problems, func(p diag.Problem) bool { return p.Code == "no-script" }) {
		if named := signoff.ScriptsSigned(airframe); len(named) > 0 {
			in = s.gather(airframe, named)
		}
	}
	if in.model == nil || diag.HasErrors(in.problems) {
		return nil, &inputError{in.problems, in.sources}
	}
	return in, nil
}

// rewriting writes the report of files that a record holds.
func (s *session) rewriting() func(*airframes.Model, []script.File, string) (*result.Report, []byte, error) {
	return func(m *airframes.Model, scripts []script.File, date string) (*result.Report, []byte, error) {
		in := &inputs{}
		in.loadModel(m.Source.Name, m.Source.Text)
		for _, f := range scripts {
			in.keepScript(f.Name, f.Text)
		}
		report, text, problems, err := s.checkedAnew(in, date)
		switch {
		case err != nil:
			return nil, nil, err
		case report == nil:
			return nil, nil, errors.New(firstMistake(append(in.problems, problems...)))
		case report.Verdict != result.Passed:
			return nil, nil, errors.New(strings.ToUpper(string(report.Verdict)) + ", DO NOT FLY")
		}
		return report, text, nil
	}
}

func firstMistake(problems []diag.Problem) string {
	for _, p := range problems {
		if p.Severity == diag.Error {
			return p.Message
		}
	}
	return "it cannot be used"
}

// readFileUpTo reads a file that may hold so many bytes.
func readFileUpTo(name string, most int64) ([]byte, error) {
	f, err := os.Open(name)
	if err != nil {
		return nil, err
	}
	defer f.Close()
	return readUpTo(f, most)
}
