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

	seam, mark, cutMark measure.NM // of the layout that is made
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

// SizeOf is the strip or the finished side that a size of the layout gives.
func (d *Design) SizeOf(given *LengthNode) measure.NM { return d.sizeIn(given, d.Units, d.Seam) }

// sizeIn is the same in units and with a seam allowance.
func (d *Design) sizeIn(given *LengthNode, units measure.System, seam measure.NM) measure.NM {
	nm := given.In(units).NM()
	if given.Cut && !d.StripGiven {
		nm -= 2 * seam
	}
	return max(1, nm) // what is cut away is refused where the size is checked
}

// SideOf is the finished side of a block for another strip, or another side where the layout gives that.
func (d *Design) SideOf(size measure.NM) measure.NM {
	if size == d.OwnSize() {
		return d.SideFinished
	}
	return d.sideWith(size, d.Seam)
}

// sideWith is the same with another seam allowance.
func (d *Design) sideWith(size, seam measure.NM) measure.NM {
	if d.StripGiven {
		return d.height().Side(measure.Of(size - 2*seam))
	}
	return size / 2 * 2
}

// ScaleMark is what borders and pieces are rounded to where they are scaled.
func (d *Design) ScaleMark() measure.NM { return scaleMark(d.Units) }

func scaleMark(s measure.System) measure.NM { return s.Usual(measure.Inch/4, measure.Centimetre/2) }

// Rescale is what another strip, or another side where the layout gives that, makes of the lengths of the layout but for
// itself: the widths of strip sets, the lines of a wedge ruler and the lengths of pieces. D is the layout's own design.
func (t *Tree) Rescale(d *Design, size measure.NM) []Rescaled {
	if size == d.OwnSize() {
		return nil
	}
	return newRescale(t, d, size).all()
}

func newRescale(t *Tree, d *Design, size measure.NM) *Rescale {
	return &Rescale{tree: t, design: d, size: size, ratio: float64(d.SideOf(size)) / float64(d.SideFinished), seam: d.Seam, mark: d.ScaleMark(), cutMark: d.Units.CutMark()}
}

// all is all that is scaled with a block.
func (z *Rescale) all() (list []Rescaled) {
	t := z.tree
	for _, s := range t.StripSets {
		list = append(list, z.set(s)...)
	}
	for _, b := range t.Blocks {
		if b.Line != nil {
			list = append(list, Rescaled{b.Line.Span, z.line(b.Line), b.Line})
		}
		if b.About != nil {
			list = append(list, Rescaled{b.About.Span, z.about(b.About), b.About})
		}
	}
	return list
}

// scaled is a finished length times the ratio, on a mark and never nothing.
func (z *Rescale) scaled(nm measure.NM) measure.NM {
	return max(z.mark, measure.Nearest(measure.NM(math.Round(float64(nm)*z.ratio)), z.mark))
}

// about is the length of pieces, of which the finished part is scaled.
func (z *Rescale) about(n *LengthNode) measure.NM {
	nm := n.In(z.design.Units).NM()
	if !n.Cut {
		return z.scaled(nm)
	}
	return z.scaledCut(nm, z.mark)
}

// scaledCut is a cut length whose finished part is scaled, on a mark and never less than one beyond its seams.
func (z *Rescale) scaledCut(cut, mark measure.NM) measure.NM {
	seams := 2 * z.seam
	return max(measure.RoundUp(seams+mark, mark), measure.Nearest(measure.NM(math.Round(float64(cut-2*z.design.Seam)*z.ratio))+seams, mark))
}

// line is the line of a wedge ruler that gives pieces of the same shape: what it stands beyond the strip is scaled.
func (z *Rescale) line(n *LengthNode) measure.NM {
	beyond := n.In(z.design.Units).NM() - z.design.SideFinished - 2*z.design.Seam
	return measure.Nearest(z.design.sideWith(z.size, z.seam)+2*z.seam+measure.NM(math.Round(float64(beyond)*z.ratio)), z.mark)
}

// set is a strip set with its widths scaled, to an eighth of an inch or a millimetre; the widest takes what is left, or the
// one that is the rest.
func (z *Rescale) set(n *StripSetNode) []Rescaled {
	d := z.design
	widest, rest := -1, false
	widths := make([]measure.NM, len(n.Bands))
	left := z.size + measure.NM(len(n.Bands)-1)*2*z.seam
	for i, b := range n.Bands {
		if b.Cut == nil {
			rest = true
			continue
		}
		own := b.Cut.In(d.Units).NM()
		widths[i] = z.scaledCut(own, z.cutMark)
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

// Frame is the word behind the length that says what it is: " cut", " finished" or "".
func (r *Rescaled) Frame() string {
	switch {
	case r.node.Cut:
		return " cut"
	case r.node.Finished:
		return " finished"
	}
	return ""
}

// apply gives a length of the tree its other one.
func (r *Rescaled) apply() {
	r.node.reading = measure.ReadingOf(r.To)
}
