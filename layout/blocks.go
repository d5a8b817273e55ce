package layout

import (
	"strings"

	"eighthturn/internal/blocks"
)

func blockStatements() []Statement {
	return []Statement{{
		Word: "block", Form: "block label kind role value …, or block label like label role value …",
		Summary: "a block: its label in the grid, its kind and its fabrics", Example: "block W web wedges navy kites cream",
		Options: []Option{{Word: "like"}, {"line", "line 10"}, {"about", "about 4"}}, next: "a role", defines: true,
		parse: parseBlock, check: (*checker).blocks, after: []string{"strip-set"},
	}}
}

// blockNode is a block as written.
type blockNode struct {
	Span
	Label    NameNode
	Kind     *blocks.Kind // nil if it was not one, or is another block's
	Like     *NameNode    // the block whose kind and roles it takes
	Roles    []roleNode
	Line     *LengthNode // of a wedge ruler, for pieces of a column
	About    *LengthNode // mean length of a piece along its column
	poisoned bool        // neither what it lacks nor what is like it is asked
}

// Block is a block that the grid may name.
type Block struct {
	Label string
	Kind  *blocks.Kind
	Fills [][]Fill // a role each; empty where `webs` gives the fabric or the role may be left out
	Span  Span
	line  *LengthNode
	about *LengthNode
	used  bool
}

func parseBlock(p *parser, c *cursor, keyword Span) {
	c.newField()
	label, ok := c.newName("a block's label", true)
	if !ok {
		c.dropRest()
		return
	}
	if c.lacksLabel(label) {
		c.fault(label.Span, "write the label in front of it", "expected a block's label, found %s", quote(label.Text))
		c.lacksName(true)
		c.dropRest()
		return
	}
	b := &blockNode{Label: label}
	p.tree.Blocks = append(p.tree.Blocks, b)
	c.newField()
	b.poisoned = !c.kindOrLike(b)
	for !c.done() && !b.poisoned {
		b.poisoned = !c.roleOrOption(b)
	}
	c.dropIfFaulty(b.poisoned)
	b.Span = keyword.To(c.last())
}

// lacksLabel says whether what stands in a label's place is the word behind it: a kind before
// a role, or like before a block.
func (c *cursor) lacksLabel(label NameNode) bool {
	word := strings.ToLower(label.Text)
	if _, isKind := blocks.Find(c.kinds, word); isKind {
		return c.isRole(c.peek())
	}
	_, beforeKind := blocks.Find(c.kinds, strings.ToLower(c.peek()))
	return word == "like" && !beforeKind && !strings.EqualFold(c.peek(), "like")
}

// kindOrLike takes a block's kind, or the block that it is like.
func (c *cursor) kindOrLike(b *blockNode) bool {
	if _, ok := c.accept("like"); !ok {
		b.Kind = c.kind(b)
		return b.Kind != nil
	}
	if c.done() {
		c.fault(c.here(), "", "expected the label of the block that %s is like, found the end of the line", quote(b.Label.Text))
		return false
	}
	like := c.usedName()
	b.Like = &like
	return true
}

// kind takes the name of a block kind.
func (c *cursor) kind(b *blockNode) *blocks.Kind {
	at := c.here()
	word := strings.ToLower(c.text(at))
	names := make([]string, len(c.kinds))
	for i, k := range c.kinds {
		names[i] = k.Name
	}
	two := c.joined(at, names)
	if k, ok := blocks.Find(c.kinds, word); ok && two.words == "" {
		c.take(at)
		return k
	}
	hint := two.or(c.swappedLabel(b, at)).or(didYouMean(word, names))
	c.fault(at, "", "expected a kind of block, found %s", c.found()).suggest(hint.backed("kinds are: " + strings.Join(names, ", ")))
	return nil
}

// swappedLabel is a hint where a block's label and its kind changed places, none where they did not.
func (c *cursor) swappedLabel(b *blockNode, at Span) hint {
	kind, ok := blocks.Find(c.kinds, strings.ToLower(b.Label.Text))
	label := c.text(at)
	if !ok || !isName(label) && !isDigits(label) || c.statement(label) != nil {
		return hint{}
	}
	both := label + " " + kind.Name
	return edit("the label comes first: block "+both, b.Label.Span.To(at), both)
}

// roleOrOption takes a role with its values, or one of the options of a column.
func (c *cursor) roleOrOption(b *blockNode) bool {
	column := b.Kind == nil || b.Kind.Column
	switch word := strings.ToLower(c.peek()); {
	case column && word == "line" && b.Line == nil:
		b.Line = c.lengthOption("the line of the wedge ruler")
		return b.Line != nil
	case column && word == "about" && b.About == nil:
		b.About = c.lengthOption("the mean length of a piece")
		return b.About != nil
	case column && (word == "line" || word == "about") && c.twice():
		return false
	}
	return c.role(b)
}

// blocks enters the labels, so that blocks may be like later ones, and then looks at each
// block. A label keeps its first meaning; a second block of the name is checked all the same.
func (c *checker) blocks() {
	for i, n := range c.tree.Blocks {
		first, known := c.labels.find(n.Label)
		switch {
		case known && !first.poisoned():
			c.fault(n.Label.Span, "give this one another label", "block %s is already defined", quote(n.Label.Text)).note(first.span, "first defined here")
		case len(c.labels.order) == MaxBlocks:
			c.labels.poison(n.Label.key())
			if c.labels.beyond++; c.labels.beyond == 1 {
				c.fault(n.Label.Span, "", "a layout may define at most %d blocks", MaxBlocks)
				c.poison("grid")
			}
		default:
			c.labels.define(n.Label, &entry{is: aBlock, index: i})
		}
	}
	c.likes()
	for _, n := range c.tree.Blocks {
		c.design.Blocks = append(c.design.Blocks, c.block(n))
	}
}

func (c *checker) block(n *blockNode) Block {
	b := Block{Label: n.Label.Text, Kind: n.Kind, Span: n.Span, line: n.Line, about: n.About}
	if n.Kind == nil {
		return b
	}
	b.Fills = make([][]Fill, len(n.Kind.Roles))
	for i := range n.Roles {
		r := c.misspeltRole(n, n.Roles[i])
		role := &n.Kind.Roles[r.Index]
		b.Fills[r.Index] = c.fills(n, role, r)
	}
	c.missingRoles(n, &b)
	return b
}
