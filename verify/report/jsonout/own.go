package jsonout

import "bytes"

// IsReport says whether a text is a report that Render wrote, of whatever version and
// however it is set.
func IsReport(text []byte) bool {
	rest, object := bytes.CutPrefix(bytes.TrimSpace(text), []byte("{"))
	return object && bytes.HasPrefix(bytes.TrimSpace(rest), []byte(`"hingeline_report":`))
}
