// Package serve is a page on this machine alone on which a model's controls are moved and
// its surfaces follow: what every part does, why, how far one control takes it, and
// whether the script's checks pass.
//
// All arithmetic is the model's own Plan, here and not in the page. A page sends where its
// controls stand, whole, and is answered for the newest of what it sent: so every page has
// a pose of its own, nothing queues up, and a page that comes back after a restart goes on
// where it was. Nothing is written and no file is read: what is shown is what
// [Server.Show] was given last.
//
// Whoever is not a page that this server gave out is refused, and that is logged: another
// host name or origin, another method or path, a wrong token, a message that is too large
// or makes no sense.
//
// Start at [New]; gate.go says who is let in, page.go answers one open page, and assets
// holds what the browser is given.
package serve
