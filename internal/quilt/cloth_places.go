package quilt

import (
	"math"

	"eighthturn/internal/blocks"
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
	l := &clothLaying{Top: t, places: make([]ClothPlace, len(t.Faces)), strips: map[stripOfCloth]*clothStrip{}, used: make([]measure.NM, len(t.Fabrics))}
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
	places []ClothPlace
	strips map[stripOfCloth]*clothStrip
	used   []measure.NM // by fabric: how much of its length is cut
}

// stripOfCloth is the strips that like pieces come from.
type stripOfCloth struct {
	fabric, set, band int
	lengthwise        bool
	across, along     measure.NM
}

// clothStrip is a strip that is being cut.
type clothStrip struct {
	count [2]int       // pieces cut from such strips head up, and head down where that is said
	rows  []measure.NM // where on the cloth each strip begins
}

// inFrame is an outline in a frame of its own, turned so that two of its corners lie side by side.
type inFrame struct {
	turn         float64 // by which the frame is turned on the top
	left, upper  float64
	right, lower float64
	cos, sin     float64
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
	f.left, f.upper, f.right, f.lower = math.Inf(1), math.Inf(1), math.Inf(-1), math.Inf(-1)
	for _, p := range outline {
		x, y := f.at(p)
		f.left, f.right, f.upper, f.lower = min(f.left, x), max(f.right, x), min(f.upper, y), max(f.lower, y)
	}
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
	outline := make([]blocks.Place, len(p.Outline))
	for i, q := range p.Outline {
		outline[i] = blocks.Place(q)
	}
	from, to := p.Shape.Description().Lies(outline)
	return frame(p.Outline, from, to)
}

func turned(degrees float64) float64 { return math.Mod(math.Mod(degrees, 360)+360, 360) }

// alongStrips lays a piece where it comes along its strip.
func (l *clothLaying) alongStrips(i int32) {
	p := &l.Patches[i]
	d := p.Shape.Description()
	f := frame(p.Outline, d.Grain[0], d.Grain[1])
	if d.Edging && f.right-f.left < f.lower-f.upper {
		f = frame(p.Outline, 1, 2)
	}
	lengthwise := l.lengthwise(int(i), p)
	slot, down := 0, false
	for n := range p.Count {
		face := &l.Faces[p.First+n]
		band := f
		if p.Set >= 0 {
			band = frameLike(&f, face.Outline)
		}
		key := stripOfCloth{int(face.Fabric), int(p.Set), int(n), lengthwise, measure.NM(math.Round(band.lower - band.upper)), measure.NM(math.Round(f.right - f.left))}
		s := l.strips[key]
		if s == nil {
			s = &clothStrip{}
			l.strips[key] = s
		}
		if n == 0 {
			slot, down = s.next(p, d)
		}
		l.places[p.First+n] = l.onStrip(s, key, stripPiece{&f, &band, slot, l.pitch(p, &f), down})
	}
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

// next is the place of the next piece along such strips, and whether it lies head down there: wedges of a strip set as they are
// named, reversed or not.
func (s *clothStrip) next(p *Patch, d *blocks.Description) (slot int, down bool) {
	if p.Set < 0 {
		s.count[0]++
		slot = s.count[0] - 1
		return slot, alternates(d) && slot%2 == 1
	}
	side := 0
	if p.Reversed {
		side = 1
	}
	s.count[side]++
	return 2*(s.count[side]-1) + side, p.Reversed
}

// alternates says whether pieces of a shape lie head up and head down in turn along a strip: those that are no rectangles, and
// whose squares are not cut from a strip first.
func alternates(d *blocks.Description) bool {
	for _, angle := range d.Angles[0] {
		if angle != 90 && d.Point <= 0 {
			return true
		}
	}
	return false
}

// seamsBeside is by how many seam allowances a piece with slanted sides is cut wider than it finishes: 2/cos 22.5 degrees.
const seamsBeside = 2.1648

// pitch is from one piece along a strip to the next: its mean width as it is cut.
func (l *clothLaying) pitch(p *Patch, f *inFrame) float64 {
	const mm = float64(measure.Millimetre)
	width := f.right - f.left
	if height := f.lower - f.upper; alternates(p.Shape.Description()) && height > 0 {
		width = Area(p.Outline) * mm * mm / height
	}
	return width + seamsBeside*float64(l.Seam)
}

// lengthwise says whether a piece comes from strips along the selvages.
func (l *clothLaying) lengthwise(patch int, p *Patch) bool {
	if c := l.CutOfPatch(patch); c != nil {
		return !c.Crosswise
	}
	return p.Border >= 0 && int(p.Border) < len(l.CutFacts.Borders) && l.CutFacts.Borders[p.Border].Lengthwise
}

// stripPiece is a piece on a strip: its frame, that of the face, its number along the strips, from one to the next, head down.
type stripPiece struct {
	whole, face *inFrame
	slot        int
	pitch       float64
	down        bool
}

// onStrip is the place of the cloth that a piece of a strip shows.
func (l *clothLaying) onStrip(s *clothStrip, key stripOfCloth, p stripPiece) ClothPlace {
	long, wide := p.whole.right-p.whole.left, p.face.lower-p.face.upper
	length := float64(l.CutFacts.Fabrics[key.fabric].UsableWidth)
	perStrip := max(1, int((length-long)/p.pitch)+1)
	row := p.slot / perStrip
	for len(s.rows) <= row {
		s.rows = append(s.rows, l.used[key.fabric])
		joined := math.Max(1, math.Ceil(long/math.Max(length, 1)))
		l.used[key.fabric] += measure.NM(math.Round((wide + 2*float64(l.Seam)) * joined))
	}
	along := measure.NM(math.Round(float64(p.slot%perStrip)*p.pitch + long/2 + float64(l.Seam)))
	across := s.rows[row] + measure.NM(math.Round(wide/2)) + l.Seam
	place := ClothPlace{Top: p.face.onTop((p.whole.left+p.whole.right)/2, (p.face.upper+p.face.lower)/2), Cloth: measure.Point{X: along, Y: across}}
	pointing := 0.0
	if key.lengthwise { // the strip's right end is the lower one
		place.Cloth, pointing = measure.Point{X: across, Y: along}, 90
	}
	if p.down {
		pointing += 180
	}
	place.Turn = turned(p.whole.turn - pointing)
	return place
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

// cutOf notes where a patch is cut from its cloth.
func (l *builder) cutOf(patch int, c *layout.Cut) {
	if c == nil {
		return
	}
	for len(l.CutOf) <= patch {
		l.CutOf = append(l.CutOf, -1)
	}
	cut := Cut{Crosswise: c.Crosswise, Alike: c.Alike, From: c.From}
	if c.Motif >= 0 {
		m := &l.design.Motifs[c.Motif]
		cut = Cut{Motif: m.Name, Place: measure.Point{X: m.Across, Y: m.Down}, Pointing: m.Pointing}
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

// fillCuts gives every patch its entry.
func (l *builder) fillCuts() {
	for l.CutOf != nil && len(l.CutOf) < len(l.Patches) {
		l.CutOf = append(l.CutOf, -1)
	}
}
