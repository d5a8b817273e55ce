package layout

import (
	"strings"

	"eighthturn/blocks"
)

func parseStripSet(p *parser, c *cursor, keyword Span) {
	c.newField()
	name, ok := c.newName("a strip set's name", false)
	if !ok {
		c.dropRest()
		return
	}
	s := &StripSetNode{Name: name}
	p.tree.StripSets = append(p.tree.StripSets, s)
	for !c.done() && !s.Broken {
		s.Broken = !c.band(s)
	}
	if len(s.Bands) == 0 && !s.Broken {
		s.Broken = true
		c.fault(c.here(), "for example strip-set "+name.Text+" navy 1 3/4 cream rest", "expected the fabrics of %s and their cut widths, found the end of the line", quote(name.Text))
	}
	c.dropIfFaulty(s.Broken)
	s.Span = keyword.To(c.last())
}

// band takes one fabric and its width.
func (c *cursor) band(s *StripSetNode) bool {
	if len(s.Bands) == MaxBands {
		c.fault(c.here(), "", "a strip set may have %d strips at the most", MaxBands)
		return false
	}
	c.newField()
	if c.atNumber() {
		c.fault(c.here(), "the fabric comes first, then its width", "expected a fabric's name, found %s", c.found())
		return false
	}
	b := BandNode{Fabric: c.usedName()}
	b.Span = b.Fabric.Span
	if at, ok := c.accept("rest"); ok {
		b.Span = b.Span.To(at)
		s.Bands = append(s.Bands, b)
		return true
	}
	l, ok := c.length("the cut width of " + quote(b.Fabric.Text) + " or the word rest")
	if !ok {
		return false
	}
	b.Cut, b.Span = &l, b.Span.To(l.Span)
	s.Bands = append(s.Bands, b)
	return true
}

// usedName takes a name that is defined elsewhere.
func (c *cursor) usedName() NameNode {
	at := c.word()
	return NameNode{at, c.text(at)}
}

// value takes a role's value: a name, with `turned` before it or not.
func (c *cursor) value(what string) (ValueNode, bool) {
	v := ValueNode{}
	start := c.here()
	if at, ok := c.accept("turned"); ok {
		v.Turned = at
	}
	if word := c.peek(); c.done() || c.reserved(word) || word == "/" {
		c.fault(c.here(), "", "expected %s, found %s", what, c.found())
		return v, false
	}
	if c.atNumber() || c.atQuote() {
		c.fault(c.here(), "", "expected %s, found %s", what, c.found())
		return v, false
	}
	v.Name = c.usedName()
	v.Span = start.To(v.Name.Span)
	return v, true
}

func parseWebs(p *parser, c *cursor, keyword Span) {
	w := &WebsNode{}
	p.tree.Webs = w
	c.newField()
	for {
		v, ok := c.value("a fabric or a strip set")
		if !ok {
			w.Broken = true
			c.dropRest()
			break
		}
		w.Values = append(w.Values, v)
		if len(w.Values) == 2 {
			break
		}
		if c.peek() != "/" {
			break
		}
		c.word()
	}
	w.Span = keyword.To(c.last())
	p.rows = noRows
}

func parseBlock(p *parser, c *cursor, keyword Span) {
	c.newField()
	label, ok := c.newName("a block's label", true)
	if !ok {
		c.dropRest()
		return
	}
	b := &BlockNode{Label: label}
	p.tree.Blocks = append(p.tree.Blocks, b)
	c.newField()
	if b.Kind = c.kind(); b.Kind == nil {
		b.Broken = true
		c.dropRest()
	}
	for !c.done() && !b.Broken {
		b.Broken = !c.role(b)
	}
	c.dropIfFaulty(b.Broken)
	b.Span = keyword.To(c.last())
}

// kindsToCome are kinds that belong to the language and are not built yet.
var kindsToCome = []string{"tumblers", "halves"}

// kind takes the name of a block kind.
func (c *cursor) kind() *blocks.Kind {
	at := c.here()
	word := strings.ToLower(c.text(at))
	if k, ok := blocks.Find(c.kinds, word); ok {
		c.take(at)
		return k
	}
	names := make([]string, len(c.kinds))
	for i, k := range c.kinds {
		names[i] = k.Name
	}
	for _, later := range append(kindsToCome, "like") {
		if word == later {
			c.fault(at, "", "%q belongs to the language, but this version cannot read it yet", word)
			return nil
		}
	}
	hint := didYouMean(word, names)
	if hint == "" {
		hint = "kinds are: " + strings.Join(names, ", ")
	}
	c.fault(at, hint, "expected a kind of block, found %s", c.found())
	return nil
}

// role takes a role and its values.
func (c *cursor) role(b *BlockNode) bool {
	at := c.here()
	r := RoleNode{Word: NameNode{at, c.text(at)}, Index: b.Kind.Role(strings.ToLower(c.text(at)))}
	if r.Index < 0 {
		c.wrongRole(b, r.Word)
		return false
	}
	for _, other := range b.Roles {
		if other.Index == r.Index {
			c.fault(at, "", "%s stands in this block already", quote(r.Word.Text)).note(other.Word.Span, "first given here")
			return false
		}
	}
	c.newField()
	c.take(at)
	r.Span = at
	for !c.done() && b.Kind.Role(strings.ToLower(c.peek())) < 0 {
		if len(r.Values) > 0 && c.isRole(c.peek()) {
			break
		}
		v, ok := c.value("a fabric for the " + r.Word.Text)
		if !ok {
			return false
		}
		r.Values = append(r.Values, v)
		r.Span = r.Span.To(v.Span)
	}
	b.Roles = append(b.Roles, r)
	if len(r.Values) == 0 {
		c.fault(c.here(), "for example "+r.Word.Text+" navy", "expected a fabric for the %s, found %s", r.Word.Text, c.found())
		return false
	}
	return true
}

func (c *cursor) isRole(word string) bool {
	for _, w := range roleWords(c.kinds) {
		if strings.EqualFold(w, word) {
			return true
		}
	}
	return false
}

// wrongRole reports a word where a role was wanted.
func (c *cursor) wrongRole(b *BlockNode, word NameNode) {
	names := make([]string, len(b.Kind.Roles))
	for i, r := range b.Kind.Roles {
		names[i] = r.Name
	}
	switch {
	case strings.EqualFold(word.Text, "edge") && b.Kind.Height == blocks.ToMiddle:
		c.fault(word.Span, "", "%q belongs to the language, but this version cannot read it yet", "edge")
	case c.isRole(word.Text):
		c.fault(word.Span, "its roles are: "+strings.Join(names, ", "), "%s blocks have no %s", b.Kind.Name, word.Text)
	default:
		hint := didYouMean(word.Text, names)
		if hint == "" {
			hint = "the roles of " + b.Kind.Name + " are: " + strings.Join(names, ", ")
		}
		c.fault(word.Span, hint, "expected a role of the %s block, found %s", b.Kind.Name, quote(word.Text))
	}
}

func parseBorder(p *parser, c *cursor, keyword Span) {
	if e := c.edging(keyword, "border"); e != nil {
		p.tree.Borders = append(p.tree.Borders, e)
	}
}

func parseBinding(p *parser, c *cursor, keyword Span) { p.tree.Binding = c.edging(keyword, "binding") }

// edging takes a width and a fabric.
func (c *cursor) edging(keyword Span, what string) *EdgingNode {
	c.newField()
	if !c.done() && !c.atNumber() {
		at := c.here()
		hint := "for example " + what + " 4 navy"
		if rest := strings.TrimSpace(c.src[at.End:c.end]); rest != "" {
			hint = "the width comes first: " + what + " " + rest + " " + c.text(at)
		}
		c.fault(at, hint, "expected the width of the %s, found %s", what, c.found())
		c.dropRest()
		return nil
	}
	width, ok := c.length("the width of the " + what)
	if !ok {
		c.dropRest()
		return nil
	}
	c.newField()
	if c.done() || c.reserved(c.peek()) || c.atQuote() {
		c.edgingFabric(what)
		c.dropRest()
		return nil
	}
	e := &EdgingNode{Width: width, Fabric: c.usedName()}
	e.Span = keyword.To(e.Fabric.Span)
	if word := strings.ToLower(c.peek()); word == "corners" || word == "lengthwise" {
		c.fault(c.here(), "", "%q belongs to the language, but this version cannot read it yet", word)
		c.dropRest()
	}
	return e
}

func (c *cursor) edgingFabric(what string) {
	hint := ""
	if strings.EqualFold(c.peek(), "finished") {
		hint = "widths of a " + what + " are finished unless cut follows; leave the word out"
	}
	c.fault(c.here(), hint, "expected the fabric of the %s, found %s", what, c.found())
}
