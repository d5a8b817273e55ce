package cutting

import (
	"slices"

	"eighthturn/internal/measure"
	"eighthturn/internal/plan/supplies"
)

// demand is an item to be cut off a fabric's strips, with what it is for.
type demand struct {
	item
	lines  []int
	set    int
	use    Use
	nests  bool // wedges or tumblers side by side
	turn   bool // may lie across the strip as well as along it
	number int  // among the demands of its fabric
}

// demands is what each fabric's strips must give, but for those that are joined. What is too large for the cloth is a
// fault, and left out.
func (p *planning) demands() [][]demand {
	list := make([][]demand, len(p.Fabrics))
	for i := range p.Lines {
		line := &p.Lines[i]
		if line.Fabric < 0 || line.Piece.Method == FussyCut || line.AlongSelvage { // fitted into the print, or laid along the cloth
			continue
		}
		p.unitsOf(line)
		fabric := &p.Fabrics[line.Fabric]
		switch {
		case line.Units == 0: // all are on hand
		case line.edging() && p.lengthwise(line): // laid out in blocks of cloth
		case line.edging() && line.Piece.AlongCut+p.longer(line) > fabric.UsableWidth:
			line.Piece.Method = Joined // with the others of its edging
		case p.tooLong(line, fabric.UsableWidth): // which is a fault
		default:
			d := lineDemand(line)
			d.along += p.longer(line)
			list[line.Fabric] = append(list[line.Fabric], d)
		}
	}
	p.setStrips(list)
	return list
}

// unitsOf counts what is cut off strips for a line.
func (p *planning) unitsOf(line *Line) {
	per := line.Piece.Method.PerUnit()
	line.Units = up(line.Pieces-line.OnHand, per)
	line.Spare = line.Units*per - (line.Pieces - line.OnHand)
}

// lineDemand is what a line of one fabric asks of its strips.
func lineDemand(line *Line) demand {
	piece := &line.Piece
	d := demand{item: item{across: piece.AcrossCut, along: piece.AlongCut, count: line.Units}, lines: []int{line.Number}, set: -1}
	if piece.Method == Nested {
		d.along = piece.PitchCut()
		d.extra, d.nests = piece.WideCut-d.along, true
	}
	d.stacks = !d.nests
	d.turn = line.edging() && line.Border < 0
	return d
}

// added is demands with one more, put together with one that is like it.
func added(list []demand, d demand) []demand {
	for i := range list {
		e := &list[i]
		if e.across == d.across && e.along == d.along && e.use == d.use && e.set == d.set && slices.Equal(e.lines, d.lines) {
			e.count += d.count
			return list
		}
	}
	return append(list, d)
}

// ends is whole strips and one more that is only as long as it need be, but not so short that it cannot be handled.
func (p *planning) ends(across measure.NM, whole int, last, usable measure.NM) []demand {
	var list []demand
	last = min(usable, max(measure.RoundUp(last, p.Steps.Trimmed), across))
	if last == usable {
		whole++
	} else {
		list = append(list, demand{item: item{across: across, along: last, count: 1}, set: -1})
	}
	if whole > 0 {
		list = append(list, demand{item: item{across: across, along: usable, count: whole}, set: -1})
	}
	return list
}

// setStrips adds the strips of the strip sets to their fabrics.
func (p *planning) setStrips(list [][]demand) {
	for i := range p.Sets {
		s := &p.Sets[i]
		var lines []int
		for _, n := range s.Lines {
			if n >= 0 {
				lines = append(lines, n)
			}
		}
		if s.toCut() == [2]int{} {
			continue
		}
		if len(s.Runs) == 0 {
			p.tooLong(&p.Lines[lines[0]], s.LengthCut)
		}
		for way, n := range s.Lines {
			if n >= 0 {
				p.Lines[n].Units, p.Lines[n].Spare = s.Given[way], s.LeftOver[way]
			}
		}
		for _, b := range s.Bands {
			for _, r := range s.Runs {
				list[b.Fabric] = append(list[b.Fabric], demand{
					item:  item{across: b.WidthCut, along: r.LengthCut, count: r.Sets},
					lines: lines, set: i, use: ForSet,
				})
			}
		}
	}
}

// bindingStrips plans the binding and adds its strips to its fabric's joined ones.
func (p *planning) bindingStrips(made []joining, m manner) {
	b := p.top.CutFacts.Binding
	if b == nil {
		return
	}
	to := &made[p.fabrics[b.Fabric]]
	usable := p.lengthFor(p.fabrics[b.Fabric], m, b.Width)
	if !p.options.LeastCloth {
		usable = p.Fabrics[p.fabrics[b.Fabric]].UsableWidth
	}
	binding, err := supplies.MakeBinding(supplies.BindingOptions{
		Units: p.Units, WidthFinished: p.top.Outer.Width(), HeightFinished: p.top.Outer.Height(), StripCut: b.Width,
		UsableWidth: usable, Seam: p.Seam, Allowance: p.options.BindingAllowance,
	})
	if err != nil {
		p.fault(Place(b.Span), "give the binding another width", "the binding cannot be planned: %s", err)
		return
	}
	to.binding = binding
	if !p.options.LeastCloth {
		to.list = added(to.list, p.wholeBinding(b.Width, usable, binding.Strips)[0])
		return
	}
	for _, d := range p.ends(b.Width, binding.Strips-1, usable-(binding.Comes-binding.Need), usable) {
		d.use = ForBinding
		d.count *= p.Copies
		to.list = added(to.list, d)
	}
}
