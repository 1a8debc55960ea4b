// Package serve is a page on which a model's controls are moved and
// its surfaces follow: what every part does, why, how far one control takes it, and
// whether the script's checks pass.
//
// All arithmetic is the model's own Plan, here and not in the page. A page sends where its
// controls stand, whole, and is answered for the newest of what it sent: so every page has
// a pose of its own, nothing queues up, and a page that comes back after a restart goes on
// where it was. This package writes nothing and reads no file: what is shown is what
// [Server.Show] was given last.
//
// A second page leads through the walk-around with the model in hand, as package bench
// does: the walk is one for all pages, and each answer names the question that it answers.
// Where its records are is known to who calls [Server.LeadThrough].
//
// Whoever is not a page that this server gave out is refused, and that is logged: another
// host name or origin, another method or path, a wrong token, a message that is too large
// or makes no sense. Devices of the network are let in only after [Server.OpenTo], each by
// a code that is good once.
//
// A panic of ours comes out at [Server.Bugs]; who started the server ends it then.
//
// Start at [New]; gate.go, door.go and strangers.go say who is let in, page.go answers one
// open page, bench.go leads through a walk, and assets holds what the browser is given.
package serve
