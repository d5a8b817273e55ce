package sewing

// asked is what a joint asks of two choices: that they go the same way, or opposite ways.
type asked struct {
	a, b     int32
	opposite bool
}

// riddle is choices between two ways and what is asked of them. Which of them should go one
// way by custom is in wants: above 0 for way 1.
type riddle struct {
	choices int
	asks    []asked
	wants   []float64
	most    int       // rings to show
	seen    []bool    // by choice: followed already
	at      [][]int32 // by choice: what is asked of it, by index
}

// answer is a way for every choice, and what is known of it.
type answer struct {
	ways   []bool
	broken []int32   // what is asked and not done, by index
	rings  [][]int32 // for each of them: a ring of asks that cannot all be done, itself first; nil where none was found
	least  int       // no ways leave less undone
}

// solve finds ways that leave little undone.
//
// Asks that agree all round are done one after the other. Where a ring of them asks for an
// odd number of changes, something must be left undone. Then, component by component: a
// descent from there; rings that share no ask prove how much must be left undone at least;
// if that is less, the best is found exactly by taking choices out one by one, each with a
// table over its neighbours, as long as tables stay small. Where they do not, the same is done
// for one small part after the other, and only the bound is known.
func (r *riddle) solve() *answer {
	r.index()
	r.seen = make([]bool, r.choices)
	s := &answer{ways: make([]bool, r.choices)}
	for _, c := range r.components() {
		r.solveComponent(c, s)
		r.byCustom(c, s)
	}
	r.prove(s)
	return s
}

func (r *riddle) index() {
	counts := make([]int32, r.choices)
	for _, a := range r.asks {
		counts[a.a]++
		counts[a.b]++
	}
	room := make([]int32, 0, 2*len(r.asks))
	r.at = make([][]int32, r.choices)
	for i, n := range counts {
		r.at[i] = room[len(room) : len(room) : len(room)+int(n)]
		room = room[:len(room)+int(n)]
	}
	for i, a := range r.asks {
		r.at[a.a] = append(r.at[a.a], int32(i))
		if a.b != a.a {
			r.at[a.b] = append(r.at[a.b], int32(i))
		}
	}
}

// other is the choice at the other end of an ask.
func (a *asked) other(n int32) int32 {
	if a.a == n {
		return a.b
	}
	return a.a
}

func (a *asked) done(ways []bool) bool { return (ways[a.a] != ways[a.b]) == a.opposite }

// component is choices that hang together, each next to one that stands before it.
type component struct {
	choices []int32
}

// components finds what hangs together, and follows what is asked as far as it goes.
func (r *riddle) components() []component {
	var list []component
	seen := make([]bool, r.choices)
	for start := range seen {
		if seen[start] {
			continue
		}
		c := component{choices: []int32{int32(start)}}
		seen[start] = true
		for i := 0; i < len(c.choices); i++ {
			for _, n := range r.at[c.choices[i]] {
				if next := r.asks[n].other(c.choices[i]); !seen[next] {
					seen[next] = true
					c.choices = append(c.choices, next)
				}
			}
		}
		list = append(list, c)
	}
	return list
}

// solveComponent solves one component.
func (r *riddle) solveComponent(c component, s *answer) {
	r.follow(c, s.ways)
	broken := r.broken(c, s.ways)
	if len(broken) == 0 {
		return
	}
	r.descend(c, s.ways)
	r.orAlike(c, s.ways)
	broken = r.broken(c, s.ways)
	least := r.disjoint(broken, s.ways)
	if least < len(broken) {
		if r.exact(c, s.ways) {
			broken = r.broken(c, s.ways)
			least = len(broken)
		} else {
			r.byWindows(c, s.ways)
			broken = r.broken(c, s.ways)
			least = max(least, r.disjoint(broken, s.ways))
		}
	}
	s.broken = append(s.broken, broken...)
	s.least += least
}

// follow does what is asked from the first choice outwards; what closes a ring may be left
// undone.
func (r *riddle) follow(c component, ways []bool) {
	seen := r.seen
	seen[c.choices[0]], ways[c.choices[0]] = true, false
	for _, at := range c.choices {
		for _, n := range r.at[at] {
			a := &r.asks[n]
			if next := a.other(at); !seen[next] {
				seen[next] = true
				ways[next] = ways[at] != a.opposite
			}
		}
	}
}

// broken is what is asked in a component and not done.
func (r *riddle) broken(c component, ways []bool) []int32 {
	var list []int32
	for _, at := range c.choices {
		for _, n := range r.at[at] {
			if r.asks[n].a == at && !r.asks[n].done(ways) {
				list = append(list, n)
			}
		}
	}
	return list
}

// gain is how much less would be undone if a choice went the other way.
func (r *riddle) gain(at int32, ways []bool) int {
	gain := 0
	for _, n := range r.at[at] {
		switch a := &r.asks[n]; {
		case a.a == a.b:
		case a.done(ways):
			gain--
		default:
			gain++
		}
	}
	return gain
}

// descend turns choices round one by one as long as that leaves less undone.
func (r *riddle) descend(c component, ways []bool) {
	for again := true; again; {
		again = false
		for _, at := range c.choices {
			if r.gain(at, ways) > 0 {
				ways[at] = !ways[at]
				again = true
			}
		}
	}
}

// Limits of the search part by part.
const (
	windowChoices = 90
	mostWindows   = 150
)

// byWindows betters ways part by part: round each ask that is undone, the nearest choices are
// set as well as can be.
func (r *riddle) byWindows(c component, ways []bool) {
	for windows, again := 0, true; again && windows < mostWindows; {
		again = false
		broken := r.broken(c, ways)
		for _, n := range broken {
			if windows == mostWindows || r.asks[n].done(ways) {
				continue
			}
			windows++
			part := r.window(r.asks[n].a)
			before := len(r.broken(part, ways))
			if r.exact(part, ways) && len(r.broken(part, ways)) < before {
				again = true
			}
		}
	}
}

// window is the choices nearest to one.
func (r *riddle) window(from int32) component {
	list := []int32{from}
	seen := map[int32]bool{from: true}
	for i := 0; i < len(list) && len(list) < windowChoices; i++ {
		for _, n := range r.at[list[i]] {
			if next := r.asks[n].other(list[i]); !seen[next] {
				seen[next] = true
				list = append(list, next)
			}
		}
	}
	return component{list}
}

// orAlike tries all choices alike, with a descent from there, and keeps what is better.
func (r *riddle) orAlike(c component, ways []bool) {
	before := len(r.broken(c, ways))
	kept := make([]bool, len(c.choices))
	for i, at := range c.choices {
		kept[i], ways[at] = ways[at], false
	}
	r.descend(c, ways)
	if len(r.broken(c, ways)) < before {
		return
	}
	for i, at := range c.choices {
		ways[at] = kept[i]
	}
}

// byCustom turns a whole component round where custom wants it so: all that is done stays
// done.
func (r *riddle) byCustom(c component, s *answer) {
	sum := 0.0
	for _, at := range c.choices {
		if s.ways[at] {
			sum -= r.wants[at]
		} else {
			sum += r.wants[at]
		}
	}
	if sum <= 0 {
		return
	}
	for _, at := range c.choices {
		s.ways[at] = !s.ways[at]
	}
}
