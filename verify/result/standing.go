package result

// Standing is what has been signed about a model, and what of it still stands.
type Standing struct {
	Signatures []Signature // oldest first
	Changes    []Change    // what is different from the last that was signed; none: it is current
	Troubles   []string    // why records cannot be trusted, each a sentence; none: all are genuine
	Seen       string      // what those who signed say of the model itself, one line; empty where no signature stands, or none would without Since
	Since      string      // why what was seen on the model speaks against it although no signature says so, one line; empty: nothing does
	Summary    string      // one line: "signed 2 days ago by …; out of date: port flap share −55 → −65 %"
}

// Signature is one record.
type Signature struct {
	Number   int      // from 1
	Name     string   // of who signed
	Role     string   // "builder", "second" or "inspector"
	Date     string   // RFC 3339
	Key      string   // fingerprint of the key, "SHA256:…"; empty for one without
	Vouched  string   // whose key an allowed-signers file says it is; empty where none was given, or none says so
	Tool     string   // version of Hingeline that checked, where it is not this one; else empty
	Place    string   // where it was signed; may be empty
	Remarks  string   // signed as well; may be empty
	Accepted []string // warnings that it was signed in spite of, each with the reason
	Genuine  bool     // the record is whole, in its chain, and its key's signature, if it has one, is right
	Current  bool     // the resolved set-up and script are still what was signed
	Counts   bool     // false: it is not genuine, the same person has signed the same before, or what was seen on the model speaks against it
	Seen     *Seen    // what was seen on the model itself; nil: only its set-up was signed
	Note     string   // why it does not stand, in words; empty if it does
}

// Seen is what somebody who signs has seen on the model in the hand: what the record of a
// walk-around at the bench comes to.
type Seen struct {
	Record     string // its file, from the directory of the airframe file
	Date       string // of its last answer, RFC 3339
	Summary    string // one line: "seen on the model: 5 of 6 steps as expected, 1 skipped, 2026-11-25"
	Steps      int
	AsExpected int // of the steps
	Differ     int // that were not as expected
	Skipped    int
	Unseen     int    // of a part it could not be said what it did
	Reason     string // why it is signed although something was not as expected; else empty

	ReasonUnseen string // why it is signed although not every step was seen; else empty
}

// OnlySetUp is what a signature says of the model where nobody has signed to have looked.
const OnlySetUp = "only the set-up was checked, the model itself was not looked at"

// Change is one difference of two resolved set-ups or scripts.
type Change struct {
	Text   string   // "port flap: share of flap −55 → −65 %"
	Place  Place    // in the newer file, or, of what is gone, in the older
	Parts  []string // the parts that it can bear on
	Checks []string // sentences of the script that was signed about these parts; none where nobody looked
}

// Stands says whether the model is signed and all of it holds: somebody has signed what
// is there now, and every record is genuine.
func (s *Standing) Stands() bool {
	if len(s.Troubles) > 0 || len(s.Changes) > 0 || s.Since != "" {
		return false
	}
	for i := range s.Signatures {
		if s.Signatures[i].Stands() {
			return true
		}
	}
	return false
}

// Stands says whether a signature is one that counts for what is there now.
func (s *Signature) Stands() bool { return s.Genuine && s.Current && s.Counts }

// RoleWords is a role in words: "builder", "second person", "inspector".
func RoleWords(role string) string {
	if role == "second" {
		return "second person"
	}
	return role
}
