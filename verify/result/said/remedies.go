package said

import (
	"fmt"
	"strings"

	"example.com/hingeline/verify/result"
)

// WhichIsWrong is how a mistake of the model or the radio is put right: the airframe file
// stays as it is, unless its script says that the file itself is wrong.
func WhichIsWrong(a result.Asked) string {
	switch {
	case a.Checks == 0:
		return "No script says what the model should do. If the airframe file says what you want, leave it as it is: put the model, or the radio, as it says, and walk around again."
	case a.Failing == 0:
		return fmt.Sprintf("The airframe file is not in question: its script passes on it as written (%s). Leave the file as it is, put the model, or the radio, as it says, and walk around again.", Count(a.Checks, "check"))
	}
	return fmt.Sprintf("The script fails on the airframe file as written (%s), so the file may be what is wrong: see below. If it is not, put the model, or the radio, as it says, and walk around again.", ofChecks(a.Failing, a.Checks))
}

// AsTheFileSays is a change that puts a model as its airframe file says.
func AsTheFileSays(r *result.Repair) string {
	if r.OnModel {
		return "on the model: " + r.Change
	}
	return "in the radio: " + r.Change
}

// FileSays is a line of an airframe file that a model is put as; empty where there is none.
func FileSays(p result.Place) string {
	if p.File == "" {
		return ""
	}
	place := p
	place.Column = 0
	words := At(place)
	if line := strings.TrimSpace(p.Excerpt); line != "" && !strings.HasSuffix(line, ":") {
		words += " says " + line
	}
	return words
}

// MadeUpFor announces changes that make up for a mistake and leave it.
const MadeUpFor = "OR MAKE UP FOR IT, which leaves the model other than the file: the mistake and the change must then both be written into the file, and checked again"

// FileIsWrong announces edits of an airframe file for where it is the file that is wrong.
func FileIsWrong(a result.Asked) string {
	if a.Failing > 0 {
		return "OR THE FILE IS WRONG: if the model does what you want, this edit makes the file as the model is"
	}
	return "ONLY IF THE MODEL DOES WHAT YOU WANT, and the file was written down wrong: this edit makes the file as the model is"
}

// WithEdit is what the script says of an airframe file after an edit; empty without one.
func WithEdit(e *result.FileEdit, a result.Asked) string {
	switch {
	case a.Checks == 0:
		return ""
	case e.Failing > 0 && a.Failing == 0:
		return "with it " + ofChecks(e.Failing, a.Checks) + ": your script wants what the file says now"
	case e.Failing > 0:
		return "with it " + ofChecks(e.Failing, a.Checks)
	case a.Failing > 0:
		return fmt.Sprintf("with it %s: your script wants what the model does", Does(a.Checks, "check", "passes", "pass"))
	}
	return fmt.Sprintf("with it %s too: your script does not tell which is right", Does(a.Checks, "check", "passes", "pass"))
}

func ofChecks(failing, all int) string {
	return fmt.Sprintf("%d of %s %s", failing, Count(all, "check"), Number(failing, "fails", "fail"))
}

// NothingOfItself comes after all that would put a model or its file right.
const NothingOfItself = "Hingeline changes nothing by itself."
