package palettes

import (
	"io"
	"strings"
)

// readCSS reads the custom properties of a style sheet whose values are colours: #rgb, #rrggbb, a CSS name or rgb(). Other
// properties, and custom ones whose value is no colour, are passed over; a colour that is see-through or written in a way
// that is not read is a fault. A fault is a *fileError.
func readCSS(r io.Reader) (Palette, error) {
	text, err := readText(r)
	if err != nil {
		return Palette{}, err
	}
	s := cssScanner{text: text, line: 1}
	var p Palette
	for {
		d, ok, err := s.next()
		if err != nil {
			return Palette{}, err
		}
		if !ok {
			break
		}
		if err := p.readProperty(d); err != nil {
			return Palette{}, err
		}
	}
	if len(p.Fabrics) == 0 {
		return Palette{}, atLine(s.line, "the file ends without a color, expected lines such as \"--navy: #1f3350;\"")
	}
	return p, nil
}

func (p *Palette) readProperty(d declaration) error {
	value := strings.TrimSpace(strings.TrimSuffix(d.value, "!important"))
	c, ok, err := cssColour(value)
	if err != nil {
		return atLine(d.line, "--%s: %v", d.name, err)
	}
	if !ok {
		return nil
	}
	return p.add(d.line, d.name, c)
}

// writeCSS writes one rule of custom properties, each "--name: #rrggbb;". Names become words as inWords makes them.
func writeCSS(w io.Writer, p Palette) error {
	var b strings.Builder
	b.WriteString(":root {\n")
	for _, f := range p.inWords().Fabrics {
		b.WriteString("  --" + f.Name + ": " + f.Colour.Hex() + ";\n")
	}
	b.WriteString("}\n")
	return writeText(w, b.String())
}

// declaration is a custom property, its name without the two hyphens.
type declaration struct {
	name, value string
	line        int
}

// cssScanner finds the custom properties of a style sheet.
type cssScanner struct {
	text string
	at   int // byte
	line int // from 1
}

// next returns the next custom property; ok is false at the end.
func (s *cssScanner) next() (d declaration, ok bool, err error) {
	for {
		if err := s.skipBlanks(); err != nil {
			return declaration{}, false, err
		}
		if s.at == len(s.text) {
			return declaration{}, false, nil
		}
		line := s.line
		head, end, err := s.until(":;{}")
		if err != nil {
			return declaration{}, false, err
		}
		if end != ':' {
			continue
		}
		name, custom := strings.CutPrefix(strings.TrimSpace(head), "--")
		if !custom {
			continue // a selector such as a:hover, or another property
		}
		if !isCSSName(name) {
			return declaration{}, false, atLine(line, "%s, expected a name of letters, digits, - and _", quoted("--"+name))
		}
		value, _, err := s.until(";}")
		return declaration{name, strings.TrimSpace(value), line}, err == nil, err
	}
}

func isCSSName(name string) bool {
	return name != "" && !strings.ContainsFunc(name, func(r rune) bool {
		return r < 0x80 && r != '-' && r != '_' && !isASCIILetterOrDigit(r)
	})
}

func isASCIILetterOrDigit(r rune) bool {
	return r >= '0' && r <= '9' || r >= 'a' && r <= 'z' || r >= 'A' && r <= 'Z'
}

// skipBlanks goes over white space and comments.
func (s *cssScanner) skipBlanks() error {
	for s.at < len(s.text) {
		switch c := s.text[s.at]; {
		case strings.HasPrefix(s.text[s.at:], "/*"):
			if err := s.skipComment(); err != nil {
				return err
			}
		case c == ' ' || c == '\t' || c == '\n':
			s.step()
		default:
			return nil
		}
	}
	return nil
}

// step goes over one byte and counts lines.
func (s *cssScanner) step() {
	if s.text[s.at] == '\n' {
		s.line++
	}
	s.at++
}

func (s *cssScanner) skipComment() error {
	line := s.line
	length := strings.Index(s.text[s.at+2:], "*/")
	if length < 0 {
		return atLine(line, "a comment begins with /* and does not end, expected */")
	}
	s.skip(length + 4)
	return nil
}

func (s *cssScanner) skip(bytes int) {
	s.line += strings.Count(s.text[s.at:s.at+bytes], "\n")
	s.at += bytes
}

// until returns the text up to one of the stops outside strings, comments and brackets, and the stop, and goes past it;
// at the end of the file the stop is 0.
func (s *cssScanner) until(stops string) (text string, stop byte, err error) {
	var b strings.Builder
	depth := 0
	for s.at < len(s.text) {
		c := s.text[s.at]
		switch {
		case depth == 0 && strings.IndexByte(stops, c) >= 0:
			s.step()
			return b.String(), c, nil
		case strings.HasPrefix(s.text[s.at:], "/*"):
			if err := s.skipComment(); err != nil {
				return "", 0, err
			}
			b.WriteByte(' ')
			continue
		case c == '"' || c == '\'':
			quotedText, err := s.quotedText(c)
			if err != nil {
				return "", 0, err
			}
			b.WriteString(quotedText)
			continue
		case c == '(' || c == '[' || c == '{':
			depth++
		case depth > 0 && (c == ')' || c == ']' || c == '}'):
			depth--
		}
		b.WriteByte(c)
		s.step()
	}
	return b.String(), 0, nil
}

// quotedText goes over a string in the given quotes and returns it with them.
func (s *cssScanner) quotedText(quote byte) (string, error) {
	start, line := s.at, s.line
	for i := s.at + 1; i < len(s.text) && s.text[i] != '\n'; i++ {
		switch s.text[i] {
		case '\\':
			i++
		case quote:
			s.at = i + 1
			return s.text[start:s.at], nil
		}
	}
	return "", atLine(line, "a string begins with %c and does not end on its line", quote)
}
