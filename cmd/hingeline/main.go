// Command hingeline is the second pair of eyes before a maiden flight: it reads
// what a radio-control model's set-up is, and checks that every surface does
// what a script in plain sentences says it should.
//
// Here are flags, files and exit statuses, one file for each command; what is
// checked and how is package verify's business. Start at [run].
package main

import (
	"os"
	"runtime/debug"

	"example.com/hingeline/cmd/hingeline/quietstart"
)

// heapLimit is how large the heap grows before rubbish is collected: a check
// comes nowhere near it and is over sooner than a collection would pay.
const heapLimit = 256 << 20

func main() {
	quietstart.Restore()
	debug.SetGCPercent(-1)
	debug.SetMemoryLimit(heapLimit)
	os.Exit(run(os.Args[1:], os.Stdin, os.Stdout, os.Stderr))
}
