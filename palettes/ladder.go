package palettes

import (
	"fmt"
	"math"
)

// Scheme says which hues a ladder may use beside its own. That such hues go together is custom, not a finding.
type Scheme int

const (
	OneHue     Scheme = iota
	Neighbours        // up to 30 degrees to either side
	Opposite          // and the one across
	Thirds            // and the two a third of a turn away
	Greys             // none at all
)

// Ladder is a wish for a palette whose fabrics rise in equal steps of value. The zero value is a ladder of seven reds.
type Ladder struct {
	Hue      float64 // of OKLCh, in degrees; any turn
	Scheme   Scheme
	Rungs    int     // fabrics, 2 to 24; 0 for 7
	Darkest  float64 // CIE L*, above 0 to below 100; 0 for 20
	Lightest float64 // CIE L*, up to 100; 0 for 92
	Chroma   float64 // of OKLCh, above 0 to 0.4, less in the lights; 0 for 0.09, which is muted
}

const (
	maxRungs = 24
	minRise  = 2.5 // L* from rung to rung, so that rounding to eight bits cannot turn two about
	muted    = 0.09
)

// From fadeFrom up to L* 100 the chroma falls to fadeTo of itself, in a straight line: full chroma makes sweets of the
// lights. A matter of taste.
const (
	fadeFrom = 65
	fadeTo   = 0.3
)

// Palette makes the fabrics, darkest first, each named after its hue and its L*. Equal ladders give equal palettes. Each
// rung takes, of the hues of the scheme, the one that lies farthest in CIEDE2000 from the rungs below it (the farthest
// point method of Glasbey and others 2007); of equal ones the first.
func (l Ladder) Palette() (Palette, error) {
	l = l.filled()
	if err := l.check(); err != nil {
		return Palette{}, err
	}
	p := Palette{
		Name:  l.name(),
		About: fmt.Sprintf("%d fabrics in equal steps of value, L* %.0f to %.0f", l.Rungs, l.Darkest, l.Lightest),
	}
	hues := l.hues()
	for i := range l.Rungs {
		lightness := l.Darkest + (l.Lightest-l.Darkest)*float64(i)/float64(l.Rungs-1)
		hue, c := l.farthest(hues, lightness, p.Fabrics)
		p.Fabrics = append(p.Fabrics, Swatch{fmt.Sprintf("%s-%02.0f", l.word(hue), lightness), c})
	}
	return p, nil
}

func (l Ladder) name() string {
	if l.Scheme == Greys {
		return "greys"
	}
	return fmt.Sprintf("%s-%03.0f", l.word(l.Hue), math.Floor(fullTurn(l.Hue)))
}

func (l Ladder) filled() Ladder {
	if l.Rungs == 0 {
		l.Rungs = 7
	}
	if l.Darkest == 0 {
		l.Darkest = 20
	}
	if l.Lightest == 0 {
		l.Lightest = 92
	}
	if l.Chroma == 0 {
		l.Chroma = muted
	}
	return l
}

func (l Ladder) check() error {
	if math.IsNaN(l.Hue) || math.IsInf(l.Hue, 0) {
		return fmt.Errorf("the hue is no number, expected degrees from 0 to 360")
	}
	if l.Rungs < 2 || l.Rungs > maxRungs {
		return fmt.Errorf("a ladder of %d fabrics, expected 2 to %d", l.Rungs, maxRungs)
	}
	if !(l.Darkest > 0 && l.Lightest <= 100 && l.Darkest < l.Lightest) {
		return fmt.Errorf("a ladder from L* %g to %g, expected the darker end first, both between 0 and 100", l.Darkest, l.Lightest)
	}
	if rise := (l.Lightest - l.Darkest) / float64(l.Rungs-1); rise < minRise {
		return fmt.Errorf("%d fabrics from L* %g to %g lie %.1f apart, expected at least %.1f; ask for fewer fabrics or a wider range",
			l.Rungs, l.Darkest, l.Lightest, rise, minRise)
	}
	if !(l.Chroma > 0 && l.Chroma <= 0.4) {
		return fmt.Errorf("a chroma of %g, expected above 0 to 0.4", l.Chroma)
	}
	return nil
}

// hues are the hues of the scheme in degrees, the ladder's own first.
func (l Ladder) hues() []float64 {
	turns := []float64{0}
	switch l.Scheme {
	case Neighbours:
		turns = []float64{0, 10, -10, 20, -20, 30, -30}
	case Opposite:
		turns = []float64{0, 180}
	case Thirds:
		turns = []float64{0, 120, 240}
	}
	for i := range turns {
		turns[i] = fullTurn(l.Hue + turns[i])
	}
	return turns
}

func (l Ladder) farthest(hues []float64, lightness float64, below []Swatch) (hue float64, c Colour) {
	chroma := l.chromaAt(lightness)
	most := -1.0
	for _, h := range hues {
		candidate := OKLCh{Chroma: chroma, Hue: h}.atLightness(lightness)
		nearest := math.Inf(1)
		for _, s := range below {
			nearest = min(nearest, Difference(candidate, s.Colour))
		}
		if nearest > most+1e-9 {
			most, hue, c = nearest, h, candidate
		}
	}
	return hue, c
}

func (l Ladder) chromaAt(lightness float64) float64 {
	switch {
	case l.Scheme == Greys:
		return 0
	case lightness < fadeFrom:
		return l.Chroma
	}
	return l.Chroma * (1 - (1-fadeTo)*(lightness-fadeFrom)/(100-fadeFrom))
}

// word is a plain word for a hue in degrees of OKLCh; the borders are our choice.
func (l Ladder) word(hue float64) string {
	if l.Scheme == Greys {
		return "grey"
	}
	words := []struct {
		upTo float64
		word string
	}{
		{10, "rose"}, {40, "red"}, {65, "orange"}, {90, "gold"}, {115, "yellow"}, {155, "green"}, {185, "jade"},
		{225, "teal"}, {270, "blue"}, {295, "indigo"}, {320, "violet"}, {345, "plum"},
	}
	h := fullTurn(hue)
	for _, w := range words {
		if h < w.upTo {
			return w.word
		}
	}
	return "rose"
}
