package provetest

import (
	"math"

	"pgregory.net/rapid"
)

// drawing is a rapid.T with short ways to draw.
type drawing struct{ t *rapid.T }

func (d drawing) between(low, high int) int { return rapid.IntRange(low, high).Draw(d.t, "between") }

// one is true once in so many.
func (d drawing) one(in int) bool { return d.between(1, in) == in }

func (d drawing) maybe() bool { return d.one(2) }

func pick[T any](d drawing, among ...T) T { return among[d.between(0, len(among)-1)] }

// setting is a whole multiple of 0.001 from low to high, round numbers preferred.
func (d drawing) setting(low, high float64) float64 {
	for _, per := range []float64{pick(d, 0.1, 0.2, 1, 10, 1000), 1000} {
		least, most := int(math.Ceil(low*per)), int(math.Floor(high*per))
		if least <= most {
			return math.Round(float64(d.between(least, most))/per*1000) / 1000
		}
	}
	return low
}

// some draws how many of a thing there are, few preferred.
func (d drawing) some(low, high int) int { return min(d.between(low, high), d.between(low, high+1)) }
