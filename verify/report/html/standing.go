package html

import (
	"example.com/hingeline/verify/result"
	"example.com/hingeline/verify/result/said"
)

// standing is what has been signed, and what of it still stands.
type standing struct {
	mark
	Word, Summary string
	Troubles      []string
	Signatures    []signature
	Changes       []result.Change
}

// signature is one record.
type signature struct {
	mark
	Number         int
	By, Worth      string
	Key            string // of a genuine one
	Note, Tool     string
	Place, Remarks string
	OnTheModel     *remark // what it says of the model itself
	InSpiteOf      []string
}

func standingOf(s *result.Standing) *standing {
	tone, word := said.StandingOf(s)
	all := &standing{mark: markOf(tone), Word: word, Troubles: s.Troubles, Changes: s.Changes}
	if len(s.Troubles) == 0 {
		all.Summary = s.Summary
	}
	for i := range s.Signatures {
		g := &s.Signatures[i]
		tone, worth := said.SignatureOf(g)
		one := signature{
			mark: markOf(tone), Number: g.Number, By: said.SignedBy(g), Worth: worth,
			Note: g.Note, Tool: g.Tool, Place: g.Place, Remarks: g.Remarks, InSpiteOf: g.Accepted,
		}
		if g.Name != "" {
			tone, words := said.OnTheModel(g)
			one.OnTheModel = &remark{markOf(tone), words}
		}
		if g.Genuine {
			one.Key = said.Key(g)
		}
		all.Signatures = append(all.Signatures, one)
	}
	return all
}
