package layout

import "strings"

// meant is the statement that a word most likely stands for, nil if none is near.
func (s *session) meant(word string) *Statement {
	plain, _ := plainLike(strings.TrimRight(word, ":=,;"))
	if other := s.elsewhere(plain); other != nil {
		return other
	}
	return s.statement(nearest(plain, s.words))
}

// unknown reports a line that is neither a statement nor a row.
func (p *parser) unknown(c *cursor) {
	at := c.here()
	word := c.text(at)
	line := Span{at.Start, c.end}
	defer c.dropRest()
	p.bad.any = true
	var meant *Statement
	if len(p.list) < maxGuesses {
		meant = p.meant(word)
	}
	if meant != nil || p.rows != gridRows {
		p.rows = poisonedRows
	}
	switch {
	case len(p.list) >= maxGuesses:
		p.fault(at, "", "no statement is called %s", quote(word))
	case meant != nil:
		hint := lookAlike(word, p.words)
		if hint == "" {
			hint = `did you mean "` + meant.Word + `"?`
		}
		p.fault(at, hint, "no statement is called %s", quote(word))
		p.poisonStatement(meant, line)
		p.poisonNames(line)
	case p.looksLikeRow(c):
		p.rowOutside(at)
	case isShellComment(word):
		p.fault(at, "a comment needs # and a space: # "+word[1:], "expected a statement, found %s", quote(word))
	case isForeignComment(word):
		p.fault(at, "comments begin with # and a space", "expected a statement, found %s", quote(word))
	case c.atQuote():
		p.fault(at, "put the word title or note before it", "expected a statement, found text in quotes")
	default:
		p.fault(at, "statements are: "+strings.Join(p.words, ", "), "no statement is called %s", quote(word))
		p.poisonNames(line)
	}
}

// rowOutside reports a row of labels that is none of the grid's.
func (p *parser) rowOutside(at Span) {
	if p.tree.Grid == nil {
		p.fault(at, `put the line "grid" above them`, "this row of blocks is not under a grid")
		p.poison("grid")
		return
	}
	p.fault(at, "rows end where another statement begins: move this one up to the others", "this row of blocks is outside the grid")
}
