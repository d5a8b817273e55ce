package layout

import (
	"cmp"
	"strings"

	"eighthturn/internal/measure"
)

// LengthNode is a length as written, with the word `cut` or `finished` if it followed.
type LengthNode struct {
	Span
	reading  measure.Reading
	Cut      bool
	Finished bool
}

// In is the length with a bare number in the given units.
func (l *LengthNode) In(s measure.System) measure.Length { return l.reading.In(s) }

// atNumber says whether a length could begin here.
func (c *cursor) atNumber() bool { return !c.done() && measure.StartsNumber(c.rest()) }

// onlyLength takes the one length of a statement; nil if there is none.
func (c *cursor) onlyLength(what string) *LengthNode {
	c.newField()
	l, ok := c.length(what)
	c.dropIfFaulty(!ok)
	if !ok {
		return nil
	}
	return &l
}

// lengthOption takes an option's word and its length.
func (c *cursor) lengthOption(what string) *LengthNode {
	c.newField()
	return c.lengthBehind(what, c.option(strings.ToLower(c.peek())))
}

// lengthBehind is lengthOption in the column of the tidy layout that is at hand, with an example of its own.
func (c *cursor) lengthBehind(what, example string) *LengthNode {
	option := strings.ToLower(c.text(c.word()))
	l, ok := c.length(what)
	if !ok {
		last := &c.list[len(c.list)-1]
		last.example = "for example " + example
		last.Hint = cmp.Or(last.Hint, last.example)
		c.dropRest()
		return nil
	}
	if option != "about" {
		c.noFrame(&l, what)
	}
	return &l
}

// length takes a length; what is wrong with it is reported, and so is a number behind it.
func (c *cursor) length(what string) (LengthNode, bool) {
	node, ok := c.number(what)
	if !ok || c.twoNumbers(node) {
		return node, false
	}
	return c.framed(node), true
}

// number takes a length without a frame; others may stand behind it.
func (c *cursor) number(what string) (LengthNode, bool) {
	if !c.atNumber() {
		c.fault(c.here(), "", "expected %s, found %s", what, c.found()).suggest(numberHint(c.peek()))
		return LengthNode{}, false
	}
	start := c.at
	reading, err := measure.Read(c.uncommented())
	if err != nil {
		p := err.(*measure.Problem)
		at := Span{start + p.Start, start + p.End}
		c.fault(at, "", "%s", p.Message).suggest(numberHint(c.text(at)).or(c.problemHint(p)))
		c.take(Span{start, max(start+p.End, c.wordAt(start).End)})
		c.skipNumbers()
		return LengthNode{}, false
	}
	return LengthNode{Span: c.take(Span{start, start + reading.Bytes}), reading: reading}, true
}

// framed is a length with the word cut or finished, if one follows.
func (c *cursor) framed(node LengthNode) LengthNode {
	if at, ok := c.accept("cut"); ok {
		node.Cut, node.Span = true, node.To(at)
	} else if at, ok := c.accept("finished"); ok {
		node.Finished, node.Span = true, node.To(at)
	}
	return node
}

// problemHint is what package measure says to write, or how a length is written.
func (c *cursor) problemHint(p *measure.Problem) hint {
	if length, ok := strings.CutPrefix(p.Hint, "write "); ok && isLength(length) {
		return write(length)
	}
	return advice(cmp.Or(p.Hint, "write a length as 3 1/2 or 3.5"))
}

// noFrame refuses the words cut and finished where they say nothing.
func (s *session) noFrame(n *LengthNode, what string) bool {
	switch {
	case n.Cut:
		s.fault(n.Span, "", "%s is neither cut nor finished", what).suggest(s.leaveOut("cut", n.frame("cut")))
	case n.Finished:
		s.fault(n.Span, "", "%s is neither cut nor finished", what).suggest(s.leaveOut("finished", n.frame("finished")))
	}
	return !n.Cut && !n.Finished
}

// frame is where the word cut or finished stands, at the end of a length.
func (l *LengthNode) frame(word string) Span { return Span{l.End - len(word), l.End} }

// uncommented is the rest of the line without a comment that begins in the next words.
func (c *cursor) uncommented() string {
	for at := c.at; at < c.end; at++ {
		if c.commentAt(at) {
			return c.src[c.at:at]
		}
		if c.quoteAt(at) > 0 && at > c.at && c.blankBefore(at) {
			break
		}
	}
	return c.rest()
}

// twoNumbers reports a number behind a number, which is no length.
func (c *cursor) twoNumbers(first LengthNode) bool {
	if !c.atNumber() || first.reading.HasUnit() {
		return false
	}
	second := c.here()
	both := first.Span.To(second)
	hint := advice("a length is a number, or a number and a fraction: 3 1/2")
	if fraction := c.text(first.Span) + "/" + c.text(second); isLength(fraction) {
		hint = near(fraction)
		hint.words = "did you mean " + fraction + "?"
	}
	c.fault(both, "", "%s is not one length", quote(c.text(both))).suggest(hint)
	c.take(second)
	c.skipNumbers()
	return true
}

// isLength says whether text is one length and nothing else.
func isLength(text string) bool {
	r, err := measure.Read(text)
	return err == nil && r.Bytes == len(text)
}

func (c *cursor) skipNumbers() {
	for c.atNumber() {
		c.word()
	}
}

// countNode is a whole number.
type countNode struct {
	Span
	Count int
}

// count takes a whole number.
func (c *cursor) count(what string) (countNode, bool) {
	at := c.here()
	n, err := measure.ReadCount(c.text(at))
	switch {
	case err != nil && !c.done() && strings.Trim(c.text(at), "0123456789") == "":
		c.fault(at, "write a smaller one", "expected %s, a whole number of at most %d digits, found %s", what, measure.MaxDigits, c.found())
		return countNode{}, false
	case err != nil || c.done():
		c.fault(at, "", "expected %s, a whole number, found %s", what, c.found())
		return countNode{}, false
	}
	return countNode{c.take(at), n}, true
}

func (c *checker) text(nm measure.NM) string { return measure.Text(nm, c.design.Units) }

// within is a length that must lie between two; outside it is reported, and the nearer
// bound stands for it.
func (c *checker) within(n *LengthNode, least, most measure.NM, what string) measure.NM {
	nm := n.In(c.design.Units).NM()
	switch {
	case n.In(c.design.Units).Sign() == 0:
		c.fault(n.Span, "", "%s must be above 0", what)
		return least
	case nm < least:
		c.fault(n.Span, "", "%s is %s, but must be %s or more", what, c.text(nm), c.text(least))
		return least
	case nm > most:
		c.fault(n.Span, "", "%s is %s, but must be %s or less", what, c.text(nm), c.text(most))
		return most
	}
	return nm
}

// finishedWidth is a width that is finished unless it was given as cut.
func (c *checker) finishedWidth(n *LengthNode, what string) measure.NM {
	allowances := measure.NM(0)
	if n.Cut {
		allowances = 2 * c.design.Seam
	}
	if width := n.In(c.design.Units); n.Cut && width.Sign() > 0 && width.NM() <= allowances {
		if !c.poisoned("seam") {
			c.cutAway(n, what)
		}
		return measure.Inch
	}
	return c.within(n, allowances, MaxSide, what) - allowances
}

// cutNotFinished reports a width given finished where widths are cut, with both.
func (c *checker) cutNotFinished(n *LengthNode, what string) {
	width := n.In(c.design.Units).NM()
	c.fault(n.Span, c.text(width)+" finished is cut "+c.text(width+2*c.design.Seam)+" wide", "%s cut, not finished", what)
}

// cutAway reports a length given cut of which the seams leave nothing, with the widths that
// it would have without the word.
func (c *checker) cutAway(n *LengthNode, what string) {
	length := n.In(c.design.Units).NM()
	c.fault(n.Span, "without cut it finishes at "+c.text(length)+", and is cut "+c.text(length+2*c.design.Seam)+" wide",
		"%s of %s cut leaves nothing when two seam allowances of %s are taken", what, c.text(length), c.text(c.design.Seam))
}

// plural writes "1 block", "3 blocks", "no blocks".
func plural(n int, what string) string {
	return measure.Count(n, what)
}
