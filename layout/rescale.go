package layout

import (
	"math"

	"eighthturn/internal/blocks"
	"eighthturn/internal/measure"
)

// Rescale is a layout whose blocks have another size: what is scaled with them, to the nanometre.
type Rescale struct {
	tree   *Tree
	design *Design
	size   measure.NM
	ratio  float64 // of finished lengths
}

// Rescaled is a length of the layout that becomes another.
type Rescaled struct {
	Span Span
	To   measure.NM
	node *LengthNode
}

// height is that of the wedges, where the layout gives the strip.
func (d *Design) height() blocks.WedgeHeight {
	var height blocks.WedgeHeight
	for h, cut := range d.StripsCut {
		if cut != 0 && d.StripGiven {
			height = blocks.WedgeHeight(h)
		}
	}
	return height
}

// OwnSize is the strip or the side that the layout gives.
func (d *Design) OwnSize() measure.NM {
	if d.StripGiven {
		return d.StripsCut[d.height()]
	}
	return d.SideFinished
}

// SideOf is the finished side of a block for another strip, or another side where the layout gives that.
func (d *Design) SideOf(size measure.NM) measure.NM {
	switch {
	case size == d.OwnSize():
		return d.SideFinished
	case d.StripGiven:
		return d.height().Side(measure.Of(size - 2*d.Seam))
	}
	return size / 2 * 2
}

// ScaleMark is what borders and pieces are rounded to where they are scaled.
func (d *Design) ScaleMark() measure.NM {
	if d.Units == measure.Centimetres {
		return measure.Centimetre / 2
	}
	return measure.Inch / 4
}

// Rescale is what another strip, or another side where the layout gives that, makes of the lengths of the layout but for
// itself: the widths of strip sets, the lines of a wedge ruler and the lengths of pieces. D is the layout's own design.
func (t *Tree) Rescale(d *Design, size measure.NM) []Rescaled {
	if size == d.OwnSize() {
		return nil
	}
	z := Rescale{tree: t, design: d, size: size, ratio: float64(d.SideOf(size)) / float64(d.SideFinished)}
	var list []Rescaled
	for _, s := range t.StripSets {
		list = append(list, z.set(s)...)
	}
	for _, b := range t.Blocks {
		if b.Line != nil {
			list = append(list, Rescaled{b.Line.Span, z.line(b.Line), b.Line})
		}
		if b.About != nil {
			list = append(list, Rescaled{b.About.Span, z.scaled(b.About.In(d.Units).NM()), b.About})
		}
	}
	return list
}

// scaled is a finished length times the ratio, on a mark and never nothing.
func (z *Rescale) scaled(nm measure.NM) measure.NM {
	mark := z.design.ScaleMark()
	return max(mark, measure.Nearest(measure.NM(math.Round(float64(nm)*z.ratio)), mark))
}

// line is the line of a wedge ruler that gives pieces of the same shape: what it stands beyond the strip is scaled.
func (z *Rescale) line(n *LengthNode) measure.NM {
	seams := 2 * z.design.Seam
	beyond := n.In(z.design.Units).NM() - z.design.SideFinished - seams
	return measure.Nearest(z.design.SideOf(z.size)+seams+measure.NM(math.Round(float64(beyond)*z.ratio)), z.design.ScaleMark())
}

// set is a strip set with its widths scaled, to an eighth of an inch or a millimetre; the widest takes what is left, or the
// one that is the rest.
func (z *Rescale) set(n *StripSetNode) []Rescaled {
	d := z.design
	seams, mark := 2*d.Seam, d.Units.CutMark()
	widest, rest := -1, false
	widths := make([]measure.NM, len(n.Bands))
	left := z.size + measure.NM(len(n.Bands)-1)*seams
	for i, b := range n.Bands {
		if b.Cut == nil {
			rest = true
			continue
		}
		own := b.Cut.In(d.Units).NM()
		widths[i] = max(measure.RoundUp(seams+mark, mark), measure.Nearest(measure.NM(math.Round(float64(own-seams)*z.ratio))+seams, mark))
		if left -= widths[i]; widest < 0 || own > n.Bands[widest].Cut.In(d.Units).NM() {
			widest = i
		}
	}
	if !rest {
		widths[widest] += left
	}
	var list []Rescaled
	for i, b := range n.Bands {
		if b.Cut != nil && widths[i] > 0 {
			list = append(list, Rescaled{b.Cut.Span, widths[i], b.Cut})
		}
	}
	return list
}

// apply gives a length of the tree its other one.
func (r *Rescaled) apply() {
	*r.node = LengthNode{Span: r.Span, reading: measure.ReadingOf(r.To)}
}
