//go:build !linux && !darwin && !windows

package main

import (
	"errors"
	"os"
)

// dropTyped throws away what was typed at a terminal and not read; here it cannot.
func dropTyped(*os.File) error { return errors.ErrUnsupported }
