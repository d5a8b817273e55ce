package contrast

import (
	"fmt"
	"maps"
	"math/rand/v2"
	"slices"
	"testing"

	"eighthturn/internal/measure"
	"eighthturn/internal/quilt"
	"eighthturn/internal/quilttest/judges"
	"eighthturn/internal/quilttest/lay"
	"eighthturn/layout"
	"eighthturn/palettes"
)

// A color has no round value, so that a step in a quilt is never just what a threshold asks for. Here the fabrics of a top are taken to be
// just so light that many are, its pieces are given pixels, and its pools are drawn anew.

// relit is a study of a top whose fabrics are as light as they are said to be, with the masses that go with it, and the same for plain means.
func relit(of *quilt.Top, dice *rand.Rand) (s *study, mass *masses, p *plainly) {
	pick := func(list ...float64) float64 { return list[dice.IntN(len(list))] }
	top := *of
	top.Fabrics = slices.Clone(of.Fabrics)
	contrast, light, off := Contrast{Soft: 8, Clear: 18}, []float64{0, 5, 8, 11, 15, 18, 21, 26, 33, 40, 58, 92, 100}, []float64{-8, -1, 0, 0, 0, 1, 8}
	if dice.IntN(4) == 0 {
		contrast, light, off = Contrast{Soft: 0.5, Clear: 8.5}, []float64{0, 0.2, 0.5, 0.7, 3.5, 6.1, 8.5, 11.5, 40, 58.5}, []float64{-0.5, -0.1, 0, 0, 0, 0.1, 0.5}
	}
	top.Credits.Contrast, top.Credits.Pools = &layout.Contrast{Soft: contrast.Soft, Clear: contrast.Clear}, nil
	for n := range dice.IntN(3) {
		pool := layout.Pool{Name: fmt.Sprint("pool ", n)}
		for f := range top.Fabrics {
			if dice.IntN(2) == 0 {
				pool.Fabrics = append(pool.Fabrics, f)
			}
		}
		if len(pool.Fabrics) > 0 {
			top.Credits.Pools = append(top.Credits.Pools, pool)
		}
	}
	lights := make([]float64, len(top.Fabrics))
	colors := []palettes.Colour{{R: 90, G: 90, B: 90}, {R: 100, G: 100, B: 100}, {R: 200, G: 40, B: 40}, {R: 40, G: 90, B: 200}}
	for f := range top.Fabrics {
		lights[f] = pick(light...)
		top.Fabrics[f].Colour, top.Fabrics[f].Cloth = colors[dice.IntN(len(colors))], nil
	}
	top.Seams, top.StripSeams = slices.Clone(of.Seams), slices.Clone(of.StripSeams)
	for _, seams := range [2][]quilt.Seam{top.Seams, top.StripSeams} {
		for i, one := range seams {
			if dice.IntN(2) == 0 {
				seams[i] = quilt.Seam{A: one.B, B: one.A, From: one.To, To: one.From}
			}
		}
	}
	s = newStudy(nil, &top, Options{Contrast: &contrast, Blur: measure.NM(pick(0, 0, 1)) * measure.Inch})
	for f := range top.Fabrics {
		if dice.IntN(2) == 0 {
			top.Fabrics[f].Cloth = &quilt.Cloth{PhotoSample: palettes.PhotoSample{Spread: pick(0, 0.5, 12), Darkest: pick(20, 30), Lightest: pick(30, 40)}}
		}
	}
	s.lightness, s.own, s.Prints = lights, nil, photographed(&top)
	if dice.IntN(3) == 0 { // as pieces of prints are, each by itself
		for i := range s.Faces {
			s.own = append(s.own, max(0, lights[s.Faces[i].Fabric]+pick(off...)))
		}
	}
	for i := range s.seams {
		s.seams[i] = s.seam(s.seams[i].at, s.seams[i].strip)
	}
	mass, pixels := pixelled(s, func(face int) float64 { return lights[s.Faces[face].Fabric] + pick(off...) }, dice)
	p = &plainly{Top: &top, study: s, light: s.light, lights: lights, clear: contrast.Clear, pixels: pixels}
	return s, mass, p.judged()
}

// pixelled are masses of up to three pixels a face, of the lightness that is said for each, and the same in tenths by face.
func pixelled(s *study, light func(face int) float64, dice *rand.Rand) (mass *masses, pixels [][]int) {
	mass = &masses{study: s, canvas: &canvas{first: []int32{0}}, stamp: make([]int32, len(s.Faces))}
	pixels = make([][]int, len(s.Faces))
	for i := range s.Faces {
		for range dice.IntN(4) {
			v := int(10 * min(max(0, light(i)), 100))
			mass.values, pixels[i] = append(mass.values, uint16(v)), append(pixels[i], v)
		}
		mass.canvas.first = append(mass.canvas.first, int32(len(mass.values)))
	}
	return mass, pixels
}

// relitTexts are small layouts of what is seldom invented.
func relitTexts() map[string]string {
	const six = "side 4\nfabric a #000000\nfabric b #ffffff\nfabric c #555555\nfabric d #aaaaaa\nfabric e #2a2a2a\nfabric f #d4d4d4\n"
	return map[string]string{
		"webs and what lies between": six + "block W web wedges a kites b\ngrid\n W W W W\n W W W W\n W W W W\n W W W W\n",
		"webs in a border":           six + "block W web wedges a kites b\ngrid\n W W W\n W W W\n W W W\nborder 2 b\n",
		"stars in a border":          six + "block S star wedges a kites b\ngrid\n S S S\n S S S\n S S S\nborder 1 a\nborder 2 c\n",
		"webs of sorts":              six + "webs a / c\nblock W web kites b\ngrid\n W W W W\n W W W W\n W W W W\nborder 1 b\n",
		"stars and webs":             six + "block S star wedges a kites b\nblock W web wedges c kites b\ngrid\n S S W\n S W W\n W W S\n",
		"rings of many colorings": six + "block A ring wedges a corners b\nblock B ring wedges b corners c\nblock C ring wedges c corners d\nblock D ring wedges d corners e\nblock E ring wedges e corners f\n" +
			"block F ring wedges f corners a\nblock G ring wedges a corners d\nblock H ring wedges a c corners d\ngrid\n A B C D\n E F G H\nborder 1 c\n",
		"rings of one coloring more": six + "fabric g #7f7f7f\nblock A ring wedges a corners b\nblock B ring wedges b corners a\nblock C ring wedges c corners d\nblock D ring wedges d corners e\nblock E ring wedges e corners f\n" +
			"block F ring wedges f corners a\nblock G ring wedges g corners a\ngrid\n A B C D\n E F G A\n",
		"two webs and a star":         six + "block W web wedges a kites b\ngrid\n W W W W\n W W W W\n",
		"as many webs of either sort": six + "webs a / c\nblock W web kites b\ngrid\n W W W\n W W W\n W W W\n",
		"a ring of strips":            six + "strip-set s a equal c equal d equal e equal f equal\nblock R ring wedges s reversed s corners b\ngrid\n R\n",
		"one web":                     six + "block W web wedges a kites a\ngrid\n W W\n W W\nborder 1 b\n",
	}
}

// TestStudiesAtTheThresholds: where steps are just what a threshold asks for, or just short of it, a study is what plain means make of it.
func TestStudiesAtTheThresholds(t *testing.T) {
	dice := rand.New(rand.NewPCG(5, 6))
	tops := map[string]*quilt.Top{}
	for name, text := range relitTexts() {
		tops[name] = lay.Top(t, text)
	}
	for _, one := range lay.Invented(200, judges.Of(40, 200), 120) {
		tops[one.Name] = one.Top
	}
	for _, name := range slices.Sorted(maps.Keys(tops)) {
		top := tops[name]
		for n := range 10 {
			s, mass, p := relit(top, dice)
			if n == 0 {
				if fault := newFinding(s.Top).foundApart(s.found); fault != "" {
					t.Errorf("%s: %s", name, fault)
				}
			}
			r := &Report{Thresholds: s.thresholds(), Fabrics: s.fabrics(), Figures: s.figuresBy(mass), Stray: s.stray()}
			r.Losses = losses(r.Figures, r.Stray)
			r.Seams, r.Pairs, r.Marks = s.totals(), s.pairs(), s.marks()
			for _, fault := range append(p.partsApart(r), s.stepsApart(), s.recolouredApart(), p.waysApart(r)) {
				if fault == "" {
					continue
				}
				t.Errorf("%s, of %v: %s", name, s.lightness, fault)
			}
		}
	}
}

// recolouredApart says where the study of a top in other colors is not as it is by itself, or the one that it came from is spoilt.
func (s *study) recolouredApart() string {
	before, top := slices.Clone(s.seams), otherColors(s.Top)
	n, fresh := s.recoloured(top), newStudy(nil, top, s.Options)
	switch {
	case !slices.Equal(n.seams, fresh.seams) || !slices.Equal(n.lightness, fresh.lightness):
		return "in other colors its seams are others"
	case !slices.Equal(s.seams, before):
		return "other colors change what was studied before"
	}
	return ""
}

// colored is a top in grays by seed, a step or more apart or of one value, and a red.
func colored(of *quilt.Top, seed uint64) *quilt.Top {
	dice := rand.New(rand.NewPCG(seed, 9))
	top := *of
	top.Fabrics = slices.Clone(of.Fabrics)
	for f := range top.Fabrics {
		v := uint8(20 + 23*dice.IntN(10))
		if top.Fabrics[f].Colour = (palettes.Colour{R: v, G: v, B: v}); dice.IntN(5) == 0 {
			top.Fabrics[f].Colour.B = 40
		}
	}
	return &top
}

// waysApart says where what a mended quilt asks of its fabrics is not what plain means make of the same study.
func (p *plainly) waysApart(r *Report) string {
	w := &ways{study: p.study, report: r}
	if got, want := w.calmed(), p.calm(r.Stray); !maps.Equal(got, want) {
		return fmt.Sprintf("in the place of stray scraps are %v, not %v", got, want)
	}
	_, fault := p.boundsApart(r)
	return fault
}
