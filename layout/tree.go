package layout

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
