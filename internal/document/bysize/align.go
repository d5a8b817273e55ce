package bysize

// entry is what several sizes have in one place: of each the thing, and which sizes these are.
type entry[T any] struct {
	at     []*T
	places []int
}

func (e *entry[T]) first() *T { return e.at[0] }

// has is the thing of a size by its place, nil if it has none.
func (e *entry[T]) has(place int) *T {
	for i, p := range e.places {
		if p == place {
			return e.at[i]
		}
	}
	return nil
}

// How well two things match.
const (
	apart = 0
	near  = 2
	alike = 5
)

// score is how well two things match that are alike, or near each other.
func score(isAlike, isNear bool) int {
	switch {
	case isAlike:
		return alike
	case isNear:
		return near
	}
	return apart
}

// aligned puts things of several lists, one for each size, into one order in which those stand together that match. Each list keeps
// its own order.
func aligned[T any](lists [][]T, match func(a, b *T) int) []entry[T] {
	var merged []entry[T]
	for place := range lists {
		merged = withList(merged, lists[place], place, match)
	}
	return merged
}

// mostAligned is how many pairs of things are compared; longer lists are matched in passing.
const mostAligned = 100_000

// withList puts one more list into the order.
func withList[T any](merged []entry[T], list []T, place int, match func(a, b *T) int) []entry[T] {
	var out []entry[T]
	take := func(i, j int) {
		switch {
		case i < 0:
			out = append(out, entry[T]{[]*T{&list[j]}, []int{place}})
		case j < 0:
			out = append(out, merged[i])
		default:
			e := merged[i]
			e.at, e.places = append(e.at[:len(e.at):len(e.at)], &list[j]), append(e.places[:len(e.places):len(e.places)], place)
			out = append(out, e)
		}
	}
	start := 0
	for start < min(len(merged), len(list)) && match(merged[start].first(), &list[start]) == alike {
		take(start, start)
		start++
	}
	for _, p := range pairs(merged[start:], list[start:], match) {
		i, j := p[0], p[1]
		if i >= 0 {
			i += start
		}
		if j >= 0 {
			j += start
		}
		take(i, j)
	}
	return out
}

// pairs are the things of two lists in one order, by index, -1 for none: those that match best in all stand together.
func pairs[T any](merged []entry[T], list []T, match func(a, b *T) int) (order [][2]int) {
	n, k := len(merged), len(list)
	if n*k > mostAligned {
		return inPassing(merged, list, match)
	}
	best, worth := make([][]int, n+1), make([][]int, n+1)
	for i := range best {
		best[i], worth[i] = make([]int, k+1), make([]int, k+1)
	}
	for i := n - 1; i >= 0; i-- {
		for j := k - 1; j >= 0; j-- {
			worth[i][j] = match(merged[i].first(), &list[j])
			best[i][j] = max(best[i+1][j], best[i][j+1])
			if worth[i][j] > apart {
				best[i][j] = max(best[i][j], best[i+1][j+1]+worth[i][j])
			}
		}
	}
	i, j, turn := 0, 0, false // things without a match stand by turns, so that what is in the place of another stands behind it
	for i < n || j < k {
		switch first, second := i < n && (j == k || best[i][j] == best[i+1][j]), j < k && (i == n || best[i][j] == best[i][j+1]); {
		case i < n && j < k && worth[i][j] > apart && best[i][j] == best[i+1][j+1]+worth[i][j]:
			order = append(order, [2]int{i, j})
			i, j, turn = i+1, j+1, false
		case first && !(second && turn):
			order = append(order, [2]int{i, -1})
			i, turn = i+1, true
		default:
			order = append(order, [2]int{-1, j})
			j, turn = j+1, false
		}
	}
	return order
}

// ahead is how far a thing is looked for that a long list does not have where the other one does.
const ahead = 16

// inPassing are the things of two long lists as pairs are, each beside the next one that is alike.
func inPassing[T any](merged []entry[T], list []T, match func(a, b *T) int) (order [][2]int) {
	i, j := 0, 0
	for i < len(merged) && j < len(list) {
		a, b := nextAlike(merged[i:], list[j:], match)
		for range a {
			order, i = append(order, [2]int{i, -1}), i+1
		}
		for range b {
			order, j = append(order, [2]int{-1, j}), j+1
		}
		if i < len(merged) && j < len(list) && match(merged[i].first(), &list[j]) == alike {
			order, i, j = append(order, [2]int{i, j}), i+1, j+1
		}
	}
	for ; i < len(merged); i++ {
		order = append(order, [2]int{i, -1})
	}
	for ; j < len(list); j++ {
		order = append(order, [2]int{-1, j})
	}
	return order
}

// nextAlike is how many things of two lists to pass over until two are alike, as few as can be; one of each where none are near.
func nextAlike[T any](merged []entry[T], list []T, match func(a, b *T) int) (a, b int) {
	for passed := range 2*ahead + 1 {
		for a := max(0, passed-ahead); a <= min(passed, ahead); a++ {
			if b := passed - a; a < len(merged) && b < len(list) && match(merged[a].first(), &list[b]) == alike {
				return a, b
			}
		}
	}
	return 1, 1
}
