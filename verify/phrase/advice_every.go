package phrase

// everyWays are ways of speaking about every position.
func everyWays() []rewording {
	return []rewording{
		plain(`^(?:if|while|as long as|so long as|every time|any time|each time) `, "whenever "),
		plain(`\b(?:no matter|never mind) (?:what|where|how|how far) the (.+?) (?:does|do|is|are|stands?|moves?|goes)\b`, "whatever the $1 does"),
		plain(`\b(?:regardless of|irrespective of|independently of) (?:the )?([^,]+),`, "whatever the $1 does,"),
		plain(`\b(?:wherever|however) the (.+?) (?:is|are|stands?|goes)\b`, "at every position of the $1"),
		plain(`\b(?:for|in|with|under|over) (?:every|any|all|each) (switch|stick|lever|trim) (?:positions?|settings?|states?)\b`, "at every $1 position"),
		plain(`\bat (?:every|any|all|each) (switch|stick|lever|trim) (?:settings?|states?)\b`, "at every $1 position"),
		plain(`^(?:under all circumstances|in any case|in every case|at all times|at any time|everywhere),? `, "whatever else moves, "),
		plain(`\b(?:must|may|can|should|shall|will) (never|always)\b`, "$1"),
		plain(`\b(?:does|do) not ever\b`, "never"),
		plain(`\b(?:only (?:follows?|obeys?|answers?(?: to)?|reacts? to|moves? with|listens? to)|(?:follows?|obeys?|answers?(?: to)?|reacts? to|listens? to) (?:nothing but|only))\b`, "depends on nothing but"),
		plain(`\bthe ([^,]+?) (?:does not|doesn't|do not|don't) depend on the ([^,]+)$`, "whatever the $2 does, the $1 stays still"),
		plain(`\b(?:hits?|touches|strikes?|gets? to|comes? to|runs? into|runs? against) (its|their) (?:end stops?|stops?|ends?|limits?)\b`, "reaches $1 stop"),
		plain(`\b(?:clips?|saturates?|maxes out|overdrives?|exceeds? its travel|runs? out of throw)\b`, "runs out of travel"),
		plain(`\bnone of the (.+?)s ever\b`, "no $1 ever"),
	}
}
