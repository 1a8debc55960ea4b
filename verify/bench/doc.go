// Package bench is the walk-around with the model in hand, step by step: what to set on
// the radio, what must be seen, what somebody says was seen, and what follows from it.
//
// It is a machine that is given one line at a time and says what to ask next; every
// answer is an [Event], and the state is nothing but the events so far. So a record of
// events can be cut off anywhere and gone on with. The package never reads a terminal
// and writes only through [Journal].
//
// It holds a model in the hand against the set-up as written, and never says that the
// model may fly. Start at [NewWalk] and [Guide]; [Read] is a record.
package bench
