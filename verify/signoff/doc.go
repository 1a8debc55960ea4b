// Package signoff is who has put their name to a model: records of signatures beside
// the airframe file, and what of them still stands.
//
// A record is a file that is written once and never again. It holds the airframe file
// and the scripts as they were, what they come to (digests of the resolved set-up and
// script, the verdict, a fingerprint of the report), who signed, and a fingerprint of
// the record before it: so a record that is edited, exchanged or taken from the middle
// shows. The newest records can be taken away whole without leaving a trace here; only
// a copy elsewhere shows that. A record without a key is proof against accidents only:
// whoever can write files can write another. With a key there is an OpenSSH signature
// beside it, over the record's bytes, that nobody else can make.
//
// A signature is about the set-up as written. It may say too what was seen on the model in
// the hand, by the fingerprint of a record of the bench; that must still be there then.
//
// A signature stands while the resolved set-up and script are what was signed: comments
// and order do not matter. It says that somebody signed, never that a model may fly.
//
// The package never renders a report: whether a record's report is what this program
// writes is asked of a function that it is given. Start at [Sign] and [Standing]; a
// record is [Record], its directory [Directory].
package signoff
