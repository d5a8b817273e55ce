package main

import (
	"errors"
	"fmt"
	"io"
	"math"
	"slices"
	"strconv"
	"strings"

	"github.com/spf13/cobra"

	"eighthturn/internal/measure"
	"eighthturn/internal/quilt"
	"eighthturn/internal/render/picture"
	"eighthturn/layout"
	"eighthturn/palettes"
	"eighthturn/svgout"
)

// Endings of the names of pictures that are printed.
const (
	pixelsEnding = ".png"
	pageEnding   = ".pdf"
	jpegEnding   = ".jpg"
	webpEnding   = ".webp"
)

// Options of pictures that are printed.
const (
	dpiOption        = "dpi"
	longestOption    = "longest"
	marginOption     = "margin"
	bleedOption      = "bleed"
	backgroundOption = "background"
	qualityOption    = "quality"
	trueColorOption  = "true-color"
)

// printing is what `draw` was asked for about a picture's size on paper and what is round it.
type printing struct {
	dpi        dpiValue
	longest    extentValue
	margin     extentValue
	bleed      measureOption
	background backgroundValue
	quality    numberOption
	trueColor  bool
}

// flags adds the options to a command.
func (p *printing) flags(cmd *cobra.Command) {
	f := cmd.Flags()
	f.Var(&p.dpi, dpiOption, "for PNG, JPEG and WebP: `PIXELS` per inch of paper; 300 if omitted, or as --longest in pixels makes it at true size")
	p.longest = extentValue{option: longestOption, examples: [3]string{"10in", "25cm", "2100px"}}
	f.Var(&p.longest, longestOption, "for all but SVG: the picture's longer side, a `LENGTH` or pixels like 2100px; if omitted, true size for a PDF and 2100px for the others")
	p.margin, p.bleed.option = extentValue{option: marginOption, examples: [3]string{"2in", "5cm", "60px"}}, bleedOption
	f.Var(&p.margin, marginOption, "for all but SVG: a margin of this `LENGTH`, or of pixels like 60px, on every side, in addition to --longest; on a canvas it lies within")
	f.Var(&p.bleed, bleedOption, "for all but SVG: this extra `LENGTH` on every side for the printer to trim; without a margin the quilt extends into it")
	f.Var(&p.background, backgroundOption, "for all but SVG, and on a canvas: the `COLOR` around the quilt, or none; white if omitted")
	p.quality = numberOption{option: qualityOption, least: 1, most: 100, example: 85}
	f.Var(&p.quality, qualityOption, "for JPEG: a `NUMBER` from 1, small, to 100, fine; 92 if omitted")
	f.BoolVar(&p.trueColor, trueColorOption, false, "for PNG: each pixel in full color, for programs that take colors by number (indexed) badly")
}

// usualPixels is the longer side of a PNG picture where nothing is said of its size: what juries of shows ask for at the
// least (SAQA, digital submission guidelines: 2,100 pixels for the quilt).
const usualPixels = 2100

// frame is the frame of a picture of a top.
func (p *printing) frame(units measure.System, ending string) picture.Frame {
	f := picture.Frame{
		PerInch: p.dpi.value, Pixels: p.longest.pixels, Longest: p.longest.length.in(units),
		Margin: p.margin.length.in(units), MarginPixels: p.margin.pixels, Bleed: p.bleed.in(units), Background: p.background.colour, Clear: p.background.none,
		TrueColour: p.trueColor, Quality: p.quality.n,
	}
	if ending != pageEnding && f.PerInch == 0 && f.Pixels == 0 && f.Longest == 0 {
		f.Pixels = usualPixels
	}
	return f
}

// check refuses options that a picture of that ending has no use for.
func (p *printing) check(cmd *cobra.Command, ending string) error {
	changed := func(name string) bool { return cmd.Flags().Changed(name) }
	switch {
	case changed(qualityOption) && ending != jpegEnding:
		return misuse(cmd.CommandPath(), "only a JPEG picture has a --"+qualityOption, "leave it out, or name a JPEG: -o harbor"+jpegEnding)
	case changed(trueColorOption) && ending != pixelsEnding:
		return misuse(cmd.CommandPath(), "only a PNG picture has a use for --"+trueColorOption, "leave it out, or name a PNG: -o harbor"+pixelsEnding)
	case p.background.none && ending == jpegEnding:
		return misuse(cmd.CommandPath(), "a JPEG picture has a color everywhere, and no use for --"+backgroundOption+" none", "leave it out, or name a PNG: -o harbor"+pixelsEnding)
	case ending == "":
		for _, name := range []string{dpiOption, longestOption, marginOption, bleedOption, backgroundOption} {
			if changed(name) {
				return misuse(cmd.CommandPath(), "an SVG picture is as large as the quilt and has no --"+name, "name another kind of picture: -o harbor"+pixelsEnding+", -o harbor"+jpegEnding+" or -o harbor"+pageEnding)
			}
		}
		return nil
	}
	if changed(prefixOption) {
		return misuse(cmd.CommandPath(), "--"+prefixOption+" works only with an SVG picture", "leave it out")
	}
	if ending == pageEnding && (changed(dpiOption) || p.longest.pixels > 0 || p.margin.pixels > 0) {
		return misuse(cmd.CommandPath(), "a PDF picture is drawn in lines and has no pixels", "leave out --dpi, and write --longest and --margin as lengths, for example --longest 10in")
	}
	return nil
}

// printed is the ending of a picture that is printed, "" for an SVG.
func printed(output string) string {
	if e := ending(output); e != "" && e != pictureEnding && slices.Contains(pictureNames().endings, e) {
		return e
	}
	return ""
}

// scene is the picture as it is printed.
func (o *drawing) scene(top *quilt.Top) (*svgout.Scene, error) {
	options := o.options()
	options.ByFabric = true
	return svgout.NewScene(top, options)
}

// print writes the picture as a PNG, a JPEG or a PDF.
func (o *drawing) print(c *console, top *quilt.Top, out target) error {
	ending := printed(out.path)
	scene, err := o.scene(top)
	if err != nil {
		return err
	}
	frame := o.printing.frame(top.Units, ending)
	if ending == pageEnding {
		var refused *picture.TooLong
		err = c.write(out, func(w io.Writer) error {
			err := picture.PDF(w, scene, frame)
			_ = errors.As(err, &refused)
			return err
		})
		if refused != nil {
			err = refused
		}
		return o.drawn(c, out, "", err)
	}
	size, perInch, err := picture.PNGSize(scene, frame)
	if err == nil {
		err = o.pixels(c, scene, frame, out)
	}
	return o.drawn(c, out, fmt.Sprintf(", %d by %d pixels, %s an inch", size.Width, size.Height, strconv.FormatFloat(math.Round(perInch*100)/100, 'f', -1, 64)), err)
}

// pixels writes the picture in pixels.
func (o *drawing) pixels(c *console, scene *svgout.Scene, frame picture.Frame, out target) error {
	write := map[string]func(io.Writer, *svgout.Scene, picture.Frame) error{pixelsEnding: picture.PNG, jpegEnding: picture.JPEG, webpEnding: picture.WebP}[ending(out.path)]
	var large *picture.TooLarge
	err := c.write(out, func(w io.Writer) error {
		err := write(w, scene, frame)
		_ = errors.As(err, &large)
		return err
	})
	if large != nil {
		return large
	}
	return err
}

// drawn says what was drawn, or why nothing was.
func (o *drawing) drawn(c *console, out target, size string, err error) error {
	var large *picture.TooLarge
	var long *picture.TooLong
	switch {
	case err == nil:
		return c.print("drawn: " + layout.Visible(out.path) + size + "\n")
	case errors.As(err, &large):
		return &problem{misusing, out.path, large.Error(), o.smaller(large)}
	case errors.As(err, &long):
		return &problem{misusing, out.path, long.Error(), o.shorter(long)}
	}
	return err
}

// minPicture is the shortest picture that is offered in place of one that is too long.
const minPicture = measure.Inch

// shorter says what to type for the largest page that can be had.
func (o *drawing) shorter(e *picture.TooLong) string {
	if e.Longest >= minPicture {
		return "write --longest " + strconv.Quote(measure.Text(e.Longest, e.Units)) + ", or less"
	}
	margin, bleed := o.printing.margin.length.in(e.Units), o.printing.bleed.in(e.Units)
	page := max(e.Width, e.Height) - 2*(margin+bleed)
	if fits := (picture.MaxPage-page)/2 - bleed; fits >= minPicture && fits < margin {
		return "the margin alone is too wide: write --" + marginOption + " " + strconv.Quote(measure.Text(fits-fits%minPicture, e.Units)) + ", or less"
	}
	return "give it a smaller --" + marginOption + " and --" + bleedOption
}

// minPixels is the least number for --longest without a unit of which pixels are thought to be meant.
const minPixels = 100

// smaller says what to type for the largest picture that can be had.
func (o *drawing) smaller(e *picture.TooLarge) string {
	number := strings.TrimSpace(o.printing.longest.text)
	bare, err := strconv.Atoi(number)
	switch {
	case o.printing.longest.pixels > 0 && e.Longest > 0:
		return fmt.Sprintf("write --longest %dpx, or less", e.Longest)
	case err == nil && bare >= minPixels && o.printing.dpi.value == 0:
		return "for pixels write --longest " + number + "px"
	case e.PerInch > 0:
		return fmt.Sprintf("write --dpi %d, or less", e.PerInch)
	}
	return "give it a smaller --longest and --margin"
}

// pictureOfOurs says whether a file is a picture of ours, whatever its ending.
func pictureOfOurs(head []byte) bool {
	return drawnHere(head) || picture.IsOurs(head)
}

// dpiValue is the value of --dpi.
type dpiValue struct{ value float64 }

func (d *dpiValue) String() string {
	if d.value == 0 {
		return ""
	}
	return strconv.FormatFloat(d.value, 'f', -1, 64)
}

func (d *dpiValue) Type() string { return "number" }

// maxDPI is the most pixels an inch; no printer tells more apart.
const maxDPI = 4800

func (d *dpiValue) Set(text string) error {
	v, err := strconv.ParseFloat(strings.TrimSpace(strings.TrimSuffix(strings.ToLower(text), "dpi")), 64)
	if err != nil || !(v >= 1 && v <= maxDPI) {
		return &problem{message: fmt.Sprintf("after --%s: found %s, expected a number from 1 to %d", dpiOption, quoted(text), maxDPI), hint: "for example --dpi 300"}
	}
	d.value = v
	return nil
}

// extentValue is the value of an option that takes a length, or pixels.
type extentValue struct {
	option   string
	examples [3]string // in inches, in centimeters, in pixels
	length   measureOption
	pixels   int
	text     string
}

func (l *extentValue) String() string { return l.text }
func (l *extentValue) Type() string   { return "length" }

func (l *extentValue) Set(text string) error {
	fault := &problem{
		message: fmt.Sprintf("after --%s: found %s, expected a length or a number of pixels", l.option, quoted(text)),
		hint:    fmt.Sprintf("for example --%s %s, --%s %s or --%s %s", l.option, l.examples[0], l.option, l.examples[1], l.option, l.examples[2]),
	}
	number, inPixels := strings.CutSuffix(strings.ToLower(strings.TrimSpace(text)), "px")
	l.text, l.pixels, l.length = text, 0, measureOption{option: l.option}
	if !inPixels {
		err := l.length.Set(text)
		if l.option == longestOption && err != nil {
			return fault
		}
		return err
	}
	n, err := strconv.Atoi(strings.TrimSpace(number))
	if err != nil || n < 1 || n > 1_000_000 {
		return fault
	}
	l.pixels = n
	return nil
}

// backgroundValue is the value of --background: a colour, or none.
type backgroundValue struct {
	colour *palettes.Colour
	none   bool
	text   string
}

func (b *backgroundValue) String() string { return b.text }
func (b *backgroundValue) Type() string   { return "color" }

func (b *backgroundValue) Set(text string) error {
	*b = backgroundValue{text: text, none: strings.EqualFold(text, "none")}
	if b.none {
		return nil
	}
	c, err := palettes.Parse(text)
	if err != nil {
		return &problem{message: fmt.Sprintf("after --%s: found %s, expected a color or none", backgroundOption, quoted(text)), hint: fmt.Sprintf(`for example --%s white or --%s "#f4ead7"`, backgroundOption, backgroundOption)}
	}
	b.colour = &c
	return nil
}
