package contrast

import (
	"math"
	"slices"

	"eighthturn/internal/measure"
	"eighthturn/internal/quilt"
	"eighthturn/internal/stop"
	"eighthturn/palettes"
)

// study is the work on one report.
type study struct {
	*quilt.Top
	Options
	sign      *stop.Sign  // ends the work; nil for never
	lightness []float64   // CIE L* by fabric
	own       []float64   // by face, of the part of its print that it shows; nil where all fabrics are plain
	narrowest []float64   // least width by face, nanometres
	patches   []float64   // least width by patch, nanometres
	seams     []seam      // all of them, those between patches first
	of        [][]int32   // by face, indices into seams
	sides     sides       // known once the figures are judged
	found     []group     // the figures, whatever their colours
	scream    []uint8     // by two fabrics: 0 not known yet, 1 alike, 2 apart by colour
	seen      [][]float64 // by kind of sight and fabric, CIE L*; known once pairs are judged
	canvas    *canvas     // known once masses are judged
	scraps    scraps      // known once the figures are found
	quick     bool        // verdicts alone are wanted, and nothing of what they are told with
}

// seam is a seam of the top with what the eye makes of it.
type seam struct {
	a, b    int32 // faces
	strip   bool  // between two bands of one patch
	at      quilt.Seam
	length  float64 // nanometres
	soft    float64 // the step below which it vanishes, CIE L*
	step    float64 // lightness of a less that of b, CIE L*
	band    Band
	sameOne bool // both sides are of one fabric
}

// other is the face on the other side.
func (s *seam) other(face int32) int32 {
	if s.a == face {
		return s.b
	}
	return s.a
}

func newStudy(sign *stop.Sign, t *quilt.Top, o Options) *study {
	s := &study{Top: t, Options: o, sign: sign, lightness: make([]float64, len(t.Fabrics))}
	s.scream = make([]uint8, len(t.Fabrics)*len(t.Fabrics))
	for f := range t.Fabrics {
		s.lightness[f] = t.Fabrics[f].Colour.Lightness()
	}
	s.own = ownLights(t)
	s.narrowest = make([]float64, len(t.Faces))
	widths := widths{}
	for i := range t.Faces {
		s.sign.Step(1)
		s.narrowest[i] = widths.of(t.Faces[i].Outline)
	}
	s.patches = make([]float64, len(t.Patches))
	for i := range t.Patches {
		s.patches[i] = widths.of(t.Patches[i].Outline)
	}
	s.seams = make([]seam, 0, len(t.Seams)+len(t.StripSeams))
	for i := range t.Seams {
		s.seams = append(s.seams, s.seam(t.Seams[i], false))
	}
	for i := range t.StripSeams {
		s.seams = append(s.seams, s.seam(t.StripSeams[i], true))
	}
	s.index()
	s.sides = s.newSides()
	s.found = s.groups()
	s.scraps = s.newScraps()
	return s
}

// recoloured is the study of the same top in other colours: what lies where stays as it is.
func (s *study) recoloured(t *quilt.Top) *study {
	n := *s
	n.Top = t
	n.lightness = make([]float64, len(t.Fabrics))
	for f := range t.Fabrics {
		n.lightness[f] = t.Fabrics[f].Colour.Lightness()
	}
	n.own = s.ownIn(t)
	n.scream, n.quick = make([]uint8, len(s.scream)), true
	n.seams = make([]seam, len(s.seams))
	for i := range s.seams {
		one := s.seams[i]
		one.step = n.light(one.a) - n.light(one.b)
		one.band = n.band(math.Abs(one.step), one.soft)
		n.seams[i] = one
	}
	return &n
}

// light is the CIE L* of a face.
func (s *study) light(face int32) float64 {
	if s.own != nil {
		return s.own[face]
	}
	return s.lightness[s.Faces[face].Fabric]
}

// ownIn is the lights of the faces of the same top in other fabrics. Those of a print that stays, by index, are known.
func (s *study) ownIn(t *quilt.Top) []float64 {
	stays := make([]bool, len(t.Fabrics))
	for f := range t.Fabrics {
		c := t.Fabrics[f].Cloth
		stays[f] = c == s.Fabrics[f].Cloth
		if c != nil && !stays[f] {
			return ownLights(t)
		}
	}
	if s.own == nil {
		return nil
	}
	own := slices.Clone(s.own)
	for i := range own {
		if f := t.Faces[i].Fabric; t.Fabrics[f].Cloth == nil || !stays[f] {
			own[i] = t.Fabrics[f].Colour.Lightness()
		}
	}
	return own
}

// seam judges one seam.
func (s *study) seam(at quilt.Seam, strip bool) seam {
	a, b := s.Faces[at.A].Fabric, s.Faces[at.B].Fabric
	s.sign.Step(1)
	one := seam{a: at.A, b: at.B, strip: strip, at: at, length: lengthOf(at), sameOne: a == b}
	one.step = s.light(at.A) - s.light(at.B)
	one.soft = s.softStep(min(s.narrowest[at.A], s.narrowest[at.B]), int(a), int(b))
	one.band = s.band(math.Abs(one.step), one.soft)
	return one
}

// softStep is the step below which a seam between two fabrics vanishes: the layout's own,
// or what half of all viewers notice between patches of that size from that distance,
// raised for prints. It never exceeds the clear one.
func (s *study) softStep(narrower float64, a, b int) float64 {
	if s.Contrast != nil {
		return s.Contrast.Soft
	}
	texture := palettes.TextureFactor(max(s.print(a).Spread, s.print(b).Spread))
	angle := palettes.VisualAngle(narrower, float64(s.distance()))
	return min(palettes.JustNoticeable(angle, texture), s.clear())
}

// lengthOf is a seam's length in nanometres.
func lengthOf(s quilt.Seam) float64 {
	return distance(float64(s.To.X-s.From.X), float64(s.To.Y-s.From.Y))
}

func distance(dx, dy float64) float64 { return math.Sqrt(float64(dx*dx) + float64(dy*dy)) }

// index lists the seams of each face.
func (s *study) index() {
	count := make([]int32, len(s.Faces))
	for i := range s.seams {
		count[s.seams[i].a]++
		count[s.seams[i].b]++
	}
	all := make([]int32, 2*len(s.seams))
	s.of = make([][]int32, len(s.Faces))
	for f, n := range count {
		s.of[f], all = all[:0:n], all[n:]
	}
	for i := range s.seams {
		one := &s.seams[i]
		s.of[one.a] = append(s.of[one.a], int32(i))
		s.of[one.b] = append(s.of[one.b], int32(i))
	}
}

// widths remembers the least widths of outlines that are alike but for their place.
type widths map[[8]measure.NM]float64

// of is the least width of a convex outline, in nanometres: the least distance between two
// parallel lines that hold it between them, which always runs along one of its sides.
func (w widths) of(outline []measure.Point) float64 {
	var key [8]measure.NM
	for i := 1; i < len(outline) && i <= 4; i++ {
		key[2*i-2], key[2*i-1] = outline[i].X-outline[0].X, outline[i].Y-outline[0].Y
	}
	if width, ok := w[key]; ok && len(outline) <= 5 {
		return width
	}
	least := math.Inf(1)
	for i, p := range outline {
		q := outline[(i+1)%len(outline)]
		least = min(least, farthest(outline, p, q))
	}
	w[key] = least
	return least
}

// farthest is the distance of the outline's farthest corner from the line through p and q.
func farthest(outline []measure.Point, p, q measure.Point) float64 {
	dx, dy := float64(q.X-p.X), float64(q.Y-p.Y)
	most := 0.0
	for _, r := range outline {
		cross := float64(dx*float64(r.Y-p.Y)) - float64(dy*float64(r.X-p.X))
		most = max(most, math.Abs(cross))
	}
	return most / distance(dx, dy)
}
