package junit

import (
	"bytes"
	"encoding/xml"
)

// IsReport says whether a file is one that Render wrote, of whatever version.
func IsReport(file []byte) bool {
	return bytes.HasPrefix(file, []byte(xml.Header+"<testsuites ")) && bytes.Contains(file, []byte(`<property name="hingeline.`))
}
