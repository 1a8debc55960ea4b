// Package table works out what every part does at every candidate step of a
// walk-around, on the model as it should be and with each mistake made, and says where
// two of them look different to somebody with the model in hand.
//
// Everything but the way there is judged at rest: where things stand before a step and
// where they come to rest after it. Mistakes that only change how fast something moves
// show on the way: see [Late].
//
// It never chooses steps: that is for package walk. Start at [Steps] and [New].
package table

import (
	"sync"

	"example.com/hingeline/airframes"
	"example.com/hingeline/mixcore"
	"example.com/hingeline/verify/faults/mistake"
	"example.com/hingeline/verify/faults/sight"
	"example.com/hingeline/verify/poses"
)

// None is, in place of a mistake, the model as it should be.
const None = -1

// Table is what the parts of a model do, mistake by mistake and step by step. It is
// safe for concurrent use.
type Table struct {
	Model    *airframes.Model
	Mistakes []mistake.Mistake
	Steps    []sight.Step

	moments *moments
	right   []column   // by part: the model as it should be
	wrong   [][]column // by mistake: the parts that it touches, ascending
	faults  [][]mixcore.Fault

	expected map[expectation][]sight.Move // while the table is made: see column.wanted

	mutex sync.Mutex
	views map[sight.Look]*view
}

// column is what one part does, pose by pose.
type column struct {
	part    int
	classes *classes
	place   []float64    // by class of poses: degrees with mixcore's sign, or percent
	wanted  []sight.Move // by kind of step: what the part should do; nil of what is right
	late    []float64    // by kind of step, of mistakes in time: see Late; nil of all others
}

// New works the table out. A mistake that cannot be built has no column and shows
// nowhere: see Fault.
func New(m *airframes.Model, mistakes []mistake.Mistake, steps []sight.Step) *Table {
	t := &Table{
		Model: m, Mistakes: mistakes, Steps: steps,
		moments:  newMoments(&m.Setup, steps),
		right:    make([]column, len(m.Setup.Parts)),
		wrong:    make([][]column, len(mistakes)),
		faults:   make([][]mixcore.Fault, len(mistakes)),
		expected: map[expectation][]sight.Move{},
		views:    map[sight.Look]*view{},
	}
	probe := poses.New(m.Plan)
	out := m.Plan.NewOutput()
	for i := range t.right {
		t.right[i] = t.column(m.Plan, i, probe.PartReach(i), out)
	}
	for k := range mistakes {
		plan, faults := m.Plan.Vary(mistakes[k].Edit)
		if faults != nil {
			t.faults[k] = faults
			continue
		}
		t.wrong[k] = t.columns(plan, &mistakes[k], probe)
	}
	t.expected = nil
	return t
}

// columns are what a variant does with the parts that it touches.
func (t *Table) columns(variant *mixcore.Plan, made *mistake.Mistake, right *poses.Probe) []column {
	touched := mistake.Touched(t.Model.Plan, variant)
	if len(touched) == 0 {
		return nil
	}
	probe := poses.New(variant)
	out := variant.NewOutput()
	list := make([]column, 0, len(touched))
	for _, part := range touched {
		reach := probe.PartReach(part)
		reach.AddAll(right.PartReach(part))
		c := t.column(variant, part, reach, out)
		c.wanted = t.wanted(part, c.classes)
		if made.Kind != nil && made.Kind.Timed {
			c.late = t.lateness(variant, &c)
		}
		list = append(list, c)
	}
	return list
}

// expectation is a part, and classes of poses by which another set-up's is sorted.
type expectation struct {
	part    int
	classes *classes
}

// wanted is what a part should do, by kind of step.
func (t *Table) wanted(part int, by *classes) []sight.Move {
	key := expectation{part, by}
	moves := t.expected[key]
	if moves == nil {
		moves = make([]sight.Move, len(by.kinds))
		for i := range moves {
			moves[i] = t.right[part].moveIn(int(by.kinds[i].step))
		}
		t.expected[key] = moves
	}
	return moves
}

// column works out one part in every class of poses.
func (t *Table) column(plan *mixcore.Plan, part int, reach poses.Reach, out *mixcore.Output) column {
	c := column{part: part, classes: t.moments.by(reach)}
	c.place = make([]float64, len(c.classes.first))
	some := plan.Some([]int{part})
	for i, pose := range c.classes.first {
		plan.EvalSome(t.moments.poses[pose], &some, out)
		c.place[i] = out.Parts[part].Place()
	}
	return c
}

// Fault says why a mistake could not be built, or nil.
func (t *Table) Fault(mistake int) []mixcore.Fault { return t.faults[mistake] }

// Move is what a part does in a step with a mistake made, or with None.
func (t *Table) Move(mistake, step, part int) sight.Move {
	return t.find(mistake, part).moveIn(step)
}

// find is what a part does with a mistake made: as it should where the mistake does
// not touch it.
func (t *Table) find(mistake, part int) *column {
	if mistake != None {
		for i := range t.wrong[mistake] {
			if c := &t.wrong[mistake][i]; c.part == part {
				return c
			}
		}
	}
	return &t.right[part]
}

// moveIn is what the part does in a step.
func (c *column) moveIn(step int) sight.Move {
	return c.move(&c.classes.kinds[c.classes.step[step]])
}

func (c *column) move(k *kind) sight.Move {
	if k.stands {
		return sight.Move{From: 0, To: c.place[k.to]}
	}
	return sight.Move{From: c.place[k.from], To: c.place[k.to]}
}

// Late is by how much a part, with a mistake in time made, is away from where it should
// be for half a second and longer on the way from one end of a step to the other:
// degrees or percent, 0 or more. Of all other mistakes it is 0.
func (t *Table) Late(mistake, step, part int) float64 {
	if mistake == None {
		return 0
	}
	return t.find(mistake, part).lateBy(step)
}

// lateBy is Late of one column.
func (c *column) lateBy(step int) float64 {
	if c.late == nil {
		return 0
	}
	return c.late[c.classes.step[step]]
}

// visible is from how much on somebody sees that a part is not where it should be.
func visible(look sight.Look, p *mixcore.Part) float64 {
	if p.Motion.Hinged() {
		return float64(look.Visible)
	}
	return float64(sight.VisibleAmount)
}
