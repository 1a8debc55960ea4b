package diag

// senseCodes are the codes of verify/sense: what is odd about the script itself.
var senseCodes = []CodeInfo{
	{"suspicious-expectation", "a sentence that fights the aeroplane",
		`The sentence wants a part to move so that it turns the model against the stick, or a flap or motor to answer its lever the wrong way round. A rising port flap pushes the port wing down and rolls the model left: asked for with right roll, it passes a set-up in which that flap is reversed. The check fails, whether or not the set-up does what the sentence asks, for a script that is wrong proves nothing. Only what leaves no room for opinion is looked at: one axis at a time, and kinds of part that are there for it. Where it is meant so, end the sentence with "on purpose": the report then lists it as the pilot's own decision.`},
	{"contradicting-checks", "two sentences that cannot both hold",
		`Both are about the same part, channel or turn, with the controls moved from the same place to the same place, and no movement or position would do for both. Whatever the set-up does, one of them fails. Decide which is right, and change or drop the other.`},
	{"toothless-sentence", "a sentence that no set-up could fail",
		`The model does not turn about this axis whatever its parts do, so that the sentence holds for every set-up, the reversed one too. A sentence that cannot fail finds nothing and looks like a check. Ask for what each part does instead.`},
	{"unmentioned-part", "parts that no sentence is about",
		`Nothing in the whole script says which way these parts go, so whatever is wrong with them passes. A sentence about a servo's torque says nothing about its direction. Write one sentence for each direction of each part.`},
	{"unmentioned-control", "controls that no sentence moves",
		`No scenario ever takes these controls from where they rest, so whatever they do passes, and so does nothing at all. Move them, and say what happens.`},
	{"trim-unchecked", "trims that no sentence tries",
		`No sentence says which way the model answers these trims by themselves. That the stick is right says nothing about its trim, whose range has a sign of its own. A reversed trim is found in the air, where every click makes it worse.`},
	{"second-control-unchecked", "one of several controls for an axis is not tried",
		`Two sticks or knobs work the same axis, and no sentence moves this one by itself and says what happens. Each goes its own way through the set-up and may have a sign of its own.`},
	{"rate-unchecked", "a rate that no sentence tries",
		`The control has several rates, and no sentence moves it while this one is in force and says which way something goes. Both low and high rates are flown. A rate with the wrong throw, or a mix that only one of them brings in, passes unseen.`},
}
