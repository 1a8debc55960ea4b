package main

import (
	"github.com/spf13/cobra"

	"example.com/hingeline/airframes"
)

// completing completes a command's arguments: so many airframe files, of which the built-in
// models are offered, and scripts behind them.
func completing(models int) cobra.CompletionFunc {
	return func(_ *cobra.Command, args []string, _ string) ([]string, cobra.ShellCompDirective) {
		if len(args) < models {
			return airframes.Shipped(), cobra.ShellCompDirectiveDefault
		}
		return []string{"feature"}, cobra.ShellCompDirectiveFilterFileExt
	}
}
