package sheet

import "example.com/hingeline/mixcore"

// PartnerOf is the part on the other side that does there what a part does here: of its
// kind and name but for the side. False if there is none.
func PartnerOf(s *mixcore.Setup, part int) (int, bool) { return mirrored(s, part) }
