package booklet

import (
	"strings"

	"eighthturn/internal/diagram"
	"eighthturn/internal/document"
	"eighthturn/internal/measure"
	"eighthturn/internal/report"
)

// assemblyPart is how the blocks become the top, as the sewing report says it, with figures, and with what is cut for each
// border.
func (b *patternBuilder) assemblyPart() {
	together := b.sewn(report.SewingTogether)
	b.part(together.Title, false)
	for _, text := range paragraphs(together.Blocks) { // of a top of one piece
		b.add(document.Paragraph{Text: text})
	}
	pictures := &assemblyFigures{b.topFigures(), len(b.rowParts())}
	for _, block := range together.Blocks {
		if s, ok := block.(document.Section); ok {
			b.joined(s, pictures)
		}
	}
}

// assemblyFigures are the pictures of the top as it is sewn together; that of the rows comes first, in parts where it is divided.
type assemblyFigures struct {
	list  []document.Figure
	parts int // of the rows, 0 where these are shown whole
}

// joined is one part of how the top goes together, its pictures behind it.
func (b *patternBuilder) joined(s document.Section, a *assemblyFigures) {
	var whole []document.Block
	if s.Title != "" {
		whole = append(whole, heading(1, s.Title))
	}
	shown := b.shownWith(s, a)
	divided := a.parts > 0 && len(shown) > 0 && shown[0] == 0
	for _, block := range printed(s.Blocks) {
		l, ok := block.(document.List)
		if !ok {
			whole = append(whole, block)
			continue
		}
		for i, it := range l.Items {
			var keys []string
			if i == 0 && s.ID == report.SewingLines {
				keys = append(keys, layoutKey)
			}
			for n := 0; i == 0 && !divided && n < len(shown); n++ {
				keys = append(keys, topKey(shown[n]))
			}
			if i == 0 && len(shown) == 0 && strings.HasPrefix(s.ID, report.SewingBorders) { // in the picture of the first border
				keys = append(keys, topKey(len(a.list)-1))
			}
			whole = append(whole, seeing(it.Text, keys...))
		}
	}
	if divided {
		var refs []string
		for _, n := range shown {
			refs = append(refs, see(topKey(n)))
		}
		whole = append(whole, paragraph(report.RowsDivided(refs, b.grid().Line())))
	}
	b.keep(whole...)
	b.assemblyPictures(a, shown)
	if s.ID == report.SewingBorder(1) {
		b.addNotes("border")
	}
}

// shownWith is which of the pictures of the top a part of it has, by index.
func (b *patternBuilder) shownWith(s document.Section, a *assemblyFigures) []int {
	var list []int
	n := 0
	for _, block := range b.sewn(report.SewingTogether).Blocks {
		other, ok := block.(document.Section)
		if !ok {
			continue
		}
		for _, it := range b.sewnItems(other.ID) {
			for range figures(it.Blocks) {
				for range max(1, a.parts*max(0, 1-n)) { // the first may be divided
					if other.ID == s.ID {
						list = append(list, n)
					}
					n++
				}
			}
		}
	}
	return list
}

// sewnTop are the pictures of the top as it is sewn together.
func (b *patternBuilder) sewnTop() []document.Figure {
	var list []document.Figure
	for _, block := range b.sewn(report.SewingTogether).Blocks {
		if s, ok := block.(document.Section); ok {
			for _, it := range b.sewnItems(s.ID) {
				list = append(list, figures(it.Blocks)...)
			}
		}
	}
	return list
}

// topFigures are those pictures with blocks named as the layout names them; that of the rows in parts where it is divided.
func (b *patternBuilder) topFigures() []document.Figure {
	list := b.sewnTop()
	for i := range list {
		list[i].Of = b.plainly(list[i].Of)
	}
	parts := b.rowParts()
	if len(parts) == 0 || len(list) == 0 {
		return list
	}
	var divided []document.Figure
	for _, f := range report.RowsInParts(b.plans, parts) {
		divided = append(divided, document.Figure{Of: *f, Least: b.leastRows(f)})
	}
	return append(divided, list[1:]...)
}

// rowParts are the parts of the picture of the rows where it is divided, so that arrows and labels can be read; nil where it is
// shown whole.
func (b *patternBuilder) rowParts() []report.Window {
	if !b.labelled() || b.noun() == "column" {
		return nil
	}
	whole, step := b.grid().RowsSize()
	room := b.mapRoom()
	if b.grid().SomeColumns() { // which are not divided
		whole[1], step[1] = 0, 1
	}
	room.Y -= rowsLegend
	if b.Large {
		room.Y -= 2 * rowsLegend // line by line
	}
	parts := b.partsOf(room, b.leastRowSide(), whole, step)
	if len(parts) < 2 {
		return nil
	}
	return parts
}

// rowsLegend is the height of a line of the legend below a picture of the rows, in points of usual print.
const rowsLegend = 13

// The least and the greatest side, in points of usual print, that a block in a picture of the rows is wanted to have for its arrows
// and its label.
const (
	leastRowBlock = 26
	mostRowBlock  = 40
)

// leastRowSide is how large a block is at the least in a picture of the rows, in points of usual print.
func (b *patternBuilder) leastRowSide() float64 {
	letters, widest := diagram.NewLettering(), 0.0
	for i := range b.Sewing.Blocks {
		widest = max(widest, letters.Width(b.Sewing.Blocks[i].Label, leastWords, false))
	}
	return min(max(leastRowBlock, widest/report.RowsLabelShare), mostRowBlock)
}

// leastRows is how wide a part of the rows is at the least in which labels can be read.
func (b *patternBuilder) leastRows(f *diagram.Figure) measure.NM {
	wide := float64(f.Max.X-f.Min.X)*b.leastRowSide()/float64(b.Top.SideFinished) + axisRoom
	return min(measure.NM(wide*b.zoom()/diagram.TrueScale), b.wholeWidth())
}

// assemblyPictures shows some of those pictures, by index.
func (b *patternBuilder) assemblyPictures(a *assemblyFigures, shown []int) {
	for _, i := range shown {
		f := a.list[i]
		f.Width = b.wholeWidth()
		if i > 0 && i >= a.parts && !b.Large { // frames round a center that is not shown
			f.Width = b.wholeWidth() * 3 / 5
			if b.paper().Fold { // where the numbers of narrow borders need the room
				f.Width = b.wholeWidth() * 3 / 4
				if wide, high := f.Of.Max.X-f.Of.Min.X, f.Of.Max.Y-f.Of.Min.Y; high <= wide*3/2 { // else the page is too low for it
					f.Least = f.Width
				}
			}
		}
		f.Caption = caption(topKey(i), sentence(f.Of.Title))
		b.add(f)
	}
}

func topKey(n int) string { return "top " + numeral(n) }
