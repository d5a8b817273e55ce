package quilt

import (
	"math"
	"slices"

	"eighthturn/internal/measure"
	"eighthturn/layout"
)

// ClothPlaces says for each face of a top, by index, which place of its cloth it shows; nil where every fabric is one color. Pieces
// for which the layout names a place are cut there. All others come as they are cut along strips across the cloth, one after the
// other in the order of the patches: wedges with their tips up and down in turn.
func (t *Top) ClothPlaces() []ClothPlace {
	any := false
	for f := range t.Fabrics {
		any = any || t.Fabrics[f].Cloth != nil
	}
	if !any {
		return nil
	}
	l := &clothLaying{Top: t, places: make([]ClothPlace, len(t.Faces)), slots: map[alikePieces]*[2]int{}, strips: map[stripOfCloth]measure.Point{}, onLengths: map[alikePieces]*onLengths{}, down: make([]measure.NM, len(t.Fabrics))}
	l.layLengths()
	for i := range t.Patches {
		l.patch(int32(i))
	}
	return l.places
}

// CutOfPatch is where a patch is cut from its cloth, nil where the layout does not say.
func (t *Top) CutOfPatch(patch int) *Cut {
	if t.CutOf == nil || t.CutOf[patch] < 0 {
		return nil
	}
	return &t.Cuts[t.CutOf[patch]]
}

// clothLaying lays a top's pieces on their cloths.
type clothLaying struct {
	*Top
	places    []ClothPlace
	slots     map[alikePieces]*[2]int        // pieces that were cut so far, head up and head down
	strips    map[stripOfCloth]measure.Point // where each begins
	onLengths map[alikePieces]*onLengths     // pieces from strips along the selvages
	down      []measure.NM                   // by fabric, how much of it is cut across: strips one below the other
}

// alikePieces are pieces that come from like strips.
type alikePieces struct {
	fabric, set   int // fabric -1 for a strip set
	lengthwise    bool
	across, along measure.NM
	nest          nesting
}

// stripOfCloth is a strip of one fabric that alike pieces come from: of a strip set one of its strips.
type stripOfCloth struct {
	alikePieces
	band   int
	number int
}

// inFrame is an outline in a frame of its own, turned so that two of its corners lie side by side.
type inFrame struct {
	turn         float64 // by which the frame is turned on the top
	cos, sin     float64
	left, upper  float64
	right, lower float64
	mean         float64 // of the widths at its upper and its lower end
	head         bool    // the wider end is the upper one
}

// frame is an outline's frame in which the way from one corner to another runs to the right.
func frame(outline []measure.Point, from, to int) inFrame {
	a, b := outline[from], outline[to]
	turn := math.Atan2(float64(b.Y-a.Y), float64(b.X-a.X)) * 180 / math.Pi
	const step = 22.5 // of all pieces that are made of wedges, and corners are rounded
	if near := math.Round(turn/step) * step; math.Abs(turn-near) < 1e-4 {
		turn = near
	}
	f := inFrame{turn: math.Mod(turn+360, 360)}
	f.cos, f.sin = directions(f.turn)
	f = frameLike(&f, outline)
	upper, lower := f.span(outline, f.upper), f.span(outline, f.lower)
	f.mean, f.head = (upper[1]-upper[0]+lower[1]-lower[0])/2, upper[1]-upper[0] > lower[1]-lower[0]
	return f
}

// at is a place of the top in the frame.
func (f *inFrame) at(p measure.Point) (x, y float64) {
	px, py := float64(p.X), float64(p.Y)
	return float64(px*f.cos) + float64(py*f.sin), float64(py*f.cos) - float64(px*f.sin)
}

// onTop is a place of the frame on the top.
func (f *inFrame) onTop(x, y float64) measure.Point {
	return measure.Point{
		X: measure.NM(math.Round(float64(x*f.cos) - float64(y*f.sin))),
		Y: measure.NM(math.Round(float64(x*f.sin) + float64(y*f.cos))),
	}
}

func (l *clothLaying) patch(i int32) {
	p := &l.Patches[i]
	if at, ok := l.PlaceSaid(int(i)); ok {
		l.places[p.First] = at
		return
	}
	l.alongStrips(i)
}

// PlaceSaid is where on its cloth a patch lies where the layout says that; false where it does not, and the patch comes as it is cut.
func (t *Top) PlaceSaid(patch int) (ClothPlace, bool) {
	c, p := t.CutOfPatch(patch), &t.Patches[patch]
	switch {
	case c == nil:
	case c.Motif != "":
		f := p.upright()
		return ClothPlace{Top: centroid(p.Outline), Cloth: c.Place, Turn: turned(f.turn - float64(c.Pointing))}, true
	case c.Alike:
		return t.alike(p, c), true
	}
	return ClothPlace{}, false
}

// alike is the place of a piece whose stripes begin at one place in all pieces.
func (t *Top) alike(p *Patch, c *Cut) ClothPlace {
	f := p.upright()
	middle, end := (f.left+f.right)/2, f.lower
	stripes := t.Fabrics[t.Faces[p.First].Fabric].Cloth
	crosswise := stripes != nil && stripes.Stripes != nil && stripes.Stripes.Crosswise
	at := ClothPlace{Top: f.onTop(middle, end), Cloth: measure.Point{X: c.From}}
	pointing := 0.0
	if crosswise {
		at.Cloth = measure.Point{Y: c.From}
	}
	switch across := crosswise == c.Crosswise; { // the stripes cross the piece, and go on from its wide end
	case across && crosswise:
		pointing = 180
	case across != crosswise:
		pointing = 90
	}
	at.Turn = turned(f.turn - pointing)
	return at
}

// upright is a piece's frame as its template lies.
func (p *Patch) upright() inFrame {
	from, to := p.Shape.Description().Lies(p.places())
	return frame(p.Outline, from, to)
}

// turned is a turn from less than a whole one back to less than a whole one on, as degrees from 0 up to 360.
func turned(degrees float64) float64 { return math.Mod(degrees+around, around) }

// alongStrips lays a piece where it comes along its strip.
func (l *clothLaying) alongStrips(i int32) {
	p := &l.Patches[i]
	f, of := l.alikePieces(i)
	nest := of.nest
	slot, down := l.next(of, p, nest)
	for n := range p.Count {
		face := &l.Faces[p.First+n]
		piece := stripPiece{whole: &f, face: &f, slot: slot, down: down, nest: nest}
		key := stripOfCloth{alikePieces: of}
		if p.Set >= 0 {
			band := frameLike(&f, face.Outline)
			piece.face, key.band = &band, int(n)
			if p.Reversed {
				key.band = int(p.Count-1) - int(n)
			}
		}
		key.fabric = int(face.Fabric)
		l.places[p.First+n] = l.onStrip(key, &piece)
	}
}

// alikePieces is a patch as it lies along its strip, and which pieces are like it.
func (l *clothLaying) alikePieces(i int32) (inFrame, alikePieces) {
	p := &l.Patches[i]
	d := p.Shape.Description()
	f := frame(p.Outline, d.Grain[0], d.Grain[1])
	if d.Edging && f.right-f.left < f.lower-f.upper {
		f = frame(p.Outline, 1, 2)
	}
	of := alikePieces{int(l.Faces[p.First].Fabric), int(p.Set), l.lengthwise(int(i), p), nearly(f.lower - f.upper), nearly(f.right - f.left), nestingOf(p.Outline, &f)}
	if p.Set >= 0 {
		of.fabric = -1
	}
	return f, of
}

// nearly is a length to a hundredth of a millimeter, so that pieces which differ by roundings are alike.
func nearly(nm float64) measure.NM {
	const step = measure.Millimetre / 100
	return measure.NM(math.Round(nm/float64(step))) * step
}

// nesting is how pieces lie beside each other along a strip.
type nesting uint8

const (
	byThemselves nesting = iota // each in a rectangle of its own
	headsInTurn                 // head up and head down: those with two sides alike
	inSquares                   // two in a square, cut on its diagonal
)

// nestingOf is how an outline lies beside its like.
func nestingOf(outline []measure.Point, f *inFrame) nesting {
	const slack = float64(measure.Millimetre) / 100
	upper, lower := f.span(outline, f.upper), f.span(outline, f.lower)
	middle := (f.left + f.right) / 2
	level := math.Abs(upper[0]+upper[1]-2*middle) < slack && math.Abs(lower[0]+lower[1]-2*middle) < slack
	switch {
	case len(outline) == 3 && math.Abs(upper[0]-f.left) < slack && math.Abs(upper[1]-f.right) < slack && math.Abs(lower[1]-f.left) < slack:
		return inSquares
	case level && f.betweenTwo(outline) && math.Abs((upper[1]-upper[0])-(lower[1]-lower[0])) > slack:
		return headsInTurn
	}
	return byThemselves
}

// betweenTwo says whether all corners of an outline lie at the frame's upper or its lower end.
func (f *inFrame) betweenTwo(outline []measure.Point) bool {
	const slack = float64(measure.Millimetre) / 100
	return !slices.ContainsFunc(outline, func(p measure.Point) bool {
		_, y := f.at(p)
		return y > f.upper+slack && y < f.lower-slack
	})
}

// span is from where to where the corners of an outline lie at a height of the frame.
func (f *inFrame) span(outline []measure.Point, height float64) (span [2]float64) {
	span = [2]float64{math.Inf(1), math.Inf(-1)}
	for _, p := range outline {
		if x, y := f.at(p); math.Abs(y-height) < float64(measure.Millimetre)/100 {
			span[0], span[1] = min(span[0], x), max(span[1], x)
		}
	}
	return span
}

// frameLike is the extent of another outline in a frame.
func frameLike(f *inFrame, outline []measure.Point) inFrame {
	g := *f
	g.left, g.upper, g.right, g.lower = math.Inf(1), math.Inf(1), math.Inf(-1), math.Inf(-1)
	for _, p := range outline {
		x, y := g.at(p)
		g.left, g.right, g.upper, g.lower = min(g.left, x), max(g.right, x), min(g.upper, y), max(g.lower, y)
	}
	return g
}

// next is the place of the next piece along such strips, and whether it lies head down there: wedges of a strip set as they are named,
// reversed or not.
func (l *clothLaying) next(of alikePieces, p *Patch, nest nesting) (slot int, down bool) {
	count := l.slots[of]
	if count == nil {
		count = &[2]int{}
		l.slots[of] = count
	}
	if p.Set < 0 {
		count[0]++
		return count[0] - 1, nest != byThemselves && count[0]%2 == 0
	}
	side := 0
	if p.Reversed {
		side = 1
	}
	count[side]++
	return 2*(count[side]-1) + side, p.Reversed
}

// seamsBeside is by how many seam allowances a piece with slanted sides is cut wider than it finishes: 2/cos 22.5 degrees.
const seamsBeside = 2.1648

// onDiagonal is by how many seam allowances the square of two triangles is cut larger than their short sides: 2 and the root of 2.
const onDiagonal = 2 + math.Sqrt2

// lengthwise says whether a piece comes from strips of a print along the selvages.
func (l *clothLaying) lengthwise(patch int, p *Patch) bool {
	if _, said := l.PlaceSaid(patch); said || l.Fabrics[l.Faces[p.First].Fabric].Cloth == nil {
		return false
	}
	return l.AlongSelvage(patch) || p.Border >= 0 && p.Shape.Description().Edging && l.CutFacts.Borders[p.Border].Lengthwise
}

// stripPiece is a piece on a strip: its frame, that of the face, its number along the strips, and how it lies there.
type stripPiece struct {
	whole, face *inFrame
	slot        int
	down        bool
	nest        nesting
}

// along is where the middle of a piece lies along its strips: on which of them, and how far from its beginning.
func (l *clothLaying) along(p *stripPiece, length float64) (strip int, middle float64) {
	long, seam := p.whole.right-p.whole.left, float64(l.Seam)
	pitch, slot := long+2*seam, p.slot
	takes := pitch
	switch p.nest {
	case headsInTurn:
		pitch = p.whole.mean + seamsBeside*seam
	case inSquares:
		pitch, slot = long+onDiagonal*seam, slot/2
		takes = pitch
	}
	perStrip := 1
	if takes < length {
		perStrip += int((length - takes) / pitch)
	}
	middle = float64(slot%perStrip)*pitch + seam + long/2
	if p.nest == inSquares && p.down {
		middle += math.Sqrt2 * seam
	}
	return slot / perStrip, middle
}

// onStrip is the place of the cloth that a piece of a strip shows.
func (l *clothLaying) onStrip(key stripOfCloth, p *stripPiece) ClothPlace {
	if key.lengthwise {
		return l.onLength(key.alikePieces, p)
	}
	wide := p.face.lower - p.face.upper
	length := float64(l.CutFacts.Fabrics[key.fabric].UsableWidth)
	number, middle := l.along(p, length)
	key.number = number
	beside := float64(l.Seam) + wide/2
	if p.nest == inSquares {
		if wide += math.Sqrt2 * float64(l.Seam); p.down {
			beside += math.Sqrt2 * float64(l.Seam)
		}
	}
	begin := l.strip(key, wide+2*float64(l.Seam), math.Max(length, p.whole.right-p.whole.left+2*float64(l.Seam)))
	at := measure.Point{X: measure.NM(math.Round(middle)), Y: measure.NM(math.Round(beside))}
	return p.place(begin.Add(at), 0)
}

// place is the place of the cloth that a piece shows whose middle lies at a place of it, its strip pointing some way.
func (p *stripPiece) place(at measure.Point, pointing float64) ClothPlace {
	if p.down != (p.nest == headsInTurn && p.whole.head) {
		pointing += 180
	}
	return ClothPlace{Top: p.face.onTop((p.whole.left+p.whole.right)/2, (p.face.upper+p.face.lower)/2), Cloth: at, Turn: turned(p.whole.turn - pointing)}
}

// strip is where a strip begins on its fabric, by its width and its length as they are cut.
func (l *clothLaying) strip(key stripOfCloth, wide, long float64) measure.Point {
	begin, ok := l.strips[key]
	if !ok {
		width, down := l.CutFacts.Fabrics[key.fabric].UsableWidth, &l.down[key.fabric]
		across, along := measure.NM(math.Ceil(wide)), measure.NM(math.Ceil(long))
		begin = measure.Point{Y: *down}
		*down += across * ((along + width - 1) / width) // one that is longer than the fabric is wide is joined
		l.strips[key] = begin
	}
	return begin
}

// centroid is the center of gravity of an outline.
func centroid(outline []measure.Point) measure.Point {
	o := outline[0]
	var area, x, y float64
	for i := 1; i+1 < len(outline); i++ {
		a, b := outline[i], outline[i+1]
		ax, ay, bx, by := float64(a.X-o.X), float64(a.Y-o.Y), float64(b.X-o.X), float64(b.Y-o.Y)
		twice := float64(ax*by) - float64(bx*ay)
		area, x, y = area+twice, x+float64(twice*(ax+bx)), y+float64(twice*(ay+by))
	}
	return measure.Point{X: o.X + measure.NM(math.Round(x/(3*area))), Y: o.Y + measure.NM(math.Round(y/(3*area)))}
}

// cutOf notes where a patch, the next one, is cut from its cloth.
func (l *builder) cutOf(p *Patch, c *layout.Cut) {
	if c == nil {
		return
	}
	patch := len(l.Patches)
	for len(l.CutOf) <= patch {
		l.CutOf = append(l.CutOf, -1)
	}
	cut := l.cut(c)
	if c.Motif >= 0 {
		if m := &l.design.Motifs[c.Motif]; m.Mirror != nil && p.takesMirrored() {
			cut = cut.mirroredAt(m.Mirror, l.Fabrics[m.Fabric].Cloth, p.Shape.Description().Axis)
		}
	}
	for i := range l.Cuts {
		if l.Cuts[i] == cut {
			l.CutOf[patch] = int16(i)
			return
		}
	}
	l.CutOf[patch] = int16(len(l.Cuts))
	l.Cuts = append(l.Cuts, cut)
}

// cut is where on its cloth a piece is cut.
func (l *builder) cut(c *layout.Cut) Cut {
	if c.Motif >= 0 {
		m := &l.design.Motifs[c.Motif]
		return Cut{Motif: m.Name, Place: measure.Point{X: m.Across, Y: m.Down}, Pointing: m.Pointing}
	}
	return Cut{Crosswise: c.Crosswise, Alike: c.Alike, From: c.From}
}

// fillCuts gives every patch its entry.
func (l *builder) fillCuts() {
	for l.CutOf != nil && len(l.CutOf) < len(l.Patches) {
		l.CutOf = append(l.CutOf, -1)
	}
}
