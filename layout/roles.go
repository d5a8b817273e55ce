package layout

import (
	"cmp"
	"slices"
	"strings"

	"eighthturn/internal/blocks"
	"eighthturn/internal/measure"
)

// roleNode is a role with its values.
type roleNode struct {
	Span
	Word   NameNode
	Index  int // into the kind's roles
	Values []valueNode
}

// roleWords are the names of all roles of the kinds, each once, and of those to come.
func roleWords(kinds []*blocks.Kind) []string {
	var words []string
	for _, k := range kinds {
		for _, r := range k.Roles {
			if !slices.Contains(words, r.Name) {
				words = append(words, r.Name)
			}
		}
	}
	return words
}

// formerRoles are the names that roles of the kinds have in older layouts.
func formerRoles(kinds []*blocks.Kind) []string {
	var words []string
	for _, k := range kinds {
		for _, r := range k.Roles {
			if r.Former != "" {
				words = append(words, r.Former)
			}
		}
	}
	return words
}

// roleToday is a role's name as a layout writes it today.
func (s *session) roleToday(word string) string {
	for _, k := range s.kinds {
		for _, r := range k.Roles {
			if r.Former != "" && strings.EqualFold(r.Former, word) {
				return r.Name
			}
		}
	}
	return word
}

// role takes a role and its values. The roles of a block that is like another are looked
// up when that one is known.
func (c *cursor) role(b *blockNode) bool {
	at := c.here()
	r := roleNode{Word: NameNode{at, c.roleToday(c.text(at))}, Index: -1}
	if r.Word.Text != c.text(at) {
		c.former[at.Start] = r.Word.Text
	}
	if b.Kind != nil {
		r.Index = b.Kind.Role(strings.ToLower(r.Word.Text))
	}
	if b.Kind != nil && r.Index < 0 || b.Kind == nil && !c.isRole(r.Word.Text) {
		c.wrongRole(b.Kind, r.Word, append(c.rolesAhead(b.Kind), b.Roles...))
		return false
	}
	for _, other := range b.Roles {
		if strings.EqualFold(other.Word.Text, r.Word.Text) {
			c.fault(at, "keep one of the two", "%s is already on this line", quote(r.Word.Text)).note(other.Word.Span, "first given here")
			return false
		}
	}
	c.newField()
	c.take(at)
	r.Span = at
	for !c.done() {
		if c.isOption(c.peek()) {
			break
		}
		v, ok := c.value("a fabric for the " + r.Word.Text)
		if !ok {
			last := &c.list[len(c.list)-1]
			last.example = "for example " + r.Word.Text + " navy"
			last.Hint = cmp.Or(last.Hint, last.example)
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

// wrongRole reports a word where a role was wanted, beside those that the block has.
func (s *session) wrongRole(k *blocks.Kind, word NameNode, has []roleNode) {
	if k == nil {
		s.fault(word.Span, "", "expected a role, found %s", quote(word.Text)).suggest(didYouMean(word.Text, roleWords(s.kinds)))
		return
	}
	names := k.RoleNames()
	var open, needed []string // roles that the block has not, and those of them that it must have
	for i, r := range k.Roles {
		if !slices.ContainsFunc(has, func(h roleNode) bool { return h.Index == i }) {
			open = append(open, r.Name)
			if !r.Outer {
				needed = append(needed, r.Name)
			}
		}
	}
	if s.isRole(word.Text) {
		s.fault(word.Span, "its roles are: "+strings.Join(names, ", "), "%s blocks have no %s", k.Name, word.Text)
		return
	}
	hint := roleHint(word.Text, k, open, needed)
	s.fault(word.Span, "", "expected a role of the %s block, found %s", k.Name, quote(word.Text)).suggest(hint.backed("the roles of " + k.Name + " are: " + strings.Join(names, ", ")))
}

// fills looks up a role's values.
func (c *checker) fills(n *blockNode, role *blocks.Role, r roleNode) []Fill {
	fills := make([]Fill, 0, len(r.Values))
	before := len(c.list)
	for _, v := range r.Values {
		fills = append(fills, c.fill(v, role.Banded, role.Name))
	}
	if len(r.Values) > 0 && role.Counts != nil && !slices.Contains(role.Counts, len(r.Values)) && !c.anyUnknown(r.Values) {
		c.list = c.list[:before]
		c.fault(r.Values[0].Span.To(r.Values[len(r.Values)-1].Span), cmp.Or(role.Order, "leave out all but one"), "the %s of a %s block %s %s, found %d",
			role.Name, n.Kind.Name, verb(role.Name, "takes", "take"), counts(role.Counts), len(r.Values))
		n.poisoned = true
	}
	return fills
}

// misspeltRole cuts a role's values off where one is no name, but nearly another role of the
// kind, and reports that one.
func (c *checker) misspeltRole(n *blockNode, r roleNode) roleNode {
	var roles []string
	for _, role := range n.Kind.Roles {
		roles = append(roles, role.Name)
	}
	for i, v := range r.Values {
		if _, known := c.names.find(v.Name); known || i == 0 || nearest(v.Name.Text, c.names.order) != "" {
			continue
		}
		if hint := c.roleMeant(n, r, i, roles); hint.words != "" {
			c.fault(v.Name.Span, "", "expected a role of the %s block, found %s", n.Kind.Name, quote(v.Name.Text)).suggest(hint)
			r.Values, n.poisoned = r.Values[:i], true
			break
		}
	}
	return r
}

// roleMeant is a hint at the role that a value which is no name was meant for: one that is near, or the only one that the
// block lacks, where a fabric follows.
func (c *checker) roleMeant(n *blockNode, r roleNode, i int, roles []string) hint {
	text := r.Values[i].Name.Text
	var open, needed []string
	for number, role := range roles {
		if !slices.ContainsFunc(n.Roles, func(h roleNode) bool { return h.Index == number }) {
			open = append(open, role)
			if described := &n.Kind.Roles[number]; !described.Outer && (!described.OfWebs || c.tree.Webs == nil) {
				needed = append(needed, role)
			}
		}
	}
	if len(c.list) >= maxGuesses {
		return hint{}
	}
	if i+1 == len(r.Values) {
		needed = nil
	} else if e, known := c.names.find(r.Values[i+1].Name); !known || e.poisoned() {
		needed = nil
	}
	return roleHint(text, n.Kind, open, needed)
}

// roleHint is a hint at one of the roles that a block has not yet: one that is near, or the only one that it needs.
func roleHint(word string, k *blocks.Kind, open, needed []string) hint {
	hint := didYouMean(word, open)
	if len(needed) != 1 || !isName(word) {
		return hint
	}
	if i := k.Role(hint.text); hint.words == "" || i >= 0 && k.Roles[i].Outer {
		return near(needed[0])
	}
	return hint
}

// rolesAhead is the roles that stand further on in the line.
func (c *cursor) rolesAhead(k *blocks.Kind) []roleNode {
	var ahead []roleNode
	if k == nil {
		return nil
	}
	for _, word := range strings.FieldsFunc(c.rest(), measure.IsSpace) {
		if i := k.Role(strings.ToLower(word)); i >= 0 {
			ahead = append(ahead, roleNode{Index: i})
		}
	}
	return ahead
}

// anyUnknown says whether one of the names is nothing's: it was reported, here or where it
// may have been defined, and the number may come right with it.
func (c *checker) anyUnknown(values []valueNode) bool {
	return slices.ContainsFunc(values, func(v valueNode) bool {
		e, known := c.names.find(v.Name)
		return !known || e.poisoned()
	})
}

// verb is the form that goes with a role's name.
func verb(role, one, many string) string {
	if strings.HasSuffix(role, "s") {
		return many
	}
	return one
}

// counts writes "one, two or four fabrics".
func counts(list []int) string {
	words := map[int]string{1: "one", 2: "two", 4: "four", 8: "eight"}
	if len(list) == 1 && list[0] == 1 {
		return "one fabric"
	}
	text := words[list[0]]
	for i, n := range list[1:] {
		if i == len(list)-2 {
			text += " or " + words[n]
		} else {
			text += ", " + words[n]
		}
	}
	return text + " fabrics"
}

// missingRoles sees that every role has its fabric, from the block or from the webs.
func (c *checker) missingRoles(n *blockNode, b *Block) {
	if model := c.model(n); model != nil && model.poisoned {
		n.poisoned = true
	}
	var missing, add []string
	for i := range n.Kind.Roles {
		role := &n.Kind.Roles[i]
		if role.Outer || len(b.Fills[i]) > 0 || n.poisoned || role.OfWebs && (c.tree.Webs != nil || c.mayHold("webs")) {
			continue
		}
		add = append(add, role.Name, c.someFabric(len(missing)))
		missing = append(missing, role.Name)
	}
	if len(missing) > 0 {
		c.fault(n.Label.Span, "", "block %s has no %s", quote(n.Label.Text), strings.Join(missing, " and no ")).suggest(c.addTo(n, strings.Join(add, " ")))
	}
}

// addTo is a hint to add words to the end of a block.
func (c *checker) addTo(n *blockNode, words string) hint {
	if len(c.design.Fabrics) == 0 {
		return advice("add " + words)
	}
	return edit("add "+words, Span{n.Span.End, n.Span.End}, " "+words)
}

// model is the block that a block is like, nil if there is none.
func (c *checker) model(n *blockNode) *blockNode {
	if n.Like == nil {
		return nil
	}
	e, known := c.labels.find(*n.Like)
	if !known || e.poisoned() {
		return nil
	}
	return c.tree.Blocks[e.index]
}
