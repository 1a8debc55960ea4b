package poses

import (
	"slices"
	"strings"

	"example.com/hingeline/airframes"
	"example.com/hingeline/mixcore"
)

// Pair is a port part and its starboard partner, by index.
type Pair struct{ Port, Starboard int }

// Pairs are the parts of one kind that have the same name but for the side.
func Pairs(s *mixcore.Setup) []Pair {
	var pairs []Pair
	for i := range s.Parts {
		p := &s.Parts[i]
		if p.Side != mixcore.Port {
			continue
		}
		partner := slices.IndexFunc(s.Parts, func(q mixcore.Part) bool {
			return q.Side == mixcore.Starboard && q.Kind == p.Kind && WithoutSide(q.Name) == WithoutSide(p.Name)
		})
		if partner >= 0 {
			pairs = append(pairs, Pair{Port: i, Starboard: partner})
		}
	}
	return pairs
}

// WithoutSide is a name without the word that says the side, as names are
// compared.
func WithoutSide(name string) string {
	words := strings.Fields(airframes.FoldName(name))
	words = slices.DeleteFunc(words, func(w string) bool {
		return w == "port" || w == "starboard" || w == "left" || w == "right"
	})
	return strings.Join(words, " ")
}
