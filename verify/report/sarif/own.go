package sarif

import (
	"encoding/json"
)

// IsReport says whether a file is one that Render wrote, of whatever version.
func IsReport(file []byte) bool {
	var log struct {
		Runs []struct {
			Tool struct{ Driver struct{ Name string } }
		}
	}
	return json.Unmarshal(file, &log) == nil && len(log.Runs) == 1 && log.Runs[0].Tool.Driver.Name == driverName
}

const driverName = "Hingeline"
