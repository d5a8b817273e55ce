package fit

import (
	"math"

	"eighthturn/internal/measure"
)

// sizeEdits are the layout with another strip or side, and all that is scaled with it.
func (f *fitting) sizeEdits(size measure.NM) edits {
	if size == f.ownSize() {
		return nil
	}
	var e edits
	if n := f.tree.Strip; n != nil {
		e = append(e, edit{n.Span, f.written(size)})
	} else if n := f.tree.Side; n != nil {
		e = append(e, edit{n.Span, f.written(f.side(size))})
	}
	for _, r := range f.tree.Rescale(f.design, size) {
		e = append(e, edit{r.Span, f.written(r.To) + r.Frame()})
	}
	return e.with(f.withoutOnHand())
}

// mark is what borders are rounded to.
func (f *fitting) mark() measure.NM { return f.design.ScaleMark() }

// scaledBorders are the borders in proportion, so wide together, each on a mark and two marks at the least; the widest, of
// several the outermost, takes what is left over. Nil where they cannot be so narrow.
func (f *fitting) scaledBorders(total measure.NM) []measure.NM {
	own := f.bordersNow()
	whole, widest, left := sum(own), 0, total
	if whole == 0 {
		return nil
	}
	widths := make([]measure.NM, len(own))
	for i, nm := range own {
		share := measure.NM(math.Round(float64(nm) / float64(whole) * float64(total)))
		widths[i] = max(2*f.mark(), measure.Nearest(share, f.mark()))
		if left -= widths[i]; nm >= own[widest] {
			widest = i
		}
	}
	if widths[widest] += left; widths[widest] < 2*f.mark() {
		return nil
	}
	return widths
}
