package contrast

import (
	"cmp"
	"encoding/json"
	"fmt"
	"math"
	"slices"

	"eighthturn/internal/measure"
	"eighthturn/internal/quilt"
	"eighthturn/layout"
	"eighthturn/palettes"
)

// The study of a top done again by the plainest means, to which every study is held.

// plainSeam is a seam with what the published figures make of it.
type plainSeam struct {
	quilt.Seam
	a, b         int     // fabrics
	length       float64 // nanometers
	step         float64 // CIE L* of A less that of B
	soft, clear  float64
	band         Band
	strip        bool
	figure       [2]int  // of the two faces, from 1; 0 for none
	ground       [2]bool // a figure stands against that face
	found        bool    // on the outline of some figure but for sashes and borders
	outline      bool    // on that of any
	rest, inside bool    // rest: a border's, where it goes on from the ground
}

// plainly is a top as it is studied by plain means.
type plainly struct {
	*quilt.Top
	study  *study // for what lies where alone: the figures
	light  func(face int32) float64
	tex    func(fabric int) float64
	clear  float64
	weak   []weakPlace // of the figures judged so far
	pixels [][]int     // by face, CIE L* of its pixels as half-shut eyes see them, in tenths; known once masses are judged
	lights []float64   // CIE L* by fabric; nil where it is that of their colors
	seams  []plainSeam
}

// narrowestOf is the least width of a convex outline: of each side twice the area of the triangle over it to each corner, by the side.
func narrowestOf(o []measure.Point) float64 {
	least := math.Inf(1)
	for i, p := range o {
		q, most := o[(i+1)%len(o)], 0.0
		for _, r := range o {
			twice := float64(q.X-p.X)*float64(r.Y-p.Y) - float64(q.Y-p.Y)*float64(r.X-p.X)
			most = max(most, math.Abs(twice)/math.Hypot(float64(q.X-p.X), float64(q.Y-p.Y)))
		}
		least = min(least, most)
	}
	return least
}

// newPlainly studies the seams of a top. What half of all viewers notice between patches is 5.08 + 0.75/s, s the angle in degrees under
// which the narrower is seen, from 1/3 to 6 (Stone, Szafir and Setlur 2014), here from 10 feet; prints may double it (Montag and Berns).
// From 20 on a step is clear (NASA Ames, Color Usage), from 40 on strong: a luminance ratio of 3 to 1 anywhere (WCAG 2.1).
func newPlainly(one studiedTop) *plainly {
	p := &plainly{Top: one.Top, study: one.study, light: one.study.light, clear: 20}
	return p.judged()
}

// judged works out what is made of the seams.
func (p *plainly) judged() *plainly {
	own := p.Credits.Contrast
	if own != nil {
		p.clear = own.Clear
	}
	p.tex = func(f int) float64 {
		if c := p.Fabrics[f].Cloth; c != nil {
			return palettes.TextureFactor(c.Spread)
		}
		return 1
	}
	for n, s := range slices.Concat(p.Seams, p.StripSeams) {
		one := plainSeam{Seam: s, a: int(p.Faces[s.A].Fabric), b: int(p.Faces[s.B].Fabric), strip: n >= len(p.Seams), clear: p.clear}
		dx, dy := float64(s.To.X-s.From.X), float64(s.To.Y-s.From.Y)
		one.length = math.Sqrt(dx*dx + dy*dy)
		one.step = p.light(s.A) - p.light(s.B)
		width := min(narrowestOf(p.Faces[s.A].Outline), narrowestOf(p.Faces[s.B].Outline))
		angle := 2 * math.Atan(width/2/float64(120*measure.Inch)) * 180 / math.Pi
		one.soft = min(max(p.tex(one.a), p.tex(one.b))*(5.08+0.75/min(max(angle, 1.0/3), 6)), p.clear)
		if own != nil {
			one.soft = own.Soft
		}
		step := math.Abs(one.step)
		one.band = Band(map[bool]int{true: 1}[step >= one.soft] + map[bool]int{true: 1}[step >= p.clear] + map[bool]int{true: 1}[step >= max(40, p.clear)])
		p.seams = append(p.seams, one)
	}
	p.sides()
	return p
}

// held is how much of a seam holds, 0 to 1.
func (s *plainSeam) held() float64 {
	switch step := math.Abs(s.step); {
	case step < s.soft:
		return 0
	case step >= s.clear:
		return 1
	default:
		return (step - s.soft) / (s.clear - s.soft)
	}
}

// doubtful says whether a step lies within 3 of a threshold.
func doubtful(step, soft, clear float64) bool {
	return math.Abs(step-soft) <= 3 || math.Abs(step-clear) <= 3
}

// zoneOf is where a face lies: -2 in a block, -1 in a sash, else the number of its border.
func (p *plainly) zoneOf(face int32) int {
	patch := &p.Patches[p.Faces[face].Patch]
	if patch.Border < 0 && patch.Cell >= 0 {
		return -2
	}
	return int(patch.Border)
}

// sides notes what figures make of the seams. A seam is inside where both sides are of one figure, or both are ground and of none, and
// no outline runs along it.
func (p *plainly) sides() {
	figure, ground, last := map[int32]int{}, map[int32]bool{}, 0
	for _, g := range p.study.found {
		for _, m := range slices.Concat(g.variants...) {
			for _, o := range m.seams {
				p.seams[o.seam].found, p.seams[o.seam].outline = true, true
			}
			if g.sort != Web && g.sort != Star && g.sort != Wheel {
				continue
			}
			last++
			for _, f := range m.faces {
				figure[f] = last
			}
			for _, f := range m.against {
				ground[f] = true
			}
		}
	}
	for i := range p.seams {
		s := &p.seams[i]
		s.figure, s.ground = [2]int{figure[s.A], figure[s.B]}, [2]bool{ground[s.A], ground[s.B]}
	}
	for _, zone := range p.zones() {
		edge, _ := p.frameSeams(zone)
		for _, i := range edge {
			p.seams[i].outline = true
		}
	}
	for i := range p.seams {
		s := &p.seams[i]
		one := s.figure[0] > 0 && s.figure[0] == s.figure[1]
		s.inside = !s.outline && (one || s.figure == [2]int{} && s.ground == [2]bool{true, true})
	}
}

// zones are the sashes, where there are any, and the borders from the inside out.
func (p *plainly) zones() []int {
	var list []int
	for i := range p.Faces {
		if z := p.zoneOf(int32(i)); z > -2 {
			list = append(list, z)
		}
	}
	return distinct(list)
}

// frameSeams are the seams along which sashes or a border are judged, and those along which they run on: where the cloth stays the same,
// or a border goes on from the ground in a scrap of its pool or in a cloth that is less than 10 of CIEDE2000 away. Seams against figures
// are judged with the figures.
func (p *plainly) frameSeams(zone int) (edge, runsOn []int) {
	for i := range p.seams {
		s := &p.seams[i]
		own, inner := 0, 1
		if p.zoneOf(s.B) == zone {
			own, inner = 1, 0
		}
		zones := [2]int{p.zoneOf(s.A), p.zoneOf(s.B)}
		if zones[own] != zone || zones[inner] >= zone {
			continue
		}
		alike := p.onePool(s.a, s.b) || palettes.Difference(p.Fabrics[s.a].Colour, p.Fabrics[s.b].Colour) < 10
		switch {
		case s.a == s.b, zone >= 0 && s.figure[inner] == 0 && s.band < Clear && alike:
			runsOn = append(runsOn, i)
		case s.figure[inner] == 0:
			edge = append(edge, i)
		}
	}
	return edge, runsOn
}

// onePool says whether some pool of scraps has both fabrics.
func (p *plainly) onePool(a, b int) bool {
	return slices.ContainsFunc(p.Credits.Pools, func(pool layout.Pool) bool {
		return slices.Contains(pool.Fabrics, a) && slices.Contains(pool.Fabrics, b)
	})
}

// total is the whole length of some seams.
func (p *plainly) total(which func(s *plainSeam) bool) measure.NM {
	sum := 0.0
	for i := range p.seams {
		if which(&p.seams[i]) {
			sum += p.seams[i].length
		}
	}
	return nearest(sum)
}

// count is how many seams are such.
func (p *plainly) count(which func(s *plainSeam) bool) (n int) {
	for i := range p.seams {
		if which(&p.seams[i]) {
			n++
		}
	}
	return n
}

// byBand is lengths and counts of some seams by band.
func (p *plainly) byBand(which func(s *plainSeam) bool) (lengths map[string]measure.NM, counts map[string]int) {
	lengths, counts = map[string]measure.NM{}, map[string]int{}
	for _, band := range []Band{Vanishes, Soft, Clear, Strong} {
		such := func(s *plainSeam) bool { return s.band == band && which(s) }
		name := [4]string{"vanishes", "soft", "clear", "strong"}[band]
		lengths[name] = p.total(such)
		if n := p.count(such); n > 0 {
			counts[name] = n
		}
	}
	return lengths, counts
}

// loud says whether colors alone hold a seam: 20 of CIEDE2000, our choice.
func (p *plainly) loud(a, b int) bool {
	return palettes.Difference(p.Fabrics[a].Colour, p.Fabrics[b].Colour) >= 20
}

// totals adds up all seams.
func (p *plainly) totals() Totals {
	two := func(s *plainSeam) bool { return s.a != s.b }
	t := Totals{Count: len(p.seams), Length: p.total(func(*plainSeam) bool { return true }), OneFabric: p.total(func(s *plainSeam) bool { return s.a == s.b })}
	t.ByBand, t.CountBand = p.byBand(two)
	t.Inside, t.CountInside = p.byBand(func(s *plainSeam) bool { return two(s) && s.inside })
	t.ColourOnly = p.total(func(s *plainSeam) bool { return two(s) && s.band == Vanishes && p.loud(s.a, s.b) })
	return t
}

// pairs lists the fabrics that meet: what lacks most of being clear where a line should show, by length, first; then the longest.
func (p *plainly) pairs() []Pair {
	met := map[[2]int][]plainSeam{}
	for _, one := range p.seams {
		a, b := one.a, one.b
		if cmp.Or(cmp.Compare(p.lightOf(a), p.lightOf(b)), cmp.Compare(a, b)) > 0 {
			a, b = b, a
		}
		if a != b {
			met[[2]int{a, b}] = append(met[[2]int{a, b}], one)
		}
	}
	var list []Pair
	for a := range p.Fabrics {
		for b := range p.Fabrics {
			if seams := met[[2]int{a, b}]; seams != nil {
				one := *p
				one.seams = seams
				list = append(list, one.pair(a, b))
			}
		}
	}
	lacks := func(q *Pair) float64 { return float64(q.Length-q.Inside) * max(0, p.clear-q.Step) }
	slices.SortStableFunc(list, func(a, b Pair) int {
		return cmp.Or(cmp.Compare(lacks(&b), lacks(&a)), cmp.Compare(b.Length, a.Length))
	})
	return list
}

// lightOf is the CIE L* of a fabric: what it is taken to be, or that of its color.
func (p *plainly) lightOf(f int) float64 {
	if p.lights != nil {
		return p.lights[f]
	}
	return p.Fabrics[f].Colour.Lightness()
}

// pair is two fabrics that all seams lie between.
func (p *plainly) pair(a, b int) Pair {
	q := Pair{A: a, B: b, Names: [2]string{p.Fabrics[a].Name, p.Fabrics[b].Name}, Count: len(p.seams)}
	all := func(*plainSeam) bool { return true }
	q.Length = p.total(all)
	q.ByBand, _ = p.byBand(all)
	q.Inside = p.total(func(s *plainSeam) bool { return s.inside })
	q.GoneInside = p.total(func(s *plainSeam) bool { return s.inside && s.band == Vanishes })
	q.Step, q.Colour = p.lightOf(b)-p.lightOf(a), palettes.Difference(p.Fabrics[a].Colour, p.Fabrics[b].Colour)
	length := 0.0
	for i := range p.seams {
		s := &p.seams[i]
		q.Soft, length = q.Soft+s.soft*s.length, length+s.length
		if !s.inside && s.band == Vanishes {
			q.Cells = append(q.Cells, p.placeOf(s.A), p.placeOf(s.B))
		}
	}
	q.Soft /= length
	for band, most := Vanishes, measure.NM(0); band <= Strong; band++ {
		if l := q.ByBand[band.String()]; l > most {
			q.Band, most = band, l
		}
	}
	q.ColourOnly, q.Doubtful = q.Band == Vanishes && q.Colour >= 20, doubtful(q.Step, q.Soft, p.clear)
	if one, other := p.Fabrics[a].Cloth, p.Fabrics[b].Cloth; one != nil && other != nil {
		q.BreaksUp = one.Spread > 0 && other.Spread > 0 && one.Lightest > other.Darkest
	}
	slices.SortFunc(q.Cells, func(a, b Place) int {
		return cmp.Or(cmp.Compare(a.Border, b.Border), cmp.Compare(a.Row, b.Row), cmp.Compare(a.Column, b.Column))
	})
	q.Cells = slices.Compact(q.Cells)
	for i, kind := range []palettes.Deficiency{palettes.Protan, palettes.Deutan, palettes.Tritan} {
		step := math.Abs(p.Fabrics[a].Colour.SeenBy(kind, 1).Lightness() - p.Fabrics[b].Colour.SeenBy(kind, 1).Lightness())
		sight := Sight{Deficiency: [3]string{"protan", "deutan", "tritan"}[i], Step: step}
		for _, from := range [3]float64{q.Soft, p.clear, max(40, p.clear)} {
			if step >= from {
				sight.Band++
			}
		}
		q.Sight = append(q.Sight, sight)
	}
	return q
}

// placeOf is where a face lies.
func (p *plainly) placeOf(face int32) Place {
	patch := &p.Patches[p.Faces[face].Patch]
	if patch.Cell < 0 {
		return Place{Border: int(patch.Border) + 1}
	}
	return Place{Row: 1 + int(patch.Cell)/p.Columns, Column: 1 + int(patch.Cell)%p.Columns}
}

// marks are the seams that vanish or are soft.
func (p *plainly) marks() (list []Mark) {
	for i := range p.seams {
		if s := &p.seams[i]; s.a != s.b && s.band < Clear {
			list = append(list, Mark{s.Seam, s.band, s.band == Vanishes && p.loud(s.a, s.b), s.inside})
		}
	}
	return list
}

// fabrics are those that the top shows, the darkest first. From a chroma of 60 on a color looks lighter than it is, our choice.
func (p *plainly) fabrics() []Fabric {
	shares, whole := make([]float64, len(p.Fabrics)), 0.0
	for i := range p.Faces {
		area := quilt.Area(p.Faces[i].Outline)
		shares[p.Faces[i].Fabric] += area
		whole += area
	}
	var list []Fabric
	var areas []palettes.Area
	for f := range p.Fabrics {
		c := p.Fabrics[f].Colour
		if shares[f] == 0 {
			continue
		}
		one := Fabric{Index: f, Name: p.Fabrics[f].Name, Colour: c.Hex(), Lightness: p.lightOf(f), Munsell: palettes.MunsellValue(c.Luminance()),
			Family: [3]string{"dark", "medium", "light"}[palettes.FamilyOf(p.lightOf(f))], Share: shares[f] / whole, Vivid: c.Lab().Chroma() > 60}
		if p.Fabrics[f].Cloth != nil {
			one.Spread = p.Fabrics[f].Cloth.Spread
		}
		list, areas = append(list, one), append(areas, palettes.Area{Lightness: one.Lightness, Size: one.Share})
	}
	for i, family := range palettes.RelativeFamilies(areas) {
		list[i].Here = [3]string{"dark", "medium", "light"}[family]
	}
	slices.SortStableFunc(list, func(a, b Fabric) int { return cmp.Compare(a.Lightness, b.Lightness) })
	return list
}

// blurOf is what was asked for, or from 10 feet ten minutes of arc, 0.8 of which the eye tells apart.
func (p *plainly) blurOf() measure.NM {
	if p.study.Blur > 0 {
		return p.study.Blur
	}
	return measure.NM(math.Round(float64(120*measure.Inch) * math.Tan(0.8*10.0/60*math.Pi/180)))
}

// thresholds are the figures that a study from 10 feet rests on.
func (p *plainly) thresholds() Thresholds {
	th := Thresholds{Own: p.Credits.Contrast != nil, Clear: p.clear, Strong: max(40, p.clear), ColourOnly: 20, Reads: 70, BesideEdge: 55,
		Distance: 120 * measure.Inch, Blur: p.blurOf(), MediumFrom: 46, LightFrom: 66, NearThreshold: 3}
	for i := range p.seams {
		if soft := p.seams[i].soft; i == 0 {
			th.SoftLeast, th.SoftMost = soft, soft
		} else {
			th.SoftLeast, th.SoftMost = min(th.SoftLeast, soft), max(th.SoftMost, soft)
		}
	}
	return th
}

// apartFrom says where two things differ as JSON, "" for nowhere: lengths by more than 20 nm, other numbers by more than a millionth.
func apartFrom(got, want any) string {
	read := func(v any) (tree any) {
		text, err := json.Marshal(v)
		if err == nil {
			err = json.Unmarshal(text, &tree)
		}
		if err != nil {
			panic(err)
		}
		return tree
	}
	return treesApart("", read(got), read(want))
}

func treesApart(at string, got, want any) string {
	switch g := got.(type) {
	case map[string]any:
		w, _ := want.(map[string]any)
		for _, key := range distinctNames(g, w) {
			if fault := treesApart(at+"."+key, g[key], w[key]); fault != "" && key != "text" {
				return fault
			}
		}
		return ""
	case []any:
		w, _ := want.([]any)
		if len(g) != len(w) {
			return fmt.Sprintf("%s: %d, not %d: %v and %v", at, len(g), len(w), got, want)
		}
		for i := range g {
			if fault := treesApart(fmt.Sprint(at, "[", i, "]"), g[i], w[i]); fault != "" {
				return fault
			}
		}
		return ""
	case float64:
		w, is := want.(float64)
		within := 1e-6
		if math.Abs(g) > 1e5 {
			within = 0.5 // of many that were rounded
		}
		if is && math.Abs(g-w) <= within {
			return ""
		}
	}
	if got == want || empty(got) && empty(want) {
		return ""
	}
	return fmt.Sprintf("%s: %v, not %v", at, got, want)
}

// empty says whether nothing is said.
func empty(v any) bool {
	list, is := v.([]any)
	return v == nil || is && len(list) == 0
}

// distinctNames are the names in either of two maps.
func distinctNames(a, b map[string]any) []string {
	var list []string
	for _, m := range []map[string]any{a, b} {
		for key := range m {
			list = append(list, key)
		}
	}
	slices.Sort(list)
	return slices.Compact(list)
}
