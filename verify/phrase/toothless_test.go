package phrase

import "testing"

func TestAmountsThatCannotFailAreRefused(t *testing.T) {
	v := NewVocabulary(exampleModel(t, nil))
	for text, refused := range map[string]bool{
		"the motor is at 0% ± 200%":                                     true,
		"the motor is at 50% ± 50%":                                     true,
		"the motor is at 50% ± 49%":                                     false,
		"the motor is at most 100%":                                     true,
		"the motor is at least 0%":                                      true,
		"the motor is at least 1%":                                      false,
		"the motor is between 0% and 100%":                              true,
		"the motor is between 0% and 99%":                               false,
		"the motor speeds up by at least 0%":                            true,
		"the motor slows down by at most 100%":                          true,
		"the port flap rises, at least 0°":                              true,
		"the port flap rises more than 0°":                              true,
		"the port flap rises, at most 180°":                             true,
		"the port flap rises, at most 80 mm":                            true,
		"the port flap rises, at most 79 mm":                            false,
		"the port flap rises, at most 60°":                              false,
		"the port flap rises 20° ± 25°":                                 false,
		"the port flap is at least 0° up":                               true,
		"the retracts are 50% ± 60% out":                                true,
		"the retracts are at most 100% out":                             true,
		"the retracts are 50% ± 20% out":                                false,
		"channel 4 is at least 1000 µs":                                 true,
		"channel 4 is at 1500 µs ± 500 µs":                              true,
		"channel 4 is at 1500 µs ± 499 µs":                              false,
		"channel 4 is at 0% ± 100%":                                     true,
		"channel 4 is at most 99%":                                      false,
		"the port flap moves as far as the starboard flap ± 180°":       true,
		"the port flap moves as far as the starboard flap ± 20°":        false,
		"the retracts are at least 1% in and the motor is at least 50%": false,
	} {
		_, problem := v.Parse(Then, text)
		if refused != (problem != nil) || refused && (problem.Code != CodeBadNumber || problem.Hint == "") {
			t.Errorf("%q: got %+v", text, problem)
		}
	}
}

func TestTolerancesAndTimesAreGivenOnce(t *testing.T) {
	v := NewVocabulary(exampleModel(t, nil))
	for _, text := range []string{
		"the port flap is 12° ± 2° down ± 3°",
		"the port flap rises 12° ± 2° ± 3°",
		"after 1 s, the port flap drops after 2 s",
		"within 1 s the port flap drops within 1 s",
		"after 1 s, the port flap drops and the elevator rises within 2 s",
		"the port flap drops after 1 s within 2 s",
		"the port flap drops after 1 s, after 1 s",
	} {
		if _, problem := v.Parse(Then, text); problem == nil || problem.Code != CodeConflict {
			t.Errorf("%q: got %+v", text, problem)
		}
	}
	if _, problem := v.Parse(Then, "the port flap drops, at least 8° ± 2°"); problem == nil || problem.Code != CodeBadNumber {
		t.Errorf("a limit with a tolerance: got %+v", problem)
	}
}
