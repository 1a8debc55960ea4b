package html

import "bytes"

const (
	// generator is what the head of every page holds, within its first headBytes.
	generator = `<meta name="generator" content="hingeline">`
	headBytes = 512
)

// IsReport says whether a file is a page that Render wrote, of whatever version.
func IsReport(file []byte) bool {
	head := file[:min(len(file), headBytes)]
	return bytes.HasPrefix(head, []byte("<!doctype html>")) && bytes.Contains(head, []byte(generator))
}
