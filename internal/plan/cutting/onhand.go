package cutting

import (
	"slices"
	"sort"

	"eighthturn/internal/blocks"
	"eighthturn/internal/measure"
	"eighthturn/internal/quilt"
)

// compare compares what is on hand with what is needed. The fabrics that fall short share the steps for what would help them.
func (p *planning) compare() {
	var short []*Fabric
	for i := range p.Fabrics {
		f := &p.Fabrics[i]
		have := p.top.CutFacts.Fabrics[f.Index].OnHand
		if have == 0 {
			continue
		}
		h := &OnHand{HaveCut: have, NeedCut: f.Purchase.Need - f.Purchase.Spare}
		h.Enough = h.NeedCut <= have
		h.NoSpare = h.Enough && f.Purchase.Need > have
		if f.OnHand = h; !h.Enough {
			short = append(short, f)
		}
	}
	ways := purse{maxWaySteps, len(short), p.sign}
	for _, f := range short {
		h, b := f.OnHand, ways.share()
		h.ShortCut = h.NeedCut - h.HaveCut
		h.ByLeast = p.enoughByLeast(wanting{f.Index, h.HaveCut, b})
		h.WaysToFit = p.waysToFit(f.Index, h.HaveCut, b)
		h.SearchEnded = b.spent()
		ways.back(b)
	}
}

// enoughByLeast says whether a length of a fabric suffices where nothing is whole strips, as it is worked out anew; false where there
// are no steps for it.
func (p *planning) enoughByLeast(w wanting) bool {
	o := p.options
	if o.LeastCloth {
		return false
	}
	o.LeastCloth = true
	return needWith(p.top, Way{Border: -1, SideFinished: p.top.SideFinished}, w, o) <= w.have
}

// waysToFit are the changes with which a length of a fabric suffices, each the least of its sort: a narrower border of that
// fabric, and smaller blocks. What there are no steps for is not among them.
func (p *planning) waysToFit(fabric int, have measure.NM, b *budget) []Way {
	var ways []Way
	for n, border := range p.top.CutFacts.Borders {
		if border.Fabric != fabric && border.Corners != fabric {
			continue
		}
		step := p.Steps.Trimmed
		change := func(less int) Way {
			return Way{Border: n, WidthFinished: border.Width - border.Width%step - measure.NM(less)*step + step*boolNM(border.Width%step > 0)}
		}
		ways = append(ways, p.least(int((border.Width-1)/step), change, wanting{fabric, have, b})...)
	}
	return append(ways, p.smaller(wanting{fabric, have, b})...)
}

// wanting is a fabric of which there is only some length, and the steps that looking for a way may take.
type wanting struct {
	fabric int
	have   measure.NM
	budget *budget
}

func boolNM(yes bool) measure.NM {
	if yes {
		return 1
	}
	return 0
}

// least tries a change in more and more steps for the first with which the cloth suffices.
func (p *planning) least(most int, change func(int) Way, w wanting) []Way {
	need := func(steps int) measure.NM { return needWith(p.top, change(steps), w, p.options) }
	n := 1 + sort.Search(most-1, func(n int) bool { return need(n+1) <= w.have })
	if n > most {
		return nil
	}
	way := change(n)
	if way.NeedCut = need(n); way.NeedCut > w.have {
		return nil
	}
	return []Way{way}
}

// smaller is the largest block with which the cloth suffices: by its strip where the layout gives that, else by its side.
func (p *planning) smaller(w wanting) []Way {
	if len(p.top.CutFacts.Columns) > 0 {
		return nil // into how many pieces columns of another side are divided, only the layout's words say
	}
	mark, side := p.Steps.Mark, p.top.SideFinished
	if !p.top.CutFacts.StripGiven {
		most := int(min(side/2, side-quilt.LeastSide) / mark)
		return p.least(most, func(less int) Way {
			return Way{Border: -1, SideFinished: (side+mark-1)/mark*mark - measure.NM(less)*mark}
		}, w)
	}
	h := slices.IndexFunc(p.top.CutFacts.StripsCut[:], func(cut measure.NM) bool { return cut > 0 }) // there are wedges where a strip is given
	cut := p.top.CutFacts.StripsCut[h]
	made := func(less int) Way {
		strip := (cut+mark-1)/mark*mark - measure.NM(less)*mark
		return Way{Border: -1, StripCut: strip, SideFinished: blocks.WedgeHeight(h).Side(measure.Of(strip - 2*p.Seam))}
	}
	most := int((cut - 2*p.Seam) / 2 / mark)
	for most > 0 && made(most).SideFinished < quilt.LeastSide {
		most--
	}
	return p.least(most, made, w)
}

// patchSteps is how many steps it takes to plan one patch anew.
const patchSteps = 8

// needWith is how much of a fabric is needed with a change; too much where there are no steps left to tell.
func needWith(top *quilt.Top, change Way, w wanting, o Options) measure.NM {
	const tooMuch = 1 << 62
	if w.budget.spent() || !w.budget.spend(patchSteps*len(top.Patches)) {
		return tooMuch
	}
	var changed *quilt.Top
	if change.Border >= 0 {
		changed = narrowed(top, change.Border, change.WidthFinished)
	} else {
		changed = resized(top, change.SideFinished)
	}
	p := plan(w.budget.sign, changed, o)
	p.trials = w.budget
	w.budget.spend(p.fits.used())
	list, joinings := p.wants()
	n := p.fabrics[w.fabric]
	if n < 0 || len(p.Faults) > 0 {
		return tooMuch
	}
	f := &p.Fabrics[n]
	f.budget = w.budget
	f.layBest(list[n], joinings[n])
	f.LengthCut += f.printCloth()
	p.finish()
	p.purchase(f)
	return f.Purchase.Need - f.Purchase.Spare
}

// narrowed is a top with another width of a border, as far as a plan reads it: of patches outside the blocks the sizes, not
// the places.
func narrowed(top *quilt.Top, border int, width measure.NM) *quilt.Top {
	t := copied(top)
	less := top.CutFacts.Borders[border].Width - width
	t.CutFacts.Borders[border].Width = width
	t.Outer.Max.X -= 2 * less
	t.Outer.Max.Y -= 2 * less
	for i := range t.Patches {
		p := &t.Patches[i]
		if int(p.Border) < border {
			continue
		}
		w, h := p.Outline[1].X-p.Outline[0].X, p.Outline[2].Y-p.Outline[1].Y
		upright := isUpright(top, p)
		switch cornered := top.CutFacts.Borders[border].Corners >= 0; {
		case int(p.Border) > border && !edging(p): // corners stay as they are
		case int(p.Border) > border && upright:
			h -= 2 * less
		case int(p.Border) > border:
			w -= 2 * less
		case !edging(p):
			w, h = width, width
		case upright:
			w = width
		case cornered:
			h = width
		default:
			w, h = w-2*less, width
		}
		p.Outline = sized(w, h)
	}
	return t
}

// isUpright says whether a strip of a border runs up and down.
func isUpright(top *quilt.Top, p *quilt.Patch) bool {
	if top.CutFacts.Borders[p.Border].Corners >= 0 {
		return p.Number == 2 || p.Number == 4
	}
	return p.Number <= 2
}

// edging says whether a patch is a strip of a border or a sash.
func edging(p *quilt.Patch) bool { return p.Shape.Description().Edging }

func sized(w, h measure.NM) []measure.Point {
	return []measure.Point{{}, {X: w}, {X: w, Y: h}, {Y: h}}
}

// copied is a top whose patches and cloth may be changed.
func copied(top *quilt.Top) *quilt.Top {
	t := *top
	t.Patches = append([]quilt.Patch(nil), top.Patches...)
	t.CutFacts.Borders = append(t.CutFacts.Borders[:0:0], top.CutFacts.Borders...)
	t.CutFacts.Sets = append([]quilt.Set(nil), top.CutFacts.Sets...)
	return &t
}

// resized is a top with another side of its blocks, as far as a plan reads it; one with columns keeps its own. The strips of strip sets
// keep their parts of the whole.
func resized(top *quilt.Top, side measure.NM) *quilt.Top {
	t := copied(top)
	less, part := top.SideFinished-side, float64(side)/float64(top.SideFinished)
	across, down := measure.NM(top.Columns)*less, measure.NM(top.Rows)*less
	t.SideFinished = side
	if side != top.SideFinished {
		t.CutFacts.OnHand = nil // pieces on hand are of the size that is written
	}
	t.Outer.Max.X, t.Outer.Max.Y = t.Outer.Max.X-across, t.Outer.Max.Y-down
	for h, cut := range t.CutFacts.StripsCut {
		if cut > 0 {
			t.CutFacts.StripsCut[h] = blocks.WedgeHeight(h).Finished(side) + 2*top.Seam
		}
	}
	for i := range t.CutFacts.Sets {
		t.CutFacts.Sets[i].BandsCut = parts(top.CutFacts.Sets[i].BandsCut, t.CutFacts.StripsCut[t.CutFacts.Sets[i].Height], top.Seam)
	}
	for i := range t.Patches {
		p := &t.Patches[i]
		if !edging(p) {
			if t.CutOfPatch(i) != nil {
				p.Outline = scaled(p.Outline, part)
			}
			continue
		}
		w, h := p.Outline[1].X-p.Outline[0].X, p.Outline[2].Y-p.Outline[1].Y
		switch {
		case p.Border >= 0 && isUpright(top, p):
			h -= down
		case p.Border >= 0:
			w -= across
		case h == top.SideFinished:
			h = side
		case w == top.SideFinished:
			w = side
		default:
			w -= across
		}
		p.Outline = sized(w, h)
	}
	return t
}

// scaled is an outline of another size.
func scaled(outline []measure.Point, part float64) []measure.Point {
	list := make([]measure.Point, len(outline))
	for i, p := range outline {
		list[i] = outline[0].Add(measure.Point{X: times(p.X-outline[0].X, part), Y: times(p.Y-outline[0].Y, part)})
	}
	return list
}

// parts is the cut widths of a strip set's strips in a strip of another width, each finished width in its proportion.
func parts(bandsCut []measure.NM, stripCut, seam measure.NM) []measure.NM {
	var whole measure.NM
	for _, b := range bandsCut {
		whole += b - 2*seam
	}
	list := make([]measure.NM, len(bandsCut))
	left := stripCut - 2*seam
	for i, b := range bandsCut {
		finished := times(stripCut-2*seam, float64(b-2*seam)/float64(whole))
		if i == len(bandsCut)-1 {
			finished = left
		}
		left -= finished
		list[i] = finished + 2*seam
	}
	return list
}
