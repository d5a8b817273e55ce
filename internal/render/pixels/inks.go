package pixels

import (
	"math"
	"slices"

	"eighthturn/internal/quilt"
	"eighthturn/palettes"
)

// inks are the colours that a print's pixels are made of: one a fabric, and last the
// background.
type inks struct {
	colours []palettes.Colour
	linear  [][3]uint32 // of full
	clear   bool        // the background is see-through
	encode  []uint8     // the sRGB byte of each step of linear light
	table   *table      // nil where pixels are not written as numbers of a palette
}

// table is a palette: the inks, and steps between the two of every pair that meets.
type table struct {
	colours []palettes.Colour
	alpha   []uint8
	steps   int              // between two inks
	pair    map[[2]int32]int // the number of the first step from the lesser ink to the greater
	same    []int32          // for each ink the first ink of its colour
}

// Steps between two colours in a palette: no more than these, and where there is no room for
// these few the picture is written in full colour.
const (
	mostSteps = 15
	fewSteps  = 7
	mostInks  = 256
)

func (p *Print) newInks() *inks {
	k := &inks{clear: p.Clear, encode: encoding()}
	for f := range p.Top.Fabrics {
		c := p.Top.Fabrics[f].Colour
		if p.Colour != nil {
			c = p.Colour(f)
		}
		k.colours = append(k.colours, c)
	}
	k.colours = append(k.colours, p.Background)
	for _, c := range k.colours {
		l := c.Linear()
		k.linear = append(k.linear, [3]uint32{light(l.R), light(l.G), light(l.B)})
	}
	if len(p.Over) == 0 && len(p.Tiles) == 0 {
		k.table = p.newTable(k)
	}
	return k
}

func light(v float64) uint32 { return uint32(math.Round(v * full)) }

// background is the ink of what no cloth covers.
func (k *inks) background() int32 { return int32(len(k.colours) - 1) }

// newTable is the palette for a print, nil where the pairs that meet are too many for one.
func (p *Print) newTable(k *inks) *table {
	t := &table{pair: map[[2]int32]int{}, same: make([]int32, len(k.colours))}
	first := map[palettes.Colour]int32{}
	for i, c := range k.colours {
		t.same[i] = int32(i)
		if at, ok := first[c]; ok && !(k.clear && int32(i) == k.background()) {
			t.same[i] = at
		} else {
			first[c] = int32(i)
		}
	}
	pairs := p.meeting(t)
	t.steps = mostSteps
	if len(pairs) > 0 {
		t.steps = min(mostSteps, (mostInks-len(k.colours))/len(pairs))
	}
	if len(k.colours) > mostInks || t.steps < fewSteps {
		return nil
	}
	for i, c := range k.colours {
		t.colours, t.alpha = append(t.colours, c), append(t.alpha, 255)
		if k.clear && int32(i) == k.background() {
			t.alpha[i] = 0
		}
	}
	for _, pair := range pairs {
		t.pair[pair] = len(t.colours)
		for n := 1; n <= t.steps; n++ {
			c, alpha := k.between(pair, uint32(n), uint32(t.steps+1))
			t.colours, t.alpha = append(t.colours, c), append(t.alpha, alpha)
		}
	}
	return t
}

// meeting are the pairs of inks that lie side by side, in order.
func (p *Print) meeting(t *table) [][2]int32 {
	found := map[[2]int32]bool{}
	meet := func(a, b int32) {
		if a, b = t.same[a], t.same[b]; a != b {
			found[[2]int32{min(a, b), max(a, b)}] = true
		}
	}
	top := p.Top
	for _, list := range [][]quilt.Seam{top.Seams, top.StripSeams} {
		for _, s := range list {
			meet(int32(top.Faces[s.A].Fabric), int32(top.Faces[s.B].Fabric))
		}
	}
	if hasHoles(top) {
		for f := range top.Fabrics {
			meet(int32(f), int32(len(top.Fabrics)))
		}
	}
	pairs := make([][2]int32, 0, len(found))
	for pair := range found {
		pairs = append(pairs, pair)
	}
	slices.SortFunc(pairs, func(a, b [2]int32) int { return slices.Compare(a[:], b[:]) })
	return pairs
}

// between is n of so many steps from the first ink of a pair to the second.
func (k *inks) between(pair [2]int32, n, steps uint32) (palettes.Colour, uint8) {
	if k.clear && pair[1] == k.background() {
		return k.colours[pair[0]], uint8((255*(steps-n) + steps/2) / steps)
	}
	return k.mixed(shares{{pair[0], int32(steps - n)}, {pair[1], int32(n)}})
}

// mixed is the colour of shares of cloth, in linear light, and how opaque it is. Where the
// background is see-through it adds no light.
func (k *inks) mixed(list shares) (palettes.Colour, uint8) {
	var sum [3]uint64
	covered, all := uint64(0), uint64(0)
	for _, s := range list {
		all += uint64(s.cover)
		if k.clear && s.paint == k.background() {
			continue
		}
		covered += uint64(s.cover)
		for c := range sum {
			sum[c] += uint64(s.cover) * uint64(k.linear[s.paint][c])
		}
	}
	return k.colourOf(sum, covered, all)
}

// colourOf is the color of light that was added up over what is covered of all, and how opaque it is.
func (k *inks) colourOf(sum [3]uint64, covered, all uint64) (palettes.Colour, uint8) {
	if covered == 0 {
		return palettes.Colour{}, 0
	}
	channel := func(c int) uint8 { return k.encode[min((sum[c]+covered/2)/covered, full)] }
	return palettes.Colour{R: channel(0), G: channel(1), B: channel(2)}, uint8((255*covered + all/2) / all)
}

// hairline is the part of a pixel, of whole, that may lie bare between pieces whose corners
// do not meet; the pieces' own colours fill it.
const hairline = whole / 64

// completed adds the background to what covers a pixel in part.
func (k *inks) completed(list shares) shares {
	bare := int32(whole)
	for _, s := range list {
		bare -= s.cover
	}
	if bare > hairline || len(list) == 0 {
		list = append(list, share{k.background(), max(bare, 1)})
	}
	return list
}

// number is the palette's number for shares of cloth: of one ink, or of the step between the
// two that cover most.
func (k *inks) number(list shares) uint8 {
	var a, b share
	for _, s := range list {
		s.paint = k.table.same[s.paint]
		switch {
		case s.paint == a.paint && a.cover > 0:
			a.cover += s.cover
		case s.paint == b.paint && b.cover > 0:
			b.cover += s.cover
		case s.cover > b.cover:
			b = s
		}
		if b.cover > a.cover {
			a, b = b, a
		}
	}
	steps := int32(k.table.steps + 1)
	n := (b.cover*steps + (a.cover+b.cover)/2) / (a.cover + b.cover)
	if n == 0 {
		return uint8(a.paint)
	}
	first, ok := k.table.pair[[2]int32{min(a.paint, b.paint), max(a.paint, b.paint)}]
	if !ok {
		return uint8(a.paint)
	}
	if a.paint > b.paint {
		n = steps - n
	}
	return uint8(first + int(n) - 1)
}
