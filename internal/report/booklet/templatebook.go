package booklet

import (
	"slices"

	"eighthturn/internal/document"
	"eighthturn/internal/plan/cutting"
	"eighthturn/internal/quilt"
	"eighthturn/internal/report"
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
	return report.PlatesLimit(e.Name, e.Plates, mostOfPiece, mostOfAll)
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
	b.part("", false)
	says := b.templateBook(plates)
	b.add(heading(1, report.TemplatesUse), document.List{Items: append(says.About(), says.Lines()...)})
	b.cautions(report.CutterCautions())
	pieces := []document.Block{heading(1, report.TemplatesPieces)}
	if len(b.Templates) > 0 {
		pieces = append(pieces, says.Table(b.Templates, shownIn(plates, templateKey), true))
	}
	b.keep(append(pieces, says.Strips()...)...)
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
		Title: b.title() + ", templates", Maker: b.maker(), Author: own(t.Credits.Designer), Copyright: own(t.Credits.Copyright), Language: "en-US",
		Subject: report.TemplatesSubject, Sections: b.parts,
	})
	return made, nil
}
