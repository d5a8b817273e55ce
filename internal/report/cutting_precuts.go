package report

import (
	"strings"

	"eighthturn/internal/diagram"
	"eighthturn/internal/document"
	"eighthturn/internal/measure"
	"eighthturn/internal/plan/cutting"
	"eighthturn/internal/plan/supplies"
)

// OwnPrecutsID is the id of the section of fabrics that the layout cuts from precuts.
const OwnPrecutsID = "own-precuts"

// precutsNamed is so many precuts of a sort: "3 fat quarters", "12 squares of 10 in".
func precutsNamed(count int, p *cutting.FromPrecuts) string {
	size, word, sized := p.Name, "", false
	switch p.Sort {
	case supplies.SquarePrecut:
		size, sized = strings.CutSuffix(p.Name, " square")
		word = "square"
	case supplies.StripPrecut:
		size, sized = strings.CutSuffix(p.Name, " strip")
		word = "strip"
	}
	if sized {
		return measure.Count(count, word) + " of " + size
	}
	return measure.Count(count, p.Name)
}

// bought is what a fabric takes: the precuts that it is cut from, and what is bought by length.
func (c *cuts) bought(f *cutting.Fabric) string {
	switch {
	case f.From == nil || f.From.Used == 0:
		return c.shop(&f.Purchase)
	case f.Purchase.Buy == 0:
		return precutsNamed(f.From.Used, f.From)
	}
	return precutsNamed(f.From.Used, f.From) + " and " + c.shop(&f.Purchase)
}

// ownPrecuts says of the fabrics that are cut from precuts how far those go.
func (c *cuts) ownPrecuts() document.Section {
	var list []string
	for i := range c.Fabrics {
		if f := &c.Fabrics[i]; f.From != nil && (f.IsCut() || f.BackingCut > 0) {
			list = append(list, capital(c.name(i)+": "+c.howFar(f)))
		}
	}
	s := section(OwnPrecutsID, "Fabric from precuts", document.Answer)
	s.Blocks = bullets(list...)
	return s
}

// howFar says how far a fabric's precuts go.
func (c *cuts) howFar(f *cutting.Fabric) string {
	p := f.From
	usable := ""
	if p.Sort == supplies.FatQuarter || p.Sort == supplies.FatEighth {
		usable = " (usable size " + c.Units.By(p.Usable.Height, p.Usable.Width) + ")"
	}
	alone := ""
	if p.Alone > p.Have {
		alone = " With " + precutsNamed(p.Alone, p) + " no yardage is needed."
	}
	switch spare := p.Have - p.Used; {
	case p.Used == 0:
		return "its " + measure.Plural(p.Name) + usable + " save no yardage; cut it all from yardage." + alone
	case f.Purchase.Buy == 0 && spare == 0:
		return precutsNamed(p.Used, p) + usable + singular(p.Used, " is enough", " are enough") + "; buy no yardage."
	case f.Purchase.Buy == 0:
		return precutsNamed(p.Used, p) + usable + singular(p.Used, " is enough", " are enough") + " (" + number(spare) + " to spare); buy no yardage."
	}
	return "cut " + precutsNamed(p.Used, p) + usable + ", and " + c.shop(&f.Purchase) + " of yardage." + alone
}

// sheetsAtOnce is what a fabric's precuts are cut into: "8 strips 4 in from 2 fat quarters".
func (c *cuts) sheetsAtOnce(f *cutting.Fabric) []string {
	var list []string
	if f.From == nil {
		return nil
	}
	for n := range f.From.Sheets {
		strips := stripsByWidth(f, func(s *cutting.Strip) bool { return s.OnSheet == n })
		var words []string
		for _, s := range strips {
			words = append(words, measure.Count(s.count, "strip")+" "+c.length(s.width))
		}
		list = append(list, together(measure.List(words)+" from "+precutsNamed(f.From.Sheets[n].Times, f.From)))
	}
	return list
}

// widthCount is so many strips of a width.
type widthCount struct {
	width measure.NM
	count int
}

// stripsByWidth counts some of a fabric's strips, those of one width together, in their order.
func stripsByWidth(f *cutting.Fabric, which func(*cutting.Strip) bool) (list []widthCount) {
next:
	for i := range f.Strips {
		s := &f.Strips[i]
		if !which(s) {
			continue
		}
		for n := range list {
			if list[n].width == s.WidthCut {
				list[n].count += s.Times
				continue next
			}
		}
		list = append(list, widthCount{s.WidthCut, s.Times})
	}
	return list
}

// sheet draws a precut once with its strips, and how many there are like it.
func (d *clothMap) sheet(f *cutting.Fabric, n int) {
	sheet := &f.From.Sheets[n]
	top := d.y
	for i := range f.Strips {
		s := &f.Strips[i]
		if s.OnSheet != n {
			continue
		}
		one := *s
		one.Times = 1
		for range s.Times / sheet.Times {
			d.strip(&one, 0)
			d.y += s.WidthCut
		}
	}
	d.edge(rectangle(0, top, sheet.LengthCut, sheet.WidthCut))
	gap := f.UsableWidth / 100
	words := precutsNamed(sheet.Times, f.From)
	d.mark(diagram.Mark{Words: &diagram.Words{Text: words, At: measure.Point{X: sheet.LengthCut + gap, Y: top + sheet.WidthCut/2}, Points: marginPoints, Anchor: diagram.Start, Across: sheet.WidthCut}})
	d.y = top + sheet.WidthCut + gap
}

// onPrecuts says of a strip that lies on a precut on which; "" of others.
func onPrecuts(f *cutting.Fabric, s *cutting.Strip) string {
	if s.OnSheet < 0 {
		return ""
	}
	return "from " + precutsNamed(f.From.Sheets[s.OnSheet].Times, f.From)
}

// onMap is the same in the words of a map.
func onMap(f *cutting.Fabric, s *cutting.Strip) string {
	if words := onPrecuts(f, s); words != "" {
		return " " + words
	}
	return ""
}
