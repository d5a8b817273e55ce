package contrast

import (
	"math"
	"slices"

	"eighthturn/internal/render/pixels"
	"eighthturn/palettes"
)

// Mass is whether a figure reads as one mass to half-shut eyes.
type Mass struct {
	Score      float64 `json:"score"`   // 0 to 100: of each point of the figure and each of the ground how much their step holds, where the figure is the lighter, or where it is the darker, whichever is more
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
	valueSteps   = 1000 // steps in which CIE L* of 0 to 100 is counted
)

// canvas is where the pixels of a top lie, whatever its colors.
type canvas struct {
	*pixels.Mosaic
	shades []shade
	slot   []int32  // by pixel: where its value stands among all values, face by face; -1 where no face is
	first  []int32  // by face: where its values begin; one more for the end
	steps  []uint16 // of CIE L*, for every 16,384th of luminance
}

// masses is the blurred top, face by face. Without a canvas every figure is taken to hold as a mass.
type masses struct {
	*study
	canvas *canvas
	values []uint16 // of the pixels, in steps of 100 / valueSteps L*, face by face
	stamp  []int32  // by face, the number of the last judgement that counted it
	count  int32
}

// newCanvas finds where the pixels lie.
func (s *study) newCanvas() *canvas {
	longer := float64(max(s.Outer.Width(), s.Outer.Height()))
	side := min(max(longer/float64(s.squint().Sigma())*pixelsASigma, fewestPixels), mostPixels)
	size, _ := pixels.SizeOf(s.Top, int(side)) // so few are never refused
	shades, of := s.shades()
	c := &canvas{Mosaic: pixels.NewMosaic(s.Top, size, s.squint().Sigma(), of), shades: shades, steps: lightnessTable()}
	c.sortByFace(pixels.FaceAt(s.Top, c.Size), len(s.Faces))
	return c
}

// sortByFace notes where the values of each face's pixels stand.
func (c *canvas) sortByFace(faces []int32, count int) {
	c.first = make([]int32, count+1)
	for _, f := range faces {
		if f >= 0 {
			c.first[f+1]++
		}
	}
	for f := range count {
		c.first[f+1] += c.first[f]
	}
	next := slices.Clone(c.first)
	c.slot = make([]int32, len(faces))
	for i, f := range faces {
		if c.slot[i] = -1; f >= 0 {
			c.slot[i] = next[f]
			next[f]++
		}
	}
}

// newMasses blurs the top.
func (s *study) newMasses() *masses {
	if s.canvas == nil || s.canvas.otherPrints(s) {
		s.canvas = s.newCanvas()
	}
	m := &masses{study: s, canvas: s.canvas, stamp: make([]int32, len(s.Faces))}
	plane := m.canvas.Blurred(func(i int) float64 { return s.luminance(&m.canvas.shades[i]) })
	m.values = make([]uint16, m.canvas.first[len(s.Faces)])
	for i, slot := range m.canvas.slot {
		if slot >= 0 {
			m.values[slot] = m.canvas.steps[int(min(max(plane.Luminance[i], 0), 1)*(1<<14)+0.5)]
		}
	}
	return m
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
	if widest < 2*float64(m.squint().Sigma()) {
		return nil
	}
	return m.apart(figure, against, soft)
}

// apart judges faces against other faces, each counted once.
func (m *masses) apart(figure, against [][]int32, soft float64) *Mass {
	if m.canvas == nil {
		return &Mass{Score: 100, Hold: 1}
	}
	own, other := m.tallied(figure), m.tallied(against)
	mass := massOf(own, other, m.clear())
	if mass != nil {
		mass.Hold = m.weight(math.Abs(mass.Figure-mass.AgainstMid), soft)
		mass.Score = 100 * max(m.lighter(own, other, soft), m.lighter(other, own, soft))
	}
	return mass
}

// tally is pixels counted by their value.
type tally struct {
	counts []int
	total  int
}

// lighter is how much points are lighter than others: of each point and each of the others how much their step holds, 0 where the
// one is not the lighter.
func (m *masses) lighter(points, others tally, soft float64) float64 {
	const perStep = valueSteps / 100.0
	whole, none := int(math.Ceil(m.clear()*perStep)), int(math.Ceil(soft*perStep))
	vanishes, ramp := float64(soft*perStep), (m.clear()-soft)*perStep
	sum, below, near, values := 0.0, 0, 0, 0 // of the others: those a clear step below; those less than that below, and their values added up
	for v := none; v <= valueSteps; v++ {
		n := others.counts[v-none]
		near += n
		values += n * (v - none)
		if v >= whole {
			n = others.counts[v-whole]
			below += n
			near -= n
			values -= n * (v - whole)
		}
		held := float64(below) + (float64(float64(near)*(float64(v)-vanishes))-float64(values))/ramp
		sum += float64(float64(points.counts[v]) * held)
	}
	return sum / (float64(points.total) * float64(others.total))
}

// tallied counts the pixels of faces by their value, each face once.
func (m *masses) tallied(lists [][]int32) tally {
	t := tally{counts: make([]int, valueSteps+1)}
	m.count++
	for _, list := range lists {
		for _, f := range list {
			if m.stamp[f] == m.count {
				continue
			}
			m.stamp[f] = m.count
			values := m.values[m.canvas.first[f]:m.canvas.first[f+1]]
			t.total += len(values)
			for _, v := range values {
				t.counts[v]++
			}
		}
	}
	return t
}

// widthOfPatch is the least width of the patch that a face is part of, nanometres.
func (m *masses) widthOfPatch(face int32) float64 {
	return m.patches[m.Faces[face].Patch]
}

// massOf compares the values of two groups of pixels, counted by steps of value; nil where
// a group is empty. clear is the step that counts as whole, CIE L*.
func massOf(figure, against tally, clear float64) *Mass {
	if figure.total == 0 || against.total == 0 {
		return nil
	}
	below, lighter := 0, 0.0
	for v, n := range figure.counts {
		lighter += float64(float64(n) * (float64(below) + float64(against.counts[v])/2))
		below += against.counts[v]
	}
	share := lighter / (float64(figure.total) * float64(against.total))
	m := &Mass{Massing: min(1, math.Abs(2*share-1)), Figure: figure.median(), AgainstMid: against.median()}
	m.Step = min(1, math.Abs(m.Figure-m.AgainstMid)/clear)
	return m
}

// median is the CIE L* that half of the pixels reach.
func (t tally) median() float64 {
	v := 0
	for sum := t.counts[v]; 2*sum < t.total; sum += t.counts[v] {
		v++
	}
	return float64(v) * 100 / valueSteps
}
