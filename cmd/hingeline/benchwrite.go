package main

import (
	"fmt"
	"os"
	"path/filepath"
)

// leavesScripts says whether a new airframe file would stand in another directory than the
// one that it comes from, where the scripts that it names by their place are not, or others.
func (r *benchRun) leavesScripts() bool {
	if len(r.in.model.Scripts) == 0 || len(r.in.disk) == 0 {
		return false
	}
	from, err := os.Stat(filepath.Dir(r.in.disk[0].name))
	to, err2 := os.Stat(filepath.Dir(r.flags.write))
	return err != nil || err2 != nil || !os.SameFile(from, to)
}

// writeCorrected writes a new airframe file with what measurements offer to correct. The
// exit status is the report's.
func (r *benchRun) writeCorrected() error {
	corrected := r.guide.Corrected
	if r.flags.asTable {
		corrected = r.guide.CorrectedAsTables
	}
	text, problem := corrected()
	if problem != "" {
		r.s.tell(fmt.Sprintf("hingeline: %s, so %s was not written", problem, r.flags.write))
		return nil
	}
	if err := writeNew([]newFile{{r.flags.write, text}}); err != nil {
		return r.s.notWritten(err)
	}
	fmt.Fprintf(r.s.stderr, "%s: written, with what was measured; check it: hingeline check %s\n", r.flags.write, inQuotes(r.flags.write))
	return nil
}
