package smt

import (
	"fmt"
	"math/big"

	"example.com/hingeline/mixcore"
	"example.com/hingeline/mixcore/effect"
	"example.com/hingeline/verify/prove"
)

// turns is the negation of a claim about which way the model turns, with the moments
// of package effect: a part's moment is each·place + size·|place|.
func (s *script) turns(w prove.Turn) truth {
	s.needsOther()
	air := effect.New(s.setup)
	var moments [mixcore.Yaw + 1][]number
	var uncertain []number
	for part := range s.setup.Parts {
		if !air.Acts(part) {
			continue
		}
		in := air.Influence(part)
		if in == (effect.Influence{}) {
			continue
		}
		now, other := s.now.place(part), s.other.place(part)
		name := s.setup.Parts[part].Name
		by := s.define(name+" moved by", "How far "+name+" moves.", minus(now, other))
		larger := s.define(name+" larger by", "How much further from neutral "+name+" stands.", minus(size(now), size(other)))
		weight := new(big.Rat)
		for axis := mixcore.Roll; axis <= mixcore.Yaw; axis++ {
			each, perSize := ratOf(in.Each.About(axis)), ratOf(in.Size.About(axis))
			moments[axis] = append(moments[axis], scaled(by, each), scaled(larger, perSize))
			weight.Add(weight, new(big.Rat).Abs(each))
			weight.Add(weight, new(big.Rat).Abs(perSize))
		}
		up := ratOf(in.Unplaced)
		uncertain = append(uncertain, scaled(by, up))
		weight.Add(weight, new(big.Rat).Abs(up))
		// At both positions; a fifth of a moment, at most, counts once more in what is enough.
		s.off(product(product(weight, big.NewRat(5, 2)), s.errorOf(part)))
	}
	words := [...]string{mixcore.Roll: "roll", mixcore.Pitch: "pitch", mixcore.Yaw: "yaw"}
	var about [mixcore.Yaw + 1]number
	for axis := mixcore.Roll; axis <= mixcore.Yaw; axis++ {
		about[axis] = s.define(words[axis]+" moment", fmt.Sprintf("What the movement does in %s: right, nose up and nose right are plus.", words[axis]), sum(moments[axis]...))
	}
	lift := s.define("uncertain lift", "", sum(uncertain...))
	unsure := s.define("pitch unsure by", "How far the pitch may be off, for parts whose downwash nobody has measured.",
		scaled(size(lift), ratOf(effect.UnplacedArm)))
	var doubt number
	switch w.Axis {
	case mixcore.Roll:
		doubt = s.define("roll unsure by", "How far the roll may be off, for what a yaw may bring by the dihedral.",
			scaled(size(about[mixcore.Yaw]), ratOf(effect.Dihedral)))
	case mixcore.Pitch:
		doubt = unsure
	default:
		doubt = whole(0)
	}
	m, least := about[w.Axis], exactly(ratOf(effect.LeastMoment))
	if w.None {
		quiet := s.define("quiet", "How much less moment there is than what counts at all.", minus(minus(least, size(m)), doubt))
		return compare("<=", quiet, exactly(new(big.Rat).Neg(s.clearance)))
	}
	if !w.Plus {
		m = negative(m)
	}
	if w.Not && !w.Told {
		away := s.define("away", "How much less moment there is that way than what counts at all.", minus(minus(least, m), doubt))
		return compare("<=", away, exactly(new(big.Rat).Neg(s.clearance)))
	}
	if w.Axis == mixcore.Roll && air.Rollers() {
		doubt = whole(0)
	}
	strongest := s.define("pitch for sure", "", minus(size(about[mixcore.Pitch]), unsure))
	for _, axis := range []mixcore.Axis{mixcore.Roll, mixcore.Yaw} {
		strongest = s.define("strongest", "", larger(size(about[axis]), strongest))
	}
	enough := s.define("enough", "The least moment that counts beside the others.",
		larger(s.define("enough beside the others", "", scaled(strongest, ratOf(effect.Significant))), least))
	clear := s.define("clear", "How much more moment there is than it takes to say for sure.", minus(minus(m, doubt), enough))
	if w.Not {
		return compare(">=", clear, exactly(s.clearance))
	}
	return compare("<", clear, exactly(new(big.Rat).Neg(s.clearance)))
}
