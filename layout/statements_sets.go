package layout

import (
	"cmp"
	"strings"

	"eighthturn/internal/blocks"
	"eighthturn/internal/measure"
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
		c.fault(c.here(), "the set's name comes first, then each fabric with its width", "expected a fabric's name, found %s", c.found())
		c.lacksName(false)
		return false
	}
	name, ok := c.nameOf("a fabric's name")
	if !ok {
		return false
	}
	b := BandNode{Span: name.Span, Fabric: name}
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

// nameOf takes a name that is defined elsewhere; what cannot be one is reported.
func (c *cursor) nameOf(what string) (NameNode, bool) {
	word := c.peek()
	switch {
	case c.atQuote():
		c.fault(c.here(), c.nameHint(word), "expected %s, found text in quotes", what)
	case c.done(), c.atNumber(), c.reserved(word), word == "/":
		c.fault(c.here(), "", "expected %s, found %s", what, c.found())
	default:
		return c.usedName(), true
	}
	return NameNode{}, false
}

// value takes a role's value: a name, with `turned` before it or not.
func (c *cursor) value(what string) (ValueNode, bool) {
	v := ValueNode{}
	start := c.here()
	if at, ok := c.accept("turned"); ok {
		v.Turned = at
	}
	name, ok := c.nameOf(what)
	if ok {
		v.Name, v.Span = name, start.To(name.Span)
	}
	return v, ok
}

func parseWebs(p *parser, c *cursor, keyword Span) {
	w := &WebsNode{}
	p.tree.Webs = w
	if c.done() {
		w.Span, p.rows = keyword, webRows
		return
	}
	c.newField()
	for {
		v, ok := c.value("a fabric or a strip set")
		if !ok {
			w.Broken = true
			c.dropRest()
			break
		}
		w.Values = append(w.Values, v)
		if c.peek() != "/" {
			break
		}
		if len(w.Values) == 2 {
			c.fault(c.here(), "for more than two write a table in rows below", "webs takes two values at the most, found a third")
			c.dropRest()
			break
		}
		c.word()
	}
	if !c.done() && !w.Broken {
		hint := "write webs " + w.Values[0].Name.Text + " / " + c.peek()
		if strings.EqualFold(c.peek(), "turned") {
			hint = "turned stands before its strip set: turned " + w.Values[len(w.Values)-1].Name.Text
		}
		c.fault(c.here(), hint, "expected / and a second value, found %s", c.found())
		c.dropRest()
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
	if c.lacksLabel(label) {
		c.fault(label.Span, "write the label in front of it", "expected a block's label, found %s", quote(label.Text))
		c.lacksName(true)
		c.dropRest()
		return
	}
	b := &BlockNode{Label: label}
	p.tree.Blocks = append(p.tree.Blocks, b)
	c.newField()
	b.Broken = !c.kindOrLike(b)
	for !c.done() && !b.Broken {
		b.Broken = !c.roleOrOption(b)
	}
	c.dropIfFaulty(b.Broken)
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
func (c *cursor) kindOrLike(b *BlockNode) bool {
	if _, ok := c.accept("like"); !ok {
		b.Kind = c.kind()
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
	hint := didYouMean(word, names)
	if hint == "" {
		hint = "kinds are: " + strings.Join(names, ", ")
	}
	c.fault(at, hint, "expected a kind of block, found %s", c.found())
	return nil
}

// roleOrOption takes a role with its values, or one of the options of a column.
func (c *cursor) roleOrOption(b *BlockNode) bool {
	column := b.Kind == nil || b.Kind.Column
	switch word := strings.ToLower(c.peek()); {
	case column && word == "line" && b.Line == nil:
		b.Line = c.lengthOption("the line of the wedge rule")
		return b.Line != nil
	case column && word == "about" && b.About == nil:
		b.About = c.lengthOption("the mean length of a piece")
		return b.About != nil
	case column && (word == "line" || word == "about") && c.twice():
		return false
	}
	return c.role(b)
}

// role takes a role and its values. The roles of a block that is like another are looked
// up when that one is known.
func (c *cursor) role(b *BlockNode) bool {
	at := c.here()
	r := RoleNode{Word: NameNode{at, c.text(at)}, Index: -1}
	if b.Kind != nil {
		r.Index = b.Kind.Role(strings.ToLower(r.Word.Text))
	}
	if b.Kind != nil && r.Index < 0 || b.Kind == nil && !c.isRole(r.Word.Text) {
		c.wrongRole(b.Kind, r.Word)
		return false
	}
	for _, other := range b.Roles {
		if strings.EqualFold(other.Word.Text, r.Word.Text) {
			c.fault(at, "keep one of the two", "%s stands on this line already", quote(r.Word.Text)).note(other.Word.Span, "first given here")
			return false
		}
	}
	c.newField()
	c.take(at)
	r.Span = at
	for !c.done() {
		if len(r.Values) > 0 && c.isOption(c.peek()) {
			break
		}
		v, ok := c.value("a fabric for the " + r.Word.Text)
		if !ok {
			last := &c.list[len(c.list)-1]
			last.Hint = cmp.Or(last.Hint, "for example "+r.Word.Text+" navy")
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

// isOption says whether a word begins another role or an option of a block.
func (c *cursor) isOption(word string) bool {
	return c.isRole(word) || strings.EqualFold(word, "line") || strings.EqualFold(word, "about")
}

func (s *session) isRole(word string) bool {
	for _, w := range roleWords(s.kinds) {
		if strings.EqualFold(w, word) {
			return true
		}
	}
	return false
}

// wrongRole reports a word where a role was wanted.
func (s *session) wrongRole(k *blocks.Kind, word NameNode) {
	if k == nil {
		s.fault(word.Span, didYouMean(word.Text, roleWords(s.kinds)), "expected a role, found %s", quote(word.Text))
		return
	}
	names := make([]string, len(k.Roles))
	for i, r := range k.Roles {
		names[i] = r.Name
	}
	if s.isRole(word.Text) {
		s.fault(word.Span, "its roles are: "+strings.Join(names, ", "), "%s blocks have no %s", k.Name, word.Text)
		return
	}
	hint := didYouMean(word.Text, names)
	if hint == "" {
		hint = "the roles of " + k.Name + " are: " + strings.Join(names, ", ")
	}
	s.fault(word.Span, hint, "expected a role of the %s block, found %s", k.Name, quote(word.Text))
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
		rest := strings.TrimLeftFunc(c.src[at.End:c.end], measure.IsSpace)
		if width, err := measure.Read(rest); err == nil {
			hint = "the width comes first: " + what + " " + rest[:width.Bytes] + " " + c.text(at)
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
	fabric, ok := c.nameOf("the fabric of the " + what)
	if !ok {
		c.dropRest()
		return nil
	}
	e := &EdgingNode{Width: width, Fabric: fabric}
	c.edgingOptions(e, what)
	e.Span = keyword.To(c.last())
	return e
}

// edgingOptions takes what may follow a border's or the sashes' fabric.
func (c *cursor) edgingOptions(e *EdgingNode, what string) {
	squares := map[string]string{"border": "corners", "sash": "posts"}[what]
	for !c.done() {
		switch word := strings.ToLower(c.peek()); {
		case word == squares && e.Corners == nil:
			c.newField()
			c.word()
			n, ok := c.nameOf("the fabric of the " + squares)
			if !ok {
				c.dropRest()
				return
			}
			e.Corners = &n
		case word == "lengthwise" && what == "border" && e.Lengthwise.Empty():
			c.newField()
			e.Lengthwise = c.word()
		case word == "around" && what == "sash" && e.Around.Empty():
			c.newField()
			e.Around = c.word()
		default:
			return
		}
	}
}
