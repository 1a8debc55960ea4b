package table

// corners are all ways of so many sticks in which any two of them meet in all four
// ways, both opposite corners first.
func corners(n int) [][]bool {
	rows := [][]bool{make([]bool, n), make([]bool, n)}
	for i := range n {
		rows[0][i] = true
	}
	for i := range n {
		row := make([]bool, n)
		row[i] = true
		rows = append(rows, row)
	}
	return rows
}
