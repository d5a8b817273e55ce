// Package lengths lays strips that run along the selvages side by side on lengths of a fabric, so that cutting plans and pictures of
// striped fabrics have each strip at the same place.
//
// Strips of a border are whole: each is one piece. Other strips are cut into pieces one after another, so that they may be as long as
// suits: the fewer of them lie side by side, the longer they are.
package lengths

import (
	"cmp"
	"slices"

	"eighthturn/internal/measure"
)

// Want is pieces that are all cut from strips of one width.
type Want struct {
	Across measure.NM // width of the strips, cut
	Along  measure.NM // that a piece takes of a strip
	Extra  measure.NM // that a strip takes beside its pieces: of wedges the slant at its end
	Count  int        // pieces
	Whole  bool       // each piece is a strip by itself
}

// Longest is the length of fabric that strips of several pieces are cut from: folded twice, 2 yards lie along a ruler of 24 in.
// Common practice, no source.
func Longest(u measure.System) measure.NM { return u.Usual(72*measure.Inch, 180*measure.Centimetre) }

// Longer is how much longer than reckoned the strips of a border are cut, so that they can be cut to the quilt as it
// measures: 2 in, 5 cm a side. Common practice, no source.
func Longer(u measure.System) measure.NM { return u.Usual(2*measure.Inch, 5*measure.Centimetre) }

// long is how long a strip of so many pieces is.
func (w *Want) long(pieces int) measure.NM { return measure.NM(pieces)*w.Along + w.Extra }

// fit is how many pieces a strip of a length gives.
func (w *Want) fit(long measure.NM) int { return max(0, int((long-w.Extra)/w.Along)) }

// Strip is a strip along the selvages.
type Strip struct {
	Want   int        // its index
	From   measure.NM // across, from the left selvage
	Long   measure.NM // as far as its pieces reach
	Pieces int
}

// Length is a length of fabric and the strips on it, from the left selvage on.
type Length struct {
	Long   measure.NM
	Beside measure.NM // width that its strips leave
	Strips []Strip
}

// Cloth is what strips are cut from.
type Cloth struct {
	Usable  measure.NM // width between the selvages; no strip is wider
	Longest measure.NM // length from which strips of several pieces are cut, where they need not be as long by themselves
	Most    int        // whole strips side by side; 0 for as many as there is room for
}

// Lay lays strips side by side: whole ones by their length, each in the first length that has room for it; then the others, the
// widest first, beside them and on lengths of their own, the last of which is as short as it can be.
func Lay(c Cloth, wants []Want) []Length {
	l := &laying{Cloth: c, wants: wants, left: make([]int, len(wants))}
	for i := range wants {
		l.order = append(l.order, i)
	}
	slices.SortStableFunc(l.order, func(a, b int) int {
		v, w := &wants[a], &wants[b]
		if v.Whole != w.Whole {
			return boolInt(w.Whole) - boolInt(v.Whole)
		}
		return cmp.Or(boolInt(v.Whole)*cmp.Compare(w.long(1), v.long(1)), cmp.Compare(w.Across, v.Across))
	})
	for _, i := range l.order {
		for range wants[i].Count * boolInt(wants[i].Whole) {
			l.whole(i)
		}
		l.left[i] = wants[i].Count * boolInt(!wants[i].Whole)
	}
	for n := range l.list {
		l.fill(&l.list[n])
	}
	for slices.Max(append(l.left, 0)) > 0 {
		l.list = append(l.list, Length{Long: l.next(), Beside: c.Usable})
		last := &l.list[len(l.list)-1]
		l.fill(last)
		last.Long = slices.MaxFunc(last.Strips, func(s, t Strip) int { return cmp.Compare(s.Long, t.Long) }).Long
	}
	return l.list
}

func boolInt(yes bool) int {
	if yes {
		return 1
	}
	return 0
}

// laying is the work on it.
type laying struct {
	Cloth
	wants []Want
	order []int
	left  []int // pieces of each that are not laid yet
	list  []Length
}

// whole lays one whole strip.
func (l *laying) whole(i int) {
	w := &l.wants[i]
	at := slices.IndexFunc(l.list, func(b Length) bool { return b.Beside >= w.Across && (l.Most == 0 || len(b.Strips) < l.Most) })
	if at < 0 {
		at = len(l.list)
		l.list = append(l.list, Length{Long: w.long(1), Beside: l.Usable})
	}
	l.list[at].add(Strip{Want: i, Long: w.long(1), Pieces: 1}, w.Across, l.Usable)
}

func (b *Length) add(s Strip, across, usable measure.NM) {
	s.From = usable - b.Beside
	b.Strips = append(b.Strips, s)
	b.Beside -= across
}

// fill lays as many strips on a length as it has room for, the widest first.
func (l *laying) fill(b *Length) {
	for _, i := range l.order {
		w := &l.wants[i]
		for l.left[i] > 0 && w.Across <= b.Beside && w.fit(b.Long) > 0 {
			n := min(l.left[i], w.fit(b.Long))
			l.left[i] -= n
			b.add(Strip{Want: i, Long: w.long(n), Pieces: n}, w.Across, l.Usable)
		}
	}
}

// next is how long the next length is: as long as what is left asks for, but no longer than is usual where its pieces are shorter.
func (l *laying) next() measure.NM {
	var least, most measure.NM
	for i, n := range l.left {
		if n > 0 {
			least, most = max(least, l.wants[i].long(1)), max(most, l.wants[i].long(n))
		}
	}
	low, high := least, most // where each sort has one strip; where the fabric is too narrow even for those it is cut into usual lengths
	for low < high {
		middle := low + (high-low)/2
		if l.holds(middle) {
			high = middle
		} else {
			low = middle + 1
		}
	}
	return min(low, max(least, l.Longest))
}

// holds says whether a length has room for all that is left.
func (l *laying) holds(long measure.NM) bool {
	room := l.Usable
	for i, n := range l.left {
		if n > 0 {
			strips := (n + l.wants[i].fit(long) - 1) / l.wants[i].fit(long)
			room -= measure.NM(strips) * l.wants[i].Across
		}
	}
	return room >= 0
}
