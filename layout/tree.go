package layout

// Tree is a layout as written, statement by statement; nothing in it is looked up yet.
// Every node's span covers its words in the source. Parts of several statements stand beside
// them.
type Tree struct {
	textNodes
	sizeNodes
	Palettes  []*paletteNode
	Motifs    []*motifNode
	Fabrics   []*fabricNode
	StripSets []*StripSetNode
	Scraps    []*scrapsNode
	Swaps     []*swapNode
	Webs      *websNode
	TopLeft   *WordNode
	Blocks    []*blockNode
	gridNodes
	edgingNodes
	finishNodes
	OnHand    []*onHandNode
	Contrast  *contrastNode
	Colorways []*colorwayNode
	Sizes     []*quiltSizeNode
	Lines     []Line
	former    map[int]string // as in session
}

// Line is one line of the source for the tidy printer.
type Line struct {
	Keyword string  // the statement's word; "" for blank lines, comments and rows
	Row     bool    // stands under a grid
	Tokens  []token // in reading order
	Comment Span
}

// WordNode is one word out of a fixed few.
type WordNode struct {
	Span
	Word string
}
