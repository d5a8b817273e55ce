// Package diagram turns a diagram that is plain data, outlines, lines, arrows and words, into
// SVG. Cutting maps, steps of sewing and templates are figures; what prints reads the same
// data.
//
// Lengths are whole nanometres of the diagram's own subject: of cloth, or of a finished
// block; y goes downwards. Line widths and the size of words belong to the page and are
// given in points (1/72 inch) of the page.
package diagram

import (
	"eighthturn/internal/measure"
	"eighthturn/palettes"
)

// Figure is one diagram.
type Figure struct {
	Title       string        // a few words: the caption
	Description string        // what it shows, for someone who cannot see it
	Min, Max    measure.Point // the frame: what is drawn lies in it; words may need the margin that the renderer adds
	TrueSize    bool          // to be drawn as large as its subject; otherwise it may be scaled to the page
	Marks       []Mark        // drawn in this order
	Panels      []Panel       // parts that stand by themselves, which together hold all marks; nil for one drawing
	Across      int           // panels in a row; 0 for as many as there is room for
	NoLegend    bool          // its lines need no words
	key         []Mark        // what the legend lists; nil for Marks
}

// Mark is one thing in a diagram. Of its parts one is set: Area, Line or Words.
type Mark struct {
	Area  *Area
	Line  *Line
	Words *Words
	Lit   []int // what it stands for, by the report's own numbering, so that a page can light it up; nil for nothing
}

// Area is a filled outline.
type Area struct {
	Outline []measure.Point // the first corner not repeated
	Fill    palettes.Colour
	Hatch   bool // the wrong side of the cloth: the fill, paler, with slanting lines
	Clear   bool // no fill at all
	Edge    Stroke
	Print   *Print        // what the cloth shows, over the fill; nil for nothing
	Repeat  measure.Point // where one of its repeats begins
	Turn    float64       // degrees clockwise by which the cloth is turned there
}

// Print is a picture of one repeat of a cloth, which fills areas over and over.
type Print struct {
	File         []byte // PNG, with a margin of the repeats beside it
	Across, Down measure.NM
	Margin       measure.Point // of the picture, to the right and below as to the left and above
}

// Line is a line of straight stretches.
type Line struct {
	Points []measure.Point
	Stroke Stroke
	Start  Ending
	End    Ending
}

// Words is a line of words.
type Words struct {
	Text     string
	At       measure.Point // the middle of the words' height; across, by Anchor
	Points   float64
	Anchor   Anchor
	Quarters int // quarter turns clockwise
	Bold     bool
	Colour   palettes.Colour
	Halo     bool             // a rim of the page's colour, so that they are read on any fabric
	Plate    bool             // on a plate of the backing's colour, or the page's, that hides what lies beneath
	Optional bool             // left out where they have no room at the size of the least words, 8 points; others tell the same
	Across   measure.NM       // the height that they have in the subject, read of optional words; 0 for as high as they are
	Room     measure.NM       // they must fit into this length of the subject, else they are made smaller; 0 for as long as they are
	Backing  *palettes.Colour // what lies beneath, so that words may be dark or light; nil if they are given a colour
}

// Stroke is how a line is drawn.
type Stroke uint8

const (
	NoStroke  Stroke = iota
	Thin             // outlines and seams that are sewn
	Cut              // where the rotary cutter goes: solid, heavy
	Sew              // where the needle goes: dashed
	Partial          // a seam sewn in part: long dashes
	Trim             // what is cut off after sewing: dash and dot
	Fold             // dotted
	Grain            // the arrow along the grain
	Dimension        // a measure
	Pressing         // the arrow by which an allowance is pressed
	Frame            // the edge of the cloth: faint
	Window           // round a part that is shown enlarged: faint, and in no legend
	PartFrame        // round a part of a piece that is larger than the page: faint
	NextFrame        // where the frame of the next part is laid: dotted
	Repeat           // where the repeat of a print ends and the next begins: dots far apart
	Gauge            // within the edges of a square of known size: fine, and in no legend
)

// Ending is what a line has at one end.
type Ending uint8

const (
	Plain Ending = iota
	Arrow
	Dot
	Bar // across the line: the end of a measure
)

// Anchor is which part of the words stands at their place.
type Anchor uint8

const (
	Middle Anchor = iota
	Start
	End
)
