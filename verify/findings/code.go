package findings

// The codes of the findings. Each is explained in package diag and has an
// example in testdata/problems.
const (
	codeParkedAtEnd     = "parked-at-end"
	codeYLead           = "y-lead-opposite"
	codeTravel          = "travel-runs-out"
	codeStop            = "stop-reached"
	codeFight           = "servos-fight"
	codeUneven          = "uneven-throws"
	codeNothingMoves    = "nothing-moves"
	codeIdleControl     = "idle-control"
	codeIdlePosition    = "idle-position"
	codeIdleDemand      = "idle-demand"
	codeIdlePhase       = "idle-phase"
	codeIdleChannel     = "idle-channel"
	codeMotorNoSafe     = "motor-no-safe"
	codeMotorSafe       = "motor-runs-when-safe"
	codeMotorLostSignal = "motor-runs-on-lost-signal"
	codeMotorAtRest     = "motor-runs-at-rest"
	codeMotorClosed     = "motor-runs-at-closed-throttle"
	codeMotorByStick    = "motor-starts-by-stick"
	codeMotorLate       = "motor-stops-late"
	codeNearLock        = "linkage-near-lock"
	codeNoCentre        = "rests-off-neutral"
)

// Codes are the codes of all findings.
var Codes = []string{
	codeParkedAtEnd, codeYLead, codeTravel, codeStop, codeFight, codeUneven, codeNothingMoves, codeIdleControl,
	codeIdlePosition, codeIdleDemand, codeIdlePhase, codeIdleChannel, codeMotorNoSafe, codeMotorSafe,
	codeMotorLostSignal, codeMotorAtRest, codeMotorClosed, codeMotorByStick, codeMotorLate, codeNearLock, codeNoCentre,
}
