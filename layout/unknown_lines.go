package layout

import "strings"

// unknown reports a line that is neither a statement nor a row.
func (p *parser) unknown(c *cursor, indented bool) {
	at := c.here()
	word := c.text(at)
	line := Span{at.Start, c.end}
	defer c.dropRest()
	near := ""
	if len(p.list) < mostGuesses {
		near = meant(word)
	}
	switch {
	case len(p.list) >= mostGuesses:
		p.fault(at, "", "no statement is called %s", quote(word))
	case near != "":
		hint := lookAlike(word, statementWords())
		if hint == "" {
			hint = `did you mean "` + near + `"?`
		}
		p.fault(at, hint, "no statement is called %s", quote(word))
		p.statementFailed(near, line)
		p.spoil(line)
	case p.looksLikeRow(c) && p.tree.Grid == nil:
		p.fault(at, `put the line "grid" above them`, "this row of blocks stands under no grid")
		p.tree.gridReported = true
	case p.looksLikeRow(c):
		p.fault(at, "rows end where another statement begins: move this one up to the others", "this row of blocks stands outside the grid")
	case isShellComment(word):
		p.fault(at, "a comment needs # and a space: # "+word[1:], "expected a statement, found %s", quote(word))
	case isForeignComment(word):
		p.fault(at, "comments begin with # and a space", "expected a statement, found %s", quote(word))
	case c.atQuote():
		p.fault(at, "put the word title or note before it", "expected a statement, found text in quotes")
	default:
		p.fault(at, "statements are: "+strings.Join(statementWords(), ", "), "no statement is called %s", quote(word))
		p.spoil(line)
	}
	if p.tree.unread = true; near != "" || p.rows != gridRows {
		p.rows = brokenRows
	}
}

func (p *parser) beginsStatement(words []string) bool {
	return len(words) > 0 && p.isStatement(words[0])
}

// meant is the statement that a word most likely stands for, "" if none is near.
func meant(word string) string {
	plain, _ := plainLike(strings.TrimRight(word, ":=,;"))
	if s := otherWord(plain); s != "" {
		return s
	}
	return nearest(plain, statementWords())
}
