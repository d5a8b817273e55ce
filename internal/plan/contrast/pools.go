package contrast

import (
	"cmp"
	"math"
	"slices"

	"eighthturn/layout"
)

// Stray is a scrap that looks like what its pool stands against.
type Stray struct {
	Fabric    string   `json:"fabric"`
	Pool      string   `json:"pool"`
	Like      []string `json:"like"`                // the fabrics across the outlines that it looks like
	LikePool  string   `json:"like_pool,omitempty"` // the pool that all of them belong to, "" for none
	Darker    bool     `json:"darker"`              // than its pool, or lighter
	Pieces    int      `json:"pieces"`
	Lightness float64  `json:"lightness"`
	Faces     []int32  `json:"-"` // of the top, by index
}

// fewestScraps is how many fabrics make a pool that one of them can fall out of.
const fewestScraps = 3

// stray finds the scraps that fall out of their pool's range into that of the pieces they must stand against.
func (s *study) stray() []Stray {
	list := []Stray{}
	for p := range s.Credits.Pools {
		pool := &s.Credits.Pools[p]
		if len(pool.Fabrics) < fewestScraps {
			continue
		}
		across := s.across(pool)
		if len(across) == 0 {
			continue
		}
		other, sorted := s.medianOf(across), s.sorted(pool.Fabrics)
		for _, f := range pool.Fabrics {
			s.sign.Step(1)
			own, l := medianWithout(sorted, s.lightness[f]), s.lightness[f]
			if math.Abs(own-other) >= s.clear() && math.Abs(l-other) < min(s.clear(), math.Abs(l-own)) {
				list = append(list, s.strayed(pool, f, across, own))
			}
		}
	}
	return list
}

// scraps is what is known of the pools' fabrics whatever their colors.
type scraps struct {
	opposite [][]int   // by fabric: the fabrics that it meets at the outlines of figures, each once
	shown    [][]int32 // by fabric: its faces within blocks, by index of the top's
	inPool   [][]bool  // by pool and fabric
}

// newScraps looks through the top once; for a top without pools there is nothing to know.
func (s *study) newScraps() scraps {
	n := len(s.Fabrics)
	k := scraps{make([][]int, n), make([][]int32, n), nil}
	if len(s.Credits.Pools) == 0 {
		return k
	}
	for i := range s.seams {
		s.sign.Step(1)
		if a, b := s.Faces[s.seams[i].a].Fabric, s.Faces[s.seams[i].b].Fabric; s.sides.outline[i] {
			k.opposite[a], k.opposite[b] = append(k.opposite[a], int(b)), append(k.opposite[b], int(a))
		}
	}
	for f := range k.opposite {
		k.opposite[f] = distinct(k.opposite[f])
	}
	for i := range s.Faces {
		s.sign.Step(1)
		if f := s.Faces[i].Fabric; s.Patches[s.Faces[i].Patch].Cell >= 0 {
			k.shown[f] = append(k.shown[f], int32(i))
		}
	}
	for p := range s.Credits.Pools {
		s.sign.Step(n)
		in := make([]bool, n)
		for _, f := range s.Credits.Pools[p].Fabrics {
			in[f] = true
		}
		k.inPool = append(k.inPool, in)
	}
	return k
}

// across are the fabrics that a pool's meet at the outlines of figures, each once.
func (s *study) across(pool *layout.Pool) []int {
	in := make([]bool, len(s.Fabrics))
	for _, f := range pool.Fabrics {
		in[f] = true
	}
	var list []int
	for _, f := range pool.Fabrics {
		for _, g := range s.scraps.opposite[f] {
			s.sign.Step(1)
			if !in[g] {
				in[g] = true
				list = append(list, g)
			}
		}
	}
	return distinct(list)
}

// onePool says whether one pool has all of some fabrics, so that they are meant to draw together.
func (s *study) onePool(fabrics ...int) bool {
	return slices.ContainsFunc(s.scraps.inPool, func(in []bool) bool {
		s.sign.Step(1)
		return !slices.ContainsFunc(fabrics, func(f int) bool { return !in[f] })
	})
}

// sorted is the lightness of fabrics, the least first.
func (s *study) sorted(fabrics []int) []float64 {
	l := make([]float64, len(fabrics))
	for i, f := range fabrics {
		l[i] = s.lightness[f]
	}
	slices.SortFunc(l, cmp.Compare[float64])
	return l
}

// medianOf is the middle lightness of fabrics.
func (s *study) medianOf(fabrics []int) float64 {
	l := s.sorted(fabrics)
	n := len(l)
	return (l[(n-1)/2] + l[n/2]) / 2
}

// medianWithout is the middle of sorted numbers, one of which is left out.
func medianWithout(sorted []float64, out float64) float64 {
	gone, _ := slices.BinarySearch(sorted, out)
	at := func(i int) float64 {
		if i >= gone {
			i++
		}
		return sorted[i]
	}
	n := len(sorted) - 1
	return (at((n-1)/2) + at(n/2)) / 2
}

// strayed tells of one scrap.
func (s *study) strayed(pool *layout.Pool, f int, across []int, own float64) Stray {
	one := Stray{Fabric: s.Fabrics[f].Name, Pool: pool.Name, Darker: s.lightness[f] < own, Lightness: s.lightness[f]}
	var like []int
	for _, g := range across {
		s.sign.Step(1)
		if math.Abs(s.lightness[g]-s.lightness[f]) < s.clear() {
			like = append(like, g)
			one.Like = append(one.Like, s.Fabrics[g].Name)
		}
	}
	for i, in := range s.scraps.inPool {
		s.sign.Step(1)
		if !slices.ContainsFunc(like, func(g int) bool { return !in[g] }) {
			one.LikePool = s.Credits.Pools[i].Name
		}
	}
	one.Faces = s.scraps.shown[f]
	one.Pieces = len(one.Faces)
	return one
}
