package scraps

import (
	"math"
	"slices"
)

// balance evens out how often the fabrics of each pool are used. Two fabrics can change
// places in a whole chain of neighbours that have the one or the other without making any
// neighbours alike; for every two fabrics the chains are chosen that bring their numbers
// closest, over and over until nothing gets better. What is still uneven is tried again
// after a detour, and then place by place in small windows.
func (t *solver) balance() {
	pools := t.pools()
	t.settle(pools)
	for before := math.MaxInt; t.squares() < before; { // what helps one pool may cost one before it
		before = t.squares()
		for _, pool := range pools {
			if t.uneven(pool) {
				t.goRound(pools, pool)
			}
			if t.uneven(pool) {
				t.lookThrough(pools, pool)
			}
		}
	}
}

// settle brings the fabrics of every pool together until no pair comes closer: each round leaves less to even out.
func (t *solver) settle(pools []poolOf) {
	for _, pool := range pools {
		for t.balancePool(pool) {
		}
	}
}

// poolOf is a pool with its places and all fabrics that one of them may get.
type poolOf struct {
	number  int
	places  []int32
	fabrics []int
}

// pools is every pool, in the order of their first places.
func (t *solver) pools() []poolOf {
	var pools []poolOf
	index := map[int]int{}
	for i := range t.places {
		n := t.places[i].Pool
		at, ok := index[n]
		if !ok {
			at = len(pools)
			index[n] = at
			pools = append(pools, poolOf{number: n})
		}
		pools[at].places = append(pools[at].places, int32(i))
	}
	for i := range pools {
		pools[i].fabrics = t.fabricsOf(pools[i].places)
	}
	return pools
}

// fabricsOf is the fabrics that one of some places may get, each once, in order.
func (t *solver) fabricsOf(places []int32) []int {
	t.marks++
	var list []int
	whole := map[listKey]bool{} // choices all of which are in the list
	for _, p := range places {
		choices := t.places[p].Choices
		key := listKey{&choices[0], len(choices)}
		if whole[key] {
			continue
		}
		missing := false
		for _, f := range choices {
			switch {
			case t.marked[f] == t.marks:
			case t.may(p, f):
				t.marked[f] = t.marks
				list = append(list, f)
			default:
				missing = true
			}
		}
		whole[key] = !missing
	}
	slices.Sort(list)
	return list
}

// balancePool brings every two fabrics of a pool as close as their chains allow; it says
// whether anything changed.
func (t *solver) balancePool(pool poolOf) bool {
	changed := false
	with := map[int][]int32{}
	for _, p := range pool.places {
		with[t.fabric[p]] = append(with[t.fabric[p]], p)
	}
	if !t.uneven(pool) {
		return false
	}
	for i, a := range pool.fabrics {
		if t.even -= i / 4; t.even < 0 {
			break
		}
		for _, b := range pool.fabrics[:i] {
			surplus := len(with[a]) - len(with[b])
			if surplus > -2 && surplus < 2 {
				continue
			}
			if t.even -= len(with[a]) + len(with[b]); t.even < 0 {
				return changed
			}
			if !t.balancePair(pool.number, a, b, append(slices.Clone(with[a]), with[b]...)) {
				continue
			}
			changed = true
			both := append(with[a], with[b]...)
			with[a], with[b] = nil, nil
			for _, p := range both {
				with[t.fabric[p]] = append(with[t.fabric[p]], p)
			}
		}
	}
	return changed
}

// chain is places that touch and have one of two fabrics.
type chain struct {
	places  []int32
	surplus int // how many more of them have the first fabric
}

// balancePair changes chains of fabrics a and b so that their numbers come closest.
func (t *solver) balancePair(pool, a, b int, places []int32) bool {
	t.sign.Step(1 + len(places))
	chains, fixed := t.chains(pool, a, b, places)
	total := fixed
	for _, c := range chains {
		total += c.surplus
	}
	turned := t.chooseTurned(chains, total)
	for i, turn := range turned {
		if turn {
			t.turn(chains[i].places, a, b)
		}
	}
	return slices.Contains(turned, true)
}

// anyPool stands for a pool where chains may go through all of them.
const anyPool = -1

// chains finds the chains of two fabrics that can be turned; the surplus of the others is
// fixed.
func (t *solver) chains(pool, a, b int, places []int32) (chains []chain, fixed int) {
	t.looks++
	for _, start := range places {
		if t.seen[start] == t.looks {
			continue
		}
		t.seen[start] = t.looks
		c := chain{places: []int32{start}}
		free := true
		for at := 0; at < len(c.places); at++ {
			p := c.places[at]
			free = free && t.mayTurn(p, pool, a, b)
			switch {
			case pool != anyPool && t.places[p].Pool != pool:
			case t.fabric[p] == a:
				c.surplus++
			default:
				c.surplus--
			}
			t.even--
			for _, n := range t.places[p].Neighbours {
				if (t.fabric[n] == a || t.fabric[n] == b) && t.seen[n] != t.looks {
					t.seen[n] = t.looks
					c.places = append(c.places, n)
				}
			}
		}
		if free {
			chains = append(chains, c)
		} else {
			fixed += c.surplus
		}
	}
	return chains, fixed
}

// mayTurn says whether a place may have either of two fabrics.
func (t *solver) mayTurn(place int32, pool, a, b int) bool {
	return (pool == anyPool || t.places[place].Pool == pool) && t.may(place, a) && t.may(place, b)
}

// turn gives the places of a chain the other one of two fabrics.
func (t *solver) turn(places []int32, a, b int) {
	next := make([]int, len(places))
	for i, p := range places {
		next[i] = a + b - t.fabric[p]
		t.take(p)
	}
	for i, p := range places {
		t.put(p, next[i])
	}
}

// sumsAStep is how many sums of chains cost as much as a place that is looked at.
const sumsAStep = 16

// chooseTurned chooses which chains to turn so that the surplus comes nearest to 0: every
// sum that turning some of the first chains can reach is noted with the chain that reached
// it first, until one is as near as can be, or what evening out may cost is spent.
func (t *solver) chooseTurned(chains []chain, total int) []bool {
	reach := 0
	for _, c := range chains {
		reach += abs(c.surplus)
	}
	reached := make([]int32, 2*reach+1) // by sum, from -reach: 1 and the last chain it turned; 0 if none turns to it
	sums := []int{0}
	best, least := 0, abs(total%2)
	for i, c := range chains {
		steps := len(sums) / sumsAStep
		t.sign.Step(steps)
		if t.even -= steps; t.even < 0 {
			break
		}
		for _, s := range sums[:len(sums):len(sums)] {
			if abs(total-2*best) == least {
				break
			}
			next := s + c.surplus
			if next == 0 || reached[reach+next] > 0 {
				continue
			}
			reached[reach+next] = int32(i) + 1
			sums = append(sums, next)
			if abs(total-2*next) < abs(total-2*best) {
				best = next
			}
		}
	}
	turned := make([]bool, len(chains))
	for best != 0 {
		i := reached[reach+best] - 1
		turned[i] = true
		best -= chains[i].surplus
	}
	return turned
}

func abs(n int) int { return max(n, -n) }
