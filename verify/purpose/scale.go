package purpose

import (
	"slices"
	"strings"

	"example.com/hingeline/airframes"
	"example.com/hingeline/mixcore"
)

// Scale ranks the names of places by how much of something they ask for.
type Scale map[string]int

// The ranks of the scales.
const (
	none = 0
	some = 1
	half = 2
	full = 4
)

var (
	// Lowered is how far down a name says that flaps are.
	Lowered = merge(Scale{"reflex": -1, "speed": -1, "up": none, "raised": none, "down": full, "lowered": full,
		"thermal": some, "launch": some, "takeoff": some, "start": some, "approach": half, "landing": full - 1, "crow": full, "butterfly": full}, shutOpen, flying)
	// Raised is how far up a name says that spoilers are, which rise as they open.
	Raised = merge(Scale{"down": none, "lowered": none, "up": full, "raised": full}, Braked)
	// Braked is how far open a name says that brakes are. Up and down are not on
	// it: brakes of one model rise, of another drop.
	Braked = merge(Scale{"approach": half, "landing": full, "crow": full, "butterfly": full}, shutOpen, flying)
	// Opened is how far open a name says that a throttle is.
	Opened = merge(Scale{"stop": none, "stopped": none, "idle": none, "cut": none, "low": some, "cruise": half, "climb": full - 1, "high": full - 1, "max": full}, shutOpen)
	// Outward is how far out a name says that a retract, hook or door is.
	Outward = merge(Scale{"up": none, "raised": none, "hold": none, "locked": none,
		"down": full, "lowered": full, "release": full, "released": full, "drop": full}, shutOpen)

	shutOpen = Scale{
		"in": none, "shut": none, "closed": none, "close": none, "retracted": none, "stowed": none, "parked": none, "off": none, "zero": none, "none": none,
		"half": half, "mid": half,
		"full": full, "open": full, "out": full, "extended": full, "deployed": full, "on": full,
	}
	flying = Scale{"clean": none, "cruise": none, "normal": none, "neutral": none}
)

func merge(scales ...Scale) Scale {
	all := Scale{}
	for _, s := range scales {
		for word, rank := range s {
			all[word] = rank
		}
	}
	return all
}

// ForBrakes is the scale of a control that is for brakes: where it speaks of
// spoilers, up is open.
func ForBrakes(words []string) Scale {
	if hasAny(words, spoilerWords) {
		return Raised
	}
	return Braked
}

// Rank is the place of a name on a scale, by those of its words that are on it,
// as in "flaps up"; false if there are none, or if they do not agree.
func (s Scale) Rank(name string) (int, bool) {
	rank, known := 0, false
	for _, word := range strings.Fields(strings.ReplaceAll(airframes.FoldName(name), "take off", "takeoff")) {
		at, on := s[word]
		switch {
		case !on:
		case known && at != rank:
			return 0, false
		default:
			rank, known = at, true
		}
	}
	return rank, known
}

// IsOut is whether a name says that something is out rather than in; false,
// false where it says neither.
func (s Scale) IsOut(name string) (out, known bool) {
	rank, known := s.Rank(name)
	return rank > half, known && rank != half
}

// Opens says whether a movement of a lever or switch asks for more (+1) or less
// (−1) of what a scale ranks; 0 where nobody can tell.
func Opens(c *mixcore.Control, from, to float64, s Scale) int {
	was, wasKnown := s.Rank(PlaceName(c, from))
	is, isKnown := s.Rank(PlaceName(c, to))
	switch {
	case wasKnown && isKnown && was != is:
		return sign(is > was)
	case c.Kind != mixcore.LeverControl || from == to:
		return 0
	case to > from:
		return upward(c, s)
	}
	return -upward(c, s)
}

// upward is +1 for a lever that asks for more as it goes up, −1 for one that asks
// for less, by the names of its detents, which have to be known and in order; up is
// more where it has none. 0 where nobody can tell.
func upward(c *mixcore.Control, s Scale) int {
	if len(c.Detents) == 0 {
		return 1
	}
	var ranks []int
	for _, d := range c.Detents {
		rank, known := s.Rank(d.Name)
		if !known {
			return 0
		}
		ranks = append(ranks, rank)
	}
	const middle = 50
	if len(ranks) == 1 {
		if ranks[0] == none {
			return sign(float64(c.Detents[0].At) < middle)
		}
		return 0
	}
	falling := slices.Clone(ranks)
	slices.Reverse(falling)
	rises, falls := slices.IsSorted(ranks), slices.IsSorted(falling)
	if rises == falls { // in no order, or all alike
		return 0
	}
	return sign(rises)
}

func sign(plus bool) int {
	if plus {
		return 1
	}
	return -1
}
