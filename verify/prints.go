package verify

import (
	"crypto/sha256"
	"encoding/hex"

	"example.com/hingeline/airframes"
	"example.com/hingeline/verify/result"
	"example.com/hingeline/verify/script"
)

// prints are the fingerprints of the files that an answer rests on, the airframe file
// first.
func prints(m *airframes.Model, files []script.File) []result.Print {
	list := []result.Print{printOf(m.Source.Name, m.Source.Text)}
	for _, f := range files {
		list = append(list, printOf(f.Name, f.Text))
	}
	return list
}

func printOf(name string, text []byte) result.Print {
	sum := sha256.Sum256(text)
	return result.Print{File: name, SHA256: hex.EncodeToString(sum[:])}
}
