// Package repeats fits pieces into cloth whose print repeats: each piece at its place of the print, none over another.
//
// Pieces that are to look alike are cut from like places, so that each is a fixed place of the print moved by whole repeats, and
// is never turned. The rule is that of a rotary cutter and a ruler: strips are cut right across the cloth, or along it, each as
// wide as its pieces reach; strips do not overlap, and what lies between the pieces of a strip is lost. Cutting round a template
// in the middle of the cloth would lose less, but leaves cloth with holes, no straight edge to cut the next piece from, and
// nothing that could be used for other strips.
//
// Lengths are whole nanometers. On cloth x runs across, from the left selvage, and y along it; the right side lies up. The print
// begins in the upper left corner.
package repeats

import (
	"cmp"
	"math"
	"slices"

	"eighthturn/internal/measure"
)

// Print is how a print repeats, as plain translations. A measure that is 0 says that any place will do that way: a stripe is the
// same all along itself.
type Print struct{ Across, Along measure.NM }

// Cloth is what is cut.
type Cloth struct {
	Print
	UsableWidth measure.NM // between the selvages
	Lengthwise  bool       // strips are cut along the selvages
	Mark        measure.NM // of the ruler, up to which strips are cut wider than their pieces reach; 0 for none
}

// Piece is pieces that are all cut alike.
type Piece struct {
	Outline []measure.Point // cut, where it lies on the print; convex, clockwise on screen, the first corner not repeated
	Wanted  int
}

// Fitting is where all pieces are cut.
type Fitting struct {
	Strips    []Strip
	LengthCut measure.NM // of cloth, from the beginning of the first strip to the end of the last
	Times     int        // the whole is cut so many times over, each time on whole repeats
	TooLarge  []int      // pieces, by index, that the cloth is not wide enough for; nothing of them is fitted
	Steps     int        // taken
	Ended     bool       // the steps were used up before all was tried: there may be a fitting that takes less
}

// Strip is a strip of cloth with its pieces from one end to the other.
type Strip struct {
	Min, Max measure.Point
	Pieces   []Placed
}

// Placed is a piece, by index, and how far from its place on the print it lies.
type Placed struct {
	Piece int
	By    measure.Point
}

// Outline is the outline of a piece where it lies on the cloth.
func (p *Placed) Outline(pieces []Piece) []measure.Point { return moved(pieces[p.Piece].Outline, p.By) }

func moved(outline []measure.Point, by measure.Point) []measure.Point {
	list := make([]measure.Point, len(outline))
	for i, p := range outline {
		list[i] = p.Add(by)
	}
	return list
}

// TotalCut is the cloth for all times.
func (f *Fitting) TotalCut(along measure.NM) measure.NM {
	if f.Times <= 1 {
		return f.LengthCut
	}
	return measure.NM(f.Times-1)*measure.NM(Whole(f.LengthCut, along))*max(along, 1) + f.LengthCut
}

// Whole is how many whole repeats hold a length; of cloth that does not repeat, the length itself.
func Whole(length, along measure.NM) int {
	return int(up(length, max(along, 1)))
}

// ToBuy is the length that holds another wherever the cloth was cut off the bolt: whole repeats, and one to begin with. It is the
// rule of those who sew curtains: cut lengths are rounded up to whole repeats, and one is added for where the bolt begins.
func ToBuy(length, along measure.NM) measure.NM {
	if along == 0 || length == 0 {
		return length
	}
	return measure.NM(Whole(length, along)+1) * along
}

// Fit fits pieces into cloth, in no more than so many steps.
func Fit(cloth Cloth, pieces []Piece, steps int) *Fitting {
	f := &fitting{cloth: cloth, pieces: pieces, left: steps, Fitting: &Fitting{Times: 1}}
	if cloth.Lengthwise {
		f.lanes()
		return f.Fitting
	}
	f.prepare()
	f.scale()
	f.fit()
	f.Steps, f.Ended = steps-f.left, f.left < 0
	return f.Fitting
}

// fit finds strips for all sorts: together, and where there are many also in parts one behind the other, of which a search in so many
// steps sees more. What takes less cloth is kept.
func (f *fitting) fit() {
	if len(f.sorts) <= mostTogether {
		f.rows()
		f.lay(f.search())
		return
	}
	whole := f.part(f.sorts, f.left/2)
	f.Strips, f.LengthCut, f.Ended = whole.Strips, whole.LengthCut, whole.left < 0
	f.left -= f.left/2 - whole.left
	if !f.Ended { // no way takes less
		return
	}
	order := slices.Clone(f.sorts)
	slices.SortStableFunc(order, func(a, b sort) int { return cmp.Compare(a.phase, b.phase) })
	behind := &Fitting{}
	for from := 0; from < len(order); from += mostTogether {
		steps := f.left * min(mostTogether, len(order)-from) / (len(order) - from)
		part := f.part(order[from:min(from+mostTogether, len(order))], max(0, steps))
		f.left -= steps - part.left
		behind.add(part.Fitting, f.cloth.Along)
	}
	if behind.LengthCut < f.LengthCut {
		f.Strips, f.LengthCut = behind.Strips, behind.LengthCut
	}
	f.left = min(f.left, -1)
}

// mostTogether is up to how many sorts of pieces are fitted together alone.
const mostTogether = 6

// part fits some of the sorts.
func (f *fitting) part(sorts []sort, steps int) *fitting {
	g := &fitting{Fitting: &Fitting{Times: 1}, cloth: f.cloth, pieces: f.pieces, sorts: sorts, left: steps}
	g.rows()
	g.lay(g.search())
	return g
}

// add puts another fitting behind one, as near as its places of the print allow.
func (f *Fitting) add(g *Fitting, along measure.NM) {
	begin := measure.NM(0)
	if len(f.Strips) > 0 {
		begin = f.Strips[0].Min.Y
		from := g.Strips[0].Min.Y
		by := after(mod(from, along), begin+f.LengthCut, along) - from
		for i := range g.Strips {
			g.Strips[i].move(by)
		}
	} else {
		begin = g.Strips[0].Min.Y
	}
	f.LengthCut = g.Strips[0].Min.Y + g.LengthCut - begin
	f.Strips = append(f.Strips, g.Strips...)
}

// move moves a strip along the cloth with its pieces.
func (s *Strip) move(by measure.NM) {
	s.Min.Y, s.Max.Y = s.Min.Y+by, s.Max.Y+by
	for i := range s.Pieces {
		s.Pieces[i].By.Y += by
	}
}

// fitting is the work on one.
type fitting struct {
	*Fitting
	cloth    Cloth
	pieces   []Piece
	sorts    []sort
	patterns []pattern
	left     int // steps
}

// sort is a piece as it is fitted.
type sort struct {
	piece  int
	low    measure.Point // of its bounds on the print
	high   measure.Point
	phase  measure.NM // of its upper bound within the repeat
	step   measure.NM // along a strip, from one to the next
	pitch  measure.NM // along the cloth, from one strip of it to the next
	most   int        // in a strip of its own
	wanted int
}

// height is how far it reaches along the cloth.
func (s *sort) height() measure.NM { return s.high.Y - s.low.Y }

// marked is how wide a strip is cut for what reaches so far.
func (f *fitting) marked(width measure.NM) measure.NM { return upTo(width, f.cloth.Mark) }

// prepare looks at the pieces; those that no strip holds are too large.
func (f *fitting) prepare() {
	for i := range f.pieces {
		p := &f.pieces[i]
		if p.Wanted == 0 {
			continue
		}
		s := sort{piece: i, wanted: p.Wanted}
		s.low, s.high = bounds(p.Outline)
		s.step = upTo(widest(p.Outline), f.cloth.Across)
		s.pitch = upTo(f.marked(s.height()), f.cloth.Along)
		s.phase = mod(s.low.Y, f.cloth.Along)
		s.most = len(f.places(&s))
		if s.most == 0 {
			f.TooLarge = append(f.TooLarge, i)
			continue
		}
		f.sorts = append(f.sorts, s)
	}
}

// places are how far to the right of its place on the print a piece may lie so that as many as can be lie side by side.
func (f *fitting) places(s *sort) []measure.NM {
	var list []measure.NM
	for x := mod(s.low.X, f.cloth.Across); x+s.high.X-s.low.X <= f.cloth.UsableWidth; x += s.step {
		list = append(list, x-s.low.X)
	}
	return list
}

// mostStrips is above how many strips a fitting is made once and cut several times over.
const mostStrips = 400

// scale leaves pieces for several times where there are too many to be laid out.
func (f *fitting) scale() {
	strips := 0
	for i := range f.sorts {
		strips += int(up(measure.NM(f.sorts[i].wanted), measure.NM(f.sorts[i].most)))
	}
	f.Times = max(1, int(up(measure.NM(strips), mostStrips)))
	for i := range f.sorts {
		f.sorts[i].wanted = int(up(measure.NM(f.sorts[i].wanted), measure.NM(f.Times)))
	}
}

// lane is how a piece is cut from strips along the cloth.
type lane struct {
	piece       int
	low, high   measure.Point
	first       measure.NM // where the first strip begins
	step, pitch measure.NM // along a strip, and from strip to strip
	lanes       int        // strips side by side
	wanted      int
}

// each is how many pieces of it the longest strip has.
func (l *lane) each() int { return int(up(measure.NM(l.wanted), measure.NM(l.lanes))) }

// lanes fits pieces into strips along the cloth, one piece after the other: each has a length of cloth of its own.
func (f *fitting) lanes() {
	var list []lane
	for i := range f.pieces {
		p := &f.pieces[i]
		if p.Wanted == 0 {
			continue
		}
		l := lane{piece: i, wanted: p.Wanted}
		l.low, l.high = bounds(p.Outline)
		wide := f.marked(l.high.X - l.low.X)
		l.step, l.pitch, l.first = upTo(highest(p.Outline), f.cloth.Along), upTo(wide, f.cloth.Across), mod(l.low.X, f.cloth.Across)
		if l.first+wide > f.cloth.UsableWidth {
			f.TooLarge = append(f.TooLarge, i)
			continue
		}
		l.lanes = 1 + int((f.cloth.UsableWidth-l.first-wide)/l.pitch)
		f.Times = max(f.Times, int(up(measure.NM(l.each()), mostStrips/4)))
		list = append(list, l)
	}
	for i := range list {
		list[i].wanted = int(up(measure.NM(list[i].wanted), measure.NM(f.Times)))
		f.along(&list[i])
	}
}

// along adds the strips of a piece behind those that there are.
func (f *fitting) along(l *lane) {
	each, at := l.each(), mod(l.low.Y, f.cloth.Along)
	begin := at
	if len(f.Strips) > 0 {
		begin = f.Strips[0].Min.Y
		at = after(at, begin+f.LengthCut, f.cloth.Along)
	}
	end := at + l.high.Y - l.low.Y + measure.NM(each-1)*l.step
	f.LengthCut = end - begin
	for n, cut := 0, 0; cut < l.wanted; n++ {
		x := l.first + measure.NM(n)*l.pitch
		s := Strip{Min: measure.Point{X: x, Y: at}, Max: measure.Point{X: x + f.marked(l.high.X-l.low.X), Y: end}}
		for k := 0; k < each && cut < l.wanted; k++ {
			s.Pieces = append(s.Pieces, Placed{l.piece, measure.Point{X: x - l.low.X, Y: at + measure.NM(k)*l.step - l.low.Y}})
			cut++
		}
		f.Strips = append(f.Strips, s)
	}
}

// up is a quotient rounded up.
func up(n, by measure.NM) measure.NM { return (n + by - 1) / by }

// upTo is a length rounded up to whole repeats; where nothing repeats, the length itself.
func upTo(length, repeat measure.NM) measure.NM {
	if repeat == 0 {
		return length
	}
	return up(length, repeat) * repeat
}

// mod is a place within its repeat; where nothing repeats, the beginning.
func mod(at, repeat measure.NM) measure.NM {
	if repeat == 0 {
		return 0
	}
	return ((at % repeat) + repeat) % repeat
}

// bounds are the least and the greatest of an outline.
func bounds(outline []measure.Point) (low, high measure.Point) {
	low, high = outline[0], outline[0]
	for _, p := range outline {
		low = measure.Point{X: min(low.X, p.X), Y: min(low.Y, p.Y)}
		high = measure.Point{X: max(high.X, p.X), Y: max(high.Y, p.Y)}
	}
	return low, high
}

// widest is how far apart two like pieces side by side must lie so as not to overlap: the widest place of a convex outline, which
// is at one of its corners.
func widest(outline []measure.Point) measure.NM {
	most := 0.0
	for _, at := range outline {
		left, right := math.Inf(1), math.Inf(-1)
		p := outline[len(outline)-1]
		for _, q := range outline {
			if low, high := min(p.Y, q.Y), max(p.Y, q.Y); low <= at.Y && at.Y <= high {
				for _, x := range crossed(p, q, at.Y) {
					left, right = min(left, x), max(right, x)
				}
			}
			p = q
		}
		most = max(most, right-left)
	}
	return measure.NM(math.Ceil(most - 0.5))
}

// crossed is where a side crosses a level that it reaches, both ends where it lies in it.
func crossed(p, q measure.Point, y measure.NM) []float64 {
	if p.Y == q.Y {
		return []float64{float64(p.X), float64(q.X)}
	}
	part := float64(y-p.Y) / float64(q.Y-p.Y)
	return []float64{float64(p.X) + float64(part*float64(q.X-p.X))}
}

// highest is widest the other way.
func highest(outline []measure.Point) measure.NM {
	turned := make([]measure.Point, len(outline))
	for i, p := range outline {
		turned[i] = measure.Point{X: p.Y, Y: p.X}
	}
	return widest(turned)
}
