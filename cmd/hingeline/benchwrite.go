package main

import "fmt"

// writeCorrected writes a new airframe file with what measurements offer to correct. The
// exit status is the report's.
func (r *benchRun) writeCorrected() error {
	corrected := r.guide.Corrected
	if r.flags.asTable {
		corrected = r.guide.CorrectedAsTables
	}
	text, problem := corrected()
	if problem != "" {
		fmt.Fprintf(r.s.stderr, "hingeline: %s, so %s was not written\n", problem, r.flags.write)
		return nil
	}
	if err := writeNew([]newFile{{r.flags.write, text}}); err != nil {
		return r.s.notWritten(err)
	}
	fmt.Fprintf(r.s.stderr, "%s: written, with what was measured; check it: hingeline check %s\n", r.flags.write, inQuotes(r.flags.write))
	return nil
}
