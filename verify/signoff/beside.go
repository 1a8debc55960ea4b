package signoff

import "path/filepath"

// Beside is where a script is that was called so when its airframe file was called was:
// it has kept its place beside it.
func Beside(airframe, was, script string) string {
	from, err := filepath.Rel(filepath.Dir(was), script)
	if err != nil || filepath.IsAbs(script) {
		return script
	}
	return filepath.Join(filepath.Dir(airframe), from)
}

// ScriptsSigned are the scripts that were signed last, where they should be now; none
// where nothing can be read.
func ScriptsSigned(airframe string) []string {
	entries, err := readAll(Directory(airframe))
	if err != nil {
		return nil
	}
	var names []string
	for i := range entries {
		if e := &entries[i]; e.genuine() {
			names = nil
			for _, f := range e.record.Scripts {
				names = append(names, Beside(airframe, e.record.Airframe.File, f.File))
			}
		}
	}
	return names
}
