package mistake

import (
	"example.com/hingeline/airframes"
	"example.com/hingeline/mixcore"
	"example.com/hingeline/verify/chain/where"
)

// Needless are the changes that take a setting out which a set-up can do without: every
// sub-trim. They are tried as repairs and are no mistakes to be made on purpose: a sub-trim
// that is needed is often too small for its loss to be seen.
func Needless(m *airframes.Model) []Mistake {
	l := &lister{m: m, s: &m.Setup}
	for _, k := range kinds {
		if k.Code == "sub-trim-off" {
			l.kind = k
		}
	}
	for i := range l.s.Channels {
		if l.s.Channels[i].SubTrim == 0 {
			continue
		}
		name := l.channel(i)
		l.add(words{
			"the sub-trim of " + name + " is missing",
			"take the sub-trim of " + name + " out",
			"put the sub-trim of " + name + " back",
		}, where.Channel(m, i, "sub_trim"), func(s *mixcore.Setup) { s.Channels[i].SubTrim = 0 })
	}
	return l.found
}
