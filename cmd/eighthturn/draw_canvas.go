package main

import (
	"cmp"
	"errors"
	"fmt"
	"io"
	"slices"
	"strconv"
	"strings"

	"github.com/spf13/cobra"

	"eighthturn/internal/measure"
	"eighthturn/internal/quilt"
	"eighthturn/internal/render"
	"eighthturn/internal/render/picture"
	"eighthturn/internal/report"
	"eighthturn/layout"
	"eighthturn/palettes"
	"eighthturn/svgout"
)

// Options of pictures to show.
const (
	canvasOption    = "canvas"
	besideOption    = "beside"
	blockOption     = "block"
	enlargeOption   = "enlarge"
	colorwaysOption = "colorways"
	noWordsOption   = "no-words"
)

// shownOptions is what `draw` was asked for about pictures to show.
type shownOptions struct {
	canvas         canvasValue
	beside         choice
	isBeside       bool
	block, enlarge string
	colorways      bool
	noWords        bool
}

func (o *shownOptions) flags(cmd *cobra.Command) {
	f := cmd.Flags()
	f.Var(&o.canvas, canvasOption, "a picture of this `SIZE` in pixels, with margins and with the title in type: "+canvasSizes()+", or a width and a height like 1000x1500")
	o.beside = choice{option: besideOption, words: mapped(svgout.Views(), inUSSpelling)}
	f.Var(&o.beside, besideOption, "show the quilt in a second `VIEW` too, beside the first")
	f.StringVar(&o.block, blockOption, "", "draw the block of this `LABEL` alone, or one whole web or star")
	f.StringVar(&o.enlarge, enlargeOption, "", "show the block of this `LABEL` enlarged beside the quilt, or one whole web or star")
	f.BoolVar(&o.colorways, colorwaysOption, false, "show the quilt as written and in all its colorways, each with its name")
	f.BoolVar(&o.noWords, noWordsOption, false, "on a canvas: leave out the title, the size and the designer")
}

// onCanvas says whether the picture is one on a canvas.
func (o *shownOptions) onCanvas() bool {
	return o.canvas.width > 0 || o.isBeside || o.enlarge != "" || o.colorways
}

// nameEnding is what the name of the picture ends in, behind the layout's.
func (o *shownOptions) nameEnding() string {
	switch {
	case o.colorways:
		return "-" + colorwaysOption + pixelsEnding
	case o.onCanvas():
		return pixelsEnding
	}
	return pictureEnding
}

// part is a block of a top by its label, or a whole figure; the top itself where none is named.
func (o *shownOptions) part(cmd *cobra.Command, top *quilt.Top, name, option string) (*quilt.Top, error) {
	if name == "" {
		return top, nil
	}
	part, err := top.Block(name)
	if err == nil {
		return part, nil
	}
	labels := labelsOf(top)
	if figure := strings.ToLower(name); slices.Contains(layout.Centers(), figure) {
		if part, err = top.Center(figure); err == nil {
			return part, nil
		}
		return nil, misuse(cmd.CommandPath(), err.Error(), "name a block: "+measure.List(labels))
	}
	return nil, misuse(cmd.CommandPath(), "after --"+option+": "+err.Error(), "blocks are: "+measure.List(labels))
}

// labelsOf are the labels of a top's blocks, each once.
func labelsOf(top *quilt.Top) (list []string) {
	for i := range top.Cells {
		if label := top.Cells[i].Label; label != "" && !slices.Contains(list, label) {
			list = append(list, label)
		}
	}
	return list
}

// checkCanvas refuses options that a picture on a canvas has no use for.
func (o *drawing) checkCanvas(cmd *cobra.Command) error {
	path, changed := cmd.CommandPath(), cmd.Flags().Changed
	e := ending(o.output)
	switch {
	case o.printing.background.none:
		return misuse(path, "a canvas has a color everywhere, and no use for --"+backgroundOption+" none", "leave it out, or name a color")
	case o.shown.isBeside && o.shown.beside.index == o.view.index:
		return misuse(path, "--"+besideOption+" names the view that is shown already", "name another, for example --"+besideOption+" value")
	case o.shown.colorways && (o.in.colorway != "" || len(o.tries) > 0):
		return misuse(path, "--"+colorwaysOption+" shows each colorway in its own fabrics", "leave out --"+colorwayName+" and --"+tryOption)
	case o.shown.block != "" && o.shown.enlarge != "":
		return misuse(path, "--"+blockOption+" draws a block alone, and --"+enlargeOption+" beside the quilt", "leave out one of them")
	case changed(qualityOption) && e != jpegEnding:
		return misuse(path, "only a JPEG picture has a --"+qualityOption, "leave it out, or name a JPEG: -o harbor"+jpegEnding)
	case changed(prefixOption) && e != pictureEnding:
		return misuse(path, "--"+prefixOption+" works only with an SVG picture", "leave it out")
	}
	for _, name := range []string{longestOption, bleedOption, trueColorOption, byFabricName} {
		if changed(name) {
			return misuse(path, "a canvas has its own size and colors, and no use for --"+name, "leave it out; --"+canvasOption+" says how large the picture is")
		}
	}
	return nil
}

// poster draws the picture on a canvas.
func (o *drawing) poster(c *console, cmd *cobra.Command, top *quilt.Top, out target) error {
	p, err := o.arranged(cmd, top)
	if err != nil {
		return err
	}
	return c.drawCanvas(p, out, o.printing.quality.n)
}

// arranged is what the canvas shows.
func (o *drawing) arranged(cmd *cobra.Command, top *quilt.Top) (*picture.Poster, error) {
	p := o.printing.poster(&o.shown.canvas, top.Units)
	tops, names := []*quilt.Top{top}, []string{""}
	if o.shown.colorways {
		if len(top.Colorways) == 0 {
			return nil, misuse(cmd.CommandPath(), "this layout has no colorways", "write one in the layout, for example colorway dusk "+top.Fabrics[0].Name+" #3a4f66")
		}
		names[0] = report.AsWritten
		for i := range top.Colorways {
			tops, names = append(tops, top.In(i)), append(names, report.ColorwayTitle(top.Colorways[i].Name))
		}
	}
	for i, t := range tops {
		parts, err := o.parts(cmd, t, i)
		if err != nil {
			return nil, err
		}
		p.Groups = append(p.Groups, picture.Group{Name: names[i], Parts: parts})
	}
	first := p.Groups[0].Parts[0].Scene
	p.Credits, p.Says, p.Description = first.Credits, first.Title, report.ShownTogether(descriptions(p))
	if !o.shown.noWords {
		p.Title, p.Lines = top.Title, report.PictureLines(top)
		if o.shown.block != "" {
			p.Lines = report.PartLines(o.shown.block, first.Top)
		}
	}
	return p, nil
}

// enlarged is the longer side of an enlarged block beside that of the quilt.
const enlarged = 0.5

// parts are the pictures of one top, the n-th of the canvas.
func (o *drawing) parts(cmd *cobra.Command, top *quilt.Top, n int) (list []picture.Part, err error) {
	whole, err := o.shown.part(cmd, top, o.shown.block, blockOption)
	if err != nil {
		return nil, err
	}
	add := func(t *quilt.Top, view int, size float64) error {
		one := *o
		one.view.index = view
		options := one.options()
		options.FarOff = true
		options.ByFabric, options.OnePaint, options.Prefix = true, false, fmt.Sprintf("%sp%d-", o.prefix.text, 10*n+len(list)+1)
		scene, err := svgout.NewScene(t, options)
		list = append(list, picture.Part{Scene: scene, Size: size})
		return err
	}
	err = add(whole, o.view.index, 1)
	if err == nil && o.shown.isBeside {
		err = add(whole, o.shown.beside.index, 1)
	}
	if err == nil && o.shown.enlarge != "" {
		var block *quilt.Top
		if block, err = o.shown.part(cmd, top, o.shown.enlarge, enlargeOption); err == nil {
			err = add(block, o.view.index, enlarged)
		}
	}
	return list, err
}

// descriptions are what the pictures of a canvas show.
func descriptions(p *picture.Poster) (list []string) {
	for _, g := range p.Groups {
		for _, part := range g.Parts {
			list = append(list, part.Scene.Description)
		}
	}
	return list
}

// canvasDPI is the pixels an inch of a canvas of which nothing else is said.
const canvasDPI = 300

// poster is an empty canvas of a size.
func (p *printing) poster(size *canvasValue, units measure.System) *picture.Poster {
	c := &picture.Poster{Width: size.width, Height: size.height, PerInch: cmp.Or(p.dpi.value, canvasDPI), Margin: -1, Ground: palettes.Colour{R: 255, G: 255, B: 255}}
	if p.background.colour != nil {
		c.Ground = *p.background.colour
	}
	switch {
	case p.margin.pixels > 0:
		c.Margin = float64(p.margin.pixels)
	case p.margin.text != "":
		c.Margin = float64(p.margin.length.in(units)) / float64(measure.Inch) * c.PerInch
	}
	return c
}

// drawCanvas writes a canvas in the kind of picture that its name asks for, and says what it drew.
func (c *console) drawCanvas(p *picture.Poster, out target, quality int) error {
	canvas, err := p.Arrange()
	var room *picture.NoRoom
	if errors.As(err, &room) {
		return &problem{misusing, out.path, room.Error(), "make it larger, give it a smaller --" + marginOption + ", or add --" + noWordsOption}
	}
	if err != nil {
		return err
	}
	write := canvasWriter(canvas, ending(out.path), quality)
	var long *picture.TooLong
	err = c.write(out, func(w io.Writer) error {
		err := write(w)
		_ = errors.As(err, &long)
		return err
	})
	if long != nil {
		return &problem{misusing, out.path, long.Error(), "write a smaller --" + canvasOption + " or a larger --" + dpiOption}
	}
	if err != nil || out.path == stdio {
		return err
	}
	if len(canvas.Lacks) > 0 {
		c.complain(out.path, render.LackingSigns(canvas.Lacks)+"\n")
	}
	return c.print(fmt.Sprintf("drawn: %s, %d by %d pixels, %s an inch\n", layout.Visible(out.path), canvas.Width, canvas.Height, strconv.FormatFloat(canvas.PerInch, 'f', -1, 64)))
}

// canvasWriter writes a canvas as a picture of an ending, as an SVG for none.
func canvasWriter(canvas *picture.Canvas, ending string, quality int) func(io.Writer) error {
	switch ending {
	case pixelsEnding:
		return canvas.PNG
	case jpegEnding:
		return func(w io.Writer) error { return canvas.JPEG(w, quality) }
	case webpEnding:
		return canvas.WebP
	case pageEnding:
		return canvas.PDF
	}
	return canvas.SVG
}

// namedCanvas is a size of a canvas that has a name, in pixels.
type namedCanvas struct {
	name          string
	width, height int
}

func canvasNames() []namedCanvas {
	return []namedCanvas{{"square", 2048, 2048}, {"portrait", 1080, 1350}, {"story", 1080, 1920}}
}

// canvasSizes lists them for help.
func canvasSizes() string {
	return strings.Join(mapped(canvasNames(), func(n namedCanvas) string { return fmt.Sprintf("%s (%dx%d)", n.name, n.width, n.height) }), ", ")
}

// canvasValue is the value of --canvas: width and height in pixels.
type canvasValue struct {
	width, height int
	text          string
}

func (v *canvasValue) String() string { return v.text }
func (v *canvasValue) Type() string   { return "size" }

func (v *canvasValue) Set(text string) error {
	for _, n := range canvasNames() {
		if strings.EqualFold(text, n.name) {
			*v = canvasValue{n.width, n.height, text}
			return nil
		}
	}
	across, down, ok := strings.Cut(strings.TrimSuffix(strings.ToLower(strings.ReplaceAll(text, " ", "")), "px"), "x")
	width, err := strconv.Atoi(across)
	height, err2 := strconv.Atoi(down)
	switch {
	case !ok || err != nil || err2 != nil:
		return &problem{message: fmt.Sprintf("after --%s: found %s, expected %s, or a width and a height in pixels", canvasOption, quoted(text), canvasSizes()), hint: "for example --" + canvasOption + " square or --" + canvasOption + " 1000x1500"}
	case min(width, height) < picture.MinCanvas || max(width, height) > picture.MaxCanvas:
		return &problem{message: fmt.Sprintf("after --%s: found %s, expected %d to %d pixels a side", canvasOption, quoted(text), picture.MinCanvas, picture.MaxCanvas), hint: "for example --" + canvasOption + " 1000x1500"}
	}
	*v = canvasValue{width, height, text}
	return nil
}
