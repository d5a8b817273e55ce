package cutting

import "slices"

// AsCut is a fabric's strips with those made one that are cut alike, whichever lines of the plan their pieces supply; the
// lines are those of all of them.
func (f *Fabric) AsCut() []Strip {
	var list []Strip
	for i := range f.Strips {
		s := &f.Strips[i]
		at := slices.IndexFunc(list, func(t Strip) bool { return cutAlike(&t, s) })
		if at < 0 {
			joined := *s
			joined.Cuts = slices.Clone(s.Cuts)
			list = append(list, joined)
			continue
		}
		list[at].Times += s.Times
		for n := range s.Cuts {
			list[at].Cuts[n].Lines = bothLines(list[at].Cuts[n].Lines, s.Cuts[n].Lines)
		}
	}
	return list
}

func cutAlike(a, b *Strip) bool {
	return a.WidthCut == b.WidthCut && a.LengthCut == b.LengthCut && a.InBlock == b.InBlock && a.OnSheet == b.OnSheet && a.OnPrint == b.OnPrint && a.OnEnd == b.OnEnd && a.End == b.End && a.EndLeftCut == b.EndLeftCut &&
		slices.EqualFunc(a.Cuts, b.Cuts, func(c, d Cut) bool {
			if c.Use != ForJoining && !slices.Equal(c.Lines, d.Lines) {
				return false
			}
			return c.Set == d.Set && c.Use == d.Use && c.Units == d.Units && c.Rows == d.Rows && c.AcrossCut == d.AcrossCut && c.AlongCut == d.AlongCut && c.Nests == d.Nests
		})
}

func bothLines(a, b []int) []int {
	all := slices.Concat(a, b)
	slices.Sort(all)
	return slices.Compact(all)
}
