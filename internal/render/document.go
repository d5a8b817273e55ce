// Package render turns a document of headings, paragraphs, tables, lists and figures into a
// PDF, one HTML page, and Markdown with SVG files.
//
// A document is plain data: numbers arrive in it as text. What is said is the same in all
// three; PDF alone knows pages. Fractions such as 3 1/2 are set as true ones everywhere (see
// Fractions).
package render

import (
	"eighthturn/internal/diagram"
	"eighthturn/internal/measure"
	"eighthturn/palettes"
)

// Document is what is printed.
type Document struct {
	Title     string // must not be empty
	Maker     string // who made it, as it is to be printed; "" for no one
	Author    string // the maker's bare name, for the file's properties; "" for none
	Subject   string // one sentence for the file's properties
	Keywords  string // words parted by commas, for the file's properties
	Copyright string // one line, for the cover and the foot of each page
	Language  string // of the text, as in BCP 47; "" for en
	Cover     *Cover // nil for a title at the head of the first page
	Parts     []Part
}

// Cover is the first page. Title, maker and copyright are those of the document.
type Cover struct {
	Subtitle string
	Picture  *Picture // nil for none
	Lines    []Text   // below the picture: finished size, pieces, skill
}

// Part is a chapter: it has its own place among the bookmarks.
type Part struct {
	Title   string // "" for a part without a heading
	NewPage bool   // begins on a page of its own
	Blocks  []Block
}

// Block is one of Heading, Paragraph, List, Table, Figure, Picture, Gallery, Box, PageBreak
// and Together.
type Block interface{ block() }

// Heading is a heading within a part.
type Heading struct {
	Level int // 1 to 3 below the part's own; 0 for 1
	Text  string
}

// Paragraph is a paragraph.
type Paragraph struct{ Text Text }

// Text is a line of thought in one or several styles.
type Text []Run

// Run is a stretch of text in one style. A line break in it is a blank.
type Run struct {
	Text  string
	Bold  bool
	Small bool // not in large print
}

// Plain is text in one plain style.
func Plain(text string) Text { return Text{{Text: text}} }

// Bold is text in bold type.
func Bold(text string) Text { return Text{{Text: text, Bold: true}} }

// Small is text in small type.
func Small(text string) Text { return Text{{Text: text, Small: true}} }

// Marker is what stands before the items of a list.
type Marker uint8

const (
	Bullet Marker = iota
	Number        // 1, 2, 3: steps
	Tick          // a square to tick off
)

// List is a list.
type List struct {
	Marker Marker
	First  int // the first number; 0 for 1
	Items  []Item
}

// Item is an item of a list: its text, and what belongs to it, such as a picture.
type Item struct {
	Text   Text
	Blocks []Block
}

// Table is a table. On each page that it goes on to, its heads are printed again. Where even
// the longest words of its columns do not fit side by side, each row is set as lines of "head:
// text" instead.
type Table struct {
	Caption Text // above the table; nil for none
	Columns []Column
	Rows    []Row
	Named   bool // the first column names its row
}

// Column is a column of a table.
type Column struct {
	Title string
	Align Align
	Width float64 // relative to the others; 0 for what the texts ask for
}

// Align is on which side the texts of a column stand.
type Align uint8

const (
	Left Align = iota
	Right
	Centre
)

// Row is a row of a table. Cells that are missing are empty; a row of a single cell in a table
// of several columns is a heading across.
type Row struct {
	Cells []Cell
	Total bool // a rule above, in bold type
}

// Cell is a cell of a table.
type Cell struct {
	Swatch *Swatch // before the text; nil for none
	Text   Text
}

// Swatch is a square in a fabric's colour with the fabric's letter in it.
type Swatch struct {
	Letter string // must not be empty: colour alone says nothing
	Colour palettes.Colour
}

// Illustration is a Figure or a Picture.
type Illustration interface {
	Block
	shape() shape
}

// Figure is a diagram on the page. A diagram of true size is never scaled, and refused where it
// is larger than the page.
type Figure struct {
	Of          diagram.Figure
	Width       measure.NM // wanted on paper; 0 for the width of the text or half the page's height
	Least       measure.NM // the narrowest that can still be read; 0 for three quarters of the wanted
	Caption     Text       // nil for the diagram's title
	Alternative string     // for someone who cannot see it; "" for the diagram's description
}

// Picture is a picture of many outlines on the page.
type Picture struct {
	Of          Drawing
	Width       measure.NM // as in Figure
	Least       measure.NM // as in Figure
	Caption     Text       // nil for none
	Alternative string     // for someone who cannot see it; must not be empty
}

// Drawing is a picture of many outlines, as of a whole top. Viewers soften each edge by itself,
// so that a hairline of the page shows between neighbours, unless something lies beneath the
// seams (see Seamless).
type Drawing struct {
	Min, Max diagram.Point // the frame; what lies outside is cut off
	Ground   []byte        // a PNG file stretched over the frame, beneath the layers; nil for none
	Layers   []Layer       // in the order in which they are painted
	Marks    []diagram.Mark
}

// Layer is outlines that look alike.
type Layer struct {
	Name  string            // what it is, such as the fabric's name
	Paths [][]diagram.Point // the first corner not repeated
	Open  bool              // lines, not outlines: never filled, the last point not joined to the first
	Fill  *palettes.Colour  // nil for none
	Line  float64           // width of the line in points of the page; 0 for none
	Ink   palettes.Colour   // of the line
}

// Gallery is illustrations side by side.
type Gallery struct {
	Across   int // the most in a row; 0 for 2
	Pictures []Illustration
}

// Box is a frame with a word at its head.
type Box struct {
	Caution bool   // what may hurt someone: a heavier frame
	Word    string // "" for Note or Caution
	Blocks  []Block
}

// PageBreak begins a new page.
type PageBreak struct{}

// Together is kept on one page where it fits on one.
type Together struct{ Blocks []Block }

func (Heading) block()   {}
func (Paragraph) block() {}
func (List) block()      {}
func (Table) block()     {}
func (Figure) block()    {}
func (Picture) block()   {}
func (Gallery) block()   {}
func (Box) block()       {}
func (PageBreak) block() {}
func (Together) block()  {}

func (b Box) word() string {
	switch {
	case b.Word != "":
		return b.Word
	case b.Caution:
		return "Caution"
	}
	return "Note"
}

func (h Heading) level() int { return min(max(h.Level, 1), 3) }

func (l List) first() int { return max(l.First, 1) }

func (g Gallery) across() int {
	if g.Across < 1 {
		return 2
	}
	return min(g.Across, mostAcross)
}

func (d Document) language() string {
	if d.Language == "" {
		return "en"
	}
	return d.Language
}

func (t Text) String() string {
	var s string
	for _, r := range t {
		s += r.Text
	}
	return s
}
