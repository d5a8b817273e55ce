package main

import (
	"errors"
	"fmt"
	"io"
	"path/filepath"
	"slices"
	"strings"

	"github.com/spf13/cobra"

	"eighthturn/internal/document"
	"eighthturn/internal/files"
	"eighthturn/internal/measure"
	"eighthturn/internal/quilt"
	"eighthturn/internal/render"
	"eighthturn/internal/report"
	"eighthturn/internal/report/booklet"
	"eighthturn/internal/templates"
	"eighthturn/layout"
)

// patternNames are the names that `booklet` writes under.
func patternNames() outputNames {
	return outputNames{what: "pattern", endings: []string{pdfEnding, htmlEnding}, folder: "Markdown with its pictures", example: "harbor"}
}

// printedPattern is what `booklet` was asked for.
type printedPattern struct {
	output                        string
	force, strict, large, handout bool
	foundations, valueStudy       bool
	bothUnits                     bool
	cropMarks, imposed            bool
	paper                         choice
	without                       withoutValue
	times                         timesValue
	sessions                      sessionsValue
	copies                        copiesOption
	cut                           cutOptions
	in                            variantOption
}

// bookletCommand makes the document of a printed pattern.
func bookletCommand(c *console) *cobra.Command {
	o := &printedPattern{paper: choice{option: "paper", words: []string{"letter", "a4", "half", "a5"}}}
	cmd := &cobra.Command{
		Use:     "booklet FILE [-o OUT]",
		Short:   "the printed pattern, or a class handout",
		GroupID: toCutSew,
		Long: "Makes the printed pattern: cover, general instructions, fabric requirements, cutting, blocks step by " +
			"step, layout, borders, finishing, a coloring page and templates. A name ending in .pdf gives pages to " +
			"print at 100%; .html gives one page for a browser; a folder name ending in / gives Markdown to edit, " +
			"with its pictures. Without -o, the pattern is a PDF beside the layout.",
		Example: "eighthturn booklet harbor.quilt\n  makes harbor.pdf\n" +
			"eighthturn booklet harbor.quilt --paper half -o pattern.pdf\n  half-letter pages\n" +
			"eighthturn booklet harbor.quilt --imposed -o booklet.pdf\n  sheets to print on both sides, fold and staple\n" +
			"eighthturn booklet harbor.quilt -o pattern/\n  Markdown and SVG files to edit\n" +
			"eighthturn booklet harbor.quilt --handout --copies 12\n  makes harbor-handout.pdf, for a class of twelve",
		SuggestFor: []string{"pattern", "print", "book", "handout", "pdf"},
		Args:       oneLayout,
		RunE:       func(cmd *cobra.Command, args []string) error { return o.run(c, cmd, args[0]) },
	}
	f := cmd.Flags()
	patternNames().flag(cmd, &o.output, "the pattern's `NAME`: .pdf, .html, or a folder name ending in /")
	f.Var(&o.paper, o.paper.option, "the page `SIZE`: letter, a4, half (of a Letter sheet, or A5 for layouts in centimeters) or a5; if omitted, letter, or a4 for layouts in centimeters")
	f.BoolVar(&o.large, largeOption, false, "18-point type, in one column")
	f.BoolVar(&o.cropMarks, cropMarksOption, false, "add crop marks and a bleed of 1/8 in around each page")
	f.BoolVar(&o.imposed, imposedOption, false, "put half-letter or A5 pages two to a sheet, in order to fold and staple, without the templates")
	f.Var(&o.copies, "copies", "yardage and cutting for `N` quilts")
	o.addClass(cmd)
	f.Var(&o.without, "without", "leave out a `PART`: "+measure.List(mapped(booklet.Parts(), inUSSpelling))+"; may be repeated")
	f.BoolVar(&o.valueStudy, valueStudyOption, false, "add the designer's value study")
	f.BoolVar(&o.foundations, "foundations", false, "add half-block foundations for paper piecing, after the templates")
	o.cut.addCloth(cmd)
	o.cut.addPieces(cmd)
	o.in.flags(cmd)
	addBothUnits(cmd, &o.bothUnits)
	f.BoolVar(&o.force, forceOption, false, "replace a file that eighthturn did not make")
	f.BoolVar(&o.strict, strictOption, false, "make nothing if there are warnings")
	_ = cmd.RegisterFlagCompletionFunc(o.paper.option, o.paper.complete) // fails only for an option that is not there
	return cmd
}

func (o *printedPattern) run(c *console, cmd *cobra.Command, file string) error {
	if err := o.check(cmd, file); err != nil {
		return err
	}
	s, top, err := o.in.top(c, cmd, file, o.strict, "no pattern is made")
	if err != nil {
		return err
	}
	if o.output == "" {
		if s.info == nil || !s.info.Mode().IsRegular() {
			return misuse(cmd.CommandPath(), "a layout from a pipe gives the pattern no name", "name it with -o")
		}
		o.output = o.in.beside(s.path, pdfEnding)
		if o.handout { // beside the pattern, not in its place
			o.output = o.in.beside(s.path, "-handout"+pdfEnding)
		}
	}
	o.cut.copies = o.copies.count
	options, err := o.cut.of(cmd, top)
	if err != nil {
		return err
	}
	if note := o.costNote(top); note != "" {
		c.complain(s.name, note)
	}
	reports := booklet.Study(top, options)
	reports.Plans.BothShop = o.bothUnits
	if o.foundations {
		reports.Foundations = templates.Foundations(top)
	}
	if err := c.cannotCut(s, reports.Cuts, o.strict); err != nil {
		return err
	}
	if !o.handout {
		c.toFillIn(s, reports)
	}
	page := o.page(cmd.Flags().Changed(o.paper.option), top.Units)
	return o.write(c, s, o.document(reports, filepath.Base(beside(s.name, "")), page), page)
}

// costNote says beforehand what a pattern takes that takes long, "" for others.
func (o *printedPattern) costNote(top *quilt.Top) string {
	cost := booklet.CostOf(top)
	if o.handout || !cost.Long() {
		return ""
	}
	if form := ending(o.output); form == htmlEnding || form == folderEnding {
		cost.Megabytes *= webPattern
	}
	return fmt.Sprintf("note: a pattern of %s and %s takes about %d seconds, and up to %d MB\n",
		measure.Count(len(top.Faces), "piece"), measure.Count(cost.Blocks, "labeled block"), cost.Seconds, max(1, cost.Megabytes))
}

// webPattern is how many times as large as a PDF a pattern of text and SVG is.
const webPattern = 3

// document is the pattern or the handout.
func (o *printedPattern) document(r booklet.Reports, name string, paper render.Paper) document.Document {
	options := booklet.Options{Name: name, Paper: paper, Large: o.large, Without: o.without.parts, ValueStudy: o.valueStudy,
		Schedule: booklet.Schedule{Times: o.times.times, Sessions: o.sessions.minutes}}
	if o.handout {
		return booklet.Handout(r, options)
	}
	return booklet.Pattern(r, options)
}

// page is the size of page that was asked for, or the usual one for the layout's units.
func (o *printedPattern) page(asked bool, units measure.System) render.Paper {
	switch paper := render.Papers()[o.paper.index]; {
	case !asked && o.imposed, asked && paper == render.HalfLetter():
		return render.FoldedPaper(units)
	case !asked:
		return render.UsualPaper(units)
	default:
		return paper
	}
}

// check sees that names and numbers make sense before anything is read.
func (o *printedPattern) check(cmd *cobra.Command, file string) error {
	if err := patternNames().check(cmd, o.output); err != nil {
		return err
	}
	if o.output == stdio {
		return misuse(cmd.CommandPath(), "a pattern is written into a file, not to standard output", "for example -o harbor"+pdfEnding)
	}
	if file == stdio && o.output == "" {
		return misuse(cmd.CommandPath(), "a layout from standard input gives the pattern no name", "name it with -o")
	}
	if err := o.checkClass(cmd); err != nil {
		return err
	}
	if o.handout && len(o.without.parts) > 0 {
		return misuse(cmd.CommandPath(), "a handout has none of the parts that --without leaves out", "leave out --without, or --handout")
	}
	if o.handout && o.foundations {
		return misuse(cmd.CommandPath(), "a handout has no foundations", "leave out --foundations, or --handout")
	}
	if o.handout && o.valueStudy {
		return misuse(cmd.CommandPath(), "a handout has no value study", "leave out --"+valueStudyOption+", or --handout")
	}
	for _, name := range []string{o.paper.option, largeOption, cropMarksOption, imposedOption} {
		if form := ending(o.output); cmd.Flags().Changed(name) && (form == htmlEnding || form == folderEnding) {
			return misuse(cmd.CommandPath(), "--"+name+" works only with a PDF", "leave it out, or name a PDF with -o")
		}
	}
	return o.checkSheets(cmd)
}

// checkSheets sees that pages can be put on sheets as was asked for.
func (o *printedPattern) checkSheets(cmd *cobra.Command) error {
	if !o.imposed {
		return nil
	}
	if o.cropMarks {
		return misuse(cmd.CommandPath(), "pages on a sheet to fold have no crop marks", "leave out --"+cropMarksOption+", or --"+imposedOption)
	}
	if cmd.Flags().Changed(o.paper.option) && !render.Papers()[o.paper.index].Fold {
		return misuse(cmd.CommandPath(), "only half-letter and A5 pages fold out of a sheet", "write --paper half, or leave out --paper")
	}
	if templatesPart := booklet.Parts()[0]; !o.handout && !slices.Contains(o.without.parts, templatesPart) {
		o.without.parts = append(o.without.parts, templatesPart)
	}
	return nil
}

// Names of the options for sheets that are cut or folded.
const (
	cropMarksOption = "crop-marks"
	imposedOption   = "imposed"
)

// valueStudyOption is the name of the option for the study of light and dark.
const valueStudyOption = "value-study"

// withoutValue is the value of the option that leaves parts out.
type withoutValue struct{ parts []string }

func (w *withoutValue) String() string { return strings.Join(w.parts, ",") }
func (w *withoutValue) Type() string   { return "part" }

func (w *withoutValue) Set(text string) error {
	for _, p := range booklet.Parts() {
		if inUSSpelling(p) == inUSSpelling(text) {
			if !slices.Contains(w.parts, p) {
				w.parts = append(w.parts, p)
			}
			return nil
		}
	}
	list := choice{words: mapped(booklet.Parts(), inUSSpelling)}
	return &problem{message: fmt.Sprintf("after --without: found %s, expected %s", quoted(text), oneOfThese(list.words))}
}

// largeOption is the name of the option for large letters.
const largeOption = "large-print"

// Endings of the names of patterns.
const (
	pdfEnding  = ".pdf"
	htmlEnding = ".html"
)

// write writes the document in the form that its name asks for.
func (o *printedPattern) write(c *console, s *source, d document.Document, paper render.Paper) error {
	out := target{path: o.output, what: "pattern", example: "pattern" + pdfEnding, options: files.Options{Force: o.force, Never: s.madeFrom, Ours: patternOfOurs}}
	switch ending(o.output) {
	case folderEnding:
		return o.folder(c, d, out, paper)
	case htmlEnding:
		page, err := render.HTML(d)
		if err != nil {
			return &problem{faulty, s.name, err.Error(), ""}
		}
		return o.made(c, out, "", c.write(out, bytesOf(marked(page))))
	}
	printed, err := render.PDF(d, render.Options{Paper: paper, Large: o.large, CropMarks: o.cropMarks, Imposed: o.imposed, Marker: patternMarker})
	if err != nil {
		return &problem{faulty, s.name, err.Error(), o.shorter(err, paper)}
	}
	c.complainOf(printed.Warnings)
	more := ", " + measure.Count(printed.Pages, "page")
	if o.imposed {
		sheet := "Letter"
		if paper == render.A5() {
			sheet = "A4"
		}
		more += " on " + measure.Count(printed.Pages/4, "sheet") + "\nprint it on " + sheet + " at 100%, on both sides, flipped on the short edge; stack the sheets, fold them in half and staple the fold\n" +
			"the templates are not in it: print them with eighthturn templates, and do not scale them"
	}
	return o.made(c, out, more, c.write(out, bytesOf(printed.File)))
}

// shorter says what makes fewer pages of a pattern that has too many, "" for other faults.
func (o *printedPattern) shorter(err error, paper render.Paper) string {
	var long *render.TooLong
	if !errors.As(err, &long) {
		return ""
	}
	var ways []string
	if o.large {
		ways = append(ways, "leave out --"+largeOption)
	}
	if paper.Fold {
		ways = append(ways, "print on Letter or A4 paper")
	}
	ways = append(ways, "give blocks that are alike one label", "make patterns of parts of the quilt")
	return strings.Join(ways, ", or ")
}

// complainOf tells of signs that the printed letters lack.
func (c *console) complainOf(list []render.Warning) {
	for _, w := range list {
		if w.Kind == render.MissingSign {
			c.complain("", "note: "+layout.Visible(w.Message)+"\n")
		}
	}
}

// toFillIn names once what the pattern leaves room for, since the layout does not say it.
func (c *console) toFillIn(s *source, r booklet.Reports) {
	if list := report.ToFillIn(r.Plans); len(list) > 0 {
		c.complain(s.name, "note: the layout has no "+strings.Join(list, " and no ")+"; the pattern leaves a place to fill in\n")
	}
}

// made says what was made.
func (o *printedPattern) made(c *console, out target, more string, err error) error {
	if err != nil {
		return err
	}
	return c.print("made: " + layout.Visible(out.path) + more + "\n")
}

func bytesOf(b []byte) func(io.Writer) error {
	return func(w io.Writer) error {
		_, err := w.Write(b)
		return err
	}
}
