// Package deal turns pools of scraps into one fabric for each place of a quilt: neighbours
// differ where that is possible, and the fabrics of a pool are used as evenly as can be.
package deal

import "slices"

// Place is what gets one fabric. Fabrics are numbers that places share.
type Place struct {
	Choices    []int   // the fabrics of its pool, each once
	Barred     []int   // fabrics that lie beside it already
	Neighbours []int32 // places beside it; each of two neighbours names the other
	Pool       int     // places of one pool are dealt evenly together
}

// Dealt is the fabric of every place.
type Dealt struct {
	Fabrics []int
	// Proven says that where neighbours are alike no other deal could have avoided all of
	// that; without it the search was given up after MaxSteps.
	Proven bool
}

// MaxSteps is how many fabrics the search tries for one group of places that touch before
// it gives up and keeps what has the fewest neighbours alike.
const MaxSteps = 200_000

// Deal gives every place a fabric. The same places and number give the same deal, another
// number another one.
func Deal(places []Place, number int) Dealt {
	t := newTable(places, number)
	proven := true
	for _, group := range t.groups() {
		if !t.search(group) {
			proven = proven && t.steps <= MaxSteps
			t.compromise(group)
		}
	}
	t.balance()
	return Dealt{t.fabric, proven}
}

// table is the work on one deal.
type table struct {
	places  []Place
	allowed [][]int // choices that are not barred, in the order of this deal; all of them where all are barred
	fabric  []int   // -1 while there is none
	used    map[use]int
	blocked []map[int]int // by place: how many neighbours have a fabric
	number  uint64
	steps   int
}

type use struct{ pool, fabric int }

func newTable(places []Place, number int) *table {
	t := &table{places: places, number: uint64(number), used: map[use]int{}}
	t.fabric = make([]int, len(places))
	t.allowed = make([][]int, len(places))
	t.blocked = make([]map[int]int, len(places))
	for i := range places {
		t.fabric[i] = -1
		t.blocked[i] = map[int]int{}
		for _, f := range places[i].Choices {
			if !slices.Contains(places[i].Barred, f) {
				t.allowed[i] = append(t.allowed[i], f)
			}
		}
		if len(t.allowed[i]) == 0 {
			t.allowed[i] = places[i].Choices
		}
	}
	return t
}

// chance is a number that looks random and depends on the deal and two numbers alone.
func (t *table) chance(a, b int) uint64 {
	x := t.number*0x9e3779b97f4a7c15 + uint64(a)*0xbf58476d1ce4e5b9 + uint64(b)*0x94d049bb133111eb + 0x2545f4914f6cdd1d
	x ^= x >> 30
	x *= 0xbf58476d1ce4e5b9
	x ^= x >> 27
	x *= 0x94d049bb133111eb
	return x ^ x>>31
}

// groups is the places in sets that touch, each in the order of its places.
func (t *table) groups() [][]int32 {
	seen := make([]bool, len(t.places))
	var groups [][]int32
	for i := range t.places {
		if seen[i] {
			continue
		}
		seen[i] = true
		group := []int32{int32(i)}
		for at := 0; at < len(group); at++ {
			for _, n := range t.places[group[at]].Neighbours {
				if !seen[n] {
					seen[n] = true
					group = append(group, n)
				}
			}
		}
		groups = append(groups, group)
	}
	return groups
}

func (t *table) put(place int32, fabric int) {
	t.fabric[place] = fabric
	t.used[use{t.places[place].Pool, fabric}]++
	for _, n := range t.places[place].Neighbours {
		t.blocked[n][fabric]++
	}
}

func (t *table) take(place int32) {
	fabric := t.fabric[place]
	t.fabric[place] = -1
	t.used[use{t.places[place].Pool, fabric}]--
	for _, n := range t.places[place].Neighbours {
		if t.blocked[n][fabric]--; t.blocked[n][fabric] == 0 {
			delete(t.blocked[n], fabric)
		}
	}
}

// open is the fabrics that a place may still get, those used least first; of those used
// alike the order is the deal's.
func (t *table) open(place int32) []int {
	var open []int
	for _, f := range t.allowed[place] {
		if t.blocked[place][f] == 0 {
			open = append(open, f)
		}
	}
	pool := t.places[place].Pool
	slices.SortFunc(open, func(a, b int) int {
		if d := t.used[use{pool, a}] - t.used[use{pool, b}]; d != 0 {
			return d
		}
		if t.chance(int(place), a) < t.chance(int(place), b) {
			return -1
		}
		return 1
	})
	return open
}

// freedom is how many fabrics a place may still get.
func (t *table) freedom(place int32) int {
	n := 0
	for _, f := range t.allowed[place] {
		if t.blocked[place][f] == 0 {
			n++
		}
	}
	return n
}
