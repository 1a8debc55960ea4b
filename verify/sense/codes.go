package sense

// The codes of what can be odd about a script. Each is explained in package diag
// and has an example in testdata/problems.
const (
	codeSuspicious    = "suspicious-expectation"
	codeContradiction = "contradicting-checks"
	codeToothless     = "toothless-sentence"
	codePart          = "unmentioned-part"
	codeControl       = "unmentioned-control"
	codeTrim          = "trim-unchecked"
	codeSecond        = "second-control-unchecked"
	codeRate          = "rate-unchecked"
)

// Codes are all of them, in the order in which Look reports them.
var Codes = []string{
	codeSuspicious, codeContradiction, codeToothless, codePart, codeControl, codeTrim, codeSecond, codeRate,
}
