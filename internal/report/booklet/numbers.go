package booklet

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
