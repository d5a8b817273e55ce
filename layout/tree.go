package layout

// Tree is a layout as written, statement by statement; nothing in it is looked up yet.
// Every node's span covers its words in the source. Parts of several statements stand beside
// them.
type Tree struct {
	textNodes
	sizeNodes
	Palettes  []*PaletteNode
	Fabrics   []*FabricNode
	StripSets []*StripSetNode
	Scraps    []*ScrapsNode
	Webs      *WebsNode
	TopLeft   *WordNode
	Blocks    []*BlockNode
	gridNodes
	edgingNodes
	finishNodes
	Contrast *ContrastNode
	Lines    []Line
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
