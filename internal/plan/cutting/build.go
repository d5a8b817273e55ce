package cutting

import (
	"fmt"
	"slices"

	"eighthturn/internal/blocks"
	"eighthturn/internal/measure"
	"eighthturn/internal/plan/supplies"
	"eighthturn/internal/quilt"
	"eighthturn/internal/quilt/lengths"
	"eighthturn/internal/stop"
)

// Check says in a sentence which option is out of bounds.
func (o *Options) Check(units measure.System) error {
	if o.Copies < 0 || o.Copies > MaxCopies {
		return fmt.Errorf("%d copies are asked for, expected 1 to %d", o.Copies, MaxCopies)
	}
	for _, l := range []struct {
		name        string
		value, most measure.NM
	}{
		{"the squaring up", o.SquareUp, MaxExtra}, {"the spare length", o.Spare, MaxExtra},
		{"the binding's allowance", o.BindingAllowance, MaxExtra}, {"the backing's overhang", o.BackingOverhang, MaxExtra},
		{"the batting's overhang", o.BattingOverhang, MaxExtra}, {"the step of trimmed pieces", o.Steps.Trimmed, MaxStep},
		{"what is left to trim", o.Steps.Spare, MaxStep}, {"the step of exact pieces", o.Steps.Exact, MaxStep}, {"a ruler's marks", o.Steps.Mark, MaxStep},
	} {
		if l.value < 0 || l.value > l.most {
			return fmt.Errorf("%s is %s, expected 0 to %s", l.name, limitText(l.value, units), limitText(l.most, units))
		}
	}
	return nil
}

// limitText is a length as rulers show it and, where it is long, as shops sell it.
func limitText(nm measure.NM, units measure.System) string {
	if nm < measure.Yard {
		return units.Nearest(nm)
	}
	return units.Nearest(nm) + " (" + units.Shop(nm) + ")"
}

// Build plans a top, unless a sign ends it; nil for none. Every top can be planned; what cannot be cut is among the plan's faults.
// The options are within their limits, as Check says.
func Build(sign *stop.Sign, top *quilt.Top, o Options) *Plan {
	p := plan(sign, top, o)
	p.trials = newBudget(maxTrialSteps, sign)
	demands, joinings := p.wants()
	plans, precuts := purse{maxPlanSteps, len(p.Fabrics), sign}, purse{maxPrecutSteps, len(p.Fabrics), sign}
	for i := range p.Fabrics {
		f := &p.Fabrics[i]
		f.budget = plans.share()
		if binding := f.cutStrips(demands[i], joinings[i]); binding != nil {
			p.Binding = binding
		}
		f.SearchEnded = f.SearchEnded || p.trials.spent()
		p.warnSmallPrecuts(f, slices.Concat(demands[i], joinings[i][0].list))
		plans.back(f.budget)
		p.leftOvers(f)
		f.Tight = f.isTight(p.Units)
		p.eightAlike(f)
	}
	p.leftPieces()
	p.tables()
	p.finish()
	for i := range p.Fabrics {
		p.purchase(&p.Fabrics[i])
		b := precuts.share()
		p.Fabrics[i].precuts(b)
		precuts.back(b)
	}
	p.compare()
	return p.Plan
}

// plan is all of a plan but its strips and what is bought.
func plan(sign *stop.Sign, top *quilt.Top, o Options) *planning {
	p := unfilled(top, o)
	p.sign = sign
	p.gather()
	p.edgings()
	p.inOrder()
	p.useOnHand()
	p.sewSets()
	p.layBlocks()
	p.fromPrints()
	return p
}

// Pieces is a plan of the pieces alone: its lines with what is cut off a strip for each, and the lines of the patches.
// What is made of strips and cloth it does not say. It takes a small part of the time of a whole plan.
func Pieces(top *quilt.Top, o Options) *Plan {
	p := unfilled(top, o)
	p.gather()
	p.inOrder()
	return p.Plan
}

// unfilled is a plan of nothing yet.
func unfilled(top *quilt.Top, o Options) *planning {
	steps := o.Steps.Filled(top.Units)
	p := &planning{
		Plan: &Plan{Title: top.Title, Units: top.Units, Seam: top.Seam, Steps: steps, Copies: max(1, o.Copies), BackingOf: -1},
		top:  top, options: o,
		sizing: sizingOf(top, steps, &o),
	}
	p.Allowance = p.allowance()
	if !o.LeastCloth {
		p.Longer = lengths.Longer(top.Units)
	}
	p.fabrics = make([]int, len(top.Fabrics))
	for i := range p.fabrics {
		p.fabrics[i] = -1
	}
	return p
}

// edgings makes room for the fabrics of what is no patch.
func (p *planning) edgings() {
	if b := p.top.CutFacts.Binding; b != nil {
		p.fabric(b.Fabric)
	}
	if p.top.CutFacts.Backing >= 0 {
		p.fabric(p.top.CutFacts.Backing)
	}
}

// purchase adds up a fabric and rounds once.
func (p *planning) purchase(f *Fabric) {
	f.Purchase = p.buying(p.Allowance.SpareOf(f)).Of(f.LengthCut, f.BackingCut)
}

// buying says how lengths are bought, with so much for slips.
func (p *planning) buying(spare measure.NM) supplies.Buying {
	return supplies.Buying{Units: p.Units, Quarters: p.options.Quarters, SquaringUp: p.Allowance.SquareUp, Spare: spare}
}

// finish plans backing and batting.
func (p *planning) finish() {
	p.backing()
	p.Batting, _ = supplies.MakeBatting(supplies.BattingOptions{ // a top and the options are within its limits
		Units: p.Units, WidthFinished: p.top.Outer.Width(), HeightFinished: p.top.Outer.Height(), Overhang: p.options.BattingOverhang,
	})
}

// backing plans the backing, of the layout's fabric or of one of your choice.
func (p *planning) backing() {
	of, outer := p.top.CutFacts.Backing, p.top.Outer
	o := supplies.BackingOptions{Units: p.Units, UsableWidth: p.top.CutFacts.UsableWidth, WidthFinished: outer.Width(), HeightFinished: outer.Height(), Overhang: p.options.BackingOverhang}
	if of >= 0 {
		o.UsableWidth = p.Fabrics[p.fabrics[of]].UsableWidth
	}
	made, err := supplies.MakeBacking(o)
	switch {
	case err != nil && of >= 0:
		p.warn(Place(p.top.Fabrics[of].Place), "", "the backing cannot be planned: %s", err)
		return
	case err != nil:
		return
	}
	p.Backing, p.BackingOf = made, of
	length := made.Ways[made.Less].LengthCut * measure.NM(p.Copies)
	if of >= 0 {
		p.Fabrics[p.fabrics[of]].BackingCut = length
		return
	}
	var alone Fabric
	p.BackingBuy = p.buying(p.Allowance.SpareOf(&alone)).Of(length)
}

// tables lists what strips of wedges and tumblers give.
func (p *planning) tables() {
	seen := map[[4]measure.NM]bool{}
	for i := range p.Lines {
		line := &p.Lines[i]
		piece := &line.Piece
		if piece.Method != Nested {
			continue
		}
		usable := p.clothOf(line)
		key := [4]measure.NM{piece.AcrossCut, piece.WideCut, piece.LengthFinished, usable}
		if seen[key] {
			continue
		}
		seen[key] = true
		if piece.Shape.Description().Sized == blocks.ByColumn {
			p.tumblerTable(piece)
			if p.Tumblers[len(p.Tumblers)-1].Slim {
				p.slim(line)
			}
			continue
		}
		w := Wedge{
			StripCut: piece.AcrossCut, OnRuler: piece.OnRuler[0], BaseCut: piece.WideCut, TipCut: piece.NarrowCut,
			PitchCut: piece.PitchCut(), UsableWidth: usable, PerStrip: nested(usable, piece),
		}
		if w.PerStrip > 0 {
			w.WasteCut = usable - measure.NM(w.PerStrip)*w.PitchCut
		}
		p.Wedges = append(p.Wedges, w)
	}
}

// clothOf is the length of the strips that a line is cut from.
func (p *planning) clothOf(line *Line) measure.NM {
	if line.AlongSelvage {
		return p.Fabrics[line.Fabric].longestStrip(line.Number)
	}
	if line.Fabric >= 0 {
		return p.Fabrics[line.Fabric].UsableWidth
	}
	return p.Sets[line.Set].LengthCut
}

func (p *planning) tumblerTable(piece *Piece) {
	t := Tumbler{StripCut: piece.AcrossCut, LineCut: piece.OnRuler[1].ExactCut, OnRuler: piece.OnRuler[1], WideCut: piece.WideCut, NarrowCut: piece.NarrowCut}
	t.Slim = piece.LengthFinished-times(piece.SideFinished, tan22) < 2*p.Seam
	p.Tumblers = append(p.Tumblers, t)
}
