package main

import (
	"fmt"
	"runtime"

	"github.com/spf13/cobra"

	"example.com/hingeline/verify"
)

func (s *session) versionCommand() *cobra.Command {
	return &cobra.Command{
		Use:   "version",
		Short: "the version of this program",
		Args:  atMost(0, "no arguments"),
		RunE: func(*cobra.Command, []string) error {
			_, err := fmt.Fprintf(s.results(), "hingeline %s (%s, %s/%s)\n",
				verify.Version, runtime.Version(), runtime.GOOS, runtime.GOARCH)
			return written(err)
		},
	}
}
