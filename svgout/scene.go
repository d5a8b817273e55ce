package svgout

import (
	"image"
	"iter"

	"eighthturn/internal/credits"
	"eighthturn/internal/measure"
	"eighthturn/internal/quilt"
	"eighthturn/palettes"
)

// Scene is a picture of a top as a flat list of what is drawn, from the bottom up: layers of
// outlines, lines, words and pixels. Views and options are resolved in it: whoever writes it
// looks nothing up and leaves nothing out. Outlines are in nanometres of the finished top, y
// downwards; widths of lines, words and boxes are in user units, 96 an inch (PixelsPerInch).
// What is filled with cloth names the fabric's number, and Paints says what that fabric shows.
type Scene struct {
	Top           *quilt.Top
	Title         string
	Credits       credits.Credits    // what the layout says of them, for the file's metadata
	Description   string             // what it shows, for someone who cannot see it
	Width, Height measure.NM         // of the whole picture, with its legend; its upper left corner is the top's
	Paints        []Paint            // by fabric
	Places        []quilt.ClothPlace // by face, where a fabric shows its print
	Layers        []Layer
	OnePaint      bool   // as in Options
	prefix        string // of all ids
}

// Paint is what a fabric shows, apart from where it lies.
type Paint struct {
	Colour palettes.Colour
	Print  *Print // in place of the colour where the fabric itself is seen; nil for the colour
}

// Print is one repeat of a cloth.
type Print struct {
	*quilt.Cloth
	Picture *image.RGBA
}

// Part is what a layer is to the whole picture.
type Part uint8

const (
	Over    Part = iota // drawn over the cloth, or in its place
	Beneath             // what lies under the seams: see beneath.go
	Cloth               // a fabric
)

// Layer is a group of items that a drawing program shows as one layer.
type Layer struct {
	ID    string // "" for items that stand by themselves
	Name  string
	Part  Part
	Style Style // what the items have where they say nothing else
	Items []Item
}

// Item is one thing that is drawn. Of Outlines, Box, Text, Texts and Picture one is set.
type Item struct {
	ID       string // "" for none
	Style    Style
	Outlines Outlines
	Faces    []int32 // that the outlines are, one each, by index; nil where they are none
	Open     bool    // the outlines are lines and not closed
	Each     *Labels // every outline stands by itself with an id and a title; nil for all as one
	Box      *Box
	Text     *Text
	Texts    iter.Seq[Text] // those that stand in great numbers
	Picture  []byte         // a PNG file, stretched over the top, each of its pixels one flat square
}

// Outlines goes through outlines one by one; each is only lent.
type Outlines iter.Seq[[]measure.Point]

// Labels name the outlines of an item.
type Labels struct {
	ID    func(b []byte, n int) []byte // appends the id of outline n
	Title func(b []byte, n int) []byte // appends its title, as XML holds it
}

// Box is a rectangle, in user units.
type Box struct{ X, Y, Width, Height float64 }

// Text is a line of words, in user units.
type Text struct {
	X, Y float64 // where the line of letters begins, or has its middle
	Size float64 // of the letters
	Text string
	Bold bool
}

// Style is how an item is painted. What is zero is taken over from the layer.
type Style struct {
	Fill    Fill
	Line    *palettes.Colour // nil for no line
	Opacity float64          // of the line
	Width   float64          // of the line, user units
	Dash    float64          // length of dashes and of the gaps between them, user units; 0 for a solid line
	Joins   bool             // round corners of lines
	Caps    bool             // round ends of lines
	Words   bool             // words in a plain face
	Middle  bool             // words have their middle at their place
}

// over is the style of an item on a layer of another.
func (s Style) over(layer Style) Style {
	if s.Fill == (Fill{}) {
		s.Fill = layer.Fill
	}
	if s.Line == nil {
		s.Line = layer.Line
	}
	s.Opacity, s.Width, s.Dash = either(s.Opacity, layer.Opacity), either(s.Width, layer.Width), either(s.Dash, layer.Dash)
	s.Joins, s.Caps = s.Joins || layer.Joins, s.Caps || layer.Caps
	s.Words, s.Middle = s.Words || layer.Words, s.Middle || layer.Middle
	return s
}

func either(own, layer float64) float64 {
	if own != 0 {
		return own
	}
	return layer
}

// Styled is an item's whole style: its own, and what it takes over. A line without an opacity
// of its own is opaque.
func (l *Layer) Styled(i *Item) Style {
	s := i.Style.over(l.Style)
	if s.Opacity == 0 {
		s.Opacity = 1
	}
	return s
}

// Fill is what an outline is filled with, or words are written in; the zero value says nothing.
type Fill struct {
	Kind   FillKind
	Fabric int             // index, of Fabric and FabricColour
	Colour palettes.Colour // of Flat
}

// FillKind is a kind of fill.
type FillKind uint8

const (
	Unsaid       FillKind = iota
	Unfilled              // nothing
	Flat                  // a colour
	Fabric                // what a fabric shows
	FabricColour          // a fabric's colour, whatever it shows
)

func flat(c palettes.Colour) Fill { return Fill{Kind: Flat, Colour: c} }

// Colour is the colour of a fill, false where it has none. Of a fabric that shows its print it
// is the print's mean.
func (s *Scene) Colour(f Fill) (palettes.Colour, bool) {
	switch f.Kind {
	case Flat:
		return f.Colour, true
	case Fabric, FabricColour:
		return s.Paints[f.Fabric].Colour, true
	}
	return palettes.Colour{}, false
}

// Print is the print that a fill shows, nil for none.
func (s *Scene) Print(f Fill) *Print {
	if f.Kind != Fabric {
		return nil
	}
	return s.Paints[f.Fabric].Print
}

// ClothAlone says whether the picture shows the fabrics and nothing over them or in their place.
func (s *Scene) ClothAlone() bool {
	for i := range s.Layers {
		if s.Layers[i].Part == Over {
			return false
		}
	}
	return true
}
