package cutting

import (
	"slices"

	"eighthturn/internal/measure"
)

// maxMixed is up to how many ways to take some of what is wanted all of them are tried on precuts.
const maxMixed = 64

// mixing tries every way to share what is wanted among precuts and yardage.
type mixing struct {
	fabric *Fabric
	list   []demand
	sizes  []sheetSize
	fits   []int         // by the number of a taking: how a precut lies that holds it, from 1; 0 where none does
	cloth  []measure.NM  // by the number of what is left: the yardage; -1 while it is not known
	known  map[[2]int]by // by the number of what is left and of the precuts
}

// by is what the best way takes, and what its first precut holds.
type by struct {
	cloth measure.NM
	first int
}

// newMixing is nil where there is too much to try.
func (f *Fabric) newMixing(list []demand, sizes []sheetSize) *mixing {
	ways := 1
	for i := range list {
		if ways *= list[i].count + 1; ways > maxMixed {
			return nil
		}
	}
	m := &mixing{fabric: f, list: list, sizes: sizes, fits: make([]int, ways), cloth: slices.Repeat([]measure.NM{-1}, ways), known: map[[2]int]by{}}
	for n := 1; n < ways; n++ {
		for i, size := range sizes {
			taken := m.taking(n)
			if m.fits[n] == 0 && !slices.ContainsFunc(taken, func(d demand) bool { return !size.holds(&d) }) &&
				within(f.budget, taken, size.length).pack().cloth <= size.width {
				m.fits[n] = i + 1
			}
		}
	}
	return m
}

// counts are how many of each a taking has, by its number.
func (m *mixing) counts(n int) []int {
	counts := make([]int, len(m.list))
	for i := range m.list {
		counts[i] = n % (m.list[i].count + 1)
		n /= m.list[i].count + 1
	}
	return counts
}

// taking is what is wanted in a taking.
func (m *mixing) taking(n int) []demand {
	var list []demand
	for i, count := range m.counts(n) {
		if count > 0 {
			d := m.list[i]
			d.count = count
			list = append(list, d)
		}
	}
	return list
}

// within says whether a taking has no more of anything than another.
func (m *mixing) within(n, other int) bool {
	a, b := m.counts(n), m.counts(other)
	for i := range a {
		if a[i] > b[i] {
			return false
		}
	}
	return true
}

// least is the least yardage for what is left when there are so many precuts.
func (m *mixing) least(left, precuts int) by {
	key := [2]int{left, precuts}
	if found, ok := m.known[key]; ok {
		return found
	}
	found := by{cloth: m.yardage(left)}
	for n := left; n > 0 && precuts > 0 && found.cloth > 0; n-- {
		if m.fits[n] == 0 || !m.within(n, left) {
			continue
		}
		if rest := m.least(left-n, precuts-1); rest.cloth < found.cloth {
			found = by{rest.cloth, n}
		}
	}
	m.known[key] = found
	return found
}

// yardage is what is cut off yardage for what is left.
func (m *mixing) yardage(left int) measure.NM {
	if m.cloth[left] < 0 {
		try := *m.fabric
		try.layYardage(m.taking(left))
		m.cloth[left] = try.LengthCut
	}
	return m.cloth[left]
}

// best fills up to so many precuts so that least yardage is left.
func (m *mixing) best(have int) *sheeted {
	s, left := &sheeted{}, len(m.fits)-1
	have = min(have, left)
	var taken []int
	for ; m.least(left, have).first > 0; have-- {
		n := m.least(left, have).first
		taken = append(taken, n)
		left -= n
	}
	slices.Sort(taken)
	for i := 0; i < len(taken); {
		times := 1
		for i+times < len(taken) && taken[i+times] == taken[i] {
			times++
		}
		size := m.sizes[m.fits[taken[i]]-1]
		a := within(m.fabric.budget, m.taking(taken[i]), size.length)
		one := &sheeted{strips: a.strips(a.pack().patterns, -1)}
		s.add(one.lying(size), times)
		i += times
	}
	s.left = m.taking(left)
	return s
}
