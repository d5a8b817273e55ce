package cutting

import (
	"cmp"
	"slices"
	"sort"

	"eighthturn/internal/measure"
	"eighthturn/internal/plan/supplies"
)

// FromPrecuts is what is cut from the precuts that the layout gives a fabric. They are cut before any yardage: each into strips side by
// side, along its longer or its shorter edge, and every strip as one of yardage is. Of the ways that are found the one that
// leaves least yardage is kept, and of those the one that takes the fewest precuts.
type FromPrecuts struct {
	supplies.Precut
	Have   int     `json:"have"`
	Used   int     `json:"used"`
	Alone  int     `json:"enough_alone"` // how many would do without yardage, as far as is found; 0 where no number would
	Sheets []Sheet `json:"cut"`          // like ones together
}

// Sheet is a precut as it is cut, or as many like ones. Its strips are those of the fabric that lie on it.
type Sheet struct {
	Times        int        `json:"precuts"`
	LengthCut    measure.NM `json:"length_cut"`     // along its strips
	WidthCut     measure.NM `json:"width_cut"`      // across them
	LeftWidthCut measure.NM `json:"left_width_cut"` // beside them
}

// fromPrecuts is the precuts of a fabric of the top, nothing cut from them yet; nil for none.
func (p *planning) fromPrecuts(top int) *FromPrecuts {
	stock := &p.top.CutFacts.Fabrics[top]
	if !stock.From.Some() {
		return nil
	}
	sorts := [...]supplies.PrecutSort{supplies.FatQuarter, supplies.FatEighth, supplies.SquarePrecut, supplies.StripPrecut} // in the language's order
	return &FromPrecuts{Precut: supplies.OwnPrecut(sorts[stock.From.Sort], stock.From.Size, stock.UsableWidth, p.Units), Have: stock.From.Count}
}

// sheet puts strips on precuts before those of yardage, precut by precut.
func (s *Strip) sheet() int {
	if s.OnSheet < 0 {
		return 1 << 30
	}
	return s.OnSheet
}

// IsCut says whether anything is cut from a fabric.
func (f *Fabric) IsCut() bool {
	return f.StripCount > 0 || len(f.Blocks) > 0 || len(f.FromPrint) > 0 || f.From != nil && f.From.Used > 0
}

// sheetSize is how a precut lies: the length of its strips, and the width that they lie side by side in.
type sheetSize struct{ length, width measure.NM }

// sizes are the ways in which a precut may lie: strips go along its longer or its shorter edge.
func (p *FromPrecuts) sizes() []sheetSize {
	long, short := max(p.Usable.Width, p.Usable.Height), min(p.Usable.Width, p.Usable.Height)
	if long == short || p.Sort == supplies.StripPrecut {
		return []sheetSize{{long, short}}
	}
	return []sheetSize{{long, short}, {short, long}}
}

// holds says whether one of what is wanted can be cut from a precut that lies so.
func (s sheetSize) holds(d *demand) bool { return d.across <= s.width && d.along+d.extra <= s.length }

// sheeted is precuts that are filled, and what is then left to be cut from yardage.
type sheeted struct {
	sheets []Sheet
	strips []Strip
	used   int
	left   []demand
}

// layWithPrecuts plans a fabric's strips on its precuts and on yardage.
func (f *Fabric) layWithPrecuts(list []demand) {
	own := *f.From
	fillings := []func(have int) *sheeted{}
	for _, choose := range []chooser{widestBeside, dearestBeside} {
		for lies := range len(own.sizes()) + 1 {
			fillings = append(fillings, func(have int) *sheeted { return f.fillSheets(list, have, choose, lies) })
		}
	}
	if e := f.newMixing(list, own.sizes()); e != nil {
		fillings = append(fillings, e.best)
	}
	var best Fabric
	for i, filling := range fillings {
		if i > 0 && f.budget.spent() {
			break
		}
		try := f.fewestSheets(own, filling)
		if i == 0 || cmp.Or(cmp.Compare(try.LengthCut, best.LengthCut), cmp.Compare(try.From.Used, best.From.Used), cmp.Compare(try.rows(), best.rows())) < 0 {
			best = *try
		}
	}
	best.From.Alone = f.alone(list, own)
	if best.LengthCut == 0 && len(f.FromPrint) == 0 {
		best.From.Alone = best.From.Used
	}
	*f = best
}

// fewestSheets is the plan of one way to fill precuts that takes no more of them than it must for as little yardage.
func (f *Fabric) fewestSheets(own FromPrecuts, filling func(have int) *sheeted) *Fabric {
	most := f.withSheets(own, filling(own.Have))
	if most.From.Used == 0 {
		return most
	}
	n := sort.Search(most.From.Used, func(n int) bool {
		return !f.budget.spent() && f.withSheets(own, filling(n)).LengthCut <= most.LengthCut
	})
	if n == most.From.Used {
		return most
	}
	if fewer := f.withSheets(own, filling(n)); fewer.LengthCut <= most.LengthCut {
		return fewer
	}
	return most
}

// withSheets is the plan with some precuts filled, and the rest from yardage.
func (f *Fabric) withSheets(own FromPrecuts, s *sheeted) *Fabric {
	try := *f
	try.From = &own
	own.Used, own.Sheets = s.used, s.sheets
	left := slices.DeleteFunc(slices.Clone(s.left), func(d demand) bool { return d.count == 0 })
	try.layYardage(left)
	try.Strips = slices.Concat(s.strips, try.Strips)
	return &try
}

// fillSheets fills precuts one after the other, up to a number of them: like ones together, each as it can be filled best. They
// lie in one of their ways, or, beyond the last, each in the way in which more of it is used.
func (f *Fabric) fillSheets(list []demand, have int, choose chooser, lies int) *sheeted {
	s := &sheeted{left: slices.Clone(list)}
	for s.used < have {
		filled := f.fillSheet(s.left, choose, lies)
		if len(filled.strips) == 0 {
			break
		}
		times := have - s.used
		for i := range s.left {
			if n := s.left[i].count - filled.left[i].count; n > 0 {
				times = min(times, s.left[i].count/n)
			}
		}
		for i := range s.left {
			s.left[i].count -= times * (s.left[i].count - filled.left[i].count)
		}
		s.add(filled, times)
	}
	return s
}

// add adds a precut that is filled in one way, so many times.
func (s *sheeted) add(filled *sheeted, times int) {
	for _, strip := range filled.strips {
		strip.Times, strip.OnSheet = strip.Times*times, len(s.sheets)
		s.strips = append(s.strips, strip)
	}
	sheet := filled.sheets[0]
	sheet.Times = times
	s.sheets, s.used = append(s.sheets, sheet), s.used+times
}

// fillSheet fills one precut.
func (f *Fabric) fillSheet(list []demand, choose chooser, lies int) *sheeted {
	sizes := f.From.sizes()
	if lies < len(sizes) {
		sizes = sizes[lies : lies+1]
	}
	var best *sheeted
	most := -1.0
	for _, size := range sizes {
		one := Fabric{UsableWidth: f.UsableWidth, budget: f.budget, Blocks: []Block{{LengthCut: size.width, LeftWidthCut: size.length}}}
		s := &sheeted{left: slices.Clone(list)}
		s.strips = one.beside(s.left, choose)
		used := 0.0
		for i := range list {
			d := &list[i]
			used += float64(d.count-s.left[i].count) * float64(d.across) * float64(d.along)
		}
		if used > most {
			best, most = s.lying(size), used
		}
	}
	return best
}

// lying is one filled precut with how it lies.
func (s *sheeted) lying(size sheetSize) *sheeted {
	left := size.width
	for i := range s.strips {
		left -= measure.NM(s.strips[i].Times) * s.strips[i].WidthCut
		s.strips[i].InBlock = -1
	}
	s.sheets = []Sheet{{1, size.length, size.width, left}}
	return s
}

// maxAlone is up to how many precuts are counted.
const maxAlone = 10_000

// alone is how many precuts would do without yardage, as the ways to fill them one after the other find it; 0 where none would.
func (f *Fabric) alone(list []demand, own FromPrecuts) int {
	if len(f.Blocks) > 0 || len(f.FromPrint) > 0 {
		return 0
	}
	for i := range list {
		if d := &list[i]; !slices.ContainsFunc(own.sizes(), func(s sheetSize) bool { return s.holds(d) }) {
			return 0
		}
	}
	least := 0
	for lies := range len(own.sizes()) + 1 {
		s := f.fillSheets(list, maxAlone, widestBeside, lies)
		if all := !slices.ContainsFunc(s.left, func(d demand) bool { return d.count > 0 }); all && (least == 0 || s.used < least) {
			least = s.used
		}
	}
	return least
}

// leftOnSheets adds what is left beside the strips of precuts.
func (f *Fabric) leftOnSheets() {
	if f.From == nil {
		return
	}
	for _, s := range f.From.Sheets {
		f.left(s.LeftWidthCut, s.LengthCut, s.Times)
	}
}

// warnSmallPrecuts warns of precuts of which nothing that is wanted can be cut.
func (p *planning) warnSmallPrecuts(f *Fabric, list []demand) {
	if f.From == nil || len(list) == 0 {
		return
	}
	least := list[0]
	for i := range list {
		d := &list[i]
		if slices.ContainsFunc(f.From.sizes(), func(s sheetSize) bool { return s.holds(d) }) {
			return
		}
		if float64(d.across)*float64(d.along+d.extra) < float64(least.across)*float64(least.along+least.extra) {
			least = *d
		}
	}
	at := p.top.CutFacts.Fabrics[f.Index].From.Span
	p.warn(Place(at), "leave from out, or write larger precuts: the smallest piece takes "+p.Units.By(least.across, least.along+least.extra),
		"nothing of %s can be cut from %s", f.Name, measure.WithArticle(f.From.Name))
}
