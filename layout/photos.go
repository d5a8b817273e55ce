package layout

import (
	"errors"
	"fmt"
	"math"
	"path"
	"path/filepath"
	"slices"
	"strings"

	"eighthturn/internal/measure"
	"eighthturn/palettes"
)

// Photo is the photo of a fabric.
type Photo struct {
	File   string     // as written
	Across measure.NM // how much cloth it shows from left to right
	Repeat *Repeat    // nil if not said
	palettes.PhotoSample
}

// Repeat is after how much cloth a print comes again, from selvage to selvage and along them.
type Repeat struct{ Across, Down measure.NM }

// repeatOfPrintNode is the repeat of a print as written.
type repeatOfPrintNode struct {
	Span
	Across, Down *LengthNode
}

// Shows is how much cloth the photo shows across and down; MaxCloth down where it was not read.
func (p *Photo) Shows() (across, down measure.NM) {
	if p.Width == 0 {
		return p.Across, MaxCloth
	}
	return p.Across, measure.NM(math.Round(float64(p.Across) * float64(p.Height) / float64(p.Width)))
}

// repeatOfPrint takes a print's repeat, its two lengths in either order.
func (c *cursor) repeatOfPrint() *repeatOfPrintNode {
	faults := len(c.list)
	n := &repeatOfPrintNode{Span: c.here()}
	c.newField()
	c.word()
	for range 2 {
		switch word := strings.ToLower(c.peek()); {
		case word == "across" && n.Across == nil:
			n.Across = c.lengthBehind("after how much fabric the print repeats across", c.option("repeat"))
		case word == "down" && n.Down == nil:
			n.Down = c.lengthBehind("after how much fabric the print repeats down the photo", c.option("repeat"))
		case len(c.list) == faults:
			c.fault(c.here(), "for example "+c.option("repeat"), "expected after how much fabric the print repeats, across and down, found %s", c.found())
			c.dropRest()
		}
	}
	n.Span = n.To(c.last())
	return n
}

// photo takes a fabric's colour from its photo.
func (c *checker) photo(n *fabricNode, f *Fabric) {
	p := &Photo{File: n.Swatch.Text, Across: 6 * measure.Inch}
	if c.design.Units == measure.Centimetres {
		p.Across = 15 * measure.Centimetre
	}
	if n.Across != nil {
		p.Across = c.within(n.Across, measure.Inch/4, MaxCloth, "how much fabric the photo shows across")
	}
	f.Photo = p
	c.repeat(n, p)
	if !c.photoName(n) {
		return
	}
	sample, err := c.photoSample(p.File)
	switch {
	case errors.Is(err, errTooLarge):
		if !c.photosFull {
			c.fault(n.Swatch.Span, "make the photos smaller; 1,000 pixels across is large enough", "%s", err.Error())
		}
		c.photosFull = true
		return
	case err != nil:
		c.fault(n.Swatch.Span, "or give a color, as in #1f3350", "%s: %s", quote(p.File), err.Error())
		return
	}
	p.PhotoSample, f.Colour = sample, sample.Colour
	c.repeatShown(n, p)
}

// repeat is the repeat of a photo's print.
func (c *checker) repeat(n *fabricNode, p *Photo) {
	r := n.Repeat
	if r == nil || r.Across == nil || r.Down == nil {
		return
	}
	p.Repeat = &Repeat{
		Across: c.within(r.Across, leastRepeat, c.widthOf(n), "the repeat across"),
		Down:   c.within(r.Down, leastRepeat, MaxCloth, "the repeat down"),
	}
}

// leastRepeat is the least repeat of a print that is read.
const leastRepeat = measure.Inch / 8

// repeatSlack is by what part a photo may fall short of a repeat: nobody cuts a photo to a thread.
const repeatSlack = 0.03

// repeatShown sees that a photo shows a whole repeat.
func (c *checker) repeatShown(n *fabricNode, p *Photo) {
	if p.Repeat == nil {
		return
	}
	across, down := p.Shows()
	short := func(shown, repeat measure.NM) bool { return float64(shown) < float64(repeat)*(1-repeatSlack) }
	if short(across, p.Repeat.Across) || short(down, p.Repeat.Down) {
		c.fault(n.Repeat.Span, "take a photo of one whole repeat, or say with across how much the photo shows", "the photo shows %s across and %s down, less than one repeat",
			c.text(measure.Nearest(across, c.design.Units.Mark())), c.text(measure.Nearest(down, c.design.Units.Mark())))
	}
}

// onceEach is a function of photos that looks at each once, and at no more once they are too large together.
func onceEach(photos func(file string) (palettes.PhotoSample, error)) func(file string) (palettes.PhotoSample, error) {
	if photos == nil {
		return nil
	}
	type seen struct {
		palettes.PhotoSample
		err error
	}
	known := map[string]seen{}
	pixels, bytes := 0, 0
	return func(file string) (palettes.PhotoSample, error) {
		s, ok := known[file]
		if ok {
			return s.PhotoSample, s.err
		}
		if err := tooLarge(pixels, bytes); err != nil {
			return palettes.PhotoSample{}, err
		}
		s.PhotoSample, s.err = photos(file)
		pixels, bytes = pixels+s.Pixels, bytes+s.Bytes
		if err := tooLarge(pixels, bytes); err != nil {
			s.err = err
		}
		known[file] = s
		return s.PhotoSample, s.err
	}
}

// errTooLarge is the fault of photos that are too large together.
var errTooLarge = errors.New("the photos")

// tooLarge says so of photos that have so many pixels and bytes together.
func tooLarge(pixels, bytes int) error {
	switch {
	case pixels > MaxPhotosPixels:
		return fmt.Errorf("%w down to this one have more than %d million pixels together", errTooLarge, MaxPhotosPixels/1_000_000)
	case bytes > MaxPhotosBytes:
		return fmt.Errorf("%w down to this one have more than %d MB together", errTooLarge, MaxPhotosBytes/1_000_000)
	}
	return nil
}

// photoSample is what a photo tells.
func (c *checker) photoSample(file string) (palettes.PhotoSample, error) {
	if c.photos == nil {
		return palettes.PhotoSample{}, fmt.Errorf("no photo can be read here")
	}
	return c.photos(file)
}

// photoName says whether a photo's name is one that a layout may have: of a file in its own
// folder or in one below it, so that a layout from elsewhere reads nothing else.
func (c *checker) photoName(n *fabricNode) bool {
	name := n.Swatch.Text
	switch {
	case strings.Contains(name, `\`):
		slashed := strings.ReplaceAll(name, `\`, "/")
		c.fault(n.Swatch.Span, "", "folders in the name of a photo are separated by /, found %s", quote(name)).suggest(write(`"` + slashed + `"`).saying("write " + slashed))
	case path.IsAbs(name) || !filepath.IsLocal(filepath.FromSlash(name)) || strings.Contains(name, ":"):
		c.fault(n.Swatch.Span, "put the photo beside the layout and write its name alone", "a photo must be in the layout's folder or in one below it, found %s", quote(name))
	case !slices.Contains([]string{".jpg", ".jpeg", ".png"}, strings.ToLower(path.Ext(name))):
		c.fault(n.Swatch.Span, `for example fabric `+n.Name.Text+` swatch "`+"photo.jpg"+`"`, "a photo is a JPEG or PNG file, found %s", quote(name))
	default:
		return true
	}
	return false
}
