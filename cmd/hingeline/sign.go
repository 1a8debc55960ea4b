package main

import (
	"bytes"
	"errors"
	"fmt"
	"path/filepath"
	"slices"
	"strings"
	"time"

	"github.com/spf13/cobra"

	"example.com/hingeline/airframes/diag"
	"example.com/hingeline/verify"
	"example.com/hingeline/verify/report/jsonout"
	"example.com/hingeline/verify/report/terminal"
	"example.com/hingeline/verify/result"
	"example.com/hingeline/verify/result/said"
	"example.com/hingeline/verify/signoff"
)

// signFlags are the flags of sign.
type signFlags struct {
	as, role, key, airframe string
	bench                   string
	place, remarks, date    string
	accept                  []string
}

func (s *session) signCommand() *cobra.Command {
	var flags signFlags
	c := &cobra.Command{
		Use:   "sign REPORT.json",
		Short: "put your name to a check that passed",
		Long: `Sign writes a record beside the airframe file: who signed, as what and when, the
airframe file and its scripts as they were, and fingerprints of what they come to.
Records are written once and never changed. REPORT.json is what check --json wrote.

The check is run again first. Nothing is signed unless it passed, in whole, the
report is byte for byte what this version writes for these files, and every warning
is accepted by its name with a reason. Roles:

  builder    set the model up
  second     another pair of eyes
  inspector  looks at models for a club or an association

One person cannot sign the same set-up in two roles.

With --bench FILE, a record that "hingeline bench" wrote about this set-up and that was
gone through to its end, the signature says too what was seen on the model itself.
Without it only the set-up is signed. Where something was not as expected, in that
record or in another of this set-up beside the airframe file that no later walk shows
put right, nothing is signed unless --accept ` + signoff.Differs + `=reason says why.
A step that was skipped or not seen wants --accept ` + signoff.NotAllSeen + `=reason.

With --key the record is signed by ssh-keygen with an OpenSSH key, which asks for a
passphrase by itself. A club can look at such a signature with the tools it has:

  ssh-keygen -Y verify -f allowed_signers -I "NAME" -n ` + signoff.Namespace + ` \
    -s my-model.signed/0001.json.sig < my-model.signed/0001.json

Without a key a record shows accidents, but not who wrote it. Each record holds a
fingerprint of the one before it, so that one which is changed or taken from the
middle shows; those taken away from the end leave no trace. Keep a copy elsewhere.

Exit status: 0 signed, 1 the check or the report does not allow it, 3 a file or key
cannot be used.`,
		Example: `  hingeline check my-model.yaml --json my-model.json
  hingeline sign my-model.json --as "Ada Crane" --role builder
  hingeline sign my-model.json --as "Ada Crane" --role builder --bench my-model.bench/0001.jsonl
  hingeline sign my-model.json --as "Ben Poole" --role second --key ~/.ssh/id_ed25519
  hingeline sign my-model.json --as "Ada Crane" --role builder --accept low-rates="first flights on low rates only"`,
		ValidArgsFunction: func(*cobra.Command, []string, string) ([]string, cobra.ShellCompDirective) {
			return []string{"json"}, cobra.ShellCompDirectiveFilterFileExt
		},
		RunE: func(c *cobra.Command, args []string) error { return s.sign(c, args, flags) },
	}
	f := c.Flags()
	f.StringVar(&flags.as, "as", "", "the `NAME` of who signs")
	f.StringVar(&flags.role, "role", "", "as what: `ROLE` is builder, second or inspector")
	f.StringVar(&flags.key, "key", "", "sign with the OpenSSH key in `FILE`: a private key, or a public one whose private half an agent has")
	f.StringArrayVar(&flags.accept, "accept", nil, "sign in spite of a warning: `CODE=reason`; may be given again")
	f.StringVar(&flags.bench, "bench", "", "what was seen on the model is signed as well: `FILE` is the record of bench")
	f.StringVar(&flags.place, "place", "", "`WHERE` it is signed")
	f.StringVar(&flags.remarks, "remarks", "", "`TEXT` that is signed as well")
	f.StringVar(&flags.airframe, "airframe", "", "the airframe `FILE`, where it is no longer where the report says; scripts are looked for beside it as they were")
	f.StringVar(&flags.date, "date", "", "the `DATE` of the signature, as 2026-11-25T20:15:00Z; usually now")
	c.RegisterFlagCompletionFunc("role", cobra.FixedCompletions(roleNames(), cobra.ShellCompDirectiveNoFileComp))
	return c
}

func roleNames() []string {
	var names []string
	for _, r := range signoff.Roles {
		names = append(names, string(r))
	}
	return names
}

func (s *session) sign(c *cobra.Command, args []string, flags signFlags) error {
	req, err := flags.request(c, args)
	if err != nil {
		return err
	}
	if req.Report, err = s.readReport(args[0]); err != nil {
		return s.notSigned(err)
	}
	named, err := signableReport(req.Report)
	if err != nil {
		return s.notSigned(err)
	}
	in, err := s.gatherNamed(named, flags.airframe)
	if err != nil {
		return err
	}
	report, text, problems, err := s.checkedAnew(in, named.Date)
	if err != nil {
		return err
	}
	if report == nil {
		return &inputError{append(in.problems, problems...), in.sources}
	}
	req.Airframe = in.disk[0].name
	req.Checked = signoff.Checked{Model: in.model, Scripts: in.scripts, Report: report, Rendered: text}
	if flags.key != "" {
		if req.Key, err = signoff.KeyFile(flags.key, s.stderr); err != nil {
			return s.notSigned(err)
		}
	}
	if flags.bench != "" {
		text, err := readRecord(flags.bench, signoff.MaxBenchBytes)
		if err != nil {
			return s.notSigned(fmt.Errorf("the record of the bench cannot be read: %w", err))
		}
		req.Bench = &signoff.Bench{File: flags.bench, Text: text}
	}
	signed, err := signoff.Sign(req)
	if err != nil {
		return s.notSigned(err)
	}
	return s.saySigned(signed)
}

// request reads the flags; what is wrong with them is wrong use.
func (flags *signFlags) request(c *cobra.Command, args []string) (req signoff.Request, err error) {
	wrong := func(hint, format string, args ...any) (signoff.Request, error) {
		return req, &usageError{message: fmt.Sprintf(format, args...), hint: hint, usage: usageOf(c)}
	}
	switch {
	case len(args) == 0:
		return wrong("hingeline check my-model.yaml --json my-model.json writes one", "the report to sign is missing")
	case len(args) > 1:
		return wrong("", "sign takes one report, got %q as well", args[1])
	case flags.as == "":
		return wrong(`--as "Ada Crane"`, "who signs? --as is missing")
	case flags.role == "":
		return wrong("--role "+strings.Join(roleNames(), ", --role "), "as what? --role is missing")
	case !slices.Contains(roleNames(), flags.role):
		hint := didYouMean(flags.role, roleNames())
		if hint == "" {
			hint = "there are: " + strings.Join(roleNames(), ", ")
		}
		return wrong(hint, "there is no role %q", flags.role)
	case c.Flags().Changed("key") && flags.key == "":
		return wrong("", "--key wants the name of a file")
	case c.Flags().Changed("bench") && flags.bench == "":
		return wrong("my-model.bench/0001.jsonl, say", "--bench wants the name of a file")
	}
	req = signoff.Request{Role: signoff.Role(flags.role), Place: flags.place, Remarks: flags.remarks}
	if req.Name, err = signoff.CleanName(flags.as); err != nil {
		return wrong("sign with the name that you are known by", "--as: %v", err)
	}
	for _, text := range flags.accept {
		a, err := signoff.ParseAcceptance(text)
		if err != nil {
			return wrong(`--accept CODE="why it is all right"`, "--accept: %v", err)
		}
		req.Accept = append(req.Accept, a)
	}
	date, err := dateOf(c, flags.date)
	if err != nil {
		return req, err
	}
	req.Date = func() time.Time { return date }
	if flags.date == "" {
		req.Date = time.Now
	}
	return req, nil
}

// dateOf reads --date, which is a moment; usually it is now.
func dateOf(c *cobra.Command, text string) (time.Time, error) {
	if text == "" {
		return time.Now(), nil
	}
	t, err := time.Parse(time.RFC3339, text)
	if err != nil {
		return t, &usageError{message: fmt.Sprintf("--date is %q, wanted a date with its time", text),
			hint: "as 2026-11-25T20:15:00Z", usage: usageOf(c)}
	}
	return t, nil
}

// maxReportBytes is the most that a report may hold.
const maxReportBytes = 64 << 20

// readReport reads a JSON report; "-" is standard input.
func (s *session) readReport(name string) ([]byte, error) {
	if name == "-" {
		return readUpTo(s.stdin, maxReportBytes)
	}
	return readFileUpTo(name, maxReportBytes)
}

// signableReport is what a report says about itself, where it can be signed at all.
func signableReport(text []byte) (*signoff.Named, error) {
	named, err := signoff.ReadReport(text)
	if err != nil {
		return nil, fmt.Errorf("the report cannot be read: %w", err)
	}
	again := "check again with this version, read that report, and sign it"
	switch {
	case named.Tool != verify.Version || named.Format != jsonout.Format:
		return nil, &signoff.Refusal{Message: fmt.Sprintf("the report is by Hingeline %s (format %d), and this is %s (format %d)",
			named.Tool, named.Format, verify.Version, jsonout.Format), Hint: again}
	case named.Verdict == string(result.Failed):
		return nil, &signoff.Refusal{Message: "the report says FAILED: DO NOT FLY; nothing is signed", Hint: "put it right, check again, and sign that report"}
	case named.Verdict != string(result.Passed):
		return nil, &signoff.Refusal{Message: fmt.Sprintf("the report says %q, and only a check that passed in whole is signed", named.Verdict),
			Hint: "check without --only"}
	case strings.HasPrefix(named.Model.File, builtIn):
		return nil, &signoff.Refusal{Message: "a built-in model is nobody's aeroplane, so it is not signed", Hint: "check an airframe file of your own"}
	case named.Model.File == stdinName || slices.Contains(named.Scripts, stdinName):
		return nil, &signoff.Refusal{Message: "what was read from standard input cannot be read again, so it is not signed", Hint: "check the files by their names"}
	}
	return named, nil
}

// gatherNamed reads the files that a report names, under the names that it gives them.
// An airframe file that was moved says where they are now.
func (s *session) gatherNamed(named *signoff.Named, airframe string) (*inputs, error) {
	if airframe == "" {
		airframe = named.Model.File
	}
	in := &inputs{disk: []diskFile{stampOf(airframe)}}
	text, problem := s.readFile(airframe, airframeKind)
	if problem != nil {
		if problem.Code == "file-missing" {
			problem.Hint = "the report names it as seen from the directory that check was run in; --airframe says where it is now"
		}
		return nil, &inputError{[]diag.Problem{*problem}, nil}
	}
	in.loadModel(named.Model.File, text)
	for _, name := range named.Scripts {
		where := signoff.Beside(airframe, named.Model.File, name)
		text, problem := s.readFile(where, scriptKind)
		if problem != nil {
			in.problems = append(in.problems, *problem)
			continue
		}
		in.disk = append(in.disk, stampOf(where))
		in.keepScript(name, text)
	}
	return in, nil
}

// checkedAnew runs the check of a report again and renders it. Without a report there
// are problems.
func (s *session) checkedAnew(in *inputs, date string) (*result.Report, []byte, []diag.Problem, error) {
	out := newOutputs()
	out.date = date
	out.of("json").name = toStdout
	report, problems := s.judge(in, checkFlags{outputs: out})
	if report == nil {
		return nil, nil, problems, nil
	}
	var b bytes.Buffer
	err := jsonout.Render(&b, report)
	return report, b.Bytes(), nil, err
}

// notSigned says why nothing was signed.
func (s *session) notSigned(err error) error {
	var refusal *signoff.Refusal
	switch {
	case errors.As(err, &refusal):
		fmt.Fprintf(s.stderr, "hingeline: %s\n", refusal.Message)
		for _, d := range refusal.Details {
			fmt.Fprintf(s.stderr, "  %s\n", d)
		}
		if refusal.Hint != "" {
			fmt.Fprintf(s.stderr, "  %s\n", refusal.Hint)
		}
		s.status = statusNo
		return nil
	case errors.Is(err, signoff.ErrMayNotLast):
		return s.refuse(err.Error(), "look at it with \"hingeline verify\", and keep a copy elsewhere")
	case errors.Is(err, signoff.ErrNoKeygen):
		return s.refuse(err.Error(), "install OpenSSH, or sign without --key")
	}
	return s.refuse(fmt.Sprintf("nothing is signed: %v", err), "")
}

// saySigned says what somebody has put their name to.
func (s *session) saySigned(signed *signoff.Signed) error {
	r := signed.Record
	how := "without a key"
	if r.Key != "" {
		how = "with the key " + r.Key
	}
	text := terminal.NewText(s.layout(false))
	text.Title(fmt.Sprintf("%s: signed by %s as %s, %s", r.Model, r.Name, r.Role.Says(), how))
	text.Paragraph(2, "“"+r.Statement+"”")
	_, onTheModel := said.OnTheModel(&result.Signature{Seen: r.Seen.Result()})
	text.Paragraph(2, onTheModel)
	for _, a := range r.Accepted {
		text.Entry("  in spite of  ", fmt.Sprintf("%s [%s]: %s", a.Message, a.Code, a.Reason))
	}
	text.Paragraph(0, fmt.Sprintf("record %d: %s", r.Number, filepath.ToSlash(signed.File)))
	return written(text.Render(s.results()))
}
