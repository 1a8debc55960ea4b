package sheet

import (
	"fmt"
	"math"

	"example.com/hingeline/mixcore"
)

// channelName says a channel: "channel 3 (starboard flap)".
func channelName(c *mixcore.Channel) string {
	if c.Name == "" {
		return fmt.Sprintf("channel %d", c.Number)
	}
	return fmt.Sprintf("channel %d (%s)", c.Number, c.Name)
}

// neat takes off a number what arithmetic in binary added: to a thousand millionth.
func neat(x float64) float64 { return math.Round(x*1e9)/1e9 + 0 }
