package signoff

import (
	"slices"

	"example.com/hingeline/verify/result"
)

// Role is as what somebody signs.
type Role string

// The roles.
const (
	Builder   Role = "builder"   // set the model up and checked it
	Second    Role = "second"    // looked at it with another pair of eyes
	Inspector Role = "inspector" // looks at models for a club or association
)

// Roles are all of them.
var Roles = []Role{Builder, Second, Inspector}

func (r Role) known() bool { return slices.Contains(Roles, r) }

// Says is the role in words: "builder", "second person".
func (r Role) Says() string { return result.RoleWords(string(r)) }

// Statement is what is signed, in words.
func (r Role) Statement() string {
	const what = " With the airframe file and the script in this record every check passed, and I have read the report, its warnings and" +
		" what it does not cover. What a check of the set-up cannot see is still to be looked at on the model, before every flight."
	switch r {
	case Builder:
		return "I set this model up, and compared the airframe file with the model and its transmitter." + what
	case Second:
		return "I did not set this model up. I went through its set-up and its report as a second pair of eyes." + what
	case Inspector:
		return "I looked at this model as an inspector, and went through its set-up and its report." + what
	}
	return ""
}
