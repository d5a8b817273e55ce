package layout

import (
	"eighthturn/blocks"
	"eighthturn/palettes"
)

// Tree is a layout as written, statement by statement; nothing in it is looked up yet.
// Every node's span covers its words in the source.
type Tree struct {
	Title       *TextNode
	Units       *WordNode
	Seam        *LengthNode
	Strip       *LengthNode
	Side        *LengthNode
	UsableWidth *LengthNode
	TopLeft     *WordNode
	Fabrics     []*FabricNode
	StripSets   []*StripSetNode
	Webs        *WebsNode
	Blocks      []*BlockNode
	Grid        *GridNode
	Borders     []*EdgingNode
	Binding     *EdgingNode
	Lines       []Line

	gridReported bool // there is no grid, and a message says why
	sizeReported bool // a strip or side has no length, and a message says why
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
	Print       *TextNode
	OnHand      *LengthNode
	UsableWidth *LengthNode
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
	Kind   *blocks.Kind // nil if it was not one
	Roles  []RoleNode
	Broken bool // reported already
}

// WebsNode is the fabric of the webs, one value or two set like a draughtboard.
type WebsNode struct {
	Span
	Values []ValueNode
	Broken bool
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

// EdgingNode is a border or the binding.
type EdgingNode struct {
	Span
	Width  LengthNode
	Fabric NameNode
}
