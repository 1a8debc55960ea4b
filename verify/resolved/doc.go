// Package resolved is what an airframe file and its scripts mean, whatever their
// comments, order, spelling and spacing say: every setting with its default filled
// in, a digest of them, and what differs between two, in sentences.
//
// Two models have the same digest if and only if there is no difference between
// them. It never judges: which of two is right, and what a difference does at the
// surfaces, is not told here.
//
// What does not count, because no answer rests on it: comments, the order of
// controls, phases, demands, channels, parts and their sections, the order of the
// tests that and and or join, capitals and hyphens of names, left and right for
// port and starboard in the names of parts, the way a number is written, whether a
// default is written out, the sentences under about:, and the list of scripts,
// whose meaning has a digest of its own. What counts: everything else, names among
// it, for sentences use them; and the order of mix lines, rates, switch positions
// and the servos of one part.
//
// Of scripts do not count: comments, names of features and scenarios, tags and so
// the order of the walk-around, how sentences are put together in scenarios, and
// the keywords' language. The order of the steps before a sentence counts.
//
// Start at [SetUp] and [Differences].
package resolved
