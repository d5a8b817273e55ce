package booklet

import (
	"fmt"
	"slices"

	"eighthturn/internal/document"
	"eighthturn/internal/plan/cutting"
	"eighthturn/internal/quilt"
	"eighthturn/internal/templates"
)

// TemplateBook is the templates of a top by themselves, to be printed and cut round.
type TemplateBook struct {
	document.Document
	Templates, Foundations int
	Tiled                  []string // pieces that take several plates each
}

// tooLarge says that a template, or all of them, would need more plates than are printed.
type tooLarge struct {
	Name   string // "template T1"
	Plates int
}

// The most plates of templates by themselves.
const (
	mostOfPiece = 60
	mostOfAll   = 1000
)

func (e *tooLarge) Error() string {
	if e.Plates <= mostOfPiece {
		return fmt.Sprintf("the templates would take more than %d sheets of paper, the most that are printed", mostOfAll)
	}
	return fmt.Sprintf("%s would take %d sheets of paper; the limit is %d", e.Name, e.Plates, mostOfPiece)
}

// Templates are the templates of a top as a document, those of pieces that a ruler cuts among
// them, and behind them the halves of blocks for sewing on paper if they are asked for. The
// plates are laid as those of a pattern. Of the cutting plan its pieces alone are read. The error is a *tooLarge.
func Templates(t *quilt.Top, cuts *cutting.Plan, o Options, foundations bool) (*TemplateBook, error) {
	b := &patternBuilder{Reports: Reports{Top: t, Templates: templates.Build(t, cuts)}, Options: o, units: t.Units}
	if foundations {
		b.Foundations = templates.Foundations(t)
	}
	made := &TemplateBook{Templates: len(b.Templates), Foundations: len(b.Foundations)}
	most := templates.Most{OfPiece: mostOfPiece, InAll: mostOfAll}
	plates, large := templates.Plates(piecesOf(b.Templates, t), b.plateRoom(), most)
	if len(large) > 0 {
		return nil, &tooLarge{"template " + large[0].Name, large[0].Plates}
	}
	b.part("How to use them", false)
	b.add(document.List{Items: append(b.aboutTemplates(plates), b.aboutLines()...)})
	b.part("The pieces", false)
	b.add(b.sizedTable(plates)...)
	b.cautions()
	b.plates(plates, templateKey)
	halves, large := b.foundationPlates(most)
	if len(large) > 0 {
		return nil, &tooLarge{"foundation " + large[0].Name, large[0].Plates}
	}
	b.foundationsPart(halves, nil)
	for _, p := range slices.Concat(plates, halves) {
		if p.Part == 1 {
			made.Tiled = append(made.Tiled, p.Shows[0])
		}
	}
	made.Document = numbered(document.Document{
		Title: b.title() + ", templates", Maker: b.maker(), Author: own(t.Credits.Designer), Copyright: own(t.Credits.Copyright), Language: "en",
		Subject: "The pieces of a quilt at true size.", Sections: b.parts,
	})
	return made, nil
}

// aboutLines is what lines, dots and arrows of templates mean beyond what a pattern says of them.
func (b *patternBuilder) aboutLines() []document.Item {
	return []document.Item{
		item(document.Plain(b.units.AboutMeans())),
		item(lead("Blunt tips:", "sharp tips are trimmed one seam allowance beyond the seam point, so that raw edges align. Pin dot to dot.")),
		item(lead("Grain:", "align the arrow with the straight grain, as in pieces cut with a ruler: up the center of a wedge, with its base across the grain; along one side of the square corner of kites and triangles; and across a tumbler, from one parallel side to the other.")),
	}
}

// sizedTable says how large the pieces are and what is cut by each template.
func (b *patternBuilder) sizedTable(plates []templates.Plate) []document.Block {
	strips := para("Borders and sashes are strips: cut them with a ruler, following the cutting plan.")
	if len(b.Templates) == 0 {
		return []document.Block{para("This quilt has only strips; cut them with a ruler.")}
	}
	t := b.templateTable(b.Templates, plates)
	t.Columns = slices.Insert(t.Columns, 2, document.Column{Title: "Finished"}, document.Column{Title: "Template"})
	t.Columns[0].Title = "Name"
	for i := range t.Rows {
		finished, cut := b.Templates[i].Sizes()
		t.Rows[i].Cells = slices.Insert(t.Rows[i].Cells, 2, cell(b.units.By(finished.X, finished.Y)), cell(b.units.By(cut.X, cut.Y)))
	}
	if !b.hasStrips() {
		return []document.Block{t}
	}
	return []document.Block{t, strips}
}
