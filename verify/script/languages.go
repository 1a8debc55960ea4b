package script

import (
	"fmt"
	"slices"
	"strings"
	"sync"

	gherkin "github.com/cucumber/gherkin/go/v42"
)

// languages are the codes of the languages in which Gherkin has keywords. The
// library looks a code up and does not list them.
var languages = strings.Fields("af am amh an ar ast az be bg bm bs ca cs cy-GB da de el em en en-Scouse en-au en-lol en-old " +
	"en-pirate en-tx eo es et fa fi fr ga gj gl he hi hr ht hu id is it ja jv ka kn ko lt lu lv mk-Cyrl mk-Latn ml mn mr ne nl no " +
	"pa pl pt ro ru sk sl sr-Cyrl sr-Latn sv ta te th tlh tr tt uk ur uz vi zh-CN zh-TW")

// english is the dialect whose keywords are looked for in every file: its
// sentences are English whatever its keywords are.
var english = gherkin.DialectsBuiltin().GetDialect(gherkin.DefaultDialect)

// headings are the words of a dialect that a colon makes a heading.
func headings(dialect *gherkin.Dialect) []string {
	return slices.Concat(dialect.FeatureKeywords(), dialect.RuleKeywords(), dialect.ScenarioKeywords(),
		dialect.ScenarioOutlineKeywords(), dialect.BackgroundKeywords(), dialect.ExamplesKeywords())
}

// tongue is a language with its keywords as a line begins with them.
type tongue struct {
	*gherkin.Dialect
	headings []string // with their colon
	steps    []string // with the space that some have behind them
}

// tongues are all languages but English.
var tongues = sync.OnceValue(func() (list []tongue) {
	for _, code := range languages {
		if code == gherkin.DefaultDialect {
			continue
		}
		t := tongue{Dialect: gherkin.DialectsBuiltin().GetDialect(code)}
		for _, heading := range headings(t.Dialect) {
			t.headings = append(t.headings, heading+":")
		}
		for _, step := range t.StepKeywords() {
			if word := strings.TrimSpace(step); word != "*" && !slices.Contains(plainWords, strings.ToLower(word)) {
				t.steps = append(t.steps, step)
			}
		}
		list = append(list, t)
	}
	return list
})

// plainWords are everyday English words that are keywords of some other
// language.
var plainWords = strings.Fields("a ac ale an aye be bet but cal data date de do dun ed ha i in let logo ma men no pak tad tak ter un y'know")

// foreign is a keyword of a language that is not the file's.
type foreign struct {
	keyword string
	tongue
}

// hint says how the file may say its language.
func (f foreign) hint() string {
	return fmt.Sprintf("if the keywords of this script are %s, make \"# language: %s\" its first line", f.Name, f.Language)
}

// foreign finds the keyword of another language that a line begins with. Of
// several languages it takes the one in which most lines of the file have one. What
// may be a slip of the hand is one unless another line speaks that language too.
func (d *document) foreign(line string) (found foreign, is bool) {
	most := 0
	for _, t := range tongues() {
		keyword, ok := t.keyword(line)
		if !ok || t.Language == d.dialect.Language {
			continue
		}
		if lines := d.linesIn(t); lines > most {
			most, found, is = lines, foreign{keyword, t}, true
		}
	}
	if most == 1 {
		_, slip := d.keywordLike(firstWord(line))
		return found, !slip
	}
	return found, is
}

// linesIn is how many lines of the file begin with a keyword of a language.
func (d *document) linesIn(t tongue) int {
	if lines, known := d.spoken[t.Language]; known {
		return lines
	}
	lines := 0
	for _, line := range d.lines {
		if _, ok := t.keyword(strings.TrimSpace(line)); ok {
			lines++
		}
	}
	if d.spoken == nil {
		d.spoken = map[string]int{}
	}
	d.spoken[t.Language] = lines
	return lines
}

// keyword is the one that a line begins with.
func (t tongue) keyword(line string) (string, bool) {
	for _, words := range [][]string{t.headings, t.steps} {
		for _, word := range words {
			if strings.HasPrefix(line, word) {
				return strings.TrimRight(word, ": "), true
			}
		}
	}
	return "", false
}
