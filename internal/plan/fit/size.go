package fit

import (
	"math"

	"eighthturn/internal/measure"
	"eighthturn/layout"
)

// sizeEdits are the layout with another strip or side, and all that is scaled with it.
func (f *fitting) sizeEdits(size measure.NM) edits {
	if size == f.ownSize() {
		return nil
	}
	z := resize{fitting: f, size: size, ratio: float64(f.side(size)) / float64(f.design.SideFinished)}
	var e edits
	if n := f.tree.Strip; n != nil {
		e = append(e, edit{n.Span, f.written(size)})
	} else if n := f.tree.Side; n != nil {
		e = append(e, edit{n.Span, f.written(f.side(size))})
	}
	for _, s := range f.tree.StripSets {
		e = append(e, z.set(s)...)
	}
	for _, b := range f.tree.Blocks {
		if b.Line != nil {
			e = append(e, edit{b.Line.Span, f.written(z.line(b.Line))})
		}
		if b.About != nil {
			e = append(e, edit{b.About.Span, f.written(z.scaled(b.About.In(f.design.Units).NM(), f.mark()))})
		}
	}
	return e
}

// resize scales what belongs to blocks.
type resize struct {
	*fitting
	size  measure.NM
	ratio float64 // of finished lengths
}

// mark is what borders and pieces are rounded to.
func (f *fitting) mark() measure.NM { return f.usual(0, measure.Inch/4, measure.Centimetre/2) }

// scaled is a finished length times the ratio, on a mark and never nothing.
func (z *resize) scaled(nm, mark measure.NM) measure.NM {
	return max(mark, measure.Nearest(measure.NM(math.Round(float64(nm)*z.ratio)), mark))
}

// line is the line of a wedge rule that gives pieces of the same shape: what it stands beyond the strip is scaled.
func (z *resize) line(n *layout.LengthNode) measure.NM {
	seams := 2 * z.design.Seam
	beyond := n.In(z.design.Units).NM() - z.design.SideFinished - seams
	return measure.Nearest(z.side(z.size)+seams+measure.NM(math.Round(float64(beyond)*z.ratio)), z.mark())
}

// set is a strip set with its widths scaled, to an eighth of an inch or a millimetre; the widest takes what is left, or the
// one that is the rest.
func (z *resize) set(n *layout.StripSetNode) edits {
	seams, mark := 2*z.design.Seam, z.design.Units.CutMark()
	widest, rest := -1, false
	widths := make([]measure.NM, len(n.Bands))
	left := z.size + measure.NM(len(n.Bands)-1)*seams
	for i, b := range n.Bands {
		if b.Cut == nil {
			rest = true
			continue
		}
		own := b.Cut.In(z.design.Units).NM()
		widths[i] = max(measure.RoundUp(seams+mark, mark), measure.Nearest(measure.NM(math.Round(float64(own-seams)*z.ratio))+seams, mark))
		if left -= widths[i]; widest < 0 || own > n.Bands[widest].Cut.In(z.design.Units).NM() {
			widest = i
		}
	}
	if !rest {
		widths[widest] += left
	}
	var e edits
	for i, b := range n.Bands {
		if b.Cut != nil && widths[i] > 0 {
			e = append(e, edit{b.Cut.Span, z.written(widths[i])})
		}
	}
	return e
}

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
