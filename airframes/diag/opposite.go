package diag

import (
	"slices"
	"strings"
	"unicode/utf8"
)

// apart are families of words of which one is never a slip of the hand for
// another: each string holds the words of one meaning.
var apart = [][]string{
	{"port left", "starboard right"},
	{"up above upper top rise rises raise raises raised rising", "down below lower bottom drop drops fall falls lowers lowered dropping"},
	{"forward fore front push pushed", "back backward aft rear pull pulled"},
	{"run runs running start starts started live armed spin spins turn turns", "stop stops stopped stay stays safe still disarmed"},
	{"in inside inner inboard retract retracts retracted", "out outside outer outboard extend extends extended"},
	{"half", "full fully", "quarter", "hard", "none"},
	{"high", "low", "medium mid middle"},
	{"on", "off"},
	{"open", "closed close shut"},
	{"speeds speed faster fast", "slows slow slower", "steers steer"},
	{"more most over max maximum", "less least under min minimum"},
	{"plus", "minus"},
	{"lost", "back"},
	{"before", "after"},
	{"roll rolls", "pitch pitches", "yaw yaws"},
	{"first one", "second two", "third three"},
}

// sense is the meanings that a word has: of each family it is in, which.
var sense = func() map[string][][2]int {
	all := map[string][][2]int{}
	for family, meanings := range apart {
		for meaning, words := range meanings {
			for _, word := range strings.Fields(words) {
				all[word] = append(all[word], [2]int{family, meaning})
			}
		}
	}
	return all
}()

// short are ways to write a side that no slip of the hand explains.
var short = map[string]string{"stbd": "starboard", "stb": "starboard", "rt": "right", "rh": "right", "lft": "left", "lt": "left", "lh": "left"}

// writtenOut is a name with its sides written out.
func writtenOut(name string) string {
	words := strings.Fields(name)
	changed := false
	for i, word := range words {
		if full, ok := short[word]; ok {
			words[i], changed = full, true
		}
	}
	if !changed {
		return name
	}
	return strings.Join(words, " ")
}

// crosses is true if to take a candidate for what was meant could turn it into
// its opposite: the candidate has a word, such as a side, that has opposites, and
// nothing in the name is that word, means the same or is a slip away from it.
// Both are in lower case. A name that is a part of the candidate crosses nothing.
func crosses(name, candidate string) bool {
	words, others := strings.Fields(name), strings.Fields(candidate)
	if holdsWords(others, words) {
		return false
	}
	joined := strings.Join(words, "")
	for _, other := range others {
		if len(sense[other]) > 0 && !meant(other, words) && !(strings.Contains(joined, other) && !opposed(other, words)) {
			return true
		}
	}
	return false
}

// meant is true if one of the words is the other, means the same, or has no
// meaning of its own and is a slip away from it.
func meant(other string, words []string) bool {
	slips := max(utf8.RuneCountInString(other)/3, 1)
	return slices.ContainsFunc(words, func(word string) bool {
		if word == other {
			return true
		}
		if own := sense[word]; len(own) > 0 {
			return slices.ContainsFunc(own, func(s [2]int) bool { return slices.Contains(sense[other], s) })
		}
		return distance([]rune(word), []rune(other), slips) <= slips
	})
}

// opposed is true if one of the words has another meaning in a family of the
// other's.
func opposed(other string, words []string) bool {
	return slices.ContainsFunc(words, func(word string) bool {
		return slices.ContainsFunc(sense[word], func(own [2]int) bool {
			return slices.ContainsFunc(sense[other], func(s [2]int) bool { return s[0] == own[0] && s[1] != own[1] })
		})
	})
}
