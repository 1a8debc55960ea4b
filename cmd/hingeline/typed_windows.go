package main

import (
	"os"

	"golang.org/x/sys/windows"
)

// dropTyped throws away what was typed at a console and not read.
func dropTyped(terminal *os.File) error {
	return windows.FlushConsoleInputBuffer(windows.Handle(terminal.Fd()))
}
