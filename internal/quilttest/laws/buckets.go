package laws

import (
	"math"

	"eighthturn/internal/measure"
	"eighthturn/internal/quilt"
)

// boxOf is the smallest rectangle round an outline, grown by so much on every side.
func boxOf(o Outline, by measure.NM) quilt.Rect {
	r := quilt.Rect{Min: o[0], Max: o[0]}
	for _, p := range o[1:] {
		r.Min.X, r.Min.Y = min(r.Min.X, p.X), min(r.Min.Y, p.Y)
		r.Max.X, r.Max.Y = max(r.Max.X, p.X), max(r.Max.Y, p.Y)
	}
	return quilt.Rect{
		Min: measure.Point{X: r.Min.X - by, Y: r.Min.Y - by},
		Max: measure.Point{X: r.Max.X + by, Y: r.Max.Y + by},
	}
}

// buckets sorts rectangles into the squares of a net, so that neighbours are found without
// comparing all with all.
type buckets struct {
	boxes         []quilt.Rect
	whole         quilt.Rect
	across, down  int
	width, height measure.NM // of a square
	held          [][]int32
}

// newBuckets makes about as many squares as there are boxes.
func newBuckets(boxes []quilt.Rect) *buckets {
	b := &buckets{boxes: boxes, whole: boxes[0]}
	for _, r := range boxes {
		b.whole.Min.X, b.whole.Min.Y = min(b.whole.Min.X, r.Min.X), min(b.whole.Min.Y, r.Min.Y)
		b.whole.Max.X, b.whole.Max.Y = max(b.whole.Max.X, r.Max.X), max(b.whole.Max.Y, r.Max.Y)
	}
	size := math.Sqrt(float64(b.whole.Width()) * float64(b.whole.Height()) / float64(len(boxes)))
	b.across = min(int(float64(b.whole.Width())/max(size, 1)), len(boxes)) + 1
	b.down = min(int(float64(b.whole.Height())/max(size, 1)), len(boxes)) + 1
	b.width, b.height = b.whole.Width()/measure.NM(b.across)+1, b.whole.Height()/measure.NM(b.down)+1
	b.held = make([][]int32, b.across*b.down)
	for i, r := range boxes {
		x0, y0 := b.square(r.Min)
		x1, y1 := b.square(r.Max)
		for y := y0; y <= y1; y++ {
			for x := x0; x <= x1; x++ {
				b.held[y*b.across+x] = append(b.held[y*b.across+x], int32(i))
			}
		}
	}
	return b
}

// square is the column and row of the square that holds p.
func (b *buckets) square(p measure.Point) (x, y int) {
	x = int((p.X - b.whole.Min.X) / b.width)
	y = int((p.Y - b.whole.Min.Y) / b.height)
	return min(max(x, 0), b.across-1), min(max(y, 0), b.down-1)
}

// pairs calls each, once a pair, with the boxes that touch or overlap, until it returns an
// error.
func (b *buckets) pairs(each func(i, j int) error) error {
	for n, list := range b.held {
		for k, i := range list {
			for _, j := range list[k+1:] {
				if !b.meetIn(n, int(i), int(j)) {
					continue
				}
				if err := each(int(i), int(j)); err != nil {
					return err
				}
			}
		}
	}
	return nil
}

// meetIn says whether two boxes meet and the upper left corner of what they have in common
// lies in square n.
func (b *buckets) meetIn(n, i, j int) bool {
	r, s := &b.boxes[i], &b.boxes[j]
	from := measure.Point{X: max(r.Min.X, s.Min.X), Y: max(r.Min.Y, s.Min.Y)}
	if from.X > min(r.Max.X, s.Max.X) || from.Y > min(r.Max.Y, s.Max.Y) {
		return false
	}
	x, y := b.square(from)
	return y*b.across+x == n
}

// around is the boxes that hold p or touch it.
func (b *buckets) around(p measure.Point) []int32 {
	var list []int32
	x, y := b.square(p)
	for _, i := range b.held[y*b.across+x] {
		r := &b.boxes[i]
		if p.X >= r.Min.X && p.X <= r.Max.X && p.Y >= r.Min.Y && p.Y <= r.Max.Y {
			list = append(list, i)
		}
	}
	return list
}
