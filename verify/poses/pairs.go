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
		if s.Parts[i].Side != mixcore.Port {
			continue
		}
		if partner, ok := Partner(s, i); ok {
			pairs = append(pairs, Pair{Port: i, Starboard: partner})
		}
	}
	return pairs
}

// Partner is the part on the other side that does there what a part does here: of its
// kind and name but for the side. False if there is none.
func Partner(s *mixcore.Setup, part int) (int, bool) {
	p := &s.Parts[part]
	if p.Side == mixcore.Centre {
		return 0, false
	}
	partner := slices.IndexFunc(s.Parts, func(q mixcore.Part) bool {
		return q.Side != mixcore.Centre && q.Side != p.Side && q.Kind == p.Kind && WithoutSide(q.Name) == WithoutSide(p.Name)
	})
	return max(partner, 0), partner >= 0
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
