package pixels

import (
	"cmp"
	"runtime"
	"slices"
	"sync"

	"eighthturn/internal/measure"
	"eighthturn/internal/quilt"
)

// subpixels is how finely, a pixel, the ends of a span are known across.
const subpixels = 256

// span is a stretch of one scan line that one face covers, in subpixels from the left; it
// holds from and leaves out to.
type span struct {
	face     int32
	from, to int32
}

// scanner finds the spans of a top's faces on lines across it. Two faces compute their
// common edge from the same two corners in the same order, so that on every line the end
// of one span is the start of the next.
type scanner struct {
	top    *quilt.Top
	size   Size
	lines  int     // scan lines in all; each runs through the middle of its share of the height
	across float64 // subpixels a nanometre
	order  []reach // by first line
}

// reach is the lines that a face may lie on.
type reach struct {
	face        int32
	first, last int32
}

// newScanner prepares scanning with so many lines a row of pixels.
func newScanner(t *quilt.Top, s Size, linesARow int) *scanner {
	sc := &scanner{top: t, size: s, lines: s.Height * linesARow}
	sc.across = float64(s.Width) * subpixels / float64(t.Outer.Width())
	sc.order = make([]reach, len(t.Faces))
	down := float64(sc.lines) / float64(t.Outer.Height())
	for i := range t.Faces {
		low, high := t.Faces[i].Outline[0].Y, t.Faces[i].Outline[0].Y
		for _, p := range t.Faces[i].Outline {
			low, high = min(low, p.Y), max(high, p.Y)
		}
		first := int32(float64(low-t.Outer.Min.Y)*down) - 1
		last := int32(float64(high-t.Outer.Min.Y)*down) + 1
		sc.order[i] = reach{int32(i), max(first, 0), min(last, int32(sc.lines)-1)}
	}
	slices.SortFunc(sc.order, func(a, b reach) int {
		if a.first != b.first {
			return cmp.Compare(a.first, b.first)
		}
		return cmp.Compare(a.face, b.face)
	})
	return sc
}

// height is how far below the upper edge a line runs, in nanometres.
func (sc *scanner) height(line int) float64 {
	return float64(sc.top.Outer.Min.Y) + (float64(line)+0.5)*float64(sc.top.Outer.Height())/float64(sc.lines)
}

// rows has every row of pixels done with the spans of its lines, several rows at a time,
// each worker with a function of its own; what is done for a row must not touch another
// row. The list of spans is only lent.
func (sc *scanner) rows(linesARow int, worker func() func(row int, spans [][]span)) {
	workers := min(runtime.GOMAXPROCS(0), max(1, sc.size.Height/64))
	var wait sync.WaitGroup
	for n := range workers {
		wait.Go(func() {
			sc.someRows(linesARow, sc.size.Height*n/workers, sc.size.Height*(n+1)/workers, worker())
		})
	}
	wait.Wait()
}

func (sc *scanner) someRows(linesARow, from, to int, do func(row int, spans [][]span)) {
	var active []reach
	next := 0
	spans := make([][]span, linesARow)
	var crossings []float64
	for row := from; row < to; row++ {
		last := int32((row+1)*linesARow - 1)
		for next < len(sc.order) && sc.order[next].first <= last {
			active = append(active, sc.order[next])
			next++
		}
		active = slices.DeleteFunc(active, func(r reach) bool { return r.last < int32(row*linesARow) })
		for n := range spans {
			spans[n], crossings = sc.line(spans[n][:0], crossings, active, row*linesARow+n)
		}
		do(row, spans)
	}
}

// line appends the spans of one line.
func (sc *scanner) line(spans []span, crossings []float64, active []reach, line int) ([]span, []float64) {
	y := sc.height(line)
	for _, r := range active {
		if int(r.first) > line || int(r.last) < line {
			continue
		}
		crossings = appendCrossings(crossings[:0], sc.top.Faces[r.face].Outline, y)
		for i := 0; i+1 < len(crossings); i += 2 {
			s := span{r.face, sc.subpixel(crossings[i]), sc.subpixel(crossings[i+1])}
			if s.from < s.to {
				spans = append(spans, s)
			}
		}
	}
	return spans, crossings
}

func (sc *scanner) subpixel(x float64) int32 {
	s := int32((x-float64(sc.top.Outer.Min.X))*sc.across + 0.5)
	return min(max(s, 0), int32(sc.size.Width*subpixels))
}

// appendCrossings appends where an outline crosses the height y, from left to right. An
// edge holds its upper end and leaves out its lower one.
func appendCrossings(list []float64, outline []measure.Point, y float64) []float64 {
	p := outline[len(outline)-1]
	for _, q := range outline {
		upper, lower := p, q
		if upper.Y > lower.Y {
			upper, lower = q, p
		}
		if float64(upper.Y) <= y && y < float64(lower.Y) {
			part := (y - float64(upper.Y)) / float64(lower.Y-upper.Y)
			list = append(list, float64(upper.X)+float64(float64(lower.X-upper.X)*part))
		}
		p = q
	}
	if len(list) == 2 { // as with every convex outline
		if list[0] > list[1] {
			list[0], list[1] = list[1], list[0]
		}
		return list
	}
	slices.Sort(list)
	return list
}
