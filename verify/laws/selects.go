package laws

// Selects says whether a selection takes the law of a code; an empty one takes all.
func Selects(only []string, code string) bool {
	for i := range all {
		if all[i].Code == code {
			return selected(only, &all[i])
		}
	}
	return false
}
