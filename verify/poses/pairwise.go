package poses

// Pairwise is the fewest rows of n two-valued columns in which any two columns meet in
// all four ways: ways of n sticks, full one way or the other, all at once. N rows are
// enough for C(N−1, ⌈N/2⌉) columns and for no more (Rényi; Katona; Kleitman and Spencer:
// see arXiv 1111.0587): the first row is all false, and in the others each column is true
// in another choice of ⌈N/2⌉.
func Pairwise(n int) [][]bool {
	size := 4
	for mostColumns(size) < n {
		size++
	}
	rows := make([][]bool, size)
	for i := range rows {
		rows[i] = make([]bool, n)
	}
	column := 0
	var choose func(from int, chosen []int)
	choose = func(from int, chosen []int) {
		if column == n {
			return
		}
		if len(chosen) == (size+1)/2 {
			for _, row := range chosen {
				rows[row][column] = true
			}
			column++
			return
		}
		for row := from; row < size; row++ {
			choose(row+1, append(chosen[:len(chosen):len(chosen)], row))
		}
	}
	choose(1, nil)
	return rows
}

// mostColumns is how many columns so many rows are enough for.
func mostColumns(rows int) int {
	choose := 1
	for i := range (rows + 1) / 2 {
		choose = choose * (rows - 1 - i) / (i + 1)
	}
	return choose
}
