package bench

import (
	"fmt"
	"math"
	"strconv"
	"strings"

	"example.com/hingeline/mixcore"
)

// Where several servos move a surface, each may be measured with the pushrods of the others
// off. Such a reading says nothing of where the surface stands with all of them on, and is
// held against what that servo asks for.

// readingsOf are the readings that there may be of a part in a step.
func (w *Walk) readingsOf(part int) []reading {
	list := []reading{{part: part, before: true}, {part: part}}
	if n := w.servos(part); n > 1 {
		for servo := 1; servo <= n; servo++ {
			list = append(list, reading{part, true, servo}, reading{part, false, servo})
		}
	}
	return list
}

// servos is how many servos move a hinged part.
func (w *Walk) servos(part int) int {
	if p := &w.Model.Setup.Parts[part]; p.Motion.Hinged() {
		return len(p.Drives)
	}
	return 0
}

// holds says what is wrong with a servo that is said to have held a part alone.
func (w *Walk) holds(part, servo int) error {
	name := w.Model.Setup.Parts[part].Name
	switch n := w.servos(part); {
	case servo == 0:
		return nil
	case n < 2:
		return fmt.Errorf("it measures servo %d of the %s alone, and no others move it", servo, name)
	case servo < 1 || servo > n:
		return fmt.Errorf("it measures servo %d of the %s, which has servos 1 to %d", servo, name, n)
	}
	return nil
}

// should is where a part must be where a reading was taken.
func (w *Walk) should(s *Step, e *Expect, r reading) float64 {
	switch {
	case r.servo > 0 && r.before:
		return w.byOne(r.part, r.servo-1, &s.From)
	case r.servo > 0:
		return w.byOne(r.part, r.servo-1, &s.To)
	case r.before:
		return e.Move.From
	}
	return e.Move.To
}

// byOne is where one servo alone, from 0, holds a part, in degrees.
func (w *Walk) byOne(part, servo int, in *mixcore.Input) float64 {
	p := &w.Model.Setup.Parts[part]
	out := w.Model.Plan.NewOutput()
	w.Model.Plan.Eval(in, out)
	at := w.Model.Plan.DriveAngle(part, servo, out.Channels[p.Drives[servo].Channel].Output)
	return float64(max(-p.Stops.Minus, min(p.Stops.Plus, at)))
}

// alone is " with servo 2 alone"; empty for all together.
func alone(servo int) string {
	if servo == 0 {
		return ""
	}
	return fmt.Sprintf(" with servo %d alone", servo)
}

// aloneOf takes "servo 2" or "servo 2 alone" from the beginning of what is said of a part;
// problem says why nobody can say so.
func (w *Walk) aloneOf(part int, text string) (servo int, rest, problem string) {
	words := strings.Fields(text)
	if len(words) == 0 || words[0] != "servo" {
		return 0, text, ""
	}
	p := &w.Model.Setup.Parts[part]
	n := w.servos(part)
	if n < 2 {
		return 0, text, fmt.Sprintf("no more than one servo moves the %s: leave \"servo\" out", p.Name)
	}
	if len(words) > 1 {
		servo, _ = strconv.Atoi(words[1])
	}
	if servo < 1 || servo > n {
		return 0, text, fmt.Sprintf("say which of servos 1 to %d holds the %s alone, in the order of the airframe file, and where it is: servo 1 12 up", n, p.Name)
	}
	words = words[2:]
	if len(words) > 0 && words[0] == "alone" {
		words = words[1:]
	}
	return servo, strings.Join(words, " "), ""
}

// apart is by how much the places differ at most at which a surface was measured with one
// servo alone and with another, in one step, in degrees, and which two those were; false
// where no two were measured so.
func (w *Walk) apart(steps []stepState, part int) (most float64, servos [2]int, ok bool) {
	n := w.servos(part)
	for i := range steps {
		for _, before := range []bool{true, false} {
			for a := 1; a <= n; a++ {
				for b := a + 1; b <= n; b++ {
					one, has := steps[i].read[reading{part, before, a}]
					other, have := steps[i].read[reading{part, before, b}]
					if by := math.Abs(one - other); has && have && (!ok || by > most) {
						most, servos, ok = by, [2]int{a, b}, true
					}
				}
			}
		}
	}
	return most, servos, ok
}
