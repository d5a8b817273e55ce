package preview

import (
	"io"

	"eighthturn/internal/document"
	"eighthturn/internal/render"
	"eighthturn/internal/report"
)

// saveCuttingMaps prints the cutting maps, and what is to be minded with a cutter.
func saveCuttingMaps(p *plans, w io.Writer) error {
	d := p.paged("cutting maps")
	for _, m := range report.CuttingMaps(&p.Plans) {
		d.Sections = append(d.Sections, document.Section{Blocks: []document.Block{document.Figure{Of: *m.Figure}}})
	}
	minded, _ := report.Cutting(&p.Plans).Section(report.CautionsID)
	minded.Blocks = []document.Block{document.Box{Caution: true, Blocks: minded.Blocks}}
	d.Sections = append(d.Sections, minded)
	return p.print(w, d)
}

// saveCuttingTable writes the cutting plan as a table.
func saveCuttingTable(p *plans, w io.Writer) error {
	_, err := io.WriteString(w, render.CSV(report.CuttingTable(&p.Plans)))
	return err
}

// saveSewing prints the sewing report with its pictures.
func saveSewing(p *plans, w io.Writer) error {
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
