package diag

import (
	"slices"
	"strings"
)

// CodeInfo tells about one problem code.
type CodeInfo struct {
	Code  string // kebab-case, as it stands in brackets behind a message
	Title string // one line, lower case
	Text  string // a few sentences: what is wrong, why it matters, what to write instead
}

// Codes are all problem and finding codes of Hingeline, sorted by code. Each
// room has its own file of them: codes_airframe.go, codes_script.go,
// codes_finding.go, codes_sense.go and codes_command.go.
func Codes() []CodeInfo {
	all := slices.Concat(airframeCodes, scriptCodes, findingCodes, senseCodes, commandCodes)
	slices.SortFunc(all, func(a, b CodeInfo) int { return strings.Compare(a.Code, b.Code) })
	return all
}

// Explain tells about a code; false if there is none of that name.
func Explain(code string) (CodeInfo, bool) {
	for _, info := range Codes() {
		if info.Code == code {
			return info, true
		}
	}
	return CodeInfo{}, false
}
