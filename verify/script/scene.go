package script

import (
	"example.com/hingeline/airframes/diag"
	"example.com/hingeline/mixcore"
	"example.com/hingeline/verify/phrase"
)

// scene is how the controls stand while a scenario is read step by step.
//
// Given sets the scene: all Givens of a scenario add up to one state, and a
// signal that they lose is lost there, in whatever order they are written. When
// is a movement from there; Whens joined by And are one movement, and a later
// When moves on from where the last one ended. A Given after a When forgets the
// movement.
type scene struct {
	setup *mixcore.Setup
	given phrase.Pose // after the Givens so far
	now   phrase.Situation

	givenSet []bool // by control: the Givens so far have set it
	baseSet  []bool // before the group

	role  phrase.Role // of the step before
	group phrase.Group
	base  phrase.Pose // before the group
	open  bool        // the next setting of the same role joins the group

	unasked *diag.Place // of a setting that no outcome has followed yet
	unclear bool        // a setting was not understood: nobody knows what moves
}

func newScene(setup *mixcore.Setup) *scene {
	rest := phrase.RestPose(setup)
	return &scene{setup: setup, given: rest, now: phrase.Situation{Now: rest}}
}

// close ends a group and what was left unasked, but for a movement: at the end of
// a background.
func (s *scene) close() {
	s.open = false
	if s.role != phrase.When {
		s.unasked = nil
	}
}

// set takes a step of settings. joins is true for And, But and *.
func (s *scene) set(role phrase.Role, g *phrase.Group, joins bool) *phrase.Problem {
	if !s.continues(role, joins) {
		s.group, s.open = phrase.Group{}, true
		s.base, s.baseSet = s.now.Now, s.now.Set
		if role == phrase.Given {
			s.base, s.baseSet = s.given, s.givenSet
		}
	}
	s.role = role
	if problem := s.group.Merge(s.setup, g); problem != nil {
		return problem
	}
	if role == phrase.Given {
		s.given = s.base.Stand(s.setup, &s.group)
		s.givenSet = s.also(s.baseSet, &s.group)
		s.now = phrase.Situation{Now: s.given, Set: s.givenSet}
		return nil
	}
	if problem := s.group.CheckOrder(); problem != nil {
		return problem
	}
	s.now = phrase.Situation{Before: s.base, Now: s.base.Take(s.setup, &s.group), Moved: true, Set: s.also(s.baseSet, &s.group)}
	return nil
}

// continues says whether a step of settings joins the group before it.
func (s *scene) continues(role phrase.Role, joins bool) bool {
	return s.open && s.role == role && (joins || role == phrase.Given)
}

// also is which controls have been set once a group of settings is made too. That
// everything rests sets none.
func (s *scene) also(set []bool, groups ...*phrase.Group) []bool {
	all := make([]bool, len(s.setup.Controls))
	copy(all, set)
	for _, g := range groups {
		if g.Rests {
			clear(all)
		}
		for _, setting := range g.Settings {
			all[setting.Control] = true
		}
	}
	return all
}

// asked ends a group of settings: an outcome follows, and what goes on from it is
// an outcome too.
func (s *scene) asked() { s.role, s.open, s.unasked = phrase.Then, false, nil }

// at is the situation in which a sentence of outcomes is judged. What the
// one-line form sets before its movement adds to the state, or, behind a movement
// of the scenario, follows it.
func (s *scene) at(m *phrase.Meaning) (phrase.Situation, *phrase.Problem) {
	if !m.OneLine {
		return s.now, nil
	}
	before := s.now.Now.Take(s.setup, &m.With)
	if !s.now.Moved {
		before = s.now.Now.Stand(s.setup, &m.With)
	}
	set := s.also(s.now.Set, &m.With, &m.Move)
	if m.Move.Empty() {
		return phrase.Situation{Now: before, Set: set}, nil
	}
	if problem := m.Move.CheckOrder(); problem != nil {
		return phrase.Situation{}, problem
	}
	return phrase.Situation{Before: before, Now: before.Take(s.setup, &m.Move), Moved: true, Set: set}, nil
}
