package summary

import (
	"slices"

	"eighthturn/internal/blocks"
	"eighthturn/internal/measure"
	"eighthturn/internal/quilt"
	"eighthturn/layout"
)

// mark is how far apart the marks of a cutter's ruler are, by common practice.
func mark(s measure.System) measure.NM {
	return s.Mark()
}

// kindsUsed are the kinds in the grid, in the order of help.
func kindsUsed(d *layout.Design) []*blocks.Kind {
	used := map[string]bool{}
	for _, c := range d.Cells {
		if c.Block >= 0 {
			used[d.Blocks[c.Block].Kind.Name] = true
		}
	}
	return slices.DeleteFunc(blocks.Kinds(), func(k *blocks.Kind) bool { return !used[k.Name] })
}

// strips are the strips that wedges and tumblers come from, one for each height.
func strips(d *layout.Design) []Strip {
	var list []Strip
	at := map[blocks.WedgeHeight]int{}
	for _, k := range kindsUsed(d) {
		if d.StripsCut[k.Height] == 0 {
			continue
		}
		i, seen := at[k.Height]
		if !seen {
			i = len(list)
			at[k.Height] = i
			list = append(list, strip(d, k.Height))
		}
		list[i].Kinds = append(list[i].Kinds, k.Name)
	}
	return list
}

func strip(d *layout.Design, h blocks.WedgeHeight) Strip {
	cut := d.StripsCut[h]
	s := Strip{WidthFinished: cut - 2*d.Seam, WidthCut: cut}
	if d.StripGiven {
		return s
	}
	n := &Nearest{Mark: mark(d.Units)}
	n.WidthCut = measure.Nearest(cut, n.Mark)
	n.SideFinished = h.Side(measure.Of(n.WidthCut - 2*d.Seam))
	n.RowErrorFinished = measure.NM(d.Columns) * (n.SideFinished - d.SideFinished)
	s.Nearest = n
	return s
}

// StripSet is strips sewn together before wedges are cut from them.
type StripSet struct {
	Name string   `json:"name"`
	Uses []SetUse `json:"uses"` // one for each height of wedge that is cut from it
}

// SetUse is a strip set for wedges of one height.
type SetUse struct {
	Kinds []string `json:"kinds"` // names, in the order of help
	Bands []Band   `json:"bands"` // from the wide end of the wedge to its tip
}

// Band is one strip of a set.
type Band struct {
	Fabric        string     `json:"fabric"` // or the pool of scraps
	Rest          bool       `json:"rest"`   // the layout left its width to what the others leave
	Equal         bool       `json:"equal"`  // it shares what the others leave with strips as wide
	WidthCut      measure.NM `json:"width_cut"`
	WidthFinished measure.NM `json:"width_finished"`
}

// stripSets are the sets that wedges are cut from, in the order of the layout.
func stripSets(d *layout.Design, t *quilt.Top) []StripSet {
	var list []StripSet
	for i := range d.StripSets {
		set := StripSet{Name: d.StripSets[i].Name}
		for _, h := range heightsOf(d, &d.StripSets[i]) {
			set.Uses = append(set.Uses, SetUse{kindsCutFrom(d, i, h), bands(d, t, &d.StripSets[i], h)})
		}
		if len(set.Uses) > 0 {
			list = append(list, set)
		}
	}
	return list
}

// heightsOf are the heights of wedge that a set is used for.
func heightsOf(d *layout.Design, s *layout.StripSet) []blocks.WedgeHeight {
	var list []blocks.WedgeHeight
	for h := range blocks.Heights {
		if d.StripsCut[h] != 0 && s.Bands[0].Cut[h] != 0 {
			list = append(list, blocks.WedgeHeight(h))
		}
	}
	return list
}

func bands(d *layout.Design, t *quilt.Top, s *layout.StripSet, h blocks.WedgeHeight) []Band {
	list := make([]Band, len(s.Bands))
	for i, b := range s.Bands {
		name := ""
		if b.Fabric >= 0 {
			name = t.Fabrics[b.Fabric].Name
		} else {
			name = d.Pools[b.Pool].Name
		}
		list[i] = Band{name, b.Rest, b.Equal, b.Cut[h], b.Cut[h] - 2*d.Seam}
	}
	return list
}

// kindsCutFrom are the kinds of the grid with wedges of a height that come from a set.
func kindsCutFrom(d *layout.Design, set int, h blocks.WedgeHeight) []string {
	from := map[string]bool{}
	for _, c := range d.Cells {
		if c.Block < 0 || d.Blocks[c.Block].Kind.Height != h {
			continue
		}
		if b := &d.Blocks[c.Block]; takes(d, b, set) {
			from[b.Kind.Name] = true
		}
	}
	var names []string
	for _, k := range kindsUsed(d) {
		if from[k.Name] {
			names = append(names, k.Name)
		}
	}
	return names
}

// takes says whether wedges of a block come from a set.
func takes(d *layout.Design, b *layout.Block, set int) bool {
	for r, fills := range b.Fills {
		of := func(f layout.Fill) bool { return f.Set == set }
		if b.Kind.Roles[r].OfWebs {
			if len(d.Webs) > 0 {
				fills = d.Webs
			}
			if slices.ContainsFunc(d.WebTable, of) {
				return true
			}
		}
		if slices.ContainsFunc(fills, of) {
			return true
		}
	}
	return false
}
