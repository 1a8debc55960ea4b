package result

// Problems are what is wrong with files that cannot be used, in place of an
// answer: nothing was checked.
type Problems struct {
	Tool string // version of Hingeline
	List []Problem
}

// Problem is one mistake, or a warning beside mistakes.
type Problem struct {
	Finding
	Warning bool
}
