package airframes

// What a file may hold. Far more than any model needs; a file beyond it is
// refused quickly, before it can cost time or memory.
const (
	// MaxBytes is the most bytes that an airframe file may have.
	MaxBytes = 1 << 20

	maxDepth      = 20     // brackets and indentation inside one another; the format needs 7
	maxProblems   = 1000   // that are kept; the rest are counted
	maxCompared   = 20_000 // names, for suggestions to misspelt ones
	longestRemark = 1000   // characters of a message or a hint
	maxControls   = 64     // their trims not counted
	maxPhases     = 64
	maxDemands    = 128
	maxParts      = 128 // surfaces, wheels, motors and extras together
	maxMixLines   = 64  // in one channel
	maxRates      = 16  // of one demand
	maxServos     = 8   // on one part
	maxPositions  = 6   // of one switch
	maxDetents    = 32  // of one lever
	maxAka        = 16  // further names of one thing
	maxScripts    = 64
	maxCondition  = 2000 // characters
	maxTests      = 64   // things looked at by one condition
	maxBrackets   = 32   // inside one another, in a condition
)
