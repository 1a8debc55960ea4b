// Package faults holds a script against every single mistake of the catalogue: which of
// them would it miss?
//
// A mistake is caught if a check fails with it: really fails, for what takes too long or
// cannot be decided shows nothing. What no check catches is compared with the model at
// every position (package same): it is invisible by nature, or missed, with the pose that
// shows it, what the aeroplane would do and the sentence that would catch it. The judging
// of what people see on the model itself is the business of packages walk and cause.
//
// Start at [Judge].
package faults
