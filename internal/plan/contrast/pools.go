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
		other := s.medianOf(across)
		for _, f := range pool.Fabrics {
			rest := slices.DeleteFunc(slices.Clone(pool.Fabrics), func(g int) bool { return g == f })
			own, l := s.medianOf(rest), s.lightness[f]
			if math.Abs(own-other) >= s.clear() && math.Abs(l-other) < min(s.clear(), math.Abs(l-own)) {
				list = append(list, s.strayed(pool, f, across, own))
			}
		}
	}
	return list
}

// across are the fabrics that a pool's meet at the outlines of figures, each once.
func (s *study) across(pool *layout.Pool) []int {
	var list []int
	for i := range s.seams {
		if !s.sides.outline[i] {
			continue
		}
		one := &s.seams[i]
		a, b := s.Faces[one.a].Fabric, s.Faces[one.b].Fabric
		in, out := slices.Contains(pool.Fabrics, a), slices.Contains(pool.Fabrics, b)
		switch {
		case in && !out:
			list = append(list, b)
		case out && !in:
			list = append(list, a)
		}
	}
	return distinct(list)
}

// medianOf is the middle lightness of fabrics.
func (s *study) medianOf(fabrics []int) float64 {
	l := make([]float64, len(fabrics))
	for i, f := range fabrics {
		l[i] = s.lightness[f]
	}
	slices.SortFunc(l, cmp.Compare[float64])
	n := len(l)
	return (l[(n-1)/2] + l[n/2]) / 2
}

// strayed tells of one scrap.
func (s *study) strayed(pool *layout.Pool, f int, across []int, own float64) Stray {
	one := Stray{Fabric: s.Fabrics[f].Name, Pool: pool.Name, Darker: s.lightness[f] < own, Lightness: s.lightness[f]}
	for _, g := range across {
		if math.Abs(s.lightness[g]-s.lightness[f]) < s.clear() {
			one.Like = append(one.Like, s.Fabrics[g].Name)
		}
	}
	for i := range s.Credits.Pools {
		if p := &s.Credits.Pools[i]; !slices.ContainsFunc(one.Like, func(name string) bool {
			return !slices.ContainsFunc(p.Fabrics, func(g int) bool { return s.Fabrics[g].Name == name })
		}) {
			one.LikePool = p.Name
		}
	}
	for i := range s.Faces {
		if s.Faces[i].Fabric == f && s.Patches[s.Faces[i].Patch].Cell >= 0 {
			one.Pieces++
			one.Faces = append(one.Faces, int32(i))
		}
	}
	return one
}
