package sarif

import (
	"net/url"
	"path/filepath"
	"strings"

	"example.com/hingeline/verify/result"
)

// locations is a place as a list of one; empty where it is nowhere.
func locations(p result.Place) []locationJSON {
	if p.File == "" {
		return nil
	}
	l := locationJSON{Physical: physicalLocationJSON{Artifact: artifactLocationJSON{uri(p.File)}}}
	if p.Line > 0 {
		l.Physical.Region = &regionJSON{Line: p.Line, Column: max(p.Column, 0)}
		if p.Excerpt != "" {
			l.Physical.Region.Snippet = &messageJSON{p.Excerpt}
		}
	}
	return []locationJSON{l}
}

// uri is a file's name as a URI: as relative as the name is.
func uri(name string) string {
	path := filepath.ToSlash(strings.ToValidUTF8(name, "\uFFFD"))
	switch {
	case strings.HasPrefix(path, "/"):
		return (&url.URL{Scheme: "file", Path: path}).String()
	case filepath.VolumeName(name) != "":
		return (&url.URL{Scheme: "file", Path: "/" + path}).String()
	}
	return (&url.URL{Path: path}).String()
}
