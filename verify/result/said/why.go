package said

import "example.com/hingeline/verify/result"

// Why announces the cause chain of reason k of a failed check.
func Why(c *result.Check, k int) string {
	switch why := &c.Why[k]; {
	case k > 0:
		return "and to " + WithArticle(why.Of)
	case len(c.Why) > 1 || why.Of != c.Subject:
		return "why, from the pilot's hand to " + WithArticle(why.Of)
	}
	return "why, from the pilot's hand to the surface"
}

// ScriptFindings are the findings about the script in the order in which they are told:
// what fails the check, what wants a look, what the pilot has decided.
func ScriptFindings(r *result.Report) []*result.ScriptFinding {
	var fails, looks, decided []*result.ScriptFinding
	for i := range r.Script {
		switch f := &r.Script[i]; {
		case f.Fails:
			fails = append(fails, f)
		case f.OnPurpose:
			decided = append(decided, f)
		default:
			looks = append(looks, f)
		}
	}
	return append(append(fails, looks...), decided...)
}

// ScriptFinding is what is odd, with its code, and who decided where somebody has.
func ScriptFinding(f *result.ScriptFinding) string {
	what := f.Message + " [" + f.Code + "]"
	if f.OnPurpose {
		return "on purpose, the pilot's own decision: " + what
	}
	return what
}
