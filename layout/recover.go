package layout

import (
	"strings"
	"unicode"
)

// statementFailed remembers what a line with a fault was to give, so that nobody is told a
// second time that it is missing.
func (p *parser) statementFailed(word string, line Span) {
	switch word {
	case "strip", "side", "seam", "units":
		p.tree.sizeReported = true
	case "grid", "repeat":
		p.tree.gridReported = true
	case "webs":
		if p.tree.Webs == nil {
			p.tree.Webs = &WebsNode{}
		}
		p.tree.Webs.Broken = true
	case "palette":
		p.tree.paletteReported = true
	case "fabric", "strip-set", "scraps", "block":
		p.spoil(line)
	}
}

// spoil remembers the first words of a line that was given up: they may be names that it
// was to define, and that other lines use rightly.
func (p *parser) spoil(line Span) {
	const most = 8
	if len(p.list) > mostGuesses {
		return
	}
	names := p.namesIn(line)
	for _, w := range names[:min(len(names), most)] {
		p.spoilt[foldName(w)] = true
		p.spoilt[foldName(strings.TrimFunc(w, func(r rune) bool { return !unicode.IsLetter(r) }))] = true
		p.spoilt[strings.TrimFunc(w, func(r rune) bool { return !unicode.IsDigit(r) })] = true
	}
	delete(p.spoilt, "")
}

// namesIn is everything at the start of a line that might be a name, characters that cannot
// be seen left out.
func (p *parser) namesIn(line Span) []string {
	const longest = 1000 // bytes; what defines a name does so near its start
	text := strings.Map(func(r rune) rune {
		if isInvisible(r) || isDirection(r) || unicode.IsControl(r) && r != '\t' {
			return -1
		}
		return r
	}, p.src[line.Start:min(line.End, line.Start+longest)])
	return strings.FieldsFunc(text, func(r rune) bool { return !inName(r) })
}

// inName says whether r may stand in a name.
func inName(r rune) bool {
	return unicode.IsLetter(r) || unicode.IsDigit(r) || unicode.Is(unicode.M, r) || r == '-' || r == '_'
}

// dropFollowUps leaves out what was found wrong with the meaning of lines that could not be
// read as written, which were the messages up to the number given: it follows from that
// most often. Where a name on such a line is nothing's, before the place that could not be
// read, that name is the mistake.
func (s *session) dropFollowUps(parsed int) {
	unread := map[int]int{} // by line, the place of its first fault
	for _, f := range s.list[:parsed] {
		line := s.source.Line(f.Span.Start)
		if at, ok := unread[line]; f.Severity == Error && (!ok || f.Span.Start < at) {
			unread[line] = f.Span.Start
		}
	}
	if len(unread) == 0 {
		return
	}
	misnamed := map[int]bool{}
	for _, f := range s.list[parsed:] {
		line := s.source.Line(f.Span.Start)
		if at, ok := unread[line]; ok && f.noSuchName && f.Span.Start < at {
			misnamed[line] = true
		}
	}
	kept := s.list[:0]
	for i, f := range s.list {
		line := s.source.Line(f.Span.Start)
		at, ok := unread[line]
		switch {
		case !ok, f.Severity == Warning:
		case i < parsed && misnamed[line], i >= parsed && !(f.noSuchName && f.Span.Start < at):
			continue
		}
		kept = append(kept, f)
	}
	s.list = kept
}

// lineFailed remembers what a line whose characters could not be read may have held.
func (p *parser) lineFailed(line Span) {
	p.tree.unread = true
	words := p.namesIn(line)
	p.spoil(line)
	switch {
	case p.rows == gridRows && !p.beginsStatement(words):
		p.tree.gridReported = true
	case len(words) > 0:
		p.statementFailed(meant(words[0]), line)
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

// otherWord is the statement that goes by another word elsewhere, "" if there is none.
func otherWord(word string) string {
	switch strings.ToLower(word) {
	case "colour", "color", "cloth", "material":
		return "fabric"
	case "size", "block-size":
		return "side"
	case "sashing", "sashes":
		return "sash"
	case "rows", "layout":
		return "grid"
	case "name":
		return "title"
	case "author":
		return "designer"
	case "allowance", "seam-allowance":
		return "seam"
	case "wadding":
		return "batting"
	case "back":
		return "backing"
	case "wof":
		return "usable-width"
	}
	return ""
}

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

func isShellComment(word string) bool { return len(word) > 1 && word[0] == '#' }
