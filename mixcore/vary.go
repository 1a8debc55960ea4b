package mixcore

import "slices"

// Vary is the plan of the set-up with an edit: what Compile would make of it, but
// worked out again only where the edit changed something. Fault finders, who try
// hundreds of mistakes, need it to be quick. The plan itself does not change. The
// edit may not add or take away controls; conditions and curves it must replace,
// not change (see [Setup.Clone]).
func (p *Plan) Vary(edit func(*Setup)) (*Plan, []Fault) {
	s := p.setup.Clone()
	edit(&s)
	return compile(s, p)
}

// sameDemand says whether a demand compiles to what it was.
func sameDemand(a, b *Demand) bool {
	return a.From == b.From && a.Trim == b.Trim && a.TrimRange == b.TrimRange && a.Curve == b.Curve &&
		slices.Equal(a.Values, b.Values) && slices.Equal(a.Rates, b.Rates)
}

// sameDrive says whether a servo and its linkage are what they were and have to
// cover what they had to.
func sameDrive(was, is *Setup, part, index int) bool {
	a, b := &was.Parts[part].Drives[index], &is.Parts[part].Drives[index]
	if a.Servo != b.Servo || a.Sign != b.Sign || !slices.Equal(a.Table, b.Table) ||
		(a.Linkage == nil) != (b.Linkage == nil) || a.Linkage != nil && *a.Linkage != *b.Linkage ||
		was.Parts[part].Motion != is.Parts[part].Motion {
		return false
	}
	low, high := was.Channels[a.Channel].Reach()
	lowNow, highNow := is.Channels[b.Channel].Reach()
	return low == lowNow && high == highNow
}
