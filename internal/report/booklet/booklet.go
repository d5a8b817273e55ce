// Package booklet turns a top and its reports into the document of a printed pattern, or of a
// class handout.
//
// No number arises here: each comes from a report and is only put into words. Figures are
// numbered once all parts are there, so that a text may refer to one that comes later.
package booklet

import (
	"eighthturn/internal/document"
	"eighthturn/internal/measure"
	"eighthturn/internal/plan/cutting"
	"eighthturn/internal/plan/sewing"
	"eighthturn/internal/quilt"
	"eighthturn/internal/render"
	"eighthturn/internal/report"
	"eighthturn/internal/templates"
)

// Reports are what a booklet says. All are of the same top; Templates may be missing.
type Reports struct {
	Top       *quilt.Top
	Plans     *report.Plans // what the sewing chapters are made from
	Cuts      *cutting.Plan
	Sewing    *sewing.Plan
	Templates []templates.Template

	Foundations []templates.Foundation // to be printed behind the templates; nil for none
}

// Options choose what is printed. The zero value is the whole pattern.
type Options struct {
	Name       string       // for a layout without a title; "" for "Untitled quilt"
	Paper      render.Paper // that the document will be printed on; default Letter
	Large      bool         // it will be printed large
	Without    []string     // of Parts: what is left out
	Schedule   Schedule     // of a handout
	ValueStudy bool         // the study of light and dark is printed
}

// Pattern is the printed pattern; of a layout with sizes that of all of them.
func Pattern(r Reports, o Options) document.Document {
	if sizes := r.Plans.Sized(); len(sizes) > 1 {
		return patternOfSizes(r, o, sizes)
	}
	b := newBook(r, o)
	parts := b.body()
	b.parts = nil
	b.backCover(b.back)
	return b.whole(append(parts, b.parts...))
}

// body is all parts of the printed pattern but its back cover.
func (b *patternBuilder) body() []document.Section {
	for _, part := range []func(){b.cuttingPart, b.setsPart, b.blocksPart, b.layoutPart, b.assemblyPart, b.finishingPart, b.valuePart} {
		b.Plans.Sign().Look()
		part()
	}
	plates := b.templatesPart()
	b.notesPart()
	plates()
	b.labelsPart()
	b.colouringPart()
	b.foundationsPart(b.foundationPlates(templates.Most{OfPiece: maxPlates, InAll: maxPlates}))
	rest := b.parts
	b.parts = nil
	b.fabricsPart()
	b.colorwaysPart()
	rest = append(b.parts, rest...)
	b.parts = nil
	b.beginPart(rest)
	return append(b.parts, rest...)
}

// whole is the document of all parts.
func (b *patternBuilder) whole(parts []document.Section) document.Document {
	d := b.document(parts)
	d.Maker = report.Designed(own(b.Top.Credits.Designer))
	return numbered(d)
}

// patternBuilder is a document in the making.
type patternBuilder struct {
	Reports
	Options
	units   measure.System
	name    string           // of the quilt; "" for the top's title
	sized   bool             // it is one of several sizes
	letters []string         // of the fabrics, by index of the top's
	plans   *report.Plans    // with letters for the fabrics
	cut     document.Indexed // what is cut, as the report has it
	sewing  document.Indexed // how the top goes together, without the why
	front   *document.Cover
	parts   []document.Section
}

func newBook(r Reports, o Options) *patternBuilder {
	b := lettered(r, o, fabricLetters(r))
	b.nameTemplates(nil)
	return b
}

// lettered is a document in the making with letters for its fabrics.
func lettered(r Reports, o Options, letters []string) *patternBuilder {
	b := &patternBuilder{Reports: r, Options: o, units: r.Top.Units, letters: letters}
	plans := *r.Plans
	plans.Letters = b.letters
	b.plans = &plans
	b.cut = report.Cutting(b.plans).Down(document.Detail).Index()
	b.sewing = report.Sewing(b.plans).Down(document.Detail).Index()
	b.front = b.cover()
	return b
}

// part begins a part; what is added goes into the last one.
func (b *patternBuilder) part(title string, newPage bool) {
	b.parts = append(b.parts, document.Section{Title: title, NewPage: newPage})
}

// keep adds blocks that belong on one page.
func (b *patternBuilder) keep(list ...document.Block) { b.add(document.Together{Blocks: list}) }

func (b *patternBuilder) add(list ...document.Block) {
	last := &b.parts[len(b.parts)-1]
	last.Blocks = append(last.Blocks, list...)
}

// document puts parts behind the cover.
func (b *patternBuilder) document(parts []document.Section) document.Document {
	w := &b.Top.Credits
	d := document.Document{
		Title: b.title(), Maker: b.maker(), Author: own(w.Designer), Copyright: own(w.Copyright), Language: "en-US",
		Subject:  "A quilt pattern: fabric, cutting, sewing and finishing.",
		Keywords: "quilt, patchwork, pattern",
		Cover:    b.front, Sections: parts,
	}
	return d
}

// maker says who designed the quilt, "" where the layout does not.
func (b *patternBuilder) maker() string {
	if name := own(b.Top.Credits.Designer); name != "" {
		return report.Designed(name)
	}
	return ""
}

func (b *patternBuilder) title() string {
	for _, t := range []string{b.name, own(b.Top.Title), own(b.Name)} {
		if t != "" {
			return t
		}
	}
	return "Untitled quilt"
}
