package main

import (
	"fmt"
	"io"
	"os"
	"path/filepath"
	"slices"
	"strconv"
	"strings"
	"unicode"

	"github.com/spf13/cobra"

	"eighthturn/internal/files"
	"eighthturn/internal/measure"
	"eighthturn/internal/render"
	"eighthturn/layout"
	"eighthturn/palettes"
)

// paletting is what `palette` was asked for.
type paletting struct {
	output  string
	force   bool
	inOrder bool
	hue     hueValue
	scheme  choice
	number  numberOption
}

// paletteNames are the names that `palette` writes under.
func paletteNames() outputNames {
	return outputNames{what: "palette file", endings: slices.Concat(mapped(writtenFormats(), func(f palettes.Format) []string { return f.Extensions })...), example: "stash"}
}

// numberName is needed twice.
const numberName = "number"

// schemes are the words for which hues a new palette may use beside its own, in the order of package palettes.
func schemes() []string { return []string{"one", "neighbors", "opposite", "thirds", "grays"} }

// paletteCommand makes a palette, or turns one into another kind of file.
func paletteCommand(c *console) *cobra.Command {
	o := &paletting{scheme: choice{option: "hues", words: schemes()}, number: numberOption{option: numberName, least: 2, most: 24, example: 9, counts: "fabrics"}}
	cmd := &cobra.Command{
		Use:     "palette [FROM] [-o OUT]",
		Short:   "fabrics from a hue, a photo or a palette file",
		GroupID: toBegin,
		Long: "Writes fabrics as lines for a layout, darkest first. FROM is a built-in palette, a layout, a palette " +
			"file (" +
			readEndings() +
			"), or a photo of several fabrics side by side (.jpg, .png), whose colors are estimates. Without FROM, " +
			"--hue makes a new palette in equal steps of value. Use -o to write a palette file: " +
			strings.Join(endings(writtenFormats()), ", ") +
			".",
		Example: "eighthturn palette --hue teal\n  seven teals from dark to light, as lines for a layout\n" +
			"eighthturn palette --hue \"#b5532a\" --hues opposite --number 9\n  nine fabrics in that rust and its opposite\n" +
			"eighthturn palette stash.jpg --number 8\n  eight colors from a photo, in value order\n" +
			"eighthturn palette tidewater -o tidewater.gpl\n  a built-in palette for a drawing program",
		SuggestFor: []string{"palettes", "colours", "colors", "swatch"},
		Args:       cobra.MaximumNArgs(1),

		ValidArgsFunction: offerPalette,

		RunE: func(cmd *cobra.Command, args []string) error { return makePalette(c, cmd, o, args) },
	}
	f := cmd.Flags()
	paletteNames().flag(cmd, &o.output, "the palette file's `NAME`; if omitted or -, lines for a layout")
	f.Var(&o.hue, "hue", "make a new palette of this `HUE`: a color, or degrees from 0 to 360")
	f.Var(&o.scheme, o.scheme.option, "which `HUES` a new palette has: "+strings.Join(schemes(), ", "))
	f.Var(&o.number, numberName, "how many fabrics to make, or to take from a photo: a `NUMBER` from 2 to 24; 7 if omitted")
	f.BoolVar(&o.inOrder, "by-value", false, "sort the fabrics of FROM by value")
	f.BoolVar(&o.force, forceOption, false, "replace an existing file")
	return cmd
}

func endings(list []palettes.Format) []string {
	return mapped(list, func(f palettes.Format) string { return f.Extensions[0] })
}

func readEndings() string { return strings.Join(endings(palettes.Formats()), ", ") }

func writtenFormats() []palettes.Format {
	return slices.DeleteFunc(palettes.Formats(), func(f palettes.Format) bool { return f.Write == nil })
}

func makePalette(c *console, cmd *cobra.Command, o *paletting, args []string) error {
	write, err := o.writer(cmd)
	if err != nil {
		return err
	}
	p, err := o.palette(c, cmd, args)
	if err != nil {
		return err
	}
	if o.inOrder {
		p.Fabrics = palettes.InValueOrder(p.Fabrics)
	}
	if o.output == "" || o.output == stdio {
		return c.print(fabricLines(p))
	}
	t := target{path: o.output, what: "palette", example: "stash.gpl", options: files.Options{Force: o.force}}
	if err := c.write(t, func(w io.Writer) error { return write(w, p) }); err != nil {
		return err
	}
	return c.print("written: " + layout.Visible(o.output) + ", " + measure.Count(len(p.Fabrics), "fabric") + "\n")
}

// writer is what writes the kind of file that was asked for, nil for lines of a layout.
func (o *paletting) writer(cmd *cobra.Command) (func(io.Writer, palettes.Palette) error, error) {
	if err := paletteNames().check(cmd, o.output); err != nil || o.output == "" || o.output == stdio {
		return nil, err
	}
	format, _ := palettes.FormatOf(o.output)
	return format.Write, nil // nil for a folder, which is refused when it comes to writing
}

// palette is the palette that was asked for.
func (o *paletting) palette(c *console, cmd *cobra.Command, args []string) (palettes.Palette, error) {
	changed := func(name string) bool { return cmd.Flags().Changed(name) }
	switch {
	case len(args) == 1 && (changed("hue") || changed("hues")):
		return palettes.Palette{}, misuse(cmd.CommandPath(), "a new palette is made of a hue and not from "+quoted(args[0]), "leave out one of the two")
	case len(args) == 1 && changed(numberName) && !isPhoto(args[0]):
		return palettes.Palette{}, misuse(cmd.CommandPath(), "--"+numberName+" is for new palettes and photos, but "+quoted(args[0])+" has fabrics of its own", "leave --"+numberName+" out")
	case len(args) == 1:
		return o.from(c, args[0])
	case changed("hue") || schemes()[o.scheme.index] == "grays":
		p, err := palettes.Ladder{Hue: o.hue.degrees, Scheme: palettes.Scheme(o.scheme.index), Rungs: o.number.n}.Palette()
		if err != nil {
			return p, misuse(cmd.CommandPath(), err.Error(), "for example "+cmd.CommandPath()+" --hue teal --number 9")
		}
		return p, nil
	}
	return palettes.Palette{}, misuse(cmd.CommandPath(), "no palette is named", "for example "+cmd.CommandPath()+" --hue teal")
}

// from reads a palette of ours, a layout, a palette file or a photo.
func (o *paletting) from(c *console, name string) (palettes.Palette, error) {
	if p, ok := palettes.Find(strings.ToLower(name)); ok {
		return p, nil
	}
	ending := strings.ToLower(filepath.Ext(name))
	if ending == layoutEnding || name == stdio {
		return c.fabricsOf(name)
	}
	format, isPalette := palettes.FormatOf(name)
	if !isPalette && !isPhoto(name) {
		hint := "built-in palettes are: " + strings.Join(mapped(palettes.All(), func(p palettes.Palette) string { return p.Name }), ", ")
		if new(hueValue).Set(name) == nil {
			hint = "for a new palette of that hue: eighthturn palette --hue " + shellWord(name)
		}
		return palettes.Palette{}, &problem{misusing, name, "this is no palette of ours, and no name for a palette file, a photo or a layout", hint}
	}
	file, err := openLayout(name)
	if err != nil {
		return palettes.Palette{}, err
	}
	defer file.Close()
	if info, err := file.Stat(); err != nil || !info.Mode().IsRegular() {
		return palettes.Palette{}, &problem{faulty, name, "this is not an ordinary file", ""}
	}
	p, err := o.read(file, format, isPhoto(name), name)
	if err != nil {
		return p, &problem{faulty, name, err.Error(), ""}
	}
	if n := len(p.Omitted); n > 0 {
		const most = 3 // of them are named
		text := strings.Join(p.Omitted[:min(n, most)], "; ")
		if n > most {
			text += fmt.Sprintf("; and %d more", n-most)
		}
		c.complain(name, layout.Visible(name)+": note: "+measure.Count(n, "color")+" omitted: "+layout.Visible(text)+"\n")
	}
	if n := len(p.Fabrics); n < o.number.n {
		c.complain(name, fmt.Sprintf("%s: note: no more than %s can be told apart in this photo, %d were asked for\n", layout.Visible(name), measure.Count(n, "color"), o.number.n))
	}
	return p, nil
}

// isPhoto says whether a file's name is that of a photo.
func isPhoto(name string) bool {
	return slices.Contains([]string{".jpg", ".jpeg", ".png"}, strings.ToLower(filepath.Ext(name)))
}

func (o *paletting) read(file *os.File, format palettes.Format, photo bool, name string) (palettes.Palette, error) {
	if !photo {
		return format.Read(file)
	}
	bytes, err := io.ReadAll(io.LimitReader(file, palettes.MaxPhotoBytes+1))
	if err != nil {
		return palettes.Palette{}, err
	}
	number := o.number.n
	if number == 0 {
		number = 7
	}
	return palettes.ReadSwatches(bytes, strings.TrimSuffix(filepath.Base(name), filepath.Ext(name)), number)
}

// fabricsOf are the fabrics of a layout.
func (c *console) fabricsOf(name string) (palettes.Palette, error) {
	_, top, err := c.top(name, false, "no palette is made")
	if err != nil {
		return palettes.Palette{}, err
	}
	p := palettes.Palette{Name: top.Title}
	for _, f := range top.Fabrics {
		p.Fabrics = append(p.Fabrics, palettes.Swatch{Name: f.Name, Colour: f.Colour})
	}
	return p, nil
}

// fabricLines are the fabrics of a palette as lines for a layout, with names that a layout may have.
func fabricLines(p palettes.Palette) string {
	var rows [][]string
	seen := map[string]int{}
	for _, s := range p.Fabrics {
		name := fabricName(s.Name)
		if seen[name]++; seen[name] > 1 {
			name = fmt.Sprintf("%s-%d", name, seen[name])
		}
		rows = append(rows, []string{"fabric", name, s.Colour.Hex(), fmt.Sprintf("# value %.0f", s.Colour.Lightness())})
	}
	return render.Aligned(rows, "")
}

// fabricName is a name for a layout, as near as can be to one from elsewhere.
func fabricName(from string) string {
	name := strings.Trim(strings.Map(func(r rune) rune {
		if unicode.IsLetter(r) || unicode.IsDigit(r) || unicode.Is(unicode.M, r) {
			return unicode.ToLower(r)
		}
		return '-'
	}, from), "-")
	if letters := []rune(name); len(letters) > layout.MaxNameChars-8 {
		name = string(letters[:layout.MaxNameChars-8])
	}
	if _, faults := layout.Parse(layout.NewSource("fabric " + name + " #123456\n")); name == "" || len(faults) > 0 {
		name = strings.Trim("cloth-"+name, "-")
	}
	return name
}

// hueValue is the value of --hue: a colour's hue, or degrees.
type hueValue struct {
	text    string
	degrees float64
}

func (h *hueValue) String() string { return h.text }
func (h *hueValue) Type() string   { return "hue" }

func (h *hueValue) Set(text string) error {
	if v, err := strconv.ParseFloat(text, 64); err == nil && v >= 0 && v <= 360 {
		h.text, h.degrees = text, v
		return nil
	}
	c, err := palettes.Parse(text)
	if err != nil {
		return &problem{message: fmt.Sprintf("after --hue: found %s, expected a color or degrees from 0 to 360", quoted(text)), hint: "for example --hue teal, --hue \"#b5532a\" or --hue 200"}
	}
	h.text, h.degrees = text, c.OKLCh().Hue
	return nil
}
