package palettes

import (
	"io"
	"strings"
)

// readHexList reads one colour a line, "#1f3350 navy" or "1f3350 navy", the name left out or not. Text after // or ; at the
// start of a line, or after a blank, is a comment. A fault is a *fileError.
func readHexList(r io.Reader) (Palette, error) {
	text, err := readText(r)
	if err != nil {
		return Palette{}, err
	}
	var p Palette
	number := 0
	for line := range strings.SplitSeq(text, "\n") {
		number++
		if err := p.readHexLine(number, strings.TrimSpace(withoutComment(line))); err != nil {
			return Palette{}, err
		}
	}
	if len(p.Fabrics) == 0 {
		return Palette{}, atLine(number, "the file ends without a color, expected lines such as \"#1f3350 navy\"")
	}
	return p, nil
}

func (p *Palette) readHexLine(number int, line string) error {
	if line == "" {
		return nil
	}
	word := firstWord(line)
	name := line[len(word):]
	if !strings.HasPrefix(word, "#") {
		if len(word) != 6 || !isHexDigits(word) {
			return atLine(number, "%s, expected a color such as #1f3350 at the start of the line", quoted(line))
		}
		word = "#" + word
	}
	c, err := Parse(word)
	if err != nil {
		return atLine(number, "%v", err)
	}
	return p.add(number, name, c)
}

// withoutComment cuts the line at the first // or ; that has a blank or nothing before it.
func withoutComment(line string) string {
	for i := range line {
		if i > 0 && line[i-1] != ' ' && line[i-1] != '\t' {
			continue
		}
		if line[i] == ';' || strings.HasPrefix(line[i:], "//") {
			return line[:i]
		}
	}
	return line
}

// writeHexList writes a list that readHexList reads back with the same colours, and the same names but for blanks drawn
// together and for what would start a comment. The palette's own name stands in a comment.
func writeHexList(w io.Writer, p Palette) error {
	var b strings.Builder
	if name := shortName(tidyName(p.Name)); name != "" {
		b.WriteString("// " + name + "\n")
	}
	for _, f := range p.Fabrics {
		line := f.Colour.Hex() + " " + hexListName(f.Name)
		b.WriteString(strings.TrimRight(line, " ") + "\n")
	}
	return writeText(w, b.String())
}

// writeBareHex writes six digits a line and nothing else, as most programs that read such lists want them; names are lost.
func writeBareHex(w io.Writer, p Palette) error {
	var b strings.Builder
	for _, f := range p.Fabrics {
		b.WriteString(strings.TrimPrefix(f.Colour.Hex(), "#") + "\n")
	}
	return writeText(w, b.String())
}

// hexListName takes the comment marks off the front of each word.
func hexListName(name string) string {
	words := strings.Fields(tidyName(name))
	for i, word := range words {
		words[i] = strings.TrimLeft(word, ";/")
	}
	return shortName(tidyName(strings.Join(words, " ")))
}
