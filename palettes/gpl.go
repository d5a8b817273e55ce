package palettes

import (
	"fmt"
	"io"
	"strconv"
	"strings"
)

// gplHeader is the first line of every GIMP palette.
const gplHeader = "GIMP Palette"

// readGPL reads a GIMP palette: the header, "Name:" and "Columns:" if they are there, # comments, and one "R G B name" a
// line with channels of 0 to 255 (https://developer.gimp.org/core/standards/gpl). A fault is a *fileError.
func readGPL(r io.Reader) (Palette, error) {
	text, err := readText(r)
	if err != nil {
		return Palette{}, err
	}
	lines := strings.Split(text, "\n")
	if strings.TrimRight(lines[0], " \t") != gplHeader {
		return Palette{}, atLine(1, "%s, expected %q", quoted(lines[0]), gplHeader)
	}
	var p Palette
	for i, line := range lines[1:] {
		if err := p.readGPLLine(i+2, strings.TrimSpace(line)); err != nil {
			return Palette{}, err
		}
	}
	if len(p.Fabrics) == 0 {
		return Palette{}, atLine(len(lines), "the file ends without a color, expected lines such as \"31 51 80 navy\"")
	}
	return p, nil
}

func (p *Palette) readGPLLine(number int, line string) error {
	if line == "" || line[0] == '#' {
		return nil
	}
	if len(p.Fabrics) == 0 {
		if name, ok := strings.CutPrefix(line, "Name:"); ok {
			return p.setName(number, name)
		}
		if columns, ok := strings.CutPrefix(line, "Columns:"); ok {
			return checkColumns(number, strings.TrimSpace(columns))
		}
	}
	var channels [3]uint8
	rest := line
	for i := range channels {
		word := firstWord(rest)
		v, err := strconv.ParseUint(word, 10, 8)
		if err != nil {
			return atLine(number, "%s, expected three numbers from 0 to 255 and a name, as in \"31 51 80 navy\"", quoted(line))
		}
		channels[i] = uint8(v)
		rest = strings.TrimLeft(rest[len(word):], " \t")
	}
	return p.add(number, rest, Colour{channels[0], channels[1], channels[2]})
}

func (p *Palette) setName(number int, name string) error {
	p.Name = tidyName(name)
	if len(p.Name) > maxNameBytes {
		return atLine(number, "a palette name of %d bytes, expected at most %d", len(p.Name), maxNameBytes)
	}
	return nil
}

func checkColumns(number int, text string) error {
	if _, err := strconv.ParseUint(text, 10, 8); err != nil {
		return atLine(number, "Columns: %s, expected a number from 0 to 255", quoted(text))
	}
	return nil
}

// firstWord is the text up to the first space or tab.
func firstWord(text string) string {
	if i := strings.IndexAny(text, " \t"); i >= 0 {
		return text[:i]
	}
	return text
}

// writeGPL writes a GIMP palette that readGPL reads back with the same names and colours, but for blanks drawn together.
func writeGPL(w io.Writer, p Palette) error {
	var b strings.Builder
	b.WriteString(gplHeader + "\n")
	if name := shortName(tidyName(p.Name)); name != "" {
		b.WriteString("Name: " + name + "\n")
	}
	b.WriteString("#\n")
	for _, f := range p.Fabrics {
		line := fmt.Sprintf("%3d %3d %3d\t%s", f.Colour.R, f.Colour.G, f.Colour.B, shortName(tidyName(f.Name)))
		b.WriteString(strings.TrimRight(line, "\t") + "\n")
	}
	return writeText(w, b.String())
}
