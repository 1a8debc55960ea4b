package main

import (
	"fmt"
	"strings"

	"github.com/spf13/cobra"
	"github.com/spf13/pflag"

	"example.com/hingeline/airframes"
)

// noAirframe is what is wrong where an airframe file must be named and is not.
func noAirframe() (message, hint string) {
	return "an airframe file, or the name of a built-in model, is missing", "built in are: " + strings.Join(airframes.Shipped(), ", ")
}

// withoutAirframe is that as the mistake in calling a command.
func withoutAirframe(c *cobra.Command) error {
	message, hint := noAirframe()
	return &usageError{message: message, hint: hint, usage: usageOf(c)}
}

// usageOf is one line that says how a command is called.
func usageOf(c *cobra.Command) string {
	return strings.TrimSpace(strings.Replace(c.UseLine(), " [flags]", "", 1)) + flagsOf(c)
}

func flagsOf(c *cobra.Command) string {
	var b strings.Builder
	c.LocalNonPersistentFlags().VisitAll(func(f *pflag.Flag) {
		if f.Hidden || f.Name == "help" {
			return
		}
		if kind, _ := pflag.UnquoteUsage(f); kind != "" {
			fmt.Fprintf(&b, " [--%s %s]", f.Name, kind)
		} else {
			fmt.Fprintf(&b, " [--%s]", f.Name)
		}
	})
	return b.String()
}

// flagError says what is wrong with a flag, and which one may have been meant.
func flagError(c *cobra.Command, err error) error {
	e := &usageError{message: err.Error(), usage: usageOf(c)}
	name, unknown := strings.CutPrefix(err.Error(), "unknown flag: --")
	if !unknown {
		return e
	}
	var names []string
	c.Flags().VisitAll(func(f *pflag.Flag) { names = append(names, f.Name) })
	e.message = fmt.Sprintf("%s has no flag --%s", c.CommandPath(), name)
	if best := didYouMean(name, names); best != "" {
		e.hint = strings.Replace(best, `"`, `"--`, 1)
	}
	return e
}

// atMost refuses more than n arguments; what says how many a command takes.
func atMost(n int, what string) cobra.PositionalArgs {
	return func(c *cobra.Command, args []string) error {
		if len(args) <= n {
			return nil
		}
		return &usageError{
			message: fmt.Sprintf("%s takes %s, got %q as well", c.CommandPath(), what, args[n]),
			usage:   usageOf(c),
		}
	}
}
