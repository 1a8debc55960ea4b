package phrase

import (
	"strconv"
	"strings"
	"unicode"
)

// MaxLength is the most characters that a sentence may have.
const MaxLength = 600

// maxDigits is the most digits that a number may have, and maxPlaces how many
// of them behind the point.
const (
	maxDigits = 9
	maxPlaces = 3
)

type tokenKind uint8

const (
	wordToken tokenKind = iota
	numberToken
	symbolToken
	endToken
)

// token is one word, number or sign of a sentence.
type token struct {
	kind   tokenKind
	text   string  // lower case
	number float64 // of a number
	signed bool    // the number carries a sign
	column int     // from 1, in characters
	width  int
}

// units are the words that may stand right behind a number's digits.
var units = map[string]string{
	"°": "°", "deg": "°", "degree": "°", "degrees": "°",
	"mm": "mm", "millimetre": "mm", "millimetres": "mm",
	"%": "%", "percent": "%",
	"µs": "µs", "μs": "µs", "us": "µs", "microseconds": "µs",
	"s": "s", "sec": "s", "second": "s", "seconds": "s",
}

// tokenize cuts a text into tokens; the last is always an endToken just behind
// the text. Hyphens and underscores between letters part words, as in names.
func tokenize(text string) ([]token, *Problem) {
	runes := []rune(text)
	if len(runes) > MaxLength {
		return nil, &Problem{Column: MaxLength + 1, Width: 1, Code: CodeUnknownSentence,
			Message: "a sentence may have " + strconv.Itoa(MaxLength) + " characters, this one has " + strconv.Itoa(len(runes)),
			Hint:    "split it into several sentences"}
	}
	var tokens []token
	for i := 0; i < len(runes); {
		r := runes[i]
		switch {
		case unicode.IsSpace(r) || r == '_':
			i++
		case r == '.' && i > 0 && strings.TrimSpace(string(runes[i+1:])) == "":
			i++ // a full stop
		case (r == '-' || r == '‑') && i > 0 && i+1 < len(runes) && isWordRune(runes[i-1]) && isWordRune(runes[i+1]):
			i++ // inside a word: v-tail
		case startsNumber(runes, i):
			t, next, problem := lexNumber(runes, i)
			if problem != nil {
				return nil, problem
			}
			tokens = append(tokens, t)
			i = next
		case speedUnit(runes[i:]) > 0:
			width := speedUnit(runes[i:])
			tokens = append(tokens, token{kind: wordToken, text: strings.ToLower(string(runes[i : i+width])), column: i + 1, width: width})
			i += width
		case isWordRune(r):
			end := i
			for end < len(runes) && (isWordRune(runes[end]) || isApostrophe(runes[end])) {
				end++
			}
			word := strings.ToLower(string(runes[i:end]))
			tokens = append(tokens, token{kind: wordToken, text: strings.ReplaceAll(word, "’", "'"), column: i + 1, width: end - i})
			i = end
		default:
			width := 1
			symbol := string(r)
			if r == '+' && i+1 < len(runes) && runes[i+1] == '-' {
				symbol, width = "±", 2
			}
			if r == '+' && i+2 < len(runes) && runes[i+1] == '/' && runes[i+2] == '-' {
				symbol, width = "±", 3
			}
			if !strings.Contains("±°%,", symbol) {
				hint := "sentences are plain words, numbers with units, commas and ±"
				if r == '#' {
					hint = "a remark stands on a line of its own"
				}
				return nil, &Problem{Column: i + 1, Width: 1, Code: CodeUnknownSentence,
					Message: "a sentence cannot hold " + strconv.QuoteRune(r), Hint: hint}
			}
			tokens = append(tokens, token{kind: symbolToken, text: symbol, column: i + 1, width: width})
			i += width
		}
	}
	end := len([]rune(strings.TrimRightFunc(text, unicode.IsSpace)))
	return append(tokens, token{kind: endToken, column: end + 1, width: 1}), nil
}

func isWordRune(r rune) bool { return unicode.IsLetter(r) || unicode.IsDigit(r) || unicode.IsMark(r) }

func isApostrophe(r rune) bool { return r == '\'' || r == '’' }

func isDigit(r rune) bool { return r >= '0' && r <= '9' }

func isMinus(r rune) bool { return r == '-' || r == '−' }

// speedUnit is the length of a unit of speed that the text begins with, 0 if
// there is none. It is the one kind of word that holds a stroke.
func speedUnit(runes []rune) int {
	for _, unit := range []string{"km/h", "m/s"} {
		n := len(unit)
		if len(runes) >= n && strings.EqualFold(string(runes[:n]), unit) && (len(runes) == n || !isWordRune(runes[n])) {
			return n
		}
	}
	return 0
}

// startsNumber is true at a digit, and at a sign before one that does not
// stand between two numbers.
func startsNumber(runes []rune, i int) bool {
	if isDigit(runes[i]) {
		return true
	}
	if i+1 >= len(runes) || !isDigit(runes[i+1]) {
		return false
	}
	return (runes[i] == '+' || isMinus(runes[i])) && (i == 0 || !isWordRune(runes[i-1]) && runes[i-1] != '%' && runes[i-1] != '°')
}

// lexNumber reads a number from i on. Digits that run on into letters which
// are no unit are a word, such as the name "2b".
func lexNumber(runes []rune, i int) (token, int, *Problem) {
	start := i
	if !isDigit(runes[i]) {
		i++
	}
	digitsFrom := i
	for i < len(runes) && isDigit(runes[i]) {
		i++
	}
	places := 0
	if i+1 < len(runes) && runes[i] == '.' && isDigit(runes[i+1]) {
		for i++; i < len(runes) && isDigit(runes[i]); i++ {
			places++
		}
	}
	if i+1 < len(runes) && runes[i] == ',' && isDigit(runes[i+1]) {
		end := i + 1
		for end < len(runes) && isDigit(runes[end]) {
			end++
		}
		return token{}, 0, &Problem{Column: start + 1, Width: end - start, Code: CodeBadNumber,
			Message: "a decimal comma? write " + string(runes[start:i]) + "." + string(runes[i+1:end]), Hint: "a number has a point, a comma parts settings and outcomes"}
	}
	letters := i
	for letters < len(runes) && isWordRune(runes[letters]) {
		letters++
	}
	if letters > i && speedUnit(runes[i:]) == 0 {
		if _, isUnit := units[strings.ToLower(string(runes[i:letters]))]; !isUnit {
			return token{kind: wordToken, text: strings.ToLower(string(runes[start:letters])), column: start + 1, width: letters - start}, letters, nil
		}
	}
	if i-digitsFrom > maxDigits || places > maxPlaces {
		return token{}, 0, &Problem{Column: start + 1, Width: i - start, Code: CodeBadNumber,
			Message: string(runes[start:i]) + " has too many digits",
			Hint:    "numbers have at most three decimal places, such as 12.5"}
	}
	text := strings.Replace(string(runes[start:i]), "−", "-", 1)
	value, err := strconv.ParseFloat(text, 64)
	if err != nil {
		return token{}, 0, &Problem{Column: start + 1, Width: i - start, Code: CodeBadNumber,
			Message: text + " is no number", Hint: "write a plain decimal such as 12 or 7.5"}
	}
	return token{kind: numberToken, text: text, number: value, signed: start != digitsFrom, column: start + 1, width: i - start}, i, nil
}
