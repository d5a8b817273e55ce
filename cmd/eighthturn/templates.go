package main

import (
	"fmt"
	"io"
	"path/filepath"
	"strings"

	"github.com/spf13/cobra"

	"eighthturn/internal/files"
	"eighthturn/internal/measure"
	"eighthturn/internal/plan/cutting"
	"eighthturn/internal/quilt"
	"eighthturn/internal/render"
	"eighthturn/internal/render/pdf"
	"eighthturn/internal/report/booklet"
	"eighthturn/internal/templates"
	"eighthturn/layout"
)

// drawingEnding is how the names of drawings for other programs end.
const drawingEnding = ".dxf"

// templateNames are the names that `templates` writes under.
func templateNames() outputNames {
	return outputNames{what: "PDF or DXF file of templates", endings: []string{pageEnding, drawingEnding}, folder: "SVG files", example: "harbor-templates"}
}

// templating is what `templates` was asked for.
type templating struct {
	output        string
	force, strict bool
	foundations   bool
	paper         choice
	mat           matOption
	cut           cutOptions
	cuts          *cutting.Plan // once the layout is read: its pieces
	in            variantOption
}

// templatesCommand prints the pieces of a quilt at true size.
func templatesCommand(c *console) *cobra.Command {
	o := &templating{paper: choice{option: "paper", words: []string{"letter", "a4"}}}
	cmd := &cobra.Command{
		Use:     "templates FILE [-o OUT]",
		Short:   "the pieces at true size, to print and cut out",
		GroupID: toCutSew,
		Long: "Makes a PDF with each piece of the quilt at true size, once: cutting line, seam line, blunt tips, " +
			"matching dots, straight grain, and how many to cut of which fabric. Print it at 100%, with no scaling, " +
			"and measure the inch and centimeter squares on each page. Pieces larger than the paper come on several " +
			"sheets to tape together. A name ending in .dxf gives a drawing for other programs, " +
			"in inches, or in millimeters for layouts in centimeters: if a program asks, have it read the unit from the file. A folder gets an " +
			"SVG file for each piece, for cutting machines, in layers: cut, sew, marks, grain, labels; of a piece cut from a print also " +
			"print, its lines, and fabric, a pale picture to hide before cutting. --mat lays all pieces of each " +
			"fabric on mats instead. Border and sashing strips have no template: cut them with " +
			"a ruler.",
		Example: "eighthturn templates harbor.quilt\n  makes harbor-templates.pdf\n" +
			"eighthturn templates harbor.quilt --paper a4 --foundations -o pieces.pdf\n  on A4 paper, with half-block foundations for paper piecing\n" +
			"eighthturn templates harbor.quilt -o pieces/\n  makes an SVG file for each piece in the folder pieces\n" +
			"eighthturn templates harbor.quilt --mat 12x24 -o mats/\n  lays the pieces on mats for a cutting machine, with how often to cut each\n" +
			"eighthturn templates harbor.quilt --mat 12x24 -o mats.dxf\n  the same as one drawing\n" +
			"eighthturn templates harbor.quilt -o harbor.dxf\n  makes a drawing for other programs",
		SuggestFor: []string{"template", "pieces", "dxf", "foundation", "foundations"},
		Args:       oneLayout,
		RunE:       func(cmd *cobra.Command, args []string) error { return makeTemplates(c, cmd, o, args[0]) },
	}
	f := cmd.Flags()
	templateNames().flag(cmd, &o.output, "the `NAME` of a PDF or DXF file, or of a folder for SVG files; - for a PDF on standard output")
	f.Var(&o.paper, o.paper.option, "the `PAPER`: letter or a4; if omitted, letter for layouts in inches and a4 for layouts in centimeters")
	f.Var(&o.mat, matName, "with a folder or a DXF file: the pieces of each fabric laid on mats of this `SIZE`, across x down, as 12x24")
	f.BoolVar(&o.foundations, "foundations", false, "in a PDF: add half-block foundations for paper piecing")
	o.cut.addPieces(cmd)
	o.in.flags(cmd)
	f.BoolVar(&o.force, forceOption, false, "replace files that eighthturn did not make")
	f.BoolVar(&o.strict, strictOption, false, "make nothing if there are warnings")
	_ = cmd.RegisterFlagCompletionFunc(o.paper.option, o.paper.complete) // fails only for an option that is not there
	return cmd
}

func makeTemplates(c *console, cmd *cobra.Command, o *templating, file string) error {
	if err := o.check(cmd, file); err != nil {
		return err
	}
	s, top, err := o.in.top(c, cmd, file, o.strict, "no template is made")
	if err != nil {
		return err
	}
	options, err := o.cut.of(cmd, top)
	if err != nil {
		return err
	}
	o.cuts = cutting.Pieces(top, options)
	out := target{path: o.output, what: "template", example: "pieces" + pageEnding, options: files.Options{Force: o.force, Ours: templatesOfOurs, Never: s.madeFrom}}
	if out.path == "" {
		if s.info == nil || !s.info.Mode().IsRegular() {
			return misuse(cmd.CommandPath(), "a layout from a pipe gives the templates no name", "name them with -o, or write -o - for standard output")
		}
		out.path = o.in.beside(s.path, "-templates"+pageEnding)
	}
	switch {
	case o.mat.text != "":
		return o.mats(c, cmd, top, out)
	case isFolder(out.path):
		return o.svgs(c, top, out)
	case ending(out.path) == drawingEnding:
		list := templates.Build(top, o.cuts)
		if err := c.write(out, func(w io.Writer) error { return templates.DXF(w, top, list) }); err != nil {
			return err
		}
		return c.print(fmt.Sprintf("made: %s, %s\n", layout.Visible(out.path), measure.Count(len(list), "template")))
	}
	return o.pdf(c, cmd, s, top, out)
}

// check sees that the names of files make sense before anything is read.
func (o *templating) check(cmd *cobra.Command, file string) error {
	form := ending(o.output)
	if form == pictureEnding {
		return misuse(cmd.CommandPath(), "one SVG file does not hold all templates", templateNames().list()+": for example -o "+shellWord(folderFor(o.output)))
	}
	if err := templateNames().check(cmd, o.output); err != nil {
		return err
	}
	if file == stdio && o.output == "" {
		return misuse(cmd.CommandPath(), "a layout from standard input gives the templates no name", "name them with -o, or write -o - for standard output")
	}
	if cmd.Flags().Changed(o.paper.option) && (form == folderEnding || form == drawingEnding) {
		return misuse(cmd.CommandPath(), "--"+o.paper.option+" works only with a PDF", "leave it out, or name a PDF with -o")
	}
	if o.mat.text != "" && form != folderEnding && form != drawingEnding {
		return misuse(cmd.CommandPath(), "mats are SVG files in a folder, or one DXF file", "name a folder, ending in /: -o mats/, or a name ending in "+drawingEnding)
	}
	if o.foundations && (form == folderEnding || form == drawingEnding) {
		return misuse(cmd.CommandPath(), "foundations are for printing only", "name a PDF with -o, or leave out --foundations")
	}
	return nil
}

// folderFor is a file's name without its ending as that of a folder.
func folderFor(file string) string {
	if name := strings.TrimSuffix(filepath.Base(file), filepath.Ext(file)); name == "" {
		return filepath.Join(filepath.Dir(file), "pieces") + "/"
	}
	return strings.TrimSuffix(file, filepath.Ext(file)) + "/"
}

// templatesMarker stands near the beginning of every PDF of templates.
const templatesMarker = "eighthturn templates"

// templatesOfOurs says whether a file is one of templates, whatever its ending.
func templatesOfOurs(head []byte) bool {
	return templates.IsOurs(head) || pdf.Marked(head, templatesMarker)
}

// pdf writes all templates as pages.
func (o *templating) pdf(c *console, cmd *cobra.Command, s *source, top *quilt.Top, out target) error {
	page := render.UsualPaper(top.Units)
	if cmd.Flags().Changed(o.paper.option) {
		page = render.Papers()[o.paper.index]
	}
	book, err := booklet.Templates(top, o.cuts, booklet.Options{Name: filepath.Base(beside(s.name, "")), Paper: page}, o.foundations)
	if err != nil {
		return &problem{faulty, out.path, err.Error(), "cut such large pieces with a ruler, by the cutting plan; -o pieces.dxf or -o pieces/ still gives their outlines"}
	}
	printed, err := render.PDF(book.Document, render.Options{Paper: page, Marker: templatesMarker})
	if err != nil {
		return &problem{faulty, out.path, err.Error(), ""}
	}
	if err := c.write(out, bytesOf(printed.File)); err != nil || out.path == stdio {
		return err
	}
	text := fmt.Sprintf("made: %s, %s on %s", layout.Visible(out.path), measure.Count(book.Templates, "template"), measure.Count(printed.Pages, "page"))
	if o.foundations {
		text += ", " + measure.Count(book.Foundations, "foundation")
	}
	text += "; print it at 100%\n"
	for _, name := range book.Tiled {
		text += "larger than the paper, on several sheets: " + name + "\n"
	}
	c.complainOf(printed.Warnings)
	return c.print(text)
}

// svgs writes each template into a folder.
func (o *templating) svgs(c *console, top *quilt.Top, out target) error {
	list := templates.Build(top, o.cuts)
	set := make([]files.File, len(list))
	for i := range list {
		set[i] = files.File{Name: list[i].FileName() + pictureEnding, Write: func(w io.Writer) error { return list[i].SVG(w, top) }}
	}
	if err := c.writeSet(out, "-o", set); err != nil {
		return err
	}
	return c.print(fmt.Sprintf("made: %s in %s\n", measure.Count(len(list), "SVG template"), layout.Visible(out.path)))
}
