package contrast

import (
	"math"

	"eighthturn/internal/render/pixels"
	"eighthturn/palettes"
)

// Mass is whether a figure reads as one mass to half-shut eyes.
type Mass struct {
	Score      float64 `json:"score"`   // 0 to 100: 100 sqrt(Massing Hold)
	Massing    float64 `json:"massing"` // 0 to 1: how often a point of the figure lies on the same side of a point of the ground; |2 AUC - 1| of a rank test
	Step       float64 `json:"step"`    // 0 to 1: how much of a clear step lies between their middles
	Hold       float64 `json:"hold"`    // 0 to 1: how much that step holds, by the same scale as a seam: 0 where it vanishes, 1 where it is clear
	Figure     float64 `json:"figure"`  // median CIE L* of the figure, blurred; 0 where many colourings were drawn together
	AgainstMid float64 `json:"against"` // median CIE L* of what it stands against
}

// The grid on which masses are judged.
const (
	pixelsASigma = 1.25 // pixels that the blur's standard deviation measures
	fewestPixels = 400  // on the longer side
	mostPixels   = 900
	valueSteps   = 2000 // steps in which CIE L* of 0 to 100 is counted
)

// masses is the blurred top, face by face.
type masses struct {
	*study
	sigma float64    // of the blur, nanometres
	of    [][]uint16 // by face, the values of its pixels in steps of 100 / valueSteps L*
	stamp []int32    // by face, the number of the last judgement that counted it
	count int32
}

// newMasses blurs the top.
func (s *study) newMasses() *masses {
	m := &masses{study: s, sigma: float64(s.squint().Sigma()), stamp: make([]int32, len(s.Faces))}
	longer := float64(max(s.Outer.Width(), s.Outer.Height()))
	side := min(max(longer/m.sigma*pixelsASigma, fewestPixels), mostPixels)
	size, err := pixels.SizeOf(s.Top, int(side))
	if err != nil {
		return m // cannot be: the side lies within the limits
	}
	plane := pixels.Blurred(s.Top, size, s.squint().Sigma(), func(f int) palettes.Colour { return s.Fabrics[f].Colour })
	m.sortByFace(pixels.FaceAt(s.Top, plane.Size), plane.Luminance)
	return m
}

// sortByFace lists the pixels of each face.
func (m *masses) sortByFace(faces []int32, luminance []float32) {
	count := make([]int32, len(m.Faces))
	for _, f := range faces {
		if f >= 0 {
			count[f]++
		}
	}
	all := make([]uint16, len(faces))
	m.of = make([][]uint16, len(m.Faces))
	for f, n := range count {
		m.of[f], all = all[:0:n], all[n:]
	}
	steps := lightnessTable()
	for i, f := range faces {
		if f >= 0 {
			m.of[f] = append(m.of[f], steps[int(min(max(luminance[i], 0), 1)*(1<<14)+0.5)])
		}
	}
}

// lightnessTable is the step of CIE L* for every 16,384th of luminance.
func lightnessTable() []uint16 {
	table := make([]uint16, 1<<14+1)
	for i := range table {
		table[i] = uint16(math.Round(palettes.LightnessOf(float64(i)/(1<<14)) * valueSteps / 100))
	}
	return table
}

// judge judges figures of one colouring, each face counted once. It gives nil where the
// pieces are thinner than two standard deviations of the blur, so that nothing of them is
// left to be a mass, and where a side has no pixels. soft is the step below which their seams vanish.
func (m *masses) judge(members []*member, soft float64) *Mass {
	widest := 0.0
	var figure, against [][]int32
	for _, one := range members {
		for _, f := range one.faces {
			widest = max(widest, m.widthOfPatch(f))
		}
		figure, against = append(figure, one.faces), append(against, one.against)
	}
	if widest < 2*m.sigma {
		return nil
	}
	return m.apart(figure, against, soft)
}

// apart judges faces against other faces, each counted once.
func (m *masses) apart(figure, against [][]int32, soft float64) *Mass {
	mass := massOf(m.tallied(figure), m.tallied(against), m.clear())
	if mass != nil {
		mass.Hold = m.weight(math.Abs(mass.Figure-mass.AgainstMid), soft)
		mass.Score = score(mass.Massing, mass.Hold)
	}
	return mass
}

// tallied counts the pixels of faces by their value, each face once.
func (m *masses) tallied(lists [][]int32) []int {
	counts := make([]int, valueSteps+1)
	m.count++
	for _, list := range lists {
		for _, f := range list {
			m.tally(counts, f)
		}
	}
	return counts
}

// widthOfPatch is the least width of the patch that a face is part of, nanometres.
func (m *masses) widthOfPatch(face int32) float64 {
	p := &m.Patches[m.Faces[face].Patch]
	if p.Count == 1 {
		return m.narrowest[face]
	}
	return widths{}.of(p.Outline)
}

// tally counts the pixels of a face, once in a judgement.
func (m *masses) tally(counts []int, face int32) {
	if m.stamp[face] == m.count {
		return
	}
	m.stamp[face] = m.count
	for _, v := range m.of[face] {
		counts[v]++
	}
}

// massOf compares the values of two groups of pixels, counted by steps of value; nil where
// a group is empty. clear is the step that counts as whole, CIE L*.
func massOf(figure, against []int, clear float64) *Mass {
	nf, na := total(figure), total(against)
	if nf == 0 || na == 0 {
		return nil
	}
	below, lighter := 0, 0.0
	for v := range figure {
		lighter += float64(float64(figure[v]) * (float64(below) + float64(against[v])/2))
		below += against[v]
	}
	share := lighter / (float64(nf) * float64(na))
	m := &Mass{Massing: min(1, math.Abs(2*share-1)), Figure: median(figure, nf), AgainstMid: median(against, na)}
	m.Step = min(1, math.Abs(m.Figure-m.AgainstMid)/clear)
	return m
}

func total(counts []int) int {
	sum := 0
	for _, n := range counts {
		sum += n
	}
	return sum
}

// median is the CIE L* that half of the pixels reach.
func median(counts []int, of int) float64 {
	sum := 0
	for v, n := range counts {
		if sum += n; 2*sum >= of {
			return float64(v) * 100 / valueSteps
		}
	}
	return 100
}
