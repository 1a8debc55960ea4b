package same

import (
	"math"

	"example.com/hingeline/mixcore"
	"example.com/hingeline/verify/poses"
	"example.com/hingeline/verify/prove"
)

// mostPairs is how many poses of two moved controls are tried.
const mostPairs = 4000

// sampler compares two plans at one pose after another.
type sampler struct {
	model, variant  *mixcore.Plan
	touched         []int
	still           func(part int) float64
	someWas, someIs mixcore.Some
	was, is         *mixcore.Output
	best            Decision
	apart           []bool // by part: differs somewhere, if only a little
}

// sample looks for the widest difference at rest, then with one control moved, then with
// two, each with a signal and without, and is content with the first number of moved
// controls that shows one.
func sample(model, variant *mixcore.Plan, touched []int, still func(part int) float64) *sampler {
	s := &sampler{
		apart: make([]bool, len(model.Setup().Parts)),
		model: model, variant: variant, touched: touched, still: still,
		someWas: model.Some(touched), someIs: variant.Some(touched), was: model.NewOutput(), is: variant.NewOutput(),
	}
	first, second := poses.New(model), poses.New(variant)
	reach := first.Nothing()
	for _, part := range touched {
		reach.AddAll(first.PartReach(part))
		reach.AddAll(second.PartReach(part))
	}
	controls := reach.Controls()
	in := model.Rest()
	s.try(&in)
	if s.best.Answer == Different {
		return s
	}
	for _, a := range controls {
		for _, at := range first.Points[a][1:] {
			in.Position[a] = at
			s.try(&in)
		}
		in.Position[a] = first.Points[a][0]
	}
	if s.best.Answer == Different {
		return s
	}
	tried := 0
	for i, a := range controls {
		for _, b := range controls[:i] {
			if tried += (len(first.Points[a]) - 1) * (len(first.Points[b]) - 1); tried > mostPairs {
				break
			}
			for _, in.Position[a] = range first.Points[a][1:] {
				for _, in.Position[b] = range first.Points[b][1:] {
					s.try(&in)
				}
			}
			in.Position[a], in.Position[b] = first.Points[a][0], first.Points[b][0]
		}
	}
	return s
}

// clearly is by how much wider another difference must be to be the better one to show:
// of much the same the first that was tried is the plainest.
const clearly = 1.05

// try compares at a pose, with the signal and with it lost. A difference that is there
// with the signal is the plainer one.
func (s *sampler) try(in *mixcore.Input) {
	for _, lost := range []bool{false, true} {
		at := mixcore.Input{Position: in.Position, SignalLost: lost}
		s.model.EvalSome(&at, &s.someWas, s.was)
		s.variant.EvalSome(&at, &s.someIs, s.is)
		for _, part := range s.touched {
			by := math.Abs(s.is.Parts[part].Place() - s.was.Parts[part].Place())
			s.apart[part] = s.apart[part] || by > prove.Rounding
			if by <= s.still(part) || s.best.Answer == Different && (by < s.best.By*clearly || lost && !s.best.Pose.SignalLost) {
				continue
			}
			s.best = Decision{Answer: Different, Part: part, Pose: at.Clone(), By: by}
		}
	}
}
