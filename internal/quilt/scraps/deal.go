// Package scraps turns pools of scraps into one fabric for each place of a quilt: neighbours
// differ where that is possible, and the fabrics of a pool are used as evenly as can be.
package scraps

import "eighthturn/internal/stop"

// Place is what gets one fabric. Fabrics are numbers from 0 that places share.
type Place struct {
	Choices    []int   // the fabrics of its pool, each once, one at least; best the same slice for all places that share them
	Barred     []int   // fabrics that lie beside it already, each once
	Neighbours []int32 // places beside it, each once; each of two neighbours names the other
	Pool       int     // from 0; places of one pool are dealt evenly together
	Line       int     // from 1: places that follow each other in a line, along which fabrics lie apart; 0 for none
	Lines      Lines   // in none of which a fabric crowds
}

// Assignment is the fabric of every place.
type Assignment struct {
	Fabrics []int
	// Proven says that where neighbours are alike no other deal could have avoided all of
	// that; without it the search was given up after MaxSteps.
	Proven bool
}

// MaxSteps is how often the search takes a fabric back, in one group of places that touch,
// before it gives up and lets some neighbours be alike.
const MaxSteps = 200_000

// The steps of all searches together, and of evening out: after them the deal stands as it is. A step is a small piece of work,
// such as a fabric looked at for a place. They are counted, and no clock is asked, so that a deal is the same everywhere.
const (
	maxSearchSteps = 100_000_000
	maxEvenSteps   = 15_000_000
)

// Deal gives every place a fabric, unless a sign ends it; nil for none. The same places and number give the same deal, another
// number another one.
func Deal(sign *stop.Sign, places []Place, number int) Assignment {
	t := newSolver(places, number)
	t.sign = sign
	proven := t.assign()
	t.balance()
	t.spread()
	t.spreadLines()
	return Assignment{t.fabric, proven}
}

// assign gives every place a fabric, with neighbors alike only where no way to avoid that was found; proven says that there is none.
func (t *solver) assign() (proven bool) {
	proven = true
	for _, group := range t.groups() {
		found, sure := t.search(group)
		if !found {
			proven = proven && sure
			t.compromise(group)
		}
	}
	return proven
}

// solver is the work on one deal.
type solver struct {
	sign   *stop.Sign // ends the work; nil for never
	places []Place
	seats  []placeState // a place each
	fabric []int        // by place, -1 while there is none
	used   [][]int
	marked []int // by fabric: the number of the list that it was marked for last
	marks  int   // how many lists were marked
	seen   []int // by place: the number of the look for chains that met it last
	looks  int   // how many looks for chains there were
	number uint64
	left   int // steps that the searches of all groups may still take
	even   int // steps that evening out may still take
}

// placeState is what the deal knows of a place.
type placeState struct {
	may    []bool // by fabric: its choices
	barred []int  // those not to be had after all; none where that would be all of them
	pool   int    // index into used
	free   int    // how many fabrics it may still get
	beside int    // how many neighbours have a fabric
	waits  int    // where in the queue, -1 if it does not
}

func newSolver(places []Place, number int) *solver {
	fabrics := 0
	for i := range places {
		for _, list := range [2][]int{places[i].Choices, places[i].Barred} {
			for _, f := range list {
				fabrics = max(fabrics, f+1)
			}
		}
	}
	t := &solver{places: places, seats: make([]placeState, len(places)), fabric: make([]int, len(places)), marked: make([]int, fabrics), seen: make([]int, len(places)), number: uint64(number), left: maxSearchSteps, even: maxEvenSteps}
	sets, pools := sets{fabrics, map[listKey][]bool{}}, map[int]int{}
	for i := range places {
		t.fabric[i] = -1
		pool, known := pools[places[i].Pool]
		if !known {
			pool = len(t.used)
			pools[places[i].Pool] = pool
			t.used = append(t.used, make([]int, fabrics))
		}
		t.seats[i] = newPlaceState(&places[i], sets.of(places[i].Choices), pool)
	}
	return t
}

func newPlaceState(p *Place, may []bool, pool int) placeState {
	s := placeState{may: may, barred: p.Barred, pool: pool, free: len(p.Choices), waits: -1}
	for _, f := range p.Barred {
		if may[f] {
			s.free--
		}
	}
	if s.free == 0 {
		s.barred, s.free = nil, len(p.Choices)
	}
	return s
}

// sets keeps the set of each list of choices, so that places with one list share it.
type sets struct {
	fabrics int
	known   map[listKey][]bool
}

type listKey struct {
	first *int
	count int
}

func (s sets) of(list []int) []bool {
	key := listKey{&list[0], len(list)}
	set, ok := s.known[key]
	if !ok {
		set = make([]bool, s.fabrics)
		for _, f := range list {
			set[f] = true
		}
		s.known[key] = set
	}
	return set
}

// may says whether a place may have a fabric, whatever its neighbours have.
func (t *solver) may(place int32, fabric int) bool {
	s := &t.seats[place]
	if !s.may[fabric] {
		return false
	}
	for _, f := range s.barred {
		if f == fabric {
			return false
		}
	}
	return true
}

// alike is how many neighbours of a place have a fabric.
func (t *solver) alike(place int32, fabric int) int {
	n := 0
	for _, p := range t.places[place].Neighbours {
		if t.fabric[p] == fabric {
			n++
		}
	}
	return n
}

// chance is a number that looks random and depends on the deal and two numbers alone.
func (t *solver) chance(a, b int) uint64 {
	x := t.number*0x9e3779b97f4a7c15 + uint64(a)*0xbf58476d1ce4e5b9 + uint64(b)*0x94d049bb133111eb + 0x2545f4914f6cdd1d
	x ^= x >> 30
	x *= 0xbf58476d1ce4e5b9
	x ^= x >> 27
	x *= 0x94d049bb133111eb
	return x ^ x>>31
}

// groups is the places in sets that touch, each in the order of its places.
func (t *solver) groups() [][]int32 {
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

func (t *solver) put(place int32, fabric int) {
	t.fabric[place] = fabric
	t.used[t.seats[place].pool][fabric]++
	for _, n := range t.places[place].Neighbours {
		t.seats[n].beside++
		if t.may(n, fabric) && t.alike(n, fabric) == 1 {
			t.seats[n].free--
		}
	}
}

func (t *solver) take(place int32) {
	fabric := t.fabric[place]
	t.fabric[place] = -1
	t.used[t.seats[place].pool][fabric]--
	for _, n := range t.places[place].Neighbours {
		t.seats[n].beside--
		if t.may(n, fabric) && t.alike(n, fabric) == 0 {
			t.seats[n].free++
		}
	}
}
