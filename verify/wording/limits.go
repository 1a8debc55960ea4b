package wording

import "example.com/hingeline/mixcore"

var limitWords = []struct {
	limit mixcore.Limit
	words string
}{
	{mixcore.TravelLimit, "beyond the channel's travel limit"},
	{mixcore.PulseLimit, "beyond the pulse limits"},
	{mixcore.ServoMax, "beyond the servo's maximum"},
	{mixcore.ServosFight, "its servos ask for different angles"},
	{mixcore.AtStop, "at its stop"},
	{mixcore.PartEnd, "beyond its end"},
}

// Limits says which limits bit, in the order of the chain; nil if none did.
func Limits(l mixcore.Limit) []string {
	var said []string
	for _, w := range limitWords {
		if l&w.limit != 0 {
			said = append(said, w.words)
		}
	}
	return said
}
