package layout

import "eighthturn/internal/measure"

// units are the system of measures that a word of a size names.
func (n *quiltSizeNode) units(own measure.System) measure.System {
	switch {
	case n.Units == nil:
		return own
	case n.Units.Word == "cm":
		return measure.Centimetres
	}
	return measure.Inches
}

// Redraft is the same quilt drafted anew in the other system of measures: what its lengths become beside the strip or the side, which
// a size gives itself. Nothing is an inch in centimeters: seams are those that are usual there, and all else lies on marks of its
// rulers. How much fabric there is, and how much a photo shows, stays as it is. D is the layout's own design.
func (t *Tree) Redraft(d *Design, to measure.System, given *LengthNode) []Rescaled {
	r := redraft{tree: t, design: d, to: to, seam: to.Usual(measure.Inch/4, 3*measure.Centimetre/4)}
	if t.Seam != nil && d.Seam != d.Units.Usual(measure.Inch/4, 3*measure.Centimetre/4) {
		mark := to.Usual(measure.Inch/8, measure.Centimetre/4)
		r.seam = max(mark, measure.Nearest(d.Seam, mark))
	}
	if t.Seam != nil {
		r.is(t.Seam, r.seam)
	}
	r.edgings()
	r.cloth()
	size := d.sizeIn(given, to, r.seam)
	z := newRescale(t, d, size)
	z.seam, z.mark, z.cutMark = r.seam, scaleMark(to), to.CutMark()
	z.ratio = float64(d.sideWith(size, r.seam)) / float64(d.SideFinished)
	return append(r.list, z.all()...)
}

// redraft is the work on a layout in the other system.
type redraft struct {
	tree   *Tree
	design *Design
	to     measure.System
	seam   measure.NM
	list   []Rescaled
}

func (r *redraft) is(n *LengthNode, nm measure.NM) {
	r.list = append(r.list, Rescaled{n.Span, nm, n})
}

// onMark is a length on the nearest half centimeter or quarter inch, one at the least.
func (r *redraft) onMark(n *LengthNode) {
	mark := scaleMark(r.to)
	r.is(n, max(mark, measure.Nearest(n.In(r.design.Units).NM(), mark)))
}

// edgings are borders, sashes and the binding.
func (r *redraft) edgings() {
	for _, b := range r.tree.Borders {
		r.onMark(&b.Width)
	}
	for _, e := range []*edgingNode{r.tree.Sash, r.tree.Binding} {
		if e != nil {
			r.onMark(&e.Width)
		}
	}
}

// cloth is what there is of fabric: usable widths on a whole mark that they reach, and lengths as they are.
func (r *redraft) cloth() {
	unit := r.to.Unit()
	down := func(n *LengthNode) {
		if n != nil {
			r.is(n, n.In(r.design.Units).NM()/unit*unit)
		}
	}
	same := func(n *LengthNode) {
		if n != nil {
			r.is(n, n.In(r.design.Units).NM())
		}
	}
	down(r.tree.UsableWidth)
	for _, f := range r.tree.Fabrics {
		down(f.UsableWidth)
		same(f.OnHand)
		same(f.Across)
		if f.From != nil {
			same(f.From.Size)
		}
		if f.Repeat != nil {
			same(f.Repeat.Across)
			same(f.Repeat.Down)
		}
		for i := range f.stripeList() {
			same(&f.Stripes.List[i].Width)
		}
	}
	for _, m := range r.tree.Motifs {
		same(m.Across)
		same(m.Down)
	}
	for _, v := range r.tree.values() {
		same(v.From)
	}
	for _, e := range []*extraNode{r.tree.SquareUp, r.tree.Spare} {
		if e != nil && e.None == nil {
			r.onMark(&e.Length)
		}
	}
}

// otherUnits sees that a size in other units says what it must, and says whether it does.
func (z *sizing) otherUnits(n *quiltSizeNode) {
	to := n.units(z.design.Units)
	if n.Units == nil {
		return
	}
	if to == z.design.Units {
		at := n.UnitsAt.To(n.Units.Span)
		z.fault(at, "", "the layout is in %s already", unitWord(to)).suggest(z.leaveOut(z.src[at.Start:at.End], at))
		return
	}
	word, given := "side", n.Side
	if z.design.StripGiven {
		word, given = "strip", n.Strip
	}
	if given != nil || n.Strip != nil || n.Side != nil { // the wrong one is told already
		return
	}
	mark := scaleMark(to)
	text := word + " " + measure.Number(max(mark, measure.Nearest(z.design.OwnSize(), mark)), to)
	z.fault(n.Name.Span, "", "the size %s is in %s and says no %s of its own", quote(n.Name.Text), unitWord(to), word).
		suggest(edit("write "+text+" behind it, for example", Span{n.End, n.End}, " "+text))
}

// unitWord is what people call the units of a system.
func unitWord(s measure.System) string {
	if s == measure.Centimetres {
		return "centimeters"
	}
	return "inches"
}
