package html

import (
	"math"
	"regexp"
	"strconv"
	"strings"
	"testing"
)

var (
	colours = regexp.MustCompile(`--(\w+): #([0-9a-f]{6});`)
	scheme  = regexp.MustCompile(`(?s):root \{(.*?)\}`)
)

// luminance is the relative luminance of WCAG 2.2.
func luminance(hex string) float64 {
	n, err := strconv.ParseUint(hex, 16, 32)
	if err != nil {
		panic(err)
	}
	linear := func(shift int) float64 {
		c := float64(n>>shift&0xff) / 255
		if c <= 0.04045 {
			return c / 12.92
		}
		return math.Pow((c+0.055)/1.055, 2.4)
	}
	return 0.2126*linear(16) + 0.7152*linear(8) + 0.0722*linear(0)
}

func contrast(a, b string) float64 {
	x, y := luminance(a), luminance(b)
	return (max(x, y) + 0.05) / (min(x, y) + 0.05)
}

// Contrasts that WCAG 2.2 asks for at level AA: of words (1.4.3), of lines (1.4.11).
const (
	contrastOfWords = 4.5
	contrastOfLines = 3
)

func tooFaint(css string) (found []string) {
	for i, block := range scheme.FindAllStringSubmatch(css, -1) {
		set := map[string]string{}
		for _, c := range colours.FindAllStringSubmatch(block[1], -1) {
			set[c[1]] = c[2]
		}
		if len(set) != 10 {
			found = append(found, "scheme "+strconv.Itoa(i)+" has not ten colours")
		}
		for _, behind := range []string{"paper", "panel"} {
			for _, words := range []string{"ink", "soft", "good", "bad", "heed", "link"} {
				if contrast(set[words], set[behind]) < contrastOfWords {
					found = append(found, words+" on "+behind)
				}
			}
			if contrast(set["line"], set[behind]) < contrastOfLines {
				found = append(found, "line on "+behind)
			}
		}
		if contrast(set["ink"], set["pale"]) < contrastOfWords {
			found = append(found, "ink on pale")
		}
	}
	return found
}

func TestColoursCanBeTold(t *testing.T) {
	if got := contrast("000000", "ffffff"); math.Abs(got-21) > 1e-9 {
		t.Errorf("black on white is %g, WCAG 2.2 says 21", got)
	}
	if n := len(scheme.FindAllString(styleText, -1)); n != 2 {
		t.Fatalf("%d schemes, wanted light and dark", n)
	}
	for _, f := range tooFaint(styleText) {
		t.Errorf("%s is too faint", f)
	}
	if len(tooFaint(strings.ReplaceAll(styleText, "--soft: #4a5160", "--soft: #9a9a9a"))) == 0 {
		t.Error("a colour that is too faint is not found")
	}
}
