package main

import (
	"bytes"
	"io"
	"path/filepath"
	"strings"

	"github.com/spf13/cobra"

	"eighthturn/internal/files"
	"eighthturn/internal/plan/cutting"
	"eighthturn/internal/quilt"
	"eighthturn/internal/render"
	"eighthturn/internal/render/picture"
	"eighthturn/internal/report"
	"eighthturn/internal/report/booklet"
	"eighthturn/layout"
	"eighthturn/svgout"
)

// listingOptions is what `listing` was asked for.
type listingOptions struct {
	folder          string
	force, markdown bool
	json, bothUnits bool
	printing        printing
	in              variantOption
}

// listingCommand writes what a shop that sells the pattern shows.
func listingCommand(c *console) *cobra.Command {
	o := &listingOptions{}
	cmd := &cobra.Command{
		Use:     "listing FILE",
		Short:   "text and pictures for a shop",
		GroupID: toCutSew,
		Long: "Writes the text for a shop that sells the pattern: title, sizes, skill level, what to buy, skills, colorways, and how many pages the " +
			"printed pattern has. With --pictures a folder gets the text as a file, and the pictures: the quilt square and upright, in color " +
			"beside gray, with a block enlarged, and all colorways. All of them are written, or none.",
		Example:    "eighthturn listing harbor.quilt\neighthturn listing harbor.quilt --pictures shop --background ivory\n  the text and the pictures, in the folder shop",
		SuggestFor: []string{"sell", "publish", "shop"},
		Args:       oneLayout,
		RunE:       func(cmd *cobra.Command, args []string) error { return listing(c, cmd, o, args[0]) },
	}
	f := cmd.Flags()
	f.StringVar(&o.folder, picturesOption, "", "put the text and the pictures into this `FOLDER`")
	f.BoolVar(&o.markdown, "markdown", false, "the text as Markdown")
	f.BoolVar(&o.json, "json", false, "the same as JSON, for other programs")
	f.Var(&o.printing.background, backgroundOption, "the `COLOR` of the pictures around the quilt; white if omitted")
	f.BoolVar(&o.force, forceOption, false, "replace files that eighthturn did not make")
	o.in.flags(cmd)
	addBothUnits(cmd, &o.bothUnits)
	return cmd
}

func listing(c *console, cmd *cobra.Command, o *listingOptions, file string) error {
	if err := namesFolder(cmd, picturesOption, o.folder, "shop"); err != nil {
		return err
	}
	if o.printing.background.none {
		return misuse(cmd.CommandPath(), "a canvas has a color everywhere, and no use for --"+backgroundOption+" none", "leave it out, or name a color")
	}
	if o.json && o.markdown {
		return misuse(cmd.CommandPath(), "a listing is written in one form at a time, found --json and --markdown", "leave one of them out")
	}
	s, top, err := o.in.top(c, cmd, file, false, "no listing is written")
	if err != nil {
		return err
	}
	reports := booklet.Study(top, cutting.Options{})
	reports.Plans.BothShop = o.bothUnits
	if err := c.cannotCut(s, reports.Cuts, false); err != nil {
		return err
	}
	paper := render.UsualPaper(top.Units)
	printed, err := render.PDF(booklet.Pattern(reports, booklet.Options{Name: filepath.Base(beside(s.name, "")), Paper: paper}), render.Options{Paper: paper})
	if err != nil {
		return &problem{faulty, s.name, err.Error(), ""}
	}
	if o.json {
		return o.asJSON(c, cmd, s, reports.Plans, printed.Pages)
	}
	d := report.Listing(reports.Plans, printed.Pages)
	text := render.Text(d)
	if o.markdown {
		for _, form := range render.Forms() {
			if form.Name == "markdown" {
				if text, err = form.Write(d, render.Locale{}); err != nil {
					return err
				}
			}
		}
	}
	if o.folder == "" {
		return c.print(text)
	}
	made, err := o.write(c, cmd, top, text)
	if err != nil {
		return err
	}
	return c.print("written: " + shellWord(filepath.Clean(o.folder)) + ", " + listingText + " and " + strings.Join(made, ", ") + "\n")
}

// formatListing changes when what a name in the JSON means does.
const formatListing = 1

// asJSON prints a listing for other programs; with a folder its pictures are written, and named.
func (o *listingOptions) asJSON(c *console, cmd *cobra.Command, s *source, p *report.Plans, pages int) error {
	data := report.ListingData(p, pages)
	if o.folder != "" {
		made, err := o.write(c, cmd, p.Top, render.Text(report.Listing(p, pages)))
		if err != nil {
			return err
		}
		data.Pictures = made
	}
	return c.printJSON(planJSON(data, formatListing, s.name, p.Top.Units))
}

// listingText is the name of the text in a folder.
const listingText = "listing.txt"

// listingMark ends the text in a folder, so that it is known for one of ours.
const listingMark = "\n-- made by eighthturn --\n"

// write writes the text and all pictures, or none.
func (o *listingOptions) write(c *console, cmd *cobra.Command, top *quilt.Top, text string) (pictures []string, err error) {
	list := []files.File{{Name: listingText, Write: func(w io.Writer) error {
		_, err := io.WriteString(w, strings.TrimPrefix(listingMark, "\n")+text)
		return err
	}}}
	for _, shot := range o.shots(top) {
		p, err := shot.drawing.arranged(cmd, top)
		if err != nil {
			return nil, err
		}
		canvas, err := p.Arrange()
		if err != nil {
			return nil, &problem{faulty, shot.name, err.Error(), ""}
		}
		list = append(list, files.File{Name: shot.name, Write: func(w io.Writer) error { return canvas.JPEG(w, 0) }})
	}
	ours := func(head []byte) bool {
		return picture.IsOurs(head) || bytes.Contains(head, []byte(strings.TrimSpace(listingMark)))
	}
	out := target{path: o.folder, what: "listing", example: listingText, option: "--" + picturesOption, options: files.Options{Force: o.force, Ours: ours}}
	return mapped(list[1:], func(f files.File) string { return f.Name }), c.writeSet(out, "--"+picturesOption, list)
}

// shot is one picture of a listing.
type shot struct {
	name    string
	drawing *drawing
}

// worthEnlarging is a whole web or star of a top, or its first block where it has none.
func worthEnlarging(top *quilt.Top) string {
	for _, figure := range layout.Centers() {
		if _, err := top.Center(figure); err == nil {
			return figure
		}
	}
	return labelsOf(top)[0]
}

// shots are the pictures of a listing: as large as shops ask for, which is common practice.
func (o *listingOptions) shots(top *quilt.Top) []shot {
	on := func(width, height int, more func(*shownOptions)) *drawing {
		d := &drawing{printing: o.printing, view: choice{words: mapped(svgout.Views(), inUSSpelling)}}
		d.shown.canvas = canvasValue{width: width, height: height}
		d.shown.beside = choice{words: d.view.words}
		more(&d.shown)
		return d
	}
	list := []shot{
		{"square.jpg", on(2048, 2048, func(*shownOptions) {})},
		{"upright.jpg", on(1000, 1500, func(*shownOptions) {})},
		{"gray.jpg", on(2048, 2048, func(s *shownOptions) { s.isBeside, s.beside.index = true, int(svgout.Value) })},
	}
	if len(top.Cells) > 1 {
		list = append(list, shot{"block.jpg", on(2048, 2048, func(s *shownOptions) { s.enlarge = worthEnlarging(top) })})
	}
	if len(top.Colorways) > 0 {
		list = append(list, shot{colorwaysOption + jpegEnding, on(0, 0, func(s *shownOptions) { s.colorways = true })})
	}
	return list
}
