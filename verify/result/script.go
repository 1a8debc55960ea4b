package result

// ScriptFinding is something odd about the script itself, whatever the set-up
// does.
type ScriptFinding struct {
	Code      string
	Message   string // what is odd, in one line
	Sentence  string // as the script has it; empty where a sentence is missing
	Place     Place  // of the sentence, or of the line of the airframe file that wants one
	Reason    string // why it matters
	Picture   string // what the sentence asks for, as one would see it; may be empty
	Right     string // a sentence that would be right; may be empty
	Hint      string // what to do about it
	OnPurpose bool   // the sentence says that it is meant so: the pilot's own decision
	Fails     bool   // the check fails for it: a script that is wrong proves nothing
}

// ScriptCounts says how many findings about the script fail the check, how many
// are warnings, and how many the pilot has decided.
func (r *Report) ScriptCounts() (fail, warn, onPurpose int) {
	for i := range r.Script {
		switch f := &r.Script[i]; {
		case f.Fails:
			fail++
		case f.OnPurpose:
			onPurpose++
		default:
			warn++
		}
	}
	return fail, warn, onPurpose
}
