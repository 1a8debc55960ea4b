package phrase

// Sentence is one kind of sentence.
type Sentence struct {
	Name    string // short, unique
	Keyword string // the keywords it goes with: "Given or When", "Then", "any"
	Form    string // capitals stand for what changes; brackets may be left out
	Example string // a sentence that works on the example model
	Means   string
}

// Sentences lists every kind of sentence, in the order they are explained.
func Sentences() []Sentence { return append([]Sentence(nil), forms...) }

const (
	settingKeyword = "Given or When"
	outcomeKeyword = "Then"
	anyKeyword     = "any"
)

var forms = []Sentence{
	{"setting", settingKeyword, "CONTROL is|moves to|goes to|stands at POSITION [and …]", "the roll stick is full right and the rate switch is high",
		"Puts a control somewhere. Given sets the scene and stays for the scenario, a When after it is a movement; what no sentence names rests. Whens joined by And are one movement, a later When moves on from there. A Given after a When forgets the movement and adds to the scene."},
	{"short setting", settingKeyword, "CONTROL POSITION", "rates high, throttle 50%",
		"The same in few words. A control may be called by its name, what it is also known as, its name without stick, lever, switch or knob, or its axis."},
	{"position first", settingKeyword, "POSITION CONTROL", "landing flap, full throttle and half right roll",
		"The same the other way round. A stick or trim stands full, half, quarter or a percent right, left, back or forward (right alone is full right), or centred; a lever at a detent, a percent, full, half or closed; a switch at a position."},
	{"rest", settingKeyword, "everything rests", "everything rests",
		"Sticks and trims centred, levers at their lowest detent or 0, switches at their first position."},
	{"signal", settingKeyword, "the signal is lost|back", "the signal is lost",
		"The radio link breaks, or returns. Under Given it was lost with the controls where the Givens put them, in whatever order they stand. Once it is lost, moving a control changes nothing on the model."},

	{"rise and drop", outcomeKeyword, "PART rises|drops [AMOUNT]", "the starboard aileron rises 20° ± 2°",
		"The trailing edge moved up or down, compared with before the When: at least 0.5° (or the airframe's still_deg), and by the amount if one is given. Also goes up, moves down."},
	{"left and right", outcomeKeyword, "PART moves left|right [AMOUNT]", "the rudder moves right, at least 20°",
		"For rudders and wheels."},
	{"motor power", outcomeKeyword, "MOTOR speeds up|slows down [AMOUNT]", "the motor speeds up by 50% ± 2%",
		"The power changed by at least 1 %, and by the amount if one is given."},
	{"out and in", outcomeKeyword, "EXTRA extends|retracts [AMOUNT]", "the retracts extend",
		"For retracts, hooks, doors, brakes and releases. Also goes out, goes in."},
	{"still", outcomeKeyword, "PART stays still|does not move", "the port flap stays still",
		"It moved less than what counts as still, at rest and at every moment until then. Also stays where it is. Not for motors: say stays stopped."},
	{"amount at least", outcomeKeyword, "… [by] at least|at most|more than|less than AMOUNT", "the port flap drops, at least 30°",
		"Amounts carry a unit: ° or mm at the trailing edge (which needs the chord), % for motors and extras. A bare amount has a tolerance of ± 1°, 1 mm, 1 % or 5 µs."},
	{"amount between", outcomeKeyword, "… between AMOUNT and AMOUNT", "the port flap drops between 30° and 45°", "Ends included."},
	{"amount in mm", outcomeKeyword, "… AMOUNT mm", "the starboard aileron rises 14 mm ± 2 mm", "Along the trailing edge."},
	{"groups", outcomeKeyword, "the PARTS|both PARTS|all PARTS|every surface …", "both flaps drop",
		"Every part of that kind, each a check of its own. Port and left, starboard and right are the same."},
	{"several", outcomeKeyword, "PART and PART …, … and …", "the port aileron drops and the starboard aileron rises, at least 15°",
		"Outcomes joined by and. A verb alone speaks of the same part again."},

	{"neutral", outcomeKeyword, "PART is at neutral", "the elevator is at neutral", "Within what counts as still."},
	{"position", outcomeKeyword, "PART is [AMOUNT] up|down|left|right [AMOUNT]", "the port flap is 40° down ± 2°",
		"Measured from neutral, whether or not it moved. Also above neutral, below neutral; a wheel points left."},
	{"position in mm", outcomeKeyword, "PART is up|down N mm", "the port aileron is down 8 mm ± 2 mm", "Measured from neutral, at the trailing edge."},
	{"power", outcomeKeyword, "MOTOR is at AMOUNT", "the motor is at 50% ± 2%", "Percent of full power."},
	{"stopped", outcomeKeyword, "MOTOR is stopped", "the motor is stopped", "The propeller does not turn."},
	{"runs", outcomeKeyword, "MOTOR runs", "the motor runs", "The propeller turns. Also is running."},
	{"stops", outcomeKeyword, "MOTOR stops", "the motor stops", "It ran before and is stopped now. Where it did not run before, the check fails, for it shows nothing."},
	{"stays stopped", outcomeKeyword, "MOTOR stays stopped", "the motor stays stopped", "Stopped before, after, and at every moment between."},
	{"out or in", outcomeKeyword, "EXTRA is out|in|N% out", "the retracts are in", "At the end of its travel, or part of the way."},
	{"pulse", outcomeKeyword, "channel N is at N µs", "channel 6 is at 1500 µs ± 5 µs", "What the servo is told."},
	{"output", outcomeKeyword, "NAME channel is at N%", "the starboard flap channel is at 80%", "The channel's output after reverse, end points and sub-trim, from −100 % to 100 %."},

	{"together", outcomeKeyword, "PART moves together with PART", "the port flap moves together with the starboard flap", "Both move, the same way."},
	{"opposite", outcomeKeyword, "PART moves opposite to PART", "the port aileron moves opposite to the starboard aileron", "Both move, opposite ways."},
	{"as far", outcomeKeyword, "PART moves as far as PART [± N°]", "the port flap moves as far as the starboard flap ± 1°", "Both move, by the same amount, either way."},
	{"less", outcomeKeyword, "PART moves less than PART", "the port aileron moves less than the starboard aileron", "Both move, and the first at least 0.1° (or 0.1 %) less."},
	{"more", outcomeKeyword, "PART moves more than PART", "the starboard aileron moves more than the port aileron", "Both move, and the first at least 0.1° (or 0.1 %) more."},

	{"at its stop", outcomeKeyword, "PART is at its stop", "the elevator is at its stop", "It stands at a stop of the airframe file, or is driven against it."},
	{"not at its stop", outcomeKeyword, "PART is not at its stop", "the elevator is not at its stop", "It has some way to go to every stop."},
	{"within travel", outcomeKeyword, "channel N is within its travel", "channel 2 is within its travel", "Neither the channel's limit nor its pulse limits hold it back here."},

	{"model turns", outcomeKeyword, "the model rolls|pitches|yaws WAY", "the model rolls right",
		"Rolls right or left, pitches up or down, yaws right or left: what all parts that moved do together, from their kind, side and place. Where it could be either way, as where flaps pitch the model by their own lift and by their downwash at the tail, the check fails and says so. Each surface still needs a sentence of its own: two reversed ones can hide each other."},
	{"model does not turn", outcomeKeyword, "the model does not roll|pitch|yaw", "the model does not pitch",
		"Nothing that moves turns it that way, or the parts cancel out. A little roll beside a strong pitch is not none: then the check fails and says so."},
	{"adds to the roll", outcomeKeyword, "the PARTS add AMOUNT to the roll", "the flaps add at least 25 % to the roll",
		"All the parts named together, as a percent of what the rest of the wing does. An estimate by strips; it needs the wing's span_mm, root_chord_mm and tip_chord_mm, and chord_mm and span_mm of its surfaces."},
	{"adverse yaw", outcomeKeyword, "adverse yaw does not grow", "adverse yaw does not grow",
		"For a roll: there is no more adverse yaw for it than with equal up and down throws, and nothing else that moves yaws the model against it. An estimate, for a wing that flies at a lift coefficient of 0.5."},
	{"servo torque", outcomeKeyword, "PART servo has N times the torque it needs at N m/s", "the port flap servo has twice the torque it needs at 30 m/s",
		"As the part stands, with that airspeed, at worst. Also twice, three times, enough torque; both flap servos, every servo. An estimate: the air's load is known only as a band, and the upper end counts. It needs chord_mm, span_mm and the servo's torque_ncm."},
	{"servos agree", outcomeKeyword, "the servos of PART agree", "the servos of the elevator agree",
		"For a part with several servos: here they ask it for the same angle, to 1°, and do not pull against each other."},

	{"after", outcomeKeyword, "after T s, … or … after T s", "after 1 s, the port flap is 25° down ± 2°", "So long after the movement, with slowed channels, fading phases and slow servos still under way."},
	{"within", outcomeKeyword, "… within T s", "the port flap is 40° down within 2.5 s", "True that long after the movement, and at every moment from then until everything has come to rest."},

	{"on purpose", outcomeKeyword, "OUTCOME on purpose", "the starboard aileron rises on purpose",
		"The pilot's word that an outcome which seems to fight the aeroplane is meant. It speaks of the outcome right before it only, and changes nothing in what passes."},

	{"whatever", outcomeKeyword, "whatever CONTROL [and CONTROL] does, OUTCOME", "whatever the roll stick does, the elevator stays still",
		"Decided for every place that the control can be moved to, not by trying some: a proof, or a position where it fails. The control moves there from where the scenario has it, and all others stand where the scenario has them. Behind a When the control stands anywhere while the When moves. Everything is decided once it has come to rest."},
	{"whatever else", outcomeKeyword, "whatever else moves, [when SETTINGS,] OUTCOME", "whatever else moves, the motor is stopped",
		"Every control that no step of the scenario has set runs over all its travel. Also whatever happens."},
	{"at every", outcomeKeyword, "at every switch|stick|lever|trim position [and every …], OUTCOME", "at every switch position and every stick position, no channel runs out of travel",
		"Those controls stand anywhere, the same before a movement and after it, unless a step has set them. At every position is all of them."},
	{"every position of", outcomeKeyword, "at every position of CONTROL [and CONTROL], OUTCOME", "at every position of the flap lever, the starboard flap rises",
		"The same for controls by name. Also at every rate switch position."},
	{"anywhere", outcomeKeyword, "with CONTROL anywhere [between PLACE and PLACE|above PLACE|below PLACE], OUTCOME", "with the throttle anywhere below 50%, the motor is at most 50%",
		"The control stands anywhere on that stretch."},
	{"whenever", outcomeKeyword, "whenever CONDITION, OUTCOME", "whenever the roll stick is right of 10 %, the starboard aileron rises",
		"The outcome must hold wherever the condition does, in the words of an airframe file: CONTROL is POSITION, right of N %, above N %, between N % and N %, joined by and, or, not. The controls that it names run over all their travel; of them sticks and trims are the movement, with none levers, without those switches. Also OUTCOME whenever CONDITION. Whether a motor stands still is asked over everything else too that the scenario has not set. A condition that never holds fails."},
	{"always", outcomeKeyword, "SUBJECT is always …|always VERB", "the motor is always stopped",
		"Over every control that no step has set, unless the sentence says whatever what does."},
	{"never", outcomeKeyword, "SUBJECT never VERB [at least|more than AMOUNT]", "the elevator never drops more than 25°",
		"The same for what must not happen: the motor never runs, the model never rolls left, the port flap never reaches its stop, the rudder never moves. A movement is from where the scenario has everything, or from rest; without an amount, not by what counts as one. The model must not turn that way even a little, or perhaps."},
	{"no and nothing", outcomeKeyword, "no PART|channel|surface [ever] VERB, nothing [but PART] moves", "no motor ever runs",
		"Every part or channel of that kind is a check of its own: no channel runs out of travel, no surface reaches its stop, nothing moves. Over every control that no step has set, or over what the sentence says before it."},
	{"nothing but", outcomeKeyword, "…, nothing but PART [and PART] moves", "whatever the yaw stick does, nothing but the rudder and the nose wheel moves",
		"All other parts stay still, motors too."},
	{"the more", outcomeKeyword, "the more right|left|back|forward STICK, the higher|lower|further left|faster … PART", "the more right the roll stick, the higher the starboard aileron",
		"As the control moves that way through all its travel the part never goes back, though it may stand still on the way, and it moves somewhere. Also the further the flap lever, the lower the flaps; the more throttle, the faster the motor."},
	{"depends on", outcomeKeyword, "PART depends on nothing but CONTROL [and CONTROL]", "the elevator depends on nothing but the pitch stick",
		"Wherever the named controls stand, no other moves the part by what counts as a movement, but for those that a step has set."},

	{"one line", anyKeyword, "with SETTINGS, OUTCOME [and OUTCOME]", "with high rates, landing flap and right roll, the port flap drops and the starboard flap rises",
		"A scenario in one line, from where the scenario stands; it changes nothing for the sentences after it. A signal that is lost or back is the movement, and all other settings are how things stood before it. Without one, sticks and trims are the movement; with no stick or trim, levers; without those, switches. One comma stands between what is set and what happens."},
	{"one line with when", anyKeyword, "[with SETTINGS,] when SETTINGS, [after T s,] OUTCOME", "with live motor and full throttle, when the signal is lost, the motor stops",
		"What follows when is the movement."},
}
