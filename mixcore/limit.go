package mixcore

// Limit is a set of limits that bit.
type Limit uint8

// The limits.
const (
	TravelLimit Limit = 1 << iota // the channel's sum was beyond its travel limit
	PulseLimit                    // the pulse was beyond the pulse limits
	ServoMax                      // the servo arm was asked to go beyond its maximum
	AtStop                        // the part was driven beyond its stop: the servo stalls
	ServosFight                   // the servos of one part ask for different angles
	PartEnd                       // a motor or extra was asked for less than 0 or more than 100 %
)
