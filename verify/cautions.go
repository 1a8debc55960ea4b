package verify

import "example.com/hingeline/airframes"

// Cautions are what nothing that is computed can see, and is left to do with the model
// itself, each a sentence, the dangerous part first.
func Cautions(m *airframes.Model) []string { return cautions(m) }
