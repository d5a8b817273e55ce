package contrast

import (
	"cmp"
	"slices"

	"eighthturn/internal/blocks"
)

// neighbors finds the seams of those kinds that show no figure round a place: down a column and between columns, between the
// pieces of one block, and between blocks of one piece.
func (s *study) neighbors() []struct {
	sort    Sort
	members []member
} {
	kinds := blocks.Kinds()
	kindOf := make([]*blocks.Kind, len(s.Cells))
	for i := range s.Cells {
		if k, ok := blocks.Find(kinds, s.Cells[i].Kind); ok && shows(k) == "" {
			kindOf[i] = k
		}
	}
	sums := map[Sort]*member{}
	for i := range s.seams {
		one := &s.seams[i]
		if sort := s.neighborly(one, kindOf); sort != "" && !one.sameOne {
			if sums[sort] == nil {
				sums[sort] = &member{closed: true}
			}
			m := sums[sort]
			m.seams = append(m.seams, outlineSeam{int32(i), 1})
			m.faces = append(m.faces, one.a, one.b)
		}
	}
	var list []struct {
		sort    Sort
		members []member
	}
	for _, sort := range [4]Sort{DownColumns, BetweenColumns, InBlocks, Squares} {
		if m := sums[sort]; m != nil {
			slices.Sort(m.faces)
			m.faces = slices.Compact(m.faces)
			list = append(list, struct {
				sort    Sort
				members []member
			}{sort, []member{*m}})
		}
	}
	return list
}

// neighborly is the sort that a seam between such blocks belongs to, "" for none.
func (s *study) neighborly(one *seam, kindOf []*blocks.Kind) Sort {
	p, q := &s.Patches[s.Faces[one.a].Patch], &s.Patches[s.Faces[one.b].Patch]
	if one.strip || p.Cell < 0 || q.Cell < 0 {
		return ""
	}
	a, b := kindOf[p.Cell], kindOf[q.Cell]
	switch {
	case a == nil || b == nil:
		return ""
	case a.Column && b.Column && int(p.Cell)%s.Columns == int(q.Cell)%s.Columns:
		return DownColumns
	case a.Column && b.Column:
		return BetweenColumns
	case a.Column || b.Column:
		return ""
	case p.Cell == q.Cell:
		return InBlocks
	case len(a.Pieces) == 1 && len(b.Pieces) == 1:
		return Squares
	}
	return ""
}

// alternates is how many of the pieces in columns are darker than both their neighbors, or lighter than both; of those that
// have two.
func (s *study) alternates(members []member) float64 {
	steps := map[int32][]float64{} // by face, how much lighter it is than each neighbor
	for i := range members {
		for _, edge := range members[i].seams {
			one := &s.seams[edge.seam]
			steps[one.a] = append(steps[one.a], one.step)
			steps[one.b] = append(steps[one.b], -one.step)
		}
	}
	of, both := 0, 0
	for _, list := range steps {
		if len(list) != 2 {
			continue
		}
		of++
		if cmp.Compare(list[0], 0)*cmp.Compare(list[1], 0) > 0 {
			both++
		}
	}
	if of == 0 {
		return 0
	}
	return float64(both) / float64(of)
}
