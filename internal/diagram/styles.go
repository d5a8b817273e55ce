package diagram

import "eighthturn/palettes"

// Pen is how a line is drawn on the page: width and dashes in points, dashes and gaps in
// turn.
type Pen struct {
	Width  float64
	Dashes []float64
	Colour palettes.Colour
}

// strokes are all styles of lines, in the order of a legend.
func strokes() []Stroke {
	return []Stroke{Cut, Sew, Partial, Thin, Trim, Fold, Grain, Pressing, Dimension, Frame, Repeat, PartFrame, NextFrame}
}

// words say what a line of the style is, for a legend.
func (s Stroke) words() string {
	switch s {
	case Cut:
		return "cut"
	case Sew:
		return "sew"
	case Partial:
		return "partial seam"
	case Thin:
		return "edge, or sewn seam"
	case Trim:
		return "trim after sewing"
	case Fold:
		return "fold"
	case Grain:
		return "straight grain"
	case Pressing:
		return "press this way"
	case Dimension:
		return "measure"
	case Frame:
		return "edge of the fabric"
	case Repeat:
		return "line of the print"
	case PartFrame:
		return "frame of this part"
	case NextFrame:
		return "frame of the adjoining part"
	}
	return ""
}

// Pen is how lines of the style are drawn; of NoStroke and unknown ones it has no width.
func (s Stroke) Pen() Pen {
	black, grey := Black(), palettes.Colour{R: 0x55, G: 0x55, B: 0x55}
	switch s {
	case Thin:
		return Pen{0.6, nil, palettes.Colour{R: 0x33, G: 0x33, B: 0x33}}
	case Cut:
		return Pen{1.4, nil, black}
	case Sew:
		return Pen{0.9, []float64{4, 2.5}, black}
	case Partial:
		return Pen{1.1, []float64{10, 4}, black}
	case Trim:
		return Pen{0.9, []float64{8, 2.2, 1.4, 2.2}, black}
	case Fold, NextFrame:
		return Pen{1, []float64{1, 2.4}, black}
	case Repeat:
		return Pen{0.9, []float64{1, 4}, black}
	case Grain:
		return Pen{0.9, nil, black}
	case Pressing:
		return Pen{1.6, nil, black}
	case Dimension:
		return Pen{0.5, nil, grey}
	case Gauge:
		return Pen{0.5, nil, black}
	case Frame, Window, PartFrame:
		return Pen{0.5, nil, palettes.Colour{R: 0x99, G: 0x99, B: 0x99}}
	}
	return Pen{}
}

// rimmed says whether lines of the style get a rim of the page's colour, since they must be
// seen on any fabric.
func (s Stroke) rimmed() bool {
	switch s {
	case Sew, Partial, Trim, Fold, NextFrame, Grain, Pressing:
		return true
	}
	return false
}

// rim is how far a rim reaches beyond a line or a letter, in points.
const rim = 1.1

// Black is what words and the lines of pieces are drawn with: black itself, which printers print with one ink and without a screen, so that
// small letters and thin lines keep their edges.
func Black() palettes.Colour { return palettes.Colour{} }

func page() palettes.Colour { return palettes.Colour{R: 255, G: 255, B: 255} }

// darkCloth is the CIE L* below which edges are drawn light.
const darkCloth = 40

// onCloth is a thin pen for the edge of a piece of that colour, light on dark cloth.
func (p Pen) onCloth(cloth palettes.Colour) Pen {
	if cloth.Lightness() < darkCloth {
		p.Colour = palettes.Colour{R: 0xc8, G: 0xc8, B: 0xc8}
	}
	return p
}

// mixed is a with a part of b, 0 to 1, by bytes.
func mixed(a, b palettes.Colour, part float64) palettes.Colour {
	channel := func(a, b uint8) uint8 { return uint8(float64(a) + float64((float64(b)-float64(a))*part) + 0.5) }
	return palettes.Colour{R: channel(a.R, b.R), G: channel(a.G, b.G), B: channel(a.B, b.B)}
}
