package said

import (
	"strconv"
	"strings"
)

// Runs are ascending numbers, three and more that follow each other in short: "3, 5, 9 to 14".
func Runs(numbers []int) string {
	var runs []string
	for i := 0; i < len(numbers); {
		last := i
		for last+1 < len(numbers) && numbers[last+1] == numbers[last]+1 {
			last++
		}
		run := strconv.Itoa(numbers[i])
		switch last - i {
		case 0:
		case 1:
			run += ", " + strconv.Itoa(numbers[last])
		default:
			run += " to " + strconv.Itoa(numbers[last])
		}
		runs = append(runs, run)
		i = last + 1
	}
	return strings.Join(runs, ", ")
}
