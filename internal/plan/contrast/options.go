package contrast

import (
	"fmt"
	"strings"

	"eighthturn/internal/measure"
	"eighthturn/internal/quilt"
	"eighthturn/internal/render/pixels"
	"eighthturn/palettes"
)

// Options of a study; the zero value judges plain cloth from across a room.
type Options struct {
	Contrast *Contrast          // thresholds; nil for the layout's, or where it has none for those of the house
	Distance measure.NM         // from eye to quilt; 0 for 10 feet
	Blur     measure.NM         // standard deviation of the squint's blur on the quilt; 0 for what the distance makes
	Prints   []Print            // by fabric, in place of what their photos tell; those left out are plain cloth; nil for the photos
	Palettes []palettes.Palette // where to look for another fabric, beside the quilt's own
}

// Contrast is a step in value, in CIE L*, that counts as soft and one that counts as clear.
type Contrast struct {
	Soft  float64 `json:"soft"`  // below it a seam vanishes
	Clear float64 `json:"clear"` // from it on a seam is clear
}

// Print is how uneven a cloth is.
type Print struct {
	Spread   float64 // standard deviation of CIE L* over the cloth; 0 for plain cloth
	Darkest  float64 // CIE L* that 5 of 100 points of the cloth lie below
	Lightest float64 // CIE L* that 5 of 100 points of the cloth lie above
}

// The thresholds of the house, in CIE L*.
const (
	// clearStep is about where lettering is just legible (NASA Ames, Color Usage, on
	// luminance contrast); using it for seams is our choice.
	clearStep = 20
	// strongStep makes a luminance ratio of 3 to 1, as WCAG 2.1 asks of graphics, at any
	// lightness.
	strongStep = 40
	// screamStep is the CIEDE2000 difference from which colour alone holds a seam whose
	// values vanish; our choice.
	screamStep = 20
	// nearStep is how near to a threshold a step is in doubt, since neighbours shift how
	// light a colour looks; our choice.
	nearStep = 3
)

const usualDistance = 10 * 12 * measure.Inch

// distance is the distance of the study.
func (o *Options) distance() measure.NM {
	if o.Distance > 0 {
		return o.Distance
	}
	return usualDistance
}

// squint is the blur of the study.
func (o *Options) squint() pixels.Squint {
	return pixels.Squint{Distance: o.distance(), Blur: o.Blur}
}

// print is how uneven a fabric is.
func (o *Options) print(fabric int) Print {
	if fabric < len(o.Prints) {
		return o.Prints[fabric]
	}
	return Print{}
}

// photographed is how uneven the fabrics of a top are by their photos, nil where it has none.
func photographed(t *quilt.Top) []Print {
	var prints []Print
	for f := range t.Fabrics {
		if p := t.Fabrics[f].Cloth; p != nil {
			if prints == nil {
				prints = make([]Print, len(t.Fabrics))
			}
			prints[f] = Print{p.Spread, p.Darkest, p.Lightest}
		}
	}
	return prints
}

// clear is the step that counts as clear.
func (o *Options) clear() float64 {
	if o.Contrast != nil {
		return o.Contrast.Clear
	}
	return clearStep
}

// strong is the step that counts as strong.
func (o *Options) strong() float64 { return max(strongStep, o.clear()) }

// Check says what is wrong with the options, nil if nothing is.
func (o *Options) Check() error {
	switch c := o.Contrast; {
	case o.Distance < 0 || o.Blur < 0:
		return fmt.Errorf("a distance and a blur cannot be below nothing")
	case c == nil:
		return nil
	case !(c.Soft > 0 && c.Soft < c.Clear && c.Clear <= 100):
		return fmt.Errorf("contrast %g %g: expected two steps in L*, the soft one above 0 and the clear one above it, up to 100", c.Soft, c.Clear)
	}
	return nil
}

// Try is another colour for a fabric.
type Try struct {
	Fabric int // index
	Colour palettes.Colour
}

// ReadTry reads "fabric=colour" without a top: the fabric's name and the colour.
func ReadTry(text string) (name string, colour palettes.Colour, err error) {
	name, written, ok := strings.Cut(text, "=")
	if !ok {
		return "", palettes.Colour{}, fmt.Errorf("%q: expected a fabric, an equals sign and a color, as in navy=#1f3350", text)
	}
	colour, err = palettes.Parse(strings.TrimSpace(written))
	return strings.TrimSpace(name), colour, err
}

// ParseTry reads "fabric=colour". A fault says which of the two is not known.
func ParseTry(t *quilt.Top, text string) (Try, error) {
	name, colour, err := ReadTry(text)
	if err != nil {
		return Try{}, err
	}
	for f := range t.Fabrics {
		if strings.EqualFold(t.Fabrics[f].Name, name) {
			return Try{f, colour}, nil
		}
	}
	return Try{}, fmt.Errorf("%q: no fabric of the layout is called %q", text, name)
}

// Tried is the top with other colours, and the stripes that have theirs from those fabrics; everything else the same. The top itself stays
// as it is.
func Tried(t *quilt.Top, tries []Try) *quilt.Top {
	tried := *t
	tried.Fabrics = append([]quilt.Fabric(nil), t.Fabrics...)
	for _, try := range tries {
		tried.Fabrics[try.Fabric].Colour, tried.Fabrics[try.Fabric].Cloth = try.Colour, nil
	}
	tried.RecolorStripes()
	return &tried
}
