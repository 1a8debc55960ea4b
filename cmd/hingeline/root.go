package main

import (
	"fmt"
	"io"
	"os"
	"slices"
	"strings"

	"github.com/spf13/cobra"

	"example.com/hingeline/airframes/diag"
	"example.com/hingeline/verify"
)

func init() {
	cobra.MousetrapHelpText = `Hingeline is used from a terminal.

Open a terminal (or "Command Prompt"), go to the directory with your
airframe file and type, for instance:

    hingeline check
`
}

// root is the command line; out is where cobra itself writes.
func (s *session) root(out io.Writer) *cobra.Command {
	root := &cobra.Command{
		Use:   "hingeline",
		Short: "a control check for radio-control models, before the maiden flight",
		Long: `Hingeline reads what your model's set-up is (an airframe file) and what every
surface should do (a script in plain sentences), and tells you, in walk-around
order, whether it does. What must hold at every position of the controls it proves.

  hingeline check                    try it on a built-in model
  hingeline schema --example         an airframe file to start from
  hingeline check my-model.yaml      check your own

Exit status: 0 yes, 1 no (a check failed, a law was disproved or is undecided),
2 wrong use, 3 a file cannot be used, 4 nothing was checked, 70 a bug in Hingeline,
74 the result could not be written.`,
		Version:            verify.Version,
		SilenceErrors:      true,
		SilenceUsage:       true,
		DisableSuggestions: true,
		Args:               cobra.ArbitraryArgs,
		PersistentPreRunE:  func(*cobra.Command, []string) error { return s.checkColorFlag() },
	}
	root.RunE = func(_ *cobra.Command, args []string) error { return noCommand(root, args) }
	root.PersistentFlags().StringVar(&s.colorFlag, "color", "auto", "colour: auto, always or never")
	root.RegisterFlagCompletionFunc("color", cobra.FixedCompletions(colorChoices, cobra.ShellCompDirectiveNoFileComp))
	root.SetVersionTemplate("hingeline {{.Version}}\n")
	root.SetFlagErrorFunc(flagError)
	root.AddCommand(s.checkCommand(), s.showCommand(), s.serveCommand(), s.proveCommand(), s.faultsCommand(), s.benchCommand(), s.compareCommand(), s.newCommand(), s.signCommand(), s.verifyCommand(), s.schemaCommand(), s.phrasesCommand(),
		s.explainCommand(), s.versionCommand())
	root.SetHelpCommand(helpCommand(root))
	root.SetOut(out) // before the completion command, which keeps it
	root.InitDefaultCompletionCmd("completion")
	for _, c := range root.Commands() {
		if c.Name() == "completion" {
			c.Short = "write the completion script for a shell"
			c.Args = cobra.ArbitraryArgs
			c.RunE = func(c *cobra.Command, args []string) error { return noShell(c, args) }
		}
	}
	return root
}

var colorChoices = []string{"auto", "always", "never"}

func (s *session) checkColorFlag() error {
	if slices.Contains(colorChoices, s.colorFlag) {
		return nil
	}
	return &usageError{
		message: fmt.Sprintf("--color is %q, wanted auto, always or never", s.colorFlag),
		hint:    didYouMean(s.colorFlag, colorChoices),
	}
}

// noCommand is what is said where the first word is no command.
func noCommand(root *cobra.Command, args []string) error {
	names := commandNames(root)
	if len(args) == 0 {
		return &usageError{
			message: "a command is missing: " + strings.Join(names, ", "),
			hint:    `"hingeline help" tells what they do; "hingeline check" tries the main one on a built-in model`,
			usage:   "hingeline COMMAND [arguments]",
		}
	}
	hint := didYouMean(args[0], names)
	if _, err := os.Stat(args[0]); err == nil {
		hint = fmt.Sprintf("to check the file of that name: hingeline check %s", args[0])
	}
	if hint == "" {
		hint = "there are: " + strings.Join(names, ", ")
	}
	return &usageError{
		message: fmt.Sprintf("no command is called %q", args[0]),
		hint:    hint,
		usage:   "hingeline COMMAND [arguments]",
	}
}

func noShell(c *cobra.Command, args []string) error {
	shells := commandNames(c)
	e := &usageError{
		message: "a shell is missing: " + strings.Join(shells, ", "),
		usage:   "hingeline completion SHELL",
	}
	if len(args) > 0 {
		e.message = fmt.Sprintf("no completion for %q, only for %s", args[0], strings.Join(shells, ", "))
		e.hint = didYouMean(args[0], shells)
	}
	return e
}

func commandNames(c *cobra.Command) []string {
	var names []string
	for _, sub := range c.Commands() {
		if sub.IsAvailableCommand() || sub.Name() == "help" {
			names = append(names, sub.Name())
		}
	}
	return names
}

func helpCommand(root *cobra.Command) *cobra.Command {
	return &cobra.Command{
		Use:   "help [COMMAND]",
		Short: "tell about a command",
		ValidArgsFunction: func(*cobra.Command, []string, string) ([]string, cobra.ShellCompDirective) {
			return commandNames(root), cobra.ShellCompDirectiveNoFileComp
		},
		RunE: func(_ *cobra.Command, args []string) error {
			c, rest, err := root.Find(args)
			if err != nil || len(rest) > 0 {
				return noCommand(root, args)
			}
			return c.Help()
		},
	}
}

// didYouMean is the hint for a name that is nearly right, or empty.
func didYouMean(name string, among []string) string {
	if best, ok := diag.Closest(name, among); ok {
		return fmt.Sprintf("did you mean %q?", best)
	}
	return ""
}
