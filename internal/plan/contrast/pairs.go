package contrast

import (
	"cmp"
	"math"
	"slices"

	"eighthturn/internal/measure"
	"eighthturn/palettes"
)

// vividFrom is the CIELAB chroma from which a colour looks lighter than its value; our
// choice of a border for the Helmholtz-Kohlrausch effect.
const vividFrom = 60

// fabrics are the fabrics that the top shows.
func (s *study) fabrics() []Fabric {
	shares := s.Share()
	var shown []int
	var areas []palettes.Area
	for f := range s.Fabrics {
		if shares[f] > 0 {
			shown = append(shown, f)
			areas = append(areas, palettes.Area{Lightness: s.lightness[f], Size: shares[f]})
		}
	}
	here := palettes.RelativeFamilies(areas)
	var list []Fabric
	for i, f := range shown {
		c := s.Fabrics[f].Colour
		list = append(list, Fabric{
			Index: f, Name: s.Fabrics[f].Name, Colour: c.Hex(),
			Lightness: s.lightness[f], Munsell: palettes.MunsellValue(c.Luminance()),
			Family: palettes.FamilyOf(s.lightness[f]).String(), Here: here[i].String(),
			Share: shares[f], Spread: s.print(f).Spread, Vivid: c.Lab().Chroma() > vividFrom,
		})
	}
	slices.SortStableFunc(list, func(a, b Fabric) int { return cmp.Compare(a.Lightness, b.Lightness) })
	return list
}

// nearest is a length in whole nanometres.
func nearest(length float64) measure.NM { return measure.NM(math.Round(length)) }

// totals adds up all seams.
func (s *study) totals() Totals {
	var length, one, colour float64
	var byBand, inside [len(bandNames)]float64
	t := Totals{Count: len(s.seams), CountBand: map[string]int{}, CountInside: map[string]int{}}
	for i := range s.seams {
		each := &s.seams[i]
		length += each.length
		if each.sameOne {
			one += each.length
			continue
		}
		byBand[each.band] += each.length
		t.CountBand[each.band.String()]++
		if s.colourOnly(each) {
			colour += each.length
		}
		if s.sides.inside(i, each) {
			inside[each.band] += each.length
			t.CountInside[each.band.String()]++
		}
	}
	t.Length, t.OneFabric, t.ColourOnly = nearest(length), nearest(one), nearest(colour)
	t.ByBand, t.Inside = named(byBand), named(inside)
	return t
}

// named is lengths by the names of their bands.
func named(byBand [len(bandNames)]float64) map[string]measure.NM {
	lengths := map[string]measure.NM{}
	for _, b := range Bands() {
		lengths[b.String()] = nearest(byBand[b])
	}
	return lengths
}

// colourOnly says whether a seam vanishes by value while its colours stand apart.
func (s *study) colourOnly(one *seam) bool {
	return one.band == Vanishes && s.apart(int(s.Faces[one.a].Fabric), int(s.Faces[one.b].Fabric))
}

// apart says whether two fabrics stand apart by colour. It is worked out once for each two.
func (s *study) apart(a, b int) bool {
	known := &s.scream[a*len(s.Fabrics)+b]
	if *known == 0 {
		*known = 1
		if loud(palettes.Difference(s.Fabrics[a].Colour, s.Fabrics[b].Colour)) {
			*known = 2
		}
	}
	return *known == 2
}

// loud says whether a difference of colors, CIEDE2000, holds a seam by itself.
func loud(difference float64) bool { return difference >= screamStep }

// pairSum is the sums of one pair of fabrics.
type pairSum struct {
	a, b   int // the darker one first
	count  int
	length float64
	soft   float64 // by length
	byBand [len(bandNames)]float64
	inside float64 // of the length, inside one figure or its ground
	gone   float64 // of that, what vanishes
	cells  map[Place]bool
}

// pairs lists the fabrics that meet.
func (s *study) pairs() []Pair {
	s.look()
	n := len(s.Fabrics)
	at := make([]int, n*n)
	var sums []*pairSum
	for i := range s.seams {
		one := &s.seams[i]
		if one.sameOne {
			continue
		}
		a, b := s.inOrder(int(s.Faces[one.a].Fabric), int(s.Faces[one.b].Fabric))
		if at[a*n+b] == 0 {
			sums = append(sums, &pairSum{a: a, b: b, cells: map[Place]bool{}})
			at[a*n+b] = len(sums)
		}
		sums[at[a*n+b]-1].add(s, one, s.sides.inside(i, one))
	}
	var list []Pair
	for _, sum := range sums {
		list = append(list, s.pair(sum))
	}
	slices.SortFunc(list, func(a, b Pair) int {
		return cmp.Or(-cmp.Compare(s.shortfall(&a), s.shortfall(&b)), -cmp.Compare(a.Length, b.Length), cmp.Compare(a.A, b.A), cmp.Compare(a.B, b.B))
	})
	return list
}

// shortfall is how much a pair asks for a look: its length, where a line should show, times what it lacks to be clear.
func (s *study) shortfall(p *Pair) float64 {
	return float64(p.Length-p.Inside) * max(0, s.clear()-p.Step)
}

// inOrder puts the darker of two fabrics first; of two alike, the one that the layout names
// first.
func (s *study) inOrder(a, b int) (int, int) {
	if cmp.Or(cmp.Compare(s.lightness[a], s.lightness[b]), cmp.Compare(a, b)) > 0 {
		return b, a
	}
	return a, b
}

func (p *pairSum) add(s *study, one *seam, inside bool) {
	p.count++
	p.length += one.length
	p.soft += float64(one.length * one.soft)
	p.byBand[one.band] += one.length
	if inside {
		p.inside += one.length
		if one.band == Vanishes {
			p.gone += one.length
		}
		return
	}
	if one.band == Vanishes {
		p.cells[s.place(one.a)] = true
		p.cells[s.place(one.b)] = true
	}
}

// place is where a face lies.
func (s *study) place(face int32) Place {
	p := &s.Patches[s.Faces[face].Patch]
	if p.Cell < 0 {
		return Place{Border: int(p.Border + 1)}
	}
	return Place{Row: int(p.Cell)/s.Columns + 1, Column: int(p.Cell)%s.Columns + 1}
}

func (s *study) pair(p *pairSum) Pair {
	a, b := s.Fabrics[p.a].Colour, s.Fabrics[p.b].Colour
	one := Pair{
		A: p.a, B: p.b, Names: [2]string{s.Fabrics[p.a].Name, s.Fabrics[p.b].Name},
		Count: p.count, Length: nearest(p.length), ByBand: named(p.byBand), Inside: nearest(p.inside), GoneInside: nearest(p.gone),
		Step: s.lightness[p.b] - s.lightness[p.a], Soft: p.soft / p.length, Colour: palettes.Difference(a, b),
	}
	for _, band := range Bands() {
		if one.ByBand[band.String()] > one.ByBand[one.Band.String()] { // of two that are as long the weaker
			one.Band = band
		}
	}
	one.ColourOnly = one.Band == Vanishes && loud(one.Colour)
	one.Doubtful = s.doubtful(one.Step, one.Soft)
	one.BreaksUp = s.breaksUp(p.a, p.b)
	one.Sight = s.sights(p.a, p.b, one.Soft)
	for place := range p.cells {
		one.Cells = append(one.Cells, place)
	}
	slices.SortFunc(one.Cells, func(a, b Place) int {
		return cmp.Or(cmp.Compare(a.Border, b.Border), cmp.Compare(a.Row, b.Row), cmp.Compare(a.Column, b.Column))
	})
	return one
}

// doubtful says whether a step lies near one of the two thresholds that verdicts rest on.
func (s *study) doubtful(step, soft float64) bool {
	return math.Abs(step-soft) <= nearStep || math.Abs(step-s.clear()) <= nearStep
}

// breaksUp says whether the lights of the darker print are lighter than the darks of the
// other one, so that the seam is lost in places.
func (s *study) breaksUp(darker, lighter int) bool {
	a, b := s.print(darker), s.print(lighter)
	return a.Spread > 0 && b.Spread > 0 && a.Lightest > b.Darkest
}

// sights is the pair in the eyes of those whose sight for colours differs, each without one
// kind of cone.
func (s *study) sights(a, b int, soft float64) []Sight {
	var list []Sight
	for n, d := range Deficiencies() {
		step := math.Abs(s.seen[n][a] - s.seen[n][b])
		list = append(list, Sight{d.Name, step, s.band(step, soft)})
	}
	return list
}

// look finds how light each fabric is to the eyes of each kind.
func (s *study) look() {
	s.seen = nil
	for _, d := range Deficiencies() {
		l := make([]float64, len(s.Fabrics))
		for f := range l {
			l[f] = s.Fabrics[f].Colour.SeenBy(d.Kind, 1).Lightness()
		}
		s.seen = append(s.seen, l)
	}
}

// Deficiency is a kind of sight with its name for messages, JSON and views.
type Deficiency struct {
	Name string
	Kind palettes.Deficiency
}

// Deficiencies are the kinds of sight that a study looks through.
func Deficiencies() []Deficiency {
	return []Deficiency{{"protan", palettes.Protan}, {"deutan", palettes.Deutan}, {"tritan", palettes.Tritan}}
}

// marks are the seams worth marking.
func (s *study) marks() []Mark {
	var list []Mark
	for i := range s.seams {
		one := &s.seams[i]
		if one.band <= Soft && !one.sameOne {
			list = append(list, Mark{one.at, one.band, s.colourOnly(one), s.sides.inside(i, one)})
		}
	}
	return list
}

// Gone is the length of a pair's seams that vanish where a line should show.
func (p *Pair) Gone() measure.NM { return p.ByBand[Vanishes.String()] - p.GoneInside }
