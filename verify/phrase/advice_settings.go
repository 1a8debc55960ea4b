package phrase

import (
	"regexp"
	"strings"

	"example.com/hingeline/mixcore"
	"example.com/hingeline/verify/wording"
)

// signals are the radio link in other words.
func signals() []rewording {
	return []rewording{
		plain(`(?:the )?(?:transmitter|tx|radio|handset)(?: is| gets| has been)?(?: switched| turned| powered)? off\b`, "the signal is lost"),
		plain(`(?:the )?(?:radio |receiver |control )?(?:link|signal|connection|radio|contact)(?: is| gets| has been| has)? (?:lost|gone|cut|out|off|missing|interrupted|dead|down)\b`, "the signal is lost"),
		plain(`(?:the )?(?:radio |receiver |control )?(?:link|signal|connection|radio|contact) (?:fails|drops(?: out)?|goes(?: away)?|dies|disappears|breaks|breaks off|is interrupted)\b`, "the signal is lost"),
		plain(`\b(?:the )?(?:(?:signal|link|radio) loss|loss of (?:the )?(?:signal|link|radio)|lost (?:signal|link)|no signal|fail-?safe|fail safe)(?: occurs| happens| is active| is triggered| kicks in| mode| activates)?\b`, "the signal is lost"),
		plain(`(?:the )?receiver loses (?:the )?(?:signal|link)|(?:the )?(?:model|aeroplane|airplane) (?:is|flies|goes) out of range`, "the signal is lost"),
		plain(`(?:the )?(?:radio |receiver )?(?:link|signal|connection) (?:returns|comes back|is restored|is regained|is there again|is found again)`, "the signal is back"),
		plain(`(?:the )?(?:transmitter|tx|radio)(?: is)?(?: switched| turned)? (?:back )?on(?: again)?\b`, "the signal is back"),
	}
}

// sticks are the words that go with each axis: the surface that people name
// instead of the stick, and the ways it is said to go, plus first.
var sticks = []struct {
	surface     string
	axis        mixcore.Axis
	plus, minus string
}{
	{`ailerons?`, mixcore.Roll, `right`, `left`},
	{`elevators?`, mixcore.Pitch, `up`, `down`},
	{`rudders?`, mixcore.Yaw, `right`, `left`},
	{`(?:the )?stick`, mixcore.Pitch, `back|backwards?|aft`, `forwards?|fore`},
	{`(?:the )?stick`, mixcore.Roll, `right`, `left`},
}

// stickWords are sticks called by what they move: "up elevator" is the pitch
// stick back.
func stickWords() []rewording {
	const (
		begin = `(^|,|\b(?:with|when|and|given))(\s*)(?:the )?`
		size  = `(?:(full|half|quarter|\d+ ?%) )?`
		end   = `(\s*(?:,|$|\band\b|\bwhen\b))`
	)
	var list []rewording
	for _, s := range sticks {
		for _, side := range []struct {
			words string
			plus  bool
		}{{s.plus, true}, {s.minus, false}} {
			said := func(v *Vocabulary, how string) string {
				word := axisSides[s.axis][1]
				if side.plus {
					word = axisSides[s.axis][0]
				}
				if how == "" {
					how = "full"
				}
				return strings.ToLower(how) + " " + word + " " + axisWords[s.axis]
			}
			list = append(list,
				rewording{regexp.MustCompile(begin + size + `(?:` + side.words + `) (?:` + s.surface + `)(?: stick)?` + end), func(v *Vocabulary, f []string) string {
					return f[1] + f[2] + said(v, f[3]) + f[4]
				}},
				rewording{regexp.MustCompile(begin + size + `(?:` + s.surface + `) (?:` + side.words + `)` + end), func(v *Vocabulary, f []string) string {
					return f[1] + f[2] + said(v, f[3]) + f[4]
				}},
				rewording{regexp.MustCompile(begin + `(?:` + s.surface + `)(?: stick)?(?: is| moves?| goes| at| to)* ` + size + `(?:` + side.words + `)` + end), func(v *Vocabulary, f []string) string {
					return f[1] + f[2] + said(v, f[3]) + f[4]
				}})
		}
	}
	return append(list, rewording{regexp.MustCompile(begin + `(?:(?:all )?(?:the )?sticks?(?: are| is)? (?:centred|centered|neutral|released|let go|at neutral|in the middle)|(?:centred|centered|neutral) sticks?|hands off(?: the sticks?)?)` + end),
		func(v *Vocabulary, f []string) string { return f[1] + f[2] + v.allCentred() + f[3] }})
}

// allCentred is a setting for every stick.
func (v *Vocabulary) allCentred() string {
	var said []string
	for i := range v.setup.Controls {
		if v.setup.Controls[i].Kind == mixcore.AxisControl {
			said = append(said, "the "+v.setup.Controls[i].Name+" is centred")
		}
	}
	return wording.Listed(said)
}

// settingWords are positions of controls in other words.
func settingWords() []rewording {
	return []rewording{
		plain(`\b(?:is |are |gets )?(?:pulled|pushed|held|moved|deflected|kept|brought|shoved|thrown)(?: all the way| hard| fully)?(?: to(?: the)?)? (full |half )?(right|left|back|forward)(?:wards?)?\b`, "is $1$2"),
		plain(`\b(?:pull|push|move|hold|put|bring|deflect) (?:the )?(.+?)(?: all the way| hard| fully)?(?: to(?: the)?)? (full |half )?(right|left|back|forward)(?:wards?)?\b`, "the $1 is $2$3"),
		plain(`\b(is|moves|goes)? ?(?:all the way|hard over|hard|maximum|max|maximal|complete|completely|totally)(?: to)?(?: the)? (right|left|back|forward)(?:wards?)?\b`, "$1 full $2"),
		plain(`\b(full|half) (?:to )?the (right|left|back|forward)\b`, "$1 $2"),
		plain(`\bto the (right|left|back|front)\b`, "$1"),
		plain(`\b(back|for)wards\b`, "$1ward"),
		plain(`\bbackwards?\b`, "back"),
		plain(`\bhalf[ -]?way (?:to the )?(right|left|back|forward)\b`, "half $1"),
		plain(`\b(?:a little|slightly|a bit|a touch) (right|left|back|forward)\b`, "10% $1"),
		plain(`\bis (?:released|let go(?: of)?|let loose|not touched|untouched)\b`, "is centred"),
		plain(`\b(?:returns|goes back|comes back|moves back|springs back) to (?:the )?(?:centre|center|neutral|middle)\b`, "is at neutral"),
		plain(`\b(?:in the |at the )?(?:middle|mid)\b`, "centred"),
		plain(`\bthrottle(?: is| moves| goes)?(?: at| to)? (?:(?:wide |fully |opened )?(?:open|opened)(?: up| fully)?|maximum|max|up|forward|high)\b`, "throttle full"),
		plain(`\bthrottle(?: is| moves| goes)?(?: at| to)? (?:idle|cut|shut|off|minimum|min|low|down|back)\b`, "throttle closed"),
		plain(`\b(?:open|maximum|max|wide open) throttle\b`, "full throttle"),
		plain(`\b(?:cut|shut|minimum|min) throttle\b`, "throttle closed"),
		plain(`\bfull power\b`, "full throttle"),
		plain(`\b(?:no|zero|idle|closed) (?:power|throttle)\b`, "throttle closed"),
		plain(`^(?:set|switch|move|put|turn|flip|change|bring) (?:the )?(.+?) (?:to|on|at|into|in) (.+)$`, "the $1 is at $2"),
		plain(`^(?:set|switch|turn|flip) (?:the )?(.+) (\S+)$`, "the $1 is $2"),
		plain(`^(?:apply|give|select|add|use|choose|hold) (.+)$`, "$1"),
		plain(`\b(?:is|are) (?:switched|selected|flipped|turned|set|on|in)(?: to| on| at)? `, "is "),
		plain(`\b(.+) (?:is|are) selected$`, "$1"),
		plain(`\bhigh rate\b`, "rates high"),
		plain(`\blow rate\b`, "rates low"),
	}
}
