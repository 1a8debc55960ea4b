package said

import "strings"

// ScriptFails is what a script that does not pass on a set-up as written says of it, as a
// sentence goes on: "2 of 14 checks fail on the set-up as written".
func ScriptFails(script string) string {
	if rest, ok := strings.CutPrefix(script, "it "); ok {
		return "the script " + rest
	}
	return script
}
