package main

import (
	"os"

	"golang.org/x/sys/unix"
)

// dropTyped throws away what was typed at a terminal and not read.
func dropTyped(terminal *os.File) error {
	return unix.IoctlSetPointerInt(int(terminal.Fd()), unix.TIOCFLUSH, unix.TCIFLUSH)
}
