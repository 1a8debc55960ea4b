package signoff

import (
	"slices"

	"example.com/hingeline/verify/result"
	"example.com/hingeline/verify/result/said"
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
	did := said.Did(string(r))
	if did == "" {
		return ""
	}
	return did + " With the airframe file and the script in this record every check passed, and I have read the report, its warnings and" +
		" what it does not cover. Throws, loss of signal and range are not covered by this. " + said.StillToSee
}
