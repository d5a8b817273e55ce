package booklet

import (
	"slices"

	"eighthturn/internal/document"
	"eighthturn/internal/plan/sewing"
	"eighthturn/internal/report"
)

// assemblyPart is how the blocks become the top, as the sewing report says it, with figures, and with what is cut for each
// border.
func (b *patternBuilder) assemblyPart() {
	b.part("Putting the top together", false)
	for _, text := range paragraphs(b.sewn(report.SewingTogether).Blocks) { // of a top of one piece
		b.add(document.Paragraph{Text: text})
	}
	b.lines()
	if items := b.sewnItems(report.SewingLong); len(items) > 0 {
		b.add(heading(1, "The "+plural(b.line())+" together"))
		b.say(items)
	}
	for i := range b.Sewing.Assembly.Stages {
		if s := &b.Sewing.Assembly.Stages[i]; s.Sort == sewing.BorderStage {
			b.border(s.Number)
		}
	}
	b.say(b.sewnItems(report.SewingLoose))
	for _, id := range []string{report.SewingPressing, report.SewingGrain, report.SewingBulk} {
		if s := b.sewn(id); len(s.Blocks) > 0 {
			b.add(heading(1, s.Title))
			b.add(s.Blocks...)
		}
	}
	b.assemblyPictures()
}

// say adds the texts of items as paragraphs.
func (b *patternBuilder) say(items []document.Item) {
	for _, it := range items {
		b.add(document.Paragraph{Text: it.Text})
	}
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

// topFigures are those pictures with blocks named as the layout names them.
func (b *patternBuilder) topFigures() []document.Figure {
	list := b.sewnTop()
	for i := range list {
		list[i].Of = b.plainly(list[i].Of)
	}
	return list
}

// assemblyPictures shows those pictures.
func (b *patternBuilder) assemblyPictures() {
	list := b.topFigures()
	var refs []string
	for i := range list {
		refs = append(refs, see(topKey(i)))
	}
	if len(refs) > 0 {
		b.add(para("%s %s the order.", listed(refs), verb(len(refs), "shows", "show")))
	}
	for i, f := range list {
		f.Width = b.stepWidth()
		if i == 0 { // with every block and its label
			f.Width = b.wholeWidth()
		}
		f.Caption = caption(topKey(i), sentence(f.Of.Title))
		b.add(f)
	}
}

func topKey(n int) string { return "top " + numeral(n) }

// line is "row", or "column" where the blocks are sewn into columns first.
func (b *patternBuilder) line() string {
	if b.Sewing.Assembly.ByColumns {
		return "column"
	}
	return "row"
}

// lines is the rows, or columns, with the sashes between them, and how large they are.
func (b *patternBuilder) lines() {
	items := b.sewnItems(report.SewingLines)
	if len(items) == 0 {
		return
	}
	t := document.Table{Named: true, Columns: []document.Column{{Title: capital(plural(b.line()))}, {Title: "Unfinished"}}}
	for _, row := range b.alikeLines() {
		name := capital(numbersText(b.line(), row.numbers))
		if row.stage.Number == 0 {
			name = capital(count(len(row.numbers), "sash"))
		}
		t.Rows = append(t.Rows, document.Row{Cells: []document.Cell{cell(name), cell(b.unitSize(row.stage.Size))}})
	}
	whole := []document.Block{heading(1, capital(plural(b.line()))), seeing(items[0].Text, layoutKey)}
	for _, it := range items[1:] {
		whole = append(whole, document.Paragraph{Text: it.Text})
	}
	b.keep(append(whole, t)...)
}

// alike is rows or columns that have the same size.
type alike struct {
	numbers []int
	stage   *sewing.Stage
}

// alikeLines puts rows or columns together that differ in nothing but their number.
func (b *patternBuilder) alikeLines() []alike {
	var list []alike
	for i := range b.Sewing.Assembly.Stages {
		s := &b.Sewing.Assembly.Stages[i]
		if s.Sort != sewing.LineStage {
			continue
		}
		at := slices.IndexFunc(list, func(l alike) bool { return l.stage.Size == s.Size && (l.stage.Number > 0) == (s.Number > 0) })
		if at < 0 {
			at = len(list)
			list = append(list, alike{stage: s})
		}
		list[at].numbers = append(list[at].numbers, s.Number)
	}
	return list
}

// border is one border, from 1.
func (b *patternBuilder) border(number int) {
	n := number - 1
	edging := &b.Top.CutFacts.Borders[n]
	whole := []document.Block{heading(1, capital("border "+numeral(n+1)))}
	whole = append(whole, para("This border finishes %s wide, of fabric %s. Measure the quilt through the center before you cut the strips to length; the lengths below are the mathematical ones%s.",
		b.length(edging.Width), b.letters[edging.Fabric], b.roundedUp(n)))
	t := document.Table{Columns: []document.Column{{Title: "Pieces"}, {Title: "Cut"}}}
	plan := b.single()
	for i := range plan.Lines {
		line := &plan.Lines[i]
		if line.Border == n {
			t.Rows = append(t.Rows, document.Row{Cells: []document.Cell{cell(b.counted(line.Pieces, line)), cell(b.size(line.Piece.AcrossCut, line.Piece.AlongCut))}})
		}
	}
	whole = append(whole, t)
	for _, it := range b.sewnItems(report.SewingBorder(number)) {
		whole = append(whole, document.Paragraph{Text: it.Text})
	}
	b.keep(whole...)
	if n == 0 {
		b.addNotes("border")
	}
}

// roundedUp says that lengths of a border's strips are more than the quilt's, where a ruler has no mark for it.
func (b *patternBuilder) roundedUp(border int) string {
	for i := range b.single().Lines {
		if l := &b.single().Lines[i]; l.Border == border && l.Piece.TrimCut > 0 {
			return ", rounded up to the next ruler mark"
		}
	}
	return ""
}
