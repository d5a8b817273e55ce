package layout

import (
	"strings"

	"eighthturn/internal/measure"
)

// meant is the statement that a word most likely stands for, nil if none is near.
func (s *session) meant(word string) *Statement {
	plain, _ := plainLike(bareWord(word))
	if other := s.elsewhere(plain); other != nil {
		return other
	}
	return s.statement(nearest(plain, s.words))
}

// bareWord is a word up to a mark that no statement's word has.
func bareWord(word string) string {
	if i := strings.IndexAny(word, ":=,;"); i > 0 {
		return word[:i]
	}
	return word
}

// statementHint is what to type for the word at a place where a statement is meant.
func (p *parser) statementHint(at Span, meant *Statement) hint {
	word := p.src[at.Start:at.End]
	bare := bareWord(word)
	line := p.source.lineSpan(p.source.Line(at.Start))
	behind := strings.TrimSpace(p.src[at.Start+len(bare) : line.End])
	switch {
	case strings.EqualFold(bare, meant.Word):
		return p.markHint(Span{at.Start, line.End})
	case lookAlike(word, p.words).words != "":
		return lookAlike(word, p.words)
	case meant.Word == "side" && twoLengths(behind):
		return advice("write side and the finished side of one block; the quilt is as large as its grid makes it")
	}
	h := near(meant.Word)
	h.edits, h.typed = []Edit{{Span{at.Start, at.Start + len(bare)}, meant.Word}}, false
	return h.backed("for example " + meant.Example)
}

// twoLengths says whether a line goes on with two lengths, as in 60 x 80.
func twoLengths(behind string) bool {
	for _, between := range []string{"x", "×", "by", "*"} {
		if first, second, found := strings.Cut(strings.ToLower(behind), between); found && isNumeric(strings.TrimSpace(first)) && measure.StartsNumber(strings.TrimSpace(second)) {
			return true
		}
	}
	return false
}

// unknown reports a line that is neither a statement nor a row.
func (p *parser) unknown(c *cursor) {
	at := c.here()
	word := c.text(at)
	line := Span{at.Start, c.end}
	defer c.dropRest()
	p.bad.any = true
	var meant *Statement
	two := p.joined(at, p.words)
	if two.words != "" {
		meant = p.statement(two.edits[0].Text)
	} else if len(p.list) < maxGuesses {
		meant = p.meant(word)
	}
	if meant != nil || p.rows != gridRows {
		p.rows = poisonedRows
	}
	switch {
	case len(p.list) >= maxGuesses:
		p.fault(at, "", "no statement is called %s", quote(word))
	case two.words != "":
		p.fault(at, "", "no statement is called %s", quote(word)).suggest(two)
		p.poisonStatement(meant, line)
	case meant != nil:
		p.fault(at, "", "no statement is called %s", quote(word)).suggest(p.statementHint(at, meant))
		p.poisonStatement(meant, line)
		p.poisonNames(line)
	case p.looksLikeRow(c):
		p.rowOutside(at)
	case isShellComment(word):
		p.fault(at, "", "expected a statement, found %s", quote(word)).suggest(edit("a comment needs # and a space: # "+word[1:], Span{at.Start, at.Start + 1}, "# "))
	case isForeignComment(word):
		marks := Span{at.Start, at.Start + len(word) - len(strings.TrimLeft(word, "/-;*"))}
		p.fault(at, "", "expected a statement, found %s", quote(word)).suggest(edit("comments begin with # and a space", marks, "# "))
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
		return
	}
	p.fault(at, "rows end where another statement begins: move this one up to the others", "this row of blocks is outside the grid")
}
