// Package document is what a report says: a tree of sections, paragraphs, lists, tables, figures, notes and cautions that
// every renderer can write, as terminal text, Markdown, HTML, CSV, the page's tabs and PDF.
//
// A document is plain data: numbers arrive in it as text, worked out and rounded. Whatever is about patches, faces or seams
// of a top, or about a place of the layout, says so, for those who can light it up; others pass it by.
package document

import (
	"slices"

	"eighthturn/internal/diagram"
	"eighthturn/internal/measure"
	"eighthturn/palettes"
)

// Document is a report, or several bound together.
type Document struct {
	Title     string // must not be empty
	Maker     string // who made it, as it is to be printed; "" for no one
	Author    string // the maker's bare name, for the file's properties; "" for none
	Subject   string // one sentence for the file's properties
	Keywords  string // words parted by commas, for the file's properties
	Copyright string // one line, for the cover and the foot of each page
	Language  string // of the text, as in BCP 47; "" for en
	Cover     *Cover // nil for a title at the head of the first page
	Sections  []Section
}

// Cover is the first page. Title, maker and copyright are those of the document.
type Cover struct {
	Subtitle string
	Picture  *Picture // nil for none
	Lines    []Text   // below the picture: finished size, pieces, skill
}

// Depth is for whom a section is.
type Depth uint8

const (
	Answer Depth = iota // what everybody needs
	Detail              // what the one who cuts or sews needs
	Why                 // how it was judged: bounds, scores, exact decimals, sources
)

// Section is a chapter, or a section within one.
type Section struct {
	ID      string // stable, of small letters and hyphens, such as "to-buy"; "" for none
	Title   string // "" for a section without a heading
	Depth   Depth
	NewPage bool // begins on a new page, unless the one before it is less than half full; read of chapters alone
	Back    bool // the back cover: the last page, with no head and foot; read of the last chapter alone
	Alone   bool // has pages to itself, to be copied, cut or handed on; read of chapters alone
	Blocks  []Block

	Swatches []Swatch // of what it is about, beside its title on the page
	About    About
	Tone     Tone
}

// AboutTrueSize is the id of the chapter that says how figures of true size are used: where these are a file of their own, it
// stands there too.
const AboutTrueSize = "true-size"

// About is what a part of a document is about. The zero value is nothing in particular.
type About struct {
	Patches []int  // of the top, by index
	Faces   []int  // of the top, by index
	Seams   []int  // of the top, by index, those of strip sets behind those between patches
	Place   *Place // in the layout; nil for none
}

// Place is a stretch of the layout in bytes, the end not included.
type Place struct{ Start, End int }

// Tone is how much something asks for a look. It only adds to what is said in words.
type Tone uint8

const (
	Calm Tone = iota
	Doubtful
	Wrong
)

// Block is one of Section, Ruled, Paragraph, Source, List, Table, Figure, Picture, Gallery, Box, PageBreak and Together.
type Block interface{ block() }

// Heading is a heading within a part.
type Heading struct {
	Level int // 1 to 3 below the part's own; 0 for 1
	Text  string
}

// Paragraph is a paragraph.
type Paragraph struct {
	Text  Text
	About About
	Tone  Tone
}

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

// Source is lines of a layout, each as it is to be typed.
type Source struct{ Lines []string }

// Marker is what stands before the items of a list.
type Marker uint8

const (
	Bullet   Marker = iota
	Numbered        // 1, 2, 3: steps
	Tick            // a square to tick off
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
	About  About
	Tone   Tone
}

// Table is a table. On each page that it goes on to, its heads are printed again. Where even
// the longest words of its columns do not fit side by side, each row is set as lines of "head:
// text" instead.
type Table struct {
	Caption Text // above the table; nil for none
	Columns []Column
	Rows    []Row
	Named   bool // the first column names its row
	More    Text // behind the rows, where the rest is to be read; nil if nothing was left out
}

// Filled is the table without the columns that are empty in all rows.
func (t Table) Filled() Table {
	full := make([]bool, len(t.Columns))
	for _, r := range t.Rows {
		for i, c := range r.Cells {
			full[i] = full[i] || len(r.Cells) == 1 || len(c.Swatches) > 0 || c.Text.String() != ""
		}
	}
	if !slices.Contains(full, false) || !slices.Contains(full, true) {
		return t
	}
	filled := t
	filled.Columns, filled.Rows = nil, slices.Clone(t.Rows)
	for i, c := range t.Columns {
		if full[i] {
			filled.Columns = append(filled.Columns, c)
		}
	}
	for n, r := range t.Rows {
		filled.Rows[n].Cells = nil
		for i, c := range r.Cells {
			if full[i] {
				filled.Rows[n].Cells = append(filled.Rows[n].Cells, c)
			}
		}
	}
	return filled
}

// Column is a column of a table.
type Column struct {
	Title string
	Kind  Kind
	Width float64 // relative to the others; 0 for what the texts ask for
	Aside bool    // where there is little room, its cells stand beneath their rows

	BySize  bool     // where several sizes stand side by side, each has a column of its own
	Sum     bool     // a workbook adds up its numbers beneath the table
	Factors []string // titles of the columns of which each number in it is the product, which a workbook reckons anew; nil for none
}

// Kind is what the cells of a column hold. Lengths and counts stand at the right.
type Kind uint8

const (
	Words Kind = iota
	Lengths
	Counts
	Swatches
)

// Right says whether cells of the kind stand at the right.
func (k Kind) Right() bool { return k == Lengths || k == Counts }

// Row is a row of a table. Cells that are missing are empty; a row of a single cell in a table of several columns is a
// heading across.
type Row struct {
	Cells  []Cell
	Under  []Text  // what is said of the row in smaller lines beneath it
	Figure *Figure // what belongs to the row and is shown when the row is chosen; nil for none
	Total  bool    // a rule above, in bold type
	About  About
	Tone   Tone
}

// Cell is a cell of a table.
type Cell struct {
	Swatches []Swatch // before the text
	Text     Text
	Number   string // what a spreadsheet gets in place of the text: a decimal number; "" for the text
}

// Swatch is a square in a fabric's colour with the fabric's letter in it.
type Swatch struct {
	Letter string // "" only where the fabric's name stands beside it: color alone says nothing
	Colour palettes.Colour
}

// Illustration is a Figure or a Picture.
type Illustration interface {
	Block
	illustration()
}

// Figure is a diagram on the page. A diagram of true size is never scaled, and refused where it
// is larger than the page.
type Figure struct {
	Of          diagram.Figure
	Draw        func() *diagram.Figure // draws it when it is first needed; nil if it is Of
	Marks       [][]int                // the patches behind the numbers at the diagram's marks; nil where the numbers are patches
	Width       measure.NM             // wanted on paper; 0 for the width of the text or half the page's height
	Least       measure.NM             // the narrowest that can still be read; 0 for three quarters of the wanted
	Caption     Text                   // nil for the diagram's title
	About       About                  // what it shows
	Alternative string                 // for someone who cannot see it; "" for the diagram's description
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
// seams, as it does in a drawing made of a scene of package svgout.
type Drawing struct {
	Min, Max measure.Point // the frame; what lies outside is cut off
	Ground   []byte        // a PNG file stretched over the frame, beneath the layers; nil for none
	Layers   []Layer       // in the order in which they are painted
	Marks    []diagram.Mark
}

// Layer is outlines that look alike.
type Layer struct {
	Name  string            // what it is, such as the fabric's name
	Paths [][]measure.Point // the first corner not repeated
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

// Ruled is lines to write on, on what is left of the page; elsewhere than on paper it is nothing.
type Ruled struct{}

// PageBreak begins a new page.
type PageBreak struct{}

// Together is kept on one page where it fits on one.
type Together struct{ Blocks []Block }

func (Source) block()    {}
func (Section) block()   {}
func (Heading) block()   {}
func (Paragraph) block() {}
func (List) block()      {}
func (Table) block()     {}
func (Figure) block()    {}
func (Picture) block()   {}
func (Gallery) block()   {}
func (Box) block()       {}
func (Ruled) block()     {}
func (PageBreak) block() {}
func (Together) block()  {}

func (Figure) illustration()  {}
func (Picture) illustration() {}

// Head is the word at the head of a box.
func (b Box) Head() string {
	switch {
	case b.Word != "":
		return b.Word
	case b.Caution:
		return "Caution"
	}
	return "Note"
}

// Diagram is the figure's diagram, drawn if it was not yet.
func (f *Figure) Diagram() *diagram.Figure {
	if f.Draw != nil {
		return f.Draw()
	}
	return &f.Of
}

// String is the text without its styles.
func (t Text) String() string {
	var s string
	for _, r := range t {
		s += r.Text
	}
	return s
}

// Down is the document without what lies deeper.
func (d Document) Down(to Depth) Document {
	d.Sections = sectionsDown(d.Sections, to)
	return d
}

func sectionsDown(list []Section, to Depth) []Section {
	var kept []Section
	for _, s := range list {
		if s.Depth <= to {
			s.Blocks = blocksDown(s.Blocks, to)
			kept = append(kept, s)
		}
	}
	return kept
}

func blocksDown(list []Block, to Depth) []Block {
	var kept []Block
	for _, b := range list {
		if s, ok := b.(Section); ok {
			if s.Depth > to {
				continue
			}
			s.Blocks = blocksDown(s.Blocks, to)
			b = s
		}
		kept = append(kept, b)
	}
	return kept
}

// Without is the document without its illustrations, for those who print its text alone.
func (d Document) Without() Document {
	d.Cover = nil
	d.Sections = slices.Clone(d.Sections)
	for i := range d.Sections {
		d.Sections[i].Blocks = unillustrated(d.Sections[i].Blocks)
	}
	return d
}

func unillustrated(list []Block) []Block {
	var kept []Block
	for _, b := range list {
		switch v := b.(type) {
		case Figure, Picture, Gallery:
			continue
		case Section:
			v.Blocks = unillustrated(v.Blocks)
			b = v
		case Box:
			v.Blocks = unillustrated(v.Blocks)
			b = v
		case Together:
			v.Blocks = unillustrated(v.Blocks)
			b = v
		case List:
			v.Items = slices.Clone(v.Items)
			for i := range v.Items {
				v.Items[i].Blocks = unillustrated(v.Items[i].Blocks)
			}
			b = v
		}
		kept = append(kept, b)
	}
	return kept
}

// Indexed is a document whose sections are found at once.
type Indexed struct {
	Document
	byID map[string]Section
}

// Index is a document with its sections by their ids; of like ids the first.
func (d Document) Index() Indexed {
	found := Indexed{d, map[string]Section{}}
	found.add(d.Sections)
	return found
}

func (d Indexed) add(list []Section) {
	for _, s := range list {
		if _, known := d.byID[s.ID]; !known {
			d.byID[s.ID] = s
		}
		for _, b := range s.Blocks {
			if v, ok := b.(Section); ok {
				d.add([]Section{v})
			}
		}
	}
}

// Section is the section of an id, with those within it; false if there is none.
func (d Indexed) Section(id string) (Section, bool) {
	s, ok := d.byID[id]
	return s, ok
}

// Section is the section of an id, with those within it; false if there is none.
func (d Document) Section(id string) (Section, bool) { return sectionOf(d.Sections, id) }

func sectionOf(list []Section, id string) (Section, bool) {
	for _, s := range list {
		if s.ID == id {
			return s, true
		}
		var inner []Section
		for _, b := range s.Blocks {
			if v, ok := b.(Section); ok {
				inner = append(inner, v)
			}
		}
		if found, ok := sectionOf(inner, id); ok {
			return found, true
		}
	}
	return Section{}, false
}
