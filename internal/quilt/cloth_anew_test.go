package quilt_test

import (
	"fmt"
	"math"
	"testing"

	"eighthturn/internal/measure"
	"eighthturn/internal/quilt"
	"eighthturn/internal/quilt/lengths"
)

// ways is how pieces lie beside their like.
type ways int

const (
	alone ways = iota
	inTurn
	onSquares
)

// likeness is what pieces have in common that come one after the other off like strips.
type likeness struct {
	fabric, set  int        // fabric -1 of a strip set
	along        bool       // strips along the selvages
	across, down measure.NM // hundredths of a millimeter: as long and as wide as they are
	ways         ways
}

// onStrip is a patch in the frame of its strip: how long and wide, as the strip runs to the right.
type onStrip struct {
	likeness
	long, wide, mean float64 // finished; of wedges and tumblers the mean width
	narrowUp, edging bool
}

// lying finds how a patch lies along its strip: by its corners, with its straight grain to the right.
func lying(top *quilt.Top, patch int) onStrip {
	p := &top.Patches[patch]
	d := p.Shape.Description()
	a, b := p.Outline[d.Grain[0]], p.Outline[d.Grain[1]]
	if d.Edging && math.Hypot(float64(p.Outline[2].X-b.X), float64(p.Outline[2].Y-b.Y)) > math.Hypot(float64(b.X-a.X), float64(b.Y-a.Y)) {
		a, b = b, p.Outline[2]
	}
	x, y := float64(b.X-a.X), float64(b.Y-a.Y)
	way := math.Hypot(x, y)
	left, right, upper, lower := math.MaxFloat64, -math.MaxFloat64, math.MaxFloat64, -math.MaxFloat64
	var places []measure.Vec
	for _, q := range p.Outline {
		u, v := (float64(q.X)*x+float64(q.Y)*y)/way, (float64(q.Y)*x-float64(q.X)*y)/way
		places = append(places, measure.Vec{X: u, Y: v})
		left, right, upper, lower = min(left, u), max(right, u), min(upper, v), max(lower, v)
	}
	widths := [2][2]float64{{right, left}, {right, left}} // from where to where at the upper and at the lower end
	between := false
	for _, q := range places {
		switch {
		case q.Y < upper+nearby:
			widths[0] = [2]float64{min(widths[0][0], q.X), max(widths[0][1], q.X)}
		case q.Y > lower-nearby:
			widths[1] = [2]float64{min(widths[1][0], q.X), max(widths[1][1], q.X)}
		default:
			between = true
		}
	}
	near := func(a, b float64) bool { return math.Abs(a-b) < nearby }
	up, down := widths[0][1]-widths[0][0], widths[1][1]-widths[1][0]
	middle := near(widths[0][0]+widths[0][1], left+right) && near(widths[1][0]+widths[1][1], left+right)
	o := onStrip{long: right - left, wide: lower - upper, mean: (up + down) / 2, narrowUp: up < down, edging: d.Edging}
	switch {
	case len(places) == 3 && near(up, right-left) && near(down, 0) && near(widths[1][0], left):
		o.ways = onSquares
	case middle && !between && !near(up, down):
		o.ways = inTurn
	}
	hundredths := func(nm float64) measure.NM { return measure.NM(math.Round(nm / 10_000)) }
	o.likeness = likeness{fabric: int(top.Faces[p.First].Fabric), set: int(p.Set), across: hundredths(o.long), down: hundredths(o.wide), ways: o.ways}
	if p.Set >= 0 {
		o.fabric = -1
	} else if c := top.CutOfPatch(patch); top.Fabrics[o.fabric].Cloth != nil {
		o.along = c != nil && !c.Crosswise || p.Border >= 0 && d.Edging && top.CutFacts.Borders[p.Border].Lengthwise
	}
	return o
}

// secant is 1 by the cosine of 22.5 degrees, by which a slanted side's seam allowance is wider along a strip, and tangent theirs.
var secant, tangent = 1 / math.Cos(math.Pi/8), math.Tan(math.Pi / 8)

// strippedAnew is where the middles of all faces lie on their cloths, and which way their straight grain runs there, in degrees; only of
// those for which the layout names no place. Pieces come off their strips in the order of the patches, strips off their fabric in the order in
// which they are first needed, and those along the selvages as lengths of fabric are laid.
func strippedAnew(top *quilt.Top) map[int]laidPiece {
	s := &stripping{top: top, seam: float64(top.Seam), count: map[likeness]int{}, sides: map[likeness][2]int{}, begins: map[string]float64{}, ends: map[int]float64{}, lengths: map[likeness][]laidPiece{}}
	s.alongSelvages()
	laid := map[int]laidPiece{}
	for i := range top.Patches {
		if _, said := top.PlaceSaid(i); !said {
			s.patch(i, laid)
		}
	}
	return laid
}

// laidPiece is a place on a cloth, and which way a piece's grain runs there, in degrees clockwise from the right.
type laidPiece struct{ x, y, grain float64 }

type stripping struct {
	top     *quilt.Top
	seam    float64
	count   map[likeness]int
	sides   map[likeness][2]int // of strip sets: as named, and reversed
	begins  map[string]float64
	ends    map[int]float64 // by fabric, how much of it is cut
	lengths map[likeness][]laidPiece
}

// takes is how much of a strip a piece takes, and how much more the first of a strip.
func (s *stripping) takes(o *onStrip) (pitch, more float64) {
	switch o.ways {
	case inTurn:
		pitch = o.mean + 2*secant*s.seam
		return pitch, o.long - o.mean + 2*tangent*s.seam
	case onSquares:
		return o.long + (2+math.Sqrt2)*s.seam, 0
	}
	return o.long + 2*s.seam, 0
}

func (s *stripping) patch(i int, laid map[int]laidPiece) {
	p, o := &s.top.Patches[i], lying(s.top, i)
	slot := s.count[o.likeness]
	s.count[o.likeness]++
	turned := o.ways != alone && slot%2 == 1
	if p.Set >= 0 {
		sides, way := s.sides[o.likeness], 0
		if turned = p.Reversed; turned {
			way = 1
		}
		slot = 2*sides[way] + way
		sides[way]++
		s.sides[o.likeness] = sides
	}
	shift := 0.0 // of the second half of a square
	if o.ways == onSquares {
		slot /= 2
		if turned {
			shift = math.Sqrt2 * s.seam
		}
	}
	grain := 0.0
	if turned != (o.ways == inTurn && !o.narrowUp) {
		grain = 180
	}
	if o.along {
		at := s.lengths[o.likeness][slot]
		laid[int(p.First)] = laidPiece{at.x - s.seam - o.wide/2 - shift, at.y + s.middle(&o) + shift, grain + 90}
		return
	}
	for n := range int(p.Count) {
		face := int(p.First) + n
		f := s.top.Faces[face]
		if s.top.Fabrics[f.Fabric].Cloth == nil {
			continue
		}
		laid[face] = s.across(&o, face, n, slot, shift, grain)
	}
}

// middle is how far the middle of a piece lies from where it begins on its strip.
func (s *stripping) middle(o *onStrip) float64 {
	if o.ways == inTurn && o.along {
		pitch, more := s.takes(o)
		return (pitch + more) / 2
	}
	return s.seam + o.long/2
}

// across is where a face of a strip across the cloth lies.
func (s *stripping) across(o *onStrip, face, band, slot int, shift, grain float64) laidPiece {
	f := s.top.Faces[face]
	p := &s.top.Patches[f.Patch]
	width := float64(s.top.CutFacts.Fabrics[f.Fabric].UsableWidth)
	pitch, _ := s.takes(o)
	first := o.long + 2*s.seam // that the first of a strip takes, its corners cut off at the seam allowance
	if o.ways == onSquares {
		first = pitch
	}
	fit := 1
	for first+float64(fit)*pitch <= width {
		fit++
	}
	wide := o.wide
	if p.Set >= 0 {
		wide = extent(f.Outline, p.Outline)
		if p.Reversed {
			band = int(p.Count) - 1 - band
		}
	}
	key := fmt.Sprint(o.likeness, f.Fabric, slot/fit, p.Set >= 0, band)
	begin, known := s.begins[key]
	if !known {
		cut := wide + 2*s.seam
		if o.ways == onSquares {
			cut += math.Sqrt2 * s.seam
		}
		begin = s.ends[int(f.Fabric)]
		s.begins[key] = begin
		s.ends[int(f.Fabric)] += math.Ceil(cut-1e-3) * max(1, math.Ceil((o.long+2*s.seam)/width))
	}
	return laidPiece{float64(slot%fit)*pitch + s.seam + o.long/2 + shift, begin + s.seam + wide/2 + shift, grain}
}

// extent is how wide a band of a wedge is: square to the wedge's wide end.
func extent(band, wedge []measure.Point) float64 {
	x, y := float64(wedge[2].X-wedge[1].X), float64(wedge[2].Y-wedge[1].Y)
	least, most := math.MaxFloat64, -math.MaxFloat64
	for _, p := range band {
		v := (float64(p.Y)*x - float64(p.X)*y) / math.Hypot(x, y)
		least, most = min(least, v), max(most, v)
	}
	return most - least
}

// alongSelvages lays the strips that run along the selvages: their right edge and where each piece begins.
func (s *stripping) alongSelvages() {
	order, pieces := map[int][]likeness{}, map[likeness]int{}
	of := map[likeness]onStrip{}
	for i := range s.top.Patches {
		if _, said := s.top.PlaceSaid(i); said {
			continue
		}
		o := lying(s.top, i)
		if !o.along {
			continue
		}
		if pieces[o.likeness]++; pieces[o.likeness] == 1 {
			order[o.fabric] = append(order[o.fabric], o.likeness)
			of[o.likeness] = o
		}
	}
	for fabric, list := range order {
		width := s.top.CutFacts.Fabrics[fabric].UsableWidth
		var wants []lengths.Want
		for _, l := range list {
			o := of[l]
			pitch, more := s.takes(&o)
			wide := o.wide + 2*s.seam
			w := lengths.Want{Count: pieces[l]}
			if o.ways == onSquares {
				w.Count, wide = (w.Count+1)/2, wide+math.Sqrt2*s.seam
			}
			if o.edging {
				w.Whole = true
				pitch += float64(lengths.Longer(s.top.Units))
			}
			w.Across, w.Along, w.Extra = min(rounded(wide), width), rounded(pitch), rounded(more)
			wants = append(wants, w)
		}
		down := 1000 * measure.Yard
		for _, length := range lengths.Lay(lengths.Cloth{Usable: width, Longest: lengths.Longest(s.top.Units)}, wants) {
			for _, strip := range length.Strips {
				w := wants[strip.Want]
				for n := range strip.Pieces {
					s.lengths[list[strip.Want]] = append(s.lengths[list[strip.Want]], laidPiece{x: float64(strip.From + w.Across), y: float64(down) + float64(n)*float64(w.Along)})
				}
			}
			down += length.Long
		}
	}
}

// rounded is a length to a hundredth of a millimeter.
func rounded(nm float64) measure.NM { return measure.NM(math.Round(nm/10_000)) * 10_000 }

// TestPiecesComeInOrder: every piece for which the layout names no place lies on its cloth where the strips that it comes off put it, piece
// after piece and strip after strip.
func TestPiecesComeInOrder(t *testing.T) {
	const fabrics = "side 8\nfabric cream ivory\nfabric awning stripes navy 3/4 white 1/2 #c9503c 3/8\nfabric deck stripes white 3/4 #c9503c 1/2 crosswise usable-width 22\nstrip-set tide awning 2 deck rest\n"
	list := []*quilt.Top{
		lay(t, fabrics+"block A ring wedges awning lengthwise deck crosswise corners deck\nblock B ring wedges tide reversed tide corners awning lengthwise\nblock W web wedges deck kites awning\nblock F floating wedges tide background awning\n"+
			"block H halves pieces awning deck lengthwise\nblock P plain piece deck\nblock Q plain piece awning lengthwise\ngrid\n A B H P\n F W W F\n F W W F\n Q P H H:ne\n A A A A\nsash 1 1/2 deck posts awning\nborder 3 awning lengthwise\nborder 5 deck corners awning\n"),
		lay(t, "side 7\nfabric awning stripes navy 3/4 white 1/2\nfabric deck stripes white 3/4 #c9503c 1/2 crosswise usable-width 9\nblock T tumblers pieces awning deck about 4\nblock U tumblers pieces awning about 3 1/2\nblock P plain piece deck\ngrid\n T U P\n T U P\n T U P\nborder 2 deck\nborder 3 awning lengthwise\n"),
	}
	list = append(list, clothTops(16)...)
	pieces := 0
	for n, top := range list {
		places := top.ClothPlaces()
		if places == nil || top.Seam == 0 && n > 1 {
			continue
		}
		for face, want := range strippedAnew(top) {
			f := &top.Faces[face]
			whole := top.Patches[f.Patch].Outline
			if off := offPlace(top, face, &places[face], want); off != "" {
				t.Fatalf("layout %d: face %d of %v, a %s: %s", n, face, whole, top.Patches[f.Patch].Shape, off)
			}
			pieces++
		}
	}
	if pieces < 2000 {
		t.Errorf("only %d pieces", pieces)
	}
}

// offPlace says how a face lies elsewhere on its cloth than it should.
func offPlace(top *quilt.Top, face int, at *quilt.ClothPlace, want laidPiece) string {
	f := &top.Faces[face]
	p := &top.Patches[f.Patch]
	d := p.Shape.Description()
	whole, own := onCloth(p.Outline, at), onCloth(f.Outline, at)
	from, to := whole[d.Grain[0]], whole[d.Grain[1]]
	if next := whole[2]; d.Edging && next.Minus(to).Length() > to.Minus(from).Length()+1 {
		from, to = to, next
	}
	sin, cos := math.Sincos(want.grain * math.Pi / 180)
	if way := to.Minus(from).Unit(); way.Minus(measure.Vec{X: cos, Y: sin}).Length() > 1e-5 {
		return fmt.Sprintf("its grain runs %v, expected %g degrees", way, want.grain)
	}
	left, right, upper, lower := math.MaxFloat64, -math.MaxFloat64, math.MaxFloat64, -math.MaxFloat64
	for _, q := range whole { // along the strip the whole piece counts, across it the band
		left, right = min(left, q.X), max(right, q.X)
	}
	for _, q := range own {
		upper, lower = min(upper, q.Y), max(lower, q.Y)
	}
	if math.Abs(want.grain-90) < 1 || math.Abs(want.grain-270) < 1 {
		left, right, upper, lower = math.MaxFloat64, -math.MaxFloat64, math.MaxFloat64, -math.MaxFloat64
		for _, q := range whole {
			left, right, upper, lower = min(left, q.X), max(right, q.X), min(upper, q.Y), max(lower, q.Y)
		}
	}
	x, y := (left+right)/2, (upper+lower)/2
	if math.Abs(x-want.x) > slackOnCloth || math.Abs(y-want.y) > slackOnCloth {
		return fmt.Sprintf("its middle lies at %.3f, %.3f mm, expected %.3f, %.3f", x/1e6, y/1e6, want.x/1e6, want.y/1e6)
	}
	return ""
}

// slackOnCloth is what roundings of many pieces come to, in nanometers: a tenth of a millimeter.
const slackOnCloth = 100_000
