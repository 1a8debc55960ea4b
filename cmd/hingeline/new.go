package main

import (
	"fmt"
	"path/filepath"
	"slices"
	"strings"

	"github.com/spf13/cobra"

	"example.com/hingeline/airframes"
	"example.com/hingeline/airframes/diag"
	"example.com/hingeline/verify"
	"example.com/hingeline/verify/draft"
	"example.com/hingeline/verify/script"
)

// newFlags are the flags of new.
type newFlags struct {
	layout, script, dir string
	interactive         bool
}

func (s *session) newCommand() *cobra.Command {
	var flags newFlags
	c := &cobra.Command{
		Use:   "new [NAME]",
		Short: "begin an airframe file with its script, or the script of an airframe file",
		Long: `New writes an airframe file to make your own, and a complete script beside it:

` + layoutList() + `
With --script it drafts the script of an airframe file that you have. What it
asks comes from where each part is and what it is for, not from what the set-up
does: where the two disagree, the draft says what is right and the check fails.
What only you can know is left to you, in lines marked "you decide".

A file that is there is never written over.`,
		Example: `  hingeline new --layout trainer "Wren 2"
  hingeline new --interactive
  hingeline new --script my-model.yaml
  hingeline new --script my-model.yaml -`,
		RunE: func(c *cobra.Command, args []string) error { return s.newModel(c, args, flags) },
	}
	f := c.Flags()
	f.StringVar(&flags.layout, "layout", "", "what `LAYOUT` the model has")
	f.BoolVar(&flags.interactive, "interactive", false, "ask a few questions, each with an answer to take by Enter")
	f.StringVar(&flags.script, "script", "", "draft the script of this `AIRFRAME` file; a further - writes it to the screen")
	f.StringVar(&flags.dir, "dir", "", "write into `DIR`")
	c.RegisterFlagCompletionFunc("layout", cobra.FixedCompletions(layoutNames(), cobra.ShellCompDirectiveNoFileComp))
	return c
}

func layoutNames() []string {
	var names []string
	for _, l := range draft.Layouts() {
		names = append(names, l.Name)
	}
	return names
}

// layoutList is every layout with what it is, a line each.
func layoutList() string {
	width := 0
	for _, name := range layoutNames() {
		width = max(width, len(name))
	}
	var b strings.Builder
	for _, l := range draft.Layouts() {
		fmt.Fprintf(&b, "  %-*s  %s\n", width, l.Name, l.About)
	}
	return b.String()
}

func (s *session) newModel(c *cobra.Command, args []string, flags newFlags) error {
	switch {
	case flags.script != "" && (flags.layout != "" || flags.interactive):
		return &usageError{
			message: "--script drafts a script for a model that is there; --layout and --interactive begin a new one",
			usage:   usageOf(c),
		}
	case flags.script != "":
		return s.newScript(c, args, flags)
	case len(args) > 1:
		return &usageError{
			message: fmt.Sprintf("new takes one name, got %q as well", args[1]),
			hint:    fmt.Sprintf("put a name of several words in quotes: %q", strings.Join(args, " ")),
			usage:   usageOf(c),
		}
	}
	layout, known := draft.FindLayout(flags.layout)
	switch {
	case flags.layout != "" && !known:
		return &usageError{
			message: fmt.Sprintf("no layout is called %q", flags.layout),
			hint:    firstOf(didYouMean(flags.layout, layoutNames()), "there are: "+strings.Join(layoutNames(), ", ")),
			usage:   usageOf(c),
		}
	case flags.interactive:
		return s.newByAsking(layout, args, flags)
	case flags.layout == "":
		return &usageError{
			message: "a layout is missing; there are\n" + strings.TrimRight(layoutList(), "\n"),
			hint:    `for instance: hingeline new --layout trainer "Wren 2"`,
		}
	case len(args) == 0:
		return &usageError{
			message: "the model's name is missing",
			hint:    fmt.Sprintf("for instance: hingeline new --layout %s \"Wren 2\"", layout.Name),
			usage:   usageOf(c),
		}
	}
	choices := layout.Usual()
	choices.Name = args[0]
	return s.writeModel(layout, choices, flags.dir)
}

func firstOf(choices ...string) string {
	return choices[slices.IndexFunc(choices, func(c string) bool { return c != "" })]
}

// writeModel writes an airframe file and the script drafted for it.
func (s *session) writeModel(layout draft.Layout, choices draft.Choices, dir string) error {
	base, problem := fileBase(choices.Name)
	if problem != "" {
		return s.refuse(problem, "take a name with letters or digits, such as \"Wren 2\"")
	}
	choices.Script = base + scriptKind.suffix
	text, err := layout.Airframe(choices)
	if err != nil {
		return s.refuse(err.Error(), "")
	}
	airframe := base + airframeKind.suffix
	model, problems := airframes.Load(airframe, text)
	if model == nil {
		return &inputError{problems, []*diag.Source{diag.NewSource(airframe, text)}}
	}
	drafted := draft.Script(model)
	files := []newFile{
		{filepath.Join(dir, airframe), text},
		{filepath.Join(dir, choices.Script), drafted.Text},
	}
	if err := writeNew(files); err != nil {
		return s.notWritten(err)
	}
	fmt.Fprintf(s.results(), "wrote %s and %s\n", files[0].name, files[1].name)
	s.sayUndecided(drafted)
	fmt.Fprintf(s.results(), "Edit the first until it says what your model is; then: hingeline check %s\n", inQuotes(files[0].name))
	return nil
}

// newScript drafts the script of an airframe file.
func (s *session) newScript(c *cobra.Command, args []string, flags newFlags) error {
	toScreen := slices.Equal(args, []string{"-"})
	if len(args) > 0 && !toScreen {
		return &usageError{
			message: fmt.Sprintf("--script takes one airframe file and perhaps a -, got %q as well", args[0]),
			usage:   "hingeline new --script AIRFRAME [-]",
		}
	}
	in := s.gatherModel(flags.script)
	if in.model == nil || diag.HasErrors(in.problems) {
		return &inputError{in.problems, in.sources}
	}
	drafted := draft.Script(in.model)
	if toScreen || flags.script == "-" {
		_, err := s.results().Write(drafted.Text)
		return written(err)
	}
	file := newFile{s.scriptName(in, flags.dir), drafted.Text}
	if err := writeNew([]newFile{file}); err != nil {
		return s.notWritten(err)
	}
	fmt.Fprintf(s.results(), "wrote %s\n", file.name)
	s.sayUndecided(drafted)
	s.sayAgreement(in.model, file)
	fmt.Fprintf(s.results(), "Read it, add how far each surface should go, then: hingeline check %s %s\n", inQuotes(flags.script), inQuotes(file.name))
	return nil
}

// scriptName is where the draft of a model goes: beside it, or into a directory.
func (s *session) scriptName(in *inputs, dir string) string {
	at := in.sources[0].Name
	if dir == "" && !in.shipped {
		dir = filepath.Dir(at)
	}
	base := filepath.Base(at)
	return filepath.Join(dir, strings.TrimSuffix(base, filepath.Ext(base))+scriptKind.suffix)
}

// sayUndecided says how much is left to the pilot.
func (s *session) sayUndecided(d draft.Draft) {
	switch d.Undecided {
	case 0:
	case 1:
		fmt.Fprintln(s.results(), `1 line of the script is marked "you decide": it asks nothing until you do`)
	default:
		fmt.Fprintf(s.results(), "%d lines of the script are marked \"you decide\": they ask nothing until you do\n", d.Undecided)
	}
}

// sayAgreement says whether the set-up does what the draft asks.
func (s *session) sayAgreement(m *airframes.Model, file newFile) {
	report, problems := verify.Check(m, []script.File{{Name: file.name, Text: file.text}}, script.Selection{})
	if report == nil {
		fmt.Fprintln(s.results(), "check will refuse it: "+problems[0].Message)
		if hint := problems[0].Hint; hint != "" {
			fmt.Fprintln(s.results(), "  "+hint)
		}
		return
	}
	passed, failed := report.Counts()
	switch {
	case failed > 0:
		fmt.Fprintf(s.results(), "%d of its %d checks FAIL: there the set-up does not do what is right for this model\n", failed, passed+failed)
	case passed > 0:
		fmt.Fprintf(s.results(), "the set-up does all that its %d checks ask\n", passed)
	}
}

// refuse says why nothing was written.
func (s *session) refuse(message, hint string) error {
	s.tell("hingeline: " + message)
	if hint != "" {
		s.tell("  " + hint)
	}
	s.status = statusBadInput
	return nil
}

// inQuotes is a file name as a shell takes it for one word.
func inQuotes(name string) string {
	if strings.ContainsAny(name, " '\"()&$") {
		return `"` + name + `"`
	}
	return name
}
