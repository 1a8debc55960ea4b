package table

import "example.com/hingeline/verify/poses"

// corners are ways of so many sticks in which any two of them meet in all four ways, with
// both opposite corners.
func corners(n int) [][]bool {
	all := make([]bool, n)
	for i := range all {
		all[i] = true
	}
	return append([][]bool{all}, poses.Pairwise(n)...)
}
