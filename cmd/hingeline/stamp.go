package main

import (
	"os"
	"time"
)

// stamp tells whether a file is still as it was.
type stamp struct {
	exists  bool
	mode    os.FileMode
	size    int64
	changed time.Time
}

func stampOf(name string) diskFile {
	info, err := os.Stat(name)
	if err != nil {
		return diskFile{name: name}
	}
	return diskFile{name, stamp{true, info.Mode(), info.Size(), info.ModTime()}}
}

// stale are the names of the files that are no longer as they were read.
func stale(files []diskFile) []string {
	var names []string
	for _, f := range files {
		if stampOf(f.name).stamp != f.stamp {
			names = append(names, f.name)
		}
	}
	return names
}
