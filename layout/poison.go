package layout

import (
	"slices"
	"strings"
	"unicode"
)

// What could not be read is poisoned, as compilers do with what has no type: it stays in its
// place, every later check passes over it, and so one mistake gives one message, where the
// mistake is. Poisoned are statements, by their word; lines; and names, in their scope.

// poison is the statements and lines that could not be read.
type poison struct {
	words map[string]bool       // of statements
	any   bool                  // a line of which nobody knows what statement it is
	lines map[int]*poisonedLine // by number
}

// poisonedLine is a line that could not be read from a byte on. Where a name before that
// byte is nothing's, that name is the mistake, and not what stands behind it.
type poisonedLine struct {
	from     int
	misnamed bool
}

// poison marks a statement as one that could not be read, or does not hold.
func (s *session) poison(word string) { s.bad.words[word] = true }

// poisoned says whether one of the statements is.
func (s *session) poisoned(words ...string) bool {
	return slices.ContainsFunc(words, func(w string) bool { return s.bad.words[w] })
}

// mayHold says whether a statement that is not there may stand in a poisoned line.
func (s *session) mayHold(word string) bool { return s.bad.any || s.bad.words[word] }

// poisonLines marks the lines in which an error was found so far.
func (s *session) poisonLines() {
	for _, f := range s.list {
		if f.Severity != Error {
			continue
		}
		number := s.source.Line(f.Span.Start)
		line := s.bad.lines[number]
		if line == nil {
			line = &poisonedLine{from: f.Span.Start}
			s.bad.lines[number] = line
		}
		line.from = min(line.from, f.Span.Start)
	}
}

// poisonedLine is the line of a place if it is poisoned, nil if not.
func (s *session) poisonedLine(at Span) *poisonedLine {
	if len(s.bad.lines) == 0 {
		return nil
	}
	return s.bad.lines[s.source.Line(at.Start)]
}

// fault reports an error; what a poisoned line means is passed over.
func (s *session) fault(at Span, hint, format string, args ...any) *Fault {
	if s.poisonedLine(at) != nil {
		return &Fault{}
	}
	return s.faults.fault(at, hint, format, args...)
}

// misnamed says whether a name that is nothing's is a mistake of its own.
func (s *session) misnamed(at Span) bool {
	line := s.poisonedLine(at)
	if line == nil {
		return true
	}
	line.misnamed = line.misnamed || at.Start < line.from
	return at.Start < line.from
}

// dropMisread leaves out what was found when lines were read, which is the messages up to
// the number given, where a name is the mistake.
func (s *session) dropMisread(parsed int) {
	if len(s.bad.lines) == 0 {
		return
	}
	read := slices.DeleteFunc(slices.Clone(s.list[:parsed]), func(f Fault) bool {
		line := s.poisonedLine(f.Span)
		return line != nil && line.misnamed && f.Severity == Error
	})
	s.list = append(read, s.list[parsed:]...)
}

// poisonStatement poisons a statement at fault, with the names that its line may have been
// meant to define.
func (p *parser) poisonStatement(s *Statement, line Span) {
	if p.poison(s.Word); s.defines {
		p.poisonNames(line)
	}
}

// poisonNames poisons the first words of a line that was given up: they may be names that it
// was to define, and that other lines use rightly.
func (p *parser) poisonNames(line Span) {
	const most = 8
	if len(p.list) > maxGuesses {
		return
	}
	words := p.wordsIn(line)
	for _, w := range words[:min(len(words), most)] {
		for _, name := range []string{
			foldName(w),
			foldName(strings.TrimFunc(w, func(r rune) bool { return !unicode.IsLetter(r) })),
			strings.TrimFunc(w, func(r rune) bool { return !unicode.IsDigit(r) }),
		} {
			if name != "" {
				p.names.poison(name)
				p.labels.poison(name)
			}
		}
	}
}

// poisonLine poisons what a line whose characters could not be read may have held.
func (p *parser) poisonLine(line Span) {
	p.bad.any = true
	words := p.wordsIn(line)
	p.poisonNames(line)
	if p.rows == gridRows && (len(words) == 0 || p.statement(words[0]) == nil) {
		p.poison("grid")
	} else if len(words) > 0 {
		if s := p.meant(words[0]); s != nil {
			p.poisonStatement(s, line)
		}
	}
}

// wordsIn is everything at the start of a line that might be a name, characters that cannot
// be seen left out.
func (p *parser) wordsIn(line Span) []string {
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
