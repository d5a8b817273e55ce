package layout

import (
	"cmp"
	"fmt"
	"slices"
	"strings"

	"eighthturn/internal/blocks"
	"eighthturn/internal/measure"
)

func onHandStatements() []Statement {
	return []Statement{{
		Word: "on-hand", Form: "on-hand wedges|kites|corners value number [strip length]", Summary: "pieces that are cut already, to be used first",
		Example: onHandExample, Options: []Option{{"strip", "strip 4"}}, next: `"strip"`, aliases: []string{"leftover", "leftovers"},
		parse: parseOnHand, check: (*checker).piecesOnHand, after: []string{"side", "backing"},
	}}
}

const onHandExample = "on-hand wedges navy 12"

// onHandNode is pieces on hand as written.
type onHandNode struct {
	Span
	Role  WordNode
	Value valueNode
	Count countNode
	Strip *LengthNode // that wedges are cut from
}

// OnHand is pieces that are cut already: from a fabric, or wedges from a strip set.
type OnHand struct {
	Role   string
	Fill   Fill
	Count  int
	Height blocks.WedgeHeight // of wedges
	Span   Span
}

// keptRoles are the words for pieces that may be on hand.
func (s *session) keptRoles() (words []string) {
	for _, k := range blocks.KeptRoles(s.kinds) {
		words = append(words, k.Role)
	}
	return words
}

func parseOnHand(p *parser, c *cursor, keyword Span) {
	n := &onHandNode{}
	c.newField()
	role := c.oneOf("the pieces on hand", c.keptRoles()...)
	if role == nil {
		c.dropRest()
		return
	}
	n.Role = *role
	c.newField()
	var ok bool
	if n.Value, ok = c.value("what the " + role.Word + " are cut from"); !ok {
		c.dropRest()
		return
	}
	c.newField()
	if n.Count, ok = c.count("how many " + role.Word + " are on hand"); !ok {
		c.dropRest()
		return
	}
	if strings.EqualFold(c.peek(), "strip") {
		n.Strip = c.sizeLength("the strip that they are cut from")
		c.dropIfFaulty(n.Strip == nil)
	}
	n.Span = keyword.To(c.last())
	p.tree.OnHand = append(p.tree.OnHand, n)
}

// piecesOnHand looks up the pieces that are on hand.
func (c *checker) piecesOnHand() {
	for i, n := range c.tree.OnHand {
		if i == MaxOnHand {
			c.fault(n.Span, "", "a layout may have at most %d lines of pieces on hand", MaxOnHand)
			return
		}
		if count := n.Count.Count; count < 1 || count > MaxPatches {
			c.fault(n.Count.Span, fmt.Sprintf("write a number from 1 to %d, or leave the line out", MaxPatches), "%d %s cannot be on hand", count, n.Role.Word)
			continue
		}
		if h, ok := c.onHand(n); ok {
			c.design.OnHand = append(c.design.OnHand, h)
		}
	}
	slices.SortStableFunc(c.design.OnHand, func(a, b OnHand) int {
		return cmp.Or(cmp.Compare(b.Role, a.Role), cmp.Compare(a.Fill.Set, b.Fill.Set), cmp.Compare(a.Fill.Fabric, b.Fill.Fabric),
			strings.Compare(c.fillName(a.Fill), c.fillName(b.Fill)), cmp.Compare(a.Height, b.Height), cmp.Compare(a.Count, b.Count))
	})
}

// onHand looks up one line of them.
func (c *checker) onHand(n *onHandNode) (OnHand, bool) {
	h := OnHand{Role: n.Role.Word, Count: n.Count.Count, Span: n.Span}
	before, used := len(c.list), c.usedNow(n.Value.Name)
	h.Fill = c.fill(n.Value, h.Role == wedgesRole, h.Role)
	switch {
	case len(c.list) > before || !h.Fill.given():
		return h, false
	case h.Fill.Pool >= 0:
		c.fault(n.Value.Span, "write one of its fabrics, and a line for each", "pieces on hand are of one fabric, and %s is a pool of scraps", quote(n.Value.Name.Text))
		return h, false
	case h.Fill.Set >= 0 && slices.ContainsFunc(c.design.StripSets[h.Fill.Set].Bands, func(b Band) bool { return b.Pool >= 0 }):
		c.fault(n.Value.Span, "leave the line out", "%s has strips from a pool, so its wedges are not all alike", quote(n.Value.Name.Text))
		return h, false
	}
	if !used { // pieces on hand are no use of a fabric: they wait for one
		c.unuse(n.Value.Name)
	}
	return h, c.stripOnHand(n, &h)
}

// wedgesRole is the role of the pieces that strip sets give.
const wedgesRole = "wedges"

// usedNow says whether something uses a name so far.
func (c *checker) usedNow(n NameNode) bool {
	e, known := c.names.find(n)
	return known && e.used
}

// unuse takes back that a name is used.
func (c *checker) unuse(n NameNode) {
	if e, known := c.names.find(n); known {
		e.used = false
	}
}

// stripOnHand finds the strip that wedges on hand are cut from: the one that is written, or the only one of the quilt's.
func (c *checker) stripOnHand(n *onHandNode, h *OnHand) bool {
	if h.Role != wedgesRole {
		if n.Strip != nil {
			c.fault(n.Strip.Span, "leave out strip "+c.src[n.Strip.Start:n.Strip.End], "the %s are as large as the blocks make them; only wedges say their strip", h.Role)
		}
		return n.Strip == nil
	}
	if c.poisoned("side", "grid") {
		return false
	}
	var there []blocks.WedgeHeight
	var widths []string
	for _, u := range c.heightsUsed() {
		cut := c.design.StripsCut[u.height]
		if n.Strip != nil {
			if off := n.Strip.In(c.design.Units).NM() - cut; max(off, -off) > c.design.Units.Mark()/2 {
				continue
			}
		}
		there, widths = append(there, u.height), append(widths, "strip "+measure.Number(measure.Nearest(cut, c.design.Units.Mark()), c.design.Units))
	}
	switch {
	case len(there) == 0:
		h.Height = blocks.NoWedges // of a strip that the quilt has none of
	case len(there) > 1:
		c.fault(n.Span, "write "+strings.Join(widths, " or ")+" behind the number", "wedges here are cut from strips of two widths, and the line does not say which these are")
		return false
	default:
		h.Height = there[0]
	}
	return true
}
