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
