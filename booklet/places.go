package booklet

import (
	"cmp"
	"slices"
	"strings"
)

// place is a row and a column, from 1.
type place struct{ row, column int }

// mostPlaces is how many groups of places are named.
const mostPlaces = 24

// placesText names places row by row: "row 1: columns 1 to 3; rows 2 and 4: column 5".
func placesText(list []place) string {
	slices.SortFunc(list, func(a, b place) int { return cmp.Or(cmp.Compare(a.row, b.row), cmp.Compare(a.column, b.column)) })
	var order []string
	rows := map[string][]int{}
	for i := 0; i < len(list); {
		n, columns := i, []int(nil)
		for ; n < len(list) && list[n].row == list[i].row; n++ {
			columns = append(columns, list[n].column)
		}
		text := numbersText("column", columns)
		if rows[text] == nil {
			order = append(order, text)
		}
		rows[text] = append(rows[text], list[i].row)
		i = n
	}
	var parts []string
	for _, columns := range order {
		parts = append(parts, numbersText("row", rows[columns])+": "+columns)
	}
	if more := len(parts) - mostPlaces; more > 0 {
		parts = append(parts[:mostPlaces], "and "+count(more, "more group")+" that have no room here")
	}
	return strings.Join(parts, "; ")
}

// numbersText names numbers that rise: "row 1", "columns 1 to 3 and 5".
func numbersText(what string, list []int) string {
	if len(list) > 3 { // every other one
		if step := list[1] - list[0]; step == 2 && evenly(list) {
			return plural(what) + " " + numeral(list[0]) + ", " + numeral(list[1]) + " and so on to " + numeral(list[len(list)-1])
		}
	}
	var parts []string
	for i := 0; i < len(list); {
		n := i
		for n+1 < len(list) && list[n+1] == list[n]+1 {
			n++
		}
		switch {
		case n == i:
			parts = append(parts, numeral(list[i]))
		case n == i+1:
			parts = append(parts, numeral(list[i]), numeral(list[n]))
		default:
			parts = append(parts, numeral(list[i])+" to "+numeral(list[n]))
		}
		i = n + 1
	}
	return verb(len(list), what, plural(what)) + " " + listed(parts)
}

func evenly(list []int) bool {
	for i := 1; i < len(list); i++ {
		if list[i]-list[i-1] != 2 {
			return false
		}
	}
	return true
}
