package contrast

import (
	"cmp"
	"math"
	"slices"

	"eighthturn/internal/measure"
)

// Rim is how well figures hold where they meet a border.
type Rim struct {
	Against []string   `json:"against"` // the border's fabrics there
	Length  measure.NM `json:"length"`
	Lost    measure.NM `json:"lost"`  // of it, what does not hold: stretches that vanish or are too soft, and those of the figure's own fabric
	Count   int        `json:"count"` // how many figures lose their edge there
	Verdict Verdict    `json:"verdict"`

	Lacks []Lack `json:"lacks"` // what costs it
}

// rim judges where figures meet a border, nil where they meet none.
func (s *study) rim(members []member) *Rim {
	var r Rim
	sum := outlineSum{study: s, both: true}
	var against []int
	lost := 0.0
	for i := range members {
		m := &members[i]
		if len(m.rim) == 0 {
			continue
		}
		weak := 0.0
		for _, edge := range m.rim {
			one := &s.seams[edge.seam]
			if !s.quick {
				against = append(against, int(s.Faces[s.outerFace(one)].Fabric))
			}
			if held := s.weight(math.Abs(one.step), one.soft); 100*held < readsFrom {
				weak += one.length
			}
		}
		if weak > 0 {
			r.Count++
			lost += weak
		}
		part := outlineSum{study: s, both: true}
		part.add(&member{seams: m.rim})
		sum.join(&part)
	}
	if sum.length == 0 {
		return nil
	}
	o := sum.outline()
	f := Figure{Outline: o}
	r.Against, r.Length, r.Lost, r.Verdict = s.names(distinct(against)), o.Length, nearest(lost), verdict(&f)
	r.Lacks = []Lack{}
	if r.Verdict != Reads {
		r.Lacks = s.lacking(rims(members))
	}
	return &r
}

// outerFace is the side of a seam that lies in a border.
func (s *study) outerFace(one *seam) int32 {
	if s.inBorder(one.a) {
		return one.a
	}
	return one.b
}

// with adds another colouring's rim but for what it lacks; either may be nil.
func (r *Rim) with(o *Rim) *Rim {
	if r == nil || o == nil {
		if r == nil {
			return o
		}
		return r
	}
	sum := *r
	sum.Against = union(append([]string(nil), r.Against...), o.Against)
	sum.Length, sum.Lost, sum.Count = r.Length+o.Length, r.Lost+o.Lost, r.Count+o.Count
	if rank(o.Verdict) > rank(r.Verdict) {
		sum.Verdict = o.Verdict
	}
	return &sum
}

// rank orders verdicts from the best on.
func rank(v Verdict) int {
	switch v {
	case Reads, RunsOn:
		return 0
	case OutlineOnly:
		return 1
	case FromAfarOnly:
		return 2
	case Faint:
		return 3
	}
	return 4
}

// Lack is two fabrics that should stand apart and do not.
type Lack struct {
	Names  [2]string  `json:"fabrics"` // the darker one first
	Step   float64    `json:"step"`    // of value, CIE L*
	Band   Band       `json:"band"`    // the weakest of their seams there
	Length measure.NM `json:"length"`  // of those seams
	a, b   int        `json:"-"`       // indices into the top's fabrics
}

// outlines are the seams on the outlines of figures.
func outlines(members []member) []outlineSeam {
	var list []outlineSeam
	for i := range members {
		list = append(list, members[i].seams...)
	}
	return list
}

// rims are the seams where figures meet a border.
func rims(members []member) []outlineSeam {
	var list []outlineSeam
	for i := range members {
		list = append(list, members[i].rim...)
	}
	return list
}

// lack is two fabrics by themselves, met by no seam.
func (s *study) lack(a, b int, band Band) Lack {
	a, b = s.inOrder(a, b)
	return Lack{Names: [2]string{s.Fabrics[a].Name, s.Fabrics[b].Name}, Step: s.lightness[b] - s.lightness[a], Band: band, a: a, b: b}
}

// lacking are the fabrics on both sides of seams that are not clear, those of the longest seams first.
func (s *study) lacking(seams []outlineSeam) []Lack {
	list := []Lack{}
	if s.quick {
		return list
	}
	at := map[[2]int]int{}
	var lengths []float64
	for _, edge := range seams {
		one := &s.seams[edge.seam]
		if one.band >= Clear || one.sameOne {
			continue
		}
		a, b := s.inOrder(int(s.Faces[one.a].Fabric), int(s.Faces[one.b].Fabric))
		n, known := at[[2]int{a, b}]
		if !known {
			n = len(list)
			at[[2]int{a, b}] = n
			list, lengths = append(list, s.lack(a, b, one.band)), append(lengths, 0)
		}
		lengths[n] += one.length
		list[n].Band = min(list[n].Band, one.band)
	}
	for i := range list {
		list[i].Length = nearest(lengths[i])
	}
	sortLacks(list)
	return list
}

// sortLacks puts those of the longest seams first.
func sortLacks(list []Lack) {
	slices.SortStableFunc(list, func(a, b Lack) int {
		return cmp.Or(-cmp.Compare(a.Length, b.Length), cmp.Compare(a.a, b.a), cmp.Compare(a.b, b.b))
	})
}

// lackSum is several lists together, each two fabrics once.
type lackSum struct {
	list []Lack
	at   map[[2]int]int // by the two fabrics: where they stand
}

func (s *lackSum) add(list []Lack) {
	if s.at == nil {
		s.at = map[[2]int]int{}
	}
	for _, l := range list {
		if i, known := s.at[[2]int{l.a, l.b}]; known {
			s.list[i].Length += l.Length
			s.list[i].Band = min(s.list[i].Band, l.Band)
		} else {
			s.at[[2]int{l.a, l.b}] = len(s.list)
			s.list = append(s.list, l)
		}
	}
}

// sum is the whole list.
func (s *lackSum) sum() []Lack {
	sortLacks(s.list)
	return s.list
}
