package repeats

import (
	"cmp"
	"container/heap"
	"slices"
	"strconv"

	"eighthturn/internal/measure"
)

// node is a beginning of a fitting: strips that follow each other along the cloth.
type node struct {
	wanted  []int      // of each sort, still
	begin   measure.NM // of the first strip
	end     measure.NM // of the last one
	least   measure.NM // no way to go on takes less cloth in all
	missing int        // pieces
	pattern int
	at      measure.NM // where the last strip begins
	from    *node
}

// nodes is those that may be gone on with, that which promises the least cloth first, of like ones that which lacks the fewest.
type nodes []*node

func (n nodes) Len() int { return len(n) }
func (n nodes) Less(i, j int) bool {
	return cmp.Or(cmp.Compare(n[i].least, n[j].least), cmp.Compare(n[i].missing, n[j].missing)) < 0
}
func (n nodes) Swap(i, j int) { n[i], n[j] = n[j], n[i] }
func (n *nodes) Push(x any)   { *n = append(*n, x.(*node)) }
func (n *nodes) Pop() any {
	last := (*n)[len(*n)-1]
	*n = (*n)[:len(*n)-1]
	return last
}

// search finds the strips that take the least cloth: the beginning that promises the least is gone on with until it lacks nothing.
// Once the steps are used up the one that lacks the fewest is gone on with by its best next strip alone.
func (f *fitting) search() *node {
	start := &node{pattern: -1}
	for i := range f.sorts {
		start.wanted = append(start.wanted, f.sorts[i].wanted)
		start.missing += f.sorts[i].wanted
	}
	open, seen := &nodes{start}, map[string]measure.NM{}
	nearest := start
	for f.left >= 0 {
		n := heap.Pop(open).(*node)
		if n.missing == 0 {
			return n
		}
		if n.missing < nearest.missing {
			nearest = n
		}
		for _, m := range f.next(n) {
			f.left--
			key := m.key()
			if took, ok := seen[key]; ok && took <= m.end-m.begin {
				continue
			}
			seen[key] = m.end - m.begin
			heap.Push(open, m)
		}
	}
	return f.finished(nearest)
}

// finished goes on with the strip that gives the most for its cloth, again and again.
func (f *fitting) finished(n *node) *node {
	for n.missing > 0 {
		n = slices.MaxFunc(f.next(n), func(a, b *node) int {
			gain := func(m *node) float64 { return float64(n.missing-m.missing) / float64(max(1, m.end-m.before(n))) }
			return cmp.Compare(gain(a), gain(b))
		})
	}
	return n
}

// before is where the cloth of the last strip begins: behind the strip before it.
func (m *node) before(n *node) measure.NM {
	if n.pattern < 0 {
		return m.begin
	}
	return n.end
}

// key tells beginnings apart that can be gone on with otherwise: what is wanted, and where in the repeat the first strip begins.
func (m *node) key() string {
	b := strconv.AppendInt(nil, int64(m.begin), 36)
	for _, w := range m.wanted {
		b = strconv.AppendInt(append(b, ' '), int64(w), 36)
	}
	return string(b)
}

// next are the beginnings with one more strip. A strip is left out before which another that gives something would fit whole: it
// may as well be cut first.
func (f *fitting) next(n *node) []*node {
	list := make([]*node, 0, len(f.patterns))
	for i := range f.patterns {
		if m := f.with(n, i); m != nil {
			list = append(list, m)
		}
	}
	first := list[0].end
	for _, m := range list {
		first = min(first, m.end)
	}
	if n.pattern < 0 {
		return list
	}
	return slices.DeleteFunc(list, func(m *node) bool { return m.at >= first })
}

// with is a beginning with a strip of a pattern where it comes next; nil where that gives nothing that is wanted.
func (f *fitting) with(n *node, i int) *node {
	p := &f.patterns[i]
	m := &node{pattern: i, from: n, wanted: slices.Clone(n.wanted), missing: n.missing, begin: n.begin}
	for s, count := range p.counts {
		given := min(count, m.wanted[s])
		m.wanted[s] -= given
		m.missing -= given
	}
	if m.missing == n.missing {
		return nil
	}
	m.at = after(p.phase, n.end, f.cloth.Along)
	if n.pattern < 0 {
		m.at, m.begin = p.phase, p.phase
	}
	m.end = m.at + p.height
	m.least = upTo(f.least(m)-m.begin, f.cloth.Along) // it is bought in whole repeats
	return m
}

// after is the first place from another on that lies at a place of the repeat.
func after(phase, from, repeat measure.NM) measure.NM {
	if repeat == 0 {
		return from
	}
	return from + mod(phase-from, repeat)
}

// least is where the cloth ends at the least: for each sort as though the others did not matter.
func (f *fitting) least(n *node) measure.NM {
	end := n.end
	for i, w := range n.wanted {
		if s := &f.sorts[i]; w > 0 {
			strips := up(measure.NM(w), measure.NM(s.most))
			end = max(end, after(s.phase, n.end, f.cloth.Along)+(strips-1)*s.pitch+f.marked(s.height()))
		}
	}
	return end
}

// lay lays out the strips that were found, with no more pieces than are wanted.
func (f *fitting) lay(n *node) {
	f.LengthCut = n.end - n.begin
	var order []*node
	for ; n.pattern >= 0; n = n.from {
		order = append(order, n)
	}
	slices.Reverse(order)
	for _, n := range order {
		p := &f.patterns[n.pattern]
		s := Strip{Min: measure.Point{Y: n.at}, Max: measure.Point{X: f.cloth.UsableWidth, Y: n.at + p.height}}
		left := slices.Clone(n.from.wanted)
		for i, piece := range p.pieces {
			if left[p.sorts[i]] > 0 {
				left[p.sorts[i]]--
				piece.By.Y += n.at
				s.Pieces = append(s.Pieces, piece)
			}
		}
		f.Strips = append(f.Strips, s)
	}
}
