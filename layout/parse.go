// Package layout turns the text of a layout into a checked design, or into faults that each
// name their place; and a layout into its tidy form.
package layout

import (
	"strings"
	"unicode/utf8"

	"eighthturn/internal/blocks"
)

// session is what all stages of reading one layout share.
type session struct {
	*faults
	src    string
	source *Source
	kinds  []*blocks.Kind
	*language
	names  scope          // of fabrics, strip sets and pools
	labels scope          // of blocks
	former map[int]string // by where it begins, what a word of older layouts is called today
	bad    poison
}

// parser is the first stage: lines to a tree.
type parser struct {
	*session
	tree  Tree
	ahead map[string]bool // block labels, read ahead for rows that lost their indentation
	once  map[string]Span // statements that may stand once, by their word
	rows  rowsOf          // what indented lines belong to
	lost  []Edit          // blanks before the rows without indentation
}

// rowsOf is the statement whose rows may follow.
type rowsOf uint8

const (
	noRows rowsOf = iota
	gridRows
	webRows
	poisonedRows // passed over
)

// Parse reads a layout into its tree. Faults come in the order of their places; the tree is
// usable whatever they are.
func Parse(source *Source) (*Tree, []Fault) {
	p := newParser(source)
	p.parse()
	return &p.tree, p.sorted()
}

func newParser(source *Source) *parser {
	kinds := blocks.Kinds()
	s := &session{
		faults: &faults{}, src: source.Text, source: source, kinds: kinds, language: theLanguage(), names: newScope(), labels: newScope(), former: map[int]string{},
		bad: poison{words: map[string]bool{}, lines: map[int]*poisonedLine{}},
	}
	return &parser{session: s, once: map[string]Span{}}
}

func (p *parser) parse() {
	if !p.readable() {
		return
	}
	p.readLabels()
	for _, line := range p.source.lines {
		p.line(line)
	}
	p.warnUnindented()
	p.poisonLines()
	p.tree.former = p.former
}

// readLabels reads ahead which labels blocks have.
func (p *parser) readLabels() {
	p.ahead = map[string]bool{".": true}
	for _, line := range p.source.lines {
		words := strings.Fields(p.src[line.Start:min(line.End, line.Start+200)])
		if len(words) > 1 && strings.EqualFold(words[0], "block") {
			p.ahead[foldName(words[1])] = true
		}
	}
}

// line reads one line.
func (p *parser) line(at Span) {
	if at.Start == 0 && strings.HasPrefix(p.src, byteOrderMark) {
		at.Start += len(byteOrderMark)
	}
	if !p.cleanLine(at) {
		p.poisonLine(at)
		p.tree.Lines = append(p.tree.Lines, Line{})
		return
	}
	c := newCursor(p.session, at)
	line := Line{}
	if !c.done() {
		indented := c.at > at.Start
		line.Keyword, line.Row = p.statementOrRow(c, indented)
	}
	line.Tokens, line.Comment = c.tokens, c.comment
	p.tree.Lines = append(p.tree.Lines, line)
}

// cleanLine refuses lines with bytes or characters that a layout cannot hold.
func (p *parser) cleanLine(at Span) bool {
	text := p.src[at.Start:at.End]
	if len(text) > MaxLineBytes {
		p.fault(Span{at.Start, at.Start + 1}, "", "this line has %d bytes; the limit is %d", len(text), MaxLineBytes)
		return false
	}
	if isPlain(text) {
		return true
	}
	for i, r := range text {
		if r == '"' || strings.ContainsRune("“”„«»", r) || r == '#' && isComment(text[i:], i == 0) {
			break // quoted text is checked by itself, and comments may hold what they like
		}
		if isInvisible(r) || isDirection(r) {
			p.fault(Span{at.Start + i, at.Start + i + utf8.RuneLen(r)}, "", "there is an invisible character here: U+%04X", r).suggest(p.deleted())
			return false
		}
		if r < ' ' && r != '\t' && r != '\v' && r != '\f' || r == 0x7f {
			p.fault(Span{at.Start + i, at.Start + i + 1}, "", "there is a control character here: U+%04X", r).suggest(p.deleted())
			return false
		}
	}
	return true
}

// deleted is a hint to delete a character.
func (s *session) deleted() hint {
	const words = "delete it, or type the line anew"
	if len(s.list) > maxGuesses {
		return advice(words)
	}
	return write("").saying(words)
}

// isPlain says whether a line is of nothing but ASCII characters that show, blanks and tabs.
func isPlain(text string) bool {
	for i := range len(text) {
		if b := text[i]; b < ' ' && b != '\t' || b > '~' {
			return false
		}
	}
	return true
}

// statementOrRow reads a line that is not blank; it returns the statement's word, or that
// the line is a row.
func (p *parser) statementOrRow(c *cursor, indented bool) (string, bool) {
	s := p.statement(c.peek())
	switch {
	case s != nil && p.joined(c.here(), p.words).words != "":
		p.rows = noRows
	case s != nil:
		p.rows = noRows
		c.newField()
		p.parseStatement(s, c, c.word())
		return s.Word, false
	case p.rows != noRows && (indented || p.rows != webRows && p.looksLikeRow(c)):
		p.row(c, indented)
		return "", true
	}
	p.unknown(c)
	return "", false
}

// parseStatement reads one statement whose word was taken.
func (p *parser) parseStatement(s *Statement, c *cursor, keyword Span) {
	line := Span{keyword.Start, c.end}
	if !strings.EqualFold(p.src[keyword.Start:keyword.End], s.Word) {
		p.former[keyword.Start] = s.Word
	}
	if s.Once {
		if first, twice := p.once[s.Word]; twice {
			p.fault(keyword, "keep one of the two", "%q is already in this layout", s.Word).note(first, "first given here")
			p.poisonStatement(s, line)
			c.dropRest()
			p.rows = poisonedRows
			return
		}
		p.once[s.Word] = keyword
	}
	before := len(p.list)
	s.parse(p, c, keyword)
	c.finish(s.next)
	p.markHints(before, line)
	p.exampleHints(before, s)
	if errors, _ := Count(p.list[before:]); errors > 0 {
		p.poisonStatement(s, line)
	}
}

// markHints gives the first error in a line, of those from the number on, the hint to leave out the marks that no layout
// has, where it has some.
func (p *parser) markHints(from int, line Span) {
	for i := from; i < len(p.list); i++ {
		if f := &p.list[i]; f.Severity == Error && len(f.Edits) == 0 {
			if h := p.markHint(line); h.words != "" {
				h.instead = f.Hint
				f.suggest(h)
			}
			return
		}
	}
}

// looksLikeRow says whether a line begins with a block's label.
func (p *parser) looksLikeRow(c *cursor) bool {
	label, _, _ := strings.Cut(c.peek(), ":")
	return p.ahead[foldName(label)]
}
