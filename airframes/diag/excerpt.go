package diag

import "strings"

// An excerpt is at most excerptColumns wide unless the terminal is known, and
// never held to less than leastColumns; of a longer line it shows what stands
// around the caret, with the part leadPart of the room before it.
const (
	excerptColumns = 100
	leastColumns   = 24
	leadPart       = 0.4
	ellipsis       = "…"
)

// excerptOf is a line made ready to be shown, with how far to indent the
// caret and how wide it is, in terminal columns. Column counts characters from
// 1; one beyond the line's end puts the caret just behind it. More says whether
// the line goes on before and behind what is given of it; room is how many
// columns there are, besides an ellipsis at either end.
func excerptOf(line string, column, width int, more [2]bool, room int) (excerpt string, indent, underline int) {
	cells, positions := layOut(line)
	end := len(positions) - 1
	first := min(max(column-1, 0), end)
	last := min(first+max(width, 1), end)
	indent = positions[first]
	underline = max(positions[last]-indent, 1)

	total := positions[end]
	from, to := 0, end
	if total > room {
		from, to = window(positions, first, room)
	}
	indent -= positions[from]
	underline = max(min(underline, positions[to]-positions[from]-indent), 1)
	excerpt = strings.Join(cells[from:to], "")
	if from > 0 || more[0] {
		excerpt, indent = ellipsis+excerpt, indent+1
	}
	if to < end || more[1] {
		excerpt += ellipsis
	}
	return excerpt, indent, underline
}

// window is which characters of a long line to show, around the first one of
// the caret.
func window(positions []int, first, room int) (from, to int) {
	indent, end := positions[first], len(positions)-1
	lead := int(leadPart * float64(room))
	if indent > room-lead {
		from = first
		for from > 0 && indent-positions[from-1] <= lead {
			from--
		}
	}
	to = from
	for to < end && positions[to+1]-positions[from] <= room {
		to++
	}
	return from, to
}

// layOut turns each character of a line into what is shown for it, and says at
// which terminal column each begins; the last position is the line's width.
func layOut(line string) (cells []string, positions []int) {
	at := 0
	for _, r := range line {
		positions = append(positions, at)
		if r == '\t' {
			step := tabStop - at%tabStop
			cells = append(cells, strings.Repeat(" ", step))
			at += step
			continue
		}
		r = printable(r)
		cells = append(cells, string(r))
		at += columnsOf(r)
	}
	return cells, append(positions, at)
}
