package signoff

import (
	"fmt"
	"time"

	"example.com/hingeline/verify/result"
	"example.com/hingeline/verify/wording"
)

// seenBefore stands behind what is out of date where the model was looked at too: a walk-around
// says nothing of a set-up that it was not walked with.
const seenBefore = "what was seen on the model was of the set-up before, so that walk-around is void too"

// summary is the one line that says it all. The numbers are those of the signatures of
// what was signed last; void says that they have seen a model with another set-up.
func summary(s *result.Standing, last map[int]bool, void bool, now time.Time) string {
	switch {
	case len(s.Signatures) == 0:
		return "nothing is signed"
	case len(last) == 0:
		return troubles(s)
	}
	var by []string
	before := ""
	for _, sig := range s.Signatures {
		if !last[sig.Number] || !sig.Counts {
			continue
		}
		who := fmt.Sprintf("by %s (%s)", sig.Name, result.RoleWords(sig.Role))
		if when := ago(sig.Date, now); when != before {
			who, before = when+" "+who, when
		}
		by = append(by, who)
	}
	line := "signed " + wording.Listed(by)
	if len(by) == 0 {
		line = "no signature counts"
	}
	if n := len(s.Changes); n > 0 {
		line += "; out of date: " + s.Changes[0].Text + more(n-1)
	}
	if void {
		line += "; " + seenBefore
	}
	if s.Seen != "" {
		line += "; " + s.Seen
	}
	if s.Since != "" {
		line += "; " + s.Since
	}
	if len(s.Troubles) > 0 {
		line = troubles(s) + "; " + line
	}
	return line
}

// seen is what those whose signatures stand say of the model itself: the newest walk-around
// among those that they have signed. The numbers are those of the signatures of what was
// signed last.
func seen(s *result.Standing, last map[int]bool) string {
	line, newest := "", ""
	for i := range s.Signatures {
		sig := &s.Signatures[i]
		if !last[sig.Number] || !sig.Stands() {
			continue
		}
		if line == "" {
			line = result.OnlySetUp
		}
		if sig.Seen != nil && sig.Seen.Date >= newest {
			line, newest = sig.Seen.Summary, sig.Seen.Date
		}
	}
	return line
}

func troubles(s *result.Standing) string {
	line := "the signatures are not to be trusted: " + s.Troubles[0]
	if n := len(s.Troubles) - 1; n > 0 {
		line += fmt.Sprintf(", and %d more", n)
	}
	return line
}

func more(n int) string {
	switch n {
	case 0:
		return ""
	case 1:
		return ", and 1 more change"
	}
	return fmt.Sprintf(", and %d more changes", n)
}

const day = 24 * time.Hour

// ago is how long ago a date was: "today", "2 days ago".
func ago(date string, now time.Time) string {
	t, err := parseDate(date)
	if err != nil {
		return "at an unknown time"
	}
	switch days := int(now.Sub(t) / day); {
	case t.After(now.Add(day)):
		return "with the date " + t.Format(time.DateOnly) + ", which is still to come,"
	case days <= 0:
		return "today"
	case days == 1:
		return "1 day ago"
	default:
		return fmt.Sprintf("%d days ago", days)
	}
}
