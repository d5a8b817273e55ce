// Package leftovers lays out what the pieces make that a cutting plan leaves: small quilts of whole rings, webs and stars, each
// written as a layout of its own whose plan takes these pieces first.
package leftovers

import (
	"cmp"
	"slices"

	"eighthturn/internal/measure"
	"eighthturn/internal/plan/cutting"
	"eighthturn/internal/quilt"
	"eighthturn/internal/stop"
	"eighthturn/layout"
)

// Plan is what is left and what it makes.
type Plan struct {
	Title     string
	Units     measure.System
	Stocks    []Stock    `json:"left"`      // pieces that are left
	Proposals []Proposal `json:"proposals"` // those that use most of them first
}

// Proposal is one thing to sew.
type Proposal struct {
	Item     Item       `json:"item"`
	Copies   int        `json:"copies"` // of it
	Kinds    []Kind     `json:"blocks"` // in the grid of one
	Across   int        `json:"blocks_across"`
	Down     int        `json:"blocks_down"`
	Field    Size       `json:"field_finished"` // the blocks of one
	Finished Size       `json:"top_finished"`   // of one, with its border
	Border   measure.NM `json:"border_finished"`
	Used     []Use      `json:"used"`   // by all of them
	Layout   string     `json:"layout"` // of one

	Top  *quilt.Top    `json:"-"` // of one
	Cuts *cutting.Plan `json:"-"` // of all of them
}

// Kind is a block kind of a grid.
type Kind struct {
	Name   string `json:"kind"`
	Blocks int    `json:"blocks"`
}

// Size is the longer side by the shorter.
type Size struct {
	Length measure.NM `json:"length"`
	Width  measure.NM `json:"width"`
}

// Use is how many pieces of a stock are used.
type Use struct {
	Stock int `json:"left"` // index
	Used  int `json:"used"`
}

// Pieces is how many pieces a proposal uses.
func (p *Proposal) Pieces() (n int) {
	for _, u := range p.Used {
		n += u.Used
	}
	return n
}

// MostProposals is how many proposals are made at the most.
const MostProposals = 6

// How many candidates are laid out at the most, and how many proposals of one item there are.
const (
	mostLaid   = 12
	mostOfItem = 2
)

// Build finds what the pieces make that the plan of a top leaves, unless a sign ends it.
func Build(sign *stop.Sign, top *quilt.Top, plan *cutting.Plan) *Plan {
	p := &Plan{Title: top.Title, Units: top.Units, Stocks: stocks(top, plan)}
	if len(plan.Faults) > 0 {
		return p
	}
	w := &work{Plan: p, sign: sign, top: top, plan: plan}
	p.Proposals = proposed(w.candidates(), w.propose)
	return p.sorted()
}

// proposed are the first candidates of which something comes.
func proposed(candidates []candidate, propose func(candidate) (Proposal, bool)) (list []Proposal) {
	laid, of := 0, map[Item]int{}
	for _, c := range candidates {
		switch {
		case laid == mostLaid || len(list) == MostProposals:
			return list
		case of[c.item] == mostOfItem:
			continue
		}
		laid++
		if made, ok := propose(c); ok {
			list = append(list, made)
			of[c.item]++
		}
	}
	return list
}

// sorted is the plan with those proposals first that use most pieces.
func (p *Plan) sorted() *Plan {
	slices.SortStableFunc(p.Proposals, func(a, b Proposal) int { return cmp.Compare(b.Pieces(), a.Pieces()) })
	return p
}

// work is the work on one plan.
type work struct {
	*Plan
	sign *stop.Sign
	top  *quilt.Top
	plan *cutting.Plan
}

// propose lays a candidate out and plans it; false where its plan would cut pieces that are left, or what cannot be cut.
func (w *work) propose(c candidate) (Proposal, bool) {
	w.sign.Step(c.across * c.down)
	text := w.written(&c)
	design, _, _ := layout.Read(text)
	if design == nil {
		return Proposal{}, false
	}
	p := Proposal{Item: c.item, Copies: c.copies, Across: c.across, Down: c.down, Border: c.border, Layout: text}
	p.Top = quilt.LayUntil(w.sign, design)
	p.Cuts = cutting.Build(w.sign, p.Top, cutting.Options{Copies: c.copies})
	p.Kinds = kindsOf(p.Top)
	p.Field, p.Finished = sizeOf(p.Top.Field), sizeOf(p.Top.Outer)
	for _, s := range c.stocks() {
		p.Used = append(p.Used, Use{Stock: s, Used: w.used(p.Cuts, s)})
	}
	return p, allOnHand(p.Cuts)
}

// allOnHand says whether all wedges of a plan are on hand, and all else can be cut.
func allOnHand(plan *cutting.Plan) bool {
	return len(plan.Faults) == 0 && !slices.ContainsFunc(plan.Lines, func(l cutting.Line) bool { return isWedge(&l) && l.OnHand < l.Pieces })
}

// used is how many pieces of a stock a plan uses.
func (w *work) used(plan *cutting.Plan, stock int) (n int) {
	s := &w.Stocks[stock]
	for _, h := range plan.OnHand {
		if h.Role == s.Role && h.Cloth == s.Cloth && h.Reversed == s.Reversed {
			n += h.Used
		}
	}
	return n
}

func sizeOf(r quilt.Rect) Size {
	return Size{max(r.Width(), r.Height()), min(r.Width(), r.Height())}
}

// kindsOf is how many blocks of each kind a top has.
func kindsOf(t *quilt.Top) (list []Kind) {
	for i := range t.Cells {
		at := slices.IndexFunc(list, func(k Kind) bool { return k.Name == t.Cells[i].Kind })
		if at < 0 {
			at = len(list)
			list = append(list, Kind{Name: t.Cells[i].Kind})
		}
		list[at].Blocks++
	}
	return list
}
