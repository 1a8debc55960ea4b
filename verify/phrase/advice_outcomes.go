package phrase

import (
	"regexp"
	"slices"
	"strings"
	"sync"
)

// thirdPerson is a verb as it follows one part.
var thirdPerson = map[string]string{
	"rise": "rises", "drop": "drops", "move": "moves", "go": "goes", "stay": "stays", "stop": "stops", "run": "runs", "speed": "speeds",
	"slow": "slows", "extend": "extends", "retract": "retracts", "point": "points", "roll": "rolls", "pitch": "pitches", "yaw": "yaws",
	"add": "adds", "have": "has", "agree": "agree", "be": "is", "lift": "lifts", "raise": "raises", "lower": "lowers", "fall": "falls", "turn": "turns",
	"start": "starts", "remain": "remains", "deflect": "deflects", "swing": "swings",
}

// afterModal is a verb behind a name, of which "s" at the end means several.
func afterModal(name, verb string) string {
	verb = strings.ToLower(verb)
	if strings.HasSuffix(strings.ToLower(name), "s") {
		if verb == "be" {
			return name + " are"
		}
		return name + " " + verb
	}
	return name + " " + thirdPerson[verb]
}

// inPlural puts a verb behind the name of several parts as it follows several:
// "the flaps drop". It changes no meaning, for sentences take both.
func inPlural(text string) string {
	words := strings.Split(text, " ")
	for i := 1; i < len(words); i++ {
		name, before := words[i-1], ""
		if i > 1 {
			before = words[i-2]
		}
		if len(name) < 4 || !strings.HasSuffix(name, "s") || strings.HasSuffix(name, "ss") || before != "the" && before != "both" && before != "all" && isThirdPerson(name) {
			continue
		}
		for verb, one := range thirdPerson {
			switch {
			case words[i] != one:
			case verb == "be":
				words[i] = "are"
			default:
				words[i] = verb
			}
		}
	}
	return strings.Join(words, " ")
}

func isThirdPerson(word string) bool {
	for _, one := range thirdPerson {
		if one == word {
			return true
		}
	}
	return false
}

// outcomeWords are what parts do, in other words. None of them may turn one way
// into another: the test of advice writes every one of them out.
func outcomeWords() []rewording {
	verbs := make([]string, 0, len(thirdPerson))
	for verb := range thirdPerson {
		verbs = append(verbs, verb)
	}
	verb := `(` + strings.Join(verbs, "|") + `)\b`
	modal := func(_ *Vocabulary, f []string) string { return afterModal(f[1], f[2]) }
	const upright = `(?:up(?:wards?)?)\b`
	const downright = `(?:down(?:wards?)?)\b`
	return []rewording{
		{regexp.MustCompile(`(\S+) (?:should|must|shall|will|would|has to|have to|needs to|need to|ought to|is to|are to|is supposed to|is expected to|to|can) ` + verb), modal},
		plain(`\b(?:should|must|shall|will|would|may|can) not move\b`, "does not move"),
		plain(`\b(?:lifts|raises|lift|raise|is raised|is lifted|are raised|climbs|is rising|is moving up|is going up|(?:deflects|swings|comes|tips|travels|flips|turns|deflect|swing|come|moves|goes) `+upright+`)`, "rises"),
		plain(`\b(?:lowers|falls|sinks|dips|lower|fall|is lowered|are lowered|is dropping|is falling|is moving down|is going down|(?:deflects|swings|comes|tips|travels|flips|turns|deflect|swing|come|moves|goes) `+downright+`)`, "drops"),
		plain(`\b(?:deflects|swings|turns|steers|kicks|comes|travels|points|shifts|is moving|is going|is turning|deflect|swing|turn|steer)(?: to(?: the)?)? (left|right)\b`, "moves $1"),
		plain(`\b(moves|goes|move|go) to the (left|right)\b`, "$1 $2"),
		plain(`\bmoves backwards?\b`, "moves back"),
		// "elevator up" of a part.
		{regexp.MustCompile(`(\S+) (up|down|left|right)( and |, | \d|$)`), func(_ *Vocabulary, f []string) string {
			if slices.Contains(outcomeVerbs, f[1]) || thirdPerson[f[1]] != "" || f[1] == "full" || f[1] == "half" || f[1] == "not" {
				return ""
			}
			moves := map[string]string{"up": "rises", "down": "drops", "left": "moves left", "right": "moves right"}[f[2]]
			return f[1] + " " + moves + f[3]
		}},
		plain(`\b(?:remains?|keeps?|holds?) (still|stopped)\b`, "stays $1"),
		plain(`\b(?:stays?|remains?|keeps?|holds?|is) (?:put|in place|where it was|unmoved|motionless|its position|as it is|steady|fixed)\b`, "stays still"),
		plain(`\bis still\b`, "stays still"),
		plain(`\bare still\b`, "stay still"),
		plain(`\b(?:does nothing|is not moving|isn't moving|does not move at all|doesn't move at all|does not budge|won't move|will not move|is unaffected|is not affected)\b`, "does not move"),
		plain(`\b(?:do nothing|are not moving|aren't moving|do not move at all|are unaffected)\b`, "do not move"),
		plain(`\b(?:stays?|remains?|rests?|returns? to|goes (?:back )?to|comes back to|centres at|stands) (?:at )?(?:the )?(?:neutral|centred|centered|centre|center|middle)\b`, "is at neutral"),
		plain(`\b(?:centres|centers|is level|is flush|is straight|is in the middle|is at 0°|is 0°|is at zero|is in neutral)\b`, "is at neutral"),
		plain(`\bmoves (?:the )?(?:opposite way to|opposite way of|opposite from|against|contrary to|opposed to|in the opposite direction to|inversely to|the other way (?:than|from|to))\b`, "moves opposite to"),
		plain(`\bmoves (?:with|like|the same way as|in the same direction as|alongside|in step with)\b|\bfollows\b`, "moves together with"),
		plain(`\bmoves (?:exactly )?(?:as much as|the same amount as|the same as|equally to|just as far as|by as much as)\b`, "moves as far as"),
		plain(`\bmoves (?:further|farther|by more) than\b`, "moves more than"),
		plain(`\bmoves (?:less far|not as far|by less) (?:than|as)\b`, "moves less than"),
		plain(`\bis (?:pointing|pointed|deflected|turned|set) `, "is "),
		plain(`\b(?:stands|sits|rests|points|hangs) (\d|up|down|at)`, "is $1"),
		plain(`\b(?:is|are) (?:extended|deployed)\b`, "is out"),
		plain(`\b(?:is|are) (?:retracted|stowed)\b`, "is in"),
		plain(`,? (?:and )?then (?:the )?`, " and the "),
		plain(`\b(?:is|are) (?:going to|about to) `, "should "),
		plain(`\bthe servos of (.+) (?:do not fight|don't fight|work together|pull together|match)\b`, "the servos of $1 agree"),
		plain(`\bthe (.+) servos (?:do not fight|don't fight|work together|pull together|match)\b`, "the $1 servos agree"),
	}
}

// motorWords are what motors do, in other words.
func motorWords() []rewording {
	return []rewording{
		plain(`\b(?:is|are) (?:off|dead|switched off|turned off|not running|not turning|silent|cut|shut down)\b|\b(?:does not|doesn't|won't|will not|cannot|can't) (?:run|turn|start|spin)\b|\b(?:isn't|is never) running\b`, "is stopped"),
		plain(`\b(?:remains|stays|keeps|remain|stay) (?:off|dead|silent|not running|at zero|shut down|quiet)\b`, "stays stopped"),
		plain(`\b(?:never|does not ever) (?:starts?|turns?|spins?)\b`, "never runs"),
		plain(`\b(?:cuts out|cuts|shuts down|shuts off|dies|switches off|turns off|goes off|halts|comes to a stop|is cut|quits)\b`, "stops"),
		plain(`\b(?:starts|starts up|starts running|comes on|turns|spins|spins up|is on|is alive|goes on|turns on|switches on|starts to run|begins to run|is turning|is spinning|rotates)\b`, "runs"),
		plain(`\b(?:revs up|accelerates|goes faster|runs faster|spools up|spins faster|turns faster|gets faster|increases)\b`, "speeds up"),
		plain(`\b(?:decelerates|goes slower|runs slower|throttles back|spins slower|turns slower|gets slower|decreases|revs down)\b`, "slows down"),
		plain(`\b(?:runs|is running|is|gives|goes|turns) (?:on |with )?(?:at )?(?:full power|full|full speed|full throttle)\b`, "is at 100%"),
		plain(`\bruns (?:at|on|with) (\d)`, "is at $1"),
		plain(`\bgives (\d)`, "is at $1"),
		plain(`\bhas (\d+) ?(?:%|percent)(?: power)?`, "is at $1%"),
	}
}

// talk is what people write around a sentence.
func talk() []rewording {
	return []rewording{
		plain(`^(?:that|then|now|also|i expect(?: that)?|we expect(?: that)?|expect(?: that)?|i see(?: that)?|we see(?: that)?|verify(?: that)?|check(?: that)?|make sure(?: that)?|ensure(?: that)?|assert(?: that)?|it is so that|of course|please) `, ""),
		plain(`^(?:i|we|you|the pilot|he|she) (?:have |has |can see )?`, ""),
		plain(`\b(?:also|again|now|fully|clearly|correctly|smoothly|properly|too|as well) ?`, ""),
		plain(`\bboth of the\b`, "both"),
		plain(`\ball of the\b`, "all"),
		plain(`\b(?:plane|aircraft|glider|airframe)\b`, "model"),
		plain(`\bthe (?:nose goes|nose rises|nose comes) up\b`, "the model pitches up"),
		plain(`\bthe nose (?:goes|drops|falls|comes)(?: down)?\b`, "the model pitches down"),
		plain(`\b(?:banks|leans)(?: to the)? (left|right)\b`, "rolls $1"),
		plain(`\b(?:climbs|pulls up)$`, "pitches up"),
		plain(`\b(?:dives|noses down)$`, "pitches down"),
		plain(`\bdeliberately\b|\bintentionally\b|\bby design\b|\bas intended\b|\bwanted so\b`, "on purpose"),
		plain(`\b(port|starboard|left|right) wing (aileron|flap|spoiler)`, "$1 $2"),
		plain(`\b(aileron|flap|elevon|v-tail) (?:on the )?(left|right|port|starboard)(?: side| wing)?\b`, "$2 $1"),
		plain(`\b(stbd|stb)\b`, "starboard"),
		plain(`\b(rt|r/h|rh)\b`, "right"),
		plain(`\b(lft|l/h|lh)\b`, "left"),
	}
}

// warnings are for texts that no rewording may decide.
var warnings = sync.OnceValue(func() []warning {
	about := func(pattern, hint string) warning { return warning{regexp.MustCompile(pattern), hint} }
	return []warning{
		about(`\b(?:does not|doesn't|do not|don't|must not|should not|shouldn't|won't|cannot) (?:rise|go up|move up|lift)`, `write "drops", "stays still" or "is at neutral": what does not rise may do any of them`),
		about(`\b(?:does not|doesn't|do not|don't|must not|should not|shouldn't|won't|cannot) (?:drop|go down|move down|fall)`, `write "rises", "stays still" or "is at neutral": what does not drop may do any of them`),
		about(`\b(?:does not|doesn't|do not|don't|must not|should not|shouldn't|won't|cannot) (?:move|go|turn) (?:left|right)`, `write "moves" the other way, "stays still" or "is at neutral"`),
		about(`\b(?:is|are) not (?:up|down|left|right|\d)`, `say where it is: up, down, left, right or at neutral`),
		about(`\bis not (?:at )?(?:neutral|centred)`, `say where it is: up, down, left or right`),
		about(`\bmodel (?:turns|goes|moves)\b`, `write "the model rolls", "pitches" or "yaws", with the way`),
		about(`\b(?:or|either)\b`, `a check wants one answer: write the one that is right`),
	}
})
