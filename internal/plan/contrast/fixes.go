package contrast

import (
	"math"
	"slices"

	"eighthturn/internal/measure"
	"eighthturn/palettes"
)

// maxPairs is how many of the pairs that vanish are given ways out, the worst first.
const maxPairs = 12

// Fix is other cloth for one of two fabrics whose seams vanish, so that they are clear.
type Fix struct {
	Pair      [2]string `json:"pair"`
	Change    string    `json:"change"`    // the fabric that gives way
	Lighter   bool      `json:"lighter"`   // or darker
	Colour    string    `json:"colour"`    // #rrggbb: the nearest of the same hue that makes the pair clear
	Lightness float64   `json:"lightness"` // CIE L* of that colour
	Away      float64   `json:"ciede2000"` // from the fabric as it is
	Breaks    []Break   `json:"breaks"`    // what that would spoil
	Other     *Instead  `json:"other,omitempty"`
	Best      bool      `json:"best"` // of the ways out of its pair the one that spoils least, then the nearest
}

// Break is a pair whose band a way out would lower.
type Break struct {
	Meets  string     `json:"meets"` // the fabric across the seams
	Length measure.NM `json:"length"`
	From   Band       `json:"from"`
	To     Band       `json:"to"`
	Step   float64    `json:"step"` // of value that would be left, CIE L*
}

// Instead is a fabric that is there already and would make the pair clear.
type Instead struct {
	Name      string  `json:"name"`
	Palette   string  `json:"palette,omitempty"` // "" for one of the layout's own
	Colour    string  `json:"colour"`
	Lightness float64 `json:"lightness"`
	Away      float64 `json:"ciede2000"` // from the fabric that gives way
	Breaks    []Break `json:"breaks"`
}

// fixes finds fixes for the pairs that vanish.
//
// Figures that are lost for edges that are soft, not gone, get ways out too.
func (s *study) fixes(pairs []Pair, figures []Figure) []Fix {
	var list []Fix
	found := 0
	for i := range pairs {
		if found == maxPairs || pairs[i].Inside == pairs[i].Length || pairs[i].Band != Vanishes && !(pairs[i].Band == Soft && losesFigure(&pairs[i], figures)) {
			continue
		}
		found++
		s.sign.Look()
		first := len(list)
		for _, lighter := range [2]bool{true, false} {
			for _, change := range [2]int{pairs[i].A, pairs[i].B} {
				if w, ok := s.fix(pairs, &pairs[i], change, lighter); ok {
					list = append(list, w)
				}
			}
		}
		markBest(list[first:])
	}
	return list
}

// losesFigure says whether a figure is lost at the seams of a pair.
func losesFigure(p *Pair, figures []Figure) bool {
	for i := range figures {
		f := &figures[i]
		if f.Verdict != Lost {
			continue
		}
		for _, side := range [2]int{0, 1} {
			if slices.Contains(f.Edge, p.Names[side]) && slices.Contains(f.Against, p.Names[1-side]) {
				return true
			}
		}
	}
	return false
}

// fix changes one fabric of a pair.
func (s *study) fix(pairs []Pair, p *Pair, change int, lighter bool) (Fix, bool) {
	kept := p.A + p.B - change
	own, other := s.Fabrics[change].Colour, s.Fabrics[kept].Colour
	find := palettes.Darker
	if lighter {
		find = palettes.Lighter
	}
	// The rounding to eight bits moves L* a little; what is asked for is met after it.
	c, ok := find(own, []palettes.Colour{other}, s.clear())
	if !ok {
		return Fix{}, false
	}
	return Fix{
		Pair: p.Names, Change: s.Fabrics[change].Name, Lighter: lighter,
		Colour: c.Hex(), Lightness: c.Lightness(), Away: palettes.Difference(own, c),
		Breaks: s.breaks(pairs, change, kept, c),
		Other:  s.instead(pairs, change, kept, lighter),
	}, true
}

// breaks are the pairs that lose a band when a fabric takes a colour, the one with the
// fabric kept left out.
func (s *study) breaks(pairs []Pair, change, kept int, c palettes.Colour) []Break {
	var list []Break
	for i := range pairs {
		p := &pairs[i]
		meets := p.A + p.B - change
		if (p.A != change && p.B != change) || meets == kept || p.Inside == p.Length {
			continue
		}
		step := math.Abs(c.Lightness() - s.lightness[meets])
		if to := s.band(step, p.Soft); to < p.Band && to < Clear {
			list = append(list, Break{s.Fabrics[meets].Name, p.Length - p.Inside, p.Band, to, step})
		}
	}
	return list
}

// instead is the nearest fabric of the layout or of the palettes that would do, nil if none
// would.
func (s *study) instead(pairs []Pair, change, kept int, lighter bool) *Instead {
	var best *Instead
	consider := func(name, palette string, c palettes.Colour) {
		l := c.Lightness()
		if (l > s.lightness[change]) != lighter || math.Abs(l-s.lightness[kept]) < s.clear() {
			return
		}
		away := palettes.Difference(s.Fabrics[change].Colour, c)
		if best == nil || away < best.Away {
			best = &Instead{Name: name, Palette: palette, Colour: c.Hex(), Lightness: l, Away: away, Breaks: s.breaks(pairs, change, kept, c)}
		}
	}
	for f := range s.Fabrics {
		if f != change && f != kept {
			consider(s.Fabrics[f].Name, "", s.Fabrics[f].Colour)
		}
	}
	for _, p := range s.Palettes {
		for _, f := range p.Fabrics {
			consider(f.Name, p.Name, f.Colour)
		}
	}
	return best
}

// markBest marks the way out that spoils the least length, and of those the nearest.
func markBest(list []Fix) {
	best := -1
	for i := range list {
		if best < 0 || better(&list[i], &list[best]) {
			best = i
		}
	}
	if best >= 0 {
		list[best].Best = true
	}
}

func better(a, b *Fix) bool {
	x, y := spoiled(a.Breaks), spoiled(b.Breaks)
	if x != y {
		return x < y
	}
	return a.Away < b.Away
}

func spoiled(list []Break) measure.NM {
	sum := measure.NM(0)
	for _, b := range list {
		sum += b.Length
	}
	return sum
}
