package sewing

import "slices"

// makes groups the units of each step that are alike.
func (s *sorting) makes(n int, c *FabricVariant) {
	kind := s.Plan.kinds[n]
	for at, step := range s.Blocks[n].Steps {
		from := len(c.Makes)
		for _, j := range step.Joins {
			if !s.Blocks[n].Column && !goesOn(step.Joins, j.Number) {
				s.make(c, from, Make{Step: at, Join: j.Number, Pieces: kind.joins[j.Number].all(), Cloths: clothsOf(c, kind.joins[j.Number].all())})
			}
		}
	}
}

// goesOn says whether a join's unit is sewn on to in the same step.
func goesOn(joins []Join, number int) bool {
	for _, k := range joins {
		if k.MadeA == number || k.MadeB == number {
			return true
		}
	}
	return false
}

// make counts a unit, with those of its step that are alike.
func (s *sorting) make(c *FabricVariant, from int, made Make) {
	made.Count = len(c.Cells)
	for i := from; i < len(c.Makes); i++ {
		if slices.Equal(c.Makes[i].Cloths, made.Cloths) {
			c.Makes[i].Count += made.Count
			return
		}
	}
	c.Makes = append(c.Makes, made)
}

// clothsOf is the cloths of some pieces.
func clothsOf(c *FabricVariant, pieces []int) []int {
	cloths := make([]int, len(pieces))
	for i, p := range pieces {
		cloths[i] = c.Cloths[p]
	}
	return cloths
}
