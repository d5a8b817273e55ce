package layout

import (
	"eighthturn/internal/blocks"
	"eighthturn/palettes"
)

// Tree is a layout as written, statement by statement; nothing in it is looked up yet.
// Every node's span covers its words in the source.
type Tree struct {
	Title       *TextNode
	Designer    *TextNode
	Level       *TextNode
	Copyright   *TextNode
	Notes       []*NoteNode
	Units       *WordNode
	Seam        *LengthNode
	Strip       *LengthNode
	Side        *LengthNode
	UsableWidth *LengthNode
	TopLeft     *WordNode
	Palettes    []*PaletteNode
	Fabrics     []*FabricNode
	StripSets   []*StripSetNode
	Scraps      []*ScrapsNode
	Webs        *WebsNode
	Blocks      []*BlockNode
	Grid        *GridNode
	Repeat      *RepeatNode
	Sash        *EdgingNode
	Borders     []*EdgingNode
	Binding     *EdgingNode
	Backing     *NameNode
	Batting     *WordNode
	Contrast    *ContrastNode
	Lines       []Line

	gridReported    bool // there is no grid, and a message says why
	paletteReported bool // a palette is unknown, and a message says so
	sizeReported    bool // strip, side, seam or units is at fault, and a message says why
	unread          bool // a line could not be read: what is missing may stand in it
}

// Line is one line of the source for the tidy printer.
type Line struct {
	Keyword string  // the statement's word; "" for blank lines, comments and rows
	Row     bool    // stands under a grid
	Tokens  []Token // in reading order
	Comment Span
}

// WordNode is one word out of a fixed few.
type WordNode struct {
	Span
	Word string
}

// FabricNode is a fabric as written.
type FabricNode struct {
	Span
	Name        NameNode
	Colour      palettes.Colour
	Swatch      *TextNode   // the photo that gives the colour, nil for a colour
	Across      *LengthNode // how much cloth the photo shows from left to right
	Print       *TextNode
	OnHand      *LengthNode
	UsableWidth *LengthNode
	colourWord  string // the colour as written
}

// BandNode is one band of a strip set; without a length it is the rest.
type BandNode struct {
	Span
	Fabric NameNode
	Cut    *LengthNode
}

// StripSetNode is a strip set as written, from the wide end of the wedge to its tip.
type StripSetNode struct {
	Span
	Name   NameNode
	Bands  []BandNode
	Broken bool // reported already
}

// ValueNode is what a role is given.
type ValueNode struct {
	Span
	Name   NameNode
	Turned Span // the word `turned`, empty if it was not there
}

// RoleNode is a role with its values.
type RoleNode struct {
	Span
	Word   NameNode
	Index  int // into the kind's roles
	Values []ValueNode
}

// BlockNode is a block as written.
type BlockNode struct {
	Span
	Label  NameNode
	Kind   *blocks.Kind // nil if it was not one, or is another block's
	Like   *NameNode    // the block whose kind and roles it takes
	Roles  []RoleNode
	Line   *LengthNode // of a wedge rule, for pieces of a column
	About  *LengthNode // mean length of a piece along its column
	Broken bool        // reported already
}

// WebsNode is the fabric of the webs: one value, two set like a draughtboard, or a table.
type WebsNode struct {
	Span
	Values []ValueNode
	Rows   []WebRowNode
	Broken bool
}

// WebRowNode is one row of the table of webs.
type WebRowNode struct {
	Span
	Values []WebNode
}

// WebNode is one place of the table of webs.
type WebNode struct {
	Span
	Own   bool // the blocks' own
	Value ValueNode
}

// NoteNode is a note for the printed pattern and the place it belongs to, if given.
type NoteNode struct {
	Span
	Place *NameNode
	Text  TextNode
}

// PaletteNode brings in the fabrics of a palette.
type PaletteNode struct {
	Span
	Name NameNode
}

// ScrapsNode is a pool of fabrics as written.
type ScrapsNode struct {
	Span
	Name    NameNode
	Fabrics []NameNode
	By      *WordNode
	Deal    *CountNode
	Broken  bool
}

// CountNode is a whole number.
type CountNode struct {
	Span
	Count int
}

// RepeatNode is how often the grid's rows are laid.
type RepeatNode struct {
	Span
	Across, Down CountNode
}

// ContrastNode is the two thresholds of the value study, in steps of CIE L*.
type ContrastNode struct {
	Span
	Soft, Clear float64
}

// CellNode is one place of the grid as written.
type CellNode struct {
	Span
	Label   NameNode
	Turn    Span // the turn behind the colon, empty if there was none
	Towards blocks.Corner
}

// GridNode is the grid, row by row.
type GridNode struct {
	Span
	Rows []RowNode
}

// RowNode is one row of the grid.
type RowNode struct {
	Span
	Cells []CellNode
}

// EdgingNode is a border, the sashes or the binding.
type EdgingNode struct {
	Span
	Width      LengthNode
	Fabric     NameNode
	Corners    *NameNode // the fabric of corner squares, or of the posts of sashes
	Lengthwise Span      // the word, empty if it was not there
	Around     Span      // the word, empty if it was not there
}
