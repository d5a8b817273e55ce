package preview

import (
	"encoding/csv"
	"io"
	"strconv"

	"eighthturn/internal/document"
	"eighthturn/internal/measure"
	"eighthturn/internal/plan/cutting"
	"eighthturn/internal/render"
	"eighthturn/internal/report"
	"eighthturn/layout"
)

// saveMaps prints the cutting maps, and what is to be minded with a cutter.
func saveMaps(p *plans, w io.Writer) error {
	d := p.paged("cutting maps")
	plan := p.cutting()
	for _, m := range plan.Maps() {
		d.Sections = append(d.Sections, document.Section{Blocks: []document.Block{document.Figure{Of: *m.Figure}}})
	}
	d.Sections = append(d.Sections, document.Section{Title: "Mind your fingers", Blocks: []document.Block{caution(cutting.Cautions())}})
	return p.print(w, d)
}

// saveSteps prints the sewing report with its pictures.
func saveSteps(p *plans, w io.Writer) error {
	return p.print(w, report.Sewing(&p.Plans).Down(document.Detail).Print())
}

// paged is a document that has the quilt's title and nothing in it yet.
func (p *plans) paged(what string) document.Document {
	title := p.top.Title
	if title == "" {
		title = p.name
	}
	return document.Document{Title: title + ": " + what}
}

func paragraph(text string) document.Block { return document.Paragraph{Text: document.Plain(text)} }

func caution(list []string) document.Block {
	box := document.Box{Caution: true}
	for _, text := range list {
		box.Blocks = append(box.Blocks, paragraph(text))
	}
	return box
}

// saveTable writes the cutting plan as a table, with the columns that the command's has: a row
// for everything that is bought, for every piece, for every strip set, and for every stretch of
// every strip, in the order to cut. A length takes two columns: a decimal of the layout's unit,
// and the same as text.
func saveTable(p *plans, w io.Writer) error {
	plan := p.cutting()
	rows := [][]string{tableHead(plan.Units)}
	for _, r := range (cutting.Words{Plan: plan}).Table() {
		rows = append(rows, tableCells(&r, plan.Units))
	}
	return csv.NewWriter(w).WriteAll(rows)
}

func tableHead(units measure.System) []string {
	head := []string{"row", "fabric", "line", "what", "count"}
	for _, name := range cutting.TableLengths() {
		head = append(head, name+"_"+unitName(units), name)
	}
	return append(head, "strips", "pieces", "note")
}

func tableCells(r *cutting.TableRow, units measure.System) []string {
	cells := []string{r.Row, tableText(r.Fabric), r.Lines, tableText(r.What), strconv.Itoa(r.Count)}
	for _, nm := range r.Lengths {
		if nm > 0 {
			cells = append(cells, measure.Decimal(nm, units, 4), units.Nearest(nm))
		} else {
			cells = append(cells, "", "")
		}
	}
	return append(cells, part(r.Strips), part(r.Pieces), tableText(r.Note))
}

// tableText is words that no spreadsheet takes for a formula: an apostrophe keeps them from it,
// as spreadsheets themselves write it.
func tableText(text string) string {
	return render.Disarmed(layout.Visible(text))
}

// part is a number that has no part in its row if it is 0.
func part(n int) string {
	if n == 0 {
		return ""
	}
	return strconv.Itoa(n)
}
