package sense

import "example.com/hingeline/verify/result"

// Fights says whether a finding is that a sentence fights the aeroplane, and nobody said
// that it is on purpose.
func Fights(f result.ScriptFinding) bool { return f.Code == codeSuspicious && !f.OnPurpose }
