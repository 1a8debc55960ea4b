package cause

import (
	"cmp"
	"context"
	"math"
	"slices"

	"example.com/hingeline/airframes"
	"example.com/hingeline/airframes/diag"
	"example.com/hingeline/verify/faults/mistake"
	"example.com/hingeline/verify/phrase"
	"example.com/hingeline/verify/result"
	"example.com/hingeline/verify/script"
)

// repairs are the changes that put a model with a mistake right: taking the mistake back,
// and, where others are asked for, every other single change with which the whole script
// passes and the laws hold that held before.
func (c *inquiry) repairs(wrong int, others bool) []result.Repair {
	m := &c.mistakes[wrong]
	undo := result.Repair{Change: m.Undo, OnModel: m.OnModel, AsFile: true, Place: at(m.Place())}
	if c.trial == nil || !c.passes(c.m) { // where the script fails anyway, nothing is tried against it
		return []result.Repair{undo}
	}
	h, claims, fewest := c.written()
	undo.Checks, undo.Claims = c.trial.Len(), claims
	list := []result.Repair{undo}
	if !others {
		return list
	}
	variant, _ := m.Variant(c.m)
	changes := append(mistake.All(variant, mistake.Options{}), mistake.Needless(variant)...)
	smallestFirst(changes)
	for i := range changes {
		if h.spent() {
			break
		}
		repaired, faults := changes[i].Variant(variant)
		if faults != nil || changes[i].Change == m.Undo || sameAgain(c.m, repaired) || ownCurve(m, &changes[i]) || !c.passes(repaired) {
			continue
		}
		if claims, failing := h.kept(repaired); failing <= fewest {
			list = append(list, result.Repair{Change: changes[i].Change, OnModel: changes[i].OnModel,
				Place: at(changes[i].Place()), Checks: c.trial.Len(), Claims: claims})
		}
	}
	return list
}

// written is what holds on the set-up as it is written, worked out once, and how many
// claims do and do not; of what changes may cost nothing is spent.
func (c *inquiry) written() (h *holding, claims, failing int) {
	if c.held == nil {
		c.held = newHolding(c.ctx, c.m)
		c.claims, c.broken = c.held.kept(c.m)
	}
	c.held.boxes = 0
	return c.held, c.claims, c.broken
}

// sameAgain says whether a repair leads back to the set-up without the mistake: then it is
// taking the mistake back, by another name.
func sameAgain(m, repaired *airframes.Model) bool {
	return len(mistake.Touched(m.Plan, repaired.Plan)) == 0
}

// ownCurve says whether a change is about a curve that only the mistake put there.
func ownCurve(wrong, change *mistake.Mistake) bool {
	made := wrong.Kind.Code == "control-reversed" || wrong.Kind.Code == "detents-swapped"
	return made && change.Kind.Code == "curve-wrong"
}

// passes says whether every check holds on a variant.
func (c *inquiry) passes(variant *airframes.Model) bool {
	all := true
	c.trial.TryAll(variant, func(_ int, h phrase.Holding) bool {
		all = h == phrase.Holds
		return all
	})
	return all
}

// mostChecks is how many checks are judged for all changes together; then no further
// change is tried.
const mostChecks = 2_000_000

// sized are the kinds whose change is another number, not something the other way round
// or there again: the larger change.
var sized = []string{"share-size", "throw-half", "expo-wrong", "end-point-cut", "limit-low", "sub-trim-off", "motor-idle-off", "failsafe-wrong"}

// smallestFirst puts what is turned about or exchanged before what becomes another number,
// and that before the settings of a whole other model.
func smallestFirst(changes []mistake.Mistake) {
	size := func(m *mistake.Mistake) int {
		switch {
		case m.Kind.Code == "other-model":
			return 2
		case slices.Contains(sized, m.Kind.Code):
			return 1
		}
		return 0
	}
	slices.SortStableFunc(changes, func(a, b mistake.Mistake) int { return cmp.Compare(size(&a), size(&b)) })
}

// Repairs are the single changes of a set-up, as it is written, that make every check of
// its scripts pass and break no law that held: what a failed check can offer. It is nil
// where nothing fails, or the scripts cannot be read.
func Repairs(ctx context.Context, m *airframes.Model, scripts []script.File) *result.Repairs {
	return repairs(ctx, m, scripts, (*holding).spent)
}

// repairs ends where spent says that the laws have cost enough.
func repairs(ctx context.Context, m *airframes.Model, scripts []script.File, spent func(*holding) bool) *result.Repairs {
	trial, problems := script.NewTrial(m, scripts)
	if trial == nil || diag.HasErrors(problems) {
		return nil
	}
	c := newCase(ctx, m, trial, Options{})
	failing := c.failing(m)
	if len(failing) == 0 {
		return nil
	}
	r := &result.Repairs{}
	c.mistakes = append(c.mistakes, mistake.Needless(m)...)
	smallestFirst(c.mistakes)
	h := newHolding(ctx, m)
	checks := 0
	type mended struct{ change, claims, failing int }
	var all []mended
	fewest := math.MaxInt
	for i := range c.mistakes {
		if ctx.Err() != nil || spent(h) || checks >= mostChecks {
			r.Open = len(c.mistakes) - i
			break
		}
		r.Tried++
		repaired, faults := c.mistakes[i].Variant(m)
		if faults != nil || !c.mends(repaired, failing, &checks) {
			continue
		}
		if claims, failing := h.kept(repaired); failing != broken {
			all = append(all, mended{i, claims, failing})
			fewest = min(fewest, failing)
		}
	}
	// Of changes that all make the script pass those are offered that leave the fewest
	// laws broken.
	all = slices.DeleteFunc(all, func(one mended) bool { return one.failing > fewest })
	var found []int
	for _, one := range all {
		change := &c.mistakes[one.change]
		found = append(found, one.change)
		r.List = append(r.List, result.Repair{Change: change.Change, OnModel: change.OnModel,
			Place: at(change.Place()), Checks: trial.Len(), Claims: one.claims})
	}
	if len(found) > 1 {
		r.Apart = c.next(found, func(i int) string { return c.mistakes[i].Change })
	}
	return r
}

// failing are the checks that do not hold on a variant.
func (c *inquiry) failing(variant *airframes.Model) (list []int) {
	c.trial.TryAll(variant, func(i int, h phrase.Holding) bool {
		if h != phrase.Holds {
			list = append(list, i)
		}
		return true
	})
	return list
}

// mends says whether a change makes every failing check hold and leaves the others
// holding: a failing check that looks at nothing the change touches stays as it is. It
// counts the checks that it judges.
func (c *inquiry) mends(repaired *airframes.Model, failing []int, checks *int) bool {
	touched := mistake.Touched(c.m.Plan, repaired.Plan)
	mended, all := 0, true
	c.trial.Try(repaired, touched, func(i int, h phrase.Holding) bool {
		*checks++
		if all = h == phrase.Holds; all && slices.Contains(failing, i) {
			mended++
		}
		return all
	})
	return all && mended == len(failing)
}
