package result

// Standing is what has been signed about a model, and what of it still stands.
type Standing struct {
	Signatures []Signature // oldest first
	Changes    []Change    // what is different from the last that was signed; none: it is current
	Troubles   []string    // why records cannot be trusted, each a sentence; none: all are genuine
	Summary    string      // one line: "signed 2 days ago by …; out of date: port flap share −55 → −65 %"
}

// Signature is one record.
type Signature struct {
	Number  int    // from 1
	Name    string // of who signed
	Role    string // "builder", "second" or "inspector"
	Date    string // RFC 3339
	Key     string // fingerprint of the key, "SHA256:…"; empty for one without
	Genuine bool   // the record is whole, in its chain, and its key's signature, if it has one, is right
	Current bool   // the resolved set-up and script are still what was signed
	Counts  bool   // false: the same person has signed before in another role
	Note    string // why it does not stand, in words; empty if it does
}

// Change is one difference of two resolved set-ups or scripts.
type Change struct {
	Text  string   // "port flap: share of flap −55 → −65 %"
	Place Place    // in the newer file, or, of what is gone, in the older
	Parts []string // the parts that it can bear on
}
