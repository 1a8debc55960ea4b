//go:build linux || darwin

package main

import (
	"os"

	"golang.org/x/sys/unix"
)

// lockRecord keeps every other program that asks for it away from a file until it is closed.
func lockRecord(f *os.File) error {
	return unix.Flock(int(f.Fd()), unix.LOCK_EX|unix.LOCK_NB)
}
