package layout

import (
	"strings"

	"eighthturn/palettes"
)

// meaning is what a name stands for.
type meaning uint8

const (
	unread    meaning = iota // poisoned: it could not be read, or nothing has the name, and every check passes over it
	aFabric                  // index into Design.Fabrics
	aStripSet                // Design.StripSets
	aPool                    // Design.Pools
	aMotif                   // Design.Motifs
	aBlock                   // Design.Blocks, and Tree.Blocks
)

// String names the sort of thing that a name stands for.
func (m meaning) String() string {
	return [...]string{"nothing", "fabric", "strip set", "pool of scraps", "motif", "block"}[m]
}

// entry is a name with what it stands for.
type entry struct {
	is      meaning
	index   int
	span    Span // where it is defined
	palette bool // brought in by a palette
	used    bool
	message int // that nothing has this name: its number from 1, 0 if there is none
}

func (e *entry) poisoned() bool { return e.is == unread }

// fill is what a piece is cut from by a name.
func (e *entry) fill() Fill {
	f := noFill
	switch e.is {
	case aFabric:
		f.Fabric = e.index
	case aStripSet:
		f.Set = e.index
	case aPool:
		f.Pool = e.index
	}
	return f
}

// scope is a set of names: fabrics, strip sets, pools and motifs share one, blocks have another.
type scope struct {
	entries map[string]*entry
	order   []string // the names as defined, for hints
	beyond  int      // definitions beyond the limit, each poisoned
	// unnamed counts the poisoned definitions that do not say what they define: as many
	// names that nothing has are most likely theirs.
	unnamed int
}

func newScope() scope { return scope{entries: map[string]*entry{}} }

// find looks a name up; a poisoned one is known.
func (s *scope) find(n NameNode) (e *entry, known bool) {
	e, known = s.entries[n.key()]
	return e, known
}

// define enters a name.
func (s *scope) define(n NameNode, e *entry) {
	e.span = n.Span
	s.entries[n.key()] = e
	s.order = append(s.order, n.Text)
}

// poison enters a name that every check passes over, unless it is known.
func (s *scope) poison(key string) *entry {
	e, known := s.entries[key]
	if !known {
		e = &entry{}
		s.entries[key] = e
	}
	return e
}

// define enters the name of a fabric, a strip set or a pool; a second definition is
// reported, and so is the first that is one too many.
func (c *checker) define(n NameNode, is meaning, index int) bool {
	if len(c.names.order) >= MaxDefined {
		c.names.poison(n.key())
		if c.names.beyond++; c.names.beyond == 1 {
			c.fault(n.Span, "", "a layout may define at most %d names", MaxDefined)
		}
		return false
	}
	if first, known := c.names.find(n); known && !first.poisoned() {
		const hint = "give this one another name"
		if is == first.is {
			c.fault(n.Span, hint, "%s %s is already defined", is, quote(n.Text)).note(first.span, "first defined here")
		} else {
			c.fault(n.Span, hint, "%s is already defined as a %s", quote(n.Text), first.is).note(first.span, "first defined here")
		}
		return false
	}
	c.names.define(n, &entry{is: is, index: index})
	return true
}

// find looks up a fabric, a strip set or a pool. A name that nothing has is reported once,
// with a note where it stands again, and is poisoned.
func (c *checker) find(n NameNode) (*entry, bool) {
	const noted = 3 // more places would say no more
	e, known := c.names.find(n)
	switch {
	case !known:
		e = c.names.poison(n.key())
		c.noSuchName(n, e)
	case !e.poisoned():
		e.used = true
		return e, true
	case e.message > 0:
		first := &c.list[e.message-1]
		if len(first.Notes) < noted && first.Span != n.Span {
			first.note(n.Span, "here too")
		}
		if len(first.Edits) > 0 && first.Edits[0].Span == first.Span {
			first.alsoEdit(Edit{n.Span, first.Edits[0].Text})
		}
	}
	return e, false
}

// noSuchName reports a name that nothing has, unless a poisoned statement is most likely to
// define it.
func (c *checker) noSuchName(n NameNode, e *entry) {
	near := func() bool { return nearest(n.Text, c.names.order) != "" }
	switch {
	case c.poisoned("palette") && !near():
	case c.names.unnamed > 0 && !near():
		c.names.unnamed--
	case c.misnamed(n.Span):
		e.message = len(c.list) + 1
		hint := c.nameToWrite(n)
		c.faults.fault(n.Span, "", "no fabric, pool or strip set is called %s", quote(n.Text)).suggest(hint)
	}
}

// nameToWrite is a hint for a name that nothing has: one that is near, or the fabric that
// a colour would make.
func (c *checker) nameToWrite(n NameNode) hint {
	text := n.Text
	if hint := c.markedName(n); hint.words != "" {
		return hint
	}
	hint := c.guess(text, c.names.order).or(didYouMean(text, []string{"cut", "finished", "rest", "equal", Reversed}))
	if len(c.list) >= maxGuesses {
		return hint
	}
	return hint.backed(c.howToDefine(text))
}

// markedName is a hint to leave out the marks of a line where one stands at a name, so that only the first name of the line
// is reported; none where the names are no better without.
func (c *checker) markedName(n NameNode) hint {
	names := strings.FieldsFunc(n.Text, func(r rune) bool { return strings.ContainsRune("=:,;", r) })
	if len(names) == 0 || names[0] == n.Text || len(c.list) >= maxGuesses {
		return hint{}
	}
	for _, name := range names {
		if e, known := c.names.find(NameNode{Text: name}); !known || e.poisoned() {
			return hint{}
		}
	}
	number := c.source.Line(n.Start)
	c.bad.lines[number] = &poisonedLine{from: n.Start}
	return c.markHint(c.source.lineSpan(number))
}

// howToDefine says how to define a name that nothing has, or which names there are.
func (c *checker) howToDefine(text string) string {
	_, err := palettes.Parse(text)
	switch {
	case err != nil && isName(text) && !c.isReserved(text):
		return "define it: fabric " + text + " and its color"
	case err != nil && len(c.names.order) > 0:
		const shown = 12
		return "names are: " + strings.Join(c.names.order[:min(len(c.names.order), shown)], ", ")
	case err != nil:
		return ""
	case isName(text) && !c.isReserved(text):
		return "define it: fabric " + text + " " + text
	}
	return "define a fabric of this color, as in fabric cream " + text + ", and write its name here"
}

// fabric looks a fabric up; why says what needs one.
func (c *checker) fabric(n NameNode, why string) (int, bool) {
	e, ok := c.find(n)
	if !ok {
		return 0, false
	}
	if e.is != aFabric {
		c.fault(n.Span, "write a fabric, for example "+c.someFabric(0), "%s, and %s is a %s", why, quote(n.Text), e.is).note(e.span, "defined here")
		return 0, false
	}
	return e.index, true
}

// warnUnused warns of what is defined and never used.
func (c *checker) warnUnused() {
	for _, name := range c.names.order {
		if e := c.names.entries[foldName(name)]; !e.used && !e.palette {
			c.warn(e.span, "", "the %s %s is never used", e.is, quote(name))
		}
	}
	for i := range c.design.Blocks {
		if b := &c.design.Blocks[i]; !b.used {
			c.warn(c.tree.Blocks[i].Label.Span, "", "the block %s is not used in the grid", quote(b.Label))
		}
	}
}
