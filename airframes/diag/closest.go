package diag

import (
	"slices"
	"strings"
	"unicode"
	"unicode/utf8"
)

// longestSuggested is the most characters that a name may have for Closest to
// look for one like it, longestCandidate the most bytes for it to be one.
const (
	longestSuggested = 60
	longestCandidate = 500
)

// Closest finds the name that a person most likely meant: the one with the
// fewest slips of the hand (a letter wrong, missing, too many, or two
// swapped; capitals do not count), at most one slip in each three letters. The
// same words in another order count, and so does a name that is the only one to
// hold all the words given, unless another is one slip away. Of equals the
// first wins. A name is never taken for its opposite: see crosses.
func Closest(name string, among []string) (best string, ok bool) {
	wanted := writtenOut(strings.ToLower(strings.TrimSpace(name)))
	length := utf8.RuneCountInString(wanted)
	if length == 0 || length > longestSuggested {
		return "", false
	}
	fewest := max(length/3, 1)
	if length < 3 {
		fewest = 0
	}
	words := wordsOf(wanted)
	var holding []string
	for _, candidate := range among {
		if candidate == name || len(candidate) > longestCandidate {
			continue
		}
		lower := strings.ToLower(candidate)
		if crosses(wanted, lower) {
			continue
		}
		candidateWords := wordsOf(lower)
		if len(words) > 1 && sameWords(words, candidateWords) {
			return candidate, true
		}
		if holdsWords(candidateWords, words) {
			holding = append(holding, candidate)
		}
		if difference := utf8.RuneCountInString(lower) - length; difference > fewest || -difference > fewest {
			continue
		}
		slips := distance([]rune(wanted), []rune(lower), fewest)
		if slips < fewest || slips == fewest && !ok {
			best, ok, fewest = candidate, true, slips
		}
	}
	if len(holding) == 1 && (!ok || fewest > 1) {
		return holding[0], true
	}
	return best, ok
}

// wordsOf parts a name into its words, and a key into its own and its unit: chord_mm
// holds the word chord.
func wordsOf(name string) []string {
	return strings.FieldsFunc(name, func(r rune) bool { return unicode.IsSpace(r) || r == '_' })
}

func sameWords(a, b []string) bool {
	if len(a) != len(b) {
		return false
	}
	a, b = slices.Sorted(slices.Values(a)), slices.Sorted(slices.Values(b))
	return slices.Equal(a, b)
}

func holdsWords(all, some []string) bool {
	for _, word := range some {
		if !slices.Contains(all, word) {
			return false
		}
	}
	return true
}

// distance is the number of insertions, deletions, substitutions and swaps of
// neighbours that turn a into b, no part changed twice (Damerau–Levenshtein,
// optimal string alignment). If it is more than most, it is some number more
// than most, found sooner.
func distance(a, b []rune, most int) int {
	before, above, row := make([]int, len(b)+1), make([]int, len(b)+1), make([]int, len(b)+1)
	for j := range above {
		above[j] = j
	}
	for i := 1; i <= len(a); i++ {
		row[0] = i
		least := i
		for j := 1; j <= len(b); j++ {
			cost := 1
			if a[i-1] == b[j-1] {
				cost = 0
			}
			row[j] = min(above[j]+1, row[j-1]+1, above[j-1]+cost)
			if i > 1 && j > 1 && a[i-1] == b[j-2] && a[i-2] == b[j-1] {
				row[j] = min(row[j], before[j-2]+1)
			}
			least = min(least, row[j])
		}
		if least > most+1 {
			return least
		}
		before, above, row = above, row, before
	}
	return above[len(b)]
}
