package cutting

import "slices"

// Dealing is a strip set that was dealt set by set.
type Dealing struct {
	Name      string     `json:"name"`       // in the layout
	Sets      []DealtSet `json:"sets"`       // in the order in which the stacks are sewn
	Mixed     int        `json:"mixed_webs"` // webs that are cut from more than one set
	Whole     int        `json:"sets_for_whole_webs,omitempty"`
	Neighbors int        `json:"neighbors_alike"` // pairs of neighboring webs that come from one set
}

// DealtSet is one of the sets.
type DealtSet struct {
	Number  int        `json:"number"`    // from 1
	Set     int        `json:"strip_set"` // index of the plan's strip sets
	Fabrics []int      `json:"fabrics"`   // index of the plan's, of each strip from the wide end
	Webs    []DealtWeb `json:"webs"`
}

// DealtWeb is a web, or what of it is cut from one set.
type DealtWeb struct {
	Blocks  []Cell `json:"blocks"` // that have its wedges
	Wedges  [2]int `json:"wedges"` // cut from the set for one quilt, and reversed ones
	Mixed   bool   `json:"mixed"`  // the others come from other sets
	Patches []int  `json:"patches"`
}

// Cell is a place of the grid, from 1.
type Cell struct {
	Row    int `json:"row"`
	Column int `json:"column"`
}

// setsAsDealt begins the strip sets that were dealt, in the order in which they are sewn.
func (p *planning) setsAsDealt() {
	for i := range p.top.Dealt {
		for _, s := range p.top.Dealt[i].Sets {
			if len(s.Webs) > 0 {
				p.setOf(s.Webs[0].Patches[0])
			}
		}
	}
}

// gatherDealt takes over how strip sets were dealt, once their wedges have lines; sets that no web is cut from are left out.
func (p *planning) gatherDealt() {
	p.dealtNumbers = map[int]int{}
	for i := range p.top.Dealt {
		d := &p.top.Dealt[i]
		made := Dealing{Name: p.top.CutFacts.Sets[d.Set].Name, Mixed: d.Mixed, Whole: d.Whole, Neighbors: d.Beside}
		for _, s := range d.Sets {
			if len(s.Webs) == 0 {
				continue
			}
			set := DealtSet{Number: s.Number, Set: p.Lines[p.LineOf[s.Webs[0].Patches[0]]].Set}
			for _, f := range s.Fabrics {
				set.Fabrics = append(set.Fabrics, p.fabrics[f])
			}
			for _, w := range s.Webs {
				web := DealtWeb{Wedges: w.Wedges, Mixed: w.Mixed, Patches: slices.Clone(w.Patches)}
				for _, cell := range w.Cells {
					web.Blocks = append(web.Blocks, Cell{cell/p.top.Columns + 1, cell%p.top.Columns + 1})
				}
				set.Webs = append(set.Webs, web)
			}
			p.dealtNumbers[set.Set] = s.Number
			made.Sets = append(made.Sets, set)
		}
		p.Dealt = append(p.Dealt, made)
	}
}
