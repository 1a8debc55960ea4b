package main

import (
	"math"
	"os"

	"golang.org/x/sys/windows"
)

// lockRecord keeps every other program that asks for it away from a file until it is closed.
// The byte that is locked is one that no record has, so that it can be read meanwhile.
func lockRecord(f *os.File) error {
	at := &windows.Overlapped{Offset: math.MaxUint32, OffsetHigh: math.MaxInt32}
	return windows.LockFileEx(windows.Handle(f.Fd()), windows.LOCKFILE_EXCLUSIVE_LOCK|windows.LOCKFILE_FAIL_IMMEDIATELY, 0, 1, 0, at)
}
